use super::*;
use crate::head::{GEARS, Gear, Mounting, gears_of};
extern crate std;
use std::collections::BTreeSet;
use std::vec::Vec;

fn stock(teeth: &[u16]) -> Stock {
    Stock::of(&gears_of(teeth).unwrap()).unwrap()
}

fn all(stock: &Stock, mounting: &Mounting, ratio: (i64, i64), same_way: bool) -> Vec<Train> {
    let ratio = Fraction::new(ratio.0, ratio.1).unwrap();
    let mut trains = Vec::new();
    stock.simple(ratio, same_way, mounting, &mut |train| trains.push(train));
    stock.compound(ratio, same_way, mounting, &mut |train| trains.push(train));
    trains
}

/// The teeth of the trains found, pair by pair, then the idlers: `56:24 +24 +28`.
#[track_caller]
fn check(teeth: &[u16], mounting: Mounting, ratio: (i64, i64), same_way: bool, wanted: &[&str]) {
    let write = |train: &Train| {
        let pair = |pair: Pair| std::format!("{}:{}", pair.driver, pair.driven);
        let idlers = train.idlers.iter().flatten().map(|t| std::format!("+{t}"));
        let idlers: Vec<_> = idlers.collect();
        let mut words: Vec<_> =
            [Some(train.first), train.second].into_iter().flatten().map(pair).collect();
        let place =
            if train.second.is_some() && train.idlers_in == Gap::First { 1 } else { words.len() };
        words.splice(place..place, idlers);
        words.join(" ")
    };
    let found: Vec<_> = all(&stock(teeth), &mounting, ratio, same_way).iter().map(write).collect();
    assert_eq!(found, wanted);
}

fn apart(distance: u16) -> Mounting {
    Mounting { distance, ..Mounting::default() }
}

#[test]
fn idlers_give_the_sense_and_bridge_the_distance() {
    let box_of = [24, 24, 28, 32, 40, 44, 56];
    // Not known how far the studs stand apart: the smallest gears left over.
    check(&box_of, apart(0), (7, 3), true, &["56:24 +24"]);
    check(&box_of, apart(0), (7, 3), false, &["56:24 +24 +28"]);
    // 56 and 24 reach 40; each idler adds its teeth, and the rims keep apart.
    check(&box_of, apart(64), (7, 3), true, &["56:24 +24"]);
    check(&box_of, apart(65), (7, 3), true, &["56:24 +28"]);
    check(&box_of, apart(84), (7, 3), true, &["56:24 +44"]);
    check(&box_of, apart(85), (7, 3), true, &[]);
    check(&box_of, apart(100), (7, 3), false, &["56:24 +28 +32"]);
    check(&box_of, apart(41), (7, 3), true, &["56:24 +24"]);
    check(&box_of, apart(40), (7, 3), true, &[]);
    // Just as far apart as the two reach: they mesh without an idler.
    check(&box_of, apart(40), (7, 3), false, &["56:24"]);
    // Fewer idlers than the head takes, or than there are gears for.
    let one = Mounting { most_idlers: 1, ..apart(0) };
    check(&box_of, one, (7, 3), false, &[]);
    check(&[24, 28, 56], apart(0), (7, 3), false, &[]);
    check(&[24, 28, 56], apart(0), (7, 3), true, &["56:24 +28"]);
}

#[test]
fn a_gear_is_used_as_often_as_it_is_owned() {
    check(&[24, 24, 28], apart(0), (1, 1), true, &["24:24 +28"]);
    check(&[24, 28, 32], apart(0), (1, 1), true, &[]);
    check(&[24, 48], apart(0), (1, 2), true, &[]);
    check(&[24, 48, 48], apart(0), (1, 2), true, &["24:48 +48"]);
    check(&[], apart(0), (1, 2), true, &[]);
    check(&[24], apart(0), (1, 1), true, &[]);
}

#[test]
fn compound_trains_are_tried_in_every_order_and_their_rims_clear() {
    let four = ["40:30 50:20", "50:30 40:20", "40:20 50:30", "50:20 40:30"];
    check(&[20, 30, 40, 50], apart(0), (10, 3), true, &four);
    let flat = Mounting { four_gears: false, ..apart(0) };
    check(&[20, 30, 40, 50], flat, (10, 3), true, &[]);
    // Of 20 × 48 ÷ (30 × 60) = 8/15: 20 and 30 in mesh leave no room beside them
    // for the rim of 60, and with a margin of two none for that of 48.
    let box_of = [20, 30, 44, 48, 60];
    let clear = ["20:60 48:30", "48:30 20:60"];
    check(&box_of, apart(0), (8, 15), true, &clear);
    let close = Mounting { margin: 1, ..apart(0) };
    check(&box_of, close, (8, 15), true, &["20:60 48:30", "20:30 48:60", "48:30 20:60"]);
    // An idler makes room on its side.
    let with_idler = ["20:60 +44 48:30", "20:30 +44 48:60", "48:60 20:30 +44", "48:30 +44 20:60"];
    check(&box_of, apart(0), (8, 15), false, &with_idler);
}

#[test]
fn compound_links_span_the_distance() {
    let orders = |distance| all(&stock(&[20, 30, 40, 50]), &apart(distance), (10, 3), true).len();
    // (20 + 30 + 40 + 50) ÷ 2 = 70 is the farthest.
    assert_eq!([orders(70), orders(71)], [4, 0]);
    // The rim of a first gear of 50, then of 40, meets the last stud.
    assert_eq!([orders(27), orders(26), orders(22), orders(21)], [4, 2, 2, 0]);
}

/// Every choice of two and four gears from the box, one by one.
#[test]
fn the_search_finds_what_counting_finds() {
    let (stock, mounting) = (stock(&GEARS), apart(0));
    let mut wanted = BTreeSet::new();
    let places = 0..GEARS.len();
    for (a, b) in places.clone().flat_map(|a| places.clone().map(move |b| (a, b))) {
        for (c, d) in places.clone().flat_map(|c| places.clone().map(move |d| (c, d))) {
            let [t, u, v, w] = [a, b, c, d].map(|i| GEARS[i]);
            let apart = BTreeSet::from([a, b, c, d]).len() == 4;
            if apart && t + u > v + 2 && v + w > u + 2 {
                wanted.insert((t, u, v, w));
            }
        }
    }
    let ratios: BTreeSet<(u32, u32)> = wanted
        .iter()
        .map(|&(t, u, v, w)| {
            let (num, den) = (u32::from(t) * u32::from(v), u32::from(u) * u32::from(w));
            let shared = crate::number::gcd(u64::from(num), u64::from(den)) as u32;
            (num / shared, den / shared)
        })
        .collect();
    let mut found = BTreeSet::new();
    for &(num, den) in &ratios {
        assert!(stock.could_divide(u64::from(num)) && stock.could_divide(u64::from(den)));
        let ratio = Fraction::new(i64::from(num), i64::from(den)).unwrap();
        stock.compound(ratio, true, &mounting, &mut |train| {
            let second = train.second.unwrap();
            assert_eq!(train.ratio(), Ok(ratio));
            assert!(train.same_way());
            let four = (train.first.driver, train.first.driven, second.driver, second.driven);
            assert!(found.insert(four), "{four:?} stands twice");
        });
    }
    assert_eq!(found, wanted);
}

#[test]
fn a_full_box_of_large_gears_stays_within_bounds() {
    let most: Vec<Gear> = (0..24).map(|i| Gear { teeth: 250 - 2 * i, count: 9 }).collect();
    let stock = Stock::of(&most).unwrap();
    let count = all(&stock, &apart(0), (250, 248), true).len();
    assert!(count > 0);
    let none = all(&stock, &apart(0), (i64::MAX, 3), true).len();
    assert_eq!(none, 0);
    let one_more: Vec<Gear> = (0..25).map(|i| Gear { teeth: 100 + i, count: 1 }).collect();
    assert_eq!(Stock::of(&one_more).map_err(|e| e.cause), Err(crate::Cause::TooMany { most: 24 }));
}
