//! The search for compound settings: which two circles, and which legs.
//!
//! Two circles of b and d holes reach every multiple of 1/L of a handle turn,
//! L the least common multiple of b and d, and nothing between. So each pair is
//! settled by one division: the nearest multiple m/L to what a move wants. The
//! legs follow from a·(L/b) + c·(L/d) = m by the extended algorithm of Euclid;
//! there are as many pairs of residues (a, c) as b and d share divisors' worth:
//! their greatest common divisor.
use super::compound::Compound;
use super::holes::reaches;
use super::moves::Errors;
use super::question::Question;
use crate::bounds::MOST_TIMES_ROUND;
use crate::error::{Cause, Error, Field};
use crate::head::{Circle, Head};
use crate::number::{Fraction, gcd, lcm, mod_inverse};

const OVERFLOW: Error = Error::new(Field::Fraction, Cause::Overflow);

type Keep<'k> = &'k mut dyn FnMut(Compound, Errors) -> Result<(), Error>;

/// Offers every exact pair of circles; where there is none, the nearest pair,
/// then for each number of times round (2 and on) the nearest pair if it is
/// nearer than with all fewer.
pub(super) fn compound(question: &Question, head: &Head, keep: Keep) -> Result<(), Error> {
    let Some(step) = question.step()? else { return Ok(()) };
    let (first, most) = match question {
        Question::Parts(parts) if parts.every != 1 => (parts.every, parts.every),
        _ => (1, question.parts().map_or(1, |n| MOST_TIMES_ROUND.min(n.saturating_sub(1)))),
    };
    let once = step.turns().checked_mul(head.ratio)?.over(i64::from(first))?;
    let parts = u64::from(question.parts().unwrap_or(1));
    let mut best: Option<Found> = None;
    for times_round in first..=most {
        if gcd(u64::from(times_round), parts) != 1 {
            continue;
        }
        let wanted = Wanted::of(once, times_round)?;
        let mut nearest: Option<Found> = None;
        let mut exact = false;
        for pair in pairs(head) {
            let Some(found) = wanted.nearest(pair) else { continue };
            if found.off == 0 {
                exact = true;
                found.legs(question, head, keep)?;
            } else if !exact && nearest.as_ref().is_none_or(|other| found.nearer(other)) {
                nearest = Some(found);
            }
        }
        if exact {
            return Ok(());
        }
        if let Some(found) = nearest {
            if best.as_ref().is_none_or(|other| found.nearer(other)) {
                found.legs(question, head, keep)?;
                best = Some(found);
            }
        }
    }
    Ok(())
}

/// Whether some plate has two circles that the pins can use.
pub(super) fn any_pair(head: &Head) -> bool {
    pairs(head).next().is_some()
}

/// Two circles of one side of one plate, the smaller first.
#[derive(Clone, Copy)]
struct Pair {
    plate: u8,
    small: u16,
    large: u16,
}

fn pairs(head: &Head) -> impl Iterator<Item = Pair> {
    let usable = |circle: &&Circle| reaches(head.reach, circle);
    (0_u8..).zip(&head.plates).flat_map(move |(plate, side)| {
        side.circles.iter().enumerate().filter(move |(_, c)| usable(c)).flat_map(
            move |(at, one)| {
                let after = side.circles.iter().skip(at.saturating_add(1)).filter(usable);
                after.map(move |two| Pair {
                    plate,
                    small: one.holes.min(two.holes),
                    large: one.holes.max(two.holes),
                })
            },
        )
    })
}

/// What one move wants, in handle turns: whole + part/den. `den` is the same
/// for every number of times round, so errors compare.
struct Wanted {
    whole: u64,
    part: u64,
    den: u64,
    times_round: u32,
}

/// The nearest point that a pair reaches.
#[derive(Clone, Copy)]
struct Found {
    pair: Pair,
    /// What the two circles reach are multiples of 1/`grid` turn.
    grid: u64,
    /// How many of them.
    point: u64,
    /// Distance from what is wanted, in 1/(grid × den) turn.
    off: u64,
    times_round: u32,
}

impl Wanted {
    fn of(once: Fraction, times_round: u32) -> Result<Self, Error> {
        let wide = |n: i64| u64::try_from(n).map_err(|_| OVERFLOW);
        let (num, den) = (wide(once.num())?, wide(once.den())?);
        let num = num.checked_mul(u64::from(times_round)).ok_or(OVERFLOW)?;
        let whole = num.checked_div(den).ok_or(OVERFLOW)?;
        let part = num.checked_rem(den).ok_or(OVERFLOW)?;
        Ok(Self { whole, part, den, times_round })
    }

    /// The nearest point of `pair` (a half goes up); none where one of its
    /// circles alone comes to the same point, or beyond 64 bits.
    fn nearest(&self, pair: Pair) -> Option<Found> {
        let grid = lcm(u64::from(pair.small), u64::from(pair.large))?;
        let scaled = u128::from(self.part).checked_mul(u128::from(grid))?;
        // 64-bit division is many times quicker: most of the time it is enough.
        let (down, above) = match u64::try_from(scaled) {
            Ok(scaled) => (scaled.checked_div(self.den)?, scaled.checked_rem(self.den)?),
            Err(_) => {
                let den = u128::from(self.den);
                let down = scaled.checked_div(den).and_then(|n| u64::try_from(n).ok())?;
                (down, scaled.checked_rem(den).and_then(|n| u64::try_from(n).ok())?)
            }
        };
        let below = self.den.checked_sub(above)?;
        let (near, off) = if above < below { (down, above) } else { (down.checked_add(1)?, below) };
        let point = self.whole.checked_mul(grid)?.checked_add(near)?;
        let alone = |holes: u16| {
            let a_hole = grid.checked_div(u64::from(holes));
            a_hole.and_then(|a_hole| point.checked_rem(a_hole)) == Some(0)
        };
        if alone(pair.small) || alone(pair.large) {
            return None;
        }
        Some(Found { pair, grid, point, off, times_round: self.times_round })
    }
}

impl Found {
    fn nearer(&self, other: &Self) -> bool {
        let product = |a: u64, b: u64| u128::from(a).checked_mul(u128::from(b));
        product(self.off, other.grid) < product(other.off, self.grid)
    }

    /// Offers the legs that come to the point: for each pair of residues the
    /// back pin's leg stays under a turn, back (with the pin on either circle)
    /// or forward (with the pin on the larger).
    fn legs(&self, question: &Question, head: &Head, keep: Keep) -> Result<(), Error> {
        let Pair { small, large, .. } = self.pair;
        let mut errors: Option<Errors> = None;
        let mut rate = |legs: Compound| {
            // All come to the same point.
            let rated = errors.map_or_else(|| legs.errors(question), Ok)?;
            errors = Some(rated);
            keep(legs, rated)
        };
        self.with_pin_on(large, small, head, &mut rate)?;
        self.with_pin_on(small, large, head, &mut rate)
    }

    fn with_pin_on(
        &self,
        pin: u16,
        back: u16,
        head: &Head,
        keep: &mut dyn FnMut(Compound) -> Result<(), Error>,
    ) -> Result<(), Error> {
        let grid_over = |holes: u16| self.grid.checked_div(u64::from(holes)).ok_or(OVERFLOW);
        let (pin_space, back_space) = (grid_over(pin)?, grid_over(back)?);
        // back_spaces · back_space ≡ point (mod pin_space)
        let inverse = mod_inverse(back_space, pin_space).ok_or(OVERFLOW)?;
        let point = self.point.checked_rem(pin_space).ok_or(OVERFLOW)?;
        let least = point.checked_mul(inverse).and_then(|n| n.checked_rem(pin_space));
        let holes = u64::from(back);
        let mut residue = least.ok_or(OVERFLOW)?;
        while residue < holes {
            let forward = i64::try_from(residue).map_err(|_| OVERFLOW)?;
            let backward = forward.checked_sub(i64::from(back)).ok_or(OVERFLOW)?;
            let spaces = [Some(backward), Some(forward).filter(|_| pin > back)];
            for back_spaces in spaces.into_iter().flatten() {
                if let Some(pin_spaces) = self.rest(back_spaces, back_space, pin_space) {
                    keep(Compound {
                        plate: self.pair.plate,
                        pin,
                        back,
                        pin_spaces,
                        back_spaces: i32::try_from(back_spaces).map_err(|_| OVERFLOW)?,
                        times_round: self.times_round,
                        ratio: head.ratio,
                        arms: head.arms,
                    })?;
                }
            }
            residue = residue.checked_add(pin_space).ok_or(OVERFLOW)?;
        }
        Ok(())
    }

    /// The pin's leg that is left; none where it would have to go back.
    fn rest(&self, back_spaces: i64, back_space: u64, pin_space: u64) -> Option<u32> {
        let back = i128::from(back_spaces).checked_mul(i128::from(back_space))?;
        let pin = i128::from(self.point).checked_sub(back)?;
        let pin = pin.checked_div(i128::from(pin_space))?;
        u32::try_from(pin).ok().filter(|&spaces| spaces > 0)
    }
}
