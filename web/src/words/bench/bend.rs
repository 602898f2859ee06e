//! Words of bent sheet.
use crate::words::{about, decimal};
use handturn::bench::bend::{Folded, Sheet};
use handturn::measure::Length;
use handturn::number::Fraction;

words! {
    NAME = "Bend sheet";
    ABOUT = "Flat length and bend lines for legs, radius and angle";
    ALSO = "bend allowance flat blank setback deduction fold brake bracket channel angle leg development radius";
    THICKNESS = "Thickness, mm";
    RADIUS = "Inside radius, mm";
    LEGS = "Legs in order, mm";
    ANGLES = "Bent by, degrees; one for all or one a bend";
    CORNER = "Legs are measured";
    OUTSIDE = "to the sharp outside";
    INSIDE = "to the sharp inside";
    FLAT_PART = "flat part only";
    NEUTRAL = "K, the layer that keeps its length";
    RATIO = "by radius and thickness";
    SOFT = "soft brass, copper";
    MIDDLING = "mild steel, aluminium";
    HARD = "hard, spring";
    OWN = "my own";
    OWN_K = "K";
    METAL = "Sheet of";
    COPPER = "copper, soft";
    BRASS = "brass, soft";
    HARD_BRASS = "brass, hard";
    STEEL = "mild steel";
    STAINLESS = "stainless";
    ALUMINIUM = "aluminium, soft";
    HARD_ALUMINIUM = "aluminium, hard";
    SPRING = "spring steel";
    FLAT = "Flat length";
    BAND = "Give or take";
    K = "K";
    LEAST_RADIUS = "Least inside radius";
    TABLE = "Bends, from the end of the flat";
    BEND = "Bend";
    BEGINS = "Begins";
    MIDDLE = "Middle";
    ENDS = "Ends";
    ALLOWANCE = "Uses";
    SETBACK = "Setback";
    SOURCE = "any handbook of sheet work; K by DIN 6935’s supplement or handbook lengths for 90°, from memory";
    CARE = "Break the edges and bend across the grain. Fingers clear of the jaws; cut edges are sharp: gloves.";
    TRIAL = "K is a figure of experience, good to about 0.05. Bend a strip of known length, measure, and put your own K in.";
    TIGHT = "This radius is less than the sheet is known to take: it may crack outside. Anneal, or bend wider.";
    EITHER_WAY = "Bends the other way use the same length.";
}

/// K in two places.
#[must_use]
pub(crate) fn k(neutral: Fraction) -> String {
    decimal(neutral, 3)
}

/// A band of least radii, in millimetres.
#[must_use]
pub(crate) fn least_radius(least: Length, most: Length) -> String {
    [&*decimal(least.mm(), 2), " to ", &decimal(most.mm(), 2), " mm"].concat()
}

/// The question with its answer.
#[must_use]
pub(crate) fn title(legs: &[Length], folded: &Folded) -> String {
    let legs: Vec<String> = legs.iter().map(|leg| decimal(leg.mm(), 2)).collect();
    [&*legs.join(" × "), ": ", &about(folded.flat.value, 2), " mm flat"].concat()
}

/// The working.
#[must_use]
pub(crate) fn working(sheet: &Sheet, folded: &Folded, setback: &str) -> Vec<String> {
    let mut lines = vec![
        [
            "Layer that keeps its length: ",
            &*decimal(sheet.radius.mm(), 3),
            " + ",
            &k(sheet.neutral),
            " × ",
            &decimal(sheet.thickness.mm(), 3),
            " from the bend’s centre",
        ]
        .concat(),
        "A bend uses that radius × its angle × π ÷ 180".to_owned(),
        setback.to_owned(),
    ];
    if let Some(first) = folded.lines.first() {
        let first = [
            "First bend: uses ",
            &*about(first.allowance.value, 3),
            ", setback ",
            &about(first.setback.value, 3),
            ", so two outside legs lose ",
            &about(first.deduction.value, 3),
        ];
        lines.push(first.concat());
    }
    lines.push(
        ["Legs less setbacks, and what the bends use: ", &*about(folded.flat.value, 3), " mm"]
            .concat(),
    );
    lines
}

/// How setbacks are worked.
pub(crate) const BY_OUTSIDE: &str = "Setback = (radius + thickness) × tan of half the angle";
/// How setbacks to the inside are worked.
pub(crate) const BY_INSIDE: &str =
    "A leg to the inside corner loses radius × tan of half the angle";
/// Where legs are flat parts.
pub(crate) const BY_FLAT: &str = "Flat parts need no setback";

/// What the drawing shows.
#[must_use]
pub(crate) fn picture(title: &str) -> String {
    ["The bent sheet, and under it the flat with its bend lines. ", title].concat()
}

/// A length on the drawing.
#[must_use]
pub(crate) fn sized(mm: f64) -> String {
    about(mm, 2)
}
