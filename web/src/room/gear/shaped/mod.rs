//! Shapes that are no involute wheels: ratchets, splines and keyways, flats, clock wheels,
//! cams. Each has a file: its fields, its entry, what is asked and answered, its four steps.
mod cam;
mod clock;
mod flats;
mod ratchet;
mod spline;
#[cfg(test)]
mod tests;

use crate::fields::Fields;
use crate::room::steps::{Form, Given, Names, Wrong};
use crate::words::gear::{check, shaped as says};
use maud::{Markup, html};

/// Which shape.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(in crate::room::gear) enum Kind {
    Ratchet,
    Spline,
    Flats,
    Clock,
    Cam,
}

/// A shape as it is asked for, with its answer.
#[derive(Clone, Debug)]
pub(in crate::room::gear) enum Asked {
    Ratchet(ratchet::Asked),
    Spline(spline::Asked),
    Flats(flats::Asked),
    Clock(clock::Asked),
    Cam(cam::Asked),
}

impl Kind {
    pub(in crate::room::gear) const fn value(self) -> &'static str {
        match self {
            Self::Ratchet => "ratchet",
            Self::Spline => "spline",
            Self::Flats => "flats",
            Self::Clock => "clock",
            Self::Cam => "cam",
        }
    }

    pub(in crate::room::gear) const fn label(self) -> &'static str {
        match self {
            Self::Ratchet => says::RATCHET,
            Self::Spline => says::SPLINE,
            Self::Flats => says::FLATS,
            Self::Clock => says::CLOCK,
            Self::Cam => says::CAM,
        }
    }

    pub(in crate::room::gear) const fn names(self) -> &'static [&'static Names] {
        match self {
            Self::Ratchet => ratchet::NAMES,
            Self::Spline => spline::NAMES,
            Self::Flats => flats::NAMES,
            Self::Clock => clock::NAMES,
            Self::Cam => cam::NAMES,
        }
    }

    pub(in crate::room::gear) fn entry(self, form: Form) -> Markup {
        match self {
            Self::Ratchet => ratchet::entry(form),
            Self::Spline => spline::entry(form),
            Self::Flats => flats::entry(form),
            Self::Clock => clock::entry(form),
            Self::Cam => cam::entry(form),
        }
    }

    pub(in crate::room::gear) fn asked(self, text: Given) -> Result<Asked, Wrong> {
        match self {
            Self::Ratchet => ratchet::asked(text).map(Asked::Ratchet),
            Self::Spline => spline::asked(text).map(Asked::Spline),
            Self::Flats => flats::asked(text).map(Asked::Flats),
            Self::Clock => clock::asked(text).map(Asked::Clock),
            Self::Cam => cam::asked(text).map(Asked::Cam),
        }
    }
}

impl Asked {
    pub(in crate::room::gear) fn heading(&self) -> String {
        match self {
            Self::Ratchet(asked) => says::ratchet(asked.wheel.teeth, asked.wheel.outside),
            Self::Spline(asked) => spline::heading(asked),
            Self::Flats(asked) => says::flats(asked.ask.sides, asked.ask.across),
            Self::Clock(asked) => says::clock(asked.ask.wheel, asked.ask.leaves, asked.ask.module),
            Self::Cam(asked) => cam::heading(asked),
        }
    }

    pub(in crate::room::gear) fn panel(&self, step: &str) -> Markup {
        let [left, right] = match self {
            Self::Ratchet(asked) => ratchet::panel(asked, step),
            Self::Spline(asked) => spline::panel(asked, step),
            Self::Flats(asked) => flats::panel(asked, step),
            Self::Clock(asked) => clock::panel(asked, step),
            Self::Cam(asked) => cam::panel(asked, step),
        };
        html! { div.two { div.figures { (left) } div.figures { (right) } } }
    }

    pub(in crate::room::gear) fn parts(&self) -> Option<u32> {
        match self {
            Self::Ratchet(asked) => Some(asked.wheel.teeth),
            Self::Spline(asked) => spline::parts(asked),
            // One flat needs no dividing.
            Self::Flats(asked) => Some(asked.ask.sides).filter(|sides| *sides > 1),
            Self::Clock(asked) => Some(asked.parts()),
            Self::Cam(asked) => cam::parts(asked),
        }
    }
}

/// A size that is listed is taken: its figures go into the fields of splines.
pub(in crate::room::gear) fn take(fields: &mut Fields, listed: &str) -> &'static str {
    let names = ["ge-sp-keys", "ge-sp-minor", "ge-sp-major", "ge-sp-key"];
    for (name, value) in names.into_iter().zip(listed.split(' ')) {
        fields.set(name, value);
    }
    "ge-sp-keys"
}

/// A reading: millimetres large, inches beside them.
fn large(label: &str, mm: f64) -> Markup {
    html! {
        div {
            p.lab { (label) }
            p.answer-big { (check::mm(mm)) " " small { "mm" } span.also { (check::inch(mm)) " " small { "in" } } }
        }
    }
}

/// An angle as the answer.
fn angle(label: &str, text: &str) -> Markup {
    html! { div { p.lab { (label) } p.answer-big { (text) } } }
}

/// Chips that put one value into a field.
fn chips(name: &str, label: &str, chosen: &str, values: &[&str]) -> Markup {
    html! {
        div.chips role="group" aria-label=(label) {
            @for value in values {
                button.chip type="button" data-do=(name) data-value=(value) aria-pressed=(*value == chosen) { (value) }
            }
        }
    }
}

/// What hands must mind while cutting.
fn care() -> Markup {
    crate::pieces::caution(
        html! { (crate::words::gear::CUT_CARE) " " (crate::words::gear::MAKERS_CARE) },
    )
}

/// A drawing to scale with what is said under it.
fn drawn(drawing: Markup, under: &str) -> Markup {
    html! { figure.draw.plate { (drawing) @if !under.is_empty() { figcaption.why { (under) } } } }
}
