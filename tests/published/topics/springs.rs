//! Springs as worked in text-books, and rivets as a standard tables them.
use super::wires::near;
use super::{Outcome, each, must};
use handturn::bench::rivet::{Head, Rivet};
use handturn::bench::spring::{Compression, Ends, Extension, Torsion};
use handturn::bench::wire::KSI;
use handturn::measure::{Angle, Length};
use handturn::number::{Fraction, float};
use handturn_tests::rows::{fraction, half_a_place};
use serde::Deserialize;

/// Newtons in a pound-force, millimetres in an inch.
const LBF: f64 = 4.448_221_615_260_5;
const INCH: f64 = 25.4;

#[derive(Deserialize)]
struct Worked {
    kind: String,
    given: String,
    printed: String,
}

impl Worked {
    fn text(&self, name: &str) -> Option<&str> {
        let pairs = self.given.split(' ').filter_map(|pair| pair.split_once('='));
        pairs.into_iter().find(|(key, _)| *key == name).map(|(_, text)| text)
    }

    fn fraction(&self, name: &str) -> Fraction {
        fraction(self.text(name).unwrap_or_else(|| panic!("{name} is not given")))
    }

    fn inches(&self, name: &str) -> Length {
        Length::from_inches(self.fraction(name)).expect("small")
    }

    /// A force, or a moment, in newtons and millimetres.
    fn force(&self, name: &str, arm: f64) -> f64 {
        float::of(self.fraction(name)) * LBF * arm
    }

    /// A modulus in psi.
    fn mpa(&self, name: &str) -> f64 {
        float::of(self.fraction(name)) / 1000.0 * KSI
    }

    fn mean(&self) -> Length {
        if self.text("mean").is_some() {
            return self.inches("mean");
        }
        let mean = self.inches("outside").mm().checked_sub(self.inches("wire").mm());
        Length::from_mm(mean.expect("small"))
    }

    /// What is printed, as the core has it, in inches, pounds-force and ksi.
    fn found(&self, name: &str) -> Result<f64, String> {
        let (wire, mean) = (self.inches("wire"), self.mean());
        let inch = |length: Length| float::of(length.mm()) / INCH;
        let none = || Err(name.to_string());
        match &*self.kind {
            "push" => {
                let ends =
                    if self.text("ends") == Some("plain") { Ends::Plain } else { Ends::Squared };
                let spring = Compression {
                    wire,
                    mean,
                    total: self.fraction("total"),
                    ends,
                    free: self.inches("free"),
                    shear_mpa: self.mpa("shear"),
                    load_n: self.force("load", 1.0),
                };
                let it = spring.pushed().map_err(|e| e.to_string())?;
                Ok(match name {
                    "index" => it.index.value,
                    "bergstrasser" => it.bergstrasser.value,
                    "wahl" => it.wahl.value,
                    "rate" => it.rate.value / LBF * INCH,
                    "stress_b" => it.stress_bergstrasser.value / KSI,
                    "gives" => it.gives.value / INCH,
                    "solid" => inch(it.solid),
                    _ => return none(),
                })
            }
            "pull" => {
                let spring = Extension {
                    wire,
                    mean,
                    body: self.fraction("body"),
                    shear_mpa: self.mpa("shear"),
                    modulus_mpa: self.mpa("modulus"),
                    tension_n: Some(self.force("tension", 1.0)),
                    loop_radius: Some(self.inches("loop")),
                    bend_radius: Some(self.inches("bend")),
                    load_n: self.force("load", 1.0),
                };
                let it = spring.pulled().map_err(|e| e.to_string())?;
                Ok(match name {
                    "index" => it.index.value,
                    "active" => it.active.value,
                    "rate" => it.rate.value / LBF * INCH,
                    "free" => inch(it.free),
                    "gives" => it.gives.value / INCH,
                    "stress_b" => it.stress.value / KSI,
                    "loop_bending" => it.loop_bending.value / KSI,
                    _ => return none(),
                })
            }
            _ => {
                let spring = Torsion {
                    wire,
                    mean,
                    body: self.fraction("body"),
                    legs: [self.inches("leg"); 2],
                    modulus_mpa: self.mpa("modulus"),
                    moment_nmm: self.force("load", INCH),
                };
                let it = spring.turned().map_err(|e| e.to_string())?;
                Ok(match name {
                    "index" => it.index.value,
                    "factor" => it.factor.value,
                    "active" => it.active.value,
                    "per_turn" => it.per_turn.value / LBF / INCH,
                    _ => return none(),
                })
            }
        }
    }
}

pub(crate) fn springs() -> Vec<Outcome> {
    each("springs.csv", |row: &Worked| {
        let (name, text) = row.printed.split_once('=').expect("a name and a figure");
        (false, row.found(name).and_then(|found| near(name, found, text)))
    })
}

#[derive(Deserialize)]
struct Headed {
    diameter: String,
    wide: String,
    high: String,
    tail: String,
}

pub(crate) fn rivets() -> Vec<Outcome> {
    each("rivets.csv", |row: &Headed| (false, headed(row)))
}

/// Proportions by the printed figures; the tail by volume, which the print rounds to 1.125.
fn headed(row: &Headed) -> Result<(), String> {
    let diameter = Length::from_inches(fraction(&row.diameter)).map_err(|e| e.to_string())?;
    let angle = Angle::from_degrees(Fraction::whole(90)).map_err(|e| e.to_string())?;
    let (grip, head) = (Length::from_mm(Fraction::whole(20)), Head::Round);
    let rivet = Rivet { diameter, hole: diameter, grip, head, wide: None, high: None, angle };
    let filled = rivet.filled().map_err(|e| e.to_string())?;
    near("wide", filled.wide.value / INCH, &row.wide)?;
    near("high", filled.high.value / INCH, &row.high)?;
    let printed = float::of(fraction(&row.tail));
    let out = filled.out.value / INCH;
    let rounded = 0.000_34 * float::of(diameter.mm()) / INCH;
    let allowed = float::of(half_a_place(&row.tail)) + rounded;
    must((out - printed).abs() <= allowed, || format!("tail {out} for {printed}"))
}
