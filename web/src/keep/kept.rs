//! Which values are kept, and how each is written: a record by the names of its
//! fields, a choice by its name. One line a type; `json.rs` says why not a derive.
use super::json::{Json, quote};
use handturn::divide::{
    Asked, CircleAt, Compound, DialledHoles, DialledTurns, Differential, Direct, Holes, MarkKind,
    Numbers, Parts, Repeated, Way,
};
use handturn::head::{
    Arms, Circle, FineDial, Gear, Handwheel, Head, Mounting, Plate, PlateStop, Reach, Sense,
};
use handturn::measure::{Angle, Length};
use handturn::number::Fraction;
use handturn::run::{Confirm, Event, Frozen, Header, Record, Round, Version, What};
use handturn::train::{Gap, Pair, Train};
use handturn::{Field, List, Text};

/// A value that can be kept as text.
pub trait Kept: Sized {
    /// Appends it as JSON.
    fn put(&self, text: &mut String);
    /// The value a piece of JSON holds, if it is of this kind.
    fn take(json: &Json) -> Option<Self>;
}

/// Records with these fields, all of them needed but those that may be nothing.
macro_rules! record {
    ($($kind:ident $(<$of:ident>)? { $($field:ident),* })*) => {$(
        impl $(<$of: $crate::keep::kept::Kept>)? $crate::keep::kept::Kept for $kind $(<$of>)? {
            fn put(&self, text: &mut String) {
                text.push('{');
                $($crate::keep::kept::field(text, stringify!($field), &self.$field);)*
                $crate::keep::kept::close(text);
            }
            fn take(json: &$crate::keep::json::Json) -> Option<Self> {
                Some(Self { $($field: $crate::keep::kept::Kept::take(json.field(stringify!($field)))?),* })
            }
        }
    )*};
}
pub(crate) use record;

/// Choices between bare names, each as it is written.
macro_rules! choice {
    ($($kind:ident { $($name:ident = $word:literal),* })*) => {$(
        impl $crate::keep::kept::Kept for $kind {
            fn put(&self, text: &mut String) {
                $crate::keep::json::quote(text, match self { $(Self::$name => $word),* });
            }
            fn take(json: &$crate::keep::json::Json) -> Option<Self> {
                let $crate::keep::json::Json::Text(word) = json else { return None };
                match &**word {
                    $($word => Some(Self::$name),)*
                    _ => None,
                }
            }
        }
    )*};
}
pub(crate) use choice;

/// Appends a field of a record with a comma after it; [`close`] takes the last one away.
pub(crate) fn field<T: Kept>(text: &mut String, name: &str, value: &T) {
    quote(text, name);
    text.push(':');
    value.put(text);
    text.push(',');
}

/// Ends a record.
pub(crate) fn close(text: &mut String) {
    text.pop();
    text.push('}');
}

/// Appends a choice that holds a value: `{"Name":value}`.
pub(crate) fn holding<T: Kept>(text: &mut String, name: &str, value: &T) {
    text.push('{');
    field(text, name, value);
    close(text);
}

fn entries<'v, T: Kept + 'v>(text: &mut String, values: impl Iterator<Item = &'v T>) {
    text.push('[');
    for (k, value) in values.enumerate() {
        if k > 0 {
            text.push(',');
        }
        value.put(text);
    }
    text.push(']');
}

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
}

macro_rules! ways {
    ($($name:ident = $word:literal),*) => {
        impl Kept for Way {
            fn put(&self, text: &mut String) {
                match self {
                    $(Self::$name(way) => holding(text, $word, way),)*
                    // A way this page does not know is no way when it is read back.
                    _ => text.push_str("null"),
                }
            }
            fn take(json: &Json) -> Option<Self> {
                let (word, way) = json.choice()?;
                match word {
                    $($word => Kept::take(way).map(Self::$name),)*
                    _ => None,
                }
            }
        }
    };
}
ways! {
    Direct = "Direct", Plain = "Plain", Handwheel = "Handwheel", Compound = "Compound",
    Differential = "Differential", FineDial = "FineDial", NearestHole = "NearestHole"
}

impl Kept for Asked {
    fn put(&self, text: &mut String) {
        match self {
            Self::Parts(parts) => holding(text, "Parts", parts),
            Self::Angle(angle) => holding(text, "Angle", angle),
            Self::List(angles) => holding(text, "List", angles),
            Self::Marks { count, kinds, pattern, numbers } => {
                text.push_str("{\"Marks\":{");
                field(text, "count", count);
                field(text, "kinds", kinds);
                field(text, "pattern", pattern);
                field(text, "numbers", numbers);
                close(text);
                text.push('}');
            }
        }
    }
    fn take(json: &Json) -> Option<Self> {
        let (word, held) = json.choice()?;
        Some(match word {
            "Parts" => Self::Parts(Kept::take(held)?),
            "Angle" => Self::Angle(Kept::take(held)?),
            "List" => Self::List(Kept::take(held)?),
            "Marks" => Self::Marks {
                count: Kept::take(held.field("count"))?,
                kinds: Kept::take(held.field("kinds"))?,
                pattern: Kept::take(held.field("pattern"))?,
                numbers: Kept::take(held.field("numbers"))?,
            },
            _ => return None,
        })
    }
}

impl Kept for Event {
    fn put(&self, text: &mut String) {
        text.push('[');
        self.what.put(text);
        text.push(',');
        self.index.put(text);
        text.push(',');
        self.at_ms.put(text);
        text.push(']');
    }
    fn take(json: &Json) -> Option<Self> {
        let [what, index, at_ms] = json.entries()? else { return None };
        Some(Self { what: Kept::take(what)?, index: Kept::take(index)?, at_ms: Kept::take(at_ms)? })
    }
}

impl Kept for Fraction {
    fn put(&self, text: &mut String) {
        (self.num(), self.den()).put(text);
    }
    fn take(json: &Json) -> Option<Self> {
        let (num, den) = Kept::take(json)?;
        Self::new(num, den).ok()
    }
}

impl Kept for Angle {
    fn put(&self, text: &mut String) {
        self.turns().put(text);
    }
    fn take(json: &Json) -> Option<Self> {
        Kept::take(json).map(Self::from_turns)
    }
}

impl Kept for Length {
    fn put(&self, text: &mut String) {
        self.mm().put(text);
    }
    fn take(json: &Json) -> Option<Self> {
        Kept::take(json).map(Self::from_mm)
    }
}

impl<const CAP: usize> Kept for Text<CAP> {
    fn put(&self, text: &mut String) {
        quote(text, self);
    }
    fn take(json: &Json) -> Option<Self> {
        let Json::Text(text) = json else { return None };
        Self::new(Field::Record, text).ok()
    }
}

impl<T: Kept, const CAP: usize> Kept for List<T, CAP> {
    fn put(&self, text: &mut String) {
        entries(text, self.iter());
    }
    fn take(json: &Json) -> Option<Self> {
        let mut list = Self::new();
        for entry in json.entries()? {
            list.push(T::take(entry)?).ok()?;
        }
        Some(list)
    }
}

impl<T: Kept> Kept for Vec<T> {
    fn put(&self, text: &mut String) {
        entries(text, self.iter());
    }
    fn take(json: &Json) -> Option<Self> {
        json.entries()?.iter().map(T::take).collect()
    }
}

impl<T: Kept, const N: usize> Kept for [T; N] {
    fn put(&self, text: &mut String) {
        entries(text, self.iter());
    }
    fn take(json: &Json) -> Option<Self> {
        Vec::take(json)?.try_into().ok()
    }
}

impl<A: Kept, B: Kept> Kept for (A, B) {
    fn put(&self, text: &mut String) {
        text.push('[');
        self.0.put(text);
        text.push(',');
        self.1.put(text);
        text.push(']');
    }
    fn take(json: &Json) -> Option<Self> {
        let [a, b] = json.entries()? else { return None };
        Some((A::take(a)?, B::take(b)?))
    }
}

impl<T: Kept> Kept for Option<T> {
    fn put(&self, text: &mut String) {
        match self {
            Some(value) => value.put(text),
            None => text.push_str("null"),
        }
    }
    fn take(json: &Json) -> Option<Self> {
        if *json == Json::Null { Some(None) } else { T::take(json).map(Some) }
    }
}

impl<T: Kept> Kept for Box<T> {
    fn put(&self, text: &mut String) {
        (**self).put(text);
    }
    fn take(json: &Json) -> Option<Self> {
        T::take(json).map(Box::new)
    }
}

impl Kept for bool {
    fn put(&self, text: &mut String) {
        text.push_str(if *self { "true" } else { "false" });
    }
    fn take(json: &Json) -> Option<Self> {
        if let Json::Truth(truth) = json { Some(*truth) } else { None }
    }
}

impl Kept for String {
    fn put(&self, text: &mut String) {
        quote(text, self);
    }
    fn take(json: &Json) -> Option<Self> {
        if let Json::Text(text) = json { Some(text.clone().into_owned()) } else { None }
    }
}

macro_rules! whole {
    ($($kind:ident)*) => {$(
        impl Kept for $kind {
            fn put(&self, text: &mut String) {
                text.push_str(itoa::Buffer::new().format(*self));
            }
            fn take(json: &Json) -> Option<Self> {
                if let Json::Whole(whole) = json { Self::try_from(*whole).ok() } else { None }
            }
        }
    )*};
}
whole! { u8 u16 u32 u64 usize i32 i64 }

#[cfg(test)]
mod tests {
    use super::super::json;
    use super::super::tests::run;
    use super::*;
    use handturn::divide::{Question, answer};
    use handturn::head::{SET_A, gears_of, plates_of};

    /// What is kept is what the core's own derive writes, and each reads the other's.
    #[track_caller]
    fn check<
        T: Kept + PartialEq + std::fmt::Debug + serde::Serialize + serde::de::DeserializeOwned,
    >(
        value: &T,
    ) {
        let text = json::write(value);
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
            check(&Asked::Marks {
                count: 365,
                kinds: List::from_slice(&[kind(3), kind(6)]).unwrap(),
                pattern: List::from_slice(&[1, 0, 0, 0, 0]).unwrap(),
                numbers,
            });
        }
    }

    #[test]
    fn runs_and_every_event() {
        for (count, presses) in [(64, 0), (64, 40), (3, 4)] {
            check(&run(count, presses));
        }
        for what in [
            What::At,
            What::Leg,
            What::Cut,
            What::Back,
            What::Undo,
            What::Jump,
            What::Found,
            What::Tick,
            What::Round,
        ] {
            check(&Event { what, index: 10_000, at_ms: 1_790_000_000_000 });
        }
        for round in [Round::Cut, Round::Scratch, Round::Rough, Round::Finish, Round::Spring] {
            check(&round);
        }
        check(&Confirm::OneStage);
        check(&Confirm::TwoStage);
    }
}
