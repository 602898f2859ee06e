//! Equal divisions with marks of several lengths and numbers: a dial, a graduated ring.
//!
//! A dial's mark `m` stands `m` divisions from the zero mark, counted the way its
//! numbers climb; lines and numbers go by it. Marks are cut in the order in which the
//! work passes the tool, which is the other way round where the numbers fall.
use crate::bounds::{self, MAX_MARK_KINDS, MAX_PATTERN};
use crate::error::{Cause, Error, Field};
use crate::head::Sense;
use crate::list::List;
use crate::measure::Length;
use crate::number::Fraction;

/// Equal divisions of a dial with marks of several kinds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Graduation<'a> {
    /// How many marks in one turn.
    pub count: u32,
    /// Kinds of mark, each with its line length; at least one.
    pub kinds: &'a [MarkKind],
    /// Kind of each mark from the zero mark on, repeated as often as needed.
    pub pattern: &'a [u8],
    /// Numbers on the dial.
    pub numbers: Option<Numbers>,
}

/// A kind of mark.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct MarkKind {
    /// Length of its line.
    pub length: Length,
}

/// How a dial is numbered.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Numbers {
    /// Every `every`-th mark carries a number.
    pub every: u32,
    /// By how much numbers climb from one mark to the next.
    pub per_mark: u32,
    /// The way numbers climb round the work, seen from its front.
    pub climbs: Sense,
    /// Whether the zero mark reads 0; otherwise it reads the full count.
    pub zero: bool,
}

/// A mark of a graduation: what to cut, and what to stamp beside it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Mark {
    /// Its kind, as listed in the question.
    pub kind: u8,
    /// Length of its line.
    pub length: Length,
    /// The number beside it, if it carries one.
    pub number: Option<u32>,
}

/// A [`Graduation`] that owns its lists.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Marks {
    /// How many marks in one turn.
    pub count: u32,
    /// Kinds of mark.
    pub kinds: List<MarkKind, MAX_MARK_KINDS>,
    /// Kind of each mark, repeated as often as needed.
    pub pattern: List<u8, MAX_PATTERN>,
    /// Numbers on the dial.
    pub numbers: Option<Numbers>,
}

impl Graduation<'_> {
    pub(super) fn check(&self) -> Result<(), Error> {
        bounds::DIVISIONS.check(i64::from(self.count))?;
        let most = |most| Cause::TooMany { most: u16::try_from(most).unwrap_or(u16::MAX) };
        if self.kinds.is_empty() || self.pattern.is_empty() {
            return Err(Error::new(Field::Marks, Cause::Empty));
        }
        if self.kinds.len() > MAX_MARK_KINDS {
            return Err(Error::new(Field::Marks, most(MAX_MARK_KINDS)));
        }
        if self.pattern.len() > MAX_PATTERN {
            return Err(Error::new(Field::Marks, most(MAX_PATTERN)));
        }
        let known = |&kind: &u8| usize::from(kind) < self.kinds.len();
        let sized = |kind: &MarkKind| kind.length.mm() > Fraction::ZERO;
        let numbered = self.numbers.is_none_or(|n| {
            n.every >= 1 && n.per_mark >= 1 && n.every <= self.count && n.per_mark <= 10_000
        });
        if !self.pattern.iter().all(known) || !self.kinds.iter().all(sized) || !numbered {
            return Err(Error::new(Field::Marks, Cause::Conflict));
        }
        Ok(())
    }

    /// Which mark of the dial stands at position `index`, counted from the zero mark the
    /// way the numbers climb, on a head whose work turns `work_turns` for a clockwise
    /// handle.
    ///
    /// Marks follow each other round the work against the way it turns, so from position
    /// to position the numbers climb only when `climbs` is the other sense. A dial
    /// without numbers is counted as it is cut.
    #[must_use]
    pub fn mark_at(&self, index: u32, work_turns: Sense) -> Option<u32> {
        let index = index.checked_rem(self.count)?;
        let falls = self.numbers.is_some_and(|numbers| numbers.climbs == work_turns);
        if falls { self.count.checked_sub(index)?.checked_rem(self.count) } else { Some(index) }
    }

    /// What to cut and what to stamp at position `index`, on a head whose work turns
    /// `work_turns` for a clockwise handle.
    #[must_use]
    pub fn at(&self, index: u32, work_turns: Sense) -> Option<Mark> {
        self.mark(self.mark_at(index, work_turns)?)
    }

    /// What is cut and stamped at mark `mark` of the dial, counted from its zero mark the
    /// way the numbers climb.
    #[must_use]
    pub fn mark(&self, mark: u32) -> Option<Mark> {
        let place = usize::try_from(mark).ok()?.checked_rem(self.pattern.len())?;
        let kind = *self.pattern.get(place)?;
        let length = self.kinds.get(usize::from(kind))?.length;
        let number = self.numbers.and_then(|numbers| {
            let numbered = mark.checked_rem(numbers.every)? == 0;
            let counted = if mark == 0 && !numbers.zero { self.count } else { mark };
            numbered.then(|| counted.checked_mul(numbers.per_mark)).flatten()
        });
        Some(Mark { kind, length, number })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    extern crate std;
    use std::vec::Vec;

    const KINDS: [i64; 2] = [5, 3];

    fn number(count: u32, climbs: Sense, zero: bool, index: u32) -> Option<u32> {
        at(count, climbs, zero, index).number
    }

    /// Every tenth mark long and numbered, on work that turns clockwise.
    fn at(count: u32, climbs: Sense, zero: bool, index: u32) -> Mark {
        let kinds = KINDS.map(|mm| MarkKind { length: Length::from_mm(Fraction::whole(mm)) });
        let numbers = Some(Numbers { every: 10, per_mark: 1, climbs, zero });
        let pattern = [0, 1, 1, 1, 1, 1, 1, 1, 1, 1];
        let dial = Graduation { count, kinds: &kinds, pattern: &pattern, numbers };
        dial.check().unwrap();
        dial.at(index, Sense::Clockwise).unwrap()
    }

    #[test]
    fn numbers_climb_the_way_asked() {
        let (against, with) = (Sense::Anticlockwise, Sense::Clockwise);
        assert_eq!(number(60, against, true, 10), Some(10));
        assert_eq!(number(60, against, true, 0), Some(0));
        assert_eq!(number(60, against, true, 11), None);
        assert_eq!(number(60, with, false, 10), Some(50));
        assert_eq!(number(60, with, false, 0), Some(60));
    }

    #[test]
    fn a_ring_that_tens_do_not_fill_has_its_odd_gap_before_zero_either_way() {
        for climbs in [Sense::Anticlockwise, Sense::Clockwise] {
            let all: Vec<Mark> = (0..365).map(|k| at(365, climbs, true, k)).collect();
            let mut numbers: Vec<u32> = all.iter().filter_map(|mark| mark.number).collect();
            assert!(all.iter().all(|mark| (mark.kind == 0) == mark.number.is_some()));
            if climbs == Sense::Clockwise {
                assert_eq!(numbers[..3], [0, 360, 350]);
                numbers[1..].reverse();
            }
            assert_eq!(numbers, (0..37).map(|n| n * 10).collect::<Vec<_>>());
        }
        assert_eq!(number(365, Sense::Clockwise, false, 0), Some(365));
        assert_eq!(number(365, Sense::Clockwise, true, 5), Some(360));
    }
}
