use super::*;
use crate::number::Fraction;

fn um(n: i64) -> Length {
    Length::from_mm(Fraction::new(n, 1000).unwrap())
}

/// M6x0.75, 6g, the clamp thread of a clock's arbor.
fn arbor() -> Measured {
    Measured {
        half_angle: Angle::from_degrees(Fraction::whole(30)).unwrap(),
        pitch: um(750),
        starts: 1,
        space: um(375),
        pitch_least: um(5391),
        pitch_greatest: um(5491),
        outside_least: um(5838),
        outside_greatest: um(5978),
        crest: um(0),
        root: um(5166),
    }
}

#[track_caller]
fn check(thread: &Measured, wire: i64, at: i64, expected: Result<i64, Cause>) {
    let found = over(thread, um(wire), um(at));
    let found = found.map(|over| crate::thread::given::whole(over.three.value * 1000.0).into());
    assert_eq!(found.map_err(|e| e.cause), expected, "{wire} at {at}");
}

#[test]
fn readings_and_what_keeps_a_wire_from_giving_one() {
    let thread = arbor();
    // 5.491 + 1.35 − 0.6495 and the lead's part of a micrometre.
    check(&thread, 450, 5491, Ok(6192));
    check(&thread, 450, 5391, Ok(6092));
    // Under the crest at 5.978, past the flank's end at 5.838.
    let rides = Cause::WireRides { least_um: 379, greatest_um: 663 };
    let sinks = Cause::WireSinks { least_um: 379, greatest_um: 663 };
    check(&thread, 700, 5491, Err(rides));
    check(&thread, 300, 5491, Err(sinks));
    check(&thread, 379, 5491, Ok(5979));
    check(&thread, 663, 5491, Ok(6831));
    // A root that ends above the pitch line keeps a thin wire off the flanks.
    let shallow = Measured { root: um(5380), ..thread };
    let Err(Error { cause: Cause::WireRests { least_um, .. }, .. }) =
        over(&shallow, um(400), um(5391))
    else {
        panic!("it rests in the root")
    };
    assert_eq!(least_um, 426);
}

#[test]
fn the_range_holds_at_both_ends_of_the_limits() {
    let range = range(&arbor()).unwrap();
    let within = |value: f64, low: f64, high: f64| value > low && value < high;
    assert!(within(range.least.value, 0.41, 0.42), "{range:?}");
    assert!(within(range.greatest.value, 0.66, 0.67), "{range:?}");
    // Anywhere within it, at either end, the wire gives a reading; a hair outside, it
    // fails at one of them.
    for wire in [um_up(range.least.value), 433, 550, um_down(range.greatest.value)] {
        for at in [5391, 5440, 5491] {
            assert!(over(&arbor(), um(wire.into()), um(at)).is_ok(), "{wire} at {at}");
        }
    }
    let thin = i64::from(um_up(range.least.value)) - 1;
    assert!(over(&arbor(), um(thin), um(5391)).is_err());
    let thick = i64::from(um_down(range.greatest.value)) + 1;
    assert!(over(&arbor(), um(thick), um(5491)).is_err());
}

#[test]
fn the_nearest_to_the_best_is_chosen() {
    let owned = |list: &[i64]| list.iter().map(|&n| um(n)).collect::<Vec<_>>();
    let thread = arbor();
    let chosen = |list: &[i64]| choose(&thread, &owned(list)).unwrap();
    assert_eq!(chosen(&[300, 450, 500, 620, 700]), Some(um(450)));
    assert_eq!(chosen(&[300, 700]), None);
    assert_eq!(chosen(&[]), None);
    assert_eq!(choose(&thread, &owned(&[0])), Err(Error::new(Field::Wire, Cause::Zero)));
}

extern crate std;
use std::vec::Vec;

#[test]
fn a_reading_turns_back() {
    for (wire, at) in [(450, 5391), (450, 5562), (600, 5450), (433, 5441)] {
        let read = over(&arbor(), um(wire), um(at)).unwrap().three;
        let reading =
            Length::from_mm(crate::number::float::nearest(read.value, 1_000_000_000).unwrap());
        let back = pitch_diameter(&arbor(), um(wire), reading).unwrap();
        assert!((back.value * 1000.0 - at as f64).abs() < 1e-5, "{back:?}");
    }
    // Before a groove is there, the wire rides on what is to become crests.
    let early = pitch_diameter(&arbor(), um(450), um(6700)).map_err(|e| e.cause);
    assert!(matches!(early, Err(Cause::WireRides { .. } | Cause::Conflict)), "{early:?}");
    let absurd = pitch_diameter(&arbor(), um(450), um(1200)).map_err(|e| e.cause);
    assert_eq!(absurd, Err(Cause::Conflict));
}

#[test]
fn threads_that_contradict_themselves_say_so() {
    let diameter = Err(Error::new(Field::Diameter, Cause::Conflict));
    let bad = |thread: Measured| range(&thread);
    assert_eq!(bad(Measured { pitch_least: um(5500), ..arbor() }), diameter);
    assert_eq!(bad(Measured { outside_least: um(6000), ..arbor() }), diameter);
    assert_eq!(bad(Measured { root: um(5400), ..arbor() }), diameter);
    assert_eq!(
        bad(Measured { outside_greatest: um(5480), outside_least: um(5480), ..arbor() }),
        diameter
    );
    let field = |thread| bad(thread).map_err(|e| (e.field, e.cause));
    assert_eq!(field(Measured { pitch: um(0), ..arbor() }), Err((Field::Pitch, Cause::Zero)));
    assert_eq!(field(Measured { space: um(750), ..arbor() }), Err((Field::Pitch, Cause::Conflict)));
    assert_eq!(field(Measured { starts: 24, ..arbor() }), Err((Field::Starts, Cause::Conflict)));
    let none = Cause::OutOfRange { least: 1, greatest: 60 };
    assert_eq!(field(Measured { starts: 0, ..arbor() }), Err((Field::Starts, none)));
    let square = Angle::from_degrees(Fraction::ZERO).unwrap();
    let steep = Cause::OutOfRange { least: 5, greatest: 60 };
    assert_eq!(field(Measured { half_angle: square, ..arbor() }), Err((Field::Angle, steep)));
    // Limits so wide that no wire serves at both ends.
    let wide =
        Measured { pitch_least: um(5200), root: um(4900), outside_least: um(5500), ..arbor() };
    assert_eq!(field(wide), Err((Field::Wire, Cause::Conflict)));
}
