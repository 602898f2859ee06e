//! Depth: how deep the gaps are cut, from the blank as it came out, and what two trial
//! gaps say of it.
use super::{Asked, blank, check};
use crate::fields::Fields;
use crate::pieces::{Field, caution, error_of, input};
use crate::room::steps::{Form, Names, large, length};
use crate::words::errors::said;
use crate::words::gear::{self as words, straight as says, trial as trials};
use handturn::Error;
use handturn::gear::found::{Blank, Height};
use handturn::gear::trial::{Check, Cutting, Deeper, Trial, deeper, wanted};
use handturn::measure::Length;
use handturn::measure::read::{self, Unit};
use maud::{Markup, html};

const NAMES: &[&Names] = &[&[("ge-tried", "pins"), ("ge-cutting", "form")]];

/// The step as markup.
pub(super) fn panel(fields: &Fields, asked: &Asked) -> Markup {
    let (found, _) = blank::in_force(fields, asked);
    html! {
        div.two {
            div.figures {
                @if let Some(found) = &found { (deep(asked, found)) }
                (caution(html! { (words::CUT_CARE) " " (words::MAKERS_CARE) }))
                details id="ge-depth-working" {
                    summary { (crate::words::BY_HAND) }
                    ul.work { li { (says::depth_line(&asked.wheel)) } }
                }
            }
            div.figures {
                @if let Some(found) = &found { (tried(fields, asked, found)) }
            }
        }
    }
}

fn deep(asked: &Asked, found: &Blank) -> Markup {
    let drawn = found.height == Height::Drawn;
    html! {
        div {
            p.lab { (if drawn { says::WHOLE_DEPTH } else { says::FROM_FOUND }) }
            (large(found.depth))
            p.why { (words::rule(asked.wheel.tooth.rule)) }
            @if !drawn { p { (says::height(found)) } }
        }
        dl.facts { (length(trials::ROUGH, found.rough)) }
    }
}

/// The two trial gaps: how to cut and measure them, the reading, what is left.
fn tried(fields: &Fields, asked: &Asked, found: &Blank) -> Markup {
    let form = Form { fields, names: NAMES, wrong: None };
    let trial = trial(fields, asked, form);
    html! {
        section.setup aria-label=(trials::TRIAL) {
            h3 { (trials::TRIAL) }
            (form.choice("ge-tried", trials::BY, &[
                ("pins", trials::BY_PINS), ("span", trials::BY_SPAN), ("caliper", trials::BY_CALIPER),
            ]))
            (form.choice("ge-cutting", trials::CUTTING, &[
                ("form", trials::FORM), ("generated", trials::GENERATED),
            ]))
            @if let Some(trial) = &trial {
                ol.work {
                    @for line in trials::lines(trial, found, wanted(trial)) { li { (line) } }
                }
                (reading(fields, trial))
            } @else { p.care { (trials::NOTHING) } }
        }
    }
}

/// What is measured with, as the step Check has it.
fn trial(fields: &Fields, asked: &Asked, form: Form) -> Option<Trial> {
    let outside = blank::outside_in_force(fields, asked)?;
    let check = match form.typed("ge-tried") {
        "span" => Check::Span { teeth: check::span_in_force(fields, &asked.wheel, outside)? },
        "caliper" => Check::Caliper { height: check::height(&asked.wheel, outside)? },
        _ => Check::Pins { pin: check::pin_in_force(fields, &asked.wheel, outside)? },
    };
    let cutting =
        if form.typed("ge-cutting") == "generated" { Cutting::Generated } else { Cutting::Form };
    Some(Trial { spur: asked.wheel, outside, cutting, check })
}

/// The reading, and what is left by it.
fn reading(fields: &Fields, trial: &Trial) -> Markup {
    let text = fields.get("ge-reading");
    let found = (!text.trim().is_empty()).then(|| left(trial, text));
    let error = found.as_ref().and_then(|found| found.as_ref().err());
    let error = error.map(|error| said(error, text));
    let label = trials::READING;
    let entry = Field { name: "ge-reading", label, value: text, keys: "decimal", error };
    html! {
        div.field.big-field.reading {
            label.lab for="ge-reading" { (label) }
            (input(&entry))
            (error_of(&entry))
        }
        @if let Some(Ok(deeper)) = &found {
            div.verdict.care[trials::too_deep(deeper)] role="status" {
                p.verdict-big { (trials::verdict(deeper)) }
                p { (trials::left(deeper)) }
            }
        }
    }
}

fn left(trial: &Trial, text: &str) -> Result<Deeper, Error> {
    let reading: Length = read::length(text, Unit::Mm)?;
    deeper(trial, reading)
}
