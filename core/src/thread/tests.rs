use super::*;
use crate::measure::Angle;

fn mm(thousandths: i64) -> Length {
    Length::from_mm(Fraction::new(thousandths, 1000).unwrap())
}

fn inches(num: i64, den: i64) -> Length {
    Length::from_inches(Fraction::new(num, den).unwrap()).unwrap()
}

fn single(form: Form, major: Length, pitch: Length) -> Thread {
    Thread::new(form, major, pitch, 1, Hand::Right).unwrap()
}

/// Pitch diameter, bore, core and outer root of the nut.
#[track_caller]
fn check(thread: Thread, expected: [Length; 4]) {
    let came = [
        thread.pitch_diameter(),
        thread.minor_internal(),
        thread.minor_external(),
        thread.major_internal(),
    ];
    assert_eq!(came.map(Result::unwrap), expected);
}

#[test]
fn basic_sizes_are_those_of_the_tables() {
    check(
        single(Form::METRIC, mm(12_000), mm(1750)),
        [mm(10_863), mm(10_106), mm(9_853), mm(12_000)],
    );
    check(single(Form::BA, mm(4700), mm(810)), [mm(4215), mm(3730), mm(3730), mm(4700)]);
    check(
        single(Form::PIPE, mm(20_955), Length::from_mm(Fraction::new(254, 140).unwrap())),
        [mm(19_793), mm(18_631), mm(18_631), mm(20_955)],
    );
    check(
        single(Form::TRAPEZOIDAL, mm(16_000), mm(4000)),
        [mm(14_000), mm(12_000), mm(11_500), mm(16_500)],
    );
    check(
        single(Form::WHITWORTH, inches(1, 2), inches(1, 12)),
        [inches(4466, 10_000), inches(3933, 10_000), inches(3933, 10_000), inches(1, 2)],
    );
    check(
        single(Form::UNIFIED, inches(1, 4), inches(1, 20)),
        [inches(2175, 10_000), inches(1959, 10_000), inches(1905, 10_000), inches(1, 4)],
    );
    check(
        single(Form::ACME, inches(1, 4), inches(1, 16)),
        [inches(2188, 10_000), inches(1875, 10_000), inches(1775, 10_000), inches(26, 100)],
    );
}

#[test]
fn a_form_of_ones_own_meets_the_standard_one() {
    let flat = Fraction::new(1, 8).unwrap();
    let own = Form::own(Form::METRIC.angle, flat, flat, Unit::Mm).unwrap();
    assert_eq!(own.height, Form::METRIC.height);
    assert_eq!(own.external.depth, Fraction::new(649_519_053, 1_000_000_000).unwrap());
    let off = own.addendum.checked_sub(Form::METRIC.addendum).unwrap().abs();
    assert!(off <= Fraction::new(1, 1_000_000_000).unwrap());
    let refused = |angle, crest, root| {
        let angle = Angle::from_degrees(Fraction::whole(angle)).unwrap();
        let tenth = |n| Fraction::new(n, 10).unwrap();
        Form::own(angle, tenth(crest), tenth(root), Unit::Mm).unwrap_err()
    };
    let range = Cause::OutOfRange { least: 5, greatest: 150 };
    assert_eq!(refused(4, 1, 1), Error::new(Field::Form, range));
    assert_eq!(refused(151, 1, 1), Error::new(Field::Form, range));
    assert_eq!(refused(60, -1, 1), Error::new(Field::Form, Cause::Conflict));
    assert_eq!(refused(60, 5, 1), Error::new(Field::Form, Cause::Conflict));
}

#[test]
fn what_is_no_thread_is_refused() {
    let refused = |major, pitch, starts| {
        Thread::new(Form::METRIC, mm(major), mm(pitch), starts, Hand::Right).unwrap_err()
    };
    let pitch = Cause::OutOfRange { least: 50, greatest: 200_000 };
    assert_eq!(refused(6000, 0, 1), Error::new(Field::Pitch, pitch));
    assert_eq!(refused(6000, 49, 1), Error::new(Field::Pitch, pitch));
    assert_eq!(refused(6000, 200_001, 1), Error::new(Field::Pitch, pitch));
    let major = Cause::OutOfRange { least: 200, greatest: 2_000_000 };
    assert_eq!(refused(-6000, 1000, 1), Error::new(Field::Major, major));
    let starts = Cause::OutOfRange { least: 1, greatest: 60 };
    assert_eq!(refused(6000, 1000, 0), Error::new(Field::Starts, starts));
    assert_eq!(refused(1000, 1000, 1), Error::new(Field::Pitch, Cause::Conflict));
}

#[test]
fn lead_and_threads_an_inch_are_exact() {
    let two = Thread::new(Form::TRAPEZOIDAL, mm(16_000), mm(4000), 2, Hand::Left).unwrap();
    assert_eq!(two.lead().unwrap(), mm(8000));
    assert_eq!(two.tpi().unwrap(), Fraction::new(127, 20).unwrap());
}
