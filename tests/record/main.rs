//! Runs as they are stored: every way written and read again, later versions
//! told by name, and files that somebody else wrote or a bad disk changed.
use handturn::divide::{Asked, Kind, Order, Parts, Repeated, Way, answer};
use handturn::head::{FineDial, GEARS, Handwheel, Head, SET_A, gears_of, plates_of};
use handturn::measure::Angle;
use handturn::number::Fraction;
use handturn::run::{Event, Frozen, Header, Phase, Plan, Record, SCHEMA, State, What};
use handturn::{Cause, Error, Field};
use serde_json::{Value, json};

type Stored = Record<Vec<Event>>;

fn head() -> Head {
    let plates = plates_of(&SET_A).expect("set A fits a head");
    let gears = gears_of(&GEARS).expect("twelve gears fit a head");
    let turns = |num, den| Angle::from_turns(Fraction::new(num, den).expect("not over zero"));
    let slack = Fraction::whole(3);
    let dial = FineDial { shift: turns(1, 360), marks: 100, travel: turns(1, 30), slack };
    let handwheel = Some(Handwheel { marks: 100, vernier: 10 });
    Head { plates, gears, handwheel, fine_dial: Some(dial), ..Head::default() }
}

/// The first way of every kind for `asked`.
fn runs(asked: &Asked) -> Vec<Frozen> {
    let answer = answer::<1>(&asked.question(), &head()).expect("a good question");
    let ways = answer.groups.iter().flat_map(|group| group.ways(Order::Closest).first());
    let frozen = |way: Way| Frozen::new(asked.clone(), head(), way).expect("it was just offered");
    ways.map(|rated| frozen(rated.way)).collect()
}

fn parts(count: u32) -> Asked {
    Asked::Parts(Parts { count, every: 1 })
}

fn run_of(count: u32, kind: Kind) -> Frozen {
    let mut runs = runs(&parts(count)).into_iter();
    runs.find(|frozen| frozen.way.kind() == kind).expect("the way is offered")
}

/// Presses Next until the run is at its end.
fn to_the_end(plan: &Plan) -> Result<Vec<Event>, Error> {
    let (mut state, mut events) = (State::START, Vec::new());
    while let Some(event) = state.next(plan, 2_000 * events.len() as u64)? {
        state = state.apply(plan, event)?;
        events.push(event);
    }
    assert_eq!(state.phase(plan), Phase::Closed);
    Ok(events)
}

#[test]
fn every_way_is_read_as_it_was_written() {
    let turn = |num, den| Angle::from_turns(Fraction::new(num, den).expect("not over zero"));
    let mut list = handturn::List::new();
    for angle in [turn(0, 1), turn(1, 7), turn(1, 3), turn(17, 60)] {
        list.push(angle).expect("four angles fit");
    }
    let angle = Asked::Angle(Repeated { angle: turn(35, 720), times: 9 });
    let mut kinds = Vec::new();
    for asked in [parts(24), parts(64), parts(127), parts(51), angle, Asked::List(list)] {
        for frozen in runs(&asked) {
            kinds.push(frozen.way.kind());
            let events = to_the_end(&frozen.plan()).expect("a good run");
            let stored = Stored { frozen, events };
            let text = serde_json::to_string(&stored).expect("it can be written");
            let read: Stored = serde_json::from_str(&text).expect("it can be read");
            assert_eq!(read, stored);
            read.frozen.check().expect("what was good stays good");
            let plan = read.frozen.plan();
            let state = State::replay(&plan, read.events.iter().copied()).expect("so it was run");
            assert_eq!(state.phase(&plan), Phase::Closed);
        }
    }
    for kind in Kind::ALL {
        assert!(kinds.contains(&kind), "{kind:?} was never written");
    }
}

#[test]
fn the_form_is_the_one_the_version_names() {
    let frozen = run_of(64, Kind::Plain);
    let rows = [(What::At, 1), (What::Back, 0), (What::Undo, 1), (What::Tick, 63)];
    let event = |(what, index)| Event { what, index, at_ms: 1_790_000_000_000 };
    let stored = Stored { frozen, events: rows.map(event).to_vec() };
    let value = serde_json::to_value(&stored).expect("it can be written");
    assert_eq!(value["frozen"]["version"], json!(1));
    assert_eq!(SCHEMA, 1);
    assert_eq!(value["frozen"]["core"], json!("0.1.0"));
    assert_eq!(value["frozen"]["title"], json!(""));
    assert_eq!(value["frozen"]["question"], json!({"Parts": {"count": 64, "every": 1}}));
    assert_eq!(value["frozen"]["rounds"], json!(["cut"]));
    assert_eq!(value["frozen"]["confirm"], json!("onestage"));
    let ms = 1_790_000_000_000_u64;
    let rows = json!([["at", 1, ms], ["back", 0, ms], ["undo", 1, ms], ["tick", 63, ms]]);
    assert_eq!(value["events"], rows);
}

#[test]
fn a_later_version_is_told_before_it_is_read() {
    let newer = r#"{"frozen":{"version":2,"question":"of a kind not known yet"},"more":[]}"#;
    let header: Header = serde_json::from_str(newer).expect("the version can be read");
    assert_eq!(header.frozen.check(), Err(newer_error()));
    assert!(serde_json::from_str::<Stored>(newer).is_err());
    let mut frozen = run_of(64, Kind::Plain);
    frozen.version = 2;
    assert_eq!(frozen.check(), Err(newer_error()));
    frozen.version = 0;
    assert!(frozen.check().is_err());
}

fn newer_error() -> Error {
    Error::new(Field::Record, Cause::Newer)
}

#[test]
fn a_way_that_does_not_belong_is_refused() {
    #[track_caller]
    fn check(change: impl FnOnce(&mut Frozen)) {
        let mut frozen = run_of(127, Kind::Differential);
        frozen.check().expect("good as it stands");
        change(&mut frozen);
        assert_eq!(frozen.check().map_err(|error| error.cause), Err(Cause::Conflict));
    }
    check(|frozen| frozen.question = parts(128));
    check(|frozen| frozen.head.ratio = Fraction::whole(60));
    check(|frozen| frozen.head.gears.clear());
    check(|frozen| frozen.head.plates.clear());
    check(|frozen| frozen.head.tilted = true);
    check(|frozen| {
        let Way::Differential(way) = &mut frozen.way else { panic!("it is differential") };
        way.follows = !way.follows;
    });
    check(|frozen| {
        let Way::Differential(way) = &mut frozen.way else { panic!("it is differential") };
        way.holes += 1;
    });
    let mut plain = run_of(64, Kind::Plain);
    let Way::Plain(way) = &mut plain.way else { panic!("it is plain") };
    way.circle.holes = 32;
    assert_eq!(plain.check(), Err(Error::new(Field::Record, Cause::Conflict)));
}

#[test]
fn an_entry_lost_twice_or_out_of_order_is_caught_where_it_is() {
    for kind in [Kind::Plain, Kind::NearestHole, Kind::Compound] {
        let count = if kind == Kind::Plain { 64 } else { 51 };
        let frozen = run_of(count, kind);
        let plan = frozen.plan();
        let events = to_the_end(&plan).expect("a good run");
        for lost in 0..events.len() - 1 {
            let mut short = events.clone();
            short.remove(lost);
            let place = State::replay(&plan, short).expect_err("one is missing").0;
            assert!((lost..=lost + 1).contains(&place), "{kind:?}: {lost} found at {place}");
            let mut twice = events.clone();
            twice.insert(lost, events[lost]);
            assert_eq!(State::replay(&plan, twice).expect_err("one too many").0, lost + 1);
            let mut swapped = events.clone();
            swapped.swap(lost, lost + 1);
            assert_eq!(State::replay(&plan, swapped).expect_err("out of order").0, lost);
        }
    }
}

/// Every value in a stored run replaced by every bad one: refused, or else
/// still a run that can be made to its end.
#[test]
fn nothing_in_a_file_can_break_it() {
    let bad = [
        json!(null),
        json!(-1),
        json!(0),
        json!(1),
        json!(7),
        json!(70_000),
        json!(u64::MAX),
        json!(1.5),
        json!(""),
        json!("at"),
        json!([]),
        json!([0, 0]),
        json!([1, 0]),
        json!([i64::MAX, i64::MAX - 1]),
        json!({}),
    ];
    let (mut refused, mut accepted) = (0, 0);
    for kind in [Kind::Plain, Kind::Compound, Kind::Differential, Kind::NearestHole] {
        let count = match kind {
            Kind::Plain => 64,
            Kind::Compound => 51,
            _ => 127,
        };
        let frozen = run_of(count, kind);
        let stored = Stored { events: to_the_end(&frozen.plan()).expect("a good run"), frozen };
        let mut whole = serde_json::to_value(&stored).expect("it can be written");
        // One plate and two rows of events are as good as all for this.
        if kind != Kind::Plain {
            whole["events"].as_array_mut().expect("a list").truncate(2);
        }
        let mut places = Vec::new();
        leaves(&whole, &mut Vec::new(), &mut places);
        for place in &places {
            for value in &bad {
                let mut changed = whole.clone();
                *at(&mut changed, place) = value.clone();
                match read(&changed) {
                    true => accepted += 1,
                    false => refused += 1,
                }
            }
        }
    }
    assert!(refused > 10_000, "{refused} refused");
    assert!(accepted > 500, "{accepted} accepted");
}

fn read(value: &Value) -> bool {
    let Ok(stored) = serde_json::from_value::<Stored>(value.clone()) else { return false };
    if stored.frozen.check().is_err() {
        return false;
    }
    let plan = stored.frozen.plan();
    to_the_end(&plan).expect("a record that passes its check can be run");
    State::replay(&plan, stored.events).is_ok()
}

/// The path to everything that holds nothing else.
fn leaves<'a>(value: &'a Value, path: &mut Vec<Step<'a>>, found: &mut Vec<Vec<Step<'a>>>) {
    let mut inside: Vec<(Step, &Value)> = Vec::new();
    match value {
        Value::Array(list) => {
            inside.extend(list.iter().enumerate().map(|(i, v)| (Step::Place(i), v)))
        }
        Value::Object(map) => inside.extend(map.iter().map(|(k, v)| (Step::Name(k), v))),
        _ => {}
    }
    found.push(path.clone());
    for (step, value) in inside {
        path.push(step);
        leaves(value, path, found);
        path.pop();
    }
}

#[derive(Clone, Copy)]
enum Step<'a> {
    Name(&'a str),
    Place(usize),
}

fn at<'v>(value: &'v mut Value, path: &[Step]) -> &'v mut Value {
    path.iter().fold(value, |value, step| match step {
        Step::Name(name) => &mut value[*name],
        Step::Place(place) => &mut value[*place],
    })
}
