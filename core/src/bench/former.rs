//! Formers for bent rings and clips: how far round wire or strip springs back.
//!
//! Method: the section is elastic up to its yield and gives way at that stress beyond it;
//! plane sections stay plane. With R the radius to the **neutral line** (half the thickness
//! beyond the former, not the former's own radius), E the modulus, Y the yield, t the
//! thickness, `u = 2 Y R ÷ (E t)` is the part of the half thickness that stays elastic.
//! Let go, the ring opens from R to R ÷ K:
//! - strip (text-books of forming): K = 1 − 3 X + 4 X³, X = Y R ÷ (E t) = u ÷ 2;
//! - round wire (the same integral over a circle, derived): K = 1 − (4 ÷ π) m u with
//!   m = (2 u² − 1) s ÷ 2 + asin u ÷ (2 u) + (4 ÷ 3) s³, s = √(1 − u²).
//!
//! From u = 1 on nothing yields, and the wire springs straight back. Real wire hardens,
//! was coiled before and is never quite what its table says: formers are trial sizes.
//!
//! ```
//! use handturn::bench::former::{Bend, Section};
//! use handturn::bench::wire::Stuff;
//! use handturn::measure::Length;
//! use handturn::number::Fraction;
//! // A clip of 1 mm music wire that grips a post of 12 mm.
//! let mm = |n, d| Fraction::new(n, d).map(Length::from_mm);
//! let metal = Stuff::Music.metal(mm(1, 1)?)?;
//! let bend = Bend {
//!     section: Section::Round,
//!     thick: mm(1, 1)?,
//!     inside: mm(12, 1)?,
//!     yields: metal.yields,
//!     modulus: metal.modulus,
//! };
//! let former = bend.former(&[])?;
//! assert!(former.least.value > 9.2 && former.most.value < 10.6);
//! # Ok::<(), handturn::Error>(())
//! ```
use super::wire::Band;
use crate::error::{Cause, Error, Field};
use crate::list::List;
use crate::measure::{Length, given};
use crate::number::{Approx, Fraction, float};

/// Formers in one ladder.
pub const TRIALS: usize = 5;

/// What the section looks like.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Section {
    /// Round wire.
    Round,
    /// Strip, bent about its width.
    #[doc(alias("rectangular"))]
    Strip,
}

/// A ring or clip wanted.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Bend {
    /// Its section.
    pub section: Section,
    /// Diameter of the wire, thickness of the strip.
    pub thick: Length,
    /// Inside diameter once it is let go.
    pub inside: Length,
    /// What the bend takes for the yield, in MPa.
    pub yields: Band,
    /// Modulus of elasticity, in MPa.
    pub modulus: Band,
}

/// The former for a ring; diameters in millimetres.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Former {
    /// Diameter at the middle of the bands.
    pub middle: Approx,
    /// Where the wire is at its hardest and least stiff; nought where none is small enough.
    pub least: Approx,
    /// Where it is at its softest and stiffest.
    pub most: Approx,
    /// At the middle: radius before over radius after, to the neutral line.
    pub kept: Approx,
    /// At the middle: the part of the thickness that stays elastic.
    pub elastic: Approx,
    /// Formers to try, from small to large.
    pub trials: List<Trial, TRIALS>,
}

/// What comes off one former; inside diameters in millimetres, nothing where the wire
/// does not yield and springs straight back.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Trial {
    /// The former's diameter.
    pub former: Length,
    /// At the middle of the bands.
    pub middle: Option<Approx>,
    /// Where it springs least.
    pub least: Option<Approx>,
    /// Where it springs most.
    pub most: Option<Approx>,
}

/// What is left of a curve of `radius`, to the neutral line, once it is let go: radius
/// before over radius after, for a yield and a modulus in MPa.
///
/// # Errors
/// Lengths out of bounds; [`Cause::OutOfRange`] of [`Field::Yield`] and [`Field::Modulus`];
/// [`Cause::Conflict`] of [`Field::Former`] where nothing yields.
#[doc(alias("springback"))]
pub fn kept(
    section: Section,
    thick: Length,
    radius: Length,
    yields: f64,
    modulus: f64,
) -> Result<Approx, Error> {
    let thick = given::size(thick, Field::Wire)?;
    let radius = given::size(radius, Field::Diameter)?;
    let u = per(thick, yields, modulus)? * radius;
    if u >= 1.0 {
        return Err(STRAIGHT);
    }
    Ok(ratio(section, Approx { value: u, bound: 6.0 * f64::EPSILON * u }))
}

const STRAIGHT: Error = Error::new(Field::Former, Cause::Conflict);

/// `u` for each millimetre of radius.
fn per(thick: f64, yields: f64, modulus: f64) -> Result<f64, Error> {
    if !(1.0..=5000.0).contains(&yields) {
        return Err(Error::new(Field::Yield, Cause::OutOfRange { least: 1, greatest: 5000 }));
    }
    if !(1000.0..=1e6).contains(&modulus) {
        let cause = Cause::OutOfRange { least: 1000, greatest: 1_000_000 };
        return Err(Error::new(Field::Modulus, cause));
    }
    Ok(2.0 * yields / (modulus * thick))
}

/// K of an elastic part `u` from 0 to 1.
fn ratio(section: Section, u: Approx) -> Approx {
    let x = u.value;
    let value = match section {
        Section::Strip => 1.0 - x * (1.5 - 0.5 * x * x),
        Section::Round => {
            let square = (1.0 - x) * (1.0 + x);
            let s = float::sqrt(square);
            let arc = float::asin_turns(x) * (2.0 * float::PI);
            let m = (2.0 * x * x - 1.0) * s / 2.0 + arc / (2.0 * x) + 4.0 / 3.0 * s * square;
            1.0 - 4.0 / float::PI * m * x
        }
    };
    // K falls by less than 1.7 as u grows; no term of the sum is above 2.
    let carried = 1.7 * u.bound;
    Approx { value, bound: carried + f64::EPSILON * (1.0 + 8.0 * x) }
}

impl Bend {
    /// The former it is bent on, and a ladder of formers to try: of those `owned` the
    /// nearest to five places from least to most, each once; where none is near, such places
    /// to a twentieth of a millimetre.
    ///
    /// # Errors
    /// As [`kept`]; [`Cause::Conflict`] of [`Field::Diameter`] where no former is so small.
    pub fn former(&self, owned: &[Length]) -> Result<Former, Error> {
        let at = |yields: f64, modulus: f64| self.solve(yields, modulus);
        let (yields, modulus) = (self.yields, self.modulus);
        let (middle, elastic) = at(yields.middle(), modulus.middle())?;
        if middle.value <= 0.0 {
            return Err(Error::new(Field::Diameter, Cause::Conflict));
        }
        let kept = ratio(self.section, elastic);
        let (least, _) = at(yields.most, modulus.least)?;
        let least = if least.value > 0.0 { least } else { Approx::exactly(0.0) };
        let (most, _) = at(yields.least, modulus.most)?;
        // What is owned far from all that may be wanted is no help.
        let (low, high) = (least.value * 0.95, most.value * 1.05);
        let near = |one: &Length| (low..=high).contains(&float::of(one.mm()));
        let any = owned.iter().any(near);
        let mut trials: List<Trial, TRIALS> = List::new();
        for k in 0..=4_u8 {
            let place = least.value + (most.value - least.value) * (f64::from(k) / 4.0);
            let off = |length: &Length| (float::of(length.mm()) - place).abs();
            let taken = |one: &Length| trials.iter().any(|trial| trial.former == *one);
            let nearest = owned.iter().filter(|one| near(one) && !taken(one));
            let nearest = nearest.min_by(|a, b| off(a).total_cmp(&off(b))).copied();
            let place = || float::nearest(place, 20).map(Length::from_mm);
            let former = if any { nearest } else { place() };
            let Some(former) = former.filter(|one| one.mm() > Fraction::ZERO) else { continue };
            let at = trials.iter().position(|trial| trial.former >= former);
            let at = at.unwrap_or(trials.len());
            if trials.get(at).is_none_or(|trial| trial.former != former) {
                let _ = trials.insert(at, self.trial(former)?);
            }
        }
        Ok(Former { middle, least, most, kept, elastic, trials })
    }

    /// What comes off a former.
    ///
    /// # Errors
    /// As [`kept`], but for what does not yield.
    pub fn trial(&self, former: Length) -> Result<Trial, Error> {
        let thick = given::size(self.thick, Field::Wire)?;
        let size = given::size(former, Field::Diameter)?;
        let free = |yields: f64, modulus: f64| {
            let before = Approx::exactly(size).plus(Approx::exactly(thick));
            let u = per(thick, yields, modulus)? * (before.value / 2.0);
            if u >= 1.0 {
                return Ok(None);
            }
            let kept = ratio(self.section, Approx { value: u, bound: 8.0 * f64::EPSILON * u });
            let inside = before.over(kept).minus(Approx::exactly(thick));
            // Where K is lost in its own bound nothing is left of the curve.
            Ok(inside.bound.is_finite().then_some(inside))
        };
        let (yields, modulus) = (self.yields, self.modulus);
        Ok(Trial {
            former,
            middle: free(yields.middle(), modulus.middle())?,
            least: free(yields.least, modulus.most)?,
            most: free(yields.most, modulus.least)?,
        })
    }

    /// Diameter of the former, and the elastic part on it.
    fn solve(&self, yields: f64, modulus: f64) -> Result<(Approx, Approx), Error> {
        let thick = given::size(self.thick, Field::Wire)?;
        let inside = given::size(self.inside, Field::Length)?;
        let per = per(thick, yields, modulus)?;
        // u = v K(u), and K falls from 1 to 0: one u from 0 to the lesser of v and 1.
        let v = per * ((inside + thick) / 2.0);
        let (mut low, mut high) = (0.0, v.min(1.0));
        for _ in 0..60 {
            let u = (low + high) / 2.0;
            if u < v * ratio(self.section, Approx::exactly(u)).value {
                low = u;
            } else {
                high = u;
            }
        }
        let value = (low + high) / 2.0;
        // u − v K rises by at least 1: what it is off by, u is off by no more.
        let elastic = Approx { value, bound: 32.0 * f64::EPSILON * v };
        let around = elastic.by(2.0).over(Approx { value: per, bound: 4.0 * f64::EPSILON * per });
        Ok((around.minus(Approx::exactly(thick)), elastic))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn mm(n: i64, d: i64) -> Length {
        Length::from_mm(Fraction::new(n, d).unwrap())
    }

    fn bend(section: Section, inside: Length) -> Bend {
        let (yields, modulus) =
            (Band { least: 1500.0, most: 1900.0 }, Band { least: 195e3, most: 205e3 });
        Bend { section, thick: mm(1, 1), inside, yields, modulus }
    }

    #[test]
    fn a_ladder_takes_what_is_owned_and_says_what_each_makes() {
        let drills: [Length; 120] =
            core::array::from_fn(|k| mm(10 + i64::try_from(k).unwrap(), 10));
        for section in [Section::Round, Section::Strip] {
            let bend = bend(section, mm(10, 1));
            let former = bend.former(&drills).unwrap();
            assert!(former.least.value < former.middle.value);
            assert!(former.middle.value < former.most.value && former.most.value < 10.0);
            assert_eq!(former.trials.len(), 5);
            for trial in &former.trials {
                assert!(drills.contains(&trial.former));
                let of = |found: Option<Approx>| found.unwrap().value;
                assert!(of(trial.least) < of(trial.middle) && of(trial.middle) < of(trial.most));
                assert!(of(trial.least) < 10.3 && of(trial.most) > 9.7);
            }
            let one = bend.former(&[mm(9, 1)]).unwrap().trials;
            assert_eq!(one.len(), 1);
            // One far off is not offered.
            assert_eq!(bend.former(&[mm(30, 1)]).unwrap().trials, bend.former(&[]).unwrap().trials);
        }
    }

    #[test]
    fn what_does_not_yield_is_refused() {
        // u = 2 × 1000 × R ÷ (200 000 × 1) is 1 at a radius of 100.
        for section in [Section::Round, Section::Strip] {
            let at = |radius| kept(section, mm(1, 1), radius, 1000.0, 200e3);
            assert_eq!(at(mm(100, 1)), Err(STRAIGHT));
            let near = at(mm(99_999, 1000)).unwrap();
            assert!(near.value > 0.0 && near.value < 1e-6, "{near:?}");
            assert!(at(mm(1, 1000)).unwrap().value < 1.0);
        }
        let trial = bend(Section::Round, mm(10, 1)).trial(mm(400, 1)).unwrap();
        assert_eq!((trial.least, trial.most), (None, None));
    }

    #[test]
    fn a_ring_smaller_than_any_former_is_refused() {
        let error = bend(Section::Round, mm(1, 100)).former(&[]).unwrap_err();
        assert_eq!(error, Error::new(Field::Diameter, Cause::Conflict));
    }

    #[test]
    fn odd_figures_are_refused() {
        let at = |yields, modulus| kept(Section::Round, mm(1, 1), mm(5, 1), yields, modulus);
        for (yields, modulus, field) in [
            (0.0, 2e5, Field::Yield),
            (f64::NAN, 2e5, Field::Yield),
            (1e3, 1.0, Field::Modulus),
            (1e3, f64::INFINITY, Field::Modulus),
        ] {
            assert_eq!(at(yields, modulus).unwrap_err().field, field);
        }
    }
}
