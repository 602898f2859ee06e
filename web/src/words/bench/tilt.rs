//! Words of tilting by leaves and blocks.
use crate::words::{about, seconds, signed_seconds};
use handturn::bench::stack::Stack;
use handturn::bench::tilt::{Choice, Rule, Tilt};
use handturn::measure::{Angle, Length};
use handturn::number::{Approx, Fraction, float};

words! {
    NAME = "Tilt by feeler";
    ABOUT = "Leaves, shims or blocks under one edge";
    ALSO = "sine bar tangent shim packing slope incline angle plate gauge block slip wear wedge draft";
    ANGLE = "Angle";
    SPAN = "Pivot to lifted edge, mm";
    RULE = "That width lies";
    ALONG_WORK = "along the work";
    ALONG_BED = "along the bed";
    LIMIT = "A third leaf only beyond";
    LIFT = "Lift one edge by";
    FROM_YOURS = "From your leaves";
    LEAVES = "Leaves";
    COMES_TO = "Comes to";
    GIVES = "Gives";
    OFF = "Off";
    WEAR = "Wear blocks, a pair, each mm";
    BETWEEN = "Left between the wear blocks";
    OIL = "0.005 mm of oil or burr";
    CARE = "Wipe it clean. Clamp the block; the leaf only sets the angle; check again after tightening.";
    SOURCE = "Turning and Boring, F. D. Jones, 1914 (the sine), and plane trigonometry";
    SINE_SAYS = "Sine: the leaves stand under the lifted edge itself, the width measured along the work.";
    TANGENT_SAYS = "Tangent: a leaf lies flat under the work, the width measured along the bed to the leaf’s near edge.";
    NO_LEAVES = "No leaves are listed in Shop: any packing of this thickness will do.";
}

/// The question with its answer.
#[must_use]
pub(crate) fn title(tilt: &Tilt, lift: Approx) -> String {
    [
        &*crate::words::angle_text(tilt.angle),
        " under ",
        &crate::words::decimal(tilt.span.mm(), 3),
        " mm: ",
        &about(lift.value, 3),
        " mm",
    ]
    .concat()
}

/// The pieces of a stack, each in the unit it is marked in: millimetres where two places
/// tell it whole, else thou where one does. Wear blocks come first, and the count with them.
#[must_use]
pub(crate) fn pieces(stack: &Stack) -> String {
    let mut pieces: Vec<String> = stack.pieces.iter().map(piece).collect();
    let Some(wear) = &stack.wear else { return pieces.join(" + ") };
    pieces.insert(0, ["2 × ", &*piece(wear), " wear"].concat());
    [&*pieces.join(" + "), ", ", &stack.count().to_string(), " in all"].concat()
}

fn piece(piece: &Length) -> String {
    let tells = |value: Fraction, times| value.times(times).is_ok_and(Fraction::is_whole);
    match piece.inches() {
        Ok(inches) if !tells(piece.mm(), 100) && tells(inches, 10_000) => {
            crate::words::decimal(inches.times(1_000).unwrap_or(inches), 1) + " thou"
        }
        _ => crate::words::decimal(piece.mm(), 4) + " mm",
    }
}

/// By how much a choice is off.
#[must_use]
pub(crate) fn off(choice: &Choice) -> String {
    let arcsec = float::nearest(choice.off_arcsec.value, 1000).map(Angle::from_arcsec);
    arcsec.and_then(Result::ok).map(signed_seconds).unwrap_or_default()
}

/// An angle that is not exact, told in seconds.
#[must_use]
pub(crate) fn in_seconds(degrees: f64) -> String {
    let arcsec = float::nearest(degrees * 3600.0, 1000).map(Angle::from_arcsec);
    arcsec.and_then(Result::ok).map(seconds).unwrap_or_default()
}

/// The working.
#[must_use]
pub(crate) fn working(tilt: &Tilt, lift: Approx) -> Vec<String> {
    let span = crate::words::decimal(tilt.span.mm(), 3);
    let (name, ratio) = match tilt.rule {
        Rule::Sine => ("sin", float::sin_turns(float::of(tilt.angle.turns()))),
        Rule::Tangent => ("tan", float::tan_turns(float::of(tilt.angle.turns()))),
    };
    vec![
        ["Lift = width × ", name, " angle"].concat(),
        [&*span, " × ", &about(ratio, 6), " = ", &about(lift.value, 4), " mm"].concat(),
        [&*about(lift.value, 4), " ÷ 0.0254 = ", &about(lift.value / 0.0254, 2), " thou"].concat(),
    ]
}

/// What the drawing shows.
#[must_use]
pub(crate) fn picture(tilt: &Tilt, lift: Approx) -> String {
    ["A block tilted: ", &*title(tilt, lift), " under its edge"].concat()
}
