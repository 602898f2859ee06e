//! How far a Run is, for the card.
use super::Desk;
use crate::room::told::Entry;
use crate::words::{card, run as words};
use maud::html;

/// The Run on screen by its name in the store.
#[must_use]
pub fn open_id(desk: &Desk) -> Option<&str> {
    desk.open.as_ref().map(|open| open.id.as_str())
}

/// Where the Run on screen went, to be said beside its button.
pub fn said(desk: &mut Desk, said: &str) {
    said.clone_into(&mut desk.put);
}

/// How far the Run of this name is, as a step of the card.
#[must_use]
pub fn entry(desk: &Desk, id: &str) -> Option<Entry> {
    let open = desk.open.as_ref().filter(|open| open.id == id).map(|open| open.entry());
    let listed = || desk.runs.iter().find(|entry| entry.id == id).cloned();
    let run = open.or_else(listed).filter(|entry| entry.fault.is_empty())?;
    let stands =
        if run.closed { words::IS_CLOSED.to_owned() } else { words::at_of(run.at, run.of) };
    let markup = html! {
        p { (stands) }
        div.caut { p { (words::CLEAR) } }
    };
    Some(Entry::read(card::run(&run.title), None, &markup))
}
