//! Plain indexing: every hole of every circle tried.
use crate::{all, every, parts};
use handturn::divide::{Kind, Way};
use std::collections::BTreeSet;

/// What a plain setting says: plate, circle, turns, holes.
type Setting = (usize, u16, u32, u32);

#[test]
fn plain_answers_are_those_found_by_trying_every_hole() {
    every(|job| {
        for count in 2..=1000 {
            let question = parts(count);
            let answer = job.answer(&question);
            let found: BTreeSet<Setting> = all(&answer, Kind::Plain)
                .into_iter()
                .map(|way| {
                    let Way::Plain(holes) = way else { panic!("{way:?}") };
                    let leg = way.step(&question, 0).expect("a move").legs[0];
                    (usize::from(holes.circle.plate), holes.circle.holes, leg.turns, leg.spaces)
                })
                .collect();
            let slow = tried(job.ratio, count, &job.plates);
            assert_eq!(found, slow, "{}:1, {count} parts, set {}", job.ratio, job.set);
        }
    });
}

/// Every turn and hole of every circle: right when parts times the move is the ratio.
fn tried(ratio: u32, count: u32, plates: &[Vec<u16>]) -> BTreeSet<Setting> {
    let mut right = BTreeSet::new();
    for (plate, circles) in plates.iter().enumerate() {
        for &circle in circles {
            for turns in 0..=ratio / count {
                for holes in 0..u32::from(circle) {
                    let moved = u64::from(turns) * u64::from(circle) + u64::from(holes);
                    if moved * u64::from(count) == u64::from(ratio) * u64::from(circle) {
                        right.insert((plate, circle, turns, holes));
                    }
                }
            }
        }
    }
    right
}
