//! "I lost my place": the positions that fit what can be read off the machine
//! and the work.
use super::plan::{Mark, Plan};
use super::state::State;
use crate::divide::{At, Place};
use crate::error::{Cause, Error, Field};
use crate::measure::Angle;
use crate::number::Fraction;

/// What was read; what was not stays `None` and rules nothing out.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Seen {
    /// Number of the hole under the handle's pin.
    pub pin: Option<u32>,
    /// Number of the hole over the back pin.
    pub back_pin: Option<u32>,
    /// Mark of the handwheel dial or the fine dial.
    pub dial: Option<u32>,
    /// Notch of the direct plate.
    pub notch: Option<u32>,
    /// The degree ring.
    pub ring: Option<RingSeen>,
    /// The last mark made on the work, when graduating.
    pub mark: Option<MarkSeen>,
}

/// A reading of the degree ring on the spindle.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct RingSeen {
    /// What it reads, from 0 to a turn.
    pub reads: Angle,
    /// What it read at position 0.
    pub zero: Angle,
    /// How far a reading can be out: half a graduation for the nearest one.
    pub within: Angle,
}

/// A mark seen on the work.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct MarkSeen {
    /// Its kind, where that was seen.
    pub kind: Option<u8>,
    /// The number beside it, where it carries one.
    pub number: Option<u32>,
}

/// A position that fits.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Fit {
    /// The position, from 0; the closed end only once every position is cut.
    pub index: u32,
    /// What the degree ring should read there.
    pub ring: Option<Angle>,
    /// Whether this position is cut, as far as the last mark tells.
    pub cut: Option<bool>,
}

/// A hole in which no position stops.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Stray {
    /// The hole (or notch, or mark).
    pub at: At,
    /// The next one clockwise in which a position stops.
    pub clockwise: Nearby,
    /// The next one anticlockwise; go past it and come up clockwise.
    pub anticlockwise: Nearby,
}

/// A hole in which a position stops, and how far away it is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Nearby {
    /// Spaces to it.
    pub spaces: u32,
    /// The hole, notch or mark.
    pub to: At,
}

/// The positions that fit, the nearest to where the run believes it is first;
/// of two equally near ones the later first.
#[derive(Clone, Debug)]
pub struct Fits<'a> {
    plan: Plan<'a>,
    seen: Seen,
    around: u32,
    ends: u32,
    tried: u32,
}

impl State {
    /// The positions at which the work can stand when `seen` was read.
    ///
    /// # Errors
    /// [`Cause::OutOfRange`] for a hole, notch or mark that isn't there, for a
    /// ring reading above a turn or a tolerance that is not above nought and
    /// below half a turn; [`Cause::Conflict`] for a reading this way has no
    /// part for; each fit, what [`Plan::place`] is refused for.
    pub fn fits<'a>(&self, plan: &Plan<'a>, seen: Seen) -> Result<Fits<'a>, Error> {
        check(plan, &seen)?;
        let ends = self.ends(plan);
        let around = self.index().min(ends.saturating_sub(1));
        Ok(Fits { plan: *plan, seen, around, ends, tried: 0 })
    }
}

impl Iterator for Fits<'_> {
    type Item = Result<Fit, Error>;

    fn next(&mut self) -> Option<Self::Item> {
        while self.tried < self.ends.saturating_mul(2) {
            let away = self.tried.div_ceil(2);
            let later = self.tried % 2 == 1;
            self.tried = self.tried.saturating_add(1);
            let index =
                if later { self.around.checked_add(away) } else { self.around.checked_sub(away) };
            let Some(index) = index.filter(|&index| index < self.ends) else { continue };
            if let Some(fit) = fit(&self.plan, &self.seen, index).transpose() {
                return Some(fit);
            }
        }
        None
    }
}

/// Whether no position stops in hole `number` (or notch, or mark of a dial that
/// stands in for holes), and if so where the nearest ones that do lie.
///
/// # Errors
/// [`Cause::OutOfRange`] for a hole that isn't there; what [`Plan::place`] is
/// refused for.
pub fn stray(plan: &Plan, number: u32) -> Result<Option<Stray>, Error> {
    let Some(first) = stop(&plan.place(0)?) else { return Ok(None) };
    let of = first.of;
    below(number, of)?;
    let (mut ahead, mut behind) = (of, of);
    for index in 0..plan.question.positions() {
        let Some(at) = stop(&plan.place(index)?) else { continue };
        let on = spaces(number, at.number, of);
        if on == 0 {
            return Ok(None);
        }
        ahead = ahead.min(on);
        behind = behind.min(of.saturating_sub(on));
    }
    let away = |on: u32| At { number: spaces(0, number.saturating_add(on), of), of };
    Ok(Some(Stray {
        at: At { number, of },
        clockwise: Nearby { spaces: ahead, to: away(ahead) },
        anticlockwise: Nearby { spaces: behind, to: away(of.saturating_sub(behind)) },
    }))
}

/// What the handle (or the spindle) stops in.
fn stop(place: &Place) -> Option<At> {
    place.pin.or(place.notch).or(place.dial)
}

/// Spaces from hole `from` on to hole `to` of `of`.
fn spaces(from: u32, to: u32, of: u32) -> u32 {
    let on = to.saturating_add(of).saturating_sub(from);
    on.checked_rem(of).unwrap_or(0)
}

fn fit(plan: &Plan, seen: &Seen, index: u32) -> Result<Option<Fit>, Error> {
    let place = plan.place(index)?;
    let stands = [
        (seen.pin, place.pin),
        (seen.back_pin, place.back_pin),
        (seen.dial, place.dial),
        (seen.notch, place.notch),
    ];
    let same = |(seen, at): (Option<u32>, Option<At>)| {
        seen.is_none_or(|number| at.is_some_and(|at| at.number == number))
    };
    if !stands.into_iter().all(same) {
        return Ok(None);
    }
    let zero = seen.ring.map_or(Angle::ZERO, |ring| ring.zero);
    let ring = plan.ring(index, zero)?;
    if let (Some(seen), Some(ring)) = (seen.ring, ring) {
        if apart(seen.reads, ring)? > seen.within.turns() {
            return Ok(None);
        }
    }
    let Some(seen) = seen.mark else { return Ok(Some(Fit { index, ring, cut: None })) };
    // The newest mark is this position's once it is cut, and else the one before.
    let here = plan.mark(index).is_some_and(|mark| seen.is(mark));
    let before = index.checked_sub(1).and_then(|before| plan.mark(before));
    let before = before.is_some_and(|mark| seen.is(mark));
    Ok((here || before).then_some(Fit { index, ring, cut: (here != before).then_some(here) }))
}

impl MarkSeen {
    fn is(self, mark: Mark) -> bool {
        let kind = self.kind.is_none_or(|kind| kind == mark.kind);
        kind && self.number.is_none_or(|number| mark.number == Some(number))
    }
}

/// How far apart two readings of a ring are, the shorter way round, in turns.
fn apart(a: Angle, b: Angle) -> Result<Fraction, Error> {
    let on = a.turns().checked_sub(b.turns())?.part();
    Ok(on.min(Fraction::ONE.checked_sub(on)?))
}

fn check(plan: &Plan, seen: &Seen) -> Result<(), Error> {
    let place = plan.place(0)?;
    let stands = [
        (seen.pin, place.pin),
        (seen.back_pin, place.back_pin),
        (seen.dial, place.dial),
        (seen.notch, place.notch),
    ];
    for (number, at) in stands {
        match (number, at) {
            (Some(number), Some(at)) => below(number, at.of)?,
            (Some(_), None) => return Err(NOT_THERE),
            (None, _) => {}
        }
    }
    if let Some(ring) = seen.ring {
        if plan.degree_ring.is_none() {
            return Err(NOT_THERE);
        }
        let inside = |a: Angle| Angle::ZERO <= a && a <= Angle::TURN;
        let half = Fraction::new(1, 2)?;
        let sharp = ring.within > Angle::ZERO && ring.within.turns() < half;
        if !inside(ring.reads) || !inside(ring.zero) || !sharp {
            let cause = Cause::OutOfRange { least: 0, greatest: 360 };
            return Err(Error::new(Field::Angle, cause));
        }
    }
    if seen.mark.is_some() && plan.mark(0).is_none() {
        return Err(NOT_THERE);
    }
    Ok(())
}

const NOT_THERE: Error = Error::new(Field::Position, Cause::Conflict);

fn below(number: u32, of: u32) -> Result<(), Error> {
    if number < of {
        return Ok(());
    }
    let greatest = i64::from(of).saturating_sub(1);
    Err(Error::new(Field::Holes, Cause::OutOfRange { least: 0, greatest }))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::divide::{Asked, Graduation, MarkKind, Numbers, Order, Parts, Question, answer};
    use crate::head::{Head, SET_A, Sense, plates_of};
    use crate::measure::Length;
    use crate::run::{Event, Frozen, What};
    extern crate std;
    use std::vec::Vec;

    fn frozen(asked: Asked) -> Frozen {
        let head = Head { plates: plates_of(&SET_A).unwrap(), ..Head::default() };
        let answer = answer::<2>(&asked.question(), &head).unwrap();
        let way = answer.best(Order::Closest).unwrap().way;
        Frozen::new(asked, head, way).unwrap()
    }

    fn parts(count: u32) -> Frozen {
        frozen(Asked::Parts(Parts { count, every: 1 }))
    }

    fn at(plan: &Plan, index: u32) -> State {
        State::replay(plan, [Event { what: What::Jump, index, at_ms: 0 }]).unwrap()
    }

    fn degrees(num: i64, den: i64) -> Angle {
        Angle::from_degrees(Fraction::new(num, den).unwrap()).unwrap()
    }

    /// Positions as people count them, from 1, that fit when the run believes it is at `at`.
    #[track_caller]
    fn check(frozen: &Frozen, believed: u32, seen: Seen, positions: &[u32]) {
        let plan = frozen.plan();
        let fits = at(&plan, believed - 1).fits(&plan, seen).unwrap();
        let found: Vec<u32> = fits.map(|fit| fit.unwrap().index + 1).collect();
        assert_eq!(found, positions);
    }

    fn pin(number: u32) -> Seen {
        Seen { pin: Some(number), ..Seen::default() }
    }

    fn ring(reads: Angle, within: Angle) -> Option<RingSeen> {
        Some(RingSeen { reads, zero: Angle::ZERO, within })
    }

    #[test]
    fn the_hole_then_the_ring_lead_back() {
        let wheel = parts(64);
        check(&wheel, 37, pin(8), &[37, 45, 29, 53, 21, 61, 13, 5]);
        check(&wheel, 40, pin(8), &[37, 45, 29, 53, 21, 61, 13, 5]);
        check(&wheel, 1, pin(8), &[5, 13, 21, 29, 37, 45, 53, 61]);
        check(&wheel, 64, pin(8), &[61, 53, 45, 37, 29, 21, 13, 5]);
        check(&wheel, 37, pin(7), &[]);
        let (half, wide) = (degrees(1, 2), degrees(23, 1));
        check(&wheel, 37, Seen { ring: ring(degrees(202, 1), half), ..pin(8) }, &[37]);
        check(&wheel, 37, Seen { ring: ring(degrees(201, 1), half), ..pin(8) }, &[]);
        check(&wheel, 37, Seen { ring: ring(degrees(359, 1), wide), ..pin(8) }, &[61]);
        check(&wheel, 37, Seen { ring: ring(degrees(359, 1), half), ..pin(0) }, &[]);
        check(&wheel, 37, Seen { ring: ring(degrees(359, 1), degrees(1, 1)), ..pin(0) }, &[1]);
        check(
            &wheel,
            1,
            Seen { ring: ring(degrees(45, 1), wide), ..Seen::default() },
            &[5, 6, 7, 8, 9, 10, 11, 12, 13],
        );
    }

    #[test]
    fn the_ring_of_the_other_sense_reads_down() {
        let mut wheel = parts(64);
        wheel.head.degree_ring = Some(Sense::Anticlockwise);
        let seen = Seen { ring: ring(degrees(315, 2), degrees(1, 2)), ..pin(8) };
        check(&wheel, 5, seen, &[37]);
        let plan = wheel.plan();
        assert_eq!(plan.ring(36, Angle::ZERO), Ok(Some(degrees(315, 2))));
        assert_eq!(plan.ring(36, degrees(10, 1)), Ok(Some(degrees(335, 2))));
    }

    #[test]
    fn the_closed_end_is_a_place_only_once_all_is_cut() {
        let wheel = parts(7);
        let plan = wheel.plan();
        let mut state = State::START;
        while let Some(event) = state.next(&plan, 0).unwrap() {
            let fits = state.fits(&plan, pin(0)).unwrap();
            let found: Vec<u32> = fits.map(|fit| fit.unwrap().index).collect();
            let expected: &[u32] = if state.all_cut(&plan) { &[7, 0] } else { &[0] };
            assert_eq!(found, expected, "at {}", state.index());
            state = state.apply(&plan, event).unwrap();
        }
        assert_eq!(state.index(), 7);
    }

    #[test]
    fn the_last_mark_tells_whether_this_one_is_cut() {
        let kinds = [5, 4, 3].map(|mm| MarkKind { length: Length::from_mm(Fraction::whole(mm)) });
        let pattern = [0, 2, 2, 2, 2, 1, 2, 2, 2, 2];
        let numbers = Numbers { every: 10, per_mark: 1, climbs: Sense::Anticlockwise, zero: true };
        let dial =
            Graduation { count: 60, kinds: &kinds, pattern: &pattern, numbers: Some(numbers) };
        let asked = Asked::Marks {
            count: dial.count,
            kinds: crate::List::from_slice(&kinds).unwrap(),
            pattern: crate::List::from_slice(&pattern).unwrap(),
            numbers: dial.numbers,
        };
        let dial = frozen(asked);
        assert!(matches!(dial.question.question(), Question::Marks(_)));
        let plan = dial.plan();
        let fits = |kind, number| -> Vec<(u32, Option<bool>)> {
            let seen = Seen { mark: Some(MarkSeen { kind, number }), ..Seen::default() };
            let fits = at(&plan, 20).fits(&plan, seen).unwrap();
            fits.map(|fit| fit.unwrap()).map(|fit| (fit.index, fit.cut)).collect()
        };
        assert_eq!(fits(Some(0), Some(20)), [(20, Some(true)), (21, Some(false))]);
        assert_eq!(fits(None, Some(20)), [(20, Some(true)), (21, Some(false))]);
        assert_eq!(fits(Some(1), Some(20)), []);
        assert_eq!(fits(Some(1), None)[..2], [(16, Some(false)), (25, Some(true))]);
        assert_eq!(fits(Some(2), None)[..3], [(20, Some(false)), (21, Some(true)), (19, None)]);
    }

    #[test]
    fn a_hole_no_part_uses_says_so_and_where_to_turn() {
        let wheel = parts(64);
        let plan = wheel.plan();
        let hole = |number| At { number, of: 16 };
        let near = |spaces, number| Nearby { spaces, to: hole(number) };
        assert_eq!(stray(&plan, 8), Ok(None));
        let found = stray(&plan, 15).unwrap().unwrap();
        let expected = Stray { at: hole(15), clockwise: near(1, 0), anticlockwise: near(1, 14) };
        assert_eq!(found, expected);
        assert_eq!(stray(&plan, 16).unwrap_err().field, Field::Holes);
    }

    #[test]
    fn every_hole_of_every_wheel_is_a_place_or_leads_to_one() {
        for count in 2..=100 {
            let wheel = parts(count);
            let plan = wheel.plan();
            let Some(pin) = stop(&plan.place(0).unwrap()) else { continue };
            let holes: Vec<u32> =
                (0..count).map(|i| stop(&plan.place(i).unwrap()).unwrap().number).collect();
            for number in 0..pin.of {
                let walk = |step: u32| {
                    (0..pin.of).find(|n| holes.contains(&((number + n * step) % pin.of))).unwrap()
                };
                match stray(&plan, number).unwrap() {
                    None => assert!(holes.contains(&number)),
                    Some(found) => {
                        assert_eq!(found.clockwise.spaces, walk(1), "{count}: {number}");
                        assert_eq!(found.anticlockwise.spaces, walk(pin.of - 1));
                        assert!(holes.contains(&found.clockwise.to.number));
                        assert!(holes.contains(&found.anticlockwise.to.number));
                    }
                }
            }
        }
    }

    #[test]
    fn readings_that_cannot_be_are_refused() {
        let wheel = parts(64);
        let plan = wheel.plan();
        let refused = |seen: Seen| State::START.fits(&plan, seen).unwrap_err();
        let range = Cause::OutOfRange { least: 0, greatest: 15 };
        assert_eq!(refused(pin(16)), Error::new(Field::Holes, range));
        let turn = Cause::OutOfRange { least: 0, greatest: 360 };
        let good = degrees(1, 2);
        for (reads, within) in [
            (degrees(361, 1), good),
            (degrees(-1, 1), good),
            (degrees(0, 1), Angle::ZERO),
            (degrees(0, 1), degrees(-1, 2)),
            (degrees(0, 1), degrees(180, 1)),
        ] {
            let seen = Seen { ring: ring(reads, within), ..Seen::default() };
            assert_eq!(refused(seen), Error::new(Field::Angle, turn));
        }
        assert_eq!(refused(Seen { notch: Some(0), ..Seen::default() }), NOT_THERE);
        assert_eq!(refused(Seen { back_pin: Some(0), ..Seen::default() }), NOT_THERE);
        let mark = Some(MarkSeen { kind: Some(0), number: None });
        assert_eq!(refused(Seen { mark, ..Seen::default() }), NOT_THERE);
        let no_ring = Plan { degree_ring: None, ..plan };
        let seen = Seen { ring: ring(degrees(0, 1), good), ..Seen::default() };
        assert_eq!(State::START.fits(&no_ring, seen).unwrap_err(), NOT_THERE);
    }
}
