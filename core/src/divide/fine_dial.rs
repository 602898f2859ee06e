//! A circle and the fine dial: the nearest hole, and the plate shifted by whole
//! marks of the dial for what is left. Each place is set from its absolute
//! value, so errors never build up.
//!
//! What is taken for granted of a fine dial (common practice; the maker's
//! manual goes first):
//! - It takes the place of the plate stop: the plate is held by the dial, so
//!   whether the head's own stop withdraws does not matter.
//! - Its marks climb as it is turned clockwise, which shifts plate and handle
//!   clockwise. Below its zero it counts down from its number of marks.
//! - It comes up to every reading clockwise: going down it passes the mark by
//!   its slack and comes back up. A move says so leg by leg: down past the
//!   mark, up to it, and last the pin, clockwise.
use super::grid;
use super::holes::{self, CircleAt, Holes};
use super::moves::{At, Errors, Leg, Move, Part, Place};
use super::question::Question;
use super::residues::Residues;
use super::working::{Pen, Sign, Word};
use crate::error::{Cause, Error, Field};
use crate::head::{Arms, FineDial, Head};
use crate::measure::Angle;
use crate::number::Fraction;

/// A hole of one circle and a reading of the fine dial.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct DialledHoles {
    /// The circle.
    pub circle: CircleAt,
    /// Worm ratio.
    pub ratio: Fraction,
    /// How far the sector arms open.
    pub arms: Arms,
    /// The dial.
    pub dial: FineDial,
}

const OVERFLOW: Error = Error::new(Field::FineDial, Cause::Overflow);

/// A place as it is set: both counted from the start, the dial from its zero.
#[derive(Clone, Copy, PartialEq, Eq)]
struct Set {
    holes: i64,
    marks: i64,
}

impl DialledHoles {
    fn holes(&self) -> u32 {
        u32::from(self.circle.holes)
    }

    /// Turns of the plate for one mark of the dial.
    fn a_mark(&self) -> Result<Fraction, Error> {
        self.dial.shift.turns().over(i64::from(self.dial.marks))
    }

    /// Marks in one hole space.
    fn a_hole(&self) -> Result<Fraction, Error> {
        self.a_mark()?.times(i64::from(self.circle.holes))?.inverse()
    }

    /// Whole marks to each side of zero within the dial's travel.
    fn most(&self) -> Result<i64, Error> {
        Ok(self.dial.travel.turns().checked_div(self.a_mark()?)?.floor())
    }

    /// Where position `index` is set: the nearest hole, then the nearest mark
    /// within the travel (a half goes up both times).
    fn set(&self, question: &Question, index: u32) -> Result<Set, Error> {
        let (holes, left) = grid::nearest(question, index, self.ratio, self.holes())?;
        let (marks, _) = left.checked_mul(self.a_hole()?)?.nearest()?;
        let most = self.most()?;
        Ok(Set { holes, marks: marks.min(most).max(most.saturating_neg()) })
    }

    /// Handle turns at `set`: over the plate and with it.
    fn turned(&self, set: Set) -> Result<(Fraction, Fraction), Error> {
        let over = Fraction::new(set.holes, i64::from(self.circle.holes))?;
        Ok((over, over.checked_add(self.a_mark()?.times(set.marks)?)?))
    }

    pub(super) fn place(&self, question: &Question, index: u32) -> Result<Place, Error> {
        let set = self.set(question, index)?;
        let (handle, turned) = self.turned(set)?;
        Ok(Place {
            index,
            wanted: question.travel(index)?,
            stands: Angle::from_turns(turned.checked_div(self.ratio)?),
            handle,
            pin: Some(At::counted(set.holes, self.holes())?),
            back_pin: None,
            dial: Some(At::counted(set.marks, self.dial.marks)?),
            notch: None,
        })
    }

    /// The dial's legs first, the pin last. What does not move has no leg, but
    /// there is always one.
    pub(super) fn step(&self, question: &Question, index: u32) -> Result<Move, Error> {
        let from = self.set(question, index)?;
        let to = self.set(question, index.checked_add(1).ok_or(OVERFLOW)?)?;
        let dial = |from, to| Leg::between(Part::FineDial, from, to, self.dial.marks);
        let pin = Leg::between(Part::Pin, from.holes, to.holes, self.holes())?;
        let pin = pin.with_arms(self.arms);
        let past = to.marks.checked_sub(self.slack()?).ok_or(OVERFLOW)?;
        if to.marks == from.marks {
            Move::of(&[pin])
        } else if to.marks < from.marks && past < to.marks {
            Move::of(&[dial(from.marks, past)?, dial(past, to.marks)?, pin])
        } else if to.holes == from.holes {
            Move::of(&[dial(from.marks, to.marks)?])
        } else {
            Move::of(&[dial(from.marks, to.marks)?, pin])
        }
    }

    /// Whole marks by which the dial goes past on its way down.
    fn slack(&self) -> Result<i64, Error> {
        self.dial.slack.negated().floor().checked_neg().ok_or(OVERFLOW)
    }

    /// As places show. Where marks divide the hole space evenly, holes and marks
    /// together are one finer grid.
    pub(super) fn errors(&self, question: &Question) -> Result<Errors, Error> {
        let a_hole = self.a_hole()?;
        if a_hole.is_whole() {
            let steps = a_hole.num().checked_mul(i64::from(self.circle.holes));
            if let Some(steps) = steps.and_then(|steps| u32::try_from(steps).ok()) {
                return grid::errors(question, self.ratio, steps);
            }
        }
        let a_turn = self.ratio.times(i64::from(self.circle.holes))?;
        if let Some(residues) = Residues::of(question, a_turn)? {
            if let Some(errors) = self.by_residues(question, residues, a_hole)? {
                return Ok(errors);
            }
        }
        self.one_by_one(question)
    }

    /// Every position looked at in whole numbers; none where they are too large.
    fn by_residues(
        &self,
        question: &Question,
        residues: Residues,
        a_hole: Fraction,
    ) -> Result<Option<Errors>, Error> {
        let most = self.most()?;
        let Some(unit) = residues.den().checked_mul(a_hole.den()) else { return Ok(None) };
        let (mut worst, mut adjacent, mut before) = (0_u64, 0_u64, 0_i64);
        for left in residues.left() {
            let Some(error) = mark_error(left, a_hole.num(), unit, most) else { return Ok(None) };
            worst = worst.max(error.unsigned_abs());
            adjacent = adjacent.max(error.abs_diff(before));
            before = error;
        }
        if question.closes() {
            adjacent = adjacent.max(before.unsigned_abs());
        }
        let mark = self.a_mark()?.checked_div(self.ratio)?;
        let at_work = |error: u64| {
            let marks = Fraction::from_wide(i128::from(error), i128::from(unit))?;
            Ok::<_, Error>(Angle::from_turns(marks.checked_mul(mark)?))
        };
        let closing = self.closing(question)?;
        Ok(Some(Errors { worst: at_work(worst)?, adjacent: at_work(adjacent)?, closing }))
    }

    fn closing(&self, question: &Question) -> Result<Angle, Error> {
        if !question.closes() {
            return Ok(Angle::ZERO);
        }
        let end = self.place(question, question.last())?.error()?;
        Ok(Angle::from_turns(end.turns().abs()))
    }

    /// Every position looked at, as fractions: lists.
    fn one_by_one(&self, question: &Question) -> Result<Errors, Error> {
        let (mut worst, mut adjacent) = (Fraction::ZERO, Fraction::ZERO);
        let mut before = Fraction::ZERO;
        for part in 0..question.positions() {
            let error = self.place(question, question.index_of(part))?.error()?.turns();
            worst = worst.max(error.abs());
            adjacent = adjacent.max(error.checked_sub(before)?.abs());
            before = error;
        }
        if question.closes() {
            adjacent = adjacent.max(before.abs());
        }
        let (worst, adjacent) = (Angle::from_turns(worst), Angle::from_turns(adjacent));
        Ok(Errors { worst, adjacent, closing: self.closing(question)? })
    }

    /// `40/127 ≈ 15/49 + 8 × 1/1000`: the first part as it is set.
    pub(super) fn working(&self, question: &Question, pen: &mut Pen) -> Result<(), Error> {
        let Some(step) = question.step()? else { return Ok(()) };
        let (set, errors) = (self.set(question, 1)?, self.errors(question)?);
        let exact = errors.is_none();
        pen.about(Word::PerPart).value(step.turns().checked_mul(self.ratio)?);
        pen.sign(if exact { Sign::Equals } else { Sign::Nearly });
        pen.over(set.holes, i64::from(self.circle.holes));
        pen.sign(if set.marks < 0 { Sign::Minus } else { Sign::Plus });
        pen.whole(set.marks.saturating_abs()).times().value(self.a_mark()?);
        let mark = Angle::from_turns(self.a_mark()?.checked_div(self.ratio)?);
        pen.about(Word::OneMark).angle(mark);
        if !exact {
            pen.about(Word::Worst).angle(errors.worst);
            pen.about(Word::Neighbours).angle(errors.adjacent);
        }
        Ok(())
    }
}

/// `left` × `a_hole` / `unit` marks, set to the nearest whole mark within
/// `most`: by how much that is too far, in 1/`unit` of a mark.
fn mark_error(left: i64, a_hole: i64, unit: i64, most: i64) -> Option<i64> {
    let wanted = left.checked_mul(a_hole)?;
    let twice = unit.checked_mul(2)?;
    let marks = wanted.checked_mul(2)?.checked_add(unit)?.checked_div_euclid(twice)?;
    let marks = marks.min(most).max(most.saturating_neg());
    marks.checked_mul(unit)?.checked_sub(wanted)
}

/// Offers the fine dial with every circle of which its travel covers half a
/// hole space, and at least one mark, to each side.
pub(super) fn fine_dial(
    question: &Question,
    head: &Head,
    keep: &mut dyn FnMut(DialledHoles, Errors) -> Result<(), Error>,
) -> Result<(), Error> {
    let Some(dial) = head.fine_dial else { return Ok(()) };
    holes::each(head, &mut |Holes { circle, ratio, arms }| {
        let half_a_space = Fraction::new(1, 2)?.over(i64::from(circle.holes))?;
        if dial.travel.turns() < half_a_space {
            return Ok(());
        }
        let way = DialledHoles { circle, ratio, arms, dial };
        if way.most()? == 0 {
            return Ok(());
        }
        keep(way, way.errors(question)?)
    })
}
