//! A grid on the handle: holes of a circle or marks of a dial, equally spaced
//! round one turn. Each place is rounded from its absolute value, so errors
//! never build up.
use super::moves::Errors;
use super::question::Question;
use super::residues::Residues;
use crate::error::{Cause, Error, Field};
use crate::measure::Angle;
use crate::number::Fraction;

/// Steps of the grid from position 0 to the point nearest to where position
/// `index` is wanted, and what is left (wanted less grid), in steps. A half
/// goes up.
pub(super) fn nearest(
    question: &Question,
    index: u32,
    ratio: Fraction,
    steps: u32,
) -> Result<(i64, Fraction), Error> {
    nearest_to(question.travel(index)?, ratio, steps)
}

fn nearest_to(travel: Angle, ratio: Fraction, steps: u32) -> Result<(i64, Fraction), Error> {
    travel.turns().checked_mul(ratio)?.times(i64::from(steps))?.nearest()
}

/// Whether every position, and the closed end, falls on a grid of `steps` a
/// handle turn.
pub(super) fn fits(question: &Question, ratio: Fraction, steps: u32) -> Result<bool, Error> {
    let a_turn = ratio.times(i64::from(steps))?;
    if let Some(step) = question.step()? {
        return Ok(step.turns().checked_mul(a_turn)?.is_whole());
    }
    // An order in cycles stops both m/N and (some turns + 1/N) on: with m sharing
    // no factor with turns·N + 1, both fall on the grid only if 1/N does.
    if let Some(parts) = question.parts() {
        return Ok(a_turn.over(i64::from(parts))?.is_whole());
    }
    for travel in question.travels() {
        if !nearest_to(travel?, ratio, steps)?.1.is_zero() {
            return Ok(false);
        }
    }
    Ok(true)
}

/// Errors of a grid of `steps` a handle turn, exact, at the work.
pub(super) fn errors(question: &Question, ratio: Fraction, steps: u32) -> Result<Errors, Error> {
    let a_step = ratio.times(i64::from(steps))?;
    let (worst, adjacent, closing) = match equal_parts(question, a_step)? {
        Some(found) => found,
        None => match by_residues(question, a_step)? {
            Some(found) => found,
            None => one_by_one(question, ratio, steps)?,
        },
    };
    let at_work = |steps: Fraction| Ok(Angle::from_turns(steps.checked_div(a_step)?));
    Ok(Errors { worst: at_work(worst)?, adjacent: at_work(adjacent)?, closing: at_work(closing)? })
}

/// The closed form for equal parts on a grid that fits a turn of the work a
/// whole number of times. A part is p/q steps; the places take every residue
/// of q once and again: the worst is ⌊q/2⌋/q of a step, and neighbours differ
/// by the part of p/q above or below a whole step.
fn equal_parts(
    question: &Question,
    a_turn: Fraction,
) -> Result<Option<(Fraction, Fraction, Fraction)>, Error> {
    let Some(parts) = question.parts().filter(|_| a_turn.is_whole()) else { return Ok(None) };
    let a_part = a_turn.over(i64::from(parts))?;
    if a_part.is_whole() {
        return Ok(Some((Fraction::ZERO, Fraction::ZERO, Fraction::ZERO)));
    }
    let half = a_part.den().checked_div(2).ok_or(Error::new(Field::Fraction, Cause::Overflow))?;
    let above = a_part.part();
    let below = Fraction::ONE.checked_sub(above)?;
    Ok(Some((Fraction::new(half, a_part.den())?, above.max(below), Fraction::ZERO)))
}

/// Every position looked at in whole numbers: angles, and ratios that are not whole.
fn by_residues(
    question: &Question,
    a_turn: Fraction,
) -> Result<Option<(Fraction, Fraction, Fraction)>, Error> {
    let Some(residues) = Residues::of(question, a_turn)? else { return Ok(None) };
    let (mut worst, mut adjacent, mut before) = (0_u64, 0_u64, 0_i64);
    for left in residues.left() {
        worst = worst.max(left.unsigned_abs());
        adjacent = adjacent.max(left.abs_diff(before));
        before = left;
    }
    let mut closing = Fraction::ZERO;
    if question.closes() {
        // The first part has nothing left: the last one's own is their difference.
        adjacent = adjacent.max(before.unsigned_abs());
        let end = question.travel(question.last())?.turns().checked_mul(a_turn)?;
        closing = end.nearest()?.1.abs();
    }
    let steps = |n: u64| Fraction::from_wide(i128::from(n), i128::from(residues.den()));
    Ok(Some((steps(worst)?, steps(adjacent)?, closing)))
}

/// Every position looked at, as fractions: lists.
fn one_by_one(
    question: &Question,
    ratio: Fraction,
    steps: u32,
) -> Result<(Fraction, Fraction, Fraction), Error> {
    let left = |travel| Ok::<_, Error>(nearest_to(travel, ratio, steps)?.1);
    let (mut worst, mut adjacent) = (Fraction::ZERO, Fraction::ZERO);
    let mut before: Option<Fraction> = None;
    let mut look = |travel: Angle| {
        let here = left(travel)?;
        worst = worst.max(here.abs());
        if let Some(before) = before {
            adjacent = adjacent.max(here.checked_sub(before)?.abs());
        }
        before = Some(here);
        Ok::<_, Error>(())
    };
    if question.parts().is_some() {
        // Neighbours on the work, whatever the cutting order.
        for part in 0..question.positions() {
            look(question.travel(question.index_of(part))?)?;
        }
    } else {
        question.travels().try_for_each(|travel| look(travel?))?;
    }
    let mut closing = Fraction::ZERO;
    if question.closes() {
        closing = left(question.travel(question.last())?)?.abs();
        let first = left(question.travel(0)?)?;
        let wrap = before.unwrap_or(first).checked_sub(first)?.abs();
        adjacent = adjacent.max(wrap);
    }
    Ok((worst, adjacent, closing))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::divide::{Parts, Repeated};

    #[test]
    fn the_closed_form_agrees_with_every_position_looked_at() {
        for count in 2..=140 {
            for every in [1, 2, 3, 7].into_iter().filter(|&m| m < count) {
                for steps in [15, 16, 49] {
                    let question = Question::Parts(Parts { count, every });
                    let ratio = Fraction::whole(40);
                    let a_turn = ratio.times(i64::from(steps)).unwrap();
                    let quick = equal_parts(&question, a_turn).unwrap().unwrap();
                    let slow = one_by_one(&question, ratio, steps).unwrap();
                    assert_eq!(quick, slow, "{count} every {every} on {steps}");
                    assert_eq!(by_residues(&question, a_turn).unwrap(), Some(slow));
                }
            }
        }
    }

    #[test]
    fn residues_agree_with_every_position_looked_at() {
        for (num, den) in [(81, 2), (40, 7), (1, 3)] {
            let ratio = Fraction::new(num, den).unwrap();
            let check = |question: Question, steps: u32| {
                let a_turn = ratio.times(i64::from(steps)).unwrap();
                let slow = one_by_one(&question, ratio, steps).unwrap();
                assert_eq!(by_residues(&question, a_turn).unwrap(), Some(slow), "{question:?}");
            };
            for steps in [15, 16, 49] {
                for count in 2..=36 {
                    for every in 1..count {
                        check(Question::Parts(Parts { count, every }), steps);
                    }
                    let angle = Fraction::new(i64::from(count), 7 * i64::from(steps) + 1).unwrap();
                    let angle = Angle::from_turns(angle);
                    check(Question::Angle(Repeated { angle, times: count }), steps);
                }
            }
        }
    }
}
