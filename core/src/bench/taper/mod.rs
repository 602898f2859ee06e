//! Tapers: so much in a foot, one in so many, or an angle, each told as all the others;
//! top slide, tailstock and gauge set for one; put right from two readings.
//!
//! Rule: taper = (large − small diameter) ÷ length between them, half the included
//! angle is atan(taper ÷ 2), and the tailstock goes over by half the taper times the
//! whole length between centres, whatever part of it is tapered (Turning and Boring,
//! F. D. Jones, 1914; Modern Machine-Shop Practice, J. Rose, 1887-88). The rule takes
//! the work for level though it leans: the sine, also given, would set over a little
//! less. Neither reckons with the depth of the centres, which shortens the length.
//!
//! ```
//! use handturn::bench::taper::{Ask, Taper, set};
//! use handturn::measure::Length;
//! use handturn::number::Fraction;
//! // The clock's winding square starts as a taper of one inch in a foot, nine between
//! // centres: 3/8 in over.
//! let inches = |n| Length::from_inches(Fraction::whole(n));
//! let taper = Taper::per_foot(Fraction::ONE)?;
//! let found = set(&Ask { between: Some(inches(9)?), ..Ask::of(taper) })?;
//! let over = found.over.and_then(|over| over.by.exact).map(Length::inches);
//! assert_eq!(over, Some(Fraction::new(3, 8)));
//! assert!((found.figures.half.value - 2.38594).abs() < 0.00001); // 2° 23′ 9″
//! # Ok::<(), handturn::Error>(())
//! ```
mod correct;
mod set;

pub use correct::{Correction, Trial, correct};
pub use set::{Ask, Over, Set, set};

use crate::error::{Cause, Error, Field};
use crate::measure::{
    Angle, Length,
    given::{from_nought, minus, plus, size},
};
use crate::number::{Approx, Fraction};

/// Steepest taper: so many times its length.
const STEEPEST: i64 = 20;
/// Largest angle between the sides, in degrees.
const WIDEST: u32 = 168;

/// A taper as it was given.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Taper {
    /// Growth of the diameter for its length: 1/20 for "1 in 20".
    Rate(Fraction),
    /// The angle between its sides.
    Included(Angle),
}

impl Taper {
    /// One in `length`.
    ///
    /// # Errors
    /// [`Cause::Zero`].
    pub fn one_in(length: Fraction) -> Result<Self, Error> {
        length.inverse().map(Self::Rate).map_err(|e| e.of(Field::Taper))
    }

    /// So many inches of diameter in a foot.
    ///
    /// # Errors
    /// [`Cause::Overflow`].
    #[doc(alias = "TPF")]
    pub fn per_foot(inches: Fraction) -> Result<Self, Error> {
        inches.over(12).map(Self::Rate).map_err(|e| e.of(Field::Taper))
    }

    /// Twice the angle of one side from the axis.
    ///
    /// # Errors
    /// [`Cause::Overflow`].
    pub fn half(angle: Angle) -> Result<Self, Error> {
        let twice = angle.turns().times(2).map_err(|e| e.of(Field::Angle))?;
        Ok(Self::Included(Angle::from_turns(twice)))
    }

    /// From two diameters and the length between them.
    ///
    /// # Errors
    /// What is wrong with a length; [`Cause::Conflict`] of [`Field::Taper`] where the large
    /// end is not the larger.
    pub fn between(large: Length, small: Length, length: Length) -> Result<Self, Error> {
        let rate = rate(large, small, length)?;
        if rate.is_negative() || rate.is_zero() {
            return Err(Error::new(Field::Taper, Cause::Conflict));
        }
        Ok(Self::Rate(rate))
    }
}

/// (`one` − `other`) ÷ `length`, of either sign.
fn rate(one: Length, other: Length, length: Length) -> Result<Fraction, Error> {
    size(length, Field::Length)?;
    from_nought(one, Field::Diameter)?;
    from_nought(other, Field::Diameter)?;
    let more = minus(one, other, Field::Taper)?.mm();
    more.checked_div(length.mm()).map_err(|e| e.of(Field::Taper))
}

/// One taper in every form.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Figures {
    /// Growth of the diameter for its length, where it is a fraction.
    pub exact: Option<Fraction>,
    /// The same, in any case.
    pub rate: Approx,
    /// Inches in a foot.
    pub per_foot: Approx,
    /// The length in which the diameter grows by one.
    pub one_in: Approx,
    /// Degrees between the sides.
    pub included: Approx,
    /// Degrees from the axis: what the top slide is set to.
    pub half: Approx,
    /// Sine of that.
    pub sine: Approx,
}

/// `taper` in every form.
///
/// # Errors
/// [`Cause::Zero`]; [`Cause::Conflict`] of [`Field::Taper`] below nought or beyond 20 times
/// its length; [`Cause::OutOfRange`] in degrees for an angle.
pub fn figures(taper: Taper) -> Result<Figures, Error> {
    match taper {
        Taper::Rate(rate) => {
            if rate.is_zero() {
                return Err(Error::new(Field::Taper, Cause::Zero));
            }
            if rate.is_negative() || rate > Fraction::whole(STEEPEST) {
                return Err(Error::new(Field::Taper, Cause::Conflict));
            }
            Ok(by_rate(rate))
        }
        Taper::Included(angle) => {
            let half = angle.turns().over(2).map_err(|e| e.of(Field::Angle))?;
            let widest = Fraction::new(i64::from(WIDEST), 360)?;
            if angle.turns().is_zero() {
                return Err(Error::new(Field::Angle, Cause::Zero));
            }
            if angle.turns().is_negative() || angle.turns() > widest {
                let cause = Cause::OutOfRange { least: 0, greatest: WIDEST };
                return Err(Error::new(Field::Angle, cause));
            }
            let half = Approx::of(half);
            let sine = half.sin();
            Ok(all(None, sine.over(half.cos()).by(2.0), half, sine))
        }
    }
}

/// Of any sign; nought is parallel.
fn by_rate(rate: Fraction) -> Figures {
    let of = Approx::of(rate);
    // The sine is r ÷ √(4 + r²).
    let sine = of.over(of.times(of).plus(Approx::exactly(4.0)).sqrt());
    all(Some(rate), of, of.by(0.5).atan(), sine)
}

/// From the rate, half the angle in turns and its sine.
fn all(exact: Option<Fraction>, rate: Approx, half: Approx, sine: Approx) -> Figures {
    Figures {
        exact,
        rate,
        per_foot: rate.by(12.0),
        one_in: Approx::exactly(1.0).over(rate),
        included: half.by(720.0),
        half: half.by(360.0),
        sine,
    }
}

/// A length that is exact where the taper it comes from is.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Amount {
    /// Exact, where it is.
    pub exact: Option<Length>,
    /// In millimetres, in any case.
    pub about: Approx,
}

impl Amount {
    pub(crate) fn exactly(length: Length) -> Self {
        Self { exact: Some(length), about: Approx::of(length.mm()) }
    }

    /// Not exact.
    pub(crate) const fn near(about: Approx) -> Self {
        Self { exact: None, about }
    }

    /// `self` + `other`, or less `other`.
    fn with(self, other: Self, less: bool) -> Result<Self, Error> {
        let sum = if less { minus } else { plus };
        let exact = match (self.exact, other.exact) {
            (Some(one), Some(other)) => Some(sum(one, other, Field::Taper)?),
            _ => None,
        };
        let about = if less { self.about.minus(other.about) } else { self.about.plus(other.about) };
        Ok(Self { exact, about: exact.map_or(about, |exact| Approx::of(exact.mm())) })
    }

    /// Half of it.
    fn halved(self) -> Result<Self, Error> {
        let exact = match self.exact {
            Some(length) => Some(Length::from_mm(length.mm().over(2)?)),
            None => None,
        };
        Ok(Self { exact, about: self.about.by(0.5) })
    }
}

impl Figures {
    /// The same taper growing the other way.
    fn turned(self) -> Self {
        Self {
            exact: self.exact.map(Fraction::negated),
            rate: self.rate.negated(),
            half: self.half.negated(),
            sine: self.sine.negated(),
            ..self
        }
    }

    /// How much the diameter grows over `length`.
    fn growth(&self, length: Length) -> Result<Amount, Error> {
        let of = |rate: Fraction| rate.checked_mul(length.mm()).map_err(|e| e.of(Field::Taper));
        match self.exact {
            Some(rate) => of(rate).map(|mm| Amount::exactly(Length::from_mm(mm))),
            None => Ok(Amount::near(self.rate.times(Approx::of(length.mm())))),
        }
    }

    /// Over which length the diameter grows by `growth`.
    fn length(&self, growth: Length) -> Result<Amount, Error> {
        let of = |rate: Fraction| growth.mm().checked_div(rate).map_err(|e| e.of(Field::Taper));
        match self.exact {
            Some(rate) => of(rate).map(|mm| Amount::exactly(Length::from_mm(mm))),
            None => Ok(Amount::near(Approx::of(growth.mm()).over(self.rate))),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn mm(num: i64, den: i64) -> Length {
        Length::from_mm(Fraction::new(num, den).unwrap())
    }

    #[test]
    fn two_of_ends_and_length_give_the_third() {
        let ask = Ask::of(Taper::one_in(Fraction::whole(20)).unwrap());
        let exact = |ask: Ask| set(&ask).unwrap().ends.unwrap().map(|one| one.exact.unwrap());
        let all = [mm(20, 1), mm(18, 1), mm(40, 1)];
        let [large, small, length] = all.map(Some);
        assert_eq!(exact(Ask { large, small, ..ask }), all);
        assert_eq!(exact(Ask { large, length, ..ask }), all);
        assert_eq!(exact(Ask { small, length, ..ask }), all);
        assert_eq!(set(&Ask { small, ..ask }).unwrap().ends, None);
        let refused = |ask: Ask| set(&ask).map_err(|e| (e.field, e.cause)).unwrap_err();
        let conflict = |field| (field, Cause::Conflict);
        assert_eq!(refused(Ask { large, small, length, ..ask }), conflict(Field::Length));
        assert_eq!(refused(Ask { large: small, small: large, ..ask }), conflict(Field::Taper));
        let length = Some(mm(401, 1));
        let most = Cause::OutOfLengths { least_um: 1, greatest_um: 400_000 };
        assert_eq!(refused(Ask { large, length, ..ask }), (Field::Length, most));
        assert_eq!(refused(Ask::of(Taper::Rate(Fraction::ZERO))), (Field::Taper, Cause::Zero));
    }

    #[test]
    fn the_tailstock_has_a_reach() {
        let ask = Ask::of(Taper::one_in(Fraction::whole(20)).unwrap());
        let reach = Some(mm(5, 1));
        let at =
            |between| set(&Ask { between: Some(between), reach, ..ask }).unwrap().over.unwrap();
        let edge = at(mm(200, 1));
        assert_eq!((edge.by.exact, edge.beyond), (Some(mm(5, 1)), false));
        assert_eq!(edge.longest.unwrap().exact, Some(mm(200, 1)));
        assert!(at(mm(2001, 10)).beyond);
        // 5 × (1 − cos), cos of atan(1/40).
        assert!((edge.leaning.value - 0.001_561_768_7).abs() < 1e-9, "{edge:?}");
        let angle = Angle::from_degrees(Fraction::whole(60)).unwrap();
        let ask = Ask { between: Some(mm(10, 1)), reach, ..Ask::of(Taper::Included(angle)) };
        let over = set(&ask).unwrap().over.unwrap();
        assert!(over.beyond && (over.by.about.value - 5.773_502_69).abs() < 1e-8);
    }

    #[test]
    fn corrections_tell_the_way() {
        // Wanted parallel: 0.06 thicker at the tailstock over 100, 300 between centres.
        let trial = Trial {
            wanted: None,
            large_at_tail: false,
            at_head: mm(20, 1),
            at_tail: mm(2006, 100),
            apart: mm(100, 1),
            between: Some(mm(300, 1)),
            travel: Some(mm(50, 1)),
        };
        let found = correct(&trial).unwrap();
        assert_eq!(found.tailstock.unwrap().exact, Some(mm(9, 100)));
        assert_eq!(found.off.exact, Some(mm(6, 100)));
        assert!(found.slide.value > 0.0 && (found.gauge.unwrap().value - 0.015).abs() < 1e-6);
        // The same part of a taper that is large at the tailstock: too steep, so back.
        let wanted = Some(Taper::one_in(Fraction::whole(2000)).unwrap());
        let found = correct(&Trial { wanted, large_at_tail: true, ..trial }).unwrap();
        assert_eq!(found.tailstock.unwrap().exact, Some(mm(15, 1000)));
        // Cut as wanted: nothing moves.
        let wanted = Some(Taper::Rate(Fraction::new(6, 10_000).unwrap()));
        let found = correct(&Trial { wanted, large_at_tail: true, ..trial }).unwrap();
        assert_eq!(found.off.exact, Some(mm(0, 1)));
        assert!(found.slide.value.abs() <= found.slide.bound && found.slide.bound < 1e-16);
    }
}
