//! Every label, error and caution, once.
//!
//! Plain labels are constants; sentences with figures are functions. A sentence
//! says what is so, what was given and what to do: no codes and no blame.
mod answers;
pub mod errors;
mod figures;
pub mod moves;
pub mod shop;
pub mod shop_errors;

pub use answers::*;
pub use figures::*;

use handturn::divide::{Kind, Reason, Word};
use handturn::measure::Angle;
use handturn::measure::write::Dms;
use handturn::number::Fraction;

macro_rules! words {
    ($($name:ident = $text:literal;)*) => {
        $(pub(crate) const $name: &str = $text;)*
        /// All labels, for the test that reads them.
        #[cfg(test)]
        pub(crate) const ALL: &[&str] = &[$($text),*];
    };
}
pub mod bench;
pub mod card;
pub mod dial;
pub mod gear;
pub mod plate;
pub mod run;
pub mod shop_file;
pub mod shop_lists;
pub mod thread;

words! {
    HANDTURN = "Handturn";
    ROOMS = "Rooms";
    STEPS = "Steps";
    DIVIDE = "Divide";
    SHOP = "Shop";
    USUAL_GEARS = "I have the usual twelve gears";
    NEWER = "New version ready. Use it";

    WHAT_TO_DIVIDE = "What to divide";
    ANSWER = "Answer";
    KIND_OF_DIVISION = "Kind of division";
    PARTS = "Parts";
    ANGLE = "Angle";
    LIST = "List";
    DIAL = "Dial";
    EQUAL_PARTS = "Equal parts in one turn";
    ONE_FEWER = "One part fewer";
    ONE_MORE = "One part more";
    IN_THIS_JOB = "In this job: clock wheels";
    ON_THE_CARD = "In this job: on the card";
    ANGLE_TO_TURN = "Angle of each move";
    ANGLE_HINT = "17°30′, 17.5, 17 30 15 or 7/144 turn";
    TIMES = "How many moves of it";
    ANGLE_LIST = "Angles from one zero, one a line";
    LIST_HINT = "The first is where the work stands at the start. Write minutes with their sign, 45°30′: 45 30 is two angles.";
    MARKS_IN_A_TURN = "Marks in one turn";
    LONG_MARK = "Long mark every";
    MIDDLE_MARK = "Middle mark every";
    LINE_LENGTHS = "Line lengths, mm";
    LONG = "Long";
    MIDDLE = "Middle";
    SHORT = "Short";
    NUMBER_EVERY = "Number every";
    NUMBERS_CLIMB = "Each mark counts";
    CLIMB = "Seen from the front, numbers climb";
    CLOCKWISE = "Clockwise";
    ANTICLOCKWISE = "Anticlockwise";
    ZERO_MARK = "Zero mark reads 0 (else the full count)";
    NUMBERS_AND_LINES = "Numbers and line lengths";
    CUTTING_ORDER = "Cutting order";
    EVERY_NTH = "Go on by so many parts each time";
    EVERY_WHY = "1 cuts one after another. More spreads heat and error round the work.";

    HEAD = "Head";
    PLATES = "Plates";
    GEARS = "Gears";
    ERROR_AT = "Error at";
    OWNED = "What you own, kept in Shop";
    LEVEL = "level";
    TILTED = "tilted";
    NONE = "none";
    NONE_YET = "none yet";

    WHICH_PLATES = "Every answer uses only what you have. Which plates came with the head?";
    PLATES_15 = "Plates 15 to 49";
    PLATES_24 = "Plates 24 to 66";
    TYPE_MINE = "Type mine";
    TAKEN_FOR_HEAD = "40 : 1 is taken for the head. Change either in Shop at any time.";
    MY_PLATES = "Holes in each circle, plates parted by /";
    MY_PLATES_HINT = "15 16 17 18 19 20 / 21 23 27 29 31 33";
    USE_THESE = "Use these plates";

    ORDER = "Order";
    CLOSEST = "Closest";
    QUICKEST = "Quickest";
    EXACT = "Exact";
    APPROXIMATE = "Approximate, ";
    BY_HAND = "Check it by hand";
    WORST_PLACE = "Worst place";
    BETWEEN = "Between neighbours";
    CLOSING = "Closing";
    LEFT_OUT = "Left out, and why";
    OTHER_WAYS = "Other settings of this kind";
    EVERY_POSITION = "Every position";
    POSITION = "Position";
    MARK = "Mark";
    STANDS_AT = "Work stands at";
    MOVE = "Move";
    ERROR = "Error";
    RADII_EVEN = "Circles drawn evenly spaced.";
    NO_GEARS = "No gears";

    SPINDLE = "spindle";
    WORM_SHAFT = "worm shaft";
    IDLER = "idler";
    STUD = "stud";

    RANK = "Rank";
    NEIGHBOURS = "neighbours";
    WORM_IS_OUT = "Worm out of mesh";
    NO_EXACT_WAY = "No exact way with what you own.";
    NO_PLAIN = "no plain setting is exact";
    ONE_PART_IS = "One part is ";
    ONE_MOVE_IS = "Each move is ";
    WHOLE_TURNS = " turns of the handle, on any circle.";
    ENDS_IN = "Ends in";
    START = "start";
    FORWARD = "forward";
    BACK = "back";
    CREEP_CHECK = "pin out, plate stop out, clamp off. Turn the handle one turn clockwise: the plate must go";
    IF_FOLLOWS = "If it follows the handle, change the idlers by one.";
    IF_AGAINST = "If it goes against the handle, change the idlers by one.";

    NEVER_ADD_UP = "Errors never add up.";
    ADDS_UP = "The error grows evenly and all of it lands in the last gap.";
    ADDS_UP_ROUND = "The error grows evenly from move to move.";
    CLAMP_EACH_CUT = "The spindle clamp goes on for each cut.";
    WORM_OUT = "Worm out: hold the work; putting it back loses the place.";
    FINGERS_OUT = "Fingers out, guard on.";
    PLATE_FREE = "Plate stop out for the whole job: the gears turn the plate.";
    BEFORE_FIRST_CUT = "Before the first cut:";
    NO_PIN = "No pin holds the handle: clamp before each cut.";
    BACK_FIRST = "Back first, forward last, so the slack always ends on one side.";
    MOVES_DIFFER = "The moves differ: the table below gives each one.";
}

/// Name of a kind of way.
#[must_use]
pub fn kind(kind: Kind) -> &'static str {
    match kind {
        Kind::Direct => "Direct",
        Kind::Plain => "Plain",
        Kind::Handwheel => "Handwheel dial",
        Kind::Compound => "Compound, two circles",
        Kind::Differential => "Differential",
        Kind::FineDial => "Fine dial",
        Kind::NearestHole => "Nearest hole",
        _ => "Another way",
    }
}

/// Why a kind of way is not offered.
#[must_use]
pub fn reason(reason: Reason) -> &'static str {
    match reason {
        Reason::NoPlates => "no plates are listed in Shop",
        Reason::NoCircle => "none of your circles comes out even",
        Reason::OutOfReach => "the circles lie outside the handle’s reach",
        Reason::NoDirectPlate => "the head has no direct plate",
        Reason::NotOnNotches => "not all positions fall on notches",
        Reason::WormStaysIn => "the worm does not drop out",
        Reason::NoHandwheel => "the handwheel has no dial",
        Reason::NoFineDial => "the head has no fine dial",
        Reason::TravelTooShort => "the dial’s travel does not cover half a hole space",
        Reason::PlateStopFixed => "the plate stop does not withdraw",
        Reason::OneCircle => "no plate has two circles for the pins",
        Reason::NothingNearer => "two circles come no nearer than one",
        Reason::NotEqualMoves => "the moves are not equal",
        Reason::PlainIsExact => "a plain setting is exact already",
        Reason::NoGears => "no change gears are listed in Shop",
        Reason::NoTrain => "no train of your gears gives the ratio",
        Reason::Tilted => "the spindle is tilted and the gears need it level",
        _ => "the head cannot do it",
    }
}

/// A kind of way as a value: in `data-value` and in ids.
#[must_use]
pub fn key(kind: Kind) -> &'static str {
    match kind {
        Kind::Direct => "direct",
        Kind::Plain => "plain",
        Kind::Handwheel => "handwheel",
        Kind::Compound => "compound",
        Kind::Differential => "differential",
        Kind::FineDial => "fine-dial",
        Kind::NearestHole => "nearest",
        _ => "other",
    }
}

/// A worm ratio: `40 : 1`.
#[must_use]
pub fn ratio(ratio: Fraction) -> String {
    grouped(ratio.num()) + " : " + &grouped(ratio.den())
}

/// How many circles.
#[must_use]
pub fn circles(n: usize) -> String {
    count(u32::try_from(n).unwrap_or(u32::MAX), "circle", "circles")
}

/// A span of counts: `15 to 49`.
#[must_use]
pub fn from_to(least: u16, most: u16) -> String {
    if least == most {
        return least.to_string();
    }
    least.to_string() + " to " + &most.to_string()
}

/// How an angle was read.
#[must_use]
pub fn read_as_angle(angle: Angle) -> String {
    let written = |value: Result<Fraction, handturn::Error>, places: u8, text: String| {
        let scaled = value.and_then(|value| value.times(10_i64.pow(u32::from(places))));
        let exact = scaled.is_ok_and(Fraction::is_whole);
        (if exact { " = " } else { " ≈ " }).to_owned() + &text
    };
    let dms = written(angle.arcsec(), 3, Dms { angle, places: 3 }.to_string());
    let degrees = angle.degrees().map(|d| decimal(d, 6) + "°").unwrap_or_default();
    let degrees = written(angle.degrees(), 6, degrees);
    // Whole degrees are the same in both.
    let degrees = if degrees == dms { String::new() } else { degrees };
    ["Read as ", &plain(angle.turns()), " of a turn", &dms, &degrees, "."].concat()
}

/// What an order does whose step shares a factor with the parts.
#[must_use]
pub fn order_shifts(every: u32, count: u32, shared: u64) -> String {
    let cycle = u64::from(count).checked_div(shared).unwrap_or(0);
    [
        &grouped(i64::from(every)),
        " and ",
        &grouped(i64::from(count)),
        " share ",
        &shared.to_string(),
        ": after every ",
        &cycle.to_string(),
        " cuts the order moves on by one part, so that each part is cut once.",
    ]
    .concat()
}

/// A word of the working to check by hand.
#[must_use]
pub fn working(word: Word) -> String {
    match word {
        Word::SetAsIfFor(parts) => return "Set as if for ".to_owned() + &grouped(i64::from(parts)),
        Word::PinEndsInHole => "no cut, the pin ends in hole",
        Word::NearMove => "A move near it",
        Word::Gears => "Gears",
        Word::PerPart => "Per part",
        Word::OneHandleTurn => "One handle turn moves the plate",
        Word::AllMoves => "All moves, the closing one too",
        Word::OneHole => "One hole",
        Word::OneMark => "One mark",
        Word::TimesRound(times) => return times.to_string() + " times round",
        Word::Worst => "Worst",
        Word::Neighbours => "Neighbours",
        Word::Closing => CLOSING,
        Word::AsWanted => "as wanted",
        Word::ShortAfterAll => "short after all",
        Word::LongAfterAll => "over after all",
        Word::HandleTurns => "turns of the handle",
        Word::WorkTurns => "turns of the work",
        Word::Notches => "notches",
        Word::DialMarks => "marks",
        _ => "",
    }
    .to_owned()
}

#[cfg(test)]
mod tests {
    use super::*;
    use handturn::divide::Kind;

    #[test]
    fn no_label_blames_or_boasts() {
        let kinds = Kind::ALL.map(kind);
        let runs = run::ALL.into_iter().flatten();
        let ours = dial::ALL.iter().chain(plate::ALL).chain(card::ALL);
        let rooms = shop_file::ALL.iter().chain(shop_lists::ALL).chain(thread::ALL).chain(ours);
        let gears = gear::EVERY.into_iter().flatten();
        let sums = bench::EVERY.iter().copied().flatten();
        for text in ALL.iter().chain(runs).chain(gears).chain(sums).chain(rooms).chain(&kinds) {
            assert!(!text.trim().is_empty());
            let text = text.to_lowercase();
            assert!(!text.contains('!') && !text.contains("error:"), "{text}");
            for word in text.split(|c: char| !c.is_alphabetic()) {
                let blames = ["invalid", "oops", "sorry", "perfect", "optimal", "please"];
                assert!(!blames.iter().any(|start| word.starts_with(start)), "{text}");
            }
        }
    }

    #[test]
    fn every_label_stands_once() {
        for (k, text) in ALL.iter().enumerate() {
            assert!(!ALL[..k].contains(text), "{text} stands twice");
        }
    }
}
