//! Rivets: how much shank stands out for a head, by volume.
//!
//! Method: the tail is shank, and so is all that it becomes: the head, and what fills the
//! hole's play along the grip. Round heads are caps of a sphere, pan heads cones cut off,
//! countersunk ones cones in the work. Proportions of round heads (1.6 d across, 0.7 d high)
//! were read in BS 275:1927 as a rivet stockist reprints it, with 1.125 d for the tail, which
//! is just the cap's volume; those of pan and countersunk heads are from memory.
//!
//! ```
//! use handturn::bench::rivet::{Head, Rivet};
//! use handturn::measure::{Angle, Length};
//! use handturn::number::Fraction;
//! // 3 mm rivet in a 3.1 mm hole through 5 mm: a round head.
//! let mm = |n| Fraction::new(n, 10).map(Length::from_mm);
//! let rivet = Rivet {
//!     diameter: mm(30)?,
//!     hole: mm(31)?,
//!     grip: mm(50)?,
//!     head: Head::Round,
//!     wide: None,
//!     high: None,
//!     angle: Angle::from_degrees(Fraction::whole(90))?,
//! };
//! // 1.1247 × 3 for the head, 5 × (3.1² ÷ 3² − 1) for the play.
//! assert!((rivet.filled()?.out.value - 3.713).abs() < 5e-4);
//! # Ok::<(), handturn::Error>(())
//! ```
use crate::error::{Cause, Error, Field};
use crate::measure::{Angle, Length, given};
use crate::number::{Approx, Fraction};

/// The head that is formed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Head {
    /// A cap of a sphere.
    #[doc(alias("snap"))]
    Round,
    /// A cone cut off at the shank's diameter.
    Pan,
    /// Flush with the work.
    Countersunk,
}

/// A rivet in its hole.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Rivet {
    /// Diameter of its shank.
    pub diameter: Length,
    /// Diameter of the hole.
    pub hole: Length,
    /// Thickness of all that it holds.
    pub grip: Length,
    /// The head to be formed.
    pub head: Head,
    /// Its diameter; by the usual proportion where none is given.
    pub wide: Option<Length>,
    /// Its height; likewise. A countersunk one has that of its angle.
    pub high: Option<Length>,
    /// Whole angle of a countersunk head.
    pub angle: Angle,
}

/// What a rivet needs; in millimetres.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Filled {
    /// Length under the head that is on it.
    pub length: Approx,
    /// What stands out of the work.
    pub out: Approx,
    /// What of that fills the hole's play.
    pub play: Approx,
    /// What of that becomes head.
    pub to_head: Approx,
    /// Diameter of the head.
    pub wide: Approx,
    /// Its height, or its depth in the work.
    pub high: Approx,
    /// What stands out by the shop's rule, least and most: parts of the diameter.
    pub practice: (Length, Length),
}

impl Rivet {
    /// How long it must be, by volume.
    ///
    /// # Errors
    /// Lengths out of bounds; [`Cause::Conflict`] of [`Field::Diameter`] where the hole is
    /// smaller than the shank or the head no wider than the hole, and of [`Field::Depth`]
    /// where a countersunk head goes through the work; [`Cause::OutOfRange`] of its angle.
    pub fn filled(&self) -> Result<Filled, Error> {
        given::size(self.diameter, Field::Diameter)?;
        given::size(self.hole, Field::Diameter)?;
        given::size(self.grip, Field::Length)?;
        let d = self.diameter;
        // In twentieths of the diameter: head across, head high, tail by the shop's rule.
        let (wide, high, (least, most)) = match self.head {
            Head::Round => (32, 14, (25, 30)),
            Head::Pan => (32, 14, (25, 35)),
            Head::Countersunk => (35, 0, (15, 20)),
        };
        let part = |twentieths: i64| {
            given::over(given::times(d, twentieths, Field::Diameter)?, 20, Field::Diameter)
        };
        let sized = |own: Option<Length>, usual: i64, field: Field| match own {
            Some(own) => given::size(own, field).map(|_| own),
            None => part(usual),
        };
        let wide = sized(self.wide, wide, Field::Diameter)?;
        if self.hole < d || wide <= self.hole {
            return Err(Error::new(Field::Diameter, Cause::Conflict));
        }
        let of = |length: Length| Approx::of(length.mm());
        let (shank, hole, grip, across) = (of(d), of(self.hole), of(self.grip), of(wide));
        let square = |one: Approx| one.times(one);
        let third = Approx::of(Fraction::new(1, 3)?);
        // Volumes over π ÷ 4, so that a shank's length is one over d².
        let (tall, volume) = match self.head {
            Head::Round => {
                let high = of(sized(self.high, high, Field::Depth)?);
                // 2 h ÷ 3 × (3 (A ÷ 2)² + h²).
                let sum = square(across).by(0.75).plus(square(high));
                (high, high.times(third).by(2.0).times(sum))
            }
            Head::Pan => {
                let high = of(sized(self.high, high, Field::Depth)?);
                (high, cone(across, shank, high, third))
            }
            Head::Countersunk => {
                let degrees = self.angle.degrees()?;
                if degrees < Fraction::whole(30) || degrees > Fraction::whole(150) {
                    let cause = Cause::OutOfRange { least: 30, greatest: 150 };
                    return Err(Error::new(Field::Angle, cause));
                }
                let half = Approx::of(self.angle.turns()).by(0.5);
                let deep = across.minus(hole).by(0.5).times(half.cos()).over(half.sin());
                if deep.value > grip.value {
                    return Err(Error::new(Field::Depth, Cause::Conflict));
                }
                // The hole is filled along all of the grip already.
                (deep, cone(across, hole, deep, third).minus(square(hole).times(deep)))
            }
        };
        let to_head = volume.over(square(shank));
        let play = grip.times(square(hole).over(square(shank)).minus(Approx::exactly(1.0)));
        let out = to_head.plus(play);
        let practice = (part(least)?, part(most)?);
        Ok(Filled {
            length: grip.plus(out),
            out,
            play,
            to_head,
            wide: across,
            high: tall,
            practice,
        })
    }
}

/// A cone cut off between two diameters, over π ÷ 4: h ÷ 3 × (A² + A B + B²).
fn cone(one: Approx, other: Approx, high: Approx, third: Approx) -> Approx {
    let sum = one.times(one).plus(one.times(other)).plus(other.times(other));
    high.times(third).times(sum)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn mm(n: i64, d: i64) -> Length {
        Length::from_mm(Fraction::new(n, d).unwrap())
    }

    fn rivet(head: Head) -> Rivet {
        let angle = Angle::from_degrees(Fraction::whole(90)).unwrap();
        Rivet {
            diameter: mm(4, 1),
            hole: mm(21, 5),
            grip: mm(6, 1),
            head,
            wide: None,
            high: None,
            angle,
        }
    }

    /// Volumes by thin slices.
    #[test]
    fn the_tail_is_as_much_as_it_fills() {
        for head in [Head::Round, Head::Pan, Head::Countersunk] {
            let filled = rivet(head).filled().unwrap();
            let (a, h, hole) = (filled.wide.value / 2.0, filled.high.value, 2.1);
            let slices = 20_000_u32;
            let mut volume = (2.1_f64.powi(2) - 4.0) * 6.0;
            for k in 0..slices {
                let x = (f64::from(k) + 0.5) / f64::from(slices);
                let step = h / f64::from(slices);
                volume += step
                    * match head {
                        Head::Round => {
                            let r = (a * a + h * h) / (2.0 * h);
                            r * r - (r - h + x * h).powi(2)
                        }
                        Head::Pan => (a + (2.0 - a) * x).powi(2),
                        Head::Countersunk => (a + (hole - a) * x).powi(2) - hole * hole,
                    };
            }
            assert!((volume / 4.0 - filled.out.value).abs() < 1e-6, "{head:?} {filled:?}");
            assert!((filled.length.value - 6.0 - filled.out.value).abs() < 1e-9);
        }
    }

    #[test]
    fn what_cannot_be_is_refused() {
        let wrong = |change: fn(&mut Rivet), field| {
            let mut rivet = rivet(Head::Countersunk);
            change(&mut rivet);
            assert_eq!(rivet.filled().unwrap_err().field, field);
        };
        wrong(|r| r.hole = Length::from_mm(Fraction::whole(3)), Field::Diameter);
        wrong(|r| r.wide = Some(r.hole), Field::Diameter);
        wrong(|r| r.wide = Some(Length::from_mm(Fraction::whole(30))), Field::Depth);
        wrong(|r| r.angle = Angle::from_degrees(Fraction::whole(20)).unwrap(), Field::Angle);
    }
}
