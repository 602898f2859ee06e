//! Compound settings against slow truths: every leg tried, every position looked at.
use super::compound::Compound;
use super::moves::{Errors, Part};
use super::pairs::compound;
use super::way::Way;
use super::working::{Sign, Term, Word};
use super::*;
use crate::head::{Head, PlateStop, SET_A, SET_B, Sense, plates_of};
use crate::measure::{ARCSEC_PER_TURN, Angle};
use crate::number::{Fraction, gcd};
extern crate std;
use std::vec::Vec;

const BOTH: [&[&[u16]]; 2] = [&SET_A, &SET_B];

fn head(ratio: i64, sets: &[&[u16]]) -> Head {
    let ratio = Fraction::whole(ratio);
    Head { ratio, plates: plates_of(sets).unwrap(), ..Head::default() }
}

fn parts(count: u32) -> Question<'static> {
    Question::Parts(Parts { count, every: 1 })
}

/// A decimal of a handle turn on a 40 : 1 head, in thousandths.
fn thousandths(n: i64) -> Question<'static> {
    let angle = Angle::from_turns(Fraction::new(n, 40_000).unwrap());
    Question::Angle(Repeated { angle, times: 1 })
}

fn offered(question: &Question, head: &Head) -> Vec<(Compound, Errors)> {
    let mut found = Vec::new();
    compound(question, head, &mut |way, errors| {
        found.push((way, errors));
        Ok(())
    })
    .unwrap();
    found
}

/// Signed legs as printed: pin's spaces, its circle, back pin's spaces, its circle.
fn legs(way: &Compound) -> (u32, u16, i32, u16) {
    (way.pin_spaces, way.pin, way.back_spaces, way.back)
}

fn plain(question: &Question, head: &Head) -> bool {
    super::holes::plain_is_exact(question, head).unwrap()
}

/// Whether some pair and legs come to R/N exactly: every back leg of every pair tried.
fn slow_exact(ratio: i64, count: i64, sets: &[&[u16]]) -> bool {
    let circles = |set: &&[u16]| set.iter().map(|&c| i64::from(c)).collect::<Vec<_>>();
    sets.iter().map(circles).any(|set| {
        let pairs = set.iter().flat_map(|b| set.iter().map(move |d| (*b, *d)));
        pairs.filter(|(b, d)| b != d).any(|(b, d)| {
            (1..d).any(|c| {
                // a/b = R/N − c/d, with a no whole turn.
                let (num, den) = (ratio * d - c * count, count * d);
                num * b % den == 0 && num * b / den % b != 0
            })
        })
    })
}

#[test]
fn an_exact_pair_is_offered_exactly_where_there_is_one() {
    for (ratio, set) in [40, 60].into_iter().flat_map(|r| BOTH.map(|set| (r, set))) {
        let head = head(ratio, set);
        for count in 2..=300 {
            let question = parts(count);
            if plain(&question, &head) {
                continue;
            }
            let found = offered(&question, &head);
            let exact = found.iter().any(|(_, errors)| errors.is_none());
            assert_eq!(exact, slow_exact(ratio, count.into(), set), "{ratio}:1, {count}");
            assert!(!exact || found.iter().all(|(_, errors)| errors.is_none()));
            for (way, errors) in found {
                holds(&way, errors, &question, &head);
            }
        }
    }
}

/// What every way offered must keep.
#[track_caller]
fn holds(way: &Compound, errors: Errors, question: &Question, head: &Head) {
    let (count, k) = (question.parts().unwrap(), way.times_round);
    assert_eq!(gcd(count.into(), k.into()), 1);
    let owned = &head.plates[usize::from(way.plate)].circles;
    assert!([way.pin, way.back].iter().all(|&c| owned.iter().any(|o| o.holes == c)));
    assert!(way.pin_spaces % u32::from(way.pin) != 0 && way.back_spaces != 0);
    assert!(way.back_spaces.unsigned_abs() < u32::from(way.back), "under a turn");
    let order = way.order(question);
    let places: Vec<Place> = (0..=count).map(|i| way.place(question, i).unwrap()).collect();
    let error = |part: u32| places[order.index_of(part) as usize].error().unwrap().turns();
    let far = |a: Fraction, b: Fraction| a.checked_sub(b).unwrap().abs();
    let worst = (0..count).map(|p| error(p).abs()).max().unwrap();
    let adjacent = (0..count).map(|p| far(error(p), error((p + 1) % count))).max().unwrap();
    let end = &places[count as usize];
    let closing = far(end.stands.turns(), Fraction::whole(k.into()));
    let slow = [worst, adjacent, closing].map(Angle::from_turns);
    assert_eq!([errors.worst, errors.adjacent, errors.closing], slow, "{count}: {way:?}");
    for (i, pair) in places.windows(2).enumerate() {
        let step = way.step(i as u32).unwrap();
        let [back, pin] = &step.legs[..] else { panic!("two legs") };
        assert_eq!((back.part, pin.part, pin.sense), (Part::BackPin, Part::Pin, Sense::Clockwise));
        let at = |p: &Place| (p.back_pin.unwrap(), p.pin.unwrap());
        assert_eq!((at(&pair[0]), at(&pair[1])), ((back.from, pin.from), (back.to, pin.to)));
        assert_eq!((pin.from.number + pin.spaces) % pin.to.of, pin.to.number);
        // Holes climb at the back pin while the plate goes back.
        let (low, high) = if back.sense == Sense::Anticlockwise {
            (back.from, back.to)
        } else {
            (back.to, back.from)
        };
        assert_eq!((low.number + back.spaces) % low.of, high.number);
        let turned = |leg: &Leg| {
            Fraction::new(i64::from(leg.turns * leg.from.of + leg.spaces), leg.from.of.into())
        };
        let back_turns = turned(back).unwrap();
        let back_turns =
            if back.sense == Sense::Clockwise { back_turns } else { back_turns.negated() };
        let by = turned(pin).unwrap().checked_add(back_turns).unwrap();
        let work = far(pair[1].stands.turns(), pair[0].stands.turns());
        assert_eq!(by.checked_div(head.ratio).unwrap(), work);
    }
}

#[test]
fn every_position_of_an_exact_way_is_a_part_once() {
    let head = head(40, &SET_A);
    for count in [51, 57, 63, 69, 77, 87, 91, 93, 96, 99] {
        let question = parts(count);
        for (way, errors) in offered(&question, &head) {
            assert!(errors.is_none());
            let stands = |i| way.place(&question, i).unwrap().stands.turns();
            let mut seen: Vec<i64> =
                (0..count).map(|i| stands(i).part().times(count.into()).unwrap().num()).collect();
            seen.sort_unstable();
            assert_eq!(seen, (0..i64::from(count)).collect::<Vec<_>>());
            assert_eq!(stands(count), Fraction::ONE);
        }
    }
}

#[test]
fn two_circles_add_ten_numbers_to_a_hundred_on_three_plates() {
    let head = head(40, &SET_A);
    let added = (2..=100).filter(|&n| {
        let found = answer::<1>(&parts(n), &head).unwrap();
        found.group(Kind::Compound).is_some_and(|g| g.closest[0].errors.is_none())
    });
    assert_eq!(added.collect::<Vec<_>>(), [51, 57, 63, 69, 77, 87, 91, 93, 96, 99]);
}

#[track_caller]
fn among(question: Question, set: &[&[u16]], printed: (u32, u16, i32, u16)) {
    let found = offered(&question, &head(40, set));
    assert!(found.iter().any(|(way, _)| legs(way) == printed), "{printed:?}: {found:?}");
}

/// Source: the compound table of pre-1929 milling handbooks (from memory), 40 : 1.
/// Where both legs go forward the pin is here on the larger circle.
#[test]
fn tabled_pairs_are_among_those_offered() {
    among(parts(51), &SET_A, (2, 17, 10, 15));
    among(parts(57), &SET_A, (7, 19, 5, 15));
    among(parts(63), &SET_A, (3, 27, 11, 21));
    among(parts(77), &SET_A, (3, 33, 9, 21));
    among(parts(87), &SET_A, (23, 29, -11, 33));
    among(parts(91), &SET_A, (14, 49, 6, 39));
    among(parts(96), &SET_A, (5, 20, 3, 18));
    among(parts(99), &SET_A, (15, 27, -5, 33));
}

/// Source: Machinery's Handbook, 27th ed., p. 1995, decimals of a turn by two
/// circles: the nearest pair must be at least as near as the printed one.
#[test]
fn the_nearest_pair_is_at_least_as_near_as_the_printed_one() {
    type Row = (i64, (i64, i64, i64, i64));
    const ON_A: [Row; 23] = [
        (191, (17, 39, -12, 49)),
        (195, (1, 23, 5, 33)),
        (196, (21, 49, -10, 43)),
        (197, (21, 39, -14, 41)),
        (198, (2, 29, 4, 31)),
        (199, (5, 37, 3, 47)),
        (201, (11, 39, -3, 37)),
        (202, (23, 41, -14, 39)),
        (204, (12, 47, -2, 39)),
        (205, (13, 37, -6, 41)),
        (206, (15, 43, -7, 49)),
        (207, (19, 41, -10, 39)),
        (225, (2, 16, 2, 20)),
        (226, (7, 39, 2, 43)),
        (227, (7, 27, -1, 31)),
        (228, (11, 39, -2, 37)),
        (229, (18, 39, -10, 43)),
        (230, (7, 37, 2, 49)),
        (232, (20, 41, -11, 43)),
        (234, (24, 41, -13, 37)),
        (235, (11, 27, -5, 29)),
        (236, (10, 39, -1, 49)),
        (237, (23, 37, -15, 39)),
    ];
    const ON_B: [Row; 18] = [
        (191, (21, 57, -11, 62)),
        (195, (8, 25, -3, 24)),
        (196, (34, 66, -15, 47)),
        (197, (11, 47, -2, 54)),
        (198, (17, 49, -7, 47)),
        (199, (27, 59, -15, 58)),
        (201, (8, 49, 2, 53)),
        (205, (3, 24, 2, 25)),
        (206, (12, 53, -1, 49)),
        (226, (2, 49, 10, 54)),
        (227, (14, 54, -2, 62)),
        (228, (23, 49, -14, 58)),
        (229, (29, 51, -18, 53)),
        (230, (12, 25, -6, 24)),
        (232, (26, 57, -13, 58)),
        (234, (2, 54, 13, 66)),
        (235, (9, 25, -3, 24)),
        (236, (29, 66, -12, 59)),
    ];
    let rows = |set, rows: &[Row]| rows.iter().map(|row| (set, *row)).collect::<Vec<_>>();
    for (set, (n, (a, b, c, d))) in
        [rows(&SET_A[..], &ON_A), rows(&SET_B[..], &ON_B)].into_iter().flatten()
    {
        let sum = Fraction::new(a, b).unwrap().checked_add(Fraction::new(c, d).unwrap());
        let off = sum.unwrap().checked_sub(Fraction::new(n, 1000).unwrap()).unwrap().abs();
        let found = offered(&thousandths(n), &head(40, set));
        let worst = found[0].1.worst.turns().times(40).unwrap();
        assert!(worst <= off, "{n}: {worst} turn, printed {off}");
    }
}

#[test]
fn the_127_wheel_once_round_and_more() {
    let head = head(40, &SET_A);
    let question = parts(127);
    let found = offered(&question, &head);
    let once: Vec<_> = found.iter().filter(|(way, _)| way.times_round == 1).collect();
    let printed = once.iter().find(|(way, _)| legs(way) == (26, 37, -19, 49));
    let (way, errors) = printed.expect("−19/49 + 26/37");
    let tenths = |angle: Angle| angle.turns().times(ARCSEC_PER_TURN * 10).unwrap();
    assert_eq!(tenths(errors.closing).nearest().unwrap().0, 536);
    let place = way.place(&question, 1).unwrap();
    assert_eq!(place.back_pin, Some(At { number: 19, of: 49 }));
    assert_eq!(place.pin, Some(At { number: 26, of: 37 }));
    let first = way.step(0).unwrap();
    let arms = first.legs[1].arms.unwrap();
    assert_eq!((arms.spaces, arms.show, arms.rest), (26, 27, false));
    let lines = Way::Compound(*way).working(&question).unwrap();
    assert_eq!(lines[0].terms[..], [Term::Over(40, 127)]);
    let (minus, equals) = (Term::Sign(Sign::Minus), Term::Sign(Sign::Equals));
    let sum = [Term::Over(26, 37), minus, Term::Over(19, 49), equals, Term::Over(571, 1813)];
    assert_eq!(lines[1].terms[..], sum);
    assert_eq!(lines[2].remark, Some(Word::ShortAfterAll));
    for ((way, errors), (next, nearer)) in found.iter().zip(found.iter().skip(1)) {
        assert!(way.times_round <= next.times_round);
        let more = way.times_round < next.times_round;
        assert_eq!(more, nearer.worst < errors.worst, "more rounds only where nearer");
        holds(way, *errors, &question, &head);
    }
    assert!(found.last().unwrap().0.times_round > 1);
    let group = answer::<1>(&question, &head).unwrap();
    let group = group.group(Kind::Compound).unwrap();
    let round = |order| group.ways(order)[0].way.effort().times_round;
    assert_eq!(round(Order::Quickest), 1);
    assert_eq!(round(Order::Closest), found.last().unwrap().0.times_round);
}

#[test]
fn a_cutting_order_is_kept() {
    let head = head(40, &SET_A);
    for every in [2, 5, 63] {
        let question = Question::Parts(Parts { count: 127, every });
        let found = offered(&question, &head);
        assert!(!found.is_empty() && found.iter().all(|(way, _)| way.times_round == every));
        for (way, errors) in &found {
            assert_eq!(way.order(&question), question);
            holds(way, *errors, &question, &head);
        }
    }
}

#[test]
fn a_ratio_that_is_not_whole_may_come_out_after_several_times_round() {
    let ratio = Fraction::new(81, 2).unwrap();
    let head = Head { ratio, ..head(40, &SET_A) };
    for count in 2..=120 {
        let question = parts(count);
        if !plain(&question, &head) {
            for (way, errors) in offered(&question, &head) {
                holds(&way, errors, &question, &head);
            }
        }
    }
}

#[track_caller]
fn left_out(question: Question, head: &Head, reason: Reason) {
    let found = answer::<1>(&question, head).unwrap();
    assert!(found.group(Kind::Compound).is_none());
    let why = found.left_out.iter().find(|out| out.kind == Kind::Compound);
    assert_eq!(why.map(|out| out.reason), Some(reason));
}

#[test]
fn what_it_cannot_do_is_left_out_with_its_reason() {
    let a = head(40, &SET_A);
    left_out(parts(64), &a, Reason::PlainIsExact);
    left_out(Question::Parts(Parts { count: 51, every: 3 }), &a, Reason::NotEqualMoves);
    let angles = [0, 10, 25].map(|d| Angle::from_degrees(Fraction::whole(d)).unwrap());
    left_out(Question::List(&angles), &a, Reason::NotEqualMoves);
    let fixed = Head { plate_stop: PlateStop::Fixed, ..a.clone() };
    left_out(parts(51), &fixed, Reason::PlateStopFixed);
    left_out(parts(51), &head(40, &[&[15], &[17]]), Reason::OneCircle);
    left_out(parts(7), &head(40, &[&[15, 30]]), Reason::NothingNearer);
    left_out(parts(51), &Head::default(), Reason::NoPlates);
}
