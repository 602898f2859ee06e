//! Calls into `handturn::number`.
use crate::{any, keep};
use handturn::number::{self, Fraction, float};

/// Any fraction.
pub fn fraction() -> Fraction {
    Fraction::new(any(1), any(1)).unwrap_or(any(Fraction::ZERO))
}

pub fn calls() {
    let (a, b) = (fraction(), fraction());
    keep(Fraction::whole(any(1)));
    keep(Fraction::from_wide(any(1), any(1)));
    keep((Fraction::num(a), Fraction::den(a)));
    keep(Fraction::checked_add(a, b));
    keep(Fraction::checked_sub(a, b));
    keep(Fraction::checked_mul(a, b));
    keep(Fraction::checked_div(a, b));
    keep(Fraction::times(a, any(1)));
    keep(Fraction::over(a, any(1)));
    keep(Fraction::inverse(a));
    keep(Fraction::negated(a));
    keep(Fraction::abs(a));
    keep(Fraction::floor(a));
    keep(Fraction::part(a));
    keep(Fraction::nearest(a));
    keep(Fraction::is_zero(a));
    keep(Fraction::is_whole(a));
    keep(Fraction::is_negative(a));
    keep(a.cmp(&b));
    keep(number::nearest_with(a, any(1)));
    keep(number::gcd(any(1), any(1)));
    keep(number::lcm(any(1), any(1)));
    keep(number::bezout(any(1), any(1)));
    keep(number::mod_inverse(any(1), any(1)));
    keep(float::of(a));
    keep(float::sin_turns(any(1.0)));
    keep(float::cos_turns(any(1.0)));
    keep(float::round(any(1.0)));
    keep(float::nearest(any(1.0), any(1)));
}
