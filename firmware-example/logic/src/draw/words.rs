//! Every word on the screen, once.
use super::line::Line;
use crate::settings::Item;
use crate::view::{Choice, Note};
use handturn::error::{Cause, Field};
use handturn::head::Sense;

pub(super) const OF: &str = " of ";
pub(super) const AT: &str = "AT";
pub(super) const ON: &str = "on";
pub(super) const OFF: &str = "off";
pub(super) const OPENS: &str = ">";

/// The caution of everything that counts the handle.
pub(super) const CLAMP: [&str; 3] =
    ["Clamp before each cut:", "this counts the handle,", "not the work."];

pub(super) const LOOK: &str = "LOOK BEFORE GOING ON";
pub(super) const LAST_KEPT: &str = "last: ";
pub(super) const IS_CUT: &str = "it is cut";
pub(super) const NOT_CUT: &str = "it is not cut yet";
pub(super) const STILL_THERE: &str = "Handle still there?";
pub(super) const YES_NO: &str = "NEXT yes     BACK no";

pub(super) const RESTARTED: &str = "RESTARTED";
pub(super) const WAS_STUCK: &str = "It had got stuck.";
pub(super) const MAY_HAVE_MOVED: &str = "Handle may have moved";
pub(super) const NEXT_REFERENCE: &str = "NEXT: give reference";

pub(super) const MEMORY_FAULT: &str = "MEMORY FAULT";
pub(super) const NOT_STORED: &str = "This press isn't kept";
pub(super) const NOT_READ: &str = "The chip is silent";
pub(super) const TRY_AGAIN: &str = "NEXT: try again";
pub(super) const GO_ON_UNKEPT: &str = "hold NEXT: on, not kept";
pub(super) const LOOK_AT_WIRES: &str = "Look at wires and chip.";
pub(super) const UNKEPT: &str = "NOT KEPT";

pub(super) const RING_READS: &str = "Degree ring reads";
pub(super) const GO_TO_POSITION: &str = "Go to position";
pub(super) const DIGIT_KEYS: &str = "BACK -  MENU + NEXT >";

pub(super) const ERRORS_AT_WORK: &str = "ERRORS AT THE WORK";
pub(super) const ERRORS: [&str; 3] = ["worst", "adjacent", "closing"];
pub(super) const ARCSEC: &str = " arc-s";
pub(super) const AND_YOUR_HEAD: &str = "and your head's own";
pub(super) const TOO_LARGE: &str = "too large to tell";

pub(super) const FIRST_POSITION: &str = "FIRST POSITION";
pub(super) const COME_UP: &str = "Come up ";
pub(super) const NEXT_IS_ONE: &str = "NEXT: this is 1";

pub(super) const CLOSING: &str = "closing: no cut";
pub(super) const HOME: &str = "home";
pub(super) const PAST: &str = "PAST ";
pub(super) const PAST_HOME: &str = "PAST HOME: BACK OFF";
pub(super) const BACK_OFF: &str = ": BACK OFF";
pub(super) const THEN_COME_AGAIN: &str = "then come up to it again";
pub(super) const TURNS: &str = "turns";
pub(super) const COUNTS_OF: &str = "of ";

pub(super) const ON_TARGET: &str = "ON TARGET";
pub(super) const CLAMP_THEN_NEXT: &str = "clamp, then NEXT";
pub(super) const NEXT_HOME: &str = "NEXT: it is home";
pub(super) const NEXT_CUT: &str = "NEXT: it is cut";
pub(super) const CUT_AND_TURN: &str = "cut, then turn on";

pub(super) const DONE: &str = "DONE";
pub(super) const ALL_CUT: &str = " cut";
pub(super) const IS_HOME: &str = "The work is home.";
pub(super) const MENU_NEW: &str = "MENU: another job";

pub(super) const COUNT_LOST: &str = "COUNT LOST";
pub(super) const TWO_STEPS: &str = "Two steps at once:";
pub(super) const WHICH_WAY: &str = "which way is unknown.";
pub(super) const CLAMP_NOW: &str = "Clamp. Don't cut on.";

pub(super) const WHICH_POSITION: &str = "Come up to a position,";
pub(super) const COME_TO_IT: &str = "clamp, and say which:";
pub(super) const FITS_RING: &str = "fits the degree ring";
pub(super) const HOLD_FOR_RING: &str = "hold NEXT: by degree ring";
pub(super) const CHOICE_KEYS: &str = "BACK -  MENU +  NEXT yes";
pub(super) const NONE_FITS: &str = "NO POSITION FITS";
pub(super) const READ_AGAIN: &str = "Read the ring again.";
pub(super) const MAY_BE_BETWEEN: &str = "Is it between two?";
pub(super) const NEXT_BACK: &str = "NEXT: back";

pub(super) const ONE_PRESS: &str = "1 press";
pub(super) const TWO_PRESSES: &str = "2 presses";

pub(super) const fn side(side: Sense) -> &'static str {
    match side {
        Sense::Clockwise => "clockwise",
        Sense::Anticlockwise => "anticlockwise",
    }
}

pub(super) const fn item(item: Item) -> &'static str {
    match item {
        Item::Parts => "Parts N",
        Item::RatioHandle => "Ratio",
        Item::RatioWork => "  to 1, or to",
        Item::PerTurn => "Counts/turn",
        Item::Side => "Up",
        Item::Slack => "Slack, turns",
        Item::Window => "Window, counts",
        Item::Confirm => "Confirm",
        Item::Sound => "Buzzer",
        Item::Errors => "Errors",
        Item::Begin => "BEGIN",
    }
}

pub(super) const fn choice(choice: Choice) -> &'static str {
    match choice {
        Choice::GoOn => "Go on",
        Choice::GoTo => "Go to position",
        Choice::TakeBack => "Take last press back",
        Choice::Reference => "Give reference",
        Choice::Errors => "Errors",
        Choice::NewJob => "Another job",
    }
}

pub(super) fn note(note: Note) -> Line {
    match note {
        Note::NotOn => Line::new().text("not on target"),
        Note::TooSoon => Line::new().text("twice? press again"),
        Note::NotNow => Line::new().text("not now"),
        Note::Refused(error) => match (error.field, error.cause) {
            (Field::Slack, Cause::OutOfRange { .. }) => Line::new().text("0.00 to 5.00 turns"),
            (_, Cause::OutOfRange { least, greatest }) => {
                Line::new().number(least).text(" to ").number(greatest)
            }
            (Field::Counts, _) => Line::new().text("below half a turn"),
            _ => Line::new().text("not allowed"),
        },
    }
}
