//! Long seeded walks of a run on every kind of way, against a slow model that
//! keeps whole lists, and against a machine whose pins are really moved.
use super::*;
use crate::divide::{
    Asked, At, Leg, MarkKind, Marks, Numbers, Order, Part, Parts, Question, Repeated, answer,
};
use crate::head::{FineDial, GEARS, Handwheel, Head, SET_A, Sense, gears_of, plates_of};
use crate::measure::{Angle, Length};
use crate::number::Fraction;
extern crate std;
use std::vec::Vec;

struct Random(u64);

impl Random {
    fn below(&mut self, below: u32) -> u32 {
        self.0 =
            self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        ((self.0 >> 33) % u64::from(below)) as u32
    }
}

/// Every position a flag, every press a whole copy.
#[derive(Clone, PartialEq, Debug)]
struct Model {
    index: usize,
    legs: usize,
    round: usize,
    cut: Vec<bool>,
}

impl Model {
    fn new(positions: u32) -> Self {
        Self { index: 0, legs: 0, round: 0, cut: std::vec![false; positions as usize] }
    }

    fn stretches(&self) -> usize {
        let starts = |i: &usize| self.cut[*i] && (*i == 0 || !self.cut[i - 1]);
        (0..self.cut.len()).filter(starts).count()
    }

    fn reachable(&self, index: usize) -> bool {
        let cut = |i: usize| self.cut.get(i) == Some(&true);
        cut(index) || cut(index + 1) || (index > 0 && cut(index - 1)) || self.stretches() < 16
    }

    fn phase(&self, closes: bool) -> Phase {
        let n = self.cut.len();
        let leg = self.legs as u8;
        if self.index == n {
            return Phase::Closed;
        }
        match (self.cut[self.index], self.index + 1 == n, closes) {
            (false, ..) if self.index == 0 && !self.cut.contains(&true) => Phase::First,
            (false, ..) => Phase::ToCut,
            (true, true, true) => Phase::Closing { leg },
            (true, true, false) => Phase::Closed,
            (true, false, _) if leg > 0 => Phase::Moving { leg },
            (true, false, _) => Phase::Cut,
        }
    }

    /// The model after `event`, or nothing where it can't be; `legs` is how many
    /// the move from here has.
    fn after(&self, plan: &Plan, event: Event, legs: usize, past: &[Model]) -> Option<Model> {
        let mut next = self.clone();
        let (n, closes) = (self.cut.len(), plan.question.closes());
        let phase = self.phase(closes);
        let last = self.index + 1 == n;
        let to = event.index as usize;
        match event.what {
            What::At | What::Leg => {
                let cuts = plan.confirm == Confirm::OneStage && !last;
                match phase {
                    Phase::Closed => return None,
                    Phase::First | Phase::ToCut if !cuts => return None,
                    _ => next.cut[self.index] = true,
                }
                let done = self.legs + 1 == legs;
                if done != (event.what == What::At) {
                    return None;
                }
                next.legs = if done { 0 } else { self.legs + 1 };
                next.index += usize::from(done);
            }
            What::Cut if matches!(phase, Phase::First | Phase::ToCut) => {
                next.cut[self.index] = true
            }
            What::Cut => return None,
            What::Back if self.legs > 0 => next.legs = 0,
            What::Back => {
                next.index = self.index.checked_sub(1)?;
                self.reachable(next.index).then_some(())?;
            }
            What::Undo => next = past.last()?.clone(),
            What::Jump | What::Found => {
                let home = event.what == What::Found && closes && !self.cut.contains(&false);
                if to >= n + usize::from(home) || !self.reachable(to) {
                    return None;
                }
                (next.index, next.legs) = (to, 0);
            }
            What::Tick => {
                if to >= n || self.cut[to] || !self.reachable(to) {
                    return None;
                }
                next.cut[to] = true;
                return next.reachable(next.index).then_some(next);
            }
            What::Round => {
                if phase != Phase::Closed || self.round + 1 >= plan.rounds.len() {
                    return None;
                }
                next = Model { round: self.round + 1, ..Model::new(n as u32) };
            }
        }
        (next.index == to).then_some(next)
    }
}

/// Pins and parts as they would really stand: every leg must begin where the
/// one before it ended.
#[derive(Default, Clone, PartialEq, Debug)]
struct Machine {
    stands: Vec<(Part, At)>,
    turned: Vec<(Part, Fraction)>,
}

impl Machine {
    fn make(&mut self, leg: &Leg) {
        let at = self.stands.iter_mut().find(|(part, _)| *part == leg.part);
        match at {
            Some((_, at)) => {
                assert_eq!(*at, leg.from);
                *at = leg.to;
            }
            None => self.stands.push((leg.part, leg.to)),
        }
        let turns = Fraction::whole(i64::from(leg.turns))
            .checked_add(Fraction::new(i64::from(leg.spaces), i64::from(leg.from.of)).unwrap())
            .unwrap();
        let turns = if leg.sense == Sense::Clockwise { turns } else { turns.negated() };
        match self.turned.iter_mut().find(|(part, _)| *part == leg.part) {
            Some((_, all)) => *all = all.checked_add(turns).unwrap(),
            None => self.turned.push((leg.part, turns)),
        }
    }

    fn total(&self, part: Part) -> Fraction {
        self.turned.iter().find(|(p, _)| *p == part).map_or(Fraction::ZERO, |(_, t)| *t)
    }
}

/// A machine set to every position in turn, for jumps.
fn set_up(plan: &Plan) -> Vec<Machine> {
    let mut machine = Machine::default();
    let mut all = std::vec![machine.clone()];
    for index in 0..plan.question.last() {
        for leg in &plan.step(index).unwrap().legs {
            machine.make(leg);
        }
        all.push(machine.clone());
    }
    let parts: Vec<Part> = machine.stands.iter().map(|(part, _)| *part).collect();
    for (index, machine) in all.iter_mut().enumerate() {
        for &part in &parts {
            if machine.stands.iter().all(|(p, _)| *p != part) {
                let from = (index as u32..plan.question.last())
                    .find_map(|i| {
                        let step = plan.step(i).unwrap();
                        step.legs.iter().find(|leg| leg.part == part).map(|leg| leg.from)
                    })
                    .unwrap();
                machine.stands.push((part, from));
            }
        }
    }
    all
}

/// A press: mostly what the buttons stand for, now and then anything at all.
fn some_event(random: &mut Random, state: &State, plan: &Plan, at_ms: u64) -> Event {
    let positions = plan.question.positions();
    match random.below(20) {
        0..12 => state.next(plan, at_ms).unwrap(),
        12..14 => state.back_event(at_ms),
        14..16 => state.undo_event(at_ms),
        16 => Some(Event { what: What::Jump, index: random.below(positions), at_ms }),
        _ => None,
    }
    .unwrap_or_else(|| {
        let what = What::ALL[random.below(What::ALL.len() as u32) as usize];
        Event { what, index: random.below(positions + 2), at_ms }
    })
}

#[track_caller]
fn same(state: &State, model: &Model, plan: &Plan) {
    assert_eq!(state.index() as usize, model.index);
    assert_eq!(usize::from(state.legs()), model.legs);
    assert_eq!(usize::from(state.round()), model.round);
    assert_eq!(state.phase(plan), model.phase(plan.question.closes()));
    let mut cut = std::vec![false; model.cut.len()];
    for (from, to) in state.cuts().stretches() {
        cut[from as usize..to as usize].fill(true);
    }
    assert!(cut == model.cut, "{:?}", state.cuts());
    let others = |(i, cut): (usize, &bool)| !cut && i != model.index;
    let left = model.cut.iter().enumerate().filter(|&e| others(e)).count();
    assert_eq!(state.left(plan) as usize, left);
    assert_eq!(state.all_cut(plan), !model.cut.contains(&false));
}

/// Walks `presses` at random and then on to the end of the last round; how many were refused.
fn walk(plan: &Plan, presses: u32, random: &mut Random) -> u32 {
    let all = set_up(plan);
    let mut state = State::START;
    let mut model = Model::new(plan.question.positions());
    let (mut past, mut machine) = (Vec::new(), all[0].clone());
    let mut before: Vec<Machine> = Vec::new();
    let (mut events, mut pressed) = (Vec::new(), 0);
    let mut refused = 0;
    loop {
        pressed += 1;
        let at_ms = 5_000 * u64::from(pressed);
        let event = if pressed < presses {
            some_event(random, &state, plan, at_ms)
        } else {
            match state.next(plan, at_ms).unwrap() {
                Some(event) => event,
                None => break,
            }
        };
        let legs = plan.step(state.index()).map_or(1, |step| step.legs.len().max(1));
        let expected = model.after(plan, event, legs, &past);
        let found = state.press(plan, event);
        let Ok(Pressed::Counted(next)) = found else {
            assert!(expected.is_none(), "{event:?} at {model:?} gave {found:?}");
            assert!(pressed < presses, "what Next stands for is never refused");
            refused += 1;
            continue;
        };
        let expected = expected.unwrap_or_else(|| panic!("{event:?} at {model:?} was counted"));
        let stood = machine.clone();
        match event.what {
            What::At | What::Leg => {
                let step = plan.step(state.index()).unwrap();
                machine.make(&step.legs[usize::from(state.legs())]);
            }
            What::Back => {
                for back in &state.back_move(plan).unwrap() {
                    machine.make(&back.leg);
                }
            }
            What::Jump | What::Found | What::Round => machine = all[event.index as usize].clone(),
            What::Undo => machine = before.last().unwrap().clone(),
            What::Cut | What::Tick => {}
        }
        match event.what {
            What::Undo => {
                past.pop();
                before.pop();
            }
            what => {
                if what == What::Round {
                    past.clear();
                    before.clear();
                }
                past.push(model);
                before.push(stood);
                if past.len() > 16 {
                    past.remove(0);
                    before.remove(0);
                }
            }
        }
        (model, state) = (expected, next);
        events.push(event);
        same(&state, &model, plan);
        if state.legs() == 0 {
            let stands = &all[model.index];
            for (part, at) in &stands.stands {
                assert!(machine.stands.contains(&(*part, *at)), "{machine:?} at {stands:?}");
            }
            for (part, turned) in &stands.turned {
                assert_eq!(machine.total(*part), *turned, "{part:?} at {}", model.index);
            }
        }
    }
    assert_eq!(State::replay(plan, events.iter().copied()), Ok(state));
    assert_eq!(state.phase(plan), Phase::Closed);
    assert_eq!(usize::from(state.round()) + 1, plan.rounds.len());
    home(plan, &machine);
    refused
}

/// The machine stands where the closing move is said to leave it, and the work
/// of an exact way has made whole turns.
fn home(plan: &Plan, machine: &Machine) {
    let last = plan.question.last();
    let place = plan.place(last).unwrap();
    for (at, part) in
        [(place.pin, Part::Pin), (place.notch, Part::Spindle), (place.back_pin, Part::BackPin)]
    {
        if let Some(at) = at {
            assert!(machine.stands.contains(&(part, at)), "{part:?} {at:?}: {machine:?}");
        }
    }
    if let Some(home) = plan.home().unwrap() {
        assert_eq!(home.place, place);
        let exact = plan.way.exact(&plan.question).unwrap();
        assert!(!exact || place.stands.turns().is_whole(), "{place:?}");
    }
}

fn ways(question: &Question, head: &Head, each: usize) -> Vec<crate::divide::Way> {
    let answer = answer::<4>(question, head).unwrap();
    let ways = |order| answer.groups.iter().flat_map(move |g| g.ways(order).iter().take(each));
    ways(Order::Closest).chain(ways(Order::Quickest)).map(|rated| rated.way).collect()
}

fn head() -> Head {
    let (plates, gears) = (plates_of(&SET_A).unwrap(), gears_of(&GEARS).unwrap());
    let turns = |num, den| Angle::from_turns(Fraction::new(num, den).unwrap());
    let slack = Fraction::whole(3);
    let dial = FineDial { shift: turns(1, 360), marks: 100, travel: turns(1, 30), slack };
    let handwheel = Some(Handwheel { marks: 100, vernier: 10 });
    Head { plates, gears, handwheel, fine_dial: Some(dial), ..Head::default() }
}

fn walks(asked: Asked, head: &Head, each: usize, random: &mut Random) -> u32 {
    let mut refused = 0;
    for way in ways(&asked.question(), head, each) {
        let mut frozen = Frozen::new(asked.clone(), head.clone(), way).unwrap();
        frozen.confirm = [Confirm::OneStage, Confirm::TwoStage][random.below(2) as usize];
        let rounds = [Round::Scratch, Round::Rough, Round::Finish];
        let many = 1 + random.below(3) as usize;
        frozen.rounds = crate::List::from_slice(&rounds[..many]).unwrap();
        refused += walk(&frozen.plan(), 60 + random.below(120), random);
    }
    refused
}

#[test]
fn every_way_for_every_number_comes_home_from_any_walk() {
    let (head, mut random, mut refused) = (head(), Random(1), 0);
    for count in 2..=400 {
        let every = if count % 3 == 0 { 1 + random.below(count - 1) } else { 1 };
        refused += walks(Asked::Parts(Parts { count, every }), &head, 1, &mut random);
    }
    assert!(refused > 10_000, "only {refused} presses were of the wrong kind");
}

#[test]
fn graduations_come_home_and_mark_each_part_once() {
    let (head, mut random, mut refused) = (head(), Random(3), 0);
    let kinds = [5, 3].map(|mm| MarkKind { length: Length::from_mm(Fraction::whole(mm)) });
    let pattern = [0, 1, 1, 1, 1];
    let numbers = Numbers { every: 5, per_mark: 1, climbs: Sense::Anticlockwise, zero: true };
    for count in (5..=120).step_by(5).chain([365]) {
        let asked = Asked::Marks(Marks {
            count,
            kinds: crate::List::from_slice(&kinds).unwrap(),
            pattern: crate::List::from_slice(&pattern).unwrap(),
            numbers: Some(numbers),
        });
        for way in ways(&asked.question(), &head, 1) {
            let frozen = Frozen::new(asked.clone(), head.clone(), way).unwrap();
            let plan = frozen.plan();
            let mut parts: Vec<u32> = (0..count).map(|index| plan.part_at(index)).collect();
            for (index, &part) in parts.iter().enumerate() {
                let mark = plan.mark(index as u32).unwrap();
                assert_eq!(u32::from(mark.kind), u32::from(part % 5 != 0));
                assert_eq!(mark.number, (part % 5 == 0).then_some(part));
                assert_eq!(mark.length, kinds[usize::from(mark.kind)].length);
            }
            assert_eq!(plan.mark(count), None, "nothing is marked at the closed end");
            parts.sort_unstable();
            assert!(parts.into_iter().eq(0..count));
        }
        refused += walks(asked, &head, 1, &mut random);
    }
    assert!(refused > 500, "only {refused} presses were of the wrong kind");
}

#[test]
fn angles_and_lists_end_where_they_should_from_any_walk() {
    let (head, mut random) = (head(), Random(2));
    let degrees = |d: u32| Angle::from_degrees(Fraction::new(i64::from(d), 4).unwrap()).unwrap();
    let mut refused = 0;
    for times in 1..=60 {
        let angle = degrees(1 + random.below(4 * 360));
        refused += walks(Asked::Angle(Repeated { angle, times }), &head, 1, &mut random);
        let mut list = crate::List::new();
        for _ in 0..=times {
            list.push(degrees(random.below(4 * 360))).unwrap();
        }
        refused += walks(Asked::List(list), &head, 1, &mut random);
    }
    assert!(refused > 1_000, "only {refused} presses were of the wrong kind");
}
