//! Writing what people read: exact values at a stated number of places.
//! Rounding is to the nearest last place, a half away from nought.
use super::Angle;
use crate::number::{Approx, Fraction, float};
use core::fmt;

/// A fraction in decimals, `places` after the point (at most 9). The sign is a
/// true minus sign; a value that rounds to nought carries none.
#[derive(Clone, Copy, Debug)]
pub struct Decimal {
    /// The value.
    pub value: Fraction,
    /// Digits after the point.
    pub places: u8,
}

/// An angle as degrees, minutes and seconds, seconds with `places` decimals;
/// parts that are nought at the end are left out: `208° 7′ 30″`, `21°`.
#[derive(Clone, Copy, Debug)]
pub struct Dms {
    /// The angle.
    pub angle: Angle,
    /// Digits after the point of the seconds.
    pub places: u8,
}

/// `places` that show `value` with `digits` significant figures (at most 9 places).
#[must_use]
pub fn places_for(value: Fraction, digits: u8) -> u8 {
    let mut places = digits.saturating_sub(1);
    let mut bound = Fraction::ONE;
    let value = value.abs();
    if value.is_zero() {
        return places.min(9);
    }
    while places > 0 && bound.times(10).is_ok_and(|ten| value >= ten) {
        bound = bound.times(10).unwrap_or(bound);
        places = places.saturating_sub(1);
    }
    while value < bound && places < 9 {
        match bound.over(10) {
            Ok(lower) => bound = lower,
            Err(_) => return places,
        }
        places = places.saturating_add(1);
    }
    places
}

/// The fraction nearest to an approximate value, `places` after the point, for
/// writing it; `None` where it does not fit.
#[must_use]
pub fn rounded(value: Approx, places: u8) -> Option<Fraction> {
    float::nearest(value.value, power(places)?)
}

/// `value × 10^places` to the nearest whole number, a half away from nought.
fn scaled(value: Fraction, places: u8) -> Option<(bool, u64)> {
    let (num, den) = (i128::from(value.num()), i128::from(value.den()));
    let num = num.checked_abs()?.checked_mul(i128::from(power(places)?))?;
    let twice = num.checked_mul(2)?.checked_add(den)?;
    let whole = twice.checked_div(den.checked_mul(2)?)?;
    Some((value.is_negative() && whole != 0, u64::try_from(whole).ok()?))
}

fn power(places: u8) -> Option<i64> {
    10_i64.checked_pow(u32::from(places.min(9)))
}

impl fmt::Display for Decimal {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Some((minus, scaled)) = scaled(self.value, self.places) else {
            return write!(f, "{}", self.value);
        };
        if minus {
            f.write_str("−")?;
        }
        decimals(f, scaled, self.places.min(9))
    }
}

/// `scaled ÷ 10^places`, digit by digit.
fn decimals(f: &mut fmt::Formatter<'_>, scaled: u64, places: u8) -> fmt::Result {
    let power = power(places).and_then(|p| u64::try_from(p).ok()).unwrap_or(1);
    write!(f, "{}", scaled.checked_div(power).unwrap_or(0))?;
    if places > 0 {
        f.write_str(".")?;
    }
    let mut rest = scaled.checked_rem(power).unwrap_or(0);
    let mut unit = power;
    for _ in 0..places {
        unit = unit.checked_div(10).unwrap_or(1).max(1);
        write!(f, "{}", rest.checked_div(unit).unwrap_or(0))?;
        rest = rest.checked_rem(unit).unwrap_or(0);
    }
    Ok(())
}

impl fmt::Display for Dms {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let places = self.places.min(9);
        let arcsec = self.angle.arcsec().ok().and_then(|arcsec| scaled(arcsec, places));
        let unit = power(places).and_then(|p| u64::try_from(p).ok()).unwrap_or(1);
        let Some((minus, arcsec)) = arcsec else {
            return write!(f, "{} turns", self.angle.turns());
        };
        let minute = unit.saturating_mul(60);
        let degree = minute.saturating_mul(60);
        let degrees = arcsec.checked_div(degree).unwrap_or(0);
        let rest = arcsec.checked_rem(degree).unwrap_or(0);
        let minutes = rest.checked_div(minute).unwrap_or(0);
        let seconds = rest.checked_rem(minute).unwrap_or(0);
        if minus {
            f.write_str("−")?;
        }
        write!(f, "{degrees}°")?;
        if minutes != 0 || seconds != 0 {
            write!(f, " {minutes}′")?;
        }
        if seconds != 0 {
            f.write_str(" ")?;
            let (seconds, places) = without_noughts(seconds, places);
            decimals(f, seconds, places)?;
            f.write_str("″")?;
        }
        Ok(())
    }
}

/// Leaves out noughts at the end of decimals.
fn without_noughts(mut scaled: u64, mut places: u8) -> (u64, u8) {
    while places > 0 && scaled.checked_rem(10) == Some(0) {
        scaled = scaled.checked_div(10).unwrap_or(scaled);
        places = places.saturating_sub(1);
    }
    (scaled, places)
}

#[cfg(test)]
mod tests {
    use super::*;
    extern crate std;
    use std::string::ToString;

    #[track_caller]
    fn check(num: i64, den: i64, places: u8, written: &str) {
        let value = Fraction::new(num, den).unwrap();
        assert_eq!(Decimal { value, places }.to_string(), written);
    }

    #[test]
    fn decimals_are_rounded_to_the_nearest() {
        check(1, 3, 3, "0.333");
        check(2, 3, 3, "0.667");
        check(-1, 2, 0, "−1");
        check(-1, 2000, 2, "0.00");
        check(1, 8, 2, "0.13");
        check(40, 1, 0, "40");
        check(508, 5, 3, "101.600");
        check(i64::MAX, 1, 0, "9223372036854775807");
        check(i64::MAX, 1, 3, "9223372036854775807");
    }

    #[test]
    fn angles_carry_and_leave_out_noughts() {
        let dms = |num, den, places| {
            let angle = Angle::from_turns(Fraction::new(num, den).unwrap());
            Dms { angle, places }.to_string()
        };
        assert_eq!(dms(37, 64, 1), "208° 7′ 30″");
        assert_eq!(dms(-7, 120, 1), "−21°");
        assert_eq!(dms(1, 127, 1), "2° 50′ 4.7″");
        assert_eq!(dms(1, 720, 0), "0° 30′");
        assert_eq!(dms(35_999_999, 36_000_000, 0), "360°");
        assert_eq!(dms(1, 1_296_000, 2), "0° 0′ 1″");
    }

    #[test]
    fn figures_shown_follow_the_size() {
        let places = |num, den| places_for(Fraction::new(num, den).unwrap(), 3);
        assert_eq!(places(328, 1), 0);
        assert_eq!(places(129, 10), 1);
        assert_eq!(places(61, 1000), 4);
        assert_eq!(places(1, 1), 2);
        assert_eq!(places(12_345, 1), 0);
        assert_eq!(places(0, 1), 2);
    }
}
