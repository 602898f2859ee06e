//! Going past on purpose: after an over-run, and when the work really goes back.
//!
//! Slack between worm and wheel must always lie on the same side, so a hole is
//! come up to clockwise: whoever is beyond it goes back by the slack, at least
//! half a turn, and comes up again (common practice).
use super::plan::Plan;
use super::state::State;
use crate::divide::{At, Leg, Part};
use crate::error::{Cause, Error, Field};
use crate::head::Sense;
use crate::list::List;
use crate::number::Fraction;

/// How to come back to a hole that was gone past.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct WentPast {
    /// What is turned.
    pub part: Part,
    /// The way to turn back.
    pub back: Sense,
    /// How far to go back beyond the hole, in turns of the part, before coming
    /// up to it the other way; nought where the hole is come to at once.
    pub past: Fraction,
    /// The hole, notch or mark.
    pub to: At,
}

/// A leg made back.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Return {
    /// The leg, from where it ended to where it began.
    pub leg: Leg,
    /// How far to go beyond its end, in turns of the part, before coming up to
    /// it the other way; nought where the end is come to at once.
    pub past: Fraction,
}

impl Plan<'_> {
    /// How far beyond its end a leg that is made anticlockwise goes before it comes up
    /// clockwise, in turns of the part. Handle and plate: the head's slack, at
    /// least half a turn. Fine dial: its own slack, at least a tenth of a turn.
    /// Nought for clockwise legs and for the notches of a direct plate.
    ///
    /// # Errors
    /// [`Cause::Overflow`].
    pub fn past(&self, leg: &Leg) -> Result<Fraction, Error> {
        match (leg.sense, leg.part) {
            (Sense::Clockwise, _) | (_, Part::Spindle) => Ok(Fraction::ZERO),
            (_, part) => self.slack_of(part),
        }
    }

    fn slack_of(&self, part: Part) -> Result<Fraction, Error> {
        Ok(match part {
            Part::Pin | Part::BackPin | Part::Handwheel => self.slack.max(Fraction::new(1, 2)?),
            Part::FineDial => self.dial_slack.max(Fraction::new(1, 10)?),
            Part::Spindle => Fraction::ZERO,
        })
    }
}

impl State {
    /// What to do after an over-run of the leg that is being made, in order;
    /// nothing once the round is closed.
    ///
    /// A leg that a later one of the same move takes back up needs no going past.
    /// A fine dial is too fine to take up the worm's slack: where no pin follows
    /// it, the pin goes past its own hole as well.
    ///
    /// # Errors
    /// As [`Plan::step`].
    ///
    /// ```
    /// use handturn::divide::{Asked, Order, Parts, answer};
    /// use handturn::head::{Head, SET_A, Sense, plates_of};
    /// use handturn::number::Fraction;
    /// use handturn::run::{Event, Frozen, State, What};
    /// let head = Head { plates: plates_of(&SET_A)?, ..Head::default() };
    /// let asked = Asked::Parts(Parts { count: 64, every: 1 });
    /// let answer = answer::<1>(&asked.question(), &head)?;
    /// let way = answer.best(Order::Closest).expect("64 is plain").way;
    /// let frozen = Frozen::new(asked, head, way)?;
    /// let plan = frozen.plan();
    /// // At 37 of 64, on the way from hole 8 to hole 2.
    /// let jump = Event { what: What::Jump, index: 36, at_ms: 0 };
    /// let state = State::START.apply(&plan, jump)?;
    /// let past = state.went_past(&plan)?[0];
    /// assert_eq!((past.back, past.past), (Sense::Anticlockwise, Fraction::new(1, 2)?));
    /// assert_eq!(past.to.number, 2, "then up again, clockwise, to hole 2");
    /// // Really going back to 36: from hole 8 back to hole 14, and past it.
    /// let back = state.back_move(&plan)?[0];
    /// assert_eq!((back.leg.spaces, back.leg.to.number), (10, 14));
    /// assert_eq!(back.past, Fraction::new(1, 2)?);
    /// # Ok::<(), handturn::Error>(())
    /// ```
    pub fn went_past(&self, plan: &Plan) -> Result<List<WentPast, 2>, Error> {
        let mut todo = List::new();
        if self.index() >= plan.question.last() {
            return Ok(todo);
        }
        let step = plan.step(self.index())?;
        let mut legs = step.legs.iter().skip(usize::from(self.legs()));
        let Some(leg) = legs.next() else { return Ok(todo) };
        let later = |part, sense| legs.clone().any(|leg| leg.part == part && leg.sense == sense);
        let up = turned(leg.sense);
        let taken_up = later(leg.part, up) || (leg.part == Part::BackPin && later(Part::Pin, up));
        let past = if taken_up { Fraction::ZERO } else { plan.slack_of(leg.part)? };
        push(&mut todo, WentPast { part: leg.part, back: up, past, to: leg.to })?;
        if leg.part == Part::FineDial && !later(Part::Pin, Sense::Clockwise) {
            if let Some(to) = plan.place(self.index())?.pin {
                let past = plan.slack_of(Part::Pin)?;
                let back = Sense::Anticlockwise;
                push(&mut todo, WentPast { part: Part::Pin, back, past, to })?;
            }
        }
        Ok(todo)
    }

    /// What the hands do when the work really goes back: the legs of the move
    /// before, or those already made of this one, the pin last so that slack
    /// ends on the same side as ever. Nothing at the first position.
    ///
    /// # Errors
    /// As [`Plan::step`].
    pub fn back_move(&self, plan: &Plan) -> Result<List<Return, 3>, Error> {
        let mut back = List::new();
        let (from, made) = match (self.legs(), self.index().checked_sub(1)) {
            (0, None) => return Ok(back),
            (0, Some(before)) => (before, usize::MAX),
            (made, _) => (self.index(), usize::from(made)),
        };
        let step = plan.step(from)?;
        let made = step.legs.iter().take(made).rev();
        let pins = made.clone().filter(|leg| leg.part == Part::Pin);
        let mut worm_left_behind = false;
        for leg in made.filter(|leg| leg.part != Part::Pin).chain(pins) {
            let leg = Leg { sense: turned(leg.sense), from: leg.to, to: leg.from, ..*leg };
            let past = plan.past(&leg)?;
            let dial_down = leg.part == Part::FineDial && leg.sense == Sense::Anticlockwise;
            worm_left_behind = dial_down || (worm_left_behind && leg.part != Part::Pin);
            push(&mut back, Return { leg, past })?;
        }
        if let (true, Some(at)) = (worm_left_behind, plan.place(from)?.pin) {
            let (part, sense) = (Part::Pin, Sense::Anticlockwise);
            let leg = Leg { part, sense, turns: 0, spaces: 0, from: at, to: at, arms: None };
            push(&mut back, Return { leg, past: plan.slack_of(part)? })?;
        }
        Ok(back)
    }
}

fn push<T, const CAP: usize>(list: &mut List<T, CAP>, entry: T) -> Result<(), Error> {
    list.push(entry).map_err(|_| Error::new(Field::Record, Cause::TooMany { most: 3 }))
}

const fn turned(sense: Sense) -> Sense {
    match sense {
        Sense::Clockwise => Sense::Anticlockwise,
        Sense::Anticlockwise => Sense::Clockwise,
    }
}

#[cfg(test)]
mod tests;
