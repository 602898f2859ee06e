//! One way in full: the move large, arms in both numbers, cautions, drawings,
//! error, working, and where everything stands at the end.
use super::{Worked, budget, ways};
use crate::draw::{plate, strip, train};
use crate::pieces::{before_first_cut, caution, error_figure, mark, working};
use crate::room::card::put_button;
use crate::words::{self, moves};
use handturn::divide::{Differential, Group, Leg, Part, Rated, Way};
use handturn::head::Circle;
use handturn::number::float;
use maud::{Markup, html};

/// Positions up to which the error strip is drawn: a bar each.
const STRIP: u32 = 1000;

/// The panel of `rated`, one of the ways of `group`.
pub(super) fn panel<const EACH: usize>(
    worked: &Worked,
    group: &Group<EACH>,
    rated: &Rated,
) -> Markup {
    let first = worked.first_move(&rated.way).unwrap_or_default();
    let legs = &first.legs;
    let equal = worked.question.step().is_ok_and(|step| step.is_some());
    let lines = rated.way.working(&worked.question).unwrap_or_default();
    html! {
        @if equal { (large(worked, rated, legs)) } @else { p.sub2 { (words::MOVES_DIFFER) } }
        (cautions(&rated.way))
        div.two {
            div.do {
                (facts(worked, rated))
                @if let [_, _, ..] = &**legs { (steps(legs)) }
                div.acts { button.btn.go id="run-it" type="button" data-do="run" { (words::run::RUN_IT) } }
                (put_button(worked.fields, "divide"))
                (closing(worked, rated))
            }
            div.figures { @for leg in legs { (figure(worked, rated, leg, legs.len() > 1)) } }
        }
        @if !lines.is_empty() || matches!(rated.way, Way::Differential(_)) {
            div.two.wide {
                div { h3 { (words::BY_HAND) } (working(&lines)) }
                @if let Way::Differential(way) = &rated.way { (train_figure(worked, way)) }
            }
        }
        @if !rated.errors.is_none() { (error_strip(worked, rated)) }
        (others(worked, group, rated))
        (budget::section(worked, rated))
    }
}

/// The move in large figures with turns and arms under it.
fn large(worked: &Worked, rated: &Rated, legs: &[Leg]) -> Markup {
    let phrase = moves::phrase(legs, worked.spread(&rated.way));
    html! {
        p.big {
            @for (k, (text, large)) in phrase.0.iter().enumerate() {
                @if k > 0 && !text.starts_with(',') { " " }
                @if *large { (text) } @else { span.u { (text) } }
            }
        }
        @if let [leg] = legs {
            p.sub2 {
                @match worked.short_and_long(&rated.way).filter(|_| worked.spread(&rated.way).is_some()) {
                    Some((few, long, all)) => { (words::short_and_long(leg.part, few, all - long, long)) " " (words::NEVER_ADD_UP) },
                    None => (moves::arms(leg)),
                }
            }
        } @else {
            p.sub2 {
                @match &rated.way {
                    Way::Compound(way) => {
                        @if way.back_spaces < 0 { (words::BACK_FIRST) " " }
                        @if way.times_round > 1 { (words::times_round(way.times_round)) " " }
                        @if !rated.errors.is_none() {
                            (if way.times_round > 1 { words::ADDS_UP_ROUND } else { words::ADDS_UP })
                        }
                    }
                    _ => (words::MOVES_DIFFER),
                }
            }
        }
    }
}

fn steps(legs: &[Leg]) -> Markup {
    html! { ol.steps { @for leg in legs { li { (moves::instruction(leg)) } } } }
}

/// Cautions that belong to a way, at the point of use.
fn cautions(way: &Way) -> Markup {
    match way {
        Way::Direct(_) => caution(html! { (words::WORM_OUT) }),
        Way::Differential(way) => before_first_cut(way),
        Way::Handwheel(_) | Way::FineDial(_) => caution(html! { (words::NO_PIN) }),
        _ => html! {},
    }
}

/// Gears, or errors, as a row of figures.
fn facts(worked: &Worked, rated: &Rated) -> Markup {
    let diameter = worked.head.work_diameter;
    html! {
        @if let Way::Differential(way) = &rated.way {
            dl.kv {
                @for (name, teeth) in words::train(&way.train) { div { dt { (name) } dd { (teeth) } } }
            }
            p.why { (words::PLATE_FREE) " " (words::CLAMP_EACH_CUT) }
        }
        @if !rated.errors.is_none() {
            dl.kv {
                (error_figure(words::WORST_PLACE, rated.errors.worst, diameter))
                (error_figure(words::BETWEEN, rated.errors.adjacent, diameter))
                @if rated.errors.closing.turns().num() != 0 {
                    (error_figure(words::CLOSING, rated.errors.closing, diameter))
                }
            }
            p.why { (words::error_at(&words::decimal(diameter.mm(), 3))) }
        }
    }
}

/// Where pin, plate and work stand after the closing move.
fn closing(worked: &Worked, rated: &Rated) -> Markup {
    let last = worked.question.last();
    if !worked.question.closes() {
        return html! {};
    }
    let Ok(place) = rated.way.place(&worked.question, last) else { return html! {} };
    let plate = match &rated.way {
        Way::Differential(way) => {
            way.gear_ratio().and_then(|g| g.checked_mul(place.stands.turns())).ok()
        }
        _ => None,
    };
    html! { p.why { (words::closing(last, &place, plate)) } }
}

/// The plate for one leg: with its other circles, or alone on a small screen.
fn figure(worked: &Worked, rated: &Rated, leg: &Leg, several: bool) -> Markup {
    let plate = words::plate_of(&rated.way);
    let circles: &[Circle] = match (leg.part, plate) {
        (Part::Pin | Part::BackPin, Some(plate)) => {
            worked.head.plates.get(usize::from(plate)).map_or(&[], |plate| &plate.circles)
        }
        _ => &[],
    };
    let name = moves::drawing(leg, plate.filter(|_| !circles.is_empty()));
    let circles = if worked.wide { circles } else { &[] };
    let view = plate::PlateView { leg, circles, counted: circles.is_empty() };
    let same = if rated.errors.is_none() && !several && leg.part == Part::Pin {
        worked.same_on(leg)
    } else {
        Vec::new()
    };
    html! {
        figure.draw {
            (plate::drawing(&view, &name))
            figcaption.why {
                (words::caption(leg, plate))
                @if circles.iter().any(|circle| circle.radius.is_none()) { " " (words::RADII_EVEN) }
                @if !same.is_empty() { " " (words::same_move(&same)) }
            }
        }
    }
}

fn train_figure(worked: &Worked, way: &Differential) -> Markup {
    html! {
        figure.draw.tr {
            (train::drawing(&way.train, worked.head.mounting.distance, &words::train_sentence(&way.train)))
            figcaption.why { (words::train_caption(way.follows)) }
        }
    }
}

/// The error at every position, with a slider that reads each one out.
fn error_strip(worked: &Worked, rated: &Rated) -> Markup {
    let positions = worked.question.positions();
    if positions > STRIP {
        return html! {};
    }
    let place = |part: u32| rated.way.place(&worked.question, worked.question.index_of(part)).ok();
    let error = |part: u32| place(part).and_then(|place| place.error().ok());
    let errors: Vec<f64> =
        (0..positions).map(|k| error(k).map_or(0.0, |e| float::of(e.turns()))).collect();
    let typed: Option<u32> =
        worked.fields.get("at").parse().ok().filter(|at| (1..=positions).contains(at));
    let at = typed.unwrap_or(1) - 1;
    let most = words::seconds(rated.errors.worst);
    html! {
        div.errors id="errors" {
            (strip::drawing(&errors, Some(at as usize), &most, &words::strip_sentence(positions, &most)))
            @if let (Some(place), Some(error)) = (place(at), error(at)) {
                @let text = words::at_position(at + 1, &place, error);
                input.slide type="range" name="at" id="at" min="1" max=(positions) value=(at + 1)
                    aria-label=(words::EVERY_POSITION) aria-valuetext=(text);
                p.why { (text) }
            }
        }
    }
}

/// Other settings of the same kind, to choose from.
fn others<const EACH: usize>(worked: &Worked, group: &Group<EACH>, rated: &Rated) -> Markup {
    let list = group.ways(worked.order);
    if list.len() < 2 || matches!(rated.way, Way::Plain(_)) {
        return html! {};
    }
    html! {
        details id=(["others-", words::key(group.kind)].concat()) {
            summary { (words::OTHER_WAYS) }
            ul.alts {
                @for (place, other) in list.iter().enumerate() {
                    li {
                        button.alt type="button" data-do="alternative" data-value=(place) aria-pressed=(other == rated) {
                            span { (ways::line(worked, other)) @if let Way::Differential(way) = &other.way { ", " (words::gears(&way.train)) } }
                            (mark(&other.errors))
                        }
                    }
                }
            }
            @if group.count as usize > list.len() { p.why { (words::and_more(group.count, list.len())) } }
        }
    }
}
