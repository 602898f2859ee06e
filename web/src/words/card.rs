//! What the Card says.
pub mod store;

use super::count;

/// Lines that did not fit.
#[must_use]
pub fn more_lines(more: usize) -> String {
    [
        "and ",
        &count(u32::try_from(more).unwrap_or(u32::MAX), "more line", "more lines"),
        " in its room",
    ]
    .concat()
}

/// A division as a step: `Divide 127: Differential`.
#[must_use]
pub fn division(what: &str, way: &str) -> String {
    ["Divide ", what, ": ", way].concat()
}

/// A step of a room: what it is about, and which of the room's steps.
#[must_use]
pub fn step(what: &str, step: &str) -> String {
    [what, ": ", step].concat()
}
