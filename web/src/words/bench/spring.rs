//! Words of springs that push, pull and turn.
use super::wire::{between, percent};
use crate::words::{about, decimal};
use handturn::bench::spring::{Arbor, Extension, Pulled, Pushed, Stands, Turned, Winding};
use handturn::measure::Length;
use handturn::number::{Approx, Fraction};

words! {
    PUSH = "Compression spring";
    PUSH_ABOUT = "Rate, solid height, stress, coils for a rate";
    PUSH_ALSO = "helical coil push wahl stiffness constant solid mandrel";
    PULL = "Extension spring";
    PULL_ABOUT = "Rate, initial tension, what its hooks stand";
    PULL_ALSO = "tension helical coil pull hook loop";
    TURN = "Torsion spring";
    TURN_ABOUT = "Moment for a turn, stress, the pin it grips";
    TURN_ALSO = "helical coil twist leg hinge moment torque";
    ACROSS = "Diameter given";
    OUTSIDE = "outside";
    MEAN = "mean";
    INSIDE = "inside";
    SIZE = "That diameter, mm";
    ENDS = "Ends";
    PLAIN = "plain";
    PLAIN_GROUND = "plain, ground";
    SQUARED = "squared";
    SQUARED_GROUND = "squared, ground";
    BY = "Known";
    COILS = "coils";
    RATE = "rate wanted";
    TOTAL = "Coils in all";
    WANTED = "Rate wanted, N/mm";
    FREE = "Free length, mm";
    LOAD = "Load, N";
    RATE_IS = "Rate";
    IN_POUNDS = "That is";
    SOLID = "Solid height";
    TRAVEL = "Travel to solid";
    SOLID_N = "Force to close it";
    AT_LOAD = "Length under the load";
    GIVES = "The load moves it";
    STRESS = "Shear under the load, Wahl";
    BERG = "By Bergsträsser’s factor";
    LOADED = "Of what it may stand";
    STRESS_SOLID = "Shear when solid, Wahl";
    LOADED_SOLID = "Of what it may stand, solid";
    WHEN_SOLID = "When solid: ";
    TOTAL_IS = "Coils in all";
    ACTIVE = "Coils that move";
    PITCH = "Pitch";
    INDEX = "Index";
    CUT = "Wire, tails extra";
    MANDREL = "Mandrel to try";
    STANDS = "Stands";
    BODY = "Coils of the body";
    TENSION = "Initial tension, N; empty if unknown";
    LOOP = "Mean radius of a loop, mm; empty for the coil’s";
    BEND = "Radius of the bend to it, mm; empty for twice the wire";
    TENSION_IS = "Initial tension";
    USUAL = "Such a coil takes";
    FREE_IN = "Length inside the loops";
    PULL_STRESS = "Shear under the load";
    LOOP_BENDING = "Bending at the loop’s top";
    LOOP_LOADED = "Of what that may stand";
    LOOP_SHEAR = "Shear in the bend to it";
    LEG = "First leg, mm";
    OTHER_LEG = "Second leg, mm";
    MOMENT = "Moment, N mm";
    PER_TURN = "Moment for a turn";
    TURNS = "The moment winds it";
    BENDING = "Bending inside the coils";
    PIN = "Largest pin";
    INSIDE_FREE = "Inside, free";
    INSIDE_WOUND = "Inside, wound";
    LONG = "Body";
    LONG_WOUND = "Body, wound";
    PUSH_SOURCE = "Wahl, Mechanical Springs, 1944, and text-books of machine design (ends, buckling), from memory";
    PULL_SOURCE = "text-books of machine design, from memory";
    CLOSES = "This load closes the spring: it is solid.";
    BELOW = "This load is below the initial tension: the coils do not part.";
    OVER = "More than such wire is said to stand: it takes a set or breaks.";
    OVER_SOLID = "Pushed solid, it has more than such wire is said to stand: it takes a set. Stop it before that, or give it a shorter free length or more coils.";
    TIGHT = "An index below 4 is hard to wind, and cracks at the inside.";
    SLACK = "An index above 12 tangles, and its diameter is hard to hold.";
    MANDREL_NOTE = "The mandrel is a size to try: wind three coils, measure, change it.";
    TURN_NOTE = "Load it only so that it winds up. Wound, it is smaller inside and longer.";
    TOO_MANY = "Too many coils to draw one by one.";
}

/// Millimetres as typed.
fn mm(length: Length) -> String {
    decimal(length.mm(), 3)
}

/// How a spring stands.
#[must_use]
pub(crate) fn stands(stands: Stands) -> String {
    let text = match stands {
        Stands::Anyhow => "by itself",
        Stands::OneSquare => "with one end square",
        Stands::BothSquare => "with both ends square",
        Stands::Guided => "only on a rod or in a bore",
    };
    text.to_owned()
}

/// What is said of an index.
#[must_use]
pub(crate) const fn winding(winding: Winding) -> Option<&'static str> {
    match winding {
        Winding::Tight => Some(TIGHT),
        Winding::Usual => None,
        Winding::Slack => Some(SLACK),
    }
}

/// A mandrel, or nothing where it does not come out.
#[must_use]
pub(crate) fn mandrel(arbor: &Arbor) -> String {
    between(arbor.least, arbor.most)
}

/// Coils, quarters as decimals.
#[must_use]
pub(crate) fn coils(coils: Fraction) -> String {
    decimal(coils, 3)
}

/// A rate in pounds-force and inches.
#[must_use]
pub(crate) fn pounds(rate: Approx) -> String {
    about(rate.value * 5.710_147, 2) + " lbf/in"
}

/// What of its limit is used.
#[must_use]
pub(crate) fn loaded(value: f64) -> String {
    percent(value)
}

/// The question with its answer.
#[must_use]
pub(crate) fn pushed(wire: Length, mean: Length, it: &Pushed) -> String {
    [
        &*mm(wire),
        " mm wire, mean ",
        &mm(mean),
        " mm, ",
        &coils(it.active),
        " coils: ",
        &about(it.rate.value, 3),
        " N/mm",
    ]
    .concat()
}

/// The question with its answer.
#[must_use]
pub(crate) fn pulled(wire: Length, mean: Length, it: &Pulled) -> String {
    [&*mm(wire), " mm wire, mean ", &mm(mean), " mm, pulls: ", &about(it.rate.value, 3), " N/mm"]
        .concat()
}

/// The question with its answer.
#[must_use]
pub(crate) fn turned(wire: Length, mean: Length, it: &Turned) -> String {
    [
        &*mm(wire),
        " mm wire, mean ",
        &mm(mean),
        " mm, turns: ",
        &about(it.per_turn.value, 0),
        " N mm a turn",
    ]
    .concat()
}

/// The working of a rate: G d⁴ over 8 D³ n.
#[must_use]
pub(crate) fn rate(shear: f64, wire: Length, mean: Length, active: &str, rate: Approx) -> String {
    [
        "Rate = G d⁴ ÷ (8 D³ n) = ",
        &*about(shear, 0),
        " × ",
        &mm(wire),
        "⁴ ÷ (8 × ",
        &mm(mean),
        "³ × ",
        active,
        ") = ",
        &about(rate.value, 4),
        " N/mm",
    ]
    .concat()
}

/// The working of a stress: factor, 8 F D over π d³.
#[must_use]
pub(crate) fn shear(factor: &str, load: f64, wire: Length, mean: Length, stress: Approx) -> String {
    [
        "Shear = K × 8 F D ÷ (π d³) = ",
        factor,
        " × 8 × ",
        &*about(load, 2),
        " × ",
        &mm(mean),
        " ÷ (π × ",
        &mm(wire),
        "³) = ",
        &about(stress.value, 1),
        " MPa",
    ]
    .concat()
}

/// The working of an extension spring.
#[must_use]
pub(crate) fn pulling(spring: &Extension, it: &Pulled) -> Vec<String> {
    let active = about(it.active.value, 3);
    let (wire, mean) = (spring.wire, spring.mean);
    let factor = about(it.factor.value, 4);
    vec![
        ["Coils that move = body + G ÷ E = ", &*active].concat(),
        rate(spring.shear_mpa, wire, mean, &active, it.rate),
        ["Moves by (load − tension) ÷ rate = ", &*about(it.gives.value, 3), " mm"].concat(),
        shear(&factor, spring.load_n, wire, mean, it.stress),
    ]
}

/// Wahl's factor.
#[must_use]
pub(crate) fn wahl(index: Approx, wahl: Approx, other: Approx) -> String {
    [
        "C = D ÷ d = ",
        &*about(index.value, 3),
        "; Wahl (4C − 1) ÷ (4C − 4) + 0.615 ÷ C = ",
        &about(wahl.value, 4),
        "; Bergsträsser (4C + 2) ÷ (4C − 3) = ",
        &about(other.value, 4),
    ]
    .concat()
}

/// The working of a torsion spring.
#[must_use]
pub(crate) fn turning(
    modulus: f64,
    wire: Length,
    mean: Length,
    moment: f64,
    it: &Turned,
) -> Vec<String> {
    let active = about(it.active.value, 3);
    vec![
        ["Coils that move = body + legs ÷ (3 π D) = ", &*active].concat(),
        [
            "Moment for a turn = E d⁴ ÷ (10.8 D n) = ",
            &*about(modulus, 0),
            " × ",
            &mm(wire),
            "⁴ ÷ (10.8 × ",
            &mm(mean),
            " × ",
            &active,
            ") = ",
            &about(it.per_turn.value, 1),
            " N mm",
        ]
        .concat(),
        [
            "Bending = (4C² − C − 1) ÷ (4C (C − 1)) × 32 M ÷ (π d³) = ",
            &*about(it.factor.value, 4),
            " × 32 × ",
            &about(moment, 1),
            " ÷ (π × ",
            &mm(wire),
            "³) = ",
            &about(it.stress.value, 1),
            " MPa",
        ]
        .concat(),
    ]
}
