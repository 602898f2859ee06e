//! Springs that push.
//!
//! ```
//! use handturn::bench::spring::{Compression, Ends};
//! use handturn::measure::Length;
//! use handturn::number::Fraction;
//! // 1 mm wire, 10 mm outside, 9.5 coils, squared and ground, 30 mm long; G 80 GPa; 20 N.
//! let mm = |n| Length::from_mm(Fraction::whole(n));
//! let spring = Compression {
//!     wire: mm(1),
//!     mean: mm(9),
//!     total: Fraction::new(19, 2)?,
//!     ends: Ends::SquaredGround,
//!     free: mm(30),
//!     shear_mpa: 80_000.0,
//!     load_n: 20.0,
//! };
//! let pushed = spring.pushed()?;
//! // 80 000 ÷ (8 × 729 × 7.5) = 1.829 N/mm; solid at 9.5 mm.
//! assert!((pushed.rate.value - 1.829).abs() < 5e-4);
//! assert_eq!(pushed.solid.mm(), Fraction::new(19, 2)?);
//! # Ok::<(), handturn::Error>(())
//! ```
use super::{Coil, Winding, along, coils, load, stiff};
use crate::error::{Cause, Error, Field};
use crate::measure::{Length, given};
use crate::number::{Approx, Fraction, float};

/// How the ends are made.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Ends {
    /// Cut off as wound.
    Plain,
    /// Cut off and ground flat.
    PlainGround,
    /// The last coils closed down.
    #[doc(alias("closed"))]
    Squared,
    /// Closed down and ground flat.
    SquaredGround,
}

impl Ends {
    /// Coils that don't move; wires between the solid height and the total of coils; wires
    /// that the free length holds beside the pitch.
    const fn dead(self) -> (i64, i64, i64) {
        match self {
            Self::Plain => (0, 1, 1),
            Self::PlainGround => (1, 0, 0),
            Self::Squared => (2, 1, 3),
            Self::SquaredGround => (2, 0, 2),
        }
    }
}

/// A compression spring and a load on it.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Compression {
    /// The wire.
    pub wire: Length,
    /// Mean diameter of its coils.
    pub mean: Length,
    /// Coils, those of the ends with them.
    pub total: Fraction,
    /// How the ends are made.
    pub ends: Ends,
    /// Length when nothing pushes on it.
    pub free: Length,
    /// Modulus of shear, in MPa.
    pub shear_mpa: f64,
    /// Load, in newtons.
    pub load_n: f64,
}

/// How a long spring stands, by free length over mean diameter (steel; text-book limits
/// 2.63, 3.72 and 5.26).
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Stands {
    /// With both ends free to tilt.
    Anyhow,
    /// With one end held square.
    OneSquare,
    /// With both ends held square.
    BothSquare,
    /// Only on a rod or in a bore.
    #[doc(alias("buckling"))]
    Guided,
}

/// What a compression spring does; lengths in millimetres, stresses in MPa.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Pushed {
    /// Mean diameter over wire.
    pub index: Approx,
    /// How it winds.
    pub winding: Winding,
    /// Coils that move.
    pub active: Fraction,
    /// Newtons for a millimetre.
    pub rate: Approx,
    /// Height with all coils touching.
    pub solid: Length,
    /// Travel to there.
    pub travel: Length,
    /// Force there, in newtons.
    pub solid_n: Approx,
    /// Shear there, by Wahl's factor.
    pub solid_stress: Approx,
    /// Wahl's factor.
    pub wahl: Approx,
    /// Bergsträsser's factor.
    pub bergstrasser: Approx,
    /// How far the load pushes it.
    pub gives: Approx,
    /// Its length then.
    pub length: Approx,
    /// Shear then, by Wahl's factor.
    pub stress: Approx,
    /// Likewise by Bergsträsser's.
    pub stress_bergstrasser: Approx,
    /// Whether the load closes it.
    pub closes: bool,
    /// From coil to coil.
    pub pitch: Length,
    /// Wire in it, without tails.
    pub cut: Approx,
    /// Free length over mean diameter.
    pub slender: Approx,
    /// How it stands.
    pub stands: Stands,
}

/// Coils for a rate that is wanted.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Wanted {
    /// Coils that move, just so many.
    pub active: Approx,
    /// Coils in all, to the nearest quarter.
    pub total: Fraction,
}

impl Compression {
    /// What it does.
    ///
    /// # Errors
    /// Lengths out of bounds; [`Cause::OutOfRange`] of coils, load and modulus;
    /// [`Cause::Conflict`] of [`Field::Spring`] where the coils are tighter than twice the
    /// wire, and of [`Field::Coils`] where none moves or there is no travel.
    pub fn pushed(&self) -> Result<Pushed, Error> {
        let coil = Coil::new(self.wire, self.mean)?;
        let total = coils(self.total)?;
        let shear = stiff(self.shear_mpa)?;
        let load = load(self.load_n)?;
        given::size(self.free, Field::Length)?;
        let (dead, over, beside) = self.ends.dead();
        let active = self.total.checked_sub(Fraction::whole(dead))?;
        let solid_coils = self.total.checked_add(Fraction::whole(over))?;
        let solid = along(self.wire, solid_coils)?;
        let none = Error::new(Field::Coils, Cause::Conflict);
        if active < Fraction::ONE || solid >= self.free {
            return Err(none);
        }
        let travel = given::minus(self.free, solid, Field::Length)?;
        let rate = coil.rate(shear, Approx::of(active));
        let solid_n = rate.times(Approx::of(travel.mm()));
        let (wahl, bergstrasser) = (coil.wahl(), coil.bergstrasser());
        let gives = load.over(rate);
        let free = Approx::of(self.free.mm());
        let room =
            given::minus(self.free, given::times(self.wire, beside, Field::Wire)?, Field::Length)?;
        let steps = if dead == 1 { self.total } else { active };
        let pitch = Length::from_mm(room.mm().checked_div(steps)?);
        let slender = free.over(coil.mean);
        let stands = match slender.value {
            s if s < 2.63 => Stands::Anyhow,
            s if s < 3.72 => Stands::OneSquare,
            s if s < 5.26 => Stands::BothSquare,
            _ => Stands::Guided,
        };
        Ok(Pushed {
            index: coil.index,
            winding: coil.winding(),
            active,
            rate,
            solid,
            travel,
            solid_n,
            solid_stress: coil.shear(solid_n).times(wahl),
            wahl,
            bergstrasser,
            gives,
            length: free.minus(gives),
            stress: coil.shear(load).times(wahl),
            stress_bergstrasser: coil.shear(load).times(bergstrasser),
            closes: load.value >= solid_n.value,
            pitch,
            cut: coil.length(total, Approx::of(pitch.mm())),
            slender,
            stands,
        })
    }

    /// Coils for a rate in newtons for a millimetre; its own coils do not matter.
    ///
    /// # Errors
    /// As [`Self::pushed`]; [`Cause::OutOfRange`] of [`Field::Coils`] where the rate takes
    /// fewer than one or more than a thousand.
    pub fn coils_for(&self, rate: f64) -> Result<Wanted, Error> {
        let coil = Coil::new(self.wire, self.mean)?;
        let one = coil.rate(stiff(self.shear_mpa)?, Approx::exactly(1.0));
        let rate = load(rate)?;
        if rate.value <= 0.0 {
            return Err(Error::new(Field::Load, Cause::Zero));
        }
        let active = one.over(rate);
        let (dead, _, _) = self.ends.dead();
        let out = Error::new(Field::Coils, Cause::OutOfRange { least: 1, greatest: 1000 });
        let quarters = float::nearest(active.value, 4).ok_or(out)?;
        let total = quarters.checked_add(Fraction::whole(dead))?;
        if quarters < Fraction::ONE {
            return Err(out);
        }
        coils(total)?;
        Ok(Wanted { active, total })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn spring(ends: Ends) -> Compression {
        let mm = |n| Length::from_mm(Fraction::whole(n));
        Compression {
            wire: mm(2),
            mean: mm(16),
            total: Fraction::whole(10),
            ends,
            free: mm(60),
            shear_mpa: 80_000.0,
            load_n: 50.0,
        }
    }

    /// Free, it is as long as its coils at their pitch; solid, as its wires on each other.
    #[test]
    fn ends_add_up() {
        let whole = |n: i64| Length::from_mm(Fraction::whole(n));
        for (ends, active, solid, gaps) in [
            (Ends::Plain, 10, 22, 10),
            (Ends::PlainGround, 9, 20, 10),
            (Ends::Squared, 8, 22, 8),
            (Ends::SquaredGround, 8, 20, 8),
        ] {
            let pushed = spring(ends).pushed().unwrap();
            assert_eq!((pushed.active, pushed.solid), (Fraction::whole(active), whole(solid)));
            let gap = pushed.pitch.mm().checked_sub(Fraction::whole(2)).unwrap();
            // All travel is in the gaps between coils; of a plain ground one a gap is cut off.
            let all = gap.times(gaps).unwrap();
            if ends == Ends::PlainGround {
                assert_eq!(all, Fraction::whole(40));
            } else {
                assert_eq!(all, pushed.travel.mm(), "{ends:?}");
            }
        }
    }

    /// The load it gives way to, pushed solid, is the force when solid.
    #[test]
    fn a_load_at_the_limit_closes_it() {
        let mut spring = spring(Ends::SquaredGround);
        let solid = spring.pushed().unwrap();
        assert!(!solid.closes);
        spring.load_n = solid.solid_n.value;
        let pushed = spring.pushed().unwrap();
        assert!(pushed.closes);
        assert!((pushed.length.value - 20.0).abs() < 1e-9);
        assert!((pushed.stress.value - pushed.solid_stress.value).abs() < 1e-9);
    }

    #[test]
    fn coils_for_a_rate_give_it() {
        let mut spring = spring(Ends::Squared);
        let rate = spring.pushed().unwrap().rate.value;
        let wanted = spring.coils_for(rate).unwrap();
        assert_eq!(wanted.total, spring.total);
        assert!((wanted.active.value - 8.0).abs() < 1e-9);
        for rate in [0.0, -1.0, f64::NAN, 1e6, 1e-6] {
            assert!(spring.coils_for(rate).is_err());
        }
        spring.total = Fraction::whole(2);
        assert_eq!(spring.pushed().unwrap_err().field, Field::Coils);
        spring.total = Fraction::whole(30);
        assert_eq!(spring.pushed().unwrap_err(), Error::new(Field::Coils, Cause::Conflict));
        spring.mean = spring.wire;
        assert_eq!(spring.pushed().unwrap_err().field, Field::Spring);
    }
}
