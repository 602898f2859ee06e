//! Angles and lengths: types, reading what people type, writing what people read.
mod angle;
pub(crate) mod given;
mod length;
pub mod read;
#[cfg(test)]
mod read_tests;
pub(crate) mod scan;
pub mod sizes;
pub mod write;

pub use angle::{ARCSEC_PER_TURN, Angle};
pub use length::Length;
