//! Budgets and ladders held against figures worked by hand.
use super::*;
use crate::divide::{Asked, Kind, Parts, Question, Way, answer};
use crate::error::{Cause, Error, Field};
use crate::head::{Circle, FineDial, Handwheel, Head, Reach, SET_A, SET_B, plates_of};
use crate::measure::{Angle, Length};
use crate::number::Fraction;
use crate::run::Frozen;

fn mm(num: i64, den: i64) -> Length {
    Length::from_mm(Fraction::new(num, den).unwrap())
}

fn arcsec(num: i64) -> Angle {
    Angle::from_arcsec(Fraction::whole(num)).unwrap()
}

fn parts(count: u32) -> Question<'static> {
    Question::Parts(Parts { count, every: 1 })
}

fn head() -> Head {
    Head { plates: plates_of(&SET_A).unwrap(), ..Head::default() }
}

fn way(count: u32, head: &Head, kind: Kind) -> Way {
    answer::<1>(&parts(count), head).unwrap().group(kind).unwrap().closest[0].way
}

#[track_caller]
fn near(found: f64, expected: f64) {
    assert!((found - expected).abs() <= 0.005 * expected.abs(), "{found}, not {expected}");
}

/// The one term that `sources` bring to `count` parts: total, adjacent, RMS, adjacent RMS.
#[track_caller]
fn one(count: u32, kind: Kind, head: &Head, sources: &Sources) -> [f64; 4] {
    let way = way(count, head, kind);
    let budget = budget(&parts(count), head, &way, sources).unwrap();
    let term = budget.terms.last().expect("a term").sizes;
    [term.total, term.adjacent, term.rms, term.adjacent_rms].map(|a| a.value)
}

#[track_caller]
fn check(found: [f64; 4], expected: [f64; 4]) {
    for (found, expected) in found.into_iter().zip(expected) {
        near(found, expected);
    }
}

#[test]
fn each_source_by_hand() {
    let head = head();
    let exact = |sources: &Sources| one(64, Kind::Plain, &head, sources);
    // 0.05 mm at 50 mm is 206.26″ of the plate, 5.157″ of the work.
    let hole = Sources { hole: mm(1, 20), ..Sources::NONE };
    check(exact(&hole), [5.157, 10.313, 2.977, 4.211]);
    // Half the play to either side.
    let pin = Sources { pin_play: mm(1, 20), ..Sources::NONE };
    check(exact(&pin), [2.578, 5.157, 1.489, 2.105]);
    // A wave once in a handle turn: 40/64 of a turn on, |sin 112.5°| = 0.9239.
    let plate = Sources { plate_run_out: mm(1, 20), ..Sources::NONE };
    check(exact(&plate), [5.157, 9.528, 3.646, 6.737]);
    let worm = Sources { worm: arcsec(10), ..Sources::NONE };
    check(exact(&worm), [10.0, 18.478, 7.071, 13.066]);
    // Once in a turn of the work: 2 × 30 × sin(180°/64) = 2.944.
    let wheel = Sources { wheel: arcsec(30), ..Sources::NONE };
    check(exact(&wheel), [30.0, 2.944, 21.213, 2.082]);
    // 0.01 mm at 38.1 mm is 54.14″.
    let blank = Sources { blank_run_out: mm(1, 100), ..Sources::NONE };
    check(exact(&blank), [54.138, 5.313, 38.281, 3.757]);
    // A tenth of a handle turn is 0.9° of the work.
    let slack = Sources { same_side: false, ..Sources::NONE };
    check(exact(&slack), [3240.0, 3240.0, 1870.6, 1322.7]);
    // 127 on the 49: 63/127 of a hole, neighbours 72/127; a hole is 661.2″.
    let rounding = one(127, Kind::NearestHole, &head, &Sources::NONE);
    check(rounding, [328.0, 374.9, 190.9, 327.6]);
}

#[test]
fn other_ways_by_hand() {
    let dials = Head {
        handwheel: Some(Handwheel { marks: 100, vernier: 1 }),
        fine_dial: Some(FineDial {
            shift: Angle::from_turns(Fraction::new(1, 360).unwrap()),
            marks: 100,
            travel: Angle::from_turns(Fraction::new(1, 30).unwrap()),
            slack: Fraction::ZERO,
        }),
        gears: crate::head::gears_of(&crate::head::GEARS).unwrap(),
        ..head()
    };
    let reading = Sources { reading: Fraction::new(1, 4).unwrap(), ..Sources::NONE };
    // A quarter of a mark of 324″; a quarter of 36″/40.
    check(one(64, Kind::Handwheel, &dials, &reading), [81.0, 162.0, 46.77, 66.14]);
    near(one(127, Kind::FineDial, &dials, &reading)[0], 0.225);
    let hole = Sources { hole: mm(1, 20), ..Sources::NONE };
    // No worm: 206.26″ at full size.
    check(one(24, Kind::Direct, &dials, &hole), [206.26, 412.53, 119.09, 168.41]);
    // Two circles, two holes.
    let compound = one(69, Kind::Compound, &dials, &hole);
    near(compound[0], 2.0 * 5.157);
    // Gears: ratio less what the plate turns, 40 + 7/3.
    check(one(127, Kind::Differential, &dials, &hole), [4.872, 9.745, 2.813, 3.978]);
}

#[test]
fn a_pin_that_stays_in_its_hole_tells_nothing_of_the_plate() {
    let sources =
        Sources { hole: mm(1, 20), plate_run_out: mm(1, 20), worm: arcsec(9), ..Sources::NONE };
    let budget = budget(&parts(20), &head(), &way(20, &head(), Kind::Plain), &sources).unwrap();
    assert_eq!((budget.terms.len(), budget.dominant), (0, None));
}

#[test]
fn as_seen_from_the_first_cut() {
    let (head, question) = (head(), parts(127));
    let way = way(127, &head, Kind::NearestHole);
    let sources = Sources { wheel: arcsec(30), ..Sources::NONE };
    let mut seen = 0;
    along(&question, &head, &way, &sources, &mut |share| {
        assert_eq!(share.part, seen);
        let error = way.place(&question, seen).unwrap().error().unwrap();
        assert_eq!(share.rounding, error);
        let wave = 60.0 * (core::f64::consts::PI * f64::from(seen) / 127.0).sin();
        assert!((share.most.value - wave).abs() < 0.1, "{seen}: {} {wave}", share.most.value);
        seen += 1;
        Ok(())
    })
    .unwrap();
    assert_eq!(seen, 127);
}

#[test]
fn the_plate_of_127() {
    let head = head();
    let first = Some(way(127, &head, Kind::NearestHole));
    let making = Making { sources: Sources::NONE, first, ..Making::default() };
    let plan = ladder(&head, &making).unwrap();
    assert_eq!((plan.need.holes, plan.need.owned, plan.parts.count), (127, None, 127));
    assert_eq!(plan.circle.plate, 3);
    let first = &plan.generations[0];
    // 63/127 of a hole of the 49: a hole is 1 296 000″ over 40 × 49.
    let worst = Fraction::new(63 * 1_296_000, 127 * 40 * 49).unwrap();
    assert_eq!(first.plate.rounding.worst.arcsec().unwrap(), worst);
    // Its own neighbours: 375 and twice 188.
    near(first.plate.sum.adjacent.value, 374.9 + 2.0 * 187.5);
    // The work's neighbours lie 40 holes apart: 86/127 of a hole, not 72/127.
    near(first.work.sum.total.value, (328.0 + 187.5) / 40.0);
    near(first.work.sum.adjacent.value, (447.8 + 2.0 * 187.5) / 40.0);
    // Generation 2: rounding and drilling of the first a fortieth, its own drilling.
    let second = &plan.generations[1];
    near(second.plate.sum.total.value, 187.5 + 515.5 / 40.0);
    assert!(second.gain > 0.6 && plan.enough == 2);
    assert_eq!(plan.generations[2].work.dominant, Some(Source::Drilling));
}

#[test]
fn the_first_generation_is_drilled_by_what_errs_least_once_round() {
    let plain = Making { sources: Sources::NONE, ..Making::default() };
    let plan = ladder(&head(), &plain).unwrap();
    let first = &plan.generations[0];
    assert_eq!((first.way.kind(), first.way.effort().times_round), (Kind::Compound, 1));
    assert!(first.plate.rounding.worst <= arcsec(54));
    // Two circles of poor holes, though: then one of them is better.
    let poor = Sources { hole: mm(3, 1), ..Sources::NONE };
    let plan = ladder(&head(), &Making { sources: poor, ..plain }).unwrap();
    assert_eq!(plan.generations[0].way.kind(), Kind::NearestHole);
}

#[test]
fn a_generation_begins_a_run() {
    for set in [&SET_A[..], &SET_B[..]] {
        let head = Head { plates: plates_of(set).unwrap(), ..Head::default() };
        for count in [53, 127, 223, 235, 251] {
            let making = Making { question: parts(count), ..Making::default() };
            let plan = ladder(&head, &making).unwrap();
            let radius = Some(making.ring);
            let with = fitted(&head, Circle { holes: plan.circle.holes, radius });
            for (number, generation) in plan.generations.iter().enumerate() {
                let head = if number == 0 { head.clone() } else { with.clone() };
                let frozen = Frozen::new(Asked::Parts(plan.parts), head, generation.way);
                assert!(frozen.is_ok(), "{count}, generation {number}: {frozen:?}");
            }
            assert_eq!(plan.work.check(&parts(count), &with), Ok(()));
        }
    }
}

#[test]
fn which_plate_is_enough() {
    let need = |count, ratio| {
        need(&parts(count), &Head { ratio: Fraction::whole(ratio), ..head() }).unwrap()
    };
    assert_eq!(need(254, 40).holes, 127);
    assert_eq!(need(127, 60).holes, 127);
    // 40/235 = 8/47, a circle of set A; 223 is prime.
    assert_eq!((need(235, 40).holes, need(235, 40).owned.map(|c| c.holes)), (47, Some(47)));
    assert_eq!((need(223, 40).holes, need(223, 40).owned), (223, None));
    assert_eq!(need(20, 40).holes, 1);
    // A shop without room for one more plate.
    let mut full = head();
    while !full.plates.is_full() {
        let plate = full.plates[0].clone();
        full.plates.push(plate).unwrap();
    }
    let plan = ladder(&full, &Making::default()).unwrap();
    let with = fitted(&full, Circle { holes: 127, radius: None });
    assert_eq!(with.plates[usize::from(plan.circle.plate)].circles[0].holes, 127);
}

#[test]
fn an_angle_can_lack_a_plate_too() {
    // 40/360 × 7° = 7/9 of a turn; 7°30′ is 5/6; 7°12′ is 4/5; 7°11′ is 431/540.
    let need = |minutes: i64| {
        let angle = Angle::from_degrees(Fraction::new(minutes, 60).unwrap()).unwrap();
        let question = Question::Angle(crate::divide::Repeated { angle, times: 9 });
        let making = Making { question, ..Making::default() };
        let plan = ladder(&head(), &making).unwrap();
        (plan.need.holes, plan.need.owned.map(|circle| circle.holes), plan.work.exact(&question))
    };
    assert_eq!(need(420), (9, Some(18), Ok(true)));
    assert_eq!(need(450), (6, Some(18), Ok(true)));
    assert_eq!(need(432), (5, Some(15), Ok(true)));
    assert_eq!(need(431), (540, None, Ok(true)));
}

#[test]
fn what_is_refused() {
    let refused = |change: &dyn Fn(&mut Making, &mut Head)| {
        let (mut making, mut head) = (Making::default(), head());
        change(&mut making, &mut head);
        ladder(&head, &making).map(|_| ()).unwrap_err()
    };
    let err = Error::new;
    let holes = Cause::OutOfRange { least: 2, greatest: 1000 };
    assert_eq!(refused(&|m, _| m.question = parts(20)), err(Field::Holes, holes));
    assert_eq!(refused(&|m, _| m.multiple = 8), err(Field::Holes, holes));
    assert_eq!(refused(&|m, _| m.multiple = 0), err(Field::Generations, Cause::Zero));
    assert_eq!(refused(&|_, h| h.plates.clear()), err(Field::Generations, Cause::Conflict));
    let reach = Cause::OutOfLengths { least_um: 20_000, greatest_um: 50_000 };
    let short = Some(Reach { least: mm(20, 1), greatest: mm(50, 1) });
    assert_eq!(refused(&|_, h| h.reach = short), err(Field::Ring, reach));
    assert_eq!(refused(&|m, _| m.drilling = mm(-1, 20)).field, Field::Drill);
    assert_eq!(refused(&|m, _| m.sources.hole = mm(6, 1)).field, Field::Source);
    assert_eq!(refused(&|m, _| m.sources.wheel = arcsec(-1)).field, Field::Source);
    assert_eq!(refused(&|m, _| m.sources.reading = Fraction::whole(2)).field, Field::Source);
    assert_eq!(refused(&|m, _| m.ring = mm(1, 1)).field, Field::Ring);
    let list = [arcsec(0), arcsec(70_000)];
    let listed = Making { question: Question::List(&list), ..Making::default() };
    assert_eq!(ladder(&head(), &listed), Err(err(Field::List, Cause::Conflict)));
}
