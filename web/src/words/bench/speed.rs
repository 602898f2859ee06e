//! Words of spindle speeds.
use crate::words::about;
use handturn::bench::speed::At;
use handturn::number::Approx;

words! {
    NAME = "Spindle speed";
    ABOUT = "From the speeds the machine has, a start";
    ALSO = "rpm revs cutting speed surface feet sfm turning drilling reaming milling";
    DOING = "Work";
    TURNING = "turning";
    DRILLING = "drilling";
    REAMING = "reaming";
    MILLING = "milling";
    MATERIAL = "Material";
    MILD = "mild steel";
    MEDIUM = "medium carbon steel";
    ALLOY = "alloy steel";
    TOOL_STEEL = "tool, silver steel";
    STAINLESS = "stainless";
    CAST_IRON = "cast iron";
    BRASS = "brass";
    BRONZE = "bronze";
    ALUMINIUM = "aluminium";
    OWN = "my own speed";
    TOOL = "Tool";
    HIGH_SPEED = "high-speed steel";
    CARBIDE = "carbide";
    CARBON = "carbon steel";
    SPEED = "Cutting speed";
    UNIT = "In";
    METRES = "m/min";
    FEET = "ft/min";
    DIAMETER = "Diameter of work, drill or cutter, mm";
    SPEEDS = "Speeds, if not the Shop’s";
    SET = "Set";
    FROM = "Band, from";
    TO = "Band, to";
    BAND = "Cutting speed to start from";
    CUTS = "Cutting at";
    OF_YOURS = "The machine’s speeds";
    RPM = "rpm";
    LIES = "Lies";
    WITHIN = "in the band";
    BELOW = "slower";
    ABOVE = "faster";
    NOT_KNOWN = "No speeds of this machine are listed in Shop.";
    TOO_FAST = "All the machine’s speeds are faster than the band: take the slowest with care, or another tool.";
    START_SAYS = "A starting point: listen, look at the chip, and change. Long, thin or shaky work wants less.";
    REAM_SAYS = "Reaming at half the speed of drilling; feed freely, never backwards.";
    CARE = "Key out of the chuck, guard on. No faster than chuck, work and machine are marked for.";
    SOURCE = "Navy training course 14345 (drills of high-speed steel; carbon half, carbide two to three times); turning, milling and reaming from it by common practice";
}

/// A band of turns in a minute.
#[must_use]
pub(crate) fn band(least: Approx, greatest: Approx) -> String {
    let (from, to) = (about(least.value, 0), about(greatest.value, 0));
    if from == to { to + " rpm" } else { [&*from, " to ", &to, " rpm"].concat() }
}

/// The speed to set.
#[must_use]
pub(crate) fn set(rpm: u32) -> String {
    crate::words::grouped(rpm.into()) + " rpm"
}

/// A cutting speed, given in millimetres a minute.
#[must_use]
pub(crate) fn cuts(mm: f64) -> String {
    [&*about(mm / 1000.0, 1), " m/min, ", &about(mm / 304.8, 0), " ft/min"].concat()
}

/// Where a speed lies.
#[must_use]
pub(crate) const fn lies(at: At) -> &'static str {
    match at {
        At::Below => BELOW,
        At::Within => WITHIN,
        At::Above => ABOVE,
    }
}

/// The working.
#[must_use]
pub(crate) fn working(slow: f64, fast: f64, diameter: f64, turns: (f64, f64)) -> Vec<String> {
    let line = |speed: f64, turns: f64| {
        let (speed, diameter) = (about(speed / 1000.0, 2), about(diameter, 3));
        ["1000 × ", &*speed, " ÷ (π × ", &diameter, ") = ", &about(turns, 1), " rpm"].concat()
    };
    let mut lines = vec!["Turns a minute = 1000 × m/min ÷ (π × diameter in mm)".to_owned()];
    lines.push(line(slow, turns.0));
    if slow < fast {
        lines.push(line(fast, turns.1));
    }
    lines
}

/// The question with its answer.
#[must_use]
pub(crate) fn title(diameter: f64, turns: &str) -> String {
    ["⌀ ", &*about(diameter, 2), " mm: ", turns].concat()
}
