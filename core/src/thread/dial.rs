//! The dial of a slide: marks to lengths and back, zero at touch-on.
//!
//! ```
//! use handturn::measure::Length;
//! use handturn::number::Fraction;
//! use handturn::thread::dial::{Dial, Reads, Runs};
//! // A cross slide that reads diameter, 0.05 mm a mark, 100 marks: 1.30 mm in.
//! let mm = |num, den| Fraction::new(num, den).map(Length::from_mm);
//! let dial = Dial { division: mm(1, 20)?, reads: Reads::Diameter, marks: 100 };
//! let (marks, left) = dial.nearest(mm(13, 10)?)?;
//! let at = dial.at(marks, Runs::Forwards)?;
//! assert_eq!((at.turns, at.mark, at.shows, left), (0, 52, mm(26, 10)?, mm(0, 1)?));
//! // In a bore the slide is drawn outwards and the dial counts down.
//! assert_eq!(dial.at(marks, Runs::Backwards)?.mark, 48);
//! # Ok::<(), handturn::Error>(())
//! ```
use super::given::{minus, over, size, times};
use crate::bounds::SLIDE_MARKS;
use crate::error::{Cause, Error, Field};
use crate::measure::Length;

/// What the dial's figures mean.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Reads {
    /// How far the slide went.
    Travel,
    /// What comes off the diameter: twice the travel of a cross slide.
    Diameter,
}

/// A slide's dial.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Dial {
    /// What one mark stands for, as the dial reads: 1/1000 in is exactly that.
    pub division: Length,
    /// Travel or diameter.
    pub reads: Reads,
    /// Marks once round.
    pub marks: u32,
}

/// Which way the handle turns from touch-on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Runs {
    /// The way the figures rise: work turned outside.
    Forwards,
    /// The way the figures fall: in a bore.
    Backwards,
}

/// A reading, counted from zero at touch-on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Reading {
    /// How many marks from zero, whole turns of the dial included.
    pub from_zero: u32,
    /// Whole turns of the dial among them.
    pub turns: u32,
    /// The mark that stands at the line, 0 at touch-on.
    pub mark: u32,
    /// What the marks from zero stand for, as the dial reads.
    pub shows: Length,
    /// How far the slide stands from touch-on.
    pub travel: Length,
}

const OVERFLOW: Error = Error::new(Field::SlideDial, Cause::Overflow);

impl Dial {
    /// How far the slide goes from mark to mark.
    ///
    /// # Errors
    /// A division of nought or out of bounds; marks out of bounds.
    pub fn mark(&self) -> Result<Length, Error> {
        size(self.division, Field::SlideDial)?;
        SLIDE_MARKS.check(i64::from(self.marks))?;
        match self.reads {
            Reads::Travel => Ok(self.division),
            Reads::Diameter => over(self.division, 2, Field::SlideDial),
        }
    }

    /// The whole number of marks nearest to `travel` of the slide, a half upwards, and
    /// what is left of it beside them (`travel` less what the marks give).
    ///
    /// # Errors
    /// As [`mark`](Self::mark); a travel below nought or out of bounds.
    pub fn nearest(&self, travel: Length) -> Result<(u32, Length), Error> {
        super::given::from_nought(travel, Field::Length)?;
        let mark = self.mark()?;
        let (marks, _) = travel.mm().checked_div(mark.mm())?.nearest()?;
        let left = minus(travel, times(mark, marks, Field::SlideDial)?, Field::SlideDial)?;
        Ok((u32::try_from(marks).map_err(|_| OVERFLOW)?, left))
    }

    /// The reading `from_zero` marks after touch-on.
    ///
    /// # Errors
    /// As [`mark`](Self::mark).
    pub fn at(&self, from_zero: u32, runs: Runs) -> Result<Reading, Error> {
        let travel = times(self.mark()?, i64::from(from_zero), Field::SlideDial)?;
        let shows = times(self.division, i64::from(from_zero), Field::SlideDial)?;
        let turns = from_zero.checked_div(self.marks).ok_or(OVERFLOW)?;
        let past = from_zero.checked_rem(self.marks).ok_or(OVERFLOW)?;
        let mark = match runs {
            Runs::Backwards if past > 0 => self.marks.checked_sub(past).ok_or(OVERFLOW)?,
            _ => past,
        };
        Ok(Reading { from_zero, turns, mark, shows, travel })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::number::Fraction;

    fn inch(num: i64, den: i64) -> Length {
        Length::from_inches(Fraction::new(num, den).unwrap()).unwrap()
    }

    #[track_caller]
    fn check(dial: Dial, travel: Length, from_zero: u32, turns_and_marks: [(u32, u32); 2]) {
        let (marks, left) = dial.nearest(travel).unwrap();
        let [on, back] = [Runs::Forwards, Runs::Backwards].map(|r| dial.at(marks, r).unwrap());
        assert_eq!(marks, from_zero);
        assert_eq!([on, back].map(|r| (r.turns, r.mark)), turns_and_marks);
        assert_eq!(on.travel.mm().checked_add(left.mm()).unwrap(), travel.mm());
        assert!(left.mm().abs().times(2).unwrap() <= dial.mark().unwrap().mm());
    }

    #[test]
    fn readings_each_way() {
        let thou = Dial { division: inch(1, 1000), reads: Reads::Travel, marks: 100 };
        check(thou, inch(0, 1), 0, [(0, 0), (0, 0)]);
        check(thou, inch(36, 1000), 36, [(0, 36), (0, 64)]);
        check(thou, inch(100, 1000), 100, [(1, 0), (1, 0)]);
        check(thou, inch(2345, 10_000), 235, [(2, 35), (2, 65)]);
        // A metric depth on an inch dial keeps its residual exactly.
        let mm = Length::from_mm(Fraction::new(451, 1000).unwrap());
        check(thou, mm, 18, [(0, 18), (0, 82)]);
        let on_diameter = Dial { reads: Reads::Diameter, ..thou };
        check(on_diameter, mm, 36, [(0, 36), (0, 64)]);
    }

    #[test]
    fn a_dial_out_of_bounds_says_so() {
        let dial = Dial { division: inch(0, 1), reads: Reads::Travel, marks: 100 };
        assert_eq!(dial.mark(), Err(Error::new(Field::SlideDial, Cause::Zero)));
        let one = Dial { division: inch(1, 1000), marks: 1, ..dial };
        let range = Cause::OutOfRange { least: 2, greatest: 10_000 };
        assert_eq!(one.at(3, Runs::Forwards), Err(Error::new(Field::SlideDial, range)));
    }
}
