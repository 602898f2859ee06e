//! Limits of size: the greatest and least diameters of screw and nut in each class.
//!
//! Where a standard prints a table, the table is here; where it computes, its
//! order of rounding is kept, so that limits come out as printed. Every answer is
//! an exact [`Length`].
//!
//! ```
//! use handturn::measure::Length;
//! use handturn::number::Fraction;
//! use handturn::thread::limits::{Side, limits, usual};
//! use handturn::thread::name;
//! // A clock's wheel arbor, M6x0.75, and its nut, each in the usual class.
//! let arbor = name::read("M6x0.75")?[0].thread;
//! let mut classes = usual(arbor.form.kind).iter();
//! let screw = limits(&arbor, *classes.next().expect("6g comes first"))?;
//! let nut = limits(&arbor, *classes.find(|class| class.side == Side::Internal).expect("6H"))?;
//! let mm = |thousandths| Fraction::new(thousandths, 1000).map(Length::from_mm).ok();
//! assert_eq!((screw.pitch_diameter.max, screw.pitch_diameter.min), (mm(5491), mm(5391)));
//! assert!(nut.pitch_diameter.min > screw.pitch_diameter.max); // it goes on
//! assert_eq!((nut.minor.max, nut.minor.min), (mm(5378), mm(5188))); // the hole before the tap
//! # Ok::<(), handturn::Error>(())
//! ```
mod british;
mod metric;
mod power;
#[cfg(test)]
mod tests;
mod unified;

use super::form::Kind;
use super::{Thread, to_nearest};
use crate::error::{Cause, Error, Field};
use crate::measure::Length;
use crate::number::Fraction;

/// Screw or nut.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Side {
    /// The screw.
    External,
    /// The nut.
    Internal,
}

/// Where a tolerance of ISO 965 lies: how far from the basic size. Small letters
/// are written for the screw, capitals for the nut.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Position {
    /// Wide allowance (e).
    E,
    /// Middling allowance (f).
    F,
    /// Small allowance (g, G).
    G,
    /// None (h, H).
    H,
}

/// Grade and position of a tolerance, as in 6g.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Grade {
    /// Grade: the higher, the wider.
    pub grade: u8,
    /// Where it lies.
    pub position: Position,
}

/// How closely a thread is made, without saying which side.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Fit {
    /// ISO 965 and ISO 2903: for the pitch diameter, then for the crest.
    Iso(Grade, Grade),
    /// Unified 1 to 3 (A or B), Acme 2 to 4 (G), stub Acme 2 (G).
    Number(u8),
    /// BS 84, BA: close.
    Close,
    /// BS 84: medium.
    Medium,
    /// BS 84: free, of a screw.
    Free,
    /// BS 84: normal, of a nut; BA: normal, of either.
    Normal,
    /// ISO 228-1: A, the closer, of a screw; a nut has this one class.
    PipeA,
    /// ISO 228-1: B, of a screw.
    PipeB,
}

/// A tolerance class.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Class {
    /// Screw or nut.
    pub side: Side,
    /// How closely.
    pub fit: Fit,
}

/// Greatest and least of one diameter; `None` where the standard sets none.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Range {
    /// Greatest.
    pub max: Option<Length>,
    /// Least.
    pub min: Option<Length>,
}

/// Limits of size.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Limits {
    /// Major diameter.
    pub major: Range,
    /// Pitch diameter (effective).
    pub pitch_diameter: Range,
    /// Minor diameter.
    pub minor: Range,
}

const fn screw(fit: Fit) -> Class {
    Class { side: Side::External, fit }
}

const fn nut(fit: Fit) -> Class {
    Class { side: Side::Internal, fit }
}

const fn iso(grade: u8, position: Position) -> Fit {
    let grade = Grade { grade, position };
    Fit::Iso(grade, grade)
}

/// The classes people meet for threads of `kind`, the usual one first for each side.
#[must_use]
pub const fn usual(kind: Kind) -> &'static [Class] {
    use Position::{E, G, H};
    match kind {
        Kind::Metric => {
            const {
                &[
                    screw(iso(6, G)),
                    screw(iso(6, H)),
                    screw(iso(6, E)),
                    screw(iso(4, H)),
                    nut(iso(6, H)),
                    nut(iso(5, H)),
                    nut(iso(7, H)),
                    nut(iso(6, G)),
                ]
            }
        }
        Kind::Unified => {
            const {
                &[
                    screw(Fit::Number(2)),
                    screw(Fit::Number(3)),
                    screw(Fit::Number(1)),
                    nut(Fit::Number(2)),
                    nut(Fit::Number(3)),
                    nut(Fit::Number(1)),
                ]
            }
        }
        Kind::Whitworth => {
            const {
                &[
                    screw(Fit::Medium),
                    screw(Fit::Close),
                    screw(Fit::Free),
                    nut(Fit::Medium),
                    nut(Fit::Close),
                    nut(Fit::Normal),
                ]
            }
        }
        Kind::Ba => const { &[screw(Fit::Normal), screw(Fit::Close), nut(Fit::Normal)] },
        Kind::Pipe => const { &[screw(Fit::PipeA), screw(Fit::PipeB), nut(Fit::PipeA)] },
        Kind::Trapezoidal => {
            const { &[screw(iso(7, E)), screw(iso(8, E)), nut(iso(7, H)), nut(iso(8, H))] }
        }
        Kind::Acme | Kind::StubAcme => const { &[screw(Fit::Number(2)), nut(Fit::Number(2))] },
        Kind::Cycle | Kind::Square | Kind::Own => const { &[] },
    }
}

/// Limits of `thread` in `class`.
///
/// # Errors
/// [`Cause::Conflict`] for [`Field::Class`] where the form has no such class, or its standard
/// none at this size and pitch; else as [`Thread::new`].
pub fn limits(thread: &Thread, class: Class) -> Result<Limits, Error> {
    thread.check()?;
    let (side, fit) = (class.side, class.fit);
    let found = match (thread.form.kind, fit) {
        (Kind::Metric, Fit::Iso(pitch, crest)) => metric::limits(thread, side, pitch, crest),
        (Kind::Trapezoidal, Fit::Iso(pitch, _)) => power::trapezoidal(thread, side, pitch),
        (Kind::Unified, Fit::Number(number)) => unified::limits(thread, side, number),
        (Kind::Acme | Kind::StubAcme, Fit::Number(number)) => power::acme(thread, side, number),
        (Kind::Whitworth, _) => british::whitworth(thread, side, fit),
        (Kind::Ba, _) => british::ba(thread, side, fit),
        (Kind::Pipe, _) => british::pipe(thread, side, fit),
        _ => Ok(None),
    };
    found?.ok_or(Error::new(Field::Class, Cause::Conflict))
}

/// Limits, or none where the standard has no such class.
type Found = Result<Option<Limits>, Error>;

/// A range in whole steps of a unit.
type Whole = (Option<i64>, Option<i64>);

/// Limits from max and min of the three diameters, each a count of `per`-ths of
/// an inch, or of a millimetre.
fn assemble(inch: bool, per: i64, three: [Whole; 3]) -> Found {
    let length = |count: Option<i64>| {
        let Some(count) = count else { return Ok(None) };
        let value = Fraction::new(count, per)?;
        let length = if inch { Length::from_inches(value)? } else { Length::from_mm(value) };
        Ok::<_, Error>(Some(length))
    };
    let range = |(max, min)| Ok::<_, Error>(Range { max: length(max)?, min: length(min)? });
    let [major, pitch, minor] = three;
    Ok(Some(Limits { major: range(major)?, pitch_diameter: range(pitch)?, minor: range(minor)? }))
}

/// Micrometres, to the nearest.
fn um(length: Length) -> Result<i64, Error> {
    Ok(length.mm().times(1000)?.nearest()?.0)
}

/// Ten-thousandths of an inch, to the nearest, a half to the even neighbour.
pub(super) fn e4(length: Length) -> Result<i64, Error> {
    super::even(length.inches()?.times(10_000)?)
}

/// `value` in billionths, to the nearest.
fn e9(value: Fraction) -> Result<i64, Error> {
    let nine = to_nearest(value, 1_000_000_000)?;
    Ok(nine.times(1_000_000_000)?.floor())
}

/// `value / step` to the nearest, a half to the even neighbour: how the American
/// standards settle a half.
fn to_even(value: i64, step: i64) -> i64 {
    let whole = value.checked_div_euclid(step).unwrap_or(0);
    let twice = value.checked_rem_euclid(step).unwrap_or(0).saturating_mul(2);
    let odd = whole & 1 != 0;
    let up = twice > step || twice == step && odd;
    whole.saturating_add(i64::from(up))
}

/// `value / step` to the nearest, a half up.
fn to_near(value: i64, step: i64) -> i64 {
    let half = step.checked_div(2).unwrap_or(0);
    value.saturating_add(half).checked_div_euclid(step).unwrap_or(0)
}

/// The Renard series R40 as tolerance tables print it: whole micrometres, below
/// and above a hundred. A grade is four steps of it, twice that every other grade.
const R40: [(u16, u16); 40] = [
    (10, 100),
    (11, 106),
    (11, 112),
    (12, 118),
    (12, 125),
    (13, 132),
    (14, 140),
    (15, 150),
    (16, 160),
    (17, 170),
    (18, 180),
    (19, 190),
    (20, 200),
    (21, 212),
    (22, 224),
    (24, 236),
    (25, 250),
    (26, 265),
    (28, 280),
    (30, 300),
    (32, 315),
    (34, 335),
    (36, 355),
    (38, 375),
    (40, 400),
    (42, 425),
    (45, 450),
    (48, 475),
    (50, 500),
    (53, 530),
    (56, 560),
    (60, 600),
    (63, 630),
    (67, 670),
    (71, 710),
    (75, 750),
    (80, 800),
    (85, 850),
    (90, 900),
    (95, 950),
];

/// The value `steps` places up or down the series from `value`; `None` off it.
fn along(value: i64, steps: i64) -> Option<i64> {
    let (mut place, mut decade) = (None, 0_i64);
    for (k, &(two, three)) in R40.iter().enumerate() {
        let three = i64::from(three);
        for (d, at) in [(0, i64::from(two)), (1, three), (2, three.saturating_mul(10))] {
            if at == value && place.is_none() {
                (place, decade) = (i64::try_from(k).ok(), d);
            }
        }
    }
    let moved = decade.checked_mul(40)?.checked_add(place?)?.checked_add(steps)?;
    let row = usize::try_from(moved.checked_rem_euclid(40)?).ok()?;
    let &(two, three) = R40.get(row)?;
    match moved.checked_div_euclid(40)? {
        0 => Some(i64::from(two)),
        1 => Some(i64::from(three)),
        2 => i64::from(three).checked_mul(10),
        _ => None,
    }
}

/// The value of `grade`, from that of `known`: four steps a grade.
fn graded(value: i64, known: u8, grade: u8) -> Option<i64> {
    along(value, i64::from(grade).checked_sub(i64::from(known))?.checked_mul(4)?)
}
