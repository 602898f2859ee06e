//! The rack that a wheel's teeth are cut to: size, pressure angle, depth.
use super::Size;
use crate::bounds;
use crate::error::{Cause, Error, Field};
use crate::measure::{Angle, Length};
use crate::number::Fraction;

/// The standard rack of a wheel.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Tooth {
    /// Size of the teeth.
    pub size: Size,
    /// Pressure angle.
    pub pressure_angle: Angle,
    /// How deep they are cut.
    pub rule: DepthRule,
}

/// Rule for the depth of teeth. The addendum is one module unless it is one's own.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum DepthRule {
    /// 2.157 modules, the clearance a twentieth of the circular pitch: 14½° cutters
    /// and older sets (NAVEDTRA 14345, appendix IV; printed to four figures).
    Old,
    /// 2.25 modules: 20° teeth coarser than 20 DP, and metric ones (ISO 53).
    #[default]
    Coarse,
    /// 2.2 modules and 0.002 in: 20 DP and finer.
    Fine,
    /// Addendum and dedendum of one's own, in modules.
    Own {
        /// Height above the pitch line.
        addendum: Fraction,
        /// Depth below it.
        dedendum: Fraction,
    },
}

impl DepthRule {
    /// The rule that cutters of this size and pressure angle are made to, where nothing
    /// else is said: [`Self::Old`] at 14½°, [`Self::Fine`] from 20 DP on, else
    /// [`Self::Coarse`]. Common practice.
    #[must_use]
    pub fn usual(size: Size, pressure_angle: Angle) -> Self {
        let old = Fraction::new(29, 720).map(Angle::from_turns);
        match size {
            _ if old == Ok(pressure_angle) => Self::Old,
            Size::DiametralPitch(pitch) if pitch >= Fraction::whole(20) => Self::Fine,
            _ => Self::Coarse,
        }
    }
}

impl Default for Tooth {
    /// Module 1, 20°, 2.25 modules deep.
    fn default() -> Self {
        let degrees = |n, d| Angle::from_turns(Fraction::new(n, d).unwrap_or(Fraction::ZERO));
        Self {
            size: Size::Module(Length::from_mm(Fraction::ONE)),
            pressure_angle: degrees(1, 18),
            rule: DepthRule::Coarse,
        }
    }
}

impl Tooth {
    /// Checks every value against the bounds table.
    ///
    /// # Errors
    /// [`Cause::OutOfRange`] for size and pressure angle ([`bounds::PRESSURE_ANGLE`], in
    /// degrees); [`Cause::Conflict`] of [`Field::Depth`] where an own addendum or
    /// dedendum is not above nought or over three modules; [`Cause::Overflow`].
    pub fn check(&self) -> Result<(), Error> {
        self.size.check()?;
        let bound = bounds::PRESSURE_ANGLE;
        let degrees = self.pressure_angle.degrees().map_err(|e| e.of(bound.field))?;
        let limits = [bound.least, bound.greatest].map(|n| Fraction::whole(i64::from(n)));
        if degrees < limits[0] || degrees > limits[1] {
            let cause = Cause::OutOfRange { least: bound.least, greatest: bound.greatest };
            return Err(Error::new(bound.field, cause));
        }
        if let DepthRule::Own { addendum, dedendum } = self.rule {
            let fits = |part: Fraction| part > Fraction::ZERO && part <= Fraction::whole(3);
            if !fits(addendum) || !fits(dedendum) {
                return Err(Error::new(Field::Depth, Cause::Conflict));
            }
        }
        Ok(())
    }

    /// Height of a standard tooth above its pitch line.
    ///
    /// # Errors
    /// [`Cause::Overflow`], [`Cause::Zero`].
    pub fn addendum(&self) -> Result<Length, Error> {
        match self.rule {
            DepthRule::Own { addendum, .. } => self.size.times(addendum),
            _ => self.size.module(),
        }
    }

    /// Depth of a standard gap below its pitch line.
    ///
    /// # Errors
    /// As [`Self::addendum`].
    pub fn dedendum(&self) -> Result<Length, Error> {
        match self.rule {
            DepthRule::Old => self.size.times(Fraction::new(1157, 1000)?),
            DepthRule::Coarse => self.size.times(Fraction::new(5, 4)?),
            DepthRule::Fine => {
                let by_module = self.size.times(Fraction::new(6, 5)?)?;
                let more = Length::from_inches(Fraction::new(1, 500)?)?;
                Ok(Length::from_mm(by_module.mm().checked_add(more.mm())?))
            }
            DepthRule::Own { dedendum, .. } => self.size.times(dedendum),
        }
    }
}
