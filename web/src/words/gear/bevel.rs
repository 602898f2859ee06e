//! Words of bevel wheels.
use crate::words::{about, angle, decimal, grouped};
use handturn::gear::{Bevel, BevelSizes, BevelWheel, Depth};
use handturn::measure::Angle;

words! {
    FIRST = "Teeth of the first";
    SECOND = "Teeth of the second";
    SHAFTS = "Angle between the shafts";
    ALONG = "Depth along the face";
    PARALLEL = "Parallel";
    TAPERING = "Tapering";
    PARALLEL_WHY = "Parallel: cut with the cutters of straight wheels; module or DP is the cutter’s, and the small end’s.";
    TAPERING_WHY = "Tapering: as most drawings have it; module or DP is that of the large end, and the cutter must be thin enough for the small end.";
    TOO_WIDE = "The face is wider than a third of the cone: the small end is weak and the cutter fits it badly.";
    TURN_TO = "Turn to";
    PITCH_CIRCLE = "Pitch circle, large end";
    FACE_ANGLE = "Turn the face at";
    BACK_ANGLE = "Turn the back at";
    ANGLES_WHY = "Angles are from the axis.";
    APEX = "Apex to the tips, along the axis";
    CONE = "Cone distance";
    WIDEST = "Widest usual face";
    LARGE_MODULE = "Module at the large end";
    SMALL_MODULE = "Module at the small end";
    PICTURE = "Section through both axes, to scale. Broken: bottoms of the gaps.";
    PITCH_ANGLE = "Pitch angle";
    THIN = "Bevel cutters are made thinner for this, and are marked so.";
    TILT = "Tilt the head up to";
    TILT_CARE = "Clamp the head after tilting, and check the angle again.";
    CUTS = "Three cuts a gap";
    CALIPER_AT = "At the large end, square to the back";
}

/// A pair in a heading.
#[must_use]
pub fn name(pair: &Bevel) -> String {
    let [one, other] = pair.teeth.map(|teeth| grouped(teeth.into()));
    [
        &*one,
        " and ",
        &other,
        " teeth, ",
        &super::size(pair.tooth.size),
        ", shafts ",
        &angle(pair.shafts),
    ]
    .concat()
}

/// One of the pair.
#[must_use]
pub fn wheel(wheel: &BevelWheel) -> String {
    grouped(wheel.teeth.into()) + " teeth"
}

/// What chooses the cutter.
#[must_use]
pub fn virtual_teeth(wheel: &BevelWheel) -> String {
    [
        "Cut as ",
        &*about(wheel.virtual_teeth.value, 2),
        " straight teeth: ",
        &grouped(wheel.teeth.into()),
        " ÷ cos ",
        &about(wheel.pitch_angle.value, 3),
        "°.",
    ]
    .concat()
}

/// The cone, worked by hand.
#[must_use]
pub fn lines(pair: &Bevel, sizes: &BevelSizes) -> Vec<String> {
    let [one, other] = pair.teeth.map(|teeth| teeth.to_string());
    let [first, second] = &sizes.wheels;
    let shafts = angle(pair.shafts);
    let tan = |own: &str, mate: &str, wheel: &BevelWheel| {
        [
            "tan = sin ",
            &*shafts,
            " ÷ (",
            mate,
            " ÷ ",
            own,
            " + cos ",
            &shafts,
            "): ",
            &about(wheel.pitch_angle.value, 4),
            "°",
        ]
        .concat()
    };
    vec![
        tan(&one, &other, first),
        tan(&other, &one, second),
        [
            "Outside = pitch circle + 2 × ",
            &*pair.tooth.addendum().map_or_else(|_| String::new(), |a| decimal(a.mm(), 4)),
            " × cos of the pitch angle",
        ]
        .concat(),
    ]
}

/// The cuts of a gap at parallel depth.
#[must_use]
pub fn cuts(wheel: &BevelWheel, sizes: &BevelSizes) -> Vec<String> {
    let (Some(roll), Some(offset)) = (wheel.roll, sizes.offset) else { return Vec::new() };
    let by = about(offset.value, 3);
    let turn = roll_of(roll);
    vec![
        "Through the middle, all gaps, at full depth.".to_owned(),
        [
            "Turn the work ",
            &*turn,
            " (a quarter of its pitch) and move the table ",
            &by,
            " mm the way the gap went; cut one side of all gaps.",
        ]
        .concat(),
        [
            "Turn back twice that, move the table ",
            &*by,
            " mm to the other side of the middle, and cut the other side.",
        ]
        .concat(),
    ]
}

fn roll_of(roll: Angle) -> String {
    let degrees = roll.degrees().map_or_else(|_| String::new(), |d| decimal(d, 4));
    degrees + "°"
}

/// What the depth goes by.
#[must_use]
pub const fn depth_why(depth: Depth) -> &'static str {
    match depth {
        Depth::Parallel => {
            "The same depth all along. At the small end the second and third cuts go through the same gap; at the large end they open it to half the pitch there."
        }
        Depth::Tapering => {
            "At the large end; the head’s tilt takes it towards the apex. One cut leaves the large end too narrow: turn the work and shift the table to either side until the caliper reads right."
        }
    }
}

/// The pair in a sentence.
#[must_use]
pub fn picture_name(pair: &Bevel, sizes: &BevelSizes) -> String {
    let [first, second] = &sizes.wheels;
    [
        "Two bevel wheels on shafts at ",
        &*angle(pair.shafts),
        ": pitch angles ",
        &about(first.pitch_angle.value, 2),
        "° and ",
        &about(second.pitch_angle.value, 2),
        "°, cone distance ",
        &about(sizes.cone_distance.value, 2),
        " mm.",
    ]
    .concat()
}
