//! Whether a way belongs to a head and a question: what is read from a file is
//! believed only when the head has all that the way uses, and when the way does
//! what its kind promises. It need not be a way that would be offered today, so
//! a run of an earlier version stays good.
use super::compound::Compound;
use super::differential::Differential;
use super::direct::Direct;
use super::fine_dial::DialledHoles;
use super::handwheel::DialledTurns;
use super::holes::{CircleAt, Holes, reaches};
use super::question::Question;
use super::way::Way;
use crate::error::{Cause, Error, Field};
use crate::head::{Arms, Head, PlateStop};
use crate::number::{Fraction, lcm};
use crate::train::Train;

impl Way {
    /// Checks that `head` has what the way uses, that its kind can set
    /// `question`, and that it is exact where its kind always is.
    ///
    /// # Errors
    /// [`Cause::Conflict`] of [`Field::Record`] where it does not belong to them;
    /// what [`Question::check`] and [`Head::check`] find; what
    /// [`Self::errors`] is refused for.
    ///
    /// ```
    /// use handturn::divide::{Order, Parts, Question, answer};
    /// use handturn::head::{Head, SET_A, SET_B, plates_of};
    /// let head = Head { plates: plates_of(&SET_A)?, ..Head::default() };
    /// let question = Question::Parts(Parts { count: 64, every: 1 });
    /// let way = answer::<1>(&question, &head)?.best(Order::Closest).expect("64 is plain").way;
    /// assert_eq!(way.check(&question, &head), Ok(()));
    /// let other = Head { plates: plates_of(&SET_B)?, ..Head::default() };
    /// assert!(way.check(&question, &other).is_err(), "that plate has no 16 circle");
    /// # Ok::<(), handturn::Error>(())
    /// ```
    pub fn check(&self, question: &Question, head: &Head) -> Result<(), Error> {
        question.check()?;
        head.check()?;
        let owned = match self {
            Self::Direct(way) => direct(way, head),
            Self::Plain(way) | Self::NearestHole(way) => one_circle(way, head),
            Self::Handwheel(way) => handwheel(way, head),
            Self::FineDial(way) => fine_dial(way, head),
            Self::Compound(way) => compound(way, question, head)?,
            Self::Differential(way) => differential(way, head),
        };
        if !owned {
            return Err(CONFLICT);
        }
        let exact = self.exact(question)?;
        let must_be = match self {
            Self::Direct(_) | Self::Plain(_) | Self::Differential(_) => true,
            Self::Handwheel(_) | Self::FineDial(_) | Self::Compound(_) | Self::NearestHole(_) => {
                false
            }
        };
        if must_be && !exact { Err(CONFLICT) } else { Ok(()) }
    }
}

const CONFLICT: Error = Error::new(Field::Record, Cause::Conflict);

fn direct(way: &Direct, head: &Head) -> bool {
    head.worm_drops_out && head.direct.contains(&way.notches) && way.sense == head.work_turns
}

fn one_circle(way: &Holes, head: &Head) -> bool {
    same(way.ratio, way.arms, head) && has(head, way.circle)
}

fn handwheel(way: &DialledTurns, head: &Head) -> bool {
    head.handwheel == Some(way.dial) && way.ratio == head.ratio
}

fn fine_dial(way: &DialledHoles, head: &Head) -> bool {
    let same = same(way.ratio, way.arms, head) && has(head, way.circle);
    same && head.fine_dial == Some(way.dial)
}

/// Besides what it uses: no other legs on its two circles come nearer.
fn compound(way: &Compound, question: &Question, head: &Head) -> Result<bool, Error> {
    let [pin, back] = [way.pin, way.back].map(|holes| CircleAt { plate: way.plate, holes });
    let round = match question {
        Question::Parts(parts) if parts.every != 1 => way.times_round == parts.every,
        Question::Parts(_) | Question::Marks(_) => way.times_round >= 1,
        Question::Angle(_) => way.times_round == 1,
        Question::List(_) => false,
    };
    let legs =
        way.pin_spaces >= 1 && (1..u32::from(way.back)).contains(&way.back_spaces.unsigned_abs());
    let owned = same(way.ratio, way.arms, head)
        && way.pin != way.back
        && has(head, pin)
        && has(head, back)
        && head.plate_stop == PlateStop::Withdraws;
    if !owned || !round || !legs {
        return Ok(false);
    }
    let moves = i64::from(question.positions()).checked_sub(1).ok_or(CONFLICT)?;
    let one = way.errors(question)?.worst.turns().over(moves)?.checked_mul(way.ratio)?;
    let finest = lcm(u64::from(way.pin), u64::from(way.back)).ok_or(CONFLICT)?;
    let finest = i64::try_from(finest).map_err(|_| CONFLICT)?;
    Ok(one.times(finest)?.times(2)? <= Fraction::ONE)
}

fn differential(way: &Differential, head: &Head) -> bool {
    same(way.ratio, way.arms, head)
        && has(head, way.circle)
        && head.plate_stop == PlateStop::Withdraws
        && !head.tilted
        && has_gears(head, &way.train)
        && way.train.same_way() == (way.follows == head.mounting.one_idler_follows)
}

fn has_gears(head: &Head, train: &Train) -> bool {
    let used = |teeth: u16| train.gears().filter(|&gear| gear == teeth).count();
    let owned = |teeth: u16| {
        let owned = head.gears.iter().find(|gear| gear.teeth == teeth);
        owned.is_some_and(|gear| used(teeth) <= usize::from(gear.count))
    };
    let idlers = train.idler_count() <= u32::from(head.mounting.most_idlers);
    let studs = train.second.is_none() || head.mounting.four_gears;
    idlers && studs && train.gears().all(owned)
}

fn same(ratio: Fraction, arms: Arms, head: &Head) -> bool {
    ratio == head.ratio && arms == head.arms
}

fn has(head: &Head, circle: CircleAt) -> bool {
    let plate = head.plates.get(usize::from(circle.plate));
    plate.is_some_and(|plate| {
        let circles = plate.circles.iter();
        circles.filter(|c| c.holes == circle.holes).any(|c| reaches(head.reach, c))
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::divide::{Kind, Parts, answer};
    use crate::head::{FineDial, GEARS, Handwheel, SET_A, SET_B, Sense, gears_of, plates_of};
    use crate::measure::Angle;
    extern crate std;
    use std::vec::Vec;

    fn part(num: i64, den: i64) -> Fraction {
        Fraction::new(num, den).unwrap()
    }

    fn head() -> Head {
        let dial = FineDial {
            shift: Angle::from_turns(part(1, 360)),
            marks: 100,
            travel: Angle::from_turns(part(1, 30)),
            slack: Fraction::whole(3),
        };
        Head {
            plates: plates_of(&SET_A).unwrap(),
            gears: gears_of(&GEARS).unwrap(),
            handwheel: Some(Handwheel { marks: 100, vernier: 10 }),
            fine_dial: Some(dial),
            ..Head::default()
        }
    }

    fn all(question: &Question, head: &Head) -> Vec<Way> {
        let answer = answer::<40>(question, head).unwrap();
        answer.groups.iter().flat_map(|group| group.closest.iter().map(|r| r.way)).collect()
    }

    #[test]
    fn every_way_offered_belongs() {
        let two_sided = Head { plates: plates_of(&SET_B).unwrap(), ..head() };
        let odd = Head { ratio: part(121, 3), ..head() };
        for head in [head(), two_sided, odd] {
            for count in (2..=130).chain([223, 365, 997]) {
                for every in [1, 2, 5].into_iter().filter(|&every| every < count) {
                    let question = Question::Parts(Parts { count, every });
                    for way in all(&question, &head) {
                        assert_eq!(way.check(&question, &head), Ok(()), "{question:?} {way:?}");
                    }
                }
            }
        }
    }

    /// What is changed of the head, and the kinds that stay good all the same.
    #[track_caller]
    fn check(count: u32, change: impl Fn(&mut Head), good: &[Kind]) {
        let question = Question::Parts(Parts { count, every: 1 });
        let mut other = head();
        change(&mut other);
        for way in all(&question, &head()) {
            let expected = if good.contains(&way.kind()) { Ok(()) } else { Err(CONFLICT) };
            assert_eq!(way.check(&question, &other), expected, "{way:?}");
        }
    }

    #[test]
    fn a_head_without_what_a_way_uses_is_told() {
        use Kind::{Compound, Differential, Direct, FineDial, Handwheel, NearestHole, Plain};
        let every = [Direct, Plain, Handwheel, Compound, Differential, FineDial, NearestHole];
        let but = |kinds: &[Kind]| -> Vec<Kind> {
            every.into_iter().filter(|kind| !kinds.contains(kind)).collect()
        };
        let holes = [Plain, Compound, Differential, FineDial, NearestHole];
        for count in [24, 64, 51, 127] {
            check(count, |_| {}, &every);
            check(count, |head| head.ratio = Fraction::whole(60), &[Direct]);
            check(count, |head| head.plates.clear(), &but(&holes));
            check(count, |head| head.arms.least = Angle::ZERO, &but(&holes));
            check(count, |head| head.gears.clear(), &but(&[Differential]));
            check(count, |head| head.tilted = true, &but(&[Differential]));
            check(count, |head| head.mounting.one_idler_follows = false, &but(&[Differential]));
            check(
                count,
                |head| head.plate_stop = PlateStop::Fixed,
                &but(&[Compound, Differential]),
            );
            check(count, |head| head.handwheel = None, &but(&[Handwheel]));
            check(count, |head| head.fine_dial = None, &but(&[FineDial]));
            check(count, |head| head.direct.clear(), &but(&[Direct]));
            check(count, |head| head.worm_drops_out = false, &but(&[Direct]));
            check(count, |head| head.work_turns = Sense::Anticlockwise, &but(&[Direct]));
        }
    }

    #[test]
    fn legs_that_come_no_nearer_than_others_are_refused() {
        let head = head();
        for count in [51, 127, 223] {
            let question = Question::Parts(Parts { count, every: 1 });
            for way in all(&question, &head) {
                let Way::Compound(way) = way else { continue };
                let refused = |way: super::Compound| {
                    assert!(Way::Compound(way).check(&question, &head).is_err(), "{way:?}");
                };
                refused(Compound { pin_spaces: way.pin_spaces + 1, ..way });
                refused(Compound { back_spaces: -way.back_spaces, ..way });
                refused(Compound { back_spaces: 0, ..way });
                refused(Compound { times_round: way.times_round + 1, ..way });
                refused(Compound { times_round: 0, ..way });
                refused(Compound { back: way.pin, ..way });
            }
        }
    }
}
