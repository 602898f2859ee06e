//! Tries of what is computed about wheels, and of the arcs it rests on.
use crate::wide::Wide;
use crate::{Try, bare, part};
use handturn::gear::telling;
use handturn::measure::Length;
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

/// Lengths and numbers of teeth, few and many.
fn rings() -> impl Iterator<Item = (Length, u32)> {
    (1..=120_u32).map(|k| {
        let length = part(i64::from(k) * 7_919 % 9_973 + 1, i64::from(k) * 31 % 997 + 1);
        (Length::from_mm(length), 4 + k * k * 37 % 4_997)
    })
}

fn held(what: String, came: handturn::number::Approx, truth: Wide) -> Try {
    let scale = truth.magnitude();
    Try { what, came, truth, scale }
}

fn half_step(teeth: u32) -> Wide {
    Wide::of(part(1, 2 * i64::from(teeth))).sin_turns()
}

pub(crate) fn circular_pitches() -> Vec<Try> {
    let tries = rings().map(|(pitch, _)| {
        let came = telling::module_of_circular_pitch(pitch).expect("in bounds");
        held(format!("{pitch:?}"), came, Wide::of(pitch.mm()).over(&Wide::pi()))
    });
    tries.collect()
}

pub(crate) fn diameters_of_chords() -> Vec<Try> {
    let tries = rings().map(|(chord, teeth)| {
        let came = telling::diameter_of_chord(chord, teeth).expect("in bounds");
        held(format!("{chord:?} {teeth}"), came, Wide::of(chord.mm()).over(&half_step(teeth)))
    });
    tries.collect()
}

pub(crate) fn chords_of_diameters() -> Vec<Try> {
    let tries = rings().map(|(diameter, teeth)| {
        let came = telling::chord_of_diameter(diameter, teeth).expect("in bounds");
        held(format!("{diameter:?} {teeth}"), came, Wide::of(diameter.mm()).by(&half_step(teeth)))
    });
    tries.collect()
}
