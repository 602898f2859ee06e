//! Fractions at the ends of their range: right or `Overflow`, against wide whole numbers.
use crate::config;
use handturn::Cause;
use handturn::number::{Fraction, nearest_with};
use num_bigint::BigInt;
use num_rational::BigRational;
use proptest::prelude::*;

fn part() -> impl Strategy<Value = i64> {
    prop_oneof![
        any::<i64>(),
        -1000..=1000_i64,
        prop_oneof![Just(i64::MIN), Just(i64::MAX), Just(i64::MIN + 1), Just(0), Just(1), Just(-1)],
        any::<i32>().prop_map(i64::from),
    ]
}

fn big(num: i64, den: i64) -> BigRational {
    BigRational::new(BigInt::from(num), BigInt::from(den))
}

/// The core's result is the wide one, or the wide one doesn't fit 64-bit parts.
fn agrees(
    found: Result<Fraction, handturn::Error>,
    wide: &BigRational,
) -> Result<(), TestCaseError> {
    let most = BigInt::from(i64::MAX);
    let fits = wide.numer().magnitude() <= most.magnitude() && wide.denom() <= &most;
    match found {
        Ok(found) => prop_assert_eq!(&big(found.num(), found.den()), wide),
        Err(error) => {
            prop_assert_eq!(error.cause, Cause::Overflow);
            prop_assert!(!fits, "{} fits", wide);
        }
    }
    Ok(())
}

proptest! {
    #![proptest_config(config(4000))]

    #[test]
    fn sums_are_right_or_overflow(a in part(), b in part(), c in part(), d in part()) {
        prop_assume!(b != 0 && d != 0);
        agrees(Fraction::new(a, b), &big(a, b))?;
        agrees(Fraction::new(c, d), &big(c, d))?;
        if let (Ok(x), Ok(y)) = (Fraction::new(a, b), Fraction::new(c, d)) {
            let (wide_x, wide_y) = (big(a, b), big(c, d));
            agrees(x.checked_add(y), &(&wide_x + &wide_y))?;
            agrees(x.checked_sub(y), &(&wide_x - &wide_y))?;
            agrees(x.checked_mul(y), &(&wide_x * &wide_y))?;
            if !y.is_zero() {
                agrees(x.checked_div(y), &(&wide_x / &wide_y))?;
                agrees(y.inverse(), &wide_y.recip())?;
            }
            prop_assert_eq!(x.cmp(&y), wide_x.cmp(&wide_y));
            prop_assert_eq!(BigInt::from(x.floor()), wide_x.floor().to_integer());
        }
    }

    #[test]
    fn the_nearest_fraction_beats_its_neighbours(a in part(), b in part(), most in 1..=100_000_i64) {
        prop_assume!(b != 0);
        let Ok(sought) = Fraction::new(a, b) else { return Ok(()) };
        let Ok(near) = nearest_with(sought, most) else { return Ok(()) };
        prop_assert!(near.fraction.den() <= most);
        let off = |num: &BigInt, den: i64| {
            let tried = BigRational::new(num.clone(), BigInt::from(den));
            let off = tried - big(sought.num(), sought.den());
            if off < BigRational::from_integer(BigInt::from(0)) { -off } else { off }
        };
        let found = off(&BigInt::from(near.fraction.num()), near.fraction.den());
        for den in (1..=most.min(60)).chain((most - 60).max(1)..=most) {
            let num = (big(sought.num(), sought.den()) * BigInt::from(den)).round().to_integer();
            prop_assert!(found <= off(&num, den), "{num}/{den} is nearer");
        }
    }
}
