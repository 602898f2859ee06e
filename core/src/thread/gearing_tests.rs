use super::*;
use crate::head::gears_of;
extern crate std;
use std::string::String;
use std::vec::Vec;

/// Gears of a small inch lathe, with a 20 and a 40 to spare.
const GEARS: [u16; 14] = [20, 20, 30, 35, 40, 40, 45, 50, 55, 57, 60, 63, 65, 80];

fn part(num: i64, den: i64) -> Fraction {
    Fraction::new(num, den).unwrap()
}

fn lathe(gears: &[u16]) -> Lathe {
    Lathe {
        screw: Length::from_inches(part(1, 8)).unwrap(),
        screw_hand: Hand::Right,
        head: Fraction::ONE,
        gearbox: List::new(),
        gears: gears_of(gears).unwrap(),
        mounting: Mounting::default(),
        drive: Senses::Same,
    }
}

fn mm(num: i64, den: i64) -> Lead {
    Lead::of_pitch(Length::from_mm(part(num, den)), 1).unwrap()
}

fn job(lead: Lead) -> Job {
    Job { lead, hand: Hand::Right, six: Six::Never }
}

fn all<const CAP: usize>(job: &Job, lathe: &Lathe) -> Search<CAP> {
    let mut search = Search::new();
    assert_eq!(go_on(&mut search, job, lathe, u32::MAX), Ok(true));
    search
}

/// Pairs and idlers, then how many hundredths of a part in a million it is off.
fn write(found: &Found) -> String {
    let pairs: Vec<_> =
        found.chain.pairs().map(|p| std::format!("{}:{}", p.driver, p.driven)).collect();
    let idlers: String =
        found.chain.idlers.iter().flatten().map(|t| std::format!(" +{t}")).collect();
    let off = float::round(found.off_ppm().value * 100.0);
    std::format!("{}{idlers} {off}", pairs.join(" "))
}

#[track_caller]
fn check(job: &Job, lathe: &Lathe, wanted: &[&str]) {
    let found: Vec<_> = all::<3>(job, lathe).best().iter().map(write).collect();
    assert_eq!(found, wanted);
}

#[test]
fn inch_and_metric_on_an_inch_screw() {
    // 16 to the inch on 8: one to two, an idler for the hand.
    let sixteen = Lead::of_tpi(Fraction::whole(16), 1).unwrap();
    check(&job(sixteen), &lathe(&GEARS), &["20:40 +20 0", "30:60 +20 0", "40:80 +20 0"]);
    // 0.75 mm without a 127: 20 × 57 ÷ (60 × 80) × 127/30 is 2413/2400.
    let search = all::<3>(&job(mm(3, 4)), &lathe(&GEARS));
    let best = search.best()[0];
    assert_eq!((best.is_exact(), write(&best)), (false, "20:60 57:80 541667".into()));
    assert_eq!(best.off(), Some(part(13, 2400)));
    let cut = lathe(&GEARS).cuts(&best).unwrap();
    let off = cut.mm().checked_sub(part(3, 4)).unwrap().checked_div(part(3, 4)).unwrap();
    assert_eq!(best.off(), Some(off));
    // With it 30 drives 127.
    let with_127 = [&GEARS[..], &[127]].concat();
    let exact = all::<3>(&job(mm(3, 4)), &lathe(&with_127)).best()[0];
    assert_eq!(write(&exact), "30:127 +20 0");
    assert!(exact.is_exact());
}

#[test]
fn the_hand_of_the_thread_asks_for_the_idlers() {
    let sixteen = Lead::of_tpi(Fraction::whole(16), 1).unwrap();
    let (right, left) = (job(sixteen), Job { hand: Hand::Left, ..job(sixteen) });
    let first = |job: &Job, drive: Senses, screw_hand: Hand| {
        let lathe = Lathe { drive, screw_hand, ..lathe(&[20, 30, 40, 50]) };
        write(&all::<1>(job, &lathe).best()[0])
    };
    let (one, two) = ("20:40 +30 0", "20:40 +30 +50 0");
    assert_eq!(first(&right, Senses::Same, Hand::Right), one);
    assert_eq!(first(&left, Senses::Same, Hand::Right), two);
    assert_eq!(first(&right, Senses::Against, Hand::Right), two);
    assert_eq!(first(&left, Senses::Against, Hand::Right), one);
    assert_eq!(first(&left, Senses::Same, Hand::Left), one);
    assert_eq!(first(&left, Senses::Either, Hand::Right), one);
}

#[test]
fn a_gearbox_left_as_it_is_goes_before_one_that_is_changed() {
    let gearbox = List::from_slice(&[Fraction::ONE, part(1, 2)]).unwrap();
    let lathe = Lathe { gearbox, ..lathe(&[20, 30, 40, 50, 60]) };
    let sixteen = Lead::of_tpi(Fraction::whole(16), 1).unwrap();
    let search = all::<4>(&job(sixteen), &lathe);
    let found: Vec<_> = search.best().iter().map(|f| (f.setting, write(f))).collect();
    let wanted = [(0, "20:40 +30 0".into()), (0, "30:60 +20 0".into())];
    assert_eq!(found[..2], wanted);
    assert!(search.best()[2..].iter().all(|f| f.is_exact() && f.chain.gear_count() > 3));
    // 8 to the inch needs equal gears, or 2 : 1 with the gearbox at a half.
    let eight = all::<1>(&job(Lead::of_tpi(Fraction::whole(8), 1).unwrap()), &lathe);
    let best = eight.best()[0];
    assert_eq!((best.setting, write(&best)), (1, "40:20 +30 0".into()));
    assert_eq!(lathe.cuts(&best).unwrap().inches().unwrap(), part(1, 8));
}

#[test]
fn a_worm_has_pi_in_its_lead_and_is_never_exact() {
    let module = Lead::of_module(Length::from_mm(Fraction::ONE), 1).unwrap();
    let search = all::<3>(&job(module), &lathe(&GEARS));
    for found in search.best() {
        assert!(!found.is_exact() && found.off().is_none());
        let cut = float::of(lathe(&GEARS).cuts(found).unwrap().mm());
        let ppm = (cut / float::PI - 1.0) * 1e6;
        assert!((found.off_ppm().value - ppm).abs() < 1e-3, "{found:?}");
        let over = found.off_over(Length::from_mm(Fraction::whole(100)));
        assert!((over.value - ppm / 1e4).abs() < 1e-7, "{found:?}");
    }
    assert!(search.best()[0].off_ppm().value.abs() < 500.0);
    // 10 DP: π/10 of an inch. Two starts of 20 DP are the same lead.
    let dp = |pitch, starts| Lead::of_diametral_pitch(Fraction::whole(pitch), starts).unwrap();
    assert_eq!(dp(10, 1), dp(20, 2));
    assert!((dp(10, 1).mm().value / 25.4 - 0.314_159_265).abs() < 1e-9);
    assert_eq!(lacks(&job(module), &lathe(&GEARS)), Ok(Lacking::default()));
}

#[test]
fn the_one_gear_that_makes_it_exact() {
    let lacking = lacks(&job(mm(3, 4)), &lathe(&GEARS)).unwrap();
    let (teeth, found) = lacking.smallest.unwrap();
    assert_eq!((teeth, write(&found)), (127, "30:127 +20 0".into()));
    assert_eq!(lacking.with_127, Some(found));
    let owned = [&GEARS[..], &[127]].concat();
    assert_eq!(lacks(&job(mm(3, 4)), &lathe(&owned)), Ok(Lacking::default()));
}

#[test]
fn six_gears_come_when_they_are_asked_for() {
    let ask = |six| all::<2>(&Job { six, ..job(mm(3, 4)) }, &lathe(&GEARS));
    let (never, always) = (ask(Six::Never), ask(Six::Always));
    let off = |search: &Search<2>| search.best()[0].off_ppm().value.abs();
    assert!(off(&always) < off(&never) && always.covered() > never.covered());
    assert!(always.tried_six() && !never.tried_six());
    assert_eq!(ask(Six::WhenOffBy(0)), always);
    let enough = ask(Six::WhenOffBy(100_000));
    assert_eq!((enough.best(), enough.tried_six()), (never.best(), false));
}

#[test]
fn what_is_out_of_bounds_is_refused() {
    let refused = |lead: Result<Lead, Error>| lead.map_err(|e| (e.field, e.cause));
    let length = |num, den| Length::from_mm(part(num, den));
    let lead = Cause::OutOfRange { least: 10, greatest: 5_000_000 };
    assert_eq!(refused(Lead::of_pitch(length(0, 1), 1)), Err((Field::Lead, lead)));
    assert_eq!(refused(Lead::of_pitch(length(-1, 1), 1)), Err((Field::Lead, lead)));
    let starts = Cause::OutOfRange { least: 1, greatest: 60 };
    assert_eq!(refused(Lead::of_pitch(length(1, 1), 0)), Err((Field::Starts, starts)));
    assert!(Lead::of_tpi(Fraction::ZERO, 1).is_err());
    let ask = |lathe: &Lathe, lead: Lead| {
        let asked = go_on(&mut Search::<1>::new(), &job(lead), lathe, 100);
        asked.map_err(|e| (e.field, e.cause))
    };
    let one = mm(1, 1);
    let none = Lathe { gears: List::new(), ..lathe(&GEARS) };
    assert_eq!(ask(&none, one), Err((Field::Gears, Cause::Empty)));
    let gears = List::from_slice(&[Gear { teeth: 0, count: 1 }]).unwrap();
    let teeth = Cause::OutOfRange { least: 8, greatest: 250 };
    assert_eq!(ask(&Lathe { gears, ..lathe(&GEARS) }, one), Err((Field::Gears, teeth)));
    let screw = Cause::OutOfRange { least: 50, greatest: 200_000 };
    let stopped = Lathe { screw: length(0, 1), ..lathe(&GEARS) };
    assert_eq!(ask(&stopped, one), Err((Field::Screw, screw)));
    let still = Lathe { head: Fraction::ZERO, ..lathe(&GEARS) };
    assert_eq!(ask(&still, one).map_err(|e| e.0), Err(Field::Gearbox));
    // 20 to 80 teeth give 1/16 to 16 times the screw's 3.175 mm.
    let reach = Cause::OutOfRange { least: 199, greatest: 50_800 };
    assert_eq!(ask(&lathe(&GEARS), mm(51, 1)), Err((Field::Lead, reach)));
    assert_eq!(ask(&lathe(&GEARS), mm(19, 100)), Err((Field::Lead, reach)));
    assert!(ask(&lathe(&GEARS), mm(508, 10)).is_ok());
    // Parts beyond what is kept exact.
    let fine = mm(1_000_000_000_007, 1_000_000_000_000);
    assert_eq!(ask(&lathe(&GEARS), fine), Err((Field::Ratio, Cause::Overflow)));
}

#[test]
fn gears_that_do_not_reach_are_named() {
    let mounting = Mounting { distance: 200, ..Mounting::default() };
    let far = Lathe { mounting, ..lathe(&[20, 40, 100, 120]) };
    let sixteen = Lead::of_tpi(Fraction::whole(16), 1).unwrap();
    let search = all::<1>(&job(sixteen), &far);
    let unmounted = search.unmounted().unwrap();
    assert!(unmounted.is_exact());
    assert_eq!(unmounted.why, crate::train::Why::Reach);
    assert_eq!((unmounted.drivers[0], unmounted.driven[0]), (Some(20), Some(40)));
}
