//! Plans the plate that a number of parts lacks, on a 40 : 1 head with plates of 15 to 49
//! holes: drilled first by the nearest holes, then with the plate just made, as long as it
//! pays. Prints how each is drilled, what its holes and the finished work will have, and
//! which cause is felt most. The number is that of a clock's wheel unless another is given.
//!
//! ```text
//! cargo run --example a_plate -- 127
//! cargo run --example a_plate -- 446
//! ```
//!
//! When it is drilled: clamp the blank, goggles on, the drill clear before the handle moves.
use handturn::divide::{Kind, Parts, Question, answer};
use handturn::head::{Circle, Head, SET_A, plates_of};
use handturn::measure::Length;
use handturn::measure::write::{Decimal, rounded};
use handturn::number::{Approx, Fraction};
use handturn::plate::ring::{Blank, Ring, check, propose};
use handturn::plate::{Budget, Making, arc_mm, fitted, ladder};
use handturn::{Error, Field, bounds, measure::read};
use std::process::ExitCode;

fn main() -> ExitCode {
    let text = std::env::args().nth(1).unwrap_or_else(|| String::from("127"));
    match print(&text) {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => {
            eprintln!("{text:?}: {error}");
            ExitCode::FAILURE
        }
    }
}

fn print(text: &str) -> Result<(), Error> {
    let question =
        Question::Parts(Parts { count: read::count(text, bounds::DIVISIONS)?, every: 1 });
    let head = Head { plates: plates_of(&SET_A)?, ..Head::default() };
    let drill = Length::from_mm(Fraction::new(3, 2)?);
    let (rim, web) = (Length::from_mm(Fraction::whole(70)), Length::from_mm(Fraction::new(3, 10)?));
    let blank = Blank { rim: Some(rim), web, ..Blank::default() };

    let need = handturn::plate::need(&question, &head)?;
    if let Some(owned) = need.owned {
        println!("{text} parts: the {} circle does it.", owned.holes);
        return Ok(());
    }
    println!("{text} parts: {} handle turns each, so a plate of {} holes.", need.turns, need.holes);
    let Some(radius) = propose(need.holes, drill, &blank)? else {
        return Err(Error::new(Field::Ring, handturn::Cause::Conflict));
    };
    let fit = check(&Ring { holes: need.holes, radius, drill }, &blank)?;
    println!(
        "Ring of {} mm radius, {} mm of metal left between holes.",
        Decimal { value: radius.mm(), places: 1 },
        mm(fit.web_mm)
    );

    // By nearest holes where nothing is exact: less to do than two pins.
    let plate = Question::Parts(Parts { count: need.holes, every: 1 });
    let nearest = answer::<1>(&plate, &head)?;
    let first = nearest.group(Kind::NearestHole).and_then(|group| group.closest.first());
    let making =
        Making { question, ring: radius, first: first.map(|rated| rated.way), ..Making::default() };
    let plan = ladder(&head, &making)?;
    for (one, number) in plan.generations.iter().take(plan.enough.into()).zip(1..) {
        let leg = one.way.step(&plate, 0)?.legs.first().copied();
        let (turns, spaces, of) = leg.map_or((0, 0, 0), |leg| (leg.turns, leg.spaces, leg.from.of));
        println!(
            "Plate {}, {:?}: first move {turns} turns and {spaces} holes on the {of}.",
            number,
            one.way.kind()
        );
        told("  its holes", &one.plate, Length::from_mm(radius.mm().times(2)?));
        told("  the work", &one.work, head.work_diameter);
    }
    // The head as it is then: what a run of the next plate, or of the work, is begun with.
    let head = fitted(&head, Circle { holes: plan.circle.holes, radius: Some(radius) });
    let leg = plan.work.step(&question, 0)?.legs.first().copied();
    let (turns, spaces) = leg.map_or((0, 0), |leg| (leg.turns, leg.spaces));
    println!(
        "Then {turns} turns and {spaces} holes on plate {} of {}.",
        u32::from(plan.circle.plate).saturating_add(1),
        head.plates.len()
    );
    Ok(())
}

fn told(what: &str, budget: &Budget, diameter: Length) {
    let sum = &budget.sum;
    let [total, rms] =
        [sum.total, sum.rms].map(|error| (seconds(error), mm(arc_mm(error, diameter))));
    let most =
        budget.dominant.map_or_else(String::new, |source| format!(", most of it {source:?}"));
    println!(
        "{what}: within {}″ ({} mm), root mean square {}″ ({} mm){most}",
        total.0, total.1, rms.0, rms.1
    );
}

fn seconds(error: Approx) -> String {
    rounded(error, 1).map_or_else(String::new, |value| Decimal { value, places: 1 }.to_string())
}

fn mm(error: Approx) -> String {
    rounded(error, 4).map_or_else(String::new, |value| Decimal { value, places: 4 }.to_string())
}
