//! The JavaScript package's functions: plain objects in, plain objects out.
use handturn::number::{Fraction, nearest_with};
use serde::Serialize;
use wasm_bindgen::prelude::*;

/// A fraction as JavaScript sees it.
#[derive(Serialize)]
struct Parts {
    num: i64,
    den: i64,
}

impl From<Fraction> for Parts {
    fn from(fraction: Fraction) -> Self {
        Parts { num: fraction.num(), den: fraction.den() }
    }
}

#[derive(Serialize)]
struct Near {
    fraction: Parts,
    residual: Parts,
}

/// The fraction nearest to `num / den` with a denominator of at most `most`.
///
/// # Errors
/// A text that says what is wanted, where a number is not whole, lies beyond 2^53, or is zero where it divides.
#[wasm_bindgen]
pub fn nearest(num: &JsValue, den: &JsValue, most: &JsValue) -> Result<JsValue, JsValue> {
    let refuse = |error: handturn::Error| JsValue::from_str(&error.to_string());
    let sought = Fraction::new(whole(num)?, whole(den)?).map_err(refuse)?;
    let near = nearest_with(sought, whole(most)?).map_err(refuse)?;
    let answer = Near { fraction: near.fraction.into(), residual: near.residual.into() };
    Ok(serde_wasm_bindgen::to_value(&answer)?)
}

/// A JavaScript value as a whole number within 2^53; nothing is rounded, wrapped or guessed.
fn whole(value: &JsValue) -> Result<i64, JsValue> {
    const MOST: f64 = 9_007_199_254_740_991.0;
    match value.as_f64() {
        Some(number) if number.fract() == 0.0 && number.abs() <= MOST => Ok(number as i64),
        _ => {
            Err(JsValue::from_str(&format!("a whole number within 2^53 is wanted, not {value:?}")))
        }
    }
}
