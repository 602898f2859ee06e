//! Bad and extreme heads, questions and texts: a clear error or a right
//! answer, never a panic. Seeds are fixed; what once failed is kept beside this.
mod asked;
mod cutting;
mod extremes;
mod numbers;
mod plates;
mod seeded;

use proptest::test_runner::{Config, FileFailurePersistence, RngSeed};

/// `cases` cases from a fixed seed; failures are kept in `proptest-regressions`.
fn config(cases: u32) -> Config {
    let kept = FileFailurePersistence::WithSource("proptest-regressions");
    Config {
        cases,
        rng_seed: RngSeed::Fixed(0x68_616e_6474_7572),
        failure_persistence: Some(Box::new(kept)),
        ..Config::default()
    }
}
