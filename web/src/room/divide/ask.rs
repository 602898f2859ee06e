//! What is asked: the fields of each kind of division, read into one question.
use crate::fields::Fields;
use handturn::bounds;
use handturn::dial::lines::{Every, graduate};
use handturn::divide::{Asked, Numbers, Parts, Question, Repeated};
use handturn::head::Sense;
use handturn::measure::read;
use handturn::{Cause, Error, Field};

/// A kind of division.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Kind {
    /// Equal parts.
    Parts,
    /// One angle, again and again.
    Angle,
    /// A list of angles.
    List,
    /// Marks of a dial.
    Dial,
}

/// The fields of the four kinds with what they read as until something is typed.
const NAMES: [&[(&str, &str)]; 4] = [
    &[("parts", "127"), ("every", "1")],
    &[("angle", "17°30′"), ("times", "1")],
    &[("list", "0\n17°30′\n40\n95")],
    &[
        ("marks", "360"),
        ("long", "10"),
        ("middle", "5"),
        ("long-mm", "6"),
        ("middle-mm", "4.5"),
        ("short-mm", "3"),
        ("number", "10"),
        ("climb", "1"),
        ("sense", "anticlockwise"),
        ("zero", "on"),
    ],
];

impl Kind {
    /// Its value in the field `kind`.
    #[must_use]
    pub(super) const fn value(self) -> &'static str {
        match self {
            Self::Parts => "parts",
            Self::Angle => "angle",
            Self::List => "list",
            Self::Dial => "dial",
        }
    }

    /// The kind chosen.
    #[must_use]
    pub(super) fn chosen(fields: &Fields) -> Self {
        match fields.get("kind") {
            "angle" => Self::Angle,
            "list" => Self::List,
            "dial" => Self::Dial,
            _ => Self::Parts,
        }
    }

    const fn names(self) -> &'static [(&'static str, &'static str)] {
        let [parts, angle, list, dial] = NAMES;
        match self {
            Self::Parts => parts,
            Self::Angle => angle,
            Self::List => list,
            Self::Dial => dial,
        }
    }
}

/// Whether `name` is a field of the kind chosen, or of any kind.
#[must_use]
pub(super) fn is_asked(fields: Option<&Fields>, name: &str) -> bool {
    let of = |names: &[(&str, &str)]| names.iter().any(|(own, _)| *own == name);
    match fields {
        Some(fields) => of(Kind::chosen(fields).names()),
        None => NAMES.iter().any(|names| of(names)),
    }
}

/// What stands in one of Divide's fields, as typed.
#[must_use]
pub(super) fn typed<'a>(fields: &'a Fields, name: &str) -> &'a str {
    fields.or(name, default(name))
}

/// What stands in one of Divide's fields; where that names a value of the card, that value.
#[must_use]
pub(super) fn followed<'a>(fields: &'a Fields, name: &str) -> &'a str {
    fields.follow(typed(fields, name))
}

fn default(name: &str) -> &'static str {
    NAMES.iter().copied().flatten().find(|(n, _)| *n == name).map_or("", |(_, text)| text)
}

/// The question as typed, or the field that cannot be read and why.
///
/// # Errors
/// The name of the first wrong field and its error.
pub(super) fn asked(fields: &Fields) -> Result<Asked, (&'static str, Error)> {
    read(Kind::chosen(fields), &|name| followed(fields, name))
}

/// The last question of the chosen kind that could be read.
#[must_use]
pub(super) fn last_good(fields: &Fields) -> Option<Asked> {
    read(Kind::chosen(fields), &|name| last_typed(fields, name)).ok()
}

/// Keeps the fields of a question that reads, as the last good one.
pub(super) fn keep_good(fields: &mut Fields) {
    if asked(fields).is_ok() {
        for (name, _) in Kind::chosen(fields).names() {
            let text = typed(fields, name).to_owned();
            fields.set(&good(name), &text);
        }
    }
}

/// What stood in `name` when the question last read, and comes to today.
#[must_use]
pub(super) fn last_typed<'a>(fields: &'a Fields, name: &str) -> &'a str {
    fields.follow(fields.or(&good(name), default(name)))
}

fn good(name: &str) -> String {
    "good-".to_owned() + name
}

type Text<'t> = &'t dyn Fn(&'static str) -> &'t str;

fn read<'t>(kind: Kind, text: Text<'t>) -> Result<Asked, (&'static str, Error)> {
    let count = |name, bound| read::count(text(name), bound).map_err(|e| (name, e));
    let (asked, main) = match kind {
        Kind::Parts => {
            let count_parts = count("parts", bounds::DIVISIONS)?;
            let every = count("every", bounds::EVERY)?;
            (Asked::Parts(Parts { count: count_parts, every }), "parts")
        }
        Kind::Angle => {
            let angle = read::angle(text("angle")).map_err(|e| ("angle", e))?;
            let times = count("times", bounds::TIMES)?;
            (Asked::Angle(Repeated { angle, times }), "angle")
        }
        Kind::List => (Asked::List(read::angles(text("list")).map_err(|e| ("list", e))?), "list"),
        Kind::Dial => (dial(text)?, "marks"),
    };
    let named = |error: Error| match error.field {
        Field::CutOrder => ("every", error),
        Field::Times => ("times", error),
        _ => (main, error),
    };
    Question::check(&asked.question()).map_err(named)?;
    Ok(asked)
}

fn dial<'t>(text: Text<'t>) -> Result<Asked, (&'static str, Error)> {
    let marks = read::count(text("marks"), bounds::DIVISIONS).map_err(|e| ("marks", e))?;
    let every = |name: &'static str| match text(name).trim() {
        "" | "0" => Ok(None),
        some => read::count(some, bounds::EVERY).map(Some).map_err(|e| (name, e.of(Field::Marks))),
    };
    let (long, middle, number) = (every("long")?, every("middle")?, every("number")?);
    let line = |every, name: &'static str| {
        let length = read::length(text(name), read::Unit::Mm).map_err(|e| (name, e))?;
        Ok(Every { every, length })
    };
    let lines = [line(long, "long-mm")?, line(middle, "middle-mm")?, line(Some(1), "short-mm")?];
    let numbers = match number {
        None => None,
        Some(every) => Some(Numbers {
            every,
            per_mark: read::count(text("climb"), bounds::TIMES)
                .map_err(|e| ("climb", e.of(Field::Marks)))?,
            climbs: if text("sense") == "clockwise" {
                Sense::Clockwise
            } else {
                Sense::Anticlockwise
            },
            zero: text("zero") == "on",
        }),
    };
    let marks = graduate(marks, &lines, numbers).map_err(|error| match error.cause {
        Cause::TooMany { .. } => ("middle", error),
        _ => ("marks", error),
    })?;
    Ok(Asked::Marks(marks))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(set: &[(&str, &str)], wanted: Result<&str, (&str, Cause)>) {
        let mut fields = Fields::default();
        for (name, value) in set {
            fields.set(name, value);
        }
        let found = asked(&fields);
        match wanted {
            Ok(start) => assert!(format!("{found:?}").starts_with(start), "{found:?}"),
            Err(wanted) => assert_eq!(found.map_err(|(name, e)| (name, e.cause)), Err(wanted)),
        }
    }

    #[test]
    fn rows() {
        let parts = Cause::OutOfRange { least: 2, greatest: 10_000 };
        check(&[], Ok("Ok(Parts(Parts { count: 127, every: 1 }))"));
        check(&[("parts", "64"), ("every", "5")], Ok("Ok(Parts(Parts { count: 64, every: 5 }))"));
        check(&[("parts", "127.5")], Err(("parts", Cause::NotWhole)));
        check(&[("parts", "1")], Err(("parts", parts)));
        check(&[("parts", "")], Err(("parts", Cause::Empty)));
        check(&[("every", "127")], Err(("every", Cause::OutOfRange { least: 1, greatest: 126 })));
        check(&[("kind", "angle")], Ok("Ok(Angle("));
        check(&[("kind", "angle"), ("angle", "7°60'")], Err(("angle", Cause::SixtyOrMore)));
        check(
            &[("kind", "angle"), ("angle", "361")],
            Err(("angle", Cause::OutOfRange { least: 0, greatest: 360 })),
        );
        check(&[("kind", "list")], Ok("Ok(List("));
        check(&[("kind", "list"), ("list", "10 20x")], Err(("list", Cause::NotANumber)));
        check(&[("kind", "dial")], Ok("Ok(Marks(Marks { count: 360"));
        check(
            &[("kind", "dial"), ("long", "397"), ("middle", "2")],
            Err(("middle", Cause::TooMany { most: 400 })),
        );
    }

    #[test]
    fn a_value_of_the_card_stands_in_any_field() {
        let parts = Cause::OutOfRange { least: 2, greatest: 10_000 };
        let value = ("value-n", "64");
        check(&[value, ("parts", "=n")], Ok("Ok(Parts(Parts { count: 64, every: 1 }))"));
        check(
            &[value, ("parts", " = N "), ("every", "5")],
            Ok("Ok(Parts(Parts { count: 64, every: 5 }"),
        );
        check(&[value, ("parts", "=m")], Err(("parts", Cause::NotANumber)));
        check(&[("value-n", "6.5"), ("parts", "=n")], Err(("parts", Cause::NotWhole)));
        check(&[("value-n", "1"), ("parts", "=n")], Err(("parts", parts)));
        let lean = [("kind", "angle"), ("value-lean", "1/7 turn"), ("angle", "=lean")];
        check(&lean, Ok("Ok(Angle(Repeated { angle: Angle(Fraction { num: 1, den: 7 })"));
        let dial =
            [("kind", "dial"), value, ("marks", "=n"), ("value-l", "7.25"), ("long-mm", "=l")];
        check(&dial, Ok("Ok(Marks(Marks { count: 64"));
        check(&[("kind", "dial"), ("long-mm", "=l")], Err(("long-mm", Cause::NotANumber)));
    }

    #[test]
    fn the_pattern_of_a_dial_says_which_mark_is_long() {
        let mut fields = Fields::default();
        fields.set("kind", "dial");
        let asked = asked(&fields).unwrap();
        let Question::Marks(dial) = asked.question() else { panic!("a dial") };
        let kinds: Vec<u8> = (0..11).filter_map(|k| dial.mark(k)).map(|mark| mark.kind).collect();
        assert_eq!(kinds, [0, 2, 2, 2, 2, 1, 2, 2, 2, 2, 0]);
        assert_eq!(dial.at(10, Sense::Clockwise).unwrap().number, Some(10));
    }

    #[test]
    fn the_last_question_that_read_is_kept() {
        let mut fields = Fields::default();
        fields.set("parts", "64");
        keep_good(&mut fields);
        fields.set("parts", "6x");
        keep_good(&mut fields);
        assert_eq!(last_good(&fields), Some(Asked::Parts(Parts { count: 64, every: 1 })));
        fields.set("value-n", "48");
        fields.set("parts", "=n");
        keep_good(&mut fields);
        fields.set("parts", "");
        assert_eq!(last_typed(&fields, "parts"), "48");
    }
}
