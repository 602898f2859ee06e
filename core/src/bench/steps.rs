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
use crate::bounds::{CUTS, LENGTH_UM};
use crate::error::{Cause, Error, Field};
use crate::list::List;
use crate::measure::{
    Length,
    given::{from_nought, size, um_down, um_up},
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

    /// What stands highest above the curve.
    fn worst(&self, made: &Made) -> Result<Approx, Error> {
        let radius = Approx::of(made.radius);
        let nose = Approx::of(made.nose);
        // The middle of the curve, in the reach's own measures.
        let half = made.base.1.over(2)?;
        let (p, q) = match (made.hollow, made.cup) {
            (false, _) => (made.radius, half.checked_sub(made.radius)?),
            (true, false) => (made.radius.negated(), half.checked_add(made.radius)?),
            (true, true) => (made.base.0.checked_sub(made.radius)?, Fraction::ZERO),
        };
        let middle = (Approx::of(p), Approx::of(q));
        let mut worst = Approx::exactly(0.0);
        for reach in self.curve.iter().flatten() {
            // What bounds the metal in the end, from the wall to the round: an edge is left
            // out where the corner before it is taken away by a later one.
            let mut edges: List<Edge, MOST_EDGES> = List::new();
            let full = |_| Error::new(CUTS.field, Cause::Overflow);
            edges.push(Edge::Wall(reach.wall)).map_err(full)?;
            let last = reach.parts.saturating_sub(reach.made.1 as u32);
            let mut i = u32::from(reach.made.0);
            loop {
                let next = if i <= last {
                    Edge::Cut(self.place(made, reach, i)?)
                } else {
                    Edge::Round(reach.out)
                };
                while let [.., one, two] = *edges {
                    let corner = corner(one, two, nose, middle, reach.behind)?;
                    if !next.takes(corner, nose) && !next.covers(two) {
                        break;
                    }
                    edges.pop();
                }
                edges.push(next).map_err(full)?;
                if i > last {
                    break;
                }
                i = i.saturating_add(1);
            }
            let mut before = None;
            for edge in &edges {
                if let Some(before) = before {
                    let corner = corner(before, *edge, nose, middle, reach.behind)?;
                    worst = higher(worst, corner, middle, radius, reach.sign);
                }
                before = Some(*edge);
            }
        }
        Ok(worst)
    }
}

/// The higher of `worst` and the corner's height above the curve.
fn higher(
    worst: Approx,
    corner: (Approx, Approx),
    middle: (Approx, Approx),
    radius: Approx,
    sign: f64,
) -> Approx {
    let (p, q) = (corner.0.minus(middle.0), corner.1.minus(middle.1));
    let away = p.times(p).plus(q.times(q));
    // √x − R = (x − R²) ÷ (√x + R).
    let high = away.minus(radius.times(radius)).over(away.sqrt().plus(radius)).by(sign);
    if high.value > worst.value { high } else { worst }
}

/// Most edges of a reach: a cut each, the wall and the round.
const MOST_EDGES: usize = 404;

/// What bounds the metal.
#[derive(Clone, Copy)]
enum Edge {
    /// A wall that is there, or where a hollow begins.
    Wall(Fraction),
    /// A cut.
    Cut(Place),
    /// What is round already, or where a hollow ends.
    Round(Fraction),
}

impl Edge {
    /// Whether a point is taken away by what follows.
    fn takes(self, (p, q): (Approx, Approx), nose: Approx) -> bool {
        match self {
            Self::Wall(_) => false,
            Self::Round(out) => q.value >= float::of(out),
            Self::Cut(place) => {
                let along = p.value - (float::of(place.p) - nose.value);
                let down = float::of(place.q) + nose.value - q.value;
                let within = along <= nose.value && down <= nose.value;
                let square = nose.value * nose.value;
                within && (along <= 0.0 || down <= 0.0 || along * along + down * down <= square)
            }
        }
    }

    /// Whether it goes further at the very diameter of a cut before it.
    fn covers(self, other: Self) -> bool {
        matches!((self, other), (Self::Cut(one), Self::Cut(other)) if one.q == other.q)
    }
}

/// The corner between two edges that follow each other.
fn corner(
    one: Edge,
    two: Edge,
    nose: Approx,
    middle: (Approx, Approx),
    behind: bool,
) -> Result<(Approx, Approx), Error> {
    match (one, two) {
        (Edge::Wall(_), Edge::Cut(place)) if behind => Ok(nearest(place, middle, nose)),
        (Edge::Wall(wall), Edge::Cut(place)) => at_wall(wall, place, nose),
        (Edge::Cut(place), Edge::Round(out)) => at_floor(place, out, nose),
        (Edge::Cut(one), Edge::Cut(two)) => between(one, two, nose),
        (Edge::Wall(wall), Edge::Round(out)) => Ok((Approx::of(wall), Approx::of(out))),
        _ => Ok(middle),
    }
}

/// The corner that two neighbouring cuts leave: the first reaches up to `p` at its floor
/// `q`, both with a nose between; so does the second, further along and higher.
fn between(one: Place, two: Place, nose: Approx) -> Result<(Approx, Approx), Error> {
    // How far the noses' centres are apart.
    let [p, q] = [two.p.checked_sub(one.p)?, two.q.checked_sub(one.q)?].map(Approx::of);
    let (wall, floor) = (Approx::of(one.p), Approx::of(two.q));
    // Where the second's floor meets the first, from the first nose's centre.
    let a = if q.value >= nose.value { nose } else { side(nose, q) };
    if a.value <= p.value {
        return Ok((wall.minus(nose).plus(a), floor));
    }
    // Where the first's wall meets the second nose, down from its centre.
    let b = side(nose, p);
    if b.value <= q.value {
        return Ok((wall, floor.plus(nose).minus(b)));
    }
    // Two noses meet half-way between their centres, aside towards the metal.
    let long = p.times(p).plus(q.times(q));
    let far = nose.times(nose).over(long).minus(Approx::exactly(0.25)).sqrt();
    let along = wall.minus(nose).plus(p.by(0.5)).plus(q.times(far));
    let up = Approx::of(one.q).plus(nose).plus(q.by(0.5)).minus(p.times(far));
    Ok((along, up))
}

/// √(n² − (n − d)²) = √(d·(2n − d)): half the width of a nose, `d` above its tip.
fn side(nose: Approx, d: Approx) -> Approx {
    d.times(nose.by(2.0).minus(d)).sqrt()
}

/// The point of the first nose that is nearest to the middle of a round.
fn nearest(one: Place, middle: (Approx, Approx), nose: Approx) -> (Approx, Approx) {
    let centre = (Approx::of(one.p).minus(nose), Approx::of(one.q).plus(nose));
    let (p, q) = (centre.0.minus(middle.0), centre.1.minus(middle.1));
    let share = nose.over(p.times(p).plus(q.times(q)).sqrt());
    (centre.0.minus(p.times(share)), centre.1.minus(q.times(share)))
}

/// The corner between a wall that is there and the first cut.
fn at_wall(wall: Fraction, one: Place, nose: Approx) -> Result<(Approx, Approx), Error> {
    let p = Approx::of(one.p.checked_sub(wall)?);
    let up = if p.value >= nose.value { nose } else { side(nose, p) };
    Ok((Approx::of(wall), Approx::of(one.q).plus(nose).minus(up)))
}

/// The corner between the last cut and what is round already.
fn at_floor(one: Place, floor: Fraction, nose: Approx) -> Result<(Approx, Approx), Error> {
    let q = Approx::of(floor.checked_sub(one.q)?);
    let out = if q.value >= nose.value { nose } else { side(nose, q) };
    Ok((Approx::of(one.p).minus(nose).plus(out), Approx::of(floor)))
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

/// Parts of both reaches, as their lengths are.
fn share(curve: &mut [Option<Reach>; 2], parts: u32, squares: bool) {
    let long = |reach: &Reach| {
        if squares {
            let square = |turns: f64| float::sin_turns(turns) * float::sin_turns(turns);
            (square(reach.to) - square(reach.from)).abs()
        } else {
            (reach.to - reach.from).abs()
        }
    };
    match curve {
        [Some(one), Some(two)] => {
            let share = long(one) / (long(one) + long(two));
            let most = parts.saturating_sub(1).max(1);
            let first = float::nearest(share * f64::from(parts), 1)
                .and_then(|n| u32::try_from(n.num()).ok())
                .unwrap_or(1);
            one.parts = first.clamp(1, most);
            two.parts = parts.saturating_sub(one.parts).max(1);
        }
        [Some(one), None] => one.parts = parts,
        _ => {}
    }
}

fn made(ask: &Ask) -> Result<Made, Error> {
    let (nose, width) = match ask.tool {
        Tool::Round { nose } => {
            size(nose, Field::Tool)?;
            (nose.mm(), nose.mm().times(2)?)
        }
        Tool::Square { width } => {
            from_nought(width, Field::Tool)?;
            (Fraction::ZERO, width.mm())
        }
    };
    let radius = ask.radius.mm();
    let round = radius.times(2)?;
    let (base, hollow, cup) = match ask.shape {
        Shape::Ball { .. } => ((Fraction::ZERO, round), false, false),
        Shape::Edge { outside } => ((Fraction::ZERO, outside.mm()), false, false),
        Shape::Hollow { inside } => ((Fraction::ZERO, inside.mm()), true, false),
        Shape::Cup { depth } => ((depth.mm(), round), true, true),
    };
    let far = round.checked_add(width)?;
    Ok(Made { radius, nose, base, far, division: ask.division.mm(), hollow, cup })
}

/// To what the stock is turned first.
fn blank(ask: &Ask, made: &Made) -> Result<Option<Length>, Error> {
    let round = made.radius.times(2)?;
    Ok(match ask.shape {
        Shape::Ball { stock, .. } if stock.mm() <= round => Some(stock),
        Shape::Ball { .. } => Some(on_dial(Approx::of(round), made.division, true)?),
        Shape::Edge { outside } => Some(outside),
        _ => None,
    })
}

/// The one or two reaches of a curve, without their parts.
fn curve(ask: &Ask, made: &Made) -> Result<(Reach, Option<Reach>), Error> {
    let float_of = |one: Fraction| float::of(one);
    let (radius, nose) = (float_of(made.radius), float_of(made.nose));
    let range = |field, least_um, greatest| {
        Error::new(field, Cause::OutOfLengths { least_um, greatest_um: um_down(greatest) })
    };
    if made.hollow && made.nose >= made.radius {
        return Err(range(Field::Tool, LENGTH_UM.0, radius - 0.001));
    }
    let quarter = 0.25;
    let sign = if made.hollow { -1.0 } else { 1.0 };
    let whole = Reach {
        sign,
        from: 0.0,
        to: quarter,
        made: (true, true),
        wall: Fraction::ZERO,
        out: Fraction::ZERO,
        parts: 1,
        behind: false,
    };
    let square = made.nose.is_zero();
    match ask.shape {
        Shape::Ball { stock, neck } => {
            size(stock, Field::Blank)?;
            let round = made.radius.times(2)?;
            let smaller = stock.mm() < round;
            // The nose may touch the curve up to the stock's outside.
            let sine = if smaller { float_of(stock.mm()) / (2.0 * radius) } else { 1.0 };
            let to = if smaller { float::asin_turns(sine) } else { quarter };
            let blank = blank(ask, made)?.unwrap_or(stock);
            let ends = (true, !smaller || square);
            let front = Reach { to, made: ends, out: blank.mm().over(2)?, ..whole };
            let Some(neck) = neck else { return Ok((front, None)) };
            from_nought(neck, Field::Neck)?;
            if neck.mm() >= round || neck >= stock {
                return Err(Error::new(Field::Neck, Cause::Conflict));
            }
            // By its nose's edge the neck is reached where sin t is this.
            let half = float_of(neck.mm()) / 2.0;
            let from = float::asin_turns(((half + nose) / (radius + nose)).clamp(0.0, 1.0));
            if from >= to {
                return Err(range(Field::Tool, LENGTH_UM.0, (sine * radius - half) / (1.0 - sine)));
            }
            let back = Reach { from, made: (false, ends.1), behind: true, ..front };
            Ok((front, Some(back)))
        }
        Shape::Edge { outside } => {
            size(outside, Field::Blank)?;
            if made.radius.times(2)? > outside.mm() {
                let most = float_of(outside.mm()) / 2.0;
                return Err(range(Field::Radius, LENGTH_UM.0, most));
            }
            Ok((Reach { out: outside.mm().over(2)?, ..whole }, None))
        }
        Shape::Hollow { inside } => {
            from_nought(inside, Field::Diameter)?;
            let out = inside.mm().over(2)?.checked_add(made.radius)?;
            let (wall, made) = (made.radius.negated(), (false, false));
            Ok((Reach { from: quarter, to: 0.0, made, wall, out, ..whole }, None))
        }
        Shape::Cup { depth } => {
            size(depth, Field::Depth)?;
            if depth > ask.radius {
                return Err(range(Field::Depth, LENGTH_UM.0, radius));
            }
            let from = float::acos_turns((radius - float_of(depth.mm())) / radius);
            Ok((Reach { from, to: 0.0, made: (square, square), ..whole }, None))
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn mm(num: i64, den: i64) -> Length {
        Length::from_mm(Fraction::new(num, den).unwrap())
    }

    fn ask(shape: Shape, tool: Tool, by: By) -> Ask {
        Ask { shape, radius: mm(10, 1), tool, division: mm(1, 1000), by }
    }

    /// The scallop of the formula, and what dials of 0.001 add to it.
    #[track_caller]
    fn near(plan: &Plan, scallop: f64) {
        let came = plan.scallop.value;
        assert!(came >= scallop && came < scallop + 0.0015, "{came}");
    }

    #[test]
    fn a_square_corner_leaves_equal_steps() {
        // Quarter of a round in 25 parts by equal squares: R (√(1 + 1/25) − 1).
        let square = Tool::Square { width: mm(2, 1) };
        let dome = Shape::Ball { stock: mm(20, 1), neck: None };
        let plan = plan(&ask(dome, square, By::Cuts(24))).unwrap();
        near(&plan, 0.198_039_027);
        let step = plan.step(23).unwrap();
        // The smallest: sin² = 1/25, so 4 across and 10 − √96 along.
        assert_eq!(step.across, mm(4, 1));
        assert_eq!(step.along, mm(202, 1000));
        assert!(plan.step(24).is_err());
    }

    #[test]
    fn a_round_nose_leaves_cusps_by_their_formula() {
        // 30 parts of 3°: (R + n) cos 1.5° − √(n² − (R + n)² sin² 1.5°) − R.
        let nose = Tool::Round { nose: mm(2, 1) };
        let found = plan(&ask(Shape::Edge { outside: mm(50, 1) }, nose, By::Cuts(29))).unwrap();
        near(&found, 0.020_710_312);
        let hollow = Shape::Hollow { inside: mm(30, 1) };
        let found = plan(&ask(hollow, nose, By::Cuts(31))).unwrap();
        // R − (R − n) cos − √(n² − (R − n)² sin²).
        near(&found, 0.013_735_339);
        // It begins by facing the shoulder and ends on the smaller diameter.
        let (first, last) = (found.step(0).unwrap(), found.step(30).unwrap());
        assert_eq!((first.along, first.across), (mm(0, 1), mm(46, 1)));
        assert_eq!((last.along, last.across), (mm(8, 1), mm(30, 1)));
    }

    #[test]
    fn as_few_cuts_as_a_scallop_needs() {
        let nose = Tool::Round { nose: mm(2, 1) };
        let cup = Shape::Cup { depth: mm(10, 1) };
        let found = plan(&ask(cup, nose, By::Scallop(mm(2, 100)))).unwrap();
        assert!(found.scallop.value <= 0.02);
        let fewer = plan(&ask(cup, nose, By::Cuts(found.cuts - 1))).unwrap();
        assert!(fewer.scallop.value > 0.02);
        let coarse = Ask { division: mm(1, 10), ..ask(cup, nose, By::Scallop(mm(1, 1000))) };
        assert!(matches!(plan(&coarse).unwrap_err().cause, Cause::OutOfLengths { .. }));
    }

    #[test]
    fn what_does_not_go() {
        let square = Tool::Square { width: mm(2, 1) };
        let refused = |shape, tool, cuts| {
            plan(&ask(shape, tool, By::Cuts(cuts))).map_err(|e| (e.field, e.cause)).unwrap_err()
        };
        let neck = Shape::Ball { stock: mm(15, 1), neck: Some(mm(15, 1)) };
        assert_eq!(refused(neck, square, 9), (Field::Neck, Cause::Conflict));
        let blunt = Tool::Round { nose: mm(10, 1) };
        let hollow = Shape::Hollow { inside: mm(30, 1) };
        let most = Cause::OutOfLengths { least_um: 1, greatest_um: 9999 };
        assert_eq!(refused(hollow, blunt, 9), (Field::Tool, most));
        let one = Cause::OutOfRange { least: 2, greatest: 400 };
        assert_eq!(refused(hollow, square, 1), (Field::Passes, one));
        let edge = Shape::Edge { outside: mm(19, 1) };
        let most = Cause::OutOfLengths { least_um: 1, greatest_um: 9500 };
        assert_eq!(refused(edge, square, 9), (Field::Radius, most));
        let cup = Shape::Cup { depth: mm(11, 1) };
        let most = Cause::OutOfLengths { least_um: 1, greatest_um: 10_000 };
        assert_eq!(refused(cup, square, 9), (Field::Depth, most));
    }
}
