//! Passes of a thread, whatever the dial, tool and cuts: they rise, keep the least
//! cut, add up exactly and clear about the same metal.
use crate::config;
use handturn::Cause;
use handturn::measure::{Angle, Length};
use handturn::number::{Fraction, float};
use handturn::thread::dial::{Dial, Reads, Runs};
use handturn::thread::infeed::Nose;
use handturn::thread::passes::Plan;
use proptest::prelude::*;

fn um(n: i64) -> Length {
    Length::from_mm(Fraction::new(n, 1000).expect("small"))
}

fn dial() -> impl Strategy<Value = Dial> {
    let inch = |n: i64, d| Length::from_inches(Fraction::new(n, d).expect("small")).expect("small");
    let division = prop_oneof![
        prop_oneof![Just(10), Just(20), Just(25), Just(50)].prop_map(um),
        prop_oneof![Just(1000), Just(2000), Just(500)].prop_map(move |d| inch(1, d)),
    ];
    let reads = prop_oneof![Just(Reads::Travel), Just(Reads::Diameter)];
    (division, reads, 20..=250_u32).prop_map(|(division, reads, marks)| Dial {
        division,
        reads,
        marks,
    })
}

fn plan() -> impl Strategy<Value = Plan> {
    let angles = (0..=60_i64, 0..=60_i64).prop_map(|(a, b)| (a.max(b), a.min(b)));
    let nose = prop_oneof![
        Just(Nose::Flat(um(0))),
        (1..=3000_i64).prop_map(|n| Nose::Flat(um(n))),
        (1..=500_i64).prop_map(|n| Nose::Radius(um(n))),
    ];
    let cuts = (50..=6000_i64, 10..=600_i64, 1..=100_i64);
    (cuts, 0..=4_u32, angles, nose, dial(), 0..=500_u32, any::<bool>()).prop_map(
        |((depth, first, least), spring, (half, over), nose, dial, dial_at, bore)| {
            let degrees = |halves| {
                let degrees = Fraction::new(halves, 2).expect("small");
                Angle::from_degrees(degrees).expect("small")
            };
            Plan {
                depth: um(depth),
                done: um(0),
                first: um(first.max(least)),
                least: um(least),
                spring,
                half_angle: degrees(half),
                set_over: degrees(over),
                nose,
                dial,
                dial_at,
                runs: if bore { Runs::Backwards } else { Runs::Forwards },
            }
        },
    )
}

/// What a nose clears at a depth of `marks`, up to a factor.
fn area(plan: &Plan, marks: u32) -> f64 {
    let mark = float::of(plan.dial.mark().expect("a dial").mm());
    let tan = float::tan_turns(float::of(plan.half_angle.turns()));
    let straight = f64::from(marks) * mark * float::cos_turns(float::of(plan.set_over.turns()));
    let flat = plan.nose.as_flat(plan.half_angle).expect("a nose").value;
    flat * straight + tan * straight * straight
}

fn follows(plan: &Plan) -> Result<(), TestCaseError> {
    let count = match plan.count() {
        Ok(count) => count,
        Err(error) => {
            prop_assert!(matches!(error.cause, Cause::TooMany { most: 400 }), "{:?}", error);
            return Ok(());
        }
    };
    let cutting = count - plan.spring;
    let mark = plan.dial.mark().expect("a dial").mm();
    let (total, left) = plan.dial.nearest(plan.depth).expect("a depth");
    prop_assert_eq!(plan.left_by_rounding(), Ok(left));
    let todo = plan.depth.mm().checked_sub(plan.done.mm()).expect("small");
    let (todo, _) = plan.dial.nearest(Length::from_mm(todo)).expect("a depth");
    let begun = total.saturating_sub(todo);
    let mut depth = begun;
    for number in 1..=count {
        let pass = plan.pass(number).expect("a pass");
        prop_assert_eq!(pass.spring, number > cutting);
        let marks = pass.cut.mm().checked_div(mark).expect("small");
        prop_assert!(marks.is_whole() && !marks.is_negative(), "whole marks");
        let cut = u32::try_from(marks.num()).expect("small");
        let before = depth;
        depth += cut;
        // Readings say what the cuts add up to, turns and marks of the dial included.
        prop_assert_eq!(pass.reading.from_zero, plan.dial_at + depth - begun);
        let past = pass.reading.from_zero % plan.dial.marks;
        let mark_read = match plan.runs {
            Runs::Backwards if past > 0 => plan.dial.marks - past,
            _ => past,
        };
        prop_assert_eq!(pass.reading.mark, mark_read);
        prop_assert_eq!(pass.reading.turns, pass.reading.from_zero / plan.dial.marks);
        prop_assert_eq!(pass.depth.mm(), mark.times(i64::from(depth)).expect("small"));
        if pass.spring {
            prop_assert_eq!(cut, 0);
            continue;
        }
        prop_assert!(cut > 0, "monotone");
        if number < cutting {
            prop_assert!(pass.cut >= plan.least, "pass {} below the least cut", number);
            // Above the least cut, as much metal as the first pass, to half a mark.
            let (first, _) = plan.dial.nearest(plan.first).expect("small");
            let least = plan.least.mm().checked_div(mark).expect("small");
            let least = u32::try_from(-least.negated().floor()).expect("small").max(1);
            if cut > least {
                let each = area(plan, first.max(least));
                let low = area(plan, depth - 1) - area(plan, before);
                let high = area(plan, depth + 1) - area(plan, before);
                prop_assert!(low <= each && each <= high, "{} {} {}", low, each, high);
            }
        }
    }
    prop_assert_eq!(depth, total, "the last lands on depth");
    let beyond = plan.pass(count + 1).map_err(|e| e.cause);
    prop_assert_eq!(beyond, Err(Cause::OutOfRange { least: 1, greatest: count }));
    Ok(())
}

proptest! {
    #![proptest_config(config(2000))]

    #[test]
    fn passes_rise_and_add_up(plan in plan()) {
        follows(&plan)?;
    }

    #[test]
    fn passes_go_on_from_a_measurement(plan in plan(), part in 0..=110_i64, dial_at in 0..=3000_u32) {
        let left = Length::from_mm(plan.depth.mm().times(part).unwrap().over(100).unwrap());
        let on = plan.measured(left, dial_at).expect("what is left is in bounds");
        follows(&on)?;
        // What the passes still cut is what was found left, to half a mark.
        if let Ok(count) = on.count() {
            let mut sum = Fraction::ZERO;
            for number in 1..=count {
                sum = sum.checked_add(on.pass(number).unwrap().cut.mm()).unwrap();
            }
            let off = sum.checked_sub(left.mm()).unwrap().abs();
            let mark = on.dial.mark().unwrap().mm();
            prop_assert!(off.times(2).unwrap() <= mark, "{} off", off);
        }
    }
}
