//! Cutting and measuring threads.
use super::{Outcome, each, must};
use handturn::Cause;
use handturn::measure::{Angle, Length};
use handturn::number::float;
use handturn::thread::half_nuts::{Closing, ThreadDial, closing};
use handturn::thread::infeed::{Feed, Infeed, Nose, apex, infeed};
use handturn::thread::lead::lead_angle;
use handturn::thread::starts::{by_carriage, by_spindle};
use handturn::thread::wires::{self, Measured};
use handturn_tests::rows::{fraction, half_a_place};
use serde::Deserialize;

fn length(text: &str) -> Length {
    Length::from_mm(fraction(text))
}

fn degrees(text: &str) -> Angle {
    Angle::from_degrees(fraction(text)).expect("a small angle")
}

/// A computed length, cut to the nearest of 10^-10.
fn near(value: f64) -> Length {
    Length::from_mm(float::nearest(value, 10_000_000_000).expect("a small length"))
}

fn plus(one: Length, times: i64, other: Length) -> Length {
    let other = other.mm().times(times).expect("small");
    Length::from_mm(one.mm().checked_add(other).expect("small"))
}

/// `found` is the printed value to half of its last place, or to a whole one where the
/// row's note says that the print itself is off by that.
fn printed(what: &str, found: f64, text: &str, note: &str) -> Result<(), String> {
    let off = (found - float::of(fraction(text))).abs();
    let halves = if note.contains("last place off by one") { 2.0 } else { 1.0 };
    let allowed = float::of(half_a_place(text)) * halves * (1.0 + 1e-9);
    must(off <= allowed, || format!("{what} {found} for {text}"))
}

/// A basic thread whose flank reaches `above` the pitch line and as far below.
fn basic(
    half_angle: Angle,
    pitch: Length,
    starts: u32,
    diameter: Length,
    above: Length,
) -> Measured {
    Measured {
        half_angle,
        pitch,
        starts,
        space: Length::from_mm(pitch.mm().over(2).expect("small")),
        pitch_least: diameter,
        pitch_greatest: diameter,
        outside_least: plus(diameter, 2, above),
        outside_greatest: plus(diameter, 2, above),
        crest: length("0"),
        root: plus(diameter, -2, above),
    }
}

fn part(pitch: Length, num: i64, den: i64) -> Length {
    Length::from_mm(pitch.mm().times(num).and_then(|n| n.over(den)).expect("small"))
}

#[derive(Deserialize)]
struct Contact {
    half_angle: String,
    pitch: String,
    starts: u32,
    pitch_diameter: String,
    over: String,
    formula_off: String,
    with_lead_off: String,
}

/// Exact contact over the best wire, and by how much the formulas miss it.
/// Lengths are taken as they stand: nothing but their unit would change.
pub(crate) fn contact() -> Vec<Outcome> {
    each("wires_contact.csv", |row: &Contact| {
        let (pitch, half) = (length(&row.pitch), degrees(&row.half_angle));
        let diameter = length(&row.pitch_diameter);
        let thread = basic(half, pitch, row.starts, diameter, part(pitch, 1, 4));
        let wire = near(wires::best(half, pitch).expect("a wire").value);
        let over = wires::over(&thread, wire, diameter).map_err(|e| e.to_string());
        let check = over.and_then(|over| {
            let off = |value: f64| value - over.three.value;
            let with_lead = over.formula.value + over.lead_term.value;
            let micro = |value: f64, text: &str| {
                let off = value - float::of(fraction(text));
                must(off.abs() <= 1e-6, || format!("{value} for {text}"))
            };
            micro(over.three.value, &row.over)?;
            micro(off(over.formula.value), &row.formula_off)?;
            micro(off(with_lead), &row.with_lead_off)
        });
        (false, check)
    })
}

#[derive(Deserialize)]
struct Steep {
    starts: u32,
    lead_angle: String,
    wire: String,
    over: String,
}

/// The wire that touches at the pitch line of a steep 29° thread, and what it reads.
pub(crate) fn steep() -> Vec<Outcome> {
    each("wires_steep.csv", |row: &Steep| {
        let turns = float::of(degrees(&row.lead_angle).turns());
        let tan = float::tan_turns(turns);
        let diameter = near(f64::from(row.starts) / float::PI / tan);
        let pitch = length("1");
        let thread = basic(degrees("29/2"), pitch, row.starts, diameter, part(pitch, 1, 4));
        let wire = wires::best_with_lead(&thread).expect("a wire").value;
        let over = wires::over(&thread, near(wire), diameter).expect("it rests");
        let above = over.three.value - float::of(diameter.mm());
        let close = |what: &str, found: f64, text: &str| {
            let off = (found - float::of(fraction(text))).abs();
            must(off <= 0.000_025, || format!("{what} {found} for {text}"))
        };
        (false, close("wire", wire, &row.wire).and_then(|()| close("over", above, &row.over)))
    })
}

#[derive(Deserialize)]
struct Formula {
    note: String,
    half_angle: String,
    pitch: String,
    diameter: String,
    less_pitches: String,
    wire: String,
    over: String,
}

/// What three wires read by the formula without the lead angle, from the outside.
pub(crate) fn formula() -> Vec<Outcome> {
    each("wires_formula.csv", |row: &Formula| {
        let (pitch, outside) = (length(&row.pitch), length(&row.diameter));
        let less = pitch.mm().checked_mul(fraction(&row.less_pitches)).expect("small");
        let diameter = plus(outside, -1, Length::from_mm(less));
        let above = Length::from_mm(less.over(2).expect("small"));
        let thread = basic(degrees(&row.half_angle), pitch, 1, diameter, above);
        let over = wires::over(&thread, length(&row.wire), diameter).map_err(|e| e.to_string());
        (false, over.and_then(|over| printed("over", over.formula.value, &row.over, &row.note)))
    })
}

#[derive(Deserialize)]
struct Worked {
    note: String,
    half_angle: String,
    pitch: String,
    starts: u32,
    space: String,
    pitch_diameter: String,
    wire: String,
    what: String,
    value: String,
    reading: String,
}

/// Worked examples: reading, lead-angle term, and a reading turned back.
pub(crate) fn worked() -> Vec<Outcome> {
    each("wires_worked.csv", |row: &Worked| {
        let (pitch, half) = (length(&row.pitch), degrees(&row.half_angle));
        let (diameter, wire) = (length(&row.pitch_diameter), length(&row.wire));
        let space = length(&row.space);
        let above = part(pitch, 1, 4);
        let thread = Measured { space, ..basic(half, pitch, row.starts, diameter, above) };
        let over = wires::over(&thread, wire, diameter).expect("it rests");
        let found = match row.what.as_str() {
            "over" => over.three.value,
            "lead term" => over.lead_term.value,
            "pitch diameter" => {
                let reading = length(&row.reading);
                wires::pitch_diameter(&thread, wire, reading).expect("it rests").value
            }
            other => panic!("{other:?}"),
        };
        (false, printed(&row.what, found, &row.value, &row.note))
    })
}

#[derive(Deserialize)]
struct Constant {
    note: String,
    half_angle: String,
    what: String,
    per_inch: String,
    value: String,
    refused: String,
}

/// Best wire, depth of the groove and the wire's factor; a misprint is not met.
pub(crate) fn constants() -> Vec<Outcome> {
    each("wires_constants.csv", |row: &Constant| {
        let half = degrees(&row.half_angle);
        let pitch = Length::from_mm(fraction(&row.per_inch).inverse().expect("a pitch"));
        let found = match row.what.as_str() {
            "best" => wires::best(half, pitch).expect("a wire").value,
            "groove" => 2.0 * apex(half, part(pitch, 1, 2)).expect("a groove").value,
            "wire" => wire_factor(half),
            other => panic!("{other:?}"),
        };
        let as_printed = printed(&row.what, found, &row.value, &row.note);
        let refused = row.refused == "yes";
        let check = if refused {
            must(as_printed.is_err(), || "the misprint is met".to_owned())
        } else {
            as_printed
        };
        (refused, check)
    })
}

/// By how much the formula grows with the wire: what two wires differ by.
fn wire_factor(half: Angle) -> f64 {
    let thread = basic(half, length("1"), 1, length("100"), length("0.22"));
    let read = |wire: &str| {
        wires::over(&thread, length(wire), length("100")).expect("it rests").formula.value
    };
    (read("0.56") - read("0.54")) / 0.02
}

#[derive(Deserialize)]
struct Range {
    note: String,
    half_angle: String,
    pitch: String,
    above: String,
    least: String,
    best: String,
    greatest: String,
}

/// Usable wires as tables give them: for a lead angle near nought.
pub(crate) fn range() -> Vec<Outcome> {
    each("wires_range.csv", |row: &Range| {
        let (pitch, half) = (length(&row.pitch), degrees(&row.half_angle));
        let above = Length::from_mm(pitch.mm().checked_mul(fraction(&row.above)).expect("small"));
        let thread = basic(half, pitch, 1, part(pitch, 5_000, 1), above);
        let best = wires::best(half, pitch).expect("a wire").value;
        let check = wires::range(&thread).map_err(|e| e.to_string()).and_then(|range| {
            printed("least", range.least.value, &row.least, &row.note)?;
            printed("best", best, &row.best, &row.note)?;
            printed("greatest", range.greatest.value, &row.greatest, &row.note)
        });
        (false, check)
    })
}

#[derive(Deserialize)]
struct LeadAngle {
    diameter: String,
    lead: String,
    degrees: String,
}

/// Lead angles as printed, in whole minutes.
pub(crate) fn lead_angles() -> Vec<Outcome> {
    each("lead_angles.csv", |row: &LeadAngle| {
        let found = lead_angle(length(&row.lead), length(&row.diameter)).expect("sizes").value;
        let off = (found - float::of(fraction(&row.degrees))).abs() * 60.0;
        (false, must(off <= 0.5, || format!("{found}° for {}", row.degrees)))
    })
}

#[derive(Deserialize)]
struct Width {
    note: String,
    half_angle: String,
    space: String,
    below: String,
    width: String,
}

/// The widest tool for a root so far below a line at which the groove is so wide:
/// what a tool that is too blunt is told, in whole micrometres downwards.
pub(crate) fn widths() -> Vec<Outcome> {
    each("tool_widths.csv", |row: &Width| {
        let inch = |text: &str| Length::from_inches(fraction(text)).expect("small");
        let (space, line) = (inch(&row.space), inch("2"));
        let root = plus(line, -2, inch(&row.below));
        let ask = Infeed {
            half_angle: degrees(&row.half_angle),
            space,
            work: inch("2.1"),
            pitch_diameter: line,
            root,
            deepest: Some(root),
            nose: Nose::Flat(space),
            feed: Feed::Plunge,
            internal: false,
            left_hand: false,
        };
        let check = match infeed(&ask).map_err(|e| e.cause) {
            Err(Cause::Blunt { greatest_um }) => {
                printed("width", (f64::from(greatest_um) + 0.5) / 25_400.0, &row.width, &row.note)
            }
            other => Err(format!("{other:?}")),
        };
        (false, check)
    })
}

#[derive(Deserialize)]
struct Depth {
    note: String,
    half_angle: String,
    above: String,
    nose: String,
    kind: String,
    internal: String,
    depth: String,
}

/// Depths to finish for a pitch of one, from the work's surface `above` the pitch line.
pub(crate) fn depths() -> Vec<Outcome> {
    each("infeed.csv", |row: &Depth| {
        let internal = row.internal == "yes";
        let (line, side) = (length("20"), if internal { 2 } else { -2 });
        let nose = if row.kind == "radius" { Nose::Radius } else { Nose::Flat };
        let ask = Infeed {
            half_angle: degrees(&row.half_angle),
            space: length("1/2"),
            work: plus(line, -side, length(&row.above)),
            pitch_diameter: line,
            root: plus(line, side, length("0.2")),
            deepest: None,
            nose: nose(length(&row.nose)),
            feed: Feed::Plunge,
            internal,
            left_hand: false,
        };
        let found = infeed(&ask).map_err(|e| e.to_string());
        (
            false,
            found.and_then(|found| printed("depth", found.straight.value, &row.depth, &row.note)),
        )
    })
}

#[derive(Deserialize)]
struct Starts {
    lead: String,
    starts: u32,
    screw: String,
    r#move: String,
}

/// From start to start: the carriage's move on a screw; without one, the pitch itself
/// and as many parts of a turn as there are starts.
pub(crate) fn starts() -> Vec<Outcome> {
    each("starts.csv", |row: &Starts| {
        let (lead, wanted) = (length(&row.lead), length(&row.r#move));
        let parts = by_spindle(row.starts).expect("several starts").count;
        let found = if row.screw.is_empty() {
            Some(part(lead, 1, i64::from(parts)))
        } else {
            by_carriage(lead, row.starts, length(&row.screw)).expect("sizes")
        };
        let fits = found == Some(wanted) && parts == row.starts;
        (false, must(fits, || format!("{found:?}")))
    })
}

#[derive(Deserialize)]
struct Nuts {
    lead: String,
    screw: String,
    teeth: u32,
    marks: u32,
    numbered: u32,
    closes: String,
}

/// When the half nuts may close.
pub(crate) fn half_nuts() -> Vec<Outcome> {
    each("half_nuts.csv", |row: &Nuts| {
        let inch = |text: &str| Length::from_inches(fraction(text)).expect("small");
        let dial = ThreadDial { teeth: row.teeth, marks: row.marks, numbered: row.numbered };
        let found = closing(inch(&row.lead), inch(&row.screw), dial).expect("a dial");
        let said = match found {
            Closing::Anywhere => "anywhere".to_owned(),
            Closing::EveryMark => "every mark".to_owned(),
            Closing::EveryNumbered => "numbered".to_owned(),
            Closing::EveryNth { marks } => format!("every {marks}"),
            Closing::SameMark => "same".to_owned(),
            Closing::Never { .. } => "never".to_owned(),
        };
        (said == "never", must(said == row.closes, || format!("{found:?}")))
    })
}
