//! Tables geared to the head: rows of a treatise, hands, and what is refused.
extern crate std;

use super::*;
use crate::gear::Tooth;
use crate::head::{GEARS, gears_of};
use std::vec::Vec;

fn inches(num: i64, den: i64) -> Length {
    Length::from_inches(Fraction::new(num, den).unwrap()).unwrap()
}

fn mill(gears: &[u16]) -> Mill {
    Mill {
        screw: inches(1, 4),
        ratio: Fraction::whole(40),
        gears: gears_of(gears).unwrap(),
        mounting: Mounting::default(),
        same_way_cuts: Hand::Right,
    }
}

fn straight(lead: Length) -> Job {
    Job {
        helix: Helix::Lead { lead, diameter: inches(1, 1) },
        hand: Hand::Right,
        grooves: 6,
        face: inches(1, 1),
        geared: Geared::Worm,
        six: Six::Never,
    }
}

fn all(job: &Job, mill: &Mill) -> Vec<Cuts> {
    let mut search = Search::<40>::new();
    while !go_on(&mut search, job, mill, u32::MAX).unwrap() {}
    search.best().iter().map(|found| mill.cuts(job, found).unwrap()).collect()
}

#[test]
fn gears_of_a_treatise() {
    // Worm 56, stud 40 and 44, screw 100: 6.160 in; geared direct 0.154 in.
    let mill = mill(&[40, 44, 56, 100]);
    let job = straight(inches(616, 100));
    let cuts = all(&job, &mill);
    assert!(cuts[0].exact && cuts[0].lead == inches(616, 100));
    let mut drivers: Vec<u16> = cuts[0].chain.pairs().map(|pair| pair.driver).collect();
    drivers.sort_unstable();
    assert_eq!(drivers, [40, 100]);
    let direct = Job { geared: Geared::Spindle, ..straight(inches(154, 1000)) };
    let cuts = all(&direct, &mill);
    assert!(cuts[0].exact && cuts[0].lead == inches(154, 1000));
}

#[test]
fn the_hand_asks_for_idlers() {
    let mill = mill(&GEARS);
    for (hand, same_way) in [(Hand::Right, true), (Hand::Left, false)] {
        for cuts in all(&Job { hand, ..straight(inches(12, 1)) }, &mill) {
            assert_eq!(cuts.chain.same_way(), same_way);
        }
    }
    let other = Mill { same_way_cuts: Hand::Left, ..mill };
    assert!(!all(&straight(inches(12, 1)), &other)[0].chain.same_way());
}

#[test]
fn a_gear_on_the_spindle_divides_by_its_teeth() {
    let job = Job { geared: Geared::Spindle, grooves: 8, ..straight(inches(1, 2)) };
    let (mut divided, mut moved) = (0, 0);
    let mill = mill(&GEARS);
    let mut search = Search::<40>::new();
    while !go_on(&mut search, &job, &mill, u32::MAX).unwrap() {}
    for found in search.best() {
        let cuts = mill.cuts(&job, found).unwrap();
        let last = cuts.chain.pairs().last().unwrap().driven;
        assert_eq!(cuts.teeth_on, last.is_multiple_of(8).then_some(u32::from(last) / 8));
        // The same gears, the same way round, whatever sits on the spindle.
        let same = found.chain.ratio().unwrap() == cuts.chain.ratio().unwrap().inverse().unwrap();
        assert!(same && found.chain.same_way() == cuts.chain.same_way());
        divided += u32::from(cuts.teeth_on.is_some());
        moved += u32::from(found.chain.pairs().next().unwrap().driver != last);
    }
    assert!(divided > 10 && moved > 2, "{divided} {moved}");
}

#[test]
fn a_wheel_is_never_cut_exactly() {
    let size = Size::DiametralPitch(Fraction::whole(10));
    let wheel = Helical {
        teeth: 24,
        tooth: Tooth { size, ..Tooth::default() },
        helix: Angle::from_degrees(Fraction::whole(45)).unwrap(),
        hand: Hand::Left,
        face: inches(1, 1),
    };
    let job = Job::of(&wheel, Geared::Worm, Six::Never);
    let (mill, lead) = (mill(&GEARS), wheel.sizes().unwrap().lead.value);
    for cuts in all(&job, &mill) {
        let off = float::of(cuts.lead.mm()) - lead;
        assert!(!cuts.exact && (cuts.off.value - off).abs() <= cuts.off.bound + 1e-12);
        // A longer lead is a smaller angle.
        assert!(cuts.off.value * cuts.off_arcsec.value < 0.0);
        let cut =
            (std::f64::consts::PI * 2.4 * 25.4 * 2_f64.sqrt() / float::of(cuts.lead.mm())).atan();
        let arcsec = (cut.to_degrees() - 45.0) * 3600.0;
        assert!((cuts.off_arcsec.value - arcsec).abs() < 1e-6, "{cuts:?} {arcsec}");
    }
}

#[test]
fn what_can_not_be_geared() {
    let field = |job: &Job, mill: &Mill| {
        let mut search = Search::<4>::new();
        go_on(&mut search, job, mill, 1).map_err(|e| (e.field, e.cause))
    };
    let (mill, job) = (mill(&GEARS), straight(inches(27, 1)));
    let far = field(&straight(inches(190, 1)), &mill);
    let range = Cause::OutOfRange { least: 14_631, greatest: 4_409_722 };
    assert_eq!(far, Err((Field::Lead, range)));
    let short = Mill { screw: inches(0, 1), ..mill.clone() };
    assert_eq!(field(&job, &short).map_err(|e| e.0), Err(Field::Table));
    let none = Mill { gears: List::new(), ..mill.clone() };
    assert_eq!(field(&job, &none), Err((Field::Gears, Cause::Empty)));
    let helix = Helix::Wheel {
        teeth: 24,
        size: Size::Module(Length::from_mm(Fraction::ONE)),
        helix: Angle::from_degrees(Fraction::whole(90)).unwrap(),
    };
    let range = Cause::OutOfRange { least: 1, greatest: 80 };
    assert_eq!(field(&Job { helix, ..job }, &mill), Err((Field::Helix, range)));
}

#[test]
fn only_a_pin_over_a_free_plate_divides() {
    let left = Kind::ALL.into_iter().filter(|&kind| divides(kind));
    assert_eq!(left.collect::<Vec<_>>(), [Kind::Plain, Kind::NearestHole]);
}
