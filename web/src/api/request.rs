//! From plain objects to a question and a head, every value checked by name.
use super::given::{Given, dotted};
use super::refusal::Refusal;
use crate::owned::{self, Bad, Entry};
use handturn::bounds::{self, Bound, MAX_ANGLES, MAX_MARK_KINDS, MAX_PATTERN};
use handturn::divide::{Asked, MarkKind, Marks, Numbers, Parts, Repeated};
use handturn::head::{Head, Sense};
use handturn::list::List;
use handturn::measure::{Angle, Length, read};
use handturn::{Cause, Error, Field};

/// What can be asked; each question has one of the first four.
const ASKED: [&str; 7] = ["parts", "angle", "list", "marks", "every", "times", "head"];

/// The question in an object with `parts`, `angle`, `list` or `marks`.
///
/// # Errors
/// The first value that is missing, of the wrong kind or out of bounds, by name.
pub(super) fn question(given: &Given) -> Result<Asked, Refusal> {
    given.only("", &ASKED)?;
    let among = |there: &dyn Fn(&str) -> bool| -> Vec<&str> {
        ASKED.iter().take(4).filter(|key| there(key)).copied().collect()
    };
    // A question that is there but holds nothing is refused under its own name.
    let mut kinds = among(&|key| given.has(key));
    if kinds.is_empty() {
        kinds = among(&|key| given.names(key));
    }
    let [kind] = kinds[..] else {
        let both = Given::Text(kinds.join(" and "));
        return Err(Refusal::kind("question", "one of parts, angle, list or marks", &both));
    };
    let asked = match kind {
        "parts" => Asked::Parts(Parts {
            count: given.get("parts").count("parts", bounds::DIVISIONS)?,
            every: given.get("every").count_or("every", bounds::EVERY, 1)?,
        }),
        "angle" => Asked::Angle(Repeated {
            angle: angle(given.get("angle"), "angle")?,
            times: given.get("times").count_or("times", bounds::TIMES, 1)?,
        }),
        "list" => Asked::List(list(given.get("list"))?),
        _ => marks(given.get("marks"))?,
    };
    asked.question().check().map_err(|error| {
        let field = if error.field == Field::CutOrder { "every" } else { kind };
        Refusal::of(field, &error, &given.get(field).to_string())
    })?;
    Ok(asked)
}

/// An angle: a text as people type it, a number of degrees, or `[num, den]` of a turn.
pub(super) fn angle(given: &Given, name: &str) -> Result<Angle, Refusal> {
    if let Given::List(_) = given {
        return given.fraction(name).map(Angle::from_turns);
    }
    let text = given.text(name)?;
    read::angle(&text).map_err(|error| Refusal::of(name, &error, &text))
}

fn list(given: &Given) -> Result<List<Angle, MAX_ANGLES>, Refusal> {
    if let Given::Text(text) = given {
        return read::angles(text).map_err(|error| Refusal::of("list", &error, text));
    }
    each(given, "list", Field::List, angle)
}

fn marks(given: &Given) -> Result<Asked, Refusal> {
    given.only("marks", &["count", "kinds", "pattern", "numbers"])?;
    let kind = |kind: &Given, name: &str| {
        kind.only(name, &["length"])?;
        let text = kind.get("length").text(&dotted(name, "length"))?;
        let length = read::length(&text, read::Unit::Mm);
        length.map(|length| MarkKind { length }).map_err(|error| Refusal::of(name, &error, &text))
    };
    let place = Bound { field: Field::Marks, least: 0, greatest: 5 };
    let pattern =
        |entry: &Given, name: &str| Ok(u8::try_from(entry.count(name, place)?).unwrap_or(u8::MAX));
    let kinds: List<MarkKind, MAX_MARK_KINDS> = if given.has("kinds") {
        each(given.get("kinds"), "marks.kinds", Field::Marks, kind)?
    } else {
        let millimetre = Length::from_mm(handturn::number::Fraction::ONE);
        List::from_slice(&[MarkKind { length: millimetre }]).unwrap_or_default()
    };
    let pattern: List<u8, MAX_PATTERN> = if given.has("pattern") {
        each(given.get("pattern"), "marks.pattern", Field::Marks, pattern)?
    } else {
        List::from_slice(&[0]).unwrap_or_default()
    };
    Ok(Asked::Marks(Marks {
        count: given.get("count").count("marks.count", bounds::DIVISIONS)?,
        kinds,
        pattern,
        numbers: numbers(given.get("numbers"))?,
    }))
}

fn numbers(given: &Given) -> Result<Option<Numbers>, Refusal> {
    if *given == Given::Nothing {
        return Ok(None);
    }
    given.only("marks.numbers", &["every", "perMark", "climbs", "zero"])?;
    let some = Bound { field: Field::Marks, least: 1, greatest: 10_000 };
    let climbs = match given.get("climbs") {
        Given::Nothing => Sense::Clockwise,
        Given::Text(text) if text == "clockwise" => Sense::Clockwise,
        Given::Text(text) if text == "anticlockwise" => Sense::Anticlockwise,
        other => {
            return Err(Refusal::kind("marks.numbers.climbs", "clockwise or anticlockwise", other));
        }
    };
    Ok(Some(Numbers {
        every: given.get("every").count_or("marks.numbers.every", some, 1)?,
        per_mark: given.get("perMark").count_or("marks.numbers.perMark", some, 1)?,
        climbs,
        zero: given.get("zero").flag("marks.numbers.zero", true)?,
    }))
}

/// The entries of an array, each read by `read` under its own name.
fn each<T, const CAP: usize>(
    given: &Given,
    name: &str,
    field: Field,
    read: impl Fn(&Given, &str) -> Result<T, Refusal>,
) -> Result<List<T, CAP>, Refusal> {
    let mut list = List::new();
    for (k, entry) in given.list(name)?.iter().enumerate() {
        let most = u16::try_from(CAP).unwrap_or(u16::MAX);
        let full = Error::new(field, Cause::TooMany { most });
        let value = read(entry, &dotted(name, &k.to_string()))?;
        list.push(value).map_err(|_| Refusal::of(name, &full, ""))?;
    }
    Ok(list)
}

/// A head from the values given; what is not given is as on the default head: 40 : 1,
/// a 24-notch direct plate, no plates and no gears.
///
/// # Errors
/// The first value that is not known, of the wrong kind, cannot be read or does not
/// go with the others, by name.
pub(super) fn head(given: &Given) -> Result<Head, Refusal> {
    if *given == Given::Nothing {
        return Ok(Head::default());
    }
    let known: Vec<&str> = Entry::ALL.iter().map(|entry| key(*entry)).collect();
    given.only("head", &known)?;
    let mut texts = Vec::new();
    for entry in Entry::ALL {
        texts.push(match given.get(key(entry)) {
            Given::Nothing => entry.default().to_owned(),
            value => text(entry, value)?,
        });
    }
    let text = |entry: Entry| texts.get(entry as usize).map_or("", String::as_str);
    owned::read(&text).map_err(|bad| Refusal::of_head(&name(bad.entry), &bad, text(bad.entry)))
}

/// The text of an entry: lists and plates may be arrays, ticks `true` and `false`.
fn text(entry: Entry, given: &Given) -> Result<String, Refusal> {
    let name = name(entry);
    let text = match given {
        Given::Flag(true) => "yes".to_owned(),
        Given::Flag(false) => "no".to_owned(),
        Given::List(_) if entry == Entry::Plates => {
            let plates = given.list(&name)?.iter().enumerate();
            let plates = plates.map(|(k, plate)| match plate {
                Given::List(circles) if circles.is_empty() => Err(no_circles()),
                _ => spaced(plate, &dotted(&name, &k.to_string())),
            });
            plates.collect::<Result<Vec<_>, _>>()?.join(" / ")
        }
        Given::List(_) if matches!(entry, Entry::Gears | Entry::Direct) => spaced(given, &name)?,
        Given::List(_) => given.fraction(&name)?.to_string() + unit(entry),
        _ => given.text(&name)?,
    };
    let choices = entry.choices();
    if choices.is_empty() || choices.contains(&text.as_str()) {
        return Ok(text);
    }
    let wanted =
        if choices == ["yes", "no"] { "true or false".to_owned() } else { choices.join(" or ") };
    Err(Refusal::kind(&name, &wanted, given))
}

fn no_circles() -> Refusal {
    let bad = Bad { entry: Entry::Plates, error: Error::new(Field::Plates, Cause::Empty) };
    Refusal::of_head(&name(Entry::Plates), &bad, "")
}

/// What a pair of whole numbers counts: part of a turn, or millimetres.
const fn unit(entry: Entry) -> &'static str {
    match entry {
        Entry::ArmsLeast | Entry::ArmsGreatest | Entry::FineShift | Entry::FineTravel => " turn",
        _ => "",
    }
}

/// The entries of an array as one text, parted by spaces.
///
/// # Errors
/// What is neither text nor number, by name and place.
pub(super) fn spaced(given: &Given, name: &str) -> Result<String, Refusal> {
    let entries = given.list(name)?.iter().enumerate();
    let texts = entries.map(|(k, entry)| entry.text(&dotted(name, &k.to_string())));
    Ok(texts.collect::<Result<Vec<_>, _>>()?.join(" "))
}

fn name(entry: Entry) -> String {
    dotted("head", key(entry))
}

/// What an entry is called in JavaScript.
const fn key(entry: Entry) -> &'static str {
    match entry {
        Entry::Name => "name",
        Entry::Ratio => "ratio",
        Entry::WorkTurns => "workTurns",
        Entry::Tilted => "tilted",
        Entry::DegreeRing => "degreeRing",
        Entry::Slack => "slack",
        Entry::SpindleClamp => "spindleClamp",
        Entry::Plates => "plates",
        Entry::PlateStop => "plateStop",
        Entry::Direct => "direct",
        Entry::WormDropsOut => "wormDropsOut",
        Entry::Gears => "gears",
        Entry::StudDistance => "studDistance",
        Entry::StudMargin => "studMargin",
        Entry::MostIdlers => "mostIdlers",
        Entry::OneIdler => "oneIdler",
        Entry::FourGears => "fourGears",
        Entry::ReachLeast => "reachLeast",
        Entry::ReachGreatest => "reachGreatest",
        Entry::Pin => "pin",
        Entry::ArmsLeast => "armsLeast",
        Entry::ArmsGreatest => "armsGreatest",
        Entry::Handwheel => "handwheel",
        Entry::HandwheelMarks => "handwheelMarks",
        Entry::HandwheelVernier => "handwheelVernier",
        Entry::FineDial => "fineDial",
        Entry::FineShift => "fineShift",
        Entry::FineMarks => "fineMarks",
        Entry::FineTravel => "fineTravel",
        Entry::FineSlack => "fineSlack",
        Entry::WorkDiameter => "workDiameter",
    }
}
