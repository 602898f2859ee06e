//! Words of rivets.
use crate::words::{about, decimal, mm};
use handturn::bench::rivet::{Filled, Head, Rivet};

words! {
    NAME = "Rivet";
    ABOUT = "Length for a head, by what it must fill";
    ALSO = "snap round pan countersunk head tail shank grip riveting dolly";
    DIAMETER = "Rivet diameter, mm";
    HOLE = "Hole, mm";
    GRIP = "Thickness of all it holds, mm";
    HEAD = "Head to form";
    ROUND = "round";
    PAN = "pan";
    COUNTERSUNK = "countersunk";
    WIDE = "Head across, mm; empty for the usual";
    HIGH = "Head high, mm; empty for the usual";
    ANGLE = "Countersink, whole angle";
    LENGTH = "Length under the head";
    OUT = "Stands out";
    TO_HEAD = "Of that to the head";
    PLAY = "Of that into the hole";
    ACROSS = "Head across";
    TALL = "Head high";
    DEEP = "Head deep";
    PRACTICE = "By the shop’s rule it stands out";
    CARE = "Goggles on. Back the other head with a dolly; keep fingers clear of the set.";
    SOURCE = "volumes of cap, cone and cylinder; round heads 1.6 d across and 0.7 d high by BS 275:1927, pan and countersunk ones and the shop’s rules from memory";
    TRY = "Drive one through scrap of the same thickness first: a set of another shape takes more or less.";
}

/// The question with its answer.
#[must_use]
pub(crate) fn title(rivet: &Rivet, filled: &Filled) -> String {
    [
        "Rivet ",
        &*decimal(rivet.diameter.mm(), 3),
        " mm through ",
        &decimal(rivet.grip.mm(), 3),
        " mm: ",
        &about(filled.length.value, 2),
        " mm long",
    ]
    .concat()
}

/// What stands out by the shop's rule.
#[must_use]
pub(crate) fn practice(filled: &Filled) -> String {
    let (least, most) = filled.practice;
    [&*mm(least), " to ", &mm(most), " mm"].concat()
}

/// The working.
#[must_use]
pub(crate) fn working(rivet: &Rivet, filled: &Filled) -> Vec<String> {
    let short = |length: handturn::measure::Length| decimal(length.mm(), 4);
    let (d, hole, grip) = (short(rivet.diameter), short(rivet.hole), short(rivet.grip));
    let (a, h) = (about(filled.wide.value, 3), about(filled.high.value, 3));
    let head = match rivet.head {
        Head::Round => ["Cap: 2h ÷ 3 × (3A² ÷ 4 + h²) ÷ d², A = ", &*a, ", h = ", &h].concat(),
        Head::Pan => ["Cone: h ÷ 3 × (A² + A d + d²) ÷ d², A = ", &*a, ", h = ", &h].concat(),
        Head::Countersunk => [
            "Cone less hole: (h ÷ 3 × (A² + A B + B²) − B² h) ÷ d², A = ",
            &*a,
            ", B = ",
            &hole,
            ", h = ",
            &h,
        ]
        .concat(),
    };
    vec![
        [&*head, ": ", &about(filled.to_head.value, 3), " mm of shank"].concat(),
        [
            "Play: ",
            &*grip,
            " × (",
            &hole,
            "² ÷ ",
            &d,
            "² − 1) = ",
            &about(filled.play.value, 3),
            " mm of shank",
        ]
        .concat(),
        [&*grip, " + ", &about(filled.out.value, 3), " = ", &about(filled.length.value, 3), " mm"]
            .concat(),
    ]
}

/// What the drawing shows.
#[must_use]
pub(crate) fn picture(rivet: &Rivet, filled: &Filled) -> String {
    ["A rivet in its hole, its tail before and its head after: ", &*title(rivet, filled)].concat()
}
