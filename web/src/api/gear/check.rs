//! Measuring teeth: by caliper, by span, over pins; trial gaps.
use super::super::given::Given;
use super::super::refusal::Refusal;
use super::super::thread::asked::{choice, length, lengths};
use super::super::thread::told::{about, count, length as told, maybe, object};
use super::asked::{self, refused};
use handturn::bounds::Bound;
use handturn::gear::trial::{self, Check, Cutting, Trial};
use handturn::gear::{Spur, chordal, pins as over_pins, span as spans};
use handturn::measure::Length;
use handturn::{Cause, Error, Field, bounds};

/// The wheel and its blank as found.
fn wheel(given: &Given, more: &[&str]) -> Result<(Spur, Length), Refusal> {
    asked::only(given, &[&["outside"], more].concat())?;
    let spur = asked::wheel(given)?;
    Ok((spur, asked::outside(given, &spur)?))
}

fn reading(given: &Given) -> Result<Option<Length>, Refusal> {
    let read = || length(given.get("reading"), "reading", Field::Reading);
    given.has("reading").then(read).transpose()
}

/// What a gear-tooth caliper is set to and reads.
pub(super) fn caliper(given: &Given) -> Result<Given, Refusal> {
    let (spur, outside) = wheel(given, &[])?;
    let chords = chordal::tooth(&spur, outside).map_err(refused(given))?;
    Ok(object([
        ("thickness", about(chords.thickness)),
        ("height", about(chords.height)),
        ("constant", about(chords.constant)),
        ("constant_height", about(chords.constant_height)),
    ]))
}

fn across(given: &Given) -> Result<Option<u32>, Refusal> {
    let bound = Bound { field: Field::Span, least: 1, greatest: bounds::WHEEL_TEETH.greatest };
    given.has("across").then(|| given.get("across").count("across", bound)).transpose()
}

/// The span over teeth, and how thick a tooth is by a reading.
pub(super) fn span(given: &Given) -> Result<Given, Refusal> {
    let (spur, outside) = wheel(given, &["across", "reading"])?;
    let refused = refused(given);
    let span = spans::over(&spur, outside, across(given)?).map_err(&refused)?;
    let thickness = match reading(given)? {
        None => Given::Nothing,
        Some(reading) => {
            about(spans::thickness(&spur, outside, span.teeth, reading).map_err(&refused)?)
        }
    };
    Ok(object([
        ("across", count(span.teeth)),
        ("least", count(span.least)),
        ("greatest", count(span.greatest)),
        ("reading", about(span.reading)),
        ("touches", about(span.touches)),
        ("per_thickness", Given::Number(span.per_thickness)),
        ("thickness", thickness),
    ]))
}

/// Which pins serve, what they read, and how thick a tooth is by a reading.
pub(super) fn pins(given: &Given) -> Result<Given, Refusal> {
    let (spur, outside) = wheel(given, &["pin", "owned", "reading"])?;
    let refused = refused(given);
    let range = over_pins::range(&spur, outside).map_err(&refused)?;
    let pin = if given.has("pin") {
        Some(length(given.get("pin"), "pin", Field::Pin)?)
    } else {
        let owned = lengths(given.get("owned"), "owned", Field::Pin)?;
        over_pins::choose(&spur, outside, &owned).map_err(&refused)?
    };
    let over = match pin {
        None => Given::Nothing,
        Some(pin) => {
            let over = over_pins::over(&spur, outside, pin).map_err(&refused)?;
            let thickness = match reading(given)? {
                None => Given::Nothing,
                Some(reading) => {
                    let found = over_pins::thickness(&spur, outside, pin, reading);
                    about(found.map_err(&refused)?)
                }
            };
            object([
                ("reading", about(over.reading)),
                ("centres", about(over.centres)),
                ("touches", about(over.touches)),
                ("per_thickness", Given::Number(over.per_thickness)),
                ("thickness", thickness),
            ])
        }
    };
    Ok(object([
        ("least", about(range.least)),
        ("best", about(range.best)),
        ("greatest", about(range.greatest)),
        ("pin", maybe(pin)),
        ("over", over),
    ]))
}

const CUTTING: [(&str, Cutting); 2] = [("form", Cutting::Form), ("generated", Cutting::Generated)];

/// How much deeper to go by what trial gaps read.
pub(super) fn trial(given: &Given) -> Result<Given, Refusal> {
    let (spur, outside) = wheel(given, &["cutting", "pin", "across", "height", "reading"])?;
    let refused = refused(given);
    let cutting = match given.get("cutting") {
        Given::Nothing => Cutting::Form,
        other => choice(other, "cutting", &CUTTING)?,
    };
    let check = if given.has("pin") {
        Check::Pins { pin: length(given.get("pin"), "pin", Field::Pin)? }
    } else if given.has("height") {
        Check::Caliper { height: length(given.get("height"), "height", Field::Depth)? }
    } else {
        let teeth = spans::over(&spur, outside, across(given)?).map_err(&refused)?.teeth;
        Check::Span { teeth }
    };
    let Some(reading) = reading(given)? else {
        return Err(Refusal::of("reading", &Error::new(Field::Reading, Cause::Empty), ""));
    };
    let trial = Trial { spur, outside, cutting, check };
    let said = trial::deeper(&trial, reading).map_err(&refused)?;
    Ok(object([
        ("reading", told(reading)),
        ("wanted", about(said.wanted)),
        ("deeper", about(said.deeper)),
        ("per_depth", Given::Number(said.per_depth)),
    ]))
}
