//! A straight tape of N pitches to wrap round a drum, for whoever has no head yet.
//!
//! Wrapped, the middle of the paper keeps its length: a tape of thickness t on a drum of
//! diameter D is `π·(D + t)` long, and each pitch is that over N. A print that came out by
//! p per mille too long, and paper that is thicker than was reckoned by u, leave a lap of
//! `length·p − π·u` at the joint (below nought: a gap). It falls on the one part there,
//! unless the drum is packed or turned down until the joint closes: then all parts are equal
//! again. (Plane geometry, our own derivation; that paper follows the weather by some per
//! mille is common practice of the trade.)
//!
//! ```
//! use handturn::measure::Length;
//! use handturn::number::Fraction;
//! use handturn::plate::tape::{self, Tape};
//! // 131 parts on a drum of 120 mm, paper of 0.1 mm, a print one per mille too long.
//! let mm = |num, den| Fraction::new(num, den).map(Length::from_mm);
//! let sizes = Tape {
//!     parts: 131, drum: mm(120, 1)?, thickness: mm(1, 10)?,
//!     stretch_per_mille: Fraction::ONE, thicker: mm(0, 1)?,
//! }.sizes()?;
//! assert!((sizes.length.value - 377.3053).abs() < 1e-4);
//! assert!((sizes.pitch.value - 2.88019).abs() < 1e-5);
//! assert!((sizes.lap.value - 0.3773).abs() < 1e-4);
//! assert!((tape::drum(131, mm(3, 1)?, mm(1, 10)?)?.value - 124.9958).abs() < 1e-4);
//! # Ok::<(), handturn::Error>(())
//! ```
use crate::bounds::DIVISIONS;
use crate::error::{Cause, Error, Field};
use crate::measure::Length;
use crate::measure::given::{from_nought, size};
use crate::number::{
    Approx, Fraction,
    float::{self, PI},
};

/// A tape, the drum it goes round, and how far paper and print may be out.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Tape {
    /// Equal parts.
    pub parts: u32,
    /// Diameter of the drum.
    pub drum: Length,
    /// Thickness of the paper.
    pub thickness: Length,
    /// By how many thousandths the print, as it is used, is longer than drawn; below nought
    /// for shorter. At most 50 either way.
    pub stretch_per_mille: Fraction,
    /// By how much the paper is thicker than reckoned; below nought for thinner.
    pub thicker: Length,
}

/// Sizes of a tape, in millimetres, and what is left over at its joint.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Sizes {
    /// From mark to mark on the flat tape.
    pub pitch: Approx,
    /// All pitches: from the first mark to where it comes round again.
    pub length: Approx,
    /// How far the ends lap at the joint; below nought it is a gap.
    pub lap: Approx,
    /// The same in arc-seconds of the drum: the error of the one part at the joint.
    pub lap_arcsec: Approx,
    /// What a tenth of a millimetre along the tape is on the drum, in arc-seconds: a mark
    /// can hardly be set closer by eye.
    pub tenth_arcsec: Approx,
}

impl Tape {
    /// Its sizes.
    ///
    /// # Errors
    /// [`Cause::OutOfRange`] for the parts ([`DIVISIONS`]); lengths out of bounds, of
    /// [`Field::Drum`] and [`Field::Length`]; [`Cause::Conflict`] of [`Field::Length`] for a
    /// stretch above 50 per mille or paper that differs by more than its thickness.
    pub fn sizes(&self) -> Result<Sizes, Error> {
        DIVISIONS.check(i64::from(self.parts))?;
        size(self.drum, Field::Drum)?;
        from_nought(self.thickness, Field::Length)?;
        if self.stretch_per_mille.abs() > Fraction::whole(50)
            || self.thicker.mm().abs() > self.thickness.mm()
        {
            return Err(Error::new(Field::Length, Cause::Conflict));
        }
        let middle = float::of(self.drum.mm().checked_add(self.thickness.mm())?);
        let length = near(PI * middle, 3.0);
        let pitch = near(length.value / float::of(Fraction::whole(i64::from(self.parts))), 4.0);
        let stretched = length.value * float::of(self.stretch_per_mille) / 1000.0;
        let thicker = PI * float::of(self.thicker.mm());
        let unit = f64::EPSILON * 8.0;
        let lap =
            Approx { value: stretched - thicker, bound: unit * (stretched.abs() + thicker.abs()) };
        let per_mm = 1_296_000.0 / length.value;
        Ok(Sizes {
            pitch,
            length,
            lap,
            lap_arcsec: Approx {
                value: lap.value * per_mm,
                bound: (lap.bound + unit * lap.value.abs()) * per_mm,
            },
            tenth_arcsec: near(per_mm / 10.0, 8.0),
        })
    }
}

/// The drum's diameter, in millimetres, on which `parts` pitches of `pitch` close, the paper
/// `thickness` thick.
///
/// # Errors
/// [`Cause::OutOfRange`] for the parts ([`DIVISIONS`]); lengths out of bounds, of
/// [`Field::Pitch`] and [`Field::Length`]; [`Cause::Conflict`] of [`Field::Pitch`] where no
/// drum is left inside the paper.
pub fn drum(parts: u32, pitch: Length, thickness: Length) -> Result<Approx, Error> {
    DIVISIONS.check(i64::from(parts))?;
    size(pitch, Field::Pitch)?;
    let thickness = from_nought(thickness, Field::Length)?;
    let middle = float::of(pitch.mm().times(i64::from(parts))?) / PI;
    if middle <= thickness {
        return Err(Error::new(Field::Pitch, Cause::Conflict));
    }
    let value = middle - thickness;
    Ok(Approx { value, bound: 3.0 * f64::EPSILON * middle })
}

fn near(value: f64, units: f64) -> Approx {
    Approx { value, bound: units * f64::EPSILON * value }
}
