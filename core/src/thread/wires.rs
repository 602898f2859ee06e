//! Measuring a thread over wires: which wire, what it reads, and what a reading means.
//!
//! Method: where the wire rests is solved exactly (see the head of `contact.rs`),
//! so no formula's limit of lead angle applies. Beside it stand the formulas people
//! check by hand: M = E − (s/tan a) + W·(1 + 1/sin a) for a groove of width s at the
//! pitch diameter (H28, ASME B1.2), and its lead-angle term
//! (W/2)·tan² λ·cos a·cot a with tan λ = L/πE.
//!
//! The usable range is that of this thread: at the least pitch diameter and the
//! greatest outside the wire stands proud of the crests and does not rest in the
//! root; at the greatest pitch diameter and the least outside it still touches the
//! flanks. For basic 60° threads this gives the 0.505 P and 1.010 P of H28.
//!
//! ```
//! use handturn::measure::{Angle, Length};
//! use handturn::number::Fraction;
//! use handturn::thread::wires::{self, Measured};
//! // M10x1.5, 6g, over a 0.9 mm drill shank: the reading at the middle of the limits.
//! let mm = |thousandths| Fraction::new(thousandths, 1000).map(Length::from_mm);
//! let thread = Measured {
//!     half_angle: Angle::from_degrees(Fraction::whole(30))?,
//!     pitch: mm(1500)?, starts: 1, space: mm(750)?,
//!     pitch_least: mm(8862)?, pitch_greatest: mm(8994)?,
//!     outside_least: mm(9732)?, outside_greatest: mm(9968)?,
//!     crest: mm(0)?, root: mm(8344)?,
//! };
//! let over = wires::over(&thread, mm(900)?, mm(8928)?)?;
//! assert!((over.three.value - 10.331).abs() < 0.001);
//! // At the machine 10.412 is read: how far the pitch diameter still stands over.
//! let now = wires::pitch_diameter(&thread, mm(900)?, mm(10412)?)?;
//! assert!((now.value - 9.009).abs() < 0.001);
//! # Ok::<(), handturn::Error>(())
//! ```
use super::contact::{Contact, Groove};
use super::given::{self, size, um_down, um_up};
use crate::error::{Cause, Error, Field};
use crate::measure::{Angle, Length};
use crate::number::{
    Approx,
    float::{PI, atan_turns, of, sin_turns, tan_turns},
};

/// Least half angle at which a wire finds a place between the flanks, in degrees.
const LEAST_HALF_ANGLE: u32 = 5;
/// Steepest lead angle at the pitch diameter that is measured: its tangent (45°).
const STEEPEST: f64 = 1.0;
/// Rounding of the float arithmetic, relative to the size.
const ROUNDING: f64 = 1e-13;

/// An external thread to be measured.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Measured {
    /// Half the angle between the flanks, from 5°.
    pub half_angle: Angle,
    /// From one thread to the next.
    pub pitch: Length,
    /// Starts: the lead is as many pitches.
    pub starts: u32,
    /// Width of the groove at the pitch diameter, along the axis: half the pitch,
    /// unless the drawing gives the thread another thickness.
    pub space: Length,
    /// Least pitch diameter (effective).
    pub pitch_least: Length,
    /// Greatest pitch diameter (effective).
    pub pitch_greatest: Length,
    /// Least outside (major) diameter.
    pub outside_least: Length,
    /// Greatest outside (major) diameter.
    pub outside_greatest: Length,
    /// How far below the outside the straight flank ends: nought for a flat crest,
    /// the height of the rounding for a round one.
    pub crest: Length,
    /// Greatest diameter at which the straight flank begins above the root.
    pub root: Length,
}

/// Wires that can be used, in millimetres.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Range {
    /// Thinner ones sink below the crests or rest in the root.
    pub least: Approx,
    /// Thicker ones ride on the crests.
    pub greatest: Approx,
    /// Whether it is the root, not the crests, that sets the least.
    pub by_root: bool,
}

/// What wires read on a thread; lengths in millimetres.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Over {
    /// Over three wires, or two on opposite sides between flat anvils: exact contact.
    pub three: Approx,
    /// The formula without the lead-angle term.
    pub formula: Approx,
    /// The lead-angle term, to be added to the formula.
    pub lead_term: Approx,
    /// Diameter of the thread at which the wires touch.
    pub touches: Approx,
    /// Diameter over the wires less that over the crests: how far they stand proud.
    pub proud: Approx,
}

impl Over {
    /// Whether the formula with its lead-angle term is within a micrometre of the truth.
    #[must_use]
    pub fn formula_will_do(&self) -> bool {
        (self.formula.value + self.lead_term.value - self.three.value).abs() <= 0.001
    }
}

/// A thread whose values were checked, in millimetres.
struct Checked {
    half_angle: f64,
    pitch: f64,
    lead: f64,
    space: f64,
    pitch_least: f64,
    pitch_greatest: f64,
    outside_least: f64,
    outside_greatest: f64,
    crest: f64,
    root: f64,
}

impl Checked {
    fn new(thread: &Measured) -> Result<Self, Error> {
        let lead = given::lead(thread.pitch, thread.starts)?;
        let clash = |field| Error::new(field, Cause::Conflict);
        if thread.pitch_least > thread.pitch_greatest
            || thread.outside_least > thread.outside_greatest
            || thread.pitch_greatest >= thread.outside_greatest
            || thread.root >= thread.pitch_least
        {
            return Err(clash(Field::Diameter));
        }
        if thread.space >= thread.pitch {
            return Err(clash(Field::Pitch));
        }
        let diameter = |length| size(length, Field::Diameter);
        let checked = Self {
            half_angle: given::half_angle(thread.half_angle, LEAST_HALF_ANGLE)?,
            pitch: of(thread.pitch.mm()),
            lead: of(lead.mm()),
            space: size(thread.space, Field::Pitch)?,
            pitch_least: diameter(thread.pitch_least)?,
            pitch_greatest: diameter(thread.pitch_greatest)?,
            outside_least: diameter(thread.outside_least)?,
            outside_greatest: diameter(thread.outside_greatest)?,
            crest: given::from_nought(thread.crest, Field::Diameter)?,
            root: given::from_nought(thread.root, Field::Diameter)?,
        };
        if checked.lead > STEEPEST * PI * checked.pitch_least {
            return Err(clash(Field::Starts));
        }
        Ok(checked)
    }

    fn groove(&self, pitch_diameter: f64) -> Groove {
        Groove::new(self.half_angle, self.space, self.lead, pitch_diameter)
    }

    /// The usable range for pitch diameters from `least` to `greatest`.
    fn range(&self, least: f64, greatest: f64) -> Result<Range, Error> {
        let deep = self.groove(least);
        let proud = deep.flush(self.outside_greatest / 2.0).ok_or(NOWHERE)?;
        let floor = if self.root > 0.0 { deep.touching(self.root / 2.0) } else { None };
        let edge = self.outside_least / 2.0 - self.crest;
        let greatest = self.groove(greatest).touching(edge).ok_or(NOWHERE)?;
        let floor = floor.filter(|floor| floor.wire > proud.wire);
        let range = Range {
            least: near(2.0 * floor.unwrap_or(proud).wire, floor.unwrap_or(proud)),
            greatest: near(2.0 * greatest.wire, greatest),
            by_root: floor.is_some(),
        };
        if range.least.value > range.greatest.value {
            return Err(Error::new(Field::Wire, Cause::Conflict));
        }
        Ok(range)
    }

    /// `wire` at rest at `pitch_diameter`, within the usable range there.
    fn rest(&self, wire: f64, pitch_diameter: f64) -> Result<Contact, Error> {
        self.range(pitch_diameter, pitch_diameter)?.check(wire)?;
        let groove = self.groove(pitch_diameter);
        let at = groove.rest(wire / 2.0).ok_or(NOWHERE)?;
        let edge = self.outside_least / 2.0 - self.crest;
        if groove.clears(&at, edge) { Ok(at) } else { Err(NOWHERE) }
    }
}

/// No place on both flanks, or none that the crests' edges leave free.
const NOWHERE: Error = Error::new(Field::Wire, Cause::Conflict);

/// `value` with the bound of a contact that was solved in millimetres.
fn near(value: f64, contact: Contact) -> Approx {
    let size = contact.centre + contact.wire + contact.touches;
    Approx { value, bound: ROUNDING * size + 8.0 * contact.moved }
}

/// `value` with the rounding of some operations on numbers of `size`.
fn rounded(value: f64, size: f64) -> Approx {
    Approx { value, bound: 8.0 * f64::EPSILON * size }
}

impl Range {
    /// `wire`, in millimetres, when it lies within the range.
    ///
    /// # Errors
    /// [`Cause::WireSinks`], [`Cause::WireRests`] or [`Cause::WireRides`], each with
    /// the range in whole micrometres, rounded inwards.
    pub fn check(&self, wire: f64) -> Result<(), Error> {
        let (least_um, greatest_um) = (um_up(self.least.value), um_down(self.greatest.value));
        let cause = if wire > self.greatest.value {
            Cause::WireRides { least_um, greatest_um }
        } else if wire >= self.least.value {
            return Ok(());
        } else if self.by_root {
            Cause::WireRests { least_um, greatest_um }
        } else {
            Cause::WireSinks { least_um, greatest_um }
        };
        Err(Error::new(Field::Wire, cause))
    }
}

/// The best wire in millimetres, P ÷ (2·cos a): it touches straight grooves at the
/// pitch line, so that an error of the flank angle hardly enters.
///
/// # Errors
/// A pitch or half angle out of bounds.
#[doc(alias = "best size wire")]
pub fn best(half_angle: Angle, pitch: Length) -> Result<Approx, Error> {
    let half_angle = given::half_angle(half_angle, 0)?;
    let pitch = size(pitch, Field::Pitch)?;
    let value = pitch / 2.0 / sin_turns(0.25 - half_angle);
    Ok(rounded(value, value))
}

/// The wire, in millimetres, that touches at the pitch line when the lead angle is
/// counted, at the greatest pitch diameter.
///
/// # Errors
/// As [`range`].
pub fn best_with_lead(thread: &Measured) -> Result<Approx, Error> {
    let checked = Checked::new(thread)?;
    let diameter = checked.pitch_greatest;
    let contact = checked.groove(diameter).touching(diameter / 2.0).ok_or(NOWHERE)?;
    Ok(near(2.0 * contact.wire, contact))
}

/// The wires that can be used anywhere within the thread's limits.
///
/// # Errors
/// Lengths or angle out of bounds; [`Cause::Conflict`] where diameters contradict
/// each other, where the lead angle exceeds 45°, or where no wire serves at both ends
/// of the limits.
pub fn range(thread: &Measured) -> Result<Range, Error> {
    let checked = Checked::new(thread)?;
    checked.range(checked.pitch_least, checked.pitch_greatest)
}

/// Which of `owned` (wires, needles, drill shanks) to take: of those in the usable
/// range the one nearest to the best wire, the thinner of two as near; `None` where
/// none serves.
///
/// # Errors
/// As [`range`].
pub fn choose(thread: &Measured, owned: &[Length]) -> Result<Option<Length>, Error> {
    let range = range(thread)?;
    let best = best(thread.half_angle, thread.pitch)?.value;
    let mut chosen: Option<(f64, Length)> = None;
    for &wire in owned {
        let mm = size(wire, Field::Wire)?;
        if range.check(mm).is_err() {
            continue;
        }
        let off = (mm - best).abs();
        let nearer = |(least, than): (f64, Length)| off < least || (off <= least && wire < than);
        if chosen.is_none_or(nearer) {
            chosen = Some((off, wire));
        }
    }
    Ok(chosen.map(|(_, wire)| wire))
}

/// What `wire` reads on `thread` when its pitch diameter is `pitch_diameter`.
///
/// # Errors
/// As [`range`]; a wire that sinks, rides or rests in the root at that pitch
/// diameter, with the range that serves there; [`Cause::Conflict`] on the wire where
/// the thread is so steep and tall that a straight wire lies on the crests' edges
/// before and behind: a thicker one may serve.
pub fn over(thread: &Measured, wire: Length, pitch_diameter: Length) -> Result<Over, Error> {
    let checked = Checked::new(thread)?;
    let wire = size(wire, Field::Wire)?;
    let diameter = size(pitch_diameter, Field::Diameter)?;
    let at = checked.rest(wire, diameter)?;
    let (sin, tan) = (sin_turns(checked.half_angle), tan_turns(checked.half_angle));
    let formula = diameter - checked.space / tan + wire * (1.0 + 1.0 / sin);
    let tan_lead = checked.lead / (PI * diameter);
    let lead_term = wire / 2.0 * tan_lead * tan_lead * sin / tan / tan;
    let three = 2.0 * at.centre + wire;
    Ok(Over {
        three: near(three, at),
        formula: rounded(formula, diameter + checked.space / tan + wire / sin),
        lead_term: rounded(lead_term, lead_term),
        touches: near(2.0 * at.touches, at),
        proud: near(three - checked.outside_greatest, at),
    })
}

/// Over one wire and the crests opposite, in millimetres: half of what three wires
/// read and of the outside as measured on this very thread.
///
/// # Errors
/// As [`over`], and an outside out of bounds.
pub fn over_one(
    thread: &Measured,
    wire: Length,
    pitch_diameter: Length,
    outside: Length,
) -> Result<Approx, Error> {
    let three = over(thread, wire, pitch_diameter)?.three;
    let outside = size(outside, Field::Diameter)?;
    Ok(Approx { value: (three.value + outside) / 2.0, bound: three.bound })
}

/// The pitch diameter, in millimetres, at which three of `wire` read `reading`.
/// Method: the reading grows nearly as the pitch diameter does, so its error is taken
/// off until nothing is left.
///
/// # Errors
/// As [`range`], a reading no thread of this form can give ([`Cause::Conflict`] on the
/// diameter), and a wire that sinks, rides or rests in the root at what was read.
pub fn pitch_diameter(thread: &Measured, wire: Length, reading: Length) -> Result<Approx, Error> {
    let checked = Checked::new(thread)?;
    let wire = size(wire, Field::Wire)?;
    let reading = size(reading, Field::Diameter)?;
    let absurd = Error::new(Field::Diameter, Cause::Conflict);
    let (sin, tan) = (sin_turns(checked.half_angle), tan_turns(checked.half_angle));
    let mut diameter = reading + checked.space / tan - wire * (1.0 + 1.0 / sin);
    for _ in 0..50 {
        if diameter.is_nan() || diameter <= checked.pitch {
            return Err(absurd);
        }
        let at = checked.groove(diameter).rest(wire / 2.0).ok_or(absurd)?;
        let off = 2.0 * at.centre + wire - reading;
        if off.abs() <= ROUNDING * diameter {
            checked.rest(wire, diameter)?;
            let found = near(diameter, at);
            return Ok(Approx { bound: found.bound + 2.0 * off.abs(), ..found });
        }
        diameter -= off;
    }
    Err(absurd)
}

/// One wire touching the form: the angle at which it lies, from square across the
/// axis, in degrees; for a drawing or a check by eye.
///
/// # Errors
/// As [`over`].
pub fn slant(thread: &Measured, wire: Length, pitch_diameter: Length) -> Result<Approx, Error> {
    let checked = Checked::new(thread)?;
    let wire = size(wire, Field::Wire)?;
    let at = checked.rest(wire, size(pitch_diameter, Field::Diameter)?)?;
    let value = 360.0 * atan_turns(checked.lead / (2.0 * PI * at.centre));
    Ok(Approx { value, bound: value * ROUNDING })
}

#[cfg(test)]
mod tests;
