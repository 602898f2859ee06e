//! What is said at the machine.
use super::super::{angle_text, grouped, moves};
use super::{amount, stop, turn_the, turned, turns};
use handturn::divide::{Leg, Part};
use handturn::measure::Angle;
use handturn::run::{Return, Round};

words! {
    LEAVE = "Leave Run. Your place is saved";
    LEAVE_UNSAVED = "Leave Run. Your place is not saved";
    NEXT_MOVE = "Next move";
    NEXT = "Next";
    BACK = "Back";
    UNDO_PRESS = "Undo press";
    WENT_PAST = "Went past";
    LOST = "Lost my place";
    JUMP = "Go to a position";
    DONE = "Done";
    WORK = "Work";
    SCREEN_ON = "Screen on";
    SCREEN_SLEEPS = "Screen may sleep";
    SAVED = "Saved";
    SAVING = "Saving";
    NOT_SAVED = "Not saved";

    CLEAR = "Cutter clear of the work before the handle moves. Clamp off to move, on to cut.";
    CLEAR_SHORT = "Cutter clear before the handle moves.";
    GEARS_SHORT = "Cutter clear, fingers out, before the handle moves.";
    ONCE = "Counted once. Press again if you have moved again.";
    STILL_SAVING = "Still saving. That press was not counted.";
    SLOW = "Saving takes long. Wait for the tick before the next press.";
    TAKEN = "Another tab counts on this Run now. That press was not counted.";
    CANT_NOW = "That can’t be done from here.";
    ELSEWHERE = "This Run is open in another tab. Only one tab counts.";
    LOST_LOCK = "Another tab has taken this Run over. Only one tab counts.";
    TAKE_OVER = "Take over here";

    LINE = "Line";
    LAST_ONE = "The last one";
    THEN_CLOSING = "Then one closing move, no cut.";
    ONE_CLOSING = "One closing move, no cut:";
    NOT_IF = "If not, press Lost my place.";
    CUT_HERE = "Cut here:";
    CLOSED = "Closed.";
    ALL_DONE = "Done.";

    AT_THE_FIRST = "Back one position: you are at the first";
}

/// Name of a round.
#[must_use]
pub fn round(round: Round) -> &'static str {
    match round {
        Round::Cut => "Cut",
        Round::Scratch => "Scratch",
        Round::Rough => "Rough",
        Round::Finish => "Finish",
        Round::Spring => "Spring cut",
    }
}

/// What the leg turns and which way, under the large figures.
#[must_use]
pub fn on_what(leg: &Leg) -> String {
    let of = grouped(i64::from(leg.from.of));
    let way = moves::sense(leg.sense);
    match leg.part {
        Part::Pin => ["on the ", &of, " circle, ", way].concat(),
        Part::BackPin => ["plate and handle together, ", way].concat(),
        Part::Handwheel => [way, ", to mark ", &leg.to.number.to_string()].concat(),
        Part::FineDial => ["on the fine dial, ", way].concat(),
        Part::Spindle => ["on the ", &of, "-notch plate, ", way].concat(),
    }
}

/// From where to where.
#[must_use]
pub fn from_to(leg: &Leg) -> (&'static str, u32, &'static str, u32) {
    match leg.part {
        Part::Pin => ("Hole", leg.from.number, "to hole", leg.to.number),
        Part::BackPin => ("Back pin: hole", leg.from.number, "to hole", leg.to.number),
        Part::Handwheel | Part::FineDial => ("Mark", leg.from.number, "to mark", leg.to.number),
        Part::Spindle => ("Notch", leg.from.number, "to notch", leg.to.number),
    }
}

/// An angle of the work within one turn.
#[must_use]
pub fn work_at(stands: Angle) -> String {
    angle_text(Angle::from_turns(stands.turns().part()))
}

/// The position at the cutter, and what pressing it does.
#[must_use]
pub fn position(at: u32, of: u32) -> String {
    ["Position ", &grouped(i64::from(at)), " of ", &grouped(i64::from(of)), ". ", JUMP].concat()
}

/// Name of Back.
#[must_use]
pub fn back_to(position: u32) -> String {
    "Back one position, to ".to_owned() + &grouped(i64::from(position))
}

/// When it was saved last, with the device's own time.
#[must_use]
pub fn saved_at(time: &str) -> String {
    if time.is_empty() {
        "Saved on this device".to_owned()
    } else {
        "Saved on this device at ".to_owned() + time
    }
}

/// The store keeps nothing.
#[must_use]
pub fn write_down(at: u32) -> String {
    "Write down ".to_owned() + &grouped(i64::from(at))
}

/// The work ring in a sentence.
#[must_use]
pub fn work_words(of: u32, cut: u32, at: u32) -> String {
    let n = |n: u32| grouped(i64::from(n));
    ["Outer ring, the work: ", &n(of), " positions, ", &n(cut), " done, now at ", &n(at), "."]
        .concat()
}

/// Where the pin (or notch, or dial) stands, of how many.
#[must_use]
pub fn stands_in(leg: &Leg) -> String {
    let of = grouped(i64::from(leg.from.of));
    let at = leg.from.number.to_string();
    match leg.part {
        Part::Spindle => [&*of, "-notch plate, the pin in notch ", &at].concat(),
        Part::Handwheel | Part::FineDial => [&*of, "-mark dial at ", &at].concat(),
        Part::Pin | Part::BackPin => [&*of, "-hole circle, the pin in hole ", &at].concat(),
    }
}

/// How the work went back: each leg, beyond its end and up again.
#[must_use]
pub fn went_back(at: u32, legs: &[Return]) -> String {
    let mut text = ["Back at ", &grouped(i64::from(at)), "."].concat();
    for step in legs {
        let leg = &step.leg;
        text +=
            &[" ", turn_the(leg.part), " ", moves::sense(leg.sense), ", ", &amount(leg)].concat();
        text += &if step.past.is_zero() {
            [" to ", &stop(leg.part, leg.to.number), "."].concat()
        } else {
            let up = moves::sense(turned(leg.sense));
            [
                " and ",
                &turns(step.past),
                " more, then up again ",
                up,
                " to ",
                &stop(leg.part, leg.to.number),
                ".",
            ]
            .concat()
        };
    }
    text
}
