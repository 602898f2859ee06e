//! Cut it: the tool and how it is fed in, the dial, and the passes.
use super::ask::Asked;
use super::job::{Job, VERSION};
use super::jobs::Jobs;
use super::{extra, passes, size};
use crate::fields::Fields;
use crate::owned::lists::{self, Stock};
use crate::pieces::{caution, owned_strip, segmented};
use crate::room::steps::{self, Form, Wrong, about, fact, length};
use crate::words::{errors::said, thread as words};
use handturn::measure::read::{self, Unit};
use handturn::measure::write::rounded;
use handturn::measure::{Angle, Length};
use handturn::thread::dial::{Dial, Reads, Runs};
use handturn::thread::infeed::{Depths, Feed, Infeed, Nose, infeed};
use handturn::thread::passes::Plan;
use handturn::thread::ready;
use handturn::{Error, Field as Of, bounds};
use maud::{Markup, html};

/// The step's fields with what they read as until something is typed; an empty one
/// is filled from the thread.
pub(super) const NAMES: [(&str, &str); 9] = [
    ("th-nose", ""),
    ("th-nose-mm", ""),
    ("th-feed", "modified"),
    ("th-short", "0.5"),
    ("th-work", ""),
    ("th-first", ""),
    ("th-least", ""),
    ("th-spring", "1"),
    ("th-blind", ""),
];

type Text<'t> = &'t dyn Fn(&'static str) -> &'t str;

/// How a thread is cut.
pub(super) struct Setup {
    pub(super) ask: Infeed,
    pub(super) depths: Depths,
    pub(super) plan: Plan,
    /// The dial is in inches.
    pub(super) inch: bool,
}

pub(super) fn typed<'a>(fields: &'a Fields, name: &str) -> &'a str {
    steps::typed(fields, &NAMES, name)
}

/// The set-over of the slide from square across, as it is set now.
pub(super) fn set_over(fields: &Fields, shown: &Asked) -> Angle {
    let fed = feed(&|name| typed(fields, name), shown);
    fed.and_then(|(feed, half)| feed.set_over(half).map_err(|e| ("th-short", e)))
        .unwrap_or(Angle::ZERO)
}

fn feed<'t>(text: Text<'t>, shown: &Asked) -> Result<(Feed, Angle), Wrong> {
    let half = ready::half_angle(&shown.thread).map_err(|e| ("th-short", e))?;
    let feed = match text("th-feed") {
        // Square flanks leave no way but straight in.
        _ if half == Angle::ZERO => Feed::Plunge,
        "plunge" => Feed::Plunge,
        "flank" => Feed::Flank,
        _ => Feed::Modified { short: read::angle(text("th-short")).map_err(|e| ("th-short", e))? },
    };
    Ok((feed, half))
}

/// How the thread is cut by the texts that `text` gives.
fn set_up<'t>(fields: &Fields, shown: &Asked, text: Text<'t>) -> Result<Setup, Wrong> {
    let limits = shown.limited.as_ref().map(|(_, limits)| limits);
    let at = |name: &'static str| move |error: Error| (name, error);
    let typed_length = |name: &'static str, field: Of, unit: Unit| {
        read::length(text(name), unit).map_err(|e| (name, e.of(field)))
    };
    let (feed, half) = feed(text, shown)?;
    let usual = ready::nose(&shown.thread).map_err(at("th-nose-mm"))?;
    let (Nose::Flat(own) | Nose::Radius(own)) = usual;
    let size = match text("th-nose-mm").trim() {
        "" => own,
        _ => typed_length("th-nose-mm", Of::Tool, Unit::Mm)?,
    };
    let nose = match (text("th-nose"), usual) {
        ("flat", _) | ("", Nose::Flat(_)) => Nose::Flat(size),
        _ => Nose::Radius(size),
    };
    let work = match text("th-work").trim() {
        "" => ready::blank(&shown.thread, limits, shown.internal).map_err(at("th-work"))?,
        _ => typed_length("th-work", Of::Diameter, Unit::Mm)?,
    };
    let ask = ready::infeed(&shown.thread, limits, shown.internal, work, nose, feed)
        .map_err(at("th-work"))?;
    let depths = infeed(&ask).map_err(|error| match error.field {
        Of::Tool => ("th-nose-mm", error),
        Of::Angle => ("th-short", error),
        _ => ("th-work", error),
    })?;
    let square = depths.set_over == Angle::ZERO;
    let nothing = ("", Error::new(Of::SlideDial, handturn::Cause::Empty));
    let (screw, inch) = lists::screw(fields, slide(square)).ok_or(nothing)?;
    let unit = if inch { Unit::Inch } else { Unit::Mm };
    let division = screw.mark().map_err(at(""))?;
    let marks = screw.marks;
    let on_diameter = square && lists::text(fields, Stock::CrossReads) == "diameter";
    let reads = if on_diameter { Reads::Diameter } else { Reads::Travel };
    let depth = rounded(depths.along_slide, 4).map(Length::from_mm);
    let depth = depth.ok_or(("th-work", Error::new(Of::Diameter, handturn::Cause::Overflow)))?;
    let (first, least) = ready::cuts(depth).map_err(at("th-first"))?;
    let cut = |name: &'static str, usual: Length| match text(name).trim() {
        "" => Ok(usual),
        _ => typed_length(name, Of::Passes, unit),
    };
    let first = cut("th-first", first)?;
    let least = cut("th-least", least.min(first))?;
    let spring = read::count(text("th-spring"), bounds::SPRING_PASSES).map_err(at("th-spring"))?;
    let plan = Plan {
        depth,
        done: Length::from_mm(handturn::number::Fraction::ZERO),
        first,
        least,
        spring,
        half_angle: half,
        set_over: depths.set_over,
        nose,
        dial: Dial { division, reads, marks },
        dial_at: 0,
        runs: if shown.internal { Runs::Backwards } else { Runs::Forwards },
    };
    plan.count().map_err(|error| match error.field {
        Of::SlideDial => ("", error),
        _ if text("th-least").trim().is_empty() => ("th-first", error),
        _ => ("th-least", error),
    })?;
    Ok(Setup { ask, depths, plan, inch })
}

/// Keeps the fields, where they read, as last read well.
pub(super) fn keep_good(fields: &mut Fields, shown: &Asked) {
    if set_up(fields, shown, &|name| typed(fields, name)).is_ok() {
        steps::keep(fields, &NAMES);
    }
}

/// What a job freezes, as the form stands.
pub(super) fn job(fields: &Fields, shown: &Asked) -> Option<Job> {
    let setup = set_up(fields, shown, &|name| typed(fields, name)).ok()?;
    let measured = shown.limited.map(|(_, limits)| limits.pitch_diameter);
    let basic = shown.thread.pitch_diameter().ok()?;
    let low = measured.and_then(|range| range.min).unwrap_or(basic);
    let high = measured.and_then(|range| range.max).unwrap_or(basic);
    Some(Job {
        version: VERSION,
        title: words::job_title(
            &shown.name,
            shown.thread.hand,
            shown.limited.map(|(class, _)| words::class(class, shown.thread.form.kind)),
            shown.internal,
        ),
        plan: setup.plan,
        inch: setup.inch,
        internal: shown.internal,
        low: low.min(high),
        high,
        reverse: extra::nuts_stay_closed(fields, shown),
        blind: typed(fields, "th-blind") == "on",
    })
}

/// The step as markup.
pub(super) fn panel(fields: &Fields, jobs: &Jobs, shown: &Asked) -> Markup {
    if let Some(open) = &jobs.open {
        return passes::job(fields, open);
    }
    let now = set_up(fields, shown, &|name| typed(fields, name));
    let wrong = now.as_ref().err().copied();
    let last = |name: &'static str| steps::last(fields, &NAMES, name);
    let setup = now.ok().or_else(|| set_up(fields, shown, &last).ok());
    let form = Form { fields, names: &[&NAMES], wrong: wrong.as_ref() };
    html! {
        (passes::waiting(jobs))
        @if setup.is_none() {
            @if let Some((_, error)) = &wrong { (caution(html! { (said(error, "").wrong) })) }
        }
        div.two {
            div.figures {
                @if let Some(setup) = &setup { (passes::preview(setup, wrong.is_some())) }
                (size::tool(fields, shown, if shown.internal { Stock::Taps } else { Stock::Dies }))
            }
            div.figures {
                @if let Some(setup) = &setup { (how(shown, setup)) }
                (tool(form, shown, setup.as_ref()))
            }
        }
        (extra::section(fields, shown, setup.as_ref()))
    }
}

/// How the tool is fed: set-over, touching on, depths, and the working.
fn how(shown: &Asked, setup: &Setup) -> Markup {
    let depths = &setup.depths;
    let square = depths.set_over == Angle::ZERO;
    let (across, on_bed) =
        (words::from_square(depths.set_over), words::on_bed(depths.on_bed_scale));
    html! {
        div {
            h3.lead { (words::HOW_FED) }
            dl.facts {
                @if square {
                    (fact(words::TOP_SLIDE, words::SQUARE_ACROSS, &[]))
                } @else {
                    (fact(words::TOP_SLIDE, &across, &[&on_bed, words::swing(depths.swing)]))
                }
                (length(words::touch(shown.internal), setup.ask.work))
                (about(words::DEPTH_STRAIGHT, depths.straight.value))
                @if !square { (about(words::DEPTH_SLIDE, depths.along_slide.value)) }
                @if depths.widen.value > 0.0005 { (about(words::WIDEN, depths.widen.value)) }
            }
            details id="th-cut-working" {
                summary { (crate::words::BY_HAND) }
                ul.work { @for line in words::depth_lines(&setup.ask, depths) { li { (line) } } }
                p.why { (words::EQUAL_METAL) }
            }
        }
    }
}

/// The slide that feeds the tool in.
const fn slide(square: bool) -> Stock {
    if square { Stock::CrossSlide } else { Stock::TopSlide }
}

fn inch_of(setup: Option<&Setup>) -> bool {
    setup.is_some_and(|setup| setup.inch)
}

/// The fields of tool and dial.
fn tool(form: Form, shown: &Asked, setup: Option<&Setup>) -> Markup {
    let plan = setup.map(|setup| &setup.plan);
    let shows = |length: Length| {
        if inch_of(setup) { words::in_inches(length) } else { words::mm(length) }
    };
    let round = match (form.typed("th-nose"), plan.map(|plan| plan.nose)) {
        ("", Some(Nose::Flat(_))) => "flat",
        ("", _) => "round",
        (chosen, _) => chosen,
    };
    let nose = plan.map(|plan| match plan.nose {
        Nose::Flat(size) | Nose::Radius(size) => words::mm(size),
    });
    let square = set_over(form.fields, shown) == Angle::ZERO;
    let unit = if inch_of(setup) { "in" } else { "mm" };
    let label = |text: &str| [text, ", ", unit].concat();
    let (first, least) = (label(words::FIRST_CUT), label(words::LEAST_CUT));
    let owned: &[Stock] =
        if square { &[Stock::CrossSlide, Stock::CrossReads] } else { &[Stock::TopSlide] };
    html! {
        section.setup aria-label=(words::TOOL_AND_DIAL) {
            h3 { (words::TOOL_AND_DIAL) }
            (form.choice("th-feed", words::WAY_OF_INFEED, &[
                ("modified", words::MODIFIED), ("flank", words::FLANK), ("plunge", words::PLUNGE),
            ]))
            @if form.typed("th-feed") == "modified" { (form.text("th-short", words::SHORT_BY)) }
            (segmented("th-nose", words::NOSE, round, &[
                ("round", words::NOSE_RADIUS), ("flat", words::NOSE_FLAT),
            ]))
            div.pair {
                (form.filled("th-nose-mm", words::NOSE_MM, nose))
                (form.filled("th-work", words::work(shown.internal), setup.map(|setup| words::mm(setup.ask.work))))
            }
            (owned_strip(form.fields, owned))
            div.pair {
                (form.filled("th-first", &first, plan.map(|plan| shows(plan.first))))
                (form.filled("th-least", &least, plan.map(|plan| shows(plan.least))))
            }
            (form.number("th-spring", words::SPRING))
            p.why { (words::BLANK_FIELDS) }
        }
    }
}
