//! A vernier beside a dial: how many divisions, over how many marks, and which of its
//! lines meets a mark for each reading.
//!
//! Method: N divisions stand over N − 1 marks of the dial (direct: it is numbered the way
//! the dial is) or over N + 1 (retrograde: numbered against it), so that a division
//! differs from a mark by 1/N of it, the least reading. A long vernier takes twice as
//! many marks for lines that are easier to tell apart: 2N − 1 or 2N + 1. Rule of
//! arithmetic; common practice in surveying and marking out.
use crate::bounds;
use crate::error::{Cause, Error, Field};
use crate::measure::Angle;
use crate::number::Fraction;

/// A vernier that is wanted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Vernier {
    /// Angle between marks of the dial.
    pub main: Angle,
    /// Least reading wanted, a whole part of it.
    pub least: Angle,
    /// Whether it is numbered against the dial, over N + 1 marks.
    pub retrograde: bool,
    /// Whether each division stands over two marks.
    pub long: bool,
    /// Whether it runs to both sides of its zero, for a dial read both ways.
    pub double: bool,
}

impl Default for Vernier {
    /// Whole degrees read to five minutes, direct and single.
    fn default() -> Self {
        let part = |den| Angle::from_turns(Fraction::new(1, den).unwrap_or(Fraction::ONE));
        let (main, least) = (part(360), part(4_320));
        Self { main, least, retrograde: false, long: false, double: false }
    }
}

/// A vernier as it is to be cut.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Laid {
    /// Its divisions, of one side where it is double.
    pub divisions: u32,
    /// Marks of the dial that they stand over.
    pub over_marks: u32,
    /// Angle of one division.
    pub division: Angle,
    /// Angle from its first line to its last, both sides together.
    pub spans: Angle,
    /// Its lines, both ends counted.
    pub lines: u32,
}

/// A dial read with its vernier.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Reads {
    /// The mark of the dial that the vernier's zero has reached or passed.
    pub mark: i64,
    /// The line of the vernier that comes nearest to a mark, from its zero.
    pub line: u32,
    /// By how much the reading is more than mark and line tell; nought where they meet.
    pub left: Angle,
}

impl Vernier {
    /// A direct, single one that reads a dial of `count` marks to one of `parts` of a mark.
    ///
    /// # Errors
    /// As [`bounds::DIAL_MARKS`] and [`Self::laid`].
    pub fn of_parts(count: u32, parts: u32) -> Result<Self, Error> {
        let count = bounds::DIAL_MARKS.check(i64::from(count)).map_err(|e| e.of(Field::Marks))?;
        let main = Fraction::new(1, count)?;
        let least = main.over(i64::from(parts)).map_err(|e| e.of(Field::Vernier))?;
        let (main, least) = (Angle::from_turns(main), Angle::from_turns(least));
        let vernier = Self { main, least, ..Self::default() };
        vernier.laid().map(|_| vernier)
    }

    /// How it is to be cut.
    ///
    /// # Errors
    /// [`Field::Angle`] for a mark that is not above nought or more than half a turn;
    /// [`Field::Vernier`]: [`Cause::Zero`] for a least reading that is not above nought,
    /// [`Cause::NotWhole`] where it is no whole part of a mark, [`Cause::OutOfRange`] for
    /// fewer than 2 divisions or more than [`bounds::VERNIER`] allows,
    /// [`Cause::Conflict`] where it would reach more than once round; [`Cause::Overflow`].
    pub fn laid(&self) -> Result<Laid, Error> {
        let of = |cause| Error::new(Field::Vernier, cause);
        let half = Fraction::new(1, 2)?;
        if self.main <= Angle::ZERO || self.main.turns() > half {
            return Err(Error::new(Field::Angle, Cause::OutOfRange { least: 0, greatest: 180 }));
        }
        if self.least <= Angle::ZERO {
            return Err(of(Cause::Zero));
        }
        let parts = self.main.turns().checked_div(self.least.turns())?;
        if !parts.is_whole() {
            return Err(of(Cause::NotWhole));
        }
        let (least, greatest) = (2, bounds::VERNIER.greatest);
        let divisions = u32::try_from(parts.num()).ok();
        let divisions = divisions.filter(|n| (least..=greatest).contains(n));
        let divisions = divisions.ok_or(of(Cause::OutOfRange { least, greatest }))?;
        let division = self.division()?;
        let one_side = division.turns().times(i64::from(divisions))?;
        let spans = if self.double { one_side.times(2)? } else { one_side };
        if spans > Fraction::ONE {
            return Err(of(Cause::Conflict));
        }
        let over = one_side.checked_div(self.main.turns())?;
        let over_marks = u32::try_from(over.num()).map_err(|_| of(Cause::Overflow))?;
        let both = if self.double { divisions.saturating_mul(2) } else { divisions };
        let (spans, lines) = (Angle::from_turns(spans), both.saturating_add(1));
        Ok(Laid { divisions, over_marks, division, spans, lines })
    }

    /// One division: one mark or two, less the least reading, or with it.
    fn division(&self) -> Result<Angle, Error> {
        let over = self.main.turns().times(if self.long { 2 } else { 1 })?;
        let least = self.least.turns();
        let turns = if self.retrograde { over.checked_add(least) } else { over.checked_sub(least) };
        Ok(Angle::from_turns(turns?))
    }

    /// Where its line `line` stands, from its zero, the way the dial climbs; below nought
    /// where it lies the other way. Lines of the other side of a double one are counted
    /// below nought.
    ///
    /// # Errors
    /// As [`Self::laid`]; [`Cause::OutOfRange`] of [`Field::Vernier`] for a line that it
    /// doesn't have.
    pub fn line(&self, line: i32) -> Result<Angle, Error> {
        let laid = self.laid()?;
        if line.unsigned_abs() > laid.divisions || (line < 0 && !self.double) {
            let cause = Cause::OutOfRange { least: 0, greatest: laid.divisions };
            return Err(Error::new(Field::Vernier, cause));
        }
        let along = laid.division.turns().times(i64::from(line))?;
        Ok(Angle::from_turns(if self.retrograde { along.negated() } else { along }))
    }

    /// Which mark and which line tell `reading`, the angle of its zero from the dial's:
    /// the mark reached, and the line that meets a mark or comes nearest to one.
    ///
    /// # Errors
    /// As [`Self::laid`].
    pub fn read(&self, reading: Angle) -> Result<Reads, Error> {
        let laid = self.laid()?;
        let marks = reading.turns().checked_div(self.main.turns())?;
        let lines = marks.part().times(i64::from(laid.divisions))?;
        let (line, _) = lines.nearest()?;
        let left = lines.checked_sub(Fraction::whole(line))?;
        let line = u32::try_from(line).unwrap_or(laid.divisions);
        let left = Angle::from_turns(left.checked_mul(self.least.turns())?);
        Ok(Reads { mark: marks.floor(), line, left })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn arcsec(n: i64) -> Angle {
        Angle::from_arcsec(Fraction::whole(n)).unwrap()
    }

    fn wanted(main: i64, least: i64) -> Vernier {
        Vernier { main: arcsec(main), least: arcsec(least), ..Vernier::default() }
    }

    #[track_caller]
    fn check(vernier: Vernier, divisions: u32, over_marks: u32, division: Angle, lines: u32) {
        let laid = vernier.laid().unwrap();
        let found = (laid.divisions, laid.over_marks, laid.division, laid.lines);
        assert_eq!(found, (divisions, over_marks, division, lines));
        let sides = if vernier.double { 2 } else { 1 };
        let whole = division.turns().times(i64::from(divisions)).unwrap();
        assert_eq!(laid.spans.turns(), whole.times(sides).unwrap());
        assert_eq!(whole, vernier.main.turns().times(i64::from(over_marks)).unwrap());
    }

    #[test]
    fn rows() {
        // Whole degrees to five minutes: 12 over 11, or 12 over 23 as on a bevel protractor.
        let degrees = wanted(3600, 300);
        check(degrees, 12, 11, arcsec(3300), 13);
        check(Vernier { long: true, double: true, ..degrees }, 12, 23, arcsec(6900), 25);
        check(Vernier { retrograde: true, ..degrees }, 12, 13, arcsec(3900), 13);
        check(Vernier { retrograde: true, long: true, ..degrees }, 12, 25, arcsec(7500), 13);
        // Thirds of a degree to half minutes: 40 over 39.
        check(wanted(1200, 30), 40, 39, arcsec(1170), 41);
        // Sixths to ten seconds: 60 over 59.
        check(wanted(600, 10), 60, 59, arcsec(590), 61);
    }

    #[test]
    fn parts_of_a_mark() {
        let vernier = Vernier::of_parts(365, 10).unwrap();
        let turns = |num, den| Angle::from_turns(Fraction::new(num, den).unwrap());
        check(vernier, 10, 9, turns(9, 3650), 11);
        assert_eq!(Vernier::of_parts(360, 12).unwrap(), wanted(3600, 300));
        let cause = |count, parts| Vernier::of_parts(count, parts).unwrap_err();
        assert_eq!(cause(1, 10).field, Field::Marks);
        assert_eq!(cause(100, 0), Error::new(Field::Vernier, Cause::Zero));
        assert_eq!(cause(100, 1).field, Field::Vernier);
        // Over 99 of 12 marks: more than a turn.
        assert_eq!(cause(12, 100), Error::new(Field::Vernier, Cause::Conflict));
    }

    #[test]
    fn what_is_no_vernier() {
        let no = |vernier: Vernier| vernier.laid().map_err(|e| (e.field, e.cause)).unwrap_err();
        let of = |cause| (Field::Vernier, cause);
        let range = Cause::OutOfRange { least: 2, greatest: 100 };
        assert_eq!(no(wanted(3600, 0)), of(Cause::Zero));
        assert_eq!(no(wanted(3600, -5)), of(Cause::Zero));
        assert_eq!(no(wanted(3600, 7)), of(Cause::NotWhole));
        assert_eq!(no(wanted(3600, 7200)), of(Cause::NotWhole));
        assert_eq!(no(wanted(3600, 3600)), of(range));
        assert_eq!(no(wanted(3600, 10)), of(range));
        assert_eq!(no(wanted(0, 10)).0, Field::Angle);
        assert_eq!(no(wanted(1_296_000, 10)).0, Field::Angle);
        // 30 divisions over 29 marks of 15 degrees are more than a turn.
        assert_eq!(no(wanted(54_000, 1800)), of(Cause::Conflict));
        let single = wanted(3600, 300);
        assert!(single.line(12).is_ok() && single.line(-1).is_err() && single.line(13).is_err());
        assert!(Vernier { double: true, ..single }.line(-12).is_ok());
    }

    #[test]
    fn a_reading_between_lines_tells_what_is_left() {
        let reads = wanted(3600, 300).read(arcsec(7 * 3600 + 20 * 60 + 100)).unwrap();
        assert_eq!((reads.mark, reads.line, reads.left), (7, 4, arcsec(100)));
        // Nearest to the last line: the next mark has all but come.
        let reads = wanted(3600, 300).read(arcsec(2 * 3600 - 60)).unwrap();
        assert_eq!((reads.mark, reads.line, reads.left), (1, 12, arcsec(-60)));
        let reads = wanted(3600, 300).read(arcsec(-300)).unwrap();
        assert_eq!((reads.mark, reads.line, reads.left), (-1, 11, Angle::ZERO));
    }
}
