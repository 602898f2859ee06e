//! What stands above the curve: the corners that cuts leave between them.
use super::{Made, Place, Plan};
use crate::bounds::CUTS;
use crate::error::{Cause, Error};
use crate::list::List;
use crate::number::{Approx, Fraction, float};

impl Plan {
    /// What stands highest above the curve.
    pub(super) fn worst(&self, made: &Made) -> Result<Approx, Error> {
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
