//! A wheel with straight teeth, by involute cutters.
mod blank;
mod check;
mod cutter;
mod depth;
mod pair;

use super::wheel;
use crate::fields::Fields;
use crate::room::steps::{Form, Given, Names, Wrong};
use crate::words::gear::{self as words, straight as says};
use handturn::Field as Of;
use handturn::gear::Spur;
use maud::{Markup, html};

/// The fields of the entry.
pub(super) const NAMES: &[&Names] = &[&wheel::TOOTH, &[("ge-shift", "0"), ("ge-thinned", "0")]];

/// A wheel that is asked for.
#[derive(Clone, Copy, Debug)]
pub(in crate::room::gear) struct Asked {
    pub(in crate::room::gear) wheel: Spur,
}

/// The entry.
pub(super) fn entry(form: Form) -> Markup {
    let changed = |name: &str, usual: &str| form.typed(name).trim() != usual;
    let more = changed("ge-rule", "") || changed("ge-shift", "0") || changed("ge-thinned", "0");
    html! {
        (wheel::size(form, &wheel::SIZES))
        (wheel::pressure(form))
        details id="ge-more" open[more] {
            summary { (words::MORE) }
            div.field-set {
                (wheel::rule(form))
                div.pair {
                    (form.number("ge-shift", says::SHIFT))
                    (form.text("ge-thinned", says::THINNED))
                }
                p.why { (says::MORE_WHY) }
            }
        }
    }
}

/// The wheel that `text` asks for.
pub(super) fn asked(text: Given) -> Result<Asked, Wrong> {
    let wheel = Spur {
        teeth: wheel::teeth(text)?,
        tooth: wheel::tooth(text)?,
        shift: text.number("ge-shift", Of::Shift)?,
        thinned: text.length("ge-thinned", Of::Backlash)?,
    };
    wheel.check().map_err(wheel::at)?;
    Ok(Asked { wheel })
}

/// What it is called.
pub(super) fn heading(asked: &Asked) -> String {
    words::wheel_name(asked.wheel.teeth, &asked.wheel.tooth)
}

/// A step.
pub(super) fn panel(fields: &Fields, asked: &Asked, step: &str) -> Markup {
    match step {
        "cutter" => cutter::panel(fields, asked),
        "check" => check::panel(fields, asked),
        "depth" => depth::panel(fields, asked),
        _ => blank::panel(fields, asked),
    }
}

/// Keeps the fields of the step that `name` belongs to, where they read.
pub(super) fn keep_good(fields: &mut Fields, asked: &Asked, name: &str) {
    blank::keep_good(fields, asked, name);
    check::keep_good(fields, asked, name);
}
