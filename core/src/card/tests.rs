use super::*;

const fn mm(num: i64, den: i64) -> Amount {
    match Fraction::new(num, den) {
        Ok(mm) => Amount::Length(Length::from_mm(mm)),
        Err(_) => panic!(),
    }
}

const fn number(num: i64, den: i64) -> Amount {
    match Fraction::new(num, den) {
        Ok(value) => Amount::Number(value),
        Err(_) => panic!(),
    }
}

fn turn(num: i64, den: i64) -> Amount {
    Amount::Angle(Angle::from_turns(Fraction::new(num, den).unwrap()))
}

/// The values that every row may name: 6 mm, 1/4 in, 64, 30°.
const KNOWN: [Given<'_>; 4] = [
    Given { name: "bore", kind: Kind::Length, drawing: "6", measured: "" },
    Given { name: "Stock", kind: Kind::Length, drawing: "1/4 in", measured: "" },
    Given { name: "teeth", kind: Kind::Number, drawing: "64", measured: "" },
    Given { name: "lean", kind: Kind::Angle, drawing: "30", measured: "" },
];

fn found(kind: Kind, drawing: &str) -> Result<Amount, Fault> {
    let [a, b, c, d] = KNOWN;
    let all = [a, b, c, d, Given { name: "x", kind, drawing, measured: "" }];
    let found = chain(&all).unwrap();
    let last = found.last().unwrap().clone();
    assert_eq!(last.drawing, last.in_force, "{drawing}: nothing was measured");
    last.drawing
}

#[track_caller]
fn check(drawing: &str, wanted: Amount) {
    assert_eq!(found(formula::kind_of(wanted), drawing), Ok(wanted), "{drawing}");
}

#[test]
fn texts_and_formulas_are_worked_out() {
    check("6.5", mm(13, 2));
    check("1/2 in", mm(127, 10));
    check("17°30'", turn(7, 144));
    check("64", number(64, 1));
    check("= bore - 2*0.05", mm(59, 10));
    check("=bore−2×0,05", mm(59, 10));
    check("  = BORE + stock", mm(247, 20));
    check("= bore - 1/32 in", mm(6 * 160 - 127, 160));
    check("= bore + 1 1/2 in", mm(441, 10));
    check("= bore + 5 thou", mm(6127, 1000));
    check("= bore/2/3", mm(1, 1));
    check("= bore/6/2", mm(1, 2));
    check("= bore*6/4", mm(9, 1));
    check("= (bore + 2) * teeth / 4", mm(128, 1));
    check("= teeth * (bore + 2)", mm(512, 1));
    check("= bore / stock", number(120, 127));
    check("= teeth / 2 - 1", number(31, 1));
    check("= 1 / teeth", number(1, 64));
    check("= 1/teeth", number(1, 64));
    check("= 1/(teeth-60)", number(1, 4));
    check("= 1/-4", number(-1, 4));
    check("= 2-1 1/2", number(1, 2));
    check("= 2 * 0.05", mm(1, 10));
    check("= 2 * 0.05", number(1, 10));
    check("= 2 * 0.05", turn(1, 3600));
    check("= lean + 15", turn(1, 8));
    check("= lean + 0°30'", turn(61, 720));
    check("= lean / 2", turn(1, 24));
    check("= 1/3 turn - lean", turn(1, 4));
    check("= 360 deg / teeth", turn(1, 64));
    check("= lean - 45", turn(-1, 24));
    check("= -(bore - -1)", mm(-7, 1));
    check("= --bore", mm(6, 1));
    check("= bore - -2", mm(8, 1));
    check("= 10 - bore * 2 - 1", mm(-3, 1));
    check("= 2 - 3 - 4", number(-5, 1));
    check("= (((((((((bore)))))))))", mm(6, 1));
    check("= +5", number(5, 1));
}

#[track_caller]
fn wrong(kind: Kind, drawing: &str, wanted: Fault) {
    assert_eq!(found(kind, drawing), Err(wanted), "{drawing}");
}

fn text(cause: Cause, from: usize, to: usize) -> Fault {
    Fault::Text(Error::new(Field::Value, cause).at(from, to))
}

#[test]
fn what_cannot_be_worked_out_says_where() {
    use Kind::{Angle, Length, Number};
    wrong(Length, "", text(Cause::Empty, 0, 0));
    wrong(Length, "six", text(Cause::NotANumber, 0, 3));
    wrong(Length, "=", text(Cause::Empty, 1, 1));
    wrong(Length, "= bore +", text(Cause::Empty, 8, 8));
    wrong(Length, "= bore)", text(Cause::NotANumber, 6, 7));
    wrong(Length, "= (bore", text(Cause::NotANumber, 2, 3));
    wrong(Length, "= 2 bore", text(Cause::NotANumber, 4, 8));
    wrong(Length, "= bore bore", text(Cause::NotANumber, 7, 11));
    wrong(Length, "= ()", text(Cause::NotANumber, 3, 4));
    wrong(Length, "= bore * * 2", text(Cause::NotANumber, 9, 10));
    wrong(Length, "= bore ^ 2", text(Cause::NotANumber, 7, 10));
    wrong(Length, "= 1,000 + bore", text(Cause::ThousandsMark, 2, 7));
    wrong(Length, "= bore / 0", text(Cause::Zero, 7, 8));
    wrong(Number, "= 9223372036854775807 * teeth", text(Cause::Overflow, 22, 23));
    wrong(Length, "= depth + bore", Fault::Unknown(2, 7));
    wrong(Length, "= bore + teeth", Fault::Units(7, 8));
    wrong(Length, "= bore * stock", Fault::Units(7, 8));
    wrong(Length, "= bore + lean", Fault::Units(7, 8));
    wrong(Length, "= teeth / bore", Fault::Units(8, 9));
    wrong(Length, "= 1 / bore", Fault::Units(4, 5));
    wrong(Length, "= teeth", Fault::Units(0, 7));
    wrong(Number, "= bore", Fault::Units(0, 6));
    wrong(Angle, "= bore", Fault::Units(0, 6));
    wrong(Length, "= x", Fault::Cycle(List::from_slice(&[4]).unwrap()));
    wrong(Angle, "= 30°75'", Fault::Text(Error::new(Field::Value, Cause::SixtyOrMore).at(6, 9)));
}

#[test]
fn a_formula_nests_so_deep_and_no_deeper() {
    let nested = |deep: usize| {
        let mut text = heapless::String::<8_000>::new();
        text.push('=').unwrap();
        (0..deep).for_each(|_| text.push('(').unwrap());
        text.push('1').unwrap();
        (0..deep).for_each(|_| text.push(')').unwrap());
        found(Kind::Number, &text)
    };
    assert_eq!(nested(24), Ok(number(1, 1)));
    assert_eq!(nested(25), Err(text(Cause::TooMany { most: 24 }, 25, 26)));
    assert!(matches!(nested(3_900), Err(Fault::Text(_))));
}

#[test]
fn a_name_is_letters_figures_and_lines() {
    let named = |name| {
        let given = [Given { name, kind: Kind::Number, drawing: "1", measured: "" }];
        chain(&given).unwrap()[0].drawing.clone()
    };
    for name in ["a", "Bore_2", "Höhe", "d1"] {
        assert_eq!(named(name), Ok(number(1, 1)), "{name}");
    }
    let fault = |name: &str, cause| Fault::Text(Error::new(Field::Name, cause).at(0, name.len()));
    for (name, cause) in [
        ("", Cause::Empty),
        ("2a", Cause::Conflict),
        ("_a", Cause::Conflict),
        ("a b", Cause::Conflict),
        ("a-b", Cause::Conflict),
        ("aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa", Cause::TooMany { most: 32 }),
    ] {
        assert_eq!(named(name), Err(fault(name, cause)), "{name}");
    }
    let one = |name| Given { name, kind: Kind::Number, drawing: "1", measured: "" };
    let found = chain(&[one("Bore"), one("bore")]).unwrap();
    assert_eq!(found[0].drawing, Ok(number(1, 1)));
    assert_eq!(found[1].drawing, Err(fault("bore", Cause::Twice)));
}

#[test]
fn what_was_measured_goes_on_to_all_that_depends() {
    let length = |name, drawing, measured| Given { name, kind: Kind::Length, drawing, measured };
    let found = chain(&[
        length("face", "= plug + 1", ""),
        length("plug", "= bore - 0.1", ""),
        length("bore", "= 12/2", "6.02"),
        length("ring", "= plug * 2", "11.9"),
        length("lid", "= ring", ""),
    ])
    .unwrap();
    let both: [(Amount, Amount); 5] = [
        (mm(69, 10), mm(692, 100)),
        (mm(59, 10), mm(592, 100)),
        (mm(6, 1), mm(602, 100)),
        (mm(118, 10), mm(119, 10)),
        (mm(118, 10), mm(119, 10)),
    ];
    for (found, (drawing, in_force)) in found.iter().zip(both) {
        assert_eq!(found, &Found { drawing: Ok(drawing), in_force: Ok(in_force) });
    }
}

#[test]
fn a_cycle_names_who_is_in_it_and_a_measurement_breaks_it() {
    let value = |name, drawing, measured| Given { name, kind: Kind::Number, drawing, measured };
    let given = [
        value("a", "= b", ""),
        value("b", "= c + d", "7"),
        value("c", "= a", ""),
        value("d", "= c", ""),
        value("e", "= 1 + d", ""),
        value("f", "2", ""),
    ];
    let found = chain(&given).unwrap();
    let cycle = |way: &[u8]| Err(Fault::Cycle(List::from_slice(way).unwrap()));
    assert_eq!(found[0].drawing, cycle(&[0, 1, 2]));
    assert_eq!(found[1].drawing, cycle(&[1, 2, 0]));
    assert_eq!(found[2].drawing, cycle(&[2, 0, 1]));
    assert_eq!(found[3].drawing, cycle(&[3, 2, 0, 1]));
    assert_eq!(found[4].drawing, Err(Fault::Depends(3)));
    assert_eq!(found[5].drawing, Ok(number(2, 1)));
    for (found, wanted) in found.iter().zip([7, 7, 7, 7, 8, 2]) {
        assert_eq!(found.in_force, Ok(number(wanted, 1)));
    }
}

#[test]
fn a_fault_stays_with_its_value_and_those_that_depend_on_it() {
    let value = |name, drawing, measured| Given { name, kind: Kind::Number, drawing, measured };
    let found = chain(&[
        value("a", "= nothing", ""),
        value("b", "= a", ""),
        value("c", "= b", "5"),
        value("d", "= c", "five"),
    ])
    .unwrap();
    assert_eq!(found[0].in_force, Err(Fault::Unknown(2, 9)));
    assert_eq!(found[1].in_force, Err(Fault::Depends(0)));
    assert_eq!(found[2].drawing, Err(Fault::Depends(1)));
    assert_eq!(found[2].in_force, Ok(number(5, 1)));
    assert_eq!(found[3].in_force, Err(text(Cause::NotANumber, 0, 4)));
    let many = [value("a", "1", ""); 33];
    let refused = Error::new(Field::Value, Cause::TooMany { most: 32 });
    assert_eq!(chain(&many).err(), Some(refused));
}

#[test]
fn the_longest_chain_is_worked_out_from_its_far_end() {
    use core::fmt::Write;
    let mut texts = [const { (heapless::String::<8>::new(), heapless::String::<16>::new()) }; 32];
    for (k, (name, drawing)) in texts.iter_mut().enumerate() {
        write!(name, "v{k}").unwrap();
        if k == 31 {
            drawing.push('1').unwrap()
        } else {
            write!(drawing, "= v{} * 2", k + 1).unwrap()
        }
    }
    let mut given = [Given { name: "", kind: Kind::Number, drawing: "", measured: "" }; 32];
    for (given, (name, drawing)) in given.iter_mut().zip(&texts) {
        (given.name, given.drawing) = (name, drawing);
    }
    let found = chain(&given).unwrap();
    assert_eq!(found[0].in_force, Ok(number(1 << 31, 1)));
}

#[test]
fn what_follows_a_value_is_told_by_its_name_alone() {
    let value = |name, drawing| Given { name, kind: Kind::Length, drawing, measured: "" };
    let given = [
        value("bore", "6"),
        value("plug", "= BORE - 0.1"),
        value("rebore", "bore"),
        value("mm", "= 3 mm + bored"),
        value("a", "= a + bore/plug"),
    ];
    let follow: [&[u8]; 6] = [&[1, 4], &[4], &[], &[], &[], &[]];
    for (place, wanted) in follow.iter().enumerate() {
        assert_eq!(&followers(&given, place)[..], *wanted, "{place}");
    }
}

#[test]
fn names_are_the_same_in_capitals() {
    for (one, other, same) in
        [("bore", "BORE", true), ("Höhe", "HÖHE", true), ("bore", "bored", false), ("", "", true)]
    {
        assert_eq!(same_name(one, other), same, "{one} {other}");
    }
}
