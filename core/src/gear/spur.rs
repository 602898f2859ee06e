//! A spur wheel and its exact sizes.
use super::Tooth;
use crate::bounds;
use crate::error::{Cause, Error, Field};
use crate::measure::Length;
use crate::number::{
    Approx, Fraction,
    float::{PI, cos_turns, of, tan_turns},
};

/// An external wheel with straight teeth.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Spur {
    /// How many teeth.
    pub teeth: u32,
    /// The rack they are cut to.
    pub tooth: Tooth,
    /// Profile shift in modules: how far the rack stands out from the wheel's centre
    /// beyond the standard place. 0 for a standard wheel.
    pub shift: Fraction,
    /// By how much each tooth is thinner at the pitch circle than half the circular
    /// pitch (with its shift), to leave backlash.
    pub thinned: Length,
}

/// What π or the pressure angle has a part in, in millimetres.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Arcs {
    /// From tooth to tooth along the pitch circle: π modules.
    pub circular_pitch: Approx,
    /// Thickness of a tooth along the pitch circle: half of that and 2x·tan α modules of
    /// its profile shift x, less what it is thinned.
    pub thickness: Approx,
    /// Diameter of the circle that the flanks unwind from: pitch diameter × cos α.
    pub base_diameter: Approx,
    /// From flank to flank along the line of contact: circular pitch × cos α.
    pub base_pitch: Approx,
}

impl Spur {
    /// A standard wheel without backlash.
    ///
    /// # Errors
    /// As [`Self::check`].
    pub fn new(teeth: u32, tooth: Tooth) -> Result<Self, Error> {
        let nothing = Length::from_mm(Fraction::ZERO);
        let spur = Self { teeth, tooth, shift: Fraction::ZERO, thinned: nothing };
        spur.check()?;
        Ok(spur)
    }

    /// Checks every value.
    ///
    /// # Errors
    /// [`Cause::OutOfRange`] for the teeth ([`bounds::WHEEL_TEETH`]); what
    /// [`Tooth::check`] finds; [`Cause::Conflict`] of [`Field::Shift`] for more than a
    /// module either way, of [`Field::Backlash`] below nought or above half a module.
    pub fn check(&self) -> Result<(), Error> {
        bounds::WHEEL_TEETH.check(i64::from(self.teeth))?;
        self.tooth.check()?;
        if self.shift.abs() > Fraction::ONE {
            return Err(Error::new(Field::Shift, Cause::Conflict));
        }
        let half = self.tooth.size.times(Fraction::new(1, 2)?)?;
        if self.thinned.mm().is_negative() || self.thinned > half {
            return Err(Error::new(Field::Backlash, Cause::Conflict));
        }
        Ok(())
    }

    /// Teeth times module.
    ///
    /// # Errors
    /// [`Cause::Overflow`].
    pub fn pitch_diameter(&self) -> Result<Length, Error> {
        self.tooth.size.times(Fraction::whole(i64::from(self.teeth)))
    }

    /// Pitch diameter, two addenda and two shifts: the blank.
    ///
    /// # Errors
    /// [`Cause::Overflow`].
    #[doc(alias = "blank diameter")]
    pub fn outside_diameter(&self) -> Result<Length, Error> {
        self.round_pitch_circle(self.tooth.addendum()?)
    }

    /// Diameter at the bottom of the gaps.
    ///
    /// # Errors
    /// [`Cause::Overflow`].
    pub fn root_diameter(&self) -> Result<Length, Error> {
        self.round_pitch_circle(Length::from_mm(self.tooth.dedendum()?.mm().negated()))
    }

    /// From outside to the bottom of the gaps, by the rule in use.
    ///
    /// # Errors
    /// [`Cause::Overflow`].
    pub fn whole_depth(&self) -> Result<Length, Error> {
        let (above, below) = (self.tooth.addendum()?, self.tooth.dedendum()?);
        Ok(Length::from_mm(above.mm().checked_add(below.mm())?))
    }

    /// The measures that are not exact.
    ///
    /// # Errors
    /// [`Cause::Overflow`].
    pub fn arcs(&self) -> Result<Arcs, Error> {
        let module = of(self.tooth.size.module()?.mm());
        let angle = of(self.tooth.pressure_angle.turns());
        let (cos, tan) = (cos_turns(angle), tan_turns(angle));
        let near = |value: f64| Approx { value, bound: 8.0 * f64::EPSILON * value };
        let pitch = PI * module;
        let shifted = 2.0 * of(self.shift) * tan * module;
        let thinned = of(self.thinned.mm());
        let parts = pitch / 2.0 + shifted.abs() + thinned;
        let thickness = pitch / 2.0 + shifted - thinned;
        Ok(Arcs {
            circular_pitch: near(pitch),
            thickness: Approx { value: thickness, bound: 8.0 * f64::EPSILON * parts },
            base_diameter: near(of(self.pitch_diameter()?.mm()) * cos),
            base_pitch: near(pitch * cos),
        })
    }

    /// The pitch diameter with twice `height` and twice the shift.
    fn round_pitch_circle(&self, height: Length) -> Result<Length, Error> {
        let shift = self.tooth.size.times(self.shift)?;
        let beyond = height.mm().checked_add(shift.mm())?.times(2)?;
        Ok(Length::from_mm(self.pitch_diameter()?.mm().checked_add(beyond)?))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::gear::{DepthRule, Size};

    fn inches(n: i64, d: i64) -> Length {
        Length::from_inches(Fraction::new(n, d).unwrap()).unwrap()
    }

    #[test]
    fn eight_to_the_inch() {
        let size = Size::DiametralPitch(Fraction::whole(8));
        let tooth = Tooth { size, rule: DepthRule::Old, ..Tooth::default() };
        let wheel = Spur::new(32, tooth).unwrap();
        assert_eq!(wheel.pitch_diameter(), Ok(inches(4, 1)));
        assert_eq!(wheel.outside_diameter(), Ok(inches(17, 4)));
        assert_eq!(wheel.whole_depth(), Ok(inches(2157, 8000)));
    }

    #[test]
    fn what_is_no_wheel() {
        let cause = |teeth, size| Spur::new(teeth, Tooth { size, ..Tooth::default() }).map(|_| ());
        let module = |um| Size::Module(Length::from_mm(Fraction::new(um, 1000).unwrap()));
        let dp = |n| Size::DiametralPitch(Fraction::whole(n));
        let range =
            |field, least, greatest| Err(Error::new(field, Cause::OutOfRange { least, greatest }));
        assert_eq!(cause(3, module(1000)), range(Field::Teeth, 4, 5_000));
        assert_eq!(cause(30, dp(0)), Err(Error::new(Field::DiametralPitch, Cause::Zero)));
        assert_eq!(cause(30, dp(501)), range(Field::DiametralPitch, 1, 500));
        assert_eq!(cause(30, module(49)), range(Field::Module, 50, 100_000));
    }
}
