use super::*;

fn um(n: i64) -> Length {
    Length::from_mm(Fraction::new(n, 1000).unwrap())
}

fn degrees(num: i64, den: i64) -> Angle {
    Angle::from_degrees(Fraction::new(num, den).unwrap()).unwrap()
}

/// M6x0.75 outside; its core hole is 5.188 and its root 6.0 inside.
fn outside() -> Infeed {
    Infeed {
        half_angle: degrees(30, 1),
        space: um(375),
        work: um(5910),
        pitch_diameter: um(5441),
        root: um(5058),
        deepest: None,
        nose: Nose::Flat(um(0)),
        feed: Feed::Flank,
        internal: false,
        left_hand: false,
    }
}

fn inside() -> Infeed {
    Infeed { work: um(5188), pitch_diameter: um(5588), root: um(6000), internal: true, ..outside() }
}

/// Depths straight in and widening, in micrometres.
#[track_caller]
fn check(ask: Infeed, expected: Result<(u32, u32), (Field, Cause)>) {
    let um = |value: f64| crate::thread::given::whole(value * 1000.0);
    let found = infeed(&ask).map(|d| (um(d.straight.value), um(d.widen.value)));
    assert_eq!(found.map_err(|e| (e.field, e.cause)), expected);
}

#[test]
fn depth_by_the_nose() {
    // (5.910 − 5.441)/2 + 0.375·cos 30° = 0.2345 + 0.3248; each flat takes 0.866 of it off.
    check(outside(), Ok((559, 0)));
    check(Infeed { nose: Nose::Flat(um(90)), ..outside() }, Ok((481, 0)));
    check(Infeed { nose: Nose::Radius(um(108)), ..outside() }, Ok((451, 0)));
    check(inside(), Ok((525, 0)));
    // The widest nose at a root of 5.058: 0.375 − 0.383·tan 30° = 0.1539 flat, or 0.1333 round.
    let blunt = |greatest_um| Err((Field::Tool, Cause::Blunt { greatest_um }));
    check(Infeed { nose: Nose::Flat(um(154)), ..outside() }, blunt(153));
    check(Infeed { nose: Nose::Flat(um(153)), ..outside() }, Ok((427, 0)));
    check(Infeed { nose: Nose::Radius(um(134)), ..outside() }, blunt(133));
    check(Infeed { nose: Nose::Radius(um(133)), ..outside() }, Ok((426, 0)));
    check(Infeed { nose: Nose::Flat(um(140)), ..inside() }, blunt(137));
}

#[test]
fn forms_that_may_not_go_deeper_are_widened() {
    // Tr16x4: pitch diameter 14, root 11.5, groove 2 at the pitch line, root flat 1.330.
    let tr = Infeed {
        half_angle: degrees(15, 1),
        space: um(2000),
        work: um(16_000),
        pitch_diameter: um(14_000),
        root: um(11_500),
        deepest: Some(um(11_500)),
        nose: Nose::Flat(um(1330)),
        ..outside()
    };
    check(tr, Ok((2250, 0)));
    check(Infeed { nose: Nose::Flat(um(1000)), ..tr }, Ok((2250, 330)));
    check(
        Infeed { nose: Nose::Flat(um(1331)), ..tr },
        Err((Field::Tool, Cause::Blunt { greatest_um: 1330 })),
    );
    // A square thread of pitch 4: the groove is 2 wide all the way.
    let square = Infeed { half_angle: degrees(0, 1), feed: Feed::Plunge, ..tr };
    check(Infeed { nose: Nose::Flat(um(2000)), ..square }, Ok((2250, 0)));
    check(Infeed { nose: Nose::Flat(um(1200)), ..square }, Ok((2250, 800)));
    check(
        Infeed { nose: Nose::Flat(um(2001)), ..square },
        Err((Field::Tool, Cause::Blunt { greatest_um: 2000 })),
    );
    check(Infeed { deepest: None, ..square }, Err((Field::Diameter, Cause::Empty)));
}

#[test]
fn the_slide_is_mirrored_for_left_hand_and_bore() {
    let stands = |ask: Infeed| infeed(&ask).map(|d| (d.swing, d.drift)).unwrap();
    let left = |ask| Infeed { left_hand: true, ..ask };
    assert_eq!(stands(outside()), (Swing::Anticlockwise, Drift::Headstock));
    assert_eq!(stands(left(outside())), (Swing::Clockwise, Drift::Tailstock));
    assert_eq!(stands(inside()), (Swing::Clockwise, Drift::Headstock));
    assert_eq!(stands(left(inside())), (Swing::Anticlockwise, Drift::Tailstock));
    let plunge = Infeed { feed: Feed::Plunge, ..outside() };
    assert_eq!(stands(plunge), (Swing::None, Drift::None));
    let found = infeed(&plunge).unwrap();
    assert_eq!((found.set_over, found.on_bed_scale), (Angle::ZERO, degrees(90, 1)));
    assert!((found.along_slide.value - found.straight.value).abs() < 1e-12);
    let found = infeed(&outside()).unwrap();
    assert_eq!((found.set_over, found.on_bed_scale), (degrees(30, 1), degrees(60, 1)));
    assert!((found.along_slide.value * 0.75_f64.sqrt() - found.straight.value).abs() < 1e-12);
}

#[test]
fn what_goes_against_itself_says_so() {
    let clash = Err((Field::Diameter, Cause::Conflict));
    check(Infeed { work: um(5400), ..outside() }, clash);
    check(Infeed { root: um(5500), ..outside() }, clash);
    check(Infeed { work: um(6100), ..inside() }, clash);
    // A root so deep that the flanks cross above it.
    check(Infeed { root: um(4500), ..outside() }, clash);
    check(Infeed { deepest: Some(um(5100)), ..outside() }, clash);
    let beyond = Feed::Modified { short: degrees(-1, 2) };
    check(Infeed { feed: beyond, ..outside() }, Err((Field::Angle, Cause::Conflict)));
    check(
        Infeed { half_angle: degrees(61, 1), ..outside() },
        Err((Field::Angle, Cause::OutOfRange { least: 0, greatest: 60 })),
    );
    check(Infeed { space: um(0), ..outside() }, Err((Field::Pitch, Cause::Zero)));
    check(
        Infeed { nose: Nose::Flat(um(-1)), ..outside() },
        Err((Field::Tool, Cause::OutOfLengths { least_um: 1, greatest_um: 10_000_000 })),
    );
}
