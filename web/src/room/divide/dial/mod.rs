//! The dial that the marks belong to, beside the ways to set them: its lines and figures,
//! its vernier, its size, and a fine dial of one's own. One of them stands open.
mod fine;
mod lines;
mod size;
#[cfg(test)]
mod tests;
mod vernier;

use super::afresh;
use crate::fields::Fields;
use crate::pieces::segmented;
use crate::room::steps::{self, Form, Given, Names, Wrong};
use crate::seam::{Effect, Event};
use crate::words::{self as all, dial as words};
use handturn::Field as Of;
use handturn::dial::width::{self, Across};
use handturn::divide::{Graduation, Question};
use handturn::head::Head;
use handturn::measure::Length;
use maud::{Markup, html};

/// The part that stands open.
fn open(fields: &Fields) -> &str {
    match fields.get("di-part") {
        part @ ("vernier" | "size" | "fine") => part,
        _ => "lines",
    }
}

/// The section as markup.
pub(super) fn section(fields: &Fields, marks: &Graduation) -> Markup {
    let part = open(fields);
    html! {
        section.dial id="dial" aria-labelledby="dial-title" {
            h3 id="dial-title" tabindex="-1" { (words::THE_DIAL) }
            (segmented("di-part", words::PART_OF_DIAL, part, &[
                ("lines", words::LINES), ("vernier", words::VERNIER), ("size", words::SIZE), ("fine", words::FINE_DIAL),
            ]))
            div.dial-part id=(["dial-", part].concat()) {
                @match part {
                    "vernier" => (vernier::part(fields, marks)),
                    "size" => (size::part(fields, marks)),
                    "fine" => (fine::part(fields)),
                    _ => (lines::part(fields, marks)),
                }
            }
        }
    }
}

/// What an event does to the section's fields, and what else the browser must do.
pub(super) fn event(fields: &mut Fields, event: &Event) -> Vec<Effect> {
    match event.name {
        "di-show" => return vec![Effect::Focus("dial-title".to_owned())],
        "di-marks" => {
            fields.set("marks", event.value);
            afresh(fields);
            return Vec::new();
        }
        "di-take" => fine::take(fields, event.value),
        "di-shop" => fine::put_in_shop(fields),
        name => fields.set(name, event.value),
    }
    if let Some(asked) = super::ask::last_good(fields) {
        if let Question::Marks(marks) = asked.question() {
            match open(fields) {
                "vernier" => vernier::keep(fields, &marks),
                "size" => size::keep(fields, &marks),
                "fine" => fine::keep(fields),
                _ => lines::keep(fields, &marks),
            }
        }
    }
    Vec::new()
}

/// Keeps the fields of a part where they read.
fn keep(fields: &mut Fields, names: &[&Names], read: impl Fn(Given) -> Result<(), Wrong>) {
    if let (_, None) = steps::in_force(fields, names, read) {
        names.iter().for_each(|names| steps::keep(fields, names));
    }
}

/// The dial's diameter: that of the work until it is typed.
fn diameter(text: Given, head: &Head) -> Result<Length, Wrong> {
    let typed = text.length_if("di-diameter", Of::Length)?.unwrap_or(head.work_diameter);
    // What comes of it is checked where it is used; here, that a width comes of it at all.
    width::division(2, typed, Across::Arc).map_err(|e| ("di-diameter", e))?;
    Ok(typed)
}

/// The field of the dial's diameter.
fn across(form: Form, head: &Head) -> Markup {
    form.filled("di-diameter", words::DIAMETER, Some(all::decimal(head.work_diameter.mm(), 3)))
}

/// A choice with its label above.
fn choice(form: Form, name: &str, label: &str, pairs: &[(&str, &str)]) -> Markup {
    html! { div { p.lab { (label) } (form.choice(name, label, pairs)) } }
}
