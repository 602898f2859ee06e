//! Make the plate you lack: its row among the ways, and the panel that plans it, plate
//! by plate, with what each brings to the work.
use super::{Worked, ask, budget, paper, ways, work_out};
use crate::draw::plate;
use crate::fields::Fields;
use crate::owned;
use crate::pieces::{caution, mark};
use crate::room::card::put_button;
use crate::room::lines::lengths;
use crate::room::steps::{self, Form, Given, Names, Wrong, about, in_force, length};
use crate::words::{self, errors::said, moves, plate as says};
use handturn::bounds;
use handturn::divide::{Asked, CircleAt, Errors, Holes, Leg, Parts, Question, Way};
use handturn::head::{Circle, Head};
use handturn::measure::Length;
use handturn::number::Fraction;
use handturn::plate::ring::{self, Blank, Fit, Ring};
use handturn::plate::{
    Budget, Generation, Ladder, Making, Need, Source, disks, fitted, ladder, need,
};
use handturn::run::Frozen;
use handturn::{Cause, Error, Field as Of, List, Text as Title};
use maud::{Markup, html};

/// The row's value and id.
pub(super) const KEY: &str = "make";

/// Fields of the plate; an empty one is filled in.
const PLATE: [(&str, &str); 8] = [
    ("pl-ring", ""),
    ("pl-drill", ""),
    ("pl-drilling", "0.05"),
    ("pl-rim", ""),
    ("pl-rings", ""),
    ("pl-web", "0.75"),
    ("pl-multiple", "1"),
    ("pl-by", "nearest"),
];
pub(super) const NAMES: &[&Names] = &[&PLATE, &budget::SOURCES];

/// What `question` lacks on `head`, where a plate for it can be made.
pub(super) fn lack(question: &Question, head: &Head) -> Option<Need> {
    let need = need(question, head).ok()?;
    let holes = bounds::HOLES.check(need.holes.into()).is_ok();
    (need.owned.is_none() && holes && !head.plates.is_empty()).then_some(need)
}

/// The holes of a plate for `question`, where it would need more than a circle can have.
pub(super) fn too_many(question: &Question, head: &Head) -> Option<u32> {
    let need = need(question, head).ok()?;
    (need.owned.is_none() && need.holes > bounds::HOLES.greatest).then_some(need.holes)
}

/// A plate as its fields plan it.
struct Made {
    ring: Ring,
    strays: Length,
    rim: Option<Length>,
    fit: Fit,
    ladder: Ladder,
}

/// The plan in force, if any, and what is wrong with it as typed.
pub(super) struct Plan {
    need: Need,
    made: Option<Made>,
    wrong: Option<Wrong>,
}

/// Plans the plate for what `worked` lacks.
pub(super) fn plan(worked: &Worked, need: Need) -> Plan {
    let (made, wrong) = in_force(worked.fields, NAMES, |text| make(worked, need, text));
    Plan { need, made, wrong }
}

fn make(worked: &Worked, need: Need, text: Given) -> Result<Made, Wrong> {
    let head = worked.head;
    let multiple =
        text.count("pl-multiple", bounds::TIMES).map_err(|(n, e)| (n, e.of(Of::Holes)))?;
    let holes = need.holes.saturating_mul(multiple);
    bounds::HOLES.check(holes.into()).map_err(|e| ("pl-multiple", e))?;
    let drill = match text.length_if("pl-drill", Of::Drill)? {
        Some(drill) => drill,
        None => head.pin.unwrap_or(Length::from_mm(Fraction::new(8, 5).unwrap_or(Fraction::ONE))),
    };
    let mut rings = List::new();
    for radius in lengths(text.get("pl-rings"), Of::Ring).map_err(|e| ("pl-rings", e))? {
        let most = u16::try_from(bounds::MAX_CIRCLES).unwrap_or(u16::MAX);
        let full = Error::new(Of::Ring, Cause::TooMany { most });
        rings.push((radius, drill)).map_err(|_| ("pl-rings", full))?;
    }
    let rim = text.length_if("pl-rim", Of::Ring)?;
    let web = text.length("pl-web", Of::Length)?;
    let blank = Blank { rim, rings, web, pin: head.pin, reach: head.reach };
    let at = |error: Error| match error.field {
        Of::Drill => ("pl-drill", error),
        Of::Holes => ("pl-multiple", error),
        Of::Source => ("", error),
        Of::Ring if error.cause == Cause::Conflict && !text.is_empty("pl-rings") => {
            ("pl-rings", error)
        }
        _ => ("pl-ring", error),
    };
    let radius = match text.length_if("pl-ring", Of::Ring)? {
        Some(radius) => radius,
        None => ring::propose(holes, drill, &blank)
            .and_then(|found| found.ok_or(Error::new(Of::Ring, Cause::Conflict)))
            .map_err(at)?,
    };
    let ring = Ring { holes, radius, drill };
    let fit = ring::check(&ring, &blank).map_err(at)?;
    let strays = text.length("pl-drilling", Of::Drill)?;
    let making = Making {
        question: worked.question,
        multiple,
        ring: radius,
        drilling: strays,
        first: if text.get("pl-by") == "least" { None } else { nearest(head, holes) },
        sources: budget::sources(text)?,
        ..Making::default()
    };
    let ladder = ladder(head, &making).map_err(|error| match error.field {
        Of::Drill => ("pl-drilling", error),
        _ => at(error),
    })?;
    Ok(Made { ring, strays, rim, fit, ladder })
}

/// The circle of `head` that comes nearest to `holes` in a turn, exactly where one does.
fn nearest(head: &Head, holes: u32) -> Option<Way> {
    let question = Question::Parts(Parts { count: holes, every: 1 });
    let circles = (0_u8..).zip(&head.plates).flat_map(|(plate, side)| {
        side.circles.iter().map(move |circle| CircleAt { plate, holes: circle.holes })
    });
    let ways = circles.flat_map(|circle| {
        let way = Holes { circle, ratio: head.ratio, arms: head.arms };
        [Way::Plain(way), Way::NearestHole(way)]
    });
    let worst = |way: &Way| way.errors(&question).map(|errors| errors.worst).ok();
    let good = ways.filter(|way| way.check(&question, head).is_ok());
    good.filter_map(|way| Some((worst(&way)?, way)))
        .min_by_key(|(worst, _)| *worst)
        .map(|(_, way)| way)
}

impl Made {
    /// The head with the new plate on it.
    fn head(&self, head: &Head) -> Head {
        fitted(head, Circle { holes: self.ladder.circle.holes, radius: Some(self.ring.radius) })
    }

    /// The first move with the new plate.
    fn leg(&self, question: &Question) -> Option<Leg> {
        self.ladder.work.step(question, 0).ok()?.legs.first().copied()
    }

    /// What rounding and drilling make of `budget`: greatest, and between neighbours.
    fn made_here(budget: &Budget, sources: &[Source]) -> (f64, f64) {
        let ours = budget.terms.iter().filter(|term| sources.contains(&term.source));
        ours.fold((0.0, 0.0), |(total, adjacent), term| {
            (total + term.sizes.total.value, adjacent + term.sizes.adjacent.value)
        })
    }
}

impl Plan {
    /// The ring that is drilled.
    pub(super) fn drilled(&self) -> Option<paper::Drilled> {
        self.made.as_ref().map(|made| paper::Drilled { ring: made.ring, rim: made.rim })
    }

    /// What the work has with the last plate that pays.
    pub(super) fn work(&self) -> Option<&Budget> {
        last(&self.made.as_ref()?.ladder).map(|last| &last.work)
    }

    /// What rounding and drilling of the first plate leave at the work.
    pub(super) fn within(&self) -> Option<Errors> {
        let first = self.made.as_ref()?.ladder.generations.first()?;
        let (worst, adjacent) = Made::made_here(&first.work, &[Source::Rounding, Source::Drilling]);
        let [worst, adjacent] = [worst, adjacent].map(says::angle);
        Some(Errors { worst, adjacent, ..Errors::NONE })
    }
}

/// The row, and its panel where it is open.
pub(super) fn row(worked: &Worked, rank: usize, plan: &Plan) -> Markup {
    let within = plan.within();
    let then = plan.made.as_ref().and_then(|made| made.leg(&worked.question));
    let then = then.map_or_else(String::new, |leg| moves::phrase(&[leg], None).line());
    let holes = plan.made.as_ref().map_or(plan.need.holes, |made| made.ring.holes);
    let row = ways::Row {
        rank,
        key: KEY,
        name: says::MAKE,
        line: says::drill_then(holes, &then),
        mark: within.as_ref().map_or_else(|| html! {}, mark),
        aside: within.as_ref().map_or_else(|| html! {}, |errors| ways::beside(worked, errors)),
    };
    row.drawn(worked.makes().then(|| panel(worked, plan)))
}

pub(super) fn panel(worked: &Worked, plan: &Plan) -> Markup {
    let form = Form { fields: worked.fields, names: NAMES, wrong: plan.wrong.as_ref() };
    html! {
        @match &plan.made {
            Some(made) => {
                (made_panel(worked, made))
                (put_button(worked.fields, "divide"))
            }
            None => @if let Some((_, error)) = &plan.wrong { (caution(html! { (said(error, "").wrong) })) },
        }
        @if let (Some(("", error)), Some(_)) = (&plan.wrong, &plan.made) {
            (caution(html! { (said(error, "").wrong) }))
        }
        (fields(form, plan))
        @if let Some(drilled) = plan.drilled() { (paper::sheets(worked.fields, &drilled, false)) }
        @if let Some(made) = &plan.made {
            details id="pl-budget-made" {
                summary { (says::BUDGET) }
                @if let Some(last) = last(&made.ladder) { (budget::table(&last.work, worked.head.work_diameter)) }
            }
        }
    }
}

/// The last plate that pays.
fn last(ladder: &Ladder) -> Option<&Generation> {
    ladder.generations.get(usize::from(ladder.enough).saturating_sub(1))
}

fn made_panel(worked: &Worked, made: &Made) -> Markup {
    let leg = made.leg(&worked.question);
    let phrase = leg.map(|leg| moves::phrase(&[leg], None));
    html! {
        p.big {
            (says::drill(made.ring.holes)) " "
            @if let Some(phrase) = &phrase {
                @for (k, (text, large)) in phrase.0.iter().enumerate() {
                    @if k > 0 && !text.starts_with(',') { " " }
                    @if *large { (text) } @else { span.u { (text) } }
                }
            }
        }
        (caution(html! { (says::CARE) " " (says::MAKERS) }))
        div.two {
            div.do {
                @for (number, generation) in made.ladder.generations.iter().take(made.ladder.enough.into()).enumerate() {
                    (drilling(worked, made, number, generation))
                }
                p.sub2 { (says::FIT) " " @if let Some(leg) = &leg { (moves::arms(leg)) } }
                div.acts { button.btn id="pl-run-work" type="button" data-do="run" data-value="work" { (says::RUN_WORK) } }
            }
            div.figures {
                @if let Some(leg) = &leg {
                    figure.draw {
                        (plate::drawing(&plate::PlateView { leg, circles: &[], counted: true }, &moves::drawing(leg, None)))
                        figcaption.why { (says::new_plate(made.ring.holes)) }
                    }
                }
            }
        }
        (by_hand(worked, made))
        (brings(worked, made))
    }
}

/// What is done to drill one plate.
fn drilling(worked: &Worked, made: &Made, number: usize, generation: &Generation) -> Markup {
    let question = Question::Parts(made.ladder.parts);
    let legs = generation.way.step(&question, 0).map(|step| step.legs).unwrap_or_default();
    let (line, circle) = match &generation.way {
        Way::Plain(way) | Way::NearestHole(way) => {
            let circle = says::circle(worked.head.plates.len(), number, way.circle);
            (
                legs.first()
                    .map(|leg| moves::phrase(&[*leg], spread(&generation.way, &question)).line()),
                circle,
            )
        }
        _ => (Some(moves::phrase(&legs, None).line()), None),
    };
    let which = number.to_string();
    html! {
        h3 { (says::plate_number(number)) }
        ol.steps {
            li { (says::blank_on(number, circle)) }
            li { (says::drill_by(made.ring.holes, &generation.way, &line.unwrap_or_default())) " "
                @if number == 0 {
                    @if let Ok(pins) = disks::in_ring(made.ring.holes, 1, twice(made.ring.radius), made.ring.drill) {
                        (says::ring_drill(made.ring.radius, made.ring.drill, pins.apart.value))
                    }
                } @else { (says::SAME_RING) }
            }
        }
        div.acts { button.btn.go id=(["pl-run-", &which].concat()) type="button" data-do="run" data-value=(which) { (says::RUN_DRILLING) } }
    }
}

/// The fewest and the most holes of a move that comes out as one of two.
fn spread(way: &Way, question: &Question) -> Option<(u32, u32)> {
    let Way::NearestHole(at) = way else { return None };
    let holes = i64::from(at.circle.holes);
    let turns = at.ratio.over(i64::from(question.parts()?)).ok()?;
    let few = u32::try_from(turns.times(holes).ok()?.floor()).ok()?;
    Some((few, few + 1))
}

pub(super) fn twice(radius: Length) -> Length {
    radius.mm().times(2).map_or(radius, Length::from_mm)
}

/// The figures of the first plate, to be checked on paper.
fn by_hand(worked: &Worked, made: &Made) -> Markup {
    let Some(first) = made.ladder.generations.first() else { return html! {} };
    let of = |budget: &Budget, source| Made::made_here(budget, &[source]);
    let setting = of(&first.plate, Source::Rounding);
    let strays = of(&first.plate, Source::Drilling);
    let work = Made::made_here(&first.work, &[Source::Rounding, Source::Drilling]);
    let lines = says::working(&says::Working {
        ratio: worked.head.ratio,
        setting,
        strays,
        radius: made.ring.radius,
        drilling: made.strays,
        apart: of(&first.work, Source::Rounding).1,
        work,
        stride: made.leg(&worked.question).map_or(0, |leg| leg.spaces),
    });
    html! {
        div.two.wide {
            div {
                h3 { (words::BY_HAND) }
                ul.work {
                    @for line in lines { li { (line) } }
                    li { (says::at_radius(worked.head.work_diameter, work.0)) }
                }
            }
            dl.facts {
                (about(says::WEB_LEFT, made.fit.web_mm.value))
                @if let Some(left) = made.fit.beside { (length(says::BESIDE, left)) }
                @if let Some(left) = made.fit.to_rim { (length(says::TO_RIM, left)) }
                @if let Some(play) = made.fit.play { (length(says::PIN_PLAY, play)) }
                @if let Ok(pins) = disks::in_ring(made.ring.holes, 1, twice(made.ring.radius), made.ring.drill) {
                    (about(says::OVER_PINS, pins.over.value))
                }
            }
        }
    }
}

/// What each plate brings, and when another stops paying.
fn brings(worked: &Worked, made: &Made) -> Markup {
    let ladder = &made.ladder;
    let enough = usize::from(ladder.enough);
    let diameter = worked.head.work_diameter;
    html! {
        h3 { (says::PLATES) }
        p.why { (says::PREDICTED) }
        div.scroll tabindex="0" role="region" aria-label=(says::PLATES) {
            table.lim {
                thead { tr { th scope="col" { (says::PLATE) } th scope="col" { (says::ITS_HOLES) } th scope="col" { (says::WORK) } th scope="col" { (words::BETWEEN) } th scope="col" { (says::WORK_RMS) } } }
                tbody {
                    @for (number, one) in ladder.generations.iter().take(enough + 1).enumerate() {
                        tr {
                            th scope="row" { (says::plate_number(number)) }
                            td { (words::seconds(says::angle(one.plate.sum.total.value))) span.in { (budget::arc(one.plate.sum.total, twice(made.ring.radius))) } }
                            @for size in [one.work.sum.total, one.work.sum.adjacent, one.work.sum.rms] {
                                td { (words::seconds(says::angle(size.value))) span.in { (budget::arc(size, diameter)) } }
                            }
                        }
                    }
                }
            }
        }
        @for (number, one) in ladder.generations.iter().take(enough + 1).enumerate().skip(1) {
            p.why { (says::pays(number, one.gain, number < enough)) }
        }
        @if !worked.head.ratio.is_whole() { p.why { (says::ONE_ONLY) } }
    }
}

/// What is typed for the plate.
fn fields(form: Form, plan: &Plan) -> Markup {
    let wrong = |names: &Names| {
        form.wrong.is_some_and(|(wrong, _)| names.iter().any(|(name, _)| name == wrong))
    };
    let filled = |length: fn(&Made) -> Length| {
        plan.made.as_ref().map(|made| words::decimal(length(made).mm(), 3) + " mm")
    };
    html! {
        details id="pl-fields" open[wrong(&PLATE)] {
            summary { (says::RING_DRILL) }
            p.why { (says::START) }
            div.pair {
                (form.filled("pl-ring", says::RING, filled(|made| made.ring.radius)))
                (form.filled("pl-drill", says::DRILL, filled(|made| made.ring.drill)))
                (form.text("pl-drilling", says::DRILLING))
                (form.text("pl-web", says::WEB))
                (form.text("pl-rim", says::RIM))
                (form.text("pl-rings", says::RINGS))
                (form.number("pl-multiple", says::MULTIPLE))
                div {
                    p.lab { (says::FIRST_BY) }
                    (form.choice("pl-by", says::FIRST_BY, &[("nearest", says::NEAREST), ("least", says::LEAST)]))
                }
            }
        }
        (budget::causes(form, wrong(&budget::SOURCES)))
    }
}

/// The Run that drills plate `which`, from 0, or cuts the work with the last.
pub(super) fn frozen(worked: &Worked, asked: &Asked, which: &str) -> Option<Frozen> {
    let plan = plan(worked, worked.lack?);
    // Only what stands there as typed is run.
    let made = plan.made.filter(|_| plan.wrong.is_none())?;
    let new = || made.head(worked.head);
    if which == "work" {
        return Frozen::new(asked.clone(), new(), made.ladder.work).ok();
    }
    let number: usize = which.parse().ok()?;
    let way = made.ladder.generations.get(number)?.way;
    let head = if number == 0 { worked.head.clone() } else { new() };
    let mut frozen = Frozen::new(Asked::Parts(made.ladder.parts), head, way).ok()?;
    frozen.title = Title::new(Of::Title, &says::run_title(made.ring.holes, number)).ok()?;
    Some(frozen)
}

/// Keeps the fields where they read well and, for a plate that is lacking, make one.
pub(super) fn keep(fields: &mut Fields, name: &str) {
    let ours = NAMES.iter().flat_map(|names| names.iter()).any(|(ours, _)| *ours == name);
    if ours && reads(fields).unwrap_or(false) {
        NAMES.iter().for_each(|names| steps::keep(fields, names));
    }
}

fn reads(fields: &Fields) -> Option<bool> {
    let (asked, head) = (ask::last_good(fields)?, owned::head(fields));
    let worked = work_out(fields, &asked, &head).ok()?;
    let Some(need) = worked.lack else {
        return Some(in_force(fields, NAMES, budget::sources).1.is_none());
    };
    Some(plan(&worked, need).wrong.is_none())
}
