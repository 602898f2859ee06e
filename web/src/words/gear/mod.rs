//! The words of the Gear room: here what several kinds of teeth say.
pub mod bevel;
pub mod check;
pub mod cutter;
pub mod pair;
pub mod rack;
pub mod shaped;
pub mod slanted;
pub mod straight;
pub mod tooth;
pub mod trial;
pub mod worm;

use super::{about, angle, decimal};
use handturn::gear::telling::Near;
use handturn::gear::{DepthRule, Size, Tooth};
use handturn::measure::Length;
use handturn::number::Fraction;

words! {
    GEAR = "Gear";
    WHICH_WHEEL = "Which wheel";
    TEETH_ARE = "Teeth:";
    STRAIGHT = "Straight";
    SLANTED = "Slanted";
    WORM_AND_WHEEL = "Worm and wheel";
    ON_A_CONE = "On a cone";
    ALONG_A_BAR = "Along a bar";
    BLANK = "Blank";
    CUTTER = "Cutter";
    DEPTH = "Depth";
    CHECK = "Check";

    TEETH = "Number of teeth";
    SIZE_BY = "Size given by";
    BY_MODULE = "Module";
    BY_DP = "DP";
    BY_OUTSIDE = "Measured";
    OUTSIDE_MM = "Outside, mm";
    NEAREST = "Nearest usual sizes";
    OUTSIDE_WHY = "Of a standard wheel the outside is teeth and two, times the module. Press one to take it.";
    MODULE_MM = "Module, mm";
    DP = "Diametral pitch";
    IN_THIS_JOB = "In this job: clock wheels";
    PRESSURE_ANGLE = "Pressure angle";
    OWN_PRESSURE_ANGLE = "Pressure angle, degrees";
    OWN = "Own";
    DEPTH_RULE = "Rule for the depth";
    RULE_USUAL = "Usual";
    RULE_COARSE = "2.25 m";
    RULE_OLD = "2.157 m";
    RULE_FINE = "2.2 m + 2 thou";
    ADDENDUM = "Addendum, in modules";
    DEDENDUM = "Dedendum, in modules";
    MORE_RULE = "More: depth rule";
    MORE = "More: depth rule, shift, thinning";

    CUT_CARE = "Cutter clear of the work before the handle moves. Clamp on to cut, off to move. Fingers out, guard on.";
    MAKERS_CARE = "The machine maker’s manual and local rules go first.";
}

/// All labels, for the test that reads them.
#[cfg(test)]
pub(crate) const EVERY: [&[&str]; 12] = [
    ALL,
    bevel::ALL,
    check::ALL,
    cutter::ALL,
    pair::ALL,
    shaped::ALL,
    rack::ALL,
    slanted::ALL,
    straight::ALL,
    tooth::ALL,
    trial::ALL,
    worm::ALL,
];

/// The heading over the answer.
#[must_use]
pub fn heading(name: &str, stale: bool) -> String {
    [if stale { "Last good answer: " } else { "" }, name].concat()
}

/// A wheel by its teeth and their size: both sizes, the one given first.
#[must_use]
pub fn wheel_name(teeth: u32, tooth: &Tooth) -> String {
    [
        &super::grouped(teeth.into()),
        " teeth, ",
        &size(tooth.size),
        ", ",
        &angle(tooth.pressure_angle),
    ]
    .concat()
}

/// A size as given, and as the other way of giving it reads.
#[must_use]
pub fn size(size: Size) -> String {
    let module = size.module().map(Length::mm).unwrap_or(Fraction::ZERO);
    match size {
        Size::Module(_) => {
            let dp = Fraction::new(127, 5).and_then(|inch| inch.checked_div(module));
            let (equals, dp) = figure(dp.unwrap_or(Fraction::ZERO), 3);
            ["module ", &decimal(module, 4), " (", equals, dp.as_str(), " DP)"].concat()
        }
        Size::DiametralPitch(dp) => {
            let (equals, module) = figure(module, 4);
            [&decimal(dp, 4), " DP (", equals, "module ", &module, ")"].concat()
        }
    }
}

/// A size as given alone.
#[must_use]
pub fn size_alone(size: Size) -> String {
    match size {
        Size::Module(module) => ["Module ", &decimal(module.mm(), 4)].concat(),
        Size::DiametralPitch(pitch) => decimal(pitch, 4) + " DP",
    }
}

/// A size as a value: `module 1`, `dp 24`.
#[must_use]
pub fn size_value(size: Size) -> String {
    match size {
        Size::Module(module) => ["module ", &decimal(module.mm(), 4)].concat(),
        Size::DiametralPitch(pitch) => ["dp ", &decimal(pitch, 4)].concat(),
    }
}

/// How far a measured outside is from a size's own.
#[must_use]
pub fn over_by(near: &Near) -> String {
    if near.over.mm().is_zero() {
        return "exactly".to_owned();
    }
    let size = super::mm(Length::from_mm(near.over.mm().abs()));
    [&*size, " mm ", if near.over.mm().is_negative() { "under" } else { "over" }].concat()
}

/// A value in decimals, with `≈` before it where places are left out.
fn figure(value: Fraction, places: u8) -> (&'static str, String) {
    let scaled = value.times(10_i64.pow(u32::from(places)));
    let whole = scaled.is_ok_and(Fraction::is_whole);
    (if whole { "" } else { "≈ " }, decimal(value, places))
}

/// The rule for the depth in a sentence, and where it stands.
#[must_use]
pub fn rule(rule: DepthRule) -> String {
    match rule {
        DepthRule::Old => {
            "2.157 modules, the old rule of 14½° cutters (NAVEDTRA 14345, appendix IV)."
        }
        DepthRule::Coarse => "2.25 modules (ISO 53; 20° teeth coarser than 20 DP).",
        DepthRule::Fine => "2.2 modules and 0.002 in (20 DP and finer).",
        DepthRule::Own { addendum, dedendum } => {
            let parts = [addendum, dedendum].map(|part| decimal(part, 4));
            return [&parts[0], " and ", &parts[1], " modules, your own rule."].concat();
        }
    }
    .to_owned()
}

/// What to divide, on its button.
#[must_use]
pub fn divide_it(parts: u32) -> String {
    ["Divide it: ", &super::grouped(parts.into()), " parts"].concat()
}

/// A length for a dial: millimetres and thou.
#[must_use]
pub fn mm_thou(mm: f64) -> String {
    [&about(mm, 3), " mm, ", &super::thou(mm), " thou"].concat()
}

/// A computed angle in degrees, and to the nearest minute: `26.565°`, `26° 34′`.
#[must_use]
pub fn degrees_two_ways(value: f64) -> [String; 2] {
    let minutes = handturn::number::float::nearest(value, 60);
    let exact = minutes.and_then(|degrees| handturn::measure::Angle::from_degrees(degrees).ok());
    [about(value, 3) + "°", exact.map_or_else(String::new, super::angle_text)]
}

/// A computed angle in one line: `26.565° (26° 34′)`.
#[must_use]
pub fn degrees(value: f64) -> String {
    let [decimal, minutes] = degrees_two_ways(value);
    [&*decimal, " (", &minutes, ")"].concat()
}
