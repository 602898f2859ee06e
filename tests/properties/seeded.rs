//! The fuzz target's road without a fuzzer: cases put together from pieces that
//! people type and pieces that break readers, from a fixed seed.
use handturn_tests::ask::{Came, SPLIT, ask};
use rand::prelude::*;
use rand_chacha::ChaCha8Rng;
use std::collections::BTreeMap;

const CASES: u32 = 40_000;

const PIECES: &[&str] = &[
    "40",
    "40:1",
    "60",
    "72",
    "90:1",
    "81/2",
    "1",
    "0",
    "-1",
    "2",
    "7",
    "37",
    "127",
    "360",
    "9999",
    "10000",
    "10001",
    "1e12",
    "1000000000000",
    "1,000",
    "0,5",
    "12.",
    ".5",
    "1 3/8",
    "3/0",
    "1/3 turn",
    "0.25 turns",
    "17°30'",
    "7°60'",
    "359 59 59.9",
    "400",
    "12.9″",
    "100000/99999",
    "1/1000",
    "9223372036854775807",
    "9223372036854775808",
    "1234567890123456789012345678901234567890",
    "0.1234567890123456789",
    "15 16 17",
    "21 23 27 29 31 33",
    "49(51.5)",
    "49 49",
    "24x2 28 32 40 44",
    "24x10",
    "/",
    "//",
    ";",
    ",",
    " ",
    "\n",
    "x",
    "°",
    "'",
    "\"",
    "−3",
    "+40",
    "NaN",
    "é",
    "\u{0}",
    "(",
    ")",
];

const KINDS: &[&str] = &["parts", "angle", "list", "marks", "parts", "list", ""];

#[test]
fn cases_from_a_fixed_seed_never_panic() {
    let mut dice = ChaCha8Rng::seed_from_u64(127);
    let mut came: BTreeMap<Came, u32> = BTreeMap::new();
    for _ in 0..CASES {
        let case = case(&mut dice);
        *came.entry(ask(&case)).or_default() += 1;
    }
    let answered = came.get(&Came::Answered).copied().unwrap_or(0);
    assert!(answered > CASES / 10, "too few cases come to an answer to say anything: {came:?}");
}

fn case(dice: &mut ChaCha8Rng) -> Vec<u8> {
    let plain = ["40", "15 16 20/37 39 41 43 47 49", "24x2 28 32", "24 30", "parts", "127", "1"];
    let mut fields: Vec<String> = plain.iter().map(ToString::to_string).collect();
    fields[4] = KINDS.choose(dice).expect("kinds").to_string();
    for _ in 0..dice.random_range(0..4) {
        let at = dice.random_range(0..fields.len());
        let pieces = (0..dice.random_range(0..5)).map(|_| *PIECES.choose(dice).expect("pieces"));
        fields[at] = pieces.collect::<Vec<_>>().join(if dice.random() { " " } else { "" });
    }
    let mut bytes = fields.join(&SPLIT.to_string()).into_bytes();
    if dice.random_ratio(1, 8) {
        let at = dice.random_range(0..bytes.len());
        bytes[at] = dice.random();
    }
    bytes
}
