//! Gear it: the change gears with which a lathe cuts a lead.
//!
//! Rule: for one turn of the spindle the first driver turns by the head's fixed
//! ratio, the train and a gearbox pass it on, and the lead screw moves the tool
//! by its own lead for each of its turns. So drivers ÷ driven = lead wanted ÷
//! (lead of the screw × head × gearbox) (Turning and Boring, F. D. Jones, 1914).
//! A worm by module or diametral pitch has π in its lead, so no gears are exact.
//!
//! Sense: the tool cuts a thread of the screw's own hand when screw and spindle
//! turn the same way.
use super::Hand;
use crate::bounds::{self, MAX_GEARBOX, MAX_GEARS};
use crate::error::{Cause, Error, Field};
use crate::head::{Gear, Mounting, check};
use crate::list::List;
use crate::measure::Length;
use crate::number::{Approx, Fraction, float};
use crate::train::{Found, Lacking, Search, Senses, Six, Wanted, lacking};

/// How far a thread advances in one turn.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Lead {
    /// The lead, or what π is to be multiplied by.
    pub length: Length,
    /// Whether the lead is π times the length: such a lead is never cut exactly.
    pub times_pi: bool,
}

impl Lead {
    /// The lead of a thread of `starts` grooves, `pitch` apart.
    ///
    /// # Errors
    /// [`Cause::OutOfRange`] for the starts, or in micrometres for the lead;
    /// [`Cause::Overflow`].
    pub fn of_pitch(pitch: Length, starts: u8) -> Result<Self, Error> {
        Self::of(pitch.mm(), starts, false)
    }

    /// The lead of a thread of `starts` grooves, `tpi` of them along an inch.
    ///
    /// # Errors
    /// As [`Self::of_pitch`], and [`Cause::Zero`].
    pub fn of_tpi(tpi: Fraction, starts: u8) -> Result<Self, Error> {
        Self::of(Length::from_inches(tpi.inverse()?)?.mm(), starts, false)
    }

    /// The lead of a worm of `starts` threads for a wheel of this module: π times
    /// module and starts.
    ///
    /// # Errors
    /// As [`Self::of_pitch`].
    #[doc(alias = "module worm")]
    pub fn of_module(module: Length, starts: u8) -> Result<Self, Error> {
        Self::of(module.mm(), starts, true)
    }

    /// The lead of a worm of `starts` threads for a wheel of this diametral pitch:
    /// π inches over the pitch, times the starts.
    ///
    /// # Errors
    /// As [`Self::of_pitch`], and [`Cause::Zero`].
    #[doc(alias = "DP worm")]
    pub fn of_diametral_pitch(pitch: Fraction, starts: u8) -> Result<Self, Error> {
        Self::of(Length::from_inches(pitch.inverse()?)?.mm(), starts, true)
    }

    fn of(mm: Fraction, starts: u8, times_pi: bool) -> Result<Self, Error> {
        bounds::STARTS.check(i64::from(starts))?;
        let lead = Self { length: Length::from_mm(mm.times(i64::from(starts))?), times_pi };
        lead.check()?;
        Ok(lead)
    }

    /// Checks the length against [`bounds::LEAD_UM`].
    ///
    /// # Errors
    /// [`Cause::OutOfRange`] in micrometres; [`Cause::Overflow`].
    pub fn check(&self) -> Result<(), Error> {
        super::within(bounds::LEAD_UM, self.length)
    }

    /// The lead in millimetres.
    #[must_use]
    pub fn mm(&self) -> Approx {
        let length = float::of(self.length.mm());
        let value = if self.times_pi { length * float::PI } else { length };
        Approx { value, bound: value.abs() * (2.0 * f64::EPSILON) }
    }
}

/// A lathe's way from spindle to tool.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Lathe {
    /// Lead of the lead screw.
    #[doc(alias = "leadscrew")]
    pub screw: Length,
    /// Which way the lead screw winds.
    pub screw_hand: Hand,
    /// Turns of the first driver for one turn of the spindle; 1 on most lathes.
    pub head: Fraction,
    /// Turns of the screw for one turn of the last driven gear, for each setting of
    /// a gearbox, the one it stands in first; empty without a gearbox.
    pub gearbox: List<Fraction, MAX_GEARBOX>,
    /// Change gears owned.
    pub gears: List<Gear, MAX_GEARS>,
    /// How change gears can be mounted between first driver and screw. (Which way
    /// a plate would follow is of no matter here.)
    pub mounting: Mounting,
    /// Which way the first driver turns beside the spindle: either where the head
    /// has a reverse.
    pub drive: Senses,
}

/// A lead to be cut.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Job {
    /// The lead.
    pub lead: Lead,
    /// Which way the thread winds.
    pub hand: Hand,
    /// When trains of six gears are tried.
    pub six: Six,
}

impl Lathe {
    /// Checks every value against the bounds table and against each other.
    ///
    /// # Errors
    /// The first value that is out of bounds: its field, cause and limits. No gears
    /// at all are [`Cause::Empty`], a number of teeth listed twice [`Cause::Twice`].
    pub fn check(&self) -> Result<(), Error> {
        super::within(bounds::PITCH_UM, self.screw).map_err(|e| e.of(Field::Screw))?;
        for &ratio in [self.head].iter().chain(&self.gearbox) {
            for part in [ratio.num(), ratio.den()] {
                bounds::GEARBOX_PART.check(part)?;
            }
        }
        if self.gears.is_empty() {
            return Err(Error::new(Field::Gears, Cause::Empty));
        }
        check::gears(&self.gears)?;
        check::mounting(&self.mounting)
    }

    /// The lead that `found` cuts.
    ///
    /// # Errors
    /// [`Cause::Conflict`] where the gearbox has no such setting; [`Cause::Overflow`].
    pub fn cuts(&self, found: &Found) -> Result<Length, Error> {
        let missing = Error::new(Field::Gears, Cause::Conflict);
        let setting = self.settings().nth(usize::from(found.setting)).ok_or(missing)?;
        let turns = self.head.checked_mul(setting)?.checked_mul(found.chain.ratio()?)?;
        Ok(Length::from_mm(self.screw.mm().checked_mul(turns)?))
    }

    /// What the gearbox passes on in each of its settings: all of it without one.
    fn settings(&self) -> impl Iterator<Item = Fraction> + '_ {
        let none = self.gearbox.is_empty().then_some(Fraction::ONE);
        self.gearbox.iter().copied().chain(none)
    }
}

/// Takes `search` on by about `steps` steps towards the trains for `job`; whether it
/// is done. Two and four gears take some hundred steps, six some thousand.
///
/// # Errors
/// What [`Lathe::check`] finds; [`Cause::OutOfRange`] in micrometres for a lead
/// that is longer or shorter than any train of these gears could make; as [`Search::run`].
///
/// ```
/// use handturn::head::{Mounting, gears_of};
/// use handturn::measure::Length;
/// use handturn::number::Fraction;
/// use handturn::thread::Hand;
/// use handturn::thread::gearing::{Job, Lathe, Lead, go_on};
/// use handturn::train::{Search, Senses, Six};
/// let lathe = Lathe {
///     screw: Length::from_inches(Fraction::new(1, 8)?)?,
///     screw_hand: Hand::Right,
///     head: Fraction::ONE,
///     gearbox: handturn::List::new(),
///     gears: gears_of(&[20, 30, 40, 50, 60, 127])?,
///     mounting: Mounting::default(),
///     drive: Senses::Either,
/// };
/// // M6 × 0.75 on a screw of 8 to the inch.
/// let lead = Lead::of_pitch(Length::from_mm(Fraction::new(3, 4)?), 1)?;
/// let job = Job { lead, hand: Hand::Right, six: Six::Never };
/// let mut search = Search::<4>::new();
/// while !go_on(&mut search, &job, &lathe, 10_000)? {}
/// let pair = search.best()[0].chain.pairs[0].expect("a pair");
/// assert_eq!((pair.driver, pair.driven), (30, 127));
/// assert!(search.best()[0].is_exact());
/// assert_eq!(lathe.cuts(&search.best()[0])?, lead.length);
/// # Ok::<(), handturn::Error>(())
/// ```
pub fn go_on<const CAP: usize>(
    search: &mut Search<CAP>,
    job: &Job,
    lathe: &Lathe,
    steps: u32,
) -> Result<bool, Error> {
    let ratios = ratios(job, lathe)?;
    search.run(&wanted(job, lathe, &ratios), steps)
}

/// The one gear that would make the lead exact; see [`lacking`].
///
/// ```
/// use handturn::head::{Mounting, gears_of};
/// use handturn::measure::Length;
/// use handturn::number::Fraction;
/// use handturn::thread::Hand;
/// use handturn::thread::gearing::{Job, Lathe, Lead, lacks};
/// use handturn::train::{Senses, Six};
/// let lathe = Lathe {
///     screw: Length::from_inches(Fraction::new(1, 8)?)?,
///     screw_hand: Hand::Right,
///     head: Fraction::ONE,
///     gearbox: handturn::List::new(),
///     gears: gears_of(&[20, 20, 25, 30, 35, 40, 45, 50, 55, 60, 65, 70, 75, 80])?,
///     mounting: Mounting::default(),
///     drive: Senses::Either,
/// };
/// // A metric thread on an inch screw wants a gear of 127 teeth.
/// let lead = Lead::of_pitch(Length::from_mm(Fraction::new(3, 4)?), 1)?;
/// let job = Job { lead, hand: Hand::Right, six: Six::Never };
/// assert_eq!(lacks(&job, &lathe)?.smallest.map(|(teeth, _)| teeth), Some(127));
/// // A worm has π in its lead: no gear makes it exact.
/// let worm = Job { lead: Lead::of_module(Length::from_mm(Fraction::ONE), 1)?, ..job };
/// assert_eq!(lacks(&worm, &lathe)?.smallest, None);
/// # Ok::<(), handturn::Error>(())
/// ```
///
/// # Errors
/// As [`go_on`].
pub fn lacks(job: &Job, lathe: &Lathe) -> Result<Lacking, Error> {
    let ratios = ratios(job, lathe)?;
    lacking(&wanted(job, lathe, &ratios))
}

fn wanted<'a>(job: &Job, lathe: &'a Lathe, ratios: &'a [Fraction]) -> Wanted<'a> {
    let same = job.hand == lathe.screw_hand;
    let senses = match (lathe.drive, same) {
        (Senses::Either, _) => Senses::Either,
        (Senses::Same, true) | (Senses::Against, false) => Senses::Same,
        _ => Senses::Against,
    };
    let times_pi = job.lead.times_pi;
    let (gears, mounting, six) = (&lathe.gears, lathe.mounting, job.six);
    Wanted { ratios, times_pi, gears, mounting, senses, six }
}

/// Drivers over driven wanted, for each setting of the gearbox.
fn ratios(job: &Job, lathe: &Lathe) -> Result<List<Fraction, MAX_GEARBOX>, Error> {
    lathe.check()?;
    job.lead.check()?;
    let mut ratios = List::new();
    let (mut least, mut greatest) = (None, None);
    let turn = lathe.screw.mm().checked_mul(lathe.head)?;
    for setting in lathe.settings() {
        let even = turn.checked_mul(setting)?;
        let full = |_| Error::new(Field::Gears, Cause::Conflict);
        ratios.push(job.lead.length.mm().checked_div(even)?).map_err(full)?;
        least = Some(least.map_or(even, |least: Fraction| least.min(even)));
        greatest = Some(greatest.map_or(even, |most: Fraction| most.max(even)));
    }
    if let (Some(least), Some(greatest)) = (least, greatest) {
        within_reach(job, lathe, least, greatest)?;
    }
    Ok(ratios)
}

/// A lead that even the largest gears over the smallest don't reach is refused.
fn within_reach(
    job: &Job,
    lathe: &Lathe,
    least: Fraction,
    greatest: Fraction,
) -> Result<(), Error> {
    let teeth = || lathe.gears.iter().map(|gear| i64::from(gear.teeth));
    let most = Fraction::new(teeth().max().unwrap_or(1), teeth().min().unwrap_or(1))?;
    let pairs = match (lathe.mounting.four_gears, job.six) {
        (false, _) => 1,
        (true, Six::Never) => 2,
        (true, _) => 3,
    };
    let (mut shortest, mut longest) = (least, greatest);
    for _ in 0..pairs {
        (shortest, longest) = (shortest.checked_div(most)?, longest.checked_mul(most)?);
    }
    // π is near enough to 22/7 here: the limits are wide of any train that is wanted.
    let pi = if job.lead.times_pi { Fraction::new(22, 7)? } else { Fraction::ONE };
    let lead = job.lead.length.mm().checked_mul(pi)?;
    if lead < shortest || lead > longest {
        let um = |mm: Fraction| Ok::<_, Error>(mm.times(1000)?.floor());
        let limit = |um: i64| u32::try_from(um).unwrap_or(u32::MAX);
        let (least, greatest) = (limit(um(shortest)?.saturating_add(1)), limit(um(longest)?));
        return Err(Error::new(Field::Lead, Cause::OutOfRange { least, greatest }));
    }
    Ok(())
}

#[cfg(test)]
#[path = "gearing_tests.rs"]
mod tests;
