//! The README's worked examples, worked out again: every figure in their table
//! must be the core's own.
use handturn::divide::{Answer, Kind, Parts, Question, Rated, Repeated, Way, answer};
use handturn::head::{GEARS, Head, SET_A, gears_of, plates_of};
use handturn::measure::write::{Decimal, Dms};
use handturn::measure::{Angle, read};

mod plates;
mod sums;
mod threads;
mod wheels;

const README: &str = include_str!("../../README.md");

/// The head of the examples: 40 : 1, plates 15 to 49, the twelve gears.
fn head() -> Head {
    let plates = plates_of(&SET_A).expect("three plates");
    Head { plates, gears: gears_of(&GEARS).expect("twelve gears"), ..Head::default() }
}

fn ways(question: &Question, head: &Head) -> Answer<4> {
    answer::<4>(question, head).expect("the examples are sound")
}

fn best(question: &Question, kind: Kind) -> Rated {
    *ways(question, &head()).group(kind).and_then(|g| g.closest.first()).expect("offered")
}

/// Fails unless the README has this row, word for word.
#[track_caller]
fn stands(row: &str) {
    assert!(README.lines().any(|line| line == row), "the README should read:\n{row}");
}

fn turns_and_holes(way: &Way, question: &Question) -> String {
    let leg = way.step(question, 0).expect("a first move").legs[0];
    let holes = format!("{} holes on the {} circle", leg.spaces, leg.from.of);
    match leg.turns {
        0 => holes,
        1 => format!("1 turn and {holes}"),
        turns => format!("{turns} turns and {holes}"),
    }
}

fn shown(way: &Way, question: &Question) -> String {
    let arms = way.step(question, 0).expect("a first move").legs[0].arms.expect("arms help");
    format!("{} holes show ({} spaces)", arms.show, arms.spaces)
}

#[test]
fn the_64_wheel() {
    let question = Question::Parts(Parts { count: 64, every: 1 });
    let plain = best(&question, Kind::Plain);
    assert!(plain.errors.is_none());
    let (setting, arms) = (turns_and_holes(&plain.way, &question), shown(&plain.way, &question));
    stands(&format!("| 64 parts | Plain | {setting}; {arms} | exact |"));
}

#[test]
fn the_angle() {
    let angle = read::angle("17°30'").expect("an angle");
    let question = Question::Angle(Repeated { angle, times: 1 });
    let plain = best(&question, Kind::Plain);
    assert!(plain.errors.is_none());
    let (setting, arms) = (turns_and_holes(&plain.way, &question), shown(&plain.way, &question));
    stands(&format!("| 17° 30′ | Plain | {setting}; {arms} | exact |"));
}

#[test]
fn the_127_wheel_with_gears() {
    let question = Question::Parts(Parts { count: 127, every: 1 });
    let rated = best(&question, Kind::Differential);
    let Way::Differential(way) = rated.way else { panic!("a differential way") };
    assert!(rated.errors.is_none());
    let pair = way.train.first;
    let back = way.plate_per_handle_turn().expect("an angle");
    let back = Dms { angle: Angle::from_turns(back.turns().abs()), places: 0 };
    let idlers = way.train.idlers.iter().flatten().count();
    stands(&format!(
        "| 127 parts | Differential | {}, gears {} : {} and {idlers} idlers; one handle turn takes the plate back {back} | exact |",
        turns_and_holes(&rated.way, &question),
        pair.driver,
        pair.driven,
    ));
}

#[test]
fn the_127_wheel_without_gears() {
    let question = Question::Parts(Parts { count: 127, every: 1 });
    let rated = best(&question, Kind::NearestHole);
    let Way::NearestHole(way) = rated.way else { panic!("nearest hole") };
    let arcsec = |angle: Angle| {
        let value = angle.arcsec().expect("small");
        Decimal { value, places: 0 }.to_string()
    };
    let at_rim = rated.errors.worst.arc_mm(head().work_diameter);
    let at_rim = handturn::measure::write::rounded(at_rim, 3).expect("small");
    let diameter = Decimal { value: head().work_diameter.mm(), places: 1 };
    let spaces = |index| way_spaces(&rated.way, &question, index);
    let (least, greatest) =
        (0..126).map(spaces).fold((u32::MAX, 0), |(a, b), s| (a.min(s), b.max(s)));
    stands(&format!(
        "| 127 parts | Nearest hole | {least} or {greatest} holes on the {} circle | within {}″, neighbours {}″: {} mm at {diameter} mm diameter |",
        way.circle.holes,
        arcsec(rated.errors.worst),
        arcsec(rated.errors.adjacent),
        Decimal { value: at_rim, places: 3 },
    ));
}

fn way_spaces(way: &Way, question: &Question, index: u32) -> u32 {
    way.step(question, index).expect("a move").legs[0].spaces
}
