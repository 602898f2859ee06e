//! The fraction nearest to a given one under a limit on its denominator.
//!
//! Walks the continued fraction and, where a full step would pass the limit,
//! weighs the last semiconvergent against the convergent before it: the nearer
//! one is best (the classic result on best approximations of the second and
//! first kind). At most 64 steps.
use super::Fraction;
use crate::error::{Cause, Error, Field};

/// A fraction near another one, with what is left over.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Near {
    /// The near fraction.
    pub fraction: Fraction,
    /// The fraction sought less the near one: nought when it is exact.
    pub residual: Fraction,
}

/// The fraction nearest to `sought` with a denominator of at most `most`;
/// of two equally near ones the smaller denominator wins, then the lower value.
///
/// # Errors
/// [`Cause::Zero`] when `most` is below one; [`Cause::Overflow`] when the residual does not fit.
#[expect(
    clippy::arithmetic_side_effects,
    reason = "denominators stay at or below `most`, numerators below |sought|·most + 1, all in \
              i128"
)]
pub fn nearest_with(sought: Fraction, most: i64) -> Result<Near, Error> {
    if most < 1 {
        return Err(Error::new(Field::Fraction, Cause::Zero));
    }
    let most = i128::from(most);
    // p/q is the newest convergent, old_p/old_q the one before.
    let (mut old_p, mut old_q, mut p, mut q) = (1_i128, 0_i128, i128::from(sought.floor()), 1_i128);
    let (mut n, mut d) = (i128::from(sought.den()), i128::from(sought.part().num()));
    while let (Some(step), Some(rest)) = (n.checked_div(d), n.checked_rem(d)) {
        if q * step + old_q > most {
            let room = (most - old_q).checked_div(q).unwrap_or(0);
            let semi = Fraction::from_wide(room * p + old_p, room * q + old_q)?;
            let full = Fraction::from_wide(p, q)?;
            return nearer(sought, full, semi);
        }
        (old_p, old_q, p, q) = (p, q, step * p + old_p, step * q + old_q);
        (n, d) = (d, rest);
    }
    near(sought, Fraction::from_wide(p, q)?)
}

fn near(sought: Fraction, fraction: Fraction) -> Result<Near, Error> {
    Ok(Near { fraction, residual: sought.checked_sub(fraction)? })
}

fn nearer(sought: Fraction, a: Fraction, b: Fraction) -> Result<Near, Error> {
    let (a, b) = (near(sought, a)?, near(sought, b)?);
    let key = |x: &Near| (x.residual.abs(), x.fraction.den(), x.fraction);
    Ok(if key(&b) < key(&a) { b } else { a })
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Every denominator tried: the slow truth.
    fn slow(sought: Fraction, most: i64) -> Fraction {
        let mut best: Option<Near> = None;
        for den in 1..=most {
            let (whole, _) = sought.times(den).unwrap().nearest().unwrap();
            for num in [whole - 1, whole] {
                let found = near(sought, Fraction::new(num, den).unwrap()).unwrap();
                best = match best {
                    Some(b) => Some(nearer(sought, b.fraction, found.fraction).unwrap()),
                    None => Some(found),
                };
            }
        }
        best.unwrap().fraction
    }

    #[test]
    fn whole_small_domain_agrees_with_every_denominator_tried() {
        for num in -40..=40 {
            for den in 1..=40 {
                for most in 1..=20 {
                    let sought = Fraction::new(num, den).unwrap();
                    let found = nearest_with(sought, most).unwrap();
                    assert_eq!(found.fraction, slow(sought, most), "{num}/{den}, most {most}");
                    let back = found.fraction.checked_add(found.residual).unwrap();
                    assert_eq!(back, sought);
                }
            }
        }
    }

    #[test]
    fn known_rows() {
        let near = |num, den, most| nearest_with(Fraction::new(num, den).unwrap(), most);
        let pi = near(3_141_592_653_589_793, 1_000_000_000_000_000, 400).unwrap();
        assert_eq!((pi.fraction.num(), pi.fraction.den()), (355, 113));
        let semi = near(3_141_592_653_589_793, 1_000_000_000_000_000, 60).unwrap();
        assert_eq!((semi.fraction.num(), semi.fraction.den()), (179, 57));
        assert!(near(1, 3, 0).is_err());
    }
}
