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
    /// How far beyond its end a leg made anticlockwise goes before it comes up
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
    /// The way back after an over-run of the leg that is being made; none once
    /// the round is closed.
    ///
    /// A leg that another one of the same worm follows the other way needs no
    /// going past: that one takes up the slack.
    ///
    /// # Errors
    /// As [`Plan::step`].
    pub fn went_past(&self, plan: &Plan) -> Result<Option<WentPast>, Error> {
        if self.index() >= plan.question.last() {
            return Ok(None);
        }
        let step = plan.step(self.index())?;
        let mut legs = step.legs.iter().skip(usize::from(self.legs()));
        let Some(leg) = legs.next() else { return Ok(None) };
        let on_worm = |part| matches!(part, Part::Pin | Part::BackPin);
        let taken_up =
            on_worm(leg.part) && legs.any(|later| on_worm(later.part) && later.sense != leg.sense);
        let past = if taken_up { Fraction::ZERO } else { plan.slack_of(leg.part)? };
        Ok(Some(WentPast { part: leg.part, back: turned(leg.sense), past, to: leg.to }))
    }

    /// What the hands do when the work really goes back: the legs of the move
    /// before, or those already made of this one, the last first. None at the
    /// first position.
    ///
    /// # Errors
    /// As [`Plan::step`].
    pub fn back_move(&self, plan: &Plan) -> Result<Option<List<Return, 3>>, Error> {
        let (from, made) = match (self.legs(), self.index().checked_sub(1)) {
            (0, None) => return Ok(None),
            (0, Some(before)) => (before, usize::MAX),
            (made, _) => (self.index(), usize::from(made)),
        };
        let step = plan.step(from)?;
        let mut back = List::new();
        for leg in step.legs.iter().take(made).rev() {
            let leg = Leg { sense: turned(leg.sense), from: leg.to, to: leg.from, ..*leg };
            let entry = Return { leg, past: plan.past(&leg)? };
            let full = Error::new(Field::Record, Cause::TooMany { most: 3 });
            back.push(entry).map_err(|_| full)?;
        }
        Ok(Some(back))
    }
}

const fn turned(sense: Sense) -> Sense {
    match sense {
        Sense::Clockwise => Sense::Anticlockwise,
        Sense::Anticlockwise => Sense::Clockwise,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::divide::{Asked, Order, Parts, answer};
    use crate::head::{Head, SET_A, plates_of};
    use crate::run::{Event, Frozen, What};

    fn wheel(count: u32, head: &Head) -> Frozen {
        let asked = Asked::Parts(Parts { count, every: 1 });
        let answer = answer::<2>(&asked.question(), head).unwrap();
        let way = answer.best(Order::Closest).unwrap().way;
        Frozen::new(asked, head.clone(), way).unwrap()
    }

    fn head() -> Head {
        Head { plates: plates_of(&SET_A).unwrap(), ..Head::default() }
    }

    fn at(plan: &Plan, index: u32) -> State {
        State::replay(plan, [Event { what: What::Jump, index, at_ms: 0 }]).unwrap()
    }

    #[test]
    fn back_by_the_slack_at_least_half_a_turn() {
        for (slack, past) in
            [((1, 10), (1, 2)), ((1, 2), (1, 2)), ((3, 4), (3, 4)), ((2, 1), (2, 1))]
        {
            let slack = Fraction::new(slack.0, slack.1).unwrap();
            let frozen = wheel(64, &Head { slack, ..head() });
            let plan = frozen.plan();
            let past = Fraction::new(past.0, past.1).unwrap();
            let to = At { number: 2, of: 16 };
            let expected = WentPast { part: Part::Pin, back: Sense::Anticlockwise, past, to };
            assert_eq!(at(&plan, 36).went_past(&plan), Ok(Some(expected)), "37: hole 8 to hole 2");

            let back = at(&plan, 36).back_move(&plan).unwrap().unwrap();
            let [back] = &back[..] else { panic!("one pin, one leg") };
            assert_eq!((back.past, back.leg.sense), (past, Sense::Anticlockwise));
            assert_eq!((back.leg.from.number, back.leg.to.number), (8, 14));
            assert_eq!((back.leg.turns, back.leg.spaces), (0, 10));
        }
    }

    #[test]
    fn nothing_to_go_back_to_at_either_end() {
        let frozen = wheel(7, &head());
        let plan = frozen.plan();
        assert_eq!(State::START.back_move(&plan), Ok(None));
        let mut state = State::START;
        while let Some(event) = state.next(&plan, 0).unwrap() {
            assert!(state.went_past(&plan).unwrap().is_some());
            state = state.apply(&plan, event).unwrap();
        }
        assert_eq!(state.went_past(&plan), Ok(None));
        let back = state.back_move(&plan).unwrap().unwrap();
        assert_eq!(back[0].leg.to, plan.place(6).unwrap().pin.unwrap());
    }

    #[test]
    fn notches_hold_the_spindle_without_slack() {
        let mut frozen = wheel(24, &Head { plates: List::new(), ..head() });
        frozen.head.slack = Fraction::whole(2);
        let plan = frozen.plan();
        let back = at(&plan, 5).back_move(&plan).unwrap().unwrap();
        assert_eq!((back[0].leg.part, back[0].past), (Part::Spindle, Fraction::ZERO));
        let past = at(&plan, 5).went_past(&plan).unwrap().unwrap();
        assert_eq!((past.part, past.past, past.to.number), (Part::Spindle, Fraction::ZERO, 6));
    }
}
