//! Which values are kept, and by which names: a record by those of its fields, a
//! choice by its own, an event as a row.
use super::kept::{choice, record, row};
use handturn::divide::{
    Asked, CircleAt, Compound, DialledHoles, DialledTurns, Differential, Direct, Holes, MarkKind,
    Marks, Numbers, Parts, Repeated, Way,
};
use handturn::head::{
    Arms, Circle, FineDial, Gear, Handwheel, Head, Mounting, Plate, PlateStop, Reach, Sense,
};
use handturn::run::{Confirm, Event, Frozen, Header, Record, Round, Version, What};
use handturn::train::{Gap, Pair, Train};

record! {
    Version { version }
    Header { frozen }
    Record<E> { frozen, events }
    Frozen { version, core, title, question, head, way, rounds, confirm }
    Head {
        ratio, plates, direct, worm_drops_out, gears, mounting, work_turns, plate_stop, spindle_clamp, arms, slack,
        tilted, degree_ring, reach, pin, handwheel, fine_dial, work_diameter
    }
    Plate { circles }
    Circle { holes, radius }
    Gear { teeth, count }
    Mounting { distance, margin, most_idlers, one_idler_follows, four_gears }
    Arms { least, greatest }
    Reach { least, greatest }
    Handwheel { marks, vernier }
    FineDial { shift, marks, travel, slack }
    Parts { count, every }
    Marks { count, kinds, pattern, numbers }
    Repeated { angle, times }
    MarkKind { length }
    Numbers { every, per_mark, climbs, zero }
    CircleAt { plate, holes }
    Direct { notches, sense }
    Holes { circle, ratio, arms }
    DialledTurns { dial, ratio }
    Compound { plate, pin, back, pin_spaces, back_spaces, times_round, ratio, arms }
    Differential { circle, holes, ratio, arms, train, follows }
    DialledHoles { circle, ratio, arms, dial }
    Train { first, second, idlers, idlers_in }
    Pair { driver, driven }
}

choice! {
    Sense { Clockwise = "Clockwise", Anticlockwise = "Anticlockwise" }
    PlateStop { Fixed = "Fixed", Withdraws = "Withdraws" }
    Gap { First = "First", Second = "Second" }
    Round { Cut = "cut", Scratch = "scratch", Rough = "rough", Finish = "finish", Spring = "spring" }
    Confirm { OneStage = "onestage", TwoStage = "twostage" }
    What {
        At = "at", Leg = "leg", Cut = "cut", Back = "back", Undo = "undo", Jump = "jump", Found = "found",
        Tick = "tick", Round = "round"
    }
    Asked { Parts(held) = "Parts", Angle(held) = "Angle", List(held) = "List", Marks(held) = "Marks" }
    Way {
        Direct(held) = "Direct", Plain(held) = "Plain", Handwheel(held) = "Handwheel", Compound(held) = "Compound",
        Differential(held) = "Differential", FineDial(held) = "FineDial", NearestHole(held) = "NearestHole"
    }
}

row! {
    Event { what, index, at_ms }
}

#[cfg(test)]
mod tests {
    use super::super::json;
    use super::super::kept::Kept;
    use super::super::tests::run;
    use super::*;
    use handturn::List;
    use handturn::divide::{Question, answer};
    use handturn::head::{SET_A, gears_of, plates_of};
    use handturn::measure::{Angle, Length};
    use handturn::number::Fraction;
    use serde_json::{Value, json as value};

    /// What is kept is what the core's own derive writes, and each reads the other's.
    #[track_caller]
    fn check<
        T: Kept + Clone + PartialEq + std::fmt::Debug + serde::Serialize + serde::de::DeserializeOwned,
    >(
        value: &T,
    ) {
        let mut written = value.clone();
        let text = json::write(&mut written);
        assert_eq!(&written, value, "writing changes nothing");
        assert_eq!(text, serde_json::to_string(value).unwrap());
        assert_eq!(json::read::<T>(&text).as_ref(), Ok(value));
        assert_eq!(&serde_json::from_str::<T>(&text).unwrap(), value);
    }

    fn head() -> Head {
        let part = |num, den| Fraction::new(num, den).unwrap();
        Head {
            plates: plates_of(&SET_A).unwrap(),
            gears: gears_of(&handturn::head::GEARS).unwrap(),
            handwheel: Some(Handwheel { marks: 90, vernier: 10 }),
            fine_dial: Some(FineDial {
                shift: Angle::from_turns(part(1, 40)),
                marks: 60,
                travel: Angle::from_turns(part(1, 20)),
                slack: part(1, 2),
            }),
            reach: Some(Reach {
                least: Length::from_mm(part(20, 1)),
                greatest: Length::from_mm(part(60, 1)),
            }),
            pin: Some(Length::from_mm(part(5, 2))),
            degree_ring: None,
            ..Head::default()
        }
    }

    #[test]
    fn heads_questions_and_every_way() {
        check(&Head::default());
        let head = head();
        check(&head);
        let mut kinds = Vec::new();
        for count in [24, 51, 64, 127, 365] {
            let asked = Asked::Parts(Parts { count, every: 1 });
            check(&asked);
            let answer = answer::<3>(&Question::Parts(Parts { count, every: 1 }), &head).unwrap();
            for rated in
                answer.groups.iter().flat_map(|group| group.ways(handturn::divide::Order::Closest))
            {
                check(&rated.way);
                kinds.push(rated.way.kind());
                if let Ok(frozen) = Frozen::new(asked.clone(), head.clone(), rated.way) {
                    check(&frozen);
                }
            }
        }
        for kind in handturn::divide::Kind::ALL {
            assert!(kinds.contains(&kind), "{kind:?} was never written");
        }
        let angle = Angle::from_turns(Fraction::new(7, 144).unwrap());
        check(&Asked::Angle(Repeated { angle, times: 5 }));
        check(&Asked::List(List::from_slice(&[Angle::ZERO, angle, Angle::TURN]).unwrap()));
        let kind = |mm| MarkKind { length: Length::from_mm(Fraction::whole(mm)) };
        let numbers = Numbers { every: 10, per_mark: 1, climbs: Sense::Anticlockwise, zero: true };
        for numbers in [None, Some(numbers)] {
            check(&Asked::Marks(Marks {
                count: 365,
                kinds: List::from_slice(&[kind(3), kind(6)]).unwrap(),
                pattern: List::from_slice(&[1, 0, 0, 0, 0]).unwrap(),
                numbers,
            }));
        }
    }

    #[test]
    fn runs_and_every_event() {
        for (count, presses) in [(64, 0), (64, 40), (3, 4)] {
            check(&run(count, presses));
        }
        for &what in What::ALL {
            check(&Event { what, index: 10_000, at_ms: 1_790_000_000_000 });
        }
        for round in [Round::Cut, Round::Scratch, Round::Rough, Round::Finish, Round::Spring] {
            check(&round);
        }
        check(&Confirm::OneStage);
        check(&Confirm::TwoStage);
    }

    /// `text` with any one thing in it changed, as a stranger may have changed it.
    fn changed(whole: &Value) -> Vec<Value> {
        let mut all: Vec<Value> = [
            value!(null),
            value!(true),
            value!(-1),
            value!(0),
            value!(1),
            value!(70_000),
            value!(1.5),
            value!(""),
            value!("at"),
            value!("Parts"),
            value!([]),
            value!([0, 0]),
            value!([1, 0]),
            value!([2, 4]),
            value!([1, 2, 3]),
            value!({}),
            value!({"Plain": null}),
            value!({"cut": 1}),
        ]
        .to_vec();
        match whole {
            Value::Array(list) => {
                for k in 0..list.len() {
                    let with = |new| [&list[..k], &[new], &list[k + 1..]].concat();
                    all.extend(changed(&list[k]).into_iter().map(|new| with(new).into()));
                    all.push([&list[..k], &list[k + 1..]].concat().into());
                    all.push([&list[..k], &list[k..=k], &list[k..]].concat().into());
                }
            }
            Value::Object(map) => {
                for (name, held) in map {
                    let mut without = map.clone();
                    without.remove(name);
                    all.push(without.clone().into());
                    without.insert("else".to_owned(), held.clone());
                    all.push(without.into());
                    for new in changed(held) {
                        let mut with = map.clone();
                        with.insert(name.clone(), new);
                        all.push(with.into());
                    }
                }
            }
            _ => {}
        }
        all
    }

    /// Whether records stand where records are written: a derive reads rows as well.
    fn alike(read: &Value, written: &Value) -> bool {
        match (read, written) {
            (Value::Array(_), Value::Object(_)) => false,
            (Value::Array(read), Value::Array(written)) => {
                read.iter().zip(written).all(|(read, written)| alike(read, written))
            }
            (Value::Object(read), Value::Object(written)) => {
                let known = |name: &str, held| written.get(name).is_none_or(|own| alike(held, own));
                read.iter().all(|(name, held)| known(name, held))
            }
            _ => true,
        }
    }

    #[test]
    fn what_the_core_refuses_is_refused_and_what_it_reads_is_read_the_same() {
        let (mut accepted, mut refused) = (0, 0);
        let mut small = run(64, 2);
        small.frozen.head.plates.clear();
        let mut way = |way: Way| {
            small.frozen.way = way;
            for tree in changed(&serde_json::to_value(&small).unwrap()) {
                let text = tree.to_string();
                let known: Option<Record<Vec<Event>>> = serde_json::from_str(&text).ok();
                let written = serde_json::to_value(&known).unwrap();
                let known = known.filter(|_| alike(&tree, &written));
                assert_eq!(json::read(&text).ok(), known, "{text}");
                *(if known.is_some() { &mut accepted } else { &mut refused }) += 1;
            }
        };
        for count in [24, 51, 127] {
            let question = Question::Parts(Parts { count, every: 1 });
            let answer = answer::<1>(&question, &head()).unwrap();
            for group in answer.groups.iter() {
                group
                    .ways(handturn::divide::Order::Closest)
                    .iter()
                    .for_each(|rated| way(rated.way));
            }
        }
        assert!(refused > 10_000 && accepted > 1_000, "{refused} refused, {accepted} accepted");
    }

    #[test]
    fn a_field_that_stands_twice_is_refused() {
        let text = json::write(&mut Parts { count: 64, every: 1 });
        assert!(json::read::<Parts>(&text).is_ok());
        for twice in
            ["{\"count\":64,\"count\":64,\"every\":1}", "{\"every\":1,\"every\":1,\"count\":64}"]
        {
            assert!(
                json::read::<Parts>(twice).is_err()
                    && serde_json::from_str::<Parts>(twice).is_err()
            );
        }
        assert_eq!(
            json::read("{\"every\":1,\"count\":64,\"more\":[1]}"),
            Ok(Parts { count: 64, every: 1 })
        );
    }
}
