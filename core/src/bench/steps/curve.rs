//! The reaches of a curve, how its cuts are shared among them, and what their readings
//! are made of.
use super::{Ask, Made, Reach, Shape, Tool, on_dial};
use crate::bounds::LENGTH_UM;
use crate::error::{Cause, Error, Field};
use crate::measure::{
    Length,
    given::{from_nought, size, um_down},
};
use crate::number::{Approx, Fraction, float};

/// Parts of both reaches, as their lengths are.
pub(super) fn share(curve: &mut [Option<Reach>; 2], parts: u32, squares: bool) {
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

pub(super) fn made(ask: &Ask) -> Result<Made, Error> {
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
pub(super) fn blank(ask: &Ask, made: &Made) -> Result<Option<Length>, Error> {
    let round = made.radius.times(2)?;
    Ok(match ask.shape {
        Shape::Ball { stock, .. } if stock.mm() <= round => Some(stock),
        Shape::Ball { .. } => Some(on_dial(Approx::of(round), made.division, true)?),
        Shape::Edge { outside } => Some(outside),
        _ => None,
    })
}

/// The one or two reaches of a curve, without their parts.
pub(super) fn curve(ask: &Ask, made: &Made) -> Result<(Reach, Option<Reach>), Error> {
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
