//! The point of a drill: how far its tip runs ahead of its full diameter.
//!
//! Rule (geometry of the cone, as in [`cone`]): point = diameter ÷ 2 × cot
//! half the angle. The chisel edge blunts a real point a little, so the tip stands no
//! farther ahead than this.
//!
//! ```
//! use handturn::bench::point::{Deep, DrillPoint};
//! use handturn::measure::{Angle, Length};
//! use handturn::number::Fraction;
//! // A drill of 10 mm, 118°, full diameter for 25 mm; a spot drill of 90° to 11 mm.
//! let mm = |n| Length::from_mm(Fraction::whole(n));
//! let degrees = |n| Angle::from_degrees(Fraction::whole(n));
//! let drill = DrillPoint {
//!     diameter: mm(10),
//!     angle: degrees(118)?,
//!     depth: Deep::Full(mm(25)),
//!     plate: mm(0),
//!     spot: mm(11),
//!     spot_angle: degrees(90)?,
//! };
//! let found = drill.depths()?;
//! assert!((found.point.value - 3.0043).abs() < 5e-5);
//! assert!((found.tip.value - 28.0043).abs() < 5e-5);
//! assert!((found.spot.value - 5.5).abs() < 1e-12);
//! # Ok::<(), handturn::Error>(())
//! ```
use super::cone;
use crate::error::{Error, Field};
use crate::measure::{Angle, Length, given};
use crate::number::{Approx, float};

/// How the depth of a hole is told.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Deep {
    /// To the end of its full diameter.
    Full(Length),
    /// To its tip.
    Tip(Length),
}

/// A hole and its drill.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct DrillPoint {
    /// Of the drill.
    pub diameter: Length,
    /// Of its point.
    pub angle: Angle,
    /// How deep the hole is.
    pub depth: Deep,
    /// Thickness of the work; nought where it does not matter.
    pub plate: Length,
    /// Diameter that a spot drill leaves at the surface.
    pub spot: Length,
    /// Of the spot drill's point.
    pub spot_angle: Angle,
}

/// How deep drill and spot drill go.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct PointDepths {
    /// Length of the point, in millimetres.
    pub point: Approx,
    /// From the surface to the end of the full diameter, in millimetres; below nought
    /// where the point is not in with its whole length.
    pub full: Approx,
    /// From the surface to the tip, in millimetres.
    pub tip: Approx,
    /// What is left of the work under the tip, in millimetres; below nought where the
    /// tip comes out.
    pub left: Option<Approx>,
    /// How deep the tip must go until the whole diameter is through, in millimetres.
    pub through: Option<Approx>,
    /// How deep the spot drill's tip goes, in millimetres.
    pub spot: Approx,
    /// Whether the drill's corners touch the spot first, not its middle.
    pub corners_first: bool,
}

impl DrillPoint {
    /// How deep drill and spot drill go.
    ///
    /// # Errors
    /// What [`cone::depth`] finds of either point; [`Cause::Zero`](crate::Cause::Zero)
    /// and [`Cause::OutOfLengths`](crate::Cause::OutOfLengths) of depth and thickness.
    pub fn depths(&self) -> Result<PointDepths, Error> {
        let point = cone::depth(self.diameter, given::NONE, self.angle)?;
        let spot = cone::depth(self.spot, given::NONE, self.spot_angle)?;
        let plate = given::from_nought(self.plate, Field::Length)?;
        let beside = |from: f64, point: Approx| {
            let value = from + point.value;
            let bound = point.bound + (from.abs() + value.abs()) * f64::EPSILON;
            Approx { value, bound }
        };
        let less = Approx { value: -point.value, bound: point.bound };
        let (full, tip) = match self.depth {
            Deep::Full(depth) => {
                let full = given::size(depth, Field::Depth)?;
                (cone::near(full, full, 1.0), beside(full, point))
            }
            Deep::Tip(depth) => {
                let tip = given::size(depth, Field::Depth)?;
                (beside(tip, less), cone::near(tip, tip, 1.0))
            }
        };
        let given = !self.plate.mm().is_zero();
        let under = Approx { value: -tip.value, bound: tip.bound };
        Ok(PointDepths {
            point,
            full,
            tip,
            left: given.then(|| beside(plate, under)),
            through: given.then(|| beside(plate, point)),
            spot,
            corners_first: float::of(self.spot_angle.turns()) < float::of(self.angle.turns()),
        })
    }
}

#[cfg(test)]
mod tests {
    extern crate std;

    use super::*;
    use crate::number::Fraction;

    #[test]
    fn depths_to_shoulder_and_tip_are_one_point_apart_and_the_plate_says_what_is_left() {
        let mm = |n| Length::from_mm(Fraction::whole(n));
        let degrees = |n| Angle::from_degrees(Fraction::whole(n)).unwrap();
        let drill = DrillPoint {
            diameter: mm(8),
            angle: degrees(90),
            depth: Deep::Tip(mm(10)),
            plate: mm(12),
            spot: mm(8),
            spot_angle: degrees(120),
        };
        let found = drill.depths().unwrap();
        assert!((found.point.value - 4.0).abs() < 1e-12);
        assert!((found.full.value - 6.0).abs() < 1e-12);
        assert!((found.left.unwrap().value - 2.0).abs() < 1e-12);
        assert!((found.through.unwrap().value - 16.0).abs() < 1e-12);
        assert!(!found.corners_first);
        let other = DrillPoint { depth: Deep::Full(mm(6)), plate: mm(0), ..drill };
        let other = other.depths().unwrap();
        assert!((other.tip.value - 10.0).abs() < 1e-12 && other.left.is_none());
    }
}
