//! Words of Cut it.
use super::{about, about_mm, angle, inches, mm, thou};
use crate::words::{count, decimal};
use handturn::measure::{Angle, Length};
use handturn::number::float;
use handturn::thread::blind::PickUp;
use handturn::thread::dial::Runs;
use handturn::thread::half_nuts::Closing;
use handturn::thread::infeed::{Depths, Infeed, Nose, Swing};
use handturn::thread::passes::{Pass, Plan};

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
    if internal { "Bore, mm" } else { "Blank, mm" }
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

/// Where the starts lie by the slide, each with its number from 2 on.
#[must_use]
pub fn starts_at(travels: &[Length]) -> String {
    let all = travels.iter().zip(2_u32..);
    let each: Vec<String> = all
        .map(|(travel, start)| ["start ", &start.to_string(), " at ", &mm(*travel), " mm"].concat())
        .collect();
    each.join("; ") + "."
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

/// Inches, as a dial in inches is read.
#[must_use]
pub fn in_inches(length: Length) -> String {
    figure(length, true, 2)
}

/// A set-over from square across.
#[must_use]
pub fn from_square(set_over: Angle) -> String {
    angle(set_over) + " from square across"
}

/// The same on a scale that is zero along the bed.
#[must_use]
pub fn on_bed(at: Angle) -> String {
    angle(at) + " if its scale reads zero along the bed"
}
