//! Fractions done the plain way, apart from the core: wide whole numbers,
//! reduced by trial, no cleverness. What does not fit panics.
use handturn::number::Fraction;
use std::cmp::Ordering;

/// A fraction, reduced, its denominator above zero.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Ratio {
    /// Numerator.
    pub num: i128,
    /// Denominator.
    pub den: i128,
}

/// Greatest common divisor by repeated remainder; in 64 bits where they hold
/// both, which is many times quicker.
#[must_use]
pub fn common(a: i128, b: i128) -> i128 {
    if let (Ok(mut a), Ok(mut b)) = (u64::try_from(a.abs()), u64::try_from(b.abs())) {
        while b != 0 {
            (a, b) = (b, a % b);
        }
        return i128::from(a);
    }
    if b == 0 { a.abs() } else { common(b, a % b) }
}

impl Ratio {
    /// Nought.
    pub const ZERO: Self = Self { num: 0, den: 1 };

    /// `num / den`, reduced.
    ///
    /// # Panics
    /// When `den` is zero.
    #[must_use]
    pub fn new(num: i128, den: i128) -> Self {
        assert_ne!(den, 0, "{num} over nought");
        let shared = common(num, den).max(1) * den.signum();
        if shared == 1 {
            return Self { num, den };
        }
        Self { num: num / shared, den: den / shared }
    }

    /// The core's fraction, taken apart.
    #[must_use]
    pub fn of(fraction: Fraction) -> Self {
        Self::new(i128::from(fraction.num()), i128::from(fraction.den()))
    }

    /// `self + other`.
    #[must_use]
    pub fn plus(self, other: Self) -> Self {
        let num = wide(self.num, other.den).checked_add(wide(other.num, self.den));
        Self::new(num.expect("too wide"), wide(self.den, other.den))
    }

    /// `self − other`.
    #[must_use]
    pub fn minus(self, other: Self) -> Self {
        self.plus(Self { num: -other.num, den: other.den })
    }

    /// `self × other`.
    #[must_use]
    pub fn by(self, other: Self) -> Self {
        Self::new(wide(self.num, other.num), wide(self.den, other.den))
    }

    /// `self ÷ other`.
    #[must_use]
    pub fn over(self, other: Self) -> Self {
        Self::new(wide(self.num, other.den), wide(self.den, other.num))
    }

    /// The magnitude.
    #[must_use]
    pub fn size(self) -> Self {
        Self { num: self.num.abs(), den: self.den }
    }

    /// Whether it is a whole number.
    #[must_use]
    pub fn whole(self) -> bool {
        self.den == 1
    }
}

impl PartialOrd for Ratio {
    fn partial_cmp(&self, other: &Self) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}

impl Ord for Ratio {
    fn cmp(&self, other: &Self) -> Ordering {
        wide(self.num, other.den).cmp(&wide(other.num, self.den))
    }
}

fn wide(a: i128, b: i128) -> i128 {
    a.checked_mul(b).expect("too wide")
}
