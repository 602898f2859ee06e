//! Words of hardening and tempering.
use handturn::bench::heat::{Glow, Quench, Temper, fahrenheit};

words! {
    NAME = "Harden and temper";
    ABOUT = "Heats and colours by steel and tool";
    ALSO = "hardening tempering colours colors quench heat treat silver steel spring straw blue drill rod anneal";
    STEEL = "Steel";
    SILVER = "silver steel";
    SILVER_OIL = "silver steel to 8 mm, in oil";
    CARBON = "carbon tool steel";
    OIL_STEEL = "gauge plate, O1";
    SPRING_STEEL = "spring steel";
    FOR = "For";
    SCRIBER = "scriber, scraper";
    CUTTER = "lathe tool, cutter";
    DRILL = "drill, reamer, D-bit";
    TAP = "tap, die";
    PUNCH = "punch, drift";
    CHISEL = "cold chisel, snap";
    SCREWDRIVER = "screwdriver";
    SPRING = "spring";
    SECTION = "Thickest part, mm";
    LET_DOWN = "Let down to";
    TEMPER_AT = "Which is about";
    HARDEN = "Harden from";
    LOOKS = "By eye, in dull light";
    QUENCH = "Quench in";
    SOAK = "Soak at heat";
    COLOURS = "Colours of temper on bright steel";
    GLOWS = "Glow in the fire";
    COLOUR = "Colour";
    CELSIUS = "°C";
    FAHRENHEIT = "°F";
    USED = "Used for";
    WATER = "water or brine";
    OIL = "oil";
    PALE_STRAW = "very pale straw";
    STRAW = "straw";
    DARK_STRAW = "dark straw";
    BROWN = "brown yellow";
    BROWN_PURPLE = "brown, tinged purple";
    PURPLE = "purple";
    DARK_PURPLE = "dark purple";
    BLUE = "full blue";
    DARK_BLUE = "dark blue";
    PALE_BLUE = "pale blue to grey";
    JUST_RED = "red that just shows";
    DULL_RED = "dull red";
    DULL_CHERRY = "dull cherry red";
    CHERRY = "cherry red";
    BRIGHT_CHERRY = "bright cherry red";
    ORANGE = "orange";
    YELLOW = "yellow";
    WHITE = "white";
    CARE = "Face shield, gloves, out of doors; nothing near that burns. Quench upright; oil can flare: metal lid and sand at hand, never water on oil. Hardened, not yet tempered, it can shatter.";
    SOURCE = "The Working of Steel, Colvin and Juthe, 1922; The Tinman’s Manual, I. R. Butt, 1860s; Workshop Technology, W. A. J. Chapman, 1972; heats of the steels common practice: the maker’s sheet goes first";
    DIFFER = "Books differ, so bands are given. By eye a heat is 50 °C wrong easily: a thermometer or a magnet says more. Steel is no longer drawn to a magnet at about 770 °C.";
    TIME = "Colours are for some minutes. Held an hour, the same colour comes some 50 °C cooler or more.";
    POLISH = "Polish bright before tempering; heat slowly from the thick end; quench or set on cold iron as the colour reaches the edge.";
}

/// A band of heat: Celsius, then Fahrenheit.
#[must_use]
pub(crate) fn band((from, to): (u16, u16)) -> String {
    [&*celsius((from, to)), " °C, ", &fahrenheits((from, to)), " °F"].concat()
}

/// A band in degrees Celsius.
#[must_use]
pub(crate) fn celsius((from, to): (u16, u16)) -> String {
    [&*from.to_string(), "–", &to.to_string()].concat()
}

/// A band given in degrees Celsius, in Fahrenheit.
#[must_use]
pub(crate) fn fahrenheits((from, to): (u16, u16)) -> String {
    [&*fahrenheit(from).to_string(), "–", &fahrenheit(to).to_string()].concat()
}

/// A colour of temper.
#[must_use]
pub(crate) const fn temper(colour: Temper) -> &'static str {
    match colour {
        Temper::PaleStraw => PALE_STRAW,
        Temper::Straw => STRAW,
        Temper::DarkStraw => DARK_STRAW,
        Temper::Brown => BROWN,
        Temper::BrownPurple => BROWN_PURPLE,
        Temper::Purple => PURPLE,
        Temper::DarkPurple => DARK_PURPLE,
        Temper::Blue => BLUE,
        Temper::DarkBlue => DARK_BLUE,
        Temper::PaleBlue => PALE_BLUE,
    }
}

/// A glow.
#[must_use]
pub(crate) const fn glow(glow: Glow) -> &'static str {
    match glow {
        Glow::JustRed => JUST_RED,
        Glow::DullRed => DULL_RED,
        Glow::DullCherry => DULL_CHERRY,
        Glow::Cherry => CHERRY,
        Glow::BrightCherry => BRIGHT_CHERRY,
        Glow::Orange => ORANGE,
        Glow::Yellow => YELLOW,
        Glow::White => WHITE,
    }
}

/// What steel cools in.
#[must_use]
pub(crate) const fn quench(quench: Quench) -> &'static str {
    match quench {
        Quench::Water => WATER,
        Quench::Oil => OIL,
    }
}

/// Colours from and to.
#[must_use]
pub(crate) fn colours((first, last): (Temper, Temper)) -> String {
    if first == last {
        temper(first).to_owned()
    } else {
        [temper(first), " to ", temper(last)].concat()
    }
}

/// Minutes to soak.
#[must_use]
pub(crate) fn soak((from, to): (u32, u32)) -> String {
    [&*from.to_string(), " to ", &to.to_string(), " minutes"].concat()
}

/// The working.
#[must_use]
pub(crate) fn working(section: &str, soak: (u32, u32), heat: u16) -> Vec<String> {
    vec![
        [
            "Soak: 30 to 60 minutes for 25.4 mm, so for ",
            section,
            " mm ",
            &*soak.0.to_string(),
            " to ",
            &soak.1.to_string(),
            " minutes; in a torch, until the colour is even",
        ]
        .concat(),
        [&*heat.to_string(), " °C × 9 ÷ 5 + 32 = ", &fahrenheit(heat).to_string(), " °F"].concat(),
    ]
}

/// What the drawing shows.
#[must_use]
pub(crate) fn picture(colours: &str, band: &str) -> String {
    ["The colours of temper along a scale of heat; marked: ", colours, ", ", band].concat()
}
