//! Tries of the involute function, of its inverse, and of what is measured on teeth.
use crate::wide::Wide;
use crate::{Try, part};
use handturn::gear::involute;
use handturn::measure::Angle;

fn held(what: String, came: handturn::number::Approx, truth: Wide) -> Try {
    let scale = truth.magnitude();
    Try { what, came, truth, scale }
}

/// tan φ − φ of `turns`.
fn inv(turns: &Wide) -> Wide {
    let tan = turns.sin_turns().over(&turns.cos_turns());
    tan.minus(&turns.by(&Wide::pi()).by(&Wide::whole(2)))
}

pub(crate) fn functions() -> Vec<Try> {
    let angles = (1..=400_i64).map(|k| part(k * 7 % 401 * 80, 401 * (1 + k * k % 29)));
    let tries = angles.map(|degrees| {
        let angle = Angle::from_degrees(degrees).expect("small");
        let came = involute::inv(angle).expect("below 80°");
        held(format!("{degrees}°"), came, inv(&Wide::of(angle.turns())))
    });
    tries.collect()
}

/// By halving: the root stays between two angles until they are 2^-200 of a turn apart.
pub(crate) fn inverses() -> Vec<Try> {
    let tries = (1..=160_i64).map(|k| {
        let wanted = part(k * 7 % 163 * 4, 163 * (1 + k * k * k % 9_973));
        let came = involute::angle(wanted).expect("below 4");
        let (mut low, mut high) = (Wide::whole(0), Wide::of(part(81, 360)));
        for _ in 0..200 {
            let middle = low.plus(&high).over(&Wide::whole(2));
            let above = inv(&middle).minus(&Wide::of(wanted)).float() > 0.0;
            if above { high = middle } else { low = middle }
        }
        held(format!("inverse of {wanted}"), came, low.by(&Wide::whole(360)))
    });
    tries.collect()
}
