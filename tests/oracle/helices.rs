//! A mill's table geared for helical wheels drawn by lot: every arrangement of two and
//! four gears is tried one by one, in plain floats, and none comes nearer to the lead
//! than the first train found; the errors told are those of the angles themselves.
use handturn::gear::table::{Geared, Job, Mill, go_on};
use handturn::gear::{Helical, Size, Tooth};
use handturn::head::{GEARS, Mounting, gears_of};
use handturn::measure::{Angle, Length};
use handturn::number::{Fraction, float};
use handturn::thread::Hand;
use handturn::train::{Search, Six};
use rand::{Rng, SeedableRng};
use rand_chacha::ChaCha8Rng;
use std::f64::consts::PI;

/// Teeth by which a rim clears the next stud.
const MARGIN: u32 = 2;

struct Lot {
    wheel: Helical,
    mill: Mill,
    geared: Geared,
}

fn draw(lot: &mut ChaCha8Rng) -> Lot {
    let part = |n, d| Fraction::new(n, d).expect("small");
    let size = Size::Module(Length::from_mm(part(lot.random_range(2..=16), 4)));
    let degrees = part(lot.random_range(8 * 60..=45 * 60), 60);
    let hand = if lot.random_bool(0.5) { Hand::Right } else { Hand::Left };
    let wheel = Helical {
        teeth: lot.random_range(8..=60),
        tooth: Tooth { size, ..Tooth::default() },
        helix: Angle::from_degrees(degrees).expect("small"),
        hand,
        face: Length::from_mm(part(lot.random_range(5..=60), 1)),
    };
    let short = lot.random_bool(0.2);
    let screws = [part(127, 20), part(5, 1), part(127, 25), part(3, 1)];
    let mill = Mill {
        // A long screw so that the spindle geared direct reaches the lead.
        screw: Length::from_mm(if short { part(60, 1) } else { screws[lot.random_range(0..4)] }),
        ratio: part([40, 60, 90][lot.random_range(0..3)], 1),
        gears: gears_of(&GEARS).expect("twelve"),
        mounting: Mounting::default(),
        same_way_cuts: if lot.random_bool(0.5) { Hand::Right } else { Hand::Left },
    };
    Lot { wheel, mill, geared: if short { Geared::Spindle } else { Geared::Worm } }
}

/// Drivers over driven of every arrangement that stands on its studs.
fn arrangements(same_way: bool) -> Vec<f64> {
    let owned: Vec<u32> = GEARS.iter().map(|&teeth| u32::from(teeth)).collect();
    let ratio = |over: u32, under: u32| f64::from(over) / f64::from(under);
    let mut all = Vec::new();
    for (i, &a) in owned.iter().enumerate() {
        for (j, &b) in owned.iter().enumerate().filter(|(j, _)| *j != i) {
            // Any idlers left will do between two gears.
            all.push(ratio(a, b));
            for (k, &c) in owned.iter().enumerate().filter(|(k, _)| ![i, j].contains(k)) {
                for (l, &d) in owned.iter().enumerate().filter(|(l, _)| ![i, j, k].contains(l)) {
                    let idlers = (0..owned.len()).filter(|m| ![i, j, k, l].contains(m));
                    let stands =
                        |near: u32, far: u32| near + b > c + MARGIN && c + far > b + MARGIN;
                    let fits = if same_way {
                        stands(a, d)
                    } else {
                        idlers.map(|m| owned[m]).any(|idler| stands(idler, d) || stands(a, idler))
                    };
                    if fits {
                        all.push(ratio(a * c, b * d));
                    }
                }
            }
        }
    }
    all
}

#[test]
fn no_arrangement_of_gears_comes_nearer_to_a_helix() {
    let trains = [false, true].map(arrangements);
    let mut lot = ChaCha8Rng::seed_from_u64(0x6865_6c69);
    let (mut cut, mut refused) = (0, 0);
    while cut < 300 {
        let Lot { wheel, mill, geared } = draw(&mut lot);
        let job = Job::of(&wheel, geared, Six::Never);
        let mut search = Search::<6>::new();
        let done = go_on(&mut search, &job, &mill, u32::MAX);
        let beta = 2.0 * PI * float::of(wheel.helix.turns());
        let module = float::of(wheel.tooth.size.module().expect("small").mm());
        let diameter = f64::from(wheel.teeth) * module / beta.cos();
        let lead = PI * diameter / beta.tan();
        let turns = if geared == Geared::Worm { float::of(mill.ratio) } else { 1.0 };
        let machine = float::of(mill.screw.mm()) * turns;
        let same_way = wheel.hand == mill.same_way_cuts;
        // Gears that are refused as never reaching it would need a ratio beyond their own.
        if done.is_err() {
            let most = 100.0_f64 / 24.0;
            let beyond = lead > machine * most * most || lead < machine / (most * most);
            assert!(beyond || lead > 5000.0, "{lead} {machine} {done:?}");
            refused += 1;
            continue;
        }
        cut += 1;
        let off = |ratio: f64| (machine / ratio / lead - 1.0).abs();
        let mut tried: Vec<f64> = trains[usize::from(same_way)].iter().map(|&r| off(r)).collect();
        tried.sort_by(f64::total_cmp);
        let mut last = 0.0;
        for (place, found) in search.best().iter().enumerate() {
            let cuts = mill.cuts(&job, found).expect("in bounds");
            let ratio = float::of(cuts.chain.ratio().expect("small"));
            let own = off(ratio);
            // Each choice of gears stands once here, several times among the tried ones.
            assert!(own >= last - 1e-9, "nearest first");
            assert!(tried.iter().any(|other| (other - own).abs() < 1e-12), "{cuts:?}");
            assert!(place > 0 || (own - tried[0]).abs() < 1e-9, "{own} {}", tried[0]);
            last = own;
            assert_eq!(cuts.chain.same_way(), same_way);
            // The errors, from the angles themselves.
            let came = (PI * diameter / (machine / ratio)).atan();
            let arcsec = (came - beta).to_degrees() * 3600.0;
            assert!((cuts.off_arcsec.value - arcsec).abs() < 1e-7, "{cuts:?} {arcsec}");
            let astray = float::of(wheel.face.mm()) * (came.tan() - beta.tan());
            assert!((cuts.off_over_face.value - astray).abs() < 1e-11, "{cuts:?} {astray}");
            assert!((cuts.off_ppm.value.abs() - own * 1e6).abs() < 1e-5);
            assert!((float::of(cuts.lead.mm()) - machine / ratio).abs() < 1e-9 * lead);
        }
    }
    assert!(refused > 10, "leads beyond all gears were drawn too: {refused}");
}
