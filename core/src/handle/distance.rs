//! From a count to what the hands still have to do.
use crate::head::Sense;

/// What the handle is turned to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Aim {
    /// The count to come to.
    pub target: i32,
    /// Counts in one turn of the handle, above nought.
    pub per_turn: u32,
    /// The turn of the handle that takes up the slack: every target is come to so.
    pub side: Sense,
    /// Counts to go back beyond a target that was passed, before coming up again.
    pub past: u32,
    /// Counts by which the handle may stand beside the target and still be on it.
    pub window: u32,
}

/// How far the handle still has to turn.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Distance {
    /// Which way.
    pub sense: Sense,
    /// Whole turns.
    pub turns: u32,
    /// Counts beyond the whole turns.
    pub counts: u32,
}

/// Where the handle is on its way to the target.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Approach {
    /// Before the target: turn on by this.
    Up(Distance),
    /// On it.
    On,
    /// Past it, or coming back to get before it: turn back by this, then come up again.
    Back(Distance),
}

impl Approach {
    /// The approach when the handle stands at `count`. Once past, it stays so
    /// until the handle has gone all the way back: `self` is what it was before.
    ///
    /// ```
    /// use handturn::handle::{Aim, Approach};
    /// use handturn::head::Sense;
    /// let side = Sense::Clockwise;
    /// let aim = Aim { target: 1_000, per_turn: 400, side, past: 200, window: 1 };
    /// let start = Approach::start(&aim, 0);
    /// let Approach::Up(way) = start else { panic!("it is ahead") };
    /// assert_eq!((way.turns, way.counts), (2, 200));
    /// let past = start.next(&aim, 1_010);
    /// let Approach::Back(way) = past else { panic!("it was passed") };
    /// assert_eq!((way.sense, way.turns, way.counts), (Sense::Anticlockwise, 0, 210));
    /// // Standing on the target is not enough: the slack lies on the wrong side.
    /// assert!(matches!(past.next(&aim, 1_000), Approach::Back(_)));
    /// let up = past.next(&aim, 1_000).next(&aim, 800);
    /// assert_eq!(up.next(&aim, 1_000), Approach::On);
    /// ```
    #[must_use]
    pub fn next(self, aim: &Aim, count: i32) -> Self {
        let gap = gap(aim, count);
        let window = i64::from(aim.window);
        let turn_back = gap < window.saturating_neg()
            || (matches!(self, Self::Back(_)) && gap < i64::from(aim.past));
        if turn_back {
            let back = i64::from(aim.past).saturating_sub(gap);
            return Self::Back(aim.distance(opposite(aim.side), back));
        }
        if gap <= window { Self::On } else { Self::Up(aim.distance(aim.side, gap)) }
    }

    /// The approach to a new target, the slack taken up on the right side.
    #[must_use]
    pub fn start(aim: &Aim, count: i32) -> Self {
        Self::On.next(aim, count)
    }
}

/// Counts from `count` on to the target, below nought when it was passed.
fn gap(aim: &Aim, count: i32) -> i64 {
    let up = i64::from(aim.target).saturating_sub(i64::from(count));
    match aim.side {
        Sense::Clockwise => up,
        Sense::Anticlockwise => up.saturating_neg(),
    }
}

impl Aim {
    fn distance(&self, sense: Sense, counts: i64) -> Distance {
        let per_turn = u64::from(self.per_turn);
        let counts = counts.unsigned_abs();
        let turns = counts.checked_div(per_turn).unwrap_or(0);
        let rest = counts.checked_rem(per_turn).unwrap_or(counts);
        let clamp = |n: u64| u32::try_from(n).unwrap_or(u32::MAX);
        Distance { sense, turns: clamp(turns), counts: clamp(rest) }
    }
}

const fn opposite(sense: Sense) -> Sense {
    match sense {
        Sense::Clockwise => Sense::Anticlockwise,
        Sense::Anticlockwise => Sense::Clockwise,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const AIM: Aim =
        Aim { target: 1_000, per_turn: 400, side: Sense::Clockwise, past: 200, window: 2 };

    fn show(approach: Approach) -> (char, u32, u32) {
        match approach {
            Approach::Up(way) => ('u', way.turns, way.counts),
            Approach::On => ('o', 0, 0),
            Approach::Back(way) => ('b', way.turns, way.counts),
        }
    }

    /// Counts as the handle passes them, and what the last one leaves to do.
    #[track_caller]
    fn check(aim: &Aim, counts: &[i32], expected: (char, u32, u32)) {
        let start = Approach::start(aim, counts[0]);
        let end = counts[1..].iter().fold(start, |approach, &count| approach.next(aim, count));
        assert_eq!(show(end), expected, "{counts:?}");
        if let Approach::Up(way) | Approach::Back(way) = end {
            let up = matches!(end, Approach::Up(_));
            assert_eq!(way.sense == aim.side, up);
        }
    }

    #[test]
    fn coming_up_passing_and_coming_back() {
        check(&AIM, &[0], ('u', 2, 200));
        check(&AIM, &[-200], ('u', 3, 0));
        check(&AIM, &[0, 997], ('u', 0, 3));
        for count in 998..=1_002 {
            check(&AIM, &[0, count], ('o', 0, 0));
        }
        check(&AIM, &[0, 1_003], ('b', 0, 203));
        check(&AIM, &[0, 1_003, 1_000], ('b', 0, 200));
        check(&AIM, &[0, 1_003, 801], ('b', 0, 1));
        check(&AIM, &[0, 1_003, 800], ('u', 0, 200));
        check(&AIM, &[0, 1_003, 800, 900, 1_000], ('o', 0, 0));
        check(&AIM, &[0, 1_003, 801, 1_000], ('b', 0, 200));
        check(&AIM, &[2_000], ('b', 3, 0));
    }

    #[test]
    fn the_other_side_is_a_mirror() {
        let mirror = Aim { target: -1_000, side: Sense::Anticlockwise, ..AIM };
        check(&mirror, &[0], ('u', 2, 200));
        check(&mirror, &[0, -1_003], ('b', 0, 203));
        check(&mirror, &[0, -1_003, -800, -1_000], ('o', 0, 0));
    }

    #[test]
    fn the_ends_of_the_count_are_told_right() {
        let far = Aim { target: i32::MAX, per_turn: 1, ..AIM };
        check(&far, &[i32::MIN], ('u', u32::MAX, 0));
        check(&Aim { per_turn: 0, ..AIM }, &[0], ('u', 0, 1_000));
    }
}
