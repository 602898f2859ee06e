//! Tries of what is computed about cones and speeds.
use crate::shapes::degrees;
use crate::short::{half, mm, wide};
use crate::wholes::{hold_all, own};
use crate::wide::Wide;
use crate::{Try, part};
use handturn::bench::chamfer::{Chamfer, Given};
use handturn::bench::cone::Countersink;
use handturn::bench::point::{Deep, DrillPoint};
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

/// Sine and cosine of half an angle.
fn slope(angle: Angle) -> (Wide, Wide) {
    let turns = half(&Wide::of(angle.turns()));
    (turns.sin_turns(), turns.cos_turns())
}

#[test]
fn countersinks() {
    for k in 1..=300_i64 {
        let head = k * 7_919 % 9_973 + 500;
        let sink = Countersink {
            angle: degrees(k * 104_729 % 120_000 + 40_000, 1_000),
            diameter: mm(head, 31),
            flat: mm(head * (k % 20) / 100, 31),
            hole: mm(head * (k % 37) / 100, 31),
            below: mm(k % 9, 10),
            ball: if k % 3 == 0 { mm(0, 1) } else { mm(head, 31) },
        };
        let Ok(found) = sink.depths() else { continue };
        let (sine, cosine) = slope(sink.angle);
        let cot = cosine.over(&sine);
        let growth = Wide::whole(2).over(&cot);
        let (head, below) = (wide(sink.diameter), wide(sink.below));
        let mouth = head.plus(&below.by(&growth));
        let deep = |from: Length| half(&head.minus(&wide(from))).by(&cot).plus(&below);
        let mut truths = vec![
            own("mouth", mouth.clone(), 10.0),
            own("tip", deep(sink.flat), 10.0),
            own("from_touch", deep(sink.flat.max(sink.hole)), 10.0),
            own("growth", growth, 6.0),
        ];
        if found.ball.is_some() {
            let ball = wide(sink.ball);
            let (centre, surface) = (half(&ball).over(&sine), half(&mouth).by(&cot));
            let size = centre.magnitude() + ball.magnitude() + surface.magnitude();
            let above = centre.plus(&half(&ball)).minus(&surface);
            truths.push(own("ball.touches", ball.by(&cosine), 6.0));
            truths.push(("ball.above", above, size, 16.0));
        }
        hold_all(&format!("{sink:?}"), &found, &truths);
    }
}

#[test]
fn chamfers() {
    for k in 1..=300_i64 {
        let diameter = k * 7_919 % 9_973 + 500;
        let angle = degrees(k * 104_729 % 80_000 + 5_000, 1_000);
        let (leg, bore) = (mm(diameter * (k % 20 + 1) / 2_000 + 1, 31), k % 2 == 0);
        let ends = if bore { diameter + k } else { diameter - k };
        let given = match k % 4 {
            0 => Given::OffRadius(leg),
            1 => Given::Along(leg),
            2 => Given::Face(leg),
            _ => Given::To(mm(ends, 31)),
        };
        let chamfer = Chamfer { diameter: mm(diameter, 31), bore, angle, given };
        let Ok(found) = chamfer.legs() else { continue };
        let turns = Wide::of(angle.turns());
        let (sine, cosine) = (turns.sin_turns(), turns.cos_turns());
        let off = match given {
            Given::OffRadius(leg) => wide(leg),
            Given::Along(leg) => wide(leg).by(&sine).over(&cosine),
            Given::Face(leg) => wide(leg).by(&sine),
            Given::To(_) => Wide::of(part(k, 62)),
        };
        let across = wide(chamfer.diameter);
        let twice = off.by(&Wide::whole(2));
        let end = if bore { across.plus(&twice) } else { across.minus(&twice) };
        let size = across.magnitude() + twice.magnitude();
        let truths = [
            own("off_radius", off.clone(), 8.0),
            own("along", off.by(&cosine).over(&sine), 8.0),
            own("face", off.over(&sine), 5.0),
            ("end", end, size, 10.0),
        ];
        hold_all(&format!("{chamfer:?}"), &found, &truths);
    }
}

#[test]
fn points_of_drills() {
    for k in 1..=300_i64 {
        let deep = mm(k * 13 % 97 + 20, 3);
        let drill = DrillPoint {
            diameter: mm(k * 7_919 % 2_999 + 100, 100),
            angle: degrees(k * 104_729 % 90_000 + 60_000, 1_000),
            depth: if k % 2 == 0 { Deep::Full(deep) } else { Deep::Tip(deep) },
            plate: mm(k % 4 * 10, 1),
            spot: mm(k % 300 + 20, 10),
            spot_angle: degrees(90 + k % 55, 1),
        };
        let found = drill.depths().expect("in bounds");
        let point_of = |diameter: Length, angle: Angle| {
            let (sine, cosine) = slope(angle);
            half(&wide(diameter)).by(&cosine).over(&sine)
        };
        let point = point_of(drill.diameter, drill.angle);
        let (full, tip) = match drill.depth {
            Deep::Full(full) => (wide(full), wide(full).plus(&point)),
            Deep::Tip(tip) => (wide(tip).minus(&point), wide(tip)),
        };
        let size = point.magnitude() + wide(deep).magnitude();
        let spot = point_of(drill.spot, drill.spot_angle);
        let mut truths = vec![
            own("point", point.clone(), 8.0),
            ("full", full, size, 10.0),
            ("tip", tip.clone(), size, 10.0),
            own("spot", spot, 8.0),
        ];
        let plate = wide(drill.plate);
        if plate.magnitude() > 0.0 {
            let size = size + plate.magnitude();
            truths.push(("left", plate.minus(&tip), size, 12.0));
            truths.push(("through", plate.plus(&point), size, 10.0));
        }
        hold_all(&format!("{drill:?}"), &found, &truths);
    }
}
