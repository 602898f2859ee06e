//! Balls and radii by steps: where along and across slides stand for each cut, what the
//! steps leave standing at most, and never a cut into the curve.
//!
//! Method (plane geometry, our own derivation): a cut goes along at a fixed diameter and
//! then straight out, so that it leaves a corner as round as the tool's nose. A nose of
//! radius n just touches a round of radius R where its centre lies R + n from the
//! middle, in a hollow R − n: along ρ·(1 − cos t), across D − 2ρ·(1 − sin t). Both
//! readings are rounded away from the curve to what the dials show, so none cuts into
//! it. What is left is highest at the corner between two cuts; that is worked out from
//! the rounded readings, for cuts spaced by equal angles and by equal squares of the
//! diameter (a square corner's own spacing), and the lower of the two is taken.
//!
//! ```
//! use handturn::bench::steps::{Ask, By, Shape, Tool, plan};
//! use handturn::measure::Length;
//! use handturn::number::Fraction;
//! // The clock's crank has a ball of 16 on a neck of 8; a nose of 1.5, dials of 0.02.
//! let mm = |n, d| Fraction::new(n, d).map(Length::from_mm);
//! let ask = Ask {
//!     shape: Shape::Ball { stock: mm(18, 1)?, neck: Some(mm(8, 1)?) },
//!     radius: mm(8, 1)?,
//!     tool: Tool::Round { nose: mm(3, 2)? },
//!     division: mm(1, 50)?,
//!     by: By::Cuts(24),
//! };
//! let plan = plan(&ask)?;
//! assert_eq!((plan.cuts, plan.blank), (24, Some(mm(16, 1)?)));
//! assert!(plan.scallop.value < 0.09); // noses 6¼° apart leave 0.078, the dials the rest
//! let first = plan.step(0)?;
//! // The largest diameter first, short of 8 + 1.5 along.
//! assert!(first.across < mm(16, 1)? && first.along < mm(19, 2)?);
//! # Ok::<(), handturn::Error>(())
//! ```
mod curve;
mod scallop;
#[cfg(test)]
mod tests;

use curve::{blank, curve, made, share};

use crate::bounds::{CUTS, LENGTH_UM};
use crate::error::{Cause, Error, Field};
use crate::measure::{
    Length,
    given::{size, um_up},
};
use crate::number::{Approx, Fraction, float};

/// What is to become of the work.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Shape {
    /// A ball at the end of a bar, its pole in the faced end.
    Ball {
        /// Diameter of the stock: where it is smaller than the ball, a band is left.
        stock: Length,
        /// Diameter of the neck behind it; without one, only the half that looks to the
        /// end is cut.
        neck: Option<Length>,
    },
    /// A rounded edge at the faced end of a bar.
    Edge {
        /// Diameter of the bar.
        outside: Length,
    },
    /// A hollow between a smaller diameter and a shoulder.
    #[doc(alias = "fillet")]
    Hollow {
        /// The smaller diameter.
        inside: Length,
    },
    /// A hollow ball in the faced end, no more than half of one.
    Cup {
        /// Its depth on the axis.
        depth: Length,
    },
}

/// The tool.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Tool {
    /// Round nose, as wide as it is round.
    Round {
        /// Radius of the nose.
        nose: Length,
    },
    /// Square corners.
    Square {
        /// From corner to corner: counts behind a ball, where the other corner cuts.
        width: Length,
    },
}

/// How the cuts are told.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum By {
    /// By their number.
    Cuts(u32),
    /// By what may be left standing.
    Scallop(Length),
}

/// A curve to be cut by steps.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Ask {
    /// What it is part of.
    pub shape: Shape,
    /// Its radius.
    pub radius: Length,
    /// The tool.
    pub tool: Tool,
    /// What the dials show: all readings are multiples of it.
    pub division: Length,
    /// How many cuts.
    pub by: By,
}

/// Slide readings for one cut: go along at this diameter to here, then straight out.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Step {
    /// From where the tool's leading edge touches the faced end; of a hollow, back from
    /// where it touches the shoulder.
    pub along: Length,
    /// Diameter that the tool stands at; below nought past the centre.
    pub across: Length,
    /// Whether it is cut from behind the ball.
    pub behind: bool,
}

/// A quarter of the curve or less, from one end to the other.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Reach {
    /// Side of the curve: 1 outside a round, −1 within a hollow.
    sign: f64,
    /// Angles between which the nose touches, in turns.
    from: f64,
    to: f64,
    /// Whether the faces where it begins and ends are there already.
    made: (bool, bool),
    /// The wall that it begins at, and the radius of the round that it ends at. Behind a
    /// ball it begins where the first nose touches.
    wall: Fraction,
    out: Fraction,
    /// How many parts the cuts make of it.
    parts: u32,
    behind: bool,
}

impl Reach {
    /// How many cuts it takes.
    const fn cuts(&self) -> u32 {
        let within = self.parts.saturating_add(1);
        within.saturating_sub(self.made.0 as u32).saturating_sub(self.made.1 as u32)
    }
}

/// The cuts for a curve.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Plan {
    /// What was asked.
    pub ask: Ask,
    /// How many cuts.
    pub cuts: u32,
    /// What stands above the curve at most, in millimetres, with the dials set exactly.
    pub scallop: Approx,
    /// To what the stock is turned first: a ball's or bar's diameter on the dial, or the
    /// stock as it is.
    pub blank: Option<Length>,
    /// Furthest reading along.
    pub reach: Length,
    squares: bool,
    curve: [Option<Reach>; 2],
}

/// Exact figures of a question that its steps are made of.
#[derive(Clone, Copy)]
struct Made {
    radius: Fraction,
    nose: Fraction,
    /// What is added to or taken from each reading: along and across.
    base: (Fraction, Fraction),
    /// The tool's own width, and twice the ball's radius, for the far side.
    far: Fraction,
    division: Fraction,
    hollow: bool,
    cup: bool,
}

/// A place of the tool on one reach, in millimetres: `p` along towards more metal, `q`
/// outwards, of the two edges that cut.
#[derive(Clone, Copy)]
struct Place {
    p: Fraction,
    q: Fraction,
}

/// The cuts for a curve: readings that never cut into it, and what they leave.
///
/// # Errors
/// Lengths out of bounds; [`Cause::OutOfRange`] for the cuts ([`CUTS`]);
/// [`Cause::OutOfLengths`] of [`Field::Tool`] where the nose is not smaller than a hollow,
/// of [`Field::Radius`] where an edge is larger than the bar allows, of [`Field::Depth`]
/// where a hollow ball would be deeper than half of it, of [`Field::Scallop`] where dials
/// like these, or so many cuts, can't leave so little; [`Cause::Conflict`] of
/// [`Field::Neck`] where it is not smaller than ball and stock.
pub fn plan(ask: &Ask) -> Result<Plan, Error> {
    size(ask.radius, Field::Radius)?;
    size(ask.division, Field::SlideDial)?;
    let made = made(ask)?;
    let curve = curve(ask, &made)?;
    let blank = blank(ask, &made)?;
    let with = |parts: u32, squares: bool| -> Result<Plan, Error> {
        let mut curve = [Some(curve.0), curve.1];
        share(&mut curve, parts, squares);
        let cuts = curve.iter().flatten().map(Reach::cuts).sum();
        let nothing = Approx::exactly(0.0);
        let none = Length::from_mm(Fraction::ZERO);
        let mut plan =
            Plan { ask: *ask, cuts, scallop: nothing, blank, reach: none, squares, curve };
        plan.scallop = plan.worst(&made)?;
        Ok(plan)
    };
    let best = |parts: u32| -> Result<Plan, Error> {
        let (angles, squares) = (with(parts, false)?, with(parts, true)?);
        let lower = squares.scallop.value < angles.scallop.value;
        Ok(if lower { squares } else { angles })
    };
    // So few parts leave one cut, or two where both ends are cut.
    let ends = |reach: &Reach| u32::from(reach.made.0).saturating_add(u32::from(reach.made.1));
    let (begun, least) = match curve.1 {
        Some(behind) => (ends(&curve.0).saturating_add(ends(&behind)).saturating_sub(1), 2),
        None => (ends(&curve.0), 1),
    };
    let least = begun.max(least);
    let mut plan = match ask.by {
        By::Cuts(cuts) => {
            let cuts = CUTS.check_u32(i64::from(cuts))?;
            let found = best(cuts.saturating_add(begun).saturating_sub(1).max(least))?;
            if found.cuts != cuts {
                let cause = Cause::OutOfRange { least: found.cuts, greatest: CUTS.greatest };
                return Err(Error::new(CUTS.field, cause));
            }
            found
        }
        By::Scallop(most) => {
            let most = size(most, Field::Scallop)?;
            let fits = |plan: &Plan| plan.scallop.value + plan.scallop.bound <= most;
            let (mut low, mut high) = (least, CUTS.greatest);
            let mut found = best(high)?;
            if !fits(&found) {
                let least_um = um_up(found.scallop.value);
                let cause = Cause::OutOfLengths { least_um, greatest_um: LENGTH_UM.1 };
                return Err(Error::new(Field::Scallop, cause));
            }
            while low < high {
                let middle = low.midpoint(high);
                let tried = best(middle)?;
                if fits(&tried) {
                    (high, found) = (middle, tried);
                } else {
                    low = middle.saturating_add(1);
                }
            }
            found
        }
    };
    for k in 0..plan.cuts {
        plan.reach = plan.reach.max(plan.step(k)?.along);
    }
    Ok(plan)
}

impl Plan {
    /// The `k`-th cut, from nought: the largest diameter first, then down towards the
    /// end; behind a ball, then down towards the neck.
    ///
    /// # Errors
    /// [`Cause::OutOfRange`] of [`Field::Position`]; [`Cause::Overflow`].
    pub fn step(&self, k: u32) -> Result<Step, Error> {
        let greatest = self.cuts.saturating_sub(1);
        let over = Error::new(Field::Position, Cause::OutOfRange { least: 0, greatest });
        let made = made(&self.ask)?;
        let mut k = k;
        for reach in self.curve.iter().flatten() {
            let cuts = reach.cuts();
            if k < cuts {
                let last = reach.parts.saturating_sub(reach.made.1 as u32);
                let (along, across) = self.reading(&made, reach, last.saturating_sub(k))?;
                return Ok(Step { along, across, behind: reach.behind });
            }
            k = k.saturating_sub(cuts);
        }
        Err(over)
    }

    /// Readings at the `i`-th end of a reach's parts, on the dials.
    fn reading(&self, made: &Made, reach: &Reach, i: u32) -> Result<(Length, Length), Error> {
        let share = float::of_wide(i128::from(i), i128::from(reach.parts.max(1)));
        let (sine, cosine) = if self.squares {
            let square = |turns: f64| float::sin_turns(turns) * float::sin_turns(turns);
            let (from, to) = (square(reach.from), square(reach.to));
            let square = Approx::exactly((from + (to - from) * share).clamp(0.0, 1.0));
            (square.sqrt(), Approx::exactly(1.0).minus(square).sqrt())
        } else {
            let turns = Approx::exactly(reach.from + (reach.to - reach.from) * share);
            (turns.sin(), turns.cos())
        };
        let one = Approx::exactly(1.0);
        let rho = if made.hollow {
            made.radius.checked_sub(made.nose)?
        } else {
            made.radius.checked_add(made.nose)?
        };
        let rho = Approx::of(rho);
        let (along, across) = (rho.times(one.minus(cosine)), rho.times(one.minus(sine)).by(2.0));
        let (at, out) = made.base;
        let (at, out) = (Approx::of(at), Approx::of(out));
        // Rounded away from the curve.
        let (along, up) = match (made.hollow, made.cup, reach.behind) {
            (false, _, true) => (Approx::of(made.far).minus(along), true),
            (true, false, _) => (along, true),
            (true, true, _) => (at.minus(along), false),
            _ => (along, false),
        };
        let (across, wider) = match (made.hollow, made.cup) {
            (true, false) => (out.plus(across), true),
            (true, true) => (out.minus(across), false),
            _ => (out.minus(across), true),
        };
        Ok((on_dial(along, made.division, up)?, on_dial(across, made.division, wider)?))
    }

    /// Where those readings put the tool's edges.
    fn place(&self, made: &Made, reach: &Reach, i: u32) -> Result<Place, Error> {
        let (along, across) = self.reading(made, reach, i)?;
        let half = across.mm().over(2)?;
        let p = if reach.behind {
            made.far.checked_sub(along.mm())?
        } else if made.hollow && !made.cup {
            along.mm().negated()
        } else {
            along.mm()
        };
        Ok(Place { p, q: if made.cup { half.negated() } else { half } })
    }
}

/// The nearest reading below or above, or the very one within its bound.
fn on_dial(mm: Approx, division: Fraction, up: bool) -> Result<Length, Error> {
    let marks = mm.over(Approx::of(division));
    let overflow = Error::new(Field::SlideDial, Cause::Overflow);
    let nearest = float::round(marks.value);
    let off = marks.value - nearest;
    let whole = if off.abs() <= marks.bound {
        nearest
    } else if up {
        if off > 0.0 { nearest + 1.0 } else { nearest }
    } else if off < 0.0 {
        nearest - 1.0
    } else {
        nearest
    };
    let count = float::nearest(whole, 1).ok_or(overflow)?;
    division.checked_mul(count).map(Length::from_mm).map_err(|_| overflow)
}
