use super::*;
use crate::divide::near;
use crate::divide::{Equation, Kind, Order, Parts, Rated, Reason, Repeated, Way, Working, answer};
use crate::head::{GEARS, Head, PlateStop, SET_A, gears_of, plates_of};
use crate::train::Stock;
extern crate std;
use std::string::String;
use std::vec::Vec;

fn head() -> Head {
    let (plates, gears) = (plates_of(&SET_A).unwrap(), gears_of(&GEARS).unwrap());
    Head { plates, gears, ..Head::default() }
}

fn parts(count: u32) -> Question<'static> {
    Question::Parts(Parts { count, every: 1 })
}

fn first(question: &Question, head: &Head) -> Result<Differential, Reason> {
    let answer = answer::<8>(question, head).unwrap();
    match answer.group(Kind::Differential).map(|group| group.ways(Order::Closest)[0]) {
        Some(Rated { way: Way::Differential(way), errors }) => {
            assert!(errors.is_none());
            Ok(way)
        }
        Some(other) => panic!("{other:?}"),
        None => {
            let left = answer.left_out.iter().find(|l| l.kind == Kind::Differential).unwrap();
            Err(left.reason)
        }
    }
}

/// The first way at 40 : 1: `6/33 24:44 -2` is six holes on 33, those gears, the
/// plate against the handle by two idlers.
#[track_caller]
fn check(count: u32, wanted: &str) {
    let way = first(&parts(count), &head()).unwrap();
    let pairs = [Some(way.train.first), way.train.second].into_iter().flatten();
    let gears: String = pairs.map(|p| std::format!(" {}:{}", p.driver, p.driven)).collect();
    let sign = if way.follows { '+' } else { '-' };
    let (holes, circle, idlers) = (way.holes, way.circle.holes, way.train.idler_count());
    assert_eq!(std::format!("{holes}/{circle}{gears} {sign}{idlers}"), wanted);
}

#[test]
fn the_first_way_is_the_one_with_least_to_fit_on_the_largest_circle() {
    check(127, "13/39 56:24 -2");
    check(223, "6/33 24:44 -2");
    check(365, "3/27 40:72 -2");
    check(271, "7/49 72:56 +1");
    check(59, "26/39 32:48 +1");
    check(117, "13/39 24:24 +1");
}

fn write(lines: &Working) -> Vec<String> {
    let term = |term: &Term| match *term {
        Term::Over(a, b) => std::format!("{a}/{b}"),
        Term::Whole(n) => std::format!("{n}"),
        Term::Angle(angle) => std::format!("{}°", angle.degrees().unwrap()),
        Term::Sign(sign) => {
            let signs = [
                (Sign::Equals, "="),
                (Sign::Plus, "+"),
                (Sign::Minus, "−"),
                (Sign::Times, "×"),
                (Sign::Over, "÷"),
                (Sign::Open, "("),
                (Sign::Close, ")"),
                (Sign::Nearly, "≈"),
            ];
            signs.iter().find(|(s, _)| *s == sign).unwrap().1.into()
        }
        Term::Word(word) => std::format!("{word:?}"),
    };
    let line = |line: &Equation| {
        let terms: Vec<String> = line.terms.iter().map(term).collect();
        std::format!("{:?}: {}", line.about.unwrap(), terms.join(" "))
    };
    lines.iter().map(line).collect()
}

#[test]
fn the_working_can_be_checked_by_hand() {
    let question = parts(127);
    let way = first(&question, &head()).unwrap();
    let wanted = [
        "SetAsIfFor(120): 40/120 = 1/3 = 13/39",
        "Gears: ( 120 − 127 ) × 40/120 = -7/3 = -56/24",
        "PerPart: 1/3 − 7/3 × 1/127 = 40/127",
        "OneHandleTurn: -7/3 ÷ 40 = -7/120 = -21°",
        "AllMoves: 127 × 13/39 − 7/3 = 40",
        "Closing: PinEndsInHole 13",
    ];
    assert_eq!(write(&Way::Differential(way).working(&question).unwrap()), wanted);
    // A move that sets no whole number of parts, and four gears.
    let answer = answer::<8>(&question, &head()).unwrap();
    let ways = answer.group(Kind::Differential).unwrap().ways(Order::Closest);
    let lines = ways.iter().map(|rated| write(&rated.way.working(&question).unwrap()));
    let near: Vec<_> = lines.filter(|lines| lines[0] == "NearMove: 15/49 = 15/49").collect();
    let wanted = [
        "NearMove: 15/49 = 15/49",
        "Gears: 40 − 127 × 15/49 = 55/49 = 40/28 × 44/56",
        "PerPart: 15/49 + 55/49 × 1/127 = 40/127",
        "OneHandleTurn: 55/49 ÷ 40 = 11/392 = 495/49°",
        "AllMoves: 127 × 15/49 + 55/49 = 40",
        "Closing: PinEndsInHole 43",
    ];
    assert_eq!(near[0], wanted);
}

#[test]
fn places_and_moves() {
    let question = parts(127);
    let way = first(&question, &head()).unwrap();
    let place = way.place(&question, 126).unwrap();
    assert_eq!(place.pin.map(|at| (at.number, at.of)), Some((0, 39)));
    assert_eq!(place.handle, Fraction::whole(42));
    assert_eq!(place.stands, place.wanted);
    let end = way.place(&question, 127).unwrap();
    assert_eq!((end.pin.map(|at| at.number), end.stands), (Some(13), Angle::TURN));
    let leg = way.step(&question, 126).unwrap().legs[0];
    assert_eq!((leg.turns, leg.spaces, leg.from.number, leg.to.number), (0, 13, 0, 13));
    assert_eq!(leg.arms.map(|arms| (arms.spaces, arms.show)), Some((13, 14)));
    // The same move on the other circles that have it.
    let circles = [(1, 33, Some(11)), (1, 27, Some(9)), (0, 15, Some(5)), (2, 49, None)];
    for (plate, holes, wanted) in circles {
        let there = way.on(CircleAt { plate, holes });
        assert_eq!(there.map(|way| way.holes), wanted, "{holes}");
        assert!(there.is_none_or(|way| way.errors(&question).is_ok()));
    }
}

#[test]
fn any_cutting_order_is_set_with_the_same_gears() {
    let head = head();
    let one = first(&parts(127), &head).unwrap();
    for every in [2, 5, 126] {
        let question = Question::Parts(Parts { count: 127, every });
        assert_eq!(first(&question, &head), Ok(one), "every {every}");
        let leg = one.step(&question, 0).unwrap().legs[0];
        assert_eq!(leg.turns * 39 + leg.spaces, 13 * every);
    }
    // Where the order shares a factor with the count a move shifts by one part more.
    let shared = Question::Parts(Parts { count: 129, every: 3 });
    let way = first(&shared, &head).unwrap();
    for index in 0..=129 {
        let place = way.place(&shared, index).unwrap();
        assert_eq!(place.stands, place.wanted, "{index}");
    }
}

#[test]
fn an_angle_set_several_times_is_set_too() {
    // 7/127 of a turn: 280/127 turns of the handle.
    let angle = Angle::from_turns(Fraction::new(7, 127).unwrap());
    let question = Question::Angle(Repeated { angle, times: 5 });
    let way = first(&question, &head()).unwrap();
    let lines = write(&Way::Differential(way).working(&question).unwrap());
    assert_eq!(lines.len(), 4, "{lines:?}");
    for index in 0..=5 {
        let place = way.place(&question, index).unwrap();
        assert_eq!(place.stands, place.wanted);
    }
    // Too fine for 64 bits: no train is looked for, and nothing breaks.
    let odd = Fraction::new(123_456_789_012_345_678, 1_000_000_000_000_000_003).unwrap();
    let question = Question::Angle(Repeated { angle: Angle::from_turns(odd), times: 1 });
    let stock = Stock::of(&head().gears).unwrap();
    let mut count = 0;
    let none = near::each_way(&question, &head(), &stock, &mut |_, _| {
        count += 1;
        Ok(())
    });
    assert_eq!((none, count), (Ok(()), 0));
}

#[test]
fn what_rules_it_out_is_named() {
    let question = parts(127);
    let list = [Angle::ZERO, Angle::from_turns(Fraction::new(1, 127).unwrap())];
    for (question, head, reason) in [
        (&parts(64), head(), Reason::PlainIsExact),
        (&parts(383), head(), Reason::NoTrain),
        (&Question::List(&list), head(), Reason::NotEqualMoves),
        (&question, Head { plate_stop: PlateStop::Fixed, ..head() }, Reason::PlateStopFixed),
        (&question, Head { tilted: true, ..head() }, Reason::Tilted),
        (&question, Head { gears: crate::List::new(), ..head() }, Reason::NoGears),
        (&question, Head { plates: crate::List::new(), ..head() }, Reason::NoPlates),
    ] {
        assert_eq!(first(question, &head), Err(reason));
    }
}

#[test]
fn a_head_whose_take_off_reverses_takes_the_other_idlers() {
    let mut head = head();
    head.mounting.one_idler_follows = false;
    let way = first(&parts(127), &head).unwrap();
    assert!(!way.follows);
    assert_eq!(way.train.idler_count(), 1);
    assert_eq!((way.train.first.driver, way.train.first.driven), (56, 24));
}

#[test]
fn the_one_gear_lacking_is_named_with_its_way() {
    let gear = |count, teeth: &[u16]| {
        let head = Head { gears: gears_of(teeth).unwrap(), ..head() };
        let lacking = answer::<4>(&parts(count), &head).unwrap().lacking;
        if let Some(way) = lacking.gear_way {
            assert!(way.errors(&parts(count)).unwrap().is_none());
            let teeth = lacking.gear.unwrap();
            assert!(way.train.gears().any(|t| t == teeth));
        }
        lacking.gear
    };
    // 7/3 wants two gears and two idlers: with 24, 32 and 56 any fourth does.
    assert_eq!(gear(127, &[24, 32, 56]), Some(8));
    // 12/13 with the 56 as the idler is the first that three gears can do.
    assert_eq!(gear(127, &[24, 56]), Some(26));
    assert_eq!(gear(127, &[24]), None);
    assert_eq!(gear(127, &GEARS), None, "nothing lacks");
    // Every smaller gear was tried: none of them opens a way.
    let lacks = gear(383, &GEARS).unwrap();
    for teeth in 8..lacks {
        let mut gears = GEARS.to_vec();
        gears.push(teeth);
        let head = Head { gears: gears_of(&gears).unwrap(), ..head() };
        assert_eq!(first(&parts(383), &head), Err(Reason::NoTrain), "{teeth}");
    }
}

#[test]
fn a_way_that_does_not_fit_the_question_says_so() {
    let way = first(&parts(127), &head()).unwrap();
    assert_eq!(way.errors(&parts(126)).map_err(|e| e.cause), Err(Cause::Conflict));
    let zero = CircleAt { plate: 0, holes: 0 };
    let broken = Differential { circle: zero, ..way };
    assert!(broken.place(&parts(127), 1).is_err());
    assert!(broken.errors(&parts(127)).is_err());
    assert!(Way::Differential(broken).working(&parts(127)).is_err());
}
