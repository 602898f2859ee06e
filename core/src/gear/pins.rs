//! Measurement over two pins or balls laid into opposite gaps.
//!
//! Method: a pin's centre lies on the involute that runs half a pin outside the flank,
//! so with q half a gap's angle at the base circle it lies at R = r_b/cos φ with
//! inv φ = d/2r_b − q. An even number of teeth reads 2R + d, an odd one
//! 2R·cos(90°/z) + d, since there no gap lies opposite (DIN 3960; over-pin tables of the
//! handbooks). Where the pin touches is the tangent T = tan φ − d/2r_b, so the pin that
//! touches at a given T is d = 2r_b·(tan(T + q) − T).
//!
//! The best pin touches at the pitch circle (with shift: at the middle of the tooth).
//! A pin that can be used touches the flank, stands proud of the outside and clears the
//! bottom of the gap.
//!
//! ```
//! use handturn::gear::{Size, Spur, Tooth, pins};
//! use handturn::measure::Length;
//! use handturn::number::Fraction;
//! // 20 teeth, 1 DP, 20°, over 1.728 in pins: 22.3900 in the tables.
//! let size = Size::DiametralPitch(Fraction::ONE);
//! let wheel = Spur::new(20, Tooth { size, ..Tooth::default() })?;
//! let pin = Length::from_inches(Fraction::new(1_728, 1_000)?)?;
//! let over = pins::over(&wheel, wheel.outside_diameter()?, pin)?;
//! assert!((over.reading.value / 25.4 - 22.3900).abs() < 5e-5);
//! # Ok::<(), handturn::Error>(())
//! ```
use super::Spur;
use super::flank::{Flank, ROUNDING, Readings, blank};
use super::involute;
use crate::error::{Cause, Error, Field};
use crate::measure::{Length, given};
use crate::number::{
    Approx,
    float::{PI, cos_turns, of, sqrt, tan_turns},
};

/// Pins of the handbooks' tables, in thousandths of a module (1.728 in over the
/// diametral pitch and so on): for external teeth, for external teeth by the older
/// tables, for pinions with a long addendum, for internal teeth. Common practice.
pub const CUSTOMARY: [u32; 4] = [1_728, 1_680, 1_920, 1_440];

/// Steepest pressure angle at a pin's centre, in radians: beyond it the gap opens so
/// wide that the pin is held by its edges.
const STEEPEST: f64 = 1.4;

/// Pins that can be used on a wheel, in millimetres.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Range {
    /// Thinner ones fall below the outside, to the bottom or past the flanks' ends.
    pub least: Approx,
    /// Touches at the middle of the tooth.
    pub best: Approx,
    /// Thicker ones ride on the tips.
    pub greatest: Approx,
}

/// What two pins read on a wheel; lengths in millimetres.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Over {
    /// Across both pins.
    pub reading: Approx,
    /// Diameter of the circle on which the pins' centres lie.
    pub centres: Approx,
    /// Diameter at which the pins touch the flanks.
    pub touches: Approx,
    /// How much the reading changes for each millimetre of tooth thickness at the pitch
    /// circle.
    #[doc(alias = "change factor")]
    pub per_thickness: f64,
}

/// The pins that can be used on a wheel whose blank measures `outside`.
///
/// # Errors
/// What [`chordal::tooth`](super::chordal::tooth) finds in wheel and blank;
/// [`Cause::Conflict`] of [`Field::Pin`] where no pin serves.
pub fn range(spur: &Spur, outside: Length) -> Result<Range, Error> {
    Gap::new(spur, outside)?.range()
}

/// Which of `owned` (pins, balls, drill shanks) to take: of those in the usable range
/// the one nearest to the best pin, the thinner of two as near; `None` where none serves.
///
/// # Errors
/// As [`range`], and a pin out of bounds.
pub fn choose(spur: &Spur, outside: Length, owned: &[Length]) -> Result<Option<Length>, Error> {
    let range = range(spur, outside)?;
    let mut chosen: Option<(f64, Length)> = None;
    for &pin in owned {
        let mm = given::size(pin, Field::Pin)?;
        let off = (mm - range.best.value).abs();
        let nearer = |(least, than): (f64, Length)| off < least || (off <= least && pin < than);
        if range.check(mm).is_ok() && chosen.is_none_or(nearer) {
            chosen = Some((off, pin));
        }
    }
    Ok(chosen.map(|(_, pin)| pin))
}

/// What two of `pin` read on a wheel whose blank measures `outside`.
///
/// # Errors
/// As [`range`]; [`Cause::PinFalls`] or [`Cause::PinRides`] with the range in whole
/// micrometres, rounded inwards.
pub fn over(spur: &Spur, outside: Length, pin: Length) -> Result<Over, Error> {
    let gap = Gap::new(spur, outside)?;
    let pin = given::size(pin, Field::Pin)?;
    gap.range()?.check(pin)?;
    gap.rest(pin).ok_or(NOWHERE)
}

/// The arc of a tooth at the pitch circle, in millimetres, when two of `pin` read
/// `reading`.
///
/// # Errors
/// As [`over`]; [`Cause::OutOfLengths`] of [`Field::Reading`] where the pins would touch
/// beyond the blank or below the flanks, or nothing is left of tooth or gap.
pub fn thickness(
    spur: &Spur,
    outside: Length,
    pin: Length,
    reading: Length,
) -> Result<Approx, Error> {
    let gap = Gap::new(spur, outside)?;
    let pin = given::size(pin, Field::Pin)?;
    gap.range()?.check(pin)?;
    let read = given::size(reading, Field::Reading)?;
    gap.readings(pin).check(read)?;
    let flank = &gap.flank;
    // The centre's tangent, then what the pin leaves of the gap.
    let centre = (read - pin) / (2.0 * gap.across);
    let tan = flank.tangent_at(centre);
    let half_pin = pin / (2.0 * flank.base);
    let half = PI / flank.teeth - half_pin + involute::of_tangent(tan);
    let size = read * (1.0 + tan) + flank.summed;
    Ok(Approx { value: flank.thickness_of(half), bound: ROUNDING * size })
}

/// Nothing to rest on.
const NOWHERE: Error = Error::new(Field::Pin, Cause::Conflict);

impl Range {
    /// `pin`, in millimetres, when it lies within the range.
    ///
    /// # Errors
    /// [`Cause::PinFalls`] or [`Cause::PinRides`], each with the range in whole
    /// micrometres, rounded inwards.
    pub fn check(&self, pin: f64) -> Result<(), Error> {
        let least_um = given::um_up(self.least.value);
        let greatest_um = given::um_down(self.greatest.value);
        let cause = if pin > self.greatest.value {
            Cause::PinRides { least_um, greatest_um }
        } else if pin >= self.least.value {
            return Ok(());
        } else {
            Cause::PinFalls { least_um, greatest_um }
        };
        Err(Error::new(Field::Pin, cause))
    }
}

/// A gap to lay pins into, on a blank as it was found.
pub(super) struct Gap {
    pub(super) flank: Flank,
    /// Radius of the blank.
    pub(super) outside: f64,
    /// Diameter across two gaps, over twice the radius: 1, or cos(90°/z) for odd numbers.
    pub(super) across: f64,
    /// Tangent at the middle of the tooth.
    middle: f64,
}

impl Gap {
    pub(super) fn new(spur: &Spur, outside: Length) -> Result<Self, Error> {
        let flank = Flank::new(spur)?;
        let outside = blank(spur, outside)?;
        let odd = spur.teeth & 1 == 1;
        let across = if odd { cos_turns(0.25 / flank.teeth) } else { 1.0 };
        let shifted = flank.pitch + of(spur.shift) * of(spur.tooth.size.module()?.mm());
        Ok(Self { flank, outside, across, middle: flank.tangent_at(shifted) })
    }

    /// Tangents at which a pin may touch the flanks: lowest and highest.
    pub(super) fn touched(&self) -> (f64, f64) {
        let steepest = STEEPEST - self.flank.gap();
        (self.flank.lowest(), self.flank.tangent_at(self.outside).min(steepest))
    }

    /// The pin that touches at the tangent `t`, and the radius at which its centre lies.
    fn touching(&self, t: f64) -> (Approx, f64) {
        let angle = t + self.flank.gap();
        let tan = tan_turns(angle / (2.0 * PI));
        let secant = sqrt(1.0 + tan * tan);
        let value = 2.0 * self.flank.base * (tan - t);
        let bound = 4.0 * ROUNDING * self.flank.base * (tan + (1.0 + t) * secant * secant);
        (Approx { value, bound }, self.flank.base * secant)
    }

    fn range(&self) -> Result<Range, Error> {
        let (lowest, highest) = self.touched();
        // Both grow with the tangent, so halving finds where both hold.
        let serves = |t: f64| {
            let (pin, centre) = self.touching(t);
            let half = pin.value / 2.0;
            centre * self.across + half >= self.outside && centre - half >= self.flank.root
        };
        if lowest >= highest || !serves(highest) {
            return Err(NOWHERE);
        }
        let (mut low, mut high) = (lowest, highest);
        if serves(lowest) {
            high = lowest;
        } else {
            for _ in 0..60 {
                let middle = (low + high) / 2.0;
                if serves(middle) { high = middle } else { low = middle }
            }
        }
        let best = self.middle.max(high).min(highest);
        let [least, best, greatest] = [high, best, highest].map(|t| self.touching(t).0);
        Ok(Range { least, best, greatest })
    }

    /// Where `pin` comes to rest; `None` where it finds no flank.
    pub(super) fn rest(&self, pin: f64) -> Option<Over> {
        let flank = &self.flank;
        let half_pin = pin / (2.0 * flank.base);
        let tan = involute::tangent(half_pin - flank.gap())?;
        let centre = flank.radius_at(tan);
        let touches = tan - half_pin;
        // What the gap's angle is summed from, as the centre's radius answers to it.
        let moved = centre / tan * (half_pin + PI / flank.teeth + flank.half);
        let near = |value: f64| Approx { value, bound: ROUNDING * (value + moved) };
        Some(Over {
            reading: near(2.0 * centre * self.across + pin),
            centres: near(2.0 * centre),
            touches: near(2.0 * flank.radius_at(touches)),
            per_thickness: centre * self.across / (tan * flank.pitch),
        })
    }

    /// What two of `pin` can read at all, teeth and gaps as thick as they may be.
    fn readings(&self, pin: f64) -> Readings {
        let flank = &self.flank;
        let half_pin = pin / (2.0 * flank.base);
        let at = |t: f64| 2.0 * flank.radius_at(t + half_pin) * self.across + pin;
        let (lowest, highest) = (flank.lowest(), flank.tangent_at(self.outside));
        Readings { least: at(lowest), greatest: at(highest) }
    }
}
