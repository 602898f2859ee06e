//! Trains for a ratio: every choice of gears in every order, with every idler,
//! tried one by one for 200 random boxes of gears. Nothing here uses the core's
//! sums; π comes as sixty digits.
use handturn::head::{Gear, Mounting};
use handturn::number::Fraction;
use handturn::train::{Chain, Lacking, Pair, Search, Senses, Six, Wanted, Why, lacking};
use num_bigint::BigInt;
use num_rational::BigRational;
use rand::{Rng, SeedableRng};
use rand_chacha::ChaCha8Rng;
use std::cmp::Ordering;
use std::collections::BTreeSet;

/// How many trains are compared.
const EACH: usize = 8;

/// A question as it was drawn by lot.
#[derive(Debug)]
struct Lot {
    gears: Vec<Gear>,
    ratios: Vec<Fraction>,
    times_pi: bool,
    mounting: Mounting,
    senses: Senses,
    six: Six,
}

impl Lot {
    fn wanted(&self) -> Wanted<'_> {
        let Self { times_pi, mounting, senses, six, .. } = *self;
        Wanted { ratios: &self.ratios, times_pi, gears: &self.gears, mounting, senses, six }
    }

    fn draw(seed: u64, kinds: usize, six: Six) -> Self {
        let mut lot = ChaCha8Rng::seed_from_u64(seed);
        let all: Vec<u16> = if lot.random_bool(0.5) {
            (4..=26).map(|n| n * 5).collect()
        } else {
            (8..=250).collect()
        };
        let kinds = lot.random_range(2..=kinds);
        let mut gears: Vec<Gear> = Vec::new();
        while gears.len() < kinds {
            let teeth = all[lot.random_range(0..all.len())];
            if gears.iter().all(|gear| gear.teeth != teeth) {
                let count = if lot.random_bool(0.7) { 1 } else { lot.random_range(2..=3) };
                gears.push(Gear { teeth, count });
            }
        }
        let distance = if lot.random_bool(0.5) { 0 } else { lot.random_range(30..=150) };
        let mounting = Mounting {
            distance,
            margin: lot.random_range(0..=9),
            most_idlers: [2, 2, 2, 1, 0][lot.random_range(0..5)],
            one_idler_follows: lot.random_bool(0.5),
            four_gears: lot.random_bool(0.9),
        };
        let senses = [Senses::Same, Senses::Against, Senses::Either][lot.random_range(0..3)];
        let ratios = (0..lot.random_range(1..=3)).map(|_| ratio(&mut lot, &gears)).collect();
        let times_pi = lot.random_bool(0.3);
        Self { gears, ratios, times_pi, mounting, senses, six }
    }
}

/// Half of them ratios that gears of the box have, mounted or not.
fn ratio(lot: &mut ChaCha8Rng, gears: &[Gear]) -> Fraction {
    if lot.random_bool(0.5) {
        return Fraction::new(lot.random_range(1..=400), lot.random_range(1..=400)).expect("small");
    }
    let mut part = || {
        let mut one = || i64::from(gears[lot.random_range(0..gears.len())].teeth);
        one() * one()
    };
    Fraction::new(part(), part()).expect("small")
}

/// A train that can be mounted, and how far off it is.
#[derive(Clone, Debug, PartialEq)]
struct Tried {
    off: BigRational,
    chain: Chain,
    setting: u8,
}

/// A choice of gears that can't be mounted.
#[derive(Clone, Debug)]
struct Refused {
    off: BigRational,
    drivers: Vec<u16>,
    driven: Vec<u16>,
    setting: u8,
}

fn pi() -> BigRational {
    let digits = "3141592653589793238462643383279502884197169399375105820974944";
    BigRational::new(digits.parse().expect("digits"), BigInt::from(10).pow(60))
}

/// Every way to take `size` gears from the box, rising.
fn choices(box_of: &[u16], size: usize) -> BTreeSet<Vec<u16>> {
    if size == 0 {
        return BTreeSet::from([Vec::new()]);
    }
    let mut all = BTreeSet::new();
    for (place, &teeth) in box_of.iter().enumerate() {
        let mut rest = box_of.to_vec();
        rest.remove(place);
        for mut more in choices(&rest, size - 1) {
            more.push(teeth);
            more.sort_unstable();
            all.insert(more);
        }
    }
    all
}

fn without(box_of: &[u16], taken: &[u16]) -> Vec<u16> {
    let mut rest = box_of.to_vec();
    for teeth in taken {
        rest.remove(rest.iter().position(|t| t == teeth).expect("it is there"));
    }
    rest
}

fn orders(gears: &[u16]) -> BTreeSet<Vec<u16>> {
    if gears.is_empty() {
        return BTreeSet::from([Vec::new()]);
    }
    let each = |place: usize| {
        let rest = without(gears, &gears[place..=place]);
        orders(&rest).into_iter().map(move |mut more| {
            more.insert(0, gears[place]);
            more
        })
    };
    (0..gears.len()).flat_map(each).collect()
}

/// All trains of `pairs` pairs: the mounted ones, and the choices that aren't.
fn try_all(lot: &Lot, pairs: usize, found: &mut Vec<Tried>, refused: &mut Vec<Refused>) {
    let box_of: Vec<u16> = lot
        .gears
        .iter()
        .flat_map(|gear| std::iter::repeat_n(gear.teeth, usize::from(gear.count)))
        .collect();
    for drivers in choices(&box_of, pairs) {
        let rest = without(&box_of, &drivers);
        for driven in choices(&rest, pairs) {
            let idlers = without(&rest, &driven);
            let chain = mounted(lot, &drivers, &driven, &idlers);
            for (setting, ratio) in (0_u8..).zip(&lot.ratios) {
                let off = off(lot, *ratio, &drivers, &driven);
                match chain {
                    Some(chain) => found.push(Tried { off, chain, setting }),
                    None => refused.push(Refused {
                        off,
                        drivers: drivers.clone(),
                        driven: driven.clone(),
                        setting,
                    }),
                }
            }
        }
    }
}

fn off(lot: &Lot, ratio: Fraction, drivers: &[u16], driven: &[u16]) -> BigRational {
    let product =
        |gears: &[u16]| gears.iter().map(|&teeth| BigInt::from(teeth)).product::<BigInt>();
    let has = BigRational::new(product(drivers), product(driven));
    let mut wanted = BigRational::new(ratio.num().into(), ratio.den().into());
    if lot.times_pi {
        wanted *= pi();
    }
    let off = has / wanted - BigRational::from_integer(1.into());
    if off < BigRational::from_integer(0.into()) { -off } else { off }
}

/// The order and the idlers with the fewest gears, then the fewest teeth.
fn mounted(lot: &Lot, drivers: &[u16], driven: &[u16], left: &[u16]) -> Option<Chain> {
    let mut best: Option<(usize, u32, Chain)> = None;
    let pairs = drivers.len();
    for (over, under) in
        orders(drivers).iter().flat_map(|o| orders(driven).into_iter().map(move |u| (o.clone(), u)))
    {
        for idlers in (0..=2).flat_map(|count| choices(left, count)) {
            let count = idlers.len();
            let same_way = (pairs + count) % 2 == 0;
            let senses = match lot.senses {
                Senses::Same => same_way,
                Senses::Against => !same_way,
                Senses::Either => true,
            };
            // The model puts two idlers between a single pair only.
            if !senses || count > usize::from(lot.mounting.most_idlers) || (pairs > 1 && count > 1)
            {
                continue;
            }
            let gaps = if count == 0 { 1 } else { pairs };
            for gap in 0..gaps {
                if !fits(&lot.mounting, &over, &under, &idlers, gap) {
                    continue;
                }
                let pair = |place: usize| {
                    let driver = over.get(place).copied()?;
                    Some(Pair { driver, driven: under[place] })
                };
                let chain = Chain {
                    pairs: [pair(0), pair(1), pair(2)],
                    idlers: [idlers.first().copied(), idlers.get(1).copied()],
                    idlers_in: u8::try_from(gap).expect("few"),
                };
                let teeth = over.iter().chain(&under).chain(&idlers).map(|&t| u32::from(t)).sum();
                let key = (2 * pairs + count, teeth, chain);
                best = Some(best.map_or(key, |best| best.min(key)));
            }
        }
    }
    best.map(|(_, _, chain)| chain)
}

/// The studs one after another, each with its gears: all lengths doubled.
fn fits(mounting: &Mounting, over: &[u16], under: &[u16], idlers: &[u16], gap: usize) -> bool {
    let margin = u32::from(mounting.margin);
    let apart = 2 * u32::from(mounting.distance);
    // Every mesh as (plane, gear on the stud before, gear on the stud after).
    let mut meshes: Vec<(usize, u32, u32)> = Vec::new();
    for plane in 0..over.len() {
        let mut row = vec![u32::from(over[plane])];
        if plane == gap {
            row.extend(idlers.iter().map(|&teeth| u32::from(teeth)));
        }
        row.push(u32::from(under[plane]));
        meshes.extend(row.windows(2).map(|two| (plane, two[0], two[1])));
    }
    for two in meshes.windows(2) {
        let ((before, a, b), (after, c, d)) = (two[0], two[1]);
        // Both gears of a shared stud clear the studs beside it.
        if before != after && (a + b <= c + margin || c + d <= b + margin) {
            return false;
        }
    }
    let span: u32 = meshes.iter().map(|&(_, a, b)| a + b).sum();
    let (first, last) = (u32::from(over[0]), u32::from(*under.last().expect("one")));
    match (over.len(), idlers.len()) {
        (1, 0) => apart > 0 && span == apart,
        (1, _) => apart == 0 || (first + last + margin <= apart && apart <= span),
        _ => apart == 0 || (first + margin < apart && last + margin < apart && apart <= span),
    }
}

fn all(lot: &Lot) -> (Vec<Tried>, Vec<Refused>) {
    let (mut found, mut refused) = (Vec::new(), Vec::new());
    try_all(lot, 1, &mut found, &mut refused);
    if lot.mounting.four_gears {
        try_all(lot, 2, &mut found, &mut refused);
        let least = found.iter().map(|tried| tried.off.clone()).min();
        let far = |most: u32| {
            let most = BigRational::new(most.into(), 1_000_000.into());
            least.as_ref().is_none_or(|least| *least > most)
        };
        let six = match lot.six {
            Six::Never => false,
            Six::Always => true,
            Six::WhenOffBy(most) => far(most),
        };
        if six {
            try_all(lot, 3, &mut found, &mut refused);
        }
    }
    found.sort_by(order);
    (found, refused)
}

fn order(a: &Tried, b: &Tried) -> Ordering {
    let gears = |t: &Tried| {
        let gears: Vec<u16> = t.chain.gears().collect();
        (gears.len(), t.setting > 0, gears.iter().map(|&t| u32::from(t)).sum::<u32>())
    };
    let off = a.off.cmp(&b.off);
    off.then_with(|| gears(a).cmp(&gears(b))).then((a.setting, a.chain).cmp(&(b.setting, b.chain)))
}

/// How many questions were of each kind, so that none is left out by chance.
#[derive(Debug, Default)]
struct Seen {
    exact: u32,
    inexact: u32,
    with_pi: u32,
    bridged: u32,
    unmounted: u32,
    none: u32,
}

#[track_caller]
fn check(lot: &Lot, seen: &mut Seen) {
    let (found, refused) = all(lot);
    let mut search = Search::<EACH>::new();
    assert_eq!(search.run(&lot.wanted(), u32::MAX), Ok(true), "{lot:?}");
    let best: Vec<(Chain, u8)> = search.best().iter().map(|f| (f.chain, f.setting)).collect();
    let wanted: Vec<(Chain, u8)> =
        found.iter().take(EACH).map(|tried| (tried.chain, tried.setting)).collect();
    assert_eq!(best, wanted, "{lot:?}");
    let nought = BigRational::from_integer(0.into());
    for (has, tried) in search.best().iter().zip(&found) {
        let exact = tried.off == nought && !lot.times_pi;
        assert_eq!(has.is_exact(), exact, "{lot:?} {has:?}");
        let off = has.off().map(|off| BigRational::new(off.abs().num().into(), off.den().into()));
        assert_eq!(off, (!lot.times_pi).then(|| tried.off.clone()), "{lot:?} {has:?}");
    }
    // What would be nearer and can't be mounted.
    let nearer = |refused: &&Refused| found.first().is_none_or(|best| refused.off < best.off);
    let least = refused.iter().filter(nearer).min_by(|a, b| {
        let simple = |r: &Refused| {
            let teeth: u32 = r.drivers.iter().chain(&r.driven).map(|&t| u32::from(t)).sum();
            (r.drivers.len(), r.setting > 0, teeth, r.setting)
        };
        let gears = |r: &Refused| (r.drivers.clone(), r.driven.clone());
        a.off.cmp(&b.off).then(simple(a).cmp(&simple(b))).then(gears(a).cmp(&gears(b)))
    });
    let unmounted = search.unmounted();
    let teeth = |side: [Option<u16>; 3]| side.into_iter().flatten().collect::<Vec<_>>();
    assert_eq!(
        unmounted.map(|u| (teeth(u.drivers), teeth(u.driven), u.setting)),
        least.map(|r| (r.drivers.clone(), r.driven.clone(), r.setting)),
        "{lot:?}"
    );
    if let (Some(unmounted), Some(least)) = (unmounted, least) {
        let box_of: Vec<u16> = lot
            .gears
            .iter()
            .flat_map(|gear| std::iter::repeat_n(gear.teeth, usize::from(gear.count)))
            .collect();
        let left = without(&without(&box_of, &least.drivers), &least.driven);
        let near = Lot {
            gears: lot.gears.clone(),
            ratios: Vec::new(),
            mounting: Mounting { distance: 0, ..lot.mounting },
            ..*lot
        };
        let reach = mounted(&near, &least.drivers, &least.driven, &left).is_some();
        assert_eq!(unmounted.why == Why::Reach, reach, "{lot:?} {unmounted:?}");
    }
    in_small_steps(lot, &search);
    let first = search.best().first();
    seen.exact += u32::from(first.is_some_and(handturn::train::Found::is_exact));
    seen.inexact += u32::from(first.is_some_and(|best| !best.is_exact() && !lot.times_pi));
    seen.with_pi += u32::from(first.is_some() && lot.times_pi);
    seen.bridged += u32::from(first.is_some() && lot.mounting.distance > 0);
    seen.unmounted += u32::from(unmounted.is_some());
    seen.none += u32::from(first.is_none());
}

/// A search that is stopped and taken up again finds the same.
fn in_small_steps(lot: &Lot, whole: &Search<EACH>) {
    let mut search = Search::<EACH>::new();
    let mut calls = 0;
    while !search.run(&lot.wanted(), 7).expect("as before") {
        calls += 1;
        assert!(calls < 1_000_000, "it does not end: {lot:?}");
    }
    assert_eq!(&search, whole, "{lot:?}");
}

#[test]
fn trains_of_two_and_four_gears_are_those_found_by_trying_all() {
    let mut seen = Seen::default();
    for seed in 0..200 {
        check(&Lot::draw(seed, 9, Six::Never), &mut seen);
    }
    let Seen { exact, inexact, with_pi, bridged, unmounted, none } = seen;
    let least = exact.min(inexact).min(with_pi).min(bridged).min(unmounted).min(none);
    assert!(least >= 10, "{exact} {inexact} {with_pi} {bridged} {unmounted} {none}");
}

#[test]
fn trains_of_six_gears_are_those_found_by_trying_all() {
    let mut seen = Seen::default();
    for seed in 1000..1060 {
        let six = if seed % 2 == 0 { Six::Always } else { Six::WhenOffBy(500) };
        check(&Lot::draw(seed, 6, six), &mut seen);
    }
    let Seen { exact, inexact, with_pi, bridged, unmounted, none: _ } = seen;
    let least = exact.min(inexact).min(with_pi).min(bridged).min(unmounted);
    assert!(least >= 3, "{exact} {inexact} {with_pi} {bridged} {unmounted}");
}

/// Every gear from 8 to 250 teeth added in turn.
#[test]
fn the_gear_that_lacks_is_the_first_that_helps() {
    let mut named = 0;
    for seed in 2000..2030 {
        let mut lot = Lot::draw(seed, 4, Six::Never);
        // A ratio that some gear makes with one of these, mostly, and room to mount it.
        lot.times_pi = seed % 10 == 0;
        if seed % 3 != 0 {
            let teeth = 8 + seed * 37 % 243;
            let with = i64::from(lot.gears[0].teeth);
            lot.ratios = vec![Fraction::new(teeth.cast_signed(), with).expect("small")];
            lot.mounting = Mounting { margin: lot.mounting.margin, ..Mounting::default() };
        }
        let with = |teeth: Option<u16>| {
            let mut more = Lot { gears: lot.gears.clone(), ratios: lot.ratios.clone(), ..lot };
            more.gears.extend(teeth.map(|teeth| Gear { teeth, count: 1 }));
            let (found, _) = all(&more);
            let best = found.first().filter(|best| best.off.numer() == &BigInt::from(0));
            best.map(|best| best.chain)
        };
        let new = |teeth: &u16| lot.gears.iter().all(|gear| gear.teeth != *teeth);
        let none = lot.times_pi || with(None).is_some();
        let helps = |teeth: u16| with(Some(teeth)).map(|chain| (teeth, chain));
        let smallest = (8..=250).filter(new).filter(|_| !none).find_map(helps);
        let with_127 = [127].iter().find(|t| new(t) && !none).and_then(|&t| with(Some(t)));
        let Lacking { smallest: found, with_127: classic } =
            lacking(&lot.wanted()).expect("within bounds");
        assert_eq!(found.map(|(teeth, found)| (teeth, found.chain)), smallest, "{lot:?}");
        assert_eq!(classic.map(|found| found.chain), with_127, "{lot:?}");
        named += u32::from(smallest.is_some());
    }
    assert!(named >= 10, "only {named} of the questions lack a gear");
}
