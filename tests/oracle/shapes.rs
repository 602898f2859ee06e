//! Shapes by cutting them: what a cutter takes away is a set of points, a blank with the
//! cutter's sets turned round it is what is left, and widths, arcs and depths are measured
//! on that by halving, with no formula of the core's.
use handturn::gear::cam::{Steps, steps};
use handturn::gear::clock::{Clock, Rule, flank};
use handturn::gear::flats::{Corners, Flats, flats};
use handturn::gear::ratchet::{Gap, Ratchet, cut, face_teeth};
use handturn::gear::spline::{self, Between, Spline};
use handturn::measure::{Angle, Length};
use handturn::number::{Fraction, float};
use rand::prelude::*;
use rand_chacha::ChaCha8Rng;
use std::f64::consts::{PI, TAU};

fn mm(value: f64) -> (Length, f64) {
    let fraction = Fraction::new((value * 1e4).round() as i64, 10_000).expect("small");
    (Length::from_mm(fraction), float::of(fraction))
}

fn degrees(value: f64) -> (Angle, f64) {
    let fraction = Fraction::new((value * 100.0).round() as i64, 100).expect("small");
    (Angle::from_degrees(fraction).expect("small"), float::of(fraction).to_radians())
}

/// Where `holds` changes between `from` and `to`, its value at `from` being kept.
fn edge(from: f64, to: f64, holds: impl Fn(f64) -> bool) -> f64 {
    let start = holds(from);
    let (mut near, mut far) = (from, to);
    for _ in 0..80 {
        let middle = (near + far) / 2.0;
        if holds(middle) == start {
            near = middle;
        } else {
            far = middle;
        }
    }
    near
}

/// A point at radius `r`, `angle` to the right of the upright.
fn polar(r: f64, angle: f64) -> (f64, f64) {
    (r * angle.sin(), r * angle.cos())
}

/// `point` with the blank turned back by `angle`.
fn turned(point: (f64, f64), angle: f64) -> (f64, f64) {
    let (s, c) = angle.sin_cos();
    (point.0 * c - point.1 * s, point.0 * s + point.1 * c)
}

#[test]
fn a_ratchet_by_its_cutter() {
    let mut rng = ChaCha8Rng::seed_from_u64(0x0072_6174_6368);
    let mut compared = 0;
    for _ in 0..6000 {
        let teeth = rng.random_range(4..=120_u32);
        let part = TAU / f64::from(teeth);
        let (outside, diameter) = mm(rng.random_range(5.0..200.0));
        let (undercut, _) = degrees(rng.random_range(0.0..25.0));
        let least = part.to_degrees() + 3.0;
        let (cutter, bevel) = degrees(rng.random_range(least.min(88.0)..89.0));
        let (land, arc) = mm(rng.random_range(0.0..0.4) * part * diameter / 2.0);
        let wheel = Ratchet { teeth, outside, undercut };
        let Ok(gap) = cut(&wheel, Gap::Land { cutter, land }) else { continue };
        compared += 1;
        let radius = diameter / 2.0;
        // Set as told: the flat side beside the centre line, the point so deep from the top.
        let (side, point) = (-gap.offset.value, radius - gap.from_top.value);
        let cuts = |(x, y): (f64, f64)| x > side && (y - point) * bevel.tan() > x - side;
        let stands = |r: f64, angle: f64| {
            let near = ((angle - (side / radius).asin()) / part).round() as i64;
            (near - 2..=near + 2).all(|k| !cuts(turned(polar(r, angle), part * k as f64)))
        };
        // Round the outside: from inside the gap to its two ends.
        let rim = radius * (1.0 - 1e-13);
        let inside = -(side / radius).asin().abs() + part * 1e-6;
        assert!(!stands(rim, inside), "{wheel:?} {gap:?}");
        let tip = edge(inside, inside - arc / diameter, |angle| stands(rim, angle));
        let end = edge(inside, tip + part - arc / diameter, |angle| stands(rim, angle));
        let left = (part - (end - tip)) * radius;
        assert!((left - arc).abs() < 1e-6 * radius, "{wheel:?} {gap:?}: {left} for {arc}");
        assert!((gap.land.value - arc).abs() < 1e-9 * radius);
        // The lowest point that is cut, by looking along the flat side from the tip.
        let top = (radius * radius - side * side).sqrt();
        let deep = edge(top, 0.0, |y| cuts((side + 1e-9 * radius, y)));
        assert!((top - deep - gap.depth.value).abs() < 1e-7 * radius, "{wheel:?} {gap:?}");
        assert!((2.0 * deep.hypot(side) - gap.root.value).abs() < 1e-6 * radius);
        if arc < part * radius * 1e-2 {
            continue;
        }
        // The back falls from the rim as told: two of its points, against the tangent.
        let inner = radius - 1e-4 * gap.depth.value;
        let at = |r: f64| {
            let edge = edge(inside.max(end - part * 0.2), end + arc / diameter, |a| stands(r, a));
            polar(r, edge)
        };
        let (one, two) = (at(radius - 2e-4 * gap.depth.value), at(inner));
        let falls = (two.0 - one.0).atan2(two.1 - one.1);
        let steep = (PI / 2.0 + end - falls).to_degrees();
        assert!((steep - gap.back.value).abs() < 1e-3, "{wheel:?} {gap:?}: {steep}");
        // Face and back of one tooth: the back's direction against the next face's.
        let between = (falls - part).to_degrees();
        assert!((between - gap.tooth.value).abs() < 1e-3, "{wheel:?} {gap:?}: {between}");
    }
    assert!(compared > 3000, "{compared}");
}

/// Teeth on a face: the bevelled side of the cutter, drawn level along the table, meets the
/// face of the disk along the next tooth's radius.
#[test]
fn teeth_on_a_face_by_their_planes() {
    for teeth in (5..400_u32).step_by(3) {
        for bevel in [20, 45, 60, 75, 85] {
            let cutter = Angle::from_degrees(Fraction::whole(bevel)).expect("small");
            let Ok(raised) = face_teeth(teeth, cutter) else { continue };
            let (a, c) = (raised.value.to_radians(), (bevel as f64).to_radians());
            // Along the table, across it, up: the spindle, the radius that is cut, the bevel's own square.
            let spindle = [a.cos(), 0.0, a.sin()];
            let radius = [-a.sin(), 0.0, a.cos()];
            let bevel = [0.0, c.cos(), -c.sin()];
            let cross = |u: [f64; 3], v: [f64; 3]| {
                [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]]
            };
            let dot = |u: [f64; 3], v: [f64; 3]| u.iter().zip(v).map(|(u, v)| u * v).sum::<f64>();
            let meets = cross(bevel, spindle);
            let between = (dot(meets, radius) / dot(meets, meets).sqrt()).abs().acos();
            assert!((between - TAU / f64::from(teeth)).abs() < 1e-9, "{teeth} {c}: {between}");
        }
    }
}

#[test]
fn flats_by_cutting_them() {
    let mut rng = ChaCha8Rng::seed_from_u64(0x0066_6c61_7473);
    let (mut sharp, mut blunt) = (0, 0);
    for _ in 0..3000 {
        let sides = rng.random_range(1..=24_u32);
        let (across, a) = mm(rng.random_range(3.0..100.0));
        let (stock, diameter) = mm(a * rng.random_range(1.01..1.6));
        let ask = Flats { sides, across, stock: Some(stock), cutter: None };
        let found = flats(&ask).expect("in bounds");
        let got = found.cut.expect("stock was given");
        let radius = diameter / 2.0;
        let part = TAU / f64::from(sides);
        // Cut to the depth told, from the round.
        let height = radius - float::of(got.depth.mm());
        let stands = |(x, y): (f64, f64), cuts: u32| {
            x.hypot(y) <= radius
                && (0..cuts).all(|k| turned((x, y), part * f64::from(k)).1 <= height)
        };
        let below = height - 1e-12 * radius;
        let width = |cuts: u32| 2.0 * edge(0.0, radius, |x| stands((x, below), cuts));
        assert!((width(1) - got.first_width.value).abs() < 1e-6 * radius, "{ask:?}");
        assert!((width(sides) - got.width.value).abs() < 1e-6 * radius, "{ask:?} {got:?}");
        // Over the first flat: down to the round opposite.
        let low = edge(0.0, -2.0 * radius, |y| stands((0.0, y), 1));
        let low =
            if height < 0.0 { edge(height, -2.0 * radius, |y| stands((0.0, y), 1)) } else { low };
        assert!((height - low - float::of(got.over_first.mm())).abs() < 1e-9 * radius);
        // From the middle of a corner both ways along the round, if it is there still.
        let rim = radius * (1.0 - 1e-14);
        let corner = part / 2.0;
        match got.corners {
            Corners::Round(arc) => {
                blunt += 1;
                assert!(stands(polar(rim, corner), sides), "{ask:?}");
                let end = edge(corner, part, |angle| stands(polar(rim, angle), sides));
                let left = 2.0 * (end - corner) * radius;
                assert!((left - arc.value).abs() < 1e-6 * radius, "{ask:?}: {left} {arc:?}");
            }
            Corners::Sharp => {
                sharp += 1;
                assert!(!stands(polar(radius * (1.0 + 1e-12), corner), sides));
                let told = found.sharp.expect("corners").stock.value / 2.0;
                let end = edge(0.0, 2.0 * radius, |r| stands(polar(r, corner), sides));
                assert!((end - told).abs() < 1e-9 * radius, "{ask:?}: {end} {told}");
            }
        }
        if let Some(to_corner) = found.sharp.and_then(|s| s.to_corner) {
            // Far enough out of the round to have corners.
            let free =
                |y: f64| (0..sides).all(|k| turned((0.0, y), part * f64::from(k)).1 <= height);
            let opposite = edge(0.0, -100.0 * radius, free);
            assert!((height - opposite - to_corner.value).abs() < 1e-9 * radius, "{ask:?}");
        }
    }
    assert!(sharp > 300 && blunt > 300, "{sharp} {blunt}");
}

#[test]
fn splines_by_their_cutter() {
    let mut rng = ChaCha8Rng::seed_from_u64(0x7370_6c69_6e65);
    let mut kinds = [0_u32; 3];
    for _ in 0..6000 {
        let keys = rng.random_range(3..=24_u32);
        let part = TAU / f64::from(keys);
        let (minor, d) = mm(rng.random_range(8.0..100.0));
        let (major, top) = mm(d * rng.random_range(1.05..1.5));
        let (key, w) = mm(d * (part / 2.0).sin() * rng.random_range(0.2..0.8));
        let (cutter, b) = mm(d * part * rng.random_range(0.02..0.5));
        let ask = Spline { keys, major, minor, key, cutter };
        let radius = top / 2.0;
        let Ok(cuts) = spline::cut(&ask) else {
            // Refused for its width: at some height it would nick the next key.
            let floor = ((d * d - w * w).sqrt()) / 2.0;
            let corner = turned((w / 2.0 + b, floor), part);
            assert!(corner.0 > -w / 2.0 - 1e-9, "{ask:?}");
            continue;
        };
        // Both rounds of cuts, set as told.
        let floor = radius - cuts.depth.value;
        let (near, far) =
            (float::of(cuts.offset.mm()) - b / 2.0, float::of(cuts.offset.mm()) + b / 2.0);
        let cut_by =
            |(x, y): (f64, f64)| y > floor && ((x > near && x < far) || (-x > near && -x < far));
        let stands = |(x, y): (f64, f64)| {
            let k0 = (x.atan2(y) / part).round() as i64;
            (k0 - 2..=k0 + 2).all(|k| !cut_by(turned((x, y), part * k as f64)))
        };
        // A key keeps its width at every height, and the floor just meets the minor circle.
        for level in [0.02, 0.5, 0.98] {
            let y = floor + (radius - floor) * level;
            if w / 2.0 > (radius * radius - y * y).max(0.0).sqrt() {
                continue;
            }
            let side = edge(0.0, (near + far) / 2.0, |x| stands((x, y)));
            assert!((2.0 * side - w).abs() < 1e-9 * radius, "{ask:?}: {side} at {level}");
        }
        let lowest = (0..=200)
            .map(|k| (near + (far - near) * f64::from(k) / 200.0).hypot(floor))
            .fold(f64::INFINITY, f64::min);
        assert!((lowest - d / 2.0).abs() < 1e-9 * radius, "{ask:?}: {lowest}");
        let flank = (radius * radius - w * w / 4.0).sqrt() - floor;
        assert!((flank - cuts.flank.value).abs() < 1e-9 * radius);
        // The middle of the space, from outside in.
        let middle = |r: f64| stands(polar(r, part / 2.0));
        let rim = radius * (1.0 - 1e-13);
        let at_rim = |angle: f64| stands(polar(rim, angle));
        let outside_stands = || {
            let end = edge(part / 2.0, (near / radius).asin() + 1e-9, at_rim);
            2.0 * radius * (part / 2.0 - end).sin()
        };
        let ground = |from: f64| edge(from, radius, middle) - d / 2.0;
        match cuts.between {
            Between::Ridge { outside, .. } => {
                kinds[0] += 1;
                let through =
                    (0..=200).all(|k| middle(d / 2.0 + (rim - d / 2.0) * f64::from(k) / 200.0));
                assert!(through, "{ask:?}: it does not stand");
                assert!((outside_stands() - outside.value).abs() < 1e-6 * radius, "{ask:?}");
            }
            Between::Loose { outside, proud } => {
                kinds[1] += 1;
                assert!(middle(rim), "{ask:?}");
                assert!((outside_stands() - outside.value).abs() < 1e-6 * radius, "{ask:?}");
                // Just above the ground nothing stands: the piece is loose.
                let above = d / 2.0 + proud.value;
                assert!(middle(above - 1e-9 * radius) && !middle(above + 1e-9 * radius), "{ask:?}");
            }
            Between::Floor { proud } => {
                kinds[2] += 1;
                assert!(!middle(rim), "{ask:?}");
                let found = ground(d / 2.0 * 0.99);
                assert!((found - proud.value).abs() < 1e-9 * radius, "{ask:?}: {found}");
            }
        }
    }
    assert!(kinds.iter().all(|n| *n > 60), "{kinds:?}");
}

/// A wheel's flank pushes a radial leaf without any change of speed: each of its points
/// meets the leaf on the circle over the pinion's radius, and there the leaf has turned
/// by as much more than the wheel as the wheel has more teeth.
#[test]
fn a_clock_wheels_flank_drives_a_radial_leaf_evenly() {
    let mut pairs = 0;
    for leaves in [6_u32, 7, 8, 10, 12, 16, 20] {
        for wheel in [30_u32, 48, 64, 80, 96, 127, 144, 223] {
            let ask = Clock {
                wheel,
                leaves,
                module: Length::from_mm(Fraction::ONE),
                rule: Rule::Standard,
            };
            let Ok(points) = flank(&ask) else { continue };
            pairs += 1;
            let (big, small) = (f64::from(wheel) / 2.0, f64::from(leaves) / 2.0);
            let half_tooth = PI / 2.0 / f64::from(wheel);
            // The foot itself lies on the pitch point, where the halving finds no side.
            for (height, half) in points.into_iter().skip(1) {
                let r = big + height;
                let own = (half / r).asin();
                // On the circle over the pinion's radius: at what angle past the line of
                // centres does a point at radius r lie on it? By halving.
                let centre = big + small / 2.0;
                let beyond = |angle: f64| {
                    let (x, y) = polar(r, angle);
                    x.hypot(y - centre) > small / 2.0
                };
                let at = edge(PI / 4.0, 0.0, beyond);
                // It stood nearer to the tooth's middle than the foot did at the pitch point.
                let wheel_turn = at + half_tooth - own;
                let (x, y) = polar(r, at);
                let leaf = x.atan2(big + small - y);
                let even = wheel_turn * f64::from(wheel) / f64::from(leaves);
                assert!((leaf - even).abs() < 1e-7, "{ask:?} at {height}: {leaf} {even}");
            }
        }
    }
    assert!(pairs > 50, "{pairs}");
}

/// Cusps by the metal that a mill leaves: the point of it nearest to the mill's place in
/// the middle, looked for all along.
#[test]
fn cusps_by_what_is_left() {
    let mut rng = ChaCha8Rng::seed_from_u64(0x0063_7573_7073);
    let mut compared = 0;
    for _ in 0..400 {
        let (radius, r) = mm(rng.random_range(10.0..100.0));
        let (rise, up) = mm(r * rng.random_range(0.01..0.6));
        let (mill, size) = mm(rng.random_range(3.0..40.0));
        let count = rng.random_range(12..400_u32);
        let over = Angle::from_turns(Fraction::new(rng.random_range(1..=4), 4).expect("small"));
        let ask = Steps { rise, over, steps: count, radius, mill };
        let Ok(found) = steps(&ask) else { continue };
        compared += 1;
        let c = size / 2.0;
        let turn = float::of(over.turns()) * TAU / f64::from(count);
        let (low, high) = (r - up / f64::from(count) + c, r + c);
        let places = [polar(low, 0.0), polar(high, turn)];
        let middle = polar((low + high) / 2.0, turn / 2.0);
        let stands = |p: (f64, f64)| places.iter().all(|q| (p.0 - q.0).hypot(p.1 - q.1) >= c);
        // Along each ray from the middle place inwards, where metal begins.
        let apart = |angle: f64| {
            edge(0.0, 2.0 * c, |at| {
                let p = polar(at, angle);
                stands((middle.0 - p.0, middle.1 - p.1))
            })
        };
        let mut best = (f64::INFINITY, turn / 2.0);
        let mut wide = 0.5;
        for _ in 0..40 {
            let centre = best.1;
            for k in -20..=20 {
                let angle = centre + wide * f64::from(k) / 20.0;
                let at = apart(angle);
                if at < best.0 {
                    best = (at, angle);
                }
            }
            wide *= 0.5;
        }
        let cusp = c - best.0;
        assert!((cusp - found.cusp.value).abs() < 1e-7 * c, "{ask:?}: {cusp} {found:?}");
    }
    assert!(compared > 200, "{compared}");
}
