//! The small sums there are: one file a sum, listed here by what the hands do.
mod tilt;

use super::sum::Sum;

/// Every sum, in the order of the list within its group.
pub(crate) const EVERY: &[&Sum] = &[&tilt::SUM];
