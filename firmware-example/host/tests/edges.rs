//! The counter's program, its words as the board loads them, interpreted.
use handturn::handle::{Counter, Lines};
use handturn_readout_host::pio::{Machine, lines_at};
use handturn_readout_logic::edges::program;

struct Random(u64);

impl Random {
    fn below(&mut self, most: u64) -> u64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1);
        (self.0 >> 33) % most
    }
}

fn lines(bits: u32) -> Lines {
    Lines { a: bits & 1 != 0, b: bits & 2 != 0 }
}

/// More cycles than any step takes.
const SETTLE: u32 = 24;

#[test]
fn every_pair_of_samples_does_what_the_core_says() {
    for before in 0..4 {
        for now in 0..4 {
            for start in [-1_i32, 0, 1, i32::MAX, i32::MIN] {
                let mut machine = Machine::new(before);
                // Brought to `start` the short way: counts wrap.
                while machine.count() != 0 {
                    machine.step();
                }
                let mut core = Counter::new(lines(before)).set(start);
                core = core.sample(lines(now));
                machine.lines = now;
                for _ in 0..SETTLE {
                    machine.step();
                }
                let moved = machine.count();
                assert_eq!(
                    machine.flags & 1 != 0,
                    lines(before).step(lines(now)) == handturn::handle::Step::Lost
                );
                match core.count() {
                    Some(count) => assert_eq!(start.wrapping_add(moved), count),
                    None => assert!(machine.flags & 1 != 0 || start.checked_add(moved).is_none()),
                }
            }
        }
    }
}

#[test]
fn the_program_fits_and_is_loaded_at_nought() {
    let program = program();
    assert_eq!(program.origin, Some(0));
    assert!(program.code.len() <= 32, "{} words", program.code.len());
}

/// Edges one after the other, `cycles` apart: what the machine counts less what happened.
fn missed(cycles: u32, edges: u32, random: &mut Random) -> (i64, bool) {
    let mut machine = Machine::new(lines_at(0));
    let (mut place, mut up) = (0_i64, true);
    for _ in 0..edges {
        if random.below(1_000) == 0 {
            up = !up;
        }
        place += if up { 1 } else { -1 };
        machine.lines = lines_at(place);
        for _ in 0..cycles {
            machine.step();
        }
    }
    for _ in 0..SETTLE {
        machine.step();
    }
    (i64::from(machine.read().raw) - place, machine.flags & 1 != 0)
}

#[test]
fn ten_million_edges_with_bounce_and_reversals_are_all_counted() {
    let mut random = Random(127);
    let mut machine = Machine::new(lines_at(0));
    let (mut place, mut edges) = (0_i64, 0_u64);
    let mut core = Counter::new(lines(machine.lines));
    let mut up = true;
    while edges < 10_000_000 {
        if random.below(500) == 0 {
            up = !up;
        }
        let next = place + if up { 1 } else { -1 };
        // One line bounces at the edge, sometimes so fast that some of it is not seen.
        for _ in 0..random.below(3) {
            for at in [next, place] {
                machine.lines = lines_at(at);
                core = core.sample(lines(machine.lines));
                for _ in 0..1 + random.below(20) {
                    machine.step();
                }
                edges += 1;
            }
        }
        place = next;
        machine.lines = lines_at(place);
        core = core.sample(lines(machine.lines));
        edges += 1;
        for _ in 0..10 + random.below(40) {
            machine.step();
        }
        if random.below(10_000) == 0 {
            let sample = machine.read();
            assert_eq!((i64::from(sample.raw), sample.lost), (place, false));
            assert_eq!(core.count().map(i64::from), Some(place));
        }
    }
    for _ in 0..SETTLE {
        machine.step();
    }
    assert_eq!((i64::from(machine.count()), machine.flags), (place, 0));
}

#[test]
fn every_double_step_is_seen_and_none_is_made_up() {
    let mut random = Random(64);
    let mut machine = Machine::new(lines_at(0));
    let mut place = 0_i64;
    for round in 0..200_000 {
        let double = random.below(10) == 0;
        place += match (double, random.below(2)) {
            (true, 0) => 2,
            (true, _) => -2,
            (false, 0) => 1,
            (false, _) => -1,
        };
        machine.lines = lines_at(place);
        for _ in 0..10 + random.below(20) {
            machine.step();
        }
        assert_eq!(machine.read().lost, double, "round {round}");
        machine.flags = 0;
    }
}

/// One line moves at cycle `edge`, the other one flickers from `rise` to `fall`:
/// the count, and whether the flag is up.
fn spiked(from: i64, phase: u64, edge: u64, rise: u64, fall: u64) -> (i32, bool) {
    let mut machine = Machine::new(lines_at(from));
    for _ in 0..phase {
        machine.step();
    }
    let to = lines_at(from + 1);
    let other = 3 ^ (to ^ lines_at(from));
    for cycle in 0..120 {
        let moved = if cycle < edge { lines_at(from) } else { to };
        let flickers = rise <= cycle && cycle < fall;
        machine.lines = if flickers { moved ^ other } else { moved };
        machine.step();
    }
    (machine.count(), machine.flags & 1 != 0)
}

#[test]
fn a_spike_on_the_other_line_before_or_after_an_edge_is_no_count() {
    let mut random = Random(365);
    let mut told = 0;
    for _ in 0..100_000 {
        let (from, phase, edge) = (random.below(4) as i64, random.below(20), 40);
        let length = 1 + random.below(30);
        let rise = if random.below(2) == 0 {
            edge - length - random.below(9).min(edge - length)
        } else {
            edge + random.below(9)
        };
        let (count, lost) = spiked(from, phase, edge, rise, rise + length);
        told += u32::from(lost);
        assert!(lost || count == 1, "{from} {phase} {rise} {length}: {count}");
    }
    assert!(told > 100, "spikes right beside the edge are double steps now and then");
}

/// What no counter of two lines can tell from turning the other way: a spike that
/// begins before the edge and ends after it. It is told, right, or a whole cycle out.
#[test]
fn a_spike_across_an_edge_is_told_right_or_a_cycle_out() {
    let mut random = Random(223);
    let mut found = std::collections::BTreeSet::new();
    for _ in 0..100_000 {
        let (from, phase, edge) = (random.below(4) as i64, random.below(20), 40);
        let (rise, fall) = (edge - 1 - random.below(30), edge + 1 + random.below(30));
        let (count, lost) = spiked(from, phase, edge, rise, fall);
        found.insert(if lost { None } else { Some(count) });
    }
    assert_eq!(found, [None, Some(-3), Some(1)].into());
}

#[test]
fn the_fastest_rate_without_loss() {
    let mut random = Random(1);
    // 10 cycles are what a step up takes; anything slower is counted whatever the phase.
    for cycles in 10..60 {
        assert_eq!(missed(cycles, 20_000, &mut random), (0, false), "{cycles} cycles an edge");
    }
    // Faster than that is not miscounted in silence.
    for cycles in 4..8 {
        let (missed, lost) = missed(cycles, 20_000, &mut random);
        assert!(missed == 0 || lost, "{cycles} cycles an edge: {missed} missed, not told");
    }
}

#[test]
fn the_count_wraps_both_ways() {
    let mut machine = Machine::new(lines_at(0));
    for place in [-1, -2, -1, 0, 1, 0, -1] {
        machine.lines = lines_at(place);
        for _ in 0..SETTLE {
            machine.step();
        }
        assert_eq!((i64::from(machine.read().raw), machine.flags), (place, 0));
    }
}
