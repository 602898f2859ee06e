//! Balls and radii by steps, by cutting them: each line of the table takes away a set of
//! points, and what is left is looked at along rays from the middle of the curve.
use handturn::bench::steps::{Ask, By, Plan, Shape, Tool, plan};
use handturn::measure::Length;
use handturn::number::{Fraction, float};
use rand::prelude::*;
use rand_chacha::ChaCha8Rng;
use std::f64::consts::FRAC_PI_2;

fn mm(value: f64) -> (Length, f64) {
    let fraction = Fraction::new((value * 1e3).round() as i64, 1_000).expect("small");
    (Length::from_mm(fraction), float::of(fraction))
}

/// What one line takes away: metal beyond `p` stays, metal nearer to the axis than `q`
/// stays, and so does the inner corner that the nose leaves round. Measured so that the
/// cut comes from small `p` and large `q`.
struct Cut {
    p: f64,
    q: f64,
    nose: f64,
}

impl Cut {
    fn takes(&self, (p, q): (f64, f64)) -> bool {
        let (from_p, from_q) = (p - (self.p - self.nose), (self.q + self.nose) - q);
        if from_p > self.nose || from_q > self.nose {
            return false;
        }
        from_p <= 0.0 || from_q <= 0.0 || from_p.hypot(from_q) <= self.nose
    }
}

/// A quarter of a curve: its cuts, the middle, the way out of the curve to its free side,
/// and from where to where it is claimed to be cut, in radians from the axis.
struct Quarter {
    cuts: Vec<Cut>,
    /// Whether the place is free from the start: faced or turned before.
    free: Box<dyn Fn((f64, f64)) -> bool>,
    middle: (f64, f64),
    hollow: bool,
    range: (f64, f64),
}

fn quarters(ask: &Ask, found: &Plan) -> Vec<Quarter> {
    let of = |length: Length| float::of(length.mm());
    let radius = of(ask.radius);
    let (nose, width) = match ask.tool {
        Tool::Round { nose } => (of(nose), 2.0 * of(nose)),
        Tool::Square { width } => (0.0, of(width)),
    };
    let steps: Vec<_> = (0..found.cuts).map(|k| found.step(k).expect("a cut")).collect();
    let cuts = |behind: bool, p: &dyn Fn(f64) -> f64, out: f64| -> Vec<Cut> {
        let mine = steps.iter().filter(|step| step.behind == behind);
        mine.map(|step| Cut { p: p(of(step.along)), q: out * of(step.across) / 2.0, nose })
            .collect()
    };
    let round = |cuts: Vec<Cut>, blank: f64, middle: (f64, f64), faced: bool, least: f64| {
        let most = ((blank - middle.1) / radius).min(1.0).asin();
        let free = move |(p, q): (f64, f64)| (faced && p <= 0.0) || q >= blank;
        Quarter { cuts, free: Box::new(free), middle, hollow: false, range: (least, most) }
    };
    match ask.shape {
        Shape::Ball { neck, .. } => {
            let blank = of(found.blank.expect("a ball has one")) / 2.0;
            let middle = (radius, 0.0);
            let mut all = vec![round(cuts(false, &|along| along, 1.0), blank, middle, true, 0.0)];
            if neck.is_some() {
                let back = cuts(true, &|along| 2.0 * radius + width - along, 1.0);
                let last = back.last().expect("a neck");
                let (p, q) = (last.p - nose - middle.0, last.q + nose);
                all.push(round(back, blank, middle, false, q.atan2(-p)));
            }
            all
        }
        Shape::Edge { outside } => {
            let out = of(outside) / 2.0;
            let middle = (radius, out - radius);
            vec![round(cuts(false, &|along| along, 1.0), out, middle, true, 0.0)]
        }
        Shape::Hollow { inside } => {
            let middle = (-radius, of(inside) / 2.0 + radius);
            let free = move |(p, q): (f64, f64)| p <= middle.0 && q >= middle.1;
            let cuts = cuts(false, &|along| -along, 1.0);
            let range = (0.0, FRAC_PI_2);
            vec![Quarter { cuts, free: Box::new(free), middle, hollow: true, range }]
        }
        Shape::Cup { depth } => {
            let middle = (of(depth) - radius, 0.0);
            let most = (-middle.0 / radius).acos();
            let cuts = cuts(false, &|along| along, -1.0);
            let free = |(p, _): (f64, f64)| p <= 0.0;
            let range = (0.0, most);
            vec![Quarter { cuts, free: Box::new(free), middle, hollow: true, range }]
        }
    }
}

impl Quarter {
    /// The point at an angle from the axis and a distance from the middle.
    fn point(&self, angle: f64, away: f64) -> (f64, f64) {
        let sign = if self.hollow { 1.0 } else { -1.0 };
        (self.middle.0 + sign * away * angle.cos(), self.middle.1 - sign * away * angle.sin())
    }

    fn metal(&self, point: (f64, f64)) -> bool {
        !(self.free)(point) && !self.cuts.iter().any(|cut| cut.takes(point))
    }
}

fn ask(rng: &mut ChaCha8Rng) -> Ask {
    let (radius, r) = mm(rng.random_range(1.0..40.0));
    let shape = match rng.random_range(0..5) {
        0 | 1 => {
            let (stock, s) = mm(r * rng.random_range(0.5..3.0));
            let neck = mm(s.min(2.0 * r) * rng.random_range(0.0..0.95)).0;
            Shape::Ball { stock, neck: rng.random_bool(0.7).then_some(neck) }
        }
        2 => Shape::Edge { outside: mm(2.0 * r + rng.random_range(0.0..30.0)).0 },
        3 => Shape::Hollow { inside: mm(rng.random_range(0.0..40.0)).0 },
        _ => Shape::Cup { depth: mm((r * rng.random_range(0.05..1.0_f64)).max(0.001)).0 },
    };
    let tool = if rng.random_bool(0.4) {
        Tool::Square { width: mm(rng.random_range(0.0..5.0)).0 }
    } else {
        Tool::Round { nose: mm((r * rng.random_range(0.01..0.95_f64)).max(0.01)).0 }
    };
    let division = *[mm(0.001).0, mm(0.01).0, mm(0.05).0].choose(rng).expect("some");
    let inch = Length::from_mm(Fraction::new(127, 5000).expect("a thou"));
    let division = if rng.random_bool(0.2) { inch } else { division };
    let by = if rng.random_bool(0.5) {
        By::Cuts(rng.random_range(1..60))
    } else {
        By::Scallop(mm(r * rng.random_range(0.005..0.1) + 0.02).0)
    };
    Ask { shape, radius, tool, division, by }
}

#[test]
fn steps_lie_on_the_curve_within_their_scallop_and_never_in_it() {
    let mut rng = ChaCha8Rng::seed_from_u64(0x62_616c_6c73);
    let (mut compared, mut kinds) = (0, [0; 5]);
    for _ in 0..1000 {
        let ask = ask(&mut rng);
        let Ok(found) = plan(&ask) else { continue };
        compared += 1;
        let kind = match ask.shape {
            Shape::Ball { neck: None, .. } => 0,
            Shape::Ball { .. } => 1,
            Shape::Edge { .. } => 2,
            Shape::Hollow { .. } => 3,
            Shape::Cup { .. } => 4,
        };
        kinds[kind] += 1;
        let radius = float::of(ask.radius.mm());
        let scallop = found.scallop.value;
        assert!(found.scallop.bound <= 1e-12 * (1.0 + radius), "{ask:?} {:?}", found.scallop);
        if let By::Scallop(most) = ask.by {
            assert!(scallop <= float::of(most.mm()), "{ask:?}");
        }
        // The dials show every reading.
        for k in 0..found.cuts {
            let step = found.step(k).expect("a cut");
            for length in [step.along, step.across] {
                let marks = length.mm().checked_div(ask.division.mm()).expect("small");
                assert!(marks.is_whole(), "{ask:?} {step:?}");
            }
            assert!(step.along <= found.reach, "{ask:?} {step:?}");
        }
        let mut highest: f64 = 0.0;
        for quarter in quarters(&ask, &found) {
            let sign = if quarter.hollow { -1.0 } else { 1.0 };
            let (from, to) = quarter.range;
            for k in 0..=1500 {
                let angle = from + (to - from) * f64::from(k) / 1500.0;
                let at = |high: f64| quarter.point(angle, radius + sign * high);
                let cut_by = |point| quarter.cuts.iter().find(|cut| cut.takes(point));
                // Just inside the curve nothing was cut.
                let tiny = 1e-9 * (1.0 + radius);
                assert!(cut_by(at(-tiny)).is_none(), "{ask:?} cut into at {angle}");
                // Above the scallop nothing stands, however far out.
                for part in [1e-9, 0.01, 0.1, 0.5, 1.0, 3.0] {
                    let high =
                        scallop + tiny + part * if quarter.hollow { 0.3 * radius } else { radius };
                    let out = high < 0.8 * radius || !quarter.hollow;
                    assert!(!out || !quarter.metal(at(high)), "{ask:?} {high} at {angle}");
                }
                // How high it stands.
                let (mut low, mut high) = (0.0, scallop + tiny);
                for _ in 0..40 {
                    let middle = (low + high) / 2.0;
                    if quarter.metal(at(middle)) { low = middle } else { high = middle }
                }
                highest = highest.max(low);
            }
        }
        // And as high as it says, something does, but for what lies between two rays.
        assert!(highest >= scallop - 3e-3 * radius, "{ask:?}: {highest} of {scallop}");
    }
    assert!(compared > 700 && kinds.iter().all(|kind| *kind > 40), "{compared} {kinds:?}");
}
