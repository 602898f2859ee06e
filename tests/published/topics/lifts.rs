//! Sine bars, and chords from hole to hole of a ring.
use super::{Outcome, each, must};
use handturn::bench::tilt::{Rule, Tilt};
use handturn::dial::width::{Across, division};
use handturn::measure::{Angle, Length};
use handturn::number::{Fraction, float};
use handturn_tests::rows::{fraction, half_a_place};
use serde::Deserialize;

#[derive(Deserialize)]
struct Bar {
    bar: String,
    degrees: String,
    unit: String,
    lift: String,
    rule: String,
}

pub(crate) fn bars() -> Vec<Outcome> {
    each("tilts.csv", |row: &Bar| (false, bar(row)))
}

/// The lift in the unit of the row, to its last printed place.
fn bar(row: &Bar) -> Result<(), String> {
    let long = fraction(&row.bar);
    let span = if row.unit == "in" {
        Length::from_inches(long).map_err(|e| e.to_string())?
    } else {
        Length::from_mm(long)
    };
    let angle = Angle::from_degrees(fraction(&row.degrees)).map_err(|e| e.to_string())?;
    let rule = match &*row.rule {
        "sine" => Rule::Sine,
        "tangent" => Rule::Tangent,
        other => return Err(other.into()),
    };
    let lift = Tilt { angle, span, rule }.lift().map_err(|e| e.to_string())?.value;
    printed(if row.unit == "in" { lift / 25.4 } else { lift }, &row.lift)
}

/// Whether `found` rounds to what is printed.
fn printed(found: f64, printed: &str) -> Result<(), String> {
    let off = (found - float::of(fraction(printed))).abs();
    must(off <= float::of(half_a_place(printed)) * 1.000_001, || found.to_string())
}

#[derive(Deserialize)]
struct Chord {
    holes: u32,
    chord: String,
}

pub(crate) fn chords() -> Vec<Outcome> {
    each("chords.csv", |row: &Chord| {
        let one = Length::from_mm(Fraction::ONE);
        let found = division(row.holes, one, Across::Chord).map_err(|e| e.to_string());
        (false, found.and_then(|found| printed(found.value, &row.chord)))
    })
}
