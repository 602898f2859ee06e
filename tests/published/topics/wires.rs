//! Wires: tensile strength, gauges, and what springs back.
use super::{Outcome, each, must};
use handturn::bench::former::{Section, kept};
use handturn::bench::wire::{KSI, Stuff, gauge};
use handturn::measure::Length;
use handturn::number::float;
use handturn_tests::rows::{fraction, half_a_place};
use serde::Deserialize;

#[derive(Deserialize)]
struct Tensile {
    wire: String,
    least: String,
    most: String,
    note: String,
}

pub(crate) fn tensile() -> Vec<Outcome> {
    each("wire_tensile.csv", |row: &Tensile| {
        if row.least == "none" {
            return (true, must(strength(&row.wire).is_err(), || "is known".into()));
        }
        let same = strength(&row.wire).and_then(|(least, most)| {
            near("least", least, &row.least).and(near("most", most, &row.most))
        });
        let wrong = row.note.starts_with("printed error");
        (wrong, if wrong { must(same.is_err(), || "agrees".into()) } else { same })
    })
}

/// Least and greatest strength of a music wire in inches, in ksi.
fn strength(inches: &str) -> Result<(f64, f64), String> {
    let wire = Length::from_inches(fraction(inches)).map_err(|e| e.to_string())?;
    let tensile = Stuff::Music.metal(wire).map_err(|e| e.to_string())?.tensile;
    Ok((tensile.least / KSI, tensile.most / KSI))
}

/// `found` is what is printed, to half of its last place.
pub(super) fn near(what: &str, found: f64, text: &str) -> Result<(), String> {
    let off = (found - float::of(fraction(text))).abs();
    let allowed = float::of(half_a_place(text)) * (1.0 + 1e-9);
    must(off <= allowed, || format!("{what} {found} for {text}"))
}

#[derive(Deserialize)]
struct Named {
    gauge: String,
    inch: String,
}

pub(crate) fn gauges() -> Vec<Outcome> {
    each("wire_gauges.csv", |row: &Named| {
        let found = gauge(&row.gauge).map_err(|e| e.to_string());
        let wanted = Length::from_inches(fraction(&row.inch)).map_err(|e| e.to_string());
        (false, must(found == wanted.map(Some), || format!("{}: {found:?}", row.gauge)))
    })
}

#[derive(Deserialize)]
struct Bent {
    section: String,
    thick: String,
    radius: String,
    yields: f64,
    modulus: f64,
    kept: String,
    free: String,
}

pub(crate) fn bends() -> Vec<Outcome> {
    each("bends.csv", |row: &Bent| {
        let section = if row.section == "round" { Section::Round } else { Section::Strip };
        let [thick, radius] = [&row.thick, &row.radius].map(|text| Length::from_mm(fraction(text)));
        let kept = kept(section, thick, radius, row.yields, row.modulus).map_err(|e| e.to_string());
        let same = kept.and_then(|kept| {
            let free = float::of(radius.mm()) / kept.value;
            near("kept", kept.value, &row.kept).and(near("free", free, &row.free))
        });
        (false, same)
    })
}
