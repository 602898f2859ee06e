//! What Run says, screen by screen; here what several of them say.
mod at;
mod list;
mod sheet;
mod start;

pub use at::*;
pub use list::*;
pub use sheet::*;
pub use start::*;

use super::{angle_text, count, grouped, moves};
use handturn::divide::{Asked, Leg, Part, Place};
use handturn::head::Sense;
use handturn::number::Fraction;
use handturn::run::Frozen;

/// All labels, for the test that reads them.
#[cfg(test)]
pub(crate) const ALL: [&[&str]; 4] = [at::ALL, list::ALL, sheet::ALL, start::ALL];

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

/// The other sense.
#[must_use]
pub const fn turned(sense: Sense) -> Sense {
    match sense {
        Sense::Clockwise => Sense::Anticlockwise,
        Sense::Anticlockwise => Sense::Clockwise,
    }
}
