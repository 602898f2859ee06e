//! Ratchets, splines, flats, clock wheels and cams in wide numbers: by other formulas
//! than the core's where there are any, so that both the value and its bound are tried.
use crate::wide::Wide;
use crate::{Try, part};
use handturn::gear::cam::{Lobe, Steps, lobe, steps};
use handturn::gear::clock::{Clock, Rule, sizes};
use handturn::gear::flats::{Corners, Flats, flats};
use handturn::gear::keyway::{Keyway, keyway};
use handturn::gear::ratchet::{Gap, Ratchet, cut, face_teeth};
use handturn::gear::spline::{self, Between, Spline};
use handturn::measure::{Angle, Length};
use handturn::number::{Approx, Fraction};

pub(crate) fn degrees(num: i64, den: i64) -> Angle {
    Angle::from_degrees(part(num, den)).expect("small")
}

fn turns(angle: Angle) -> Wide {
    Wide::of(angle.turns())
}

/// The angle in turns of a point to the right of the upright, clockwise from it.
fn turned(right: &Wide, up: &Wide) -> Wide {
    let near = right.float().atan2(up.float()) / std::f64::consts::TAU;
    if up.magnitude() > right.magnitude() {
        return right.over(up).atan_turns(near);
    }
    let quarter = Wide::of(part(if near < 0.0 { -1 } else { 1 }, 4));
    quarter.minus(&up.over(right).atan_turns(quarter.float() - near))
}

/// Holds `came` against the truth: its bound keeps, and is at most `lazy` times the
/// rounding of a float of `scale`.
#[track_caller]
pub(crate) fn hold(what: &str, came: Approx, truth: &Wide, scale: f64, lazy: f64) {
    let off = truth.minus(&Wide::of_float(came.value)).magnitude();
    assert!(off <= came.bound, "{what}: {off:e} off, {:e} promised", came.bound);
    let most = lazy * f64::EPSILON * scale;
    assert!(came.bound <= most, "{what}: a lazy bound, {:e} over {most:e}", came.bound);
}

pub(crate) fn face_tilts() -> Vec<Try> {
    let tries = (5..=124_u32).map(|teeth| {
        let least = 360 / i64::from(teeth) + 1;
        let cutter = degrees(least + (i64::from(teeth) * 37) % (90 - least), 1);
        let came = face_teeth(teeth, cutter).expect("in bounds");
        let (p, c) = (Wide::of(part(1, i64::from(teeth))), turns(cutter));
        let tan = |x: &Wide| x.sin_turns().over(&x.cos_turns());
        let cosine = tan(&p).over(&tan(&c));
        let sine = Wide::whole(1).minus(&cosine.by(&cosine)).sqrt();
        let truth = turned(&sine, &cosine).by(&Wide::whole(360));
        let scale = truth.magnitude();
        Try { what: format!("{teeth}, {cutter:?}"), came, truth, scale }
    });
    tries.collect()
}

/// The gap from the crossing of its two lines: the face below one tip, the back from the
/// next land's end.
#[test]
fn ratchets() {
    let mut held = 0;
    for k in 0..400_i64 {
        let (teeth, undercut) = (5 + (k * 7919) % 150, k % 31);
        let pitch_degrees = 360 / teeth + 1;
        let cutter = degrees((pitch_degrees + 5 + k % 40).min(85) * 4 + 1, 4);
        let outside = part(1000 + k * 37 % 9973, 70);
        let land = part(k % 9, 100);
        let wheel = Ratchet {
            teeth: u32::try_from(teeth).expect("few"),
            outside: Length::from_mm(outside),
            undercut: degrees(undercut, 1),
        };
        let Ok(gap) = cut(&wheel, Gap::Land { cutter, land: Length::from_mm(land) }) else {
            continue;
        };
        held += 1;
        let radius = Wide::of(outside).over(&Wide::whole(2));
        let tip = turns(wheel.undercut);
        let around = Wide::pi().by(&Wide::of(outside));
        let end = Wide::of(part(1, teeth)).minus(&Wide::of(land).over(&around)).minus(&tip);
        let x = Wide::whole(0).minus(&radius.by(&tip.sin_turns()));
        let (ex, ey) = (radius.by(&end.sin_turns()), radius.by(&end.cos_turns()));
        let c = turns(cutter);
        let down = ex.minus(&x).by(&c.cos_turns()).over(&c.sin_turns());
        let y = ey.minus(&down);
        let what = format!("{wheel:?} {cutter:?} {land}");
        let size = radius.magnitude();
        let depth = radius.by(&tip.cos_turns()).minus(&y);
        hold(&what, gap.depth, &depth, size, 40.0);
        hold(&what, gap.from_top, &radius.minus(&y), size, 40.0);
        hold(&what, gap.offset, &Wide::whole(0).minus(&x), size, 8.0);
        let root = x.by(&x).plus(&y.by(&y)).sqrt().by(&Wide::whole(2));
        hold(&what, gap.root, &root, 2.0 * size, 80.0);
        let tooth = c.minus(&Wide::of(part(1, teeth))).by(&Wide::whole(360));
        hold(&what, gap.tooth, &tooth, 90.0, 8.0);
        let steep = Wide::of(part(1, 4)).minus(&c).plus(&end).by(&Wide::whole(360));
        hold(&what, gap.back, &steep, 90.0, 8.0);
        // The other two questions, of depths that are whole micrometres.
        let um = (gap.depth.value * 1000.0).floor();
        let Some(depth) = handturn::number::float::nearest(um / 1000.0, 1000) else { continue };
        if depth.is_zero() {
            continue;
        }
        let depth = Length::from_mm(depth);
        let again = cut(&wheel, Gap::Depth { cutter, depth }).expect("it is less deep");
        // The land: where the back's line through the point leaves the circle.
        let y = radius.by(&tip.cos_turns()).minus(&Wide::of(depth.mm()));
        let (sx, sy) = (c.sin_turns(), c.cos_turns());
        let along = x.by(&sx).plus(&y.by(&sy));
        let inside = radius.by(&radius).minus(&x.by(&x)).minus(&y.by(&y));
        let far = along.by(&along).plus(&inside).sqrt().minus(&along);
        let leaves = turned(&x.plus(&far.by(&sx)), &y.plus(&far.by(&sy)));
        let land = Wide::of(part(1, teeth)).minus(&tip).minus(&leaves).by(&around);
        hold(&what, again.land, &land, size, 80.0);
        let Ok(wanted) = cut(&wheel, Gap::Cutter { depth, land: Length::from_mm(part(0, 1)) })
        else {
            continue;
        };
        let end = Wide::of(part(1, teeth)).minus(&tip);
        let (ex, ey) = (radius.by(&end.sin_turns()), radius.by(&end.cos_turns()));
        let cutter = turned(&ex.minus(&x), &ey.minus(&y)).by(&Wide::whole(360));
        let small = depth.mm().checked_mul(part(1, 1)).map_or(1.0, handturn::number::float::of);
        hold(&what, wanted.cutter, &cutter, 90.0 * size / small, 80.0);
    }
    assert!(held > 250, "only {held}");
}

#[test]
fn flats_by_their_triangles() {
    for k in 0..400_i64 {
        let sides = u32::try_from(1 + k % 40).expect("few");
        let across = part(300 + k * 7919 % 9973, 97);
        let stock = across.checked_mul(part(1010 + k % 500, 1000)).expect("small");
        let ask = Flats {
            sides,
            across: Length::from_mm(across),
            stock: Some(Length::from_mm(stock)),
            cutter: None,
        };
        let found = flats(&ask).expect("in bounds");
        let cut = found.cut.expect("stock was given");
        let what = format!("{ask:?}");
        let radius = Wide::of(stock).over(&Wide::whole(2));
        let size = radius.magnitude();
        let flat = Wide::of(found.to_flat.mm());
        let half = radius.by(&radius).minus(&flat.by(&flat)).sqrt();
        hold(&what, cut.first_width, &half.by(&Wide::whole(2)), size, 40.0);
        let part_half = Wide::of(part(1, 2 * i64::from(sides)));
        if let Some(sharp) = found.sharp {
            let corner = flat.over(&part_half.cos_turns());
            hold(&what, sharp.stock, &corner.by(&Wide::whole(2)), size, 40.0);
            let side = corner.by(&corner).minus(&flat.by(&flat)).sqrt().by(&Wide::whole(2));
            hold(&what, sharp.width, &side, size, 40.0);
            let depth = corner.minus(&flat);
            hold(&what, sharp.depth, &depth, depth.magnitude(), 40.0);
            if let Some(to_corner) = sharp.to_corner {
                hold(&what, to_corner, &flat.plus(&corner), 2.0 * size, 40.0);
            }
            let reached = corner.minus(&radius).float() <= 0.0;
            assert_eq!(cut.corners == Corners::Sharp, reached, "{what}");
            if reached {
                hold(&what, cut.width, &side, size, 40.0);
            }
        }
        if let Corners::Round(arc) = cut.corners {
            let between = part_half.minus(&turned(&half, &flat)).by(&Wide::whole(2));
            let truth = between.by(&Wide::pi()).by(&Wide::of(stock));
            hold(&what, arc, &truth, size, 60.0);
        }
    }
}

#[test]
fn splines_by_their_corners() {
    let mut kinds = [0; 3];
    for k in 0..600_i64 {
        let keys = 3 + k % 18;
        let minor = part(500 + k * 7919 % 4973, 97);
        let major = minor.checked_mul(part(1050 + k * 31 % 350, 1000)).expect("small");
        let key = minor.checked_mul(part(150 + k * 13 % 200, 100 * keys)).expect("small");
        let cutter = minor.checked_mul(part(10 + k * 17 % 200, 100 * keys)).expect("small");
        let [a, b, c, d] = [major, minor, key, cutter].map(Length::from_mm);
        let keys_u = u32::try_from(keys).expect("few");
        let ask = Spline { keys: keys_u, major: a, minor: b, key: c, cutter: d };
        let Ok(cuts) = spline::cut(&ask) else { continue };
        let what = format!("{ask:?}");
        let halved = |x: Fraction| Wide::of(x).over(&Wide::whole(2));
        let (top, low, w) = (halved(major), halved(minor), halved(key));
        let foot = low.by(&low).minus(&w.by(&w)).sqrt();
        let size = top.magnitude();
        hold(&what, cuts.depth, &top.minus(&foot), size, 16.0);
        let edge = top.by(&top).minus(&w.by(&w)).sqrt();
        hold(&what, cuts.flank, &edge.minus(&foot), size, 16.0);
        // Twice the distance of a point from the middle line of the space.
        let h = Wide::of(part(1, 2 * keys));
        let wide = |x: &Wide, y: &Wide| {
            y.by(&h.sin_turns()).minus(&x.by(&h.cos_turns())).by(&Wide::whole(2))
        };
        hold(&what, cuts.space, &wide(&w, &foot), size, 40.0);
        if let Some(widest) = cuts.widest {
            // With it, the far corner lies on the next key's flank.
            let p = Wide::of(part(1, keys));
            let x = w.plus(&Wide::of_float(widest.value));
            let off = x.by(&p.cos_turns()).minus(&foot.by(&p.sin_turns())).plus(&w);
            assert!(off.magnitude() <= 2.0 * widest.bound, "{what}");
        }
        let far = w.plus(&Wide::of(cutter));
        let leaves = top.by(&top).minus(&foot.by(&foot)).sqrt();
        let far = if far.minus(&leaves).float() < 0.0 { far } else { leaves };
        let up = top.by(&top).minus(&far.by(&far)).sqrt();
        let raised = foot.over(&h.cos_turns()).minus(&low);
        match cuts.between {
            Between::Ridge { outside, foot: at_foot, .. } => {
                kinds[0] += 1;
                hold(&what, outside, &wide(&far, &up), size, 200.0);
                hold(&what, at_foot, &wide(&far, &foot), size, 200.0);
            }
            Between::Loose { outside, proud } => {
                kinds[1] += 1;
                hold(&what, outside, &wide(&far, &up), size, 200.0);
                hold(&what, proud, &raised, size, 40.0);
            }
            Between::Floor { proud } => {
                kinds[2] += 1;
                hold(&what, proud, &raised, size, 40.0);
            }
        }
    }
    assert!(kinds.iter().all(|n| *n > 20), "{kinds:?}");
}

/// The addendum factor by its equations once more: Newton's steps on the roll.
#[test]
fn clock_wheels() {
    for leaves in [6_u32, 7, 8, 9, 10, 11, 12, 15, 16, 20, 40, 100] {
        for ratio in [1_u32, 2, 3, 5, 8, 12, 20] {
            for more in [0, 1, 5] {
                let wheel = leaves * ratio + more;
                let module = Length::from_mm(Fraction::ONE);
                let ask = Clock { wheel, leaves, module, rule: Rule::Standard };
                let Ok(found) = sizes(&ask) else { continue };
                let (z, p) = (i64::from(wheel), i64::from(leaves));
                let k = Wide::of(part(2 * z + p, p));
                let turn = Wide::of(part(p, 2 * z));
                let quarter = Wide::of(part(1, 4 * z));
                // From a float's roll, by halving in floats.
                let (mut low, mut high) = (0.0_f64, std::f64::consts::PI);
                let kf = k.float();
                for _ in 0..100 {
                    let t = (low + high) / 2.0;
                    let aside = t / (kf - 1.0) - t.sin().atan2(kf - t.cos());
                    if aside < std::f64::consts::PI / 2.0 / f64::from(wheel) {
                        low = t;
                    } else {
                        high = t;
                    }
                }
                let mut roll = Wide::of_float(low / std::f64::consts::TAU);
                for _ in 0..4 {
                    let (s, c) = (roll.sin_turns(), roll.cos_turns());
                    let aside = roll.by(&turn).minus(&turned(&s, &k.minus(&c)));
                    let square =
                        k.by(&k).plus(&Wide::whole(1)).minus(&k.by(&c).by(&Wide::whole(2)));
                    let slope = turn.minus(&k.by(&c).minus(&Wide::whole(1)).over(&square));
                    roll = roll.plus(&quarter.minus(&aside).over(&slope));
                }
                let c = roll.cos_turns();
                let square = k.by(&k).plus(&Wide::whole(1)).minus(&k.by(&c).by(&Wide::whole(2)));
                let height = square.sqrt().plus(&Wide::whole(1)).minus(&k);
                let truth = height.by(&Wide::of(part(p, 4)));
                let what = format!("{wheel} and {leaves}");
                hold(&what, found.factor, &truth, truth.magnitude(), 3000.0);
                let tip = truth.by(&Wide::of(part(19, 10))).plus(&Wide::whole(z));
                hold(&what, found.wheel.outside, &tip, tip.magnitude(), 300.0);
            }
        }
    }
}

#[test]
fn cams() {
    for k in 0..300_i64 {
        let rise = part(100 + k * 7919 % 997, 100);
        let over = Angle::from_turns(part(1 + k % 30, 31));
        let lead = rise.checked_div(over.turns()).expect("small");
        let geared = lead.checked_mul(part(1000 + k * k % 9000, 1000)).expect("small");
        let ask = Lobe {
            rise: Length::from_mm(rise),
            over,
            geared: Length::from_mm(geared),
            face: Length::from_mm(part(8, 1)),
            raised: Some(degrees(k % 90, 1)),
        };
        let set = lobe(&ask).expect("in bounds");
        let what = format!("{ask:?}");
        let sine = Wide::of(lead).over(&Wide::of(geared));
        let cosine = Wide::whole(1).minus(&sine.by(&sine)).sqrt();
        let tilt = turned(&sine, &cosine).by(&Wide::whole(360));
        hold(&what, set.tilt, &tilt, 90.0, 16.0);
        let travel = Wide::of(geared).by(&turns(over));
        let flute = travel.by(&cosine).plus(&Wide::whole(8));
        hold(&what, set.flute, &flute, 8.0 + travel.magnitude(), 16.0);
        let gives = travel.by(&turns(degrees(k % 90, 1)).sin_turns());
        let (came, off) = set.gives.expect("an angle was given");
        hold(&what, came, &gives, travel.magnitude(), 8.0);
        hold(&what, off, &gives.minus(&Wide::of(rise)), 2.0 * travel.magnitude(), 16.0);
    }
}

/// The cusp between two steps, from where two circles cross.
#[test]
fn cusps() {
    let mut held = 0;
    for k in 0..300_i64 {
        let radius = part(1000 + k * 7919 % 9973, 100);
        let rise = radius.checked_mul(part(1 + k % 60, 100)).expect("small");
        let mill = part(300 + k * 31 % 3000, 100);
        let over = Angle::from_turns(part(1 + k % 8, 8));
        let count = 20 + k % 300;
        let ask = Steps {
            rise: Length::from_mm(rise),
            over,
            steps: u32::try_from(count).expect("few"),
            radius: Length::from_mm(radius),
            mill: Length::from_mm(mill),
        };
        let Ok(found) = steps(&ask) else { continue };
        held += 1;
        let halved = |x: &Wide| x.over(&Wide::whole(2));
        let c = halved(&Wide::of(mill));
        let outer = Wide::of(radius).plus(&c);
        let inner = outer.minus(&Wide::of(rise).over(&Wide::whole(count)));
        let step = turns(over).over(&Wide::whole(count));
        // The lower place upright, the higher one a step on, the middle in between.
        let (bx, by) = (outer.by(&step.sin_turns()), outer.by(&step.cos_turns()));
        let middle = halved(&inner.plus(&outer));
        let half = halved(&step);
        let (mx, my) = (middle.by(&half.sin_turns()), middle.by(&half.cos_turns()));
        let (dx, dy) = (bx.clone(), by.minus(&inner));
        let square = dx.by(&dx).plus(&dy.by(&dy));
        let high = c.by(&c).minus(&square.over(&Wide::whole(4))).sqrt();
        let apart = square.sqrt();
        let x = halved(&bx).plus(&high.by(&dy).over(&apart));
        let y = halved(&by.plus(&inner)).minus(&high.by(&dx).over(&apart));
        let (ox, oy) = (x.minus(&mx), y.minus(&my));
        let truth = c.minus(&ox.by(&ox).plus(&oy.by(&oy)).sqrt());
        hold(&format!("{ask:?}"), found.cusp, &truth, c.magnitude(), 400.0);
    }
    assert!(held > 150, "only {held}");
}

#[test]
fn keyways() {
    for k in 0..300_i64 {
        let shaft = part(500 + k * 7919 % 9973, 97);
        let width = shaft.checked_mul(part(1 + k % 80, 100)).expect("small");
        let side = shaft.checked_mul(part(1 + k % 13, 100)).expect("small");
        let [a, b, c] = [shaft, width, side].map(Length::from_mm);
        let ask = Keyway { shaft: a, width: b, side: c };
        let cut = keyway(&ask).expect("in bounds");
        let halved = |x: Fraction| Wide::of(x).over(&Wide::whole(2));
        let (top, half) = (halved(shaft), halved(width));
        let arc = top.minus(&top.by(&top).minus(&half.by(&half)).sqrt());
        let what = format!("{ask:?}");
        hold(&what, cut.arc, &arc, arc.magnitude(), 16.0);
        let deep = arc.plus(&Wide::of(side));
        hold(&what, cut.from_top, &deep, deep.magnitude(), 16.0);
        hold(&what, cut.over, &Wide::of(shaft).minus(&deep), 2.0 * top.magnitude(), 8.0);
    }
}
