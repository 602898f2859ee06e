//! The rows on wheels.
use super::stands;
use handturn::gear::cutter::{Numbering, Set, for_teeth};
use handturn::gear::trial::{Check, Cutting, Trial, deeper};
use handturn::gear::{Size, Spur, Tooth, chordal, found, pins, span};
use handturn::measure::Length;
use handturn::measure::write::{Decimal, rounded};
use handturn::number::{Approx, Fraction};

fn mm(num: i64, den: i64) -> Length {
    Length::from_mm(Fraction::new(num, den).expect("a length"))
}

fn about(value: Approx) -> String {
    Decimal { value: rounded(value, 3).expect("small"), places: 3 }.to_string()
}

/// Without noughts at the end.
fn short(length: Length) -> String {
    let text = Decimal { value: length.mm(), places: 3 }.to_string();
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}

/// The row of a wheel whose blank measures `outside`, over `pin`, and trial gaps that read
/// `reading`.
#[track_caller]
fn row(asked: &str, wheel: &Spur, outside: Length, pin: Length, reading: Length) {
    let cutter = for_teeth(wheel.teeth, &Set::eight(Numbering::Module)).expect("a cutter").cutter;
    let blank = found::found(wheel, outside).expect("a blank");
    let caliper = chordal::tooth(wheel, outside).expect("a tooth");
    let span = span::over(wheel, outside, None).expect("a span");
    let over = pins::over(wheel, outside, pin).expect("a pin that serves");
    let trial = Trial { spur: *wheel, outside, cutting: Cutting::Form, check: Check::Pins { pin } };
    let more = deeper(&trial, reading).expect("a trial");
    stands(&format!(
        "| {asked} | {} mm | No. {} of a module set, No. {} of a DP set | {} mm | {} at a height of {}; {} over {} teeth; {} over {} mm pins; when two gaps read {}, {} deeper |",
        short(blank.drawn),
        cutter.number.num(),
        cutter.other_number.num(),
        short(blank.depth),
        about(caliper.thickness),
        about(caliper.height),
        about(span.reading),
        span.teeth,
        about(over.reading),
        short(pin),
        short(reading),
        about(more.deeper),
    ));
}

#[test]
fn the_64_wheel_s_teeth() {
    let wheel = Spur::new(64, Tooth::default()).expect("a wheel");
    let outside = wheel.outside_diameter().expect("a blank");
    row("64 teeth, module 1", &wheel, outside, mm(17, 10), mm(6645, 100));
}

#[test]
fn the_127_wheel_s_teeth_on_a_blank_that_came_out_small() {
    let tooth = Tooth { size: Size::Module(mm(1, 2)), ..Tooth::default() };
    let wheel = Spur::new(127, tooth).expect("a wheel");
    row(
        "127 teeth, module 0.5, blank found at 64.46",
        &wheel,
        mm(6446, 100),
        mm(85, 100),
        mm(6478, 100),
    );
}
