//! What Run says.
use super::{angle_text, count, grouped, moves};
use crate::keep::Trouble;
use handturn::divide::{Asked, Leg, Part, Place, Way};
use handturn::head::Sense;
use handturn::measure::Angle;
use handturn::number::Fraction;
use handturn::run::{Frozen, Return, Round, Stray};

words! {
    FILE_NAME = "handturn-run.json";
    RUN_IT = "Run it";
    RESUME = "Resume";
    ALL_RUNS = "Runs";
    RUNS = "Runs on this device";
    NO_RUNS = "No Run is open.";
    OPEN_FILE = "Open a saved Run";
    DELETE = "Delete";
    UNDO = "Undo";
    CLOSE_LIST = "Close the list";
    IS_CLOSED = "Closed";

    BEFORE_CUTTING = "Before the first cut";
    NAME_IT = "Name on the list";
    TWO_PRESSES = "Confirm “cut” and “at it” apart";
    TWO_PRESSES_WHY = "After a break it is then known whether this one is cut.";
    ROUNDS = "Rounds";
    START = "Start at 1";
    NOT_NOW = "Not now";

    LEAVE = "Leave Run. Your place is saved";
    LEAVE_UNSAVED = "Leave Run. Your place is not saved";
    NEXT_MOVE = "Next move";
    NEXT = "Next";
    BACK = "Back";
    UNDO_PRESS = "Undo press";
    WENT_PAST = "Went past";
    LOST = "Lost my place";
    DONE = "Done";
    WORK = "Work";
    SCREEN_ON = "Screen on";
    SCREEN_SLEEPS = "Screen may sleep";
    SAVED = "Saved";
    SAVING = "Saving";
    NOT_SAVED = "Not saved";

    CLEAR = "Cutter clear of the work before the handle moves. Clamp off to move, on to cut.";
    CLEAR_SHORT = "Cutter clear before the handle moves.";
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

    PAST_OFF = "Spindle clamp off, pin out.";
    PAST_OFF_BACK = "Spindle clamp off, back pin out.";
    PAST_OFF_NO_PIN = "Spindle clamp off.";
    PAST_WHY = "Coming up the same way every time keeps the slack in the worm on one side. Leave the arms where they are.";
    PAST_NOTCH = "Turn the spindle back to the notch. Notches hold the work itself, so there is no slack to take up.";
    PAST_AT_ONCE = "The next leg takes up the slack, so there is no need to go further back.";
    AT_THE_FIRST = "Back one position: you are at the first";
    HOME = "home";
    ONE_ROUND = "One";
    SCRATCH_FIRST = "Scratch, cut";
    ROUGH_FINISH = "Rough, finish";
    ALL_THREE = "Scratch, rough, finish";
    RING_ZERO = "Set the degree ring to 0.";
    SLACK_FIRST = "Come up to this place clockwise, so that the slack lies on one side.";

    DEGREE_RING = "Then read the degree ring on the spindle:";
    THEN_CHOOSE = "Then choose the position:";
    NO_RING = "This head has no degree ring, so only the marks on the work tell these apart.";
    MORE_FIT = "More positions fit. Go to one by its number instead.";
    JUMP = "Go to a position";
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

/// What a Run divides, and its name if it has one.
#[must_use]
pub fn title(frozen: &Frozen) -> String {
    let what = match &frozen.question {
        Asked::Parts(parts) => count(parts.count, "part", "parts"),
        Asked::Angle(repeated) => {
            angle_text(repeated.angle) + " × " + &grouped(i64::from(repeated.times))
        }
        Asked::List(angles) => count(angles.len() as u32, "angle", "angles"),
        Asked::Marks(marks) => count(marks.count, "mark", "marks"),
    };
    if frozen.title.is_empty() { what } else { [&*frozen.title, ", ", &what].concat() }
}

/// Why a stored Run cannot be used.
#[must_use]
pub fn trouble(trouble: Trouble) -> String {
    match trouble {
        Trouble::NotARun => "Not a Run that can be read.".to_owned(),
        Trouble::Refused(error) => super::errors::said(&error, "").wrong,
        Trouble::Event(number) => {
            ["Step ", &grouped(number as i64 + 1), " cannot be read."].concat()
        }
        Trouble::Count => "Steps are missing.".to_owned(),
    }
}

/// A file that holds no Run.
#[must_use]
pub fn file_refused(name: &str, why: Trouble) -> String {
    [name, " was not opened. ", &trouble(why)].concat()
}

/// A Run that the store would not delete.
#[must_use]
pub fn not_deleted(why: &str) -> String {
    ["That Run could not be deleted (", why, ")."].concat()
}

/// A Run just deleted.
#[must_use]
pub fn deleted(title: &str) -> String {
    ["Deleted: ", title, "."].concat()
}

/// Where a Run in the list stands.
#[must_use]
pub fn at_of(at: u32, of: u32) -> String {
    ["at ", &grouped(i64::from(at)), " of ", &grouped(i64::from(of))].concat()
}

/// The store keeps nothing.
#[must_use]
pub fn write_down(at: u32) -> String {
    "Write down ".to_owned() + &grouped(i64::from(at))
}

/// Why the store keeps nothing, and what to do.
#[must_use]
pub fn why_not_saved(why: &str) -> String {
    match why {
        "full" => "The device has no space left. Save to file, and make space.".to_owned(),
        _ => [
            "This browser does not store anything for this page (",
            why,
            "). Save to file before you leave.",
        ]
        .concat(),
    }
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

/// A hole, notch or mark by its number: "hole 8".
#[must_use]
pub fn stop(part: Part, number: u32) -> String {
    let (one, _) = moves::unit(part);
    [one, " ", &number.to_string()].concat()
}

/// A leg's count in a sentence: "2 turns and 10 holes".
#[must_use]
pub fn amount(leg: &Leg) -> String {
    let (one, many) = moves::unit(leg.part);
    let turns = count(leg.turns, "turn", "turns");
    match (leg.turns, leg.spaces) {
        (0, _) => count(leg.spaces, one, many),
        (_, 0) => turns,
        _ => [&*turns, " and ", &count(leg.spaces, one, many)].concat(),
    }
}

/// A number of turns: "half a turn", "1 1/4 turns".
#[must_use]
pub fn turns(turns: Fraction) -> String {
    if Fraction::new(1, 2) == Ok(turns) {
        return "half a turn".to_owned();
    }
    if turns == Fraction::ONE {
        return "1 turn".to_owned();
    }
    let whole = Fraction::whole(turns.floor());
    let part = turns.part();
    let fraction = [&part.num().to_string(), "/", &part.den().to_string()].concat();
    match (whole.is_zero(), part.is_zero()) {
        (true, false) => fraction + " of a turn",
        (_, true) => grouped(turns.floor()) + " turns",
        _ => [&grouped(turns.floor()), " ", &fraction, " turns"].concat(),
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

/// When it was saved last, with the device's own time.
#[must_use]
pub fn saved_at(time: &str) -> String {
    if time.is_empty() {
        "Saved on this device".to_owned()
    } else {
        "Saved on this device at ".to_owned() + time
    }
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

/// How everything must stand at a position.
#[must_use]
pub fn stands(place: &Place) -> String {
    let mut parts = Vec::new();
    let mut say = |what: &str, at: handturn::divide::At, of: &str| {
        parts.push([what, &at.number.to_string(), " of the ", &at.of.to_string(), of].concat());
    };
    if let Some(pin) = place.pin {
        say("pin in hole ", pin, "");
    }
    if let Some(back) = place.back_pin {
        say("back pin in hole ", back, "");
    }
    if let Some(notch) = place.notch {
        say("pin in notch ", notch, "");
    }
    if let Some(dial) = place.dial {
        say("dial at ", dial, " marks");
    }
    let mut text = parts.join(", ") + ".";
    if let Some(first) = text.get_mut(..1) {
        first.make_ascii_uppercase();
    }
    text
}

/// What the degree ring reads.
#[must_use]
pub fn ring_reads(ring: Angle) -> String {
    ["Degree ring at ", &angle_text(ring), "."].concat()
}

/// To mark where counting starts.
#[must_use]
pub fn chalk(place: &Place) -> &'static str {
    match (place.pin, place.notch) {
        (Some(_), _) => "Chalk that hole: it is hole 0. Count holes the way the pin travels.",
        (_, Some(_)) => "Chalk that notch: it is notch 0.",
        _ => "",
    }
}

/// Which plate goes on, for ways with plates.
#[must_use]
pub fn plate_of(way: &Way) -> Option<String> {
    let circle = match way {
        Way::Plain(way) | Way::NearestHole(way) => way.circle,
        Way::Differential(way) => way.circle,
        Way::FineDial(way) => way.circle,
        Way::Compound(_) => {
            return Some(
                "Plate with both circles on; pin and back pin at their circles.".to_owned(),
            );
        }
        _ => return None,
    };
    let plate = (u32::from(circle.plate) + 1).to_string();
    Some(["Plate ", &plate, " on, pin at its ", &circle.holes.to_string(), " circle."].concat())
}

/// How the arms stand, from the sentence with both numbers.
#[must_use]
pub fn arms_at(shows: &str) -> String {
    ["Arms: ", shows, "."].concat()
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

/// Name of Back.
#[must_use]
pub fn back_to(position: u32) -> String {
    "Back one position, to ".to_owned() + &grouped(i64::from(position))
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

/// What is turned, as an instruction.
#[must_use]
pub fn turn_the(part: Part) -> &'static str {
    match part {
        Part::Pin | Part::Handwheel => "Turn the handle",
        Part::BackPin => "Turn handle and plate together",
        Part::FineDial => "Turn the fine dial",
        Part::Spindle => "Turn the spindle",
    }
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

/// The other sense.
#[must_use]
pub const fn turned(sense: Sense) -> Sense {
    match sense {
        Sense::Clockwise => Sense::Anticlockwise,
        Sense::Anticlockwise => Sense::Clockwise,
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
