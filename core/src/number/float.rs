//! The one door to floats: only this file names the maths library, so page,
//! tests and board agree to the last bit.
use super::Fraction;

/// π.
pub const PI: f64 = core::f64::consts::PI;

/// `fraction` as a float, within one part in 2^52.
#[must_use]
#[expect(clippy::cast_precision_loss, reason = "this is the door to floats")]
pub fn of(fraction: Fraction) -> f64 {
    fraction.num() as f64 / fraction.den() as f64
}

/// `num / den` as a float, within three parts in 2^53.
#[must_use]
#[expect(clippy::cast_precision_loss, reason = "this is the door to floats")]
pub fn of_wide(num: i128, den: i128) -> f64 {
    num as f64 / den as f64
}

/// Sine of an angle in turns, within three parts in 2^53 of it.
#[must_use]
pub fn sin_turns(turns: f64) -> f64 {
    quarters(turns, 0)
}

/// Cosine of an angle in turns, within three parts in 2^53 of it.
#[must_use]
pub fn cos_turns(turns: f64) -> f64 {
    quarters(turns, 1)
}

/// Tangent of an angle in turns, away from a quarter of a turn: within two parts in 2^51 of it.
#[must_use]
pub fn tan_turns(turns: f64) -> f64 {
    sin_turns(turns) / cos_turns(turns)
}

/// The angle, in turns from −1/4 to 1/4, whose tangent is `tangent`.
#[must_use]
pub fn atan_turns(tangent: f64) -> f64 {
    libm::atan(tangent) / (2.0 * PI)
}

/// Sine of `turns` and `more` quarters of a turn. What is left beside the nearest
/// quarter is exact, at most an eighth of a turn, so a short series will do: a
/// library that takes angles in radians brings 5 kB for the rest of them.
#[expect(clippy::cast_possible_truncation, reason = "where it does not fit, no fraction is left")]
fn quarters(turns: f64, more: i64) -> f64 {
    let quarter = libm::round(turns * 4.0);
    let angle = (turns - quarter / 4.0) * (2.0 * PI);
    let odd = (quarter as i64).wrapping_add(more);
    // sin x = x (1 − x²/2·3 (1 − x²/4·5 (…))), cos x = 1 − x²/1·2 (1 − x²/3·4 (…)).
    let (factor, mut step) = if odd & 1 == 0 { (angle, 18.0) } else { (1.0, 17.0) };
    let mut sum = 1.0;
    while step > 0.0 {
        sum = 1.0 - angle * angle / (step * (step + 1.0)) * sum;
        step -= 2.0;
    }
    if odd & 2 == 0 { factor * sum } else { -factor * sum }
}

/// Square root; not a number below nought.
#[must_use]
pub fn sqrt(value: f64) -> f64 {
    libm::sqrt(value)
}

/// The nearest whole number, a half away from nought.
#[must_use]
pub fn round(value: f64) -> f64 {
    libm::round(value)
}

/// The multiple of `1/per` nearest to `value`, a half away from nought; `None`
/// where it does not fit or `value` is not a number.
#[must_use]
#[expect(
    clippy::cast_precision_loss,
    clippy::cast_possible_truncation,
    reason = "this is the door to floats; the range was just checked"
)]
pub fn nearest(value: f64, per: i64) -> Option<Fraction> {
    let scaled = libm::round(value * per as f64);
    // Whole numbers up to 2^53 are exact in a float.
    if scaled.is_nan() || scaled.abs() > 9_007_199_254_740_992.0 {
        return None;
    }
    Fraction::new(scaled as i64, per).ok()
}

/// The angle, in turns from −1/4 to 1/4, whose sine is `sine`; not a number beyond ±1.
#[must_use]
pub fn asin_turns(sine: f64) -> f64 {
    libm::asin(sine) / (2.0 * PI)
}

/// The angle, in turns from 0 to 1/2, whose cosine is `cosine`; not a number beyond ±1.
#[must_use]
pub fn acos_turns(cosine: f64) -> f64 {
    libm::acos(cosine) / (2.0 * PI)
}
