//! Change gears between a mill's table and the dividing head, for a helix.
//!
//! Rule: with equal gears the work turns once while the table goes the lead of the
//! machine, worm ratio × lead of the table's screw (10 in for 40 : 1 and 4 to the inch).
//! The screw drives, the worm shaft is driven, and driven ÷ drivers = lead wanted ÷ lead
//! of the machine (A Practical Treatise on Milling and Milling Machines, 1914, pp. 61
//! to 63). For short leads the spindle is geared direct, its worm out: the lead of the
//! machine is then the screw's own.
//!
//! Read from the worm shaft to the screw, the same train is a lathe's: so the search is
//! that of [`thread::gearing`](crate::thread::gearing).
//!
//! While the table is geared to the head its gears are in use, so nothing can be divided
//! by differential; and the plate turns with them, so neither back pin nor body can
//! hold it: see [`divides`].
use super::slant::{Slant, UNIT};
use super::{Helical, Size};
use crate::bounds::{self, MAX_GEARS};
use crate::divide::Kind;
use crate::error::{Cause, Error, Field};
use crate::head::{Gear, Mounting};
use crate::list::List;
use crate::measure::given;
use crate::measure::{ARCSEC_PER_TURN, Angle, Length};
use crate::number::{
    Approx, Fraction,
    float::{self, PI, atan_turns, of},
    nearest_with,
};
use crate::thread::Hand;
use crate::thread::gearing::{self, Lathe, Lead};
use crate::train::{Chain, Found, Lacking, Pair, Search, Senses, Six, led_by};

/// A mill's table and the dividing head on it.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Mill {
    /// Lead of the table's screw.
    pub screw: Length,
    /// Turns of the worm shaft for one turn of the work; 40 for a 40 : 1 worm.
    pub ratio: Fraction,
    /// Change gears owned.
    pub gears: List<Gear, MAX_GEARS>,
    /// How change gears can be mounted between screw and worm shaft. (Which way a
    /// plate would follow is of no matter here.)
    pub mounting: Mounting,
    /// Which hand a train cuts whose last gear turns the same way as its first: four
    /// gears without an idler, or two with one. Right on most.
    pub same_way_cuts: Hand,
}

/// What the last gear sits on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Geared {
    /// The worm shaft, which turns the plate, its pin and so the worm.
    Worm,
    /// The spindle itself, the worm out of mesh: for short leads.
    Spindle,
}

/// A helix to be cut.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Helix {
    /// As a drawing gives it: only such a lead can be cut exactly.
    Lead {
        /// The lead.
        lead: Length,
        /// Diameter at which it is looked at.
        diameter: Length,
    },
    /// That of a helical wheel, with π and a sine in its lead.
    Wheel {
        /// How many teeth.
        teeth: u32,
        /// Size of its teeth, in the section square to them.
        size: Size,
        /// Helix angle.
        helix: Angle,
    },
}

/// A helix and how it is to be cut.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Job {
    /// The helix.
    pub helix: Helix,
    /// Which way it winds.
    pub hand: Hand,
    /// How many grooves it has.
    pub grooves: u32,
    /// How far they go along the axis.
    pub face: Length,
    /// What is geared.
    pub geared: Geared,
    /// When trains of six gears are tried.
    pub six: Six,
}

/// What a train cuts.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cuts {
    /// The gears from the screw on, which drives; the last driven gear sits on worm shaft
    /// or spindle.
    pub chain: Chain,
    /// Whether it cuts just the lead that was given: never that of a wheel.
    pub exact: bool,
    /// The lead it cuts.
    pub lead: Length,
    /// By how many millimetres it is longer than wanted; below nought shorter.
    pub off: Approx,
    /// The same in parts of a million.
    pub off_ppm: Approx,
    /// By how many arc-seconds the helix angle is greater than wanted.
    pub off_arcsec: Approx,
    /// By how many millimetres a groove has gone astray round the diameter at the end
    /// of the face, the way it winds.
    pub off_over_face: Approx,
    /// With the spindle geared: by how many teeth the gear on it is moved on from groove
    /// to groove, where that is a whole number. Nothing else divides.
    pub teeth_on: Option<u32>,
}

impl Job {
    /// The job of cutting a wheel.
    #[must_use]
    pub fn of(wheel: &Helical, geared: Geared, six: Six) -> Self {
        let Helical { teeth, helix, hand, face, tooth } = *wheel;
        let helix = Helix::Wheel { teeth, size: tooth.size, helix };
        Self { helix, hand, grooves: teeth, face, geared, six }
    }
}

/// A helix as floats, in millimetres.
struct Measured {
    lead: f64,
    /// Tangent of the helix angle, at the diameter looked at.
    tangent: f64,
    /// How far off both may be, in units of rounding.
    units: f64,
}

impl Helix {
    fn measured(&self) -> Result<Measured, Error> {
        match *self {
            Self::Lead { lead, diameter } => {
                let lead = given::size(lead, Field::Lead)?;
                let tangent = PI * given::size(diameter, Field::Diameter)? / lead;
                Ok(Measured { lead, tangent, units: 4.0 })
            }
            Self::Wheel { teeth, size, helix } => {
                bounds::WHEEL_TEETH.check(i64::from(teeth))?;
                size.check()?;
                let slant = Slant::of(helix, bounds::HELIX)?;
                let straight = of(size.times(Fraction::whole(i64::from(teeth)))?.mm());
                let lead = PI * straight / slant.sin;
                Ok(Measured { lead, tangent: slant.tan(), units: slant.units + 4.0 })
            }
        }
    }
}

impl Mill {
    /// The lead that equal gears cut.
    ///
    /// # Errors
    /// A screw or ratio out of bounds; [`Cause::Overflow`].
    pub fn lead(&self, geared: Geared) -> Result<Length, Error> {
        let screw = Lead { length: self.screw, times_pi: false };
        screw.check().map_err(|e| e.of(Field::Table))?;
        for part in [self.ratio.num(), self.ratio.den()] {
            bounds::RATIO_PART.check(part)?;
        }
        Ok(Length::from_mm(self.screw.mm().checked_mul(self.turns(geared))?))
    }

    /// What `found` cuts, its gears counted from the screw.
    ///
    /// # Errors
    /// Values out of bounds; [`Cause::Overflow`].
    pub fn cuts(&self, job: &Job, found: &Found) -> Result<Cuts, Error> {
        let measured = job.helix.measured()?;
        let face = given::size(job.face, Field::Face)?;
        let ratio = found.chain.ratio()?;
        let lead = Length::from_mm(self.lead(job.geared)?.mm().checked_mul(ratio)?);
        // By what part the lead is too long, and how far off that may be.
        let (off, slack) = match job.helix {
            Helix::Lead { lead: wanted, .. } => {
                let off = of(lead.mm().checked_sub(wanted.mm())?.checked_div(wanted.mm())?);
                (off, off.abs() * UNIT)
            }
            Helix::Wheel { .. } => {
                let off = (of(lead.mm()) - measured.lead) / measured.lead;
                (off, (9.0 + off.abs() * 8.0) * UNIT)
            }
        };
        let times = |factor: f64| Approx {
            value: off * factor,
            bound: factor * (slack + off.abs() * 8.0 * UNIT),
        };
        // tan β' − tan β, and from it the angle between both.
        let (tangent, longer) = (measured.tangent, 1.0 + off);
        let step = -tangent * off / longer;
        let slack =
            tangent * slack / (longer * longer) + step.abs() * (measured.units + 6.0) * UNIT;
        let square = 1.0 + tangent * (tangent + step);
        let per_turn = of(Fraction::whole(ARCSEC_PER_TURN));
        let units = 2.0 * measured.units + 12.0;
        let arcsec = per_turn * atan_turns(step / square);
        let exact = found.is_exact() && matches!(job.helix, Helix::Lead { .. });
        let (chain, teeth_on) = self.divided(job, &found.chain);
        Ok(Cuts {
            chain: from_the_screw(&chain),
            exact,
            lead,
            off: times(measured.lead),
            off_ppm: times(1e6),
            off_arcsec: Approx {
                value: arcsec,
                bound: per_turn / (2.0 * PI) * slack / square + arcsec.abs() * units * UNIT,
            },
            off_over_face: Approx {
                value: face * step,
                bound: face * (slack + step.abs() * 2.0 * UNIT),
            },
            teeth_on,
        })
    }

    /// The train with such a gear on the spindle as divides, where its gears have one and
    /// can be mounted so, and by how many teeth it is moved on.
    fn divided(&self, job: &Job, chain: &Chain) -> (Chain, Option<u32>) {
        let first = chain.pairs().next().map(|pair| pair.driver);
        let others = chain.pairs().map(|pair| pair.driver);
        for teeth in first.into_iter().chain(others).filter(|_| job.geared == Geared::Spindle) {
            let whole = u32::from(teeth).checked_rem(job.grooves) == Some(0);
            let led = if first == Some(teeth) {
                Some(*chain)
            } else {
                led_by(&self.gears, &self.mounting, chain, teeth)
            };
            if let Some(chain) = led.filter(|_| whole) {
                return (chain, u32::from(teeth).checked_div(job.grooves));
            }
        }
        (*chain, None)
    }

    fn turns(&self, geared: Geared) -> Fraction {
        match geared {
            Geared::Worm => self.ratio,
            Geared::Spindle => Fraction::ONE,
        }
    }

    /// The train read from worm shaft to screw, as a lathe's from spindle to screw.
    fn lathe(&self, geared: Geared) -> Lathe {
        Lathe {
            screw: self.screw,
            screw_hand: self.same_way_cuts,
            head: self.turns(geared),
            gearbox: List::new(),
            gears: self.gears.clone(),
            mounting: self.mounting,
            drive: Senses::Same,
        }
    }

    fn as_thread(&self, job: &Job) -> Result<gearing::Job, Error> {
        bounds::GROOVES.check(i64::from(job.grooves))?;
        given::size(job.face, Field::Face)?;
        let length = match job.helix {
            Helix::Lead { lead, .. } => lead,
            Helix::Wheel { .. } => nearest_lead(self.lead(job.geared)?, &job.helix.measured()?)?,
        };
        let lead = Lead { length, times_pi: false };
        Ok(gearing::Job { lead, hand: job.hand, six: job.six })
    }
}

/// The lead of a wheel as a fraction of the machine's that is right to one part in 10^9
/// or better: enough to rank trains by.
fn nearest_lead(machine: Length, measured: &Measured) -> Result<Length, Error> {
    const PER: i64 = 1 << 40;
    const MOST: i64 = 1 << 20;
    let far = Error::new(Field::Lead, Cause::Overflow);
    let share = float::nearest(measured.lead / of(machine.mm()), PER).ok_or(far)?;
    let share = nearest_with(share, MOST)?.fraction;
    Ok(Length::from_mm(machine.mm().checked_mul(share).map_err(|e| e.of(Field::Lead))?))
}

/// The same gears counted from the other end: what drove is driven.
fn from_the_screw(chain: &Chain) -> Chain {
    let turned = |pair: Pair| Pair { driver: pair.driven, driven: pair.driver };
    let [a, b, c] = chain.pairs.map(|pair| pair.map(turned));
    let (pairs, last) = match (b, c) {
        (None, _) => ([a, None, None], 0),
        (_, None) => ([b, a, None], 1),
        _ => ([c, b, a], 2),
    };
    let [near, far] = chain.idlers;
    let idlers = if far.is_some() { [far, near] } else { [near, None] };
    let idlers_in = if near.is_some() { u8::saturating_sub(last, chain.idlers_in) } else { 0 };
    Chain { pairs, idlers, idlers_in }
}

/// Whether a way of dividing works while the table is geared to the worm shaft: the pin
/// goes on over a plate that stands still between cuts. A direct plate wants the worm
/// out, a second pin, a fine dial and the handwheel's dial want a plate that the body
/// holds, and differential wants the gears that are in use.
#[must_use]
pub const fn divides(kind: Kind) -> bool {
    matches!(kind, Kind::Plain | Kind::NearestHole)
}

/// Takes `search` on by about `steps` steps towards the trains for `job`; whether it
/// is done. Each train is then read by [`Mill::cuts`].
///
/// # Errors
/// Values out of bounds; [`Cause::OutOfRange`] in micrometres for a lead that is longer
/// or shorter than any train of these gears could make; as [`Search::run`].
///
/// ```
/// use handturn::gear::table::{Geared, Helix, Job, Mill, go_on};
/// use handturn::head::{GEARS, Mounting, gears_of};
/// use handturn::measure::Length;
/// use handturn::number::Fraction;
/// use handturn::thread::Hand;
/// use handturn::train::{Search, Six};
/// // 40 : 1 and a screw of 4 to the inch: 10 in. Wanted 27 in, right-handed.
/// let inches = |n, d| Length::from_inches(Fraction::new(n, d)?);
/// let mill = Mill {
///     screw: inches(1, 4)?,
///     ratio: Fraction::whole(40),
///     gears: gears_of(&GEARS)?,
///     mounting: Mounting::default(),
///     same_way_cuts: Hand::Right,
/// };
/// let helix = Helix::Lead { lead: inches(27, 1)?, diameter: inches(2, 1)? };
/// let (hand, six, geared) = (Hand::Right, Six::Never, Geared::Worm);
/// let job = Job { helix, hand, grooves: 8, face: inches(3, 1)?, geared, six };
/// let mut search = Search::<4>::new();
/// while !go_on(&mut search, &job, &mill, 10_000)? {}
/// let cuts = mill.cuts(&job, &search.best()[0])?;
/// assert!(cuts.exact && cuts.lead == inches(27, 1)?);
/// assert_eq!(cuts.chain.ratio()?, Fraction::new(10, 27)?);
/// assert_eq!(cuts.chain.same_way(), true);
/// # Ok::<(), handturn::Error>(())
/// ```
pub fn go_on<const CAP: usize>(
    search: &mut Search<CAP>,
    job: &Job,
    mill: &Mill,
    steps: u32,
) -> Result<bool, Error> {
    let thread = mill.as_thread(job)?;
    gearing::go_on(search, &thread, &mill.lathe(job.geared), steps).map_err(as_the_mill_says)
}

/// The one gear that would make a lead exact that a drawing gives; see
/// [`gearing::lacks`]. Nothing for a wheel's.
///
/// # Errors
/// As [`go_on`].
pub fn lacks(job: &Job, mill: &Mill) -> Result<Lacking, Error> {
    let thread = mill.as_thread(job)?;
    if matches!(job.helix, Helix::Wheel { .. }) {
        return Ok(Lacking::default());
    }
    gearing::lacks(&thread, &mill.lathe(job.geared)).map_err(as_the_mill_says)
}

/// A lathe's screw is the table's here, what its head passes on the worm's ratio.
fn as_the_mill_says(error: Error) -> Error {
    match error.field {
        Field::Screw => error.of(Field::Table),
        Field::Gearbox => error.of(Field::Ratio),
        _ => error,
    }
}

#[cfg(test)]
#[path = "table_tests.rs"]
mod tests;
