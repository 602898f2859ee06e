//! The words of the Thread room.
mod cut;
mod gear;
mod job;
mod measure;
mod size;

pub use cut::*;
pub use gear::*;
pub(crate) use job::*;
pub use measure::*;
pub use size::*;

pub use super::{about, about_mm, angle, in_inch, in_mm, inches, mm, taken_as, thou};

use super::{count, decimal};
use handturn::thread::limits::{Class, Fit, Position, Side};
use handturn::thread::name::{self, Found};
use handturn::thread::{Hand, Kind, Thread};

words! {
    THREAD = "Thread";
    WHICH_THREAD = "Which thread";
    HOW = "How the thread is given";
    BY_NAME = "By name";
    MY_OWN = "My own";
    WHICH = "Which is it?";
    NAME_HINT = "As on the drawing: M6x0.75-6g, 1/4 BSF, 2 BA, 3/8 x 32 ME. LH for left hand, Tr16x8 P4 for two starts.";
    SEVERAL = "This name stands for several";
    IN_THIS_JOB = "In this job: clock threads";
    CHIP_ARBOR = "wheel arbor";
    CHIP_SCREW = "pillar screw";
    CHIP_CAP = "bezel cap";
    CHIP_CUP = "oil cup";
    CHIP_FEED = "feed screw";
    MODULE_1 = "Module 1 worm";
    CHIP_WORM = "winding worm";
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

    SIZE_IT = "Size it";
    CUT_IT = "Cut it";
    GEAR_IT = "Gear it";
    MEASURE_IT = "Measure it";

    PITCH_LINE = "pitch line";
    DEEP = "deep";
    FLAT = "flat";
    TO_SCALE = ", drawn to scale; the bar is";

    MAX = "Max";
    MIN = "Min";
    OUTSIDE = "Outside";
    PITCH_DIAMETER = "Pitch dia. (effective)";
    ROOT = "Root";
    HOLE = "Hole";
    TOOL_SETS = "tool sets it";
    TAP_SETS = "tool or tap sets it";
    BASIC = "Basic sizes";
    SIZE = "Size";
    TURN_TO = "Turn the blank to";
    FOR_A_DIE = "For a die:";
    DIE_CARE = "Die under power: slowest speed; the holder must slip, not your hand.";
    TAPPING_DRILL = "Tapping drill you own";
    NO_DRILL = "None of your drills leaves a thread of 30 to 110 %.";
    CORE_HOLE = "To bore for cutting it:";
    CLEAR_CLOSE = "Clearance hole, close";
    CLEAR_MEDIUM = "Clearance hole, medium";
    CLEAR_COARSE = "Clearance hole, coarse";
    DRILL = "drill";
    RELIEF = "Relief groove";
    CHAMFER = "Chamfer at the end";
    ENGAGED = "Length of engagement";
    DRILLS_OWNED = "Drills, taps and dies owned";
    TAP = "Tap";
    DIE = "Die";
    HAVE_IT = "you have it";
    NOT_YOURS = "not in your list";
    ENGAGEMENT = "Engagement wanted, %";

    MEASURED_OUTSIDE = "Measured outside, mm";
    MEASURED_BORE = "Measured bore, mm";
    WHICH_WHY = "Nearest first. A screw may be worn small, a nut large. Press one to take it.";
    NOTHING_LIKE_IT = "No listed thread is near this. Try My own.";

    ANVIL = "anvil";
    CORE_LEFT_OUT = "to scale, middle of the core left out";
    TO = "to";
    WIRE_USED = "Wire to use (empty: the best of them), mm";
    MY_READING = "My reading, mm";
    TO_THE_PASSES = "Take it to the passes";
    NONE_SERVES = "None of your wires serves here: this is the best one, to be got.";
    BASIC_ONLY = "Worked from basic sizes: no standard sets limits for it.";
    NUT_BY_GAUGE = "Wires measure screws. A nut is tried with a gauge or its own screw; its limits:";

    HOW_FED = "How it is fed";
    TOP_SLIDE = "Top slide set over";
    SQUARE_ACROSS = "Square across";
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
    FIRST_CUT = "First cut";
    LEAST_CUT = "Least cut";
    SPRING = "Spring passes";
    BLANK_FIELDS = "A field left empty is filled from the thread. First and least cut are starting points for steel on a small lathe.";

    BEGIN = "Begin cutting";
    BEGIN_WHY = "Freezes these figures and keeps every tick on this device, even if the browser is killed.";
    UNDER_WAY = "Passes under way:";
    ALL_DONE = "Cut to the end:";
    UNREADABLE = "Passes are stored here that this page cannot read; they are left as they are.";
    GO_ON = "Go on";
    BRING_BACK = "Bring it back";
    FROZEN = "Figures as they were when cutting began.";
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

    WHICH_LEAD = "Which lead";
    OF_THE_THREAD = "Of this thread";
    MODULE_WORM = "Module worm";
    DP_WORM = "DP worm";
    PITCH_WORM = "Worm by pitch";
    WORM_PITCH = "Pitch along the worm, mm or tpi";
    MODULE = "Module, mm";
    DP = "Diametral pitch";
    FIRST_STUD = "first driver";
    LEAD_SCREW = "lead screw";
    NO_TRAIN = "No train of these gears can be mounted for this lead.";
    DRIVES = "drives";
    NEXT_BEST = "Next best";
    NEVER_EXACT = "A worm’s lead has π in it, so no train is exact.";
    TO_BE_EXACT = "What would make it exact";
    NO_ONE_GEAR = "No one gear more makes it exact.";
    TRY_SIX = "Look at six gears too";
    MY_LATHE = "My lathe";
    LATHE_WHY = "Kept on this device. The gears shown are only a usual set until you type your own.";

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
        Kind::StubAcme => "Stub Acme",
        Kind::Cycle => "Cycle",
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
                (Kind::Acme | Kind::StubAcme, _) => "G",
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
