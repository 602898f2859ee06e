//! Words of Size it, and of telling which thread it is.
use super::{HOLE, PITCH_DIAMETER, ROOT, about, about_mm, angle, mm};
use crate::words::{decimal, mixed};
use handturn::measure::Length;
use handturn::number::{Fraction, float};
use handturn::thread::drills::{Drill, DrillSet, Tapping};
use handturn::thread::fitting::Relief;
use handturn::thread::limits::Range;
use handturn::thread::which::{Candidate, Reason};
use handturn::thread::{Kind, Source, Thread};

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
        Source::AsmeB18 => "ASME B1.8",
        Source::Bs811 => "BS 811",
        Source::Practice => "common practice",
        Source::Own => "your own figures",
    }
}

/// Where the limits come from.
#[must_use]
pub const fn limits_from(kind: Kind) -> &'static str {
    match kind {
        Kind::Metric => "Limits from the tables of ISO 965-1.",
        Kind::Unified => "Limits by the formulas of ASME B1.1, in its order of rounding.",
        Kind::Whitworth => "Limits by the formulas of BS 84.",
        Kind::Pipe => "Limits from the table of ISO 228-1.",
        Kind::Ba => "Limits by the formulas of BS 93.",
        Kind::Trapezoidal => "Limits as in ISO 2903.",
        Kind::Acme => "Limits by the formulas of ASME B1.5.",
        Kind::StubAcme => "Limits by the formulas of ASME B1.8.",
        Kind::Cycle => "Sizes of BS 811; its limits are not kept here.",
        Kind::Square => "Common practice: no standard.",
        Kind::Own => "Your own figures.",
    }
}

/// The limits that a blank lies in the middle of.
#[must_use]
pub fn blank_range(cut: &Range) -> String {
    let at = |length: Option<Length>| length.map_or_else(String::new, mm);
    [
        "Middle of ",
        &at(cut.min),
        " to ",
        &at(cut.max),
        ". A little under size keeps the crests from tearing.",
    ]
    .concat()
}

/// A drill by its name, with its size where that is not its name.
#[must_use]
pub fn drill(drill: &Drill) -> String {
    let place = i64::from(drill.place) + 1;
    match drill.set {
        Some(DrillSet::Number) => {
            ["No. ", &place.to_string(), " (", &mm(drill.diameter), " mm)"].concat()
        }
        Some(DrillSet::Letter) => {
            let letter = char::from(b'A' + drill.place % 26).to_string();
            [&*letter, " (", &mm(drill.diameter), " mm)"].concat()
        }
        Some(DrillSet::Fraction) => {
            let size = drill.diameter.inches().map(mixed).unwrap_or_default();
            [&*size, " in (", &mm(drill.diameter), " mm)"].concat()
        }
        _ => decimal(drill.diameter.mm(), 3) + " mm",
    }
}

fn percent(value: Fraction) -> String {
    decimal(value, 0) + " %"
}

/// How much thread a drill leaves, and of what.
#[must_use]
pub fn engagement(tapping: &Tapping, thread: &Thread) -> String {
    let sixty = matches!(thread.form.kind, Kind::Metric | Kind::Unified);
    let mut text = percent(tapping.percent)
        + if sixty { " of full height (1.299 × pitch)" } else { " of the form’s depth" };
    if sixty {
        text += "; ";
        text += &percent(tapping.percent_of_nut);
        text += " of the nut’s own (1.083 × pitch)";
    }
    text + "."
}

/// A drill above the limit of the hole.
#[must_use]
pub fn over_the_hole(most: Length) -> String {
    [
        "Over the hole’s limit of ",
        &*mm(most),
        " mm. For a nut inside its limits ask for more engagement, or bore it.",
    ]
    .concat()
}

/// The next ones owned.
#[must_use]
pub fn also_owned(others: &[Tapping]) -> String {
    let list: Vec<String> = others
        .iter()
        .map(|other| [&*drill(&other.drill), " ", &percent(other.percent)].concat())
        .collect();
    ["Also: ", &list.join(", "), "."].concat()
}

/// A diameter.
#[must_use]
pub fn diameter(length: Length) -> String {
    ["⌀ ", &mm(length), " mm"].concat()
}

/// How wide a relief groove is, and its corners.
#[must_use]
pub fn relief_wide(relief: &Relief) -> String {
    [
        &*mm(relief.width_least),
        " to ",
        &mm(relief.width_most),
        " wide, corners r ",
        &mm(relief.radius),
    ]
    .concat()
}

/// A greatest diameter.
#[must_use]
pub fn at_most(length: Length) -> String {
    ["at most ", &mm(length), " mm"].concat()
}

/// How long a chamfer is at 45°.
#[must_use]
pub fn at_45(length: Length) -> String {
    [&*mm(length), " long at 45°"].concat()
}

/// Basic sizes, worked by hand.
#[must_use]
pub fn size_lines(thread: &Thread) -> Vec<String> {
    let form = &thread.form;
    let pitch = float::of(thread.pitch.mm());
    let mut lines = Vec::new();
    if form.height > Fraction::ZERO {
        let (height, deep) = (float::of(form.height), float::of(form.height) * pitch);
        lines.push(
            [
                "Sharp height H = ",
                &about(height, 4),
                " × ",
                &mm(thread.pitch),
                " = ",
                &about_mm(deep),
            ]
            .concat(),
        );
    }
    let mut line = |name: &str,
                    depth: Result<Length, handturn::Error>,
                    found: Result<Length, handturn::Error>| {
        if let (Ok(depth), Ok(found)) = (depth, found) {
            lines.push(
                [
                    name,
                    ": ",
                    &mm(thread.major),
                    " − 2 × ",
                    &about(float::of(depth.mm()), 4),
                    " = ",
                    &mm(found),
                ]
                .concat(),
            );
        }
    };
    // Where the standard rounds the depth first, the pitch line halves it.
    let to_line = match form.kind {
        Kind::Ba | Kind::Pipe => {
            form.external_depth(thread.pitch).and_then(|depth| depth.mm().over(2))
        }
        _ => form.at(form.addendum, thread.pitch).map(Length::mm),
    };
    line(PITCH_DIAMETER, to_line.map(Length::from_mm), thread.pitch_diameter());
    line(ROOT, form.external_depth(thread.pitch), thread.minor_external());
    line(HOLE, form.internal_depth(thread.pitch), thread.minor_internal());
    lines
}

/// Where the form is laid down.
#[must_use]
pub fn form_from(from: Source) -> String {
    [
        "Form: ",
        source(from),
        ". Limits add the class’s allowance and tolerance to these basic sizes.",
    ]
    .concat()
}

/// How far off a candidate is.
#[must_use]
pub fn off_by(one: &Candidate) -> String {
    let off = |length: Length, what: &str| {
        if length.mm().is_zero() {
            return [what, " just as measured"].concat();
        }
        let sign = if length.mm().is_negative() { "" } else { "+" };
        [what, " measured ", sign, &mm(length), " mm"].concat()
    };
    [&*off(one.off_diameter, "diameter"), ", ", &off(one.off_pitch, "pitch")].concat()
}

/// What tells a candidate from the nearest one.
#[must_use]
pub fn told_by(one: &Candidate) -> String {
    let told: Vec<String> = one
        .reasons
        .iter()
        .map(|reason| {
            let than = |length: Length, more: &str, less: &str| {
                let size = Length::from_mm(length.mm().abs());
                [&*mm(size), " mm ", if length.mm().is_negative() { less } else { more }].concat()
            };
            match reason {
                Reason::Angle => ["its flanks stand at ", &angle(one.thread.form.angle)].concat(),
                Reason::OverTwenty(length) => {
                    "twenty threads are ".to_owned() + &than(*length, "longer", "shorter")
                }
                Reason::Diameter(length) => {
                    "it is ".to_owned() + &than(*length, "larger", "smaller")
                }
            }
        })
        .collect();
    ["Beside the nearest: ", &told.join("; "), "."].concat()
}

/// Two lengths as a span.
#[must_use]
pub fn from_to(least: Length, most: Length) -> String {
    [&*mm(least), " – ", &mm(most), " mm"].concat()
}
