//! Compound indexing: every pair of circles on one side of one plate, every
//! number of holes on both.
use crate::{Job, all, every, parts};
use handturn::divide::{Kind, Part, Way};
use handturn_tests::plainly::Ratio;
use std::collections::BTreeSet;

/// A plate and two of its circles, the smaller first.
type Pair = (usize, u16, u16);

#[test]
fn compound_answers_are_those_found_by_trying_every_two_holes() {
    every(|job| {
        for count in 2..=1000 {
            let what = format!("{}:1, {count} parts, set {}", job.ratio, job.set);
            let offered = offered(job, count);
            let (exact, nearest) = tried(job, count);
            if one_circle_does(job, count) {
                assert!(offered.is_empty(), "{what}: one circle does it");
                continue;
            }
            let pairs: BTreeSet<Pair> = offered.iter().map(|o| o.pair).collect();
            if !exact.is_empty() {
                assert_eq!(pairs, exact, "{what}");
                assert!(
                    offered.iter().all(|o| o.off.num == 0),
                    "{what}: an inexact one is offered"
                );
                continue;
            }
            let once = offered.iter().filter(|o| o.times_round == 1);
            let best = once.map(|o| o.off).min().unwrap_or_else(|| panic!("{what}: none"));
            assert!(best <= nearest, "{what}: {best:?} is offered, {nearest:?} can be had");
        }
    });
}

struct Offered {
    pair: Pair,
    times_round: u32,
    /// By how much a move is off, in handle turns.
    off: Ratio,
}

/// What is offered; each pair's legs are added up here.
fn offered(job: &Job, count: u32) -> Vec<Offered> {
    let question = parts(count);
    let ways = all(&job.answer(&question), Kind::Compound);
    let offered = |way: Way| {
        let Way::Compound(compound) = way else { panic!("{way:?}") };
        let legs = way.step(&question, 0).expect("a move").legs;
        assert_eq!(legs.iter().map(|l| l.part).collect::<Vec<_>>(), [Part::BackPin, Part::Pin]);
        let pin = Ratio::new(compound.pin_spaces.into(), compound.pin.into());
        let back = Ratio::new(compound.back_spaces.into(), compound.back.into());
        let round = i128::from(compound.times_round);
        let wanted = Ratio::new(round * i128::from(job.ratio), count.into());
        Offered {
            pair: (
                compound.plate.into(),
                compound.pin.min(compound.back),
                compound.pin.max(compound.back),
            ),
            times_round: compound.times_round,
            off: pin.plus(back).minus(wanted).size(),
        }
    };
    ways.into_iter().map(offered).collect()
}

fn one_circle_does(job: &Job, count: u32) -> bool {
    let mut circles = job.plates.iter().flatten().map(|&circle| u32::from(circle));
    circles.any(|circle| job.ratio * circle % count == 0)
}

/// Every a of b and c of d holes, a/b + c/d a turn: the pairs that make the
/// move but for whole turns (a minus leg is a plus leg but for a whole turn), and
/// the least error of all in handle turns.
fn tried(job: &Job, count: u32) -> (BTreeSet<Pair>, Ratio) {
    let mut exact = BTreeSet::new();
    let mut nearest: Option<Ratio> = None;
    for (plate, circles) in job.plates.iter().enumerate() {
        for (i, &b) in circles.iter().enumerate() {
            for &d in &circles[i + 1..] {
                let off = least(u64::from(b), u64::from(d), job.ratio.into(), count.into());
                if off == 0 {
                    exact.insert((plate, b.min(d), b.max(d)));
                }
                let turn = i128::from(b) * i128::from(d) * i128::from(count);
                let off = Ratio::new(off.into(), turn);
                nearest = Some(nearest.map_or(off, |other| other.min(off)));
            }
        }
    }
    (exact, nearest.expect("a set has plates of two circles and more"))
}

/// The least distance from ratio/count of any a/b + c/d with a hole moved on
/// both circles, whole turns left out, in parts of a turn of b·d·count.
fn least(b: u64, d: u64, ratio: u64, count: u64) -> u64 {
    let turn = b * d * count;
    let wanted = ratio * b * d % turn;
    let mut least = u64::MAX;
    for a in 1..b {
        for c in 1..d {
            let mut reached = (a * d + c * b) * count;
            if reached >= turn {
                reached -= turn;
            }
            let apart = reached.abs_diff(wanted);
            least = least.min(apart.min(turn - apart));
        }
    }
    least
}
