//! Reading what people type: numbers, ratios, angles, lengths and lists.
//!
//! Comma and point both mean the decimal mark; `1,000` is refused. Items of a
//! list are split by space, new line or `;`.
use super::scan::Scan;
use super::{Angle, Length};
use crate::bounds::{self, Bound, MAX_ANGLES};
use crate::error::{Cause, Error, Field};
use crate::list::List;
use crate::number::Fraction;

/// A unit of length.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Unit {
    /// Millimetres.
    Mm,
    /// Inches.
    Inch,
}

/// A number: whole, decimal, `3/8` or `1 3/8`.
///
/// # Errors
/// [`Cause::Empty`], [`Cause::NotANumber`], [`Cause::ThousandsMark`],
/// [`Cause::Zero`] under a fraction bar, [`Cause::Overflow`] for too many digits.
pub fn number(text: &str, field: Field) -> Result<Fraction, Error> {
    let mut scan = Scan::new(text, field);
    scan.space();
    let value = scan.number()?;
    scan.end()?;
    Ok(value)
}

/// A whole number within `bound`.
///
/// # Errors
/// As [`number`]; [`Cause::NotWhole`]; [`Cause::OutOfRange`] with both limits.
pub fn count(text: &str, bound: Bound) -> Result<u32, Error> {
    let range = Cause::OutOfRange { least: bound.least, greatest: bound.greatest };
    let value = number(text, bound.field).map_err(|error| match error.cause {
        Cause::Overflow => Error { cause: range, ..error },
        _ => error,
    })?;
    let here = |error: Error| error.at(0, text.len());
    if !value.is_whole() {
        return Err(here(Error::new(bound.field, Cause::NotWhole)));
    }
    bound.check_u32(value.num()).map_err(here)
}

/// A ratio: `40`, `40:1`, `40.5 : 1` or `81/2`.
///
/// # Errors
/// As [`number`]; [`Cause::OutOfRange`] for a ratio of nought or below.
pub fn ratio(text: &str) -> Result<Fraction, Error> {
    let mut scan = Scan::new(text, Field::Ratio);
    scan.space();
    let mut value = scan.number()?;
    scan.space();
    if scan.take(|c| c == ':').is_some() {
        scan.space();
        let from = scan.at;
        let one = scan.number()?;
        value = value.checked_div(one).map_err(|e| scan.error(e.cause, from))?;
    }
    if value <= Fraction::ZERO {
        let (least, greatest) = (bounds::RATIO_PART.least, bounds::RATIO_PART.greatest);
        return Err(scan.error(Cause::OutOfRange { least, greatest }, 0));
    }
    scan.end()?;
    Ok(value)
}

/// An angle: degrees (`17.5`, `17 1/2`), degrees, minutes and seconds (`17°30'`,
/// `17 30 15`), or part of a turn (`1/3 turn`). Not bounded to one turn here.
///
/// # Errors
/// As [`number`]; [`Cause::SixtyOrMore`] for minutes or seconds of 60 or more;
/// [`Cause::OutOfRange`] below nought.
pub fn angle(text: &str) -> Result<Angle, Error> {
    let mut scan = Scan::new(text, Field::Angle);
    scan.space();
    let value = one_angle(&mut scan, true)?;
    scan.end()?;
    Ok(value)
}

/// Angles, split by space, new line or `;`.
///
/// # Errors
/// As [`angle`], with the place in the text; [`Cause::TooMany`].
pub fn angles(text: &str) -> Result<List<Angle, MAX_ANGLES>, Error> {
    let mut scan = Scan::new(text, Field::Angle);
    let mut list = List::new();
    while gap(&mut scan) {
        let from = scan.at;
        let angle = one_angle(&mut scan, false)?;
        list.push(angle).map_err(|_| too_many(&scan, Field::List, MAX_ANGLES, from))?;
    }
    if list.is_empty() { Err(Error::new(Field::List, Cause::Empty)) } else { Ok(list) }
}

/// A length: in `unit` unless it names its own (`mm`, `in`, `"`, `thou`).
///
/// # Errors
/// As [`number`].
pub fn length(text: &str, unit: Unit) -> Result<Length, Error> {
    let mut scan = Scan::new(text, Field::Length);
    scan.space();
    let value = scan.number()?;
    let length = with_unit(&mut scan, value, unit)?;
    scan.end()?;
    Ok(length)
}

/// The pitch of as many threads per inch as `text` says, a number as typed.
///
/// # Errors
/// As [`number`], about `field`; [`Cause::Zero`] for none.
pub fn per_inch(text: &str, field: Field) -> Result<Length, Error> {
    let pitch = number(text, field)?.inverse().and_then(Length::from_inches);
    pitch.map_err(|error| error.of(field))
}

/// One angle. Alone in its field, `17 30` is 17° 30′; in a list it is two angles.
pub(crate) fn one_angle(scan: &mut Scan, alone: bool) -> Result<Angle, Error> {
    let from = scan.at;
    let first = scan.number()?;
    let below = Cause::OutOfRange { least: 0, greatest: 360 };
    if first.is_negative() {
        return Err(scan.error(below, from));
    }
    let mut ahead = scan.clone();
    ahead.space();
    if ahead.word("turn") {
        ahead.take(|c| matches!(c, 's' | 'S'));
        *scan = ahead;
        return Ok(Angle::from_turns(first));
    }
    // Seconds of arc so far, and what the next part counts.
    let (mut arcsec, mut next) = match mark(scan) {
        Some(Mark::Degrees) => (3600, 60),
        Some(Mark::Minutes) => (60, 1),
        Some(Mark::Seconds) => (1, 0),
        None if alone => (3600, 60),
        None => (3600, 0),
    };
    let overflow = |scan: &Scan, e: Error| scan.error(e.cause, from);
    let mut total = first.times(arcsec).map_err(|e| overflow(scan, e))?;
    while next > 0 {
        let mut ahead = scan.clone();
        let spaced = ahead.space() || scan.at > from;
        let from = ahead.at;
        if !spaced || !ahead.peek().is_some_and(|c| c.is_ascii_digit()) {
            break;
        }
        let part = ahead.number()?;
        arcsec = match mark(&mut ahead) {
            Some(Mark::Minutes) => 60,
            Some(Mark::Seconds) => 1,
            None if alone => next,
            Some(Mark::Degrees) | None => break,
        };
        if arcsec > next {
            break;
        }
        if part >= Fraction::whole(60) {
            return Err(ahead.error(Cause::SixtyOrMore, from));
        }
        let part = part.times(arcsec).map_err(|e| overflow(&ahead, e))?;
        total = total.checked_add(part).map_err(|e| overflow(&ahead, e))?;
        next = if arcsec == 60 { 1 } else { 0 };
        *scan = ahead;
    }
    Angle::from_arcsec(total).map_err(|e| overflow(scan, e))
}

enum Mark {
    Degrees,
    Minutes,
    Seconds,
}

/// The mark after a part of an angle, with or without a space before it.
fn mark(scan: &mut Scan) -> Option<Mark> {
    let mut ahead = scan.clone();
    ahead.space();
    let found = match ahead.next()? {
        '°' | 'º' | 'd' | 'D' => {
            ahead.word("eg");
            Mark::Degrees
        }
        '\'' | '′' | '’' | 'm' | 'M' => {
            if ahead.take(|c| matches!(c, '\'' | '′' | '’')).is_some() {
                Mark::Seconds
            } else {
                ahead.word("in");
                Mark::Minutes
            }
        }
        '"' | '″' | '”' | 's' | 'S' => {
            ahead.word("ec");
            Mark::Seconds
        }
        _ => return None,
    };
    *scan = ahead;
    Some(found)
}

pub(crate) fn with_unit(scan: &mut Scan, value: Fraction, unit: Unit) -> Result<Length, Error> {
    scan.space();
    let inches = |value: Fraction| Length::from_inches(value);
    let from = scan.at;
    let found = if scan.word("mm") {
        Ok(Length::from_mm(value))
    } else if scan.word("thou") {
        value.over(1000).and_then(inches)
    } else if scan.word("inch")
        || scan.word("in")
        || scan.take(|c| matches!(c, '"' | '″')).is_some()
    {
        inches(value)
    } else {
        match unit {
            Unit::Mm => Ok(Length::from_mm(value)),
            Unit::Inch => inches(value),
        }
    };
    found.map_err(|e| scan.error(e.cause, from))
}

/// Passes what splits items; whether another item follows.
pub(crate) fn gap(scan: &mut Scan) -> bool {
    while scan.take(|c| c.is_whitespace() || matches!(c, ';' | ',')).is_some() {}
    !scan.is_done()
}

pub(crate) fn too_many(scan: &Scan, field: Field, most: usize, from: usize) -> Error {
    let most = u16::try_from(most).unwrap_or(u16::MAX);
    scan.error(Cause::TooMany { most }, from).of(field)
}
