//! Which positions of a round are cut, as stretches: small and of fixed size,
//! because work is cut in order but for the few times somebody jumps.
use crate::error::{Cause, Error, Field};

/// Separate stretches that can be kept.
const MOST: u16 = 16;

/// A stretch of cut positions, `from..to`; `0..0` is unused.
type Stretch = (u16, u16);

/// The set of cut positions: at most 16 separate stretches.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub struct Cuts {
    /// Rising, with a gap between neighbours; unused entries at the end.
    stretches: [Stretch; MOST as usize],
    used: u8,
}

impl Cuts {
    /// Nothing cut.
    pub(super) const NONE: Self = Self { stretches: [(0, 0); MOST as usize], used: 0 };

    /// One stretch too many.
    pub(super) const FULL: Error = Error::new(Field::Position, Cause::TooMany { most: MOST });

    /// The set of these stretches `from..to`, as they were told by [`Self::stretches`].
    ///
    /// # Errors
    /// [`Cause::Conflict`] of [`Field::Record`] when they are empty, touch, fall or
    /// go beyond `positions`; [`Cause::TooMany`] above 16 of them.
    pub(super) fn from_stretches(
        stretches: impl IntoIterator<Item = (u32, u32)>,
        positions: u32,
    ) -> Result<Self, Error> {
        let conflict = Error::new(Field::Record, Cause::Conflict);
        let (mut cuts, mut end) = (Self::NONE, None);
        for (from, to) in stretches {
            let apart = end.is_none_or(|end| end < from);
            if !apart || from >= to || to > positions {
                return Err(conflict);
            }
            let short = |n: u32| u16::try_from(n).map_err(|_| OVERFLOW);
            cuts.open_up(usize::from(cuts.used), (short(from)?, short(to)?))?;
            end = Some(to);
        }
        Ok(cuts)
    }

    /// The stretches `from..to` in rising order, as positions from 0.
    pub fn stretches(&self) -> impl Iterator<Item = (u32, u32)> + '_ {
        self.used().iter().map(|&(from, to)| (u32::from(from), u32::from(to)))
    }

    /// How many positions are cut.
    #[must_use]
    pub fn count(&self) -> u32 {
        self.stretches().map(|(from, to)| to.saturating_sub(from)).sum()
    }

    /// Whether position `index` is cut.
    #[must_use]
    pub fn contains(&self, index: u32) -> bool {
        self.stretches().any(|(from, to)| from <= index && index < to)
    }

    /// The positions below `positions` that are not cut, as stretches `from..to`.
    pub fn gaps(&self, positions: u32) -> impl Iterator<Item = (u32, u32)> + '_ {
        let starts = core::iter::once(0).chain(self.stretches().map(|(_, to)| to));
        let ends = self.stretches().map(|(from, _)| from).chain(core::iter::once(positions));
        starts.zip(ends).filter(|(from, to)| from < to)
    }

    /// Whether cutting `index` now or later is sure to fit.
    #[must_use]
    pub(super) fn has_room(&self, index: u32) -> bool {
        let joins = |(from, to): (u32, u32)| from <= index.saturating_add(1) && index <= to;
        self.stretches().any(joins) || u16::from(self.used) < MOST
    }

    /// Adds `index`; whether it was new.
    ///
    /// # Errors
    /// [`Cause::TooMany`] when it would begin one stretch too many.
    pub(super) fn insert(&mut self, index: u32) -> Result<bool, Error> {
        if self.contains(index) {
            return Ok(false);
        }
        let one = u16::try_from(index).map_err(|_| OVERFLOW)?;
        let next = one.checked_add(1).ok_or(OVERFLOW)?;
        let place = self.used().iter().position(|s| s.0 > one).unwrap_or(self.used().len());
        let joins_before = place.checked_sub(1).filter(|&p| self.get(p).1 == one);
        let joins_after = place < self.used().len() && self.get(place).0 == next;
        match (joins_before, joins_after) {
            (Some(before), true) => {
                self.set(before, (self.get(before).0, self.get(place).1));
                self.close_up(place);
            }
            (Some(before), false) => self.set(before, (self.get(before).0, next)),
            (None, true) => self.set(place, (one, self.get(place).1)),
            (None, false) => self.open_up(place, (one, next))?,
        }
        Ok(true)
    }

    /// Takes `index` out again.
    ///
    /// # Errors
    /// [`Cause::TooMany`] when that would leave one stretch too many; never
    /// when it was the newest to come in.
    pub(super) fn remove(&mut self, index: u32) -> Result<(), Error> {
        let one = u16::try_from(index).map_err(|_| OVERFLOW)?;
        let next = one.checked_add(1).ok_or(OVERFLOW)?;
        let Some(place) = self.used().iter().position(|&(from, to)| from <= one && one < to) else {
            return Ok(());
        };
        let (from, to) = self.get(place);
        match (from == one, to == next) {
            (true, true) => self.close_up(place),
            (true, false) => self.set(place, (next, to)),
            (false, true) => self.set(place, (from, one)),
            (false, false) => {
                self.open_up(place, (from, one))?;
                self.set(place.saturating_add(1), (next, to));
            }
        }
        Ok(())
    }

    fn used(&self) -> &[Stretch] {
        self.stretches.get(..usize::from(self.used)).unwrap_or(&[])
    }

    fn get(&self, place: usize) -> Stretch {
        self.stretches.get(place).copied().unwrap_or((0, 0))
    }

    fn set(&mut self, place: usize, stretch: Stretch) {
        if let Some(entry) = self.stretches.get_mut(place) {
            *entry = stretch;
        }
    }

    /// Puts `stretch` in at `place`, the later ones moving on.
    fn open_up(&mut self, place: usize, stretch: Stretch) -> Result<(), Error> {
        if u16::from(self.used) >= MOST {
            return Err(Self::FULL);
        }
        let mut carried = stretch;
        for entry in self.stretches.iter_mut().skip(place) {
            core::mem::swap(entry, &mut carried);
        }
        self.used = self.used.saturating_add(1);
        Ok(())
    }

    /// Takes the stretch at `place` out, the later ones moving up.
    fn close_up(&mut self, place: usize) {
        for place in place..self.stretches.len() {
            self.set(place, self.get(place.saturating_add(1)));
        }
        self.used = self.used.saturating_sub(1);
    }
}

const OVERFLOW: Error = Error::new(Field::Position, Cause::Overflow);

#[cfg(test)]
mod tests {
    use super::*;
    extern crate std;
    use std::collections::BTreeSet;
    use std::vec::Vec;

    fn same(cuts: &Cuts, model: &BTreeSet<u32>, positions: u32) {
        assert_eq!(cuts.count() as usize, model.len());
        let gaps: Vec<u32> = cuts.gaps(positions).flat_map(|(from, to)| from..to).collect();
        let cut: Vec<u32> = cuts.stretches().flat_map(|(from, to)| from..to).collect();
        assert!(cut.iter().eq(model), "{cut:?} {model:?}");
        assert!((0..positions).filter(|i| !model.contains(i)).eq(gaps));
        assert!((0..positions).all(|i| cuts.contains(i) == model.contains(&i)));
    }

    #[test]
    fn a_random_walk_agrees_with_a_set() {
        let mut seed = 7_u64;
        let mut random = |below: u64| {
            seed = seed.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1);
            (seed >> 33) % below
        };
        let positions = 30;
        let (mut cuts, mut model) = (Cuts::default(), BTreeSet::new());
        for _ in 0..20_000 {
            let index = random(u64::from(positions)) as u32;
            if random(2) == 0 {
                assert!(cuts.has_room(index));
                assert_eq!(cuts.insert(index), Ok(model.insert(index)));
            } else {
                cuts.remove(index).unwrap();
                model.remove(&index);
            }
            same(&cuts, &model, positions);
        }
    }

    #[test]
    fn stretches_are_read_back_and_never_believed_blindly() {
        #[track_caller]
        fn check(stretches: &[(u32, u32)], cause: Option<Cause>) {
            let read = Cuts::from_stretches(stretches.iter().copied(), 100);
            assert_eq!(read.err().map(|error| error.cause), cause, "{stretches:?}");
            if let Ok(cuts) = read {
                assert!(cuts.stretches().eq(stretches.iter().copied()));
            }
        }
        check(&[], None);
        check(&[(0, 36)], None);
        check(&[(0, 36), (37, 38), (90, 100)], None);
        check(&[(0, 101)], Some(Cause::Conflict));
        check(&[(5, 5)], Some(Cause::Conflict));
        check(&[(6, 5)], Some(Cause::Conflict));
        check(&[(0, 36), (36, 40)], Some(Cause::Conflict));
        check(&[(10, 20), (15, 30)], Some(Cause::Conflict));
        check(&[(10, 20), (0, 5)], Some(Cause::Conflict));
        let many: Vec<_> = (0..17).map(|i| (i * 2, i * 2 + 1)).collect();
        check(&many[..16], None);
        check(&many, Some(Cause::TooMany { most: 16 }));
    }

    #[test]
    fn one_stretch_too_many_is_refused_and_changes_nothing() {
        let mut cuts = Cuts::default();
        for index in 0..16 {
            cuts.insert(index * 2).unwrap();
        }
        let before = cuts;
        assert!(!cuts.has_room(40));
        let most = Error::new(Field::Position, Cause::TooMany { most: 16 });
        assert_eq!(cuts.insert(40), Err(most));
        assert_eq!(cuts, before);
        assert!(cuts.has_room(1) && cuts.has_room(31));
        assert_eq!(cuts.insert(31), Ok(true));
        assert_eq!(cuts.insert(1), Ok(true));
        assert_eq!(cuts.insert(40), Ok(true));
        assert_eq!(cuts.remove(1), Err(most));
    }
}
