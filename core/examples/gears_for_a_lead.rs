//! Prints the change gears with which a lathe cuts a lead, how far off each train
//! is, and the gear that would make it exact. The lead is that of the clamp thread
//! on a clock's arbor, M6 × 0.75, unless another is given.
//!
//! ```text
//! cargo run --example gears_for_a_lead -- 0.75
//! cargo run --example gears_for_a_lead -- 1/16 in
//! cargo run --example gears_for_a_lead -- 1 module
//! ```
use handturn::head::{Mounting, gears_of};
use handturn::measure::Length;
use handturn::measure::read::{self, Unit};
use handturn::number::{Fraction, float};
use handturn::thread::Hand;
use handturn::thread::gearing::{Job, Lathe, Lead, go_on, lacks};
use handturn::train::{Found, Search, Senses, Six};
use handturn::{Error, List};
use std::process::ExitCode;

/// Change gears that came with the lathe; two of 20 and of 40.
const GEARS: [u16; 15] = [20, 20, 30, 35, 38, 40, 40, 45, 50, 55, 57, 60, 63, 65, 80];

/// Trains listed.
const EACH: usize = 5;

fn main() -> ExitCode {
    let words: Vec<String> = std::env::args().skip(1).collect();
    let text = if words.is_empty() { String::from("0.75") } else { words.join(" ") };
    match lead(&text).and_then(print) {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => {
            eprintln!("{text:?}: {error}");
            ExitCode::FAILURE
        }
    }
}

fn lead(text: &str) -> Result<Lead, Error> {
    match text.strip_suffix("module") {
        Some(module) => Lead::of_module(read::length(module.trim(), Unit::Mm)?, 1),
        None => Lead::of_pitch(read::length(text, Unit::Mm)?, 1),
    }
}

fn print(lead: Lead) -> Result<(), Error> {
    let lathe = Lathe {
        // Eight threads to the inch.
        screw: Length::from_inches(Fraction::new(1, 8)?)?,
        screw_hand: Hand::Right,
        head: Fraction::ONE,
        gearbox: List::new(),
        gears: gears_of(&GEARS)?,
        mounting: Mounting::default(),
        drive: Senses::Either,
    };
    // Six gears only where four are off by more than 50 parts in a million.
    let job = Job { lead, hand: Hand::Right, six: Six::WhenOffBy(50) };
    println!("A lead of {:.4} mm on a screw of 8 to the inch:", lead.mm().value);
    let mut search = Search::<EACH>::new();
    // A page would do something else between two calls.
    while !go_on(&mut search, &job, &lathe, 5_000)? {}
    for found in search.best() {
        println!("  {}", line(found));
    }
    println!("  best of {} trains, {} looked at", search.covered(), search.weighed());
    if let Some((teeth, found)) = lacks(&job, &lathe)?.smallest {
        println!("With a gear of {teeth} it would be exact:\n  {}", line(&found));
    }
    Ok(())
}

fn line(found: &Found) -> String {
    let mut studs = Vec::new();
    for (place, pair) in (0_u8..).zip(found.chain.pairs()) {
        let idlers = found.chain.idlers.iter().flatten().filter(|_| place == found.chain.idlers_in);
        let idlers: String = idlers.map(|teeth| format!(", over an idler of {teeth},")).collect();
        studs.push(format!("{}{idlers} drives {}", pair.driver, pair.driven));
    }
    let off = if found.is_exact() {
        String::from("exact")
    } else {
        let mm = found.off_over(Length::from_mm(Fraction::whole(100))).value;
        let ppm = float::round(found.off_ppm().value * 10.0) / 10.0;
        format!("{ppm:+} ppm, {mm:+.4} mm over 100 mm")
    };
    format!("{}: {off}", studs.join("; on its stud "))
}
