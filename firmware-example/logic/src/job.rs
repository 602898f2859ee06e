//! A run on the handle: the core's state machine, and the position that the
//! handle is being turned to.
use crate::record::{Place, Record};
use crate::settings::Settings;
use handturn::Error;
use handturn::divide::Holes;
use handturn::handle::{Aim, Approach};
use handturn::run::{Event, Phase, Plan, Pressed, State, What};

/// A run, its place confirmed and kept, and the way to the next place.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Job {
    settings: Settings,
    place: Place,
    /// The position the handle is turned to, from 0.
    goal: u32,
    aim: Aim,
    approach: Approach,
    phase: Phase,
    /// The count of the confirmed position.
    here: i32,
    seen: i32,
}

/// Why a press is not counted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Refused {
    /// The handle is not on its target.
    NotOn,
    /// It came so soon after the last one that it may be a mistake.
    TooSoon,
    /// There is nothing to confirm, or the core refuses it.
    NotNow,
}

impl Job {
    /// A run at the place that `record` holds, the handle standing at `count`.
    ///
    /// # Errors
    /// What the core refuses.
    pub fn at(settings: Settings, place: Place, count: i32) -> Result<Self, Error> {
        let plan = settings.plan()?;
        let goal = first_goal(&place.state, &plan);
        let encoder = settings.encoder()?;
        let aim = encoder.aim(&plan.question, goal)?;
        let here = encoder.target(&plan.question, place.state.index())?;
        let (approach, phase) = (Approach::start(&aim, count), place.state.phase(&plan));
        Ok(Self { settings, place, goal, aim, approach, phase, here, seen: count })
    }

    /// The handle is seen at `count`.
    pub fn sees(&mut self, count: i32) {
        self.approach = self.approach.next(&self.aim, count);
        self.seen = count;
    }

    /// The settings of the run.
    #[must_use]
    pub const fn settings(&self) -> &Settings {
        &self.settings
    }

    /// What is kept of the run.
    #[must_use]
    pub const fn record(&self) -> Record {
        Record { settings: self.settings, place: Some(self.place) }
    }

    /// The state as the core keeps it.
    #[must_use]
    pub const fn state(&self) -> &State {
        &self.place.state
    }

    /// The handle's count at the last confirmed press.
    #[must_use]
    pub const fn count(&self) -> i32 {
        self.place.count
    }

    /// The position the handle is turned to.
    #[must_use]
    pub const fn goal(&self) -> u32 {
        self.goal
    }

    /// What the handle is turned to.
    #[must_use]
    pub const fn aim(&self) -> &Aim {
        &self.aim
    }

    /// Where the handle is on its way.
    #[must_use]
    pub const fn approach(&self) -> Approach {
        self.approach
    }

    /// What the person is at.
    #[must_use]
    pub const fn phase(&self) -> Phase {
        self.phase
    }

    /// Whether the handle stands at the confirmed position.
    #[must_use]
    pub const fn stands(&self) -> bool {
        self.seen.abs_diff(self.here) <= self.aim.window
    }

    /// Whether the position at the cutter is cut.
    #[must_use]
    pub fn is_cut(&self) -> bool {
        self.place.state.cuts().contains(self.place.state.index())
    }

    /// Positions in the run.
    #[must_use]
    pub const fn positions(&self) -> u32 {
        self.settings.parts
    }

    /// The job turned to position `goal`, up to the closed end once all is cut.
    ///
    /// # Errors
    /// [`Refused::NotNow`] for a position there is not.
    pub fn to(&self, goal: u32, count: i32) -> Result<Self, Refused> {
        let plan = self.settings.plan().map_err(refused)?;
        let closed = u32::from(self.place.state.all_cut(&plan));
        if goal >= plan.question.positions().saturating_add(closed) {
            return Err(Refused::NotNow);
        }
        let aim = self.settings.encoder().map_err(refused)?;
        let aim = aim.aim(&plan.question, goal).map_err(refused)?;
        Ok(Self { goal, aim, approach: Approach::start(&aim, count), seen: count, ..*self })
    }

    /// The job after NEXT: what the press stands for is the core's to say.
    ///
    /// # Errors
    /// [`Refused`].
    pub fn confirm(&self, count: i32, now_ms: u64) -> Result<Self, Refused> {
        let plan = self.settings.plan().map_err(refused)?;
        if self.approach != Approach::On {
            return Err(Refused::NotOn);
        }
        let state = &self.place.state;
        let (here, goal) = (state.index(), self.goal);
        let event = |what| Event { what, index: goal, at_ms: now_ms };
        let event = match state.next(&plan, now_ms).map_err(refused)? {
            Some(next) if next.index == goal => next,
            None if goal == here => return Err(Refused::NotNow),
            // Back at a position that is cut already: nothing to record, on with the run.
            _ if goal == here => {
                return Self::at(self.settings, self.place, count).map_err(refused);
            }
            _ if goal.saturating_add(1) == here => event(What::Back),
            _ if goal >= plan.question.positions() => event(What::Found),
            _ => event(What::Jump),
        };
        self.after(event, count)
    }

    /// The job after the last counted press is taken back; nothing has moved.
    ///
    /// # Errors
    /// [`Refused::NotNow`] where none can be taken back.
    pub fn undo(&self, count: i32, now_ms: u64) -> Result<Self, Refused> {
        let event = self.place.state.undo_event(now_ms).ok_or(Refused::NotNow)?;
        self.after(event, count)
    }

    /// The job found again at position `index`, which the handle stands at by a reference.
    ///
    /// # Errors
    /// [`Refused::NotNow`] for a position there is not.
    pub fn found(&self, index: u32, now_ms: u64) -> Result<Self, Refused> {
        let count = self.target(index).map_err(refused)?;
        self.after(Event { what: What::Found, index, at_ms: now_ms }, count)
    }

    /// The count of position `index`.
    ///
    /// # Errors
    /// As [`handturn::run::Encoder::target`].
    pub fn target(&self, index: u32) -> Result<i32, Error> {
        self.settings.encoder()?.target(&self.settings.question(), index)
    }

    fn after(&self, event: Event, count: i32) -> Result<Self, Refused> {
        let plan = self.settings.plan().map_err(refused)?;
        let state = match self.place.state.press(&plan, event).map_err(refused)? {
            Pressed::Counted(state) => state,
            Pressed::AskAgain => return Err(Refused::TooSoon),
        };
        Self::at(self.settings, Place { state, count }, count).map_err(refused)
    }
}

/// A position that is to be cut is come to first; from one that is cut, or whose
/// cut is confirmed with the move, the next one.
fn first_goal(state: &State, plan: &Plan<Holes>) -> u32 {
    match state.next(plan, 0) {
        Ok(Some(event)) => event.index,
        _ => state.index(),
    }
}

fn refused(_: Error) -> Refused {
    Refused::NotNow
}
