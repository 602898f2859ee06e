//! Exact fractions, the best fraction under a limit, and the one door to floats.
mod best;
mod carry;
pub mod float;
mod fraction;
mod integer;
mod pi;

pub use best::{Near, nearest_with};
pub use fraction::Fraction;
pub use integer::{bezout, gcd, lcm, mod_inverse};
pub(crate) use pi::{NEAR_PI, compare_pi};

/// A computed value that is not exact: never passes for an exact one.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Approx {
    /// The value, in the unit its name or its documentation gives.
    pub value: f64,
    /// The true value lies within `value ± bound`.
    pub bound: f64,
}
