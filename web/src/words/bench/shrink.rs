//! Words of shrinking a ring on.
use crate::words::{about, decimal, in_mm, mm};
use handturn::bench::shrink::Shrink;
use handturn::measure::Length;
use handturn::number::{Fraction, float};

words! {
    NAME = "Shrink on";
    ABOUT = "How hot the ring, for a hold and some play to drop on with";
    ALSO = "shrinking heat temperature expansion ring tyre collar interference oven freeze cool hot fit";
    DIAMETER = "Bore of the ring, mm";
    HOLD = "Hold, mm";
    CLEAR = "Play to drop on with, mm";
    RING = "Ring of";
    SHAFT = "Shaft of";
    STEEL = "steel";
    IRON = "cast iron";
    STAINLESS = "stainless";
    BRASS = "brass";
    BRONZE = "bronze";
    COPPER = "copper";
    ALUMINIUM = "aluminium";
    ROOM = "Room, °C";
    SHAFT_AT = "Shaft at, °C";
    HEAT_TO = "Heat the ring to";
    IN_F = "In °F";
    AT_LEAST = "The freest alloy, from";
    OPENS = "The ring must open by";
    TABLE = "What is left to drop on with";
    AT = "Ring at, °C";
    LEFT = "Play then";
    AS_IT_IS = "The cold shaft drops in; the ring needs no heat.";
    COLD_SHAFT = "Shaft";
    HOT_RING = "Ring, hot";
    SOURCE = "common practice; expansion by printed tables and handbooks, as bands by alloy";
    CARE = "Gloves, tongs, goggles; nothing oily near, and no flame on oil. A hardened part loses temper above what it was drawn at: from 150 °C on. Have all ready and square: it grips at once.";
    COLD_CARE = "Dry ice and liquid gas burn the skin and drive out air: gloves, goggles, open doors.";
    BAND = "Alloys differ. The temperature is for the stiffest of its kind: any other opens more.";
    ALUMINIUM_SOFTENS = "Hardened aluminium alloys begin to soften about 150 °C.";
    TEMPER = "This is above 150 °C: hardened steel begins to lose its temper, soft solder and locking fluid let go.";
    TOO_HOT = "This is above 350 °C: steel scales and hard parts go soft. Cool the shaft as well, or hold less.";
}

/// A temperature in whole degrees.
#[must_use]
pub(crate) fn degrees(value: Fraction) -> String {
    about(float::of(value), 0) + " °C"
}

/// The question with its answer.
#[must_use]
pub(crate) fn title(shrink: &Shrink, hot: Option<Fraction>) -> String {
    let heat = hot.map_or_else(|| "no heat".to_owned(), degrees);
    [&*decimal(shrink.diameter.mm(), 3), " with ", &in_mm(shrink.hold), " of hold: ", &heat]
        .concat()
}

/// The working.
#[must_use]
pub(crate) fn working(shrink: &Shrink, opened: Length, ring_nm: i64, hot: Fraction) -> Vec<String> {
    let mut lines = Vec::new();
    let millionths = |nm: i64| about(nm as f64 / 1000.0, 1) + " millionths";
    if shrink.shaft_at < shrink.room {
        lines.push(
            [
                "The shaft at ",
                &*degrees(shrink.shaft_at),
                " shrinks by its diameter × ",
                &millionths(shrink.shaft_nm),
                " × the degrees below the room",
            ]
            .concat(),
        );
    }
    lines.push(["Open by hold + play, less what the shaft shrinks = ", &*in_mm(opened)].concat());
    lines.push(
        [
            &*mm(opened),
            " ÷ (",
            &decimal(shrink.diameter.mm(), 3),
            " × ",
            &millionths(ring_nm),
            ") + ",
            &decimal(shrink.room, 1),
            " = ",
            &about(float::of(hot), 1),
            " °C",
        ]
        .concat(),
    );
    lines
}
