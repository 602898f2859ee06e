//! Every way of dividing, simulated position by position with each source of error drawn,
//! against its budget. Only where pin, plate and dial are meant to stand is the way's own
//! word; what comes of it is worked out here: holes as points, and, where gears carry the
//! plate along with the work, the spindle that settles so that all of it agrees.
use crate::parts;
use crate::plates::{Tally, angles_off, astray, even, float, length, mm, put_on, seconds};
use handturn::divide::{Kind, Place, Question, Way, answer};
use handturn::head::{FineDial, Handwheel, Head};
use handturn::measure::Angle;
use handturn::number::Fraction;
use handturn::plate::{Sources, budget};
use handturn_tests::{heads, roomy};
use rand::{Rng, SeedableRng};
use rand_chacha::ChaCha8Rng;
use std::f64::consts::TAU;

fn head(ratio: u32, set: &str) -> Head {
    let part = |num, den| Fraction::new(num, den).expect("a part");
    Head {
        handwheel: Some(Handwheel { marks: 100, vernier: 10 }),
        fine_dial: Some(FineDial {
            shift: Angle::from_turns(part(1, 360)),
            marks: 100,
            travel: Angle::from_turns(part(1, 30)),
            slack: Fraction::ZERO,
        }),
        slack: part(1, 2000),
        ..heads::head(ratio, set)
    }
}

/// The holes of a circle, or the notches of a plate, by how many turns each is off.
struct Ring(Vec<f64>);

impl Ring {
    fn drawn(rng: &mut ChaCha8Rng, rings: &[u32], sources: &Sources) -> Vec<Self> {
        let (radius, stray) = (mm(sources.radius), mm(sources.hole));
        let points: Vec<_> = rings
            .iter()
            .flat_map(|&holes| (0..holes).map(move |k| f64::from(k) / f64::from(holes)))
            .map(|turns| astray(rng, turns, radius, stray))
            .collect();
        // All rings of a plate are off its shaft in one direction.
        let mut points = &put_on(rng, &points, mm(sources.plate_run_out))[..];
        let mut drawn = Vec::new();
        for &holes in rings {
            let (ring, rest) = points.split_at(holes as usize);
            drawn.push(Self(angles_off(ring)));
            points = rest;
        }
        drawn
    }

    fn off(&self, number: u32) -> f64 {
        self.0[number as usize]
    }
}

/// By how many turns each part is off in one trial, round the work.
fn trial(
    rng: &mut ChaCha8Rng,
    head: &Head,
    way: &Way,
    places: &[Place],
    sources: &Sources,
) -> Vec<f64> {
    let rings = match way {
        Way::Direct(way) => vec![u32::from(way.notches)],
        Way::Plain(way) | Way::NearestHole(way) => vec![u32::from(way.circle.holes)],
        Way::FineDial(way) => vec![u32::from(way.circle.holes)],
        Way::Differential(way) => vec![u32::from(way.circle.holes)],
        Way::Compound(way) => vec![u32::from(way.pin), u32::from(way.back)],
        _ => vec![],
    };
    let rings = Ring::drawn(rng, &rings, sources);
    let ratio = float(head.ratio);
    let [wheel, worm] = [sources.wheel, sources.worm].map(|angle| float(angle.turns()));
    let (wheel_phase, worm_phase): (f64, f64) = (rng.random(), rng.random());
    let side = if rng.random() { 1.0 } else { -1.0 };
    let slack = if sources.same_side { 0.0 } else { side * float(head.slack) };
    let blank: f64 = rng.random();
    let blank_out = mm(sources.blank_run_out) / (mm(head.work_diameter) / 2.0);
    let play = mm(sources.pin_play) / 2.0 / mm(sources.radius) / TAU;
    let reading = float(sources.reading);
    let mut off = Vec::new();
    for place in places {
        let (stands, wanted) = (float(place.stands.turns()), float(place.wanted.turns()));
        let mut pin = |ring: usize, number: Option<u32>| {
            rings[ring].off(number.expect("it has a pin")) + even(rng) * play
        };
        let number = |at: Option<handturn::divide::At>| at.map(|at| at.number);
        // By how much the handle is off over the plate, and the plate itself.
        let mut handle = match way {
            Way::Direct(_) => pin(0, number(place.notch)),
            Way::Handwheel(_) => 0.0,
            Way::Compound(_) => pin(0, number(place.pin)) - pin(1, number(place.back_pin)),
            _ => pin(0, number(place.pin)),
        };
        match way {
            Way::Handwheel(way) => handle += even(rng) * reading / f64::from(way.steps()),
            Way::FineDial(way) => {
                let mark = float(way.dial.shift.turns()) / f64::from(way.dial.marks);
                handle += even(rng) * reading * mark;
            }
            _ => {}
        }
        let work = if matches!(way, Way::Direct(_)) {
            stands + handle
        } else {
            let gears = match way {
                Way::Differential(way) => float(way.gear_ratio().expect("gears")),
                _ => 0.0,
            };
            handle += slack * rng.random::<f64>();
            let over = stands * (ratio - gears) + handle;
            let mut work = stands;
            for _ in 0..if gears == 0.0 { 1 } else { 60 } {
                let shaft = over + gears * work;
                work = shaft / ratio
                    + wheel * (TAU * (stands + wheel_phase)).sin()
                    + worm * (TAU * (stands * ratio + worm_phase)).sin();
            }
            work
        };
        // The rim as seen from the blank's own centre.
        let (sin, cos) = (TAU * work).sin_cos();
        let (out_sin, out_cos) = (TAU * blank).sin_cos();
        let seen = (sin + blank_out * out_sin).atan2(cos + blank_out * out_cos) / TAU;
        let error = seen - wanted;
        off.push(error - error.round());
    }
    off
}

/// Simulates `way` and holds its budget against it.
fn held(question: &Question, head: &Head, way: &Way, sources: &Sources, what: &str, trials: u32) {
    let count = question.positions();
    let place = |part| way.place(question, way.index_of(question, part)).expect("a place");
    let places: Vec<Place> = (0..count).map(place).collect();
    let said = budget(question, head, way, sources).expect("a budget").sum;
    let mut rng = ChaCha8Rng::seed_from_u64(u64::from(count));
    let mut tally = Tally::default();
    for _ in 0..trials {
        tally.add(&trial(&mut rng, head, way, &places, sources));
    }
    let several_times = way.effort().times_round > 1;
    let loose = tally.held(what, &said, !several_times);
    assert!(loose.iter().all(|&loose| loose < 4.0), "{what}: said over met {loose:?}");
}

#[test]
fn the_budget_of_every_way_is_what_comes_of_it() {
    let none = Sources::NONE;
    let all = [
        ("nothing", none),
        ("wheel", Sources { wheel: seconds(40), ..none }),
        ("worm", Sources { worm: seconds(40), ..none }),
        ("holes", Sources { hole: length(1, 20), ..none }),
        ("pin", Sources { pin_play: length(1, 20), ..none }),
        ("plate", Sources { plate_run_out: length(1, 20), ..none }),
        ("blank", Sources { blank_run_out: length(1, 100), ..none }),
        ("slack", Sources { same_side: false, ..none }),
        ("dial", Sources { reading: Fraction::new(1, 2).expect("half"), ..none }),
    ];
    let mut met = std::collections::BTreeSet::new();
    roomy(|| {
        for (ratio, set) in [(40, "A"), (90, "B")] {
            let head = head(ratio, set);
            for count in [12, 24, 57, 69, 127, 235] {
                let question = parts(count);
                let answer = answer::<1>(&question, &head).expect("an answer");
                for group in &answer.groups {
                    let (closest, quickest) = (&group.closest[0].way, &group.quickest[0].way);
                    for way in
                        [closest, quickest].into_iter().take(1 + usize::from(closest != quickest))
                    {
                        met.insert(way.kind());
                        for (name, sources) in &all {
                            let what = format!("{name}, {count} at {ratio}:1: {way:?}");
                            held(&question, &head, way, sources, &what, 24_000 / count);
                        }
                    }
                }
            }
        }
    });
    assert_eq!(met.into_iter().collect::<Vec<_>>(), Kind::ALL);
}
