//! Chamfers on an outside or in a bore: the three lengths of one, and where it ends.
//!
//! Rule (geometry of the right triangle): with the angle from the axis, what it takes
//! off the radius = its length along the axis × tan angle. A straight edge that lies at
//! the angle and touches the corner cuts it by going in as far as it takes off the
//! radius, or along as far as it is long.
//!
//! ```
//! use handturn::bench::chamfer::{Chamfer, Given};
//! use handturn::measure::{Angle, Length};
//! use handturn::number::Fraction;
//! // M10 at 30° from the axis, down to its minor diameter of 8.160 mm.
//! let mm = |n, d| Fraction::new(n, d).map(Length::from_mm);
//! let chamfer = Chamfer {
//!     diameter: mm(10, 1)?,
//!     bore: false,
//!     angle: Angle::from_degrees(Fraction::whole(30))?,
//!     given: Given::To(mm(816, 100)?),
//! };
//! let legs = chamfer.legs()?;
//! assert!((legs.off_radius.value - 0.92).abs() < 1e-12);
//! assert!((legs.along.value - 1.5935).abs() < 5e-5);
//! # Ok::<(), handturn::Error>(())
//! ```
use super::cone::near;
use crate::error::{Cause, Error, Field};
use crate::measure::{Angle, Length, given};
use crate::number::{Approx, float};

/// Which length of a chamfer is known.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Given {
    /// What it takes off the radius.
    OffRadius(Length),
    /// How long it is along the axis.
    Along(Length),
    /// How wide its face is.
    Face(Length),
    /// The diameter at which it ends.
    To(Length),
}

/// A chamfer wanted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Chamfer {
    /// Of the work where the chamfer begins.
    pub diameter: Length,
    /// Whether it is in a bore.
    pub bore: bool,
    /// From the axis, 1 to 89°.
    pub angle: Angle,
    /// What is known.
    pub given: Given,
}

/// The lengths of a chamfer, in millimetres.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Legs {
    /// What it takes off the radius.
    pub off_radius: Approx,
    /// How long it is along the axis.
    pub along: Approx,
    /// How wide its face is: what a top slide set to the angle travels.
    pub face: Approx,
    /// Diameter at the end of the work.
    pub end: Approx,
}

impl Chamfer {
    /// Its lengths.
    ///
    /// # Errors
    /// [`Cause::OutOfRange`] of the angle, in degrees; [`Cause::Zero`] and
    /// [`Cause::OutOfLengths`] of the lengths; [`Cause::Conflict`] where it ends on the
    /// wrong side of the diameter, or beyond the axis.
    pub fn legs(&self) -> Result<Legs, Error> {
        let diameter = given::size(self.diameter, Field::Diameter)?;
        let turns = float::of(self.angle.turns());
        if !(1.0..=89.0).contains(&(turns * 360.0)) {
            return Err(Error::new(Field::Angle, Cause::OutOfRange { least: 1, greatest: 89 }));
        }
        let (sin, cos) = (float::sin_turns(turns), float::cos_turns(turns));
        let conflict = Error::new(Field::Diameter, Cause::Conflict);
        // The face is told first: both legs come out of it.
        let face = match self.given {
            Given::OffRadius(leg) => given::size(leg, Field::Length)? / sin,
            Given::Along(leg) => given::size(leg, Field::Length)? / cos,
            Given::Face(face) => given::size(face, Field::Length)?,
            Given::To(end) => {
                given::from_nought(end, Field::Length)?;
                let wide = given::minus(self.diameter, end, Field::Length)?.mm();
                let wide = if self.bore { wide.negated() } else { wide };
                if wide.is_negative() || wide.is_zero() {
                    return Err(conflict);
                }
                float::of(wide) / 2.0 / sin
            }
        };
        let (off, along) = (face * sin, face * cos);
        let end = if self.bore { diameter + 2.0 * off } else { diameter - 2.0 * off };
        if end < -1e-9 * diameter {
            return Err(conflict);
        }
        Ok(Legs {
            off_radius: near(off, off, 8.0),
            along: near(along, along, 8.0),
            face: near(face, face, 5.0),
            end: near(end, diameter + 2.0 * off, 10.0),
        })
    }
}

#[cfg(test)]
mod tests {
    extern crate std;

    use super::*;
    use crate::number::Fraction;

    #[test]
    fn each_length_leads_to_the_others() {
        let mm = |n, d| Length::from_mm(Fraction::new(n, d).unwrap());
        let base = Chamfer {
            diameter: mm(20, 1),
            bore: true,
            angle: Angle::from_degrees(Fraction::whole(30)).unwrap(),
            given: Given::OffRadius(mm(1, 1)),
        };
        let legs = base.legs().unwrap();
        assert!((legs.face.value - 2.0).abs() < 1e-12 && (legs.end.value - 22.0).abs() < 1e-12);
        assert!((legs.along.value - 3.0_f64.sqrt()).abs() < 1e-12);
        for given in [Given::Face(mm(2, 1)), Given::To(mm(22, 1))] {
            let same = Chamfer { given, ..base }.legs().unwrap();
            assert!((same.off_radius.value - 1.0).abs() < 1e-12);
        }
        let inside = Chamfer { given: Given::To(mm(19, 1)), ..base };
        assert_eq!(inside.legs(), Err(Error::new(Field::Diameter, Cause::Conflict)));
        let through = Chamfer { bore: false, given: Given::OffRadius(mm(11, 1)), ..base };
        assert_eq!(through.legs(), Err(Error::new(Field::Diameter, Cause::Conflict)));
    }
}
