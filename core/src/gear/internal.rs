//! Internal wheels: a ring with teeth inside.
//!
//! Method: the gap of an internal wheel has the form of an external wheel's tooth, so
//! everything follows from that tooth. A pin in the gap touches further out than its
//! centre: inv φ = ψ_b − d/2r_b with ψ_b half the gap's angle at the base circle, and
//! between two pins are 2·r_b/cos φ − d, times cos(90°/z) on the first for an odd number
//! (DIN 3960). Shift counts as for the pinion that it meets without play: above nought the
//! teeth stand further out.
//!
//! ```
//! use handturn::gear::{Internal, Tooth};
//! use handturn::measure::Length;
//! use handturn::number::Fraction;
//! // A ring of 80 teeth, module 1: bored 78 mm, cut out to 82.5; between 1.7 mm pins 77.623.
//! let none = Length::from_mm(Fraction::ZERO);
//! let ring = Internal { teeth: 80, tooth: Tooth::default(), shift: Fraction::ZERO, thinned: none };
//! let sizes = ring.sizes()?;
//! assert_eq!(sizes.bore.mm(), Fraction::whole(78));
//! assert_eq!(sizes.root_diameter.mm(), Fraction::new(165, 2)?);
//! let pin = Length::from_mm(Fraction::new(17, 10)?);
//! assert!((ring.between_pins(pin)?.over.reading.value - 77.623).abs() < 0.001);
//! # Ok::<(), handturn::Error>(())
//! ```
use super::flank::{Flank, ROUNDING};
use super::pins::{Over, Range};
use super::{Spur, Tooth, involute};
use crate::bounds;
use crate::error::{Cause, Error, Field};
use crate::measure::{Length, given};
use crate::number::{
    Approx, Fraction,
    float::{PI, cos_turns, of, tan_turns},
};

/// A wheel with straight teeth inside a ring.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Internal {
    /// How many teeth.
    pub teeth: u32,
    /// The rack that its pinion is cut to.
    pub tooth: Tooth,
    /// Profile shift in modules; above nought further out.
    pub shift: Fraction,
    /// By how much each tooth is thinner at the pitch circle, to leave backlash.
    pub thinned: Length,
}

/// Exact sizes of an internal wheel.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Sizes {
    /// Teeth times module.
    pub pitch_diameter: Length,
    /// Diameter over the tips: what is bored.
    pub bore: Length,
    /// Diameter at the bottom of the gaps.
    pub root_diameter: Length,
    /// From bore to bottom.
    pub whole_depth: Length,
}

/// Pins between the teeth of an internal wheel; lengths in millimetres.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Between {
    /// Pins that can be used.
    pub range: Range,
    /// What two read, their reading taken between them.
    pub over: Over,
}

impl Internal {
    /// Checks every value.
    ///
    /// # Errors
    /// As [`Spur::check`]; [`Cause::Conflict`] of [`Field::Teeth`] where the bore would lie
    /// within the base circle, so that no involute is left at the tips.
    pub fn check(&self) -> Result<(), Error> {
        self.flank()?;
        Ok(())
    }

    /// Its sizes.
    ///
    /// # Errors
    /// As [`Self::check`].
    pub fn sizes(&self) -> Result<Sizes, Error> {
        self.check()?;
        self.exact()
    }

    /// Which pins can be used, and what two of `pin` read: the distance of their inner
    /// sides. Thicker teeth read less.
    ///
    /// # Errors
    /// As [`Self::check`]; [`Cause::PinFalls`] or [`Cause::PinRides`] with the range in
    /// whole micrometres; [`Cause::Conflict`] of [`Field::Pin`] where no pin serves.
    #[doc(alias = "between pins")]
    pub fn between_pins(&self, pin: Length) -> Result<Between, Error> {
        let (flank, sizes) = (self.flank()?, self.exact()?);
        let pin = given::size(pin, Field::Pin)?;
        let range = self.range(&flank, &sizes)?;
        range.check(pin)?;
        let half_pin = pin / (2.0 * flank.base);
        let nowhere = Error::new(Field::Pin, Cause::Conflict);
        let tan = involute::tangent(flank.half - half_pin).ok_or(nowhere)?;
        let (centre, across) = (flank.radius_at(tan), self.across());
        let moved = centre / tan * (half_pin + flank.half);
        let near = |value: f64| Approx { value, bound: ROUNDING * (2.0 * centre + moved) };
        let over = Over {
            reading: near(2.0 * centre * across - pin),
            centres: near(2.0 * centre),
            touches: near(2.0 * flank.radius_at(tan + half_pin)),
            per_thickness: -centre * across / (tan * flank.pitch),
        };
        Ok(Between { range, over })
    }

    /// The gap as the tooth of an external wheel.
    fn flank(&self) -> Result<Flank, Error> {
        bounds::WHEEL_TEETH.check(i64::from(self.teeth))?;
        let Self { teeth, tooth, shift, thinned } = *self;
        Spur { teeth, tooth, shift, thinned }.check()?;
        // As wide as thinning leaves it: thinner teeth, wider gaps.
        let thick = Spur { teeth, tooth, shift, thinned: given::NONE };
        let flank = Flank::new(&thick)?;
        let wider = of(thinned.mm());
        let flank = Flank {
            thickness: flank.thickness + wider,
            summed: flank.summed + wider,
            half: flank.half + wider / (2.0 * flank.pitch),
            ..flank
        };
        if of(self.exact()?.bore.mm()) / 2.0 < flank.base {
            return Err(Error::new(Field::Teeth, Cause::Conflict));
        }
        Ok(flank)
    }

    fn exact(&self) -> Result<Sizes, Error> {
        let size = self.tooth.size;
        let pitch = size.times(Fraction::whole(i64::from(self.teeth)))?;
        let at = |height: Length, out: i64| {
            let twice =
                size.times(self.shift)?.mm().checked_add(height.mm().times(out)?)?.times(2)?;
            pitch.mm().checked_add(twice).map(Length::from_mm)
        };
        let (above, below) = (self.tooth.addendum()?, self.tooth.dedendum()?);
        Ok(Sizes {
            pitch_diameter: pitch,
            bore: at(above, -1)?,
            root_diameter: at(below, 1)?,
            whole_depth: given::plus(above, below, Field::Depth)?,
        })
    }

    fn across(&self) -> f64 {
        if self.teeth & 1 == 1 { cos_turns(0.25 / f64::from(self.teeth)) } else { 1.0 }
    }

    fn range(&self, flank: &Flank, sizes: &Sizes) -> Result<Range, Error> {
        let radius = |length: Length| of(length.mm()) / 2.0;
        let (bore, root) = (radius(sizes.bore), radius(sizes.root_diameter));
        // The pin that touches at the tangent `t`, thinner the further out.
        let touching = |t: f64| {
            let tan = tan_turns((t - flank.half) / (2.0 * PI));
            let value = 2.0 * flank.base * (t - tan);
            let bound = 4.0 * ROUNDING * flank.base * (t + (1.0 + t) * (1.0 + tan * tan));
            (Approx { value, bound }, flank.radius_at(tan), tan)
        };
        let serves = |t: f64| {
            let (pin, centre, tan) = touching(t);
            let half = pin.value / 2.0;
            tan > 0.0 && centre * self.across() - half <= bore && centre + half <= root
        };
        let (lowest, highest) = (flank.tangent_at(bore), flank.tangent_at(root));
        // Nearest to the base circle a pin's centre would lie within it.
        let lowest = lowest.max(flank.half * 1.001);
        if !serves(lowest) {
            return Err(Error::new(Field::Pin, Cause::Conflict));
        }
        let (mut low, mut high) = (lowest, highest);
        for _ in 0..60 {
            let middle = (low + high) / 2.0;
            if serves(middle) { low = middle } else { high = middle }
        }
        let shifted = flank.pitch + of(self.shift) * of(self.tooth.size.module()?.mm());
        let best = flank.tangent_at(shifted).max(lowest).min(low);
        let [least, best, greatest] = [low, best, lowest].map(|t| touching(t).0);
        Ok(Range { least, best, greatest })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn ring(teeth: u32) -> Internal {
        let tooth = Tooth::default();
        Internal { teeth, tooth, shift: Fraction::ZERO, thinned: given::NONE }
    }

    fn mm(thousandths: i64) -> Length {
        Length::from_mm(Fraction::new(thousandths, 1000).unwrap())
    }

    #[test]
    fn pins_that_do_not_serve() {
        let wheel = ring(80);
        let cause = |um| wheel.between_pins(mm(um)).unwrap_err().cause;
        assert!(matches!(cause(1_000), Cause::PinFalls { .. }));
        assert!(matches!(cause(3_000), Cause::PinRides { .. }));
        let range = wheel.between_pins(mm(1_700)).unwrap().range;
        assert!(range.least.value < range.best.value && range.best.value < range.greatest.value);
        let best =
            Length::from_mm(crate::number::float::nearest(range.best.value, 1_000_000).unwrap());
        let touches = wheel.between_pins(best).unwrap().over.touches.value;
        assert!((touches - 80.0).abs() < 1e-4, "{touches}");
    }

    #[test]
    fn rings_that_are_none() {
        // Below 34 teeth at 20° the tips lie within the base circle.
        let least = (4..100).find(|&teeth| ring(teeth).check().is_ok());
        assert_eq!(least, Some(34));
        assert_eq!(ring(33).sizes(), Err(Error::new(Field::Teeth, Cause::Conflict)));
        let out = Internal { shift: Fraction::new(1, 2).unwrap(), ..ring(80) };
        assert_eq!(out.sizes().unwrap().bore, mm(79_000));
    }
}
