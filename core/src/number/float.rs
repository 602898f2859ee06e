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

/// Sine of an angle in turns.
#[must_use]
pub fn sin_turns(turns: f64) -> f64 {
    libm::sin(turns * 2.0 * PI)
}

/// Cosine of an angle in turns.
#[must_use]
pub fn cos_turns(turns: f64) -> f64 {
    libm::cos(turns * 2.0 * PI)
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
