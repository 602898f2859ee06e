//! Spring-back by bending: a section is cut into thin strips, each is stressed by how far it
//! is from the neutral line and no further than its yield, the moment of all is let go
//! elastically, and what curve is left is read off. No formula of the core's is used.
use handturn::bench::former::{Bend, Section, kept};
use handturn::bench::wire::Band;
use handturn::measure::Length;
use handturn::number::{Fraction, float};
use rand::prelude::*;
use rand_chacha::ChaCha8Rng;

/// Radius, to the neutral line, that `radius` opens to; infinite or below nought where
/// nothing is left of it.
fn opens(section: Section, thick: f64, radius: f64, yields: f64, modulus: f64) -> f64 {
    let strips = 20_000;
    let (mut moment, mut inertia) = (0.0, 0.0);
    for k in 0..strips {
        let y = (f64::from(k) + 0.5) / f64::from(strips) * thick - thick / 2.0;
        let width = match section {
            Section::Strip => 1.0,
            Section::Round => 2.0 * (thick * thick / 4.0 - y * y).sqrt(),
        };
        let stress = (modulus * y / radius).clamp(-yields, yields);
        moment += stress * width * y;
        inertia += width * y * y;
    }
    1.0 / (1.0 / radius - moment / (modulus * inertia))
}

fn case(rng: &mut ChaCha8Rng) -> (Section, Length, f64, f64, f64) {
    let section = if rng.random() { Section::Round } else { Section::Strip };
    let um = rng.random_range(100..=6_000_i64);
    let thick = Length::from_mm(Fraction::new(um, 1000).expect("small"));
    let (yields, modulus) = (rng.random_range(150.0..2400.0), rng.random_range(90e3..210e3));
    (section, thick, float::of(thick.mm()), yields, modulus)
}

#[test]
fn what_is_kept_of_a_curve_by_adding_up_its_section() {
    let mut rng = ChaCha8Rng::seed_from_u64(0x6265_6e64);
    let mut worst = 0.0_f64;
    for _ in 0..2_000 {
        let (section, thick, t, yields, modulus) = case(&mut rng);
        // From hardly elastic at all to nine tenths of the thickness.
        let u = rng.random_range(0.002..0.9);
        let radius = u * modulus * t / (2.0 * yields);
        let radius = Fraction::new((radius * 1e4) as i64 + 1, 10_000).expect("small");
        let kept = kept(section, thick, Length::from_mm(radius), yields, modulus).expect("yields");
        let free = opens(section, t, float::of(radius), yields, modulus);
        let off = (float::of(radius) / kept.value / free - 1.0).abs();
        assert!(off < 1e-3, "{section:?} {t} {radius} {yields} {modulus}: {off}");
        worst = worst.max(off);
    }
    println!("spring-back within {worst:e} of the section added up");
}

/// Bent on the former that is named, let go and measured, a ring has the size wanted: at
/// the middle and at both ends of the bands.
#[test]
fn the_former_makes_the_ring() {
    let mut rng = ChaCha8Rng::seed_from_u64(0x666f_726d);
    let (mut tried, mut worst) = (0, 0.0_f64);
    while tried < 2_000 {
        let (section, thick, t, yields, modulus) = case(&mut rng);
        let um = (t * rng.random_range(2.0..80.0) * 1000.0) as i64;
        let inside = Length::from_mm(Fraction::new(um, 1000).expect("small"));
        let band = |middle: f64, part: f64| Band {
            least: middle * (1.0 - part),
            most: middle * (1.0 + part),
        };
        let (yields, modulus) = (band(yields, 0.1), band(modulus, 0.03));
        let bend = Bend { section, thick, inside, yields, modulus };
        let former = bend.former(&[]).expect("a former");
        if former.kept.value < 0.1 || former.least.value <= 0.0 {
            continue;
        }
        tried += 1;
        for (size, y, e) in [
            (former.middle, yields.middle(), modulus.middle()),
            (former.least, yields.most, modulus.least),
            (former.most, yields.least, modulus.most),
        ] {
            let free = 2.0 * opens(section, t, (size.value + t) / 2.0, y, e) - t;
            let off = (free / float::of(inside.mm()) - 1.0).abs();
            assert!(off < 1e-3, "{bend:?}: {off}");
            worst = worst.max(off);
        }
        assert!(former.middle.bound < 1e-9 * former.middle.value + 1e-9, "{former:?}");
        for trial in &former.trials {
            let Some(middle) = trial.middle else { continue };
            let radius = (float::of(trial.former.mm()) + t) / 2.0;
            let free = 2.0 * opens(section, t, radius, yields.middle(), modulus.middle()) - t;
            assert!((middle.value / free - 1.0).abs() < 2e-3, "{bend:?} {trial:?} {free}");
        }
    }
    println!("rings within {worst:e} of what was wanted");
}
