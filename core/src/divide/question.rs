//! What a drawing asks for, and the exact angle of each position.
use super::graduation::{Graduation, Marks};
use crate::bounds::{self, MAX_ANGLES};
use crate::error::{Cause, Error, Field};
use crate::list::List;
use crate::measure::Angle;
use crate::number::{Fraction, gcd, mod_inverse};

/// A division asked for. Long lists are borrowed; [`Asked`] owns them.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Question<'a> {
    /// Equal parts in one turn.
    Parts(Parts),
    /// One angle, set once or several times in a row.
    Angle(Repeated),
    /// Angles measured from one zero; the first is where the work stands at the start.
    List(&'a [Angle]),
    /// Equal parts with marks of several lengths and numbers.
    Marks(Graduation<'a>),
}

/// Equal parts in one turn, and the order in which they are cut.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Parts {
    /// How many parts.
    pub count: u32,
    /// Cut every `every`-th position: 1 is one after another; more spreads heat
    /// and error (block indexing).
    pub every: u32,
}

/// An angle set `times` times in a row.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Repeated {
    /// The angle, above nought and at most one turn.
    pub angle: Angle,
    /// How many moves of it.
    pub times: u32,
}

impl Question<'_> {
    /// Checks the question against the bounds table.
    ///
    /// # Errors
    /// The first value out of bounds, with what is allowed.
    pub fn check(&self) -> Result<(), Error> {
        match self {
            Self::Parts(parts) => {
                bounds::DIVISIONS.check(i64::from(parts.count))?;
                bounds::EVERY.check(i64::from(parts.every))?;
                if parts.every >= parts.count {
                    let greatest = parts.count.saturating_sub(1);
                    let cause = Cause::OutOfRange { least: 1, greatest };
                    return Err(Error::new(Field::CutOrder, cause));
                }
                Ok(())
            }
            Self::Angle(repeated) => {
                bounds::TIMES.check(i64::from(repeated.times))?;
                if repeated.angle <= Angle::ZERO || repeated.angle > Angle::TURN {
                    return Err(angle_range());
                }
                Ok(())
            }
            Self::List(angles) => {
                if angles.len() < 2 {
                    return Err(Error::new(Field::List, Cause::Empty));
                }
                if angles.len() > MAX_ANGLES {
                    let most = u16::try_from(MAX_ANGLES).unwrap_or(u16::MAX);
                    return Err(Error::new(Field::List, Cause::TooMany { most }));
                }
                let inside = |a: &Angle| Angle::ZERO <= *a && *a <= Angle::TURN;
                if angles.iter().all(inside) { Ok(()) } else { Err(angle_range()) }
            }
            Self::Marks(graduation) => graduation.check(),
        }
    }

    /// How many positions there are to stop at (cuts to make).
    #[must_use]
    pub fn positions(&self) -> u32 {
        match self {
            Self::Parts(parts) => parts.count,
            Self::Angle(repeated) => repeated.times.saturating_add(1),
            Self::List(angles) => u32::try_from(angles.len()).unwrap_or(u32::MAX),
            Self::Marks(graduation) => graduation.count,
        }
    }

    /// Whether a closing move brings the work home after the last position.
    #[must_use]
    pub const fn closes(&self) -> bool {
        matches!(self, Self::Parts(_) | Self::Marks(_))
    }

    /// The greatest position index: the closed end where the question closes.
    #[must_use]
    pub fn last(&self) -> u32 {
        let positions = self.positions();
        if self.closes() { positions } else { positions.saturating_sub(1) }
    }

    /// Equal parts in one turn, for questions that have them.
    #[must_use]
    pub const fn parts(&self) -> Option<u32> {
        match self {
            Self::Parts(parts) => Some(parts.count),
            Self::Marks(graduation) => Some(graduation.count),
            _ => None,
        }
    }

    /// The one angle by which every move turns the work, where all are equal.
    ///
    /// # Errors
    /// [`Cause::Overflow`].
    pub fn step(&self) -> Result<Option<Angle>, Error> {
        match self {
            Self::Parts(p) if gcd(u64::from(p.every), u64::from(p.count)) == 1 => {
                let turns = Fraction::new(i64::from(p.every), i64::from(p.count))?;
                Ok(Some(Angle::from_turns(turns)))
            }
            Self::Marks(g) => Ok(Some(Angle::from_turns(Fraction::new(1, i64::from(g.count))?))),
            Self::Angle(repeated) => Ok(Some(repeated.angle)),
            Self::Parts(_) | Self::List(_) => Ok(None),
        }
    }

    /// Which of the equal parts position `index` is, counted 0.. round the work;
    /// the index itself where there are no equal parts.
    #[must_use]
    pub fn part_at(&self, index: u32) -> u32 {
        match self {
            Self::Parts(parts) => parts.part_at(index),
            Self::Marks(g) if index == g.count => 0,
            _ => index,
        }
    }

    /// The position at which part `part` (0.. round the work) comes in the
    /// cutting order; the part itself where there are no equal parts.
    #[must_use]
    pub fn index_of(&self, part: u32) -> u32 {
        match self {
            Self::Parts(parts) => parts.index_of(part),
            _ => part,
        }
    }

    /// [`Self::travel`] of every position in turn, in constant time each.
    pub fn travels(&self) -> impl Iterator<Item = Result<Angle, Error>> {
        let mut passes = 0_i64;
        (0..self.positions()).map(move |index| {
            let Self::List(angles) = self else { return self.travel(index) };
            let index = usize::try_from(index).unwrap_or(usize::MAX);
            if index > 0 && listed(angles, index) < listed(angles, index.saturating_sub(1)) {
                passes = passes.saturating_add(1);
            }
            Ok(Angle::from_turns(list_turns(angles, index, passes)?))
        })
    }

    /// How far the work has turned from position 0 to position `index`, always
    /// forward: it counts whole turns too. `index` goes up to [`Self::last`].
    ///
    /// # Errors
    /// [`Cause::OutOfRange`] beyond the last position; [`Cause::Overflow`].
    pub fn travel(&self, index: u32) -> Result<Angle, Error> {
        let last = self.last();
        if index > last {
            let cause = Cause::OutOfRange { least: 0, greatest: last };
            return Err(Error::new(Field::Position, cause));
        }
        let turns = match self {
            Self::Parts(parts) => parts.travel(index)?,
            Self::Angle(repeated) => repeated.angle.turns().times(i64::from(index))?,
            Self::Marks(g) => Fraction::new(i64::from(index), i64::from(g.count))?,
            Self::List(angles) => list_travel(angles, index)?,
        };
        Ok(Angle::from_turns(turns))
    }
}

impl Parts {
    /// Part number (0.. round the work) at position `index` of the cutting order.
    /// With a common factor g of `every` and `count` the order runs through g
    /// cycles, each shifted by one part.
    fn part_at(self, index: u32) -> u32 {
        let (n, m) = (u64::from(self.count), u64::from(self.every));
        let cycle = n.checked_div(gcd(m, n)).unwrap_or(1).max(1);
        let shift = u64::from(index).checked_div(cycle).unwrap_or(0);
        let within = u64::from(index).checked_rem(cycle).unwrap_or(0);
        let part = within.saturating_mul(m).saturating_add(shift).checked_rem(n).unwrap_or(0);
        if index >= self.count { 0 } else { u32::try_from(part).unwrap_or(0) }
    }

    fn index_of(self, part: u32) -> u32 {
        let (n, m) = (u64::from(self.count), u64::from(self.every));
        let shared = gcd(m, n).max(1);
        let cycle = n.checked_div(shared).unwrap_or(1).max(1);
        let step = m.checked_div(shared).unwrap_or(1);
        let part = u64::from(part).checked_rem(n).unwrap_or(0);
        let shift = part.checked_rem(shared).unwrap_or(0);
        let along = part.checked_div(shared).unwrap_or(0);
        let back = mod_inverse(step, cycle).unwrap_or(0);
        let within = along.saturating_mul(back).checked_rem(cycle).unwrap_or(0);
        u32::try_from(shift.saturating_mul(cycle).saturating_add(within)).unwrap_or(0)
    }

    /// Turns of the work up to position `index`; the closed end is the next whole turn.
    fn travel(self, index: u32) -> Result<Fraction, Error> {
        if index == self.count {
            let end = self.travel(index.saturating_sub(1))?;
            return Ok(Fraction::whole(end.negated().floor()).negated());
        }
        let (n, m) = (i64::from(self.count), i64::from(self.every));
        let shared = gcd(u64::from(self.every), u64::from(self.count));
        let shared = i64::try_from(shared).unwrap_or(1);
        let overflow = Error::new(Field::Position, Cause::Overflow);
        let cycle = n.checked_div(shared).ok_or(overflow)?;
        let shift = i64::from(index).checked_div(cycle).ok_or(overflow)?;
        let parts = i64::from(index).checked_mul(m).and_then(|p| p.checked_add(shift));
        Fraction::new(parts.ok_or(overflow)?, n)
    }
}

/// From the first angle of a list forward to the one at `index`, passing all
/// between: their difference, and a turn for each time the list climbs past zero.
fn list_travel(angles: &[Angle], index: u32) -> Result<Fraction, Error> {
    let index = usize::try_from(index).unwrap_or(usize::MAX);
    let passes = (1..=index).filter(|&k| listed(angles, k) < listed(angles, k.saturating_sub(1)));
    list_turns(angles, index, i64::try_from(passes.count()).unwrap_or(i64::MAX))
}

/// From the first angle to the one at `index` after `passes` of zero.
fn list_turns(angles: &[Angle], index: usize, passes: i64) -> Result<Fraction, Error> {
    listed(angles, index).checked_sub(listed(angles, 0))?.checked_add(Fraction::whole(passes))
}

/// The angle at `index` as part of a turn: 360° is 0°.
fn listed(angles: &[Angle], index: usize) -> Fraction {
    angles.get(index).map_or(Fraction::ZERO, |angle| angle.turns().part())
}

fn angle_range() -> Error {
    Error::new(Field::Angle, Cause::OutOfRange { least: 0, greatest: 360 })
}

/// A question that owns its lists: for storage, files and front ends.
#[expect(clippy::large_enum_variant, reason = "there is no heap to put the list on")]
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Asked {
    /// Equal parts in one turn.
    Parts(Parts),
    /// One angle, set once or several times in a row.
    Angle(Repeated),
    /// Angles measured from one zero.
    List(List<Angle, MAX_ANGLES>),
    /// Equal parts with marks of several lengths and numbers.
    Marks(Marks),
}

impl Asked {
    /// The question, borrowed.
    #[must_use]
    pub fn question(&self) -> Question<'_> {
        match self {
            Self::Parts(parts) => Question::Parts(*parts),
            Self::Angle(repeated) => Question::Angle(*repeated),
            Self::List(angles) => Question::List(angles),
            Self::Marks(Marks { count, kinds, pattern, numbers }) => {
                Question::Marks(Graduation { count: *count, kinds, pattern, numbers: *numbers })
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    extern crate std;
    use std::vec::Vec;

    #[test]
    fn every_order_cuts_each_part_once_and_ends_on_a_whole_turn() {
        for count in 2..=60 {
            for every in 1..count {
                let question = Question::Parts(Parts { count, every });
                question.check().unwrap();
                let mut parts: Vec<u32> = (0..count).map(|i| question.part_at(i)).collect();
                for (i, part) in parts.iter().enumerate() {
                    let stands = question.travel(i as u32).unwrap().turns().part();
                    assert_eq!(stands, Fraction::new(i64::from(*part), i64::from(count)).unwrap());
                }
                for i in 0..count {
                    assert_eq!(question.index_of(question.part_at(i)), i, "{count} every {every}");
                    let (a, b) = (question.travel(i).unwrap(), question.travel(i + 1).unwrap());
                    assert!(b > a, "{count} every {every}: the work only turns forward");
                }
                assert!(question.travel(count).unwrap().turns().is_whole());
                parts.sort_unstable();
                assert_eq!(parts, (0..count).collect::<Vec<_>>(), "{count} every {every}");
            }
        }
    }

    #[test]
    fn a_list_only_turns_forward() {
        let degree = |d| Angle::from_degrees(Fraction::whole(d)).unwrap();
        let list: Vec<Angle> = [350, 10, 10, 200, 90, 0, 360].into_iter().map(degree).collect();
        let question = Question::List(&list);
        let travels: Vec<Angle> = question.travels().map(Result::unwrap).collect();
        for (i, travel) in travels.iter().enumerate() {
            assert_eq!(question.travel(i as u32), Ok(*travel));
        }
        let degrees: Vec<i64> = travels.iter().map(|a| a.degrees().unwrap().num()).collect();
        assert_eq!(degrees, [0, 20, 20, 210, 460, 730, 730]);
    }
}
