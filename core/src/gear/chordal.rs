//! A tooth by caliper: the straight thickness at a height below the outside.
//!
//! Method: at the pitch circle a tooth's arc s = πm/2 + 2xm·tan α − thinning spans the
//! angle 2ψ = s/r, so its chord is 2r·sin ψ, and the chord lies r − r·cos ψ deeper than
//! the circle. The height counts from the outside as it was found, not as drawn. The
//! constant chord is where the rack would touch: s·cos² α, which does not depend on
//! the number of teeth (DIN 3960; tables for 1 DP in handbooks before 1929).
//!
//! ```
//! use handturn::gear::{DepthRule, Size, Spur, Tooth, chordal};
//! use handturn::measure::{Angle, Length};
//! use handturn::number::Fraction;
//! // 23 teeth, 5 DP: printed 0.3139 and 0.2054 in.
//! let size = Size::DiametralPitch(Fraction::whole(5));
//! let pressure_angle = Angle::from_degrees(Fraction::new(29, 2)?)?;
//! let wheel = Spur::new(23, Tooth { size, pressure_angle, rule: DepthRule::Old })?;
//! let caliper = chordal::tooth(&wheel, wheel.outside_diameter()?)?;
//! assert!((caliper.thickness.value / 25.4 - 0.3139).abs() < 5e-5);
//! assert!((caliper.height.value / 25.4 - 0.2054).abs() < 5e-5);
//! // A blank found 0.004 in small: the caliper is set 0.002 in less high.
//! let small = Length::from_inches(Fraction::new(4_996, 1000)?)?;
//! let set = chordal::tooth(&wheel, small)?;
//! assert!((caliper.height.value - set.height.value - 0.0508).abs() < 1e-9);
//! # Ok::<(), handturn::Error>(())
//! ```
use super::flank::{Flank, Pressure, ROUNDING, blank};
use super::{Spur, Tooth};
use crate::bounds;
use crate::error::{Error, Field};
use crate::measure::{Length, given};
use crate::number::{
    Approx, Fraction,
    float::{PI, of, sin_turns},
};

/// What a gear-tooth caliper is set to and reads, in millimetres.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Chordal {
    /// Straight across the tooth at its pitch circle.
    #[doc(alias = "chordal thickness")]
    pub thickness: Approx,
    /// From the outside down to that chord.
    #[doc(alias = "corrected addendum")]
    pub height: Approx,
    /// Straight across the tooth where a rack would touch it on both sides.
    pub constant: Approx,
    /// From the outside down to that chord.
    pub constant_height: Approx,
}

/// The caliper on a wheel's tooth when its blank measures `outside`.
///
/// # Errors
/// What [`Spur::check`] finds; [`Conflict`](crate::Cause::Conflict) of the shift where nothing is left of
/// a tooth, of the depth where the gaps reach the centre; [`OutOfLengths`](crate::Cause::OutOfLengths) of
/// [`Field::Blank`] below the pitch circle or more than a module beyond the drawing.
pub fn tooth(spur: &Spur, outside: Length) -> Result<Chordal, Error> {
    let flank = Flank::new(spur)?;
    blank(spur, outside)?;
    let above = given::minus(outside, spur.pitch_diameter()?, Field::Blank)?;
    let above = of(above.mm()) / 2.0;
    let quarter = flank.thickness / (8.0 * PI * flank.pitch);
    let deeper = 2.0 * flank.pitch * sin_turns(quarter) * sin_turns(quarter);
    let thickness = 2.0 * flank.pitch * sin_turns(2.0 * quarter);
    let arc = Arc { length: flank.thickness, summed: flank.summed, above };
    Ok(arc.chords(flank.pressure, thickness, above + deeper))
}

/// The caliper on a rack's tooth, which is straight and `thinned` by so much at the
/// pitch line; its height is the addendum.
///
/// # Errors
/// What [`Tooth::check`] finds; [`Conflict`](crate::Cause::Conflict) of [`Field::Backlash`] below nought
/// or above half a module.
pub fn rack(tooth: &Tooth, thinned: Length) -> Result<Chordal, Error> {
    Spur { teeth: bounds::WHEEL_TEETH.least, tooth: *tooth, shift: Fraction::ZERO, thinned }
        .check()?;
    let half_pitch = PI / 2.0 * of(tooth.size.module()?.mm());
    let thinned = of(thinned.mm());
    let (length, above) = (half_pitch - thinned, of(tooth.addendum()?.mm()));
    let arc = Arc { length, summed: half_pitch + thinned, above };
    Ok(arc.chords(Pressure::of(tooth), length, above))
}

/// A tooth's thickness along the pitch line, what it was summed from, and how far the
/// outside stands above that line.
struct Arc {
    length: f64,
    summed: f64,
    above: f64,
}

impl Arc {
    fn chords(&self, pressure: Pressure, thickness: f64, height: f64) -> Chordal {
        let bound = ROUNDING * self.summed;
        let near = |value| Approx { value, bound };
        let high = |value| Approx { value, bound: bound + ROUNDING * self.above };
        let constant = self.length * pressure.cos * pressure.cos;
        let below = self.length / 2.0 * pressure.sin * pressure.cos;
        Chordal {
            thickness: near(thickness),
            height: high(height),
            constant: near(constant),
            constant_height: high(self.above - below),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::error::Cause;
    use crate::gear::Size;

    fn mm(thousandths: i64) -> Length {
        Length::from_mm(Fraction::new(thousandths, 1000).unwrap())
    }

    #[test]
    fn a_rack_is_straight() {
        let tooth = Tooth { size: Size::Module(mm(3000)), ..Tooth::default() };
        let caliper = rack(&tooth, mm(0)).unwrap();
        assert!((caliper.thickness.value - 4.7124).abs() < 5e-5);
        assert!((caliper.height.value - 3.0).abs() < 1e-12);
        // The largest wheel is nearly one, and its constant chord is the rack's.
        let wheel = Spur::new(5_000, tooth).unwrap();
        let large = super::tooth(&wheel, wheel.outside_diameter().unwrap()).unwrap();
        assert!((large.thickness.value - caliper.thickness.value).abs() < 1e-6);
        assert!((large.constant.value - caliper.constant.value).abs() < 1e-12);
        assert!((large.constant_height.value - caliper.constant_height.value).abs() < 1e-12);
        let thin = rack(&tooth, mm(100)).unwrap();
        assert!((caliper.thickness.value - thin.thickness.value - 0.1).abs() < 1e-12);
    }

    #[test]
    fn blanks_that_do_not_belong_to_the_wheel() {
        let wheel = Spur::new(30, Tooth::default()).unwrap();
        let refused = |um| super::tooth(&wheel, mm(um)).map(|_| ());
        let cause = Cause::OutOfLengths { least_um: 30_000, greatest_um: 34_000 };
        assert_eq!(refused(34_000), Ok(()));
        assert_eq!(refused(34_001), Err(Error::new(Field::Blank, cause)));
        assert_eq!(refused(29_999), Err(Error::new(Field::Blank, cause)));
        let gone = Spur { shift: Fraction::new(-1, 1).unwrap(), thinned: mm(500), ..wheel };
        let steep = crate::measure::Angle::from_degrees(Fraction::whole(35)).unwrap();
        let gone = Spur { tooth: Tooth { pressure_angle: steep, ..wheel.tooth }, ..gone };
        let none = super::tooth(&gone, mm(30_000)).map(|_| ());
        assert_eq!(none, Err(Error::new(Field::Shift, Cause::Conflict)));
    }
}
