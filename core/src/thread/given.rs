//! What every question about a thread checks: angles a lathe can set and leads, beside
//! lengths within the bounds table.
use crate::bounds::STARTS;
use crate::error::{Cause, Error, Field};
use crate::measure::{Angle, Length};
use crate::number::{Fraction, float};

pub(super) use crate::measure::given::{
    NONE, from_nought, minus, over, plus, size, times, um_down, um_up, whole,
};

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
