//! The same work the plain way: every hole, every pair of circles, every train
//! tried, every position looked at.
use handturn::divide::Question;
use handturn::head::{Head, gears_of};
use handturn_tests::plainly::Ratio;
use std::hint::black_box;

/// Finds plain, compound and differential ways and the nearest holes of `question`.
pub(crate) fn ask(question: &Question, head: &Head) {
    let ratio = Ratio::of(head.ratio);
    let mut found = 0_u64;
    let mut plain = false;
    for &circle in circles(head).iter().flatten() {
        let off = grid(question, ratio, circle);
        plain |= off.num == 0;
        found += u64::from(off.num == 0);
    }
    let step = question.step().ok().flatten();
    if let (Some(step), false) = (step, plain) {
        let wanted = Ratio::of(step.turns()).by(ratio);
        found += pairs(head, wanted) + trains(head, ratio, wanted);
    }
    black_box(found);
}

fn circles(head: &Head) -> Vec<Vec<i128>> {
    let holes = |plate: &handturn::head::Plate| {
        plate.circles.iter().map(|circle| i128::from(circle.holes)).collect()
    };
    head.plates.iter().map(holes).collect()
}

/// The worst error of the nearest holes of one circle, over all positions.
fn grid(question: &Question, ratio: Ratio, circle: i128) -> Ratio {
    let mut worst = Ratio::ZERO;
    for index in 0..question.positions() {
        let travel = Ratio::of(question.travel(index).expect("in range").turns());
        let holes = travel.by(ratio).by(Ratio::new(circle, 1));
        let nearest = (2 * holes.num + holes.den).div_euclid(2 * holes.den);
        worst = worst.max(holes.minus(Ratio::new(nearest, 1)).size());
    }
    worst
}

/// Every a of b and c of d holes, the back leg forward or back.
fn pairs(head: &Head, wanted: Ratio) -> u64 {
    let mut exact = 0;
    let mut least = i128::MAX;
    for plate in circles(head) {
        for (i, &b) in plate.iter().enumerate() {
            for &d in &plate[i + 1..] {
                let turn = b * d * wanted.den;
                let target = (wanted.num * b * d).rem_euclid(turn);
                for a in 1..b {
                    for c in 1..d {
                        let reached = (a * d + c * b) * wanted.den % turn;
                        let apart = (reached - target).abs();
                        least = least.min(apart.min(turn - apart));
                        exact += u64::from(apart == 0);
                    }
                }
            }
        }
    }
    black_box(least);
    exact
}

/// Every two and every four of the gears, either sense, every circle.
fn trains(head: &Head, ratio: Ratio, wanted: Ratio) -> u64 {
    let owned = gears_of(&handturn::head::GEARS).expect("twelve");
    let gears: Vec<i128> = owned
        .iter()
        .flat_map(|gear| std::iter::repeat_n(i128::from(gear.teeth), usize::from(gear.count)))
        .collect();
    let part = wanted.over(ratio);
    let circles: Vec<i128> = circles(head).concat();
    let mut exact = 0;
    let mut try_train = |drivers: i128, driven: i128| {
        for sign in [1, -1] {
            // holes = circle × (ratio − train) × part
            let top = (ratio.num * driven - sign * drivers * ratio.den) * part.num;
            let bottom = driven * ratio.den * part.den;
            for circle in &circles {
                exact += u64::from(top * circle % bottom == 0);
            }
        }
    };
    for a in 0..gears.len() {
        for b in (0..gears.len()).filter(|&b| b != a) {
            try_train(gears[a], gears[b]);
            for c in (0..gears.len()).filter(|&c| c != a && c != b) {
                for d in (0..gears.len()).filter(|&d| d != a && d != b && d != c) {
                    try_train(gears[a] * gears[c], gears[b] * gears[d]);
                }
            }
        }
    }
    exact
}
