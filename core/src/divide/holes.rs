//! One hole circle: plain and angular indexing where it comes out exactly,
//! nearest hole where it doesn't.
//!
//! Method: the handle turns ratio × (work turned); on a circle of c holes that
//! is rounded to whole holes, each place from its absolute value. Source: the
//! rule of the handbooks, turns = ratio ÷ parts (OD1644, Lesson 1 Task 1).
use super::grid;
use super::moves::{At, Errors, Leg, Move, Part, Place};
use super::question::Question;
use super::working::{Pen, Sign, Term, Word};
use crate::error::Error;
use crate::head::{Arms, Circle, Head, Reach};
use crate::measure::Angle;
use crate::number::Fraction;

/// A circle of a plate.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct CircleAt {
    /// Which plate, from 0.
    pub plate: u8,
    /// Holes in the circle.
    pub holes: u16,
}

/// Turns and holes on one circle.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Holes {
    /// The circle.
    pub circle: CircleAt,
    /// Worm ratio.
    pub ratio: Fraction,
    /// How far the sector arms open.
    pub arms: Arms,
}

impl Holes {
    pub(crate) fn errors(&self, question: &Question) -> Result<Errors, Error> {
        grid::errors(question, self.ratio, u32::from(self.circle.holes))
    }

    /// Whether every position falls on a hole.
    fn fits(&self, question: &Question) -> Result<bool, Error> {
        grid::fits(question, self.ratio, u32::from(self.circle.holes))
    }

    pub(super) fn place(&self, question: &Question, index: u32) -> Result<Place, Error> {
        let holes = u32::from(self.circle.holes);
        let (count, _) = grid::nearest(question, index, self.ratio, holes)?;
        let handle = Fraction::new(count, i64::from(holes))?;
        Ok(Place {
            index,
            wanted: question.travel(index)?,
            stands: Angle::from_turns(handle.checked_div(self.ratio)?),
            handle,
            pin: Some(At::counted(count, holes)?),
            back_pin: None,
            dial: None,
            notch: None,
        })
    }

    pub(super) fn step(&self, question: &Question, index: u32) -> Result<Move, Error> {
        let holes = u32::from(self.circle.holes);
        let next = index.saturating_add(1);
        let (from, _) = grid::nearest(question, index, self.ratio, holes)?;
        let (to, _) = grid::nearest(question, next, self.ratio, holes)?;
        pin_move(from, to, holes, self.arms)
    }

    pub(super) fn working(&self, question: &Question, pen: &mut Pen) -> Result<(), Error> {
        let holes = i64::from(self.circle.holes);
        let Some(step) = question.step()? else { return Ok(()) };
        let turns = step.turns().checked_mul(self.ratio)?;
        let on_circle = turns.times(holes)?;
        let (near, left) = on_circle.nearest()?;
        pen.line();
        match (question.parts(), self.ratio.is_whole()) {
            (Some(parts), true) if step.turns().num() == 1 => {
                pen.over(self.ratio.num(), i64::from(parts));
            }
            _ => {
                pen.value(self.ratio).times().value(step.turns());
            }
        }
        pen.then(Sign::Equals, Term::of(turns));
        let sign = if left.is_zero() { Sign::Equals } else { Sign::Nearly };
        pen.then(sign, Term::Over(near, holes));
        if !on_circle.is_whole() {
            let errors = self.errors(question)?;
            let one = Fraction::ONE.checked_div(self.ratio)?.over(holes)?;
            pen.about(Word::OneHole).angle(Angle::from_turns(one));
            pen.about(Word::Worst).angle(errors.worst);
            pen.about(Word::Neighbours).angle(errors.adjacent);
        } else if let Some(parts) = question.parts().map(i64::from) {
            pen.about(Word::AllMoves).whole(parts).times().over(on_circle.num(), holes);
            pen.equals().value(turns.times(parts)?).remark(Word::HandleTurns);
        }
        Ok(())
    }
}

/// Offers plain indexing on every circle where it is exact.
pub(super) fn plain(
    question: &Question,
    head: &Head,
    keep: &mut dyn FnMut(Holes, Errors) -> Result<(), Error>,
) -> Result<(), Error> {
    each(head, &mut |way| if way.fits(question)? { keep(way, Errors::NONE) } else { Ok(()) })
}

/// Whether some circle is exact.
pub(super) fn plain_is_exact(question: &Question, head: &Head) -> Result<bool, Error> {
    let mut found = false;
    plain(question, head, &mut |_, _| {
        found = true;
        Ok(())
    })?;
    Ok(found)
}

/// Offers the nearest hole on every circle; asked only where none is exact.
pub(super) fn nearest_hole(
    question: &Question,
    head: &Head,
    keep: &mut dyn FnMut(Holes, Errors) -> Result<(), Error>,
) -> Result<(), Error> {
    each(head, &mut |way| keep(way, way.errors(question)?))
}

/// One `Holes` for every circle within the handle's reach.
pub(super) fn each(
    head: &Head,
    keep: &mut dyn FnMut(Holes) -> Result<(), Error>,
) -> Result<(), Error> {
    for (plate, sides) in (0_u8..).zip(&head.plates) {
        for circle in sides.circles.iter().filter(|circle| reaches(head.reach, circle)) {
            let circle = CircleAt { plate, holes: circle.holes };
            keep(Holes { circle, ratio: head.ratio, arms: head.arms })?;
        }
    }
    Ok(())
}

/// Whether the pin reaches `circle`; a radius that isn't known is taken to be reached.
pub(super) fn reaches(reach: Option<Reach>, circle: &Circle) -> bool {
    match (reach, circle.radius) {
        (Some(reach), Some(radius)) => reach.least <= radius && radius <= reach.greatest,
        _ => true,
    }
}

/// A clockwise move of the pin from `from` to `to`, counted in holes from hole 0.
pub(super) fn pin_move(from: i64, to: i64, holes: u32, arms: Arms) -> Result<Move, Error> {
    Move::of(&[Leg::between(Part::Pin, from, to, holes)?.with_arms(arms)])
}
