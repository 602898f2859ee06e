//! What the tests of the package look at in an answer.
use super::given::Given;

pub(super) fn json(text: &str) -> Given {
    serde_json::from_str(text).unwrap()
}

/// The value at a path such as `cutter.number` or `limits.0.class`.
#[track_caller]
pub(super) fn at<'a>(answer: &'a Given, path: &str) -> &'a Given {
    path.split('.').fold(answer, |value, key| match value {
        Given::List(list) => &list[key.parse::<usize>().unwrap()],
        value => value.get(key),
    })
}

#[track_caller]
pub(super) fn text(answer: &Given, path: &str, wanted: &str) {
    assert_eq!(*at(answer, path), Given::Text(wanted.to_owned()), "{path}");
}

#[track_caller]
pub(super) fn near(answer: &Given, path: &str, wanted: f64, within: f64) {
    let Given::Number(found) = at(answer, path) else { panic!("{path}: {:?}", at(answer, path)) };
    assert!((found - wanted).abs() <= within, "{path}: {found}");
}
