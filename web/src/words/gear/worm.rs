//! Words of a worm and its wheel.
use crate::words::{about, decimal, grouped, plain};
use handturn::gear::{Axial, Worm, WormPair, WormSizes, WormWheel};
use handturn::measure::Length;
use handturn::number::Fraction;

words! {
    WHEEL_TEETH = "Teeth of the wheel";
    BY_PITCH = "Pitch";
    PITCH_MM = "Pitch along the worm, mm";
    STARTS = "Starts of the worm";
    DIAMETER = "Worm’s pitch diameter, mm";
    LEAVE = "Gashes leave for the hob, mm";
    WORM = "Worm";
    WHEEL = "Wheel";
    TURN_WORM = "Turn the worm to";
    TURN_WHEEL = "Turn the wheel’s throat to";
    THROAT_RADIUS = "Throat radius";
    CORNERS = "Outside, over the corners";
    USEFUL_FACE = "Useful face";
    BOTTOM = "Bottom of the thread";
    FLAT_WHY = "A flat wheel, for light work, is turned to the throat’s size and gashed to the full depth.";
    FREE = "Hobbed without gashes";
    FREE_WHY = "The blank then rolls on the hob’s crest: the count that begins is what its girth holds. Take a scratch, count the marks, and only then go on.";
    FREE_BLANK = "Turn the blank to";
    FREE_CENTRES = "Centre distance then";
    PICTURE = "Section through the wheel’s axis, to scale: the worm end on, in the throat.";
    TOOL_END = "End of the tool";
    TOOL_WHY = "Set the tool square to the axis: the flanks are straight in that section.";
    LEAD = "Lead";
    LEAD_ANGLE = "Lead angle";
    NORMAL_PITCH = "Pitch square to the thread";
    GEAR_LATHE = "Gear the lathe for it";
    HOB = "Hob: outside diameter";
    HOB_WHY = "Larger than the worm by the clearance on both sides, so that the worm runs free of the roots.";
    GASH = "Gash at";
    GASH_DEPTH = "Gash to";
    HOB_DEPTH = "Then hob to";
    GASH_WHY = "Swing the table by the worm’s lead angle, the cutter over the middle of the throat, and raise the table into it: no feed along.";
    GASH_CARE = "Clamp on for each gash, off to move. Hobbing: work free to turn between centres, dog off.";
    RATIO = "Turns of the worm for one of the wheel";
    CENTRES = "Centre distance";
}

/// The pair in a heading.
#[must_use]
pub fn name(pair: &WormPair) -> String {
    let size = match pair.worm.pitch {
        Axial::Size(size) => super::size(size),
        Axial::Pitch(pitch) => decimal(pitch.mm(), 4) + " mm pitch",
    };
    let starts = crate::words::count(pair.worm.starts.into(), "start", "starts");
    [&*starts, " into ", &grouped(pair.teeth.into()), " teeth, ", &size].concat()
}

/// The worm's lead as the field of Thread takes it: which way it is given, that figure,
/// the starts.
#[must_use]
pub fn for_thread(worm: &Worm) -> String {
    let (kind, figure) = match worm.pitch {
        Axial::Pitch(pitch) => ("pitch", pitch.mm()),
        Axial::Size(handturn::gear::Size::Module(module)) => ("module", module.mm()),
        Axial::Size(handturn::gear::Size::DiametralPitch(dp)) => ("dp", dp),
    };
    [kind, " ", &decimal(figure, 6), " ", &worm.starts.to_string()].concat()
}

/// The sizes, worked by hand.
#[must_use]
pub fn lines(pair: &WormPair, worm: &WormSizes, wheel: &WormWheel) -> Vec<String> {
    let diameter = decimal(pair.worm.diameter.mm(), 4);
    vec![
        [
            "Pitch = ",
            &*about(worm.axial_pitch.value, 4),
            " mm; lead = ",
            &pair.worm.starts.to_string(),
            " × that = ",
            &about(worm.lead.mm().value, 4),
            " mm",
        ]
        .concat(),
        ["tan of the lead angle = ", &*about(worm.lead.mm().value, 4), " ÷ (π × ", &diameter, ")"]
            .concat(),
        [
            "Wheel’s pitch circle = ",
            &*grouped(pair.teeth.into()),
            " × ",
            &about(worm.axial_pitch.value, 4),
            " ÷ π = ",
            &about(wheel.pitch_diameter.value, 4),
            " mm",
        ]
        .concat(),
        [
            "Centre distance = (",
            &*about(wheel.pitch_diameter.value, 4),
            " + ",
            &diameter,
            ") ÷ 2 = ",
            &about(wheel.centre_distance.value, 4),
            " mm",
        ]
        .concat(),
    ]
}

/// How far a blank may be off before another count begins.
#[must_use]
pub fn free_within(wheel: &WormWheel) -> String {
    ["Within ", &*about(wheel.free_blank_within.value, 3), " mm, or another count begins."].concat()
}

/// A ratio as turns.
#[must_use]
pub fn ratio(ratio: Fraction) -> String {
    plain(ratio)
}

/// How many gashes.
#[must_use]
pub fn gashes(teeth: u32) -> String {
    [&*grouped(teeth.into()), " gashes"].concat()
}

/// The pair in a sentence.
#[must_use]
pub fn picture_name(pair: &WormPair, wheel: &WormWheel) -> String {
    let mm = |length: Length| decimal(length.mm(), 3);
    [
        "The worm of ",
        &*mm(pair.worm.diameter),
        " mm pitch diameter in the throat of the wheel, ",
        &about(wheel.throat_diameter.value, 3),
        " mm, its face ",
        &mm(pair.face),
        " mm wide; the centres ",
        &about(wheel.centre_distance.value, 3),
        " mm apart.",
    ]
    .concat()
}
