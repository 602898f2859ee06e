//! What a run is computed with, and what it can be asked about its positions.
use super::frozen::{Confirm, Round};
use crate::divide::{Mark, Move, Place, Question, Stops, Way};
use crate::error::Error;
use crate::head::Sense;
use crate::measure::Angle;
use crate::number::Fraction;

/// The part of a [`super::Frozen`] record that the place follows from, borrowed:
/// small enough for a board that can't hold a whole head.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Plan<'a, W = Way> {
    /// What is divided.
    pub question: Question<'a>,
    /// The way chosen.
    pub way: W,
    /// The rounds, at least one.
    pub rounds: &'a [Round],
    /// How positions are confirmed.
    pub confirm: Confirm,
    /// Slack between worm and wheel, in handle turns.
    pub slack: Fraction,
    /// Slack of the fine dial, in turns of the dial.
    pub dial_slack: Fraction,
    /// Which way the work turns for a clockwise handle.
    pub work_turns: Sense,
    /// The turn of the work for which the degree ring's reading climbs.
    pub degree_ring: Option<Sense>,
}

/// The closing move, and how everything must stand after it.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Home {
    /// The move, made without a cut.
    pub step: Move,
    /// Where pin, plate and work stand then.
    pub place: Place,
}

impl<W: Stops> Plan<'_, W> {
    /// Where everything stands at position `index`.
    ///
    /// # Errors
    /// As [`Way::place`].
    pub fn place(&self, index: u32) -> Result<Place, Error> {
        self.way.place(&self.question, index)
    }

    /// Which part (from 0, round the work) is at the cutter at position `index`.
    #[must_use]
    pub fn part_at(&self, index: u32) -> u32 {
        self.way.part_at(&self.question, index)
    }

    /// The mark at position `index`, when graduating; none at the closed end.
    #[must_use]
    pub fn mark(&self, index: u32) -> Option<Mark> {
        let Question::Marks(graduation) = self.question else { return None };
        if index >= graduation.count {
            return None;
        }
        graduation.at(self.part_at(index), self.work_turns)
    }

    /// What the degree ring reads at position `index`, from 0 up to a turn, if
    /// it read `zero` at position 0. None where the head has no ring.
    ///
    /// # Errors
    /// As [`Way::place`].
    pub fn ring(&self, index: u32, zero: Angle) -> Result<Option<Angle>, Error> {
        let Some(climbs) = self.degree_ring else { return Ok(None) };
        let stands = self.place(index)?.stands.turns();
        let turned = if climbs == self.work_turns { stands } else { stands.negated() };
        let reading = zero.turns().checked_add(turned)?.part();
        Ok(Some(Angle::from_turns(reading)))
    }

    /// How many pins are confirmed on the way from position `index`: one, or
    /// one for each leg of a move with several.
    pub(super) fn legs(&self, index: u32) -> Result<u8, Error> {
        self.way.legs(&self.question, index)
    }
}

impl Plan<'_> {
    /// The move from position `index` to the next: the closing move from the
    /// last position of a question that closes.
    ///
    /// # Errors
    /// As [`Way::step`].
    pub fn step(&self, index: u32) -> Result<Move, Error> {
        self.way.step(&self.question, index)
    }

    /// The closing move; none where the question does not close.
    ///
    /// # Errors
    /// As [`Way::step`].
    pub fn home(&self) -> Result<Option<Home>, Error> {
        if !self.question.closes() {
            return Ok(None);
        }
        let last = self.question.last();
        let step = self.step(last.saturating_sub(1))?;
        Ok(Some(Home { step, place: self.place(last)? }))
    }
}
