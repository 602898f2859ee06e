//! Every choice of one, two or three gears from those owned, in rising order of
//! the product of their teeth. A train is one choice as drivers over another as
//! driven gears, so two pointers on one such list meet every train once, however
//! its gears are paired and mounted.
use super::STOCK;
use crate::head::Gear;
use core::mem;

/// Choices of two gears with repetition: the most there can be.
pub(super) const PAIRS: usize = STOCK * (STOCK + 1) / 2;
/// Choices of three.
pub(super) const TRIPLES: usize = PAIRS * (STOCK + 2) / 3;

/// Place of a gear that is not there.
pub(super) const NONE: u8 = u8::MAX;

/// One, two or three gears.
#[derive(Clone, Copy)]
pub(super) struct Choice {
    /// Product of their teeth.
    pub(super) product: u32,
    /// Their places among those owned, rising; [`NONE`] where there are fewer.
    pub(super) gears: [u8; 3],
}

/// At most `MOST` choices of as many gears each, in rising order of product, equal
/// ones by their gears.
pub(super) struct Products<const MOST: usize> {
    all: [Choice; MOST],
    count: usize,
}

impl<const MOST: usize> Products<MOST> {
    /// The choices of `size` gears (one to three, no more than `MOST` has room for)
    /// among `gears`, which stand in rising order and have at most 250 teeth.
    pub(super) fn of(gears: &[Gear], size: u8) -> Self {
        let none = Choice { product: 0, gears: [NONE; 3] };
        let mut all = [none; MOST];
        let count = fill(gears, size, &mut all);
        if size > 1 {
            let mut other = [none; MOST];
            sort(all.get_mut(..count), other.get_mut(..count), size);
        }
        Self { all, count }
    }

    pub(super) fn all(&self) -> &[Choice] {
        self.all.get(..self.count).unwrap_or_default()
    }
}

/// Writes every choice to `all`, in order of its gears; how many there are.
fn fill(gears: &[Gear], size: u8, all: &mut [Choice]) -> usize {
    let mut slots = all.iter_mut();
    let mut count: usize = 0;
    let mut put = |product: u32, gears: [u8; 3]| {
        if let Some(slot) = slots.next() {
            *slot = Choice { product, gears };
            count = count.saturating_add(1);
        }
    };
    let times = |product: u32, gear: &Gear| product.saturating_mul(u32::from(gear.teeth));
    // Each gear again only as often as it is owned.
    for (i, (a, first)) in (0_u8..).zip(gears).enumerate() {
        if size < 2 {
            put(times(1, first), [a, NONE, NONE]);
            continue;
        }
        for (j, (b, second)) in (0_u8..).zip(gears).enumerate().skip(i) {
            if a == b && second.count < 2 {
                continue;
            }
            if size < 3 {
                put(times(times(1, first), second), [a, b, NONE]);
                continue;
            }
            for (c, third) in (0_u8..).zip(gears).skip(j) {
                let wanted = if c != b {
                    1
                } else if b == a {
                    3
                } else {
                    2
                };
                if third.count >= wanted {
                    put(times(times(times(1, first), second), third), [a, b, c]);
                }
            }
        }
    }
    count
}

/// Sorts by product, byte by byte from the lowest: each pass keeps the order of
/// the one before. Products of `size` gears of at most 250 teeth have `size` bytes.
fn sort(all: Option<&mut [Choice]>, other: Option<&mut [Choice]>, size: u8) {
    let (Some(all), Some(other)) = (all, other) else { return };
    let (mut from, mut to) = (all, other);
    for byte in 0..size {
        pass(from, to, u32::from(byte).saturating_mul(8));
        mem::swap(&mut from, &mut to);
    }
    // An odd number of passes ends in the other list.
    if size & 1 == 1 {
        for (slot, choice) in to.iter_mut().zip(from.iter()) {
            *slot = *choice;
        }
    }
}

fn pass(from: &[Choice], to: &mut [Choice], shift: u32) {
    let digit = |choice: &Choice| usize::from(low_byte(choice.product.wrapping_shr(shift)));
    let mut places = [0_u16; 256];
    for choice in from {
        if let Some(count) = places.get_mut(digit(choice)) {
            *count = count.saturating_add(1);
        }
    }
    let mut next: u16 = 0;
    for place in &mut places {
        next = next.saturating_add(mem::replace(place, next));
    }
    for choice in from {
        let Some(place) = places.get_mut(digit(choice)) else { continue };
        if let Some(slot) = to.get_mut(usize::from(*place)) {
            *slot = *choice;
        }
        *place = place.saturating_add(1);
    }
}

const fn low_byte(n: u32) -> u8 {
    let [low, ..] = n.to_le_bytes();
    low
}

#[cfg(test)]
mod tests {
    use super::*;
    extern crate std;
    use std::vec::Vec;

    #[test]
    fn choices_stand_once_each_in_order_and_no_gear_is_used_more_often_than_owned() {
        let counts = [1_u8, 2, 3, 1, 4];
        let teeth = [20_u16, 24, 30, 127, 250];
        let gears: Vec<Gear> =
            teeth.iter().zip(counts).map(|(&teeth, count)| Gear { teeth, count }).collect();
        for size in 1..=3_u8 {
            let products = Products::<TRIPLES>::of(&gears, size);
            let mut wanted = Vec::new();
            for code in 0..6_usize.pow(u32::from(size)) {
                let digits: Vec<usize> =
                    (0..size).map(|k| code / 6_usize.pow(u32::from(k)) % 6).collect();
                let owned = digits.iter().all(|&d| {
                    d < 5 && digits.iter().filter(|&&e| e == d).count() <= usize::from(counts[d])
                });
                if owned && digits.windows(2).all(|pair| pair[0] <= pair[1]) {
                    let product: u32 = digits.iter().map(|&d| u32::from(teeth[d])).product();
                    let mut gears = [NONE; 3];
                    digits.iter().enumerate().for_each(|(k, &d)| gears[k] = d as u8);
                    wanted.push((product, gears));
                }
            }
            wanted.sort();
            let found: Vec<_> = products.all().iter().map(|c| (c.product, c.gears)).collect();
            assert_eq!(found, wanted, "{size}");
        }
    }
}
