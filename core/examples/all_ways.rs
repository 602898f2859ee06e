//! Prints every way a head can set a number of parts, with its errors and the
//! working that leads to it.
//!
//! ```text
//! cargo run --example all_ways -- 127
//! ```
use handturn::divide::{
    Equation, Errors, Group, Leg, Order, Part, Parts, Question, Rated, Sign, Term, Word, answer,
};
use handturn::head::{GEARS, Head, SET_A, Sense, gears_of, plates_of};
use handturn::measure::Angle;
use handturn::number::float;
use std::process::ExitCode;

/// Ways listed of each kind.
const EACH: usize = 3;

fn main() -> ExitCode {
    let text = std::env::args().nth(1).unwrap_or_else(|| String::from("127"));
    match text.parse().map_err(|_| format!("{text:?} is not a whole number")).and_then(print) {
        Ok(()) => ExitCode::SUCCESS,
        Err(message) => {
            eprintln!("{message}");
            ExitCode::FAILURE
        }
    }
}

fn print(count: u32) -> Result<(), String> {
    // A 40 : 1 head with plates 15 to 49, a 24-notch direct plate and twelve gears.
    let plates = plates_of(&SET_A).map_err(|e| e.to_string())?;
    let gears = gears_of(&GEARS).map_err(|e| e.to_string())?;
    let head = Head { plates, gears, ..Head::default() };
    let question = Question::Parts(Parts { count, every: 1 });
    let answer = answer::<EACH>(&question, &head).map_err(|e| e.to_string())?;
    for group in &answer.ranked(Order::Closest) {
        print_group(&question, group).map_err(|e| e.to_string())?;
    }
    for left_out in &answer.left_out {
        println!("{:?}: no, {:?}", left_out.kind, left_out.reason);
    }
    Ok(())
}

fn print_group(question: &Question, group: &Group<EACH>) -> Result<(), handturn::Error> {
    println!("{:?}, {} in all", group.kind, group.count);
    for rated in group.ways(Order::Closest) {
        print_way(question, rated)?;
    }
    println!();
    Ok(())
}

fn print_way(question: &Question, rated: &Rated) -> Result<(), handturn::Error> {
    let step = rated.way.step(question, 0)?;
    let legs: Vec<String> = step.legs.iter().map(leg).collect();
    println!("  {}: {}", legs.join(", then "), errors(&rated.errors)?);
    for line in &rated.way.working(question)? {
        println!("      {}", equation(line)?);
    }
    let home = rated.way.place(question, question.last())?;
    if let Some(pin) = home.pin {
        println!("      after the closing move the pin is in hole {}", pin.number);
    }
    Ok(())
}

fn leg(leg: &Leg) -> String {
    let back = if leg.sense == Sense::Anticlockwise { " back" } else { "" };
    let unit = match leg.part {
        Part::Spindle => "notches of",
        Part::Handwheel | Part::FineDial => "marks of",
        Part::Pin => "holes on the",
        Part::BackPin => "holes, plate and handle together, on the",
    };
    format!("{} turns + {} {unit} {}{back}", leg.turns, leg.spaces, leg.from.of)
}

fn errors(errors: &Errors) -> Result<String, handturn::Error> {
    if errors.is_none() {
        return Ok(String::from("exact"));
    }
    let [worst, adjacent, closing] = [errors.worst, errors.adjacent, errors.closing].map(seconds);
    Ok(format!("within {}, neighbours {}, closing {}", worst?, adjacent?, closing?))
}

fn seconds(angle: Angle) -> Result<String, handturn::Error> {
    Ok(format!("{:.1}″", float::of(angle.arcsec()?)))
}

fn equation(line: &Equation) -> Result<String, handturn::Error> {
    let mut words: Vec<String> = line.about.iter().map(word).collect();
    for term in &line.terms {
        words.push(match term {
            Term::Whole(n) => n.to_string(),
            Term::Over(num, den) => format!("{num}/{den}"),
            Term::Angle(angle) => seconds(*angle)?,
            Term::Sign(sign) => String::from(match sign {
                Sign::Plus => "+",
                Sign::Minus => "−",
                Sign::Times => "×",
                Sign::Over => "÷",
                Sign::Equals => "=",
                Sign::Nearly => "≈",
                Sign::Open => "(",
                Sign::Close => ")",
            }),
            Term::Word(other) => word(other),
        });
    }
    words.extend(line.remark.iter().map(word));
    Ok(words.join(" "))
}

/// What a front end has its own words for.
fn word(word: &Word) -> String {
    format!("[{word:?}]")
}
