//! The answer in force, for the card: the step of the wheel that stands open.
use super::{Kind, TABS, asked};
use crate::fields::Fields;
use crate::room::told::Entry;
use crate::words::card;

/// The open step of the wheel as a step of the card.
#[must_use]
pub fn entry(fields: &Fields) -> Option<Entry> {
    let shown = asked(fields, Kind::chosen(fields)).0?;
    let step = TABS.open(fields);
    let title = card::step(&shown.heading(false), TABS.label(step));
    // Only the depth is cut part by part.
    let parts = shown.parts().filter(|parts| step == "depth" && *parts > 1);
    Some(Entry::read(title, parts, &shown.panel(fields, step)))
}

/// Whether a field is part of the question that stands here now: no other kind's.
#[must_use]
pub fn asks(fields: &Fields, name: &str) -> bool {
    let named =
        |kind: Kind| kind.names().iter().any(|names| names.iter().any(|(own, _)| *own == name));
    let chosen = Kind::chosen(fields);
    name != "ge-said" && (named(chosen) || !Kind::ALL.into_iter().any(named))
}
