//! Takes a wheel of straight teeth from the blank to the checks: what to turn, which
//! cutter in either numbering, how deep, what caliper, span and pins read, and what to
//! divide on a 40 : 1 head with plates of 15 to 49 holes. Number of teeth, then the module
//! in millimetres or `8DP`, then the blank's diameter as it was found, if it was.
//!
//! ```text
//! cargo run --example a_wheel -- 64 1
//! cargo run --example a_wheel -- 38 1 39.90
//! cargo run --example a_wheel -- 32 8DP
//! ```
//!
//! Fingers out and guard on; cutter clear of the work before the handle moves, clamp on to
//! cut. The machine maker's manual and local rules go first.
use handturn::divide::{Order, Parts, Question, answer};
use handturn::gear::cutter::{Numbering, Set, for_teeth};
use handturn::gear::found::found;
use handturn::gear::sound::sound;
use handturn::gear::{DepthRule, Size, Spur, Tooth, chordal, pins, span};
use handturn::head::{Head, SET_A, plates_of};
use handturn::measure::write::{Decimal, rounded};
use handturn::measure::{Length, read};
use handturn::number::Approx;
use handturn::{Error, Field, bounds};
use std::process::ExitCode;

fn main() -> ExitCode {
    let words: Vec<String> = std::env::args().skip(1).collect();
    let word = |k: usize, other: &str| words.get(k).map_or(other.to_owned(), Clone::clone);
    let blank = words.get(2).map(String::as_str);
    match print(&word(0, "64"), &word(1, "1"), blank) {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => {
            eprintln!("{error}");
            ExitCode::FAILURE
        }
    }
}

fn print(teeth: &str, size: &str, blank: Option<&str>) -> Result<(), Error> {
    let teeth = read::count(teeth, bounds::WHEEL_TEETH)?;
    let size = match size.strip_suffix("DP") {
        Some(pitch) => Size::DiametralPitch(read::number(pitch, Field::DiametralPitch)?),
        None => Size::Module(read::length(size, read::Unit::Mm)?),
    };
    let pressure_angle = Tooth::default().pressure_angle;
    let rule = DepthRule::usual(size, pressure_angle);
    let wheel = Spur::new(teeth, Tooth { size, pressure_angle, rule })?;

    let drawn = wheel.outside_diameter()?;
    println!("Blank: {} for {teeth} teeth, pressure angle 20°.", mm(drawn));
    let outside = match blank {
        Some(text) => read::length(text, read::Unit::Mm)?,
        None => drawn,
    };
    let blank = found(&wheel, outside)?;
    println!("Depth: {} from {}.", mm(blank.depth), mm(outside));
    let said = sound(&wheel)?;
    if said.undercut {
        println!("  undercut: {} teeth would not be.", said.fewest);
    }
    match for_teeth(teeth, &Set::eight(Numbering::DiametralPitch)) {
        Ok(choice) => {
            let one = choice.cutter;
            println!("Cutter: No. {} by DP, No. {} by module.", one.number, one.other_number);
        }
        Err(error) => println!("Cutter: {error}"),
    }

    let chords = chordal::tooth(&wheel, outside)?;
    println!("Caliper: {} at a height of {}.", about(chords.thickness), about(chords.height));
    match span::over(&wheel, outside, None) {
        Ok(span) => println!("Span over {} teeth: {}.", span.teeth, about(span.reading)),
        Err(error) => println!("Span: {error}"),
    }
    let best = pins::range(&wheel, outside)?.best;
    // The nearest pin by tenths of a millimetre.
    if let Some(pin) = rounded(best, 1).map(Length::from_mm) {
        let over = pins::over(&wheel, outside, pin)?;
        println!("Over pins of {}: {}.", mm(pin), about(over.reading));
    }

    let head = Head { plates: plates_of(&SET_A)?, ..Head::default() };
    let question = Question::Parts(Parts { count: teeth, every: 1 });
    let answer = answer::<1>(&question, &head)?;
    if let Some(best) = answer.best(Order::Closest) {
        let exact = if best.errors.is_none() { "exact" } else { "not exact" };
        println!("Divide {teeth}: {:?}, {exact}.", best.way.kind());
        if let Some(leg) = best.way.step(&question, 0)?.legs.first() {
            println!("  {} turns and {} holes on the {}.", leg.turns, leg.spaces, leg.from.of);
        }
    }
    Ok(())
}

fn mm(length: Length) -> String {
    let inches = length.inches().map(|value| Decimal { value, places: 4 }.to_string());
    let mm = Decimal { value: length.mm(), places: 3 };
    format!("{mm} mm ({} in)", inches.unwrap_or_default())
}

fn about(mm: Approx) -> String {
    rounded(mm, 3).map_or_else(String::new, |value| format!("{} mm", Decimal { value, places: 3 }))
}
