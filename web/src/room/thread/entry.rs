//! The answer in force, for the card: the step of the thread that stands open.
use super::{Jobs, TABS, panel, shown};
use crate::fields::Fields;
use crate::room::told::Entry;
use crate::words::{card, thread as words};

/// The open step of the thread as a step of the card.
#[must_use]
pub fn entry(fields: &Fields) -> Option<Entry> {
    let shown = shown(fields)?;
    let step = TABS.open(fields);
    let what = words::heading(&shown.name, shown.thread.hand, false);
    let title = card::step(&what, TABS.label(step));
    Some(Entry::read(title, None, &panel(fields, &Jobs::default(), step, &shown)))
}
