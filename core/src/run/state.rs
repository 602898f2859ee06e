//! The state of a run, folded from its events one by one. It stores no events:
//! it is small and of fixed size, so a board can keep it.
use super::cuts::Cuts;
use super::event::{Event, What};
use super::frozen::Confirm;
use super::plan::Plan;
use crate::divide::Stops;
use crate::error::{Cause, Error, Field};

/// A press this soon after the last counted one is asked about, in milliseconds.
pub const ASK_WITHIN_MS: u64 = 1_500;

/// Presses that can be taken back, the newest first.
pub const UNDO: usize = 16;

/// Where a run stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct State {
    index: u32,
    round: u8,
    legs: u8,
    cuts: Cuts,
    /// The cuts of the round before, for taking back the press that began this one.
    before: Cuts,
    taken: [Taken; UNDO],
    kept: u8,
    thumb_ms: Option<u64>,
}

/// What one press changed, so that it can be taken back.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
struct Taken {
    index: u32,
    legs: u8,
    began_round: bool,
    cut: Option<u16>,
}

const NOTHING: Taken = Taken { index: 0, legs: 0, began_round: false, cut: None };

/// What the person is at.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Phase {
    /// At the first position, nothing of this round cut.
    First,
    /// At a position that is not cut.
    ToCut,
    /// At a position that is cut, others to follow.
    Cut,
    /// Between two positions: leg `leg` (from 0) of the move is next.
    Moving {
        /// The leg to be made next.
        leg: u8,
    },
    /// The last position is cut: leg `leg` of the closing move is next.
    Closing {
        /// The leg to be made next.
        leg: u8,
    },
    /// The round is at its end, the work home where the question closes.
    Closed,
}

/// What became of a press.
#[expect(clippy::large_enum_variant, reason = "there is no heap to put the state on")]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Pressed {
    /// It counts, and this is the state now.
    Counted(State),
    /// It came within [`ASK_WITHIN_MS`] of the last Next or Back and is not
    /// counted: ask, and let the person press again who has moved again.
    AskAgain,
}

impl Default for State {
    fn default() -> Self {
        Self::START
    }
}

impl State {
    /// Before the first cut of the first round.
    pub const START: Self = Self {
        index: 0,
        round: 0,
        legs: 0,
        cuts: Cuts::NONE,
        before: Cuts::NONE,
        taken: [NOTHING; UNDO],
        kept: 0,
        thumb_ms: None,
    };

    /// The state after all `events`, each checked against those before it.
    ///
    /// # Errors
    /// The place of the first event that does not fit (from 0) and why: see
    /// [`State::apply`].
    pub fn replay(
        plan: &Plan<impl Stops>,
        events: impl IntoIterator<Item = Event>,
    ) -> Result<Self, (usize, Error)> {
        let mut events = events.into_iter().enumerate();
        events.try_fold(Self::START, |state, (place, event)| {
            state.apply(plan, event).map_err(|error| (place, error))
        })
    }

    /// The state in which a round was left, from what a board keeps of it: the
    /// position and the cuts, as stretches `from..to` in rising order. No press
    /// before it can be taken back.
    ///
    /// # Errors
    /// [`Cause::OutOfRange`] of [`Field::Position`] for a position there is not;
    /// [`Cause::Conflict`] of [`Field::Record`] for stretches that are empty, touch
    /// or fall, or a round that isn't there; [`Cause::TooMany`] of
    /// [`Field::Position`] where the position could not be cut any more.
    ///
    /// ```
    /// use handturn::divide::{Parts, Question};
    /// use handturn::head::Sense;
    /// use handturn::number::Fraction;
    /// use handturn::run::{Confirm, Encoder, Phase, State};
    /// let (slack, side) = (Fraction::new(1, 10)?, Sense::Clockwise);
    /// let ratio = Fraction::whole(40);
    /// let encoder = Encoder { ratio, per_turn: 2_400, side, slack, window: 2 };
    /// let question = Question::Parts(Parts { count: 127, every: 1 });
    /// let plan = encoder.plan(question, Confirm::TwoStage);
    /// let state = State::resume(&plan, 0, 36, [(0, 36)])?;
    /// assert_eq!((state.phase(&plan), state.left(&plan)), (Phase::ToCut, 90));
    /// # Ok::<(), handturn::Error>(())
    /// ```
    pub fn resume(
        plan: &Plan<impl Stops>,
        round: u8,
        index: u32,
        cuts: impl IntoIterator<Item = (u32, u32)>,
    ) -> Result<Self, Error> {
        if usize::from(round) >= plan.rounds.len() {
            return Err(Error::new(Field::Record, Cause::Conflict));
        }
        let cuts = Cuts::from_stretches(cuts, plan.question.positions())?;
        let state = Self { index, round, cuts, ..Self::START };
        within(index, state.ends(plan))?;
        if !state.cuts.has_room(index) {
            return Err(Cuts::FULL);
        }
        Ok(state)
    }

    /// The state after a press now, with the rule against pressing twice.
    ///
    /// # Errors
    /// As [`State::apply`]: the press is refused and nothing changes.
    pub fn press(&self, plan: &Plan<impl Stops>, event: Event) -> Result<Pressed, Error> {
        let next = self.apply(plan, event)?;
        let soon = |last: u64| event.at_ms.abs_diff(last) < ASK_WITHIN_MS;
        if event.what.by_thumb() && self.thumb_ms.is_some_and(soon) {
            return Ok(Pressed::AskAgain);
        }
        Ok(Pressed::Counted(next))
    }

    /// The state after `event`.
    ///
    /// # Errors
    /// - [`Cause::NotNow`] of [`Field::Event`] for what can't be done from here:
    ///   moving on from a position that is not cut, Back at the first position,
    ///   a next round before this one is at its end or beyond the last;
    /// - [`Cause::NotNow`] of [`Field::Undo`] when there is no press to take
    ///   back, or not so far;
    /// - [`Cause::OutOfRange`] of [`Field::Position`] for a position there is not;
    /// - [`Cause::Conflict`] of [`Field::Position`] when the event names another
    ///   position than it leads to;
    /// - [`Cause::TooMany`] of [`Field::Position`] when jumping or ticking there would
    ///   leave more than 16 separate stretches of cuts;
    /// - what [`Plan::step`] is refused for.
    pub fn apply(&self, plan: &Plan<impl Stops>, event: Event) -> Result<Self, Error> {
        let mut next = *self;
        match event.what {
            What::At => next.at(plan)?,
            What::Leg => next.leg(plan)?,
            What::Cut => next.cut(plan)?,
            What::Back => next.back()?,
            What::Undo => next.undo()?,
            What::Jump => next.jump(event.index, plan.question.positions())?,
            What::Found => next.jump(event.index, next.ends(plan))?,
            What::Tick => next.tick(event.index, plan.question.positions())?,
            What::Round => next.next_round(plan)?,
        }
        if event.what != What::Tick && event.index != next.index {
            return Err(Error::new(Field::Position, Cause::Conflict));
        }
        next.thumb_ms = event.what.by_thumb().then_some(event.at_ms);
        Ok(next)
    }

    /// What the Next button stands for: the event that pressing it at `at_ms`
    /// records. None when the run is at its end.
    ///
    /// # Errors
    /// As [`Plan::step`].
    pub fn next(&self, plan: &Plan<impl Stops>, at_ms: u64) -> Result<Option<Event>, Error> {
        let here = |what| Some(Event { what, index: self.index, at_ms });
        let apart = plan.confirm == Confirm::TwoStage || self.at_last(plan);
        Ok(match self.phase(plan) {
            Phase::First | Phase::ToCut if apart => here(What::Cut),
            Phase::Closed if self.more_rounds(plan) => {
                Some(Event { what: What::Round, index: 0, at_ms })
            }
            Phase::Closed => None,
            _ if self.legs.saturating_add(1) < plan.legs(self.index)? => here(What::Leg),
            _ => Some(Event { what: What::At, index: self.index.saturating_add(1), at_ms }),
        })
    }

    /// What the Back button stands for; none at the first position.
    #[must_use]
    pub fn back_event(&self, at_ms: u64) -> Option<Event> {
        let mut after = *self;
        after.back().ok()?;
        Some(Event { what: What::Back, index: after.index, at_ms })
    }

    /// What Undo stands for; none when no press can be taken back.
    #[must_use]
    pub fn undo_event(&self, at_ms: u64) -> Option<Event> {
        let mut after = *self;
        after.undo().ok()?;
        Some(Event { what: What::Undo, index: after.index, at_ms })
    }

    /// What the person is at.
    #[must_use]
    pub fn phase(&self, plan: &Plan<impl Stops>) -> Phase {
        let cut = self.cuts.contains(self.index);
        match () {
            () if self.index >= plan.question.positions() => Phase::Closed,
            () if !cut && self.index == 0 && self.cuts.count() == 0 => Phase::First,
            () if !cut => Phase::ToCut,
            () if self.at_last(plan) && !plan.question.closes() => Phase::Closed,
            () if self.at_last(plan) => Phase::Closing { leg: self.legs },
            () if self.legs > 0 => Phase::Moving { leg: self.legs },
            () => Phase::Cut,
        }
    }

    /// The position at the cutter, from 0, or the one left while between two;
    /// the number of positions once closed.
    #[must_use]
    pub const fn index(&self) -> u32 {
        self.index
    }

    /// Legs of the move from here that are made already.
    #[must_use]
    pub const fn legs(&self) -> u8 {
        self.legs
    }

    /// The round, from 0.
    #[must_use]
    pub const fn round(&self) -> u8 {
        self.round
    }

    /// The positions cut in this round.
    #[must_use]
    pub const fn cuts(&self) -> &Cuts {
        &self.cuts
    }

    /// Positions still to cut in this round besides the one at the cutter.
    #[must_use]
    pub fn left(&self, plan: &Plan<impl Stops>) -> u32 {
        let positions = plan.question.positions();
        let here = self.index < positions && !self.cuts.contains(self.index);
        positions.saturating_sub(self.cuts.count()).saturating_sub(u32::from(here))
    }

    /// Whether every position of this round is cut.
    #[must_use]
    pub fn all_cut(&self, plan: &Plan<impl Stops>) -> bool {
        self.cuts.count() >= plan.question.positions()
    }

    /// One past the greatest position where the work can be found: the closed
    /// end counts once everything is cut.
    pub(super) fn ends(&self, plan: &Plan<impl Stops>) -> u32 {
        let positions = plan.question.positions();
        let closed = plan.question.closes() && self.all_cut(plan);
        positions.saturating_add(u32::from(closed))
    }

    fn at_last(&self, plan: &Plan<impl Stops>) -> bool {
        self.index.saturating_add(1) == plan.question.positions()
    }

    fn more_rounds(&self, plan: &Plan<impl Stops>) -> bool {
        usize::from(self.round).saturating_add(1) < plan.rounds.len()
    }

    fn at(&mut self, plan: &Plan<impl Stops>) -> Result<(), Error> {
        let cut = self.leave(plan)?;
        if self.legs.saturating_add(1) < plan.legs(self.index)? {
            return Err(NOT_NOW);
        }
        self.keep(Taken { cut, ..self.here() });
        self.index = self.index.saturating_add(1);
        self.legs = 0;
        Ok(())
    }

    fn leg(&mut self, plan: &Plan<impl Stops>) -> Result<(), Error> {
        let cut = self.leave(plan)?;
        if self.legs.saturating_add(1) >= plan.legs(self.index)? {
            return Err(NOT_NOW);
        }
        self.keep(Taken { cut, ..self.here() });
        self.legs = self.legs.saturating_add(1);
        Ok(())
    }

    /// Leaves a position that is cut, or that one press confirms as cut with
    /// the move; says which position was newly cut.
    fn leave(&mut self, plan: &Plan<impl Stops>) -> Result<Option<u16>, Error> {
        match self.phase(plan) {
            Phase::Closed => Err(NOT_NOW),
            Phase::First | Phase::ToCut => {
                if plan.confirm == Confirm::TwoStage || self.at_last(plan) {
                    return Err(NOT_NOW);
                }
                self.add(self.index)
            }
            Phase::Cut | Phase::Moving { .. } | Phase::Closing { .. } => Ok(None),
        }
    }

    fn cut(&mut self, plan: &Plan<impl Stops>) -> Result<(), Error> {
        if !matches!(self.phase(plan), Phase::First | Phase::ToCut) {
            return Err(NOT_NOW);
        }
        self.tick(self.index, plan.question.positions())
    }

    fn tick(&mut self, index: u32, positions: u32) -> Result<(), Error> {
        within(index, positions)?;
        let before = self.here();
        let cut = self.add(index)?;
        if cut.is_none() {
            return Err(NOT_NOW);
        }
        // The position at the cutter must stay one that can be cut.
        if !self.cuts.has_room(self.index) {
            return Err(Cuts::FULL);
        }
        self.keep(Taken { cut, ..before });
        Ok(())
    }

    fn back(&mut self) -> Result<(), Error> {
        let index = match (self.legs, self.index.checked_sub(1)) {
            (1.., _) => self.index,
            (0, Some(before)) => before,
            (0, None) => return Err(NOT_NOW),
        };
        self.go(index)
    }

    fn jump(&mut self, index: u32, ends: u32) -> Result<(), Error> {
        within(index, ends)?;
        self.go(index)
    }

    fn go(&mut self, index: u32) -> Result<(), Error> {
        if !self.cuts.has_room(index) {
            return Err(Cuts::FULL);
        }
        self.keep(self.here());
        self.index = index;
        self.legs = 0;
        Ok(())
    }

    fn next_round(&mut self, plan: &Plan<impl Stops>) -> Result<(), Error> {
        if self.phase(plan) != Phase::Closed || !self.more_rounds(plan) {
            return Err(NOT_NOW);
        }
        // Only one round's cuts are remembered, so older presses are out of reach.
        (self.taken, self.kept) = ([NOTHING; UNDO], 0);
        self.keep(Taken { began_round: true, ..self.here() });
        self.round = self.round.saturating_add(1);
        self.before = self.cuts;
        self.cuts = Cuts::NONE;
        self.index = 0;
        Ok(())
    }

    fn undo(&mut self) -> Result<(), Error> {
        let refused = Error::new(Field::Undo, Cause::NotNow);
        let newest = self.kept.checked_sub(1).ok_or(refused)?;
        let entry = self.taken.get_mut(usize::from(newest)).ok_or(refused)?;
        let taken = core::mem::replace(entry, NOTHING);
        self.kept = newest;
        self.index = taken.index;
        self.legs = taken.legs;
        if taken.began_round {
            self.round = self.round.saturating_sub(1);
            self.cuts = self.before;
            self.before = Cuts::NONE;
        }
        match taken.cut {
            Some(cut) => self.cuts.remove(u32::from(cut)),
            None => Ok(()),
        }
    }

    const fn here(&self) -> Taken {
        Taken { index: self.index, legs: self.legs, began_round: false, cut: None }
    }

    /// Adds a cut; says which one when it was new.
    fn add(&mut self, index: u32) -> Result<Option<u16>, Error> {
        let new = self.cuts.insert(index)?;
        Ok(u16::try_from(index).ok().filter(|_| new))
    }

    /// Remembers a press; the oldest is forgotten when there is no more room.
    fn keep(&mut self, taken: Taken) {
        if usize::from(self.kept) >= UNDO {
            self.taken.rotate_left(1);
            self.kept = self.kept.saturating_sub(1);
        }
        if let Some(entry) = self.taken.get_mut(usize::from(self.kept)) {
            *entry = taken;
            self.kept = self.kept.saturating_add(1);
        }
    }
}

const NOT_NOW: Error = Error::new(Field::Event, Cause::NotNow);

fn within(index: u32, ends: u32) -> Result<(), Error> {
    if index < ends {
        return Ok(());
    }
    let greatest = ends.saturating_sub(1);
    Err(Error::new(Field::Position, Cause::OutOfRange { least: 0, greatest }))
}

#[cfg(test)]
mod tests;
