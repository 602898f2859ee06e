//! The words of the Thread room.
use super::{count, decimal};
use crate::room::thread::Note;
use handturn::measure::write::Decimal;
use handturn::measure::{Angle, Length};
use handturn::number::{Approx, float};
use handturn::thread::blind::PickUp;
use handturn::thread::dial::Runs;
use handturn::thread::half_nuts::Closing;
use handturn::thread::infeed::{Depths, Infeed, Nose, Swing};
use handturn::thread::limits::{Class, Fit, Position, Side};
use handturn::thread::name::{self, Found};
use handturn::thread::passes::{Pass, Plan};
use handturn::thread::still::{Left, Still, Verdict};
use handturn::thread::wires::{self, Measured, Over};
use handturn::thread::{Hand, Kind, Source, Thread};

macro_rules! words {
    ($($name:ident = $text:literal;)*) => {
        $(pub(crate) const $name: &str = $text;)*
        /// All labels, for the test that reads them.
        #[cfg(test)]
        pub(crate) const ALL: &[&str] = &[$($text),*];
    };
}

words! {
    THREAD = "Thread";
    WHICH_THREAD = "Which thread";
    HOW = "How the thread is given";
    BY_NAME = "By name";
    MY_OWN = "My own";
    NAME_HINT = "As on the drawing: M6x0.75-6g, 1/4 BSF, 2 BA, 3/8 x 32 ME. LH for left hand, Tr16x8 P4 for two starts.";
    SEVERAL = "This name stands for several";
    IN_THIS_JOB = "In this job: clock threads";
    CHIP_ARBOR = "wheel arbor";
    CHIP_SCREW = "pillar screw";
    CHIP_CAP = "bezel cap";
    CHIP_CUP = "oil cup";
    CHIP_FEED = "feed screw";
    SIDE = "What is made";
    SCREW = "Screw";
    NUT = "Nut";
    CLASS = "Class";
    NO_CLASS = "No standard sets limits for this one: its basic sizes are given.";
    FORM = "Form";
    OWN_ANGLE = "Own angle";
    ANGLE_BETWEEN = "Angle between the flanks";
    CREST_FLAT = "Crest flat, in pitches";
    ROOT_FLAT = "Root flat, in pitches";
    OUTSIDE_MM = "Outside, mm";
    PITCH_OR_TPI = "Pitch, mm or tpi";
    OWN_HINT = "Pitch as 1.5, 1/16 in or 32 tpi. Outside as 20 or 3/4 in.";
    STARTS = "Starts";
    HAND = "Hand";
    RIGHT_HAND = "Right hand";
    LEFT_HAND = "Left hand";

    STEPS = "Steps";
    SIZE_IT = "Size it";
    CUT_IT = "Cut it";
    MEASURE_IT = "Measure it";

    PITCH_LINE = "pitch line";
    DEEP = "deep";
    FLAT = "flat";
    TO_SCALE = "long, drawn to scale";

    MAX = "Max";
    MIN = "Min";
    OUTSIDE = "Outside";
    PITCH_DIAMETER = "Pitch dia. (effective)";
    ROOT = "Root";
    HOLE = "Hole";
    TOOL_SETS = "tool sets it";
    TAP_SETS = "tool or tap sets it";
    BASIC = "Basic sizes";

    ANVIL = "anvil";
    CORE_LEFT_OUT = "to scale, middle of the core left out";
    TO = "to";
    WIRES_OWNED = "Wires, needles and drill shanks owned, mm";
    WIRE_USED = "Wire to use (empty: the best of them), mm";
    MY_READING = "My reading, mm";
    BASIC_ONLY = "Worked from basic sizes: no standard sets limits for it.";
    NUT_BY_GAUGE = "Wires measure screws. A nut is tried with a gauge or its own screw; its limits:";

    HOW_FED = "How it is fed";
    TOP_SLIDE = "Top slide set over";
    SQUARE_ACROSS = "Square across";
    FROM_SQUARE = "from square across";
    ON_BED_SCALE = "if its scale reads zero along the bed";
    DEPTH_STRAIGHT = "Depth, straight in";
    DEPTH_SLIDE = "Depth on the top slide";
    WIDEN = "Then widen the groove along the bed by";
    EQUAL_METAL = "Each pass takes about the same metal, so the steps shrink. Readings are whole marks of your dial.";
    TOOL_AND_DIAL = "Tool and dial";
    WAY_OF_INFEED = "Way of infeed";
    MODIFIED = "Near the flank";
    FLANK = "Along the flank";
    PLUNGE = "Straight in";
    SHORT_BY = "Short of the flank by, degrees";
    NOSE = "Nose of the tool";
    NOSE_RADIUS = "Round nose";
    NOSE_FLAT = "Flat nose";
    NOSE_MM = "Radius or flat, mm";
    DIAL_UNIT = "Unit of the dial";
    DIAL_MM = "Dial in mm";
    DIAL_INCH = "Dial in inches";
    DIAL_READS = "What the dial reads";
    READS_RADIUS = "Reads the travel";
    READS_DIAMETER = "Reads the diameter";
    DIVISION = "One mark";
    MARKS_ROUND = "Marks once round";
    FIRST_CUT = "First cut";
    LEAST_CUT = "Least cut";
    SPRING = "Spring passes";
    BLANK_FIELDS = "A field left empty is filled from the thread. First and least cut are starting points for steel on a small lathe.";

    BEGIN = "Begin cutting";
    BEGIN_WHY = "Freezes these figures and keeps every tick on this device, even if the browser is killed.";
    UNDER_WAY = "Passes under way:";
    GO_ON = "Go on";
    BRING_BACK = "Bring it back";
    FROZEN = "figures as they were when cutting began";
    ALL_CUT = "All passes cut";
    ALL_CUT_WHY = "Try the fit or measure before the work leaves the lathe.";
    UNDO = "Undo last tick";
    PUT_BY = "Put by for now";
    TAKE_OUT = "Take this job out";
    PUT_BY_WHY = "Put by, it waits here with its ticks.";
    ELSEWHERE = "Another tab ticks these passes; this one only shows them.";
    TAKE_OVER = "Tick here";
    SAVING = "Saving…";
    MEASURED_SO_FAR = "Measured so far";
    PITCH_DIAMETER_MM = "Pitch diameter measured, mm";
    GO_FROM_THERE = "Go on from there";

    HALF_NUTS = "Half nuts and the thread dial";
    START_AND_STOP = "Where to start and stop; groove and speed";
    BORING_TOOL = "Does the boring tool fit";
    SEVERAL_STARTS = "From start to start";
    PICK_UP = "Picking the thread up again";
    KEEP_SHUT = "Keep the half nuts shut.";
    REVERSE_CARE = "Draw the tool out, stop, reverse back, go again. A screwed-on chuck can unwind in reverse: slow, no sudden stop; draw out before reversing.";
    BLIND = "Blind thread.";
    BLIND_CARE = "By hand or at the slowest speed.";
    DIAL_TEETH = "Teeth of the dial’s gear";
    DIAL_MARKS = "Marks on it";
    DIAL_NUMBERED = "Of them numbered";
    START_CLEAR = "Start clear of the work, three pitches";
    RUNS_ON = "Runs on after you see the mark";
    GROOVE_LONG = "Shortest groove at the end";
    STOP_AT = "Carriage stop, from the work’s end";
    DRILL_FULL = "Drill at full diameter";
    DRILL_POINT = "Drill to its point, 118°";
    IS_BLIND = "The thread is blind or ends at a shoulder";
    THREAD_LONG = "Length of thread, mm";
    TOOL_WIDE = "Tool width, mm";
    RPM = "Spindle turns a minute";
    REACTION = "From seeing to stopping, ms";
    TAP_LEAD = "Lead of the tap, in threads";
    BAR = "Bar diameter, mm";
    NOSE_OUT = "Nose stands out, mm";
    ROOM = "Room wanted, mm";
    BAR_FITS = "It enters the hole, cuts to depth and comes out clear.";
    BY_SLIDE = "By the top slide along the bed:";
    BY_DRIVER = "By the first driver, out of mesh:";
    BY_CARRIAGE = "By the carriage, spindle standing, half nuts open:";
    FIRST_DRIVER = "Teeth of the first driver";
    SLACK = "Slack of gears, screw and nuts along the bed, mm";
    LEFT_RUNS = "Left hand: the tool travels towards the tailstock, so everything is read the other way along the bed.";
}

/// `1/4 x 40 ME` with a true times sign.
#[must_use]
pub fn times_sign(name: &str) -> String {
    let mut text = String::new();
    let mut before = ' ';
    for c in name.chars() {
        let joins = c == 'x' && (before == ' ' || before.is_ascii_digit());
        if joins {
            if before != ' ' {
                text.push(' ');
            }
            text.push('×');
        } else {
            if before == 'x' && text.ends_with('×') && c != ' ' {
                text.push(' ');
            }
            text.push(c);
        }
        before = c;
    }
    text
}

/// What a thread that was found is called.
#[must_use]
pub fn found_name(found: &Found) -> String {
    let Some((series, size)) = found.listed else { return own_name(&found.thread) };
    let mut text = String::new();
    name::write(series, size, &mut |piece| text.push_str(piece));
    let mut text = times_sign(&text);
    if found.thread.starts > 1 {
        text += ", ";
        text += &starts(found.thread.starts);
    }
    text
}

/// What a thread in no list is called: form, outside, pitch, starts.
#[must_use]
pub fn own_name(thread: &Thread) -> String {
    let mut text = [form(thread.form.kind), " ", &decimal(thread.major.mm(), 3), " × "].concat();
    text += &decimal(thread.pitch.mm(), 3);
    if thread.starts > 1 {
        text += ", ";
        text += &starts(thread.starts);
    }
    text
}

/// How many starts.
#[must_use]
pub fn starts(starts: u8) -> String {
    count(u32::from(starts), "start", "starts")
}

/// A form's name.
#[must_use]
pub const fn form(kind: Kind) -> &'static str {
    match kind {
        Kind::Metric => "Metric",
        Kind::Unified => "Unified",
        Kind::Whitworth => "Whitworth",
        Kind::Pipe => "Pipe",
        Kind::Ba => "BA",
        Kind::Trapezoidal => "Trapezoidal",
        Kind::Acme => "Acme",
        Kind::Square => "Square",
        Kind::Own => "Own form",
    }
}

/// A form on its chip, with its angle.
#[must_use]
pub fn form_chip(value: &str) -> &'static str {
    match value {
        "metric" => "Metric 60°",
        "unified" => "Unified 60°",
        "whitworth" => "Whitworth 55°",
        "ba" => "BA 47½°",
        "tr" => "Tr 30°",
        "acme" => "Acme 29°",
        _ => "Square",
    }
}

/// A class: `6g`, `2A`, `medium`.
#[must_use]
pub fn class(class: Class, kind: Kind) -> String {
    let internal = class.side == Side::Internal;
    let letter = |position| {
        let small = match position {
            Position::E => "e",
            Position::F => "f",
            Position::G => "g",
            Position::H => "h",
        };
        if internal { small.to_ascii_uppercase() } else { small.to_owned() }
    };
    match class.fit {
        Fit::Iso(pitch, crest) => {
            let mut text = pitch.grade.to_string() + &letter(pitch.position);
            if crest != pitch {
                text += &crest.grade.to_string();
                text += &letter(crest.position);
            }
            text
        }
        Fit::Number(number) => {
            let letter = match (kind, internal) {
                (Kind::Acme, _) => "G",
                (_, true) => "B",
                (_, false) => "A",
            };
            number.to_string() + letter
        }
        Fit::Close => "close".to_owned(),
        Fit::Medium => "medium".to_owned(),
        Fit::Free => "free".to_owned(),
        Fit::Normal => "normal".to_owned(),
        Fit::PipeA => "A".to_owned(),
        Fit::PipeB => "B".to_owned(),
    }
}

/// The heading over the answer.
#[must_use]
pub fn heading(name: &str, hand: Hand, stale: bool) -> String {
    let hand = if hand == Hand::Left { ", left hand" } else { "" };
    let last = if stale { "Last good answer: " } else { "" };
    [last, name, hand].concat()
}

/// Millimetres to three places.
#[must_use]
pub fn mm(length: Length) -> String {
    Decimal { value: length.mm(), places: 3 }.to_string()
}

/// Inches to four places.
#[must_use]
pub fn inches(length: Length) -> String {
    length.inches().map_or_else(|_| String::new(), |value| Decimal { value, places: 4 }.to_string())
}

/// Millimetres to three places, of a figure that is not exact.
#[must_use]
pub fn about_mm(mm: f64) -> String {
    about(mm, 3)
}

/// `value` to so many places.
#[must_use]
pub fn about(value: f64, places: u8) -> String {
    let approx = Approx { value, bound: 0.0 };
    handturn::measure::write::rounded(approx, places)
        .map_or_else(String::new, |value| Decimal { value, places }.to_string())
}

/// An angle in degrees, halves as such: `60°`, `47½°`.
#[must_use]
pub fn angle(angle: Angle) -> String {
    let Ok(degrees) = angle.degrees() else { return String::new() };
    if degrees.den() == 2 {
        return degrees.floor().to_string() + "½°";
    }
    decimal(degrees, 2) + "°"
}

/// What the section shows, in a sentence.
#[must_use]
pub fn section_name(thread: &Thread, internal: bool, depth: &str) -> String {
    let side = if internal { "nut" } else { "screw" };
    [
        "Section of the ",
        side,
        ": pitch ",
        &mm(thread.pitch),
        " mm, ",
        depth,
        " mm deep, ",
        &angle(thread.form.angle),
        " between the flanks.",
    ]
    .concat()
}

/// Where a form is laid down.
#[must_use]
pub const fn source(source: Source) -> &'static str {
    match source {
        Source::Iso68 => "ISO 68-1 and ISO 965-1",
        Source::AsmeB11 => "ASME B1.1",
        Source::Bs84 => "BS 84",
        Source::Iso228 => "ISO 228-1",
        Source::Bs93 => "BS 93",
        Source::Iso2901 => "ISO 2901 to 2904",
        Source::AsmeB15 => "ASME B1.5",
        Source::Practice => "common practice",
        Source::Own => "your own figures",
    }
}

/// Where the limits come from.
#[must_use]
pub const fn limits_from(kind: Kind) -> &'static str {
    match kind {
        Kind::Metric => "Limits as ISO 965-1 computes and rounds them.",
        Kind::Unified => "Limits as ASME B1.1 computes and rounds them.",
        Kind::Whitworth => "Limits as BS 84 computes them.",
        Kind::Pipe => "Limits as ISO 228-1 has them.",
        Kind::Ba => "Limits as BS 93 has them.",
        Kind::Trapezoidal => "Limits as ISO 2903 has them.",
        Kind::Acme => "Limits as ASME B1.5 has them.",
        Kind::Square => "Common practice: no standard.",
        Kind::Own => "Your own figures.",
    }
}

/// The wires drawing in a sentence.
#[must_use]
pub fn wires_name(wire: f64, (least, most): (&str, &str)) -> String {
    let wire = about_mm(wire);
    ["Three wires of ", &wire, " mm between flat anvils: ", least, " to ", most, " mm over them."]
        .concat()
}

/// Over which wires.
#[must_use]
pub fn over_wires(wire: Length) -> String {
    ["Over three ", &decimal(wire.mm(), 3), " mm wires"].concat()
}

/// Why no wires can be used.
#[must_use]
pub fn no_wires(error: &handturn::Error) -> String {
    match error.field {
        handturn::Field::Form => {
            "No wire finds a place between square flanks. Measure the root and the space instead."
                .to_owned()
        }
        _ => "No wire serves this thread from one end of its limits to the other.".to_owned(),
    }
}

/// Which wires serve, and why.
#[must_use]
pub fn wire_range(measured: &Measured, range: &wires::Range, wire: Length) -> String {
    let best = wires::best(measured.half_angle, measured.pitch).map_or(0.0, |best| best.value);
    let under = if range.by_root { "it rests in the root" } else { "it sinks below the crests" };
    [
        "Best wire ",
        &about_mm(best),
        " mm. Yours is ",
        &decimal(wire.mm(), 3),
        ", inside the usable ",
        &about_mm(range.least.value),
        " to ",
        &about_mm(range.greatest.value),
        ": thinner, ",
        under,
        "; thicker, it rides on them, at the worst ends of the limits.",
    ]
    .concat()
}

/// The formula people check by hand.
#[must_use]
pub fn wire_formula(measured: &Measured) -> String {
    let (wire, pitch) = factors(measured);
    ["M = pitch dia. + ", &about(wire, 4), " × wire − ", &about(pitch, 4), " × pitch"].concat()
}

/// 1 + 1/sin a, and cot a ÷ 2.
fn factors(measured: &Measured) -> (f64, f64) {
    let turns = float::of(measured.half_angle.turns());
    let sin = float::sin_turns(turns);
    (1.0 + 1.0 / sin, float::cos_turns(turns) / sin / 2.0)
}

/// The formula with its figures at one pitch diameter.
#[must_use]
pub fn wire_line(measured: &Measured, wire: Length, at: Length, over: &Over) -> String {
    let (by_wire, by_pitch) = factors(measured);
    let wire = by_wire * float::of(wire.mm());
    let pitch = by_pitch * float::of(measured.pitch.mm());
    [
        &*mm(at),
        " + ",
        &about_mm(wire),
        " − ",
        &about_mm(pitch),
        " = ",
        &about_mm(over.formula.value),
    ]
    .concat()
}

/// When the lead angle matters.
#[must_use]
pub fn lead_matters(degrees: f64, over: &Over) -> String {
    let off = over.three.value - over.formula.value;
    let angle = about(degrees, 2) + "°";
    if off.abs() < 0.001 {
        return ["Lead angle ", &angle, ": it changes the reading by less than 0.001 mm."].concat();
    }
    let how = if over.formula_will_do() { "" } else { ", and the contact is solved exactly" };
    [
        "Lead angle ",
        &angle,
        ": it adds ",
        &about(off, 4),
        " mm to the formula; it is counted in",
        how,
        ".",
    ]
    .concat()
}

/// The verdict on what was measured.
#[must_use]
pub fn verdict(still: &Still) -> String {
    match still.verdict {
        Verdict::MoreToCut => about_mm(still.to_limit.diameter) + " mm to go",
        Verdict::Within => "Within the limits".to_owned(),
        Verdict::TooFar => about_mm(-still.at_most.diameter) + " mm under. It will be loose.",
    }
}

/// What to do about it.
#[must_use]
pub fn still(still: &Still) -> String {
    let feed = |left: &Left| {
        let straight = about_mm(left.straight);
        let slide = about_mm(left.along_slide);
        if straight == slide {
            return ["Feed ", &straight, " mm (", &thou(left.straight), " thou) straight in"]
                .concat();
        }
        [
            "Feed ",
            &straight,
            " mm straight in, or ",
            &slide,
            " mm on the top slide (",
            &thou(left.along_slide),
            " thou)",
        ]
        .concat()
    };
    match still.verdict {
        Verdict::MoreToCut => [
            "to the top of the limits. ",
            &feed(&still.to_limit),
            "; ",
            &about_mm(still.to_middle.along_slide),
            " mm on the slide to the middle.",
        ]
        .concat(),
        Verdict::Within => {
            ["At most ", &about_mm(still.at_most.diameter), " mm more may come off the diameter."]
                .concat()
        }
        Verdict::TooFar => "Nothing more to feed. Fit a nut to it, or begin again.".to_owned(),
    }
}

/// Millimetres as thou, to a tenth.
#[must_use]
pub fn thou(mm: f64) -> String {
    about(mm / 0.0254, 1)
}

/// Which way the top slide is swung.
#[must_use]
pub const fn swing(swing: Swing) -> &'static str {
    match swing {
        Swing::None => "",
        Swing::Clockwise => "swung clockwise, seen from above",
        Swing::Anticlockwise => "swung anticlockwise, seen from above",
    }
}

/// What the tool touches.
#[must_use]
pub const fn touch(internal: bool) -> &'static str {
    if internal { "Touch on in a bore of" } else { "Touch on at" }
}

/// The work before the thread is cut.
#[must_use]
pub const fn work(internal: bool) -> &'static str {
    if internal { "Bore as bored, mm" } else { "Blank as turned, mm" }
}

/// The depth, worked by hand.
#[must_use]
pub fn depth_lines(ask: &Infeed, depths: &Depths) -> Vec<String> {
    let flat = ask.nose.as_flat(ask.half_angle).map_or(0.0, |flat| flat.value);
    let turns = float::of(ask.half_angle.turns());
    let (work, pitch) = (mm(ask.work), mm(ask.pitch_diameter));
    let (from, to) = if ask.internal { (&pitch, &work) } else { (&work, &pitch) };
    let tan = float::sin_turns(turns) / float::cos_turns(turns);
    let mut lines = Vec::new();
    if let Nose::Radius(radius) = ask.nose {
        lines.push(
            ["Nose: radius ", &mm(radius), " reaches as deep as a flat of ", &about_mm(flat)]
                .concat(),
        );
    }
    if tan > 0.0 && depths.widen.value < 0.0005 {
        lines.push(
            [
                "(",
                from,
                " − ",
                to,
                ") ÷ 2 + (",
                &mm(ask.space),
                " − ",
                &about_mm(flat),
                ") ÷ (2 × ",
                &about(tan, 4),
                ") = ",
                &about_mm(depths.straight.value),
            ]
            .concat(),
        );
    } else {
        lines.push(["To the root: ", &about_mm(depths.straight.value), " deep"].concat());
    }
    if depths.set_over != Angle::ZERO {
        let cos = float::cos_turns(float::of(depths.set_over.turns()));
        lines.push(
            [
                &*about_mm(depths.straight.value),
                " ÷ cos ",
                &angle(depths.set_over),
                " = ",
                &about_mm(depths.straight.value),
                " ÷ ",
                &about(cos, 4),
                " = ",
                &about_mm(depths.along_slide.value),
            ]
            .concat(),
        );
    }
    lines
}

/// What a job is called.
#[must_use]
pub fn job_title(name: &str, hand: Hand, class: Option<String>, internal: bool) -> String {
    let mut text = heading(name, hand, false);
    if let Some(class) = class {
        text += ", ";
        text += &class;
    }
    text + if internal { ", nut" } else { ", screw" }
}

/// How far a job has come.
#[must_use]
pub fn passes_of(title: &str, done: u32, of: u32) -> String {
    [title, ", ", &done.to_string(), " of ", &of.to_string(), " passes cut."].concat()
}

/// A job that was taken out.
#[must_use]
pub fn taken_out(title: &str) -> String {
    [title, " is taken out."].concat()
}

/// Over the next pass.
#[must_use]
pub fn pass_to(pass: &Pass, count: u32, plan: &Plan) -> String {
    let slide = if plan.set_over == Angle::ZERO { "Cross slide" } else { "Top slide" };
    let spring = if pass.spring { ", a spring pass" } else { "" };
    ["Pass ", &pass.number.to_string(), " of ", &count.to_string(), spring, ". ", slide, " to"]
        .concat()
}

/// What the dial reads, in its own unit.
#[must_use]
pub fn dial_figure(pass: &Pass, inch: bool) -> String {
    figure(pass.reading.shows, inch, 2)
}

fn figure(length: Length, inch: bool, least: usize) -> String {
    let (value, most) = if inch { (length.inches(), 5) } else { (Ok(length.mm()), 4) };
    let text = value.map_or_else(|_| String::new(), |value| decimal(value, most));
    // So many places at least, so that figures stand under each other.
    let least = if inch { least + 1 } else { least };
    let places = text.split_once('.').map_or(0, |(_, part)| part.len());
    let point = if places == 0 { "." } else { "" };
    [&*text, point, &"0".repeat(least.saturating_sub(places))].concat()
}

/// The reading in the other unit.
#[must_use]
pub fn other_dial(pass: &Pass, inch: bool) -> String {
    if pass.spring {
        return "spring pass".to_owned();
    }
    let mm = float::of(pass.reading.shows.mm());
    if inch { about_mm(mm) + " mm" } else { thou(mm) + " thou" }
}

/// How far from the pass before, as the dial reads.
#[must_use]
pub fn step(pass: &Pass, diameter: bool, inch: bool) -> String {
    let cut =
        if diameter { pass.cut.mm().times(2).map_or(pass.cut, Length::from_mm) } else { pass.cut };
    "+".to_owned() + &figure(cut, inch, 2)
}

/// The reading in marks.
#[must_use]
pub fn dial_marks(pass: &Pass, plan: &Plan, inch: bool) -> String {
    let reading = pass.reading;
    let marks = count(reading.from_zero, "mark", "marks");
    let mut text = [
        &*marks,
        " from zero, ",
        &figure(plan.dial.division, inch, 2),
        if inch { " in" } else { " mm" },
        " a mark",
    ]
    .concat();
    if reading.turns > 0 {
        text += ": ";
        text += &count(reading.turns, "full turn", "full turns");
        text += " and mark ";
        text += &reading.mark.to_string();
    }
    if plan.runs == Runs::Backwards {
        text += ". In a bore the dial counts back: mark ";
        text += &reading.mark.to_string();
        text += " stands at the line";
    }
    let mm = float::of(reading.shows.mm());
    text += ". ";
    text += &if inch {
        about_mm(mm) + " mm on a metric dial."
    } else {
        thou(mm) + " thou on an inch dial."
    };
    text
}

/// A pass box.
#[must_use]
pub fn pass_name(pass: &Pass, figure: &str) -> String {
    ["Pass ", &pass.number.to_string(), ", ", figure].concat()
}

/// The button that ticks a pass.
#[must_use]
pub fn pass_done(number: u32) -> String {
    ["Pass ", &number.to_string(), " is cut"].concat()
}

/// What whole marks leave of the depth.
#[must_use]
pub fn rounding(plan: &Plan) -> Option<String> {
    let left = plan.left_by_rounding().ok()?;
    let um = float::of(left.mm());
    if um.abs() < 0.0005 {
        return None;
    }
    let side = if um > 0.0 { " mm short of" } else { " mm past" };
    Some(["The nearest mark is ", &about_mm(um.abs()), side, " the depth worked out."].concat())
}

/// Where the limits of what is measured lie.
#[must_use]
pub fn so_far_why(low: Length, high: Length) -> String {
    [
        "Pitch dia. (effective) wanted: ",
        &mm(low),
        " to ",
        &mm(high),
        " mm. Over wires, Measure it gives it from your reading.",
    ]
    .concat()
}

/// After a measurement.
#[must_use]
pub fn counted_on(marks: u32) -> String {
    ["Counted on from the measurement, the dial ", &count(marks, "mark", "marks"), " from zero."]
        .concat()
}

/// The time of the last save.
#[must_use]
pub fn saved_at(time: &str) -> String {
    if time.is_empty() {
        "Saved on this device".to_owned()
    } else {
        "Saved on this device at ".to_owned() + time
    }
}

/// Why nothing is saved.
#[must_use]
pub fn not_saved(why: &str) -> String {
    let why = if why == "full" {
        "the device’s store is full"
    } else {
        "the browser refuses its store"
    };
    ["Not saved: ", why, ". Write the ticks down."].concat()
}

/// A sentence about the last press.
#[must_use]
pub(crate) const fn note(note: Note) -> Option<&'static str> {
    match note {
        Note::None => None,
        Note::Saving => Some("Not counted: the tick before is still being saved."),
        Note::Taken => Some("Not counted: another tab ticks."),
        Note::NoNumber => Some("That is no diameter in millimetres."),
        Note::Past => Some("Nothing is left to cut by that measurement."),
    }
}

/// When the half nuts may close.
#[must_use]
pub fn closing(closing: Closing) -> String {
    match closing {
        Closing::Anywhere => "Half nuts may close anywhere: no dial is needed.".to_owned(),
        Closing::EveryMark => "Close the half nuts at any mark of the dial.".to_owned(),
        Closing::EveryNumbered => {
            "Close the half nuts at any numbered mark, if the first pass began at one.".to_owned()
        }
        Closing::EveryNth { marks } => [
            "Close the half nuts at every ",
            &ordinal(marks),
            " mark from the one the first pass began at.",
        ]
        .concat(),
        Closing::SameMark => {
            "Close the half nuts only at the mark the first pass began at.".to_owned()
        }
        Closing::Never { .. } => {
            "No mark of this dial brings thread and lead screw together again.".to_owned()
        }
    }
}

fn ordinal(n: u32) -> String {
    let end = match (n % 10, n % 100) {
        (_, 11..=13) => "th",
        (1, _) => "st",
        (2, _) => "nd",
        (3, _) => "rd",
        _ => "th",
    };
    n.to_string() + end
}

/// For which screw the dial is worked out.
#[must_use]
pub fn dial_on(screw: &str) -> String {
    ["Lead screw ", screw.trim(), ", as typed in Gear it."].concat()
}

/// A bar that is too big for its hole.
#[must_use]
pub fn bar_too_big(least: Length) -> String {
    [
        "The tool does not come out clear of the thread. It needs a hole of ",
        &mm(least),
        " mm: use a thinner bar.",
    ]
    .concat()
}

/// A nose that is too short.
#[must_use]
pub fn nose_too_short(least: Length) -> String {
    [
        "The bar would rub before the thread is deep enough. The nose must stand out ",
        &mm(least),
        " mm.",
    ]
    .concat()
}

/// Where a start lies by the slide.
#[must_use]
pub fn start_at(start: u32, travel: Length) -> String {
    ["start ", &start.to_string(), " at ", &mm(travel), " mm;"].concat()
}

/// By how many teeth the first driver goes on.
#[must_use]
pub fn driver_on(teeth: u32) -> String {
    [&*count(teeth, "tooth", "teeth"), " on for each start."].concat()
}

/// What the driver's teeth must be.
#[must_use]
pub fn driver_multiple(of: u32) -> String {
    ["its teeth must be a multiple of ", &of.to_string(), "."].concat()
}

/// How far the carriage moves.
#[must_use]
pub fn carriage_by(by: Length) -> String {
    [&*mm(by), " mm (", &inches(by), " in) along the bed for each start."].concat()
}

/// Handing over to Divide.
#[must_use]
pub fn divide_spindle(starts: u32) -> String {
    ["Divide the spindle by ", &starts.to_string()].concat()
}

/// A step of picking a thread up.
#[must_use]
pub fn pick_up(step: PickUp) -> String {
    match step {
        PickUp::SetTool => "Set the tool square to the work, clear of it.".to_owned(),
        PickUp::CloseNuts => "Close the half nuts and leave them closed.".to_owned(),
        PickUp::Forwards(by) => {
            ["Turn the spindle forwards by hand until the carriage has moved ", &mm(by), " mm."]
                .concat()
        }
        PickUp::Stop => "Without turning back, stop with the tool opposite the thread.".to_owned(),
        PickUp::IntoGroove => {
            "Bring the tool into the groove with both slides until both flanks show the same light."
                .to_owned()
        }
        PickUp::ZeroDials => "Set both dials to zero there, and draw out.".to_owned(),
        PickUp::TryPass => "Take a pass that does not cut, and look.".to_owned(),
    }
}
