//! The small sums there are: one file a sum, listed here by what the hands do.
mod allowance;
mod bars;
mod bend;
mod centred;
mod chain;
mod chamfer;
mod corners;
mod counterbore;
mod countersink;
mod curves;
mod dials;
mod dovetail;
mod fit;
mod former;
mod joggle;
mod keyway;
mod knurl;
mod point;
mod pull;
mod push;
mod ring;
mod rivet;
mod sheet;
mod shrink;
mod sine;
mod speed;
mod square;
mod stacked;
mod tapers;
mod temper;
mod tilt;
mod turn;
mod vee;
mod wire;

use super::sum::Sum;

/// Every sum, in the order of the list within its group.
pub(crate) const EVERY: &[&Sum] = &[
    &tapers::TAPER,
    &tapers::TRIAL,
    &tapers::STANDARD,
    &tapers::DISKS,
    &curves::BALL,
    &curves::RADIUS,
    &tilt::SUM,
    &sine::SUM,
    &square::SUM,
    &centred::SUM,
    &ring::SUM,
    &keyway::SUM,
    &corners::SUM,
    &vee::SUM,
    &dovetail::SUM,
    &fit::SUM,
    &allowance::SUM,
    &shrink::SUM,
    &counterbore::SUM,
    &chain::SUM,
    &bend::SUM,
    &joggle::SUM,
    &knurl::SUM,
    &countersink::SUM,
    &chamfer::SUM,
    &speed::SUM,
    &point::SUM,
    &temper::SUM,
    &former::SUM,
    &push::SUM,
    &pull::SUM,
    &turn::SUM,
    &rivet::SUM,
    &curves::ARC,
];
