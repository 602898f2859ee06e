//! Measure it: which wires, what they may read, and what a reading means.
use super::ask::Asked;
use super::jobs::Jobs;
use super::{cut, table};
use crate::draw::wires as draw;
use crate::fields::Fields;
use crate::owned::lists::{self, Stock};
use crate::pieces::{Field, caution, input, owned_strip};
use crate::room::steps::{self, Form, Wrong};
use crate::words::{errors::said, thread as words};
use handturn::measure::Length;
use handturn::measure::read::{self, Unit};
use handturn::measure::write::rounded;
use handturn::number::Approx;
use handturn::thread::limits::Limits;
use handturn::thread::still::{Still, Verdict, still};
use handturn::thread::wires::{self, Measured, Over};
use handturn::thread::{lead, ready};
use handturn::{Error, Field as Of};
use maud::{Markup, html};

/// The step's field with what it reads as until something is typed.
pub(super) const NAMES: [(&str, &str); 1] = [("th-wire", "")];

/// A wire on a thread: what it may read.
struct Worked {
    measured: Measured,
    wire: Length,
    /// One of those owned, or typed; else the best one stands for it.
    serves: bool,
    range: wires::Range,
    /// At the greatest and the least pitch diameter.
    most: Over,
    least: Over,
}

fn typed<'a>(fields: &'a Fields, name: &str) -> &'a str {
    steps::typed(fields, &NAMES, name)
}

/// What is worked out with the texts that `text` gives.
fn work_out(fields: &Fields, shown: &Asked, wire: &str) -> Result<Worked, Wrong> {
    let limits = shown.limited.as_ref().map(|(_, limits)| limits);
    let at = |name: &'static str| move |error: Error| (name, error);
    let measured = ready::measured(&shown.thread, limits).map_err(at(""))?;
    let range = wires::range(&measured).map_err(at(""))?;
    let owned = lists::lengths(fields, Stock::Wires);
    let wire = match wire.trim() {
        "" => wires::choose(&measured, &owned).map_err(at(""))?,
        typed => {
            let wire = read::length(typed, Unit::Mm).map_err(|e| ("th-wire", e.of(Of::Wire)))?;
            Some(wire)
        }
    };
    // Where none of those owned serves, the best one is shown.
    let serves = wire.is_some();
    let wire = match wire {
        Some(wire) => wire,
        None => best(&measured).ok_or(("", Error::new(Of::Wire, handturn::Cause::Conflict)))?,
    };
    range.check(handturn::number::float::of(wire.mm())).map_err(at("th-wire"))?;
    let over = |at| wires::over(&measured, wire, at).map_err(|e| ("th-wire", e));
    let (most, least) = (over(measured.pitch_greatest)?, over(measured.pitch_least)?);
    Ok(Worked { measured, wire, serves, range, most, least })
}

/// The best wire to the nearest hundredth of a millimetre.
fn best(measured: &Measured) -> Option<Length> {
    let best = wires::best(measured.half_angle, measured.pitch).ok()?;
    rounded(best, 2).map(Length::from_mm)
}

/// Keeps the fields, where they read, as last read well.
pub(super) fn keep_good(fields: &mut Fields, shown: &Asked) {
    if work_out(fields, shown, typed(fields, "th-wire")).is_ok() {
        steps::keep(fields, &NAMES);
    }
}

/// The step as markup.
pub(super) fn panel(fields: &Fields, jobs: &Jobs, shown: &Asked) -> Markup {
    if shown.internal {
        return nut(shown);
    }
    let now = work_out(fields, shown, typed(fields, "th-wire"));
    let wrong = now.as_ref().err().copied();
    let last = || work_out(fields, shown, steps::last(fields, &NAMES, "th-wire"));
    let worked = now.ok().or_else(|| last().ok());
    let form = Form { fields, names: &[&NAMES], wrong: wrong.as_ref() };
    html! {
        @if let Some(("", error)) = &wrong { (caution(html! { (words::no_wires(error)) })) }
        @if let Some(worked) = &worked { (answer(fields, jobs, shown, worked)) }
        div.wires-owned {
            (owned_strip(fields, &[Stock::Wires]))
            (form.text("th-wire", words::WIRE_USED))
        }
    }
}

fn answer(fields: &Fields, jobs: &Jobs, shown: &Asked, worked: &Worked) -> Markup {
    let [most, least] = [&worked.most, &worked.least].map(|over| over.three);
    let mm = |over: Approx| words::about_mm(over.value);
    let inch = |over: Approx| words::about(over.value / 25.4, 4);
    let greatest = handturn::number::float::of(worked.measured.pitch_greatest.mm());
    let wire = handturn::number::float::of(worked.wire.mm());
    html! {
        div.two {
            figure.draw.plate {
                @if let Ok(drawing) = draw::drawing(&shown.thread, wire, most.value, greatest, (&mm(least), &mm(most))) { (drawing) }
            }
            div.figures {
                div {
                    p.lab { (words::over_wires(worked.wire)) }
                    p.answer-big.gears { (mm(least)) " " small { (words::TO) } " " (mm(most)) " " small { "mm" } }
                    p.answer-mid { (inch(least)) " " small { (words::TO) } " " (inch(most)) " " small { "in" } }
                    @if !worked.serves { p.care { (words::NONE_SERVES) } }
                    @if shown.limited.is_none() { p.why { (words::BASIC_ONLY) } }
                }
                (reading(fields, jobs, shown, worked))
                (by_hand(worked))
                p.why { (words::wire_range(&worked.measured, &worked.range, worked.wire)) }
                (leads(shown, worked))
            }
        }
    }
}

/// The reading, and what is left by it.
fn reading(fields: &Fields, jobs: &Jobs, shown: &Asked, worked: &Worked) -> Markup {
    let text = fields.get("th-reading");
    let found = (!text.trim().is_empty()).then(|| left(fields, shown, worked, text));
    let error = found.as_ref().and_then(|found| found.as_ref().err());
    let error = error.map(|error| said(error, text));
    let entry =
        Field { name: "th-reading", label: words::MY_READING, value: text, keys: "decimal", error };
    html! {
        div.field.big-field.reading {
            label.lab for="th-reading" { (words::MY_READING) }
            (input(&entry))
            (crate::pieces::error_of(&entry))
        }
        @if let Some(Ok((diameter, still))) = &found {
            (verdict(*diameter, still))
            @if jobs.open.is_some() {
                div.acts { button.btn type="button" data-do="th-so-far" data-value=(words::about_mm(diameter.value)) { (words::TO_THE_PASSES) } }
            }
        }
    }
}

fn left(
    fields: &Fields,
    shown: &Asked,
    worked: &Worked,
    text: &str,
) -> Result<(Approx, Still), Error> {
    let reading = read::length(text, Unit::Mm)?;
    let diameter = wires::pitch_diameter(&worked.measured, worked.wire, reading)?;
    let measured = &worked.measured;
    let set_over = cut::set_over(fields, shown);
    let still = still(diameter, measured.pitch_least, measured.pitch_greatest, set_over, false)?;
    Ok((diameter, still))
}

/// What is left, or that it is past.
pub(super) fn verdict(diameter: Approx, still: &Still) -> Markup {
    let care = still.verdict == Verdict::TooFar;
    html! {
        div.verdict.care[care] role="status" {
            p.verdict-big { (words::verdict(still)) }
            p { (words::still(still)) }
            p.why { (words::PITCH_DIAMETER) " " (words::about_mm(diameter.value)) " mm, " (words::about(diameter.value / 25.4, 4)) " in." }
        }
    }
}

fn by_hand(worked: &Worked) -> Markup {
    html! {
        div {
            h3 { (crate::words::BY_HAND) }
            ul.work {
                li { (words::wire_formula(&worked.measured)) }
                li { (words::wire_line(&worked.measured, worked.wire, worked.measured.pitch_greatest, &worked.most)) }
                li { (words::wire_line(&worked.measured, worked.wire, worked.measured.pitch_least, &worked.least)) }
            }
        }
    }
}

/// Whether the lead angle matters here.
fn leads(shown: &Asked, worked: &Worked) -> Markup {
    let angle =
        shown.thread.lead().and_then(|lead| lead::lead_angle(lead, worked.measured.pitch_greatest));
    html! {
        @if let Ok(angle) = angle { p.why { (words::lead_matters(angle.value, &worked.most)) } }
    }
}

/// A nut is not measured over wires.
fn nut(shown: &Asked) -> Markup {
    let limits: Option<&(_, Limits)> = shown.limited.as_ref();
    html! {
        p { (words::NUT_BY_GAUGE) }
        @if let Some((class, limits)) = limits { (table::limits(shown.thread.form.kind, *class, limits)) }
    }
}
