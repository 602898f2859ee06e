//! Knurls, speeds, balls by steps and what a tilt's pieces make of it, in wide numbers.
use crate::part;
use crate::shapes::{degrees, hold};
use crate::short::{half, mm, ratio, whole, wide};
use crate::wholes::{Truth, hold_all, own};
use crate::wide::Wide;
use handturn::bench::knurl::{Knurl, Lines, Pitch};
use handturn::bench::speed::{Cutting, Doing, Material, Speeds, Tool as Edge};
use handturn::bench::square;
use handturn::bench::steps::{Ask, By, Shape, Tool, plan};
use handturn::bench::tilt::{Rule, Tilt};
use handturn::measure::Length;
use std::f64::consts::TAU;

/// Where the blanks of an answer stand in it.
const BLANKS: [(&str, &str); 4] = [
    ("tracks.0.blank", "tracks.0.off"),
    ("tracks.1.blank", "tracks.1.off"),
    ("tracks.2.blank", "tracks.2.off"),
    ("tracks.3.blank", "tracks.3.off"),
];

#[test]
fn knurls() {
    for k in 1..=300_i64 {
        let tips = k * 7_919 % 1_999 + 200;
        let (pitch, apart) = match k % 4 {
            0 => (Pitch::Tips(mm(tips, 1_000)), ratio(tips, 1_000)),
            1 => (Pitch::PerInch(part(tips, 40)), ratio(254 * 4, tips)),
            2 => (Pitch::Diametral(part(tips, 10)), ratio(254, tips).by(&Wide::pi())),
            _ => {
                let teeth = k % 90 + 20;
                let around = ratio(tips, 100).by(&Wide::pi()).over(&whole(teeth));
                (Pitch::Wheel(mm(tips, 100), teeth as u32), around)
            }
        };
        let crossed = k % 3 == 0;
        let knurl = Knurl {
            pitch,
            angle: degrees(if k % 5 == 0 { 0 } else { k % 46 }, 1),
            lines: if crossed { Lines::Crossed } else { Lines::OneWay },
            tooth_angle: degrees(k % 60 + 60, 1),
            stock: mm(k * 31 % 400 + 100, 7),
        };
        let Ok(found) = knurl.fit() else { continue };
        let what = format!("{knurl:?}");
        let slant = Wide::of(knurl.angle.turns()).cos_turns();
        let turns = half(&Wide::of(knurl.tooth_angle.turns()));
        let depth = half(&apart).by(&turns.cos_turns()).over(&turns.sin_turns());
        let (least, most) =
            if crossed { (ratio(5, 12), ratio(4, 3)) } else { (ratio(1, 4), whole(1)) };
        let mut truths: Vec<Truth> = vec![
            own("pitch", apart.clone(), 5.0),
            own("full_depth", depth.clone(), 14.0),
            own("grows_least", depth.by(&least), 14.0),
            own("grows_most", depth.by(&most), 14.0),
            own("feed.0", apart.by(&ratio(1, 5)), 14.0),
            own("feed.1", half(&apart), 14.0),
        ];
        for (track, (blank, off)) in found.tracks.iter().zip(BLANKS) {
            let around = whole(track.teeth.into()).by(&apart);
            let truth = around.over(&Wide::pi()).over(&slant);
            if let Some(exact) = track.exact {
                assert!(wide(exact).minus(&truth).magnitude() < 1e-60, "{what}");
            }
            let (size, over) = (truth.magnitude(), wide(knurl.stock).minus(&truth));
            truths.push((blank, truth, size, 7.0));
            truths.push((off, over, size + wide(knurl.stock).magnitude(), 8.0));
        }
        hold_all(&what, &found, &truths);
        for track in [found.below(), found.above()].into_iter().flatten() {
            assert!(found.tracks.contains(track));
        }
    }
}

#[test]
fn speeds() {
    for k in 1..=300_i64 {
        let materials = [Material::MildSteel, Material::Brass];
        let tools = [Edge::HighSpeed, Edge::Carbide, Edge::Carbon];
        let (material, tool) = (materials[k as usize % 2], tools[k as usize % 3]);
        let cutting = Cutting::By(material, Doing::Turning, tool);
        let diameter = mm(k * 7_919 % 4_999 + 40, 40);
        let rpm = (k * 13 % 1_900 + 20) as u32;
        let speeds = Speeds { cutting, diameter, owned: &[rpm, 7] };
        let found = speeds.turns().expect("in bounds");
        let (slow, fast) = cutting.band().expect("known");
        let around = wide(diameter).by(&Wide::pi());
        let mut truths = vec![
            own("least", wide(slow).over(&around), 4.0),
            own("greatest", wide(fast).over(&around), 4.0),
        ];
        if let Some(set) = found.set {
            truths.push(own("set.cuts", around.by(&whole(set.rpm.into())), 4.0));
        }
        let what = format!("{diameter:?} {rpm}");
        hold_all(&what, &found, &truths);
        let own_speed = speeds.owned(rpm, (found.least, found.greatest)).expect("in bounds");
        let cuts = around.by(&whole(rpm.into()));
        hold_all(&what, &own_speed, &[own("cuts", cuts, 4.0)]);
    }
}

#[test]
fn what_stands_between_steps() {
    let mut held = 0;
    for k in 1..=300_i64 {
        let radius = mm(k * 7_919 % 20_000 + 4_000, 1_000);
        let two = radius.mm().times(2).expect("small");
        let shape = match k % 3 {
            0 => Shape::Ball { stock: Length::from_mm(two), neck: None },
            _ => Shape::Edge {
                outside: Length::from_mm(two.checked_add(part(k % 40, 3)).expect("small")),
            },
        };
        let outside = match shape {
            Shape::Edge { outside } => wide(outside),
            _ => Wide::of(two),
        };
        let noses = radius.mm().checked_mul(part(k % 40 + 40, 100)).expect("small");
        let (tool, nose) = if k % 2 == 0 {
            (Tool::Square { width: mm(2, 1) }, whole(0))
        } else {
            (Tool::Round { nose: Length::from_mm(noses) }, Wide::of(noses))
        };
        let by = By::Cuts((k % 30 + 12) as u32);
        let ask = Ask { shape, radius, tool, division: mm(1, 1_000), by };
        let Ok(found) = plan(&ask) else { continue };
        let what = format!("{ask:?}");
        let r = wide(radius);
        let middle = (r.clone(), half(&outside).minus(&r));
        // Noses' centres from the middle of the round, from the free side to the face.
        let centres: Vec<(Wide, Wide)> = (0..found.cuts)
            .map(|k| {
                let step = found.step(k).expect("a cut");
                let along = wide(step.along).minus(&nose).minus(&middle.0);
                (along, half(&wide(step.across)).plus(&nose).minus(&middle.1))
            })
            .collect();
        let square = |of: &Wide| of.by(of);
        let most = |of: Wide| if of.float() > 0.0 { of } else { whole(0) };
        // The faced end, and what is round already, as seen from the middle.
        let (face, out) = (whole(0).minus(&middle.0), half(&outside).minus(&middle.1));
        let mut corners = Vec::new();
        let (first, last) = (&centres[0], &centres[centres.len() - 1]);
        let side = |off: &Wide| most(square(&nose).minus(&square(off))).sqrt();
        // Above a nose its wall stands, short of one its floor.
        let up = side(&most(first.1.minus(&out)));
        corners.push((first.0.plus(&up), out));
        let down = side(&most(face.minus(&last.0)));
        corners.push((face, last.1.minus(&down)));
        let cut_by = |x: &Wide, y: &Wide| {
            let (x, y, n) = (x.float(), y.float(), nose.float() - 1e-9);
            centres.iter().any(|(u, v)| {
                let (along, down) = (x - u.float(), v.float() - y);
                let within = along < n && down < n;
                within && (along < 0.0 || down < 0.0 || along.hypot(down) < n)
            })
        };
        let below = |one: &Wide, other: &Wide| one.minus(other).float() <= 0.0;
        for pair in centres.windows(2) {
            let [(x, y), (u, v)] = pair else { continue };
            // The first's floor, the second's wall, and where each meets the other cut.
            let (floor, wall) = (y.minus(&nose), u.plus(&nose));
            let on_floor =
                if below(&floor, v) { u.plus(&side(&floor.minus(v))) } else { wall.clone() };
            let on_wall =
                if below(x, &wall) { y.minus(&side(&wall.minus(x))) } else { floor.clone() };
            if below(&on_floor, x) {
                corners.push((on_floor, floor));
            } else if below(v, &on_wall) {
                corners.push((wall, on_wall));
            } else {
                // Both noses: where their circles cross towards the metal, by Heron's height
                // over what lies between their centres.
                let (dx, dy) = (u.minus(x), v.minus(y));
                let long = square(&dx).plus(&square(&dy)).sqrt();
                let high = side(&half(&long));
                let (ax, ay) = (dy.over(&long).by(&high), dx.over(&long).by(&high));
                corners.push((half(&x.plus(u)).minus(&ax), half(&y.plus(v)).plus(&ay)));
            }
        }
        // Where a later cut takes a corner away, others stand that are not looked for here.
        if corners.iter().any(|(x, y)| cut_by(x, y)) {
            continue;
        }
        held += 1;
        let away = |(x, y): &(Wide, Wide)| square(x).plus(&square(y)).sqrt();
        let mut truth = whole(0);
        for one in corners.iter().map(away) {
            let high = one.minus(&r);
            truth = if high.float() > truth.float() { high } else { truth };
        }
        hold(&what, found.scallop, &truth, 8.0 * r.magnitude(), 64.0);
    }
    assert!(held > 150, "{held}");
}

#[test]
fn pieces_for_a_tilt() {
    for k in 1..=150_i64 {
        let rule = [Rule::Sine, Rule::Tangent][k as usize % 2];
        let tilt = Tilt { angle: degrees(k * 7_919 % 40_000 + 300, 1_000), span: mm(100, 1), rule };
        let owned: Vec<Length> = (1..=9).map(|n| mm(n * (1_100 + k % 70), 1_000)).collect();
        let found = tilt.choices(None, &owned, 3).expect("in bounds");
        for choice in &found {
            let (span, lift) = (wide(tilt.span), wide(choice.stack.sum));
            let along = match rule {
                Rule::Sine => span.by(&span).minus(&lift.by(&lift)).sqrt(),
                Rule::Tangent => span,
            };
            let tangent = lift.over(&along);
            let turns = tangent.atan_turns(tangent.float().atan() / TAU);
            let more = turns.minus(&Wide::of(tilt.angle.turns())).by(&whole(360 * 3_600));
            let steep = turns.magnitude() * 360.0 + 60.0 / turns.cos_turns().magnitude();
            let truths = [
                ("degrees", turns.by(&whole(360)), steep, 16.0),
                ("off_arcsec", more, steep * 3_600.0, 32.0),
            ];
            hold_all(&format!("{tilt:?} {choice:?}"), choice, &truths);
        }
    }
}

#[test]
fn disks_and_squares() {
    for k in 1..=300_i64 {
        let disk = mm(k * 7_919 % 9_000 + 500, 100);
        let radius = half(&wide(disk));
        let (ask, turns, touches) = if k % 2 == 0 {
            let angle = degrees(k * 104_729 % 89_000 + 1_000, 1_000);
            let turns = half(&Wide::of(angle.turns()));
            let touches = radius.by(&turns.cos_turns()).over(&turns.sin_turns());
            (square::Ask::Angle { disk, angle }, turns, touches)
        } else {
            let head = Length::from_mm(disk.mm().checked_add(part(k * 31, 7)).expect("small"));
            let touches = wide(head).minus(&radius);
            let tangent = radius.over(&touches);
            let turns = tangent.atan_turns(tangent.float().atan() / TAU);
            (square::Ask::Head { disk, head }, turns, touches)
        };
        let found = square::square(&ask).expect("in bounds");
        let squares = radius.by(&radius).plus(&touches.by(&touches));
        let slope = radius.by(&whole(360)).over(&Wide::pi()).over(&squares);
        let truths = [
            own("head", touches.plus(&radius), 24.0),
            own("touches", touches, 24.0),
            own("angle", turns.by(&whole(720)), 24.0),
            own("per_mm", slope, 64.0),
        ];
        hold_all(&format!("{ask:?}"), &found, &truths);
    }
}
