//! Gear: from a wheel on a drawing to the last check of its teeth, by what the hands do:
//! blank, cutter, depth, check. What the teeth are is chosen in the entry.
mod bevel;
mod cutters;
mod entry;
mod helical;
mod kind;
mod rack;
mod shaped;
#[cfg(test)]
mod slanted_tests;
mod straight;
#[cfg(test)]
mod tests;
mod wheel;
mod worm;

pub use entry::{asks, entry};

use super::steps::{self, Form, Tabs, Wrong};
use crate::fields::Fields;
use crate::seam::{Effect, Event};
use crate::words::gear as words;
use kind::{Asked, Kind};
use maud::{Markup, html};

const TABS: Tabs = Tabs {
    room: "ge-",
    steps: &[
        ("blank", words::BLANK),
        ("cutter", words::CUTTER),
        ("depth", words::DEPTH),
        ("check", words::CHECK),
    ],
};

/// The room as markup.
#[must_use]
pub fn screen(fields: &Fields) -> Markup {
    let kind = Kind::chosen(fields);
    let (shown, wrong) = asked(fields, kind);
    let panel = shown.as_ref().map(|shown| panel(fields, shown));
    let heading = shown.as_ref().map(|shown| shown.heading(wrong.is_some()));
    html! {
        main id="main" {
            div.cols.steps {
                div.entry-side id="ge-entry" {
                    h1 id="gear-title" tabindex="-1" { (words::GEAR) }
                    section.ask aria-label=(words::WHICH_WHEEL) {
                        (kinds(kind))
                        (kind.entry(Form { fields, names: kind.names(), wrong: wrong.as_ref() }))
                    }
                }
                div.ans id="ge-answer" {
                    (TABS.around(fields, &heading.unwrap_or_default(), panel.as_ref()))
                    @if let (None, Some((_, error))) = (&shown, &wrong) {
                        p.care { (crate::words::errors::said(error, "").wrong) }
                    }
                }
            }
        }
    }
}

/// What the teeth are, folded away once it is chosen.
fn kinds(chosen: Kind) -> Markup {
    html! {
        @if Kind::ALL.len() > 1 {
            details id="ge-kinds" {
                summary { (words::TEETH_ARE) " " b { (chosen.label()) } }
                div.chips.wide role="group" aria-label=(words::TEETH_ARE) {
                    @for kind in Kind::ALL {
                        button.chip type="button" data-do="ge-kind" data-value=(kind.value()) aria-pressed=(kind == chosen) { (kind.label()) }
                    }
                }
            }
        }
    }
}

fn panel(fields: &Fields, shown: &Asked) -> Markup {
    let step = TABS.open(fields);
    html! {
        (shown.panel(fields, step))
        @if let Some(parts) = shown.parts().filter(|_| step == "depth") { (wheel::divide(parts)) }
    }
}

/// What is asked for and in force, and what is wrong with it as typed.
fn asked(fields: &Fields, kind: Kind) -> (Option<Asked>, Option<Wrong>) {
    steps::in_force(fields, kind.names(), |text| kind.asked(text))
}

/// What an event does to this room's fields; none when it is not its own.
pub fn event(fields: &mut Fields, event: &Event) -> Option<Vec<Effect>> {
    if event.kind == "key" {
        return (fields.get("room") == "gear").then(|| TABS.key(fields, event));
    }
    if !event.name.starts_with("ge-") || !matches!(event.kind, "type" | "press") {
        return None;
    }
    // What one press takes into several fields, and one of those.
    let name = match event.name {
        "ge-wheel" => wheel::take(fields, event.value),
        "ge-size" => wheel::take_size(fields, event.value),
        "ge-sp-take" => shaped::take(fields, event.value),
        name => {
            fields.set(name, event.value);
            name
        }
    };
    // Other teeth may not have their size given as those before.
    if name == "ge-kind" && fields.get("ge-by") != "dp" {
        fields.set("ge-by", "module");
    }
    // A reading was taken on the wheel as it stood, measured as it was.
    if !matches!(name, "ge-reading" | "ge-tab" | "ge-cutting") {
        fields.forget("ge-reading");
    }
    // Another question: what was chosen of the old answer goes.
    if !matches!(event.name, "ge-train" | "ge-six" | "ge-tab") {
        fields.forget("ge-train");
        fields.forget("ge-six");
    }
    // The fields that were typed into are kept where they read, with those beside them.
    let kind = Kind::chosen(fields);
    steps::keep_good(fields, kind.names(), name, |text| kind.asked(text));
    if let (Some(shown), _) = asked(fields, kind) {
        shown.keep_good(fields, name);
    }
    Some(Vec::new())
}
