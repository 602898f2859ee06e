//! What every question checks of the lengths it is given: that they lie within the
//! bounds table, and that sums of them do not overflow.
use super::Length;
use crate::bounds::LENGTH_UM;
use crate::error::{Cause, Error, Field};
use crate::number::{Fraction, float};

/// No length.
pub(crate) const NONE: Length = Length::from_mm(Fraction::ZERO);

/// `length` in millimetres, above nought and at most what the bounds table allows.
pub(crate) fn size(length: Length, field: Field) -> Result<f64, Error> {
    if length.mm().is_zero() {
        return Err(Error::new(field, Cause::Zero));
    }
    from_nought(length, field)
}

/// As [`size`], with nought allowed.
pub(crate) fn from_nought(length: Length, field: Field) -> Result<f64, Error> {
    let (least_um, greatest_um) = LENGTH_UM;
    let micrometres = length.mm().times(1000).map_err(|e| e.of(field))?;
    let fits = micrometres >= Fraction::whole(i64::from(least_um))
        && micrometres <= Fraction::whole(i64::from(greatest_um));
    if !fits && !length.mm().is_zero() {
        return Err(Error::new(field, Cause::OutOfLengths { least_um, greatest_um }));
    }
    Ok(float::of(length.mm()))
}

/// `length × n`.
pub(crate) fn times(length: Length, n: i64, field: Field) -> Result<Length, Error> {
    length.mm().times(n).map(Length::from_mm).map_err(|e| e.of(field))
}

/// `length ÷ n`.
pub(crate) fn over(length: Length, n: i64, field: Field) -> Result<Length, Error> {
    length.mm().over(n).map(Length::from_mm).map_err(|e| e.of(field))
}

/// `one + other`.
pub(crate) fn plus(one: Length, other: Length, field: Field) -> Result<Length, Error> {
    one.mm().checked_add(other.mm()).map(Length::from_mm).map_err(|e| e.of(field))
}

/// `one − other`.
pub(crate) fn minus(one: Length, other: Length, field: Field) -> Result<Length, Error> {
    one.mm().checked_sub(other.mm()).map(Length::from_mm).map_err(|e| e.of(field))
}

/// `mm` in whole micrometres, the part of one left out; nought where it does not fit.
pub(crate) fn um_down(mm: f64) -> u32 {
    whole(float::round(mm * 1000.0 - 0.5))
}

/// `mm` in whole micrometres, a part of one counted as a whole; nought where it does not fit.
pub(crate) fn um_up(mm: f64) -> u32 {
    whole(float::round(mm * 1000.0 + 0.5))
}

/// A whole float as an integer; nought where it does not fit.
pub(crate) fn whole(value: f64) -> u32 {
    float::nearest(value, 1).and_then(|n| u32::try_from(n.num()).ok()).unwrap_or(0)
}
