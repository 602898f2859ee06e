//! What is wrong with an entry of the Shop: what is wanted, what was given, what
//! to do.
use super::errors::{self, Said};
use super::grouped;
use super::shop::label;
use crate::owned::{Bad, Entry};
use handturn::{Cause, Field};

/// What to say about `bad`, found in `typed`.
#[must_use]
pub fn said(bad: &Bad, typed: &str) -> Said {
    let Bad { entry, error } = bad;
    let general = errors::said(error, typed);
    let wrong = match (entry, error.cause) {
        (Entry::Name, Cause::Empty) => "The head needs a name.".to_owned(),
        (Entry::Plates, Cause::Empty) => "A plate has no circles.".to_owned(),
        (Entry::Ratio, Cause::OutOfRange { .. }) => {
            "Worm ratio must be above 0 and at most 100,000.".to_owned()
        }
        (Entry::Plates, Cause::Twice) => twice_on_a_plate(typed),
        (Entry::ReachLeast | Entry::ReachGreatest, Cause::Conflict) => {
            "The least radius must not be below 0 or above the greatest.".to_owned()
        }
        (Entry::ArmsLeast | Entry::ArmsGreatest, Cause::Conflict) => {
            "The arms must open from less to more, and to 360° at most.".to_owned()
        }
        (Entry::HandwheelMarks, Cause::Conflict) => {
            "One turn of the handwheel must come to whole marks.".to_owned()
        }
        (Entry::Gears, Cause::OutOfRange { greatest: 9, .. }) => {
            "Of one gear, 1 to 9 can be listed.".to_owned()
        }
        (Entry::ReachLeast | Entry::ReachGreatest, Cause::OutOfRange { .. }) => {
            subject(*entry).to_owned() + " must be from 0 to 10,000 mm."
        }
        (Entry::MostIdlers, Cause::Empty) => "The number of idlers is missing.".to_owned(),
        (Entry::Pin | Entry::WorkDiameter, Cause::OutOfRange { .. }) => {
            subject(*entry).to_owned() + " must be above 0 and at most 10,000 mm."
        }
        (_, Cause::OutOfRange { .. }) if error.field == Field::Angle => {
            subject(*entry).to_owned() + " must be above 0° and at most 360°."
        }
        (_, Cause::OutOfRange { least, greatest }) => [
            subject(*entry),
            " must be from ",
            &grouped(least.into()),
            " to ",
            &grouped(greatest.into()),
            ".",
        ]
        .concat(),
        (_, Cause::Empty) => subject(*entry).to_owned() + " is missing.",
        (_, Cause::Twice) => subject(*entry).to_owned() + " can be listed only once.",
        (_, Cause::NotANumber) => [subject(*entry), " must be ", kind(*entry), "."].concat(),
        (_, Cause::NotWhole) => subject(*entry).to_owned() + " must be a whole number.",
        (_, Cause::TooMany { most }) => {
            ["At most ", &grouped(i64::from(most)), " of these can be listed."].concat()
        }
        (_, Cause::Zero) => "Nothing can be divided by 0.".to_owned(),
        _ => general.wrong,
    };
    // What is missing can't be quoted.
    let typed = if error.cause == Cause::Empty { String::new() } else { general.typed };
    Said { wrong, typed, instead: instead(*entry) }
}

/// Which circle stands twice: the first, plate by plate.
fn twice_on_a_plate(typed: &str) -> String {
    let plates = handturn::head::read::plates(typed).unwrap_or_default();
    for (k, plate) in plates.iter().enumerate() {
        for (at, circle) in plate.circles.iter().enumerate() {
            if plate.circles.iter().take(at).any(|other| other.holes == circle.holes) {
                let (holes, plate) = (circle.holes.to_string(), (k + 1).to_string());
                return ["The ", &holes, " circle stands twice on plate ", &plate, "."].concat();
            }
        }
    }
    "A circle stands twice on one plate.".to_owned()
}

/// What a sentence about an entry begins with.
#[must_use]
pub const fn subject(entry: Entry) -> &'static str {
    match entry {
        Entry::Slack => "Slack",
        Entry::Plates => "A circle",
        Entry::Direct => "A direct plate",
        Entry::Gears => "A gear",
        Entry::StudDistance => "The teeth from stud to stud",
        Entry::StudMargin => "The rim’s margin",
        Entry::MostIdlers => "Idlers",
        Entry::ReachLeast => "Least radius",
        Entry::ReachGreatest => "Greatest radius",
        Entry::Pin => "Pin diameter",
        Entry::ArmsLeast => "Least opening of the arms",
        Entry::ArmsGreatest => "Greatest opening of the arms",
        Entry::HandwheelMarks => "Marks of the handwheel",
        Entry::HandwheelVernier => "Vernier parts",
        Entry::FineShift => "Shift of the fine dial",
        Entry::FineMarks => "Marks of the fine dial",
        Entry::FineTravel => "Travel of the fine dial",
        _ => label(entry),
    }
}

/// What an entry must be.
const fn kind(entry: Entry) -> &'static str {
    match entry {
        Entry::Plates => "a number of holes",
        Entry::Direct => "a number of notches",
        Entry::Gears => "a number of teeth",
        Entry::ArmsLeast | Entry::ArmsGreatest | Entry::FineShift | Entry::FineTravel => "an angle",
        Entry::ReachLeast | Entry::ReachGreatest | Entry::Pin | Entry::WorkDiameter => "a length",
        _ => "a number",
    }
}

/// How to write it.
const fn instead(entry: Entry) -> &'static str {
    match entry {
        Entry::Ratio => "Write 40 or 40 : 1.",
        Entry::Slack => "Write 0.1 or 1/10.",
        Entry::Plates => "Part circles by spaces and plates by /.",
        Entry::Direct => "Part them by spaces.",
        Entry::Gears => "Part gears by spaces; 24x2 is two of 24.",
        Entry::ArmsLeast | Entry::ArmsGreatest => "Write 10 or 10°.",
        Entry::FineShift | Entry::FineTravel => "Write 5°, 5°30′ or 1/72 turn.",
        Entry::ReachLeast | Entry::ReachGreatest | Entry::Pin | Entry::WorkDiameter => {
            "Write 6, 6.35 mm or 1/4 in."
        }
        Entry::StudDistance => "Write 140, or leave it empty.",
        Entry::StudMargin => "Write 2.",
        Entry::MostIdlers => "Write 0, 1 or 2.",
        Entry::HandwheelVernier => "Write 1 for none, or 10.",
        Entry::FineMarks => "Write 60.",
        Entry::FineSlack => "Write 2 or 1/2.",
        Entry::HandwheelMarks => "Write a count, or one mark as an angle: 3′.",
        _ => "",
    }
}

/// Said when the fields hold more than what is in force.
#[must_use]
pub fn last_good(entry: Entry, last: &str) -> String {
    let last = last.trim();
    let last = if last.is_empty() { "none" } else { last };
    [subject(entry), ": the last good entry stays in force: ", last, "."].concat()
}
