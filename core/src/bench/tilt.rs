//! Work tilted by leaves, shims or gauge blocks under one edge, or on a sine bar.
//!
//! Rule (Technical handbooks; Turning and Boring, F. D. Jones, 1914, has the sine):
//! - *sine*: the pieces stand under an edge, or a roller, that is `span` from the
//!   pivot measured along the work: lift = span × sin angle;
//! - *tangent*: they lie flat under the work, `span` from the pivot measured along the
//!   bed: lift = span × tan angle.
//!
//! A thick leaf touches at its own edge; a burr or oil counts as leaf.
//!
//! ```
//! use handturn::bench::tilt::{Rule, Tilt};
//! use handturn::measure::{Angle, Length};
//! use handturn::number::Fraction;
//! // 0° 45′ under a block of 40 mm.
//! let angle = Angle::from_degrees(Fraction::new(3, 4)?)?;
//! let tilt = Tilt { angle, span: Length::from_mm(Fraction::whole(40)), rule: Rule::Sine };
//! assert!((tilt.lift()?.value - 0.52358).abs() < 5e-6);
//! // 18 and 2½ thou, out of a set by thou.
//! let thou = |n, d: i64| Length::from_inches(Fraction::new(n, d * 1000)?);
//! let found = tilt.choices(None, &[thou(5, 2)?, thou(18, 1)?, thou(35, 1)?], 2)?;
//! assert_eq!(found[1].stack.sum, thou(41, 2)?);
//! assert!((found[1].off_arcsec.value + 15.0).abs() < 0.5);
//! # Ok::<(), handturn::Error>(())
//! ```
use super::stack::{CHOICES, Stack, stacks};
use crate::bounds::LENGTH_UM;
use crate::error::{Cause, Error, Field};
use crate::list::List;
use crate::measure::{Angle, Length, given};
use crate::number::{Approx, Fraction, float};

/// Where the span is measured.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Rule {
    /// Along the work, from pivot to the lifted edge or roller.
    Sine,
    /// Along the bed, from pivot to the pieces.
    Tangent,
}

/// A tilt wanted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Tilt {
    /// The angle, above nought and below 80°.
    pub angle: Angle,
    /// From the pivot to what is lifted.
    pub span: Length,
    /// Where that is measured.
    pub rule: Rule,
}

/// Pieces for a tilt, and what they make of it.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Choice {
    /// The pieces.
    pub stack: Stack,
    /// The angle they give, in degrees.
    pub degrees: Approx,
    /// By how much that is more than wanted, in arc-seconds.
    pub off_arcsec: Approx,
}

impl Tilt {
    /// How far the edge is lifted, in millimetres.
    ///
    /// # Errors
    /// [`Cause::OutOfRange`] of the angle, in degrees; [`Cause::Zero`] and
    /// [`Cause::OutOfLengths`] of the span.
    #[doc(alias("sine bar", "feeler"))]
    pub fn lift(&self) -> Result<Approx, Error> {
        let span = given::size(self.span, Field::Length)?;
        let degrees = self.angle.degrees()?;
        if degrees <= Fraction::ZERO || degrees >= Fraction::whole(80) {
            return Err(Error::new(Field::Angle, Cause::OutOfRange { least: 0, greatest: 80 }));
        }
        let turns = float::of(self.angle.turns());
        let value = span
            * match self.rule {
                Rule::Sine => float::sin_turns(turns),
                Rule::Tangent => float::tan_turns(turns),
            };
        Ok(Approx { value, bound: value * (16.0 * f64::EPSILON) })
    }

    /// What is left of the lift between two wear blocks, each as thick as `wear`, in
    /// millimetres.
    ///
    /// # Errors
    /// As [`Self::lift`]; [`Cause::Zero`] and [`Cause::OutOfLengths`] of
    /// [`Field::Thickness`], also where they come to more than the lift.
    pub fn between(&self, wear: Length) -> Result<Approx, Error> {
        let (lift, wear) = (self.lift()?, given::size(wear, Field::Thickness)?);
        let left = lift.minus(Approx { value: 2.0 * wear, bound: f64::EPSILON * 2.0 * wear });
        if left.value < -left.bound {
            let greatest_um = given::um_down(lift.value / 2.0);
            let cause = Cause::OutOfLengths { least_um: LENGTH_UM.0, greatest_um };
            return Err(Error::new(Field::Thickness, cause));
        }
        Ok(left)
    }

    /// The stacks of at most `most` of the pieces `owned` that come nearest, fewest
    /// first, each with the angle it gives; between two wear blocks, each as thick as
    /// `wear`, where there are such.
    ///
    /// # Errors
    /// As [`Self::lift`] and [`stacks`].
    pub fn choices(
        &self,
        wear: Option<Length>,
        owned: &[Length],
        most: u8,
    ) -> Result<List<Choice, CHOICES>, Error> {
        let lift = self.lift()?;
        let overflow = Error::new(Field::Length, Cause::Overflow);
        // A millionth of a millionth: far below what any leaf is ground to.
        let wanted = float::nearest(lift.value, 1_000_000_000).ok_or(overflow)?;
        let mut choices = List::new();
        for stack in &stacks(Length::from_mm(wanted), wear, owned, most)? {
            let Ok(degrees) = angle(self.span, stack.sum, self.rule) else { continue };
            let off = (degrees.value - 360.0 * float::of(self.angle.turns())) * 3600.0;
            let off_arcsec = Approx { value: off, bound: degrees.bound * 3600.0 * 2.0 };
            let _ = choices.push(Choice { stack: stack.clone(), degrees, off_arcsec });
        }
        Ok(choices)
    }
}

/// The angle, in degrees, at which `lift` holds work over `span`.
///
/// # Errors
/// [`Cause::Zero`] and [`Cause::OutOfLengths`] of either; [`Cause::Conflict`] where the
/// lift is as long as the span that it is measured along.
pub fn angle(span: Length, lift: Length, rule: Rule) -> Result<Approx, Error> {
    let (long, high) = (given::size(span, Field::Length)?, given::size(lift, Field::Length)?);
    let ratio = high / long;
    let (turns, loses) = match rule {
        Rule::Sine if lift >= span => {
            return Err(Error::new(Field::Length, Cause::Conflict));
        }
        Rule::Sine => (float::asin_turns(ratio), 1.0 / float::sqrt((1.0 - ratio) * (1.0 + ratio))),
        Rule::Tangent => (float::atan_turns(ratio), 1.0),
    };
    let value = turns * 360.0;
    let of_ratio = ratio * loses * (180.0 / float::PI);
    Ok(Approx { value, bound: (8.0 * f64::EPSILON) * (value + of_ratio) })
}
