//! "I lost my place": the positions that fit what can be read off the machine
//! and the work.
use super::plan::Plan;
use super::state::State;
use crate::divide::Mark;
use crate::divide::{At, Place, Stops, Way};
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
pub struct Fits<'a, W = Way> {
    plan: Plan<'a, W>,
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
    pub fn fits<'a, W: Stops + Copy>(
        &self,
        plan: &Plan<'a, W>,
        seen: Seen,
    ) -> Result<Fits<'a, W>, Error> {
        check(plan, &seen)?;
        let ends = self.ends(plan);
        let around = self.index().min(ends.saturating_sub(1));
        Ok(Fits { plan: *plan, seen, around, ends, tried: 0 })
    }
}

impl<W: Stops> Iterator for Fits<'_, W> {
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
///
/// ```
/// use handturn::divide::{Asked, Order, Parts, answer};
/// use handturn::head::{Head, SET_A, plates_of};
/// use handturn::run::{Frozen, stray};
/// // The clock's 64 wheel, 10 holes on the 16 circle: only even holes are used.
/// let head = Head { plates: plates_of(&SET_A)?, ..Head::default() };
/// let asked = Asked::Parts(Parts { count: 64, every: 1 });
/// let answer = answer::<1>(&asked.question(), &head)?;
/// let way = answer.best(Order::Closest).expect("64 is plain").way;
/// let frozen = Frozen::new(asked, head, way)?;
/// assert_eq!(stray(&frozen.plan(), 8)?, None);
/// let stray = stray(&frozen.plan(), 15)?.expect("no part stops in hole 15");
/// assert_eq!((stray.clockwise.spaces, stray.clockwise.to.number), (1, 0));
/// assert_eq!((stray.anticlockwise.spaces, stray.anticlockwise.to.number), (1, 14));
/// # Ok::<(), handturn::Error>(())
/// ```
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

fn fit(plan: &Plan<impl Stops>, seen: &Seen, index: u32) -> Result<Option<Fit>, Error> {
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

fn check(plan: &Plan<impl Stops>, seen: &Seen) -> Result<(), Error> {
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
    let greatest = of.saturating_sub(1);
    Err(Error::new(Field::Holes, Cause::OutOfRange { least: 0, greatest }))
}

#[cfg(test)]
mod tests;
