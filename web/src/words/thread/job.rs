//! Words of passes under way.
use super::{heading, mm};
use crate::room::thread::Note;
use crate::words::count;
use handturn::measure::Length;
use handturn::thread::Hand;

/// What a job is called.
#[must_use]
pub(crate) fn job_title(name: &str, hand: Hand, class: Option<String>, internal: bool) -> String {
    let mut text = heading(name, hand, false);
    if let Some(class) = class {
        text += ", ";
        text += &class;
    }
    text + if internal { ", nut" } else { ", screw" }
}

/// How far a job has come.
#[must_use]
pub(crate) fn passes_of(title: &str, done: u32, of: u32) -> String {
    [title, ", ", &done.to_string(), " of ", &of.to_string(), " passes cut."].concat()
}

/// A job that was taken out.
#[must_use]
pub(crate) fn taken_out(title: &str) -> String {
    [title, " is taken out."].concat()
}

/// Where the limits of what is measured lie.
#[must_use]
pub(crate) fn so_far_why(low: Length, high: Length) -> String {
    [
        "Pitch dia. (effective) wanted: ",
        &mm(low),
        " to ",
        &mm(high),
        " mm. Over wires, Measure it gives it from your reading.",
    ]
    .concat()
}

/// After a measurement.
#[must_use]
pub(crate) fn counted_on(marks: u32) -> String {
    ["Counted on from the measurement, the dial ", &count(marks, "mark", "marks"), " from zero."]
        .concat()
}

/// The time of the last save.
#[must_use]
pub(crate) fn saved_at(time: &str) -> String {
    if time.is_empty() {
        "Saved on this device".to_owned()
    } else {
        "Saved on this device at ".to_owned() + time
    }
}

/// Why nothing is saved.
#[must_use]
pub(crate) fn not_saved(why: &str) -> String {
    let why = if why == "full" {
        "the device’s store is full"
    } else {
        "the browser refuses its store"
    };
    ["Not saved: ", why, ". Write the ticks down."].concat()
}

/// A sentence about the last press.
#[must_use]
pub(crate) const fn note(note: Note) -> Option<&'static str> {
    match note {
        Note::None => None,
        Note::Saving => Some("Not counted: the tick before is still being saved."),
        Note::Taken => Some("Not counted: another tab ticks."),
        Note::NoNumber => Some("That is no diameter in millimetres."),
        Note::Past => Some("Nothing is left to cut by that measurement."),
    }
}
