//! Tries of what is computed about wheels, and of the arcs it rests on.
use crate::wide::Wide;
use crate::{Try, bare};
use handturn::number::float;

/// Sines and cosines from −1 to 1, most of them towards the ends.
fn sines() -> impl Iterator<Item = f64> {
    (-150..=150_i32).map(|k| f64::from(k) / 151.0 + f64::from(k % 7) / 4096.0 / 151.0)
}

/// From the tangent sine/√(1 − sine²), which has an arc of its own in wide numbers.
fn arc_sine(sine: f64, near: f64) -> Wide {
    let sine = Wide::of_float(sine);
    let cosine = Wide::whole(1).minus(&sine.by(&sine)).sqrt();
    sine.over(&cosine).atan_turns(near)
}

pub(crate) fn arc_sines() -> Vec<Try> {
    let tries = sines().map(|sine| {
        let came = float::asin_turns(sine);
        let truth = arc_sine(sine, came);
        let scale = truth.magnitude();
        bare(sine.to_string(), came, truth, scale, 2.0)
    });
    tries.collect()
}

pub(crate) fn arc_cosines() -> Vec<Try> {
    let quarter = Wide::whole(1).over(&Wide::whole(4));
    let tries = sines().map(|cosine| {
        let came = float::acos_turns(cosine);
        let truth = quarter.minus(&arc_sine(cosine, 0.25 - came));
        let scale = truth.magnitude();
        bare(cosine.to_string(), came, truth, scale, 2.0)
    });
    tries.collect()
}
