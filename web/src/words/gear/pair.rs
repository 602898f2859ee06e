//! Words of two wheels that run together.
use crate::words::{about, about_mm, angle, decimal, thou};
use handturn::gear::pair::{Mesh, Opening, Pair};
use handturn::measure::Length;
use handturn::number::{Approx, Fraction, float};

words! {
    PAIR = "With its mate";
    MATE = "Teeth of the mate";
    MATE_SHIFT = "Its shift, in modules";
    SET_BY = "What is given";
    BY_BACKLASH = "Backlash";
    BY_CENTRES = "Centre distance";
    CENTRES = "Centre distance, mm";
    BACKLASH_WANTED = "Backlash wanted, mm";
    FELT = "Backlash felt at this distance, mm";
    MATE_WHY = "The mate has the same rack, and its teeth are thinned as these are.";
    APART = "Centres apart";
    STANDARD = "Standard, no backlash drawn in";
    BACKLASH = "Backlash at the pitch circle";
    BETWEEN_FLANKS = "By feeler between the flanks";
    WORKING_ANGLE = "Working pressure angle";
    CONTACT = "Pairs of teeth in contact";
    RATIO = "Turns of this for one of the mate";
}

/// Millimetres of what is not exact.
#[must_use]
pub fn mm(mm: Approx) -> String {
    about_mm(mm.value)
}

/// Degrees to three places.
#[must_use]
pub fn degrees(degrees: Approx) -> String {
    about(degrees.value, 3) + "°"
}

/// A ratio to two places.
#[must_use]
pub fn plain(ratio: Approx) -> String {
    about(ratio.value, 2)
}

/// Whether so many pairs in contact run smoothly.
#[must_use]
pub const fn smooth(smooth: bool) -> &'static str {
    if smooth {
        "on average; 1.2 or more runs smoothly"
    } else {
        "on average; below 1.2 it runs roughly"
    }
}

/// What is wrong with a pair.
#[must_use]
pub fn trouble(mesh: &Mesh) -> Vec<String> {
    let mut lines = Vec::new();
    if mesh.backlash.value < 0.0 {
        lines.push(
            "The teeth don’t go together at this distance: there is no room for backlash."
                .to_owned(),
        );
    }
    for (place, (fouls, clearance)) in mesh.fouls.iter().zip(&mesh.root_clearance).enumerate() {
        let (tips, of) =
            if place == 0 { ("This wheel’s", "mate’s") } else { ("The mate’s", "wheel’s") };
        if clearance.value <= 0.0 {
            lines.push([tips, " tips reach the bottom of the ", of, " gaps."].concat());
        }
        if *fouls {
            lines.push(
                [tips, " tips reach deeper than the ", of, " involute: they would foul its foot."]
                    .concat(),
            );
        }
    }
    lines
}

/// How far to open, or to close.
#[must_use]
pub fn open(opening: &Opening) -> String {
    let by = opening.opening.value;
    let size = about_mm(by.abs());
    let thou = thou(by.abs());
    [if by < 0.0 { "Close by " } else { "Open by " }, &size, " mm (", &thou, " thou)"].concat()
}

/// Where the centres are then.
#[must_use]
pub fn opened(opening: &Opening) -> String {
    let thinned = opening.thinned.value;
    let how = if thinned < 0.0 { "thicker" } else { "thinner" };
    [
        "to ",
        &about_mm(opening.centres.value),
        " mm. Both teeth together are ",
        &about_mm(thinned.abs()),
        " mm ",
        how,
        " than drawn without backlash.",
    ]
    .concat()
}

/// The pair, worked by hand.
#[must_use]
pub fn lines(pair: &Pair, mesh: &Mesh) -> Vec<String> {
    let [first, second] = [&pair.first, &pair.second].map(|wheel| wheel.teeth.to_string());
    let module = pair.first.tooth.size.module().map(Length::mm).unwrap_or(Fraction::ZERO);
    let standard = decimal(mesh.standard.mm(), 4);
    let (centres, working) = (mesh.centres.value, mesh.working_angle.value);
    let apart = about(centres, 4);
    let inv = float::tan_turns(working / 360.0) - working / 180.0 * float::PI;
    let tight = inv - mesh.backlash.value / (2.0 * centres);
    vec![
        ["Standard = (", &first, " + ", &second, ") × ", &decimal(module, 4), " ÷ 2 = ", &standard]
            .concat(),
        [
            "cos αw = ",
            &standard,
            " × cos ",
            &angle(pair.first.tooth.pressure_angle),
            " ÷ ",
            &apart,
            "; αw = ",
            &about(working, 4),
            "°",
        ]
        .concat(),
        [
            "Backlash = 2 × ",
            &apart,
            " × (inv αw − inv of no backlash) = 2 × ",
            &apart,
            " × (",
            &about(inv, 6),
            " − ",
            &about(tight, 6),
            ") = ",
            &about(mesh.backlash.value, 4),
            " (DIN 3960)",
        ]
        .concat(),
    ]
}
