//! Takes the name of a thread and carries it from the blank to the last measurement:
//! limits of size, tapping drill, passes on the dial, wires, and change gears on a
//! lathe with a screw of 8 to the inch. The thread is that of a clock's wheel arbor
//! unless another is named.
//!
//! ```text
//! cargo run --example a_thread -- M6x0.75-6g
//! cargo run --example a_thread -- 2 BA
//! cargo run --example a_thread -- Tr16x8 P4 LH
//! ```
use handturn::head::{Mounting, gears_of};
use handturn::measure::Length;
use handturn::measure::write::{Decimal, rounded};
use handturn::number::{Approx, Fraction};
use handturn::thread::dial::{Dial, Reads, Runs};
use handturn::thread::drills::{DrillSet, tapping};
use handturn::thread::gearing::{Job, Lathe, Lead, go_on, lacks};
use handturn::thread::infeed::{Feed, infeed};
use handturn::thread::limits::{Limits, Range, Side, limits, usual};
use handturn::thread::passes::Plan;
use handturn::thread::{Hand, Thread, name, ready, wires};
use handturn::train::{Search, Senses, Six};
use handturn::{Error, List};
use std::process::ExitCode;

/// Change gears of the lathe.
const GEARS: [u16; 12] = [20, 25, 30, 35, 40, 45, 50, 55, 60, 65, 75, 127];

fn main() -> ExitCode {
    let words: Vec<String> = std::env::args().skip(1).collect();
    let text = if words.is_empty() { String::from("M6x0.75-6g") } else { words.join(" ") };
    match print(&text) {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => {
            eprintln!("{text:?}: {error}");
            ExitCode::FAILURE
        }
    }
}

fn print(text: &str) -> Result<(), Error> {
    let found = name::read(text)?;
    for other in found.iter().skip(1) {
        println!("It could be a {:?} thread too: {}.", other.thread.form.kind, size(&other.thread));
    }
    // A name that reads stands for one thread at least.
    let Some(found) = found.first() else { return Ok(()) };
    let thread = found.thread;
    let class = found.class.or_else(|| usual(thread.form.kind).first().copied());
    let limited = class.and_then(|class| limits(&thread, class).ok());
    let internal = class.is_some_and(|class| class.side == Side::Internal);
    println!("{text}: {}", size(&thread));
    if let Some(limits) = &limited {
        print_limits(limits);
    }
    if internal {
        print_drill(&thread)?;
    } else if let Err(error) = print_wires(&thread, limited.as_ref()) {
        println!("No wires: {error}");
    }
    print_passes(&thread, limited.as_ref(), internal)?;
    print_gears(&thread)
}

fn size(thread: &Thread) -> String {
    let hand = if thread.hand == Hand::Left { ", left hand" } else { "" };
    let (major, pitch) = (mm(thread.major), mm(thread.pitch));
    format!(
        "{:?} form, {major} over a pitch of {pitch}, starts: {}{hand}",
        thread.form.kind, thread.starts
    )
}

/// Millimetres and inches, each to the last place that a workshop reads.
fn mm(length: Length) -> String {
    let mm = Decimal { value: length.mm(), places: 3 };
    let inches = length.inches().map(|value| Decimal { value, places: 4 }.to_string());
    format!("{mm} mm ({} in)", inches.unwrap_or_default())
}

fn about(mm: Approx) -> String {
    rounded(mm, 4)
        .map_or_else(String::new, |value| Decimal { value, places: 4 }.to_string() + " mm")
}

fn print_limits(limits: &Limits) {
    let Limits { major, pitch_diameter, minor } = limits;
    let rows = [("major", major), ("pitch diameter (effective)", pitch_diameter), ("minor", minor)];
    for (name, Range { max, min }) in rows {
        let told = |at: &Option<Length>| at.map_or_else(|| String::from("not set"), mm);
        println!("  {name}: {} to {}", told(min), told(max));
    }
}

fn print_drill(thread: &Thread) -> Result<(), Error> {
    let owned: Vec<_> = (0..=u8::MAX).map_while(|place| DrillSet::Metric.drill(place)).collect();
    if let Some(best) = tapping(thread, &owned, Fraction::whole(70))?.first() {
        let percent = Decimal { value: best.percent, places: 0 };
        println!("Tapping drill: {}, {percent} % of full height", mm(best.drill.diameter));
    }
    Ok(())
}

/// The nearest whole hundredth of a millimetre to the best wire, and what it reads.
fn print_wires(thread: &Thread, limits: Option<&Limits>) -> Result<(), Error> {
    let measured = ready::measured(thread, limits)?;
    let best = wires::best(measured.half_angle, measured.pitch)?;
    let range = wires::range(&measured)?;
    println!("Wires: best {}, {} to {}", about(best), about(range.least), about(range.greatest));
    let wire = rounded(best, 2).map_or(measured.pitch, Length::from_mm);
    let over = |at| wires::over(&measured, wire, at).map(|over| about(over.three));
    let (least, most) = (over(measured.pitch_least)?, over(measured.pitch_greatest)?);
    println!("Over three of {}: {least} to {most}", mm(wire));
    Ok(())
}

fn print_passes(thread: &Thread, limits: Option<&Limits>, internal: bool) -> Result<(), Error> {
    let work = ready::blank(thread, limits, internal)?;
    let half_angle = ready::half_angle(thread)?;
    let nose = ready::nose(thread)?;
    let ask = ready::infeed(thread, limits, internal, work, nose, Feed::Plunge)?;
    let depths = infeed(&ask)?;
    let depth = rounded(depths.straight, 4).map_or(work, Length::from_mm);
    let (first, least) = ready::cuts(depth)?;
    let dial =
        Dial { division: Length::from_mm(Fraction::new(1, 50)?), reads: Reads::Travel, marks: 100 };
    let runs = if internal { Runs::Backwards } else { Runs::Forwards };
    let plan = Plan {
        depth,
        done: Length::from_mm(Fraction::ZERO),
        first,
        least,
        spring: 1,
        half_angle,
        set_over: depths.set_over,
        nose,
        dial,
        dial_at: 0,
        runs,
    };
    println!("Work {}, straight in by {}:", mm(work), about(depths.straight));
    let mut shown = Vec::new();
    for number in 1..=plan.count()? {
        let pass = plan.pass(number)?;
        let spring = if pass.spring { " (spring)" } else { "" };
        shown.push(format!("{}{spring}", Decimal { value: pass.reading.shows.mm(), places: 2 }));
    }
    println!("  passes at {}", shown.join(", "));
    Ok(())
}

fn print_gears(thread: &Thread) -> Result<(), Error> {
    let lathe = Lathe {
        screw: Length::from_inches(Fraction::new(1, 8)?)?,
        screw_hand: Hand::Right,
        head: Fraction::ONE,
        gearbox: List::new(),
        gears: gears_of(&GEARS)?,
        mounting: Mounting::default(),
        drive: Senses::Either,
    };
    let lead = Lead::of_pitch(thread.pitch, thread.starts)?;
    let job = Job { lead, hand: thread.hand, six: Six::WhenOffBy(50) };
    let mut search = Search::<1>::new();
    while !go_on(&mut search, &job, &lathe, 5_000)? {}
    let Some(found) = search.best().first() else {
        println!("No train of these gears can be mounted.");
        return Ok(());
    };
    let pairs = found.chain.pairs().map(|pair| format!("{} drives {}", pair.driver, pair.driven));
    let pairs = pairs.collect::<Vec<_>>().join("; ");
    if found.is_exact() {
        println!("Gears on a screw of 8 to the inch: {pairs}: exact");
        return Ok(());
    }
    println!("Gears on a screw of 8 to the inch: {pairs}: {:+.1} ppm", found.off_ppm().value);
    if let Some((teeth, _)) = lacks(&job, &lathe)?.smallest {
        println!("With a gear of {teeth} it would be exact.");
    }
    Ok(())
}
