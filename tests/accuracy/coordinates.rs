//! Holes on a mill's table, disks and tapes in wide numbers; and a table with slack whose
//! handles are turned as the answers say.
use crate::wide::Wide;
use crate::{Try, part};
use handturn::head::Sense;
use handturn::measure::{Angle, Length};
use handturn::number::{Approx, Fraction, float};
use handturn::plate::coordinates::{Comes, Layout, Screw};
use handturn::plate::disks;
use handturn::plate::tape::{self, Tape};
use rand::prelude::*;
use rand_chacha::ChaCha8Rng;

/// Rings and tables as a workshop may have them.
struct Shop(ChaCha8Rng);

impl Shop {
    fn mm(&mut self, thousandths: std::ops::RangeInclusive<i64>) -> Length {
        let n = self.0.random_range(thousandths);
        match self.0.random_range(0..3) {
            0 => Length::from_inches(part(n, 25_400)).expect("small"),
            1 => Length::from_mm(part(n * 7 / 3, 2_333)),
            _ => Length::from_mm(part(n, 1000)),
        }
    }

    fn layout(&mut self) -> Layout {
        let sense = if self.0.random() { Sense::Clockwise } else { Sense::Anticlockwise };
        let whole = self.0.random_range(1..=360);
        let first = part(self.0.random_range(-2 * whole..=2 * whole), whole);
        let centre = if self.0.random() {
            [self.mm(0..=0); 2]
        } else {
            [0; 2].map(|_| self.mm(1..=300_000))
        };
        Layout {
            holes: self.0.random_range(2..=300),
            diameter: self.mm(5_000..=400_000),
            first: Angle::from_turns(first),
            sense,
            centre,
        }
    }

    fn screw(&mut self) -> Screw {
        let slack =
            if self.0.random_range(0..4) == 0 { self.mm(0..=0) } else { self.mm(1..=4_000) };
        Screw {
            lead: self.mm(1_000..=6_500),
            marks: *[25, 50, 60, 100, 125, 200, 250].choose(&mut self.0).expect("some"),
            slack,
            falls: self.0.random(),
        }
    }
}

fn holds(what: &str, came: Approx, truth: &Wide, scale: f64, units: f64) {
    let off = truth.minus(&Wide::of_float(came.value)).magnitude();
    assert!(off <= came.bound, "{what}: {off:e} off, {:e} promised", came.bound);
    let lazy = (units + 1.0) * f64::EPSILON * scale;
    assert!(
        came.bound <= lazy + f64::MIN_POSITIVE,
        "{what}: a lazy bound {:e} {lazy:e}",
        came.bound
    );
}

/// X and Y of hole `k` from the edges, in wide numbers, and cosine and sine of its angle.
fn place(ring: &Layout, k: u32) -> ([Wide; 2], [Wide; 2]) {
    let on = Wide::of(part(i64::from(k), i64::from(ring.holes)));
    let first = Wide::of(ring.first.turns());
    let turns = match ring.sense {
        Sense::Anticlockwise => first.plus(&on),
        Sense::Clockwise => first.minus(&on),
    };
    let radius = Wide::of(ring.diameter.mm()).over(&Wide::whole(2));
    let unit = [turns.cos_turns(), turns.sin_turns()];
    let [x, y] = ring.centre.map(|c| Wide::of(c.mm()));
    ([x.plus(&radius.by(&unit[0])), y.plus(&radius.by(&unit[1]))], unit)
}

/// A table on a screw whose nut has slack: it follows the screw up at once, and down only
/// when the slack is passed.
struct Nut {
    screw: Fraction,
    table: Fraction,
}

impl Nut {
    fn turn_to(&mut self, screw: Fraction, slack: Fraction) {
        let highest = screw.checked_add(slack).expect("small");
        self.screw = screw;
        self.table = self.table.clamp(screw, highest);
    }
}

fn marks_to(of: &Screw, turns: i64, mark: u32) -> Fraction {
    let marks = turns * i64::from(of.marks) + i64::from(mark);
    of.mark().expect("checked").mm().times(marks).expect("small")
}

#[test]
fn holes_lie_where_they_belong_and_dials_bring_the_table_there() {
    let mut shop = Shop(ChaCha8Rng::seed_from_u64(1_310_110));
    let (mut passed, mut went_past, mut missed) = (0, 0, 0);
    for _ in 0..120 {
        let (ring, screws) = (shop.layout(), [shop.screw(), shop.screw()]);
        let mut nuts = screws.map(|_| Nut { screw: Fraction::ZERO, table: Fraction::ZERO });
        let [mut worst_out, mut worst_on, mut worst_near, mut before] = [0.0_f64; 4];
        let mut all = Vec::new();
        for k in 0..ring.holes {
            let hole = ring.hole(&screws, k).expect("a ring in bounds");
            let (truth, unit) = place(&ring, k);
            let what = format!("{k} of {ring:?} by {screws:?}");
            let size = ring.diameter.mm();
            let mut off = Vec::new();
            for axis in 0..2 {
                let screw = &screws[axis];
                let scale = Wide::of(size).float() + Wide::of(ring.centre[axis].mm()).float();
                holds(&what, hole.centre.from_edges[axis], &truth[axis], scale, 8.0);
                let edge = Wide::of(ring.centre[axis].mm());
                let from_centre = truth[axis].minus(&edge);
                holds(&what, hole.centre.from_centre[axis], &from_centre, scale, 8.0);

                // The dial's place, and that no other mark lies nearer.
                let dial = hole.dial[axis];
                let place = marks_to(screw, dial.turns, dial.mark);
                assert!(dial.mark < screw.marks, "{what}");
                assert_eq!(
                    place,
                    screw.mark().expect("checked").mm().times(dial.from_zero).expect("small")
                );
                let stands = if screw.falls { place.negated() } else { place };
                let error = Wide::of(stands).minus(&truth[axis]);
                holds(&what, dial.off, &error, scale, 16.0);
                let half = Wide::of(screw.mark().expect("checked").mm()).float() / 2.0;
                assert!(error.magnitude() <= half + dial.off.bound, "{what}: not the nearest mark");
                off.push(error);

                // The handle as the answer says: the table must stand at the reading.
                let (nut, slack) = (&mut nuts[axis], screw.slack.mm());
                let straight_from = nut.table;
                match dial.comes {
                    Comes::Stays => assert_eq!(nut.screw, place, "{what}"),
                    Comes::Straight => passed += 1,
                    Comes::Past { turns, mark } => {
                        went_past += 1;
                        let back = marks_to(screw, turns, mark);
                        assert!(back < place && straight_from > place, "{what}");
                        nut.turn_to(back, slack);
                    }
                }
                nut.turn_to(place, slack);
                assert_eq!(nut.table, place, "{what}: the slack is not taken up");
                // Without going past it would not.
                let mut careless = Nut { screw: straight_from, table: straight_from };
                careless.turn_to(place, slack);
                missed += usize::from(careless.table != place);
            }
            let [cos, sin] = &unit;
            let outwards = off[0].by(cos).plus(&off[1].by(sin));
            let left = off[1].by(cos).minus(&off[0].by(sin));
            let onwards = match ring.sense {
                Sense::Anticlockwise => left,
                Sense::Clockwise => Wide::whole(0).minus(&left),
            };
            let scale = Wide::of(size).float() + 700.0;
            holds(&what, hole.outwards, &outwards, scale, 32.0);
            holds(&what, hole.onwards, &onwards, scale, 32.0);
            all.push(onwards.float());
            worst_out = worst_out.max(outwards.magnitude());
            worst_on = worst_on.max(onwards.magnitude());
        }
        before += all[all.len() - 1];
        for onwards in all {
            worst_near = worst_near.max((onwards - before).abs());
            before = onwards;
        }
        let worst = ring.worst(&screws).expect("a ring in bounds");
        let arcsec = 1_296_000.0 / (std::f64::consts::PI * Wide::of(ring.diameter.mm()).float());
        for (came, truth) in [
            (worst.outwards, worst_out),
            (worst.onwards, worst_on),
            (worst.neighbours, worst_near),
            (worst.onwards_arcsec, worst_on * arcsec),
            (worst.neighbours_arcsec, worst_near * arcsec),
        ] {
            assert!((came.value - truth).abs() <= came.bound, "{ring:?}: {came:?}, {truth}");
            assert!(came.bound < 1e-7, "{ring:?}: {came:?}");
        }
    }
    assert!(
        passed > 9_000 && went_past > 5_000 && missed == went_past,
        "{passed} {went_past} {missed}"
    );
}

#[test]
fn a_dial_reads_moves_to_its_nearest_mark() {
    let mut shop = Shop(ChaCha8Rng::seed_from_u64(1_310_111));
    for k in 1..=200_i64 {
        let (screw, by) = (shop.screw(), Length::from_mm(part(k * 7_919 % 9_973, 41)));
        let found = screw.after(by).expect("in bounds");
        let value = float::of(by.mm());
        let about = Approx { value, bound: f64::EPSILON * value };
        assert_eq!(screw.after_about(about), Ok(found));
        let place = marks_to(&screw, found.turns, found.mark);
        let stands = Wide::of(if screw.falls { place.negated() } else { place });
        let truth = stands.minus(&Wide::of(by.mm()));
        let scale = 2.0 * Wide::of(by.mm()).float() + 10.0;
        holds(&format!("{screw:?} {by:?}"), found.off, &truth, scale, 8.0);
    }
}

#[test]
fn disks_touch_and_pins_measure() {
    let mut shop = Shop(ChaCha8Rng::seed_from_u64(24_1158));
    for _ in 0..400 {
        let (parts, across) = (shop.0.random_range(3..=1000), shop.mm(1_000..=900_000));
        let (pin, apart) = (shop.mm(100..=20_000), [0; 2].map(|_| shop.mm(0..=300_000)));
        let spaces = shop.0.random_range(1..parts);
        let chord = |spaces: u32| {
            let half = Wide::of(part(i64::from(spaces), 2 * i64::from(parts)));
            Wide::of(across.mm()).by(&half.sin_turns())
        };
        let what = format!("{parts} on {across:?}, {spaces} apart, {pin:?}");
        let (disk, wide) = (chord(1), Wide::of(across.mm()));
        let round = disks::round(parts, across).expect("in bounds");
        holds(&what, round.disk, &disk, disk.float(), 6.0);
        holds(&what, round.central, &wide.minus(&disk), wide.float(), 8.0);
        let pins = disks::in_ring(parts, spaces, across, pin).expect("in bounds");
        let square = disks::square_to(apart, pin).expect("in bounds");
        let [x, y] = apart.map(|length| Wide::of(length.mm()));
        let slant = x.by(&x).plus(&y.by(&y)).sqrt();
        for (came, apart) in [(pins, chord(spaces)), (square, slant)] {
            let scale = apart.float() + Wide::of(pin.mm()).float();
            holds(&what, came.apart, &apart, apart.float(), 6.0);
            holds(&what, came.over, &apart.plus(&Wide::of(pin.mm())), scale, 8.0);
            holds(&what, came.between, &apart.minus(&Wide::of(pin.mm())), scale, 8.0);
        }
    }
}

#[test]
fn tapes_close() {
    let mut shop = Shop(ChaCha8Rng::seed_from_u64(365));
    for _ in 0..400 {
        let thickness = shop.mm(50..=300);
        let tape = Tape {
            parts: shop.0.random_range(2..=10_000),
            drum: shop.mm(10_000..=900_000),
            thickness,
            stretch_per_mille: part(shop.0.random_range(-5_000..=5_000), 100),
            thicker: Length::from_mm(part(shop.0.random_range(-50..=50), 1000)),
        };
        let sizes = tape.sizes().expect("in bounds");
        let what = format!("{tape:?}");
        let middle = Wide::of(tape.drum.mm()).plus(&Wide::of(thickness.mm()));
        let length = Wide::pi().by(&middle);
        holds(&what, sizes.length, &length, length.float(), 4.0);
        let pitch = length.over(&Wide::whole(i64::from(tape.parts)));
        holds(&what, sizes.pitch, &pitch, pitch.float(), 4.0);
        // What is drawn and stretched, against what the thicker paper needs.
        let printed = length.by(&Wide::of(
            part(1, 1)
                .checked_add(tape.stretch_per_mille.over(1000).expect("small"))
                .expect("small"),
        ));
        let needs = Wide::pi().by(&middle.plus(&Wide::of(tape.thicker.mm())));
        let lap = printed.minus(&needs);
        holds(&what, sizes.lap, &lap, length.float(), 1.0);
        let arcsec = lap.by(&Wide::whole(1_296_000)).over(&length);
        holds(&what, sizes.lap_arcsec, &arcsec, 1_296_000.0, 2.0);
        let tenth = Wide::whole(129_600).over(&length);
        holds(&what, sizes.tenth_arcsec, &tenth, tenth.float(), 8.0);
    }
}

pub(crate) fn drums() -> Vec<Try> {
    let mut shop = Shop(ChaCha8Rng::seed_from_u64(120));
    let tries = (0..200).map(|_| {
        let (parts, pitch) = (shop.0.random_range(20..=10_000_u32), shop.mm(500..=9_000));
        let thickness = shop.mm(0..=300);
        let came = tape::drum(parts, pitch, thickness).expect("in bounds");
        let round = Wide::of(pitch.mm()).by(&Wide::whole(i64::from(parts)));
        let truth = round.over(&Wide::pi()).minus(&Wide::of(thickness.mm()));
        let scale = truth.magnitude();
        Try { what: format!("{parts} {pitch:?} {thickness:?}"), came, truth, scale }
    });
    tries.collect()
}
