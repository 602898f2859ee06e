//! What every question about a thread checks: lengths within the bounds table,
//! angles a lathe can set, and sums of lengths that may not overflow.
use crate::bounds::{LENGTH_UM, STARTS};
use crate::error::{Cause, Error, Field};
use crate::measure::{Angle, Length};
use crate::number::{Fraction, float};

/// No length.
pub(super) const NONE: Length = Length::from_mm(Fraction::ZERO);

/// `length` in millimetres, above nought and at most what the bounds table allows.
pub(super) fn size(length: Length, field: Field) -> Result<f64, Error> {
    if length.mm().is_zero() {
        return Err(Error::new(field, Cause::Zero));
    }
    from_nought(length, field)
}

/// As [`size`], with nought allowed.
pub(super) fn from_nought(length: Length, field: Field) -> Result<f64, Error> {
    let (least_um, greatest_um) = LENGTH_UM;
    let micrometres = length.mm().times(1000).map_err(|e| e.of(field))?;
    let fits = micrometres >= Fraction::whole(i64::from(least_um))
        && micrometres <= Fraction::whole(i64::from(greatest_um));
    if !fits && !length.mm().is_zero() {
        return Err(Error::new(field, Cause::OutOfLengths { least_um, greatest_um }));
    }
    Ok(float::of(length.mm()))
}

/// Half the angle between the flanks in turns: `least` to 60 whole degrees.
pub(super) fn half_angle(angle: Angle, least: u32) -> Result<f64, Error> {
    let degrees = angle.degrees()?;
    let whole = |n: u32| Fraction::whole(i64::from(n));
    if degrees < whole(least) || degrees > whole(60) {
        return Err(Error::new(Field::Angle, Cause::OutOfRange { least, greatest: 60 }));
    }
    Ok(float::of(angle.turns()))
}

/// The lead of `starts` threads of `pitch`, both checked.
pub(super) fn lead(pitch: Length, starts: u32) -> Result<Length, Error> {
    size(pitch, Field::Pitch)?;
    STARTS.check(i64::from(starts))?;
    times(pitch, i64::from(starts), Field::Pitch)
}

/// `length × n`.
pub(super) fn times(length: Length, n: i64, field: Field) -> Result<Length, Error> {
    length.mm().times(n).map(Length::from_mm).map_err(|e| e.of(field))
}

/// `length ÷ n`.
pub(super) fn over(length: Length, n: i64, field: Field) -> Result<Length, Error> {
    length.mm().over(n).map(Length::from_mm).map_err(|e| e.of(field))
}

/// `one + other`.
pub(super) fn plus(one: Length, other: Length, field: Field) -> Result<Length, Error> {
    one.mm().checked_add(other.mm()).map(Length::from_mm).map_err(|e| e.of(field))
}

/// `one − other`.
pub(super) fn minus(one: Length, other: Length, field: Field) -> Result<Length, Error> {
    one.mm().checked_sub(other.mm()).map(Length::from_mm).map_err(|e| e.of(field))
}

/// `mm` in whole micrometres, the part of one left out; nought where it does not fit.
pub(super) fn um_down(mm: f64) -> u32 {
    whole(float::round(mm * 1000.0 - 0.5))
}

/// `mm` in whole micrometres, a part of one counted as a whole; nought where it does not fit.
pub(super) fn um_up(mm: f64) -> u32 {
    whole(float::round(mm * 1000.0 + 0.5))
}

/// A whole float as an integer; nought where it does not fit.
pub(super) fn whole(value: f64) -> u32 {
    float::nearest(value, 1).and_then(|n| u32::try_from(n.num()).ok()).unwrap_or(0)
}
