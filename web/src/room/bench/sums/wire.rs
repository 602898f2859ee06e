//! What formers and springs ask alike, and how a coil is drawn.
use crate::draw::sketch::{Point, Sketch};
use crate::room::bench::sum::{Entry, Given, Value};
use crate::room::steps::Wrong;
use crate::words::bench::wire as says;
use handturn::Field as Of;
use handturn::bench::wire::{Metal, Stuff, gauge};
use handturn::measure::Length;
use handturn::number::{Approx, float};

/// What springs are wound of.
pub(super) const STUFF: Entry = Entry::choice(
    "of",
    says::STUFF,
    &[
        ("music", says::MUSIC),
        ("hard-drawn", says::HARD_DRAWN),
        ("stainless", says::STAINLESS),
        ("bronze", says::BRONZE),
        ("brass", says::BRASS),
    ],
);

/// Every metal by its name in the package.
pub(super) const METALS: &[(&str, Stuff)] = &[
    ("music", Stuff::Music),
    ("hard-drawn", Stuff::HardDrawn),
    ("stainless", Stuff::Stainless),
    ("bronze", Stuff::PhosphorBronze),
    ("brass", Stuff::HardBrass),
    ("strip", Stuff::SpringStrip),
    ("mild", Stuff::MildSteel),
    ("copper", Stuff::SoftCopper),
];

/// A wire by its diameter or by the name of a gauge.
pub(super) fn wire(given: &Given, name: &'static str) -> Result<Length, Wrong> {
    match gauge(given.get(name)) {
        Ok(Some(length)) => Ok(length),
        Ok(None) => given.length(name, Of::Wire),
        Err(error) => Err((name, error)),
    }
}

/// What the chosen metal stands at that thickness.
pub(super) fn metal(given: &Given, thick: Length, name: &'static str) -> Result<Metal, Wrong> {
    let stuff = given.choice("of", METALS)?;
    stuff.metal(thick).map_err(|error| (name, error))
}

/// Where its figures come from.
pub(super) fn known(given: &Given) -> String {
    if given.get("of") == "music" { says::A228 } else { says::FROM_MEMORY }.to_owned()
}

/// A number as a float.
pub(super) fn float(given: &Given, name: &'static str, of: Of) -> Result<f64, Wrong> {
    given.number(name, of).map(float::of)
}

/// A figure with its unit.
pub(super) const fn number(value: Approx, places: u8, unit: &'static str) -> Value {
    Value::Number { value, places, unit }
}

/// Coils beyond this are not drawn one by one.
const MOST: f64 = 60.0;

/// A coil seen from the side, its axis level: wire and mean diameter, coils in all, and
/// where along the axis the wire stands after so many turns; what lies outside `within` is
/// ground off. `None` where there are too many coils.
pub(super) fn coil(
    mut sketch: Sketch,
    (wire, mean): (f64, f64),
    coils: f64,
    along: impl Fn(f64) -> f64,
    within: (f64, f64),
) -> Option<Sketch> {
    if coils > MOST {
        return None;
    }
    let at = |turns: f64| (along(turns), mean / 2.0 * float::cos_turns(turns));
    for (odd, class) in [(1, "t"), (0, "o m")] {
        let mut half = odd;
        while f64::from(half) / 2.0 < coils - 1e-9 {
            let from = f64::from(half) / 2.0;
            let to = (from + 0.5).min(coils);
            sketch = sketch.closed(class, &rod(at(from), at(to), wire / 2.0, within));
            half += 2;
        }
    }
    Some(sketch)
}

/// A piece of wire with round ends.
fn rod(from: Point, to: Point, radius: f64, (least, most): (f64, f64)) -> [Point; 8] {
    let (x, y) = (to.0 - from.0, to.1 - from.1);
    let long = float::sqrt(x * x + y * y).max(1e-9);
    let (x, y) = (x / long * radius, y / long * radius);
    // Half an octagon at each end: the tangent of an eighth of a turn's half.
    let side = 0.414;
    let place = |(px, py): Point, ahead: f64, left: f64| {
        ((px + x * ahead - y * left).clamp(least, most), py + y * ahead + x * left)
    };
    [
        place(from, -side, 1.0),
        place(from, -1.0, side),
        place(from, -1.0, -side),
        place(from, -side, -1.0),
        place(to, side, -1.0),
        place(to, 1.0, -side),
        place(to, 1.0, side),
        place(to, side, 1.0),
    ]
}
