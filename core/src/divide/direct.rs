//! Direct indexing: the worm out of mesh, the spindle turned by the notches of
//! a plate or the teeth of a gear. Rule: notches ÷ parts (common practice).
use super::moves::{At, Errors, Leg, Move, Part, Place};
use super::question::Question;
use super::working::{Pen, Sign, Word};
use crate::error::{Cause, Error, Field};
use crate::head::{Head, Sense};
use crate::measure::Angle;
use crate::number::Fraction;

/// Notches of one direct plate.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Direct {
    /// Notches of the plate, or teeth of the gear.
    pub notches: u16,
    /// Which way the work is turned: the same as under the worm.
    pub sense: Sense,
}

impl Direct {
    /// Notches from position 0 to `index`; none when that is not a whole number.
    fn count(&self, question: &Question, index: u32) -> Result<Option<i64>, Error> {
        let notches = question.travel(index)?.turns().times(i64::from(self.notches))?;
        Ok(notches.is_whole().then_some(notches.num()))
    }

    /// The same, where the way was offered and so must be whole.
    fn whole(&self, question: &Question, index: u32) -> Result<i64, Error> {
        self.count(question, index)?.ok_or(Error::new(Field::Position, Cause::NotWhole))
    }

    fn at(&self, count: i64) -> Result<At, Error> {
        At::counted(count, u32::from(self.notches))
    }

    pub(super) fn errors(&self, question: &Question) -> Result<Errors, Error> {
        let fits = self.fits(question)?;
        if fits { Ok(Errors::NONE) } else { Err(Error::new(Field::Position, Cause::NotWhole)) }
    }

    /// Whether every position falls on a notch.
    fn fits(&self, question: &Question) -> Result<bool, Error> {
        if let Some(parts) = question.parts() {
            return Ok(u32::from(self.notches).checked_rem(parts) == Some(0));
        }
        if let Some(step) = question.step()? {
            return Ok(step.turns().times(i64::from(self.notches))?.is_whole());
        }
        for index in 0..question.positions() {
            if self.count(question, index)?.is_none() {
                return Ok(false);
            }
        }
        Ok(true)
    }

    pub(super) fn place(&self, question: &Question, index: u32) -> Result<Place, Error> {
        let wanted = question.travel(index)?;
        let count = self.whole(question, index)?;
        let stands = Angle::from_turns(Fraction::new(count, i64::from(self.notches))?);
        Ok(Place {
            index,
            wanted,
            stands,
            handle: Fraction::ZERO,
            pin: None,
            back_pin: None,
            dial: None,
            notch: Some(self.at(count)?),
        })
    }

    pub(super) fn step(&self, question: &Question, index: u32) -> Result<Move, Error> {
        let overflow = Error::new(Field::Position, Cause::Overflow);
        let (from, to) =
            (self.whole(question, index)?, self.whole(question, index.saturating_add(1))?);
        let count = to.checked_sub(from).ok_or(overflow)?;
        let notches = i64::from(self.notches);
        let turns = count.checked_div(notches).ok_or(overflow)?;
        let spaces = count.checked_rem(notches).ok_or(overflow)?;
        let leg = Leg {
            part: Part::Spindle,
            sense: self.sense,
            turns: u32::try_from(turns).map_err(|_| overflow)?,
            spaces: u32::try_from(spaces).map_err(|_| overflow)?,
            from: self.at(from)?,
            to: self.at(to)?,
            arms: None,
        };
        let mut legs = crate::List::new();
        legs.push(leg).map_err(|_| overflow)?;
        Ok(Move { legs })
    }

    pub(super) fn working(&self, question: &Question, pen: &mut Pen) -> Result<(), Error> {
        let Some(step) = question.step()? else { return Ok(()) };
        let each = step.turns().times(i64::from(self.notches))?;
        pen.line().whole(i64::from(self.notches));
        match question.parts() {
            Some(parts) if step.turns().num() == 1 => {
                pen.sign(Sign::Over).whole(i64::from(parts));
            }
            _ => {
                pen.times().value(step.turns());
            }
        }
        pen.equals().value(each).remark(Word::Notches);
        Ok(())
    }
}

/// Offers every direct plate on which all positions fall on notches.
pub(super) fn direct(
    question: &Question,
    head: &Head,
    keep: &mut dyn FnMut(Direct, Errors) -> Result<(), Error>,
) -> Result<(), Error> {
    for &notches in &head.direct {
        let way = Direct { notches, sense: head.work_turns };
        if way.fits(question)? {
            keep(way, Errors::NONE)?;
        }
    }
    Ok(())
}
