//! The rounding of a way, position by position: its greatest size, its RMS, and
//! the same of the difference between positions so many parts apart.
//!
//! On a grid that fits a turn of the work a whole number of times (a circle of
//! holes, a dial) a part is p/q steps and the places take every residue of q
//! alike: greatest ⌊q/2⌋/q of a step, mean square (q² − 1)/12q² for odd q and
//! (q² + 2)/12q² for even q; neighbours differ by f or f − 1 of a step, f the
//! part of p/q above a whole step, so their mean square is f(1 − f). Other ways
//! are looked at position by position.
use crate::divide::{Question, Way};
use crate::error::Error;
use crate::number::{Fraction, float};

/// Arc-seconds in a turn.
pub(super) const A_TURN: f64 = 1_296_000.0;

/// How a way rounds a question. For parts more than one apart the question must close.
#[derive(Clone, Copy)]
pub(super) struct Known<'a> {
    pub(super) question: Question<'a>,
    pub(super) way: Way,
}

/// What is known of it, in arc-seconds.
#[derive(Clone, Copy, Default)]
pub(super) struct Stats {
    pub(super) total: f64,
    pub(super) rms: f64,
    pub(super) adjacent: f64,
    pub(super) adjacent_rms: f64,
    /// Share of the pairs of neighbours that stand in the same hole or notch.
    pub(super) alike: f64,
}

impl Known<'_> {
    /// Positions `stride` parts after each other.
    pub(super) fn stats(&self, stride: u32) -> Result<Stats, Error> {
        let grid = match &self.way {
            Way::Plain(way) | Way::NearestHole(way) => {
                Some((way.ratio, u32::from(way.circle.holes)))
            }
            Way::Handwheel(way) => Some((way.ratio, way.steps())),
            _ => None,
        };
        if let (Some((ratio, steps)), Some(parts)) = (grid, self.question.parts()) {
            let a_turn = ratio.times(i64::from(steps))?;
            if a_turn.is_whole() {
                let apart = a_turn.over(i64::from(parts))?.times(i64::from(stride))?;
                return Ok(by_residues(apart, a_turn, steps));
            }
        }
        self.one_by_one(stride)
    }

    fn one_by_one(&self, stride: u32) -> Result<Stats, Error> {
        let positions = self.question.positions();
        let last = if self.question.closes() { positions } else { positions.saturating_sub(1) };
        let mut stats = Stats::default();
        let (mut part, mut before) = (0_u32, None);
        let mut pairs = 0.0_f64;
        for place in 0..=last {
            let index = self.way.index_of(&self.question, part);
            let here = self.way.place(&self.question, index)?;
            let error = float::of(here.error()?.turns()) * A_TURN;
            let stands = (here.pin, here.back_pin, here.notch);
            if place < positions {
                stats.total = stats.total.max(error.abs());
                stats.rms += error * error;
            }
            if let Some((was, stood)) = before {
                let apart: f64 = error - was;
                stats.adjacent = stats.adjacent.max(apart.abs());
                stats.adjacent_rms += apart * apart;
                stats.alike += if stood == stands { 1.0 } else { 0.0 };
                pairs += 1.0;
            }
            before = Some((error, stands));
            let next = part.saturating_add(stride);
            part = next.checked_rem(positions).unwrap_or(0);
        }
        let pairs = pairs.max(1.0);
        Ok(Stats {
            rms: float::sqrt(stats.rms / f64::from(positions.max(1))),
            adjacent_rms: float::sqrt(stats.adjacent_rms / pairs),
            alike: stats.alike / pairs,
            ..stats
        })
    }
}

/// Positions `apart` steps from each other on a grid of `a_turn` steps a turn of
/// the work, `steps` a turn of the handle.
fn by_residues(apart: Fraction, a_turn: Fraction, steps: u32) -> Stats {
    let a_step = A_TURN / float::of(a_turn);
    let q = float::of(Fraction::whole(apart.den()));
    let above = float::of(apart.part());
    let odd = apart.den() & 1 == 1;
    let half = if odd { (q - 1.0) / 2.0 } else { q / 2.0 };
    let square = if odd { q * q - 1.0 } else { q * q + 2.0 };
    let exact = apart.is_whole();
    let same = |count: Option<i64>| count.and_then(|n| n.checked_rem(i64::from(steps))) == Some(0);
    let alike = if same(Some(apart.floor())) { 1.0 - above } else { 0.0 }
        + if same(apart.floor().checked_add(1)) { above } else { 0.0 };
    if exact {
        return Stats { alike, ..Stats::default() };
    }
    Stats {
        total: half / q * a_step,
        rms: float::sqrt(square / 12.0) / q * a_step,
        adjacent: above.max(1.0 - above) * a_step,
        adjacent_rms: float::sqrt(above * (1.0 - above)) * a_step,
        alike,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::divide::{CircleAt, Holes, Parts};
    use crate::head::Head;

    #[test]
    fn the_closed_form_agrees_with_every_position_looked_at() {
        let head = Head::default();
        for count in 2..=90 {
            for holes in [15, 16, 49] {
                for every in [1, 3] {
                    if every >= count {
                        continue;
                    }
                    let circle = CircleAt { plate: 0, holes };
                    let way =
                        Way::NearestHole(Holes { circle, ratio: head.ratio, arms: head.arms });
                    let question = Question::Parts(Parts { count, every });
                    let known = Known { question, way };
                    for stride in [1, 2, 40] {
                        let (quick, slow) =
                            (known.stats(stride).unwrap(), known.one_by_one(stride).unwrap());
                        let pairs = [
                            (quick.total, slow.total),
                            (quick.rms, slow.rms),
                            (quick.adjacent, slow.adjacent),
                            (quick.adjacent_rms, slow.adjacent_rms),
                            (quick.alike, slow.alike),
                        ];
                        for (a, b) in pairs {
                            let near = (a - b).abs() <= 1e-9 * (1.0 + b);
                            assert!(near, "{count} on {holes}, {stride} apart: {a} {b}");
                        }
                    }
                }
            }
        }
    }
}
