//! The whole making of a plate, simulated hole by hole, against what the ladder predicts.
//!
//! Nothing is linearised and no sum is the core's: holes are points of a plate, each put
//! astray along its ring and across it; plates and blanks are put on off their centre in
//! a direction that is drawn; the pin stands anywhere in its hole; worm and wheel err as
//! sines whose phases are drawn anew for each plate that is put on; the next plate is
//! drilled with the one before, and the work is cut with each. Angles are read back from
//! the points. A trial is one shop's whole ladder of three generations.
use crate::parts;
use handturn::divide::{Kind, Way, answer};
use handturn::head::Head;
use handturn::measure::{Angle, Length};
use handturn::number::Fraction;
use handturn::plate::{Ladder, Making, Sources, Sums, ladder};
use handturn_tests::{heads, roomy};
use rand::{Rng, SeedableRng};
use rand_chacha::ChaCha8Rng;
use std::f64::consts::TAU;

const A_TURN: f64 = 1_296_000.0;
const GENERATIONS: usize = 3;

/// A predicted root mean square is met within this share of it.
const RMS_WITHIN: f64 = 0.05;

type Point = [f64; 2];

/// One plate to be made, with the errors of its shop as floats of millimetres and turns.
struct Shop {
    ratio: i64,
    parts: i64,
    making: Making<'static>,
    first: Way,
    slack: f64,
    work_radius: f64,
    plan: Ladder,
}

pub(crate) fn float(fraction: Fraction) -> f64 {
    fraction.num() as f64 / fraction.den() as f64
}

pub(crate) fn mm(length: Length) -> f64 {
    float(length.mm())
}

impl Shop {
    fn new(head: &Head, count: u32, by_nearest: bool, sources: Sources, drilling: Length) -> Self {
        let question = parts(count);
        let nearest = || {
            let found = answer::<1>(&question, head).expect("an answer");
            found.group(Kind::NearestHole).map(|group| group.closest[0].way)
        };
        let first = if by_nearest { nearest() } else { None };
        let making = Making { question, first, sources, drilling, ..Making::default() };
        let plan = ladder(head, &making).expect("a plate can be made");
        assert_eq!(plan.parts.count, count, "a prime shares nothing with the ratio");
        Self {
            ratio: head.ratio.num(),
            parts: i64::from(count),
            making,
            first: plan.generations[0].way,
            slack: if sources.same_side { 0.0 } else { float(head.slack) },
            work_radius: mm(head.work_diameter) / 2.0,
            plan,
        }
    }

    /// One ladder from owned plates to finished work.
    fn trial(&self, rng: &mut ChaCha8Rng, plates: &mut [Tally], works: &mut [Tally]) {
        let handle = self.with_owned_plates(rng);
        let mut plate = self.drilled(rng, &handle);
        for generation in 0..GENERATIONS {
            if generation > 0 {
                let handle = self.with_made_plate(rng, &plate);
                plate = self.drilled(rng, &handle);
            }
            plates[generation].add(&angles_off(&plate));
            let handle = self.with_made_plate(rng, &plate);
            // The blank off its arbor one way and the other: what it and the wheel make
            // together cancels, so fewer trials tell as much.
            for work in self.finished(rng, &handle) {
                works[generation].add(&angles_off(&work));
            }
        }
    }

    /// Handle turns at each position, set by the owned plates.
    fn with_owned_plates(&self, rng: &mut ChaCha8Rng) -> Vec<f64> {
        let sources = self.making.sources;
        let (hole, radius) = (mm(sources.hole), mm(sources.radius));
        let mut circle = |holes: u16| {
            let points: Vec<Point> = (0..holes)
                .map(|k| astray(rng, f64::from(k) / f64::from(holes), radius, hole))
                .collect();
            points
        };
        match self.first {
            Way::Plain(way) | Way::NearestHole(way) => {
                let holes = i64::from(way.circle.holes);
                let points = circle(way.circle.holes);
                let off = angles_off(&put_on(rng, &points, mm(sources.plate_run_out)));
                (0..self.parts)
                    .map(|k| {
                        // To the nearest hole, a half up.
                        let count =
                            (2 * self.ratio * holes * k + self.parts).div_euclid(2 * self.parts);
                        let stands = count as f64 / holes as f64;
                        stands + off[count.rem_euclid(holes) as usize] + self.pin(rng, radius)
                    })
                    .collect()
            }
            Way::Compound(way) => {
                // One plate: both rings are off its shaft in one direction.
                let (pins, backs) = (circle(way.pin), circle(way.back));
                let all: Vec<Point> = pins.iter().chain(&backs).copied().collect();
                let all = put_on(rng, &all, mm(sources.plate_run_out));
                let (pins, backs) = all.split_at(usize::from(way.pin));
                let (pins_off, backs_off) = (angles_off(pins), angles_off(backs));
                assert_eq!(way.times_round, 1, "the ladder's own choice goes once round");
                (0..self.parts)
                    .map(|k| {
                        let pin = k * i64::from(way.pin_spaces);
                        let back = -k * i64::from(way.back_spaces);
                        let over = pin as f64 / f64::from(way.pin)
                            + pins_off[pin.rem_euclid(i64::from(way.pin)) as usize];
                        // The hole over the back pin stands still: the plate turns by what it is.
                        let plate = back as f64 / f64::from(way.back)
                            + backs_off[back.rem_euclid(i64::from(way.back)) as usize];
                        over - plate + self.pin(rng, radius) + self.pin(rng, radius)
                    })
                    .collect()
            }
            way => panic!("not simulated: {way:?}"),
        }
    }

    /// Handle turns at each position, set by a plate made here: exact but for its holes.
    fn with_made_plate(&self, rng: &mut ChaCha8Rng, plate: &[Point]) -> Vec<f64> {
        let off = angles_off(&put_on(rng, plate, mm(self.making.sources.plate_run_out)));
        (0..self.parts)
            .map(|k| {
                let hole = (self.ratio * k).rem_euclid(self.parts) as usize;
                let stands = (self.ratio * k) as f64 / self.parts as f64;
                stands + off[hole] + self.pin(rng, mm(self.making.ring))
            })
            .collect()
    }

    /// Where the pin stands in its hole, in turns.
    fn pin(&self, rng: &mut ChaCha8Rng, radius: f64) -> f64 {
        even(rng) * mm(self.making.sources.pin_play) / 2.0 / radius / TAU
    }

    /// Turns of the spindle where the handle stands so.
    fn spindle(&self, rng: &mut ChaCha8Rng, handle: &[f64]) -> Vec<f64> {
        let sources = self.making.sources;
        let [wheel, worm] = [sources.wheel, sources.worm].map(|angle| float(angle.turns()));
        let (wheel_phase, worm_phase): (f64, f64) = (rng.random(), rng.random());
        let side = if rng.random() { 1.0 } else { -1.0 };
        let ratio = self.ratio as f64;
        let mut at = |&handle: &f64| {
            let slack = side * rng.random::<f64>() * self.slack;
            let turns = (handle + slack) / ratio;
            let wheel = wheel * (TAU * (handle / ratio + wheel_phase)).sin();
            turns + wheel + worm * (TAU * (handle + worm_phase)).sin()
        };
        handle.iter().map(&mut at).collect()
    }

    /// Holes drilled where the spindle stands, as points of the plate about its own bore.
    fn drilled(&self, rng: &mut ChaCha8Rng, handle: &[f64]) -> Vec<Point> {
        let spindle = self.spindle(rng, handle);
        let (ring, stray) = (mm(self.making.ring), mm(self.making.drilling));
        let points: Vec<Point> =
            spindle.iter().map(|&turns| astray(rng, turns, ring, stray)).collect();
        put_on(rng, &points, mm(self.making.sources.blank_run_out))
    }

    /// The finished work's cuts, as points of its rim about its own centre, which is off
    /// one way or the opposite one.
    fn finished(&self, rng: &mut ChaCha8Rng, handle: &[f64]) -> [Vec<Point>; 2] {
        let spindle = self.spindle(rng, handle);
        let points: Vec<Point> =
            spindle.iter().map(|&turns| astray(rng, turns, self.work_radius, 0.0)).collect();
        let direction: f64 = rng.random();
        [0.0, 0.5]
            .map(|more| moved(&points, mm(self.making.sources.blank_run_out), direction + more))
    }
}

/// Anywhere from −1 to 1, all alike.
pub(crate) fn even(rng: &mut ChaCha8Rng) -> f64 {
    rng.random_range(-1.0..=1.0)
}

/// A point at `turns` and `radius`, up to `stray` along its ring and across it.
pub(crate) fn astray(rng: &mut ChaCha8Rng, turns: f64, radius: f64, stray: f64) -> Point {
    let (sin, cos) = (TAU * turns).sin_cos();
    let (along, across) = (even(rng) * stray, even(rng) * stray);
    [(radius + across) * cos - along * sin, (radius + across) * sin + along * cos]
}

/// The points as seen from an axis `off` from theirs, in a direction that is drawn.
pub(crate) fn put_on(rng: &mut ChaCha8Rng, points: &[Point], off: f64) -> Vec<Point> {
    moved(points, off, rng.random())
}

/// The points moved by `off` in a direction of so many turns.
fn moved(points: &[Point], off: f64, direction: f64) -> Vec<Point> {
    let (sin, cos) = (TAU * direction).sin_cos();
    points.iter().map(|[x, y]| [x + off * cos, y + off * sin]).collect()
}

/// By how many turns each point is off its place among as many equal parts.
pub(crate) fn angles_off(points: &[Point]) -> Vec<f64> {
    let count = points.len() as f64;
    let off = |(k, [x, y]): (usize, &Point)| {
        let off = y.atan2(*x) / TAU - k as f64 / count;
        off - off.round()
    };
    points.iter().enumerate().map(off).collect()
}

/// What all trials show, in arc-seconds.
#[derive(Clone, Copy, Default)]
pub(crate) struct Tally {
    count: f64,
    squares: f64,
    apart_squares: f64,
    worst: f64,
    apart: f64,
}

impl Tally {
    pub(crate) fn add(&mut self, off: &[f64]) {
        let last = off.last().copied().unwrap_or(0.0);
        let mut before = last;
        for &off in off {
            let (error, apart) = (off * A_TURN, (off - before) * A_TURN);
            self.count += 1.0;
            self.squares += error * error;
            self.apart_squares += apart * apart;
            self.worst = self.worst.max(error.abs());
            self.apart = self.apart.max(apart.abs());
            before = off;
        }
    }

    /// Holds it against what was predicted; how many times larger the predicted
    /// greatest sizes are than what was met, total and adjacent. The RMS of neighbours is
    /// only held where `neighbours` are known to be alike.
    #[track_caller]
    pub(crate) fn held(&self, what: &str, said: &Sums, neighbours: bool) -> [f64; 2] {
        let rms = (self.squares / self.count).sqrt();
        let apart = (self.apart_squares / self.count).sqrt();
        let roots =
            [("RMS", rms, said.rms.value), ("neighbours' RMS", apart, said.adjacent_rms.value)];
        for (name, met, said) in roots.into_iter().take(if neighbours { 2 } else { 1 }) {
            // Below a thousandth of a second only the second order is left.
            let off = (met - said).abs();
            assert!(off <= RMS_WITHIN * said + 1e-3, "{what}: {name} {met} met, {said} said");
        }
        let bounds = [(self.worst, said.total.value), (self.apart, said.adjacent.value)];
        bounds.map(|(met, said)| {
            // The core's sizes are of the first order: right to stray over radius.
            assert!(met <= said * 1.002 + 1e-3, "{what}: {met} met, at most {said} said");
            said / met.max(1e-9)
        })
    }
}

/// The simulation of one shop, held against its plan; the loosest bounds of it.
fn held(what: &str, shop: &Shop, trials: u32, seed: u64) -> [f64; 4] {
    let mut rng = ChaCha8Rng::seed_from_u64(seed);
    let mut plates = [Tally::default(); GENERATIONS];
    let mut works = [Tally::default(); GENERATIONS];
    for _ in 0..trials {
        shop.trial(&mut rng, &mut plates, &mut works);
    }
    let mut loosest = [0.0_f64; 4];
    for (number, generation) in shop.plan.generations.iter().take(GENERATIONS).enumerate() {
        let what = format!("{what}, generation {}", number + 1);
        let plate = plates[number].held(&format!("{what}, plate"), &generation.plate.sum, true);
        let work = works[number].held(&format!("{what}, work"), &generation.work.sum, true);
        for (loosest, met) in loosest.iter_mut().zip([plate, work].concat()) {
            *loosest = loosest.max(met);
        }
    }
    loosest
}

pub(crate) fn length(num: i64, den: i64) -> Length {
    Length::from_mm(Fraction::new(num, den).expect("a length"))
}

pub(crate) fn seconds(seconds: i64) -> Angle {
    Angle::from_arcsec(Fraction::whole(seconds)).expect("an angle")
}

/// Every source at work, none of them lost beside the others.
fn all_sources() -> Sources {
    Sources {
        wheel: seconds(20),
        worm: seconds(8),
        hole: length(3, 100),
        pin_play: length(1, 25),
        plate_run_out: length(1, 50),
        same_side: false,
        blank_run_out: length(1, 250),
        ..Sources::default()
    }
}

fn shop_head(ratio: u32, set: &str) -> Head {
    let slack = Fraction::new(1, 2000).expect("a fraction");
    Head { slack, gears: handturn::List::new(), ..heads::head(ratio, set) }
}

fn primes() -> Vec<u32> {
    (53..=251).filter(|n| (2..*n).all(|d| n % d != 0)).collect()
}

/// Runs `jobs` on two threads; the loosest of what they come to.
fn shared<J: Sync>(jobs: &[J], work: impl Fn(&J) -> [f64; 4] + Sync) -> [f64; 4] {
    let next = std::sync::atomic::AtomicUsize::new(0);
    let loosest = std::sync::Mutex::new([0.0_f64; 4]);
    std::thread::scope(|scope| {
        for _ in 0..2 {
            scope.spawn(|| {
                roomy(|| {
                    while let Some(job) =
                        jobs.get(next.fetch_add(1, std::sync::atomic::Ordering::Relaxed))
                    {
                        let met = work(job);
                        let mut loosest = loosest.lock().expect("no job failed");
                        for (loosest, met) in loosest.iter_mut().zip(met) {
                            *loosest = loosest.max(met);
                        }
                    }
                });
            });
        }
    });
    loosest.into_inner().expect("no job failed")
}

#[test]
fn what_a_ladder_predicts_is_what_comes_of_it() {
    let mut jobs = Vec::new();
    for count in primes() {
        for ratio in [40, 60, 90] {
            // By nearest holes on one set, by what errs least on the other.
            jobs.extend([(count, ratio, "A", true), (count, ratio, "B", false)]);
        }
    }
    assert_eq!(jobs.len(), 39 * 6);
    let loosest = shared(&jobs, |&(count, ratio, set, by_nearest)| {
        let head = shop_head(ratio, set);
        let shop = Shop::new(&head, count, by_nearest, all_sources(), length(1, 20));
        let what = format!("{count} at {ratio}:1, set {set}");
        held(&what, &shop, 300, u64::from(count * 1000 + ratio))
    });
    // Met: the plate's bounds are 1.14 and 1.20 of what was met, the work's 1.17 and 1.42.
    println!("greatest said over greatest met: {loosest:?}");
    assert!(loosest.iter().all(|&loose| loose < 1.5), "{loosest:?}");
}

#[test]
fn each_source_alone_comes_through_the_generations_as_said() {
    let none = Sources::NONE;
    let alone = [
        ("rounding", none, length(0, 1)),
        ("drilling", none, length(1, 20)),
        ("wheel", Sources { wheel: seconds(60), ..none }, length(0, 1)),
        ("worm", Sources { worm: seconds(60), ..none }, length(0, 1)),
        ("holes", Sources { hole: length(1, 20), ..none }, length(0, 1)),
        ("pin", Sources { pin_play: length(1, 20), ..none }, length(0, 1)),
        ("plate", Sources { plate_run_out: length(1, 20), ..none }, length(0, 1)),
        ("blank", Sources { blank_run_out: length(1, 20), ..none }, length(0, 1)),
        ("slack", Sources { same_side: false, ..none }, length(0, 1)),
    ];
    let mut jobs = Vec::new();
    for count in [53, 59, 61, 89, 127, 223, 251] {
        for (ratio, set, by_nearest) in [(40, "A", true), (60, "A", true), (90, "B", false)] {
            jobs.extend(alone.iter().map(|alone| (count, ratio, set, by_nearest, alone)));
        }
    }
    let loosest = shared(&jobs, |&(count, ratio, set, by_nearest, (name, sources, drilling))| {
        let shop = Shop::new(&shop_head(ratio, set), count, by_nearest, *sources, *drilling);
        held(&format!("{name}, {count} at {ratio}:1, set {set}"), &shop, 150, 7)
    });
    // 2.3 for compound's two rings alone, which one run-out moves: they are said as two.
    println!("greatest said over greatest met: {loosest:?}");
    assert!(loosest.iter().all(|&loose| loose < 2.5), "{loosest:?}");
}
