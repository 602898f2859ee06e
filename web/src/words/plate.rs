//! Words of the plate one makes, of the error budget, and of sheets at full size.
use super::{about, about_mm, count, decimal, grouped, kind, mixed, seconds};
use handturn::divide::Way;
use handturn::measure::{Angle, Length};
use handturn::number::Fraction;
use handturn::plate::Source;
use handturn::plate::coordinates::Reading;

words! {
    MAKE = "Make the plate you lack";
    RUN_DRILLING = "Run the drilling";
    RUN_WORK = "Run the work with it";
    CARE = "Clamp the blank flat, guard on. Centre drill each hole, then drill; deburr both sides before the pin goes in.";
    MAKERS = "The machine maker’s manual and local rules go first.";
    FIRST_PLATE = "First plate";
    BLANK_ON = "Blank plate on the head";
    FIT = "Fit the new plate. Each part is then the move above:";
    SAME_RING = "Ring, drill and spacing as before.";
    PLATES = "What each plate brings";
    PLATE = "Plate";
    ITS_HOLES = "Its holes, worst";
    WORK = "Work, worst";
    WORK_RMS = "Work, root mean square";
    PREDICTED = "Predicted, with every cause below in it";
    START = "Figures to start from: put in your own.";
    RING_DRILL = "Ring, drill and blank";
    RING = "Ring, radius in mm";
    DRILL = "Drill, mm";
    DRILLING = "A drilled hole strays by up to, mm";
    RIM = "Rim of the blank, radius in mm";
    RINGS = "Rings on it already, radii in mm";
    WEB = "Metal to be left between holes, mm";
    MULTIPLE = "Times as many holes";
    FIRST_BY = "First plate drilled by";
    NEAREST = "Nearest hole";
    LEAST = "Least error";
    WEB_LEFT = "Metal between holes";
    BESIDE = "Metal to the ring beside";
    TO_RIM = "Metal to the rim";
    PIN_PLAY = "Pin’s play in them";
    OVER_PINS = "Over pins in neighbouring holes";

    BUDGET = "Error budget";
    BUDGET_WHY = "What machine and hands add to what the way rounds, at the work.";
    CAUSES = "Causes and their sizes";
    CAUSE = "Cause";
    WORST = "Worst";
    RMS = "RMS";
    AT_WORK = "Worst at the work";
    ALL_CAUSES = "All together";
    COMPARED = "Ways by this budget";
    WHEEL = "Worm wheel, seconds of the work";
    WORM = "Worm, seconds of the work";
    HOLE = "Holes of a plate, mm";
    PIN = "Play of the pin, mm";
    PLATE_OUT = "Plate off centre, mm";
    READING = "A dial is read to, parts of a mark";
    SAME_SIDE = "Slack taken up from the same side each time";
    BLANK_OUT = "Blank off centre, mm";
    RADIUS = "Radius of circles not measured, mm";
    NO_ERROR = "Nothing here makes an error.";

    COORDINATES = "Hole coordinates";
    TEMPLATE = "Template 1:1";
    TAPE = "Tape for a drum";
    DISKS = "Disks round a disk";
    HOLE_NO = "Hole";
    DIAL_X = "X dial";
    DIAL_Y = "Y dial";
    OFF = "Off, mm";
    FIRST_AT = "First hole at, degrees from X";
    CENTRE_X = "Centre from the left edge, mm";
    CENTRE_Y = "Centre from the lower edge, mm";
    LEAD = "Table screw: one turn, mm";
    MARKS = "Marks on its dial";
    SLACK = "Slack of the screw, mm";
    FALLS_X = "X dial falls as X grows";
    FALLS_Y = "Y dial falls as Y grows";
    COUNTED = "Holes counted";
    DIALS_WHY = "X to the right, Y away from you. Every reading is rounded from the hole’s own place, so nothing adds up. Come up to each with the figures rising; a move that falls goes back past it first.";
    TURNS_MARKS = "turns + mark";
    STAYS = "stays";
    SAVE = "Save as SVG";
    PRINT = "Print it";
    PRINT_WHY = "Print at 100 %, not fitted to the page, then measure the bars.";
    TOO_LARGE = "Larger than A4 or Letter: print it on a larger sheet, or use the coordinates.";
    BAR = "Measure the bar: 100 mm and 4 in, else the print is not to size.";
    JOINT = "joint ";

    NO_HEAD = "No head yet";
    NO_HEAD_WHY = "Divide with a tape round a drum, with disks, or on the table of a mill.";
    DRUM = "Drum, diameter in mm";
    PAPER = "Paper, thickness in mm";
    STRETCH = "The print grows by, per mille";
    THICKER = "The paper may be thicker by, mm";
    PITCH = "Or a pitch wanted, mm";
    PITCH_IS = "Pitch on the flat tape";
    LENGTH = "Length of the tape";
    DRUM_FOR = "Drum for that pitch";
    LAP = "Ends lap by";
    GAP = "Ends gap by";
    TENTH = "A tenth of a millimetre on it";
    LAP_WHY = "It falls on the one part at the joint. Pack or turn down the drum until the ends meet, and all parts are equal again.";
    DISK = "Each disk, diameter";
    CENTRAL = "Disk in the middle";
    DISKS_WHY = "Equal disks that touch each other and the one in the middle divide the turn; their centres lie on the ring.";
    NEEDS_PARTS = "This needs equal parts.";
}

/// How many plates one after the other.
#[must_use]
pub fn plate_number(number: usize) -> String {
    match number {
        0 => FIRST_PLATE.to_owned(),
        1 => "Second plate".to_owned(),
        n => ["Plate ", &(n + 1).to_string()].concat(),
    }
}

/// The row's line.
#[must_use]
pub fn drill_then(holes: u32, then: &str) -> String {
    let drill = ["Drill ", &grouped(holes.into()), " holes"].concat();
    if then.is_empty() { drill } else { [&drill, ", then ", then].concat() }
}

/// The title over the panel, in its large part.
#[must_use]
pub fn drill(holes: u32) -> String {
    ["Drill ", &grouped(holes.into()), ", then"].concat()
}

/// What goes on the head and what is set.
#[must_use]
pub fn blank_on(generation: usize, circle: Option<String>) -> String {
    if generation > 0 {
        return [BLANK_ON, ", behind the plate just made."].concat();
    }
    [BLANK_ON, &circle.map_or_else(String::new, |circle| [", ", &circle, " in use"].concat()), "."]
        .concat()
}

/// How a plate is drilled.
#[must_use]
pub fn drill_by(holes: u32, way: &Way, line: &str) -> String {
    ["Drill ", &grouped(holes.into()), " holes by ", kind(way.kind()), ": ", line, "."].concat()
}

/// Ring, drill and spacing.
#[must_use]
pub fn ring_drill(radius: Length, drill: Length, spacing_mm: f64) -> String {
    let across = radius.mm().times(2).map(Length::from_mm).unwrap_or(radius);
    [
        "Ring ",
        &both(across),
        " across, drill ",
        &both(drill),
        ", spacing ",
        &about(spacing_mm, 2),
        " mm (",
        &about(spacing_mm / 25.4, 4),
        " in).",
    ]
    .concat()
}

/// Millimetres with inches behind.
#[must_use]
pub fn both(length: Length) -> String {
    [&decimal(length.mm(), 3), " mm (", &super::inches(length), " in)"].concat()
}

/// Whether a further plate pays.
#[must_use]
pub fn pays(number: usize, gain: f64, pays: bool) -> String {
    let percent = about(gain * 100.0, 0);
    let which = plate_number(number);
    if pays {
        [&which, " takes another ", &percent, " % off the work’s error: it pays."].concat()
    } else {
        [&which, " would take off only ", &percent, " %: stop before it."].concat()
    }
}

/// Why there is but one.
pub const ONE_ONLY: &str =
    "The worm’s ratio is not whole, so a plate can’t set its own number again.";

/// What the working of a plate is told in: arc-seconds, greatest and between neighbours.
pub struct Working {
    /// The worm's ratio.
    pub ratio: Fraction,
    /// What setting makes of the plate's holes.
    pub setting: (f64, f64),
    /// What drilling makes of them.
    pub strays: (f64, f64),
    /// Radius of the ring.
    pub radius: Length,
    /// How far a drilled hole strays.
    pub drilling: Length,
    /// What setting leaves between neighbours of the work.
    pub apart: f64,
    /// What both leave at the work.
    pub work: (f64, f64),
    /// Holes from one part to the next, whole turns aside.
    pub stride: u32,
}

/// Working, line by line: what is out at the plate and what the worm leaves of it.
#[must_use]
pub fn working(of: &Working) -> Vec<String> {
    let s = |arcsec: f64| seconds(angle(arcsec));
    let ratio = mixed(of.ratio);
    let before = of.apart * handturn::number::float::of(of.ratio);
    vec![
        ["Worst drilled hole by setting: ", &s(of.setting.0)].concat(),
        [
            "Drilling ±",
            &decimal(of.drilling.mm(), 3),
            " mm on a radius of ",
            &decimal(of.radius.mm(), 3),
            " mm: ",
            &s(of.strays.0),
        ]
        .concat(),
        [
            "The worm divides both: (",
            &s(of.setting.0),
            " + ",
            &s(of.strays.0),
            ") ÷ ",
            &ratio,
            " = ",
            &s(of.work.0),
        ]
        .concat(),
        [
            "Neighbours of the work stand ",
            &count(of.stride, "hole", "holes"),
            " apart: (",
            &s(before),
            " + 2 × ",
            &s(of.strays.0),
            ") ÷ ",
            &ratio,
            " = ",
            &s(of.work.1),
        ]
        .concat(),
    ]
}

/// An angle of so many seconds.
#[must_use]
pub fn angle(arcsec: f64) -> Angle {
    let thousandths = handturn::number::float::nearest(arcsec, 1000);
    thousandths.and_then(|arcsec| Angle::from_arcsec(arcsec).ok()).unwrap_or(Angle::ZERO)
}

/// A cause by its name.
#[must_use]
pub fn source(source: Source) -> &'static str {
    match source {
        Source::Rounding => "Rounding of the way",
        Source::Wheel => "Worm wheel",
        Source::Worm => "Worm",
        Source::Holes => "Holes of the plate",
        Source::Drilling => "Drilling",
        Source::Pin => "Play of the pin",
        Source::PlateRunOut => "Plate off centre",
        Source::Reading => "Reading a dial",
        Source::Slack => "Slack",
        Source::Blank => "Blank off centre",
        _ => "Another cause",
    }
}

/// What makes most of the error.
#[must_use]
pub fn dominates(of: Source, share: f64) -> String {
    let cure = match of {
        Source::Rounding => "another way, or a plate made for the number, would lessen it",
        Source::Wheel | Source::Worm => "it belongs to the head: no other setting lessens it",
        Source::Holes => "a plate with a larger circle would lessen it",
        Source::Drilling => {
            "a further plate, drilled with this one, or a larger ring would lessen it"
        }
        Source::Pin => "a closer pin would lessen it",
        Source::PlateRunOut => "centre the plate by an indicator",
        Source::Reading => "a vernier or a finer dial would lessen it",
        Source::Slack => "come up from the same side each time and it is gone",
        Source::Blank => "set the blank true by an indicator",
        _ => "",
    };
    [source(of), " makes most of it, ", &about(share * 100.0, 0), " %: ", cure, "."].concat()
}

/// A budget's plot in a sentence.
#[must_use]
pub fn plot(positions: u32, rounding: &str, most: &str) -> String {
    [
        "Each of ",
        &grouped(positions.into()),
        " positions seen from the first: bars are the rounding, at most ",
        rounding,
        "; the band is how far all causes together can reach, at most ",
        most,
    ]
    .concat()
}

/// A dial's reading: turns and mark.
#[must_use]
pub fn reading(turns: i64, mark: u32) -> String {
    [&grouped(turns), " + ", &mark.to_string()].concat()
}

/// How a reading is come up to.
#[must_use]
pub fn comes(reading_of: &Reading) -> String {
    use handturn::plate::coordinates::Comes;
    match reading_of.comes {
        Comes::Past { turns, mark } => ["back to ", &reading(turns, mark), " first"].concat(),
        Comes::Stays => STAYS.to_owned(),
        _ => String::new(),
    }
}

/// What rounding to marks does to the ring.
#[must_use]
pub fn by_dials(worst_mm: f64, worst: f64, neighbours: f64) -> String {
    [
        "By these dials the worst hole is ",
        &about_mm(worst_mm),
        " mm off along the ring, ",
        &seconds(angle(worst)),
        "; neighbours differ by ",
        &seconds(angle(neighbours)),
        ".",
    ]
    .concat()
}

/// Title of a template.
#[must_use]
pub fn template_title(holes: u32, radius: Length, drill: Length) -> String {
    let across = radius.mm().times(2).map(Length::from_mm).unwrap_or(radius);
    [&count(holes, "hole", "holes"), ", ring ", &both(across), " across, drill ", &both(drill)]
        .concat()
}

/// Title of a tape.
#[must_use]
pub fn tape_title(parts: u32, drum: Length, pitch: f64) -> String {
    [
        &count(parts, "part", "parts"),
        " on a drum of ",
        &both(drum),
        ", pitch ",
        &about_mm(pitch),
        " mm",
    ]
    .concat()
}

/// The button that keeps a sheet, one of so many.
#[must_use]
pub fn save(sheet: usize, of: usize) -> String {
    if of == 1 {
        return SAVE.to_owned();
    }
    [SAVE, ", sheet ", &(sheet + 1).to_string(), " of ", &of.to_string()].concat()
}

/// The circle a plate is drilled on, of a head with so many plates.
#[must_use]
pub fn circle(plates: usize, generation: usize, at: handturn::divide::CircleAt) -> Option<String> {
    (generation == 0 && usize::from(at.plate) < plates).then(|| {
        ["plate ", &(u32::from(at.plate) + 1).to_string(), ", ", &at.holes.to_string(), " circle"]
            .concat()
    })
}

/// Under the drawing of the plate.
#[must_use]
pub fn new_plate(holes: u32) -> String {
    ["The new plate, ", &grouped(holes.into()), " holes."].concat()
}

/// What an error comes to at the work's rim.
#[must_use]
pub fn at_radius(diameter: Length, arcsec: f64) -> String {
    ["At ", &decimal(diameter.mm(), 3), " mm diameter: ", &super::at_rim(angle(arcsec), diameter)]
        .concat()
}

/// Title of a Run that drills a plate.
#[must_use]
pub fn run_title(holes: u32, generation: usize) -> String {
    let number = if generation > 0 {
        [", plate ", &(generation + 1).to_string()].concat()
    } else {
        String::new()
    };
    ["Drill ", &grouped(holes.into()), " holes", &number].concat()
}

/// Why no plate can be made.
#[must_use]
pub fn too_many_holes(holes: u32) -> String {
    ["the plate would need ", &grouped(holes.into()), " holes"].concat()
}
