//! A way: one manner of setting a division. Adding a way is one file and one
//! arm in each of these functions.
use super::compound::Compound;
use super::differential::Differential;
use super::direct::Direct;
use super::fine_dial::DialledHoles;
use super::handwheel::DialledTurns;
use super::holes::Holes;
use super::moves::{Errors, Move, Place};
use super::question::Question;
use super::working::{Pen, Working};
use crate::error::{Cause, Error, Field};
use core::cmp::Ordering;

/// One manner of setting a division, complete with what it needs of the head.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
#[non_exhaustive]
pub enum Way {
    /// Notches of a direct plate, the worm out of mesh.
    Direct(Direct),
    /// Whole turns and holes of one circle, exact.
    Plain(Holes),
    /// Turns and marks of the handwheel's dial, without plates.
    Handwheel(DialledTurns),
    /// Two circles of one plate, two pins.
    Compound(Compound),
    /// Turns and holes over a plate that change gears turn, exact.
    Differential(Differential),
    /// The nearest hole of one circle and a shift by the fine dial.
    FineDial(DialledHoles),
    /// The nearest hole of one circle to each place.
    NearestHole(Holes),
}

/// What a run asks of the way it is made by. [`Way`] answers for all of them;
/// [`Holes`] for itself, so that a board with an encoder carries one way's code.
pub trait Stops {
    /// As [`Way::place`].
    ///
    /// # Errors
    /// As [`Way::place`].
    fn place(&self, question: &Question, index: u32) -> Result<Place, Error>;

    /// As [`Way::part_at`].
    fn part_at(&self, question: &Question, index: u32) -> u32;

    /// Pins that are confirmed on the way from position `index` to the next, at least one.
    ///
    /// # Errors
    /// As [`Way::step`].
    fn legs(&self, question: &Question, index: u32) -> Result<u8, Error>;
}

impl Stops for Way {
    fn place(&self, question: &Question, index: u32) -> Result<Place, Error> {
        Self::place(self, question, index)
    }

    fn part_at(&self, question: &Question, index: u32) -> u32 {
        Self::part_at(self, question, index)
    }

    fn legs(&self, question: &Question, index: u32) -> Result<u8, Error> {
        // Only these two have moves of several legs; a long run is replayed at every press.
        if !matches!(self, Self::Compound(_) | Self::FineDial(_)) {
            return moves_on(question, index).map(|()| 1);
        }
        let legs = self.step(question, index)?.legs.len();
        Ok(u8::try_from(legs).unwrap_or(u8::MAX).max(1))
    }
}

impl Stops for Holes {
    fn place(&self, question: &Question, index: u32) -> Result<Place, Error> {
        Self::place(self, question, index)
    }

    fn part_at(&self, question: &Question, index: u32) -> u32 {
        question.part_at(index)
    }

    fn legs(&self, question: &Question, index: u32) -> Result<u8, Error> {
        moves_on(question, index).map(|()| 1)
    }
}

/// Whether a move leads on from position `index`.
fn moves_on(question: &Question, index: u32) -> Result<(), Error> {
    let last = question.last();
    if index < last {
        return Ok(());
    }
    let greatest = last.saturating_sub(1);
    Err(Error::new(Field::Position, Cause::OutOfRange { least: 0, greatest }))
}

/// The kind of a way.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
#[non_exhaustive]
pub enum Kind {
    /// Direct indexing.
    Direct,
    /// Plain (and angular) indexing on one circle.
    Plain,
    /// Dial of the handwheel.
    Handwheel,
    /// Compound indexing with two pins.
    Compound,
    /// Differential indexing with gears.
    Differential,
    /// A circle and the fine dial.
    FineDial,
    /// Nearest hole.
    NearestHole,
}

impl Kind {
    /// Every kind, in the order in which ties are settled.
    pub const ALL: [Self; 7] = [
        Self::Direct,
        Self::Plain,
        Self::Handwheel,
        Self::Compound,
        Self::Differential,
        Self::FineDial,
        Self::NearestHole,
    ];
}

impl Way {
    /// Its kind.
    #[must_use]
    pub const fn kind(&self) -> Kind {
        match self {
            Self::Direct(_) => Kind::Direct,
            Self::Plain(_) => Kind::Plain,
            Self::Handwheel(_) => Kind::Handwheel,
            Self::FineDial(_) => Kind::FineDial,
            Self::Compound(_) => Kind::Compound,
            Self::Differential(_) => Kind::Differential,
            Self::NearestHole(_) => Kind::NearestHole,
        }
    }

    /// The question in the order in which this way comes to its positions: the
    /// question itself, unless the way takes the work several times round. What
    /// [`Self::place`] counts as position `index` is position `index` of this.
    #[must_use]
    pub fn order<'a>(&self, question: &Question<'a>) -> Question<'a> {
        match self {
            Self::Compound(way) => way.order(question),
            _ => *question,
        }
    }

    /// Which of the equal parts this way cuts at position `index`, counted 0..
    /// round the work; the index itself where there are no equal parts.
    #[must_use]
    pub fn part_at(&self, question: &Question, index: u32) -> u32 {
        self.order(question).part_at(index)
    }

    /// The position at which this way cuts part `part` (0.. round the work); the
    /// part itself where there are no equal parts.
    #[must_use]
    pub fn index_of(&self, question: &Question, part: u32) -> u32 {
        self.order(question).index_of(part)
    }

    /// Whether every position and the closing move come out exactly; decided in integers.
    ///
    /// # Errors
    /// [`Cause::Overflow`].
    pub fn exact(&self, question: &Question) -> Result<bool, Error> {
        Ok(self.errors(question)?.is_none())
    }

    /// Worst, adjacent and closing error at the work, exact.
    ///
    /// # Errors
    /// [`Cause::Overflow`].
    pub fn errors(&self, question: &Question) -> Result<Errors, Error> {
        match self {
            Self::Direct(way) => way.errors(question),
            Self::Plain(way) | Self::NearestHole(way) => way.errors(question),
            Self::Handwheel(way) => way.errors(question),
            Self::FineDial(way) => way.errors(question),
            Self::Compound(way) => way.errors(question),
            Self::Differential(way) => way.errors(question),
        }
    }

    /// Where everything stands at position `index`, in constant time for equal moves.
    ///
    /// # Errors
    /// [`Cause::OutOfRange`] beyond the last position; [`Cause::Overflow`].
    pub fn place(&self, question: &Question, index: u32) -> Result<Place, Error> {
        match self {
            Self::Direct(way) => way.place(question, index),
            Self::Plain(way) | Self::NearestHole(way) => way.place(question, index),
            Self::Handwheel(way) => way.place(question, index),
            Self::FineDial(way) => way.place(question, index),
            Self::Compound(way) => way.place(question, index),
            Self::Differential(way) => way.place(question, index),
        }
    }

    /// What the hands do from position `index` to the next.
    ///
    /// # Errors
    /// [`Cause::OutOfRange`] at and beyond the last position; [`Cause::Overflow`].
    pub fn step(&self, question: &Question, index: u32) -> Result<Move, Error> {
        moves_on(question, index)?;
        match self {
            Self::Direct(way) => way.step(question, index),
            Self::Plain(way) | Self::NearestHole(way) => way.step(question, index),
            Self::Handwheel(way) => way.step(question, index),
            Self::FineDial(way) => way.step(question, index),
            Self::Compound(way) => way.step(index),
            Self::Differential(way) => way.step(question, index),
        }
    }

    /// The equations that lead to it.
    ///
    /// # Errors
    /// [`Cause::Overflow`].
    pub fn working(&self, question: &Question) -> Result<Working, Error> {
        let mut pen = Pen::default();
        match self {
            Self::Direct(way) => way.working(question, &mut pen),
            Self::Plain(way) | Self::NearestHole(way) => way.working(question, &mut pen),
            Self::Handwheel(way) => way.working(question, &mut pen),
            Self::FineDial(way) => way.working(question, &mut pen),
            Self::Compound(way) => way.working(question, &mut pen),
            Self::Differential(way) => way.working(question, &mut pen),
        }?;
        pen.done()
    }

    /// Settles ties between ways of equal rank: by kind, then by plate, then by
    /// what sets them apart.
    #[must_use]
    pub fn tie(&self, other: &Self) -> Ordering {
        self.kind().cmp(&other.kind()).then_with(|| match (self, other) {
            (Self::Direct(a), Self::Direct(b)) => a.notches.cmp(&b.notches),
            (Self::Plain(a), Self::Plain(b)) | (Self::NearestHole(a), Self::NearestHole(b)) => {
                a.circle.plate.cmp(&b.circle.plate).then(a.circle.holes.cmp(&b.circle.holes))
            }
            (Self::Compound(a), Self::Compound(b)) => a.tie(b),
            (Self::FineDial(a), Self::FineDial(b)) => {
                (a.circle.plate, a.circle.holes).cmp(&(b.circle.plate, b.circle.holes))
            }
            (Self::Differential(a), Self::Differential(b)) => a.tie(b),
            _ => Ordering::Equal,
        })
    }

    /// What the hands do and change, for ranking.
    #[must_use]
    pub const fn effort(&self) -> Effort {
        let (changes, actions, times_round, circle) = match self {
            Self::Direct(way) => (0, 1, 1, way.notches as u32),
            Self::Plain(way) | Self::NearestHole(way) => (1, 1, 1, way.circle.holes as u32),
            Self::Handwheel(way) => (0, 1, 1, way.steps()),
            Self::FineDial(way) => (1, 2, 1, way.circle.holes as u32),
            Self::Compound(way) => (1, 2, way.times_round, way.pin as u32),
            Self::Differential(way) => {
                (way.train.parts_to_fit().saturating_add(1), 1, 1, way.circle.holes as u32)
            }
        };
        Effort { changes, actions, times_round, circle }
    }
}

/// What a way costs the hands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Effort {
    /// Plates, gears (idlers counted) and a compound train's sleeve to fit before
    /// the first cut.
    pub changes: u32,
    /// Separate actions in a move.
    pub actions: u32,
    /// How many times round the work its moves go for the sake of nearness, with
    /// the handle turns that takes; 1 for ways that don't.
    pub times_round: u32,
    /// Holes, notches or marks of its main circle: more is finer to set.
    pub circle: u32,
}
