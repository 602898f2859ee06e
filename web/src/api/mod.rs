//! The JavaScript package's functions: plain objects in, plain objects out.
//!
//! Requests are looked into by name ([`Given`]), so that a refusal can say which
//! value it is about; answers are the core's own types, as serde writes them: a
//! fraction is `[num, den]`, an angle the same in turns, a length in millimetres.
//! Of threads, which are measured in either unit, a length is told in both
//! ([`thread`]).
//! Whole numbers beyond 2^53 never leave as something else: they are an error.
pub mod bench;
pub mod card;
pub mod dial;
pub mod gear;
mod given;
#[cfg(test)]
mod looked;
mod places;
mod plate;
mod refusal;
mod request;
mod shaped;
mod slanted;
#[cfg(test)]
mod tests;
pub mod thread;

pub use given::Given;
pub use refusal::{Limits, Refusal};

use handturn::Field;
use handturn::bounds::Bound;
use handturn::divide::{Answer, Order, Rated, Way, answer};
use handturn::head::read as read_head;
use handturn::measure::read;
use handturn::number::{Fraction, nearest_with};
use serde::Serialize;
use serde_wasm_bindgen::Serializer;
use wasm_bindgen::prelude::*;

/// How many ways of a kind an answer lists; its count tells all there are.
pub const EACH: usize = 8;

/// The whole answer to a request: see [`Answer`].
///
/// # Errors
/// A [`Refusal`] that names the value.
#[wasm_bindgen]
pub fn divide(request: &JsValue) -> Result<JsValue, JsValue> {
    out(given(request).and_then(|request| asked(&request)))
}

/// The best way of each kind, in `order` (`closest` or `quickest`).
///
/// # Errors
/// As [`divide`].
#[wasm_bindgen]
pub fn ways(request: &JsValue, order: &JsValue) -> Result<JsValue, JsValue> {
    let ranked = || {
        let order = match given(order)? {
            Given::Text(order) if order == "closest" => Order::Closest,
            Given::Text(order) if order == "quickest" => Order::Quickest,
            other => return Err(Refusal::kind("order", "closest or quickest", &other)),
        };
        let answer = asked(&given(request)?)?;
        let first = |group: &&handturn::divide::Group<EACH>| group.ways(order).first().copied();
        Ok(answer.ranked(order).iter().filter_map(first).collect::<Vec<Rated>>())
    };
    out(ranked())
}

/// Where everything stands at position `index`, counted from 0.
///
/// # Errors
/// A [`Refusal`] that names the value.
#[wasm_bindgen]
pub fn place(request: &JsValue, way: JsValue, index: &JsValue) -> Result<JsValue, JsValue> {
    out(of_way(request, way).and_then(|(question, way)| {
        let question = question.question();
        let index = given(index)?.count("index", position(question.last()))?;
        way.place(&question, index).map_err(refuse)
    }))
}

/// What the hands do from position `index` to the next.
///
/// # Errors
/// A [`Refusal`] that names the value.
#[wasm_bindgen]
pub fn step(request: &JsValue, way: JsValue, index: &JsValue) -> Result<JsValue, JsValue> {
    out(of_way(request, way).and_then(|(question, way)| {
        let question = question.question();
        let last = position(question.last().saturating_sub(1));
        let index = given(index)?.count("index", last)?;
        way.step(&question, index).map_err(refuse)
    }))
}

/// The equations that lead to a way.
///
/// # Errors
/// A [`Refusal`] that names the value.
#[wasm_bindgen]
pub fn working(request: &JsValue, way: JsValue) -> Result<JsValue, JsValue> {
    out(of_way(request, way)
        .and_then(|(question, way)| way.working(&question.question()).map_err(refuse)))
}

/// The head of the values given, all others as on the default head.
///
/// # Errors
/// A [`Refusal`] that names the value.
#[wasm_bindgen]
pub fn head(values: &JsValue) -> Result<JsValue, JsValue> {
    out(given(values).and_then(|values| request::head(&values)))
}

/// Reads a text as people type it, as `kind`: `number`, `ratio`, `angle`, `angles`,
/// `length` (millimetres unless it names inches), `plates` or `gears`.
///
/// # Errors
/// A [`Refusal`] that says what is wrong with it.
#[wasm_bindgen]
pub fn read_text(kind: &str, text: &JsValue) -> Result<JsValue, JsValue> {
    let text = match given(text).map_err(|refusal| thrown(&refusal))? {
        Given::Text(text) => text,
        other => return Err(thrown(&Refusal::kind("text", "a text", &other))),
    };
    let error = |error: handturn::Error| Refusal::of("text", &error, &text);
    match kind {
        "ratio" => out(read::ratio(&text).map_err(error)),
        "angle" => out(read::angle(&text).map_err(error)),
        "angles" => out(read::angles(&text).map_err(error)),
        "length" => out(read::length(&text, read::Unit::Mm).map_err(error)),
        "plates" => out(read_head::plates(&text).map_err(error)),
        "gears" => out(read_head::gears(&text).map_err(error)),
        _ => out(read::number(&text, Field::Fraction).map_err(error)),
    }
}

/// What is asked of a thread: `about` is one of `read`, `all`, `sizes`, `blank`,
/// `drills`, `which`, `infeed`, `passes`, `wires`, `over`, `from` or `gears`.
///
/// # Errors
/// A [`Refusal`] that names the value.
#[wasm_bindgen]
pub fn of_thread(about: &str, request: &JsValue) -> Result<JsValue, JsValue> {
    out(given(request).and_then(|request| thread::answer(about, &request)))
}

/// What is asked of a dial: `about` is one of `marks`, `mark`, `stops`, `figures`,
/// `vernier`, `reads`, `width`, `diameter`, `screw`, `steps` or `fine`.
///
/// # Errors
/// A [`Refusal`] that names the value.
#[wasm_bindgen]
pub fn of_dial(about: &str, request: &JsValue) -> Result<JsValue, JsValue> {
    out(given(request).and_then(|request| dial::answer(about, &request)))
}

/// Pass `number`, from 1, of a thread cut in passes.
///
/// # Errors
/// A [`Refusal`] that names the value.
#[wasm_bindgen]
pub fn pass(request: &JsValue, number: &JsValue) -> Result<JsValue, JsValue> {
    out(given(request).and_then(|request| thread::pass(&request, &given(number)?)))
}

/// What is asked of a shape that is no involute wheel: `about` is one of `ratchet`,
/// `face`, `splines`, `keyway`, `flats`, `clock`, `lobe` or `steps`.
///
/// # Errors
/// A [`Refusal`] that names the value.
#[wasm_bindgen]
pub fn of_shape(about: &str, request: &JsValue) -> Result<JsValue, JsValue> {
    out(given(request).and_then(|request| shaped::answer(about, &request)))
}

/// The small sums there are: their names, what each asks.
///
/// # Errors
/// None that can be met.
#[wasm_bindgen]
pub fn sums() -> Result<JsValue, JsValue> {
    out(Ok(bench::all()))
}

/// The answer of a small sum: see [`bench::answer`].
///
/// # Errors
/// A [`Refusal`] that names the value.
#[wasm_bindgen(js_name = "sum")]
pub fn small_sum(name: &JsValue, asked: &JsValue, owned: &JsValue) -> Result<JsValue, JsValue> {
    let answer = || bench::answer(&given(name)?, &given(asked)?, &given(owned)?);
    out(answer())
}

/// The values of a card, each under its name: see [`card::values`].
///
/// # Errors
/// A [`Refusal`] that names the value.
#[wasm_bindgen]
pub fn card_values(values: &JsValue) -> Result<JsValue, JsValue> {
    out(given(values).and_then(|values| card::values(&values)))
}

/// What is asked of a wheel: `about` is one of what [`gear::answer`] knows.
///
/// # Errors
/// A [`Refusal`] that names the value.
#[wasm_bindgen]
pub fn of_wheel(about: &str, request: &JsValue) -> Result<JsValue, JsValue> {
    out(given(request).and_then(|request| gear::answer(about, &request)))
}

/// What is asked of slanted teeth: `about` is one of `helical`, `gears`, `worm`, `bevel`
/// or `rack`.
///
/// # Errors
/// A [`Refusal`] that names the value.
#[wasm_bindgen]
pub fn of_slant(about: &str, request: &JsValue) -> Result<JsValue, JsValue> {
    out(given(request).and_then(|request| slanted::answer(about, &request)))
}

/// What each source of error makes of `way`; the request may have `sources` too.
///
/// # Errors
/// A [`Refusal`] that names the value.
#[wasm_bindgen]
pub fn budget(request: &JsValue, way: JsValue) -> Result<JsValue, JsValue> {
    out(a_way(way).and_then(|way| plate::budget(&given(request)?, &way)))
}

/// The plan of the plate that the request needs, drilled first by the way `first` where
/// that is given.
///
/// # Errors
/// A [`Refusal`] that names the value.
#[wasm_bindgen]
pub fn make_plate(request: &JsValue, first: JsValue) -> Result<JsValue, JsValue> {
    let none = first.is_undefined() || first.is_null();
    let first = if none { Ok(None) } else { a_way(first).map(Some) };
    out(first.and_then(|first| plate::make(&given(request)?, first)))
}

/// What is asked of a plate's places: `about` is one of `ring`, `holes`, `tape`, `drum` or
/// `disks`.
///
/// # Errors
/// A [`Refusal`] that names the value.
#[wasm_bindgen]
pub fn of_plate(about: &str, request: &JsValue) -> Result<JsValue, JsValue> {
    out(given(request).and_then(|request| places::answer(about, &request)))
}

/// The fraction nearest to `num / den` with a denominator of at most `most`, and
/// what is left over: `{ fraction, residual }`.
///
/// # Errors
/// A [`Refusal`] where a number is not whole, lies beyond 2^53, or is 0 where it divides.
#[wasm_bindgen]
pub fn nearest(num: &JsValue, den: &JsValue, most: &JsValue) -> Result<JsValue, JsValue> {
    #[derive(Serialize)]
    struct Near {
        fraction: Fraction,
        residual: Fraction,
    }
    let near = || {
        let number = |name: &str, value: &JsValue| given(value)?.whole(name);
        let (num, den) = (number("num", num)?, number("den", den)?);
        let zero = |error: handturn::Error| Refusal::of("den", &error, &den.to_string());
        let sought = Fraction::new(num, den).map_err(zero)?;
        let most = number("most", most)?;
        let near =
            nearest_with(sought, most).map_err(|e| Refusal::of("most", &e, &most.to_string()))?;
        Ok(Near { fraction: near.fraction, residual: near.residual })
    };
    out(near())
}

/// The answer to a request in plain data.
fn asked(request: &Given) -> Result<Answer<EACH>, Refusal> {
    let question = request::question(request)?;
    let head = request::head(request.get("head"))?;
    answer(&question.question(), &head).map_err(refuse)
}

fn of_way(request: &JsValue, way: JsValue) -> Result<(handturn::divide::Asked, Way), Refusal> {
    Ok((request::question(&given(request)?)?, a_way(way)?))
}

fn a_way(way: JsValue) -> Result<Way, Refusal> {
    let way = serde_wasm_bindgen::from_value(way);
    way.map_err(|error| {
        let mut refusal = Refusal::kind("way", "a way out of an answer", &Given::Nothing);
        refusal.cause = "WrongKind".to_owned();
        refusal.message =
            "way must be a way out of an answer: ".to_owned() + &error.to_string() + ".";
        refusal
    })
}

fn position(greatest: u32) -> Bound {
    Bound { field: Field::Position, least: 0, greatest }
}

fn refuse(error: handturn::Error) -> Refusal {
    let name = match error.field {
        Field::Position => "index",
        Field::CutOrder => "every",
        _ => "request",
    };
    Refusal::of(name, &error, "")
}

fn given(value: &JsValue) -> Result<Given, Refusal> {
    serde_wasm_bindgen::from_value(value.clone()).map_err(|error| {
        let mut refusal = Refusal::kind("request", "plain data", &Given::Nothing);
        refusal.cause = "WrongKind".to_owned();
        refusal.message = "Plain data is wanted: ".to_owned() + &error.to_string() + ".";
        refusal
    })
}

/// The answer as plain objects, or what is to be thrown.
fn out<T: Serialize>(answer: Result<T, Refusal>) -> Result<JsValue, JsValue> {
    let answer = answer.map_err(|refusal| thrown(&refusal))?;
    answer.serialize(&Serializer::json_compatible()).map_err(|_| {
        thrown(&Refusal {
            field: "answer".to_owned(),
            cause: "Overflow".to_owned(),
            limits: None,
            message: "The exact answer holds whole numbers beyond 2^53.".to_owned(),
        })
    })
}

fn thrown(refusal: &Refusal) -> JsValue {
    refusal.serialize(&Serializer::json_compatible()).unwrap_or(JsValue::NULL)
}
