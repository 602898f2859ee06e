//! Tries of what is computed about dials.
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
