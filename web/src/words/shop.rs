//! What the Shop says: labels and hints, how a field was read, and which ways a
//! setting switches off. What is wrong with a field is in [`super::shop_errors`].
use super::{count, decimal, grouped};
use crate::owned::{Entry, degrees, exact, handwheel_marks};
use handturn::head::{Circle, Head, PlateStop};
use handturn::measure::{Angle, Length};
use handturn::number::Fraction;

/// Why the Shop is worth filling in.
pub const WHY: &str =
    "Answers use only what is listed here. An open Run keeps the head it began with.";
/// The list of heads.
pub const HEADS: &str = "Heads";
/// A new head.
pub const ADD: &str = "Add";
/// A copy of the chosen head.
pub const COPY: &str = "Copy";
/// The chosen head goes.
pub const DELETE: &str = "Delete";
/// The last change comes back.
pub const UNDO: &str = "Undo";
/// The twelve gears as one tap.
pub const TWELVE_GEARS: &str = "Twelve gears 24 to 100";
/// One-tap starts for plates and gears.
pub const STARTS: &str = "Usual sets";
/// Radii are not all known.
pub const EVEN: &str =
    "Circles drawn evenly spaced. Give each its radius, as in 49(51.5), to draw them to scale.";
/// Radii are known.
pub const TO_SCALE: &str = "Drawn to scale.";
/// No more heads fit.
pub const FULL: &str = "No more heads can be kept: delete one first.";

/// Title of the group that an entry opens.
#[must_use]
pub const fn group(entry: Entry) -> Option<&'static str> {
    Some(match entry {
        Entry::Name => "Head",
        Entry::Plates => "Plates",
        Entry::Direct => "Direct",
        Entry::Gears => "Gears",
        Entry::ReachLeast => "Handle and arms",
        Entry::Handwheel => "Dials",
        Entry::WorkDiameter => "Work",
        _ => return None,
    })
}

/// What an entry is called.
#[must_use]
pub const fn label(entry: Entry) -> &'static str {
    match entry {
        Entry::Name => "Name",
        Entry::Ratio => "Worm ratio",
        Entry::WorkTurns => "For a clockwise handle the work turns",
        Entry::Tilted => "Spindle",
        Entry::DegreeRing => "Degree ring figures climb",
        Entry::Slack => "Slack, in handle turns",
        Entry::SpindleClamp => "The spindle has a clamp",
        Entry::Plates => "Holes in each circle, plates parted by /",
        Entry::PlateStop => "Plate stop",
        Entry::Direct => "Notches of direct plates",
        Entry::WormDropsOut => "The worm drops out",
        Entry::Gears => "Change gears owned",
        Entry::StudDistance => "Stud to stud, in teeth",
        Entry::StudMargin => "Rim clear of the next stud, in teeth",
        Entry::MostIdlers => "Idlers the head takes",
        Entry::OneIdler => "With one idler the plate goes",
        Entry::FourGears => "Trains of four gears fit",
        Entry::ReachLeast => "Least circle radius, mm",
        Entry::ReachGreatest => "Greatest circle radius, mm",
        Entry::Pin => "Pin diameter, mm",
        Entry::ArmsLeast => "Arms open from",
        Entry::ArmsGreatest => "Arms open to",
        Entry::Handwheel => "A dial on the handwheel, used without plates",
        Entry::HandwheelMarks => "Marks in one turn, or the worth of one",
        Entry::HandwheelVernier => "Vernier parts in a mark",
        Entry::FineDial => "A fine dial that shifts the plate",
        Entry::FineShift => "One turn shifts the plate by",
        Entry::FineMarks => "Marks on the fine dial",
        Entry::FineTravel => "Travel to each side of zero",
        Entry::FineSlack => "Slack of the fine dial, in marks",
        Entry::WorkDiameter => "Diameter of the work",
    }
}

/// How to fill an entry in, where the label does not say it.
#[must_use]
pub const fn hint(entry: Entry) -> &'static str {
    match entry {
        Entry::WorkTurns => "Look at the work from its front and at the handle from its own side.",
        Entry::Slack => "Turn the handle back until the work just moves.",
        Entry::Plates => {
            "Each side is a plate of its own. A radius in mm may stand with a circle: 49(51.5)."
        }
        Entry::Direct => "24, or any gear with a detent. Empty for none.",
        Entry::Gears => "Each as often as you have it: 24 24 28, or 24x2 28. Empty for none.",
        Entry::StudDistance => "Two gears of so many teeth just mesh. Empty: not checked.",
        Entry::OneIdler => "Try it: pin out, plate stop out, clamp off, one turn of the handle.",
        Entry::Pin => "Leave radii and pin empty where you don’t know them: not checked then.",
        Entry::HandwheelMarks => "180, or 3′ of the work.",
        Entry::HandwheelVernier => "1 without a vernier.",
        Entry::FineShift => "As an angle of the plate.",
        Entry::WorkDiameter => "Errors are shown as lengths at this diameter. 76.2, or 3 in.",
        _ => "",
    }
}

/// The choices of an entry that is not typed: value and label.
#[must_use]
pub const fn choices(entry: Entry) -> &'static [(&'static str, &'static str)] {
    match entry {
        Entry::WorkTurns => &[("clockwise", "Clockwise"), ("anticlockwise", "Anticlockwise")],
        Entry::Tilted => &[("no", "Level"), ("yes", "Tilted")],
        Entry::DegreeRing => {
            &[("clockwise", "Clockwise"), ("anticlockwise", "Anticlockwise"), ("none", "No ring")]
        }
        Entry::PlateStop => &[("withdraws", "Withdraws"), ("fixed", "Fixed")],
        Entry::OneIdler => &[("follows", "With the handle"), ("against", "Against it")],
        _ => &[],
    }
}

/// How a good text was read; nothing where the text says it all.
#[must_use]
pub fn read_as(entry: Entry, text: &str, head: &Head) -> Option<String> {
    let text = text.trim();
    let length = |length: Length| length_text(length) + ".";
    // What is written out in full already needs no echo.
    let angle = |angle: Angle| Some(both(angle)).filter(|said| said != text).map(|said| said + ".");
    let said = match entry {
        Entry::Ratio => exact(head.ratio) + " handle turns for one turn of the work.",
        Entry::Plates if !head.plates.is_empty() => plates(head),
        Entry::Direct if !head.direct.is_empty() => {
            head.direct.iter().map(|&n| notches(n)).collect::<Vec<_>>().join("; ") + "."
        }
        Entry::Gears if !head.gears.is_empty() => gears(head) + ".",
        Entry::Slack => {
            let work = head.slack.checked_div(head.ratio).ok()?;
            [both(Angle::from_turns(head.slack)), both(Angle::from_turns(work))]
                .join(" of the handle, ")
                + " of the work."
        }
        Entry::ReachLeast if !text.is_empty() => length(head.reach?.least),
        Entry::ReachGreatest if !text.is_empty() => length(head.reach?.greatest),
        Entry::Pin => length(head.pin?),
        Entry::WorkDiameter => length(head.work_diameter),
        Entry::ArmsLeast => angle(head.arms.least)?,
        Entry::ArmsGreatest => angle(head.arms.greatest)?,
        Entry::HandwheelMarks => {
            let marks = handwheel_marks(text, head.ratio).ok()?;
            let mark = head.ratio.times(i64::from(marks)).and_then(Fraction::inverse).ok()?;
            count(marks, "mark", "marks")
                + ", each "
                + &both(Angle::from_turns(mark))
                + " of the work."
        }
        Entry::FineShift => {
            let dial = head.fine_dial?;
            let mark = dial.shift.turns().over(i64::from(dial.marks)).ok()?;
            let work = mark.checked_div(head.ratio).ok()?;
            both(dial.shift) + "; one mark is " + &both(Angle::from_turns(work)) + " of the work."
        }
        Entry::FineTravel => angle(head.fine_dial?.travel)?,
        _ => return None,
    };
    Some("Read as ".to_owned() + &said)
}

fn plates(head: &Head) -> String {
    let circles = || head.plates.iter().flat_map(|plate| plate.circles.iter());
    let holes = || circles().map(|circle| circle.holes);
    let plates = many(head.plates.len(), "plate", "plates");
    let circles = many(circles().count(), "circle", "circles");
    [&plates, " with ", &circles, &span(holes().min(), holes().max()), "."].concat()
}

fn gears(head: &Head) -> String {
    let owned: u32 = head.gears.iter().map(|gear| u32::from(gear.count)).sum();
    let teeth = || head.gears.iter().map(|gear| gear.teeth);
    count(owned, "gear", "gears") + &span(teeth().min(), teeth().max())
}

fn notches(notches: u16) -> String {
    let each = Fraction::new(1, i64::from(notches)).map(|turns| both(Angle::from_turns(turns)));
    count(u32::from(notches), "notch", "notches") + ", " + &each.unwrap_or_default() + " each"
}

fn many(n: usize, one: &str, many: &str) -> String {
    count(u32::try_from(n).unwrap_or(u32::MAX), one, many)
}

fn span(least: Option<u16>, greatest: Option<u16>) -> String {
    match (least, greatest) {
        (Some(a), Some(b)) if a < b => {
            [", ", &grouped(i64::from(a)), " to ", &grouped(i64::from(b))].concat()
        }
        _ => String::new(),
    }
}

/// An angle exactly; where that takes a part of a turn, near it in degrees too.
fn both(angle: Angle) -> String {
    let exactly = degrees(angle);
    if exactly.ends_with("turn") {
        return exactly + " ≈ " + &super::angle_text(angle);
    }
    exactly
}

fn length_text(length: Length) -> String {
    let inches = length.inches().map(|inches| decimal(inches, 4)).unwrap_or_default();
    [&decimal(length.mm(), 4), " mm = ", &inches, " in"].concat()
}

/// Which ways a setting switches off, or what else follows from it.
#[must_use]
pub fn follows(entry: Entry, head: &Head) -> Option<&'static str> {
    Some(match entry {
        Entry::Tilted if head.tilted => {
            "Tilted: differential is not offered, its gears need the spindle level."
        }
        Entry::PlateStop if head.plate_stop == PlateStop::Fixed => {
            "Fixed: compound and differential are not offered, they turn the plate."
        }
        Entry::WormDropsOut if !head.worm_drops_out => "The worm stays in: direct is not offered.",
        Entry::Direct if head.direct.is_empty() => "None: direct is not offered.",
        Entry::Plates if head.plates.is_empty() => {
            "No plates yet: only direct and the handwheel dial can be offered."
        }
        Entry::Gears if head.gears.is_empty() => "No gears: differential is not offered.",
        Entry::SpindleClamp if !head.spindle_clamp => {
            "No clamp: hold the work by other means before each cut."
        }
        Entry::Handwheel if head.handwheel.is_none() => "No dial: that way is not offered.",
        Entry::FineDial if head.fine_dial.is_none() => {
            "No fine dial: that way is not offered. One can be designed in Divide, under Dial."
        }
        _ => return None,
    })
}

/// What an undo brings back.
#[must_use]
pub fn undone(deleted: bool, name: &str) -> String {
    if deleted {
        ["Deleted: ", name, "."].concat()
    } else {
        "Set in place of what was there.".to_owned()
    }
}

/// The name of a copy.
#[must_use]
pub fn copy_of(name: &str) -> String {
    name.trim().to_owned() + ", copy"
}

/// The heading over a plate's drawing.
#[must_use]
pub fn plate(place: usize) -> String {
    "Plate ".to_owned() + &(place + 1).to_string()
}

/// The sentence of a plate's drawing.
#[must_use]
pub fn plate_drawing(place: usize, circles: &[Circle]) -> String {
    let holes: Vec<String> = circles.iter().map(|circle| circle.holes.to_string()).collect();
    [&plate(place), ": circles of ", &holes.join(", "), " holes"].concat()
}

/// A head's ratio, circles and gears in a line.
#[must_use]
pub fn summary(head: &Head) -> String {
    let circles = head.plates.iter().map(|plate| plate.circles.len()).sum();
    let gears = head.gears.iter().map(|gear| usize::from(gear.count)).sum();
    [exact(head.ratio) + " : 1", many(circles, "circle", "circles"), many(gears, "gear", "gears")]
        .join(" · ")
}
