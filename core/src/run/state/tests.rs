use super::*;
use crate::divide::{Asked, Order, Parts, answer};
use crate::head::{Head, SET_A, plates_of};
use crate::run::{Frozen, Round};

fn wheel(confirm: Confirm, rounds: &[Round]) -> Frozen {
    let head = Head { plates: plates_of(&SET_A).unwrap(), ..Head::default() };
    let asked = Asked::Parts(Parts { count: 64, every: 1 });
    let answer = answer::<2>(&asked.question(), &head).unwrap();
    let way = answer.best(Order::Closest).unwrap().way;
    let mut frozen = Frozen::new(asked, head, way).unwrap();
    (frozen.confirm, frozen.rounds) = (confirm, crate::List::from_slice(rounds).unwrap());
    frozen.check().unwrap();
    frozen
}

const fn event(what: What, index: u32) -> Event {
    Event { what, index, at_ms: 0 }
}

/// Folds `events`; the last one must be refused so, or not at all.
#[track_caller]
fn check(frozen: &Frozen, events: &[Event], refused: Option<(Field, Cause)>) {
    let found = State::replay(&frozen.plan(), events.iter().copied());
    let expected = refused.map(|(field, cause)| (events.len() - 1, Error::new(field, cause)));
    assert_eq!(found.err(), expected, "{events:?}");
}

#[test]
fn what_cannot_be_is_refused_by_name() {
    use What::{At, Back, Cut, Found, Jump, Leg, Round, Tick, Undo};
    let not_now = Some((Field::Event, Cause::NotNow));
    let conflict = Some((Field::Position, Cause::Conflict));
    let beyond = |greatest| Some((Field::Position, Cause::OutOfRange { least: 0, greatest }));
    let one = wheel(Confirm::OneStage, &[super::super::Round::Cut]);
    check(&one, &[event(At, 1)], None);
    check(&one, &[event(At, 2)], conflict);
    check(&one, &[event(At, 0)], conflict);
    check(&one, &[event(Leg, 0)], not_now);
    check(&one, &[event(Cut, 0), event(Cut, 0)], not_now);
    check(&one, &[event(Back, 0)], not_now);
    check(&one, &[event(Undo, 0)], Some((Field::Undo, Cause::NotNow)));
    check(&one, &[event(Jump, 63), event(At, 64)], not_now);
    check(&one, &[event(Jump, 63), event(Cut, 63), event(At, 64)], None);
    check(&one, &[event(Jump, 63), event(Cut, 63), event(At, 64), event(At, 65)], not_now);
    check(&one, &[event(Jump, 64)], beyond(63));
    check(&one, &[event(Found, 64)], beyond(63));
    check(&one, &[event(Tick, 64)], beyond(63));
    check(&one, &[event(Tick, 5), event(Tick, 5)], not_now);
    check(&one, &[event(Round, 0)], not_now);
    check(&one, &[event(Jump, 63), event(Cut, 63), event(At, 64), event(Round, 0)], not_now);
    let two = wheel(Confirm::TwoStage, &[super::super::Round::Cut]);
    check(&two, &[event(At, 1)], not_now);
    check(&two, &[event(Cut, 0), event(At, 1)], None);
    check(&two, &[event(Cut, 0), event(At, 1), event(At, 2)], not_now);
}

#[test]
fn a_second_press_too_soon_is_asked_about() {
    let frozen = wheel(Confirm::OneStage, &[Round::Cut]);
    let plan = frozen.plan();
    let first = Event { what: What::At, index: 1, at_ms: 10_000 };
    let Ok(Pressed::Counted(state)) = State::START.press(&plan, first) else {
        panic!("the first press counts")
    };
    #[track_caller]
    fn check(state: &State, plan: &Plan, event: Event, counted: bool) {
        let found = state.press(plan, event).unwrap();
        assert_eq!(matches!(found, Pressed::Counted(_)), counted, "{event:?}");
    }
    for (at_ms, counted) in
        [(10_000, false), (11_499, false), (11_500, true), (8_501, false), (8_500, true)]
    {
        check(&state, &plan, Event { what: What::At, index: 2, at_ms }, counted);
        check(&state, &plan, Event { what: What::Back, index: 0, at_ms }, counted);
        check(&state, &plan, Event { what: What::Undo, index: 0, at_ms }, true);
        check(&state, &plan, Event { what: What::Jump, index: 9, at_ms }, true);
    }
    let undone = state.apply(&plan, Event { what: What::Undo, index: 0, at_ms: 10_100 });
    let again = Event { what: What::At, index: 1, at_ms: 10_200 };
    check(&undone.unwrap(), &plan, again, true);
}

#[test]
fn undo_reaches_sixteen_presses_back_and_no_further_than_the_round() {
    let frozen = wheel(Confirm::OneStage, &[Round::Scratch, Round::Finish]);
    let plan = frozen.plan();
    let run = |from: State, presses: usize| {
        (0..presses).fold(from, |state, _| {
            let event = state.next(&plan, 0).unwrap().unwrap();
            state.apply(&plan, event).unwrap()
        })
    };
    let undo = |mut state: State| {
        let mut steps = 0;
        while let Some(event) = state.undo_event(0) {
            state = state.apply(&plan, event).unwrap();
            steps += 1;
        }
        let refused = state.apply(&plan, event(What::Undo, state.index())).unwrap_err();
        assert_eq!(refused, Error::new(Field::Undo, Cause::NotNow));
        (steps, state)
    };
    assert_eq!(undo(run(State::START, 20)).0, 16);
    assert_eq!(undo(run(State::START, 20)).1.index(), 4);
    assert_eq!(undo(run(State::START, 5)), (5, State::START));
    let closed = run(State::START, 65);
    let second = run(closed, 1);
    assert_eq!((second.round(), second.index(), second.cuts().count()), (1, 0, 0));
    let (steps, back) = undo(second);
    assert_eq!((steps, back.round(), back.index()), (1, 0, 64));
    assert_eq!(back.cuts(), closed.cuts());
    assert_eq!(run(closed, 66).next(&plan, 0), Ok(None), "there is no third round");
}

#[test]
fn it_is_small_enough_for_a_board() {
    assert!(size_of::<State>() <= 384, "{}", size_of::<State>());
    assert!(size_of::<Plan>() <= 512, "{}", size_of::<Plan>());
}
