//! Straight-sided splines as standards list them.
//!
//! Metric: ISO 14 (1982; BS 5686:1986), light and medium series, centred on the minor
//! diameter. Inch: SAE J499a, proportions of the major diameter by number of keys and
//! fit, for soft broached holes; a shaft is made to go with its hole.
//!
//! ```
//! use handturn::gear::spline_series::{Fit, ISO_14, sae};
//! use handturn::measure::Length;
//! use handturn::number::Fraction;
//! let cutter = Length::from_mm(Fraction::whole(3));
//! assert!(ISO_14.iter().any(|s| (s.keys, s.minor_mm, s.major_mm, s.key_tenths) == (6, 23, 26, 60)));
//! // An inch shaft of six keys, not moved under load: 0.25 wide, 0.85 at the floor.
//! let inch = Length::from_inches(Fraction::ONE)?;
//! let shaft = sae(6, Fit::SlidesUnloaded, inch, cutter)?;
//! assert_eq!(shaft.minor.inches()?, Fraction::new(17, 20)?);
//! # Ok::<(), handturn::Error>(())
//! ```
use super::spline::Spline;
use crate::error::{Cause, Error, Field};
use crate::measure::Length;
use crate::number::Fraction;

/// One size of ISO 14.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Listed {
    /// Keys.
    pub keys: u8,
    /// Minor diameter in millimetres.
    pub minor_mm: u8,
    /// Major diameter in millimetres.
    pub major_mm: u8,
    /// Width of a key in tenths of a millimetre.
    pub key_tenths: u8,
}

/// Sizes of ISO 14 (1982), light and medium series by turns of the minor diameter.
pub const ISO_14: [Listed; 35] = [
    listed(6, 11, 14, 30),
    listed(6, 13, 16, 35),
    listed(6, 16, 20, 40),
    listed(6, 18, 22, 50),
    listed(6, 21, 25, 50),
    listed(6, 23, 26, 60),
    listed(6, 23, 28, 60),
    listed(6, 26, 30, 60),
    listed(6, 26, 32, 60),
    listed(6, 28, 32, 70),
    listed(6, 28, 34, 70),
    listed(8, 32, 36, 60),
    listed(8, 32, 38, 60),
    listed(8, 36, 40, 70),
    listed(8, 36, 42, 70),
    listed(8, 42, 46, 80),
    listed(8, 42, 48, 80),
    listed(8, 46, 50, 90),
    listed(8, 46, 54, 90),
    listed(8, 52, 58, 100),
    listed(8, 52, 60, 100),
    listed(8, 56, 62, 100),
    listed(8, 56, 65, 100),
    listed(8, 62, 68, 120),
    listed(8, 62, 72, 120),
    listed(10, 72, 78, 120),
    listed(10, 72, 82, 120),
    listed(10, 82, 88, 120),
    listed(10, 82, 92, 120),
    listed(10, 92, 98, 140),
    listed(10, 92, 102, 140),
    listed(10, 102, 108, 160),
    listed(10, 102, 112, 160),
    listed(10, 112, 120, 180),
    listed(10, 112, 125, 180),
];

const fn listed(keys: u8, minor_mm: u8, major_mm: u8, key_tenths: u8) -> Listed {
    assert!(minor_mm < major_mm && key_tenths / 10 < minor_mm);
    Listed { keys, minor_mm, major_mm, key_tenths }
}

impl Listed {
    /// The shaft, to be cut with a cutter of this width.
    ///
    /// # Errors
    /// None for a size of the table.
    pub fn shaft(self, cutter: Length) -> Result<Spline, Error> {
        let mm = |n: u8| Length::from_mm(Fraction::whole(i64::from(n)));
        Ok(Spline {
            keys: u32::from(self.keys),
            major: mm(self.major_mm),
            minor: mm(self.minor_mm),
            key: Length::from_mm(Fraction::new(i64::from(self.key_tenths), 10)?),
            cutter,
        })
    }
}

/// How an inch spline goes together.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Fit {
    /// For good: fit A.
    Permanent,
    /// Slides when it is not under load: fit B.
    SlidesUnloaded,
    /// Slides under load: fit C.
    SlidesLoaded,
}

/// A shaft of 4, 6, 10 or 16 keys by the proportions of SAE J499a.
///
/// # Errors
/// [`Cause::Conflict`] of [`Field::Keys`] for any other number, and for four keys that
/// slide under load; [`Cause::Overflow`].
pub fn sae(keys: u32, fit: Fit, major: Length, cutter: Length) -> Result<Spline, Error> {
    // Width of a key and height of a flank in thousandths of the major diameter.
    let (key, height) = match (keys, fit) {
        (4, Fit::Permanent) => (241, 75),
        (4, Fit::SlidesUnloaded) => (241, 125),
        (6, Fit::Permanent) => (250, 50),
        (6, Fit::SlidesUnloaded) => (250, 75),
        (6, Fit::SlidesLoaded) => (250, 100),
        (10, Fit::Permanent) => (156, 45),
        (10, Fit::SlidesUnloaded) => (156, 70),
        (10, Fit::SlidesLoaded) => (156, 95),
        (16, Fit::Permanent) => (98, 45),
        (16, Fit::SlidesUnloaded) => (98, 70),
        (16, Fit::SlidesLoaded) => (98, 95),
        _ => return Err(Error::new(Field::Keys, Cause::Conflict)),
    };
    let of_major = |thousandths: i64| {
        let part = Fraction::new(thousandths, 1000)?;
        major.mm().checked_mul(part).map(Length::from_mm).map_err(|e| e.of(Field::Blank))
    };
    let minor = of_major(1000_i64.saturating_sub(height).saturating_sub(height))?;
    Ok(Spline { keys, major, minor, key: of_major(key)?, cutter })
}
