//! An exact angle, held as a fraction of a turn.
use crate::error::{Cause, Error, Field};
use crate::number::{Approx, Fraction, float};

/// Arc-seconds in one turn.
pub const ARCSEC_PER_TURN: i64 = 1_296_000;

/// An exact angle of the work (or of a plate), in turns.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
#[cfg_attr(feature = "serde", serde(transparent))]
pub struct Angle(Fraction);

impl Angle {
    /// No angle.
    pub const ZERO: Self = Self(Fraction::ZERO);
    /// One whole turn.
    pub const TURN: Self = Self(Fraction::ONE);

    /// An angle of `turns`.
    #[must_use]
    pub const fn from_turns(turns: Fraction) -> Self {
        Self(turns)
    }

    /// An angle of `arcsec` arc-seconds.
    ///
    /// # Errors
    /// [`Cause::Overflow`].
    pub fn from_arcsec(arcsec: Fraction) -> Result<Self, Error> {
        Ok(Self(arcsec.over(ARCSEC_PER_TURN).map_err(|e| e.of(Field::Angle))?))
    }

    /// An angle of `degrees` degrees.
    ///
    /// # Errors
    /// [`Cause::Overflow`].
    pub fn from_degrees(degrees: Fraction) -> Result<Self, Error> {
        Ok(Self(degrees.over(360).map_err(|e| e.of(Field::Angle))?))
    }

    /// In turns.
    #[must_use]
    pub const fn turns(self) -> Fraction {
        self.0
    }

    /// In arc-seconds, exact.
    ///
    /// # Errors
    /// [`Cause::Overflow`].
    pub fn arcsec(self) -> Result<Fraction, Error> {
        self.0.times(ARCSEC_PER_TURN).map_err(|e| e.of(Field::Angle))
    }

    /// In degrees, exact.
    ///
    /// # Errors
    /// [`Cause::Overflow`].
    pub fn degrees(self) -> Result<Fraction, Error> {
        self.0.times(360).map_err(|e| e.of(Field::Angle))
    }

    /// Whole degrees, whole minutes and exact seconds of the magnitude, and
    /// whether the angle is below nought.
    ///
    /// # Errors
    /// [`Cause::Overflow`].
    pub fn dms(self) -> Result<(bool, i64, i64, Fraction), Error> {
        let overflow = Error::new(Field::Angle, Cause::Overflow);
        let arcsec = self.arcsec()?.abs();
        let whole = arcsec.floor();
        let degrees = whole.checked_div(3600).ok_or(overflow)?;
        let rest = whole.checked_rem(3600).ok_or(overflow)?;
        let minutes = rest.checked_div(60).ok_or(overflow)?;
        let seconds = Fraction::whole(rest.checked_rem(60).ok_or(overflow)?);
        Ok((self.0.is_negative(), degrees, minutes, seconds.checked_add(arcsec.part())?))
    }

    /// Length of the arc at the rim of a circle of `diameter`, in millimetres.
    /// Formula: π × diameter × turns. The bound covers the float arithmetic.
    #[must_use]
    pub fn arc_mm(self, diameter: crate::measure::Length) -> Approx {
        let value = float::PI * float::of(diameter.mm()) * float::of(self.0);
        Approx { value, bound: value.abs() * 4.0 * f64::EPSILON }
    }
}
