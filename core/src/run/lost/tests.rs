use super::*;
use crate::divide::{Asked, Graduation, MarkKind, Marks, Numbers, Order, Parts, Question, answer};
use crate::head::{Head, SET_A, Sense, plates_of};
use crate::measure::Length;
use crate::run::{Event, Frozen, What};
extern crate std;
use std::vec::Vec;

fn frozen(asked: Asked) -> Frozen {
    let head = Head { plates: plates_of(&SET_A).unwrap(), ..Head::default() };
    let answer = answer::<2>(&asked.question(), &head).unwrap();
    let way = answer.best(Order::Closest).unwrap().way;
    Frozen::new(asked, head, way).unwrap()
}

fn parts(count: u32) -> Frozen {
    frozen(Asked::Parts(Parts { count, every: 1 }))
}

fn at(plan: &Plan, index: u32) -> State {
    State::replay(plan, [Event { what: What::Jump, index, at_ms: 0 }]).unwrap()
}

fn degrees(num: i64, den: i64) -> Angle {
    Angle::from_degrees(Fraction::new(num, den).unwrap()).unwrap()
}

/// Positions as people count them, from 1, that fit when the run believes it is at `at`.
#[track_caller]
fn check(frozen: &Frozen, believed: u32, seen: Seen, positions: &[u32]) {
    let plan = frozen.plan();
    let fits = at(&plan, believed - 1).fits(&plan, seen).unwrap();
    let found: Vec<u32> = fits.map(|fit| fit.unwrap().index + 1).collect();
    assert_eq!(found, positions);
}

fn pin(number: u32) -> Seen {
    Seen { pin: Some(number), ..Seen::default() }
}

fn ring(reads: Angle, within: Angle) -> Option<RingSeen> {
    Some(RingSeen { reads, zero: Angle::ZERO, within })
}

#[test]
fn the_hole_then_the_ring_lead_back() {
    let wheel = parts(64);
    check(&wheel, 37, pin(8), &[37, 45, 29, 53, 21, 61, 13, 5]);
    check(&wheel, 40, pin(8), &[37, 45, 29, 53, 21, 61, 13, 5]);
    check(&wheel, 1, pin(8), &[5, 13, 21, 29, 37, 45, 53, 61]);
    check(&wheel, 64, pin(8), &[61, 53, 45, 37, 29, 21, 13, 5]);
    check(&wheel, 37, pin(7), &[]);
    let (half, wide) = (degrees(1, 2), degrees(23, 1));
    check(&wheel, 37, Seen { ring: ring(degrees(202, 1), half), ..pin(8) }, &[37]);
    check(&wheel, 37, Seen { ring: ring(degrees(201, 1), half), ..pin(8) }, &[]);
    check(&wheel, 37, Seen { ring: ring(degrees(359, 1), wide), ..pin(8) }, &[61]);
    check(&wheel, 37, Seen { ring: ring(degrees(359, 1), half), ..pin(0) }, &[]);
    check(&wheel, 37, Seen { ring: ring(degrees(359, 1), degrees(1, 1)), ..pin(0) }, &[1]);
    check(
        &wheel,
        1,
        Seen { ring: ring(degrees(45, 1), wide), ..Seen::default() },
        &[5, 6, 7, 8, 9, 10, 11, 12, 13],
    );
}

#[test]
fn the_ring_of_the_other_sense_reads_down() {
    let mut wheel = parts(64);
    wheel.head.degree_ring = Some(Sense::Anticlockwise);
    let seen = Seen { ring: ring(degrees(315, 2), degrees(1, 2)), ..pin(8) };
    check(&wheel, 5, seen, &[37]);
    let plan = wheel.plan();
    assert_eq!(plan.ring(36, Angle::ZERO), Ok(Some(degrees(315, 2))));
    assert_eq!(plan.ring(36, degrees(10, 1)), Ok(Some(degrees(335, 2))));
}

#[test]
fn the_closed_end_is_a_place_only_once_all_is_cut() {
    let wheel = parts(7);
    let plan = wheel.plan();
    let mut state = State::START;
    while let Some(event) = state.next(&plan, 0).unwrap() {
        let fits = state.fits(&plan, pin(0)).unwrap();
        let found: Vec<u32> = fits.map(|fit| fit.unwrap().index).collect();
        let expected: &[u32] = if state.all_cut(&plan) { &[7, 0] } else { &[0] };
        assert_eq!(found, expected, "at {}", state.index());
        state = state.apply(&plan, event).unwrap();
    }
    assert_eq!(state.index(), 7);
}

#[test]
fn the_last_mark_tells_whether_this_one_is_cut() {
    let kinds = [5, 4, 3].map(|mm| MarkKind { length: Length::from_mm(Fraction::whole(mm)) });
    let pattern = [0, 2, 2, 2, 2, 1, 2, 2, 2, 2];
    let numbers = Numbers { every: 10, per_mark: 1, climbs: Sense::Anticlockwise, zero: true };
    let dial = Graduation { count: 60, kinds: &kinds, pattern: &pattern, numbers: Some(numbers) };
    let asked = Asked::Marks(Marks {
        count: dial.count,
        kinds: crate::List::from_slice(&kinds).unwrap(),
        pattern: crate::List::from_slice(&pattern).unwrap(),
        numbers: dial.numbers,
    });
    let dial = frozen(asked);
    assert!(matches!(dial.question.question(), Question::Marks(_)));
    let plan = dial.plan();
    let fits = |kind, number| -> Vec<(u32, Option<bool>)> {
        let seen = Seen { mark: Some(MarkSeen { kind, number }), ..Seen::default() };
        let fits = at(&plan, 20).fits(&plan, seen).unwrap();
        fits.map(|fit| fit.unwrap()).map(|fit| (fit.index, fit.cut)).collect()
    };
    assert_eq!(fits(Some(0), Some(20)), [(20, Some(true)), (21, Some(false))]);
    assert_eq!(fits(None, Some(20)), [(20, Some(true)), (21, Some(false))]);
    assert_eq!(fits(Some(1), Some(20)), []);
    assert_eq!(fits(Some(1), None)[..2], [(16, Some(false)), (25, Some(true))]);
    assert_eq!(fits(Some(2), None)[..3], [(20, Some(false)), (21, Some(true)), (19, None)]);
}

#[test]
fn a_hole_no_part_uses_says_so_and_where_to_turn() {
    let wheel = parts(64);
    let plan = wheel.plan();
    let hole = |number| At { number, of: 16 };
    let near = |spaces, number| Nearby { spaces, to: hole(number) };
    assert_eq!(stray(&plan, 8), Ok(None));
    let found = stray(&plan, 15).unwrap().unwrap();
    let expected = Stray { at: hole(15), clockwise: near(1, 0), anticlockwise: near(1, 14) };
    assert_eq!(found, expected);
    assert_eq!(stray(&plan, 16).unwrap_err().field, Field::Holes);
}

#[test]
fn every_hole_of_every_wheel_is_a_place_or_leads_to_one() {
    for count in 2..=100 {
        let wheel = parts(count);
        let plan = wheel.plan();
        let Some(pin) = stop(&plan.place(0).unwrap()) else { continue };
        let holes: Vec<u32> =
            (0..count).map(|i| stop(&plan.place(i).unwrap()).unwrap().number).collect();
        for number in 0..pin.of {
            let walk = |step: u32| {
                (0..pin.of).find(|n| holes.contains(&((number + n * step) % pin.of))).unwrap()
            };
            match stray(&plan, number).unwrap() {
                None => assert!(holes.contains(&number)),
                Some(found) => {
                    assert_eq!(found.clockwise.spaces, walk(1), "{count}: {number}");
                    assert_eq!(found.anticlockwise.spaces, walk(pin.of - 1));
                    assert!(holes.contains(&found.clockwise.to.number));
                    assert!(holes.contains(&found.anticlockwise.to.number));
                }
            }
        }
    }
}

#[test]
fn readings_that_cannot_be_are_refused() {
    let wheel = parts(64);
    let plan = wheel.plan();
    let refused = |seen: Seen| State::START.fits(&plan, seen).unwrap_err();
    let range = Cause::OutOfRange { least: 0, greatest: 15 };
    assert_eq!(refused(pin(16)), Error::new(Field::Holes, range));
    let turn = Cause::OutOfRange { least: 0, greatest: 360 };
    let good = degrees(1, 2);
    for (reads, within) in [
        (degrees(361, 1), good),
        (degrees(-1, 1), good),
        (degrees(0, 1), Angle::ZERO),
        (degrees(0, 1), degrees(-1, 2)),
        (degrees(0, 1), degrees(180, 1)),
    ] {
        let seen = Seen { ring: ring(reads, within), ..Seen::default() };
        assert_eq!(refused(seen), Error::new(Field::Angle, turn));
    }
    assert_eq!(refused(Seen { notch: Some(0), ..Seen::default() }), NOT_THERE);
    assert_eq!(refused(Seen { back_pin: Some(0), ..Seen::default() }), NOT_THERE);
    let mark = Some(MarkSeen { kind: Some(0), number: None });
    assert_eq!(refused(Seen { mark, ..Seen::default() }), NOT_THERE);
    let no_ring = Plan { degree_ring: None, ..plan };
    let seen = Seen { ring: ring(degrees(0, 1), good), ..Seen::default() };
    assert_eq!(State::START.fits(&no_ring, seen).unwrap_err(), NOT_THERE);
}
