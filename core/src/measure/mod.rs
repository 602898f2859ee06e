//! Angles and lengths as exact types.
mod angle;
mod length;

pub use angle::{ARCSEC_PER_TURN, Angle};
pub use length::Length;
