//! What a screen shows, as plain data: a picture follows from it and nothing else.
use crate::entry::Entry;
use crate::settings::{Item, Settings};
use handturn::Error;
use handturn::handle::Distance;
use handturn::head::Sense;

/// A line at the foot that goes away by itself.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Note {
    /// The handle is not on its target.
    NotOn,
    /// Pressed twice?
    TooSoon,
    /// That can't be done now.
    NotNow,
    /// What was set is refused.
    Refused(Error),
}

/// What the run's menu offers.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Choice {
    /// Back to the run.
    GoOn,
    /// To another position.
    GoTo,
    /// Take the last press back.
    TakeBack,
    /// Give a reference.
    Reference,
    /// Show the errors.
    Errors,
    /// Another job.
    NewJob,
}

impl Choice {
    /// All of them, in order.
    pub const ALL: [Self; 6] =
        [Self::GoOn, Self::GoTo, Self::TakeBack, Self::Reference, Self::Errors, Self::NewJob];
}

/// One position of a run. Positions count from 1, as people count; one more than
/// `of` is the closed end.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Position {
    /// Which.
    pub number: u32,
    /// How many there are.
    pub of: u32,
}

/// How far a move goes yet.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Way {
    /// Turns and counts.
    pub left: Distance,
    /// Counts in a turn.
    pub per_turn: u32,
    /// Past the target: back off by this, then come again.
    pub past: bool,
}

/// A screen.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum View {
    /// After power-up: the last confirmed place, and whether it is cut.
    Believe {
        /// The place.
        at: Position,
        /// Whether it is cut.
        cut: bool,
    },
    /// The watchdog restarted the program.
    Restarted {
        /// The last confirmed place.
        at: Position,
    },
    /// The memory chip fails; `working` when it did during a run.
    MemoryFault {
        /// Whether a press is waiting to be kept.
        working: bool,
    },
    /// The list of settings.
    Setup {
        /// The settings.
        settings: Settings,
        /// The one chosen.
        item: Item,
    },
    /// A setting, digit by digit.
    Number {
        /// Which; none for a position or a reading of the degree ring.
        item: Option<Item>,
        /// Whether it is the degree ring's reading.
        ring: bool,
        /// The digits.
        entry: Entry,
    },
    /// The errors of the counts at the work, in tenths of arc-seconds, rounded up.
    Errors {
        /// Worst, adjacent, closing; none where they are out of range.
        tenths: Option<[u32; 3]>,
    },
    /// Bring the work to the first position.
    Begin {
        /// Side of approach.
        side: Sense,
    },
    /// On the way to a position.
    Going {
        /// Where to.
        to: Position,
        /// How far.
        way: Way,
        /// The closing move, without a cut.
        closing: bool,
        /// The place is not kept.
        unkept: bool,
    },
    /// On the target of a move.
    OnTarget {
        /// Which.
        at: Position,
        /// The closing move.
        closing: bool,
        /// The place is not kept.
        unkept: bool,
    },
    /// At a confirmed position that is to be cut.
    ToCut {
        /// Which.
        at: Position,
        /// Confirmed with the next move, not by a press of its own.
        one_press: bool,
        /// The place is not kept.
        unkept: bool,
    },
    /// All is cut and the work is home.
    Done {
        /// How many positions.
        of: u32,
    },
    /// Both lines changed at once.
    Lost,
    /// A reference is given: the position at the cutter.
    Reference {
        /// Which.
        at: Position,
        /// Only positions that fit a reading of the degree ring.
        fits: bool,
    },
    /// No position fits the reading.
    NoneFits,
    /// The run's menu.
    Menu {
        /// The one chosen.
        choice: Choice,
    },
}
