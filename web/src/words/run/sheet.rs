//! What lies over the Run: went past, lost my place, going to a position, how it is saved.
use super::super::{angle_text, count, grouped, moves};
use super::at::WENT_PAST;
use super::{stop, turn_the, turns};
use handturn::divide::Part;
use handturn::measure::Angle;
use handturn::number::Fraction;
use handturn::run::Stray;

words! {
    PAST_OFF = "Spindle clamp off, pin out.";
    PAST_OFF_BACK = "Spindle clamp off, back pin out.";
    PAST_OFF_NO_PIN = "Spindle clamp off.";
    PAST_WHY = "Coming up the same way every time keeps the slack in the worm on one side. Leave the arms where they are.";
    PAST_NOTCH = "Turn the spindle back to the notch. Notches hold the work itself, so there is no slack to take up.";
    PAST_AT_ONCE = "The next leg takes up the slack, so there is no need to go further back.";
    HOME = "home";

    DEGREE_RING = "Then read the degree ring on the spindle:";
    THEN_CHOOSE = "Then choose the position:";
    NO_RING = "This head has no degree ring, so only the marks on the work tell these apart.";
    MORE_FIT = "More positions fit. Go to one by its number instead.";
    JUMP_LABEL = "Position";
    SET_FIRST = "Set the machine first, then press:";
    NOT_CUT_YET = "Not cut yet:";
    TICK = "It is cut already: mark it";

    HOW_SAVED = "Where your place is kept";
    LASTING = "The browser keeps it until you delete it.";
    NOT_LASTING = "The browser may clear it: after weeks without a visit, or when space runs out. A file is safe.";
    SAVE_FILE = "Save to file";
    CLOSE = "Close";
    ABOUT_SCREEN = "Screen";
    KEEP_ON = "Keep the screen on";
    LET_SLEEP = "Let the screen sleep";
    IS_ON = "The screen stays on while this Run is in front.";
    MAY_SLEEP = "This browser does not keep the screen on. Lengthen the device’s own time-out under Settings, Display.";
    MAY_SLEEP_CHOSEN = "The screen goes off by itself. Your place is kept.";
}

/// What the degree ring reads.
#[must_use]
pub fn ring_reads(ring: Angle) -> String {
    ["Degree ring at ", &angle_text(ring), "."].concat()
}

/// Numbers allowed for a position: "1 to 64".
#[must_use]
pub fn one_to(of: u32) -> String {
    "1 to ".to_owned() + &grouped(i64::from(of))
}

/// A position that there is not.
#[must_use]
pub fn one_to_wanted(of: u32) -> String {
    ["Position must be a whole number from ", &one_to(of), "."].concat()
}

/// Next's second line, and the button of a jump.
#[must_use]
pub fn i_am_at(position: u32) -> String {
    "I am at ".to_owned() + &grouped(i64::from(position))
}

/// Closing a sheet without a change.
#[must_use]
pub fn close_stay(at: u32) -> String {
    "Close, stay at ".to_owned() + &grouped(i64::from(at))
}

/// Title of the help after an over-run.
#[must_use]
pub fn past_title(to: Option<&str>) -> String {
    to.map_or_else(|| WENT_PAST.to_owned(), |to| ["Went past ", to, "?"].concat())
}

/// How far to go back to pass the slack.
#[must_use]
pub fn back_by(part: Part, past: Fraction) -> String {
    let half = Fraction::new(1, 2) == Ok(past)
        && matches!(part, Part::Pin | Part::BackPin | Part::Handwheel);
    if half {
        "back by the head’s slack, at least half a turn".to_owned()
    } else {
        "back by ".to_owned() + &turns(past)
    }
}

/// Coming up to a hole, notch or mark.
#[must_use]
pub fn stop_at(part: Part) -> &'static str {
    match part {
        Part::Pin => "drop the pin in hole",
        Part::BackPin => "drop the back pin in hole",
        Part::Spindle => "drop the pin in notch",
        Part::Handwheel | Part::FineDial => "stop at mark",
    }
}

/// The question about the hole.
#[must_use]
pub fn which_hole(part: Part) -> &'static str {
    match part {
        Part::Spindle => "Which notch is the pin in? Notch 0 is your chalk mark.",
        Part::Handwheel | Part::FineDial => "Which mark does the dial stand at?",
        Part::Pin | Part::BackPin => {
            "Which hole is the pin in? Hole 0 is your chalk mark; count the way the pin travels."
        }
    }
}

/// Name of the group of holes.
#[must_use]
pub fn holes_of(part: Part, of: u32) -> String {
    let of = grouped(i64::from(of));
    match part {
        Part::Spindle => ["Notch of the ", &of, "-notch plate"].concat(),
        Part::Handwheel | Part::FineDial => ["Mark of the ", &of, "-mark dial"].concat(),
        Part::Pin | Part::BackPin => ["Hole on the ", &of, " circle"].concat(),
    }
}

/// A hole in which no part stops.
#[must_use]
pub fn stray(part: Part, stray: &Stray) -> String {
    let (one, many) = moves::unit(part);
    let on = count(stray.clockwise.spaces, one, many);
    let (at, to) = (stop(part, stray.at.number), stop(part, stray.clockwise.to.number));
    [
        "No part stops in ",
        &at,
        ". You are between positions: turn on, clockwise, ",
        &on,
        " to ",
        &to,
        ", and look again.",
    ]
    .concat()
}

/// A hole that the circle does not have.
#[must_use]
pub fn no_such(part: Part, of: u32) -> String {
    let (_, many) = moves::unit(part);
    ["There are ", many, " 0 to ", &grouped(i64::from(of) - 1), "."].concat()
}

/// Turning back to a place that is come to at once.
#[must_use]
pub fn turn_back(part: Part, way: &str) -> String {
    [turn_the(part), " ", way, " to "].concat()
}
