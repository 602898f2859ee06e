//! How large a wheel's teeth are: by module or by diametral pitch.
use crate::bounds;
use crate::error::{Cause, Error, Field};
use crate::measure::Length;
use crate::number::Fraction;

/// Size of a wheel's teeth.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Size {
    /// Pitch diameter for each tooth.
    Module(Length),
    /// Teeth for each inch of pitch diameter.
    #[doc(alias = "DP")]
    DiametralPitch(Fraction),
}

impl Size {
    /// The module: pitch diameter for each tooth. Exact, 25.4 mm over the diametral pitch.
    ///
    /// # Errors
    /// [`Cause::Zero`]; [`Cause::Overflow`].
    pub fn module(self) -> Result<Length, Error> {
        match self {
            Self::Module(module) => Ok(module),
            Self::DiametralPitch(pitch) => pitch
                .inverse()
                .and_then(Length::from_inches)
                .map_err(|e| e.of(Field::DiametralPitch)),
        }
    }

    /// The module times `factor`.
    ///
    /// # Errors
    /// As [`Self::module`].
    pub fn times(self, factor: Fraction) -> Result<Length, Error> {
        Ok(Length::from_mm(self.module()?.mm().checked_mul(factor)?))
    }

    /// Checks it against the bounds table.
    ///
    /// # Errors
    /// [`Cause::OutOfRange`], in micrometres for a module ([`bounds::MODULE_UM`],
    /// [`bounds::DIAMETRAL_PITCH`]); [`Cause::Zero`]; [`Cause::Overflow`].
    pub fn check(self) -> Result<(), Error> {
        let (bound, value) = match self {
            Self::Module(module) => (bounds::MODULE_UM, module.mm().times(1000)?),
            Self::DiametralPitch(pitch) => (bounds::DIAMETRAL_PITCH, pitch),
        };
        if value.is_zero() {
            return Err(Error::new(bound.field, Cause::Zero));
        }
        let limits = [bound.least, bound.greatest].map(|n| Fraction::whole(i64::from(n)));
        if value < limits[0] || value > limits[1] {
            let cause = Cause::OutOfRange { least: bound.least, greatest: bound.greatest };
            return Err(Error::new(bound.field, cause));
        }
        Ok(())
    }
}
