//! What is asked natively and in a browser alike: one line of text an answer, a
//! name in front. The same source runs in both places; only the place differs.
use handturn::divide::{Parts, Question, answer};
use handturn::head::{GEARS, Head, SET_A, gears_of, plates_of};
use handturn::number::{Fraction, float};
use handturn_web::keep::json;

/// Numbers of parts whose whole answers are compared.
pub(crate) const COUNTS: [u32; 9] = [7, 51, 64, 97, 127, 223, 365, 1_001, 9_973];

/// A person at the page: 127 typed, a Run begun, its first moves made.
pub(crate) fn events() -> Vec<String> {
    let start = 1_790_000_000_000_u64;
    let event = |kind: &str, name: &str, value: &str, after: u64| {
        [kind, name, value, &(start + after).to_string()].join("\u{1f}")
    };
    let run = ["run-", &start.to_string()].concat();
    let mut events = vec![
        event("storage", "ready", "", 0),
        event("open", "", "file", 0),
        event("press", "plates", "15", 0),
        event("press", "gears", "", 0),
        event("type", "parts", "17°30'", 0),
        event("type", "parts", "<i id='typed'>\"&", 0),
        event("type", "parts", "127", 0),
        event("press", "run", "", 0),
        event("press", "run-start", "", 0),
        event("kept", &run, "begun 14:32:07", 0),
        event("lock", &run, "held", 0),
    ];
    for number in 0..40_u64 {
        events.push(event("key", "PageDown", "", 2_000 * (number + 1)));
        let kept = [&number.to_string(), " 14:32:08"].concat();
        events.push(event("kept", &run, &kept, 2_000 * (number + 1)));
    }
    events.push(event("press", "run-lost", "", 90_000));
    events.push(event("press", "run-export", "", 90_000));
    events
}

/// What the page remembers after an outcome: its first effect.
pub(crate) fn state_of(outcome: &str) -> &str {
    let first = outcome.split('\u{1c}').next().unwrap_or_default();
    first.split('\u{1d}').nth(1).unwrap_or_default()
}

/// The outcome of each event, as the function `turn` of the page gives it.
pub(crate) fn outcomes(mut turn: impl FnMut(&str, &str) -> String) -> Vec<String> {
    let mut state = String::new();
    let outcome = |event: String| {
        let mut outcome = turn(&state, &event);
        state = state_of(&outcome).to_owned();
        json::write(&mut outcome)
    };
    events().into_iter().map(outcome).collect()
}

/// The head that is asked: plates of 15 to 49 holes, the usual gears.
pub(crate) fn head() -> Head {
    let plates = plates_of(&SET_A).expect("they fit");
    Head { plates, gears: gears_of(&GEARS).expect("they fit"), ..Head::default() }
}

/// The whole answers of the core, as their JSON text.
pub(crate) fn answers() -> Vec<String> {
    let text = |count| {
        let question = Question::Parts(Parts { count, every: 1 });
        let answer = answer::<{ handturn_web::api::EACH }>(&question, &head());
        serde_json::to_string(&answer.expect("a good question")).expect("plain data")
    };
    COUNTS.map(text).to_vec()
}

/// Numbers from a fixed seed.
struct Dice(u64);

impl Dice {
    fn roll(&mut self) -> u64 {
        self.0 =
            self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        self.0 ^ (self.0 >> 33)
    }
}

/// Division of 128 bits, which a browser's processor does not know: as the language
/// has it, and as fractions use it.
pub(crate) fn divisions() -> Vec<String> {
    let mut dice = Dice(127);
    let mut wide = || (i128::from(dice.roll() as i64) << 64) | i128::from(dice.roll());
    let mut lines = Vec::new();
    for shift in (0..120).step_by(3) {
        let (a, b) = (wide(), (wide() >> shift) | 1);
        let (quotient, rest) = (a.wrapping_div(b), a.wrapping_rem(b));
        assert_eq!(quotient.wrapping_mul(b).wrapping_add(rest), a);
        lines.push(format!("{a} / {b} = {quotient}, {rest}, {}", a.div_euclid(b)));
    }
    for _ in 0..200 {
        let part = |wide: i128| (wide as i64) >> 24;
        let fraction = |a: i128, b: i128| Fraction::new(part(a), part(b) | 1).expect("not over 0");
        let (a, b) = (fraction(wide(), wide()), fraction(wide(), wide()));
        let (sum, product, part) = (a.checked_add(b), a.checked_mul(b), a.checked_div(b));
        lines.push(format!("{a} {b}: {sum:?} {product:?} {part:?} {:?}", a.cmp(&b)));
    }
    lines
}

/// Every function of the float door, to the last bit.
pub(crate) fn floats() -> Vec<String> {
    let bits = |value: f64| format!("{:016x}", value.to_bits());
    let mut dice = Dice(365);
    let mut values: Vec<f64> = (-400..=400).map(|k| f64::from(k) / 96.0).collect();
    values.extend((0..200).map(|_| dice.roll() as f64 / u64::MAX as f64 * 7.0 - 3.5));
    values.extend([0.0, -0.0, f64::MIN_POSITIVE, 1e300, f64::INFINITY, f64::NAN]);
    let line = |value: f64| {
        let near = float::nearest(value, 1_000_000);
        let found = [
            float::sin_turns(value),
            float::cos_turns(value),
            float::sqrt(value),
            float::round(value),
        ];
        // The sign of what is no number at all is nobody's promise.
        let found = found.map(|value| if value.is_nan() { f64::NAN } else { value }).map(bits);
        format!("{} {} {near:?}", bits(value), found.join(" "))
    };
    values.into_iter().map(line).collect()
}
