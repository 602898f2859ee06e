//! Trial gaps: cut short of the depth, measure, and know how much deeper to go.
//!
//! Method: nothing is linear here by assumption. A form cutter's gap keeps its shape
//! and sinks as a whole along its own middle. So by h deeper, pins sink by h each; flat
//! anvils over k teeth touch two gaps whose middles stand k·180°/z either side of the
//! measured line's square, so the span falls by 2h·sin(k·180°/z); and for the caliper
//! the point of the gap's flank is solved that meets both its height and its reading.
//! A hob or a rack-shaped tool that rolls with the wheel leaves involutes at every depth,
//! and the tooth loses 2h·tan α at the pitch circle. The two differ by a quarter and
//! more: sunk deeper, a form cutter takes off more than the handbooks' rule for
//! generated teeth says, since its flank stands at α + 90°/z to the gap's middle.
//! Geometry: DIN 3960's involute, moved; no further source.
//!
//! Two gaps are enough: opposite ones for pins (nearest to it for odd numbers), the ones
//! beside a tooth for the caliper, for a span the gap before the first tooth and the
//! one after the last.
//!
//! ```
//! use handturn::gear::trial::{Check, Cutting, Trial, deeper};
//! use handturn::gear::{Spur, Tooth};
//! use handturn::measure::Length;
//! use handturn::number::Fraction;
//! // The clock's 64 wheel by a form cutter, over 1.7 mm pins: 66.332 is wanted.
//! let mm = |hundredths| Fraction::new(hundredths, 100).map(Length::from_mm);
//! let spur = Spur::new(64, Tooth::default())?;
//! let outside = spur.outside_diameter()?;
//! let check = Check::Pins { pin: mm(170)? };
//! let trial = Trial { spur, outside, cutting: Cutting::Form, check };
//! // Part-deep they read 66.70: 0.184 mm to go, and 0.01 of reading is 0.005 of depth.
//! let more = deeper(&trial, mm(6670)?)?;
//! assert!((more.deeper.value - 0.184).abs() < 1e-3);
//! assert_eq!(more.per_depth, 2.0);
//! # Ok::<(), handturn::Error>(())
//! ```
use super::flank::{Flank, ROUNDING, Readings, blank};
use super::pins::{self, Gap};
use super::{Spur, involute, span};
use crate::error::{Cause, Error, Field};
use crate::measure::{Length, given};
use crate::number::{
    Approx,
    float::{PI, atan_turns, cos_turns, of, sin_turns, sqrt, tan_turns},
};

/// How a gap answers to more depth.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Cutting {
    /// A cutter with the gap's own form sinks into the blank.
    Form,
    /// A hob or a rack-shaped tool rolls with the wheel.
    Generated,
}

/// What the trial gaps are measured with.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Check {
    /// A gear-tooth caliper over the tooth between the gaps.
    Caliper {
        /// From the outside as found down to the jaws' edges.
        height: Length,
    },
    /// Flat anvils over several teeth.
    Span {
        /// How many.
        teeth: u32,
    },
    /// Two pins in opposite gaps.
    Pins {
        /// Their diameter.
        pin: Length,
    },
}

/// A wheel with its first gaps cut.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Trial {
    /// The wheel wanted.
    pub spur: Spur,
    /// Diameter of its blank, as found.
    pub outside: Length,
    /// How it is cut.
    pub cutting: Cutting,
    /// How it is measured.
    pub check: Check,
}

/// What a trial gap says; lengths in millimetres.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Deeper {
    /// How much deeper to go; below nought, how much too deep it is.
    pub deeper: Approx,
    /// What is to be read in the end.
    pub wanted: Approx,
    /// How much the reading falls for each millimetre deeper, near what was read.
    pub per_depth: f64,
}

/// How much deeper to go when the trial gaps read `reading`.
///
/// # Errors
/// What [`span::over`] and [`pins::over`] find in wheel, blank, number and pin;
/// [`Cause::OutOfLengths`] of [`Field::Depth`] for a caliper's height that misses the
/// flanks, of [`Field::Reading`] where the gaps are too shallow to be measured on their
/// flanks or so deep that the wheel is lost, with what can be read.
pub fn deeper(trial: &Trial, reading: Length) -> Result<Deeper, Error> {
    let read = given::size(reading, Field::Reading)?;
    let wanted = wanted(trial)?;
    let flank = Flank::new(&trial.spur)?;
    let (deeper, per_depth) = match trial.cutting {
        Cutting::Generated => generated(trial, &flank, reading, read)?,
        Cutting::Form => formed(trial, read, wanted)?,
    };
    Ok(Deeper { deeper, wanted, per_depth })
}

/// What the check reads on the finished wheel, in millimetres: [`Deeper::wanted`] before
/// anything is cut.
///
/// # Errors
/// As [`deeper`].
pub fn wanted(trial: &Trial) -> Result<Approx, Error> {
    let (spur, outside) = (&trial.spur, trial.outside);
    match trial.check {
        Check::Pins { pin } => Ok(pins::over(spur, outside, pin)?.reading),
        Check::Span { teeth } => Ok(span::over(spur, outside, Some(teeth))?.reading),
        Check::Caliper { height } => Ok(Jaws::new(trial, height)?.wanted(&Flank::new(spur)?)),
    }
}

/// By an involute at every depth: what the thickness is over, on both flanks.
fn generated(
    trial: &Trial,
    flank: &Flank,
    reading: Length,
    read: f64,
) -> Result<(Approx, f64), Error> {
    let (spur, outside) = (&trial.spur, trial.outside);
    let (thickness, change) = match trial.check {
        Check::Pins { pin } => {
            let thickness = pins::thickness(spur, outside, pin, reading)?;
            let across = Gap::new(spur, outside)?.across;
            let centre = (read - of(pin.mm())) / (2.0 * across);
            (thickness, across * centre / (flank.tangent_at(centre) * flank.pitch))
        }
        Check::Span { teeth } => {
            (span::thickness(spur, outside, teeth, reading)?, flank.pressure.cos)
        }
        Check::Caliper { height } => Jaws::new(trial, height)?.thickness(flank, read)?,
    };
    let both = 2.0 * flank.pressure.tan;
    let bound = (thickness.bound + ROUNDING * flank.summed) / both;
    let value = (thickness.value - flank.thickness) / both;
    Ok((Approx { value, bound }, change * both))
}

/// By a gap that sinks as a whole. Its cutter leaves no backlash by itself: that is what
/// the last of the depth is for.
fn formed(trial: &Trial, read: f64, wanted: Approx) -> Result<(Approx, f64), Error> {
    let cutter = Spur { thinned: given::NONE, ..trial.spur };
    let gap = Gap::new(&cutter, trial.outside)?;
    let (flank, module) = (&gap.flank, of(cutter.tooth.size.module()?.mm()));
    let (touches, at, change, proud) = match trial.check {
        Check::Caliper { height } => {
            let jaws = Jaws::new(trial, height)?;
            let goal = jaws.sunk(flank, wanted.value)?;
            let now = jaws.sunk(flank, read)?;
            let value = now.above.value - goal.above.value;
            let bound = now.above.bound + goal.above.bound + wanted.bound / now.per_depth;
            return Ok((Approx { value, bound }, now.per_depth));
        }
        Check::Span { teeth } => {
            let turns = f64::from(teeth) / (2.0 * flank.teeth);
            let at = span::over(&cutter, trial.outside, Some(teeth))?;
            (at.touches.value, at.reading.value, 2.0 * sin_turns(turns), 0.0)
        }
        Check::Pins { pin } => {
            let pin = given::size(pin, Field::Pin)?;
            let at = gap.rest(pin).ok_or(Error::new(Field::Pin, Cause::Conflict))?;
            (at.touches.value, at.reading.value, 2.0 * gap.across, 2.0 * gap.outside)
        }
    };
    // Where it touches in the gap at its full depth, and how far out that may be moved.
    let (across, along) = in_gap(flank, flank.tangent_at(touches / 2.0));
    let highest = sqrt((gap.outside - across) * (gap.outside + across)) - along;
    let greatest = at + change * highest;
    let least = (at - change * module / 2.0).max(proud);
    Readings { least, greatest }.check(read)?;
    let value = (read - wanted.value) / change;
    let bound = wanted.bound / change + ROUNDING * value.abs();
    Ok((Approx { value, bound }, change))
}

/// The flank's point at the tangent `t` in the frame of a gap: across its middle and along it.
fn in_gap(flank: &Flank, t: f64) -> (f64, f64) {
    let turns = (flank.gap() + involute::of_tangent(t)) / (2.0 * PI);
    let radius = flank.radius_at(t);
    (radius * sin_turns(turns), radius * cos_turns(turns))
}

/// Halves `low..high`, where `beyond` turns from false to true.
fn halved(mut low: f64, mut high: f64, beyond: impl Fn(f64) -> bool) -> f64 {
    for _ in 0..60 {
        let middle = (low + high) / 2.0;
        if beyond(middle) { high = middle } else { low = middle }
    }
    (low + high) / 2.0
}

/// A gear-tooth caliper's jaws.
struct Jaws {
    /// Radius of the blank.
    outside: f64,
    /// How far from the wheel's centre the jaws' edges stand, along the tooth.
    level: f64,
    module: f64,
}

/// A gap that meets the jaws.
struct Met {
    /// How far it stands out from its full depth.
    above: Approx,
    per_depth: f64,
}

impl Jaws {
    fn new(trial: &Trial, height: Length) -> Result<Self, Error> {
        let outside = blank(&trial.spur, trial.outside)?;
        let level = outside - given::size(height, Field::Depth)?;
        let flank = Flank::new(&trial.spur)?;
        let module = of(trial.spur.tooth.size.module()?.mm());
        let jaws = Self { outside, level, module };
        let limits = [outside, flank.radius_at(flank.lowest())]
            .map(|radius| outside - jaws.along(&flank, flank.tangent_at(radius)).1);
        let readings = Readings { least: limits[0].max(0.0), greatest: limits[1] };
        readings.check(outside - level).map_err(|e| e.of(Field::Depth))?;
        Ok(jaws)
    }

    /// The flank's point at the tangent `t` in the frame of its tooth: across and along it.
    fn along(&self, flank: &Flank, t: f64) -> (f64, f64) {
        let turns = (flank.half - involute::of_tangent(t)) / (2.0 * PI);
        let radius = flank.radius_at(t);
        (radius * sin_turns(turns), radius * cos_turns(turns))
    }

    /// What the jaws read on a tooth whose gaps stand out by `above`.
    fn reads(&self, flank: &Flank, above: f64) -> f64 {
        let turns = 0.5 / flank.teeth;
        let (out, up) = (above * sin_turns(turns), above * cos_turns(turns));
        let (lowest, highest) = (flank.lowest(), flank.tangent_at(self.outside + self.module));
        let t = halved(lowest, highest, |t| self.along(flank, t).1 + up > self.level);
        2.0 * (self.along(flank, t).0 + out)
    }

    /// What the jaws read on the finished tooth.
    fn wanted(&self, flank: &Flank) -> Approx {
        let bound = 2.0 * ROUNDING * (self.outside + flank.summed);
        Approx { value: self.reads(flank, 0.0), bound }
    }

    /// The thickness of a tooth, an involute, that reads `read`; and how much the
    /// reading changes with it.
    fn thickness(&self, flank: &Flank, read: f64) -> Result<(Approx, f64), Error> {
        let (half, level) = (read / 2.0, self.level);
        let lowest = flank.radius_at(flank.lowest());
        // Points of the jaws' edges within the blank and on what can be a flank.
        let beyond = |radius: f64| {
            let square = (radius - level) * (radius + level);
            if square > 0.0 { 2.0 * sqrt(square) } else { 0.0 }
        };
        let gone = self.reads(&Flank { half: flank.thinnest(), ..*flank }, 0.0);
        // Nor beyond the middles of the gaps, where the next tooth's jaw would stand.
        let middles = 2.0 * level * tan_turns(0.5 / flank.teeth);
        let (least, greatest) = (beyond(lowest).max(gone), beyond(self.outside).min(middles));
        Readings { least, greatest }.check(read)?;
        let t = flank.tangent_at(sqrt(half * half + level * level));
        let turns = atan_turns(half / level);
        let value = flank.thickness_of(2.0 * PI * turns + involute::of_tangent(t));
        let change = flank.pressure.cos / cos_turns(atan_turns(t) - turns);
        Ok((Approx { value, bound: ROUNDING * (1.0 + t) * self.outside }, change))
    }

    /// How far out the gap stands whose neighbour tooth reads `read`.
    fn sunk(&self, flank: &Flank, read: f64) -> Result<Met, Error> {
        let turns = 0.5 / flank.teeth;
        let (sin, cos) = (sin_turns(turns), cos_turns(turns));
        let half = read / 2.0;
        let (lowest, highest) = (flank.lowest(), flank.tangent_at(self.outside + self.module));
        // The jaws' edges reach the end of the flanks, or the corners of the tips.
        let end = 2.0 * (self.level * sin - in_gap(flank, lowest).0) / cos;
        let tip = 2.0 * sqrt((self.outside - self.level) * (self.outside + self.level));
        let least = self.reads(flank, -self.module / 2.0).max(0.0);
        Readings { least, greatest: end.min(tip) }.check(read)?;
        let across = self.level * sin - half * cos;
        let t = halved(lowest, highest, |t| in_gap(flank, t).0 > across);
        let value = self.level * cos + half * sin - in_gap(flank, t).1;
        // The flank's slope to the gap's middle, and to the tooth's.
        let slope = atan_turns(t) + (flank.gap() + involute::of_tangent(t)) / (2.0 * PI);
        let bound = 2.0 * ROUNDING * self.outside * (1.0 + 1.0 / tan_turns(slope));
        let per_depth = 2.0 * sin_turns(slope) / cos_turns(slope - turns);
        Ok(Met { above: Approx { value, bound }, per_depth })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::gear::{Tooth, chordal};
    use crate::number::Fraction;

    fn mm(thousandths: i64) -> Length {
        Length::from_mm(Fraction::new(thousandths, 1000).unwrap())
    }

    fn trial(cutting: Cutting, check: Check) -> Trial {
        let spur = Spur { thinned: mm(50), ..Spur::new(64, Tooth::default()).unwrap() };
        Trial { spur, outside: mm(65_980), cutting, check }
    }

    const CHECKS: [Check; 3] = [
        Check::Span { teeth: 8 },
        Check::Pins { pin: Length::from_mm(Fraction::whole(2)) },
        Check::Caliper { height: Length::from_mm(Fraction::ONE) },
    ];

    #[test]
    fn nothing_is_left_where_it_reads_as_wanted() {
        for cutting in [Cutting::Form, Cutting::Generated] {
            for check in CHECKS {
                let trial = trial(cutting, check);
                let um = (wanted(&trial).unwrap().value * 1000.0).round();
                let read = |more: i64| {
                    let um = given::whole(um);
                    deeper(&trial, mm(i64::from(um) + more)).unwrap()
                };
                let (at, more) = (read(0), read(100));
                assert!(at.deeper.value.abs() < 0.001, "{trial:?}: {at:?}");
                // A tenth of a millimetre more of reading by the slope that is told.
                let slope = (more.per_depth + at.per_depth) / 2.0;
                let by_slope = 0.1 / slope;
                let off = more.deeper.value - at.deeper.value - by_slope;
                assert!(off.abs() < 2e-5, "{trial:?}: {at:?} {more:?}");
            }
        }
    }

    #[test]
    fn the_caliper_agrees_with_the_chord() {
        let wheel = Spur::new(23, Tooth::default()).unwrap();
        let outside = wheel.outside_diameter().unwrap();
        let chord = chordal::tooth(&wheel, outside).unwrap();
        let height = mm((chord.height.value * 1000.0).round() as i64);
        let check = Check::Caliper { height };
        let trial = Trial { spur: wheel, outside, cutting: Cutting::Form, check };
        let reads = wanted(&trial).unwrap().value;
        assert!((reads - chord.thickness.value).abs() < 0.0005);
    }

    #[test]
    fn readings_that_cannot_be() {
        for cutting in [Cutting::Form, Cutting::Generated] {
            for check in CHECKS {
                let trial = trial(cutting, check);
                for um in [1, 90_000] {
                    let error = deeper(&trial, mm(um)).unwrap_err();
                    assert_eq!(error.field, Field::Reading, "{trial:?}");
                    assert!(matches!(error.cause, Cause::OutOfLengths { .. }), "{trial:?}");
                }
                let zero = deeper(&trial, mm(0)).unwrap_err();
                assert_eq!(zero, Error::new(Field::Reading, Cause::Zero));
            }
        }
        let high = trial(Cutting::Form, Check::Caliper { height: mm(2_500) });
        assert_eq!(deeper(&high, mm(1_500)).unwrap_err().field, Field::Depth);
        let thin = trial(Cutting::Form, Check::Pins { pin: mm(500) });
        assert!(matches!(deeper(&thin, mm(66_000)).unwrap_err().cause, Cause::PinFalls { .. }));
        let thick = trial(Cutting::Form, Check::Pins { pin: mm(3_500) });
        assert!(matches!(deeper(&thick, mm(66_000)).unwrap_err().cause, Cause::PinRides { .. }));
    }
}
