//! Sums of approximate values that carry their bounds along, so that no answer made
//! of them needs an error analysis of its own.
//!
//! Method: running error analysis. Each step adds what its operands' bounds do to its
//! result, to first order and at the worse end, and twice the rounding of a float
//! operation, which covers the rounding of the bound itself.
use super::{
    Approx, Fraction,
    float::{self, PI},
};

/// Twice what one operation of floats rounds by, relative to its result.
const STEP: f64 = f64::EPSILON;

impl Approx {
    /// `value`, meant exactly as it is.
    pub(crate) const fn exactly(value: f64) -> Self {
        Self { value, bound: 0.0 }
    }

    /// The float nearest to `fraction`.
    pub(crate) fn of(fraction: Fraction) -> Self {
        let value = float::of(fraction);
        Self { value, bound: 1.5 * STEP * value.abs() }
    }

    /// π.
    pub(crate) const fn pi() -> Self {
        Self { value: PI, bound: STEP }
    }

    /// `self + other`.
    pub(crate) fn plus(self, other: Self) -> Self {
        let value = self.value + other.value;
        Self { value, bound: self.bound + other.bound + STEP * value.abs() }
    }

    /// `self − other`.
    pub(crate) fn minus(self, other: Self) -> Self {
        self.plus(other.negated())
    }

    /// `−self`.
    pub(crate) fn negated(self) -> Self {
        Self { value: -self.value, ..self }
    }

    /// `self × other`.
    pub(crate) fn times(self, other: Self) -> Self {
        let value = self.value * other.value;
        let carried =
            self.value.abs() * other.bound + (other.value.abs() + other.bound) * self.bound;
        Self { value, bound: carried + STEP * value.abs() }
    }

    /// `self × factor`, a float that is meant as it is.
    pub(crate) fn by(self, factor: f64) -> Self {
        self.times(Self::exactly(factor))
    }

    /// `self ÷ other`; without bound where the divisor may be nought.
    pub(crate) fn over(self, other: Self) -> Self {
        let value = self.value / other.value;
        let least = other.value.abs() - other.bound;
        let carried = (self.bound + value.abs() * other.bound) / least;
        let bound = if least > 0.0 { carried + STEP * value.abs() } else { f64::INFINITY };
        Self { value, bound }
    }

    /// Square root; of what lies below nought within its bound it is nought.
    pub(crate) fn sqrt(self) -> Self {
        let value = float::sqrt(self.value.max(0.0));
        let least = float::sqrt((self.value - self.bound).max(0.0));
        let most = float::sqrt((self.value + self.bound).max(0.0));
        let carried = if value + least > 0.0 { self.bound / (value + least) } else { most };
        Self { value, bound: carried + STEP * value }
    }

    /// Sine of `self` turns.
    pub(crate) fn sin(self) -> Self {
        let (sine, cosine) = (float::sin_turns(self.value), float::cos_turns(self.value));
        Self {
            value: sine,
            bound: self.arc() * (cosine.abs() + self.arc()) + 1.5 * STEP * sine.abs(),
        }
    }

    /// Cosine of `self` turns.
    pub(crate) fn cos(self) -> Self {
        let (sine, cosine) = (float::sin_turns(self.value), float::cos_turns(self.value));
        Self {
            value: cosine,
            bound: self.arc() * (sine.abs() + self.arc()) + 1.5 * STEP * cosine.abs(),
        }
    }

    /// The angle in turns whose tangent is `self`.
    pub(crate) fn atan(self) -> Self {
        let value = float::atan_turns(self.value);
        let nearest = (self.value.abs() - self.bound).max(0.0);
        let carried = self.bound / (1.0 + nearest * nearest) / (2.0 * PI);
        Self { value, bound: carried + 2.0 * STEP * value.abs() }
    }

    /// The bound of an angle in turns, in radians.
    fn arc(self) -> f64 {
        self.bound * 2.0 * PI
    }
}
