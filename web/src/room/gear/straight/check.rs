//! Check: the tooth by caliper, a span over several, over two pins; and with its mate.
use super::{Asked, blank, pair};
use crate::draw::tooth::{self as draw, Laid};
use crate::fields::Fields;
use crate::owned::lists::{self, Stock};
use crate::pieces::{caution, owned_strip};
use crate::room::steps::{self, Form, Given, Names, Wrong};
use crate::words::errors::said;
use crate::words::gear::check as says;
use handturn::bounds::Bound;
use handturn::gear::{Spur, chordal, pins, span};
use handturn::measure::Length;
use handturn::measure::write::rounded;
use handturn::number::float;
use handturn::{Cause, Error, Field as Of};
use maud::{Markup, html};

const SPAN: &[&Names] = &[&[("ge-over", "")]];
const PINS: &[&Names] = &[&[("ge-pin", "")]];
/// Teeth that a span can take in.
const TEETH: Bound = Bound { field: Of::Span, least: 1, greatest: 5_000 };

/// A pin in the gaps: what it reads.
struct Over {
    pin: Length,
    /// One of those owned, or typed; else the best one stands for it.
    serves: bool,
    range: pins::Range,
    over: pins::Over,
}

fn spans(text: Given, wheel: &Spur, outside: Length) -> Result<span::Span, Wrong> {
    let at = |error| ("ge-over", error);
    let teeth = if text.is_empty("ge-over") { None } else { Some(text.count("ge-over", TEETH)?) };
    span::over(wheel, outside, teeth).map_err(at)
}

fn over_pins(fields: &Fields, text: Given, wheel: &Spur, outside: Length) -> Result<Over, Wrong> {
    let at = |error| ("ge-pin", error);
    let range = pins::range(wheel, outside).map_err(|e| ("", e))?;
    let owned = lists::lengths(fields, Stock::Pins);
    let chosen = match text.length_if("ge-pin", Of::Pin)? {
        Some(pin) => Some(pin),
        None => pins::choose(wheel, outside, &owned).map_err(|e| ("", e))?,
    };
    // Where none of those owned serves, the best one is shown.
    let best = || rounded(range.best, 2).map(Length::from_mm);
    let pin = chosen.or_else(best).ok_or(("", Error::new(Of::Pin, Cause::Overflow)))?;
    let over = pins::over(wheel, outside, pin).map_err(at)?;
    Ok(Over { pin, serves: chosen.is_some(), range, over })
}

/// Keeps the step's fields, where they read.
pub(super) fn keep_good(fields: &mut Fields, asked: &Asked, name: &str) {
    if let Some(outside) = blank::outside_in_force(fields, asked) {
        steps::keep_good(fields, SPAN, name, |text| spans(text, &asked.wheel, outside));
        let before = fields.clone();
        steps::keep_good(fields, PINS, name, |text| {
            over_pins(&before, text, &asked.wheel, outside)
        });
    }
    pair::keep_good(fields, asked, name);
}

/// Teeth in the span in force.
pub(super) fn span_in_force(fields: &Fields, wheel: &Spur, outside: Length) -> Option<u32> {
    let (span, _) = steps::in_force(fields, SPAN, |text| spans(text, wheel, outside));
    span.map(|span| span.teeth)
}

/// The pin in force.
pub(super) fn pin_in_force(fields: &Fields, wheel: &Spur, outside: Length) -> Option<Length> {
    let (over, _) = steps::in_force(fields, PINS, |text| over_pins(fields, text, wheel, outside));
    over.map(|over| over.pin)
}

/// What the caliper's height is set to, to a micrometre.
pub(super) fn height(wheel: &Spur, outside: Length) -> Option<Length> {
    let height = chordal::tooth(wheel, outside).ok()?.height;
    rounded(height, 3).map(Length::from_mm)
}

/// The step as markup.
pub(super) fn panel(fields: &Fields, asked: &Asked) -> Markup {
    let Some(outside) = blank::outside_in_force(fields, asked) else { return html! {} };
    html! {
        div.two {
            div.figures { (caliper(&asked.wheel, outside)) (spanned(fields, &asked.wheel, outside)) }
            div.figures { (pinned(fields, &asked.wheel, outside)) }
        }
        (pair::section(fields, asked))
    }
}

fn caliper(wheel: &Spur, outside: Length) -> Markup {
    html! {
        section.setup aria-label=(says::CALIPER) {
            h3 { (says::CALIPER) }
            @match chordal::tooth(wheel, outside) {
                Ok(chordal) => {
                    (drawn(wheel, outside, Laid::Caliper(&chordal)))
                    div.pair {
                        (figure(says::SET_HEIGHT, chordal.height.value))
                        (figure(says::READS, chordal.thickness.value))
                    }
                    details id="ge-caliper-working" {
                        summary { (crate::words::BY_HAND) }
                        ul.work { @for line in says::chordal_lines(wheel, outside, &chordal) { li { (line) } } }
                        p.why { (says::constant(&chordal)) }
                    }
                }
                Err(error) => (caution(html! { (said(&error, "").wrong) })),
            }
        }
    }
}

/// The teeth with what is laid in.
fn drawn(wheel: &Spur, outside: Length, laid: Laid) -> Markup {
    html! {
        @if let Ok(drawing) = draw::drawing(wheel, outside, laid) { figure.draw.plate { (drawing) } }
    }
}

/// A reading: millimetres large, inches under them.
pub(super) fn figure(label: &str, mm: f64) -> Markup {
    html! {
        div {
            p.lab { (label) }
            p.answer-big.gears { (says::mm(mm)) " " small { "mm" } }
            p.answer-mid { (says::inch(mm)) " " small { "in" } }
        }
    }
}

fn spanned(fields: &Fields, wheel: &Spur, outside: Length) -> Markup {
    let (span, wrong) = steps::in_force(fields, SPAN, |text| spans(text, wheel, outside));
    let form = Form { fields, names: SPAN, wrong: wrong.as_ref() };
    html! {
        section.setup aria-label=(says::SPAN) {
            h3 { (says::SPAN) }
            @if let Some(span) = &span {
                (drawn(wheel, outside, Laid::Span(span)))
                (figure(&says::over_teeth(span.teeth), span.reading.value))
                p.why { (says::span_serves(span)) }
            }
            (form.number("ge-over", says::TEETH_OVER))
            @if let Some(span) = &span {
                details id="ge-span-working" {
                    summary { (crate::words::BY_HAND) }
                    ul.work { @for line in says::span_lines(wheel, span) { li { (line) } } }
                }
            }
        }
    }
}

fn pinned(fields: &Fields, wheel: &Spur, outside: Length) -> Markup {
    let (over, wrong) =
        steps::in_force(fields, PINS, |text| over_pins(fields, text, wheel, outside));
    let form = Form { fields, names: PINS, wrong: wrong.as_ref() };
    html! {
        section.setup aria-label=(says::PINS) {
            h3 { (says::PINS) }
            @if let Some(("", error)) = &wrong { (caution(html! { (said(error, "").wrong) })) }
            @if let Some(over) = &over {
                (drawn(wheel, outside, Laid::Pins(float::of(over.pin.mm()), &over.over)))
                (figure(&says::over_pins(over.pin), over.over.reading.value))
                @if !over.serves { p.care { (says::NONE_SERVES) } }
                p.why { (says::pin_range(&over.range, over.pin)) }
                @if wheel.teeth % 2 == 1 { p.why { (says::ODD) } }
            }
            (owned_strip(fields, &[Stock::Pins]))
            (form.text("ge-pin", says::PIN_USED))
            @if let Some(over) = &over {
                details id="ge-pin-working" {
                    summary { (crate::words::BY_HAND) }
                    ul.work { @for line in says::pin_lines(wheel, over.pin, &over.over) { li { (line) } } }
                }
            }
        }
    }
}
