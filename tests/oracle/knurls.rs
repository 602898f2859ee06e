//! Knurls by rolling the wheel's tips round the blank, and by the metal in a section of
//! what was rolled: none comes, none goes.
use handturn::bench::knurl::{Fit, Knurl, Lines, Pitch};
use handturn::measure::{Angle, Length};
use handturn::number::Fraction;
use rand::prelude::*;
use rand_chacha::ChaCha8Rng;
use std::f64::consts::PI;

/// A knurl, and from tip to tip of its wheel.
fn ask(rng: &mut ChaCha8Rng) -> (Knurl, f64) {
    let part = |num: i64, den: i64| Fraction::new(num, den).expect("small");
    let many: i64 = rng.random_range(120..1_600);
    let (pitch, apart) = match rng.random_range(0..4) {
        0 => (Pitch::Tips(Length::from_mm(part(many, 1_000))), many as f64 / 1_000.0),
        1 => (Pitch::PerInch(part(many, 10)), 254.0 / many as f64),
        2 => (Pitch::Diametral(part(many + 300, 10)), PI * 254.0 / (many + 300) as f64),
        _ => {
            let teeth = many / 20 + 20;
            let over = Length::from_mm(part(many + 800, 100));
            let apart = PI * (many + 800) as f64 / 100.0 / teeth as f64;
            (Pitch::Wheel(over, teeth as u32), apart)
        }
    };
    let degrees = |n: i64| Angle::from_degrees(Fraction::whole(n)).expect("small");
    let knurl = Knurl {
        pitch,
        angle: degrees(*[0, 30, rng.random_range(1..46)].choose(rng).expect("some")),
        lines: if rng.random_bool(0.5) { Lines::Crossed } else { Lines::OneWay },
        tooth_angle: degrees(*[70, 90].choose(rng).expect("some")),
        stock: Length::from_mm(part(rng.random_range(8_000..40_000), 1_000)),
    };
    (knurl, apart)
}

fn turns(angle: Angle) -> f64 {
    angle.turns().num() as f64 / angle.turns().den() as f64
}

/// How far the tips of a second turn fall from the nearest tip of the first, at most, as
/// parts of what lies between two; `around` is between two along the circumference.
fn off_track(blank: f64, around: f64) -> f64 {
    let circumference = PI * blank;
    let first = (circumference / around + 0.25).floor() as u32;
    let marks: Vec<f64> = (0..first).map(|k| f64::from(k) * around).collect();
    let mut worst: f64 = 0.0;
    for k in first..2 * first {
        let at = (f64::from(k) * around).rem_euclid(circumference);
        let to = |mark: &f64| {
            let apart = (at - mark).abs();
            apart.min(circumference - apart)
        };
        worst = worst.max(marks.iter().map(to).fold(f64::MAX, f64::min) / around);
    }
    worst
}

#[test]
fn tips_fall_into_their_own_marks_on_the_blanks_that_track_and_on_no_other() {
    let mut rng = ChaCha8Rng::seed_from_u64(0x6b6e_7572_6c73);
    let mut held = 0;
    for _ in 0..400 {
        let (knurl, apart) = ask(&mut rng);
        let Ok(fit) = knurl.fit() else { continue };
        held += 1;
        let around = apart / (turns(knurl.angle) * 2.0 * PI).cos();
        for track in &fit.tracks {
            let off = off_track(track.blank.value, around);
            assert!(off < 1e-9, "{knurl:?} {track:?}: {off}");
        }
        let (below, above) = (fit.below().expect("one"), fit.above().expect("one"));
        let stock = knurl.stock.mm().num() as f64 / knurl.stock.mm().den() as f64;
        assert!(below.blank.value <= stock + 1e-9 && stock <= above.blank.value + 1e-9);
        // Half-way between them the second turn's marks lie between the first's.
        let between = off_track((below.blank.value + above.blank.value) / 2.0, around);
        assert!(between > 0.49, "{knurl:?}: {between}");
        for k in 1..20 {
            let part = f64::from(k) / 20.0;
            let one = below.blank.value + (above.blank.value - below.blank.value) * part;
            assert!(off_track(one, around) > 0.04, "{knurl:?} tracks at {one}");
        }
    }
    assert!(held > 300, "{held}");
}

/// Half the mean of the squared radius over many places of the knurl is as large as the
/// blank's: so large is the radius over the tips. `deep` is the full depth, `share` what
/// of it is rolled in.
fn radius_over_tips(knurl: &Knurl, blank: f64, apart: f64, deep: f64, share: f64) -> f64 {
    let slant = turns(knurl.angle) * 2.0 * PI;
    let crossed = knurl.lines == Lines::Crossed;
    // Crossed lines go both ways; straight ones that cross would lie on each other.
    let (sine, cosine) =
        if crossed && slant == 0.0 { (0.5, 0.75_f64.sqrt()) } else { slant.sin_cos() };
    let grid = 240;
    let mut depths = Vec::new();
    for i in 0..grid {
        for k in 0..if crossed { grid } else { 1 } {
            // A patch that all lines cross alike: around, and along.
            let x = (f64::from(i) + 0.5) / f64::from(grid) * apart / cosine;
            let z =
                if crossed { (f64::from(k) + 0.5) / f64::from(grid) * apart / sine } else { 0.0 };
            let groove = |way: f64| {
                let lines = (x * cosine + way * z * sine) / apart;
                let from_middle = (lines - lines.round()).abs();
                (share - 2.0 * from_middle).max(0.0) * deep
            };
            depths.push(if crossed { groove(1.0).max(groove(-1.0)) } else { groove(1.0) });
        }
    }
    let (mut low, mut high) = (blank / 2.0, blank / 2.0 + deep);
    for _ in 0..60 {
        let over = (low + high) / 2.0;
        let squares = depths.iter().map(|depth| (over - depth) * (over - depth)).sum::<f64>();
        if squares / (depths.len() as f64) < blank * blank / 4.0 { low = over } else { high = over }
    }
    (low + high) / 2.0
}

#[test]
fn a_knurl_grows_by_the_metal_that_its_grooves_displace() {
    let mut rng = ChaCha8Rng::seed_from_u64(0x6772_6f77_7468);
    let mut held = [0; 2];
    for _ in 0..120 {
        let (knurl, apart) = ask(&mut rng);
        let Ok(fit): Result<Fit, _> = knurl.fit() else { continue };
        let blank = fit.below().expect("one").blank.value;
        // A V as wide as the pitch, between its flanks.
        let deep = apart / 2.0 / (turns(knurl.tooth_angle) * PI).tan();
        assert!((fit.full_depth.value - deep).abs() < 1e-9 * deep);
        for (share, grown) in [(0.5, fit.grows_least), (1.0, fit.grows_most)] {
            let over = radius_over_tips(&knurl, blank, apart, deep, share);
            let truth = 2.0 * over - blank;
            // The flat rule leaves out that a round has more metal outside than inside.
            let allowed = 2e-3 * deep + deep * deep / blank;
            let off = (truth - grown.value).abs();
            assert!(off < allowed, "{knurl:?} {share}: {truth}, not {grown:?}");
        }
        held[usize::from(knurl.lines == Lines::Crossed)] += 1;
    }
    assert!(held.iter().all(|kind| *kind > 30), "{held:?}");
}
