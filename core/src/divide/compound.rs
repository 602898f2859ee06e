//! Compound indexing: two circles of one side of one plate, one under the
//! handle's pin, the other over the back pin. Each move is a leg of the plate
//! and the handle together, counted at the back pin, and a leg of the handle
//! over the standing plate; their sum turns the worm.
//!
//! The back pin's leg comes first and may go back (a minus leg); the pin's leg
//! comes last and always goes clockwise, so slack always ends on one side.
//! Holes are numbered the way the pin travels; a plate that goes back brings
//! rising numbers to the back pin.
//!
//! Every move is the same, so an error of one move builds up: after i moves it
//! is i times as large. Going several times round the work between home and
//! home (a number of times that shares no factor with the parts) can make it
//! far smaller. Source: ratio ÷ parts = a/b ± c/d, the rule of the handbooks.
use super::moves::{At, Errors, Leg, Move, Part, Place};
use super::question::{Parts, Question};
use super::working::{Pen, Sign, Term, Word};
use crate::error::{Cause, Error, Field};
use crate::head::Arms;
use crate::measure::Angle;
use crate::number::{Fraction, mod_inverse};
use core::cmp::Ordering;

/// Two circles and the legs of every move.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Compound {
    /// Which plate, from 0.
    pub plate: u8,
    /// Holes in the circle of the handle's pin.
    pub pin: u16,
    /// Holes in the circle of the back pin.
    pub back: u16,
    /// Hole spaces of the pin's leg, clockwise, whole turns counted in.
    pub pin_spaces: u32,
    /// Hole spaces of the back pin's leg: plate and handle together clockwise,
    /// below nought anticlockwise.
    pub back_spaces: i32,
    /// How many times the moves take the work round before it is home: 1, or a
    /// number that shares no factor with the parts.
    pub times_round: u32,
    /// Worm ratio.
    pub ratio: Fraction,
    /// How far the sector arms open.
    pub arms: Arms,
}

const OVERFLOW: Error = Error::new(Field::Position, Cause::Overflow);

impl Compound {
    /// The question in the order in which this way comes to its parts.
    pub(super) fn order<'a>(&self, question: &Question<'a>) -> Question<'a> {
        match question {
            Question::Marks(_) if self.times_round == 1 => *question,
            _ => question.parts().map_or(*question, |count| {
                Question::Parts(Parts { count, every: self.times_round })
            }),
        }
    }

    /// Handle turns of one move.
    fn a_move(&self) -> Result<Fraction, Error> {
        let pin = Fraction::new(i64::from(self.pin_spaces), i64::from(self.pin))?;
        pin.checked_add(Fraction::new(i64::from(self.back_spaces), i64::from(self.back))?)
    }

    /// Handle turns wanted of one move.
    fn wanted(&self, question: &Question) -> Result<Fraction, Error> {
        let step = self.order(question).step()?;
        let step = step.ok_or(Error::new(Field::CutOrder, Cause::Conflict))?;
        step.turns().checked_mul(self.ratio)
    }

    /// By how much one move turns the work too far, in turns of the work.
    fn too_far(&self, question: &Question) -> Result<Fraction, Error> {
        self.a_move()?.checked_sub(self.wanted(question)?)?.checked_div(self.ratio)
    }

    /// Position i stands i moves' errors away. Parts that are neighbours on the
    /// work are cut `inverse of times_round` moves apart, or the rest of all moves.
    pub(super) fn errors(&self, question: &Question) -> Result<Errors, Error> {
        let one = self.too_far(question)?.abs();
        if one.is_zero() {
            return Ok(Errors::NONE);
        }
        let times = |n: u32| Ok::<_, Error>(Angle::from_turns(one.times(i64::from(n))?));
        let worst = times(question.positions().saturating_sub(1))?;
        let Some(parts) = question.parts() else {
            return Ok(Errors { worst, adjacent: times(1)?, closing: Angle::ZERO });
        };
        let apart = mod_inverse(u64::from(self.times_round), u64::from(parts));
        let apart = apart.and_then(|n| u32::try_from(n).ok());
        let apart = apart.ok_or(Error::new(Field::CutOrder, Cause::Conflict))?;
        let apart = apart.max(parts.saturating_sub(apart));
        Ok(Errors { worst, adjacent: times(apart)?, closing: times(parts)? })
    }

    /// Hole spaces of both legs in `moves` moves: the pin's, and the number by
    /// which the hole over the back pin has climbed.
    fn counts(&self, moves: u32) -> Result<(i64, i64), Error> {
        let pin = i64::from(moves).checked_mul(i64::from(self.pin_spaces));
        let back = i64::from(self.back_spaces).checked_neg();
        let back = back.and_then(|back| back.checked_mul(i64::from(moves)));
        pin.zip(back).ok_or(OVERFLOW)
    }

    pub(super) fn place(&self, question: &Question, index: u32) -> Result<Place, Error> {
        let wanted = self.order(question).travel(index)?;
        let (pin, back) = self.counts(index)?;
        let stands = self.a_move()?.times(i64::from(index))?.checked_div(self.ratio)?;
        Ok(Place {
            index,
            wanted,
            stands: Angle::from_turns(stands),
            handle: Fraction::new(pin, i64::from(self.pin))?,
            pin: Some(At::counted(pin, u32::from(self.pin))?),
            back_pin: Some(At::counted(back, u32::from(self.back))?),
            dial: None,
            notch: None,
        })
    }

    pub(super) fn step(&self, index: u32) -> Result<Move, Error> {
        let next = index.checked_add(1).ok_or(OVERFLOW)?;
        let ((pin, back), (pin_to, back_to)) = (self.counts(index)?, self.counts(next)?);
        let back = Leg::between(Part::BackPin, back, back_to, u32::from(self.back))?;
        let pin = Leg::between(Part::Pin, pin, pin_to, u32::from(self.pin))?;
        Move::of(&[back.with_arms(self.arms), pin.with_arms(self.arms)])
    }

    pub(super) fn working(&self, question: &Question, pen: &mut Pen) -> Result<(), Error> {
        let (wanted, a_move) = (self.wanted(question)?, self.a_move()?);
        let errors = self.errors(question)?;
        self.asked(question, wanted, pen)?;
        self.sum(a_move, pen);
        if errors.is_none() {
            let Some(parts) = question.parts().map(i64::from) else { return Ok(()) };
            pen.about(Word::AllMoves).whole(parts).times().value(a_move);
            pen.equals().value(a_move.times(parts)?).remark(Word::HandleTurns);
            return Ok(());
        }
        let too_far = self.too_far(question)?;
        let moves = i64::from(question.last());
        pen.about(Word::PerPart).angle(Angle::from_turns(too_far.abs())).times().whole(moves);
        pen.equals().angle(Angle::from_turns(too_far.abs().times(moves)?));
        let short = too_far.is_negative();
        pen.remark(if short { Word::ShortAfterAll } else { Word::LongAfterAll });
        pen.about(Word::Worst).angle(errors.worst);
        pen.about(Word::Neighbours).angle(errors.adjacent);
        Ok(())
    }

    /// `7 × 40/127 = 280/127`: what one move is to come to, in handle turns.
    fn asked(&self, question: &Question, wanted: Fraction, pen: &mut Pen) -> Result<(), Error> {
        let one = match question.parts().map(i64::from) {
            Some(parts) if self.ratio.is_whole() => Term::Over(self.ratio.num(), parts),
            Some(parts) => Term::of(self.ratio.over(parts)?),
            None => Term::of(wanted),
        };
        if self.times_round != 1 {
            let round = i64::from(self.times_round);
            pen.about(Word::TimesRound(self.times_round)).whole(round).times().term(one);
            pen.equals().value(wanted);
            return Ok(());
        }
        pen.about(Word::PerPart).term(one);
        if one != Term::of(wanted) {
            pen.equals().value(wanted);
        }
        Ok(())
    }

    /// `26/37 − 19/49 = 571/1813`: the legs and their sum, in handle turns.
    fn sum(&self, a_move: Fraction, pen: &mut Pen) {
        let pin = u32::from(self.pin);
        let turns = self.pin_spaces.checked_div(pin).unwrap_or(0);
        let spaces = self.pin_spaces.checked_rem(pin).unwrap_or(0);
        pen.line();
        if turns > 0 {
            pen.whole(i64::from(turns)).sign(Sign::Plus);
        }
        pen.over(i64::from(spaces), i64::from(self.pin));
        pen.sign(if self.back_spaces < 0 { Sign::Minus } else { Sign::Plus });
        pen.over(i64::from(self.back_spaces.unsigned_abs()), i64::from(self.back));
        pen.equals().value(a_move);
    }

    /// Settles ties: once round before more, then the least turning, then by plate and circles.
    pub(super) fn tie(&self, other: &Self) -> Ordering {
        let rest = |way: &Self| (way.plate, way.pin, way.back, way.pin_spaces, way.back_spaces);
        self.times_round
            .cmp(&other.times_round)
            .then_with(|| self.turning().cmp(&other.turning()))
            .then_with(|| rest(self).cmp(&rest(other)))
    }

    /// Handle turns of both legs together, whichever way they go; past what a
    /// fraction holds it is nought, and then settles nothing.
    fn turning(&self) -> Fraction {
        let pin = Fraction::new(i64::from(self.pin_spaces), i64::from(self.pin));
        let back = Fraction::new(i64::from(self.back_spaces.unsigned_abs()), i64::from(self.back));
        pin.and_then(|pin| pin.checked_add(back?)).unwrap_or(Fraction::ZERO)
    }
}
