//! What sums of bent sheet share: reading the sheet, drawing it bent and flat.
use crate::draw::sketch::{Point, Sketch, round};
use crate::room::bench::sum::{Entry, Given};
use crate::room::steps::Wrong;
use crate::words::bench::bend as says;
use handturn::Field as Of;
use handturn::bench::bend::{NEUTRAL, Sheet, neutral_by_ratio};
use handturn::number::{Fraction, float};

pub(super) const K: Entry = Entry::choice(
    "k",
    says::NEUTRAL,
    &[
        ("ratio", says::RATIO),
        ("soft", says::SOFT),
        ("middling", says::MIDDLING),
        ("hard", says::HARD),
        ("own", says::OWN),
    ],
);
pub(super) const OWN_K: Entry = Entry::number("own-k", says::OWN_K, "0.42").when("k", &["own"]);

/// The sheet as asked.
pub(super) fn sheet(given: &Given) -> Result<Sheet, Wrong> {
    let thickness = given.length("thickness", Of::Thickness)?;
    let radius = given.length("radius", Of::Bend)?;
    let neutral = match given.get("k") {
        "own" => given.number("own-k", Of::Neutral)?,
        "ratio" => neutral_by_ratio(radius, thickness)
            .map_err(|e| (if e.field == Of::Thickness { "thickness" } else { "radius" }, e))?,
        key => {
            let hundredths =
                NEUTRAL.iter().find(|(known, _)| *known == key).map_or(41, |(_, k)| *k);
            Fraction::new(hundredths, 100).unwrap_or(Fraction::ONE)
        }
    };
    Ok(Sheet { thickness, radius, neutral })
}

/// A strip while it is walked along: both faces so far, where it stands, where it looks.
pub(super) struct Walk {
    upper: Vec<Point>,
    lower: Vec<Point>,
    at: Point,
    heading: f64,
    thickness: f64,
    inside: f64,
}

impl Walk {
    /// A strip whose lower face begins at nought and runs to the right.
    pub(super) fn new(sheet: &Sheet) -> Self {
        let thickness = float::of(sheet.thickness.mm());
        let inside = float::of(sheet.radius.mm());
        let mut walk = Self {
            upper: Vec::new(),
            lower: Vec::new(),
            at: (0.0, 0.0),
            heading: 0.0,
            thickness,
            inside,
        };
        walk.mark();
        walk
    }

    /// Both faces where it stands.
    fn mark(&mut self) {
        self.lower.push(self.at);
        self.upper.push(round(self.at, self.thickness, self.heading + 0.25));
    }

    /// So far straight on.
    pub(super) fn straight(&mut self, long: f64) {
        self.at = round(self.at, long, self.heading);
        self.mark();
    }

    /// A bend to the left by so many turns, to the right where they are below nought.
    pub(super) fn bend(&mut self, turns: f64) {
        let left = turns > 0.0;
        // The lower face lies outside of a bend to the left.
        let radius = if left { self.inside + self.thickness } else { self.inside };
        let side = if left { 0.25 } else { -0.25 };
        let centre = round(self.at, radius, self.heading + side);
        let from = self.heading;
        for k in 1..=12 {
            self.heading = from + turns * f64::from(k) / 12.0;
            self.at = round(centre, radius, self.heading - side);
            self.mark();
        }
    }

    /// The strip cut through, and under it the flat one of `flat` millimetres with lines at
    /// `bends`, each from its begin to its end.
    pub(super) fn drawn(mut self, flat: f64, bends: &[(f64, f64)]) -> (Sketch, f64) {
        self.upper.reverse();
        self.lower.append(&mut self.upper);
        let least = |axis: fn(&Point) -> f64| self.lower.iter().map(axis).fold(f64::MAX, f64::min);
        let (left, bottom) = (least(|p| p.0), least(|p| p.1));
        let points: Vec<Point> = self.lower.iter().map(|(x, y)| (x - left, y - bottom)).collect();
        let high = flat * 0.07;
        let top = -flat * 0.09;
        let mut sketch =
            Sketch::default().closed("o m", &points).rect("o", (0.0, top - high), (flat, top));
        for (begins, ends) in bends {
            sketch = sketch.rect("a b", (*begins, top - high), (*ends, top));
        }
        (sketch, top - high)
    }
}
