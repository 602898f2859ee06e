//! Hole and dial against what places show and what moves add up to.
use super::fine_dial::{DialledHoles, fine_dial};
use super::moves::{Errors, Part};
use super::*;
use crate::head::{FineDial, Head, PlateStop, SET_A, Sense, plates_of};
use crate::measure::Angle;
use crate::number::Fraction;
extern crate std;
use std::vec::Vec;

fn turns(num: i64, den: i64) -> Angle {
    Angle::from_turns(Fraction::new(num, den).unwrap())
}

/// One dial turn shifts the plate by `shift`, at most `travel` to each side.
fn dial(shift: Angle, marks: u32, travel: Angle, slack: Fraction) -> FineDial {
    FineDial { shift, marks, travel, slack }
}

fn head(sets: &[&[u16]], dial: FineDial) -> Head {
    Head { plates: plates_of(sets).unwrap(), fine_dial: Some(dial), ..Head::default() }
}

fn parts(count: u32) -> Question<'static> {
    Question::Parts(Parts { count, every: 1 })
}

fn offered(question: &Question, head: &Head) -> Vec<(DialledHoles, Errors)> {
    let mut found = Vec::new();
    fine_dial(question, head, &mut |way, errors| {
        found.push((way, errors));
        Ok(())
    })
    .unwrap();
    found
}

fn far(a: Fraction, b: Fraction) -> Fraction {
    a.checked_sub(b).unwrap().abs()
}

/// Places, moves and errors of a way fit each other; the dial keeps within its travel.
#[track_caller]
fn holds(way: &DialledHoles, errors: Errors, question: &Question, ratio: Fraction) {
    let places: Vec<Place> =
        (0..=question.last()).map(|i| way.place(question, i).unwrap()).collect();
    let error = |part: u32| places[question.index_of(part) as usize].error().unwrap().turns();
    let all = question.positions();
    let worst = (0..all).map(|p| error(p).abs()).max().unwrap();
    let pairs = (1..all).map(|p| far(error(p), error(p - 1)));
    let wrap = question.closes().then(|| far(error(all - 1), error(0)));
    let adjacent = pairs.chain(wrap).max().unwrap();
    let end = places.last().unwrap().error().unwrap().turns().abs();
    let closing = if question.closes() { end } else { Fraction::ZERO };
    let slow = [worst, adjacent, closing].map(Angle::from_turns);
    assert_eq!([errors.worst, errors.adjacent, errors.closing], slow, "{question:?}: {way:?}");
    let (mut plate, mut over) = (Fraction::ZERO, Fraction::ZERO);
    for (i, pair) in places.windows(2).enumerate() {
        let step = way.step(question, i as u32).unwrap();
        let (mut reading, mut hole) = (pair[0].dial.unwrap(), pair[0].pin.unwrap());
        let mut climbed = true;
        for (at, leg) in step.legs.iter().enumerate() {
            let of = i64::from(leg.from.of);
            let count = i64::from(leg.turns) * of + i64::from(leg.spaces);
            let count = if leg.sense == Sense::Clockwise { count } else { -count };
            let by = Fraction::new(count, of).unwrap();
            if leg.part == Part::FineDial {
                assert_eq!(reading, leg.from);
                reading = leg.to;
                climbed = count > 0;
                let shift = by.checked_mul(way.dial.shift.turns()).unwrap();
                plate = plate.checked_add(shift).unwrap();
            } else {
                assert_eq!((leg.part, leg.sense), (Part::Pin, Sense::Clockwise));
                assert_eq!((hole, at + 1), (leg.from, step.legs.len()), "the pin last");
                hole = leg.to;
                over = over.checked_add(by).unwrap();
            }
            assert_eq!((i64::from(leg.from.number) + count).rem_euclid(of), leg.to.number.into());
        }
        assert_eq!((reading, hole), (pair[1].dial.unwrap(), pair[1].pin.unwrap()));
        assert!(climbed || way.dial.slack.is_zero(), "the dial comes up to its mark");
        assert!(plate.abs() <= way.dial.travel.turns());
        let stands = over.checked_add(plate).unwrap().checked_div(ratio).unwrap();
        assert_eq!(stands, pair[1].stands.turns());
    }
}

#[test]
fn its_errors_and_moves_are_those_of_its_places() {
    let slack = Fraction::new(5, 2).unwrap();
    let dials = [
        // Marks that divide the hole space, that do not, and a travel that just reaches.
        dial(turns(1, 49), 40, turns(1, 30), slack),
        dial(turns(1, 36), 97, turns(1, 20), slack),
        dial(turns(1, 60), 7, turns(1, 98), Fraction::ZERO),
        dial(turns(1, 100), 100, turns(1, 32), Fraction::whole(2)),
    ];
    for dial in dials {
        for ratio in [Fraction::whole(40), Fraction::new(81, 2).unwrap()] {
            let head = Head { ratio, ..head(&[&[16, 27, 49]], dial) };
            for count in 2..=50 {
                let every = if count % 3 == 1 { 3 } else { 1 };
                let angle = turns(i64::from(count), 1999);
                for question in [
                    Question::Parts(Parts { count, every: every.min(count - 1) }),
                    Question::Angle(Repeated { angle, times: count }),
                ] {
                    for (way, errors) in offered(&question, &head) {
                        holds(&way, errors, &question, ratio);
                    }
                }
            }
            let angles = [10, 355, 20, 20, 5].map(|n| turns(n, 361));
            let list = Question::List(&angles);
            for (way, errors) in offered(&list, &head) {
                holds(&way, errors, &list, ratio);
            }
        }
    }
}

#[test]
fn a_dial_whose_marks_fit_is_exact() {
    // A turn of the dial is one hole space of the 49; a mark is 1/127 of it.
    let fits = dial(turns(1, 49), 127, turns(1, 90), Fraction::whole(2));
    let question = parts(127);
    let head = head(&SET_A, fits);
    let answer = answer::<20>(&question, &head).unwrap();
    let group = answer.group(Kind::FineDial).unwrap();
    let exact: Vec<_> = group.closest.iter().filter(|rated| rated.errors.is_none()).collect();
    let [rated] = exact[..] else { panic!("only the 49") };
    let Way::FineDial(way) = rated.way else { panic!("of its kind") };
    assert_eq!(way.circle, CircleAt { plate: 2, holes: 49 });
    assert_eq!(answer.best(Order::Closest), Some(rated));
    // 40/127 × 49 = 15 + 55/127: hole 15, mark 55. Then 30 + 110/127: hole 31, 17 below zero.
    let first = rated.way.place(&question, 1).unwrap();
    assert_eq!(first.pin, Some(At { number: 15, of: 49 }));
    assert_eq!(first.dial, Some(At { number: 55, of: 127 }));
    let second = rated.way.place(&question, 2).unwrap();
    assert_eq!(second.dial, Some(At { number: 110, of: 127 }));
    let legs = rated.way.step(&question, 1).unwrap().legs;
    let told = legs.iter().map(|leg| (leg.part, leg.sense, leg.turns, leg.spaces, leg.to.number));
    let (up, down) = (Sense::Clockwise, Sense::Anticlockwise);
    let expected = [
        (Part::FineDial, down, 0, 74, 108),
        (Part::FineDial, up, 0, 2, 110),
        (Part::Pin, up, 0, 16, 31),
    ];
    assert_eq!(told.collect::<Vec<_>>(), expected);
}

#[track_caller]
fn left_out(question: Question, head: &Head, reason: Reason) {
    let found = answer::<1>(&question, head).unwrap();
    assert!(found.group(Kind::FineDial).is_none());
    let why = found.left_out.iter().find(|out| out.kind == Kind::FineDial);
    assert_eq!(why.map(|out| out.reason), Some(reason));
}

#[test]
fn what_it_cannot_do_is_left_out_with_its_reason() {
    let long = dial(turns(1, 50), 100, turns(1, 40), Fraction::ZERO);
    let a = head(&SET_A, long);
    left_out(parts(64), &a, Reason::PlainIsExact);
    left_out(parts(127), &Head { fine_dial: None, ..a.clone() }, Reason::NoFineDial);
    let short = dial(turns(1, 50), 100, turns(1, 99), Fraction::ZERO);
    left_out(parts(127), &head(&SET_A, short), Reason::TravelTooShort);
    // Not one mark within its travel.
    let coarse = dial(turns(1, 2), 2, turns(1, 20), Fraction::ZERO);
    left_out(parts(127), &head(&SET_A, coarse), Reason::TravelTooShort);
    left_out(parts(127), &Head { plates: plates_of(&[]).unwrap(), ..a.clone() }, Reason::NoPlates);
    // It takes the stop's place, so a stop that does not withdraw is no reason.
    let fixed = Head { plate_stop: PlateStop::Fixed, ..a };
    assert!(answer::<1>(&parts(127), &fixed).unwrap().group(Kind::FineDial).is_some());
    let circles = offered(&parts(127), &fixed);
    assert!(circles.iter().all(|(way, _)| way.circle.holes >= 20), "half a space within 1/40");
    assert_eq!(circles.len(), 13);
}

#[test]
fn slack_beyond_a_turn_of_the_dial_is_refused() {
    let loose = dial(turns(1, 50), 100, turns(1, 40), Fraction::whole(101));
    assert!(head(&SET_A, loose).check().is_err());
}
