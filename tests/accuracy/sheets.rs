//! Bent sheet, rivets, formers and chains of lengths in wide numbers.
use crate::bends::kept_truth;
use crate::part;
use crate::shapes::{degrees, hold};
use crate::short::{half, mm, ratio, whole, wide};
use crate::wholes::{Truth, hold_all, own};
use crate::wide::Wide;
use handturn::bench::bend::{Bends, Corner, Sheet, fold};
use handturn::bench::chain::{Link, sum};
use handturn::bench::fit::Limits;
use handturn::bench::former::{Bend, Section};
use handturn::bench::joggle::{Joggle, step};
use handturn::bench::rivet::{Head, Rivet};
use handturn::bench::wire::Band;
use std::f64::consts::TAU;

fn sheet(k: i64) -> Sheet {
    Sheet {
        thickness: mm(k * 7_919 % 2_999 + 100, 1_000),
        radius: mm(k * 31 % 4_001, 1_000),
        neutral: part(k % 51, 100),
    }
}

/// Radius of the layer that keeps its length.
fn layer(sheet: &Sheet) -> Wide {
    wide(sheet.radius).plus(&Wide::of(sheet.neutral).by(&wide(sheet.thickness)))
}

#[test]
fn strips_with_bends() {
    for k in 1..=300_i64 {
        let sheet = sheet(k);
        let corner = [Corner::Outside, Corner::Inside, Corner::Flat][k as usize % 3];
        let legs = [mm(k + 100, 1), mm(k * 3 + 170, 2), mm(k * 7 % 91 + 100, 1)];
        let angles = [degrees(k * 104_729 % 119_000 + 1_000, 1_000), degrees(k % 90 + 30, 1)];
        let found =
            fold(&Bends { sheet, legs: &legs, angles: &angles, corner }).expect("long legs");
        let what = format!("{sheet:?} {legs:?} {angles:?} {corner:?}");
        let outside = wide(sheet.radius).plus(&wide(sheet.thickness));
        let lost = match corner {
            Corner::Outside => outside.clone(),
            Corner::Inside => wide(sheet.radius),
            Corner::Flat => whole(0),
        };
        let (mut at, mut before, mut turned) = (whole(0), whole(0), whole(0));
        for (line, (leg, angle)) in found.lines.iter().zip(legs.iter().zip(&angles)) {
            let turns = Wide::of(angle.turns());
            let tangent = half(&turns).sin_turns().over(&half(&turns).cos_turns());
            let radians = turns.by(&Wide::pi()).by(&whole(2));
            let after = lost.by(&tangent);
            at = at.plus(&wide(*leg)).minus(&before).minus(&after);
            let uses = radians.by(&layer(&sheet));
            let setback = outside.by(&tangent);
            let size = wide(*leg).magnitude() + at.magnitude() + 2.0 * setback.magnitude();
            hold(&what, line.begins, &at, size, 24.0);
            hold(&what, line.middle, &at.plus(&half(&uses)), size, 32.0);
            hold(&what, line.allowance, &uses, uses.magnitude(), 12.0);
            hold(&what, line.setback, &setback, setback.magnitude(), 24.0);
            let deduction = setback.by(&whole(2)).minus(&uses);
            hold(&what, line.deduction, &deduction, 2.0 * size, 24.0);
            at = at.plus(&uses);
            hold(&what, line.ends, &at, size + uses.magnitude(), 32.0);
            (before, turned) = (after, turned.plus(&radians));
        }
        assert_eq!(found.lines.len(), 2);
        let last = wide(legs[2]).minus(&before);
        let flat = at.plus(&last);
        hold(&what, found.flat, &flat, flat.magnitude() + before.magnitude(), 40.0);
        let band = turned.by(&wide(sheet.thickness)).by(&ratio(5, 100));
        hold(&what, found.band, &band, band.magnitude(), 16.0);
    }
}

#[test]
fn joggles() {
    for k in 1..=300_i64 {
        let sheet = sheet(k);
        let middle = wide(sheet.radius).plus(&half(&wide(sheet.thickness)));
        let angle = (k % 4 != 0).then(|| degrees(k * 104_729 % 88_000 + 2_000, 1_000));
        // At 90° the bends step twice their radius.
        let offset = if angle.is_some() {
            mm(k % 7 + 12, 1)
        } else {
            let most = middle.float() * 2.0;
            mm((most * (k % 90 + 5) as f64 * 10.0) as i64 + 1, 1_000)
        };
        let ask = Joggle { sheet, offset, angle, begins: mm(k % 30, 1), finished: mm(400 + k, 1) };
        let found = step(&ask).expect("it steps");
        let what = format!("{ask:?}");
        let turns = match angle {
            Some(angle) => Wide::of(angle.turns()),
            None => {
                let square = wide(offset).over(&middle.by(&whole(4)).minus(&wide(offset)));
                let tangent = square.sqrt();
                tangent.atan_turns(tangent.float().atan() / TAU).by(&whole(2))
            }
        };
        let (sine, cosine) = (turns.sin_turns(), turns.cos_turns());
        let by_bends = middle.by(&whole(2)).by(&whole(1).minus(&cosine));
        let web = match angle {
            Some(_) => wide(offset).minus(&by_bends).over(&sine),
            None => whole(0),
        };
        let run = middle.by(&whole(2)).by(&sine).plus(&web.by(&cosine));
        let radians = turns.by(&Wide::pi()).by(&whole(2));
        let arc = radians.by(&layer(&sheet));
        let along = arc.by(&whole(2)).plus(&web);
        let taken = along.minus(&run);
        let (begins, finished) = (wide(ask.begins), wide(ask.finished));
        let first = begins.plus(&half(&arc));
        let between = arc.plus(&web);
        let band = radians.by(&whole(2)).by(&wide(sheet.thickness)).by(&ratio(5, 100));
        // What the web is the difference of.
        let steep = wide(offset).plus(&by_bends).over(&sine).magnitude();
        let size = steep + 4.0 * middle.magnitude() + begins.magnitude();
        let strip = size + finished.magnitude();
        hold_all(
            &what,
            &found,
            &[
                own("degrees", turns.by(&whole(360)), 24.0),
                ("web", web, steep, 24.0),
                ("run", run.clone(), size, 32.0),
                ("along", along, size, 32.0),
                ("taken", taken.clone(), 2.0 * size, 40.0),
                own("band", band, 24.0),
                ("first", first.clone(), size, 24.0),
                ("second", first.plus(&between), size, 40.0),
                ("between", between, size, 32.0),
                ("ends", begins.plus(&run), size, 32.0),
                ("blank", finished.plus(&taken), strip, 40.0),
            ],
        );
    }
}

#[test]
fn rivets() {
    for k in 1..=300_i64 {
        let head = [Head::Round, Head::Pan, Head::Countersunk][k as usize % 3];
        let shank = k * 7_919 % 4_999 + 500;
        let hole = shank * (1_000 + k % 100) / 1_000;
        let of = |own: bool, n: i64| own.then(|| mm(n, 1_000));
        let rivet = Rivet {
            diameter: mm(shank, 1_000),
            hole: mm(hole, 1_000),
            grip: mm(shank * (k % 40 + 8), 8_000),
            head,
            wide: of(k % 5 < 3, hole * (105 + k % 70) / 100 + 1),
            high: of(k % 7 < 3, shank * (30 + k % 50) / 100),
            angle: degrees(90 + k % 50, 1),
        };
        let Ok(found) = rivet.filled() else {
            // A wide head in thin work.
            assert_eq!(head, Head::Countersunk, "{rivet:?}");
            continue;
        };
        let (d, hole, grip) = (wide(rivet.diameter), wide(rivet.hole), wide(rivet.grip));
        let across_parts = if head == Head::Countersunk { 35 } else { 32 };
        let across = rivet.wide.map_or(d.by(&ratio(across_parts, 20)), wide);
        let square = |of: &Wide| of.by(of);
        let cone = |one: &Wide, other: &Wide, high: &Wide| {
            // Of two whole cones the difference, where they differ at all.
            let cube = |of: &Wide| of.by(of).by(of);
            let more = one.minus(other);
            high.by(&cube(one).minus(&cube(other)).over(&more)).over(&whole(3))
        };
        let tall = rivet.high.map_or(d.by(&ratio(14, 20)), wide);
        let (high, volume) = match head {
            Head::Round => {
                // π h² (R − h ÷ 3), R the radius of the round; over π ÷ 4.
                let round = square(&half(&across)).plus(&square(&tall)).over(&tall.by(&whole(2)));
                let cap = square(&tall).by(&round.minus(&tall.over(&whole(3)))).by(&whole(4));
                (tall, cap)
            }
            Head::Pan => (tall.clone(), cone(&across, &d, &tall)),
            Head::Countersunk => {
                let turns = half(&Wide::of(rivet.angle.turns()));
                let slope = turns.cos_turns().over(&turns.sin_turns());
                let deep = half(&across.minus(&hole)).by(&slope);
                let sunk = cone(&across, &hole, &deep).minus(&square(&hole).by(&deep));
                (deep, sunk)
            }
        };
        let to_head = volume.over(&square(&d));
        let play = grip.by(&square(&hole).over(&square(&d)).minus(&whole(1)));
        let out = to_head.plus(&play);
        // A cone less the hole in it, and a hole less its shank.
        let stout = across.magnitude() / d.magnitude();
        let sizes = stout * stout * (high.magnitude() + across.magnitude());
        let (grips, size) = (2.0 * grip.magnitude(), sizes + 2.0 * grip.magnitude());
        hold_all(
            &format!("{rivet:?}"),
            &found,
            &[
                ("length", grip.plus(&out), size, 40.0),
                ("out", out, size, 40.0),
                ("play", play, grips, 24.0),
                ("to_head", to_head, sizes, 40.0),
                ("high", high, across.magnitude() + d.magnitude(), 24.0),
                own("wide", across, 2.0),
            ],
        );
    }
}

/// The elastic part u on a former: u = v K(u), by Newton's steps from a float.
fn elastic(section: Section, v: &Wide, near: f64) -> Wide {
    let slope = |u: f64| {
        let at = |u: f64| kept_truth(section, &Wide::of_float(u)).float();
        (at(u + 1e-6) - at(u - 1e-6)) / 2e-6
    };
    let steep = Wide::of_float(1.0 - v.float() * slope(near));
    let mut u = Wide::of_float(near);
    for _ in 0..6 {
        let off = u.minus(&v.by(&kept_truth(section, &u)));
        u = u.minus(&off.over(&steep));
    }
    u
}

#[test]
fn formers_and_what_comes_off_them() {
    let mut held = 0;
    for k in 1..=120_i64 {
        let section = [Section::Round, Section::Strip][k as usize % 2];
        let (thick, inside) = (mm(k * 7_919 % 1_999 + 200, 1_000), mm(k * 31 % 400 + 40, 10));
        let (yields, modulus) = (k * 13 % 1_200 + 300, 100_000 + k * 811);
        let (harder, stiffer) = (yields + 40 + k % 60, modulus + 4_000 + k % 100);
        let band = |least: i64, most: i64| Band { least: least as f64, most: most as f64 };
        let bend = Bend {
            section,
            thick,
            inside,
            yields: band(yields, harder),
            modulus: band(modulus, stiffer),
        };
        let Ok(found) = bend.former(&[]) else { continue };
        held += 1;
        let what = format!("{bend:?}");
        // Twice the yield over modulus and thickness; of the middles, sums of both ends.
        let per = |y: i64, e: i64| ratio(y * 2, e).over(&wide(thick));
        let at = |y: i64, e: i64| {
            let per = per(y, e);
            let v = per.by(&half(&wide(inside).plus(&wide(thick))));
            let (mut low, mut high) = (1e-9, v.float().min(1.0 - 1e-9));
            for _ in 0..60 {
                let u: f64 = (low + high) / 2.0;
                if u < v.float() * kept_truth(section, &Wide::of_float(u)).float() {
                    low = u;
                } else {
                    high = u;
                }
            }
            let u = elastic(section, &v, (low + high) / 2.0);
            (u.by(&whole(2)).over(&per).minus(&wide(thick)), u, v.magnitude() / per.magnitude())
        };
        let (middle, u, size) = at(yields + harder, modulus + stiffer);
        let least = at(harder, modulus);
        let most = at(yields, stiffer);
        let cut_off = if least.0.float() > 0.0 { least.0 } else { whole(0) };
        let size = size + wide(inside).magnitude() + 2.0 * wide(thick).magnitude();
        let v = size / wide(thick).magnitude();
        hold(&what, found.middle, &middle, size, 100.0);
        hold(&what, found.least, &cut_off, size, 100.0);
        hold(&what, found.most, &most.0, size, 100.0);
        hold(&what, found.kept, &kept_truth(section, &u), 1.0, 100.0 * (1.0 + u.float() * v));
        hold(&what, found.elastic, &u, 1.0, 100.0 * (1.0 + u.float() * v));
        for trial in &found.trials {
            assert_eq!(bend.trial(trial.former).expect("in bounds"), *trial);
            let off = |y: i64, e: i64| {
                let before = wide(trial.former).plus(&wide(thick));
                let u = per(y, e).by(&half(&before));
                let kept = kept_truth(section, &u);
                let inside = before.over(&kept).minus(&wide(thick));
                // K falls by 1.7 at most as u grows, and divides.
                let steep = (2.0 + 8.0 * u.float()) / kept.magnitude();
                (inside, before.over(&kept).magnitude() * steep)
            };
            let each = [
                (trial.middle, off(yields + harder, modulus + stiffer)),
                (trial.least, off(yields, stiffer)),
                (trial.most, off(harder, modulus)),
            ];
            for (came, (truth, scale)) in each {
                if let Some(came) = came {
                    hold(&what, came, &truth, scale, 24.0);
                }
            }
        }
    }
    assert!(held > 100, "{held}");
}

#[test]
fn chains() {
    for k in 1..=300_i64 {
        let links: Vec<Link> = (0..k % 8 + 1)
            .map(|n| Link {
                length: mm(k * 7_919 % 997 + n * 31 + 100, 10),
                off: Limits {
                    least: mm(-(k * 17 + n * 5) % 41, 1_000),
                    most: mm((k * 3 + n) % 37, 1_000),
                },
                minus: n > 0 && (k + n) % 3 == 0,
            })
            .collect();
        let found = sum(&links).expect("in bounds");
        let squares = links.iter().fold(whole(0), |squares, link| {
            let width = half(&wide(link.off.most).minus(&wide(link.off.least)));
            squares.plus(&width.by(&width))
        });
        let rss = squares.sqrt();
        let middle = half(&wide(found.worst.least).plus(&wide(found.worst.most)));
        let size = middle.magnitude() + rss.magnitude();
        let truths: [Truth; 3] = [
            own("rss", rss.clone(), 16.0),
            ("likely.0", middle.minus(&rss), size, 16.0),
            ("likely.1", middle.plus(&rss), size, 16.0),
        ];
        hold_all(&format!("{links:?}"), &found, &truths);
    }
}
