//! The bad and extreme inputs by name, each with the error it must give.
use handturn::divide::{Answer, Parts, Question, Repeated, answer};
use handturn::head::{Circle, Gear, Head, Plate};
use handturn::list::List;
use handturn::measure::{Angle, read};
use handturn::number::Fraction;
use handturn::{Cause, Field, bounds};
use handturn_tests::heads::head;

#[track_caller]
fn refused(question: &Question, head: &Head, field: Field, cause: Cause) {
    let answered: Result<Answer<4>, _> = answer(question, head);
    let error = answered.map(|answer| answer.groups.len()).expect_err("it must be refused");
    assert_eq!((error.field, error.cause), (field, cause), "{question:?}");
}

fn parts(count: u32) -> Question<'static> {
    Question::Parts(Parts { count, every: 1 })
}

#[test]
fn numbers_of_parts() {
    let range = Cause::OutOfRange { least: 2, greatest: 10_000 };
    for count in [0, 1, 10_001, 1_000_000_000, u32::MAX] {
        refused(&parts(count), &head(40, "A"), Field::Parts, range);
    }
    for typed in ["0", "1", "1000000000000", "-127", "10001"] {
        let error = read::count(typed, bounds::DIVISIONS).expect_err(typed);
        assert_eq!((error.field, error.cause), (Field::Parts, range), "{typed}");
    }
    let cause = |typed: &str| read::count(typed, bounds::DIVISIONS).expect_err(typed).cause;
    assert_eq!(cause(""), Cause::Empty);
    assert_eq!(cause("gear"), Cause::NotANumber);
    assert_eq!(cause("12.5"), Cause::NotWhole);
    assert_eq!(cause("1,000"), Cause::ThousandsMark);
}

#[test]
fn cutting_orders() {
    for every in [0, 127, 128, u32::MAX] {
        let question = Question::Parts(Parts { count: 127, every });
        let answered: Result<Answer<4>, _> = answer(&question, &head(40, "A"));
        assert_eq!(answered.map(|_| ()).expect_err("refused").field, Field::CutOrder, "{every}");
    }
}

#[test]
fn heads() {
    let with = |plates: &[&[u16]]| {
        let plate = |holes: &&[u16]| {
            let circles: Vec<Circle> =
                holes.iter().map(|&holes| Circle { holes, radius: None }).collect();
            Plate { circles: List::from_slice(&circles).expect("few") }
        };
        let plates: Vec<Plate> = plates.iter().map(plate).collect();
        Head { plates: List::from_slice(&plates).expect("few"), ..Head::default() }
    };
    refused(&parts(64), &with(&[&[]]), Field::Plates, Cause::Empty);
    refused(&parts(64), &with(&[&[16, 20, 16]]), Field::Plates, Cause::Twice);
    let holes = Cause::OutOfRange { least: 2, greatest: 1000 };
    refused(&parts(64), &with(&[&[16, 0]]), Field::Holes, holes);
    let ratio = Cause::OutOfRange { least: 1, greatest: 100_000 };
    for bad in [(0, 1), (-40, 1), (1, 100_001), (100_001, 1)] {
        let ratio_of = Fraction::new(bad.0, bad.1).expect("a fraction");
        refused(&parts(64), &Head { ratio: ratio_of, ..head(40, "A") }, Field::Ratio, ratio);
    }
    let gears = [Gear { teeth: 24, count: 1 }, Gear { teeth: 24, count: 1 }];
    let gears = List::from_slice(&gears).expect("two");
    refused(&parts(64), &Head { gears, ..head(40, "A") }, Field::Gears, Cause::Twice);
}

#[test]
fn ratios_that_hardly_differ_from_one() {
    let ratio = Fraction::new(100_000, 99_999).expect("a fraction");
    let near_one = Head { ratio, ..head(40, "B") };
    for count in [2, 127, 9973, 10_000] {
        handturn_tests::ask::held(&parts(count), &near_one);
    }
}

#[test]
fn angles() {
    let angle = |num, den| Angle::from_turns(Fraction::new(num, den).expect("a fraction"));
    let range = Cause::OutOfRange { least: 0, greatest: 360 };
    for bad in [angle(0, 1), angle(-1, 4), angle(361, 360), angle(i64::MAX, 1)] {
        let question = Question::Angle(Repeated { angle: bad, times: 1 });
        refused(&question, &head(40, "A"), Field::Angle, range);
    }
    assert_eq!(read::angle("7°60'").expect_err("sixty").cause, Cause::SixtyOrMore);
    let forty_digits = "0.1234567890123456789012345678901234567890";
    assert_eq!(read::angle(forty_digits).expect_err("too long").cause, Cause::Overflow);
    let ten_thousand: String = (0..10_000).map(|n| format!("{} ", n % 360)).collect();
    assert_eq!(read::angles(&ten_thousand).expect_err("many").cause, Cause::TooMany { most: 400 });
    let list = vec![angle(1, 3); 10_000];
    let cause = Cause::TooMany { most: 400 };
    refused(&Question::List(&list), &head(40, "A"), Field::List, cause);
}

#[test]
fn denominators_that_cannot_be_held_overflow() {
    let prime = 9_223_372_036_854_775_783;
    let odd = Angle::from_turns(Fraction::new(1, prime).expect("a fraction"));
    let even = Angle::from_turns(Fraction::new(1, i64::MAX - 1).expect("a fraction"));
    let question = Question::List(&[odd, even]);
    let answered: Result<Answer<4>, _> = answer(&question, &head(40, "A"));
    assert_eq!(answered.map(|_| ()).expect_err("too fine").cause, Cause::Overflow);
}
