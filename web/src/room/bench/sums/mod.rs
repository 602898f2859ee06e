//! The small sums there are: one file a sum, listed here by what the hands do.
mod centred;
mod corners;
mod dovetail;
mod keyway;
mod ring;
mod sine;
mod stacked;
mod tilt;
mod vee;

use super::sum::Sum;

/// Every sum, in the order of the list within its group.
pub(crate) const EVERY: &[&Sum] = &[
    &tilt::SUM,
    &sine::SUM,
    &centred::SUM,
    &ring::SUM,
    &keyway::SUM,
    &corners::SUM,
    &vee::SUM,
    &dovetail::SUM,
];
