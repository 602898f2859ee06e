//! What is asked about a thread, every value checked by name.
use super::super::given::{Given, dotted};
use super::super::refusal::{Limits as Allowed, Refusal};
use super::super::request;
use handturn::measure::Length;
use handturn::measure::read::{self, Unit};
use handturn::number::Fraction;
use handturn::thread::limits::{Class, Limits, Side, limits, usual};
use handturn::thread::name::{self, Found};
use handturn::thread::{Form, Hand, Kind, Thread};
use handturn::{Cause, Error, Field, bounds};

/// A thread asked for, which side of it is made and how closely.
pub(super) struct Asked {
    pub(super) found: Found,
    pub(super) side: Side,
    /// The class with its limits; none where no standard sets any.
    pub(super) limited: Option<(Class, Limits)>,
}

/// Keys of a thread with its class.
const KEYS: [&str; 3] = ["thread", "side", "class"];

impl Asked {
    /// The thread in `given`, an object of [`KEYS`] and those of `more`.
    ///
    /// # Errors
    /// The first value that is not known, of the wrong kind or cannot be, by name.
    pub(super) fn read(given: &Given, more: &[&str]) -> Result<Self, Refusal> {
        given.only("", &[&KEYS, more].concat())?;
        let found = thread(given.get("thread"), "thread")?;
        let side = match given.get("side") {
            Given::Nothing => None,
            other => Some(choice(other, "side", &SIDES)?),
        };
        let kind = found.thread.form.kind;
        let wanted = match given.get("class") {
            Given::Nothing => {
                found.class.filter(|class| side.is_none_or(|side| side == class.side))
            }
            other => Some(class(other, kind, side)?),
        };
        let side = wanted.map(|class| class.side).or(side).unwrap_or(Side::External);
        let limited = match wanted {
            Some(class) => {
                let refused = |e| Refusal::of("class", &e, &given.get("class").to_string());
                Some((class, limits(&found.thread, class).map_err(refused)?))
            }
            None => classes(&found.thread).into_iter().find(|(class, _)| class.side == side),
        };
        Ok(Self { found, side, limited })
    }

    pub(super) fn thread(&self) -> &Thread {
        &self.found.thread
    }

    pub(super) fn limits(&self) -> Option<&Limits> {
        self.limited.as_ref().map(|(_, limits)| limits)
    }

    pub(super) fn internal(&self) -> bool {
        self.side == Side::Internal
    }
}

const SIDES: [(&str, Side); 2] = [("screw", Side::External), ("nut", Side::Internal)];
pub(super) const HANDS: [(&str, Hand); 2] = [("right", Hand::Right), ("left", Hand::Left)];
const FORMS: [(&str, Form); 8] = [
    ("metric", Form::METRIC),
    ("unified", Form::UNIFIED),
    ("whitworth", Form::WHITWORTH),
    ("pipe", Form::PIPE),
    ("ba", Form::BA),
    ("tr", Form::TRAPEZOIDAL),
    ("acme", Form::ACME),
    ("square", Form::SQUARE),
];

/// One of a few texts.
///
/// # Errors
/// What may be chosen, when it is something else.
pub(in crate::api) fn choice<T: Copy>(
    given: &Given,
    name: &str,
    among: &[(&str, T)],
) -> Result<T, Refusal> {
    let found = match given {
        Given::Text(text) => among.iter().find(|(key, _)| key == text),
        _ => None,
    };
    let names = || among.iter().map(|(key, _)| *key).collect::<Vec<_>>().join(" or ");
    found.map(|(_, value)| *value).ok_or_else(|| Refusal::kind(name, &names(), given))
}

/// The usual classes that the standard has at this size, each with its limits.
pub(super) fn classes(thread: &Thread) -> Vec<(Class, Limits)> {
    let all = usual(thread.form.kind).iter();
    all.filter_map(|class| Some((*class, limits(thread, *class).ok()?))).collect()
}

/// A class as it is written, `6g`, `2A` or `medium`, for a thread of `kind`. It is
/// read as part of the name of some thread of that kind.
fn class(given: &Given, kind: Kind, side: Option<Side>) -> Result<Class, Refusal> {
    let Given::Text(text) = given else {
        return Err(Refusal::kind("class", "a text such as 6g, 2A or medium", given));
    };
    let some = match kind {
        Kind::Metric => "M6",
        Kind::Unified => "1/4-20 UNC",
        Kind::Whitworth => "1/4 BSW",
        Kind::Pipe => "G 1/8",
        Kind::Ba => "2 BA",
        Kind::Trapezoidal => "Tr16x4",
        Kind::Acme => "1/2-10 Acme",
        Kind::StubAcme => "1/2-10 stub Acme",
        Kind::Cycle | Kind::Square | Kind::Own => "M6",
    };
    let conflict = || Refusal::of("class", &Error::new(Field::Class, Cause::Conflict), text);
    let made = if side == Some(Side::Internal) { " nut" } else { "" };
    // Only the class: no pitch that would come along.
    let plain = text.split(' ').all(|word| {
        word != "x"
            && word.chars().all(|c| c.is_ascii_alphanumeric())
            && word.contains(char::is_alphabetic)
    });
    let read = name::read(&[some, " ", text, made].concat()).ok().filter(|_| plain);
    let found = read.and_then(|found| found.first()?.class).ok_or_else(conflict)?;
    match side {
        Some(side) if side != found.side => Err(conflict()),
        _ => Ok(found),
    }
}

/// A thread: its name, a name and which of those it stands for, or its own figures.
///
/// # Errors
/// The first value that is not known, of the wrong kind or out of bounds, by name.
pub(super) fn thread(given: &Given, name: &str) -> Result<Found, Refusal> {
    match given {
        Given::Text(text) => pick(text, name, &Given::Nothing, name),
        Given::Object(_) if given.names("name") => {
            given.only(name, &["name", "pick"])?;
            let place = dotted(name, "name");
            let Given::Text(text) = given.get("name") else {
                return Err(Refusal::kind(&place, "a text", given.get("name")));
            };
            pick(text, &place, given.get("pick"), &dotted(name, "pick"))
        }
        Given::Object(_) => Ok(Found { thread: own(given, name)?, listed: None, class: None }),
        _ => Err(Refusal::kind(name, "the name of a thread, or an object", given)),
    }
}

fn pick(text: &str, name: &str, place: &Given, place_name: &str) -> Result<Found, Refusal> {
    let found = name::read(text).map_err(|error| Refusal::of(name, &error, text))?;
    let last = u32::try_from(found.len()).unwrap_or(u32::MAX).saturating_sub(1);
    let place = between(place, place_name, 0, last, 0)?;
    let one = usize::try_from(place).ok().and_then(|place| found.get(place)).copied();
    one.ok_or_else(|| Refusal::of(name, &Error::new(Field::Thread, Cause::Empty), text))
}

/// A thread by its own figures.
fn own(given: &Given, name: &str) -> Result<Thread, Refusal> {
    given.only(name, &["form", "major", "pitch", "starts", "hand"])?;
    let key = |key: &str| dotted(name, key);
    let form = match given.get("form") {
        form @ Given::Object(_) => own_form(form, &key("form"))?,
        other => choice(other, &key("form"), &FORMS)?,
    };
    let major = length(given.get("major"), &key("major"), Field::Major)?;
    let pitch = pitch(given.get("pitch"), &key("pitch"), Field::Pitch)?;
    let starts = given.get("starts").count_or(&key("starts"), bounds::STARTS, 1)?;
    let hand = hand(given, "hand", &key("hand"))?;
    let starts = u8::try_from(starts).unwrap_or(u8::MAX);
    Thread::new(form, major, pitch, starts, hand).map_err(|error| {
        let at = if error.field == Field::Major { "major" } else { "pitch" };
        Refusal::of(&key(at), &error, &given.get(at).to_string())
    })
}

fn own_form(given: &Given, name: &str) -> Result<Form, Refusal> {
    given.only(name, &["angle", "crestFlat", "rootFlat"])?;
    let angle = request::angle(given.get("angle"), &dotted(name, "angle"))?;
    let flat = |key: &str| exact(given.get(key), &dotted(name, key), Field::Form);
    let (crest, root) = (flat("crestFlat")?, flat("rootFlat")?);
    let form = Form::own(angle, crest, root, Unit::Mm);
    form.map_err(|error| Refusal::of(name, &error, ""))
}

/// `right` or `left`, right where nothing is given.
///
/// # Errors
/// Anything else, by name.
pub(in crate::api) fn hand(given: &Given, key: &str, name: &str) -> Result<Hand, Refusal> {
    match given.get(key) {
        Given::Nothing => Ok(Hand::Right),
        other => choice(other, name, &HANDS),
    }
}

/// A number as people type it, or `[num, den]`.
///
/// # Errors
/// What cannot be read, by name.
pub(in crate::api) fn exact(given: &Given, name: &str, field: Field) -> Result<Fraction, Refusal> {
    if let Given::List(_) = given {
        return given.fraction(name);
    }
    let text = given.text(name)?;
    read::number(&text, field).map_err(|error| Refusal::of(name, &error, &text))
}

/// A length: a text as people type it, a number of millimetres, or `[num, den]` of one.
///
/// # Errors
/// What cannot be read, by name.
pub(in crate::api) fn length(given: &Given, name: &str, field: Field) -> Result<Length, Refusal> {
    if let Given::List(_) = given {
        return given.fraction(name).map(Length::from_mm);
    }
    let text = given.text(name)?;
    let length = read::length(&text, Unit::Mm);
    length.map_err(|error| Refusal::of(name, &error.of(field), &text))
}

/// [`length`], or `default` where nothing is given.
///
/// # Errors
/// As [`length`].
pub(in crate::api) fn length_or(
    given: &Given,
    name: &str,
    field: Field,
    default: Length,
) -> Result<Length, Refusal> {
    if *given == Given::Nothing { Ok(default) } else { length(given, name, field) }
}

/// The lengths of an array; none where nothing is given.
///
/// # Errors
/// As [`length`], by name and place.
pub(in crate::api) fn lengths(
    given: &Given,
    name: &str,
    field: Field,
) -> Result<Vec<Length>, Refusal> {
    if *given == Given::Nothing {
        return Ok(Vec::new());
    }
    let entries = given.list(name)?.iter().enumerate();
    entries.map(|(k, entry)| length(entry, &dotted(name, &k.to_string()), field)).collect()
}

/// A pitch or lead: a length, or threads per inch as `32 tpi`.
///
/// # Errors
/// What cannot be read, by name; nought.
pub(in crate::api) fn pitch(given: &Given, name: &str, field: Field) -> Result<Length, Refusal> {
    let per_inch = match given {
        Given::Text(text) => text.trim().strip_suffix("tpi"),
        _ => None,
    };
    let Some(number) = per_inch else { return length(given, name, field) };
    read::per_inch(number, field).map_err(|error| Refusal::of(name, &error, number.trim()))
}

/// A whole number from `least` to `greatest`, or `default` where nothing is given.
///
/// # Errors
/// Anything else, by name, with its limits.
pub(in crate::api) fn between(
    given: &Given,
    name: &str,
    least: u32,
    greatest: u32,
    default: u32,
) -> Result<u32, Refusal> {
    if *given == Given::Nothing {
        return Ok(default);
    }
    let whole = given.whole(name)?;
    u32::try_from(whole).ok().filter(|n| (least..=greatest).contains(n)).ok_or_else(|| {
        let wanted = ["from ", &least.to_string(), " to ", &greatest.to_string()].concat();
        let limits = Some(Allowed::Range { least, greatest });
        Refusal { cause: "OutOfRange".to_owned(), limits, ..Refusal::kind(name, &wanted, given) }
    })
}
