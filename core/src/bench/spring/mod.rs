//! Springs coiled of round wire: what pushes, what pulls and what turns.
//!
//! The usual formulas of spring design (Wahl, Mechanical Springs; text-books of machine
//! design), with C = D ÷ d the index, D the mean diameter of the coils, d the wire:
//! - shear of the wire 8 F D ÷ (π d³), times Wahl's (4C − 1) ÷ (4C − 4) + 0.615 ÷ C or
//!   Bergsträsser's (4C + 2) ÷ (4C − 3) for the curve of the coil;
//! - bending 32 M ÷ (π d³), times (4C² − C − 1) ÷ (4C (C − 1)).
//!
//! A spring holds energy: it is wound, cut and tried with the eyes covered.
mod compression;
mod extension;
mod torsion;

pub use compression::{Compression, Ends, Pushed, Stands, Wanted};
pub use extension::{Extension, Pulled};
pub use torsion::{Torsion, Turned};

use super::wire::Band;
use crate::error::{Cause, Error, Field};
use crate::measure::{Length, given};
use crate::number::{Approx, Fraction};

/// How a spring winds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Winding {
    /// Index below 4: hard to wind, and stressed at the inside.
    Tight,
    /// Index from 4 to 12.
    Usual,
    /// Index above 12: it tangles, and its size is hard to hold.
    Slack,
}

/// Which diameter of a coil is given.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Across {
    /// Over the coils.
    Outside,
    /// From wire centre to wire centre.
    Mean,
    /// Within the coils.
    Inside,
}

impl Across {
    /// The mean diameter of coils of which this diameter is `size`.
    ///
    /// # Errors
    /// [`Cause::Overflow`].
    pub fn mean(self, size: Length, wire: Length) -> Result<Length, Error> {
        match self {
            Self::Outside => given::minus(size, wire, Field::Diameter),
            Self::Mean => Ok(size),
            Self::Inside => given::plus(size, wire, Field::Diameter),
        }
    }
}

/// A mandrel to begin with, in millimetres.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Arbor {
    /// For wire at its strongest.
    pub least: Approx,
    /// For wire at its weakest.
    pub most: Approx,
}

/// The mandrel that coils of a mean diameter are wound on: inside diameter over
/// 1 + 1.7 C S ÷ E (handbook rule, from memory), for a tensile strength S and a modulus E in
/// MPa. A size to try.
///
/// # Errors
/// Lengths out of bounds; [`Cause::Conflict`] of [`Field::Spring`]; [`Cause::OutOfRange`]
/// of [`Field::Modulus`] and [`Field::Yield`].
#[doc(alias("mandrel"))]
pub fn arbor(wire: Length, mean: Length, tensile: Band, modulus: f64) -> Result<Arbor, Error> {
    let coil = Coil::new(wire, mean)?;
    let e = stiff(modulus)?;
    let inside = coil.mean.minus(coil.wire);
    let on = |strength: f64| {
        if !(1.0..=5000.0).contains(&strength) {
            return Err(Error::new(Field::Yield, Cause::OutOfRange { least: 1, greatest: 5000 }));
        }
        let more = coil.index.by(1.7).by(strength).over(e);
        Ok(inside.over(Approx::exactly(1.0).plus(more)))
    };
    Ok(Arbor { least: on(tensile.most)?, most: on(tensile.least)? })
}

/// Wire and coil, checked, in millimetres.
#[derive(Clone, Copy)]
struct Coil {
    wire: Approx,
    mean: Approx,
    index: Approx,
}

impl Coil {
    fn new(wire: Length, mean: Length) -> Result<Self, Error> {
        let (d, _) = (given::size(wire, Field::Wire)?, given::size(mean, Field::Diameter)?);
        if mean < given::times(wire, 2, Field::Wire)? || d <= 0.0 {
            return Err(Error::new(Field::Spring, Cause::Conflict));
        }
        let (wire, mean) = (Approx::of(wire.mm()), Approx::of(mean.mm()));
        Ok(Self { wire, mean, index: mean.over(wire) })
    }

    fn winding(&self) -> Winding {
        match self.index.value {
            c if c < 4.0 => Winding::Tight,
            c if c > 12.0 => Winding::Slack,
            _ => Winding::Usual,
        }
    }

    /// Wahl's factor.
    fn wahl(&self) -> Approx {
        let c = self.index;
        let four = c.by(4.0);
        let one = |n: f64| Approx::exactly(n);
        four.minus(one(1.0)).over(four.minus(one(4.0))).plus(one(0.615).over(c))
    }

    /// Bergsträsser's factor.
    fn bergstrasser(&self) -> Approx {
        let four = self.index.by(4.0);
        four.plus(Approx::exactly(2.0)).over(four.minus(Approx::exactly(3.0)))
    }

    /// Shear of the wire under a force, in MPa, without a factor.
    fn shear(&self, newtons: Approx) -> Approx {
        newtons.by(8.0).times(self.mean).over(self.cube())
    }

    /// Bending of the wire by a moment in N mm, in MPa, without a factor.
    fn bending(&self, moment: Approx) -> Approx {
        moment.by(32.0).over(self.cube())
    }

    /// π d³.
    fn cube(&self) -> Approx {
        self.wire.times(self.wire).times(self.wire).times(Approx::pi())
    }

    /// d⁴.
    fn fourth(&self) -> Approx {
        let square = self.wire.times(self.wire);
        square.times(square)
    }

    /// Force for a millimetre: G d⁴ ÷ (8 D³ n), n coils that move.
    fn rate(&self, shear: Approx, active: Approx) -> Approx {
        let cube = self.mean.times(self.mean).times(self.mean);
        shear.times(self.fourth()).over(cube.by(8.0).times(active))
    }

    /// Wire in so many coils of a pitch.
    fn length(&self, coils: Approx, pitch: Approx) -> Approx {
        let round = self.mean.times(Approx::pi());
        round.times(round).plus(pitch.times(pitch)).sqrt().times(coils)
    }
}

/// (4C² − C − 1) ÷ (4C (C − 1)): bending at the inside of a curve.
fn curved(c: Approx) -> Approx {
    let (one, four) = (Approx::exactly(1.0), c.by(4.0));
    four.times(c).minus(c).minus(one).over(four.times(c.minus(one)))
}

/// A force in newtons or a moment in N mm, from nought to a million.
fn load(value: f64) -> Result<Approx, Error> {
    if (0.0..=1e6).contains(&value) {
        return Ok(Approx::exactly(value));
    }
    Err(Error::new(Field::Load, Cause::OutOfRange { least: 0, greatest: 1_000_000 }))
}

/// A modulus in MPa.
fn stiff(value: f64) -> Result<Approx, Error> {
    if (1000.0..=1e6).contains(&value) {
        return Ok(Approx::exactly(value));
    }
    Err(Error::new(Field::Modulus, Cause::OutOfRange { least: 1000, greatest: 1_000_000 }))
}

/// A number of coils, from 1 to 1000.
fn coils(value: Fraction) -> Result<Approx, Error> {
    if value >= Fraction::ONE && value <= Fraction::whole(1000) {
        return Ok(Approx::of(value));
    }
    Err(Error::new(Field::Coils, Cause::OutOfRange { least: 1, greatest: 1000 }))
}

/// `length` times a number of coils.
fn along(length: Length, coils: Fraction) -> Result<Length, Error> {
    let mm = length.mm().checked_mul(coils).map_err(|e| e.of(Field::Coils))?;
    Ok(Length::from_mm(mm))
}
