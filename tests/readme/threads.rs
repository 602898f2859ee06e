//! The rows on threads.
use super::stands;
use handturn::head::{Mounting, gears_of};
use handturn::measure::write::{Decimal, rounded};
use handturn::measure::{Angle, Length};
use handturn::number::{Approx, Fraction};
use handturn::thread::gearing::{Job, Lathe, Lead, go_on};
use handturn::thread::limits::{Class, Fit, Side, limits};
use handturn::thread::still::still;
use handturn::thread::{Hand, name, ready, wires};
use handturn::train::{Found, Search, Senses, Six};

const GEARS: [u16; 14] = [20, 20, 25, 30, 35, 40, 45, 50, 55, 60, 65, 70, 75, 80];

fn mm(num: i64, den: i64) -> Length {
    Length::from_mm(Fraction::new(num, den).expect("a length"))
}

fn shown(value: Approx, places: u8) -> String {
    Decimal { value: rounded(value, places).expect("small"), places }.to_string()
}

/// The best train for `lead` on a screw of 8 to the inch.
fn best(lead: Lead, more: Option<u16>, six: Six) -> Found {
    let gears: Vec<u16> = GEARS.into_iter().chain(more).collect();
    let eighth = Fraction::new(1, 8).and_then(Length::from_inches).expect("a lead");
    let lathe = Lathe {
        screw: eighth,
        screw_hand: Hand::Right,
        head: Fraction::ONE,
        gearbox: handturn::List::new(),
        gears: gears_of(&gears).expect("fourteen gears or fifteen"),
        mounting: Mounting::default(),
        drive: Senses::Either,
    };
    let job = Job { lead, hand: Hand::Right, six };
    let mut search = Search::<1>::new();
    while !go_on(&mut search, &job, &lathe, 100_000).expect("the examples are sound") {}
    *search.best().first().expect("a train")
}

fn train(found: &Found) -> String {
    let pairs = found.chain.pairs().map(|pair| format!("{} drives {}", pair.driver, pair.driven));
    let pairs = pairs.collect::<Vec<_>>().join(", on its stud ");
    let idlers = found.chain.idlers.iter().flatten().map(|n| format!(" over an idler of {n}"));
    pairs + &idlers.collect::<String>()
}

#[track_caller]
fn row(asked: &str, found: &Found) {
    let (ppm, over) = (found.off_ppm(), found.off_over(mm(100, 1)));
    let error = if found.is_exact() {
        "exact".to_owned()
    } else {
        assert!(ppm.value > 0.0, "the row has a plus");
        format!("+{} ppm: +{} mm over 100 mm", shown(ppm, 0), shown(over, 3))
    };
    stands(&format!("| {asked} | {} | {error} |", train(found)));
}

#[test]
fn a_metric_thread_on_an_inch_screw() {
    let thread = name::read("M6 × 0.75").expect("a name")[0].thread;
    let lead = Lead::of_pitch(thread.pitch, thread.starts).expect("a lead");
    row("M6 × 0.75, with a gear of 127", &best(lead, Some(127), Six::Never));
    row("M6 × 0.75, four gears", &best(lead, None, Six::Never));
    row("M6 × 0.75, six gears", &best(lead, None, Six::Always));
}

#[test]
fn a_module_worm() {
    let lead = Lead::of_module(mm(1, 1), 1).expect("a lead");
    row("worm of module 1, four gears", &best(lead, None, Six::Never));
}

#[test]
fn a_ba_thread_by_wires() {
    let thread = name::read("2 BA").expect("a name")[0].thread;
    let close = Class { side: Side::External, fit: Fit::Close };
    let limits = limits(&thread, close).expect("BS 93 has it");
    let measured = ready::measured(&thread, Some(&limits)).expect("a thread");
    let wire = mm(45, 100);
    let over = |at| wires::over(&measured, wire, at).expect("the wire serves");
    let (most, least) = (over(measured.pitch_greatest), over(measured.pitch_least));
    let read = wires::pitch_diameter(&measured, wire, mm(49, 10)).expect("a reading");
    let left = still(read, measured.pitch_least, measured.pitch_greatest, Angle::ZERO, false);
    let straight = left.expect("limits").to_limit.straight;
    let by_formula = most.formula.value + most.lead_term.value;
    let off = Approx { value: (by_formula - most.three.value).abs(), bound: 0.0 };
    stands(&format!(
        "| 2 BA screw, close, over 0.45 mm wires | reads {} to {} mm; when it reads 4.900, {} mm straight in is left to the upper limit | usual formula: {} mm off |",
        shown(least.three, 4),
        shown(most.three, 4),
        shown(Approx { value: straight, bound: 0.0 }, 3),
        shown(off, 4),
    ));
    // The figures of the working by hand.
    let more = most.formula.value - 4.215;
    assert_eq!(shown(Approx { value: more, bound: 0.0 }, 4), "0.6469");
    assert_eq!(shown(most.lead_term, 4), "0.0018");
    assert_eq!(measured.pitch_greatest, mm(4215, 1000));
}
