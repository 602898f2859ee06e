use super::*;
use crate::thread::Hand;
extern crate std;
use std::string::String;
use std::vec::Vec;

fn written(found: &Found) -> String {
    let mut text = String::new();
    match found.listed {
        Some((series, size)) => write(series, size, &mut |piece| text.push_str(piece)),
        None => text.push('-'),
    }
    text
}

/// All that `text` can stand for, by name.
#[track_caller]
fn check(text: &str, expected: &[&str]) {
    let found = read(text).unwrap_or_else(|e| panic!("{text}: {e} {:?}", e.span));
    let names: Vec<String> = found.iter().map(written).collect();
    assert_eq!(names, expected, "{text}");
}

#[track_caller]
fn refused(text: &str, field: Field, cause: Cause, span: (u16, u16)) {
    let error = read(text).unwrap_err();
    assert_eq!((error.field, error.cause, error.span), (field, cause, span), "{text}");
}

#[test]
fn names_as_people_write_them() {
    for text in ["M6", "m6", " M 6 ", "M6x1", "M6-6g", "M 6 × 1 - 6H", "m6*1,0", "M6 LH"] {
        check(text, &["M6"]);
    }
    for text in ["M6x0.75", "M 6 × 0,75", "m6*.75", "M6-0.75", "M6x0.75-4g6g", "6 x 0.75"] {
        check(text, &["M6x0.75"]);
    }
    for text in ["10-24", "#10-24", "No 10-24", "no.10 - 24 UNC", "10-24 UNC 2A", "# 10 x 24"] {
        check(text, &["10-24 UNC"]);
    }
    for text in ["1/4-20 UNC", "1/4\"-20unc", "1/4 in x 20 tpi UNC", "0.25-20 UNC-2B"] {
        check(text, &["1/4-20 UNC"]);
    }
    for text in ["3/8 x 32 ME", "3/8 32 ME", "3/8x32me", "3/8\" × 32 tpi ME", "ME 3/8 x 32"] {
        check(text, &["3/8 x 32 ME"]);
    }
    for text in ["2 BA", "2BA", "ba 2", "No 2 BA", "2 BA x 0.81", "2 BA normal"] {
        check(text, &["2 BA"]);
    }
    for text in ["G 1/8", "g1/8", "1/8 BSP", "1/8\" BSPP", "G1/8 A", "1/8-28 BSP"] {
        check(text, &["G 1/8"]);
    }
    for text in ["Tr16x4", "tr 16 x 4", "Tr 16 × 4 - 7e", "Tr16x8 P4", "Tr 16x8(P4) LH"] {
        check(text, &["Tr16x4"]);
    }
    for text in ["1/4 BSF", "1/4bsf", "1/4-26 BSF", "BSF 1/4 close"] {
        check(text, &["1/4 BSF"]);
    }
    check("1 1/4 BSW", &["1 1/4 BSW"]);
    check("1 1/4-7 UNC", &["1 1/4-7 UNC"]);
    check("2-4 1/2 UNC", &["2-4 1/2 UNC"]);
    check("1/4-16 Acme", &["1/4-16 Acme"]);
    check("2-56", &["2-56 UNC"]);
    check("1/4 x 26 brass", &["1/4 x 26 brass"]);
    for text in ["1/4 x 26 cycle", "1/4-26 BSC", "cei 1/4x26", "0.25 x 26 tpi cycle"] {
        check(text, &["1/4 x 26 cycle"]);
    }
    check("1.37 x 24 BSC", &["1 37/100 x 24 cycle"]);
    for text in ["1/2-10 stub Acme", "1/2-10 Acme stub", "1/2 stub", "1/2-10 Stub Acme 2G"] {
        check(text, &["1/2-10 stub Acme"]);
    }
}

#[test]
fn what_could_be_several_gives_them_all() {
    check("1/4 x 32", &["1/4-32 UNEF", "1/4 x 32 ME"]);
    check("1/4-20", &["1/4-20 UNC", "1/4 BSW"]);
    // One thread, two lists: the same form, size and pitch.
    check("1/4 x 26", &["1/4 BSF", "1/4 x 26 cycle"]);
    check("3/4 x 16", &["3/4-16 UNF"]);
    check("3/8 ME", &["3/8 x 40 ME", "3/8 x 32 ME"]);
    check("10", &["10-24 UNC", "10-32 UNF", "10 BA"]);
}

#[test]
fn every_listed_name_reads_as_itself() {
    let mut count = 0;
    for series in Series::ALL {
        for k in 0..series.sizes() {
            let size = series.size(k).unwrap();
            let mut text = String::new();
            write(series, size, &mut |piece| text.push_str(piece));
            let found = read(&text).unwrap_or_else(|e| panic!("{text}: {e}"));
            let thread = series.thread(size).unwrap();
            assert!(found.len() == 1 && found[0].thread == thread, "{text}: {found:?}");
            count += 1;
        }
        assert_eq!(series.size(series.sizes()), None);
    }
    assert!(count > 700, "{count}");
}

#[test]
fn a_bare_size_has_room_for_all_it_can_be() {
    for series in Series::ALL {
        for k in 0..series.sizes() {
            if let Called::Inches(inches) = series.called(series.size(k).unwrap()).unwrap() {
                let mut text = String::new();
                mixed(inches, &mut |piece| text.push_str(piece));
                assert!(!read(&text).unwrap().is_empty(), "{text}");
            }
        }
    }
}

#[test]
fn starts_hand_and_class_are_read() {
    let one = |text: &str| *read(text).unwrap().first().unwrap();
    let two = one("Tr 16x8 P4 LH-7e").thread;
    assert_eq!((two.starts, two.hand, two.pitch.mm()), (2, Hand::Left, Fraction::whole(4)));
    let class = |text| one(text).class.map(|class| (class.side, class.fit));
    let grade = |grade, position| Grade { grade, position };
    let g = |n| grade(n, Position::G);
    assert_eq!(class("M6-6g"), Some((Side::External, Fit::Iso(g(6), g(6)))));
    assert_eq!(class("M6-4g6g"), Some((Side::External, Fit::Iso(g(4), g(6)))));
    assert_eq!(class("M6 6G"), Some((Side::Internal, Fit::Iso(g(6), g(6)))));
    assert_eq!(class("1/4-20 UNC 3B"), Some((Side::Internal, Fit::Number(3))));
    assert_eq!(class("1/4 BSF free"), Some((Side::External, Fit::Free)));
    assert_eq!(class("1/4 BSF nut normal"), Some((Side::Internal, Fit::Normal)));
    assert_eq!(class("1/4-16 Acme 2G"), Some((Side::External, Fit::Number(2))));
    assert_eq!(class("G 1/2 B"), Some((Side::External, Fit::PipeB)));
    assert_eq!(class("M6"), None);
}

#[test]
fn threads_outside_every_series() {
    let one = read("M6x0.9").unwrap();
    assert_eq!((one.len(), one[0].listed), (1, None));
    let odd = read("#6-48 UNS").unwrap()[0].thread;
    let (major, tpi) = (odd.major.inches().unwrap(), odd.tpi().unwrap());
    assert_eq!((major, tpi), (Fraction::new(69, 500).unwrap(), Fraction::whole(48)));
    // No word: it may have either angle.
    let both = read("1/4 x 27").unwrap();
    assert_eq!(
        both.iter().map(|f| f.thread.form.kind).collect::<Vec<_>>(),
        [Kind::Unified, Kind::Whitworth]
    );
    assert_eq!(read("20 x 5 square").unwrap()[0].thread.form.kind, Kind::Square);
    let inch = read("3/4\" x 5 square").unwrap()[0].thread;
    assert_eq!(inch.tpi().unwrap(), Fraction::whole(5));
}

#[test]
fn what_is_no_name_is_refused_where_it_stands() {
    refused("", Field::Thread, Cause::Empty, (0, 0));
    refused("M", Field::Thread, Cause::Empty, (0, 1));
    refused("M6 zz", Field::Thread, Cause::NotANumber, (3, 5));
    refused("M6 x 1 x 2", Field::Thread, Cause::NotANumber, (9, 10));
    refused("M6 ¤", Field::Thread, Cause::NotANumber, (3, 5));
    refused("M6.3", Field::Pitch, Cause::Empty, (1, 4));
    refused("Tr16", Field::Pitch, Cause::Empty, (2, 4));
    refused("1/4-28 UNC", Field::Pitch, Cause::Conflict, (4, 6));
    refused("17 BA", Field::Thread, Cause::Conflict, (0, 2));
    refused("G 1/3", Field::Thread, Cause::Conflict, (2, 5));
    refused("M6x0", Field::Pitch, Cause::OutOfRange { least: 50, greatest: 200_000 }, (3, 4));
    refused("M6x6", Field::Pitch, Cause::Conflict, (3, 4));
    refused("1/4-0", Field::Pitch, Cause::Zero, (4, 5));
    refused("Tr16x8 P3", Field::Starts, Cause::Conflict, (8, 9));
    refused("M6-2A", Field::Class, Cause::Conflict, (3, 5));
    refused("M6-4g6H", Field::Class, Cause::Conflict, (3, 7));
    refused("1/4 BSF 2A", Field::Class, Cause::Conflict, (8, 10));
    refused("M6 close", Field::Class, Cause::Conflict, (3, 8));
    refused("M BSF 1/4", Field::Thread, Cause::NotANumber, (2, 5));
    refused("6g M6", Field::Thread, Cause::NotANumber, (0, 2));
}
