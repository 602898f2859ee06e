//! How far a train is off a ratio wanted, in whole numbers.
//!
//! Drivers of product P over driven gears of product Q, wanted n/d: the train
//! gives P·d ÷ (Q·n) times what is wanted, which should be 1; with π in what is
//! wanted it should be π. All parts keep within 64 bits, their products within 128.
use crate::error::{Cause, Error, Field};
use crate::number::{Approx, Fraction, NEAR_PI, compare_pi, float};
use core::cmp::Ordering;

/// Greatest part of a ratio; products of three gears have 24 bits more.
const MOST: u64 = 1 << 36;
/// Greatest part of a ratio that is taken π times.
const MOST_WITH_PI: u64 = 1 << 18;

/// A relative error as a fraction, no train farther off counts.
pub(super) type Window = (u64, u64);

/// A ratio wanted, above nought.
#[derive(Clone, Copy)]
pub(super) struct Target {
    num: u64,
    den: u64,
    times_pi: bool,
    /// The ratio, with π as [`NEAR_PI`].
    near_num: u64,
    near_den: u64,
}

impl Target {
    pub(super) fn of(ratio: Fraction, times_pi: bool) -> Result<Self, Error> {
        let most = if times_pi { MOST_WITH_PI } else { MOST };
        let part = |n: i64| u64::try_from(n).ok().filter(|&n| n <= most);
        if ratio <= Fraction::ZERO {
            return Err(Error::new(Field::Ratio, Cause::Zero));
        }
        let (Some(num), Some(den)) = (part(ratio.num()), part(ratio.den())) else {
            return Err(Error::new(Field::Ratio, Cause::Overflow));
        };
        let (p, q) = if times_pi { NEAR_PI } else { (1, 1) };
        let (near_num, near_den) = (num.saturating_mul(p), den.saturating_mul(q));
        Ok(Self { num, den, times_pi, near_num, near_den })
    }

    /// What [`Self::under`] is for just the right driven gears.
    pub(super) fn over(&self, drivers: u32) -> u64 {
        u64::from(drivers).saturating_mul(self.near_den)
    }

    /// Below [`Self::over`] where the train gives too much.
    pub(super) fn under(&self, driven: u32) -> u64 {
        u64::from(driven).saturating_mul(self.near_num)
    }

    pub(super) fn miss(&self, drivers: u32, driven: u32) -> Miss {
        let top = u64::from(drivers).saturating_mul(self.den);
        let bottom = u64::from(driven).saturating_mul(self.num);
        if !self.times_pi {
            return Miss { top, bottom, above: top > bottom, times_pi: None };
        }
        let (over, under) = (self.over(drivers), self.under(driven));
        let diff = wide(over.abs_diff(under), UNITS);
        let rough = diff.checked_div(u128::from(under)).unwrap_or(u128::MAX);
        let rough = u64::try_from(rough).unwrap_or(u64::MAX);
        // The convergent is below π by less than four units.
        let above = if rough > SLACK || over < under {
            over > under
        } else {
            compare_pi(u128::from(top), u128::from(bottom)).is_gt()
        };
        Miss { top, bottom, above, times_pi: Some(rough) }
    }
}

/// One over the unit of a rough relative error.
const UNITS: u64 = 1 << 40;
/// How many units a rough error near nought may be off.
const SLACK: u64 = 8;

/// A convergent of π, right to one part in 2^153.
const FINE_PI: (i128, i128) = (436_681_609_736_090_076_010_871, 139_000_073_493_649_328_482_341);

/// By how much a train is off.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Miss {
    /// What the train gives, of what is wanted, as a fraction: to be 1, or π.
    top: u64,
    bottom: u64,
    /// Whether it is too much.
    above: bool,
    /// With π, the relative error in units, within [`slack`] of it.
    times_pi: Option<u64>,
}

/// How far a rough error may be off: the convergent's error grows with the train's ratio.
const fn slack(rough: u64) -> u64 {
    SLACK.saturating_add(rough >> 30)
}

impl Miss {
    pub(super) const fn is_exact(&self) -> bool {
        self.times_pi.is_none() && self.top == self.bottom
    }

    /// The nearer one is less.
    pub(super) fn compare(&self, other: &Self) -> Ordering {
        let (Some(rough), Some(others)) = (self.times_pi, other.times_pi) else {
            let side = |a: &Self, b: &Self| wide(a.top.abs_diff(a.bottom), b.bottom);
            return side(self, other).cmp(&side(other, self));
        };
        let apart = rough.abs_diff(others);
        if apart > slack(rough.max(others)).saturating_mul(2) {
            return rough.cmp(&others);
        }
        let (left, right) = (wide(self.top, other.bottom), wide(other.top, self.bottom));
        match (self.above, other.above) {
            (true, true) => left.cmp(&right),
            (false, false) => right.cmp(&left),
            // On either side of π the middle of the two decides.
            (above, _) => {
                let twice = wide(self.bottom, other.bottom).saturating_mul(2);
                let middle = compare_pi(left.saturating_add(right), twice);
                if above { middle } else { middle.reverse() }
            }
        }
    }

    /// A fraction that the relative error of no nearer train exceeds.
    pub(super) fn window(&self) -> Window {
        match self.times_pi {
            None => (self.top.abs_diff(self.bottom), self.bottom),
            Some(rough) => (rough.saturating_add(slack(rough).saturating_mul(3)), UNITS),
        }
    }

    /// Whether it is off by more than `most` parts in a million.
    pub(super) fn above(&self, most: u32) -> bool {
        let (off, of) = match self.times_pi {
            None => (self.top.abs_diff(self.bottom), self.bottom),
            Some(rough) => (rough, UNITS),
        };
        wide(off, 1_000_000) > wide(u64::from(most), of)
    }

    /// The relative error, exactly; `None` with π.
    pub(super) fn part(&self) -> Option<Fraction> {
        let (top, bottom) = (i128::from(self.top), i128::from(self.bottom));
        let part = Fraction::from_wide(top.saturating_sub(bottom), bottom).ok();
        part.filter(|_| self.times_pi.is_none())
    }

    /// The relative error times `factor`, signed, with its bound: four roundings.
    pub(super) fn times(&self, factor: Fraction) -> Approx {
        let (p, q) = if self.times_pi.is_some() { FINE_PI } else { (1, 1) };
        let wanted = i128::from(self.bottom).saturating_mul(p);
        let over = i128::from(self.top).saturating_mul(q).saturating_sub(wanted);
        let value = float::of_wide(over, wanted) * float::of(factor);
        Approx { value, bound: value.abs() * (4.0 * f64::EPSILON) }
    }
}

/// Whether a train is farther off than the window allows.
pub(super) fn beyond(window: Option<Window>, over: u64, under: u64) -> bool {
    window.is_some_and(|(off, of)| wide(over.abs_diff(under), of) > wide(off, under))
}

#[expect(clippy::arithmetic_side_effects, reason = "64-bit parts widened: below 2^128")]
fn wide(a: u64, b: u64) -> u128 {
    u128::from(a) * u128::from(b)
}
