//! The involute function tan φ − φ and its inverse.
//!
//! Method: both are worked in the tangent t = tan φ, which for a point of an involute
//! is the tangent's length over the base radius, so no angle is rounded on the way.
//! Up to t = ½ the function is the series t³/3 − t⁵/5 + …, so that nothing cancels.
//! The inverse takes Newton's steps from the right of the root: the function is
//! convex there, so they fall towards it and never pass it.
//! Source: definition of the involute (DIN 3960; ISO 21771).
//!
//! ```
//! use handturn::gear::involute;
//! use handturn::measure::Angle;
//! use handturn::number::Fraction;
//! // 20° in the tables: 0.014904.
//! let inv = involute::inv(Angle::from_degrees(Fraction::whole(20))?)?;
//! assert!((inv.value - 0.014904).abs() < 5e-7);
//! let back = involute::angle(Fraction::new(14_904, 1_000_000)?)?;
//! assert!((back.value - 20.0).abs() < 0.001);
//! # Ok::<(), handturn::Error>(())
//! ```
use crate::error::{Cause, Error, Field};
use crate::measure::Angle;
use crate::number::{
    Approx, Fraction,
    float::{PI, atan_turns, of, tan_turns},
};

/// Newton's steps for the inverse. Far from the root each takes off a third, so they
/// reach tangents of 10^-11; near it they double the figures.
const STEPS: u32 = 64;

/// tan φ − φ of `angle`, in radians, from nought to 80°.
///
/// # Errors
/// [`Cause::OutOfRange`] in degrees, [`Cause::Overflow`].
#[doc(alias = "involute function")]
pub fn inv(angle: Angle) -> Result<Approx, Error> {
    within(angle.degrees()?, 80, Field::PressureAngle)?;
    let value = of_tangent(tan_turns(of(angle.turns())));
    Ok(Approx { value, bound: 32.0 * f64::EPSILON * value })
}

/// The angle, in degrees, whose tan φ − φ is `inv`, from nought to 4.
///
/// # Errors
/// [`Cause::OutOfRange`].
#[doc(alias = "inverse involute")]
pub fn angle(inv: Fraction) -> Result<Approx, Error> {
    within(inv, 4, Field::Fraction)?;
    let tan = tangent(of(inv)).ok_or(Error::new(Field::Fraction, Cause::Overflow))?;
    let value = 360.0 * atan_turns(tan);
    Ok(Approx { value, bound: 16.0 * f64::EPSILON * value })
}

fn within(value: Fraction, greatest: u32, field: Field) -> Result<(), Error> {
    if value.is_negative() || value > Fraction::whole(i64::from(greatest)) {
        let cause = Cause::OutOfRange { least: 0, greatest };
        return Err(Error::new(field, cause));
    }
    Ok(())
}

/// tan φ − φ for the φ whose tangent is `tan`, from nought: within 16 parts in 2^52 of it.
pub(super) fn of_tangent(tan: f64) -> f64 {
    if tan > 0.5 {
        return tan - 2.0 * PI * atan_turns(tan);
    }
    let square = tan * tan;
    let (mut sum, mut odd) = (0.0, 59.0);
    while odd > 2.0 {
        sum = 1.0 / odd - square * sum;
        odd -= 2.0;
    }
    tan * square * sum
}

/// The tangent of the φ for which tan φ − φ is `inv`: what [`of_tangent`] gives for it
/// is `inv` but for rounding. `None` below nought, where `inv` is no number, and for
/// less than 10^-30, nought apart.
pub(super) fn tangent(inv: f64) -> Option<f64> {
    if inv == 0.0 {
        return Some(0.0);
    }
    if inv.is_nan() || inv < 0.0 {
        return None;
    }
    // tan φ − φ = inv and φ < π/2.
    let mut tan = inv + PI / 2.0;
    for _ in 0..STEPS {
        let square = tan * tan;
        let next = tan - (of_tangent(tan) - inv) * (1.0 + square) / square;
        if next >= tan {
            return Some(tan);
        }
        tan = next;
    }
    None
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn there_and_back() {
        for k in 0..=4_000_u32 {
            let tan = f64::from(k) / 700.0;
            let back = tangent(of_tangent(tan)).unwrap();
            assert!((back - tan).abs() <= 4e-15 * tan, "{tan} came back as {back}");
        }
        for tiny in [1e-12, 1e-20, 1e-29] {
            let tan = tangent(tiny).unwrap();
            assert!((tan * tan * tan / 3.0 / tiny - 1.0).abs() < 1e-6, "{tiny}: {tan}");
        }
    }

    #[test]
    fn what_has_no_angle() {
        assert_eq!(tangent(-1e-9), None);
        assert_eq!(tangent(f64::NAN), None);
        assert_eq!(tangent(f64::INFINITY), None);
        assert_eq!(tangent(1e-40), None);
        let refused =
            |field, greatest| Err(Error::new(field, Cause::OutOfRange { least: 0, greatest }));
        assert_eq!(angle(Fraction::whole(5)), refused(Field::Fraction, 4));
        assert_eq!(angle(Fraction::whole(-1)), refused(Field::Fraction, 4));
        let steep = Angle::from_degrees(Fraction::whole(81)).unwrap();
        assert_eq!(inv(steep), refused(Field::PressureAngle, 80));
    }
}
