//! Words of the small sums: what they share, and a file for each.
pub mod allowance;
pub mod bend;
pub mod chain;
pub mod chamfer;
pub mod counterbore;
pub mod countersink;
pub mod fit;
pub mod former;
pub mod joggle;
pub mod knurl;
pub mod mill;
pub mod point;
pub mod rivet;
pub mod shrink;
pub mod speed;
pub mod spring;
pub mod temper;
pub mod tilt;
pub(crate) mod turning;
pub mod wire;

words! {
    BENCH = "Bench";
    ASKED = "What is asked";
    FIND = "Find a sum";
    BACK = "Back to all small sums";
    NONE_FOUND = "No sum goes by this word.";
    TO_SCALE = "Drawn to scale.";
    TURN = "Turn";
    MILL = "Mill";
    FIT = "Fit";
    WIRE = "Wire and sheet";
}

/// The labels of every sum, for the test that reads them.
#[cfg(test)]
pub(crate) const EVERY: &[&[&str]] = &[
    ALL,
    mill::ALL,
    tilt::ALL,
    fit::ALL,
    allowance::ALL,
    shrink::ALL,
    counterbore::ALL,
    chain::ALL,
    bend::ALL,
    joggle::ALL,
    chamfer::ALL,
    countersink::ALL,
    knurl::ALL,
    point::ALL,
    speed::ALL,
    temper::ALL,
    former::ALL,
    rivet::ALL,
    spring::ALL,
    wire::ALL,
    turning::shared::ALL,
    turning::taper::ALL,
    turning::trial::ALL,
    turning::standard::ALL,
    turning::disks::ALL,
    turning::steps::ALL,
    turning::arc::ALL,
];

/// How many sums were found.
#[must_use]
pub fn found(count: usize) -> String {
    if count == 1 {
        "1 sum found".to_owned()
    } else {
        [&*count.to_string(), " sums found"].concat()
    }
}

/// Where a rule stands printed.
#[must_use]
pub fn source(source: &str) -> String {
    ["Rule from: ", source, "."].concat()
}

/// A figure with its unit after it.
#[must_use]
pub fn with_unit(figure: &str, unit: &str) -> String {
    if unit.is_empty() { figure.to_owned() } else { [figure, " ", unit].concat() }
}

/// What a first figure is, said so where what is typed does not read.
#[must_use]
pub fn heading_of(label: &str, stale: bool) -> String {
    crate::words::gear::heading(label, stale)
}
