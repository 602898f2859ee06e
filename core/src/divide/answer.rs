//! The whole answer: every way the head can set a question, both orders, what
//! was left out and why, and what would make it exact where nothing is.
use super::differential::{self, Differential};
use super::lacking::lacking_gear;
use super::way::{Kind, Way};
use super::{Errors, Question, direct, fine_dial, handwheel, holes, near, pairs};
use crate::error::{Cause, Error, Field};
use crate::head::{Circle, Head, PlateStop};
use crate::list::List;
use crate::train::Stock;
use core::cmp::Ordering;

/// A way with its errors.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Rated {
    /// The way.
    pub way: Way,
    /// Its errors; none where it is exact.
    pub errors: Errors,
}

/// The two orders in which ways are ranked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Order {
    /// Exact first, then smaller worst error, fewer actions a move, fewer parts
    /// to change, larger circle.
    Closest,
    /// Fewest plates and gears to change, then fewest actions a move, exact
    /// before inexact, fewer times round the work, larger circle.
    Quickest,
}

/// All ways of one kind.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Group<const EACH: usize> {
    /// The kind.
    pub kind: Kind,
    /// How many ways of the kind there are in all; more than are listed when
    /// there is no room for them.
    pub count: u32,
    /// The first of them by [`Order::Closest`].
    pub closest: List<Rated, EACH>,
    /// The first of them by [`Order::Quickest`].
    pub quickest: List<Rated, EACH>,
}

impl<const EACH: usize> Group<EACH> {
    /// The ways listed in `order`, best first.
    #[must_use]
    pub fn ways(&self, order: Order) -> &[Rated] {
        match order {
            Order::Closest => &self.closest,
            Order::Quickest => &self.quickest,
        }
    }
}

/// Why a kind of way is not offered.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
#[non_exhaustive]
pub enum Reason {
    /// The head has no plates.
    NoPlates,
    /// None of its circles is exact for this.
    NoCircle,
    /// Its circles lie outside the handle's reach.
    OutOfReach,
    /// The head has no direct plate.
    NoDirectPlate,
    /// Not all positions fall on notches.
    NotOnNotches,
    /// The worm does not drop out of mesh.
    WormStaysIn,
    /// The handwheel has no dial.
    NoHandwheel,
    /// There is no fine dial.
    NoFineDial,
    /// The fine dial's travel does not cover half a hole space of any circle.
    TravelTooShort,
    /// The plate stop does not withdraw.
    PlateStopFixed,
    /// No plate has two circles the pins can use.
    OneCircle,
    /// Two circles come no nearer than one.
    NothingNearer,
    /// The question has no equal moves.
    NotEqualMoves,
    /// A plain setting is exact already.
    PlainIsExact,
    /// The head has no change gears.
    NoGears,
    /// No train of the gears owned gives an exact ratio.
    NoTrain,
    /// The spindle is tilted.
    Tilted,
}

/// A kind of way left out, and why.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct LeftOut {
    /// The kind.
    pub kind: Kind,
    /// Why it is left out.
    pub reason: Reason,
}

/// What would make it exact, where nothing owned does.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Lacking {
    /// The smallest circle whose multiples all do it.
    pub circle: Option<u32>,
    /// The smallest single gear that, added to those owned, does it by differential.
    pub gear: Option<u16>,
    /// The way that this gear opens.
    pub gear_way: Option<Differential>,
}

/// The whole answer to a question.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Answer<const EACH: usize> {
    /// One group for each kind that is offered, in the order of [`Kind::ALL`].
    pub groups: List<Group<EACH>, 7>,
    /// Kinds that are not offered, and why.
    pub left_out: List<LeftOut, 7>,
    /// What would make it exact; empty where a way is exact.
    pub lacking: Lacking,
}

impl<const EACH: usize> Answer<EACH> {
    /// The groups, ranked by the first way of each.
    #[must_use]
    pub fn ranked(&self, order: Order) -> List<&Group<EACH>, 7> {
        let mut ranked: List<&Group<EACH>, 7> = List::new();
        for group in &self.groups {
            let place = ranked.iter().position(|other| {
                match (group.ways(order).first(), other.ways(order).first()) {
                    (Some(a), Some(b)) => compare(order, a, b).is_lt(),
                    (a, _) => a.is_some(),
                }
            });
            let spilt = ranked.insert(place.unwrap_or(ranked.len()), group);
            debug_assert!(spilt.is_none(), "there are no more groups than kinds");
        }
        ranked
    }

    /// The best way of all in `order`.
    #[must_use]
    pub fn best(&self, order: Order) -> Option<&Rated> {
        self.ranked(order).first().and_then(|group| group.ways(order).first())
    }

    /// The group of `kind`, where it is offered.
    #[must_use]
    pub fn group(&self, kind: Kind) -> Option<&Group<EACH>> {
        self.groups.iter().find(|group| group.kind == kind)
    }
}

/// Every way `head` can set `question`, at most `EACH` listed of a kind.
///
/// # Errors
/// What [`Question::check`] and [`Head::check`] find; [`Cause::Overflow`] where
/// an exact value does not fit.
///
/// ```
/// use handturn::divide::{Order, Parts, Question, answer};
/// use handturn::head::{Head, SET_A, plates_of};
/// let head = Head { plates: plates_of(&SET_A)?, ..Head::default() };
/// let question = Question::Parts(Parts { count: 64, every: 1 });
/// let answer = answer::<4>(&question, &head)?;
/// let best = answer.best(Order::Closest).expect("64 = 10 holes on the 16 circle");
/// let first = best.way.step(&question, 0)?.legs[0];
/// assert_eq!((first.turns, first.spaces, first.from.of), (0, 10, 16));
/// # Ok::<(), handturn::Error>(())
/// ```
pub fn answer<const EACH: usize>(question: &Question, head: &Head) -> Result<Answer<EACH>, Error> {
    question.check()?;
    head.check()?;
    let mut answer =
        Answer { groups: List::new(), left_out: List::new(), lacking: Lacking::default() };
    for kind in Kind::ALL {
        let mut group = Group { kind, count: 0, closest: List::new(), quickest: List::new() };
        let refused = offer(kind, question, head, &mut group)?;
        let full = Error::new(Field::Record, Cause::TooMany { most: 7 });
        if group.count > 0 {
            answer.groups.push(group).map_err(|_| full)?;
        } else if let Some(reason) = refused {
            answer.left_out.push(LeftOut { kind, reason }).map_err(|_| full)?;
        }
    }
    if !answer.groups.iter().any(|g| g.closest.first().is_some_and(|w| w.errors.is_none())) {
        answer.lacking = lacking(question, head)?;
    }
    Ok(answer)
}

/// Fills `group` with the ways of `kind`; says why when there are none.
fn offer<const EACH: usize>(
    kind: Kind,
    question: &Question,
    head: &Head,
    group: &mut Group<EACH>,
) -> Result<Option<Reason>, Error> {
    each_way(kind, question, head, &mut |way, errors| {
        let rated = Rated { way, errors };
        group.count = group.count.saturating_add(1);
        put(&mut group.closest, rated, Order::Closest);
        put(&mut group.quickest, rated, Order::Quickest);
        Ok(())
    })
}

/// Hands every way of `kind` to `keep`; says why in case there are none.
pub(crate) fn each_way(
    kind: Kind,
    question: &Question,
    head: &Head,
    keep: &mut dyn FnMut(Way, Errors) -> Result<(), Error>,
) -> Result<Option<Reason>, Error> {
    let reason = match kind {
        Kind::Direct if !head.worm_drops_out => Reason::WormStaysIn,
        Kind::Direct if head.direct.is_empty() => Reason::NoDirectPlate,
        Kind::Direct => {
            direct::direct(question, head, &mut |way, errors| keep(Way::Direct(way), errors))?;
            Reason::NotOnNotches
        }
        Kind::Handwheel => {
            handwheel::handwheel(question, head, &mut |way, errors| {
                keep(Way::Handwheel(way), errors)
            })?;
            Reason::NoHandwheel
        }
        Kind::FineDial if head.fine_dial.is_none() => Reason::NoFineDial,
        _ if head.plates.is_empty() => Reason::NoPlates,
        _ if !any_reached(head) => Reason::OutOfReach,
        Kind::Plain => {
            holes::plain(question, head, &mut |way, errors| keep(Way::Plain(way), errors))?;
            Reason::NoCircle
        }
        Kind::Compound if question.step()?.is_none() => Reason::NotEqualMoves,
        Kind::Compound if head.plate_stop == PlateStop::Fixed => Reason::PlateStopFixed,
        Kind::Compound if !pairs::any_pair(head) => Reason::OneCircle,
        Kind::Compound if holes::plain_is_exact(question, head)? => Reason::PlainIsExact,
        Kind::Compound => {
            pairs::compound(question, head, &mut |way, errors| keep(Way::Compound(way), errors))?;
            Reason::NothingNearer
        }
        Kind::Differential => match no_differential(question, head)? {
            Some(reason) => reason,
            None => {
                let stock = Stock::of(&head.gears)?;
                near::each_way(question, head, &stock, &mut |way, errors| {
                    keep(Way::Differential(way), errors)
                })?;
                Reason::NoTrain
            }
        },
        Kind::NearestHole | Kind::FineDial if holes::plain_is_exact(question, head)? => {
            Reason::PlainIsExact
        }
        Kind::NearestHole => {
            holes::nearest_hole(question, head, &mut |way, errors| {
                keep(Way::NearestHole(way), errors)
            })?;
            Reason::PlainIsExact
        }
        Kind::FineDial => {
            fine_dial::fine_dial(question, head, &mut |way, errors| {
                keep(Way::FineDial(way), errors)
            })?;
            Reason::TravelTooShort
        }
    };
    Ok(Some(reason))
}

/// What rules out differential indexing before any train is looked for.
fn no_differential(question: &Question, head: &Head) -> Result<Option<Reason>, Error> {
    Ok(Some(if differential::part(question)?.is_none() {
        Reason::NotEqualMoves
    } else if head.plate_stop == PlateStop::Fixed {
        Reason::PlateStopFixed
    } else if head.tilted {
        Reason::Tilted
    } else if head.gears.is_empty() {
        Reason::NoGears
    } else if holes::plain_is_exact(question, head)? {
        Reason::PlainIsExact
    } else {
        return Ok(None);
    }))
}

fn any_reached(head: &Head) -> bool {
    let mut circles = head.plates.iter().flat_map(|plate| plate.circles.iter());
    circles.any(|circle: &Circle| holes::reaches(head.reach, circle))
}

fn put<const EACH: usize>(list: &mut List<Rated, EACH>, rated: Rated, order: Order) {
    let place = list.iter().position(|other| compare(order, &rated, other).is_lt());
    // What falls out of a full list stays counted in its group.
    let _ = list.insert(place.unwrap_or(list.len()), rated);
}

/// Ranks two ways; never equal unless they are the same way, so output is the
/// same everywhere.
#[must_use]
pub fn compare(order: Order, a: &Rated, b: &Rated) -> Ordering {
    let (effort_a, effort_b) = (a.way.effort(), b.way.effort());
    let exact = b.errors.is_none().cmp(&a.errors.is_none());
    let worst = a.errors.worst.cmp(&b.errors.worst);
    let actions = effort_a.actions.cmp(&effort_b.actions);
    let changes = effort_a.changes.cmp(&effort_b.changes);
    let round = effort_a.times_round.cmp(&effort_b.times_round);
    let circle = effort_b.circle.cmp(&effort_a.circle);
    let first = match order {
        Order::Closest => exact.then(worst).then(actions).then(changes).then(circle),
        Order::Quickest => changes.then(actions).then(exact).then(round).then(circle).then(worst),
    };
    first.then_with(|| a.way.tie(&b.way))
}

fn lacking(question: &Question, head: &Head) -> Result<Lacking, Error> {
    let mut circle = None;
    if let Some(step) = question.step()? {
        let turns = step.turns().checked_mul(head.ratio)?;
        circle = u32::try_from(turns.den()).ok();
    }
    let found = match no_differential(question, head)? {
        None => lacking_gear(question, head)?,
        Some(_) => None,
    };
    let (gear, gear_way) = found.unzip();
    Ok(Lacking { circle, gear, gear_way })
}
