//! Rows for what people type.
use super::read::{self, Unit};
use crate::bounds;
use crate::error::{Cause, Field};
extern crate std;
use std::format;
use std::string::String;
use std::vec::Vec;

#[track_caller]
fn number(text: &str, wanted: Result<(i64, i64), Cause>) {
    let read = read::number(text, Field::Length).map(|f| (f.num(), f.den())).map_err(|e| e.cause);
    assert_eq!(read, wanted, "{text:?}");
}

#[test]
fn numbers() {
    number("127", Ok((127, 1)));
    number(" 12.5 ", Ok((25, 2)));
    number("12,5", Ok((25, 2)));
    number("0,125", Ok((1, 8)));
    number(".5", Ok((1, 2)));
    number("12.", Ok((12, 1)));
    number("3/8", Ok((3, 8)));
    number("1 3/8", Ok((11, 8)));
    number("-1 3/8", Ok((-11, 8)));
    number("−2", Ok((-2, 1)));
    number("1.000", Ok((1, 1)));
    number("1,000", Err(Cause::ThousandsMark));
    number("10,000", Err(Cause::ThousandsMark));
    number("1,000,000", Err(Cause::ThousandsMark));
    number("1,0000", Ok((1, 1)));
    number("", Err(Cause::Empty));
    number("  ", Err(Cause::Empty));
    number("abc", Err(Cause::NotANumber));
    number("12x", Err(Cause::NotANumber));
    number("1e12", Err(Cause::NotANumber));
    number("1.2.3", Err(Cause::NotANumber));
    number("3/0", Err(Cause::Zero));
    number("3/", Err(Cause::Empty));
    number("1234567890123456789012345678901234567890", Err(Cause::Overflow));
    number("0.1234567890123456789012345678901234567890", Err(Cause::Overflow));
    number("NaN", Err(Cause::NotANumber));
}

#[test]
fn counts() {
    let count = |text| read::count(text, bounds::DIVISIONS).map_err(|e| e.cause);
    let range = Err(Cause::OutOfRange { least: 2, greatest: 10_000 });
    assert_eq!(count("127"), Ok(127));
    assert_eq!(count("127.0"), Ok(127));
    assert_eq!(count("127.5"), Err(Cause::NotWhole));
    for outside in ["0", "1", "-5", "10001", "1000000000000", "99999999999999999999999"] {
        assert_eq!(count(outside), range, "{outside}");
    }
    assert_eq!(count("10,000"), Err(Cause::ThousandsMark));
}

#[test]
fn ratios() {
    let ratio = |text| read::ratio(text).map(|f| (f.num(), f.den())).map_err(|e| e.cause);
    for forty in ["40", "40:1", " 40 : 1 ", "80/2", "80:2"] {
        assert_eq!(ratio(forty), Ok((40, 1)), "{forty}");
    }
    assert_eq!(ratio("40.5"), Ok((81, 2)));
    assert!(matches!(ratio("0"), Err(Cause::OutOfRange { .. })));
    assert!(matches!(ratio("-40"), Err(Cause::OutOfRange { .. })));
    assert_eq!(ratio("40:0"), Err(Cause::Zero));
}

#[track_caller]
fn angle(text: &str, arcsec: Result<(i64, i64), Cause>) {
    let read = read::angle(text);
    let read = read.map(|a| a.arcsec().unwrap()).map(|f| (f.num(), f.den())).map_err(|e| e.cause);
    assert_eq!(read, arcsec, "{text:?}");
}

#[test]
fn angles_alone() {
    for text in
        ["17°30'", "17° 30′", "17.5", "17,5°", "17 30", "17 30 0", "17d30m", "17 1/2", "17°30'00\""]
    {
        angle(text, Ok((63_000, 1)));
    }
    angle("1/3 turn", Ok((432_000, 1)));
    angle("0.25 turns", Ok((324_000, 1)));
    angle("30'", Ok((1800, 1)));
    angle("54 min", Ok((3240, 1)));
    angle("12.9″", Ok((129, 10)));
    angle("12''", Ok((12, 1)));
    angle("17°15\"", Ok((61_215, 1)));
    angle("2 50 4.724", Ok((10_204_724 / 4, 250)));
    angle("1/7 turn", Ok((1_296_000, 7)));
    angle("7°60'", Err(Cause::SixtyOrMore));
    angle("7 59 60", Err(Cause::SixtyOrMore));
    angle("-5", Err(Cause::OutOfRange { least: 0, greatest: 360 }));
    angle("7°30'15\"4", Err(Cause::NotANumber));
    angle("30' 7°", Err(Cause::NotANumber));
    angle("", Err(Cause::Empty));
    angle("right", Err(Cause::NotANumber));
}

#[track_caller]
fn angles(text: &str, degrees: &[(i64, i64)]) {
    let read = read::angles(text).unwrap();
    let read: Vec<_> =
        read.iter().map(|a| a.degrees().unwrap()).map(|f| (f.num(), f.den())).collect();
    assert_eq!(read, degrees, "{text:?}");
}

#[test]
fn angles_in_a_list() {
    angles("0 17.5 35", &[(0, 1), (35, 2), (35, 1)]);
    angles("0; 17°30'; 35°", &[(0, 1), (35, 2), (35, 1)]);
    angles("0\n17° 30'\n35\n", &[(0, 1), (35, 2), (35, 1)]);
    angles("0° 17° 30′ 35°", &[(0, 1), (35, 2), (35, 1)]);
    angles("17 30", &[(17, 1), (30, 1)]);
    angles("1/3 turn 2/3 turn", &[(120, 1), (240, 1)]);
    let many: String = (0..10_000).map(|k| format!("{} ", k % 360)).collect();
    assert_eq!(read::angles(&many).map_err(|e| e.cause), Err(Cause::TooMany { most: 400 }));
    let error = read::angles("0 17 x 35").unwrap_err();
    assert_eq!((error.cause, error.span), (Cause::NotANumber, (5, 6)));
    assert_eq!(read::angles(" \n").map_err(|e| e.cause), Err(Cause::Empty));
}

#[test]
fn lengths() {
    let mm = |text, unit| read::length(text, unit).map(|l| (l.mm().num(), l.mm().den()));
    assert_eq!(mm("76.2", Unit::Mm), Ok((381, 5)));
    for three in ["3 in", "3\"", "3.000in", "3 inch", "3000 thou"] {
        assert_eq!(mm(three, Unit::Mm), Ok((381, 5)), "{three}");
    }
    assert_eq!(mm("3", Unit::Inch), Ok((381, 5)));
    assert_eq!(mm("1/4\"", Unit::Mm), Ok((127, 20)));
    assert_eq!(mm("25.4 mm", Unit::Inch), Ok((127, 5)));
    assert!(mm("3 ft", Unit::Mm).is_err());
}

#[test]
fn threads_per_inch() {
    let mm = |text| read::per_inch(text, Field::Pitch).map(|l| (l.mm().num(), l.mm().den()));
    assert_eq!(mm("8"), Ok((127, 40)));
    assert_eq!(mm(" 11 1/2 "), Ok((254, 115)));
    for (text, cause) in [("0", Cause::Zero), ("", Cause::Empty), ("x", Cause::NotANumber)] {
        let error = read::per_inch(text, Field::Pitch).unwrap_err();
        assert_eq!((error.field, error.cause), (Field::Pitch, cause), "{text:?}");
    }
}
