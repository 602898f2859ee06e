//! Springs in wide numbers.
use crate::part;
use crate::short::{mm, ratio, whole, wide};
use crate::wholes::{hold_all, own};
use crate::wide::Wide;
use handturn::bench::spring::{Compression, Ends, Extension, Torsion, arbor};
use handturn::bench::wire::{Band, KSI};
use handturn::measure::Length;

/// Wire and coil.
struct Coil {
    d: Wide,
    mean: Wide,
    index: Wide,
}

impl Coil {
    fn new(wire: Length, mean: Length) -> Self {
        let (d, mean) = (wide(wire), wide(mean));
        Self { index: mean.over(&d), d, mean }
    }

    fn wahl(&self) -> Wide {
        let four = self.index.by(&whole(4));
        let curve = four.minus(&whole(1)).over(&four.minus(&whole(4)));
        curve.plus(&ratio(615, 1000).over(&self.index))
    }

    fn bergstrasser(&self) -> Wide {
        let four = self.index.by(&whole(4));
        four.plus(&whole(2)).over(&four.minus(&whole(3)))
    }

    /// Bending at the inside of the curve.
    fn curved(&self) -> Wide {
        let c = &self.index;
        let square = c.by(c).by(&whole(4));
        let under = c.by(&c.minus(&whole(1))).by(&whole(4));
        square.minus(c).minus(&whole(1)).over(&under)
    }

    /// π d³.
    fn cube(&self) -> Wide {
        self.d.by(&self.d).by(&self.d).by(&Wide::pi())
    }

    fn fourth(&self) -> Wide {
        let square = self.d.by(&self.d);
        square.by(&square)
    }

    fn shear(&self, newtons: &Wide) -> Wide {
        newtons.by(&whole(8)).by(&self.mean).over(&self.cube())
    }

    fn rate(&self, shear: &Wide, active: &Wide) -> Wide {
        let cube = self.mean.by(&self.mean).by(&self.mean);
        shear.by(&self.fourth()).over(&cube.by(&whole(8)).by(active))
    }

    fn long(&self, coils: &Wide, pitch: &Wide) -> Wide {
        let round = self.mean.by(&Wide::pi());
        round.by(&round).plus(&pitch.by(pitch)).sqrt().by(coils)
    }
}

/// Wire and mean diameter, index from 2 to 16.
fn sizes(k: i64) -> (Length, Length) {
    let wire = k * 7_919 % 4_987 + 13;
    (mm(wire, 1_000), mm(wire * (2_000 + k * 104_729 % 14_000), 1_000_000))
}

#[test]
fn springs_that_push() {
    for k in 1..=300_i64 {
        let (wire, mean) = sizes(k);
        let (ends, dead) = [
            (Ends::Plain, 0),
            (Ends::PlainGround, 1),
            (Ends::Squared, 2),
            (Ends::SquaredGround, 2),
        ][k as usize % 4];
        let total = part(k * 31 % 97 + 14, 4);
        let free =
            Length::from_mm(wire.mm().checked_mul(part(k * 17 % 200 + 320, 10)).expect("small"));
        let (shear, load) = (26_000 + k * 193, k * 37 % 501);
        let (shear_mpa, load_n) = (shear as f64, load as f64 / 8.0);
        let spring = Compression { wire, mean, total, ends, free, shear_mpa, load_n };
        let found = spring.pushed().expect("it moves");
        let coil = Coil::new(wire, mean);
        let active = Wide::of(total).minus(&whole(dead));
        assert_eq!(found.active, total.checked_sub(part(dead, 1)).expect("small"));
        let (shear, load) = (whole(shear), ratio(load, 8));
        let rate = coil.rate(&shear, &active);
        let free = wide(free);
        let solid = rate.by(&free.minus(&wide(found.solid)));
        let (wahl, berg) = (coil.wahl(), coil.bergstrasser());
        let gives = load.over(&rate);
        let length = free.minus(&gives);
        let most = free.magnitude() + gives.magnitude();
        let what = format!("{spring:?}");
        hold_all(
            &what,
            &found,
            &[
                own("index", coil.index.clone(), 8.0),
                own("rate", rate.clone(), 40.0),
                own("solid_n", solid.clone(), 48.0),
                own("solid_stress", coil.shear(&solid).by(&wahl), 160.0),
                own("wahl", wahl.clone(), 80.0),
                own("bergstrasser", berg.clone(), 48.0),
                own("gives", gives, 48.0),
                ("length", length, most, 48.0),
                own("stress", coil.shear(&load).by(&wahl), 120.0),
                own("stress_bergstrasser", coil.shear(&load).by(&berg), 100.0),
                own("cut", coil.long(&Wide::of(total), &wide(found.pitch)), 24.0),
                own("slender", free.over(&coil.mean), 8.0),
            ],
        );
        // A rate that its own coils, more or less, would have.
        let wanted = found.rate.value * 1.07;
        let for_it = spring.coils_for(wanted).expect("not too many");
        let coils = coil.rate(&shear, &whole(1)).over(&Wide::of_float(wanted));
        hold_all(&what, &for_it, &[own("active", coils, 48.0)]);
    }
}

/// What coils of an index from 3 on take, in hundreds of pounds-force on a square inch.
const TENSION: [(i64, i64); 14] = [
    (204, 284),
    (182, 259),
    (161, 235),
    (143, 214),
    (127, 194),
    (112, 177),
    (99, 161),
    (88, 146),
    (78, 133),
    (69, 121),
    (61, 110),
    (54, 100),
    (48, 91),
    (42, 82),
];

/// The middle of what such a coil takes, as a force.
fn usual(coil: &Coil) -> Wide {
    let index = coil.index.float();
    let at = ((index - 3.0).max(0.0) as usize).min(12);
    let middle = |(least, most): (i64, i64)| ratio(least + most, 20);
    let (low, high) = (middle(TENSION[at]), middle(TENSION[at + 1]));
    let beyond = coil.index.minus(&whole(3 + at as i64));
    let beyond = match index {
        c if c <= 3.0 => whole(0),
        c if c >= 16.0 => whole(1),
        _ => beyond,
    };
    let ksi = low.plus(&high.minus(&low).by(&beyond));
    ksi.by(&Wide::of_float(KSI)).by(&coil.cube()).over(&coil.mean.by(&whole(8)))
}

#[test]
fn springs_that_pull() {
    for k in 1..=300_i64 {
        let (wire, mean) = sizes(k);
        let body = part(k * 31 % 97 + 4, 4);
        let (shear, modulus, load) = (26_000 + k * 193, 100_000 + k * 411, k * 37 % 501);
        let given = (k % 2 == 0).then_some(k % 23);
        let loops =
            |n: i64| Length::from_mm(wire.mm().checked_mul(part(n % 40 + 11, 10)).expect("small"));
        let loop_radius = (k % 3 == 0).then(|| loops(k));
        let bend_radius = (k % 5 < 2).then(|| loops(k * 7));
        let spring = Extension {
            wire,
            mean,
            body,
            shear_mpa: shear as f64,
            modulus_mpa: modulus as f64,
            tension_n: given.map(|n| n as f64 / 4.0),
            loop_radius,
            bend_radius,
            load_n: load as f64 / 8.0,
        };
        let found = spring.pulled().expect("in bounds");
        let coil = Coil::new(wire, mean);
        let (shear, modulus, load) = (whole(shear), whole(modulus), ratio(load, 8));
        let active = Wide::of(body).plus(&shear.over(&modulus));
        let rate = coil.rate(&shear, &active);
        let usual = usual(&coil);
        let tension = given.map_or(usual.clone(), |n| ratio(n, 4));
        let more = load.minus(&tension);
        let gives = if more.float() > 0.0 { more.over(&rate) } else { whole(0) };
        let twice = |radius: Length| wide(radius).by(&whole(2));
        let of = |mean: Wide| Coil { index: mean.over(&coil.d), d: coil.d.clone(), mean };
        let top = of(loop_radius.map_or(coil.mean.clone(), twice));
        let bend = of(bend_radius.map_or(coil.d.by(&whole(4)), twice));
        let bending = load.by(&coil.mean).by(&whole(16)).over(&coil.cube()).by(&top.curved());
        let pulled = load.by(&whole(4)).over(&coil.d.by(&coil.d).by(&Wide::pi()));
        let four = bend.index.by(&whole(4));
        let factor = four.minus(&whole(1)).over(&four.minus(&whole(4)));
        let berg = coil.bergstrasser();
        let moved = load.plus(&tension).over(&rate).magnitude();
        let length = wide(found.free).plus(&gives);
        let cut = coil.long(&Wide::of(body), &coil.d).plus(&top.long(&whole(2), &whole(0)));
        hold_all(
            &format!("{spring:?}"),
            &found,
            &[
                own("index", coil.index.clone(), 8.0),
                own("active", active, 8.0),
                own("rate", rate, 40.0),
                own("tension_n", tension, 64.0),
                ("gives", gives, moved, 80.0),
                ("length", length, moved + wide(found.free).magnitude(), 80.0),
                own("factor", berg.clone(), 48.0),
                own("stress", coil.shear(&load).by(&berg), 100.0),
                own("loop_bending", bending.plus(&pulled), 120.0),
                own("loop_shear", coil.shear(&load).by(&factor), 120.0),
                own("cut", cut, 24.0),
            ],
        );
    }
}

#[test]
fn springs_that_turn() {
    for k in 1..=300_i64 {
        let (wire, mean) = sizes(k);
        let body = part(k * 31 % 97 + 4, 4);
        let legs = [mm(k % 40, 1), mm(k * 13 % 57, 2)];
        let (modulus, moment) = (100_000 + k * 411, k * 37 % 501);
        let spring = Torsion {
            wire,
            mean,
            body,
            legs,
            modulus_mpa: modulus as f64,
            moment_nmm: moment as f64 / 8.0,
        };
        let found = spring.turned().expect("in bounds");
        let coil = Coil::new(wire, mean);
        let (modulus, moment) = (whole(modulus), ratio(moment, 8));
        let (coils, legs) = (Wide::of(body), wide(legs[0]).plus(&wide(legs[1])));
        let active = coils.plus(&legs.over(&coil.mean.by(&Wide::pi()).by(&whole(3))));
        let per = |active: &Wide| {
            modulus.by(&coil.fourth()).over(&coil.mean.by(active).by(&ratio(108, 10)))
        };
        let turns = moment.over(&per(&active));
        let wound = coils.plus(&moment.over(&per(&coils)));
        let mean_wound = coil.mean.by(&coils).over(&wound);
        let inside = mean_wound.minus(&coil.d);
        let pin = if inside.float() > 0.0 { inside.by(&ratio(9, 10)) } else { whole(0) };
        let factor = coil.curved();
        let stress = moment.by(&whole(32)).over(&coil.cube()).by(&factor);
        let long = whole(1).plus(&coils).plus(&turns).by(&coil.d);
        let size = coil.mean.magnitude();
        hold_all(
            &format!("{spring:?}"),
            &found,
            &[
                own("index", coil.index.clone(), 8.0),
                own("active", active.clone(), 12.0),
                own("per_turn", per(&active), 40.0),
                own("turns", turns, 48.0),
                own("factor", factor, 60.0),
                own("stress", stress, 120.0),
                own("mean_wound", mean_wound, 64.0),
                ("inside_wound", inside, size, 64.0),
                ("pin", pin, size, 64.0),
                own("long_wound", long, 64.0),
                own("cut", coil.long(&coils, &coil.d).plus(&legs), 24.0),
            ],
        );
    }
}

#[test]
fn mandrels() {
    for k in 1..=300_i64 {
        let (wire, mean) = sizes(k);
        let (least, modulus) = (k * 31 % 2_000 + 100, 100_000 + k * 257);
        let band = Band { least: least as f64, most: (least + k) as f64 };
        let found = arbor(wire, mean, band, modulus as f64).expect("in bounds");
        let coil = Coil::new(wire, mean);
        let on = |strength: i64| {
            let more = coil.index.by(&ratio(17, 10)).by(&whole(strength)).over(&whole(modulus));
            coil.mean.minus(&coil.d).over(&whole(1).plus(&more))
        };
        let what = format!("{wire:?} {mean:?} {band:?}");
        // An index of 2 leaves half of the mean diameter inside.
        let truths = [own("least", on(least + k), 24.0), own("most", on(least), 24.0)];
        hold_all(&what, &found, &truths);
    }
}
