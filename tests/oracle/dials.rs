//! Dials by trying: verniers laid out line by line and held against the marks of the
//! dial; fine dials turned as points in a plane.
use handturn::dial::fine::{self, Arm, Wanted};
use handturn::dial::vernier::Vernier;
use handturn::measure::{Angle, Length};
use handturn::number::{Fraction, float};
use rand::prelude::*;
use rand_chacha::ChaCha8Rng;

fn angle(seconds: i64) -> Angle {
    Angle::from_arcsec(Fraction::whole(seconds)).expect("small")
}

/// Where each line of the vernier stands, in seconds from its zero: counted off one by one.
fn laid_out(main: i64, least: i64, retrograde: bool, long: bool) -> Vec<i64> {
    let over = if long { 2 * main } else { main };
    let (mut lines, mut at) = (vec![0], 0);
    for _ in 0..main / least {
        at += if retrograde { -(over + least) } else { over - least };
        lines.push(at);
    }
    lines
}

/// For every least reading of many verniers, exactly one line between the first and the
/// last meets a mark of the dial, and it is the one that the core names.
#[test]
fn exactly_one_line_meets_a_mark() {
    let mut readings = 0;
    for (main, least) in [(3600, 300), (1800, 60), (1200, 30), (600, 10), (3600, 900), (60, 30)] {
        for kind in 0..8 {
            let [retrograde, long, double] = [1, 2, 4].map(|bit| kind & bit != 0);
            let (main_angle, least_angle) = (angle(main), angle(least));
            let vernier =
                Vernier { main: main_angle, least: least_angle, retrograde, long, double };
            let lines = laid_out(main, least, retrograde, long);
            let laid = vernier.laid().expect("a vernier");
            assert_eq!(lines.len(), laid.divisions as usize + 1);
            assert_eq!(lines.last().map(|at| at.abs()), Some(i64::from(laid.over_marks) * main));
            for (k, at) in lines.iter().enumerate() {
                assert_eq!(vernier.line(i32::try_from(k).expect("few")), Ok(angle(*at)));
            }
            for reading in (0..5 * main).step_by(usize::try_from(least).expect("above nought")) {
                let meets = |at: &i64| (reading + at).rem_euclid(main) == 0;
                let met: Vec<usize> = (0..lines.len()).filter(|&k| meets(&lines[k])).collect();
                let reads = vernier.read(angle(reading)).expect("a reading");
                let named = usize::try_from(reads.line).expect("few");
                // The first and the last meet marks together, when the reading is one.
                if reading % main == 0 {
                    assert_eq!(met, [0, lines.len() - 1]);
                    assert_eq!(named, 0);
                } else {
                    assert_eq!(met, [named], "{vernier:?} at {reading}");
                }
                assert_eq!(reads.left, Angle::ZERO);
                assert_eq!(reads.mark * main + i64::from(reads.line) * least, reading);
                // The other side of a double one meets where the dial falls.
                if double && reading % main != 0 {
                    let line = i32::try_from(laid.divisions - reads.line).expect("few");
                    let there = vernier.line(-line).expect("it is double");
                    let there = there.arcsec().expect("small").num();
                    assert_eq!((reading + there).rem_euclid(main), 0);
                }
                readings += 1;
            }
        }
    }
    assert!(readings > 4_000, "{readings} are few");
}

/// The arm as a line from the plate's centre, turned until it goes through the end of the
/// screw: the angle is halved until it is found, without a tangent or its inverse.
fn turned(moved: f64, radius: f64) -> f64 {
    let (mut low, mut high) = (-0.25_f64, 0.25_f64);
    for _ in 0..80 {
        let middle = f64::midpoint(low, high);
        let (sin, cos) = (middle * std::f64::consts::TAU).sin_cos();
        // Which side of the arm's line the screw's end lies on.
        if radius * sin < moved * cos { low = middle } else { high = middle }
    }
    f64::midpoint(low, high)
}

fn mm(rng: &mut ChaCha8Rng, from: i64, to: i64) -> Length {
    Length::from_mm(Fraction::new(rng.random_range(from..=to), 100).expect("small"))
}

/// Fine dials from chance: the greatest error is that of the worst mark tried, and one
/// mark more than the most goes beyond what will do.
#[test]
fn the_tangent_error_is_that_of_points_in_a_plane() {
    let mut rng = ChaCha8Rng::seed_from_u64(365);
    let (mut compared, mut ahead, mut ended) = (0, 0, 0);
    while compared < 400 {
        let lead = mm(&mut rng, 50, 200);
        let ratio = Fraction::whole([40, 60, 90][compared % 3]);
        let rough = mm(&mut rng, 3_000, 12_000);
        let Ok(steps) = fine::steps(&Arm { lead, radius: rough, ratio }) else { continue };
        let Some(step) = steps.choose(&mut rng) else { continue };
        // The arm as made is a little off what would be exact.
        let off = rng.random_range(-0.4..0.4);
        let radius = float::nearest(step.radius_mm.value + off, 100).expect("small");
        let arm = Arm { lead, radius: Length::from_mm(radius), ratio };
        let turns = Fraction::whole(rng.random_range(1..=8));
        let within =
            Angle::from_arcsec(Fraction::new(rng.random_range(1..=60), 10).expect("small"));
        let within = within.expect("small");
        let wanted = Wanted { arm, marks: step.marks, at_work: step.at_work, turns, within };
        let Ok(found) = fine::design(&wanted) else { continue };
        let (lead, radius) = (float::of(lead.mm()), float::of(radius));
        let per = f64::from(step.marks);
        let told = float::of(step.at_work.arcsec().expect("small"));
        let error = |mark: u32| {
            let mark = f64::from(mark);
            turned(mark * lead / per, radius) * 1_296_000.0 / float::of(ratio) - told * mark
        };
        let used = u32::try_from(turns.num()).expect("small") * step.marks;
        let worst =
            (0..=used).map(error).fold(0.0_f64, |a, b| if b.abs() > a.abs() { b } else { a });
        // Between two marks the error may be a little more.
        let came = found.worst_arcsec.value;
        assert!(came.abs() >= worst.abs() - 1e-8, "{wanted:?}: {came}, {worst}");
        assert!((came - worst).abs() <= 1e-3 * worst.abs() + 1e-8, "{wanted:?}: {came}, {worst}");
        let allowed = float::of(within.arcsec().expect("small"));
        let good = (0..=found.most_marks).all(|mark| error(mark).abs() <= allowed + 1e-8);
        assert!(good, "{wanted:?}: {found:?}");
        let far = f64::from(found.most_marks + 1) * lead / per;
        if far <= radius {
            // The most an error comes to on the way to the next mark.
            let next = found.most_marks + 1;
            let on_the_way = (0..=64).map(|k| {
                let mark = f64::from(found.most_marks) + f64::from(k) / 64.0;
                turned(mark * lead / per, radius) * 1_296_000.0 / float::of(ratio) - told * mark
            });
            let most = on_the_way.fold(error(next).abs(), |a, b| a.max(b.abs()));
            assert!(most >= allowed - 1e-3 * allowed, "{wanted:?}: {found:?} {most}");
            ended += 1;
        }
        ahead += u32::from(came > 0.0);
        compared += 1;
    }
    assert!(ahead > 40 && ended > 100, "{ahead} ahead, {ended} ended within the radius");
}
