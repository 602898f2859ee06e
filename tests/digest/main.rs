//! Hashes of the answers' JSON text for 2 to 10,000 parts, both sets of plates:
//! one line a set and a thousand. The package in Node hashes its own answers and
//! compares (tests/node/digest.test.mjs); printed here, never kept.
use handturn::divide::{Answer, Parts, Question, answer};
use handturn_tests::heads::head;
use handturn_tests::roomy;
use sha2::{Digest, Sha256};

/// As many ways of a kind as the package lists.
const EACH: usize = 8;

fn main() {
    roomy(|| {
        for set in ["A", "B"] {
            let head = head(40, set);
            for from in (0..=10_000_u32).step_by(1000) {
                let mut hash = Sha256::new();
                for count in from.max(2)..=(from + 999).min(10_000) {
                    let question = Question::Parts(Parts { count, every: 1 });
                    let answer: Answer<EACH> = answer(&question, &head)
                        .unwrap_or_else(|e| panic!("{count} parts, set {set}: {e}"));
                    hash.update(serde_json::to_vec(&answer).expect("plain data"));
                    hash.update(b"\n");
                }
                let hex: String = hash.finalize().iter().map(|b| format!("{b:02x}")).collect();
                println!("{set} {from} {hex}");
            }
        }
    });
}
