//! Words of ratchets, splines, flats, clock wheels and cams.
use crate::words::{about, about_mm, angle_text, count, decimal, mm, plain};
use handturn::gear::clock::Form;
use handturn::gear::spline::Between;
use handturn::measure::{Angle, Length};
use handturn::number::float;

words! {
    RATCHET = "Ratchet";
    SPLINE = "Splines, keyways";
    FLATS = "Flats";
    CLOCK = "Clock wheel";
    CAM = "Cam";

    TURN_TO = "Turn the blank to";
    OUTSIDE = "Outside diameter, mm";
    DEPTH_TOP = "Depth from the top of the blank";
    WIDTH_CUTTER = "Width of the cutter, mm";

    UNDERCUT = "Face undercut, degrees (0: radial)";
    KNOWN = "Known of the gap";
    BY_LAND = "Cutter, land";
    BY_DEPTH = "Cutter, depth";
    BY_CUTTER = "Depth, land";
    CUTTER_ANGLE = "Angle of the cutter, degrees";
    LAND = "Land left on a tooth, mm";
    DEPTH_FACE = "Depth along the face, mm";
    ROOTS = "Circle of the roots";
    SINGLE_ANGLE = "Single-angle cutter of";
    FACE_SIDE = "Its flat side cuts the face of a tooth, its bevel the back of the one before.";
    RADIAL = "Flat side over the centre line: the face is radial.";
    OFFSET = "Flat side off the centre line";
    OFFSET_WAY = "Away from the gap, past the centre: the face is undercut.";
    TOUCH_OVER = "Depth from touching, with the cutter set over";
    LAND_LEFT = "Land left";
    TOOTH_ANGLE = "Tooth, between face and back";
    BACK_ANGLE = "Back, below the tangent";
    ON_FACE = "For teeth on a face: head raised by";
    TOOTH_WHY = "The tooth’s angle is the cutter’s less one part, so a cutter must be larger than that.";

    WHAT = "What is cut";
    SPLINES = "Splines";
    KEYWAYS = "Keyways";
    KEYS = "Number of keys";
    MINOR = "Minor diameter (floor), mm";
    MAJOR = "Major diameter (over keys), mm";
    KEY = "Width of a key, mm";
    LISTED = "Sizes of ISO 14";
    OFFSET_MIDDLE = "Middle of the cutter off the centre line";
    ACROSS = "Then across to the other side";
    TWO_CUTS = "One side of every key first, all round. Then across by key and cutter, and the other side of every key. Two cutters a key apart do both at once.";
    WIDEST = "Widest cutter that spares the next key";
    FLANK = "Depth of a flank, from touching beside the centre";
    BETWEEN = "Between the two cuts";
    KEY_READS = "A key reads, by micrometer";
    SPACE = "Space at the floor, straight across";
    OVER_FLOOR = "Minor diameter";

    WAYS = "Number of keyways round the shaft";
    SHAFT = "Diameter of the shaft, mm";
    KEY_WIDTH = "Width of the key and the cutter, mm";
    SIDE = "Depth at the side, mm";
    KEY_CUTTER = "Cutter as wide as the key";
    SIDE_IS = "Depth at the side";
    ARC = "Height of the round over the key";
    OVER_BOTTOM = "Over the bottom and the far side";

    SIDES = "Number of flats";
    ACROSS_FLATS = "Across flats, mm";
    TWICE = "Twice from the centre to a flat, mm";
    FLAT_ROUND = "From the flat to the round opposite, mm";
    STOCK = "Round stock, mm (empty: sharp corners)";
    CUTTER_OR_NONE = "Width of the cutter, mm, if passes are wanted";
    CORNERS = "Across corners: the least stock";
    WIDTH_FLAT = "Width of a flat";
    FIRST_WIDTH = "The first flat, as cut on the round";
    DEPTH_EACH = "Depth of each flat";
    OVER_FIRST = "Over the first flat and the round";
    OVER_FLATS = "Over two flats";
    TO_CORNER = "From a flat to the corner opposite";
    STRADDLE = "Two cutters as far apart as the flats cut two at a time: half the settings.";
    ONE_BY_ONE = "One flat at a time; each is measured against the round or the corner opposite.";
    SHARP = "The stock reaches the corners: they come out sharp.";
    PASSES = "Passes side by side";

    WHEEL_TEETH = "Teeth of the wheel";
    LEAVES = "Leaves of the pinion it drives";
    MODULE = "Module, mm";
    ADDENDA = "Addenda";
    STANDARD = "BS 978";
    COMMON = "Common cutter";
    CUT_NOW = "Cut now";
    THE_WHEEL = "Wheel";
    THE_PINION = "Pinion";
    CENTRES = "Distance of the arbors";
    RATIO = "Turns of the pinion for one of the wheel";
    PITCH = "Pitch diameter";
    FORM_CUTTER = "A form cutter of the module: one serves wheels of every count, pinions need one for their number of leaves.";
    WHOLE_DEPTH = "Whole depth from the blank";
    DEPTH_WHY = "The cutter’s own form ends the teeth: at depth it has just taken the last of the blank’s round.";
    THICK = "Thickness at the pitch circle";
    MESH = "Wheel and pinion on their arbors, to scale.";
    FROM_STANDARD = "Addendum 0.95 of the height at which epicycloids meet; 1.57 modules thick and deep below (BS 978 part 2, 1952; what it prints is from memory).";
    FROM_COMMON = "Wheels 2.76 modules over their pitch circle, pinions 1.71 up to ten leaves and 1.61 above (common practice; from memory).";
    ESCAPE = "Escape wheels have forms of their own: divide them, and cut by the escapement’s drawing.";

    HOW = "How it is cut";
    RAISED_HEAD = "Head raised";
    BY_STEPS = "By steps";
    RISE = "Rise, mm";
    OVER = "Over an angle of";
    GEARED = "Table geared for a lead of, mm";
    FACE = "Thickness of the cam, mm";
    RAISED = "Head raised in fact to, degrees (empty: not yet)";
    STEPS = "Number of steps";
    RADIUS = "Greatest radius of the cam, mm";
    MILL = "Diameter of the mill: the roller’s, mm";
    MILL_IS = "End mill, as large as the roller";
    RADIUS_IS = "Greatest radius of the cam";
    LEAD = "Lead: its rise for a whole turn";
    RAISE = "Raise the head from level by";
    UPRIGHT = "Mill’s swivel, from upright";
    FLUTES = "Flutes of the end mill, at least";
    PARALLEL = "The end mill stands parallel to the head’s spindle.";
    TRAVEL = "Table travel for the lobe";
    GIVES = "Rise that it gives";
    OFF = "Off by";
    EACH = "Move in after each step";
    EVERY_STEP = "Table readings, step by step";
    STEP_ANGLE = "Turn for each step";
    CUSP = "Cusps, to be filed away";
    CUSP_WHY = "What a mill standing half-way between two steps would still cut, at the top of the rise.";
    ANGLE_TRUE = "The angle is true; sizes are not.";
    SAID_DEPTH = "depth";
    SAID_OFFSET = "cutter set over by";
    CAM_CARE = "The clamp stays off for the whole cut. Clamp the tilted head itself; check the angle again after tightening.";
}

/// Degrees to hundredths.
#[must_use]
pub fn degrees(value: f64) -> String {
    about(value, 2) + "°"
}

/// Degrees and minutes, for a scale.
#[must_use]
pub fn minutes(value: f64) -> String {
    let angle = float::nearest(value, 60).and_then(|degrees| Angle::from_degrees(degrees).ok());
    angle.map_or_else(String::new, angle_text)
}

/// What is asked for, as the heading: a ratchet's teeth and blank.
#[must_use]
pub fn ratchet(teeth: u32, outside: Length) -> String {
    [&*count(teeth, "tooth", "teeth"), " on ", &short(outside), " mm"].concat()
}

/// A splined shaft: `6 × 26 × 30, keys of 6 mm`.
#[must_use]
pub fn splines(keys: u32, minor: Length, major: Length, key: Length) -> String {
    let [minor, major, key] = [minor, major, key].map(short);
    [&*keys.to_string(), " × ", &minor, " × ", &major, ", keys of ", &key, " mm"].concat()
}

/// Keyways round a shaft.
#[must_use]
pub fn keyways(ways: u32, shaft: Length) -> String {
    [&*count(ways, "keyway", "keyways"), " in a shaft of ", &short(shaft), " mm"].concat()
}

/// What is left between two side cuts, and what to do about it.
#[must_use]
pub fn between(between: &Between, half: &str, floor: Length) -> (String, bool) {
    let floor = [
        " Put the space under the cutter (half a part on: ",
        half,
        " of a turn) and cut ",
        &mm(floor),
        " mm from the top.",
    ]
    .concat();
    match between {
        Between::Ridge { outside, foot, widest } => (
            [
                "A ridge stands, ",
                &about_mm(outside.value),
                " mm wide outside and ",
                &about_mm(foot.value),
                " at its foot.",
                &floor,
                " At most ",
                &about_mm(widest.value),
                " mm wide, that cut spares the flanks.",
            ]
            .concat(),
            false,
        ),
        Between::Loose { outside, proud } => (
            [
                "The cuts meet below a piece ",
                &about_mm(outside.value),
                " mm wide: it breaks loose and can jam or fly. Take a wider cutter, or clear the middle first. The floor stands ",
                &about_mm(proud.value),
                " mm proud in the middle.",
                &floor,
            ]
            .concat(),
            true,
        ),
        Between::Floor { proud } => (
            [
                "Nothing stands. The floor is ",
                &about_mm(proud.value),
                " mm proud in the middle.",
                &floor,
                " Small steps round it take the rest.",
            ]
            .concat(),
            false,
        ),
    }
}

/// Flats: `Square`, `Hexagon`, `8 flats`.
#[must_use]
pub fn flats(sides: u32, across: Length) -> String {
    let name = match sides {
        1 => "One flat".to_owned(),
        4 => "Square".to_owned(),
        6 => "Hexagon".to_owned(),
        _ => count(sides, "flat", "flats"),
    };
    [&*name, ", ", &short(across), " mm"].concat()
}

/// How much of the round is left at each corner.
#[must_use]
pub fn corners_round(arc: f64) -> String {
    ["The stock stays round between flats, ", &about_mm(arc), " mm along the arc."].concat()
}

/// A wheel and its pinion.
#[must_use]
pub fn clock(wheel: u32, leaves: u32, module: Length) -> String {
    let module = short(module);
    [&*wheel.to_string(), " and ", &leaves.to_string(), ", module ", &module].concat()
}

/// How leaves end.
#[must_use]
pub fn form(form: Form, radius: Length) -> String {
    let how = match form {
        Form::Round => "The leaves end in a half circle, ",
        Form::Medium => "The leaves end in a medium arch, arcs of ",
        Form::High => "The leaves end in a high arch, arcs of ",
    };
    [how, &mm(radius), " mm radius."].concat()
}

/// A cam's lobe.
#[must_use]
pub fn cam(rise: Length, over: Angle) -> String {
    ["Rise of ", &short(rise), " mm over ", &angle_text(over)].concat()
}

/// A part of a turn as a fraction.
#[must_use]
pub fn half_part(parts: u32) -> String {
    let half = handturn::number::Fraction::new(1, i64::from(parts.saturating_mul(2)));
    half.map_or_else(|_| String::new(), plain)
}

/// What a drawing shows, with its figures.
#[must_use]
pub fn named(what: &str, figures: &[(&str, f64)]) -> String {
    let mut text = what.to_owned();
    for (name, value) in figures {
        text = [&*text, ", ", name, " ", &about_mm(*value), " mm"].concat();
    }
    text + "."
}

/// Millimetres without noughts at the end.
fn short(length: Length) -> String {
    decimal(length.mm(), 4)
}
