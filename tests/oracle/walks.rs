//! Every exact way of every answer, walked position by position; inexact ways
//! all of them up to [`ALL_TO`] parts, beyond that the best and the last of a kind.
use crate::{all, every, parts};
use handturn::divide::Kind;
use handturn_tests::walk::walk;

/// Up to so many parts every inexact way is walked too.
const ALL_TO: u32 = 150;

#[test]
fn every_way_adds_up_and_says_its_errors() {
    every(|job| {
        for count in 2..=1000 {
            let question = parts(count);
            let answer = job.answer(&question);
            for kind in Kind::ALL {
                let ways = all(&answer, kind);
                for (i, way) in ways.iter().enumerate() {
                    let exact = way.exact(&question).expect("small numbers");
                    if !exact && count > ALL_TO && i > 0 && i + 1 < ways.len() {
                        continue;
                    }
                    if let Err(why) = walk(&question, &job.head, way) {
                        panic!("{}:1, {count} parts, set {}: {way:?}: {why}", job.ratio, job.set);
                    }
                }
            }
        }
    });
}
