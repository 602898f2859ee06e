//! Wires at rest in a thread, by trying: no equation of contact is used. For every
//! slant of the wire its axis must keep off the thread's axis by as much as the worst
//! point of the flank asks; the slant that lets it lie lowest is the one it takes.
use handturn::measure::{Angle, Length};
use handturn::number::Fraction;
use handturn::thread::wires::{self, Measured};
use rand::prelude::*;
use rand_chacha::ChaCha8Rng;

/// A thread as plain floats.
struct Solid {
    tan: f64,
    space: f64,
    lead: f64,
    pitch_diameter: f64,
    root: f64,
    crest: f64,
}

impl Solid {
    /// How far from the thread's axis a wire slanting by `slant` must stay because of
    /// the flank's point at radius `r` and angle `phi`.
    fn asks(&self, wire: f64, slant: f64, r: f64, phi: f64) -> f64 {
        let z = self.lead * phi / std::f64::consts::TAU
            + self.space / 2.0
            + (r - self.pitch_diameter / 2.0) * self.tan;
        let off = z * slant.cos() - r * phi.sin() * slant.sin();
        let under = wire * wire / 4.0 - off * off;
        if under < 0.0 { f64::NEG_INFINITY } else { r * phi.cos() + under.sqrt() }
    }

    /// The most that any point of the flank from root to crest asks: a grid that
    /// closes in on its best point.
    fn keeps_off(&self, wire: f64, slant: f64) -> f64 {
        const HALF: i32 = 5;
        let mut best = f64::NEG_INFINITY;
        let (mut r, mut phi) = ((self.root + self.crest) / 2.0, 0.0);
        let (mut wide, mut turn) = ((self.crest - self.root) / 2.0, 1.2);
        for round in 0..60 {
            let half = if round == 0 { 40 } else { HALF };
            let (centre_r, centre_phi) = (r, phi);
            for i in -half..=half {
                let at = centre_r + wide * f64::from(i) / f64::from(half);
                let at = at.clamp(self.root, self.crest);
                for j in -half..=half {
                    let angle = centre_phi + turn * f64::from(j) / f64::from(half);
                    let asks = self.asks(wire, slant, at, angle);
                    if asks > best {
                        (best, r, phi) = (asks, at, angle);
                    }
                }
            }
            let closer = if round == 0 { 0.1 } else { 0.6 };
            wide *= closer;
            turn *= closer;
        }
        best
    }

    /// The least distance over all slants: golden section from flat to steep.
    fn rests(&self, wire: f64) -> f64 {
        let golden = (5.0_f64.sqrt() - 1.0) / 2.0;
        let steep = (self.lead / (std::f64::consts::PI * self.root * 2.0)).atan() * 1.5;
        let (mut low, mut high) = (0.0, steep);
        let mut left = high - golden * (high - low);
        let mut right = low + golden * (high - low);
        let mut at = [left, right].map(|slant| self.keeps_off(wire, slant));
        while high - low > 1e-7 {
            if at[0] < at[1] {
                high = right;
                (right, at[1]) = (left, at[0]);
                left = high - golden * (high - low);
                at[0] = self.keeps_off(wire, left);
            } else {
                low = left;
                (left, at[0]) = (right, at[1]);
                right = low + golden * (high - low);
                at[1] = self.keeps_off(wire, right);
            }
        }
        at[0].min(at[1])
    }
}

fn mm(value: f64) -> (Length, f64) {
    let fraction = Fraction::new((value * 1e6).round() as i64, 1_000_000).expect("small");
    (Length::from_mm(fraction), handturn::number::float::of(fraction))
}

/// A thread from chance, its flanks so many quarters of a degree off square: one to six
/// starts, lead angles up to 44°. Half of its flank lies above the pitch line and half below.
fn chance(rng: &mut ChaCha8Rng, quarters: i64) -> (Measured, Solid) {
    let half_angle =
        Angle::from_degrees(Fraction::new(quarters, 4).expect("small")).expect("small");
    let turns = handturn::number::float::of(half_angle.turns());
    let tan = (turns * std::f64::consts::TAU).tan();
    let (pitch, pitch_f) = mm(rng.random_range(0.2..12.0));
    let starts = rng.random_range(1..=6_u32);
    let lead = pitch_f * f64::from(starts);
    let lead_angle = rng.random_range(0.5..44.0_f64).to_radians();
    let (diameter, pitch_diameter) = mm(lead / std::f64::consts::PI / lead_angle.tan());
    let (space, space_f) = mm(pitch_f / 2.0);
    // Flank as high as a groove of this width can be, or a fifth of the diameter.
    let height = (0.8 * space_f / 2.0 / tan).min(pitch_diameter / 5.0);
    let (outside, crest) = mm(pitch_diameter + 2.0 * height);
    let (root, root_f) = mm(pitch_diameter - 2.0 * height);
    let thread = Measured {
        half_angle,
        pitch,
        starts,
        space,
        pitch_least: diameter,
        pitch_greatest: diameter,
        outside_least: outside,
        outside_greatest: outside,
        crest: Length::from_mm(Fraction::ZERO),
        root,
    };
    let (crest, root) = (crest / 2.0, root_f / 2.0);
    (thread, Solid { tan, space: space_f, lead, pitch_diameter, root, crest })
}

/// Compares `cases` threads; how many were compared and how many refused.
fn compare(rng: &mut ChaCha8Rng, cases: u32, quarters: fn(&mut ChaCha8Rng) -> i64) -> (u32, u32) {
    let (mut compared, mut refused) = (0, 0);
    for _ in 0..cases {
        let quarters = quarters(rng);
        let (thread, solid) = chance(rng, quarters);
        let Ok(range) = wires::range(&thread) else { continue };
        let part = rng.random_range(0.02..0.98);
        let wire = range.least.value + part * (range.greatest.value - range.least.value);
        let (wire, wire_f) = mm(wire);
        let centre = solid.rests(wire_f);
        let Ok(over) = wires::over(&thread, wire, thread.pitch_greatest) else {
            // Steep and tall: a straight wire lies on the edges of the crests, and
            // would lie deeper if the flanks ended lower.
            let low = Solid { crest: solid.pitch_diameter / 2.0, ..solid };
            let deeper = low.rests(wire_f);
            assert!(deeper < centre - 1e-9, "{thread:?}\n{wire:?}: {centre}, {deeper}");
            refused += 1;
            continue;
        };
        let (found, slow) = (over.three.value, 2.0 * centre + wire_f);
        let off = (found - slow).abs() / solid.pitch_diameter;
        assert!(off < 1e-9, "{thread:?}\n{wire:?}: {found} by contact, {slow} by trying");
        compared += 1;
    }
    (compared, refused)
}

#[test]
fn contact_agrees_with_trying_every_slant_and_point() {
    let mut rng = ChaCha8Rng::seed_from_u64(0x0077_6972_6573);
    let forms = |rng: &mut ChaCha8Rng| *[120, 110, 95, 60, 58].choose(rng).expect("some");
    let (compared, refused) = compare(&mut rng, 130, forms);
    assert!(compared >= 100 && refused == 0, "{compared} compared, {refused} refused");
    let any = |rng: &mut ChaCha8Rng| rng.random_range(40..=200);
    let (compared, refused) = compare(&mut rng, 60, any);
    assert!(compared >= 40, "{compared} compared, {refused} refused");
    let narrow = |rng: &mut ChaCha8Rng| rng.random_range(40..=50);
    let (compared, refused) = compare(&mut rng, 140, narrow);
    assert!(compared >= 20 && refused >= 1, "{compared} compared, {refused} refused");
}
