//! Teeth as they are measured: the involute function, chords, spans, pins.
use super::wheels_slanted::size;
use super::{Outcome, each, must};
use handturn::gear::{DepthRule, Size, Spur, Tooth, chordal, involute, pins, span};
use handturn::measure::{Angle, Length};
use handturn::number::{Approx, Fraction, float};
use handturn_tests::rows::{fraction, half_a_place};
use serde::Deserialize;

fn tooth(size: Size, pressure: &str) -> Tooth {
    let pressure_angle = Angle::from_degrees(fraction(pressure)).expect("small");
    // The addendum is a module either way.
    Tooth { size, pressure_angle, rule: DepthRule::Coarse }
}

fn wheel(teeth: &str, size: Size, pressure: &str, shift: &str) -> Spur {
    let none = Length::from_mm(Fraction::ZERO);
    let teeth = teeth.parse().expect("a number of teeth");
    Spur { teeth, tooth: tooth(size, pressure), shift: fraction(shift), thinned: none }
}

/// Whether `came`, in the row's unit, is as printed to half its last place, and by so
/// many last places more where the print is known to be loose.
fn printed(came: Approx, unit: f64, text: &str, slack: &str) -> Result<(), String> {
    let half = float::of(half_a_place(text));
    let more = if slack.is_empty() { 0.0 } else { 2.0 * float::of(fraction(slack)) };
    let off = (came.value / unit - float::of(fraction(text))).abs();
    must(off <= half * (1.0 + more) + 1e-9, || format!("{} for {text}", came.value / unit))
}

#[derive(Deserialize)]
struct Chord {
    teeth: String,
    size: String,
    pressure: String,
    shift: String,
    thickness: String,
    height: String,
    slack: String,
    misprint: String,
}

pub(crate) fn chords() -> Vec<Outcome> {
    each("wheel_chordal.csv", |row: &Chord| (!row.misprint.is_empty(), chord(row)))
}

fn chord(row: &Chord) -> Result<(), String> {
    let (size, unit) = size(&row.size);
    let came = if row.teeth == "rack" {
        chordal::rack(&tooth(size, &row.pressure), Length::from_mm(Fraction::ZERO))
    } else {
        let wheel = wheel(&row.teeth, size, &row.pressure, &row.shift);
        wheel.outside_diameter().and_then(|outside| chordal::tooth(&wheel, outside))
    };
    let came = came.map_err(|e| e.to_string())?;
    let parts =
        [("thickness", came.thickness, &row.thickness), ("height", came.height, &row.height)];
    for (what, value, text) in parts {
        let result = printed(value, unit, text, &row.slack);
        if row.misprint.split(' ').any(|wrong| wrong == what) {
            must(result.is_err(), || format!("{what}: the misprint comes out"))?;
        } else {
            result.map_err(|why| [what, ": ", &why].concat())?;
        }
    }
    Ok(())
}

#[derive(Deserialize)]
struct Spanned {
    teeth: String,
    size: String,
    pressure: String,
    shift: String,
    over: u32,
    span: String,
    slack: String,
}

/// The number of teeth is the one that is offered as the best.
pub(crate) fn spans() -> Vec<Outcome> {
    each("wheel_span.csv", |row: &Spanned| {
        let (size, unit) = size(&row.size);
        let wheel = wheel(&row.teeth, size, &row.pressure, &row.shift);
        let check = || {
            let outside = wheel.outside_diameter().map_err(|e| e.to_string())?;
            let came = span::over(&wheel, outside, None).map_err(|e| e.to_string())?;
            must(came.teeth == row.over, || format!("over {} teeth", came.teeth))?;
            printed(came.reading, unit, &row.span, &row.slack)
        };
        (false, check())
    })
}

#[derive(Deserialize)]
struct Pinned {
    teeth: String,
    size: String,
    pressure: String,
    pin: String,
    what: String,
    value: String,
    slack: String,
}

pub(crate) fn over_pins() -> Vec<Outcome> {
    each("wheel_pins.csv", |row: &Pinned| {
        let (size, unit) = size(&row.size);
        let wheel = wheel(&row.teeth, size, &row.pressure, "0");
        let check = || {
            let outside = wheel.outside_diameter().map_err(|e| e.to_string())?;
            let came = if row.what == "best" {
                pins::range(&wheel, outside).map_err(|e| e.to_string())?.best
            } else {
                let pin = Length::from_inches(fraction(&row.pin)).expect("small");
                pins::over(&wheel, outside, pin).map_err(|e| e.to_string())?.reading
            };
            printed(came, unit, &row.value, &row.slack)
        };
        (false, check())
    })
}

#[derive(Deserialize)]
struct Function {
    degrees: String,
    inv: String,
}

/// There, and back to within what the last place of the table tells of the angle.
pub(crate) fn functions() -> Vec<Outcome> {
    each("wheel_involute.csv", |row: &Function| {
        let angle = Angle::from_degrees(fraction(&row.degrees)).expect("small");
        let check = || {
            printed(involute::inv(angle).map_err(|e| e.to_string())?, 1.0, &row.inv, "")?;
            let back = involute::angle(fraction(&row.inv)).map_err(|e| e.to_string())?;
            let wanted = float::of(fraction(&row.degrees));
            let tan = float::tan_turns(float::of(angle.turns()));
            let apart = float::of(half_a_place(&row.inv)) / (tan * tan) * 180.0 / float::PI;
            must((back.value - wanted).abs() <= apart * 1.01, || format!("{} back", back.value))
        };
        (false, check())
    })
}
