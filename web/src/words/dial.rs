//! Words of the dial: its lines and figures, its vernier, its size, the fine dial.
use super::{about, angle_text, count, decimal, grouped, in_mm, plain};
use handturn::dial::fine::Designed;
use handturn::dial::lines::{Edge, Figures, Reading, Stop};
use handturn::dial::vernier::Laid;
use handturn::head::{FineDial, Sense};
use handturn::measure::{Angle, Length};
use handturn::number::{Approx, Fraction};
use handturn::plate::coordinates::Screw;

words! {
    THE_DIAL = "The dial itself";
    SHOW_DIAL = "Lines, vernier, size";
    PART_OF_DIAL = "What to look at";
    LINES = "Lines";
    VERNIER = "Vernier";
    SIZE = "Size";
    FINE_DIAL = "Fine dial";
    THE_RING = "In this job: the clock’s ring";

    READ_ON = "Cut on";
    HANDWHEEL_RIM = "Handwheel’s rim";
    TABLE_RIM = "Table’s rim";
    FACE = "Face";
    FIGURES_STAND = "Figures stand";
    UPRIGHT = "Upright";
    INVERTED = "Inverted";
    FIGURE_HEIGHT = "Height of figures, mm";
    DIAMETER = "Diameter of the dial, mm";
    SADDLE_STOPS = "Where the saddle stops";
    SCREW = "One turn of its dial moves it";
    MARKS_ROUND = "Marks round that dial";
    FROM_EDGE = "Lines begin so far from the edge";
    DRAWN = "Its dial, as a line is drawn";
    COUNTS_UP = "Counts up";
    COUNTS_DOWN = "Counts down";
    LINE = "Line";
    LENGTH = "Length";
    STOP_AT = "Stop at";
    COMES_TO = "Comes out";
    AS_ASKED = "as asked";
    BEGIN = "Begin";
    ZERO_AT_EDGE = "Saddle’s dial to 0 where the tool just touches the edge.";
    STANDS_STILL = "Drive off, spindle clamp on: the work stands still and the saddle draws each line. Draw the tool out before the saddle goes back.";
    STAMPING = "Stamping: support the rim, wear goggles.";

    PARTS_OF_A_MARK = "Read to so many parts of a mark, or to an angle";
    NUMBERED = "Numbered";
    WITH_DIAL = "With the dial";
    AGAINST_DIAL = "Against it";
    SIDES = "Runs to";
    ONE_SIDE = "One side";
    BOTH_SIDES = "Both sides";
    A_DIVISION_OVER = "A division stands over";
    ONE_MARK = "One mark";
    TWO_MARKS = "Two marks";
    DIVISIONS = "Divisions";
    ONE_DIVISION = "One division";
    ALL_OF_IT = "First line to last";
    LEAST_READING = "Least reading";
    CUT_LINES = "Lines to cut";
    LINE_THAT_MEETS = "Line that meets a mark";

    WIDTH_WANTED = "Division wanted, mm";
    WIDTH_NOW = "Division along the rim";
    CHORD_NOW = "Straight across";
    LINE_WIDTH = "Line";
    LINE_WIDTH_WHY = "a tenth to a fifth of a division reads well: common practice";
    FOR_WIDTH = "Diameter for the division wanted";
    FOR_CHORD = "Diameter for it straight across";
    FOR_SCREW = "Marks that suit a screw";
    LEAD = "One turn of the screw moves";
    MARKS = "Marks";
    ONE_MARK_IS = "One mark is";
    WIDE = "Wide here";
    TAKE = "Take";
    NONE_SUITS = "No round step of inch or millimetre goes into this screw.";

    FINE_WHY = "A screw across the end of an arm turns the plate by small steps. It takes the plate stop’s place.";
    PITCH = "One turn of the screw moves";
    RADIUS = "Plate’s centre to the screw’s line";
    FINE_MARKS = "Marks of its dial";
    STEP = "One mark is to be, at the work";
    TURNS_USED = "Turns used each way";
    WITHIN = "Error that will do, at the work";
    ROUND_STEPS = "Round steps near this arm";
    AT_WORK = "At the work";
    ARM = "Arm";
    NO_STEP = "No round step is near: try another arm or screw.";
    EXACT_RADIUS = "Arm for exactly that";
    A_MARK_IS = "One mark, with the arm as given";
    WORST_OVER = "Worst over the turns used";
    GOOD_FOR = "Stays within what will do";
    COVERS = "Covers half a space of circles from";
    IN_SHOP = "As the head has it";
    PUT_IN_SHOP = "Put it in Shop";
    TANGENT_WHY = "The plate turns by the angle whose tangent is travel ÷ arm, the dial tells equal steps: further out the plate falls behind.";
}

/// What one turn of the table's screw moves, as the Shop has it.
#[must_use]
pub fn of_the_table(screw: &Screw) -> String {
    decimal(screw.lead.mm(), 4) + " mm, the table’s screw in Shop"
}

const fn sense(sense: Sense) -> &'static str {
    match sense {
        Sense::Clockwise => "clockwise",
        Sense::Anticlockwise => "anticlockwise",
    }
}

const fn edge(edge: Edge) -> &'static str {
    match edge {
        Edge::Front => "front edge",
        Edge::Back => "back edge",
        Edge::Centre => "centre",
        Edge::Outside => "outer edge",
    }
}

/// How the figures stand: which way their feet point, which way they climb, what makes
/// the dial read more.
pub fn stand(figures: &Figures) -> [String; 2] {
    let (from, feet) = (edge(figures.lines_from), edge(figures.feet));
    let to_lines = if figures.feet == figures.lines_from { "Feet" } else { "Heads" };
    let side = if figures.climbs_right { "right" } else { "left" };
    [
        [
            "Feet of the figures to the ",
            feet,
            "; lines begin at the ",
            from,
            ". ",
            to_lines,
            " face the lines.",
        ]
        .concat(),
        [
            "To who sees them upright the numbers climb to the ",
            side,
            ". Turned ",
            sense(figures.rises),
            " past a fixed line, the dial reads more.",
        ]
        .concat(),
    ]
}

/// A reading of the saddle's dial: `1 turn + 20`.
pub fn reading(reading: &Reading) -> String {
    let mark = reading.mark.to_string();
    match reading.turns {
        0 => mark,
        turns => [&count(turns, "turn", "turns"), " + ", &mark].concat(),
    }
}

/// A line as it comes out: exactly, or with what it is off by.
pub fn comes_to(stop: &Stop) -> String {
    let off = stop.off.mm();
    if off.is_zero() {
        return AS_ASKED.to_owned();
    }
    let more = if off.is_negative() { " shorter" } else { " longer" };
    [&in_mm(stop.length), ", ", &about_exact(off.abs()), " mm", more].concat()
}

fn about_exact(value: Fraction) -> String {
    decimal(value, 4)
}

/// What a drawing of the dial says: how many marks, and from where it is seen.
pub fn ring_name(marks: u32, numbered: bool) -> String {
    let numbers = if numbered { " and numbers as they will be read" } else { "" };
    ["Face of the dial: ", &count(marks, "mark", "marks"), ", lines", numbers, ", to scale."]
        .concat()
}

/// The same for a stretch of the rim.
pub fn stretch_name(marks: u32, top: Edge) -> String {
    [
        "Stretch of the dial round its zero, unrolled, ",
        edge(top),
        " at the top: ",
        &count(marks, "mark", "marks"),
        " of it, to scale.",
    ]
    .concat()
}

/// What stands under the drawing.
pub fn dial_caption(diameter: Length, stretch: Option<Edge>) -> String {
    let across = [&decimal(diameter.mm(), 3), " mm across"].concat();
    match stretch {
        Some(top) => [
            "A stretch round zero, unrolled, as its reader sees it: ",
            edge(top),
            " at the top. ",
            &across,
            ".",
        ]
        .concat(),
        None => ["As its reader sees it, ", &across, "."].concat(),
    }
}

/// `10 over 9 marks`.
pub fn over_marks(laid: &Laid) -> String {
    [&laid.divisions.to_string(), " over ", &count(laid.over_marks, "mark", "marks")].concat()
}

/// An angle with its fraction of a turn under it.
pub fn of_a_turn(angle: Angle) -> String {
    plain(angle.turns()) + " of a turn"
}

/// What a vernier's drawing shows.
pub fn vernier_name(line: u32, laid: &Laid) -> String {
    [
        "Dial above, vernier below: ",
        &over_marks(laid),
        ". Line ",
        &line.to_string(),
        " meets a mark; no other does.",
    ]
    .concat()
}

/// What the vernier shows under its slider.
pub fn vernier_reads(line: u32, laid: &Laid) -> String {
    let parts = laid.divisions.to_string();
    match line {
        0 => {
            "Zero meets a mark, and so does the last line: the reading is a whole mark.".to_owned()
        }
        _ if line == laid.divisions => {
            "The last line meets a mark, and so does zero: the reading is a whole mark.".to_owned()
        }
        _ => [
            "Line ",
            &line.to_string(),
            " meets: add ",
            &line.to_string(),
            "/",
            &parts,
            " of a mark.",
        ]
        .concat(),
    }
}

/// Two lengths that are not exact: `0.10 to 0.20 mm`.
pub fn from_to_mm([least, most]: [Approx; 2]) -> String {
    [&about(least.value, 2), " to ", &about(most.value, 2), " mm"].concat()
}

/// A round step of a screw.
pub fn step(step: Length, inch: bool) -> String {
    if inch {
        step.inches().map_or_else(|_| String::new(), |inches| decimal(inches, 5) + " in")
    } else {
        decimal(step.mm(), 4) + " mm"
    }
}

/// What of a fine dial is good: `± 4 turns 12 marks`.
pub fn reach(most_marks: u32, per: u32) -> String {
    let (turns, marks) =
        (most_marks.checked_div(per).unwrap_or(0), most_marks.checked_rem(per).unwrap_or(0));
    let marks = count(marks, "mark", "marks");
    if turns == 0 {
        ["± ", &marks].concat()
    } else {
        ["± ", &count(turns, "turn", "turns"), " ", &marks].concat()
    }
}

/// Holes of a circle.
pub fn holes(n: u32) -> String {
    count(n, "hole", "holes")
}

/// An error in seconds that is not exact, its sign kept.
pub fn about_seconds(arcsec: Approx) -> String {
    let places = if arcsec.value.abs() < 0.1 { 4 } else { 2 };
    about(arcsec.value, places) + "″"
}

/// Whether the worst error of a fine dial does, in words.
pub fn worst_says(designed: &Designed) -> &'static str {
    if designed.worst_arcsec.value < 0.0 { "the work falls behind" } else { "the work runs ahead" }
}

/// A fine dial as Shop has it: shift a turn, marks, travel.
pub fn in_shop(dial: &FineDial) -> String {
    [
        &angle_text(dial.shift),
        " of the plate a turn, ",
        &count(dial.marks, "mark", "marks"),
        ", travel ± ",
        &angle_text(dial.travel),
    ]
    .concat()
}

/// A round step of the work: `15″`, `2′`.
pub fn at_work(angle: Angle) -> String {
    let Ok(seconds) = angle.arcsec() else { return String::new() };
    match seconds.over(60) {
        Ok(minutes) if minutes.is_whole() => decimal(minutes, 0) + "′",
        _ => decimal(seconds, 3) + "″",
    }
}

/// Millimetres as inches, of a figure that is not exact.
pub fn about_inches(mm: f64) -> String {
    about(mm / 25.4, 4) + " in"
}

/// How many marks a dial has, for a button.
pub fn marks(marks: u32) -> String {
    grouped(i64::from(marks))
}
