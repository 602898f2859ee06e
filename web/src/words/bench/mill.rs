//! Words of sums for the mill: sine bar, cuts on centre, rings of holes, V-blocks, dovetails,
//! keyways and flats.
use crate::words::{about, count, decimal};
use handturn::measure::{Angle, Length};
use handturn::number::{Approx, Fraction, float};
use handturn::plate::coordinates::{Comes, Reading};

words! {
    SINE = "Sine bar";
    SINE_ABOUT = "Blocks under a roller for an angle";
    SINE_ALSO = "gauge blocks slip wear angle tilt inspection table";
    SINE_BAR = "Bar, roller to roller, mm";
    SINE_ANGLE = "Angle of the bar";
    SINE_STACK = "Stack the blocks to";
    SINE_MICRON = "0.001 mm in the stack turns it by";
    SINE_YOURS = "From your blocks";
    SINE_NONE = "No gauge blocks are listed in Shop.";
    SINE_SOURCE = "Turning and Boring, F. D. Jones, 1914";
    SINE_CARE = "Wipe bar, rollers, blocks and table clean: no burr, dust or oil on a face before it is wrung on. Hold the work against slipping.";

    SQUARE = "Angle by disk and square";
    SQUARE_ABOUT = "A square’s head set along its blade, a disk in the corner";
    SQUARE_ALSO = "disc combination square head blade setting plug button work planer shaper";
    SQUARE_KIND = "Wanted";
    HEAD_WANTED = "where the head stands";
    ANGLE_WANTED = "the angle";
    DISK = "Disk, diameter mm";
    BLADE_ANGLE = "Angle of blade to surface";
    HEAD_AT = "Blade’s end to the head, mm";
    SET_HEAD = "Set the head from the blade’s end";
    BLADE_AT = "The blade stands at";
    TOUCHES_AT = "Disk touches both at";
    HEAD_OUT = "0.1 mm farther out turns it back by";
    SQUARE_NOTE = "Stand the blade’s end on the surface and push the disk into the corner until it touches blade, surface and head. A larger disk suits a larger angle.";
    SQUARE_SOURCE = "Precision Locating and Dividing Methods, 1914";
    SQUARE_CARE = "Wipe blade, disk and surface. Clamp the work, take the square and disk away, and check again before the cut.";

    CENTRED = "Slot on centre";
    CENTRED_ABOUT = "Touch on, then move across and down";
    CENTRED_ALSO = "saw slitting groove keyseat centre paper middle cut screwdriver touch";
    WORK = "Work, diameter mm";
    CUTTER = "Mill’s diameter or saw’s thickness, mm";
    PAPER = "Paper between, mm";
    DEEP = "Depth at the middle, mm";
    ACROSS = "From the side to the centre";
    TOP_TO_CENTRE = "From the top to the centre";
    SIDE_TO_DEPTH = "From the side to full depth";
    CROSS_READS = "On the cross screw’s dial";
    VERTICAL_READS = "On the mill’s vertical dial";
    TOP_SLIDE_READS = "On the top slide’s dial";
    TOP_SLIDE_STRAIGHT = "Top slide set straight, on its dial";
    FROM = "Cutter works from";
    ABOVE = "above";
    BESIDE = "the side";
    BESIDE_NOTE = "The flank touches the work’s top with the paper just gripped; draw the table clear before the work is raised.";
    DOWN = "From the top to full depth";
    AT_SIDES = "Depth at the slot’s sides";
    LEFT_BELOW = "Left below it";
    CENTRED_NOTE = "The flank touches the work’s side with the paper just gripped; lower the work clear before the table moves.";
    CENTRED_CARE = "Spindle stopped to touch with paper in the fingers. Clamp the work, guard on; lock the table before the cut.";
    COMMON = "common practice; plane geometry";

    RING = "Hole ring";
    RING_ABOUT = "X and Y of every hole, with dial turns";
    RING_ALSO = "bolt circle pcd flange coordinates edge finder xy drill holes circle pattern";
    HOLES = "Holes";
    DIAMETER = "Circle’s diameter, mm";
    FIRST = "First hole at, from X anticlockwise";
    SENSE = "Holes count";
    ANTICLOCKWISE = "anticlockwise";
    CLOCKWISE = "clockwise";
    FROM_LEFT = "Centre from the X edge, mm";
    FROM_FRONT = "Centre from the Y edge, mm";
    FINDER = "Edge finder, diameter mm";
    CHORD = "Hole to hole, straight";
    WORST_HOLE = "Worst that rounding to marks does";
    HOLE_TABLE = "Every hole, from the edges; dials in turns (t) and marks";
    HOLE = "Hole";
    X_AND_DIAL = "X, its dial";
    Y_AND_DIAL = "Y, its dial";
    RING_NOTE = "Zero both dials with the finder just touching each edge. Come up to every reading with the figures rising; where it says “past”, go back that far first, so that the slack stays on one side.";
    RING_CARE = "Clamp the work, lock the table for each hole; drill clear before the table moves.";

    VEE = "Height in a V-block";
    VEE_ABOUT = "How high a round lies in a V";
    VEE_ALSO = "vee block bar shaft cradle centre height difference two diameters";
    ROUND = "Round, diameter mm";
    SIDES_ANGLE = "Angle between the V’s sides";
    V_WIDTH = "V’s width at its face, mm";
    OTHER = "Another round to compare, mm";
    OTHER_HIGHER = "The other’s top stands higher by";
    OTHER_LOWER = "The other’s top stands lower by";
    OTHER_CENTRE_HIGHER = "The other’s centre is higher by";
    OTHER_CENTRE_LOWER = "The other’s centre is lower by";
    TOP = "Top above the V’s face";
    CENTRE = "Centre above the face";
    APEX = "V’s point below the face";
    PER_MM = "Higher for each mm of diameter";
    VEE_CARE = "Clamp the bar before it is cut: a round lying loose in a V climbs out.";
    PLANE = "plane geometry, our own derivation";

    TAIL = "Dovetail over rollers";
    TAIL_ABOUT = "What tail or groove measures";
    TAIL_ALSO = "slide gib pins rolls male female ways measure";
    PART = "Measured";
    OVER = "over a tail";
    BETWEEN = "in a groove";
    FLANKS = "Flanks lean from the bed";
    WIDE = "Width at the wide side, mm";
    HIGH = "Height, mm";
    ROLLER = "Rollers, diameter mm";
    READS = "Over or between the rollers";
    NARROW = "Width at the narrow side";
    TOUCHES = "Roller touches above the corner by";
    TAIL_CARE = "Stop the spindle and clear the cutter before measuring. A dovetail cutter is thin at its neck: light cuts.";
    TAIL_SOURCE = "plane geometry; the same rule stands in the usual handbooks";

    KEYWAY = "Keyway";
    KEYWAY_ABOUT = "Depth from the top, and what it measures";
    KEYWAY_ALSO = "key seat keyseat slot shaft feather";
    SHAFT = "Shaft, diameter mm";
    KEY = "Key, width mm";
    AT_SIDE = "Depth at its side, mm";
    FROM_TOP = "Depth from touching the top";
    OVER_SHAFT = "Bottom to the shaft’s far side";
    ARC = "Round above the key’s width";
    KEYWAY_CARE = "Clamp the shaft against turning and creeping. Guard on; brush, not fingers, for chips.";

    CORNERS = "Across corners";
    CORNERS_ABOUT = "Square, hexagon, any flats: round stock for it";
    CORNERS_ALSO = "hex hexagon square flats af spanner nut octagon polygon point corner";
    SIDES = "Flats";
    KNOWN = "Known";
    BY_FLATS = "across flats";
    BY_STOCK = "round stock";
    SIZE = "That size, mm";
    STOCK = "Round stock for sharp corners";
    FLATS = "Across flats at most";
    FLAT_WIDE = "Width of a flat";
    FLAT_DEEP = "Depth of each cut";
    CORNERS_NOTE = "Gear divides the flats and tells what smaller stock leaves of the corners.";
    CORNERS_CARE = "Clamp on for each flat. Guard on.";
}

/// What is said of a bar that stands steep.
#[must_use]
pub(crate) fn steep(angle: Angle) -> Option<String> {
    let whole = |degrees| Angle::from_degrees(Fraction::whole(degrees)).ok();
    let rest = whole(90)?.turns().checked_sub(angle.turns()).ok()?;
    (angle > whole(45)?).then(|| {
        [
            "Above 45° a sine bar’s error grows steeply. Common practice: set ",
            &*crate::words::angle_text(Angle::from_turns(rest)),
            ", the rest of a right angle, and work from a square face.",
        ]
        .concat()
    })
}

/// A length whole where it is so, else to four places.
#[must_use]
pub(crate) fn short(length: Length) -> String {
    decimal(length.mm(), 4)
}

/// A reading of a dial: turns and mark, and how it is come up to.
#[must_use]
pub(crate) fn dial(reading: &Reading) -> String {
    let turns = |turns: i64, mark: u32| {
        // Held together, so that a narrow cell parts only what is said from where to go back.
        [&*crate::words::grouped(turns), "\u{a0}t\u{a0}+\u{a0}", &mark.to_string()].concat()
    };
    let there = turns(reading.turns, reading.mark);
    match reading.comes {
        Comes::Past { turns: back, mark } => [&*there, ", past\u{a0}", &turns(back, mark)].concat(),
        Comes::Stays => there + ", stays",
        Comes::Straight => there,
    }
}

/// A reading in words: `2 turns and 11 marks, 0.0030 mm over`.
#[must_use]
pub(crate) fn turns_and_marks(reading: &Reading) -> String {
    let turns = u32::try_from(reading.turns).unwrap_or(0);
    let off = about(reading.off.value.abs(), 4);
    let which = if reading.off.value > 0.0 { " mm over" } else { " mm short" };
    let off = if off.chars().any(|c| ('1'..='9').contains(&c)) {
        [", ", &*off, which].concat()
    } else {
        String::new()
    };
    [&*count(turns, "turn", "turns"), " and ", &count(reading.mark, "mark", "marks"), &off].concat()
}

/// Where a sum is told in one line: what, and what it comes to.
#[must_use]
pub(crate) fn told(what: &[&str], comes: Approx) -> String {
    [&*what.concat(), ": ", &about(comes.value, 3), " mm"].concat()
}

/// A line of working: a rule, then figures and what they come to.
#[must_use]
pub(crate) fn line(rule: &str, figures: &[&str], comes: f64) -> String {
    [rule, " = ", &figures.concat(), " = ", &about(comes, 4), " mm"].concat()
}

/// A ratio of trigonometry to six places.
#[must_use]
pub(crate) fn ratio(value: f64) -> String {
    about(value, 6)
}

/// An exact length as a float, for a line of working.
#[must_use]
pub(crate) fn mm(length: Length) -> f64 {
    float::of(length.mm())
}
