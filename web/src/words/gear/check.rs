//! Words of measuring teeth: by caliper, over several, over pins.
use crate::words::{about, about_mm, count, decimal};
use handturn::gear::chordal::Chordal;
use handturn::gear::span::Span;
use handturn::gear::{Spur, involute, pins};
use handturn::measure::Length;
use handturn::number::{Approx, float};

words! {
    CALIPER = "One tooth, by gear-tooth caliper";
    SET_HEIGHT = "Set the height to";
    READS = "The tooth reads";
    SPAN = "Over several teeth, by flat anvils";
    TEETH_OVER = "Teeth between the anvils (empty: the best number)";
    PINS = "Over two pins";
    PIN_USED = "Pin to use (empty: the best of them), mm";
    NONE_SERVES = "None of your pins serves here: this is the best one, to be got.";
    ODD = "The teeth are odd in number: no gap lies opposite, so the pins lie in the two gaps nearest to it.";
}

/// Millimetres of a reading, to three places.
#[must_use]
pub fn mm(mm: f64) -> String {
    about_mm(mm)
}

/// The same in inches, to four.
#[must_use]
pub fn inch(mm: f64) -> String {
    about(mm / 25.4, 4)
}

/// The figures that all the formulas begin with.
struct Basis {
    pitch: f64,
    /// The module as it was given.
    module: String,
    per_turn: f64,
    turns: f64,
    thickness: f64,
    base: f64,
    inv: f64,
}

fn basis(wheel: &Spur) -> Option<Basis> {
    let arcs = wheel.arcs().ok()?;
    let angle = wheel.tooth.pressure_angle;
    Some(Basis {
        pitch: float::of(wheel.pitch_diameter().ok()?.mm()),
        module: decimal(wheel.tooth.size.module().ok()?.mm(), 4),
        per_turn: arcs.circular_pitch.value,
        turns: float::of(angle.turns()),
        thickness: arcs.thickness.value,
        base: arcs.base_diameter.value,
        inv: involute::inv(angle).ok()?.value,
    })
}

/// The tooth's arc at the pitch circle, as it is reckoned.
fn arc_line(wheel: &Spur, basis: &Basis) -> String {
    let mut text = ["Arc of the tooth s = π × ", &basis.module, " ÷ 2"].concat();
    if !wheel.shift.is_zero() {
        let shift = decimal(wheel.shift, 4);
        text = [
            &text,
            " + 2 × ",
            &shift,
            " × ",
            &basis.module,
            " × tan ",
            &super::angle(wheel.tooth.pressure_angle),
        ]
        .concat();
    }
    if !wheel.thinned.mm().is_zero() {
        text = [&text, " − ", &decimal(wheel.thinned.mm(), 4)].concat();
    }
    [&text, " = ", &about(basis.thickness, 4)].concat()
}

/// The caliper's figures, worked by hand.
#[must_use]
pub fn chordal_lines(wheel: &Spur, outside: Length, chordal: &Chordal) -> Vec<String> {
    let Some(basis) = basis(wheel) else { return Vec::new() };
    let half = basis.thickness / basis.pitch / float::PI * 180.0;
    let half = about(half, 4);
    let pitch =
        wheel.pitch_diameter().map_or_else(|_| String::new(), |pitch| decimal(pitch.mm(), 4));
    let outside = decimal(outside.mm(), 3);
    vec![
        arc_line(wheel, &basis),
        ["Half its angle = s ÷ D × 57.2958 = ", &half, "°"].concat(),
        [
            "Thickness = D × sin = ",
            &pitch,
            " × sin ",
            &half,
            "° = ",
            &about(chordal.thickness.value, 4),
        ]
        .concat(),
        [
            "Height = (outside − D × cos) ÷ 2 = (",
            &outside,
            " − ",
            &pitch,
            " × cos ",
            &half,
            "°) ÷ 2 = ",
            &about(chordal.height.value, 4),
        ]
        .concat(),
    ]
}

/// The constant chord beside it.
#[must_use]
pub fn constant(chordal: &Chordal) -> String {
    [
        "The constant chord, the same for every number of teeth: ",
        &mm(chordal.constant.value),
        " mm at ",
        &mm(chordal.constant_height.value),
        " mm (DIN 3960).",
    ]
    .concat()
}

/// Over how many teeth.
#[must_use]
pub fn over_teeth(teeth: u32) -> String {
    ["Over ", &count(teeth, "tooth", "teeth")].concat()
}

/// How many teeth serve, and where the anvils touch.
#[must_use]
pub fn span_serves(span: &Span) -> String {
    let numbers = if span.least == span.greatest {
        ["Only ", &span.least.to_string(), " serves here."].concat()
    } else {
        ["From ", &span.least.to_string(), " to ", &span.greatest.to_string(), " teeth serve."]
            .concat()
    };
    [
        &numbers,
        " The anvils touch at ",
        &mm(span.touches.value),
        " mm diameter. The blank’s outside does not matter to it.",
    ]
    .concat()
}

/// The span, worked by hand.
#[must_use]
pub fn span_lines(wheel: &Spur, span: &Span) -> Vec<String> {
    let Some(basis) = basis(wheel) else { return Vec::new() };
    let between = f64::from(span.teeth.saturating_sub(1));
    let cos = float::cos_turns(basis.turns);
    let angle = super::angle(wheel.tooth.pressure_angle);
    vec![
        arc_line(wheel, &basis),
        ["inv ", &angle, " = tan − arc = ", &about(basis.inv, 6)].concat(),
        [
            "W = cos ",
            &angle,
            " × (",
            &span.teeth.saturating_sub(1).to_string(),
            " × π × ",
            &basis.module,
            " + s + D × inv) = ",
            &about(cos, 6),
            " × (",
            &about(between * basis.per_turn, 4),
            " + ",
            &about(basis.thickness, 4),
            " + ",
            &about(basis.pitch * basis.inv, 4),
            ") = ",
            &about(span.reading.value, 4),
            " (DIN 3960)",
        ]
        .concat(),
    ]
}

/// Over which pins.
#[must_use]
pub fn over_pins(pin: Length) -> String {
    ["Over two ", &decimal(pin.mm(), 3), " mm pins"].concat()
}

/// Which pins serve, and why.
#[must_use]
pub fn pin_range(range: &pins::Range, pin: Length) -> String {
    let at = |mm: Approx| about_mm(mm.value);
    [
        "Best pin ",
        &at(range.best),
        " mm. Yours is ",
        &decimal(pin.mm(), 3),
        ", inside the usable ",
        &at(range.least),
        " to ",
        &at(range.greatest),
        ": thinner, it falls into the gap; thicker, it rides on the tips.",
    ]
    .concat()
}

/// The reading over pins, worked by hand.
#[must_use]
pub fn pin_lines(wheel: &Spur, pin: Length, over: &pins::Over) -> Vec<String> {
    let Some(basis) = basis(wheel) else { return Vec::new() };
    let (teeth, pin) = (f64::from(wheel.teeth), float::of(pin.mm()));
    let inv = basis.thickness / basis.pitch + basis.inv + pin / basis.base - float::PI / teeth;
    let centres = over.centres.value;
    // cos φ = base ÷ centres.
    let ratio = basis.base / centres;
    let phi = float::atan_turns(float::sqrt(1.0 - ratio * ratio) / ratio) * 360.0;
    let (n, phi) = (wheel.teeth.to_string(), about(phi, 4));
    let base = about(basis.base, 4);
    let mut lines = vec![
        arc_line(wheel, &basis),
        [
            "inv φ = s ÷ D + inv ",
            &super::angle(wheel.tooth.pressure_angle),
            " + d ÷ base − π ÷ ",
            &n,
            " = ",
            &about(basis.thickness / basis.pitch, 6),
            " + ",
            &about(basis.inv, 6),
            " + ",
            &about(pin / basis.base, 6),
            " − ",
            &about(float::PI / teeth, 6),
            " = ",
            &about(inv, 6),
            "; φ = ",
            &phi,
            "°",
        ]
        .concat(),
        [
            "Centres of the pins: base ÷ cos φ = ",
            &base,
            " ÷ cos ",
            &phi,
            "° = ",
            &about(centres, 4),
        ]
        .concat(),
    ];
    let odd = wheel.teeth % 2 == 1;
    let by = if odd { [" × cos (90° ÷ ", &n, ")"].concat() } else { String::new() };
    lines.push(
        [
            "M = ",
            &about(centres, 4),
            &by,
            " + ",
            &about_mm(pin),
            " = ",
            &about(over.reading.value, 4),
            " (DIN 3960)",
        ]
        .concat(),
    );
    lines
}
