//! Pairs worked by hand.
use super::pair::*;
use super::{Size, Spur, Tooth};
use crate::error::{Cause, Field};
use crate::measure::Length;
use crate::number::Fraction;

fn mm(thousandths: i64) -> Length {
    Length::from_mm(Fraction::new(thousandths, 1000).unwrap())
}

fn wheel(teeth: u32, shift: i64, thinned: i64) -> Spur {
    let shift = Fraction::new(shift, 1000).unwrap();
    let plain = Spur::new(teeth, Tooth::default()).unwrap();
    Spur { shift, thinned: mm(thinned), ..plain }
}

fn pair(first: Spur, second: Spur, at: At) -> Pair {
    Pair { first, second, at }
}

#[test]
fn a_standard_pair_has_no_play_at_its_standard_distance() {
    let run = mesh(&pair(wheel(64, 0, 0), wheel(38, 0, 0), At::Centres(mm(51_000)))).unwrap();
    assert_eq!((run.standard, run.ratio), (mm(51_000), Fraction::new(38, 64).unwrap()));
    assert!(run.backlash.value.abs() <= run.backlash.bound && run.backlash.bound < 2e-13);
    assert!((run.tight.value - 51.0).abs() <= run.tight.bound && run.tight.bound < 1e-12);
    assert!((run.working_angle.value - 20.0).abs() <= run.working_angle.bound);
    for clearance in run.root_clearance {
        assert!((clearance.value - 0.25).abs() < 1e-12);
    }
    assert_eq!((run.fouls, run.runs_smoothly), ([false; 2], true));
    let [first, second] = run.working_diameters.map(|d| d.value);
    assert!((first - 64.0).abs() < 1e-12 && (second - 38.0).abs() < 1e-12);
}

#[test]
fn thinning_is_the_backlash_at_the_standard_distance() {
    let run = mesh(&pair(wheel(64, 0, 30), wheel(38, 0, 20), At::Centres(mm(51_000)))).unwrap();
    assert!((run.backlash.value - 0.05).abs() < 1e-12);
    assert!((run.between_flanks.value - 0.05 * 20_f64.to_radians().cos()).abs() < 1e-12);
}

#[test]
fn distance_and_backlash_go_there_and_back() {
    for (one, two, shift, thin) in
        [(64, 38, 0, 0), (12, 40, 300, 20), (17, 17, -50, 0), (223, 53, 0, 40), (8, 60, 500, 0)]
    {
        let (first, second) = (wheel(one, shift, thin), wheel(two, 0, thin));
        for wanted in [0, 20, 100, 400] {
            let set = mesh(&pair(first, second, At::Backlash(mm(wanted)))).unwrap();
            // The distance, cut to a billionth of a millimetre.
            let near = Fraction::new((set.centres.value * 1e9).round() as i64, 1_000_000_000);
            let at = Length::from_mm(near.unwrap());
            let back = mesh(&pair(first, second, At::Centres(at))).unwrap();
            let off = back.backlash.value - wanted as f64 / 1000.0;
            assert!(off.abs() < 1e-8, "{one} {two} {wanted}: {off}");
            // Measured so, it need not be moved, and the teeth are as thin as drawn.
            let now = pair(first, second, At::Centres(at));
            let said = opening(&now, mm(wanted), mm(wanted)).unwrap();
            assert!(said.opening.value.abs() < 1e-8, "{said:?}");
            assert!((said.thinned.value - 2.0 * thin as f64 / 1000.0).abs() < 1e-7);
            let wider = opening(&now, mm(wanted), mm(wanted + 50)).unwrap();
            assert!(wider.opening.value > 0.0);
        }
    }
}

#[test]
fn a_rack_like_wheel_fouls_a_small_pinion() {
    let fouls = |one, two| {
        let centres = mm(500 * i64::from(one + two));
        let run = mesh(&pair(wheel(one, 0, 0), wheel(two, 0, 0), At::Centres(centres)));
        run.unwrap().fouls
    };
    // At 20° thirteen teeth run with sixteen at most, seventeen with any rack but 1309 up.
    assert_eq!(fouls(13, 16), [false, false]);
    assert_eq!(fouls(13, 17), [false, true]);
    assert_eq!(fouls(17, 1309), [false, false]);
    assert_eq!(fouls(17, 1310), [false, true]);
    assert_eq!(fouls(18, 4900), [false, false]);
}

#[test]
fn what_does_not_run_together() {
    let why = |pair: &Pair| mesh(pair).map_err(|e| (e.field, e.cause)).map(|_| ());
    let conflict = |field| Err((field, Cause::Conflict));
    let (one, two) = (wheel(64, 0, 0), wheel(38, 0, 0));
    let mut other = two;
    other.tooth.size = Size::Module(mm(1001));
    let at = At::Centres(mm(51_000));
    assert_eq!(why(&pair(one, other, at)), conflict(Field::Module));
    let mut other = two;
    other.tooth.pressure_angle = crate::measure::Angle::from_turns(Fraction::new(1, 16).unwrap());
    assert_eq!(why(&pair(one, other, at)), conflict(Field::PressureAngle));
    let shifted = pair(wheel(5, -1000, 0), wheel(5, -1000, 0), At::Backlash(mm(0)));
    assert_eq!(why(&shifted), conflict(Field::Shift));
    assert_eq!(why(&pair(one, two, At::Backlash(mm(1001)))), conflict(Field::Backlash));
    for far in [47_000, 53_000] {
        let lengths = Cause::OutOfLengths { least_um: 47_925, greatest_um: 53_000 };
        assert_eq!(why(&pair(one, two, At::Centres(mm(far)))), Err((Field::Centres, lengths)));
    }
    let none = opening(&pair(one, two, At::Backlash(mm(0))), mm(0), mm(0));
    assert_eq!(none.map_err(|e| e.cause).map(|_| ()), Err(Cause::Empty));
}

#[test]
fn teeth_from_a_distance() {
    let size = Size::Module(mm(3000));
    let of =
        |ratio: (i64, i64)| teeth_for(size, mm(54_000), Fraction::new(ratio.0, ratio.1).unwrap());
    let found = of((5, 4)).unwrap();
    assert_eq!((found.sum, found.first), (Fraction::whole(36), Fraction::whole(16)));
    assert_eq!((found.second, found.whole), (Fraction::whole(20), true));
    assert!(!of((2, 5)).unwrap().whole);
    assert!(of((0, 5)).is_err() && of((1, 50)).is_err());
}
