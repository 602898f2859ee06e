//! Every stack there is, tried one by one, against the nearest that the core names.
use handturn::bench::stack::{MOST, stacks};
use handturn::measure::Length;
use handturn::number::Fraction;
use handturn::{Cause, Field};
use rand::{Rng, SeedableRng};
use rand_chacha::ChaCha8Rng;

/// In hundred-thousandths of a millimetre: tenths of a thou and microns are whole.
const UNIT: i64 = 100_000;

fn length(many: i64) -> Length {
    Length::from_mm(Fraction::new(many, UNIT).unwrap())
}

/// For each count of pieces, from `least` on, the least that any of their sums is off, and
/// of the sums that are off by just that the least: by going through them all. Every sum
/// begins with `pair`.
fn brute(wanted: i64, pair: i64, owned: &[i64], least: usize, most: usize) -> Vec<(u64, i64)> {
    fn go(wanted: i64, owned: &[i64], left: usize, sum: i64, best: &mut (u64, i64)) {
        if left == 0 {
            *best = (*best).min((sum.abs_diff(wanted), sum));
            return;
        }
        for (k, piece) in owned.iter().enumerate() {
            go(wanted, &owned[k + 1..], left - 1, sum + piece, best);
        }
    }
    let count = |count| {
        let mut best = (u64::MAX, i64::MAX);
        go(wanted, owned, count, pair, &mut best);
        best
    };
    (least..=most.min(owned.len())).map(count).collect()
}

#[track_caller]
fn check(wanted: i64, owned: &[i64], most: usize) {
    worn(wanted, None, owned, most);
}

/// As they stand between two wear blocks, each so thick, or without.
#[track_caller]
fn worn(wanted: i64, wear: Option<i64>, owned: &[i64], most: usize) {
    let lengths: Vec<Length> = owned.iter().map(|piece| length(*piece)).collect();
    let found = stacks(length(wanted), wear.map(length), &lengths, most as u8).unwrap();
    let (pair, least) = wear.map_or((0, 1), |wear| (2 * wear, 0));
    // A further piece is named only where it comes nearer.
    let mut nearest = u64::MAX;
    let mut truth = Vec::new();
    let each = brute(wanted, pair, owned, least, most);
    for (count, (off, sum)) in (least..).zip(each) {
        if off < nearest {
            nearest = off;
            truth.push((count, sum));
        }
    }
    let told: Vec<(usize, Length)> =
        found.iter().map(|stack| (stack.pieces.len(), stack.sum)).collect();
    let truth: Vec<(usize, Length)> =
        truth.into_iter().map(|(count, sum)| (count, length(sum))).collect();
    assert_eq!(told, truth, "{wanted} of {owned:?} and twice {wear:?}, at most {most}");
    for stack in &found {
        let mut left = lengths.clone();
        assert_eq!(stack.wear, wear.map(length));
        assert_eq!(stack.count(), stack.pieces.len() + usize::from(wear.is_some()) * 2);
        let mut sum = length(pair).mm();
        for piece in &stack.pieces {
            let place = left.iter().position(|owned| owned == piece).expect("owned, used once");
            left.swap_remove(place);
            sum = sum.checked_add(piece.mm()).unwrap();
        }
        assert_eq!(sum, stack.sum.mm());
        assert_eq!(stack.over.mm(), sum.checked_sub(length(wanted).mm()).unwrap());
        assert_eq!(stack.is_exact(), stack.over.mm().is_zero());
    }
}

#[test]
fn stacks_of_random_sets_are_the_nearest_of_all() {
    let mut rng = ChaCha8Rng::seed_from_u64(6);
    for round in 0..3_000 {
        let count = rng.random_range(1..=14);
        // Coarse pieces make many ties, inch ones among metric ones none.
        let grid = [10_000, 1_000, 254, 1][round % 4];
        let owned: Vec<i64> =
            (0..count).map(|_| rng.random_range(1..=400_000 / grid) * grid).collect();
        check(rng.random_range(1..=900_000), &owned, MOST);
    }
}

#[test]
fn stacks_between_wear_blocks_are_the_nearest_of_all() {
    let mut rng = ChaCha8Rng::seed_from_u64(7);
    for round in 0..3_000 {
        let count = rng.random_range(1..=12);
        let grid = [10_000, 1_000, 254, 1][round % 4];
        let owned: Vec<i64> =
            (0..count).map(|_| rng.random_range(1..=400_000 / grid) * grid).collect();
        let wear = rng.random_range(1..=100_000 / grid) * grid;
        // Now and then the pair alone is all there is room for.
        let more = if round % 5 == 0 { round as i64 % 3 } else { rng.random_range(0..=900_000) };
        worn(2 * wear + more, Some(wear), &owned, MOST);
    }
    let (blocks, wear) = (inch_blocks(), 500 * 254);
    for tenths in [43_301, 12_519, 25_000, 1_000] {
        worn(tenths * 254, Some(wear), &blocks, 3);
    }
    let thick = stacks(length(99_999), Some(length(50_000)), &[length(1)], 4);
    let greatest = Cause::OutOfLengths { least_um: 1, greatest_um: 499 };
    assert_eq!(thick.map_err(|e| (e.field, e.cause)), Err((Field::Thickness, greatest)));
}

/// Feelers 0.05 to 1.00 mm, thirteen leaves, a few inch leaves among them.
#[test]
fn stacks_of_a_feeler_set_and_inch_leaves() {
    let metric =
        [5, 10, 15, 20, 25, 30, 40, 50, 60, 70, 80, 90, 100].map(|hundredths| hundredths * 1_000);
    let inch = [15, 20, 25, 30, 50, 100, 180].map(|tenths| tenths * 254);
    let owned: Vec<i64> = metric.into_iter().chain(inch).collect();
    for wanted in (1..=160).map(|k| k * 1_371) {
        check(wanted, &owned, MOST);
    }
}

/// The 81 inch blocks of the usual set, ten-thousandths of an inch in `UNIT`s being 254.
fn inch_blocks() -> Vec<i64> {
    let tenths = (1001..=1009).chain((1010..=1490).step_by(10)).chain((500..=9500).step_by(500));
    let whole = (1..=4).map(|inches| inches * 10_000);
    tenths.chain(whole).map(|tenths| tenths * 254).collect()
}

#[test]
fn stacks_of_the_inch_blocks() {
    let owned = inch_blocks();
    assert_eq!(owned.len(), 81);
    check(43_301 * 254, &owned, 4);
    for tenths in [43_301, 22_700, 12_519, 25_000, 7_071, 33_333] {
        check(tenths * 254, &owned, 3);
    }
    // 4.3301 in takes no more than four blocks.
    let lengths: Vec<Length> = owned.iter().map(|piece| length(*piece)).collect();
    let found = stacks(length(43_301 * 254), None, &lengths, 4).unwrap();
    assert!(found.last().unwrap().is_exact() && found.last().unwrap().pieces.len() <= 4);
}

/// The 88 metric blocks of the usual set, in hundred-thousandths of a millimetre.
fn metric_blocks() -> Vec<i64> {
    let thousandths =
        (1_001..=1_009).chain((1_010..=1_490).step_by(10)).chain((500..=9_500).step_by(500));
    let tens = (1..=10).map(|tens| tens * 10_000);
    std::iter::once(1_000)
        .chain(thousandths)
        .chain(tens)
        .map(|thousandths| thousandths * 100)
        .collect()
}

#[test]
fn stacks_of_the_metric_blocks() {
    let owned = metric_blocks();
    assert_eq!(owned.len(), 88);
    for thousandths in [63_500, 31_798, 50_000, 17_365, 2_497, 86_603] {
        check(thousandths * 100, &owned, 3);
    }
    // Through all two million stacks of four.
    check(31_798 * 100, &owned, 4);
}
