//! Countersinks: how deep a conical tool goes for a diameter at the surface.
//!
//! Rule (geometry of the cone): depth = (diameter − what the tool touches first) ÷ 2 ×
//! cot half the angle. A tool first touches with its flat or pilot nose, or with its
//! flank on the edge of a hole that is there already. A head sunk below the surface
//! wants the whole cone as much deeper. A ball of a known size laid in measures it.
//!
//! ```
//! use handturn::bench::cone::Countersink;
//! use handturn::measure::{Angle, Length};
//! use handturn::number::Fraction;
//! // A head of 11.3 mm, 90°, over a hole of 6.6 mm.
//! let mm = |n, d| Fraction::new(n, d).map(Length::from_mm);
//! let sink = Countersink {
//!     angle: Angle::from_degrees(Fraction::whole(90))?,
//!     diameter: mm(113, 10)?,
//!     flat: mm(0, 1)?,
//!     hole: mm(33, 5)?,
//!     below: mm(0, 1)?,
//!     ball: mm(0, 1)?,
//! };
//! let found = sink.depths()?;
//! assert!((found.tip.value - 5.65).abs() < 1e-12);
//! assert!((found.from_touch.value - 2.35).abs() < 1e-12);
//! # Ok::<(), handturn::Error>(())
//! ```
use crate::error::{Cause, Error, Field};
use crate::measure::{Angle, Length, given};
use crate::number::{Approx, float};

/// Least and greatest angle between the sides of a conical tool, in degrees.
pub const ANGLES: (u32, u32) = (10, 170);

/// `value`, off by at most so many units of rounding relative to `size`.
pub(super) const fn near(value: f64, size: f64, units: f64) -> Approx {
    Approx { value, bound: size.abs() * units * f64::EPSILON }
}

/// Sine and cosine of half of `angle`, within [`ANGLES`].
pub(super) fn half(angle: Angle) -> Result<(f64, f64), Error> {
    let (least, greatest) = ANGLES;
    let degrees = float::of(angle.turns()) * 360.0;
    if degrees < f64::from(least) || degrees > f64::from(greatest) {
        return Err(Error::new(Field::Angle, Cause::OutOfRange { least, greatest }));
    }
    let turns = float::of(angle.turns()) / 2.0;
    Ok((float::sin_turns(turns), float::cos_turns(turns)))
}

/// How far a tool of `angle` between its sides goes in, in millimetres, from where it
/// touches at `touches` to where it cuts `diameter`.
///
/// # Errors
/// [`Cause::OutOfRange`] of the angle ([`ANGLES`], degrees); [`Cause::Zero`] and
/// [`Cause::OutOfLengths`] of the diameters; [`Cause::Conflict`] where it touches
/// outside the diameter wanted.
pub fn depth(diameter: Length, touches: Length, angle: Angle) -> Result<Approx, Error> {
    given::size(diameter, Field::Diameter)?;
    given::from_nought(touches, Field::Tool)?;
    let (sin, cos) = half(angle)?;
    let wide = given::minus(diameter, touches, Field::Diameter)?;
    if wide.mm().is_negative() {
        return Err(Error::new(Field::Diameter, Cause::Conflict));
    }
    let value = float::of(wide.mm()) / 2.0 * cos / sin;
    Ok(near(value, value, 8.0))
}

/// A countersink wanted, and what cuts it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Countersink {
    /// Between the sides of the tool.
    pub angle: Angle,
    /// Of the head, or of the chamfer at the surface.
    pub diameter: Length,
    /// Of the tool's flat nose or pilot; nought for a sharp one.
    pub flat: Length,
    /// Of the hole, or of the countersink, that is there already; nought for none.
    pub hole: Length,
    /// How far below the surface the head's rim comes; nought for flush.
    pub below: Length,
    /// Of a ball to measure with; nought for none.
    pub ball: Length,
}

/// How deep a countersink is.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Depths {
    /// Diameter at the surface, in millimetres: the head's, or more where it is sunk.
    pub mouth: Approx,
    /// From the surface to the tool's nose, in millimetres.
    pub tip: Approx,
    /// How far the tool goes on from where it first touches, in millimetres.
    pub from_touch: Approx,
    /// Whether it first touches the edge of the hole, not the surface with its nose.
    pub on_edge: bool,
    /// By how many millimetres the diameter grows in each millimetre of depth.
    pub growth: Approx,
    /// The ball laid in.
    pub ball: Option<Ball>,
}

/// A ball that lies in a countersink.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Ball {
    /// Diameter at which it touches, in millimetres.
    pub touches: Approx,
    /// By how many millimetres it stands above the surface; below nought, under it.
    pub above: Approx,
}

impl Countersink {
    /// How deep it is.
    ///
    /// # Errors
    /// As [`depth`]; [`Cause::Conflict`] also for a ball that lies on the rim, or falls
    /// through to the hole.
    pub fn depths(&self) -> Result<Depths, Error> {
        let (sin, cos) = half(self.angle)?;
        let flush = depth(self.diameter, self.flat, self.angle)?;
        let sunk = given::from_nought(self.below, Field::Depth)?;
        given::from_nought(self.hole, Field::Drill)?;
        let touches = self.flat.max(self.hole);
        let from_edge = depth(self.diameter, touches, self.angle)?;
        let deeper = |from: Approx| {
            let value = from.value + sunk;
            Approx { value, bound: from.bound + value * f64::EPSILON }
        };
        let head = float::of(self.diameter.mm());
        let growth = 2.0 * sin / cos;
        let mouth = head + sunk * growth;
        Ok(Depths {
            mouth: near(mouth, mouth, 10.0),
            tip: deeper(flush),
            from_touch: deeper(from_edge),
            on_edge: self.hole > self.flat,
            growth: near(growth, growth, 6.0),
            ball: self.ball(mouth, (sin, cos))?,
        })
    }

    fn ball(&self, mouth: f64, (sin, cos): (f64, f64)) -> Result<Option<Ball>, Error> {
        if self.ball.mm().is_zero() {
            return Ok(None);
        }
        let ball = given::size(self.ball, Field::Diameter)?;
        let touches = ball * cos;
        if touches > mouth || touches < float::of(self.flat.max(self.hole).mm()) {
            return Err(Error::new(Field::Diameter, Cause::Conflict));
        }
        // Its centre stands ball ÷ 2 sin over the apex; the surface mouth ÷ 2 cot.
        let (centre, surface) = (ball / 2.0 / sin, mouth / 2.0 * cos / sin);
        let above = centre + ball / 2.0 - surface;
        let size = centre + ball + surface;
        Ok(Some(Ball { touches: near(touches, touches, 6.0), above: near(above, size, 16.0) }))
    }
}

#[cfg(test)]
mod tests {
    extern crate std;

    use super::*;
    use crate::number::Fraction;

    fn mm(n: i64, d: i64) -> Length {
        Length::from_mm(Fraction::new(n, d).unwrap())
    }

    fn sink(degrees: i64) -> Countersink {
        Countersink {
            angle: Angle::from_degrees(Fraction::whole(degrees)).unwrap(),
            diameter: mm(12, 1),
            flat: mm(0, 1),
            hole: mm(0, 1),
            below: mm(0, 1),
            ball: mm(0, 1),
        }
    }

    #[test]
    fn a_nose_and_a_hole_shorten_the_way_and_a_sunk_head_lengthens_it() {
        let sharp = sink(90).depths().unwrap();
        assert!((sharp.tip.value - 6.0).abs() < 1e-12);
        let blunt = Countersink { flat: mm(2, 1), ..sink(90) }.depths().unwrap();
        assert!((blunt.tip.value - 5.0).abs() < 1e-12);
        let drilled = Countersink { flat: mm(2, 1), hole: mm(5, 1), below: mm(1, 2), ..sink(90) };
        let drilled = drilled.depths().unwrap();
        assert!((drilled.tip.value - 5.5).abs() < 1e-12);
        assert!((drilled.from_touch.value - 4.0).abs() < 1e-12 && drilled.on_edge);
        assert!((drilled.mouth.value - 13.0).abs() < 1e-12);
    }

    #[test]
    fn the_ball_touches_both_sides() {
        // 60°: the ball's centre stands one diameter over the apex.
        let found = Countersink { ball: mm(10, 1), ..sink(60) }.depths().unwrap();
        let ball = found.ball.unwrap();
        assert!((ball.touches.value - 10.0 * 0.75_f64.sqrt()).abs() < 1e-12);
        assert!((ball.above.value - (15.0 - 6.0 * 3.0_f64.sqrt())).abs() < 1e-12);
        let rim = Countersink { ball: mm(14, 1), ..sink(60) }.depths();
        assert_eq!(rim, Err(Error::new(Field::Diameter, Cause::Conflict)));
    }

    #[test]
    fn a_hole_wider_than_the_head_is_refused() {
        let wide = Countersink { hole: mm(13, 1), ..sink(90) };
        assert_eq!(wide.depths(), Err(Error::new(Field::Diameter, Cause::Conflict)));
        assert!(sink(5).depths().is_err() && sink(175).depths().is_err());
    }
}
