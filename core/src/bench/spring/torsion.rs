//! Springs that turn.
//!
//! Sources: text-books of machine design. One turn takes E d⁴ ÷ (10.8 D Na): 10.8 in place
//! of 64 ÷ 2π = 10.19 takes in the rub of coils on each other, found by trial. Straight legs
//! count as (l₁ + l₂) ÷ (3 π D) coils. Wound up, the body's coils are more and smaller.
//!
//! ```
//! use handturn::bench::spring::Torsion;
//! use handturn::measure::Length;
//! use handturn::number::Fraction;
//! // 1.5 mm wire, mean 12 mm, 6 coils, legs of 20 mm, E 200 GPa, moved by 400 N mm.
//! let mm = |n, d| Fraction::new(n, d).map(Length::from_mm);
//! let spring = Torsion {
//!     wire: mm(3, 2)?,
//!     mean: mm(12, 1)?,
//!     body: Fraction::whole(6),
//!     legs: [mm(20, 1)?; 2],
//!     modulus_mpa: 200e3,
//!     moment_nmm: 400.0,
//! };
//! let turned = spring.turned()?;
//! assert!((turned.active.value - 6.3537).abs() < 5e-5);
//! assert!(turned.inside_wound.value < 10.5);
//! # Ok::<(), handturn::Error>(())
//! ```
use super::{Coil, Winding, along, coils, curved, load, stiff};
use crate::error::{Error, Field};
use crate::measure::{Length, given};
use crate::number::{Approx, Fraction};

/// A torsion spring and a moment on it.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Torsion {
    /// The wire.
    pub wire: Length,
    /// Mean diameter of its coils.
    pub mean: Length,
    /// Coils of its body.
    pub body: Fraction,
    /// Its straight legs, which bend; nought for none.
    pub legs: [Length; 2],
    /// Modulus of elasticity, in MPa.
    pub modulus_mpa: f64,
    /// Moment that winds it up, in N mm.
    pub moment_nmm: f64,
}

/// What a torsion spring does; lengths in millimetres, stresses in MPa.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Turned {
    /// Mean diameter over wire.
    pub index: Approx,
    /// How it winds.
    pub winding: Winding,
    /// Coils that move, the legs' part with them.
    pub active: Approx,
    /// N mm for a turn.
    pub per_turn: Approx,
    /// Turns that the moment winds it by.
    pub turns: Approx,
    /// Factor of bending at the inside of the coils.
    pub factor: Approx,
    /// Bending there.
    pub stress: Approx,
    /// Inside diameter when nothing turns it.
    pub inside: Length,
    /// Mean diameter when wound.
    pub mean_wound: Approx,
    /// Inside diameter when wound.
    pub inside_wound: Approx,
    /// The largest pin: nine tenths of that; nought where none fits.
    pub pin: Approx,
    /// Length of the body, close-wound.
    pub long: Length,
    /// Its length when wound.
    pub long_wound: Approx,
    /// Wire in it, both legs with it.
    pub cut: Approx,
}

impl Torsion {
    /// What it does.
    ///
    /// # Errors
    /// Lengths out of bounds; `OutOfRange` of coils, moment and modulus; `Conflict` of [`Field::Spring`] where the coils are tighter than twice the wire.
    pub fn turned(&self) -> Result<Turned, Error> {
        let coil = Coil::new(self.wire, self.mean)?;
        let body = coils(self.body)?;
        let modulus = stiff(self.modulus_mpa)?;
        let moment = load(self.moment_nmm)?;
        let [one, other] = self.legs;
        for leg in self.legs {
            given::from_nought(leg, Field::Length)?;
        }
        let legs = Approx::of(given::plus(one, other, Field::Length)?.mm());
        let active = body.plus(legs.over(coil.mean.times(Approx::pi()).by(3.0)));
        let per =
            |coils: Approx| modulus.times(coil.fourth()).over(coil.mean.times(coils).by(10.8));
        let per_turn = per(active);
        let turns = moment.over(per_turn);
        // The body's own part of the winding.
        let wound = body.plus(moment.over(per(body)));
        let mean_wound = coil.mean.times(body).over(wound);
        let inside_wound = mean_wound.minus(coil.wire);
        let pin = inside_wound.by(0.9);
        let factor = curved(coil.index);
        let more = Approx::exactly(1.0).plus(body).plus(turns);
        let inside = given::minus(self.mean, self.wire, Field::Wire)?;
        Ok(Turned {
            index: coil.index,
            winding: coil.winding(),
            active,
            per_turn,
            turns,
            factor,
            stress: coil.bending(moment).times(factor),
            inside,
            mean_wound,
            inside_wound,
            pin: if pin.value > 0.0 { pin } else { Approx::exactly(0.0) },
            long: along(self.wire, self.body.checked_add(Fraction::ONE)?)?,
            long_wound: coil.wire.times(more),
            cut: coil.length(body, coil.wire).plus(legs),
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::error::Cause;

    /// Wire neither comes nor goes: coils times mean diameter stay as they were.
    #[test]
    fn winding_keeps_the_wire() {
        let mm = |n, d| Length::from_mm(Fraction::new(n, d).unwrap());
        let mut spring = Torsion {
            wire: mm(3, 2),
            mean: mm(12, 1),
            body: Fraction::whole(6),
            legs: [mm(0, 1); 2],
            modulus_mpa: 200e3,
            moment_nmm: 400.0,
        };
        let turned = spring.turned().unwrap();
        let wound = 6.0 + turned.turns.value;
        assert!((turned.mean_wound.value * wound - 72.0).abs() < 1e-9);
        assert!((turned.per_turn.value * turned.turns.value - 400.0).abs() < 1e-9);
        spring.moment_nmm = -1.0;
        assert_eq!(spring.turned().unwrap_err().field, Field::Load);
        spring.body = Fraction::ZERO;
        assert_eq!(spring.turned().unwrap_err().field, Field::Coils);
        assert!(matches!(spring.turned().unwrap_err().cause, Cause::OutOfRange { .. }));
    }
}
