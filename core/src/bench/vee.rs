//! How high a round lies in a V.
//!
//! Method: in a V of angle a between its sides a round of radius R has its centre
//! R ÷ sin(a/2) above the point where the sides meet, and touches each side R ÷ tan(a/2)
//! from that point. A V as wide as w at its face meets (w/2) ÷ tan(a/2) below the face.
//! So of two rounds the thicker by D − d stands (D − d)/2 × (1 + 1 ÷ sin(a/2)) higher: in a
//! V of 60° just one and a half times that. (Plane geometry, our own derivation.)
//!
//! ```
//! use handturn::bench::vee::{Vee, rest};
//! use handturn::measure::{Angle, Length};
//! use handturn::number::Fraction;
//! // A 25 mm bar in a right-angled V, 30 mm wide at its face.
//! let mm = |n| Length::from_mm(Fraction::whole(n));
//! let right = Angle::from_degrees(Fraction::whole(90))?;
//! let found = rest(&Vee { round: mm(25), angle: right, width: mm(30), other: None })?;
//! // 12.5 × √2 above the apex, which lies 15 below the face.
//! assert!((found.centre.value - 2.6777).abs() < 1e-4);
//! assert!((found.top.value - 15.1777).abs() < 1e-4);
//! # Ok::<(), handturn::Error>(())
//! ```
use crate::error::{Cause, Error, Field};
use crate::measure::{
    Angle, Length,
    given::{minus, over, size, times, um_down},
};
use crate::number::{Approx, Fraction};

use super::taper::Amount;

/// A round in a V.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Vee {
    /// Diameter of the round.
    pub round: Length,
    /// Angle between the sides, from 30° to 150°.
    pub angle: Angle,
    /// Width of the V at its face.
    pub width: Length,
    /// Diameter of another round, to be compared with the first.
    pub other: Option<Length>,
}

/// Where the round lies, in millimetres.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Rest {
    /// Its centre above the face; below nought, below it.
    pub centre: Approx,
    /// Its top above the face.
    pub top: Approx,
    /// Its top above the point where the sides meet.
    pub over_apex: Approx,
    /// That point below the face.
    pub apex: Approx,
    /// How much higher the top lies for each millimetre of diameter.
    pub per_mm: Approx,
    /// How the other round lies.
    pub other: Option<Beside>,
}

/// Another round in the same V, beside the first.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Beside {
    /// Its top above the first one's; below nought, below it.
    pub top: Amount,
    /// Its centre above the first one's; below nought, below it.
    pub centre: Amount,
}

/// Where a round lies in a V.
///
/// # Errors
/// Lengths out of bounds; [`Cause::OutOfRange`] of [`Field::Angle`], in degrees;
/// [`Cause::OutOfLengths`] of [`Field::Blank`], or [`Field::Diameter`] for the other one,
/// where a round lies on the V's edges.
pub fn rest(vee: &Vee) -> Result<Rest, Error> {
    size(vee.round, Field::Blank)?;
    size(vee.width, Field::Length)?;
    let degrees = vee.angle.degrees()?;
    if degrees < Fraction::whole(30) || degrees > Fraction::whole(150) {
        return Err(Error::new(Field::Angle, Cause::OutOfRange { least: 30, greatest: 150 }));
    }
    let half = Approx::of(vee.angle.turns()).by(0.5);
    let (sine, cosine) = (half.sin(), half.cos());
    let radius = Approx::of(vee.round.mm()).by(0.5);
    let width = Approx::of(vee.width.mm()).by(0.5);
    // A round touches R·cos(a/2) beside the middle: beyond the V's edge it touches that.
    let lies = |round: Length, field| {
        if Approx::of(round.mm()).by(0.5).times(cosine).value > width.value {
            let greatest_um = um_down(2.0 * width.value / cosine.value);
            return Err(Error::new(field, Cause::OutOfLengths { least_um: 1, greatest_um }));
        }
        Ok(())
    };
    lies(vee.round, Field::Blank)?;
    let other = match vee.other {
        None => None,
        Some(other) => {
            size(other, Field::Diameter)?;
            lies(other, Field::Diameter)?;
            let more = minus(other, vee.round, Field::Diameter)?;
            Some(if more.mm().is_zero() || degrees == Fraction::whole(60) {
                // The sine of 30° is a half.
                let top = over(times(more, 3, Field::Diameter)?, 2, Field::Diameter)?;
                Beside { top: Amount::exactly(top), centre: Amount::exactly(more) }
            } else {
                let half = Approx::of(more.mm()).by(0.5);
                let centre = half.over(sine);
                Beside { top: Amount::near(centre.plus(half)), centre: Amount::near(centre) }
            })
        }
    };
    let apex = width.times(cosine).over(sine);
    let up = radius.over(sine);
    let over_apex = up.plus(radius);
    let per_mm = Approx::exactly(1.0).over(sine).plus(Approx::exactly(1.0)).by(0.5);
    let (centre, top) = (up.minus(apex), over_apex.minus(apex));
    Ok(Rest { centre, top, over_apex, apex, per_mm, other })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn rows() {
        let mm = |n| Length::from_mm(Fraction::whole(n));
        let ask = |round, degrees, width| {
            let angle = Angle::from_degrees(Fraction::whole(degrees)).unwrap();
            rest(&Vee { round: mm(round), angle, width: mm(width), other: None })
        };
        // 60°: the sine of half is a half, so the centre stands two radii over the apex.
        let found = ask(20, 60, 40).unwrap();
        for (came, truth) in [(found.over_apex, 30.0), (found.per_mm, 1.5)] {
            assert!((came.value - truth).abs() <= came.bound && came.bound < 1e-13, "{found:?}");
        }
        let beside = |degrees, other| {
            let angle = Angle::from_degrees(Fraction::whole(degrees)).unwrap();
            let vee = Vee { round: mm(20), angle, width: mm(40), other: Some(mm(other)) };
            rest(&vee).map(|rest| rest.other.unwrap())
        };
        // 60°: three halves of the difference, exactly; 90°: (√2 + 1) ÷ 2 of it.
        let found = beside(60, 26).unwrap();
        assert_eq!((found.top.exact, found.centre.exact), (Some(mm(9)), Some(mm(6))));
        assert_eq!(beside(60, 18).unwrap().top.exact, Some(mm(-3)));
        assert_eq!(beside(90, 20).unwrap().top.exact, Some(mm(0)));
        let found = beside(90, 24).unwrap().top;
        let truth = 2.0 * (core::f64::consts::SQRT_2 + 1.0);
        assert!(found.exact.is_none() && (found.about.value - truth).abs() < 1e-14);
        let wide = beside(90, 60).map_err(|e| (e.field, e.cause));
        let greatest = Cause::OutOfLengths { least_um: 1, greatest_um: 56_568 };
        assert_eq!(wide, Err((Field::Diameter, greatest)));
        let refused = |found: Result<Rest, Error>| found.map_err(|e| (e.field, e.cause));
        assert_eq!(
            refused(ask(60, 90, 40)),
            Err((Field::Blank, Cause::OutOfLengths { least_um: 1, greatest_um: 56_568 }))
        );
        let range = Cause::OutOfRange { least: 30, greatest: 150 };
        assert_eq!(refused(ask(20, 29, 40)), Err((Field::Angle, range)));
        assert_eq!(refused(ask(0, 90, 40)), Err((Field::Blank, Cause::Zero)));
    }
}
