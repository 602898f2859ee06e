//! A run counted at the handle by an encoder: its counts are a circle of that
//! many holes, and the count of every position is rounded from its absolute
//! place, so errors never build up.
use super::frozen::{Confirm, Round};
use super::plan::Plan;
use crate::bounds;
use crate::divide::{CircleAt, Errors, Holes, Question, Stops, Way};
use crate::error::{Cause, Error, Field};
use crate::handle::Aim;
use crate::head::{Arms, Sense};
use crate::measure::Angle;
use crate::number::Fraction;

/// An encoder on the handle of a head.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Encoder {
    /// Worm ratio of the head.
    pub ratio: Fraction,
    /// Counts in one turn of the handle: four for each line of its disc.
    pub per_turn: u16,
    /// The turn of the handle by which every target is come to.
    pub side: Sense,
    /// Slack between worm and wheel, in handle turns.
    pub slack: Fraction,
    /// Counts by which the handle may stand beside a target.
    pub window: u16,
}

impl Encoder {
    /// Checks every value against the bounds table.
    ///
    /// # Errors
    /// [`Cause::OutOfRange`] for a ratio, a number of counts or a slack out of
    /// bounds; [`Cause::Conflict`] for a window of half a turn or more.
    pub fn check(&self) -> Result<(), Error> {
        bounds::RATIO_PART.check(self.ratio.num())?;
        bounds::RATIO_PART.check(self.ratio.den())?;
        bounds::COUNTS.check(i64::from(self.per_turn))?;
        if self.slack.is_negative() || self.slack > Fraction::whole(5) {
            let cause = Cause::OutOfRange { least: 0, greatest: 5 };
            return Err(Error::new(Field::Slack, cause));
        }
        if self.window >= self.per_turn.div_ceil(2) {
            return Err(Error::new(Field::Counts, Cause::Conflict));
        }
        Ok(())
    }

    /// The way to set any question by counts: a [`Plan`] with it runs, shows and
    /// finds its place like one with a plate.
    #[must_use]
    pub const fn way(&self) -> Way {
        Way::NearestHole(self.holes())
    }

    /// What a run by counts is computed with: one round, the degree ring read the
    /// way the work turns, and no other way's code.
    #[must_use]
    pub const fn plan<'a>(&self, question: Question<'a>, confirm: Confirm) -> Plan<'a, Holes> {
        Plan {
            question,
            way: self.holes(),
            rounds: &[Round::Cut],
            confirm,
            slack: self.slack,
            dial_slack: Fraction::ZERO,
            work_turns: Sense::Clockwise,
            degree_ring: Some(Sense::Clockwise),
        }
    }

    const fn holes(&self) -> Holes {
        let arms = Arms { least: Angle::ZERO, greatest: Angle::ZERO };
        let circle = CircleAt { plate: 0, holes: self.per_turn };
        Holes { circle, ratio: self.ratio, arms }
    }

    /// Worst, adjacent and closing error of the counts, at the work.
    ///
    /// # Errors
    /// [`Cause::Overflow`].
    pub fn errors(&self, question: &Question) -> Result<Errors, Error> {
        self.holes().errors(question)
    }

    /// [`Encoder::errors`] of `parts` equal parts cut one after another, in whole
    /// numbers: small and quick enough for a board.
    ///
    /// With p/q counts in a turn of the work, position k is wanted at k·p of
    /// parts·q-ths of a count: what is left of that above the nearest count, to
    /// which a half goes up, is its error.
    ///
    /// # Errors
    /// As [`Question::check`]; [`Cause::Overflow`] beyond the bounds of the counts.
    pub fn errors_of_parts(&self, parts: u32) -> Result<Errors, Error> {
        bounds::DIVISIONS.check(i64::from(parts))?;
        let overflow = Error::new(Field::Counts, Cause::Overflow);
        let a_turn = self.ratio.times(i64::from(self.per_turn))?;
        let den = a_turn.den().checked_mul(i64::from(parts)).ok_or(overflow)?;
        let a_part = a_turn.num().checked_rem_euclid(den).ok_or(overflow)?;
        let (mut above, mut left) = (0_i64, 0_i64);
        let (mut worst, mut adjacent) = (0_u64, 0_u64);
        for _ in 1..parts {
            above = next_above(above, a_part, den).ok_or(overflow)?;
            let before = left;
            left = left_of(above, den);
            worst = worst.max(left.unsigned_abs());
            adjacent = adjacent.max(left.abs_diff(before));
        }
        // The first part has nothing left: the last one's own is their difference.
        adjacent = adjacent.max(left.unsigned_abs());
        let closing = left_of(next_above(above, a_part, den).ok_or(overflow)?, den).unsigned_abs();
        let at_work = |left: u64| {
            let counts = Fraction::new(i64::try_from(left).map_err(|_| overflow)?, den)?;
            Ok::<_, Error>(Angle::from_turns(counts.checked_div(a_turn)?))
        };
        Ok(Errors {
            worst: at_work(worst)?,
            adjacent: at_work(adjacent)?,
            closing: at_work(closing)?,
        })
    }

    /// The count of position `index`, from 0 at position 0.
    ///
    /// # Errors
    /// [`Cause::OutOfRange`] beyond the last position; [`Cause::Overflow`] where
    /// the count does not fit.
    ///
    /// ```
    /// use handturn::divide::{Parts, Question};
    /// use handturn::head::Sense;
    /// use handturn::number::Fraction;
    /// use handturn::run::Encoder;
    /// let encoder = Encoder {
    ///     ratio: Fraction::whole(40),
    ///     per_turn: 2_400,
    ///     side: Sense::Clockwise,
    ///     slack: Fraction::new(1, 10)?,
    ///     window: 2,
    /// };
    /// encoder.check()?;
    /// // The clock's 127 wheel: 96 000 counts in a turn of the work.
    /// let question = Question::Parts(Parts { count: 127, every: 1 });
    /// assert_eq!(encoder.target(&question, 1)?, 756); // 755.9
    /// assert_eq!(encoder.target(&question, 127)?, 96_000);
    /// let worst = encoder.errors(&question)?.worst.arcsec()?;
    /// assert!(worst < Fraction::whole(7), "half a count is 6.75 arc-seconds");
    /// # Ok::<(), handturn::Error>(())
    /// ```
    pub fn target(&self, question: &Question, index: u32) -> Result<i32, Error> {
        let overflow = Error::new(Field::Position, Cause::Overflow);
        let handle = Stops::place(&self.holes(), question, index)?.handle;
        let count = handle.times(i64::from(self.per_turn))?;
        let count = i32::try_from(count.num()).map_err(|_| overflow)?;
        match self.side {
            Sense::Clockwise => Ok(count),
            Sense::Anticlockwise => count.checked_neg().ok_or(overflow),
        }
    }

    /// What the handle is turned to for position `index`. Passing it costs the
    /// slack, at least half a turn, as everywhere.
    ///
    /// # Errors
    /// As [`Encoder::target`].
    pub fn aim(&self, question: &Question, index: u32) -> Result<Aim, Error> {
        let past = self.slack.max(Fraction::new(1, 2)?);
        let past = past.times(i64::from(self.per_turn))?.negated().floor().saturating_neg();
        let past = u32::try_from(past).map_err(|_| Error::new(Field::Slack, Cause::Overflow))?;
        Ok(Aim {
            target: self.target(question, index)?,
            per_turn: u32::from(self.per_turn),
            side: self.side,
            past,
            window: u32::from(self.window),
        })
    }
}

/// `above` and one part more, less a whole count where that makes one.
fn next_above(above: i64, a_part: i64, den: i64) -> Option<i64> {
    let sum = above.checked_add(a_part)?;
    if sum < den { Some(sum) } else { sum.checked_sub(den) }
}

/// What is left of `above` den-ths of a count to the nearest count, a half below it.
const fn left_of(above: i64, den: i64) -> i64 {
    let below = den.saturating_sub(above);
    if above < below { above } else { below.saturating_neg() }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::divide::Parts;

    #[test]
    fn errors_of_parts_are_the_errors_of_the_way() {
        for (num, den) in
            [(1, 1), (40, 1), (90, 1), (360, 1), (40, 3), (127, 10), (100_000, 99_999)]
        {
            for per_turn in [100_u16, 101, 2_400, 40_000] {
                let ratio = Fraction::new(num, den).unwrap();
                let encoder = Encoder { ratio, ..encoder(1, per_turn) };
                for parts in (2..=60).chain([64, 127, 223, 365, 1_000, 9_999, 10_000]) {
                    let question = Question::Parts(Parts { count: parts, every: 1 });
                    let (found, expected) =
                        (encoder.errors_of_parts(parts), encoder.errors(&question));
                    assert_eq!(found, expected, "{ratio:?} {per_turn} {parts}");
                }
            }
        }
        assert!(encoder(40, 100).errors_of_parts(1).is_err());
        assert!(encoder(40, 100).errors_of_parts(10_001).is_err());
    }

    fn encoder(ratio: i64, per_turn: u16) -> Encoder {
        Encoder {
            ratio: Fraction::whole(ratio),
            per_turn,
            side: Sense::Clockwise,
            slack: Fraction::new(1, 10).unwrap(),
            window: 1,
        }
    }

    #[test]
    fn targets_and_errors_agree_with_rounding_each_place_alone() {
        for ratio in [1, 40, 90] {
            for per_turn in [100_u16, 2_400, 40_000] {
                let encoder = encoder(ratio, per_turn);
                encoder.check().unwrap();
                for n in [2_u32, 7, 64, 127, 365, 1_000, 9_973] {
                    let question = Question::Parts(Parts { count: n, every: 1 });
                    let (n, a_turn) = (i64::from(n), ratio * i64::from(per_turn));
                    // Twice the exact place in counts, over n; a half goes up.
                    let nearest = |k: i64| (2 * k * a_turn + n).div_euclid(2 * n);
                    let miss = |k: i64| nearest(k) * n - k * a_turn;
                    for k in 0..=n {
                        let target = encoder.target(&question, k as u32).unwrap();
                        assert_eq!(i64::from(target), nearest(k), "{ratio} {per_turn} {n} {k}");
                    }
                    let worst = (0..n).map(|k| miss(k).abs()).max().unwrap();
                    let adjacent = (0..n).map(|k| (miss(k + 1) - miss(k)).abs()).max().unwrap();
                    let angle = |misses| {
                        let turns = Fraction::new(misses, n * a_turn).unwrap();
                        Angle::from_turns(turns)
                    };
                    let expected = Errors {
                        worst: angle(worst),
                        adjacent: angle(adjacent),
                        closing: Angle::ZERO,
                    };
                    assert_eq!(encoder.errors(&question), Ok(expected));
                }
            }
        }
    }

    #[test]
    fn the_aim_carries_side_and_slack() {
        let question = Question::Parts(Parts { count: 64, every: 1 });
        let up = encoder(40, 2_400);
        let aim = up.aim(&question, 1).unwrap();
        assert_eq!((aim.target, aim.per_turn, aim.past, aim.window), (1_500, 2_400, 1_200, 1));
        let slack = Fraction::new(2, 3).unwrap();
        let other = Encoder { side: Sense::Anticlockwise, slack, per_turn: 100, ..up };
        let aim = other.aim(&question, 1).unwrap();
        assert_eq!((aim.target, aim.past, aim.side), (-63, 67, Sense::Anticlockwise));
    }

    #[test]
    fn settings_out_of_bounds_are_refused() {
        #[track_caller]
        fn check(encoder: Encoder, field: Field) {
            assert_eq!(encoder.check().map_err(|e| e.field), Err(field));
        }
        let good = encoder(40, 2_400);
        check(Encoder { per_turn: 99, ..good }, Field::Counts);
        check(Encoder { per_turn: 40_001, ..good }, Field::Counts);
        check(Encoder { window: 1_200, ..good }, Field::Counts);
        check(Encoder { ratio: Fraction::ZERO, ..good }, Field::Ratio);
        check(Encoder { slack: Fraction::whole(6), ..good }, Field::Slack);
        check(Encoder { slack: Fraction::whole(-1), ..good }, Field::Slack);
    }
}
