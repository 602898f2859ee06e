//! Words of helical wheels and the table geared for them.
use crate::words::{about, angle, decimal, grouped, plain};
use handturn::gear::table::{Cuts, Geared, Mill};
use handturn::gear::{Helical, HelicalSizes};
use handturn::head::Sense;
use handturn::measure::Length;
use handturn::number::Fraction;
use handturn::thread::Hand;

words! {
    HELIX = "Helix angle";
    HAND = "Hand of the teeth";
    RIGHT = "Right";
    LEFT = "Left";
    FACE = "Face width, mm";
    LEAD = "Lead";
    AXIAL_PITCH = "Pitch along the axis";
    SWING = "Swing the table";
    SEEN_ABOVE = "Seen from above, to scale but for the cutter: the groove on top of the work lies in line with it. Not every tooth is drawn.";
    CUTTER = "cutter";
    TABLE = "table";
    BEYOND = "Few tables swing beyond 45°: swing the cutter’s head for the rest.";
    SWING_WHY = "The arbor lies across the table and cuts on top of the work. Centre the cutter over the work before the table swings.";
    HELIX_CARE = "The clamp stays off for the whole cut. Cutter clear of the work before table or handle goes back, and slack taken up before each cut.";
    GEAR_TABLE = "Gear the table to the head";
    GEARED = "The last gear sits on";
    ON_WORM = "Worm shaft";
    ON_SPINDLE = "Spindle, worm out";
    GEARS = "Change gears (empty: those of Shop)";
    SAME_WAY = "Four gears without an idler cut";
    RIGHT_HAND = "Right hand";
    LEFT_HAND = "Left hand";
    SAME_WAY_WHY = "Try it with the train on: work that moves away from you turns clockwise for a right hand. If not, change this.";
    TABLE_SCREW = "table screw";
    TRY_SIX = "Look at six gears too";
    NO_TRAIN = "No train of your gears can be mounted.";
    NO_GEARS = "Type your change gears here, or list them in Shop.";
    DIVIDES = "Between cuts the pin goes on over the plate, by plain indexing or nearest hole, with the plate stop out so that the gears can turn the plate. Differential can’t be combined: its gears are in use. So is the plate for direct, compound, fine dial and handwheel.";
    SHORT_WHY = "For short leads. The worm is out of mesh: hold the work when the gears come off. Turn the screw by hand, a little at a time.";
    NEVER = "The lead of a wheel has π in it, so no train is exact.";
    OVERLAP = "The face takes in";
    MATE = "With its mate";
    MATE_TEETH = "Teeth of the mate";
    MATE_HELIX = "Its helix angle";
    MATE_HAND = "Its hand";
    SHAFTS = "Angle between the shafts";
    PARALLEL = "parallel";
    CENTRES = "Centre distance";
}

const fn hand(hand: Hand) -> &'static str {
    match hand {
        Hand::Right => "right-hand",
        Hand::Left => "left-hand",
    }
}

/// The helix in a heading.
#[must_use]
pub fn helix(wheel: &Helical) -> String {
    [&angle(wheel.helix), " ", hand(wheel.hand)].concat()
}

/// The blank, worked by hand.
#[must_use]
pub fn lines(wheel: &Helical, sizes: &HelicalSizes) -> Vec<String> {
    let module = wheel.tooth.size.module().map_or(Fraction::ZERO, Length::mm);
    let (teeth, module) = (wheel.teeth.to_string(), decimal(module, 4));
    let beta = angle(wheel.helix);
    let straight = [&*teeth, " × ", &module].concat();
    let add = wheel.tooth.addendum().map_or_else(|_| String::new(), |a| decimal(a.mm(), 4));
    let pitch = about(sizes.pitch_diameter.value, 4);
    vec![
        ["Pitch circle = ", &*straight, " ÷ cos ", &beta, " = ", &pitch, " mm"].concat(),
        [
            "Outside = ",
            &*pitch,
            " + 2 × ",
            &add,
            " = ",
            &about(sizes.outside_diameter.value, 4),
            " mm",
        ]
        .concat(),
        ["Lead = π × ", &*straight, " ÷ sin ", &beta, " = ", &about(sizes.lead.value, 4), " mm"]
            .concat(),
    ]
}

/// What chooses the cutter.
#[must_use]
pub fn virtual_teeth(wheel: &Helical, sizes: &HelicalSizes) -> String {
    [
        "Cut as ",
        &*about(sizes.virtual_teeth.value, 2),
        " straight teeth: ",
        &grouped(wheel.teeth.into()),
        " ÷ cos³ ",
        &angle(wheel.helix),
        ".",
    ]
    .concat()
}

/// Which way the table swings.
#[must_use]
pub const fn way(sense: Sense) -> &'static str {
    match sense {
        Sense::Clockwise => "clockwise, seen from above: its left end away from you",
        Sense::Anticlockwise => "anticlockwise, seen from above: its right end away from you",
    }
}

/// The set-up in a sentence.
#[must_use]
pub fn setup_name(wheel: &Helical, sizes: &HelicalSizes) -> String {
    ["The table swung ", &angle(wheel.helix), " ", way(sizes.table_swings), "."].concat()
}

/// How far the helix is off, with its sign.
#[must_use]
pub fn off(cuts: &Cuts) -> String {
    let off = cuts.off_arcsec.value;
    [
        if off < 0.0 { "−" } else { "+" },
        &about(off.abs(), if off.abs() < 10.0 { 1 } else { 0 }),
        "″",
    ]
    .concat()
}

/// Which lead is cut, and what its error comes to.
#[must_use]
pub fn cuts(cuts: &Cuts, wanted_mm: f64) -> String {
    let long = if cuts.off.value < 0.0 { " mm too short. " } else { " mm too long. " };
    [
        "It cuts a lead of ",
        &*decimal(cuts.lead.mm(), 4),
        " mm for ",
        &about(wanted_mm, 4),
        ": ",
        &about(cuts.off.value.abs(), 4),
        long,
        "Over the face a tooth goes astray by ",
        &about(cuts.off_over_face.value.abs() * 1000.0, 1),
        " µm.",
    ]
    .concat()
}

/// The gears worked by hand.
#[must_use]
pub fn gear_lines(mill: &Mill, geared: Geared, wanted_mm: f64, cuts: &Cuts) -> Vec<String> {
    let machine = mill.lead(geared).map_or_else(|_| String::new(), |lead| decimal(lead.mm(), 4));
    let screw = decimal(mill.screw.mm(), 4);
    let wanted = about(wanted_mm, 4);
    let row = |pick: fn(handturn::train::Pair) -> u16| {
        let teeth: Vec<String> = cuts.chain.pairs().map(|pair| pick(pair).to_string()).collect();
        teeth.join(" × ")
    };
    vec![
        match geared {
            Geared::Worm => [
                "Lead of the machine = ",
                &*plain(mill.ratio),
                " × ",
                &screw,
                " = ",
                &machine,
                " mm",
            ]
            .concat(),
            Geared::Spindle => ["Lead of the machine = the screw’s, ", &*screw, " mm"].concat(),
        },
        ["Driven ÷ drivers wanted = ", &*wanted, " ÷ ", &machine].concat(),
        [
            &*machine,
            " × (",
            &row(|pair| pair.driven),
            ") ÷ (",
            &row(|pair| pair.driver),
            ") = ",
            &decimal(cuts.lead.mm(), 4),
            " mm",
        ]
        .concat(),
    ]
}

/// How a gear on the spindle divides.
#[must_use]
pub fn teeth_on(cuts: &Cuts, grooves: u32) -> String {
    let Some(on) = cuts.teeth_on else {
        return [
            "With the worm out nothing divides but the gear on the spindle, and none here has a multiple of ",
            &*grouped(grooves.into()),
            " teeth.",
        ]
        .concat();
    };
    let last = cuts.chain.pairs().last().map_or(0, |pair| pair.driven);
    [
        "Dividing: swing the gears out of mesh and move the ",
        &*last.to_string(),
        " on the spindle on by ",
        &on.to_string(),
        " teeth each time; chalk the tooth and the gap.",
    ]
    .concat()
}

/// How many pitches the face takes in.
#[must_use]
pub fn overlap(overlap: f64) -> String {
    [&*about(overlap, 2), " pitches along the axis"].concat()
}

/// What that means for a pair on parallel shafts.
#[must_use]
pub const fn overlap_why(overlap: f64) -> &'static str {
    if overlap >= 1.0 {
        "On parallel shafts the teeth always touch somewhere on the face: it runs quietly."
    } else {
        "Less than one: on parallel shafts part of the quiet run is lost. A wider face or more angle helps."
    }
}

/// The angle between the shafts.
#[must_use]
pub fn shafts(shafts: handturn::measure::Angle) -> String {
    if shafts.turns().is_zero() { PARALLEL.to_owned() } else { angle(shafts) }
}
