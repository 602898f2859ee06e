//! Words that formers, springs and rivets share.
use crate::words::about;
use handturn::bench::wire::Band;
use handturn::number::{Approx, float};

words! {
    STUFF = "Made of";
    MUSIC = "music wire";
    HARD_DRAWN = "hard-drawn";
    STAINLESS = "stainless";
    BRONZE = "bronze";
    BRASS = "brass";
    STRIP = "spring strip";
    MILD = "mild steel";
    COPPER = "soft copper";
    OWN = "own figures";
    WIRE = "Wire, mm or 20 swg";
    CARE = "Goggles on. Hold the tail until it is cut: bent and wound wire lets go at once. Wind slowly, by hand or at the lowest speed, and keep hands out of the coil.";
    FROM_MEMORY = "Strength and stiffness are handbook bands from memory: try one first.";
    A228 = "Strength by the table of ASTM A228; stiffness is a handbook band from memory.";
}

/// A band of figures.
#[must_use]
pub fn band(band: Band, places: u8) -> String {
    if band.most - band.least < 0.5e-3 {
        return about(band.least, places);
    }
    [&*about(band.least, places), " to ", &about(band.most, places)].concat()
}

/// Two lengths with their unit.
#[must_use]
pub fn between(least: Approx, most: Approx) -> String {
    [&*about(least.value, 2), " to ", &about(most.value, 2), " mm"].concat()
}

/// A percentage, whole.
#[must_use]
pub fn percent(value: f64) -> String {
    about(float::round(value), 0) + " %"
}

/// What was reckoned with: strength, then stiffness.
#[must_use]
pub fn metal(tensile: Band, name: &str, modulus: Band) -> String {
    let giga = Band { least: modulus.least / 1000.0, most: modulus.most / 1000.0 };
    [
        "Tensile strength ",
        &*band(tensile, 0),
        " MPa; ",
        name,
        " ",
        &band(giga, 0),
        " GPa, the middle taken.",
    ]
    .concat()
}
