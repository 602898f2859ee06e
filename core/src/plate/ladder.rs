//! Make the plate one lacks: a ladder of generations.
//!
//! ratio ÷ parts = p/q in lowest terms, so a plate of q holes, or a multiple, sets the
//! work exactly. Its first generation is drilled by the best way at hand, so its holes
//! are out by what that way rounds, by its drilling and by all that a budget counts.
//! The next is drilled with the last one: exact settings, the errors of the holes
//! divided by the worm's ratio, its own drilling new. So each generation divides what
//! came before by the ratio, and what is left soon is the drilling alone.
//!
//! Prediction (derived): every source is carried as it runs from hole to hole. Hole j of
//! a new plate stands on hole ratio × j of the last, so a wave that went on by s turns a
//! hole goes on by ratio × s, and neighbours take the errors of holes that lie ratio
//! holes apart; the work's neighbours those of holes p apart. Sources of different
//! generations are taken to know nothing of each other, as plates are put on anew.
//! `tests/oracle/plates.rs` simulates the whole process, hole by hole.
use super::budget::{Budget, summed};
use super::known::Known;
use super::sources::{Sources, error_length, radius};
use super::strand::{Cut, Strands, inherit};
use crate::bounds::{self, MAX_PLATES};
use crate::divide::{
    CircleAt, Errors, Holes, Kind, Order, Parts, Question, Rated, Way, compare, each_way,
};
use crate::error::{Cause, Error, Field};
use crate::head::{Circle, Head, Plate};
use crate::list::List;
use crate::measure::Length;
use crate::number::{Fraction, float};

/// Generations that a ladder looks at.
pub const MAX_GENERATIONS: usize = 4;

/// What a plate must have for a question, and what there is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Need {
    /// Handle turns of one part, p/q in lowest terms.
    pub turns: Fraction,
    /// q: a circle of so many holes serves, or of a multiple. 1: no plate is needed.
    pub holes: u32,
    /// The first circle owned that serves, in the handle's reach.
    pub owned: Option<CircleAt>,
}

/// A plate to be made.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Making<'a> {
    /// What is to be divided with it.
    pub question: Question<'a>,
    /// How many times the holes needed are drilled: 1, or more where the plate is to
    /// serve other numbers too. The work itself gains nothing by it: it stands in the
    /// same holes, drilled in the same places.
    pub multiple: u32,
    /// Radius of the ring of holes.
    pub ring: Length,
    /// How far a drilled hole strays along the ring, to either side.
    pub drilling: Length,
    /// The way of the first generation; none for the one with the least error that goes
    /// once round.
    pub first: Option<Way>,
    /// Errors of machine and hands.
    pub sources: Sources,
    /// A further generation pays when it takes at least this share off the work's error.
    pub pays: Fraction,
}

/// One generation of a plate.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Generation {
    /// The way it is drilled: the first by what is owned, the next by the last one, on
    /// the head that [`fitted`] gives.
    pub way: Way,
    /// How far its holes are off, as angles of the plate; lengths at the ring.
    pub plate: Budget,
    /// How far the finished work is off when it is cut with this plate.
    pub work: Budget,
    /// Share of the work's greatest error that it takes off what the generation before
    /// left; 0 for the first.
    pub gain: f64,
}

/// The plan of a plate.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Ladder {
    /// What the question needs.
    pub need: Need,
    /// How every generation is divided: its holes in one turn.
    pub parts: Parts,
    /// The circle that the plate gives the head.
    pub circle: CircleAt,
    /// The way of the finished work, on the head that [`fitted`] gives.
    pub work: Way,
    /// The generations, as far as they are looked at; one only where the ratio is not
    /// whole, as a plate then can't set its own number.
    pub generations: List<Generation, MAX_GENERATIONS>,
    /// How many generations pay: from the next one on a gain stays below the share.
    pub enough: u8,
}

impl Default for Making<'_> {
    /// 127 parts, as many holes as are needed, on a ring of 55 mm radius, drilled to
    /// ±0.05 mm (common practice: spotted with a stiff drill); a tenth pays.
    fn default() -> Self {
        let part = |n, d| Fraction::new(n, d).unwrap_or(Fraction::ZERO);
        Self {
            question: Question::Parts(Parts { count: 127, every: 1 }),
            multiple: 1,
            ring: Length::from_mm(part(55, 1)),
            drilling: Length::from_mm(part(1, 20)),
            first: None,
            sources: Sources::default(),
            pays: part(1, 10),
        }
    }
}

/// What a plate must have to set `question` on `head` exactly.
///
/// # Errors
/// What [`Question::check`] and [`Head::check`] find; [`Cause::Conflict`] of
/// [`Field::List`] where the moves are not all alike; [`Cause::Overflow`].
///
/// ```
/// use handturn::divide::{Parts, Question};
/// use handturn::head::Head;
/// use handturn::plate::need;
/// // 40/254 = 20/127: the plate of 127 serves 254 as well.
/// let question = Question::Parts(Parts { count: 254, every: 1 });
/// assert_eq!(need(&question, &Head::default())?.holes, 127);
/// # Ok::<(), handturn::Error>(())
/// ```
pub fn need(question: &Question, head: &Head) -> Result<Need, Error> {
    question.check()?;
    head.check()?;
    let part = match (question.parts(), question.step()?) {
        (Some(parts), _) => Fraction::new(1, i64::from(parts))?,
        (None, Some(step)) => step.turns(),
        (None, None) => return Err(Error::new(Field::List, Cause::Conflict)),
    };
    let turns = part.checked_mul(head.ratio)?;
    let holes =
        u32::try_from(turns.den()).map_err(|_| Error::new(Field::Holes, Cause::Overflow))?;
    let mut owned = None;
    for (plate, side) in (0_u8..).zip(&head.plates) {
        for circle in &side.circles {
            let at = CircleAt { plate, holes: circle.holes };
            if owned.is_none() && plain(at, head).check(question, head).is_ok() {
                owned = Some(at);
            }
        }
    }
    Ok(Need { turns, holes, owned })
}

/// `head` with a plate of one `circle` more: the head on which the next generation is
/// drilled and the work is cut. Where there is no room for it, it takes the place of
/// the last plate listed. The circle is number [`Ladder::circle`].
#[must_use]
pub fn fitted(head: &Head, circle: Circle) -> Head {
    let mut head = head.clone();
    let mut plate = Plate::default();
    // An empty plate has room for one.
    let _ = plate.circles.push(circle);
    if head.plates.is_full() {
        head.plates.pop();
    }
    let _ = head.plates.push(plate);
    head
}

/// Plans the plate of `making` on `head`, generation by generation.
///
/// # Errors
/// What [`need`] and [`Sources::check`] find; of [`Field::Holes`] a number of holes that
/// no circle has ([`bounds::HOLES`]: also where no plate is needed); of [`Field::Ring`]
/// a radius outside the handle's reach; of [`Field::Drill`] a drilling error below nought
/// or over 5 mm; of [`Field::Generations`] [`Cause::Conflict`] where nothing owned can
/// drill a first one, [`Cause::Zero`] for a multiple of 0, [`Cause::OutOfRange`] for a share
/// not from 0 to 1; [`Cause::Overflow`].
#[doc(alias = "make the plate")]
pub fn ladder(head: &Head, making: &Making) -> Result<Ladder, Error> {
    let need = need(&making.question, head)?;
    let circle = ring_of(head, making, need)?;
    let parts = Parts { count: u32::from(circle.holes), every: 1 };
    let plate_question = Question::Parts(parts);
    let number = head.plates.len().min(MAX_PLATES.saturating_sub(1));
    let number = u8::try_from(number).unwrap_or(u8::MAX);
    let at = CircleAt { plate: number, holes: circle.holes };
    let own = plain(at, head);
    let ring = Length::from_mm(making.ring.mm().times(2)?);
    let drill = |way, made| Cut {
        question: plate_question,
        way,
        diameter: ring,
        drilling: making.drilling,
        made,
    };
    let first = match making.first {
        Some(way) => way.check(&plate_question, head).map(|()| way)?,
        None => best(head, making, &|way| drill(way, None))?,
    };
    let known = Known { question: plate_question, way: first };
    let rounding = first.errors(&plate_question)?;
    let exact = Errors::NONE;
    let mut strands = drill(first, None).strands(head, &making.sources)?;
    let mut generations: List<Generation, MAX_GENERATIONS> = List::new();
    let most = if head.ratio.is_whole() { MAX_GENERATIONS } else { 1 };
    let mut enough = 1_u8;
    let mut paid = true;
    for number in 1..=most {
        let later = number > 1;
        if later {
            let stride = stride(head.ratio, parts.count)?;
            strands = next(&drill(own, Some(making.ring)), head, making, &strands, stride)?;
        }
        let finished = Cut {
            question: making.question,
            way: own,
            diameter: head.work_diameter,
            drilling: Length::from_mm(Fraction::ZERO),
            made: Some(making.ring),
        };
        let apart = stride(need.turns.times(i64::from(parts.count))?, parts.count)?;
        let work = next(&finished, head, making, &strands, apart)?;
        let plate = summed(&strands, &known, if later { exact } else { rounding })?;
        let work = summed(&work, &known, exact)?;
        let was = generations.last().map_or(0.0, |last| last.work.sum.total.value);
        let gain = if was > 0.0 { (was - work.sum.total.value) / was } else { 0.0 };
        paid = paid && (!later || gain >= float::of(making.pays));
        if paid {
            enough = u8::try_from(number).unwrap_or(u8::MAX);
        }
        let way = if later { own } else { first };
        let generation = Generation { way, plate, work, gain };
        generations.push(generation).map_err(|_| NO_FIRST)?;
    }
    Ok(Ladder { need, parts, circle: at, work: own, generations, enough })
}

const NO_FIRST: Error = Error::new(Field::Generations, Cause::Conflict);

/// Plain indexing on `circle`.
const fn plain(circle: CircleAt, head: &Head) -> Way {
    Way::Plain(Holes { circle, ratio: head.ratio, arms: head.arms })
}

/// Checks what is asked of the plate; its circle.
fn ring_of(head: &Head, making: &Making, need: Need) -> Result<Circle, Error> {
    making.sources.check()?;
    radius(making.ring)?;
    error_length(making.drilling).map_err(|e| e.of(Field::Drill))?;
    if let Some(reach) = head.reach {
        if making.ring < reach.least || making.ring > reach.greatest {
            let um = |length: Length| Ok::<_, Error>(length.mm().times(1000)?.floor());
            let um = |length| um(length).ok().and_then(|um| u32::try_from(um).ok());
            let least_um = um(reach.least).unwrap_or(0);
            let greatest_um = um(reach.greatest).unwrap_or(u32::MAX);
            return Err(Error::new(Field::Ring, Cause::OutOfLengths { least_um, greatest_um }));
        }
    }
    if making.multiple == 0 {
        return Err(Error::new(Field::Generations, Cause::Zero));
    }
    if making.pays.is_negative() || making.pays > Fraction::ONE {
        let cause = Cause::OutOfRange { least: 0, greatest: 1 };
        return Err(Error::new(Field::Generations, cause));
    }
    let holes = i64::from(need.holes).saturating_mul(i64::from(making.multiple));
    // A plate of one hole serves nothing, whatever its multiples.
    let holes = if need.holes == 1 { 1 } else { holes };
    let holes = u16::try_from(bounds::HOLES.check(holes)?).unwrap_or(u16::MAX);
    Ok(Circle { holes, radius: Some(making.ring) })
}

/// The way owned that drills the best first generation: of each kind the one that
/// rounds least, of these the one with the least error in all. Ways that go several
/// times round the plate are left aside: too many moves to go wrong.
fn best<'a>(head: &Head, making: &Making, drill: &dyn Fn(Way) -> Cut<'a>) -> Result<Way, Error> {
    let mut best: Option<(f64, Way)> = None;
    let question = drill(plain(CircleAt { plate: 0, holes: 2 }, head)).question;
    question.check()?;
    for kind in Kind::ALL {
        let mut closest: Option<Rated> = None;
        each_way(kind, &question, head, &mut |way, errors| {
            let rated = Rated { way, errors };
            let closer = |was: &Rated| compare(Order::Closest, &rated, was).is_lt();
            if way.effort().times_round == 1 && closest.as_ref().is_none_or(closer) {
                closest = Some(rated);
            }
            Ok(())
        })?;
        let Some(Rated { way, errors }) = closest else { continue };
        let strands = drill(way).strands(head, &making.sources)?;
        let total = summed(&strands, &Known { question, way }, errors)?.sum.total.value;
        if best.is_none_or(|(least, _)| total < least) {
            best = Some((total, way));
        }
    }
    best.map(|(_, way)| way).ok_or(NO_FIRST)
}

/// What is cut with a plate whose holes have `plate`, `stride` holes on a part.
fn next(
    cut: &Cut,
    head: &Head,
    making: &Making,
    plate: &Strands,
    stride: u32,
) -> Result<Strands, Error> {
    let mut strands = cut.strands(head, &making.sources)?;
    let holes = u32::from(match cut.way {
        Way::Plain(way) => way.circle.holes,
        _ => 1,
    });
    inherit(&mut strands, plate, holes, stride, head.ratio)?;
    Ok(strands)
}

/// A whole number of holes, whole turns of `holes` aside.
fn stride(count: Fraction, holes: u32) -> Result<u32, Error> {
    let over = count.num().checked_rem_euclid(i64::from(holes));
    over.and_then(|n| u32::try_from(n).ok()).ok_or(Error::new(Field::Holes, Cause::Overflow))
}
