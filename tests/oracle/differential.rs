//! Differential indexing: every train of two and four of the gears owned,
//! picked one by one from the box, tried with every hole of every circle.
use crate::{Job, all, every, parts};
use handturn::divide::{Differential, Kind, Way};
use handturn::head::GEARS;
use handturn::train::Gap;
use handturn_tests::plainly::{Ratio, common};
use std::collections::{BTreeMap, BTreeSet};

/// The margin of a default head: a rim clears the next stud by so many teeth.
const MARGIN: u16 = 2;

/// A fraction of a turn over the plate and the turns of the plate, signed, for
/// one turn of the work: numerator and denominator of each.
type Setting = ((i128, i128), (i128, i128));

#[test]
fn differential_answers_are_those_found_by_trying_every_train() {
    let trains = Trains::of_the_box();
    every(|job| {
        for count in 2..=1000 {
            let what = || format!("{}:1, {count} parts, set {}", job.ratio, job.set);
            let answer = job.answer(&parts(count));
            let ways: Vec<Differential> =
                all(&answer, Kind::Differential).into_iter().map(differential).collect();
            if answer.group(Kind::Plain).is_some() {
                assert!(ways.is_empty(), "{}: plain is exact", what());
                continue;
            }
            for way in &ways {
                mounted(way).unwrap_or_else(|why| panic!("{}: {way:?}: {why}", what()));
                exact(job, count, way).unwrap_or_else(|why| panic!("{}: {way:?}: {why}", what()));
            }
            let offered: BTreeSet<Setting> = ways.iter().map(setting).collect();
            let tried = trains.settings(job, count);
            assert_eq!(offered, tried, "{}", what());
            for &(on_plate, turns) in &tried {
                let here = ways.iter().filter(|way| setting(way) == (on_plate, turns));
                let pairs: Vec<(u16, u16)> = here
                    .filter(|way| way.train.second.is_none())
                    .map(|way| (way.train.first.driver, way.train.first.driven))
                    .collect();
                let listed: BTreeSet<(u16, u16)> = pairs.iter().copied().collect();
                let simple = trains.simple.get(&turns).cloned().unwrap_or_default();
                assert_eq!((pairs.len(), listed), (simple.len(), simple), "{}", what());
            }
        }
    });
}

fn differential(way: Way) -> Differential {
    let Way::Differential(way) = way else { panic!("{way:?}") };
    way
}

/// What the gears of the box can give, by the signed turns of the plate.
struct Trains {
    simple: BTreeMap<(i128, i128), BTreeSet<(u16, u16)>>,
    compound: BTreeSet<(i128, i128)>,
}

impl Trains {
    /// Gears by their place in the box, so each is used once at most.
    fn of_the_box() -> Self {
        let mut trains = Self { simple: BTreeMap::new(), compound: BTreeSet::new() };
        let places = 0..GEARS.len();
        for (a, b) in places.clone().flat_map(|a| places.clone().map(move |b| (a, b))) {
            if a == b {
                continue;
            }
            let (first, second) = (GEARS[a], GEARS[b]);
            // One idler makes the plate follow, two make it go against; ten gears are left.
            for sign in [1, -1] {
                let turns = reduced(sign * i128::from(first), i128::from(second));
                trains.simple.entry(turns).or_default().insert((first, second));
            }
            for (c, d) in places.clone().flat_map(|c| places.clone().map(move |d| (c, d))) {
                let four = BTreeSet::from([a, b, c, d]);
                if four.len() < 4 {
                    continue;
                }
                let rest: Vec<u16> =
                    places.clone().filter(|i| !four.contains(i)).map(|i| GEARS[i]).collect();
                trains.add_compound([first, second, GEARS[c], GEARS[d]], &rest);
            }
        }
        trains
    }

    /// Drivers a and c, driven b and d, b and c on one stud.
    fn add_compound(&mut self, [a, b, c, d]: [u16; 4], rest: &[u16]) {
        let turns = |sign: i128| {
            reduced(sign * i128::from(a) * i128::from(c), i128::from(b) * i128::from(d))
        };
        if clears(a + b, c) && clears(c + d, b) {
            self.compound.insert(turns(1));
        }
        let between_first = |&x: &u16| clears(x + b, c) && clears(c + d, b);
        let between_second = |&x: &u16| clears(a + b, c) && clears(c + x, b);
        if rest.iter().any(|x| between_first(x) || between_second(x)) {
            self.compound.insert(turns(-1));
        }
    }

    /// Every hole of every circle, up to where no gears could help: right when
    /// count × move + plate's turns is the ratio.
    fn settings(&self, job: &Job, count: u32) -> BTreeSet<Setting> {
        let mut right = BTreeSet::new();
        let circles: BTreeSet<u16> = job.plates.iter().flatten().copied().collect();
        for &circle in &circles {
            for &(num, den) in self.simple.keys().chain(&self.compound) {
                // holes = circle × (ratio − turns) ÷ count
                let top = i128::from(circle) * (i128::from(job.ratio) * den - num);
                let bottom = i128::from(count) * den;
                if top > 0 && top % bottom == 0 {
                    right.insert((reduced(top / bottom, i128::from(circle)), (num, den)));
                }
            }
        }
        right
    }
}

fn reduced(num: i128, den: i128) -> (i128, i128) {
    let shared = common(num, den);
    (num / shared, den / shared)
}

/// Two gears in mesh stand half their sum apart; a rim on the one stud clears the other.
fn clears(sum: u16, rim: u16) -> bool {
    sum > rim + MARGIN
}

fn setting(way: &Differential) -> Setting {
    let turns = plate_turns(way);
    let on_plate = reduced(i128::from(way.holes), i128::from(way.circle.holes));
    (on_plate, (turns.num, turns.den))
}

fn plate_turns(way: &Differential) -> Ratio {
    let pair = way.train.first;
    let (mut drivers, mut driven) = (i128::from(pair.driver), i128::from(pair.driven));
    if let Some(pair) = way.train.second {
        drivers *= i128::from(pair.driver);
        driven *= i128::from(pair.driven);
    }
    Ratio::new(if way.follows { drivers } else { -drivers }, driven)
}

/// Gears owned, no more of each than owned, in mesh the right number of times
/// for the sense, rims clear of the next stud.
fn mounted(way: &Differential) -> Result<(), String> {
    let train = way.train;
    let mut left = GEARS.to_vec();
    let pairs = [Some(train.first), train.second];
    let gears = pairs.into_iter().flatten().flat_map(|pair| [pair.driver, pair.driven]);
    let idlers: Vec<u16> = train.idlers.into_iter().flatten().collect();
    for teeth in gears.chain(idlers.clone()) {
        let place = left.iter().position(|&t| t == teeth).ok_or(format!("no {teeth} is left"))?;
        left.remove(place);
    }
    let meshes = idlers.len() + if train.second.is_some() { 2 } else { 1 };
    let wanted = match (train.second.is_some(), way.follows) {
        (false, true) | (true, false) => 1,
        (false, false) => 2,
        (true, true) => 0,
    };
    if idlers.len() != wanted || (meshes % 2 == 0) != way.follows {
        return Err(format!("{} idlers", idlers.len()));
    }
    let Some(second) = train.second else { return Ok(()) };
    let (mut before, mut after) = (train.first.driver, second.driven);
    if let Some(&idler) = idlers.first() {
        match train.idlers_in {
            Gap::First => before = idler,
            Gap::Second => after = idler,
        }
    }
    let clear = clears(before + train.first.driven, second.driver)
        && clears(second.driver + after, train.first.driven);
    if clear { Ok(()) } else { Err("a rim meets a stud".into()) }
}

/// count × move + plate's turns = ratio, on a circle that is there, and the
/// largest one with this fraction of a turn.
fn exact(job: &Job, count: u32, way: &Differential) -> Result<(), String> {
    let circle = way.circle.holes;
    let there = job.plates.get(usize::from(way.circle.plate)).is_some_and(|p| p.contains(&circle));
    let on_plate = Ratio::new(i128::from(way.holes), i128::from(circle));
    let larger =
        job.plates.iter().flatten().any(|&c| c > circle && i128::from(c) % on_plate.den == 0);
    let all = on_plate.by(Ratio::new(i128::from(count), 1)).plus(plate_turns(way));
    let right = all == Ratio::new(i128::from(job.ratio), 1);
    if there && !larger && right && way.holes > 0 {
        return Ok(());
    }
    Err(format!("there {there}, larger {larger}, {all:?}"))
}
