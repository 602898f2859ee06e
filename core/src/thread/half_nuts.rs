//! When half nuts may close: which marks of the thread dial serve, or that they must
//! stay closed.
//!
//! Method, all in whole numbers. While the nuts are open the dial's gear, in mesh with
//! the lead screw, counts how many of the screw's threads pass: n, whole whenever the
//! nuts can close. The tool meets its groove again when n·(screw's lead ÷ thread's
//! lead) is whole, so with that ratio reduced to u/v, whenever v divides n. One mark
//! of M on a gear of G teeth stands for G/M threads of the screw. The tool must meet
//! its own start of several, so it is the lead that counts, not the pitch.
//!
//! ```
//! use handturn::measure::Length;
//! use handturn::number::Fraction;
//! use handturn::thread::half_nuts::{Closing, ThreadDial, closing};
//! // A screw of 8 to the inch; the dial has 32 teeth, 8 marks, every second numbered.
//! let dial = ThreadDial { teeth: 32, marks: 8, numbered: 4 };
//! let tpi = |num, den| Fraction::new(den, num).and_then(Length::from_inches);
//! let on = |lead| closing(lead, tpi(8, 1)?, dial);
//! assert_eq!(on(tpi(16, 1)?)?, Closing::Anywhere);
//! assert_eq!(on(tpi(20, 1)?)?, Closing::EveryMark);
//! assert_eq!(on(tpi(13, 1)?)?, Closing::EveryNumbered);
//! assert_eq!(on(tpi(23, 2)?)?, Closing::EveryNth { marks: 4 });
//! assert_eq!(on(tpi(13, 4)?)?, Closing::SameMark);
//! // A metric thread on the same lathe: the nuts stay closed.
//! assert_eq!(on(Length::from_mm(Fraction::new(3, 2)?))?, Closing::Never { threads: 60 });
//! # Ok::<(), handturn::Error>(())
//! ```
use super::given::size;
use crate::bounds::THREAD_DIAL;
use crate::error::{Cause, Error, Field};
use crate::measure::Length;
use crate::number::{gcd, lcm};

/// A thread dial; its marks are spaced evenly.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
#[doc(alias = "chasing dial")]
pub struct ThreadDial {
    /// Teeth of the gear that runs on the lead screw.
    pub teeth: u32,
    /// Marks, numbered or not.
    pub marks: u32,
    /// How many of them carry a number, evenly spaced.
    pub numbered: u32,
}

/// When the half nuts may close again.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Closing {
    /// Wherever they close: no dial is needed.
    Anywhere,
    /// At every mark.
    EveryMark,
    /// At every numbered mark, once the first pass was begun at one.
    EveryNumbered,
    /// At every so-manieth mark from the one the first pass was begun at.
    EveryNth {
        /// That many marks on.
        marks: u32,
    },
    /// Only at the mark the first pass was begun at.
    SameMark,
    /// At no mark with certainty: they stay closed, and the spindle is reversed with
    /// the tool drawn out.
    Never {
        /// Threads of the screw after which thread and screw meet again: a dial gear
        /// of a multiple of that many teeth would do.
        threads: u32,
    },
}

const OVERFLOW: Error = Error::new(Field::ThreadDial, Cause::Overflow);

impl ThreadDial {
    fn check(self) -> Result<(), Error> {
        for count in [self.teeth, self.marks, self.numbered] {
            THREAD_DIAL.check(i64::from(count))?;
        }
        // A mark must stand for a whole number of the screw's threads, and the
        // numbered ones be spread evenly, or no mark means anything.
        let even = |whole: u32, part: u32| whole.checked_rem(part) == Some(0);
        if !even(self.teeth, self.marks) {
            return Err(Error::new(Field::ThreadDial, Cause::NotMultiple { of: self.marks }));
        }
        if !even(self.marks, self.numbered) {
            return Err(Error::new(Field::ThreadDial, Cause::NotMultiple { of: self.numbered }));
        }
        Ok(())
    }
}

/// Threads of a screw of `screw` lead that pass until it meets a thread of `lead` again.
fn threads(lead: Length, screw: Length) -> Result<u64, Error> {
    size(lead, Field::Pitch)?;
    size(screw, Field::Pitch)?;
    let ratio = screw.mm().checked_div(lead.mm()).map_err(|e| e.of(Field::Pitch))?;
    u64::try_from(ratio.den()).map_err(|_| OVERFLOW)
}

/// When the half nuts may close again while a thread of `lead` (all its starts) is cut
/// with a single-start screw of lead `screw`.
///
/// # Errors
/// A lead or a dial out of bounds; a dial whose teeth are no multiple of its marks, or
/// whose marks are no multiple of the numbered ones ([`Cause::NotMultiple`]).
pub fn closing(lead: Length, screw: Length, dial: ThreadDial) -> Result<Closing, Error> {
    dial.check()?;
    let threads = threads(lead, screw)?;
    if threads == 1 {
        return Ok(Closing::Anywhere);
    }
    let (teeth, marks) = (u64::from(dial.teeth), u64::from(dial.marks));
    if teeth.checked_rem(threads) != Some(0) {
        let threads = u32::try_from(threads).map_err(|_| OVERFLOW)?;
        return Ok(Closing::Never { threads });
    }
    // The fewest marks whose threads are a multiple of the meeting.
    let a_mark = teeth.checked_div(marks).ok_or(OVERFLOW)?;
    let on = lcm(a_mark, threads).and_then(|all| all.checked_div(a_mark)).ok_or(OVERFLOW)?;
    let a_number = marks.checked_div(u64::from(dial.numbered)).ok_or(OVERFLOW)?;
    Ok(match on {
        1 => Closing::EveryMark,
        _ if on == marks => Closing::SameMark,
        _ if on == a_number => Closing::EveryNumbered,
        _ => Closing::EveryNth { marks: u32::try_from(on).map_err(|_| OVERFLOW)? },
    })
}

/// Whether the nuts may close `marks` marks after the one the first pass was begun at,
/// in whatever turn of the dial.
///
/// # Errors
/// As [`closing`].
pub fn closes(lead: Length, screw: Length, dial: ThreadDial, marks: u32) -> Result<bool, Error> {
    let every = match closing(lead, screw, dial)? {
        Closing::Anywhere | Closing::EveryMark => 1,
        Closing::EveryNumbered => dial.marks.checked_div(dial.numbered).ok_or(OVERFLOW)?,
        Closing::EveryNth { marks } => marks,
        Closing::SameMark => dial.marks,
        Closing::Never { .. } => return Ok(false),
    };
    Ok(marks.checked_rem(every) == Some(0))
}

/// Of dial gears with `gears` teeth, those kept that bring the thread round to its own
/// mark: the first of them; `None` where none does.
///
/// # Errors
/// A lead out of bounds.
pub fn dial_gear(lead: Length, screw: Length, gears: &[u32]) -> Result<Option<u32>, Error> {
    let threads = threads(lead, screw)?;
    let serves = |teeth: &&u32| gcd(u64::from(**teeth), threads) == threads;
    Ok(gears.iter().find(|teeth| **teeth > 0 && serves(teeth)).copied())
}
