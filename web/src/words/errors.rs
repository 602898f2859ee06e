//! What is said when something typed cannot be used: what is wanted, what was
//! given, what to do.
use super::grouped;
use handturn::{Cause, Error, Field};

/// An error as sentences: what is wrong and what is allowed; then what was typed;
/// then what else to do, if anything.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Said {
    /// What is wrong and what is allowed.
    pub wrong: String,
    /// The part of the text that was read so, if any was typed.
    pub typed: String,
    /// What to do instead.
    pub instead: &'static str,
}

/// What to say about `error` found in `typed`.
#[must_use]
pub fn said(error: &Error, typed: &str) -> Said {
    let name = field(error.field);
    let wrong = match (error.field, error.cause) {
        (Field::Parts, Cause::Empty | Cause::NotANumber | Cause::NotWhole | Cause::OutOfRange { .. }) => {
            "Parts must be a whole number from 2 to 10,000.".to_owned()
        }
        (Field::Angle, Cause::OutOfRange { .. }) => {
            "Angle must be between 0 and 360 degrees.".to_owned()
        }
        (Field::List, Cause::Empty) => "The list needs two angles or more.".to_owned(),
        (Field::Thread, Cause::NotANumber | Cause::Conflict) => "No thread goes by this name.".to_owned(),
        (_, Cause::Empty) => name.to_owned() + " stands empty.",
        (_, Cause::NotANumber) => name.to_owned() + " must be a number.",
        (_, Cause::NotWhole) => name.to_owned() + " must be a whole number.",
        (Field::Pitch | Field::Major | Field::Diameter | Field::Lead | Field::Screw, Cause::OutOfRange { least, greatest }) => {
            [name, " must be from ", &um(least), " to ", &um(greatest), " mm."].concat()
        }
        (_, Cause::OutOfRange { least, greatest }) => {
            [name, " must be from ", &grouped(least.into()), " to ", &grouped(greatest.into()), "."].concat()
        }
        (_, Cause::ThousandsMark) => {
            "A comma before three figures can mean thousands or a decimal mark. Leave it out: 1000, or write 1.0.".to_owned()
        }
        (_, Cause::SixtyOrMore) => "Minutes and seconds must be below 60.".to_owned(),
        (_, Cause::Twice) => name.to_owned() + " can be listed only once.",
        (_, Cause::TooMany { most }) => {
            [name, " can hold at most ", &grouped(i64::from(most)), "."].concat()
        }
        (_, Cause::Zero) => name.to_owned() + " can’t be 0.",
        (_, Cause::Overflow) => {
            "These figures are too long to work out exactly. Use fewer digits.".to_owned()
        }
        (_, Cause::Conflict) => name.to_owned() + " does not go with the other values.",
        (_, Cause::OutOfLengths { least_um, greatest_um }) => {
            [name, " must be from ", &um(least_um), " to ", &um(greatest_um), " mm."].concat()
        }
        (_, Cause::Blunt { greatest_um }) => {
            ["The tool’s nose is too wide for the root: at most ", &um(greatest_um), " mm."].concat()
        }
        (_, Cause::WireSinks { least_um, greatest_um }) => {
            wire("sinks below the crests", least_um, greatest_um)
        }
        (_, Cause::WireRides { least_um, greatest_um }) => {
            wire("rides on the crests", least_um, greatest_um)
        }
        (_, Cause::WireRests { least_um, greatest_um }) => {
            wire("rests in the root", least_um, greatest_um)
        }
        (_, Cause::NotMultiple { of }) => {
            [name, " must be a multiple of ", &of.to_string(), "."].concat()
        }
        (_, Cause::Newer) => "This was written by a newer version of Handturn.".to_owned(),
        (_, _) => name.to_owned() + " is not possible now.",
    };
    Said { wrong, typed: excerpt(error, typed).to_owned(), instead: instead(error, typed) }
}

fn wire(does: &str, least_um: u32, greatest_um: u32) -> String {
    ["That wire ", does, ". Use ", &um(least_um), " to ", &um(greatest_um), " mm."].concat()
}

/// Micrometres as millimetres.
fn um(um: u32) -> String {
    handturn::number::Fraction::new(i64::from(um), 1000)
        .map_or_else(|_| String::new(), |mm| super::decimal(mm, 3))
}

/// The part of `typed` that the error is about; all of it when it names none.
fn excerpt<'a>(error: &Error, typed: &'a str) -> &'a str {
    let (from, to) = (usize::from(error.span.0), usize::from(error.span.1));
    let part = typed.get(from..to).filter(|part| !part.trim().is_empty());
    let shown = part.unwrap_or(typed).trim();
    // What stands in a long list is not all repeated.
    shown.char_indices().nth(40).and_then(|(end, _)| shown.get(..end)).unwrap_or(shown)
}

fn instead(error: &Error, typed: &str) -> &'static str {
    match error.field {
        Field::Parts if typed.contains(['.', '/', '°']) => "For part of a turn, use Angle.",
        Field::Angle if error.cause == Cause::NotANumber => "Write 17°30′, 17.5 or 1/3 turn.",
        Field::Plates | Field::Holes => "Part circles by spaces and plates by /.",
        Field::Gears => "Part gears by spaces; 24x2 is two of 24.",
        Field::Ratio => "Write 40 or 40:1.",
        Field::Thread => "Write M6x0.75, 1/4 BSF, 2 BA or Tr16x4.",
        Field::Diameter if error.cause == Cause::Conflict => {
            "A blank lies above the pitch diameter, a bore below it."
        }
        _ => "",
    }
}

/// What a field is called in a sentence.
#[must_use]
pub fn field(field: Field) -> &'static str {
    match field {
        Field::Parts => "Parts",
        Field::Angle => "Angle",
        Field::Times => "How many moves",
        Field::List => "The list",
        Field::Marks => "The marks",
        Field::CutOrder => "Cutting order",
        Field::Ratio => "Worm ratio",
        Field::Plates => "A plate",
        Field::Holes => "Holes in a circle",
        Field::Direct => "Direct notches",
        Field::Gears => "Teeth of a gear",
        Field::Mounting => "Gear mounting",
        Field::Arms => "Sector arms",
        Field::Slack => "Slack",
        Field::Handwheel => "Handwheel dial",
        Field::FineDial => "Fine dial",
        Field::Reach => "Handle reach",
        Field::Length => "Length",
        Field::Position => "Position",
        Field::Event => "This step",
        Field::Rounds => "Rounds",
        Field::Record => "The record",
        Field::Thread => "The thread",
        Field::Form => "Angle between the flanks",
        Field::Major => "Outside",
        Field::Pitch => "Pitch",
        Field::Starts => "Starts",
        Field::Class => "Class",
        Field::Diameter => "Diameter",
        Field::Tool => "The tool",
        Field::Wire => "A wire",
        Field::Passes => "The cut",
        Field::SlideDial => "The dial",
        Field::ThreadDial => "The thread dial",
        Field::Speed => "Speed",
        Field::Engagement => "Engagement",
        Field::Drills => "A drill",
        Field::Lead => "The lead",
        Field::Screw => "The lead screw",
        Field::Gearbox => "A ratio of head or gearbox",
        _ => "The number",
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(error: Error, typed: &str, wrong: &str, shown: &str, instead: &str) {
        let said = said(&error, typed);
        assert_eq!((&*said.wrong, &*said.typed, said.instead), (wrong, shown, instead));
    }

    #[test]
    fn rows() {
        let parts = "Parts must be a whole number from 2 to 10,000.";
        let at = |field, cause| Error::new(field, cause);
        check(
            at(Field::Parts, Cause::NotWhole),
            "127.5",
            parts,
            "127.5",
            "For part of a turn, use Angle.",
        );
        check(
            at(Field::Parts, Cause::OutOfRange { least: 2, greatest: 10_000 }),
            "1",
            parts,
            "1",
            "",
        );
        check(
            at(Field::Holes, Cause::OutOfRange { least: 2, greatest: 1000 }).at(3, 4),
            "15 1 17",
            "Holes in a circle must be from 2 to 1,000.",
            "1",
            "Part circles by spaces and plates by /.",
        );
        check(
            at(Field::Angle, Cause::SixtyOrMore),
            "7°60'",
            "Minutes and seconds must be below 60.",
            "7°60'",
            "",
        );
        let long = "9".repeat(60);
        check(
            at(Field::Ratio, Cause::Overflow),
            &long,
            "These figures are too long to work out exactly. Use fewer digits.",
            &long[..40],
            "Write 40 or 40:1.",
        );
    }

    #[test]
    fn every_error_says_what_is_so_and_blames_nobody() {
        use Field::*;
        let fields = [
            Parts, Angle, Times, List, Marks, CutOrder, Ratio, Plates, Holes, Direct, Gears,
            Mounting, Arms, Slack, Handwheel, FineDial, Reach, Length, Position, Event, Rounds,
            Fraction, Record, Thread, Form, Major, Pitch, Starts, Class, Diameter, Tool, Wire,
            Passes, SlideDial, ThreadDial, Speed, Engagement, Drills, Lead, Screw, Gearbox,
        ];
        let causes = [
            Cause::Empty,
            Cause::NotANumber,
            Cause::NotWhole,
            Cause::OutOfRange { least: 3, greatest: 7 },
            Cause::ThousandsMark,
            Cause::SixtyOrMore,
            Cause::Twice,
            Cause::TooMany { most: 9 },
            Cause::Zero,
            Cause::Overflow,
            Cause::Conflict,
            Cause::NotNow,
            Cause::Newer,
            Cause::OutOfLengths { least_um: 1, greatest_um: 9 },
            Cause::Blunt { greatest_um: 50 },
            Cause::WireSinks { least_um: 412, greatest_um: 663 },
            Cause::WireRides { least_um: 412, greatest_um: 663 },
            Cause::WireRests { least_um: 412, greatest_um: 663 },
            Cause::NotMultiple { of: 3 },
        ];
        for (field, cause) in fields.iter().flat_map(|f| causes.iter().map(move |c| (*f, *c))) {
            let said = said(&Error::new(field, cause), "x");
            let text = [&*said.wrong, said.instead].join(" ").to_lowercase();
            assert!(
                said.wrong.ends_with('.') && said.wrong.len() > 10,
                "{field:?} {cause:?}: {text}"
            );
            for word in ["invalid", "oops", "sorry", "error", "illegal", "failed"] {
                assert!(!text.contains(word), "{field:?} {cause:?}: {text}");
            }
        }
    }
}
