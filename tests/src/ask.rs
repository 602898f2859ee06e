//! From text as typed to answers walked: one road that must never panic,
//! whatever comes in. Fuzz targets and seeded drivers go down it.
use crate::walk::{glance, walk};
use handturn::bounds;
use handturn::divide::{
    Answer, Graduation, MarkKind, Numbers, Parts, Question, Rated, Repeated, answer,
};
use handturn::head::{Handwheel, Head, PlateStop, Sense, read as head_read};
use handturn::measure::read::{self, Unit};
use handturn::measure::{Angle, Length};
use handturn::number::Fraction;
use handturn::plate::{Source, Sources, Sums, budget};
use handturn::{Cause, Error, Field};

/// What splits the fields of a case.
pub const SPLIT: char = '|';

/// Up to so many positions are all walked; beyond that a few are looked at.
const WALKED: u32 = 40;

/// How far a case came.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Came {
    /// A field was refused.
    Refused,
    /// The question or the head was refused.
    NotAnswered,
    /// Answered, and every way that is offered holds.
    Answered,
}

/// Reads `data` as fields split by [`SPLIT`] (ratio, plates, gears, direct
/// plates, kind of question, what is asked, how often or in which order), asks,
/// and checks what comes back.
///
/// # Panics
/// When an error makes no sense or a way does not hold: what is being looked for.
pub fn ask(data: &[u8]) -> Came {
    let text = String::from_utf8_lossy(data);
    read_everything(&text);
    let mut fields = text.split(SPLIT).map(str::trim);
    let mut field = || fields.next().unwrap_or("");
    let head = [field(), field(), field(), field()];
    let (kind, asked, times) = (field(), field(), field());
    let Ok(head) = typed_head(head) else { return Came::Refused };
    match put(&head, kind, asked, times) {
        Ok(came) => came,
        Err(_) => Came::Refused,
    }
}

/// Every reader sees the whole text; none may panic, and errors make sense.
fn read_everything(text: &str) {
    sane(text, read::number(text, Field::Fraction));
    sane(text, read::count(text, bounds::DIVISIONS));
    sane(text, read::ratio(text));
    sane(text, read::angle(text));
    sane(text, read::angles(text));
    sane(text, read::length(text, Unit::Mm));
    sane(text, read::length(text, Unit::Inch));
    sane(text, head_read::plates(text));
    sane(text, head_read::gears(text));
    sane(text, head_read::notches(text));
}

/// An error quotes a piece of the text and says what is allowed.
fn sane<T>(text: &str, read: Result<T, Error>) {
    let Err(error) = read else { return };
    makes_sense(error);
    let (from, to) = (usize::from(error.span.0), usize::from(error.span.1));
    if text.len() < usize::from(u16::MAX) {
        assert!(from <= to && text.get(from..to).is_some(), "{error:?} of {text:?}");
    }
}

/// Checks that an error names limits that can be kept.
///
/// # Panics
/// When it doesn't.
pub fn makes_sense(error: Error) {
    assert!(!error.to_string().is_empty());
    match error.cause {
        Cause::OutOfRange { least, greatest } => assert!(least <= greatest, "{error:?}"),
        Cause::TooMany { most } => assert!(most > 0, "{error:?}"),
        _ => {}
    }
}

fn typed_head([ratio, plates, gears, direct]: [&str; 4]) -> Result<Head, Error> {
    Ok(Head {
        ratio: read::ratio(ratio)?,
        plates: if plates.is_empty() { handturn::List::new() } else { head_read::plates(plates)? },
        gears: head_read::gears(gears)?,
        direct: head_read::notches(direct)?,
        plate_stop: if ratio.starts_with('+') { PlateStop::Fixed } else { PlateStop::Withdraws },
        handwheel: plates.is_empty().then_some(Handwheel { marks: 36, vernier: 4 }),
        ..Head::default()
    })
}

fn put(head: &Head, kind: &str, asked: &str, times: &str) -> Result<Came, Error> {
    let count = |bound| if times.is_empty() { Ok(1) } else { read::count(times, bound) };
    match kind {
        "angle" => {
            let (angle, times) = (read::angle(asked)?, count(bounds::TIMES)?);
            Ok(held(&Question::Angle(Repeated { angle, times }), head))
        }
        "list" => Ok(held(&Question::List(&read::angles(asked)?), head)),
        "marks" => {
            let kinds =
                [4, 6, 9].map(|mm| MarkKind { length: Length::from_mm(Fraction::whole(mm)) });
            let pattern: Vec<u8> = times.bytes().map(|byte| byte % 4).collect();
            let numbers = Numbers { every: 5, per_mark: 1, climbs: Sense::Clockwise, zero: true };
            let count = read::count(asked, bounds::DIVISIONS)?;
            let numbers = (count % 2 == 0).then_some(numbers);
            let marks = Graduation { count, kinds: &kinds, pattern: &pattern, numbers };
            Ok(held(&Question::Marks(marks), head))
        }
        _ => {
            let count = Parts {
                count: read::count(asked, bounds::DIVISIONS)?,
                every: count(bounds::EVERY)?,
            };
            Ok(held(&Question::Parts(count), head))
        }
    }
}

/// Asks, and checks every way offered.
///
/// # Panics
/// When a way doesn't hold.
pub fn held(question: &Question, head: &Head) -> Came {
    let answer: Answer<3> = match answer(question, head) {
        Ok(answer) => answer,
        Err(error) => {
            makes_sense(error);
            return Came::NotAnswered;
        }
    };
    let ways = answer.groups.iter().flat_map(|g| g.closest.iter().chain(&g.quickest));
    for rated in ways {
        let way = &rated.way;
        let said = way.errors(question).expect("it was rated");
        assert_eq!(said, rated.errors, "{way:?}");
        let held = if question.last() <= WALKED && narrow(question, head) {
            walk(question, head, way)
        } else {
            let last = question.last() - 1;
            [0, 1, last / 2, last].into_iter().try_for_each(|index| {
                if index > last { Ok(()) } else { glance(question, way, index) }
            })
        };
        if let Err(why) = held {
            panic!("{question:?} on {head:?}: {way:?}: {why}");
        }
        budgeted(question, head, rated);
        assert!(way.working(question).is_ok_and(|lines| lines.iter().all(|l| !l.terms.is_empty())));
    }
    assert!(answer.groups.len() + answer.left_out.len() <= 7, "{:?}", answer.left_out);
    Came::Answered
}

/// The budget of a way counts its rounding and adds up.
fn budgeted(question: &Question, head: &Head, rated: &Rated) {
    let sources = Sources { same_side: false, ..Sources::default() };
    let budget = match budget(question, head, &rated.way, &sources) {
        Ok(budget) => budget,
        Err(error) => return makes_sense(error),
    };
    assert_eq!(budget.rounding, rated.errors);
    let rounds = budget.terms.iter().find(|term| term.source == Source::Rounding);
    assert_eq!(rounds.is_none(), rated.errors.is_none(), "{budget:?}");
    if let Some(rounds) = rounds {
        let [worst, adjacent] = [rated.errors.worst, rated.errors.adjacent].map(seconds);
        let near = |a: f64, b: f64| (a - b).abs() <= 1e-9 * (1.0 + b);
        let sizes = &rounds.sizes;
        assert!(near(sizes.total.value, worst) && near(sizes.adjacent.value, adjacent));
    }
    let more = 1.0 + 1e-9;
    let sound = |sizes: &Sums| {
        let [total, adjacent, rms, adjacent_rms] =
            [sizes.total, sizes.adjacent, sizes.rms, sizes.adjacent_rms].map(|a| a.value);
        let all = [total, adjacent, rms, adjacent_rms].iter().all(|a| a.is_finite() && *a >= 0.0);
        all && adjacent <= 2.0 * total * more
            && rms <= total * more
            && adjacent_rms <= adjacent * more
    };
    let what = || format!("{question:?} {:?}: {budget:?}", rated.way);
    assert!(budget.terms.iter().all(|term| sound(&term.sizes)), "{}", what());
    let total: f64 = budget.terms.iter().map(|term| term.sizes.total.value).sum();
    assert!(sound(&budget.sum) && (budget.sum.total.value - total).abs() <= 1e-9 * total);
    let greatest = budget.terms.iter().map(|t| t.sizes.total.value).fold(0.0, f64::max);
    let dominant = budget.terms.iter().find(|t| Some(t.source) == budget.dominant);
    assert!(dominant.map_or(0.0, |t| t.sizes.total.value) >= greatest, "{}", what());
}

fn seconds(angle: Angle) -> f64 {
    angle.turns().num() as f64 / angle.turns().den() as f64 * 1_296_000.0
}

/// Whether every fraction on the way stays well within wide whole numbers.
fn narrow(question: &Question, head: &Head) -> bool {
    let small = |f: Fraction| f.num().abs() < 1 << 20 && f.den() < 1 << 20;
    let angles = |angles: &[Angle]| {
        let product = angles.iter().try_fold(1_i64, |all, a| all.checked_mul(a.turns().den()));
        product.is_some_and(|product| product < 1 << 40) && angles.iter().all(|a| small(a.turns()))
    };
    small(head.ratio)
        && match question {
            Question::Angle(repeated) => angles(&[repeated.angle]),
            Question::List(list) => angles(list),
            _ => true,
        }
}
