use super::*;
use crate::divide::{Asked, Kind, Order, Parts, answer};
use crate::head::{FineDial, Head, SET_A, plates_of};
use crate::measure::Angle;
use crate::run::{Event, Frozen, What};

fn wheel(count: u32, head: &Head) -> Frozen {
    let asked = Asked::Parts(Parts { count, every: 1 });
    let answer = answer::<2>(&asked.question(), head).unwrap();
    let way = answer.best(Order::Closest).unwrap().way;
    Frozen::new(asked, head.clone(), way).unwrap()
}

fn head() -> Head {
    Head { plates: plates_of(&SET_A).unwrap(), ..Head::default() }
}

fn at(plan: &Plan, index: u32) -> State {
    State::replay(plan, [Event { what: What::Jump, index, at_ms: 0 }]).unwrap()
}

#[test]
fn back_by_the_slack_at_least_half_a_turn() {
    for (slack, past) in [((1, 10), (1, 2)), ((1, 2), (1, 2)), ((3, 4), (3, 4)), ((2, 1), (2, 1))] {
        let slack = Fraction::new(slack.0, slack.1).unwrap();
        let frozen = wheel(64, &Head { slack, ..head() });
        let plan = frozen.plan();
        let past = Fraction::new(past.0, past.1).unwrap();
        let to = At { number: 2, of: 16 };
        let expected = WentPast { part: Part::Pin, back: Sense::Anticlockwise, past, to };
        assert_eq!(at(&plan, 36).went_past(&plan).unwrap()[..], [expected], "37: hole 8 to hole 2");

        let back = at(&plan, 36).back_move(&plan).unwrap();
        let [back] = &back[..] else { panic!("one pin, one leg") };
        assert_eq!((back.past, back.leg.sense), (past, Sense::Anticlockwise));
        assert_eq!((back.leg.from.number, back.leg.to.number), (8, 14));
        assert_eq!((back.leg.turns, back.leg.spaces), (0, 10));
    }
}

#[test]
fn nothing_to_go_back_to_at_either_end() {
    let frozen = wheel(7, &head());
    let plan = frozen.plan();
    assert!(State::START.back_move(&plan).unwrap().is_empty());
    let mut state = State::START;
    while let Some(event) = state.next(&plan, 0).unwrap() {
        assert_eq!(state.went_past(&plan).unwrap().len(), 1);
        state = state.apply(&plan, event).unwrap();
    }
    assert!(state.went_past(&plan).unwrap().is_empty());
    let back = state.back_move(&plan).unwrap();
    assert_eq!(back[0].leg.to, plan.place(6).unwrap().pin.unwrap());
}

#[test]
fn notches_hold_the_spindle_without_slack() {
    let mut frozen = wheel(24, &Head { plates: List::new(), ..head() });
    frozen.head.slack = Fraction::whole(2);
    let plan = frozen.plan();
    let back = at(&plan, 5).back_move(&plan).unwrap();
    assert_eq!((back[0].leg.part, back[0].past), (Part::Spindle, Fraction::ZERO));
    let past = at(&plan, 5).went_past(&plan).unwrap()[0];
    assert_eq!((past.part, past.past, past.to.number), (Part::Spindle, Fraction::ZERO, 6));
}

fn by(kind: Kind, count: u32, head: &Head) -> Frozen {
    let asked = Asked::Parts(Parts { count, every: 1 });
    let answer = answer::<1>(&asked.question(), head).unwrap();
    let way = answer.group(kind).unwrap().ways(Order::Closest)[0].way;
    Frozen::new(asked, head.clone(), way).unwrap()
}

/// The state after Next was pressed `presses` times.
fn pressed(plan: &Plan, presses: usize) -> State {
    (0..presses).fold(State::START, |state, _| {
        let event = state.next(plan, 0).unwrap().unwrap();
        state.apply(plan, event).unwrap()
    })
}

#[test]
fn two_pins_go_back_the_back_pin_first() {
    let frozen = by(Kind::Compound, 51, &head());
    let plan = frozen.plan();
    let half = Fraction::new(1, 2).unwrap();
    let legs = plan.step(0).unwrap().legs;
    let minus = legs[0].sense == Sense::Anticlockwise;
    let state = pressed(&plan, 1);
    let back = state.back_move(&plan).unwrap();
    assert_eq!((back.len(), back[0].leg.part), (1, Part::BackPin));
    let state = pressed(&plan, 2);
    let back = state.back_move(&plan).unwrap();
    let parts = [back[0].leg.part, back[1].leg.part];
    assert_eq!(parts, [Part::BackPin, Part::Pin]);
    assert_eq!(back[0].past, if minus { Fraction::ZERO } else { half });
    assert_eq!((back[1].past, back[1].leg.sense), (half, Sense::Anticlockwise));
    assert_eq!((back[1].leg.from, back[1].leg.to), (legs[1].to, legs[1].from));
    let past = pressed(&plan, 2).went_past(&plan).unwrap();
    assert_eq!(past[0].past, if minus { Fraction::ZERO } else { half });
    let past = pressed(&plan, 3).went_past(&plan).unwrap();
    assert_eq!((past.len(), past[0].part, past[0].past), (1, Part::Pin, half));
}

#[test]
fn the_worm_is_taken_up_by_the_pin_where_only_the_dial_moved() {
    let part = |num, den| Fraction::new(num, den).unwrap();
    let dial = FineDial {
        shift: Angle::from_turns(part(1, 360)),
        marks: 100,
        travel: Angle::from_turns(part(1, 20)),
        slack: Fraction::whole(20),
    };
    let frozen = by(Kind::FineDial, 127, &Head { fine_dial: Some(dial), ..head() });
    let plan = frozen.plan();
    let (fifth, half) = (part(1, 5), part(1, 2));
    assert_eq!(plan.dial_slack, fifth);
    // The first leg is the dial's, the last the pin's.
    let state = pressed(&plan, 1);
    assert_eq!(state.legs(), 1);
    let up = plan.step(0).unwrap().legs[0].sense == Sense::Clockwise;
    let back = state.back_move(&plan).unwrap();
    if up {
        let pin = plan.place(0).unwrap().pin.unwrap();
        assert_eq!((back.len(), back[0].past, back[1].past), (2, fifth, half));
        assert_eq!((back[1].leg.from, back[1].leg.to, back[1].leg.spaces), (pin, pin, 0));
    }
    let mut state = State::START;
    while let Some(event) = state.next(&plan, 0).unwrap() {
        state = state.apply(&plan, event).unwrap();
        let back = state.back_move(&plan).unwrap();
        let last = back.last().map(|last| (last.leg.part, last.past, last.leg.sense));
        let dial_went_back = back.iter().any(|entry| {
            entry.leg.part == Part::FineDial && entry.leg.sense == Sense::Anticlockwise
        });
        if dial_went_back {
            assert_eq!(last, Some((Part::Pin, half, Sense::Anticlockwise)), "{back:?}");
        }
        if state.index() < plan.question.last() {
            let past = state.went_past(&plan).unwrap();
            let legs = plan.step(state.index()).unwrap().legs;
            let pin_follows = legs.last().unwrap().part == Part::Pin;
            assert_eq!(past.len(), if pin_follows { 1 } else { 2 }, "{legs:?}");
        }
    }
}
