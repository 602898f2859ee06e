//! The record of a run that never changes, and how it is read back.
use super::plan::Plan;
use crate::bounds::{self, MAX_ROUNDS};
use crate::divide::{Asked, Way};
use crate::error::{Cause, Error, Field};
use crate::head::Head;
use crate::list::List;
use crate::number::Fraction;
use crate::text::Text;

/// Version of the stored form of runs.
pub const SCHEMA: u16 = 1;

/// Bytes a title can hold.
pub const TITLE: usize = 80;

/// A round of cuts over all positions.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
#[cfg_attr(feature = "serde", serde(rename_all = "lowercase"))]
pub enum Round {
    /// Each position is cut once, to size.
    Cut,
    /// A scratch to see the spacing before metal is lost.
    Scratch,
    /// Roughing.
    Rough,
    /// Finishing.
    Finish,
    /// Again at the same setting, to take out spring.
    Spring,
}

/// How a position is confirmed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
#[cfg_attr(feature = "serde", serde(rename_all = "lowercase"))]
pub enum Confirm {
    /// One press: "I have cut, moved and am at the next".
    OneStage,
    /// "Cut" and "at it" apart, so after a break it is known whether this one is cut.
    TwoStage,
}

/// What a run was started with. Later changes of the shop never reach it.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Frozen {
    /// Version of this form: [`SCHEMA`].
    pub version: u16,
    /// Version of the core that wrote it.
    pub core: Text<16>,
    /// A title given by the person; may be empty.
    pub title: Text<TITLE>,
    /// What is divided.
    pub question: Asked,
    /// The head as it was then.
    pub head: Head,
    /// The way chosen.
    pub way: Way,
    /// The rounds, at least one.
    pub rounds: List<Round, MAX_ROUNDS>,
    /// How positions are confirmed.
    pub confirm: Confirm,
}

impl Frozen {
    /// A record of this version without a title, cut in one round, confirmed
    /// with one press. Fields may be set before it is checked again.
    ///
    /// # Errors
    /// As [`Frozen::check`].
    pub fn new(question: Asked, head: Head, way: Way) -> Result<Self, Error> {
        let frozen = Self {
            version: SCHEMA,
            core: Text::new(Field::Record, env!("CARGO_PKG_VERSION"))?,
            title: Text::default(),
            question,
            head,
            way,
            rounds: List::from_slice(&[Round::Cut]).unwrap_or_default(),
            confirm: Confirm::OneStage,
        };
        frozen.check()?;
        Ok(frozen)
    }

    /// Checks a record as if a stranger had written it: every value within its
    /// bounds, and the way one of this head for this question.
    ///
    /// # Errors
    /// [`Cause::Newer`] for a record of a later version; [`Cause::Conflict`] of
    /// [`Field::Record`] for a way that does not belong to them ([`Way::check`]);
    /// else what the question, the head or the rounds are refused for.
    pub fn check(&self) -> Result<(), Error> {
        Version { version: self.version }.check()?;
        let rounds = i64::try_from(self.rounds.len()).unwrap_or(i64::MAX);
        bounds::ROUNDS.check(rounds)?;
        self.way.check(&self.question.question(), &self.head)
    }

    /// What the state of the run is computed with.
    #[must_use]
    pub fn plan(&self) -> Plan<'_> {
        let dial = self.head.fine_dial;
        let dial_slack = dial.and_then(|dial| dial.slack.over(i64::from(dial.marks)).ok());
        Plan {
            question: self.question.question(),
            way: self.way,
            rounds: &self.rounds,
            confirm: self.confirm,
            slack: self.head.slack,
            dial_slack: dial_slack.unwrap_or(Fraction::ZERO),
            work_turns: self.head.work_turns,
            degree_ring: self.head.degree_ring,
        }
    }
}

/// A run as it is stored and exported: the frozen record and its events, in
/// whatever holds them (a growing list on a page, a [`List`] on a board).
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Record<E> {
    /// The frozen record.
    pub frozen: Frozen,
    /// The events, oldest first.
    pub events: E,
}

/// Only the version of a stored [`Frozen`]: read it first, because a record of
/// a later version may not be readable as a whole.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Version {
    /// The version it was written in.
    pub version: u16,
}

/// Only the version of a stored [`Record`].
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Header {
    /// The version of its frozen record.
    pub frozen: Version,
}

impl Version {
    /// Whether records of this version can be read.
    ///
    /// # Errors
    /// [`Cause::Newer`] above [`SCHEMA`]; [`Cause::OutOfRange`] for version 0.
    pub fn check(self) -> Result<(), Error> {
        match self.version {
            0 => {
                let cause = Cause::OutOfRange { least: 1, greatest: SCHEMA.into() };
                Err(Error::new(Field::Record, cause))
            }
            SCHEMA => Ok(()),
            _ => Err(Error::new(Field::Record, Cause::Newer)),
        }
    }
}
