//! Change gears for a lead: the core's search beside plain nested loops over the
//! same gears, which keep as many of the nearest trains.
use crate::{best_of, micro};
use handturn::head::{Gear, Mounting};
use handturn::number::Fraction;
use handturn::train::{Search, Senses, Six, Wanted};
use std::hint::black_box;
use std::time::Duration;

/// 24 different gears, one of each.
const GEARS: [u16; 24] = [
    20, 24, 25, 28, 30, 32, 35, 36, 38, 40, 42, 44, 45, 48, 50, 52, 55, 56, 60, 63, 65, 70, 80, 127,
];

/// As many trains as the page lists.
const EACH: usize = 8;

pub(crate) fn print() {
    println!("\nChange gears: the {EACH} nearest of all trains of 24 different gears.");
    println!("Plain: nested loops in floats. On every stud: each gear tried on each stud, so that");
    println!(
        "every order comes up; once: each choice of gears once, the cheapest loops there are.\n"
    );
    let heads = ["mean", "worst", "plain, every stud", "times", "plain, once", "times"];
    println!(
        "{:<34} {:>10} {:>10} {:>18} {:>7} {:>12} {:>7}",
        "", heads[0], heads[1], heads[2], heads[3], heads[4], heads[5]
    );
    let exact: Vec<Fraction> = leads().collect();
    let odd: Vec<Fraction> = (1..=100_i64).map(|k| part(k * 7_919 + 11, 250_007)).collect();
    row("4 gears, metric and inch leads", &exact, false, Six::Never, 1);
    row("4 gears, no train is exact", &odd, false, Six::Never, 1);
    row("4 gears, module worms (π)", &exact, true, Six::Never, 1);
    row("6 gears, metric and inch leads", &exact, false, Six::Always, 40);
    row("6 gears, no train is exact", &odd, false, Six::Always, 40);
    row("6 gears, module worms (π)", &exact, true, Six::Always, 40);
}

/// Metric pitches, and threads to the inch, on a screw of 8 to the inch.
fn leads() -> impl Iterator<Item = Fraction> {
    let metric = (10..=80_i64).map(|twentieths| part(twentieths * 40, 20 * 127));
    metric.chain((4..=60).map(|tpi| part(8, tpi)))
}

fn part(num: i64, den: i64) -> Fraction {
    Fraction::new(num, den).expect("a fraction")
}

/// Times every ratio, and by plain loops every `stride`-th one (all of them once each
/// way of looping where four gears are wanted).
fn row(what: &str, ratios: &[Fraction], times_pi: bool, six: Six, stride: usize) {
    let times: Vec<Duration> =
        ratios.iter().map(|&ratio| best_of(3, || search(ratio, times_pi, six))).collect();
    let mean = mean(&times);
    let worst = times.iter().max().expect("one at least");
    let gears: Vec<f64> = GEARS.iter().map(|&teeth| f64::from(teeth)).collect();
    let plain = |loops: fn(&[f64], f64) -> Nearest| {
        let sample = ratios.iter().step_by(stride);
        let pi = if times_pi { std::f64::consts::PI } else { 1.0 };
        let time = |ratio: &Fraction| {
            let wanted = handturn::number::float::of(*ratio) * pi;
            best_of(1, || {
                black_box(loops(black_box(&gears), black_box(wanted)));
            })
        };
        self::mean(&sample.map(time).collect::<Vec<_>>())
    };
    let [every, once] = match six {
        Six::Never => [plain(four_every), plain(four_once)],
        _ => [plain(six_every), plain(six_once)],
    };
    let times = |slow: Duration| format!("{:.0}", slow.as_secs_f64() / mean.as_secs_f64());
    println!(
        "{what:<34} {:>10} {:>10} {:>18} {:>7} {:>12} {:>7}",
        micro(mean),
        micro(*worst),
        micro(every),
        times(every),
        micro(once),
        times(once)
    );
}

fn mean(times: &[Duration]) -> Duration {
    times.iter().sum::<Duration>() / u32::try_from(times.len()).expect("few")
}

/// The whole of it, from the list of gears to the mounted trains.
fn search(ratio: Fraction, times_pi: bool, six: Six) {
    let (gears, ratios) = (GEARS.map(|teeth| Gear { teeth, count: 1 }), [ratio]);
    let wanted = Wanted {
        ratios: black_box(&ratios),
        times_pi,
        gears: black_box(&gears),
        mounting: Mounting::default(),
        senses: Senses::Either,
        six,
    };
    let mut search = Search::<EACH>::new();
    assert_eq!(search.run(&wanted, u32::MAX), Ok(true));
    black_box(search.best());
}

/// The nearest trains so far: how far off, and the gears.
struct Nearest {
    best: Vec<(f64, [f64; 6])>,
    worst: f64,
}

impl Nearest {
    fn new() -> Self {
        Self { best: Vec::with_capacity(EACH + 1), worst: f64::INFINITY }
    }

    fn keep(&mut self, off: f64, gears: [f64; 6]) {
        let place = self.best.partition_point(|(other, _)| *other <= off);
        self.best.insert(place, (off, gears));
        self.best.truncate(EACH);
        if self.best.len() == EACH {
            self.worst = self.best[EACH - 1].0;
        }
    }
}

/// Two teeth of margin between a rim and the next stud.
fn clears(studs: f64, rim: f64) -> bool {
    studs > rim + 2.0
}

fn four_every(gears: &[f64], wanted: f64) -> Nearest {
    let mut nearest = Nearest::new();
    for (i, &a) in gears.iter().enumerate() {
        for (j, &b) in gears.iter().enumerate() {
            if j == i {
                continue;
            }
            for (k, &c) in gears.iter().enumerate() {
                if k == i || k == j {
                    continue;
                }
                let (drivers, target) = (a * c, b * wanted);
                for (l, &d) in gears.iter().enumerate() {
                    let off = (drivers / (target * d) - 1.0).abs();
                    if off < nearest.worst
                        && (l != i && l != j && l != k)
                        && (clears(a + b, c) && clears(c + d, b))
                    {
                        nearest.keep(off, [a, b, c, d, 0.0, 0.0]);
                    }
                }
            }
        }
    }
    nearest
}

fn four_once(gears: &[f64], wanted: f64) -> Nearest {
    let mut nearest = Nearest::new();
    for (i, &a) in gears.iter().enumerate() {
        for (k, &c) in gears.iter().enumerate().skip(i + 1) {
            for (j, &b) in gears.iter().enumerate() {
                if j == i || j == k {
                    continue;
                }
                let (drivers, target) = (a * c, b * wanted);
                for (l, &d) in gears.iter().enumerate().skip(j + 1) {
                    let off = (drivers / (target * d) - 1.0).abs();
                    if off < nearest.worst && l != i && l != k {
                        let orders = [(a, b, c, d), (c, b, a, d), (a, d, c, b), (c, d, a, b)];
                        let fits = orders
                            .iter()
                            .find(|(a, b, c, d)| clears(a + b, *c) && clears(c + d, *b));
                        if let Some(&(a, b, c, d)) = fits {
                            nearest.keep(off, [a, b, c, d, 0.0, 0.0]);
                        }
                    }
                }
            }
        }
    }
    nearest
}

fn triple_clears([a, b, c, d, e, f]: [f64; 6]) -> bool {
    clears(a + b, c) && clears(c + d, b) && clears(c + d, e) && clears(e + f, d)
}

fn six_every(gears: &[f64], wanted: f64) -> Nearest {
    let mut nearest = Nearest::new();
    let all = || gears.iter().copied().enumerate();
    for (i, a) in all() {
        for (j, b) in all().filter(|&(j, _)| j != i) {
            for (k, c) in all().filter(|&(k, _)| k != i && k != j) {
                for (l, d) in all().filter(|&(l, _)| l != i && l != j && l != k) {
                    for (m, e) in all().filter(|&(m, _)| m != i && m != j && m != k && m != l) {
                        let (drivers, target) = (a * c * e, b * d * wanted);
                        for (n, f) in all() {
                            let off = (drivers / (target * f) - 1.0).abs();
                            if off < nearest.worst
                                && ![i, j, k, l, m].contains(&n)
                                && triple_clears([a, b, c, d, e, f])
                            {
                                nearest.keep(off, [a, b, c, d, e, f]);
                            }
                        }
                    }
                }
            }
        }
    }
    nearest
}

fn six_once(gears: &[f64], wanted: f64) -> Nearest {
    let mut nearest = Nearest::new();
    let after = |place: usize| gears.iter().copied().enumerate().skip(place);
    for (i, a) in after(0) {
        for (k, c) in after(i + 1) {
            for (m, e) in after(k + 1) {
                let over = [i, k, m];
                for (j, b) in after(0).filter(|(j, _)| !over.contains(j)) {
                    for (l, d) in after(j + 1).filter(|(l, _)| !over.contains(l)) {
                        let (drivers, target) = (a * c * e, b * d * wanted);
                        for (n, f) in after(l + 1) {
                            let off = (drivers / (target * f) - 1.0).abs();
                            if off < nearest.worst && !over.contains(&n) {
                                if let Some(train) = order([a, c, e], [b, d, f]) {
                                    nearest.keep(off, train);
                                }
                            }
                        }
                    }
                }
            }
        }
    }
    nearest
}

/// The first order that clears.
fn order(over: [f64; 3], under: [f64; 3]) -> Option<[f64; 6]> {
    let orders = [[0, 1, 2], [0, 2, 1], [1, 0, 2], [1, 2, 0], [2, 0, 1], [2, 1, 0]];
    let pairs = orders.iter().flat_map(|o| orders.iter().map(move |u| (o, u)));
    let train = |(o, u): (&[usize; 3], &[usize; 3])| {
        [over[o[0]], under[u[0]], over[o[1]], under[u[1]], over[o[2]], under[u[2]]]
    };
    pairs.map(train).find(|&train| triple_clears(train))
}
