//! Tries of what is computed about tilts.
use crate::wide::Wide;
use crate::{Try, part};
use handturn::bench::tilt::{Rule, Tilt, angle};
use handturn::measure::{Angle, Length};

fn rules() -> impl Iterator<Item = Rule> {
    [Rule::Sine, Rule::Tangent].into_iter().cycle()
}

pub(crate) fn lifts() -> Vec<Try> {
    let tries = (1..=200_i64).zip(rules()).map(|(k, rule)| {
        let angle = Angle::from_degrees(part(k * 7_919 % 79_000 + 1, 1_000)).expect("small");
        let span = Length::from_mm(part(k * 104_729 % 9_973 + 10, 31));
        let came = Tilt { angle, span, rule }.lift().expect("in bounds");
        let turns = Wide::of(angle.turns());
        let ratio = match rule {
            Rule::Sine => turns.sin_turns(),
            Rule::Tangent => turns.sin_turns().over(&turns.cos_turns()),
        };
        let truth = Wide::of(span.mm()).by(&ratio);
        let scale = truth.magnitude();
        Try { what: format!("{angle:?} {span:?} {rule:?}"), came, truth, scale }
    });
    tries.collect()
}

pub(crate) fn angles() -> Vec<Try> {
    let tries = (1..=200_i64).zip(rules()).map(|(k, rule)| {
        let (span, lift) = (part(k * 7_919 % 9_973 + 200, 7), part(k * 31 % 1_999 + 1, 91));
        let came = angle(Length::from_mm(span), Length::from_mm(lift), rule).expect("in bounds");
        let (span, lift) = (Wide::of(span), Wide::of(lift));
        let along = match rule {
            Rule::Sine => span.by(&span).minus(&lift.by(&lift)).sqrt(),
            Rule::Tangent => span,
        };
        let truth = lift.over(&along).atan_turns(came.value / 360.0).by(&Wide::whole(360));
        let scale = truth.magnitude();
        Try { what: format!("{k} {rule:?}"), came, truth, scale }
    });
    tries.collect()
}
