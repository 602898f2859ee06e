//! A clock's wheel and the pinion it drives.
use super::{care, drawn, large};
use crate::draw::clock as draw;
use crate::room::steps::{Form, Given, Names, Wrong, about, fact, length};
use crate::words::{self as all, gear::shaped as says};
use handturn::Field as Of;
use handturn::bounds::{LEAVES, WHEEL_TEETH};
use handturn::gear::clock::{Clock, Rule, Sizes, sizes};
use maud::{Markup, html};

pub(super) const NAMES: &[&Names] = &[&[
    ("ge-cw-wheel", "64"),
    ("ge-cw-leaves", "8"),
    ("ge-cw-module", "0.8"),
    ("ge-cw-rule", "standard"),
    ("ge-cw-cut", "wheel"),
]];

/// A pair that is asked for, its sizes, and which of the two is cut now.
#[derive(Clone, Copy, Debug)]
pub(in crate::room::gear) struct Asked {
    pub(super) ask: Clock,
    found: Sizes,
    pinion: bool,
}

impl Asked {
    pub(super) const fn parts(&self) -> u32 {
        if self.pinion { self.ask.leaves } else { self.ask.wheel }
    }
}

pub(super) fn entry(form: Form) -> Markup {
    html! {
        div.pair {
            (form.number("ge-cw-wheel", says::WHEEL_TEETH))
            (form.number("ge-cw-leaves", says::LEAVES))
        }
        (form.text("ge-cw-module", says::MODULE))
        (form.choice("ge-cw-cut", says::CUT_NOW, &[("wheel", says::THE_WHEEL), ("pinion", says::THE_PINION)]))
        div {
            p.lab { (says::ADDENDA) }
            (form.choice("ge-cw-rule", says::ADDENDA, &[("standard", says::STANDARD), ("common", says::COMMON)]))
        }
        p.why { (says::ESCAPE) }
    }
}

pub(super) fn asked(text: Given) -> Result<Asked, Wrong> {
    let ask = Clock {
        wheel: text.count("ge-cw-wheel", WHEEL_TEETH)?,
        leaves: text.count("ge-cw-leaves", LEAVES)?,
        module: text.length("ge-cw-module", Of::Module)?,
        rule: if text.get("ge-cw-rule") == "common" { Rule::Common } else { Rule::Standard },
    };
    let found = sizes(&ask).map_err(|error| match error.field {
        Of::Teeth => ("ge-cw-wheel", error),
        _ => ("ge-cw-module", error),
    })?;
    Ok(Asked { ask, found, pinion: text.get("ge-cw-cut") == "pinion" })
}

pub(super) fn panel(asked: &Asked, step: &str) -> [Markup; 2] {
    let Asked { ask, found, pinion } = asked;
    let blank = if *pinion { &found.pinion } else { &found.wheel };
    let left = match step {
        "cutter" => html! {
            p { (says::FORM_CUTTER) }
            @if *pinion { p { (says::form(found.form, found.end_radius)) } }
        },
        "depth" => html! {
            (large(says::WHOLE_DEPTH, blank.depth.value))
            p.why { (says::DEPTH_WHY) }
            (care())
        },
        "check" => html! {
            dl.facts {
                (length(says::CENTRES, found.centres))
                (length(says::THICK, blank.thickness))
                (fact(says::RATIO, &all::mixed(found.ratio), &[]))
            }
        },
        _ => html! {
            (large(says::TURN_TO, blank.outside.value))
            dl.facts { (length(says::PITCH, blank.pitch)) (length(says::CENTRES, found.centres)) }
            @if *pinion { (about_other(says::THE_WHEEL, found.wheel.outside.value)) }
            @else { (about_other(says::THE_PINION, found.pinion.outside.value)) }
            p.why { (if ask.rule == Rule::Standard { says::FROM_STANDARD } else { says::FROM_COMMON }) }
        },
    };
    [left, draw::drawing(ask, found).map_or_else(|| html! {}, |drawing| drawn(drawing, says::MESH))]
}

fn about_other(name: &str, outside: f64) -> Markup {
    html! { dl.facts { (about(name, outside)) } }
}
