//! Two lines a quarter turn apart, sampled again and again: each pair of
//! samples is a step forward, a step back, no step, or two steps at once. Which
//! way two steps went can't be known, so the count is lost then, and says so.

/// The levels of the two lines at one moment.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Lines {
    /// Line A.
    pub a: bool,
    /// Line B.
    pub b: bool,
}

/// What lies between two samples.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Step {
    /// Nothing.
    Still,
    /// One count up: A leads B.
    Up,
    /// One count down: B leads A.
    Down,
    /// Two counts, up or down: an edge was missed.
    Lost,
}

/// Every pair of samples, by `before` A, B and `now` A, B as bits 3, 2, 1, 0.
const STEPS: [Step; 16] = {
    use Step::{Down, Lost, Still, Up};
    [
        Still, Down, Up, Lost, // from 00 to 00, 01, 10, 11
        Up, Still, Lost, Down, // from 01
        Down, Lost, Still, Up, // from 10
        Lost, Up, Down, Still, // from 11
    ]
};

impl Lines {
    /// The step from `self` to the sample `now`.
    #[must_use]
    pub fn step(self, now: Self) -> Step {
        let bit = |level: bool, place: u32| usize::from(level) << place;
        let place = bit(self.a, 3) | bit(self.b, 2) | bit(now.a, 1) | bit(now.b, 0);
        STEPS.get(place).copied().unwrap_or(Step::Lost)
    }
}

/// A count that is either right or lost, never wrong.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Counter {
    lines: Lines,
    count: i32,
    lost: bool,
}

impl Counter {
    /// A counter at nought, its lines as they stand.
    #[must_use]
    pub const fn new(lines: Lines) -> Self {
        Self { lines, count: 0, lost: false }
    }

    /// The counter after one more sample. Once lost it stays lost, until it is
    /// [set](Self::set) again.
    ///
    /// ```
    /// use handturn::handle::{Counter, Lines};
    /// let lines = |a, b| Lines { a, b };
    /// let counter = Counter::new(lines(false, false));
    /// let on = counter.sample(lines(true, false)).sample(lines(true, true));
    /// assert_eq!(on.count(), Some(2));
    /// let lost = on.sample(lines(false, false));
    /// assert_eq!(lost.count(), None, "both lines changed at once: which way?");
    /// assert_eq!(lost.set(2_400).count(), Some(2_400));
    /// ```
    #[must_use]
    pub fn sample(self, now: Lines) -> Self {
        let moved = match self.lines.step(now) {
            Step::Still => Some(self.count),
            Step::Up => self.count.checked_add(1),
            Step::Down => self.count.checked_sub(1),
            Step::Lost => None,
        };
        match moved {
            Some(count) => Self { lines: now, count, lost: self.lost },
            None => Self { lines: now, lost: true, ..self },
        }
    }

    /// The count; none when it is lost.
    #[must_use]
    pub const fn count(self) -> Option<i32> {
        if self.lost { None } else { Some(self.count) }
    }

    /// The counter told by a reference where the handle is.
    #[must_use]
    pub const fn set(self, count: i32) -> Self {
        Self { count, lost: false, ..self }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    extern crate std;
    use std::vec::Vec;

    /// One cycle forward: A leads.
    const CYCLE: [&str; 4] = ["00", "10", "11", "01"];

    fn lines(text: &str) -> Lines {
        let mut bits = text.chars().map(|c| c == '1');
        Lines { a: bits.next().unwrap(), b: bits.next().unwrap() }
    }

    #[track_caller]
    fn check(what: &str, trace: &str, count: Option<i32>) {
        let mut samples = trace.split(' ').map(lines);
        let start = Counter::new(samples.next().unwrap());
        assert_eq!(samples.fold(start, Counter::sample).count(), count, "{what}");
    }

    #[test]
    fn traces() {
        check("one cycle forward", "00 10 11 01 00", Some(4));
        check("one cycle back", "00 01 11 10 00", Some(-4));
        check("nothing", "11 11 11", Some(0));
        check("A bounces and stays", "00 10 00 10 00 10", Some(1));
        check("A bounces and falls back", "00 10 00 10 00", Some(0));
        check("B bounces in the middle of a cycle", "00 10 11 10 11 10 11 01", Some(3));
        check("turned back within a cycle", "00 10 11 10 00", Some(0));
        check("turned back over the start", "00 10 00 01 11", Some(-2));
        check("two steps at once", "00 11", None);
        check("two steps at once, then on", "00 10 01 00 10", None);
        check("from each state", "01 10", None);
        check("from each state", "10 01", None);
        check("from each state", "11 00", None);
    }

    #[test]
    fn every_pair_agrees_with_the_cycle() {
        for (i, from) in CYCLE.iter().enumerate() {
            for (j, to) in CYCLE.iter().enumerate() {
                let expected = [Step::Still, Step::Up, Step::Lost, Step::Down][(j + 4 - i) % 4];
                assert_eq!(lines(from).step(lines(to)), expected, "{from} to {to}");
            }
        }
    }

    #[test]
    fn a_long_jittery_walk_never_loses_a_count() {
        let cycle: Vec<Lines> = CYCLE.iter().map(|text| lines(text)).collect();
        let mut seed = 3_u64;
        let (mut place, mut counter) = (0_i32, Counter::new(cycle[0]));
        for _ in 0..200_000 {
            seed = seed.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1);
            place += [1, 1, 1, 0, -1, 1, -1, 1][(seed >> 60) as usize % 8];
            counter = counter.sample(cycle[place.rem_euclid(4) as usize]);
            assert_eq!(counter.count(), Some(place));
        }
    }

    #[test]
    fn lost_stays_lost_until_set() {
        let lost = Counter::new(lines("00")).sample(lines("11"));
        assert_eq!(lost.sample(lines("01")).count(), None);
        let set = lost.sample(lines("01")).set(100);
        assert_eq!(set.sample(lines("00")).count(), Some(101));
        let end = Counter::new(lines("00")).set(i32::MAX);
        assert_eq!(end.sample(lines("10")).count(), None, "beyond its range it is lost too");
    }
}
