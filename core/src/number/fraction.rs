//! An exact fraction with 64-bit parts. Every operation is checked: what does
//! not fit comes back as [`Cause::Overflow`], never as a wrapped number.
use crate::error::{Cause, Error, Field};
use core::cmp::Ordering;
use core::num::NonZeroU64;

/// An exact fraction, always reduced, its denominator above zero.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Fraction {
    num: i64,
    /// At most `i64::MAX`. Never nought, so that an `Option` of a fraction is no larger than one.
    den: NonZeroU64,
}

const OVERFLOW: Error = Error::new(Field::Fraction, Cause::Overflow);
const ZERO: Error = Error::new(Field::Fraction, Cause::Zero);

#[inline(always)]
const fn fits(found: Option<Fraction>) -> Result<Fraction, Error> {
    match found {
        Some(fraction) => Ok(fraction),
        None => Err(OVERFLOW),
    }
}

#[expect(
    clippy::arithmetic_side_effects,
    reason = "parts are i64 and widened to i128 first: a product is below 2^126, a sum of two \
              below 2^127; divisors are denominators, above zero"
)]
impl Fraction {
    /// Nought.
    pub const ZERO: Self = Self::whole(0);
    /// One.
    pub const ONE: Self = Self::whole(1);

    /// `num / den`, reduced.
    ///
    /// # Errors
    /// [`Cause::Zero`] when `den` is zero; [`Cause::Overflow`] when the reduced parts do not fit.
    #[inline(always)]
    pub const fn new(num: i64, den: i64) -> Result<Self, Error> {
        Self::whole(num).over(den)
    }

    /// The whole number `n`.
    #[must_use]
    pub const fn whole(n: i64) -> Self {
        Self { num: n, den: NonZeroU64::MIN }
    }

    /// `num / den` from wide parts, reduced.
    ///
    /// # Errors
    /// As [`Fraction::new`].
    #[inline(always)]
    pub const fn from_wide(num: i128, den: i128) -> Result<Self, Error> {
        if den == 0 {
            return Err(ZERO);
        }
        fits(Self::reduced(num, den))
    }

    /// `None` where the reduced parts do not fit, or `den` is zero. Steps hand on
    /// no more than this and each public function puts the error to it: a result
    /// that carries an error everywhere would be most of the code of a sum.
    const fn reduced(num: i128, den: i128) -> Option<Self> {
        let (top, bottom) = (num.unsigned_abs(), den.unsigned_abs());
        let divisor = gcd_wide(top, bottom);
        let (Some(top), Some(bottom)) = (divided(top, divisor), divided(bottom, divisor)) else {
            return None;
        };
        const MOST: u128 = i64::MAX as u128;
        if top > MOST || bottom > MOST {
            return None;
        }
        #[expect(clippy::cast_possible_truncation, reason = "both were just checked to fit")]
        let (top, bottom) = (top as i64, bottom as u64);
        let num = if (num < 0) == (den < 0) { top } else { -top };
        match NonZeroU64::new(bottom) {
            Some(den) => Some(Self { num, den }),
            None => None,
        }
    }

    /// Numerator of the reduced fraction; it carries the sign.
    #[must_use]
    pub const fn num(self) -> i64 {
        self.num
    }

    /// Denominator of the reduced fraction, above zero.
    #[must_use]
    #[expect(clippy::cast_possible_wrap, reason = "it is at most `i64::MAX`")]
    pub const fn den(self) -> i64 {
        self.den.get() as i64
    }

    /// `self + rhs`.
    ///
    /// # Errors
    /// [`Cause::Overflow`].
    #[inline(always)]
    pub const fn checked_add(self, rhs: Self) -> Result<Self, Error> {
        fits(self.sum(rhs))
    }

    /// `self − rhs`.
    ///
    /// # Errors
    /// [`Cause::Overflow`].
    #[inline(always)]
    pub const fn checked_sub(self, rhs: Self) -> Result<Self, Error> {
        fits(self.difference(rhs))
    }

    /// `self × rhs`.
    ///
    /// # Errors
    /// [`Cause::Overflow`].
    #[inline(always)]
    pub const fn checked_mul(self, rhs: Self) -> Result<Self, Error> {
        fits(self.product(rhs))
    }

    /// `self ÷ rhs`.
    ///
    /// # Errors
    /// [`Cause::Zero`] when `rhs` is nought, [`Cause::Overflow`].
    #[inline(always)]
    pub const fn checked_div(self, rhs: Self) -> Result<Self, Error> {
        if rhs.num == 0 {
            return Err(ZERO);
        }
        fits(self.quotient(rhs))
    }

    /// `self × n`.
    ///
    /// # Errors
    /// [`Cause::Overflow`].
    #[inline(always)]
    pub const fn times(self, n: i64) -> Result<Self, Error> {
        self.checked_mul(Self::whole(n))
    }

    /// `self ÷ n`.
    ///
    /// # Errors
    /// [`Cause::Zero`] when `n` is zero, [`Cause::Overflow`].
    #[inline(always)]
    pub const fn over(self, n: i64) -> Result<Self, Error> {
        self.checked_div(Self::whole(n))
    }

    /// `1 ÷ self`.
    ///
    /// # Errors
    /// [`Cause::Zero`] when `self` is nought.
    #[inline(always)]
    pub const fn inverse(self) -> Result<Self, Error> {
        Self::ONE.checked_div(self)
    }

    /// `−self`. The parts never hold `i64::MIN`, so this always fits.
    #[must_use]
    pub const fn negated(self) -> Self {
        Self { num: self.num.saturating_neg(), den: self.den }
    }

    /// The magnitude of `self`.
    #[must_use]
    pub const fn abs(self) -> Self {
        if self.num < 0 { self.negated() } else { self }
    }

    /// The greatest whole number not above `self`.
    #[must_use]
    pub const fn floor(self) -> i64 {
        // The denominator is never zero, but a compiler can't see that: no way to panic is left.
        match self.num.checked_div_euclid(self.den()) {
            Some(floor) => floor,
            None => 0,
        }
    }

    /// What is left of `self` above its [`floor`](Self::floor): `0 <= part < 1`.
    #[must_use]
    pub const fn part(self) -> Self {
        match self.num.checked_rem_euclid(self.den()) {
            Some(num) => Self { num, den: self.den },
            None => Self::ZERO,
        }
    }

    /// The nearest whole number and what was left over (`self − whole`);
    /// a half goes up, towards plus infinity.
    ///
    /// # Errors
    /// [`Cause::Overflow`] at the very end of the range.
    pub const fn nearest(self) -> Result<(i64, Self), Error> {
        let (floor, part, den) = (self.floor(), self.part().num as i128, self.den() as i128);
        if part * 2 < den {
            return Ok((floor, self.part()));
        }
        let Some(up) = floor.checked_add(1) else { return Err(OVERFLOW) };
        match Self::from_wide(part - den, den) {
            Ok(left) => Ok((up, left)),
            Err(error) => Err(error),
        }
    }

    /// Whether `self` is nought.
    #[must_use]
    pub const fn is_zero(self) -> bool {
        self.num == 0
    }

    /// Whether `self` is a whole number.
    #[must_use]
    pub const fn is_whole(self) -> bool {
        self.den() == 1
    }

    /// Whether `self` is below nought.
    #[must_use]
    pub const fn is_negative(self) -> bool {
        self.num < 0
    }

    /// The parts, where both fit in 32 bits: their products need no 128.
    fn small(self) -> Option<(i64, i64)> {
        let (num, den) = (i32::try_from(self.num).ok()?, i32::try_from(self.den.get()).ok()?);
        Some((i64::from(num), i64::from(den)))
    }

    const fn wide(self, rhs: Self) -> (i128, i128, i128, i128) {
        (self.num as i128, self.den() as i128, rhs.num as i128, rhs.den() as i128)
    }

    const fn sum(self, rhs: Self) -> Option<Self> {
        let (a, b, c, d) = self.wide(rhs);
        Self::reduced(a * d + c * b, b * d)
    }

    const fn difference(self, rhs: Self) -> Option<Self> {
        let (a, b, c, d) = self.wide(rhs);
        Self::reduced(a * d - c * b, b * d)
    }

    const fn product(self, rhs: Self) -> Option<Self> {
        let (a, b, c, d) = self.wide(rhs);
        Self::reduced(a * c, b * d)
    }

    const fn quotient(self, rhs: Self) -> Option<Self> {
        let (a, b, c, d) = self.wide(rhs);
        Self::reduced(a * d, b * c)
    }
}

impl Ord for Fraction {
    #[expect(clippy::arithmetic_side_effects, reason = "i32 parts as i64, or i64 parts widened")]
    fn cmp(&self, other: &Self) -> Ordering {
        if let (Some((a, b)), Some((c, d))) = (self.small(), other.small()) {
            return (a * d).cmp(&(c * b));
        }
        let (a, b, c, d) = self.wide(*other);
        (a * d).cmp(&(c * b))
    }
}

impl PartialOrd for Fraction {
    fn partial_cmp(&self, other: &Self) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}

impl core::fmt::Display for Fraction {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        if self.is_whole() {
            return write!(f, "{}", self.num);
        }
        write!(f, "{}/{}", self.num, self.den())
    }
}

/// `a ÷ b`, by 64-bit division where both fit, as nearly all do.
const fn divided(a: u128, b: u128) -> Option<u128> {
    const NARROW: u128 = u64::MAX as u128;
    if a > NARROW || b > NARROW {
        return a.checked_div(b);
    }
    #[expect(clippy::cast_possible_truncation, reason = "both were just checked to fit")]
    match (a as u64).checked_div(b as u64) {
        Some(found) => Some(found as u128),
        None => None,
    }
}

/// 64-bit division is many times quicker than 128-bit: leave the wide path as soon as both fit.
const fn gcd_wide(mut a: u128, mut b: u128) -> u128 {
    const NARROW: u128 = u64::MAX as u128;
    while a > NARROW || b > NARROW {
        match a.checked_rem(b) {
            Some(rest) => {
                a = b;
                b = rest;
            }
            None => return a,
        }
    }
    #[expect(clippy::cast_possible_truncation, reason = "both were just checked to fit")]
    let narrow = super::gcd(a as u64, b as u64);
    narrow as u128
}

#[cfg(feature = "serde")]
mod as_pair {
    use super::Fraction;
    use serde::de::Error;
    use serde::{Deserialize, Deserializer, Serialize, Serializer};

    impl Serialize for Fraction {
        fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
            (self.num, self.den()).serialize(serializer)
        }
    }

    impl<'de> Deserialize<'de> for Fraction {
        fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
            let (num, den) = Deserialize::deserialize(deserializer)?;
            Fraction::new(num, den).map_err(D::Error::custom)
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn f(num: i64, den: i64) -> Fraction {
        Fraction::new(num, den).unwrap()
    }

    #[test]
    fn small_domain_agrees_with_plain_integers() {
        for (a, b) in (-12..=12).flat_map(|a| (1..=9).map(move |b| (a, b))) {
            for (c, d) in (-12..=12).flat_map(|c| (1..=9).map(move |d| (c, d))) {
                let (x, y) = (f(a, b), f(c, d));
                let same = |r: Fraction, num: i64, den: i64| r.num() * den == num * r.den();
                assert!(same(x.checked_add(y).unwrap(), a * d + c * b, b * d));
                assert!(same(x.checked_sub(y).unwrap(), a * d - c * b, b * d));
                assert!(same(x.checked_mul(y).unwrap(), a * c, b * d));
                assert_eq!(x.cmp(&y), (a * d).cmp(&(c * b)));
                match x.checked_div(y) {
                    Ok(q) => assert!(same(q, a * d, b * c)),
                    Err(e) => assert_eq!((e.cause, c), (Cause::Zero, 0)),
                }
            }
            let (whole, left) = f(a, b).nearest().unwrap();
            assert_eq!(Fraction::whole(whole).checked_add(left).unwrap(), f(a, b));
            assert!(left < f(1, 2) && left >= f(-1, 2), "{a}/{b}");
            let (floor, part) = (f(a, b).floor(), f(a, b).part());
            assert_eq!(Fraction::whole(floor).checked_add(part).unwrap(), f(a, b));
            assert!(part >= Fraction::ZERO && part < Fraction::ONE);
        }
    }

    #[test]
    fn the_ends_of_the_range_say_so() {
        let big = f(i64::MAX, 1);
        let tiny = f(1, i64::MAX);
        for overflow in [
            big.checked_add(Fraction::ONE),
            big.checked_mul(big),
            tiny.checked_mul(tiny),
            tiny.checked_add(f(1, i64::MAX - 1)),
            Fraction::new(i64::MIN, 1),
            Fraction::new(1, i64::MIN),
            big.negated().checked_sub(f(2, 1)),
        ] {
            assert_eq!(overflow.map_err(|e| e.cause), Err(Cause::Overflow));
        }
        assert_eq!(Fraction::new(1, 0).map_err(|e| e.cause), Err(Cause::Zero));
        assert_eq!(f(i64::MIN, i64::MIN), Fraction::ONE);
        assert_eq!(f(i64::MIN, 2).num(), i64::MIN / 2);
        assert!(big > tiny && big.negated() < tiny.negated());
    }
}
