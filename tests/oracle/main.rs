//! Slow, independent brute force for every number of parts from 2 to 1000,
//! four ratios and both sets of plates. Nothing here uses the core's sums.
mod bends;
mod budgets;
mod compound;
mod dials;
mod differential;
mod half_nuts;
mod helices;
mod involute;
mod knurls;
mod plain;
mod plates;
mod shapes;
mod stacks;
mod steps;
mod trains;
mod values;
mod walks;
mod wires;

use handturn::divide::{Answer, Kind, Parts, Question, Way, answer};
use handturn::head::Head;
use handturn_tests::heads;
use handturn_tests::roomy;

/// Most ways of a kind that an answer here lists; more fail the test.
const EACH: usize = 64;

/// One head of the oracle's domain.
struct Job {
    ratio: u32,
    set: &'static str,
    /// Its plates' hole counts.
    plates: Vec<Vec<u16>>,
    head: Head,
}

impl Job {
    fn answer(&self, question: &Question) -> Answer<EACH> {
        answer(question, &self.head).unwrap_or_else(|e| panic!("{} {}: {e}", self.ratio, self.set))
    }
}

/// Runs `work` for every ratio and set, each on its own thread.
fn every(work: impl Fn(&Job) + Sync) {
    let jobs: Vec<(u32, &str)> =
        ["A", "B"].into_iter().flat_map(|set| [40, 60, 72, 90].map(|ratio| (ratio, set))).collect();
    let next = std::sync::atomic::AtomicUsize::new(0);
    std::thread::scope(|scope| {
        for _ in 0..2 {
            scope.spawn(|| {
                roomy(|| {
                    loop {
                        let mine = next.fetch_add(1, std::sync::atomic::Ordering::Relaxed);
                        let Some(&(ratio, set)) = jobs.get(mine) else { return };
                        let plates = heads::circles(set);
                        work(&Job { ratio, set, plates, head: heads::head(ratio, set) });
                    }
                });
            });
        }
    });
}

fn parts(count: u32) -> Question<'static> {
    Question::Parts(Parts { count, every: 1 })
}

/// Every way of `kind`; fails when not all of them are listed.
fn all(answer: &Answer<EACH>, kind: Kind) -> Vec<Way> {
    let Some(group) = answer.group(kind) else { return Vec::new() };
    assert_eq!(group.count as usize, group.closest.len(), "{kind:?}: not all are listed");
    group.closest.iter().map(|rated| rated.way).collect()
}
