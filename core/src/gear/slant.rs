//! What slanted teeth share: angles within the bounds table, how far sine and cosine
//! of one may be off, and what a tooth caliper reads on teeth of another number.
use crate::bounds::Bound;
use crate::error::{Cause, Error};
use crate::measure::Angle;
use crate::number::{
    Approx, Fraction,
    float::{PI, cos_turns, of, sin_turns},
};

/// The unit of rounding: two parts in 2^53.
pub(super) const UNIT: f64 = f64::EPSILON;

/// `value`, off by at most so many units of rounding relative to `size`.
pub(super) const fn within(value: f64, size: f64, units: f64) -> Approx {
    Approx { value, bound: size.abs() * units * UNIT }
}

/// An angle below a quarter of a turn, as floats.
#[derive(Clone, Copy)]
pub(super) struct Slant {
    pub(super) sin: f64,
    pub(super) cos: f64,
    /// How far off the cosine may be, in units of rounding; the sine is within three.
    pub(super) units: f64,
}

impl Slant {
    /// `angle`, within `bound` in degrees.
    pub(super) fn of(angle: Angle, bound: Bound) -> Result<Self, Error> {
        check(angle, bound)?;
        let turns = of(angle.turns());
        let (sin, cos) = (sin_turns(turns), cos_turns(turns));
        // The angle is within a unit, which its cosine feels by its tangent.
        let units = 2.0 + 2.0 * PI * turns * sin / cos;
        Ok(Self { sin, cos, units })
    }

    pub(super) fn tan(&self) -> f64 {
        self.sin / self.cos
    }
}

/// Checks an angle against `bound`, in degrees.
pub(super) fn check(angle: Angle, bound: Bound) -> Result<(), Error> {
    let degrees = angle.degrees().map_err(|e| e.of(bound.field))?;
    let limit = |n: u32| Fraction::whole(i64::from(n));
    if degrees < limit(bound.least) || degrees > limit(bound.greatest) {
        let cause = Cause::OutOfRange { least: bound.least, greatest: bound.greatest };
        return Err(Error::new(bound.field, cause));
    }
    Ok(())
}

/// What a tooth caliper reads square to a tooth that is half a pitch thick: the chord
/// at the pitch circle, and its depth below the tip. In millimetres.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Caliper {
    /// Thickness, between the caliper's jaws.
    pub thickness: Approx,
    /// Height to which its tongue is set.
    pub height: Approx,
}

/// The caliper on teeth of this module and addendum on a wheel of so many virtual
/// teeth, which are off by `units`: m·z·sin(90°/z), and the addendum with what the
/// pitch circle rises over that chord.
pub(super) fn caliper(module: f64, addendum: f64, teeth: f64, units: f64) -> Caliper {
    let quarter = 0.25 / teeth;
    let half = sin_turns(quarter / 2.0);
    let (thickness, rise) = (module * teeth * sin_turns(quarter), module * teeth * half * half);
    Caliper {
        thickness: within(thickness, thickness, units + 8.0),
        height: Approx {
            value: addendum + rise,
            bound: UNIT * (3.0 * addendum + rise * (2.0 * units + 8.0)),
        },
    }
}
