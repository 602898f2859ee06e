//! Square and cube roots in whole numbers, so that a formula's last printed
//! place never hangs on a float.
use crate::error::{Cause, Error, Field};
use crate::number::Fraction;

const OVERFLOW: Error = Error::new(Field::Length, Cause::Overflow);

/// Billionths of the square root of `value`, rounded down.
pub(crate) fn sqrt_e9(value: Fraction) -> Result<i64, Error> {
    billionths(value, 2)
}

/// Billionths of the cube root of `value`, rounded down.
pub(crate) fn cbrt_e9(value: Fraction) -> Result<i64, Error> {
    billionths(value, 3)
}

fn billionths(value: Fraction, degree: u32) -> Result<i64, Error> {
    let num = u128::try_from(value.num()).map_err(|_| OVERFLOW)?;
    let den = u128::try_from(value.den()).map_err(|_| OVERFLOW)?;
    let scale = 1_000_000_000_u128.checked_pow(degree).ok_or(OVERFLOW)?;
    let scaled = num.checked_mul(scale).and_then(|n| n.checked_div(den)).ok_or(OVERFLOW)?;
    i64::try_from(root(scaled, degree)).map_err(|_| OVERFLOW)
}

/// The greatest whole number whose power does not exceed `of`, bit by bit.
fn root(of: u128, degree: u32) -> u128 {
    let mut found = 0_u128;
    for bit in (0..63).rev() {
        let tried = found | 1 << bit;
        if tried.checked_pow(degree).is_some_and(|power| power <= of) {
            found = tried;
        }
    }
    found
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn roots_are_the_greatest_that_fit() {
        for n in 0..2000_u128 {
            let (two, three) = (root(n, 2), root(n, 3));
            assert!(two * two <= n && (two + 1) * (two + 1) > n);
            assert!(three.pow(3) <= n && (three + 1).pow(3) > n);
        }
        let part = |num, den| Fraction::new(num, den).unwrap();
        assert_eq!(sqrt_e9(part(1, 4)).unwrap(), 500_000_000);
        assert_eq!(sqrt_e9(part(2, 1)).unwrap(), 1_414_213_562);
        assert_eq!(cbrt_e9(part(1, 64)).unwrap(), 250_000_000);
        assert_eq!(cbrt_e9(part(2, 1)).unwrap(), 1_259_921_049);
        assert_eq!(sqrt_e9(part(-1, 4)).unwrap_err().cause, Cause::Overflow);
        assert_eq!(cbrt_e9(part(i64::MAX, 1)).unwrap_err().cause, Cause::Overflow);
    }
}
