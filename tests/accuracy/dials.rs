//! Tries of what is computed about dials.
use crate::wholes::{hold_all, own};
use crate::wide::Wide;
use crate::{Try, part};
use handturn::dial::fine::{self, Arm};
use handturn::dial::width::{self, Across};
use handturn::measure::{Angle, Length};
use handturn::number::{Approx, Fraction};

fn lengths() -> impl Iterator<Item = Length> + Clone {
    (1..=150_i64).map(|k| Length::from_mm(part(k * 7_919 % 9_973 + 1, k * 31 % 97 + 1)))
}

fn counts() -> impl Iterator<Item = u32> {
    (0..150_u32).map(|k| 2 + k * k * 4_421 % 9_999)
}

fn held(what: String, came: Approx, truth: Wide) -> Try {
    let scale = truth.magnitude();
    Try { what, came, truth, scale }
}

/// Width of one of `count` divisions on a rim of diameter one.
fn factor(count: u32, across: Across) -> Wide {
    match across {
        Across::Arc => Wide::pi().over(&Wide::whole(i64::from(count))),
        Across::Chord => Wide::of(part(1, 2 * i64::from(count))).sin_turns(),
    }
}

fn across() -> impl Iterator<Item = Across> {
    [Across::Arc, Across::Chord].into_iter().cycle()
}

fn mm(length: Length) -> Wide {
    Wide::of(length.mm())
}

pub(crate) fn divisions() -> Vec<Try> {
    let tries = counts().zip(lengths()).zip(across()).map(|((count, length), across)| {
        let came = width::division(count, length, across).expect("in bounds");
        held(format!("{count} {length:?}"), came, mm(length).by(&factor(count, across)))
    });
    tries.collect()
}

pub(crate) fn diameters() -> Vec<Try> {
    let tries = counts().zip(lengths()).zip(across()).map(|((count, length), across)| {
        let came = width::diameter(count, length, across).expect("in bounds");
        held(format!("{count} {length:?}"), came, mm(length).over(&factor(count, across)))
    });
    tries.collect()
}

pub(crate) fn lines() -> Vec<Try> {
    let tries = counts().zip(lengths()).flat_map(|(count, length)| {
        let came = width::line(count, length).expect("in bounds");
        let arc = mm(length).by(&factor(count, Across::Arc));
        came.into_iter().zip([10, 5]).map(move |(came, parts)| {
            held(format!("{count} {length:?}"), came, arc.over(&Wide::whole(parts)))
        })
    });
    tries.collect()
}

/// `lead` over 2π and `other`.
fn over_turn(lead: Length, other: &Wide) -> Wide {
    mm(lead).over(&Wide::pi()).over(&Wide::whole(2)).over(other)
}

fn seconds() -> Wide {
    Wide::whole(1_296_000)
}

pub(crate) fn turns() -> Vec<Try> {
    let tries = lengths().zip(lengths().skip(7)).map(|(lead, radius)| {
        let came = fine::turn(lead, radius).expect("in bounds");
        held(format!("{lead:?} {radius:?}"), came, over_turn(lead, &mm(radius)).by(&seconds()))
    });
    tries.collect()
}

fn shifts() -> impl Iterator<Item = Angle> {
    (1..=150_i64).map(|k| Angle::from_turns(part(k * 37 % 101 + 1, k * 7_919 % 9_973 + 102)))
}

pub(crate) fn radii() -> Vec<Try> {
    let tries = lengths().zip(shifts()).map(|(lead, shift)| {
        let came = fine::radius(lead, shift).expect("in bounds");
        held(format!("{lead:?} {shift:?}"), came, over_turn(lead, &Wide::of(shift.turns())))
    });
    tries.collect()
}

/// What is left of two angles that are nearly equal is held against the angles.
pub(crate) fn errors() -> Vec<Try> {
    let tries = (1..=150_i64).map(|k| {
        let lead = Length::from_mm(part(k % 13 + 3, 8));
        let radius = Length::from_mm(part(k * 31 % 90 + 40, 1));
        let arm = Arm { lead, radius, ratio: Fraction::whole(40) };
        // Called as it is near the middle, to a few parts in a thousand.
        let near = over_turn(lead, &mm(radius)).float();
        let called = (near * 1e6).round() as i64 + k % 7 - 3;
        let shift = Angle::from_turns(part(called, 1_000_000));
        let turns = part(k % 29 * if k % 2 == 0 { 1 } else { -1 } + 1, k % 4 + 1);
        let came = fine::error(&arm, shift, turns).expect("within the radius");
        let across = mm(lead).by(&Wide::of(turns)).over(&mm(radius));
        let turned = across.atan_turns(across.float().atan() / std::f64::consts::TAU);
        let told = Wide::of(shift.turns()).by(&Wide::of(turns));
        let scale = turned.by(&seconds()).magnitude() + told.by(&seconds()).magnitude();
        let truth = turned.minus(&told).by(&seconds());
        Try { what: format!("{arm:?} {shift:?} {turns}"), came, truth, scale }
    });
    tries.collect()
}

#[test]
fn fine_dials() {
    for k in 1..=200_i64 {
        let arm = Arm {
            lead: Length::from_mm(part(k % 5 + 2, 4)),
            radius: Length::from_mm(part(k * 7_919 % 900 + 400, 10)),
            ratio: part([40, 60, 90][k as usize % 3], 1),
        };
        let what = format!("{arm:?}");
        for step in &fine::steps(&arm).expect("in bounds") {
            let shift = Wide::of(step.at_work.turns()).by(&Wide::of(arm.ratio));
            let shift = shift.by(&Wide::whole(step.marks.into()));
            hold_all(&what, step, &[own("radius_mm", over_turn(arm.lead, &shift), 4.5)]);
        }
        let seconds_of = |n: i64| Angle::from_arcsec(part(n, 1)).expect("small");
        let (marks, turns) = (100, part(k % 40 + 4, 8));
        let at_work = seconds_of(k % 3 + 1);
        let wanted = fine::Wanted { arm, marks, at_work, turns, within: seconds_of(2) };
        let Ok(found) = fine::design(&wanted) else { continue };
        let ratio = Wide::of(arm.ratio);
        let shift = Wide::of(at_work.turns()).by(&ratio).by(&Wide::whole(marks.into()));
        let one = over_turn(arm.lead, &mm(arm.radius)).by(&seconds());
        let mark = one.over(&Wide::whole(marks.into())).over(&ratio);
        // Off after `turns`: what the arm has turned less what is told.
        let slope = mm(arm.lead).over(&mm(arm.radius));
        let off = |turns: &Wide| {
            let across = slope.by(turns);
            let near = across.float().atan() / std::f64::consts::TAU;
            let off = across.atan_turns(near).minus(&shift.by(turns));
            off.by(&seconds()).over(&ratio)
        };
        // It turns back where the arm goes as fast as it is told, if that is used.
        let fast = slope.over(&Wide::pi()).over(&Wide::whole(2)).over(&shift);
        let end = Wide::of(turns);
        let mut worst = off(&end);
        if fast.float() > 1.0 {
            let back = fast.minus(&Wide::whole(1)).sqrt().over(&slope);
            if back.float() < end.float() && off(&back).magnitude() > worst.magnitude() {
                worst = off(&back);
            }
        }
        let told = shift.by(&end).by(&seconds()).over(&ratio).magnitude();
        let most = told + slope.by(&end).by(&seconds()).over(&ratio).magnitude();
        let truths = [
            own("radius_mm", over_turn(arm.lead, &shift), 4.5),
            own("mark_arcsec", mark, 4.5),
            ("worst_arcsec", worst, most, 16.0),
        ];
        hold_all(&what, &found, &truths);
    }
}
