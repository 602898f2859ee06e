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

/// The nearest whole number, a half away from nought.
#[must_use]
pub fn round(value: f64) -> f64 {
    libm::round(value)
}
