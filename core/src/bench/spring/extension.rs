//! Springs that pull, close-wound, with a loop at each end.
//!
//! Sources: text-books of machine design (coils that move Nb + G ÷ E; the loop bends at its
//! top by 16 D ÷ (π d³) times the factor of its own curve, and is pulled by 4 ÷ (π d²)); the
//! initial tension that winds into a spring, by index, as spring makers recommend it, from
//! memory.
//!
//! ```
//! use handturn::bench::spring::Extension;
//! use handturn::measure::Length;
//! use handturn::number::Fraction;
//! // 1 mm wire, mean 8 mm, 20 coils, G 80 and E 200 GPa; what tension it has is not known.
//! let mm = |n| Length::from_mm(Fraction::whole(n));
//! let spring = Extension {
//!     wire: mm(1),
//!     mean: mm(8),
//!     body: Fraction::whole(20),
//!     shear_mpa: 80e3,
//!     modulus_mpa: 200e3,
//!     tension_n: None,
//!     loop_radius: None,
//!     bend_radius: None,
//!     load_n: 30.0,
//! };
//! let pulled = spring.pulled()?;
//! assert!((pulled.rate.value - 80e3 / (8.0 * 512.0 * 20.4)).abs() < 1e-9);
//! // 2 × (8 − 1) inside the loops and 21 wires.
//! assert_eq!(pulled.free.mm(), Fraction::whole(35));
//! # Ok::<(), handturn::Error>(())
//! ```
use super::{Coil, Winding, along, coils, curved, load, stiff};
use crate::bench::wire::{Band, KSI};
use crate::error::{Error, Field};
use crate::measure::{Length, given};
use crate::number::{Approx, Fraction};

/// An extension spring and a load on it.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Extension {
    /// The wire.
    pub wire: Length,
    /// Mean diameter of its coils.
    pub mean: Length,
    /// Coils of its body, loops not counted.
    pub body: Fraction,
    /// Modulus of shear, in MPa.
    pub shear_mpa: f64,
    /// Modulus of elasticity, in MPa.
    pub modulus_mpa: f64,
    /// The force at which the coils begin to part, in newtons, where it is known.
    pub tension_n: Option<f64>,
    /// Mean radius of a loop; that of the coils where none is given.
    pub loop_radius: Option<Length>,
    /// Mean radius of the bend from coil to loop; twice the wire where none is given.
    pub bend_radius: Option<Length>,
    /// Load, in newtons.
    pub load_n: f64,
}

/// What an extension spring does; lengths in millimetres, stresses in MPa.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Pulled {
    /// Mean diameter over wire.
    pub index: Approx,
    /// How it winds.
    pub winding: Winding,
    /// Coils that move, the loops' part with them.
    pub active: Approx,
    /// Newtons for a millimetre, once the coils part.
    pub rate: Approx,
    /// Length inside the loops when nothing pulls.
    pub free: Length,
    /// Initial tension that such a coil takes well, in newtons.
    pub usual_n: Band,
    /// Initial tension that was reckoned with: what was given, or the middle of that.
    pub tension_n: Approx,
    /// How far the load pulls it; nought below the tension.
    pub gives: Approx,
    /// Its length inside the loops then.
    pub length: Approx,
    /// Bergsträsser's factor.
    pub factor: Approx,
    /// Shear of the coils then, by that factor.
    pub stress: Approx,
    /// Bending at the top of a loop then.
    pub loop_bending: Approx,
    /// Shear in the bend to a loop then.
    pub loop_shear: Approx,
    /// Wire in it, both loops with it.
    pub cut: Approx,
}

/// Shear of the initial tension, least and greatest, in hundreds of pounds-force on a square
/// inch, at indices from 3: 33 500 ÷ exp(0.105 C) ± 1000 (4 − (C − 3) ÷ 6.5), rounded.
const TENSION: &[(u16, u16)] = &[
    (204, 284),
    (182, 259),
    (161, 235),
    (143, 214),
    (127, 194),
    (112, 177),
    (99, 161),
    (88, 146),
    (78, 133),
    (69, 121),
    (61, 110),
    (54, 100),
    (48, 91),
    (42, 82),
];

impl Extension {
    /// What it does.
    ///
    /// # Errors
    /// Lengths out of bounds; `OutOfRange` of coils, load and moduli; `Conflict` of [`Field::Spring`] where coils, loops or their bends are
    /// tighter than twice the wire.
    pub fn pulled(&self) -> Result<Pulled, Error> {
        let coil = Coil::new(self.wire, self.mean)?;
        let body = coils(self.body)?;
        let (shear, modulus) = (stiff(self.shear_mpa)?, stiff(self.modulus_mpa)?);
        let load = load(self.load_n)?;
        let active = body.plus(shear.over(modulus));
        let rate = coil.rate(shear, active);
        let loops = given::times(given::minus(self.mean, self.wire, Field::Wire)?, 2, Field::Wire)?;
        let wires = along(self.wire, self.body.checked_add(Fraction::ONE)?)?;
        let free = given::plus(loops, wires, Field::Length)?;
        let usual = usual(coil.index.value);
        // F = τ π d³ ÷ (8 D).
        let force = |stress: f64| coil.cube().by(stress).over(coil.mean.by(8.0)).value;
        let usual_n = Band { least: force(usual.least), most: force(usual.most) };
        let tension_n = match self.tension_n {
            Some(tension) => super::load(tension)?,
            None => Approx { value: usual_n.middle(), bound: 32.0 * f64::EPSILON * usual_n.most },
        };
        let zero = Approx::exactly(0.0);
        let gives =
            if load.value > tension_n.value { load.minus(tension_n).over(rate) } else { zero };
        let round = |radius: Option<Length>, otherwise: Length| {
            let mean = match radius {
                Some(radius) => given::times(radius, 2, Field::Diameter)?,
                None => otherwise,
            };
            Coil::new(self.wire, mean)
        };
        let top = round(self.loop_radius, self.mean)?;
        let bend = round(self.bend_radius, given::times(self.wire, 4, Field::Wire)?)?;
        let moment = load.times(coil.mean).by(0.5);
        let area = coil.wire.times(coil.wire).times(Approx::pi());
        let four = bend.index.by(4.0);
        let factor = four.minus(Approx::exactly(1.0)).over(four.minus(Approx::exactly(4.0)));
        Ok(Pulled {
            index: coil.index,
            winding: coil.winding(),
            active,
            rate,
            free,
            usual_n,
            tension_n,
            gives,
            length: Approx::of(free.mm()).plus(gives),
            factor: coil.bergstrasser(),
            stress: coil.shear(load).times(coil.bergstrasser()),
            loop_bending: coil
                .bending(moment)
                .times(curved(top.index))
                .plus(load.by(4.0).over(area)),
            loop_shear: coil.shear(load).times(factor),
            cut: coil.length(body, coil.wire).plus(top.length(Approx::exactly(2.0), zero)),
        })
    }
}

/// Shear of the usual tension at an index, in MPa; beyond the table its end.
fn usual(index: f64) -> Band {
    let mpa = |hundreds: u16| f64::from(hundreds) / 10.0 * KSI;
    let mut from = 3.0;
    let mut found = Band { least: 0.0, most: 0.0 };
    for pair in TENSION.windows(2) {
        let [(least, most), (then_least, then_most)] = pair else { continue };
        let part = (index - from).clamp(0.0, 1.0);
        let at = |one: u16, other: u16| mpa(one) + (mpa(other) - mpa(one)) * part;
        found = Band { least: at(*least, *then_least), most: at(*most, *then_most) };
        if index <= from + 1.0 {
            break;
        }
        from += 1.0;
    }
    found
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::error::Cause;

    /// The rounded table against the formula it was made by.
    #[test]
    fn tension_falls_with_the_index() {
        for tenths in 30..=160_u8 {
            let c = f64::from(tenths) / 10.0;
            let band = usual(c);
            let middle = 33_500.0 / (0.105 * c).exp();
            let half = 1000.0 * (4.0 - (c - 3.0) / 6.5);
            for (found, wanted) in [(band.least, middle - half), (band.most, middle + half)] {
                assert!((found / KSI - wanted / 1000.0).abs() < 0.11, "{c}: {band:?} {wanted}");
            }
        }
        assert_eq!(usual(2.0), usual(3.0));
        assert_eq!(usual(40.0), usual(16.0));
    }

    #[test]
    fn below_its_tension_nothing_gives() {
        let mm = |n| Length::from_mm(Fraction::whole(n));
        let mut spring = Extension {
            wire: mm(1),
            mean: mm(8),
            body: Fraction::whole(20),
            shear_mpa: 80e3,
            modulus_mpa: 200e3,
            tension_n: Some(10.0),
            loop_radius: None,
            bend_radius: None,
            load_n: 9.0,
        };
        assert_eq!(spring.pulled().unwrap().gives, Approx::exactly(0.0));
        spring.load_n = 12.0;
        let pulled = spring.pulled().unwrap();
        assert!((pulled.gives.value * pulled.rate.value - 2.0).abs() < 1e-9);
        spring.bend_radius = Some(Length::from_mm(Fraction::new(1, 2).unwrap()));
        assert_eq!(spring.pulled().unwrap_err(), Error::new(Field::Spring, Cause::Conflict));
    }
}
