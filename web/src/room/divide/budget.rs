//! The error budget of the way that stands open: what each cause makes of it, what
//! dominates, the other ways by the same causes, and every position in a plot.
use super::{Worked, plate};
use crate::draw::budget as plot;
use crate::pieces::caution;
use crate::room::steps::{Form, Given, Names, Wrong, in_force};
use crate::words::{self, errors::said, plate as says};
use handturn::Field as Of;
use handturn::divide::Rated;
use handturn::measure::write::rounded;
use handturn::measure::{Angle, Length};
use handturn::number::{Approx, float};
use handturn::plate::{Budget, Sources, Sums, along, arc_mm, budget};
use maud::{Markup, html};

/// Sizes of the causes: common practice, to be replaced by what an indicator shows.
pub(super) const SOURCES: [(&str, &str); 9] = [
    ("pl-wheel", "30"),
    ("pl-worm", "10"),
    ("pl-hole", "0.02"),
    ("pl-pin", "0.02"),
    ("pl-plate-out", "0.01"),
    ("pl-reading", "1/4"),
    ("pl-same", "on"),
    ("pl-blank-out", "0.01"),
    ("pl-radius", "50"),
];
const NAMES: &[&Names] = &[&SOURCES];
/// Positions up to which the plot is drawn.
const MOST: u32 = 1000;

/// Puts one size of `of` into `to`.
type Put = fn(to: &mut Sources, of: &Sources);

/// The causes as typed.
pub(super) fn sources(text: Given) -> Result<Sources, Wrong> {
    let angle = |name| {
        let arcsec = text.number(name, Of::Source)?;
        Angle::from_arcsec(arcsec).map_err(|e| (name, e))
    };
    let length = |name| text.length(name, Of::Source);
    let sources = Sources {
        wheel: angle("pl-wheel")?,
        worm: angle("pl-worm")?,
        hole: length("pl-hole")?,
        pin_play: length("pl-pin")?,
        plate_run_out: length("pl-plate-out")?,
        reading: text.number("pl-reading", Of::Source)?,
        same_side: text.get("pl-same") == "on",
        blank_run_out: length("pl-blank-out")?,
        radius: text.length("pl-radius", Of::Ring)?,
    };
    // One after the other, so that the field that is refused is the one that says so.
    let mut so_far = Sources::NONE;
    let each: [(&str, Put); 8] = [
        ("pl-wheel", |to, of| to.wheel = of.wheel),
        ("pl-worm", |to, of| to.worm = of.worm),
        ("pl-hole", |to, of| to.hole = of.hole),
        ("pl-pin", |to, of| to.pin_play = of.pin_play),
        ("pl-plate-out", |to, of| to.plate_run_out = of.plate_run_out),
        ("pl-reading", |to, of| to.reading = of.reading),
        ("pl-blank-out", |to, of| to.blank_run_out = of.blank_run_out),
        ("pl-radius", |to, of| to.radius = of.radius),
    ];
    for (name, put) in each {
        put(&mut so_far, &sources);
        so_far.check().map_err(|e| (name, e))?;
    }
    Ok(sources)
}

/// The fields of the causes.
pub(super) fn causes(form: Form, open: bool) -> Markup {
    html! {
        details id="pl-causes" open[open] {
            summary { (says::CAUSES) }
            p.why { (says::START) }
            div.pair {
                (form.number("pl-wheel", says::WHEEL))
                (form.number("pl-worm", says::WORM))
                (form.text("pl-hole", says::HOLE))
                (form.text("pl-pin", says::PIN))
                (form.text("pl-plate-out", says::PLATE_OUT))
                (form.text("pl-blank-out", says::BLANK_OUT))
                (form.text("pl-reading", says::READING))
                (form.text("pl-radius", says::RADIUS))
            }
            label.tick {
                input type="checkbox" name="pl-same" checked[form.typed("pl-same") == "on"];
                (says::SAME_SIDE)
            }
        }
    }
}

/// The budget of the way that stands open, where it is asked for.
pub(super) fn section(worked: &Worked, rated: &Rated) -> Markup {
    let open = worked.fields.get("pl-budget") == "on";
    html! {
        div.fold id="budget" {
            button.btn id="pl-budget" type="button" data-do="pl-budget" data-value=(if open { "" } else { "on" }) aria-expanded=(open) { (says::BUDGET) }
            @if open { (opened(worked, rated)) }
        }
    }
}

fn opened(worked: &Worked, rated: &Rated) -> Markup {
    let (sources, wrong) = in_force(worked.fields, NAMES, sources);
    let form = Form { fields: worked.fields, names: NAMES, wrong: wrong.as_ref() };
    let sources = sources.unwrap_or_default();
    html! {
        p.why { (says::BUDGET_WHY) }
        @match budget(&worked.question, worked.head, &rated.way, &sources) {
            Ok(of) => {
                (table(&of, worked.head.work_diameter))
                (plotted(worked, rated, &sources))
            }
            Err(error) => (caution(html! { (said(&error, "").wrong) })),
        }
        (compared(worked, &sources))
        (causes(form, wrong.is_some()))
    }
}

/// Every cause with what it makes, all together, and what makes most.
pub(super) fn table(of: &Budget, diameter: Length) -> Markup {
    let share =
        |total: f64| if of.sum.total.value > 0.0 { total / of.sum.total.value } else { 0.0 };
    let dominant = of.dominant.and_then(|d| of.terms.iter().find(|term| term.source == d));
    let row = |name: &str, sizes: &Sums| {
        html! {
            tr {
                th scope="row" { (name) }
                @for size in [sizes.total, sizes.adjacent, sizes.rms] { td { (words::seconds(says::angle(size.value))) } }
                td { (arc(sizes.total, diameter)) }
            }
        }
    };
    html! {
        p.fact { @match dominant {
            Some(term) => (says::dominates(term.source, share(term.sizes.total.value))),
            None => (says::NO_ERROR),
        } }
        div.scroll tabindex="0" role="region" aria-label=(says::BUDGET) {
            table.lim {
                thead { tr { th scope="col" { (says::CAUSE) } th scope="col" { (says::WORST) } th scope="col" { (words::BETWEEN) } th scope="col" { (says::RMS) } th scope="col" { (says::AT_WORK) } } }
                tbody {
                    @for term in &of.terms { (row(says::source(term.source), &term.sizes)) }
                    (row(says::ALL_CAUSES, &of.sum))
                }
            }
        }
        p.why { (words::error_at(&words::decimal(diameter.mm(), 3))) }
    }
}

/// An error in seconds as an arc on a circle.
pub(super) fn arc(error: Approx, diameter: Length) -> String {
    let mm = rounded(arc_mm(error, diameter), 7);
    mm.map_or_else(String::new, |mm| words::significant(mm, 2) + " mm")
}

/// Every position: the rounding, and how far all causes reach.
fn plotted(worked: &Worked, rated: &Rated, sources: &Sources) -> Markup {
    let positions = worked.question.positions();
    if positions > MOST {
        return html! {};
    }
    let mut all = Vec::new();
    let looked = along(&worked.question, worked.head, &rated.way, sources, &mut |share| {
        let rounding = share.rounding.arcsec().map_or(0.0, float::of);
        all.push((rounding, rounding.abs() + share.most.value));
        Ok(())
    });
    if looked.is_err() {
        return html! {};
    }
    let most = all.iter().fold(0.0_f64, |most, (_, reach)| most.max(*reach));
    let most = words::seconds(says::angle(most));
    let name = says::plot(positions, &words::seconds(rated.errors.worst), &most);
    html! { figure.draw-wide { (plot::drawing(&all, &most, &name)) figcaption.why { (name) "." } } }
}

/// The ways beside each other by the same causes.
fn compared(worked: &Worked, sources: &Sources) -> Markup {
    let ranked = worked.answer.ranked(worked.order);
    let each = ranked.iter().filter_map(|group| {
        let way = group.ways(worked.order).first()?.way;
        let of = budget(&worked.question, worked.head, &way, sources).ok()?;
        Some((words::kind(group.kind), of.sum))
    });
    let plan = worked.lack.map(|need| plate::plan(worked, need));
    let made = plan.as_ref().and_then(plate::Plan::work).map(|of| (says::MAKE, of.sum));
    let mut rows: Vec<(&str, Sums)> = each.chain(made).collect();
    if rows.len() < 2 {
        return html! {};
    }
    rows.sort_by(|a, b| a.1.total.value.total_cmp(&b.1.total.value));
    html! {
        h3 { (says::COMPARED) }
        dl.facts {
            @for (name, sum) in &rows {
                div { dt { (name) } dd { b { (words::seconds(says::angle(sum.total.value))) } span.in { (words::NEIGHBOURS) " " (words::seconds(says::angle(sum.adjacent.value))) } } }
            }
        }
    }
}
