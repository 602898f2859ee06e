//! Words of Measure it, and of what a measurement leaves to do.
use super::{about, about_mm, mm, thou};
use crate::words::decimal;
use handturn::measure::Length;
use handturn::number::float;
use handturn::thread::still::{Left, Still, Verdict};
use handturn::thread::wires::{self, Measured, Over};

/// The wires drawing in a sentence.
#[must_use]
pub fn wires_name(wire: f64, (least, most): (&str, &str)) -> String {
    let wire = about_mm(wire);
    ["Three wires of ", &wire, " mm between flat anvils: ", least, " to ", most, " mm over them."]
        .concat()
}

/// Over which wires.
#[must_use]
pub fn over_wires(wire: Length) -> String {
    ["Over three ", &decimal(wire.mm(), 3), " mm wires"].concat()
}

/// Why no wires can be used.
#[must_use]
pub fn no_wires(error: &handturn::Error) -> String {
    match error.field {
        handturn::Field::Form => {
            "No wire finds a place between square flanks. Measure the root and the space instead."
                .to_owned()
        }
        _ => "No wire serves this thread from one end of its limits to the other.".to_owned(),
    }
}

/// Which wires serve, and why.
#[must_use]
pub fn wire_range(measured: &Measured, range: &wires::Range, wire: Length) -> String {
    let best = wires::best(measured.half_angle, measured.pitch).map_or(0.0, |best| best.value);
    let under = if range.by_root { "it rests in the root" } else { "it sinks below the crests" };
    [
        "Best wire ",
        &about_mm(best),
        " mm. Yours is ",
        &decimal(wire.mm(), 3),
        ", inside the usable ",
        &about_mm(range.least.value),
        " to ",
        &about_mm(range.greatest.value),
        ": thinner, ",
        under,
        "; thicker, it rides on them, at the worst ends of the limits.",
    ]
    .concat()
}

/// The formula people check by hand.
#[must_use]
pub fn wire_formula(measured: &Measured) -> String {
    let (wire, pitch) = factors(measured);
    ["M = pitch dia. + ", &about(wire, 4), " × wire − ", &about(pitch, 4), " × pitch"].concat()
}

/// 1 + 1/sin a, and cot a ÷ 2.
fn factors(measured: &Measured) -> (f64, f64) {
    let turns = float::of(measured.half_angle.turns());
    let sin = float::sin_turns(turns);
    (1.0 + 1.0 / sin, float::cos_turns(turns) / sin / 2.0)
}

/// The formula with its figures at one pitch diameter.
#[must_use]
pub fn wire_line(measured: &Measured, wire: Length, at: Length, over: &Over) -> String {
    let (by_wire, by_pitch) = factors(measured);
    let wire = by_wire * float::of(wire.mm());
    let pitch = by_pitch * float::of(measured.pitch.mm());
    [
        &*mm(at),
        " + ",
        &about_mm(wire),
        " − ",
        &about_mm(pitch),
        " = ",
        &about_mm(over.formula.value),
    ]
    .concat()
}

/// When the lead angle matters.
#[must_use]
pub fn lead_matters(degrees: f64, over: &Over) -> String {
    let off = over.three.value - over.formula.value;
    let angle = about(degrees, 2) + "°";
    if off.abs() < 0.00005 {
        return ["Lead angle ", &angle, ": it changes the reading by less than 0.0001 mm."]
            .concat();
    }
    let how = if over.formula_will_do() { "" } else { ", and the contact is solved exactly" };
    [
        "Lead angle ",
        &angle,
        ": it adds ",
        &about(off, 4),
        " mm to the formula; it is counted in",
        how,
        ".",
    ]
    .concat()
}

/// The verdict on what was measured.
#[must_use]
pub fn verdict(still: &Still) -> String {
    match still.verdict {
        Verdict::MoreToCut => about_mm(still.to_limit.diameter) + " mm to go",
        Verdict::Within => "Within the limits".to_owned(),
        Verdict::TooFar => about_mm(-still.at_most.diameter) + " mm under. It will be loose.",
    }
}

/// What to do about it.
#[must_use]
pub fn still(still: &Still) -> String {
    let feed = |left: &Left| {
        let straight = about_mm(left.straight);
        let slide = about_mm(left.along_slide);
        if straight == slide {
            return ["Feed ", &straight, " mm (", &thou(left.straight), " thou) straight in"]
                .concat();
        }
        [
            "Feed ",
            &straight,
            " mm straight in, or ",
            &slide,
            " mm on the top slide (",
            &thou(left.along_slide),
            " thou)",
        ]
        .concat()
    };
    match still.verdict {
        Verdict::MoreToCut => [
            "to the top of the limits. ",
            &feed(&still.to_limit),
            "; ",
            &about_mm(still.to_middle.along_slide),
            " mm on the slide to the middle.",
        ]
        .concat(),
        Verdict::Within => {
            ["At most ", &about_mm(still.at_most.diameter), " mm more may come off the diameter."]
                .concat()
        }
        Verdict::TooFar => "Nothing more to feed. Fit a nut to it, or begin again.".to_owned(),
    }
}
