//! Requests and refusals as plain data, on the host.
use super::*;
use handturn::divide::{Asked, Kind, Marks};
use handturn::head::{GEARS, Head, PlateStop, SET_A, gears_of, plates_of};
use handturn::measure::Angle;

fn object(entries: &[(&str, Given)]) -> Given {
    Given::Object(entries.iter().map(|(key, value)| ((*key).to_owned(), value.clone())).collect())
}

fn n(number: f64) -> Given {
    Given::Number(number)
}

fn t(text: &str) -> Given {
    Given::Text(text.to_owned())
}

fn l(entries: &[f64]) -> Given {
    Given::List(entries.iter().copied().map(n).collect())
}

#[track_caller]
fn refused(request: &Given, field: &str, cause: &str, message: &str) {
    let refusal = asked(request).unwrap_err();
    assert_eq!((&*refusal.field, &*refusal.cause, &*refusal.message), (field, cause, message));
}

#[test]
fn counts_are_refused_by_name() {
    let parts = |count: Given| object(&[("parts", count)]);
    let not = |what: &str| format!("parts must be a whole number within 2^53, not {what}.");
    refused(&parts(n(f64::NAN)), "parts", "WrongKind", &not("NaN"));
    refused(&parts(n(1.5)), "parts", "NotWhole", &not("1.5"));
    refused(&parts(n(9_007_199_254_740_992.0)), "parts", "Overflow", &not("9007199254740992"));
    refused(&parts(t("127")), "parts", "WrongKind", &not("\"127\""));
    refused(&parts(l(&[1.0])), "parts", "WrongKind", &not("[1]"));
    let range = |given: &str| {
        format!("parts: Parts must be a whole number from 2 to 10,000. Given: {given}.")
    };
    refused(&parts(n(-5.0)), "parts", "OutOfRange", &range("-5"));
    refused(&parts(n(1.0)), "parts", "OutOfRange", &range("1"));
    for beyond in [2_147_483_648.0, 4_294_967_297.0, 9_007_199_254_740_991.0] {
        refused(&parts(n(beyond)), "parts", "OutOfRange", &range(&beyond.to_string()));
    }
    let limits = asked(&parts(n(0.0))).unwrap_err().limits;
    assert_eq!(limits, Some(Limits::Range { least: 2, greatest: 10_000 }));
    refused(
        &object(&[("parts", n(8.0)), ("every", n(8.0))]),
        "every",
        "OutOfRange",
        "every: Cutting order must be from 1 to 7. Given: 8.",
    );
}

#[test]
fn requests_must_be_one_question_of_known_names() {
    refused(&Given::Nothing, "", "Empty", " must be an object, not nothing.");
    refused(
        &object(&[("part", n(8.0))]),
        "part",
        "Unknown",
        "part is not known. Known: parts, angle, list, marks, every, times, head.",
    );
    refused(
        &object(&[("parts", n(8.0)), ("angle", n(8.0))]),
        "question",
        "WrongKind",
        "question must be one of parts, angle, list or marks, not \"parts and angle\".",
    );
}

#[test]
fn every_kind_of_question_is_read() {
    let question =
        |entries: &[(&str, Given)]| request::question(&object(entries)).map_err(|r| r.message);
    let angle = |text: &str| read::angle(text).unwrap();
    let Ok(Asked::Angle(asked)) = question(&[("angle", t("17°30'"))]) else { panic!("an angle") };
    assert_eq!((asked.angle, asked.times), (angle("17.5"), 1));
    let Ok(Asked::Angle(asked)) = question(&[("angle", n(17.5)), ("times", n(3.0))]) else {
        panic!("an angle")
    };
    assert_eq!((asked.angle, asked.times), (angle("17.5"), 3));
    let Ok(Asked::Angle(asked)) = question(&[("angle", l(&[1.0, 127.0]))]) else {
        panic!("an angle")
    };
    assert_eq!(asked.angle, Angle::from_turns(Fraction::new(1, 127).unwrap()));
    let typed = question(&[("list", t("0 10 25.5"))]);
    let listed = question(&[("list", Given::List(vec![n(0.0), t("10°"), n(25.5)]))]);
    assert_eq!(typed, listed);
    let Ok(Asked::Marks(Marks { count, kinds, pattern, numbers })) =
        question(&[("marks", object(&[("count", n(365.0))]))])
    else {
        panic!("marks")
    };
    assert_eq!((count, kinds.len(), pattern.as_ref(), numbers), (365, 1, [0_u8].as_slice(), None));
    let message = |entries: &[(&str, Given)]| question(entries).unwrap_err();
    assert_eq!(
        message(&[("angle", t("7°60'"))]),
        "angle: Minutes and seconds must be below 60. Given: 60'."
    );
    assert_eq!(
        message(&[("angle", n(361.0))]),
        "angle: Angle must be between 0 and 360 degrees. Given: 361."
    );
    assert_eq!(
        message(&[("list", l(&[1.0]))]),
        "list: The list needs two angles or more. Given: [1]."
    );
    assert_eq!(
        message(&[("list", Given::List(vec![n(0.0); 10_000]))]),
        "list: The list can hold at most 400."
    );
    assert_eq!(
        message(&[("list", l(&[0.0, f64::NAN]))]),
        "list.1 must be a text, or a number within 2^53, not NaN."
    );
}

#[test]
fn heads_are_given_in_part_as_text_or_data() {
    let head = |entries: &[(&str, Given)]| {
        request::head(&object(entries)).map_err(|r| (r.field, r.message))
    };
    assert_eq!(request::head(&Given::Nothing), Ok(Head::default()));
    let a = plates_of(&SET_A).unwrap();
    let plates = Given::List(
        SET_A
            .iter()
            .map(|plate| Given::List(plate.iter().map(|&h| n(f64::from(h))).collect()))
            .collect(),
    );
    assert_eq!(head(&[("plates", plates)]).unwrap().plates, a);
    assert_eq!(head(&[("plates", t(crate::owned::PLATES_A))]).unwrap().plates, a);
    let gears = Given::List(GEARS.iter().map(|&g| n(f64::from(g))).collect());
    assert_eq!(head(&[("gears", gears)]).unwrap().gears, gears_of(&GEARS).unwrap());
    let ratio = |given: Given| head(&[("ratio", given)]).map(|head| head.ratio);
    for given in [n(40.5), t("40.5 : 1"), l(&[81.0, 2.0])] {
        assert_eq!(ratio(given), Ok(Fraction::new(81, 2).unwrap()));
    }
    let some = head(&[
        ("tilted", Given::Flag(true)),
        ("plateStop", t("fixed")),
        ("armsLeast", l(&[1.0, 36.0])),
    ])
    .unwrap();
    assert!(
        some.tilted && some.plate_stop == PlateStop::Fixed && some.arms == Head::default().arms
    );
    let no = |field: &str, message: &str| Err((field.to_owned(), message.to_owned()));
    assert_eq!(
        ratio(n(f64::INFINITY)),
        no("head.ratio", "head.ratio must be a text, or a number within 2^53, not inf.")
            .map(|()| Fraction::ONE)
    );
    assert_eq!(
        head(&[("ratio", n(0.0))]),
        no("head.ratio", "head.ratio: Worm ratio must be above 0 and at most 100,000. Given: 0.")
            .map(|()| Head::default())
    );
    assert_eq!(
        head(&[("tilted", t("often"))]),
        no("head.tilted", "head.tilted must be true or false, not \"often\".")
            .map(|()| Head::default())
    );
    assert_eq!(
        head(&[("plateStop", t("gone"))]),
        no("head.plateStop", "head.plateStop must be withdraws or fixed, not \"gone\".")
            .map(|()| Head::default())
    );
    assert_eq!(
        head(&[("plates", Given::List(vec![l(&[15.0, 15.0])]))]),
        no("head.plates", "head.plates: The 15 circle stands twice on plate 1. Given: 15 15.")
            .map(|()| Head::default())
    );
}

#[test]
fn the_answer_is_the_core_s_own() {
    let request = object(&[
        ("parts", n(127.0)),
        (
            "head",
            object(&[
                ("plates", t(crate::owned::PLATES_A)),
                ("gears", t(crate::owned::GEARS_USUAL)),
            ]),
        ),
    ]);
    let answer = asked(&request).unwrap();
    assert_eq!(answer.best(Order::Closest).unwrap().way.kind(), Kind::Differential);
}
