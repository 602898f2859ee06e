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
        (Field::Angle | Field::Form | Field::PressureAngle | Field::Helix | Field::Shafts | Field::Undercut | Field::CutterAngle, Cause::OutOfRange { least, greatest }) => {
            [name, " must be between ", &least.to_string(), " and ", &grouped(greatest.into()), " degrees."].concat()
        }
        (Field::List, Cause::Empty) => "The list needs two angles or more.".to_owned(),
        // Of a name only its letters were typed, or one part of it comes to nothing.
        (Field::Thread, Cause::Empty | Cause::Zero) if !typed.trim().is_empty() => "No thread goes by this name.".to_owned(),
        (Field::Thread, Cause::NotANumber | Cause::Conflict) => "No thread goes by this name.".to_owned(),
        (Field::Gears, Cause::Empty) => "No change gears are given.".to_owned(),
        (Field::Drills, Cause::Empty) => "None of the drills given is the right size.".to_owned(),
        (Field::Diameter, Cause::Empty) => {
            "A square thread needs the diameter of its root.".to_owned()
        }
        (Field::Fit, Cause::NotANumber) => {
            "A fit is a hole in capitals and a shaft in small letters, like H7/g6.".to_owned()
        }
        (_, Cause::Empty) => name.to_owned() + " stands empty.",
        (_, Cause::NotANumber) => name.to_owned() + " must be a number.",
        (_, Cause::NotWhole) => name.to_owned() + " must be a whole number.",
        (field, Cause::OutOfRange { least, greatest }) if in_um(field) => {
            [name, " must be from ", &um(least), " to ", &um(greatest), " mm."].concat()
        }
        (_, Cause::OutOfRange { least, greatest }) => {
            [counted(error.field), " must be from ", &grouped(least.into()), " to ", &grouped(greatest.into()), "."].concat()
        }
        (_, Cause::ThousandsMark) => {
            "A comma before three figures can mean thousands or a decimal mark. Leave it out: 1000, or write 1.0.".to_owned()
        }
        (_, Cause::SixtyOrMore) => "Minutes and seconds must be below 60.".to_owned(),
        (_, Cause::Twice) => name.to_owned() + " can be listed only once.",
        (Field::Passes, Cause::TooMany { most }) => {
            ["Cuts as small as these make more than ", &grouped(i64::from(most)), " passes."].concat()
        }
        (_, Cause::TooMany { most }) => {
            [name, " can hold at most ", &grouped(i64::from(most)), "."].concat()
        }
        (_, Cause::Zero) => name.to_owned() + " can’t be 0.",
        (_, Cause::Overflow) => {
            "These figures are too long to work out exactly. Use fewer digits.".to_owned()
        }
        (_, Cause::Conflict) => conflict(error.field)
            .map_or_else(|| name.to_owned() + " does not go with the other values.", str::to_owned),
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
        (_, Cause::Taper) => {
            "This is a taper pipe thread. Only parallel threads can be worked out here.".to_owned()
        }
        (_, Cause::NotMultiple { of }) => {
            [name, " must be a multiple of ", &of.to_string(), "."].concat()
        }
        (_, Cause::PinFalls { least_um, greatest_um }) => {
            pin("falls into the gap", least_um, greatest_um)
        }
        (_, Cause::PinRides { least_um, greatest_um }) => {
            pin("rides on the tips", least_um, greatest_um)
        }
        (_, Cause::HolesMeet { least_um }) => {
            ["The holes would break into each other. Make the ring’s radius ", &um(least_um), " mm or more, or the holes smaller."].concat()
        }
        (_, Cause::Pointed { greatest_um }) => {
            ["The teeth would come to a point below the outside. Turn the blank to ", &um(greatest_um), " mm or less."].concat()
        }
        (_, Cause::TooFewTeeth { least }) => {
            ["No cutter of the set cuts fewer than ", &least.to_string(), " teeth."].concat()
        }
        (_, Cause::Newer) => "This was written by a newer version of Handturn.".to_owned(),
        (_, _) => name.to_owned() + " is not possible now.",
    };
    Said { wrong, typed: excerpt(error, typed).to_owned(), instead: instead(error, typed) }
}

/// What a field's range counts, where that is not the field itself.
fn counted(of: Field) -> &'static str {
    match of {
        Field::Passes => "The number of passes",
        Field::SlideDial | Field::ThreadDial => "Marks of the dial",
        Field::Gearbox => "Both numbers of a ratio of head or gearbox",
        Field::Tool => "The tool’s figure",
        _ => field(of),
    }
}

/// What does not go with what, where more can be said than that.
const fn conflict(field: Field) -> Option<&'static str> {
    Some(match field {
        Field::Form => {
            "Each flat must be from 0 to below half a pitch, and both must leave some depth."
        }
        Field::Pitch => {
            "This pitch does not go with the thread: its series must have it, and a core must be left."
        }
        Field::Starts => {
            "The lead must be a whole number of pitches, and rise by no more than 45 degrees."
        }
        Field::Thread => "No such size stands in this standard.",
        Field::Class => "No standard has this class for this thread and side.",
        Field::Diameter => "These diameters don’t go together.",
        Field::Wire => "No wire of this size finds a place on both flanks here.",
        Field::Passes => {
            "The least cut must be no more than the first, and what is cut no more than the depth."
        }
        Field::Speed => "No speed is slow enough for this groove: turn the spindle by hand.",
        Field::Cutter => "The collar must be smaller than the cutter.",
        Field::Ring => "The ring runs into another one, or the blank has no room for it.",
        Field::Generations => "Nothing that is owned can drill a first plate.",
        Field::SlideDial => "A slide that is set over can’t read the diameter on its dial.",
        Field::Times => "So few steps leave cuts that do not meet. Take more, or a larger mill.",
        Field::CutterAngle => {
            "The cutter’s angle must be larger than one part, and cut to some depth above the centre."
        }
        Field::Land => "The land takes up all of a part.",
        Field::Key => "Keys this wide leave no space between them.",
        Field::Fit => "The standard has no such class at this size.",
        Field::Measured => {
            "Measure more closely: off by this much, nothing keeps the fit for sure."
        }
        Field::Counterbore => {
            "A counterbore must be larger than its hole and smaller than the outside."
        }
        Field::Wall => "No wall this thick is left.",
        Field::Chain => "The lower deviation lies above the upper one.",
        Field::Legs => {
            "It takes two to eight legs longer than their bends, and one angle or one for each bend."
        }
        Field::Joggle => {
            "The two bends alone don’t make this step. Change the angle, or bend to another radius."
        }
        Field::Temperature => {
            "The room must have −40 to 60 °C, the shaft −200 °C to what the room has."
        }
        Field::Former => "At this size nothing yields: it springs straight back.",
        Field::Spring => {
            "Coils this tight can’t be wound: the mean diameter must be at least twice the wire."
        }
        Field::Coils => "These coils leave none that move, or no length to move in.",
        Field::Name => "A name is made of letters, figures and _, a letter first.",
        Field::Rise => "The rise must be less than the cam’s radius.",
        Field::Module => "Two wheels that run together need the same module or diametral pitch.",
        Field::Shift => {
            "The profile shift must be from −1 to 1 modules, and leave teeth that can meet."
        }
        Field::Taper => {
            "The large end must be the larger, and the taper at most 20 times its length."
        }
        Field::Chord => "A chord is no longer than the circle is wide.",
        Field::Neck => "The neck must be smaller than the ball and the stock.",
        Field::Backlash => {
            "Backlash and thinning must be from 0 to a small part of the module, and within reach."
        }
        _ => return None,
    })
}

/// Whether the core counts this field's range in micrometres.
#[must_use]
pub const fn in_um(field: Field) -> bool {
    matches!(
        field,
        Field::Pitch | Field::Major | Field::Diameter | Field::Lead | Field::Screw | Field::Module
    )
}

fn pin(does: &str, least_um: u32, greatest_um: u32) -> String {
    ["That pin ", does, ". Use ", &um(least_um), " to ", &um(greatest_um), " mm."].concat()
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
        Field::Reaction => "Time from seeing to stopping",
        Field::Engagement => "Engagement",
        Field::Drills => "A drill",
        Field::Lead => "The lead",
        Field::Screw => "The lead screw",
        Field::Gearbox => "A ratio of head or gearbox",
        Field::Counts => "Counts of the encoder",
        Field::Undo => "Taking back",
        Field::Title => "The title",
        Field::Teeth => "Teeth",
        Field::Module => "Module",
        Field::DiametralPitch => "Diametral pitch",
        Field::PressureAngle => "Pressure angle",
        Field::Helix => "Helix angle",
        Field::Shift => "Profile shift",
        Field::Depth => "Depth",
        Field::Cutter => "The cutter",
        Field::Pin => "A pin",
        Field::Span => "Teeth in the span",
        Field::Reading => "A reading on this wheel",
        Field::Blank => "The blank",
        Field::Backlash => "Backlash",
        Field::Centres => "Centre distance",
        Field::Face => "Face width",
        Field::Shafts => "Angle between the shafts",
        Field::CentreHeight => "Centre height",
        Field::Ring => "The ring",
        Field::Drill => "The drill",
        Field::Generations => "Generations",
        Field::Source => "A cause of inaccuracy",
        Field::Vernier => "The vernier",
        Field::Drum => "The drum",
        Field::Table => "The table’s screw",
        Field::Undercut => "Undercut",
        Field::CutterAngle => "Angle of the cutter",
        Field::Land => "The land",
        Field::Keys => "The number of keys",
        Field::Key => "The key",
        Field::Sides => "The number of flats",
        Field::Flats => "Across flats",
        Field::Leaves => "The number of leaves",
        Field::Rise => "The rise",
        Field::Pieces => "A leaf or block",
        Field::Taper => "The taper",
        Field::Fit => "The fit",
        Field::Grade => "The grade",
        Field::Measured => "What was measured",
        Field::Radius => "The radius",
        Field::Chord => "The chord",
        Field::Scallop => "The scallop",
        Field::Neck => "The neck",
        Field::Clearance => "The play to drop on with",
        Field::Temperature => "The temperature",
        Field::Expansion => "Millionths a degree",
        Field::Counterbore => "The counterbore",
        Field::Wall => "The wall",
        Field::Chain => "A length",
        Field::Thickness => "The thickness",
        Field::Bend => "The inside radius",
        Field::Neutral => "K",
        Field::Legs => "The legs",
        Field::Joggle => "The step",
        Field::Former => "The former",
        Field::Yield => "Yield strength, MPa,",
        Field::Modulus => "Modulus, MPa,",
        Field::Load => "The load",
        Field::Coils => "The number of coils",
        Field::Spring => "The spring",
        Field::Value => "The value",
        Field::Name => "The name",
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

    /// The names in the body of an enum of the core, and the whole of each.
    fn variants(of: &str) -> Vec<(String, String)> {
        let source = include_str!("../../../core/src/error.rs");
        let body = source.split(&format!("pub enum {of} {{\n")).nth(1).unwrap();
        let body = body.split("\n}\n").next().unwrap();
        let code: Vec<&str> =
            body.lines().map(str::trim).filter(|line| !line.starts_with("///")).collect();
        let whole = code.join(" ").replace("{ ", "{").replace(", }", "}");
        let name = |text: &str| text.split([' ', ',', '{']).next().unwrap().to_owned();
        let mut found = Vec::new();
        let (mut depth, mut from) = (0, 0);
        for (k, c) in whole.char_indices() {
            match c {
                '{' => depth += 1,
                '}' => depth -= 1,
                ',' if depth == 0 => {
                    let text = whole[from..k].trim().to_owned();
                    found.push((name(&text), text));
                    from = k + 1;
                }
                _ => {}
            }
        }
        found
    }

    /// Every field of the core, read from its source so that none is forgotten.
    fn fields() -> Vec<Field> {
        let names = variants("Field").into_iter();
        names.map(|(name, _)| serde_json::from_str(&format!("\"{name}\"")).unwrap()).collect()
    }

    /// Every cause, its limits 3000 and 7000 (a single one 7000).
    fn causes() -> Vec<Cause> {
        let one = |(name, text): (String, String)| {
            let Some((_, limits)) = text.split_once('{') else { return format!("\"{name}\"") };
            let keys = limits.trim_end_matches('}').split(',').map(|entry| {
                let key = entry.split(':').next().unwrap().trim();
                format!("\"{key}\": {}", if key.starts_with("least") { 3000 } else { 7000 })
            });
            format!("{{\"{name}\": {{{}}}}}", keys.collect::<Vec<_>>().join(", "))
        };
        let texts = variants("Cause").into_iter().map(one);
        texts
            .map(|text| serde_json::from_str(&text).unwrap_or_else(|e| panic!("{text}: {e}")))
            .collect()
    }

    #[test]
    fn every_field_has_a_name_of_its_own() {
        let fields = fields();
        assert!(fields.len() >= 44);
        let mut names: Vec<&str> = fields.iter().map(|one| field(*one)).collect();
        names.sort_unstable();
        let all = names.len();
        names.dedup();
        assert_eq!(names.len(), all, "{names:?}");
    }

    #[test]
    fn every_error_says_what_is_so_and_blames_nobody() {
        let causes = causes();
        assert!(causes.len() >= 19);
        for (field, cause) in fields().iter().flat_map(|f| causes.iter().map(move |c| (*f, *c))) {
            let said = said(&Error::new(field, cause), "x");
            let text = [&*said.wrong, said.instead].join(" ").to_lowercase();
            assert!(
                said.wrong.ends_with('.') && said.wrong.len() > 10,
                "{field:?} {cause:?}: {text}"
            );
            for word in ["invalid", "oops", "sorry", "error", "illegal", "failed"] {
                assert!(!text.contains(word), "{field:?} {cause:?}: {text}");
            }
            // Only what can't be done now is said so.
            assert_eq!(said.wrong.ends_with("is not possible now."), cause == Cause::NotNow);
            // What is allowed is said, in millimetres or as it is.
            let whole = format!("{cause:?}").contains("7000") && field != Field::Parts;
            assert!(
                !whole || text.contains("7,000") || text.contains("7000") || text.contains(" 7 mm"),
                "{text}"
            );
            let least = format!("{cause:?}").contains("3000") && field != Field::Parts;
            assert!(
                !least || text.contains("3,000") || text.contains("3000") || text.contains(" 3 "),
                "{text}"
            );
        }
    }

    #[test]
    fn threads_say_what_is_allowed() {
        let row = |field, cause, wrong: &str| check(Error::new(field, cause), "x", wrong, "x", "");
        let range = |least, greatest| Cause::OutOfRange { least, greatest };
        row(Field::Lead, range(157, 1_206_500), "The lead must be from 0.157 to 1206.5 mm.");
        row(Field::Screw, range(50, 200_000), "The lead screw must be from 0.05 to 200 mm.");
        row(Field::Starts, range(1, 60), "Starts must be from 1 to 60.");
        row(Field::Angle, range(5, 60), "Angle must be between 5 and 60 degrees.");
        row(Field::Passes, range(1, 9), "The number of passes must be from 1 to 9.");
        row(
            Field::Gearbox,
            range(1, 10_000),
            "Both numbers of a ratio of head or gearbox must be from 1 to 10,000.",
        );
        row(
            Field::Wire,
            Cause::WireSinks { least_um: 379, greatest_um: 757 },
            "That wire sinks below the crests. Use 0.379 to 0.757 mm.",
        );
        row(Field::Class, Cause::Conflict, "No standard has this class for this thread and side.");
    }
}
