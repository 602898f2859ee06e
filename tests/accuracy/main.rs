//! How far off an approximate value may be: a row for every public function
//! that returns [`Approx`], and for every float that the one door hands out.
//! References are wide whole numbers of our own, far finer than a float.
mod bends;
mod cones;
mod coordinates;
mod dials;
mod found;
mod involutes;
mod lifts;
mod plates;
mod shapes;
mod sheets;
mod short;
mod slanted;
mod springs;
mod threads;
mod turned;
mod turning;
mod wheels;
mod wholes;
mod wide;

use handturn::head::{GEARS, Mounting, gears_of};
use handturn::measure::{Angle, Length};
use handturn::number::{Approx, Fraction, float};
use handturn::thread::gearing::Lead;
use handturn::train::{Found, Search, Senses, Six, Wanted};
use wide::Wide;

/// A function, what it is allowed, and how it is tried.
struct Row {
    /// As [`found::approximate`] names it.
    name: &'static str,
    /// Greatest error allowed, relative to the true value (or to one, if that is larger
    /// and the row says so), in units of 2^-52.
    allowed: f64,
    /// Pairs of what comes out and the truth.
    tries: fn() -> Vec<Try>,
}

/// A value that came out, and the truth.
struct Try {
    what: String,
    came: Approx,
    truth: Wide,
    /// Errors are told relative to this: the truth itself, or one for values that pass nought.
    scale: f64,
}

const ROWS: &[Row] = &[
    Row { name: "Angle::arc_mm", allowed: 4.0, tries: arcs },
    Row { name: "budget::arc_mm", allowed: 4.0, tries: plates::arcs },
    Row { name: "Found::off_ppm", allowed: 3.0, tries: || trains(Found::off_ppm, 1_000_000) },
    Row {
        name: "Found::off_over",
        allowed: 3.0,
        tries: || trains(|found| found.off_over(Length::from_mm(Fraction::whole(100))), 100),
    },
    Row { name: "Lead::mm", allowed: 1.8, tries: leads },
    Row { name: "width::division", allowed: 4.0, tries: dials::divisions },
    Row { name: "width::diameter", allowed: 4.0, tries: dials::diameters },
    Row { name: "width::line", allowed: 4.0, tries: dials::lines },
    Row { name: "fine::turn", allowed: 4.0, tries: dials::turns },
    Row { name: "fine::radius", allowed: 4.0, tries: dials::radii },
    Row { name: "fine::error", allowed: 4.0, tries: dials::errors },
    Row { name: "float::of", allowed: 1.5, tries: fractions },
    Row { name: "float::of_wide", allowed: 1.5, tries: wide_fractions },
    Row {
        name: "float::sin_turns",
        allowed: 1.0,
        tries: || circle(float::sin_turns, Wide::sin_turns),
    },
    Row {
        name: "float::cos_turns",
        allowed: 1.0,
        tries: || circle(float::cos_turns, Wide::cos_turns),
    },
    Row { name: "float::sqrt", allowed: 0.5, tries: roots },
    Row { name: "float::round", allowed: 0.0, tries: rounded },
    Row { name: "float::tan_turns", allowed: 4.0, tries: threads::tangents },
    Row { name: "float::atan_turns", allowed: 2.0, tries: threads::arc_tangents },
    Row { name: "float::asin_turns", allowed: 2.0, tries: wheels::arc_sines },
    Row { name: "float::acos_turns", allowed: 2.0, tries: wheels::arc_cosines },
    Row {
        name: "telling::module_of_circular_pitch",
        allowed: 2.0,
        tries: wheels::circular_pitches,
    },
    Row { name: "telling::diameter_of_chord", allowed: 4.0, tries: wheels::diameters_of_chords },
    Row { name: "telling::chord_of_diameter", allowed: 4.0, tries: wheels::chords_of_diameters },
    Row { name: "involute::inv", allowed: 16.0, tries: involutes::functions },
    Row { name: "involute::angle", allowed: 8.0, tries: involutes::inverses },
    Row { name: "span::thickness", allowed: 16.0, tries: involutes::by_span },
    Row { name: "pins::thickness", allowed: 16.0, tries: involutes::by_pins },
    Row { name: "ratchet::face_teeth", allowed: 12.0, tries: shapes::face_tilts },
    Row { name: "trial::wanted", allowed: 32.0, tries: involutes::by_caliper },
    Row { name: "Tilt::lift", allowed: 16.0, tries: lifts::lifts },
    Row { name: "Tilt::between", allowed: 20.0, tries: lifts::between },
    Row { name: "cone::depth", allowed: 8.0, tries: cones::cones },
    Row { name: "speed::rpm", allowed: 4.0, tries: cones::turns },
    Row { name: "flats::largest", allowed: 4.0, tries: lifts::across_flats },
    Row { name: "tilt::angle", allowed: 8.0, tries: lifts::angles },
    Row { name: "former::kept", allowed: 8.0, tries: bends::kept },
    Row { name: "lead::lead_angle", allowed: 8.0, tries: threads::lead_angles },
    Row { name: "tape::drum", allowed: 4.0, tries: coordinates::drums },
    Row { name: "infeed::apex", allowed: 8.0, tries: threads::apexes },
    Row { name: "Nose::as_flat", allowed: 8.0, tries: threads::noses },
    Row { name: "wires::best", allowed: 8.0, tries: threads::best_wires },
    Row { name: "wires::best_with_lead", allowed: 500.0, tries: threads::best_with_lead },
    Row { name: "wires::over_one", allowed: 500.0, tries: threads::over_one },
    Row { name: "wires::pitch_diameter", allowed: 2000.0, tries: threads::pitch_diameters },
    Row { name: "wires::slant", allowed: 500.0, tries: threads::slants },
];

#[test]
fn every_approximate_function_has_a_row() {
    let found = found::approximate();
    let rows: std::collections::BTreeSet<String> =
        ROWS.iter().map(|row| row.name.to_string()).collect();
    assert_eq!(found, rows, "left: in the source; right: in the table");
}

#[test]
fn every_row_keeps_its_promise() {
    for row in ROWS {
        let tries = (row.tries)();
        assert!(tries.len() >= 100, "{}: too few to say anything", row.name);
        for one in tries {
            let off = one.truth.minus(&Wide::of_float(one.came.value)).magnitude();
            let (name, what, bound) = (row.name, &one.what, one.came.bound);
            assert!(
                bound >= 0.0 && off <= bound,
                "{name}({what}): {off:e} off, {bound:e} promised"
            );
            let allowed = row.allowed * f64::EPSILON * one.scale;
            assert!(off <= allowed, "{name}({what}): {off:e} off, {allowed:e} allowed");
            assert!(bound <= 4.0 * allowed + f64::MIN_POSITIVE, "{name}({what}): a lazy bound");
        }
    }
}

fn part(num: i64, den: i64) -> Fraction {
    Fraction::new(num, den).expect("a fraction")
}

/// Fractions small, large, near and far from nought, in a fixed order.
fn some_fractions() -> impl Iterator<Item = Fraction> {
    (1..=400_i64).map(|k| {
        let num = (k * 7_919_777_771) % 99_991 + 1;
        let den = (k * 104_729) % 9_973 + 1;
        part(if k % 3 == 0 { -num } else { num } * if k % 7 == 0 { 1 << 30 } else { 1 }, den)
    })
}

fn arcs() -> Vec<Try> {
    let diameters = [part(381, 5), part(1, 1000), part(1_000_000, 7), part(127, 5)];
    let tries = some_fractions().zip(diameters.into_iter().cycle()).map(|(turns, mm)| {
        let came = Angle::from_turns(turns).arc_mm(Length::from_mm(mm));
        let truth = Wide::pi().by(&Wide::of(mm)).by(&Wide::of(turns));
        let scale = truth.magnitude();
        Try { what: format!("{turns} turns, {mm} mm"), came, truth, scale }
    });
    tries.collect()
}

/// A float without a bound of its own, held against the row's allowance alone.
fn bare(what: String, value: f64, truth: Wide, scale: f64, allowed: f64) -> Try {
    Try { what, came: Approx { value, bound: allowed * f64::EPSILON * scale }, truth, scale }
}

fn fractions() -> Vec<Try> {
    let tries = some_fractions().map(|fraction| {
        let truth = Wide::of(fraction);
        let scale = truth.magnitude();
        bare(fraction.to_string(), float::of(fraction), truth, scale, 1.5)
    });
    tries.collect()
}

fn wide_fractions() -> Vec<Try> {
    let tries = some_fractions().map(|fraction| {
        let (num, den) = (i128::from(fraction.num()) << 60, i128::from(fraction.den()) * 3);
        let truth = Wide::of(fraction).by(&Wide::of(part(1 << 60, 3)));
        let scale = truth.magnitude();
        bare(fraction.to_string(), float::of_wide(num, den), truth, scale, 1.5)
    });
    tries.collect()
}

fn leads() -> Vec<Try> {
    let tries = (1..=200_i64).flat_map(|k| {
        let length = part(k * 127 + 3, k % 50 * 10 + 7);
        [false, true].map(|times_pi| {
            let came = Lead { length: Length::from_mm(length), times_pi }.mm();
            let factor = if times_pi { Wide::pi() } else { Wide::of(Fraction::ONE) };
            let truth = factor.by(&Wide::of(length));
            let scale = truth.magnitude();
            Try { what: format!("{length} mm, π {times_pi}"), came, truth, scale }
        })
    });
    tries.collect()
}

/// How far off the nearest trains of many ratios are, times `factor`.
fn trains(off: fn(&Found) -> Approx, factor: i64) -> Vec<Try> {
    let gears = gears_of(&GEARS).expect("twelve");
    let one = Wide::of(Fraction::ONE);
    let mut tries = Vec::new();
    for k in 1..=60_i64 {
        let (ratio, times_pi) = (part(k * 7 + 1, k * 31 % 97 + 20), k % 2 == 0);
        let (mounting, senses, six) = (Mounting::default(), Senses::Either, Six::Always);
        let ratios = [ratio];
        let wanted = Wanted { ratios: &ratios, times_pi, gears: &gears, mounting, senses, six };
        let mut search = Search::<8>::new();
        assert_eq!(search.run(&wanted, u32::MAX), Ok(true));
        let pi = if times_pi { Wide::pi() } else { one.clone() };
        let wanted = pi.by(&Wide::of(ratio));
        for found in search.best() {
            let has = Wide::of(found.chain.ratio().expect("small"));
            let truth = has.over(&wanted).minus(&one).by(&Wide::of(Fraction::whole(factor)));
            let scale = truth.magnitude();
            let what = format!("{:?} for {ratio}, π {times_pi}", found.chain);
            tries.push(Try { what, came: off(found), truth, scale });
        }
    }
    tries
}

fn circle(door: fn(f64) -> f64, truth: fn(&Wide) -> Wide) -> Vec<Try> {
    let tries = (-400..=400_i32).map(|k| {
        let turns = f64::from(k) / 256.0 + f64::from(k % 13) / 7.0 / 1024.0;
        let truth = truth(&Wide::of_float(turns));
        bare(turns.to_string(), door(turns), truth, 1.0, 1.0)
    });
    tries.collect()
}

fn roots() -> Vec<Try> {
    let tries = some_fractions().map(|fraction| {
        let value = float::of(fraction.abs());
        let truth = Wide::of_float(value).sqrt();
        let scale = truth.magnitude();
        bare(value.to_string(), float::sqrt(value), truth, scale, 0.5)
    });
    tries.collect()
}

/// Whole numbers come out exactly, halves away from nought.
fn rounded() -> Vec<Try> {
    let tries = (-200..=200_i32).map(|quarters| {
        let away = (quarters.abs() + 2) / 4 * quarters.signum();
        let value = f64::from(quarters) / 4.0;
        bare(value.to_string(), float::round(value), Wide::of_float(f64::from(away)), 1.0, 0.0)
    });
    tries.collect()
}
