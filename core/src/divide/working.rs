//! The working of an answer as data: equations that page, print, package and
//! screen reader all render, so a person can check them by hand.
use crate::error::{Cause, Error, Field};
use crate::list::List;
use crate::measure::Angle;
use crate::number::Fraction;

/// A few equations that lead to an answer.
pub type Working = List<Equation, 8>;

/// One line of working.
#[derive(Clone, Debug, PartialEq, Eq, Default)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Equation {
    /// What the line is about, if it needs saying.
    pub about: Option<Word>,
    /// Its terms in reading order.
    pub terms: List<Term, 16>,
    /// A remark after it.
    pub remark: Option<Word>,
}

/// A term of an equation.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Term {
    /// A fraction as it is to be written, not reduced.
    Over(i64, i64),
    /// A whole number.
    Whole(i64),
    /// An angle in degrees, minutes and seconds.
    Angle(Angle),
    /// A sign between terms.
    Sign(Sign),
    /// A word of the trade.
    Word(Word),
}

/// A sign between terms.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Sign {
    /// =
    Equals,
    /// ≈
    Nearly,
    /// +
    Plus,
    /// −
    Minus,
    /// ×
    Times,
    /// ÷
    Over,
    /// (
    Open,
    /// )
    Close,
}

/// Words that working needs; the front end owns their spelling.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
#[non_exhaustive]
pub enum Word {
    /// Set as if for another number of parts.
    SetAsIfFor(u32),
    /// A plain move near the one wanted, for no whole number of parts.
    NearMove,
    /// Ratio of the change gears.
    Gears,
    /// What one part comes to.
    PerPart,
    /// What one turn of the handle does to the plate.
    OneHandleTurn,
    /// All moves with the closing move.
    AllMoves,
    /// The angle of one hole space at the work.
    OneHole,
    /// The angle of one dial mark at the work.
    OneMark,
    /// The worst position.
    Worst,
    /// The worst difference of neighbours.
    Neighbours,
    /// What is left at the closing move.
    Closing,
    /// As wanted.
    AsWanted,
    /// Too little, after all moves.
    ShortAfterAll,
    /// Too much, after all moves.
    LongAfterAll,
    /// The hole in which the pin ends; its number follows.
    PinEndsInHole,
    /// Turns of the handle.
    HandleTurns,
    /// Turns of the work.
    WorkTurns,
    /// Notches.
    Notches,
    /// Marks of a dial.
    DialMarks,
    /// The moves take the work so many times round before it is home.
    TimesRound(u32),
}

impl Equation {
    /// A line of `terms`; terms beyond its capacity are refused by returning `None`.
    #[must_use]
    pub fn of(terms: &[Term]) -> Option<Self> {
        Some(Self { about: None, terms: List::from_slice(terms)?, remark: None })
    }

    /// The same line, opening with what it is about.
    #[must_use]
    pub fn about(self, word: Word) -> Self {
        Self { about: Some(word), ..self }
    }

    /// The same line, closing with a remark.
    #[must_use]
    pub fn remark(self, word: Word) -> Self {
        Self { remark: Some(word), ..self }
    }
}

impl Term {
    /// The term of a reduced fraction.
    #[must_use]
    pub const fn of(fraction: Fraction) -> Self {
        if fraction.is_whole() {
            return Self::Whole(fraction.num());
        }
        Self::Over(fraction.num(), fraction.den())
    }
}

/// Writes working term by term, each where it stays: a line is large, and lines
/// handed from function to function would be most of the code.
#[derive(Default)]
pub(super) struct Pen {
    lines: Working,
    full: bool,
}

impl Pen {
    /// What was written.
    ///
    /// # Errors
    /// [`Cause::TooMany`] where it was more than fits.
    pub(super) fn done(self) -> Result<Working, Error> {
        let most = Cause::TooMany { most: 8 };
        if self.full { Err(Error::new(Field::Record, most)) } else { Ok(self.lines) }
    }

    /// Begins a line.
    #[inline(never)]
    pub(super) fn line(&mut self) -> &mut Self {
        self.full |= self.lines.push(Equation::default()).is_err();
        self
    }

    /// Begins a line, with what it is about.
    #[inline(never)]
    pub(super) fn about(&mut self, word: Word) -> &mut Self {
        self.line();
        if let Some(line) = self.lines.last_mut() {
            line.about = Some(word);
        }
        self
    }

    /// Closes the line with a remark.
    #[inline(never)]
    pub(super) fn remark(&mut self, word: Word) {
        if let Some(line) = self.lines.last_mut() {
            line.remark = Some(word);
        }
    }

    #[inline(never)]
    pub(super) fn term(&mut self, term: Term) -> &mut Self {
        let written = self.lines.last_mut().map(|line| line.terms.push(term));
        self.full |= written != Some(Ok(()));
        self
    }

    #[inline(never)]
    pub(super) fn sign(&mut self, sign: Sign) -> &mut Self {
        self.term(Term::Sign(sign))
    }

    /// `sign` and `term`, unless the line ends with that term already: what says
    /// nothing new is left out, "40/64 = 5/8 = 10/16".
    #[inline(never)]
    pub(super) fn then(&mut self, sign: Sign, term: Term) {
        if self.lines.last().and_then(|line| line.terms.last()) != Some(&term) {
            self.sign(sign).term(term);
        }
    }

    pub(super) fn equals(&mut self) -> &mut Self {
        self.sign(Sign::Equals)
    }

    pub(super) fn times(&mut self) -> &mut Self {
        self.sign(Sign::Times)
    }

    /// A fraction, not reduced.
    #[inline(never)]
    pub(super) fn over(&mut self, num: i64, den: i64) -> &mut Self {
        self.term(Term::Over(num, den))
    }

    /// A fraction, reduced, or a whole number.
    #[inline(never)]
    pub(super) fn value(&mut self, value: Fraction) -> &mut Self {
        self.term(Term::of(value))
    }

    pub(super) fn whole(&mut self, number: i64) -> &mut Self {
        self.value(Fraction::whole(number))
    }

    #[inline(never)]
    pub(super) fn angle(&mut self, angle: Angle) -> &mut Self {
        self.term(Term::Angle(angle))
    }
}
