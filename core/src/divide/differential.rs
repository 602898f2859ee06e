//! Differential indexing: change gears from the work spindle turn the plate
//! while the handle turns, so that a plain move near the one wanted comes out
//! exactly.
//!
//! Rule: one part is u of a turn of the work, the worm ratio is R, the pin moves
//! h/c of a turn over the plate. The plate turns g for one turn of the work, so
//! R × u = h/c + g × u, and g = R − (h/c) ÷ u, which is R × (N′ − N) ÷ N′ when
//! h/c sets N′ parts plainly (the rule of the differential-indexing tables of
//! pre-1929 milling handbooks, from memory; 28 of their trains agree). The
//! plate turns the same way as the handle where g is above nought.
use super::holes::{self, CircleAt};
use super::moves::{At, Errors, Move, Place};
use super::question::Question;
use super::working::{Pen, Sign, Term, Word};
use crate::error::{Cause, Error, Field};
use crate::head::Arms;
use crate::measure::Angle;
use crate::number::Fraction;
use crate::train::Train;
use core::cmp::Ordering;

/// A plain move and the change gears that make it exact.
///
/// ```
/// use handturn::divide::{Kind, Order, Parts, Question, Way, answer};
/// use handturn::head::{GEARS, Head, SET_A, gears_of, plates_of};
/// let (plates, gears) = (plates_of(&SET_A)?, gears_of(&GEARS)?);
/// let head = Head { plates, gears, ..Head::default() };
/// let question = Question::Parts(Parts { count: 127, every: 1 });
/// let answer = answer::<4>(&question, &head)?;
/// let group = answer.group(Kind::Differential).expect("127 is set as if for 120");
/// let Way::Differential(way) = group.ways(Order::Closest)[0].way else { unreachable!() };
/// assert_eq!((way.holes, way.circle.holes), (13, 39));
/// assert_eq!((way.train.first.driver, way.train.first.driven), (56, 24));
/// assert_eq!(way.plate_per_handle_turn()?.degrees()?.to_string(), "-21");
/// # Ok::<(), handturn::Error>(())
/// ```
#[doc(alias = "differential indexing")]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Differential {
    /// The circle.
    pub circle: CircleAt,
    /// Holes the pin moves over the plate for one part, whole turns included.
    pub holes: u32,
    /// Worm ratio.
    pub ratio: Fraction,
    /// How far the sector arms open.
    pub arms: Arms,
    /// Gears from the spindle (first driver) to the worm shaft (last driven).
    pub train: Train,
    /// Whether the plate turns the same way as the handle.
    pub follows: bool,
}

impl Differential {
    /// Turns of the handle over the plate for one part.
    ///
    /// # Errors
    /// [`Cause::Zero`] for a circle without holes.
    pub fn on_plate(&self) -> Result<Fraction, Error> {
        Fraction::new(i64::from(self.holes), i64::from(self.circle.holes))
    }

    /// Turns of the plate for one turn of the work, below nought where the
    /// plate goes against the handle.
    ///
    /// # Errors
    /// [`Cause::Zero`] for a gear without teeth.
    pub fn gear_ratio(&self) -> Result<Fraction, Error> {
        let ratio = self.train.ratio()?;
        Ok(if self.follows { ratio } else { ratio.negated() })
    }

    /// The number of parts that the move on the plate would set with the plate
    /// held: it is "set as if for" them. Not always whole.
    ///
    /// # Errors
    /// [`Cause::Zero`], [`Cause::Overflow`].
    pub fn near(&self) -> Result<Fraction, Error> {
        self.ratio.checked_div(self.on_plate()?)
    }

    /// The angle by which the plate goes on for one turn of the handle, pin and
    /// plate stop out; below nought where it goes back. It shows whether the
    /// idlers are right.
    ///
    /// # Errors
    /// [`Cause::Zero`], [`Cause::Overflow`].
    pub fn plate_per_handle_turn(&self) -> Result<Angle, Error> {
        Ok(Angle::from_turns(self.gear_ratio()?.checked_div(self.ratio)?))
    }

    /// The same move and gears on another circle, where the move is whole there.
    #[must_use]
    pub fn on(&self, circle: CircleAt) -> Option<Self> {
        let holes = self.on_plate().ok()?.times(i64::from(circle.holes)).ok()?;
        let holes = u32::try_from(holes.num()).ok().filter(|_| holes.is_whole())?;
        Some(Self { circle, holes, ..*self })
    }

    /// Settles ties: the slower plate first (its slack matters less), then by
    /// circle, then by train.
    pub(super) fn tie(&self, other: &Self) -> Ordering {
        let slower = self.train.compare_ratio(&other.train);
        let circle = self.circle.plate.cmp(&other.circle.plate);
        slower
            .then(circle)
            .then(self.circle.holes.cmp(&other.circle.holes))
            .then(self.holes.cmp(&other.holes))
            .then(self.train.cmp(&other.train))
    }

    /// How far the work turns while the pin goes `handle` turns over the plate:
    /// the handle itself turns that and what the plate has turned meanwhile.
    fn work(&self, handle: Fraction) -> Result<Fraction, Error> {
        handle.checked_div(self.ratio.checked_sub(self.gear_ratio()?)?)
    }

    pub(super) fn errors(&self, question: &Question) -> Result<Errors, Error> {
        let part = part(question)?.ok_or(Error::new(Field::Position, Cause::Conflict))?;
        let last = self.place(question, question.last())?;
        let exact = self.work(self.on_plate()?)? == part
            && last.stands == last.wanted
            && (!question.closes() || last.stands.turns().is_whole());
        if exact { Ok(Errors::NONE) } else { Err(Error::new(Field::Gears, Cause::Conflict)) }
    }

    /// Holes over the plate from position 0 to `index`.
    fn count(&self, question: &Question, index: u32) -> Result<i64, Error> {
        let unequal = Error::new(Field::Position, Cause::Conflict);
        let part = part(question)?.ok_or(unequal)?;
        let parts = question.travel(index)?.turns().checked_div(part)?;
        let count = parts.times(i64::from(self.holes))?;
        if parts.is_whole() { Ok(count.num()) } else { Err(unequal) }
    }

    pub(super) fn place(&self, question: &Question, index: u32) -> Result<Place, Error> {
        let count = self.count(question, index)?;
        let handle = Fraction::new(count, i64::from(self.circle.holes))?;
        Ok(Place {
            index,
            wanted: question.travel(index)?,
            stands: Angle::from_turns(self.work(handle)?),
            handle,
            pin: Some(At::counted(count, u32::from(self.circle.holes))?),
            back_pin: None,
            dial: None,
            notch: None,
        })
    }

    pub(super) fn step(&self, question: &Question, index: u32) -> Result<Move, Error> {
        let from = self.count(question, index)?;
        let to = self.count(question, index.saturating_add(1))?;
        holes::pin_move(from, to, u32::from(self.circle.holes), self.arms)
    }

    pub(super) fn working(&self, question: &Question, pen: &mut Pen) -> Result<(), Error> {
        let unequal = Error::new(Field::Position, Cause::Conflict);
        let part = part(question)?.ok_or(unequal)?;
        self.set_as_if(pen)?;
        self.gears(part, pen)?;
        self.per_part(part, pen)?;
        self.one_handle_turn(pen)?;
        if question.closes() {
            self.all_moves(question, pen)?;
        }
        Ok(())
    }

    fn write_holes(&self, pen: &mut Pen) {
        pen.over(i64::from(self.holes), i64::from(self.circle.holes));
    }

    /// How the plate's turning enters a sum.
    fn sign(&self) -> Sign {
        if self.follows { Sign::Plus } else { Sign::Minus }
    }

    /// "Set as if for 120: 40/120 = 1/3 = 13/39", or the bare move.
    fn set_as_if(&self, pen: &mut Pen) -> Result<(), Error> {
        let on_plate = self.on_plate()?;
        let near = self.near()?;
        let near = u32::try_from(near.num()).ok().filter(|_| near.is_whole());
        let Some(near) = near.filter(|_| self.ratio.is_whole()) else {
            self.write_holes(pen.about(Word::NearMove));
            pen.equals().value(on_plate);
            return Ok(());
        };
        pen.about(Word::SetAsIfFor(near)).over(self.ratio.num(), i64::from(near));
        self.write_holes(pen.equals().value(on_plate).equals());
        Ok(())
    }

    /// "Gears: (120 − 127) × 40/120 = −7/3 = −56/24"; for a move that is no
    /// whole number of parts "40 − 127 × 13/41 = …".
    fn gears(&self, part: Fraction, pen: &mut Pen) -> Result<(), Error> {
        let (near, parts) = (self.near()?, part.inverse()?);
        pen.about(Word::Gears);
        if near.is_whole() && parts.is_whole() && self.ratio.is_whole() {
            pen.sign(Sign::Open).value(near).sign(Sign::Minus).value(parts).sign(Sign::Close);
            pen.times().over(self.ratio.num(), near.num());
        } else {
            self.write_holes(pen.value(self.ratio).sign(Sign::Minus).value(parts).times());
        }
        pen.equals().value(self.gear_ratio()?).equals();
        let first = i64::from(self.train.first.driver);
        let first = if self.follows { first } else { first.saturating_neg() };
        pen.over(first, i64::from(self.train.first.driven));
        if let Some(second) = self.train.second {
            pen.times().over(i64::from(second.driver), i64::from(second.driven));
        }
        Ok(())
    }

    /// "Per part: 1/3 − 7/3 × 1/127 = 40/127 as wanted".
    fn per_part(&self, part: Fraction, pen: &mut Pen) -> Result<(), Error> {
        pen.about(Word::PerPart).value(self.on_plate()?).sign(self.sign());
        pen.value(self.train.ratio()?).times().value(part);
        pen.equals().value(self.ratio.checked_mul(part)?).remark(Word::AsWanted);
        Ok(())
    }

    /// "One handle turn: −7/3 ÷ 40 = −7/120 = −21°".
    fn one_handle_turn(&self, pen: &mut Pen) -> Result<(), Error> {
        let plate = self.plate_per_handle_turn()?;
        pen.about(Word::OneHandleTurn).value(self.gear_ratio()?).sign(Sign::Over);
        pen.value(self.ratio).equals().value(plate.turns()).equals().angle(plate);
        Ok(())
    }

    /// "All moves: 127 × 13/39 − 7/3 = 40 handle turns" and "Closing: pin ends in
    /// hole 13".
    fn all_moves(&self, question: &Question, pen: &mut Pen) -> Result<(), Error> {
        let last = self.place(question, question.last())?;
        let moves = last.handle.checked_div(self.on_plate()?)?;
        let plate = self.gear_ratio()?.checked_mul(last.stands.turns())?;
        let all = last.handle.checked_add(plate)?;
        self.write_holes(pen.about(Word::AllMoves).value(moves).times());
        pen.sign(self.sign()).value(plate.abs()).equals().value(all).remark(Word::HandleTurns);
        let ends = last.pin.map_or(0, |at| at.number);
        pen.about(Word::Closing).term(Term::Word(Word::PinEndsInHole)).whole(i64::from(ends));
        Ok(())
    }
}

/// The turn of the work that all moves are made of: one of equal parts,
/// whatever the cutting order, or one angle. None for a list.
pub(super) fn part(question: &Question) -> Result<Option<Fraction>, Error> {
    match question {
        Question::Angle(repeated) => Ok(Some(repeated.angle.turns())),
        _ => question.parts().map(|parts| Fraction::new(1, i64::from(parts))).transpose(),
    }
}

#[cfg(test)]
mod tests;
