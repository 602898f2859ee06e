//! Tries of what is computed about tilts, cuts on centre, rounds in a V and dovetails.
use crate::shapes::hold;
use crate::wide::Wide;
use crate::{Try, part};
use handturn::bench::centre::{Touch, moves};
use handturn::bench::dovetail::{Dovetail, Part, measure};
use handturn::bench::tilt::{Rule, Tilt, angle};
use handturn::bench::vee::{Vee, rest};
use handturn::gear::flats;
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

pub(crate) fn between() -> Vec<Try> {
    let tries = (1..=200_i64).zip(rules()).map(|(k, rule)| {
        let angle = Angle::from_degrees(part(k * 7_919 % 60_000 + 10_000, 1_000)).expect("small");
        let (span, wear) = (mm(k * 104_729 % 9_973 + 1_000, 31), mm(k % 17 + 1, 7));
        let came = Tilt { angle, span, rule }.between(wear).expect("in bounds");
        let turns = Wide::of(angle.turns());
        let ratio = match rule {
            Rule::Sine => turns.sin_turns(),
            Rule::Tangent => tan(&turns),
        };
        let lift = Wide::of(span.mm()).by(&ratio);
        let truth = lift.minus(&Wide::of(wear.mm()).by(&Wide::whole(2)));
        let scale = lift.magnitude();
        Try { what: format!("{angle:?} {span:?} {wear:?} {rule:?}"), came, truth, scale }
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

pub(crate) fn across_flats() -> Vec<Try> {
    let tries = (0..150_i64).map(|k| {
        let (sides, stock) = (3 + k as u32 % 98, mm(k * 31 % 977 + 5, 13));
        let came = flats::largest(sides, stock).expect("in bounds");
        let truth = Wide::of(stock.mm()).by(&Wide::of(part(1, 2 * i64::from(sides))).cos_turns());
        let scale = truth.magnitude();
        Try { what: format!("{sides} {stock:?}"), came, truth, scale }
    });
    tries.collect()
}

fn mm(num: i64, den: i64) -> Length {
    Length::from_mm(part(num, den))
}

fn tan(turns: &Wide) -> Wide {
    turns.sin_turns().over(&turns.cos_turns())
}

#[test]
fn rounds_in_a_vee() {
    for k in 1..=200_i64 {
        let angle = Angle::from_degrees(part(k * 7_919 % 120_000 + 30_000, 1_000)).expect("small");
        let (round, width) = (mm(k * 31 % 977 + 5, 13), mm(k * 31 % 977 + 9, 11));
        let thinner = mm(k * 31 % 977 + 4, 14);
        let found = rest(&Vee { round, angle, width, other: Some(thinner) }).expect("in bounds");
        let half = Wide::of(angle.turns()).over(&Wide::whole(2));
        let radius = Wide::of(round.mm()).over(&Wide::whole(2));
        let apex = Wide::of(width.mm()).over(&Wide::whole(2)).over(&tan(&half));
        let up = radius.over(&half.sin_turns());
        let (over, what) = (up.plus(&radius), format!("{round:?} {angle:?}"));
        let scale = over.magnitude() + apex.magnitude();
        hold(&what, found.centre, &up.minus(&apex), scale, 40.0);
        hold(&what, found.top, &over.minus(&apex), scale, 40.0);
        hold(&what, found.over_apex, &over, scale, 40.0);
        hold(&what, found.apex, &apex, scale, 40.0);
        let other = found.other.expect("another was given");
        let more = Wide::of(thinner.mm()).over(&Wide::whole(2)).minus(&radius);
        let centre = more.over(&half.sin_turns());
        hold(&what, other.centre.about, &centre, centre.magnitude(), 20.0);
        hold(&what, other.top.about, &centre.plus(&more), centre.magnitude(), 40.0);
    }
}

#[test]
fn dovetails_by_rollers() {
    for k in 1..=200_i64 {
        let angle = Angle::from_degrees(part(k * 7_919 % 50_000 + 30_000, 1_000)).expect("small");
        let (height, roller, wide) =
            (mm(k % 37 + 9, 2), mm(k % 37 + 3, 5), mm(k * 31 % 400 + 120, 1));
        let part = if k % 2 == 0 { Part::Tail } else { Part::Groove };
        let ask = Dovetail { part, angle, wide, height, roller };
        let Ok(found) = measure(&ask) else { panic!("{ask:?}") };
        let whole = Wide::of(angle.turns());
        let [high, thick, wide] = [height, roller, wide].map(|length| Wide::of(length.mm()));
        let narrow = wide.minus(&high.by(&Wide::whole(2)).over(&tan(&whole)));
        let corner = thick.over(&tan(&whole.over(&Wide::whole(2))));
        let reach = corner.plus(&thick);
        let reading = if part == Part::Tail { narrow.plus(&reach) } else { wide.minus(&reach) };
        let scale = wide.magnitude() + reach.magnitude();
        hold(&format!("{ask:?}"), found.narrow, &narrow, scale, 60.0);
        hold(&format!("{ask:?}"), found.reading, &reading, scale, 60.0);
        let touches = corner.over(&Wide::whole(2)).by(&whole.sin_turns());
        hold(&format!("{ask:?}"), found.touches, &touches, scale, 60.0);
    }
}

#[test]
fn cuts_on_centre() {
    for k in 1..=200_i64 {
        let (work, cutter, depth) = (mm(k * 31 % 400 + 40, 3), mm(k % 29 + 1, 7), mm(k % 7 + 5, 3));
        let found = moves(&Touch { work, cutter, paper: mm(1, 20), depth }).expect("in bounds");
        let [radius, half] =
            [work, cutter].map(|length| Wide::of(length.mm()).over(&Wide::whole(2)));
        let arc = radius.minus(&radius.by(&radius).minus(&half.by(&half)).sqrt());
        let sides = Wide::of(depth.mm()).minus(&arc);
        hold(&format!("{work:?} {cutter:?}"), found.arc, &arc, arc.magnitude(), 40.0);
        hold(
            &format!("{work:?} {cutter:?}"),
            found.at_sides,
            &sides,
            Wide::of(depth.mm()).magnitude(),
            40.0,
        );
    }
}
