//! Tries of what is computed about cones and speeds.
use crate::wide::Wide;
use crate::{Try, part};
use handturn::bench::{cone, speed};
use handturn::measure::{Angle, Length};

pub(crate) fn cones() -> Vec<Try> {
    let tries = (1..=200_i64).map(|k| {
        let angle = Angle::from_degrees(part(k * 7_919 % 159_000 + 10_500, 1_000)).expect("small");
        let (wide, touches) = (part(k * 104_729 % 9_973 + 500, 31), part(k * 31 % 499, 31));
        let came = cone::depth(Length::from_mm(wide), Length::from_mm(touches), angle);
        let half = Wide::of(angle.turns()).over(&Wide::whole(2));
        let across = Wide::of(wide).minus(&Wide::of(touches)).over(&Wide::whole(2));
        let truth = across.by(&half.cos_turns()).over(&half.sin_turns());
        let scale = truth.magnitude();
        Try { what: format!("{angle:?} {k}"), came: came.expect("in bounds"), truth, scale }
    });
    tries.collect()
}

pub(crate) fn turns() -> Vec<Try> {
    let tries = (1..=200_i64).map(|k| {
        let (way, across) = (part(k * 7_919 % 99_991 + 1, 7), part(k * 31 % 1_999 + 1, 91));
        let came = speed::rpm(Length::from_mm(way), Length::from_mm(across)).expect("in bounds");
        let truth = Wide::of(way).over(&Wide::of(across)).over(&Wide::pi());
        let scale = truth.magnitude();
        Try { what: format!("{way} over {across}"), came, truth, scale }
    });
    tries.collect()
}
