//! Passes of about the same metal each, as readings of the slide's own dial.
//!
//! Method: the depth is a whole number of the dial's marks, and so is every pass; what
//! rounding leaves is told, and the passes' sum is exact. At depth c a nose of flat f
//! has cleared an area of f·c + tan a·c² (c straight in). Each pass clears as much as
//! the first one did, to the nearest mark, until that would be less than the least cut;
//! from there it takes the least cut. The last one lands on depth with what is left,
//! which alone may be less. Spring passes at the same reading follow.
//! For a sharp tool this is the rule x = first·√k of the text books.
//!
//! ```
//! use handturn::measure::{Angle, Length};
//! use handturn::number::Fraction;
//! use handturn::thread::dial::{Dial, Reads, Runs};
//! use handturn::thread::infeed::Nose;
//! use handturn::thread::passes::Plan;
//! // The M6x0.75 arbor: 0.518 mm on the top slide, first 0.18, least 0.04, a dial of 0.02.
//! let mm = |thousandths| Fraction::new(thousandths, 1000).map(Length::from_mm);
//! let plan = Plan {
//!     depth: mm(518)?, done: mm(0)?, first: mm(180)?, least: mm(40)?, spring: 1,
//!     half_angle: Angle::from_degrees(Fraction::whole(30))?,
//!     set_over: Angle::from_degrees(Fraction::new(59, 2)?)?,
//!     nose: Nose::Flat(mm(0)?),
//!     dial: Dial { division: mm(20)?, reads: Reads::Travel, marks: 100 },
//!     dial_at: 0, runs: Runs::Forwards,
//! };
//! assert_eq!(plan.count()?, 9);
//! let reading = |k| plan.pass(k).map(|pass| pass.reading.shows);
//! assert_eq!(reading(4)?, mm(360)?);
//! assert_eq!(reading(8)?, mm(520)?); // the nearest mark: 0.002 past what was asked
//! assert_eq!((reading(9)?, plan.pass(9)?.spring), (mm(520)?, true));
//! assert_eq!(plan.left_by_rounding()?, mm(-2)?);
//! # Ok::<(), handturn::Error>(())
//! ```
use super::dial::{Dial, Reading, Runs};
use super::given::{self, NONE, from_nought, minus, size};
use super::infeed::Nose;
use crate::bounds::{MOST_PASSES, SPRING_PASSES};
use crate::error::{Cause, Error, Field};
use crate::measure::{Angle, Length};
use crate::number::float::{cos_turns, of, sqrt, tan_turns};

/// A thread to be cut in passes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Plan {
    /// Depth to finish, as the slide travels from touch-on.
    pub depth: Length,
    /// How much of it is cut already: nought at the start; after a measurement,
    /// [`Plan::measured`] sets it.
    pub done: Length,
    /// The first cut, as the slide travels.
    pub first: Length,
    /// The least cut that still cuts instead of rubbing, as the slide travels.
    pub least: Length,
    /// Spring passes at the end.
    pub spring: u32,
    /// Half the angle between the flanks.
    pub half_angle: Angle,
    /// Set-over of the slide from square across.
    pub set_over: Angle,
    /// The tool's nose.
    pub nose: Nose,
    /// The dial that is read.
    pub dial: Dial,
    /// Where the dial stands at `done`, in marks from its zero.
    pub dial_at: u32,
    /// Which way the handle turns.
    pub runs: Runs,
}

/// One pass.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Pass {
    /// Its number, from 1.
    pub number: u32,
    /// What the dial reads for it.
    pub reading: Reading,
    /// How far the slide goes on from the pass before.
    pub cut: Length,
    /// How deep the slide then stands from touch-on, by the count.
    pub depth: Length,
    /// A spring pass: the reading stays.
    pub spring: bool,
}

/// The plan in marks of the dial.
struct Marks {
    total: u32,
    done: u32,
    first: u32,
    least: u32,
    /// f ÷ (tan a · mark straight in); not finite for a square thread.
    flat: f64,
}

const OVERFLOW: Error = Error::new(Field::Passes, Cause::Overflow);

impl Marks {
    fn new(plan: &Plan) -> Result<Self, Error> {
        for length in [plan.depth, plan.first, plan.least] {
            size(length, Field::Passes)?;
        }
        from_nought(plan.done, Field::Passes)?;
        SPRING_PASSES.check(i64::from(plan.spring))?;
        if plan.least > plan.first || plan.done > plan.depth {
            return Err(Error::new(Field::Passes, Cause::Conflict));
        }
        let turns = given::half_angle(plan.half_angle, 0)?;
        if plan.set_over.turns().is_negative() || plan.set_over > plan.half_angle {
            return Err(Error::new(Field::Angle, Cause::Conflict));
        }
        let mark = plan.dial.mark()?;
        let straight_in = of(mark.mm()) * cos_turns(of(plan.set_over.turns()));
        let (total, _) = plan.dial.nearest(plan.depth)?;
        let (left, _) = plan.dial.nearest(minus(plan.depth, plan.done, Field::Passes)?)?;
        let (first, _) = plan.dial.nearest(plan.first)?;
        let (nearest, short) = plan.dial.nearest(plan.least)?;
        let least = nearest.saturating_add(u32::from(short > NONE)).max(1);
        let flat = plan.nose.as_flat(plan.half_angle)?.value / (tan_turns(turns) * straight_in);
        let done = total.saturating_sub(left);
        Ok(Self { total, done, first: first.max(least), least, flat })
    }

    /// The depth, in marks, after the pass that follows `depth`.
    fn next(&self, depth: u32) -> u32 {
        let (c, first, flat) = (f64::from(depth), f64::from(self.first), self.flat);
        let area = |c: f64| c * (c + flat);
        let wanted = area(c) + area(first);
        // The root of c² + flat·c = wanted, written so that no digits are lost.
        let equal = 2.0 * wanted / (flat + sqrt(flat * flat + 4.0 * wanted));
        let square = !equal.is_finite() || flat > 1e12;
        let equal = if square { c + first } else { equal };
        let least = depth.saturating_add(self.least);
        given::whole(equal).max(least).min(self.total)
    }

    /// Depths before and after cutting pass `number`, counted from 1; `None` past the last.
    fn pass(&self, number: u32) -> Option<(u32, u32)> {
        let mut depth = self.done;
        for _ in 1..number.min(MOST_PASSES.saturating_add(1)) {
            if depth >= self.total {
                return None;
            }
            depth = self.next(depth);
        }
        (depth < self.total).then(|| (depth, self.next(depth)))
    }

    fn cutting(&self) -> Result<u32, Error> {
        let mut depth = self.done;
        let mut count = 0_u32;
        while depth < self.total {
            if count >= MOST_PASSES {
                let most = u16::try_from(MOST_PASSES).map_err(|_| OVERFLOW)?;
                return Err(Error::new(Field::Passes, Cause::TooMany { most }));
            }
            depth = self.next(depth);
            count = count.saturating_add(1);
        }
        Ok(count)
    }
}

impl Plan {
    /// How many passes there are, spring passes included.
    ///
    /// # Errors
    /// Lengths, angles or dial out of bounds; [`Cause::Conflict`] for a least cut above
    /// the first, or more done than the depth; [`Cause::TooMany`] where the cuts are so
    /// small that it would take more than 400.
    pub fn count(&self) -> Result<u32, Error> {
        Marks::new(self)?.cutting()?.checked_add(self.spring).ok_or(OVERFLOW)
    }

    /// Pass `number`, from 1: reading, cut and depth.
    ///
    /// # Errors
    /// As [`count`](Self::count), and a number beyond the last pass.
    pub fn pass(&self, number: u32) -> Result<Pass, Error> {
        let marks = Marks::new(self)?;
        let cutting = marks.cutting()?;
        let greatest = cutting.saturating_add(self.spring);
        if number < 1 || number > greatest {
            return Err(Error::new(Field::Passes, Cause::OutOfRange { least: 1, greatest }));
        }
        let (before, after) = marks.pass(number).unwrap_or((marks.total, marks.total));
        let on = after.checked_sub(marks.done).ok_or(OVERFLOW)?;
        let from_zero = self.dial_at.checked_add(on).ok_or(OVERFLOW)?;
        Ok(Pass {
            number,
            reading: self.dial.at(from_zero, self.runs)?,
            cut: self.travel(after.checked_sub(before).ok_or(OVERFLOW)?)?,
            depth: self.travel(after)?,
            spring: number > cutting,
        })
    }

    /// The depth wanted less the nearest the dial can show: what rounding leaves.
    ///
    /// # Errors
    /// As [`count`](Self::count).
    pub fn left_by_rounding(&self) -> Result<Length, Error> {
        Marks::new(self)?;
        Ok(self.dial.nearest(self.depth)?.1)
    }

    /// The plan after a measurement in the middle: `left` is still to come off along
    /// the slide, whose dial now stands `dial_at` marks from zero. The readings go on
    /// from there, whatever the dial was thought to mean before.
    ///
    /// # Errors
    /// As [`count`](Self::count). Where more is left than the whole depth, touching on
    /// was wrong by that much and the depth grows to it.
    pub fn measured(&self, left: Length, dial_at: u32) -> Result<Self, Error> {
        from_nought(left, Field::Passes)?;
        let depth = if left > self.depth { left } else { self.depth };
        let done = minus(depth, left, Field::Passes)?;
        let plan = Self { depth, done, dial_at, ..*self };
        Marks::new(&plan)?;
        Ok(plan)
    }

    fn travel(&self, marks: u32) -> Result<Length, Error> {
        Ok(self.dial.at(marks, self.runs)?.travel)
    }
}
