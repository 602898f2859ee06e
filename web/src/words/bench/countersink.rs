//! Words of countersinks and counterbores.
use crate::words::{about, decimal};
use handturn::bench::cone::{Countersink, Depths};
use handturn::measure::Length;

words! {
    NAME = "Countersink";
    ABOUT = "Depth for a diameter, a head or a ball";
    ALSO = "csk screw head flush flat head socket cap counterbore recess counter sink gauge";
    OF = "Depth for";
    SCREW = "a countersunk screw";
    SIZE = "a diameter";
    CAP = "a cap head";
    HEAD = "Head";
    ISO_7046 = "ISO 2009, 7046";
    DIN_963 = "DIN 963, 965";
    ISO_10642 = "ISO 10642 socket";
    DIN_7991 = "DIN 7991 socket";
    BA = "BA";
    WHITWORTH = "BSW, BSF";
    UNIFIED = "UNC, UNF";
    UNIFIED_SOCKET = "UNC, UNF socket";
    THREAD = "Thread";
    DIAMETER = "Diameter wanted, mm";
    ANGLE = "Tool’s angle";
    HOLE = "Hole or old countersink, mm";
    FLAT = "Tool’s flat or pilot, mm";
    BELOW = "Head below the surface, mm";
    BALL = "Ball to measure with, mm";
    DOWN = "Down from touching";
    TIP = "Tool’s nose below the surface";
    MOUTH = "Diameter at the surface";
    GROWS = "Diameter grows, for 0.1 mm down";
    TOUCHES = "Touches first";
    EDGE = "the edge of the hole";
    FACE = "the surface, with its nose";
    BALL_AT = "Ball touches at";
    BALL_UP = "Ball stands above the surface by";
    BORE = "Counterbore";
    DEEP = "Down from the surface";
    CLEAR = "Head";
    CARE = "Clamp the work. Slow, one firm feed; a countersink that chatters snatches. Chips are sharp: brush, not fingers.";
    SOURCE = "geometry of the cone; heads as the standards print them, ISO 10642, ISO 7046, DIN 963, DIN 7991, ASME B18.3";
    MEMORY = "This standard’s head sizes are from memory: measure the head in hand.";
    SHARP = "Sunk to the sharp diameter of the cone, so the head is flush whatever its rim was turned off to.";
    NOT_OWNED = "No countersink of this angle is listed in Shop.";
    BORE_MEMORY = "Counterbore by DIN 974-1, from memory; head by ISO 4762.";
}

/// The question with its answer.
#[must_use]
pub(crate) fn title(what: &str, down: f64) -> String {
    [what, ": ", &*about(down, 3), " mm down"].concat()
}

/// A diameter as a name.
#[must_use]
pub(crate) fn across(diameter: Length) -> String {
    ["⌀ ", &*decimal(diameter.mm(), 3)].concat()
}

/// A thread that the standard lacks, with those it has.
#[must_use]
pub(crate) fn names<'a>(names: impl Iterator<Item = &'a str>) -> String {
    ["This head is made for ", &*names.collect::<Vec<_>>().join(", "), "."].concat()
}

/// The working.
#[must_use]
pub(crate) fn working(sink: &Countersink, depths: &Depths) -> Vec<String> {
    let touches = decimal(sink.flat.max(sink.hole).mm(), 3);
    let cot = about(2.0 / depths.growth.value, 5);
    vec![
        "Down = (diameter − what touches first) ÷ 2 × cot of half the angle + how far below"
            .to_owned(),
        [
            "(",
            &*decimal(sink.diameter.mm(), 3),
            " − ",
            &touches,
            ") ÷ 2 × ",
            &cot,
            " + ",
            &decimal(sink.below.mm(), 3),
            " = ",
            &about(depths.from_touch.value, 4),
            " mm",
        ]
        .concat(),
    ]
}

/// The working of a counterbore.
#[must_use]
pub(crate) fn bore_working(height: Length, below: Length, deep: Length) -> Vec<String> {
    let text = |length: Length| decimal(length.mm(), 3);
    vec![
        [
            "Height of the head + how far below: ",
            &*text(height),
            " + ",
            &text(below),
            " = ",
            &text(deep),
            " mm",
        ]
        .concat(),
    ]
}
