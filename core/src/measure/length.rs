//! An exact length, held as a fraction of a millimetre.
use crate::error::{Error, Field};
use crate::number::Fraction;

/// An exact length, in millimetres. One inch is 25.4 mm exactly.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
#[cfg_attr(feature = "serde", serde(transparent))]
pub struct Length(Fraction);

impl Length {
    /// A length of `mm` millimetres.
    #[must_use]
    pub const fn from_mm(mm: Fraction) -> Self {
        Self(mm)
    }

    /// A length of `inches` inches.
    ///
    /// # Errors
    /// [`Cause::Overflow`](crate::Cause::Overflow).
    pub fn from_inches(inches: Fraction) -> Result<Self, Error> {
        let mm = inches.times(127).and_then(|x| x.over(5));
        Ok(Self(mm.map_err(|e| e.of(Field::Length))?))
    }

    /// In millimetres.
    #[must_use]
    pub const fn mm(self) -> Fraction {
        self.0
    }

    /// In inches, exact.
    ///
    /// # Errors
    /// [`Cause::Overflow`](crate::Cause::Overflow).
    pub fn inches(self) -> Result<Fraction, Error> {
        self.0.times(5).and_then(|x| x.over(127)).map_err(|e| e.of(Field::Length))
    }
}
