//! Words of bent rings and clips.
use super::wire::between;
use crate::words::{about, decimal};
use handturn::bench::former::{Bend, Former, Section};

words! {
    NAME = "Former for a ring";
    ABOUT = "What a ring or clip is bent on, so that it springs to size";
    ALSO = "springback spring back mandrel bend clip circlip wire strip jump coil hoop";
    SECTION = "Section";
    ROUND = "round wire";
    FLAT = "strip";
    THICK = "Wire or strip thickness, mm or 20 swg";
    INSIDE = "Inside diameter wanted, mm";
    YIELD = "Yield, MPa: one figure or two";
    MODULUS = "Modulus, GPa";
    DIAMETER = "Former, to begin with";
    BAND = "It may take";
    OPENS = "Springs by";
    ELASTIC = "Stays elastic";
    LADDER = "Formers to try";
    FORMER = "Former";
    LIKELY = "Likely inside";
    LEAST = "At least";
    MOST = "At most";
    STRAIGHT = "springs straight";
    SOURCE = "elastic bending, then plastic without hardening; the strip’s formula stands in text-books of forming, the round wire’s is the same integral over a circle";
    TRIAL = "Begin with the smallest former: a ring that is too small can be opened, and wire that was bent once is no longer the same.";
    NEUTRAL = "Radii run to the neutral line, the middle of the thickness, not to the former.";
}

/// The question with its answer.
#[must_use]
pub(crate) fn title(bend: &Bend, former: &Former) -> String {
    let mm = |length: handturn::measure::Length| decimal(length.mm(), 3);
    [
        "Ring ",
        &*mm(bend.inside),
        " mm inside, ",
        &mm(bend.thick),
        " mm thick: former ",
        &about(former.middle.value, 2),
        " mm",
    ]
    .concat()
}

/// The working.
#[must_use]
pub(crate) fn working(bend: &Bend, former: &Former) -> Vec<String> {
    let thick = decimal(bend.thick.mm(), 4);
    let yields = about(bend.yields.middle(), 0);
    let modulus = about(bend.modulus.middle(), 0);
    let u = about(former.elastic.value, 5);
    let kept = about(former.kept.value, 5);
    let formula = match bend.section {
        Section::Round => {
            "K = 1 − 4 ÷ π × m u, m = (2u² − 1) s ÷ 2 + asin u ÷ (2u) + 4 s³ ÷ 3, s = √(1 − u²)"
        }
        Section::Strip => "K = 1 − 3X + 4X³, X = u ÷ 2",
    };
    vec![
        [
            "u = 2 × yield × R ÷ (modulus × thickness) = 2 × ",
            &*yields,
            " × R ÷ (",
            &modulus,
            " × ",
            &thick,
            ") = ",
            &u,
        ]
        .concat(),
        [formula, " = ", &kept].concat(),
        [
            "R = K × (",
            &*decimal(bend.inside.mm(), 4),
            " + ",
            &thick,
            ") ÷ 2; former = 2R − ",
            &thick,
            " = ",
            &about(former.middle.value, 3),
            " mm",
        ]
        .concat(),
    ]
}

/// By how much it springs, and what the bands make of the former.
#[must_use]
pub(crate) fn may_take(former: &Former) -> String {
    between(former.least, former.most)
}

/// What the drawing shows.
#[must_use]
pub(crate) fn picture(bend: &Bend, former: &Former) -> String {
    ["A ring on its former and let go: ", &*title(bend, former)].concat()
}
