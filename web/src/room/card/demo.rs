//! The demonstration: the bronze astronomical clock, put together by the same presses as a
//! person's, on a page of its own whose Shop is its own.
use super::put;
use crate::card::Card;
use crate::page::{State, happen};
use crate::seam::Event;
use crate::words::card as words;

/// Type, press: name and value.
const SCRIPT: &[(&str, &str, &str)] = &[
    ("press", "plates", "15"),
    ("press", "gears", ""),
    ("type", put::WITH_SHOP, "on"),
    ("press", "cd-begin", ""),
    ("type", "cd-title", words::DEMO_TITLE),
    ("type", "cd-job", words::DEMO_JOB),
    ("type", "cd-metal", words::DEMO_METAL),
    ("type", "cd-notes", words::DEMO_NOTES),
    // Bore and arbor: the arbor follows what the bore comes out to.
    ("press", "cd-value-add", ""),
    ("type", "cd-name-1", "bore"),
    ("type", "cd-drawing-1", "6"),
    ("press", "cd-value-add", ""),
    ("type", "cd-name-2", "arbor"),
    ("type", "cd-drawing-2", "= bore - 0.01"),
    ("press", "room", "gear"),
    ("press", "ge-wheel", "127 0.5"),
    ("press", "card-put", "gear"),
    ("press", "room", "thread"),
    ("type", "th-name", "M6 x 0.75"),
    ("press", "card-put", "thread"),
    ("press", "room", "divide"),
    ("type", "parts", "127"),
    ("press", "card-put", "divide"),
    ("press", "room", "gear"),
    ("press", "ge-tab", "depth"),
    ("press", "card-put", "gear"),
    // One grid for the 127 is enough.
    ("type", "cd-parts-6", "0"),
    ("press", "room", "divide"),
    ("type", "parts", "223"),
    ("press", "card-put", "divide"),
    ("type", "parts", "64"),
    ("press", "card-put", "divide"),
    ("type", "parts", "38"),
    ("press", "card-put", "divide"),
    ("type", "parts", "48"),
    ("press", "card-put", "divide"),
    ("type", "parts", "365"),
    ("press", "card-put", "divide"),
    ("type", "cd-new", words::DEMO_LAST),
    ("press", "cd-add", ""),
];

/// The demonstration's card.
pub(super) fn card() -> Card {
    let mut state = State::default();
    for (kind, name, value) in SCRIPT {
        happen(&mut state, &Event { kind, name, value, at_ms: 0 });
    }
    state.cards.open().map(|open| open.card()).unwrap_or_default()
}
