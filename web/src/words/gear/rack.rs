//! Words of racks.
use crate::words::{about, decimal, grouped};
use handturn::gear::Rack;
use handturn::thread::dial::Reading;

words! {
    GAPS = "Gaps to cut";
    PITCH = "Pitch, π modules";
    LENGTH = "From the first gap to the last";
    HEIGHT = "From the pitch line to the tips";
    STOCK_WHY = "Leave the stock long by a pitch at each end, and at least twice the whole depth high.";
    CUTTER = "The cutter for a rack";
    READINGS = "Dial readings from the first gap";
    GAP = "Gap";
    TURNS = "Turns";
    MARK = "Mark";
    OFF = "Off, µm";
    FROM = "List from gap";
    READ_WHY = "Zero the dial at the first gap, coming up from one side, and come up from that side each time. Every reading is rounded from its own place, so errors never add up.";
    CARE = "Lock the table for each cut. Cutter clear before the table moves. Fingers out, guard on.";
    THICK = "Tooth at the pitch line";
    WORST = "Farthest from its place";
    ADJACENT = "Neighbours, at worst";
}

/// A rack in a heading.
#[must_use]
pub fn name(rack: &Rack) -> String {
    [&*grouped(rack.gaps.into()), " gaps, ", &super::size(rack.tooth.size), ", rack"].concat()
}

/// The mark of a reading.
#[must_use]
pub fn mark(reading: &Reading) -> String {
    reading.mark.to_string()
}

/// How far a gap is off, in micrometres.
#[must_use]
pub fn off(mm: f64) -> String {
    let text = about(mm * 1000.0, 1);
    if mm > 0.0 { ["+", &*text].concat() } else { text }
}

/// The pitch worked by hand.
#[must_use]
pub fn line(rack: &Rack, pitch: f64) -> String {
    let module = rack.tooth.size.module().map_or_else(|_| String::new(), |m| decimal(m.mm(), 4));
    ["Pitch = π × ", &*module, " = ", &about(pitch, 4), " mm; gap k stands k × that from the first"]
        .concat()
}
