//! The one gear that, added to those owned, would make a division exact.
//!
//! Teeth follow from what is owned: in a train of ratio n/d with the added gear
//! t among the drivers, t × c × d = n × b × e with gears c, b, e owned (or
//! t × d = n × b of two gears alone), and the other way round for a driven gear.
//! Only teeth found so for some move are searched for a train that mounts.
use super::differential::{self, Differential};
use super::near;
use super::question::Question;
use crate::bounds;
use crate::error::Error;
use crate::head::{Gear, Head};
use crate::number::Fraction;
use crate::train::Stock;
use core::cmp::Ordering;

/// Moves tried at most; the usual plates need a quarter of it even where all
/// teeth are searched.
const MOST_MOVES: usize = 1_000_000;

/// The smallest gear that, added once to those owned, makes differential
/// indexing possible, and the way with the fewest parts to fit that it opens.
/// With so many holes that [`MOST_MOVES`] run out, larger gears stay untried.
pub(super) fn lacking_gear(
    question: &Question,
    head: &Head,
) -> Result<Option<(u16, Differential)>, Error> {
    let Some(part) = differential::part(question)? else { return Ok(None) };
    let mut gears = head.gears.clone();
    if gears.push(Gear { teeth: 0, count: 1 }).is_err() {
        return Ok(None);
    }
    let circles = head.plates.iter().flat_map(|plate| plate.circles.iter());
    let moves = circles.map(|circle| usize::from(circle.holes)).fold(1, usize::saturating_add);
    let searches = MOST_MOVES.checked_div(moves.saturating_mul(2)).unwrap_or(0);
    let could = Could::help(part, head)?;
    let teeth =
        (bounds::TEETH.least..=bounds::TEETH.greatest).filter_map(|n| u16::try_from(n).ok());
    for teeth in teeth.filter(|&teeth| could.has(teeth)).take(searches) {
        if let Some(added) = gears.last_mut() {
            added.teeth = teeth;
        }
        let mut best: Option<Differential> = None;
        near::each_way(question, head, &Stock::of(&gears)?, &mut |way, _| {
            best = Some(
                best.map_or(way, |best| if simpler(&way, &best).is_lt() { way } else { best }),
            );
            Ok(())
        })?;
        if let Some(way) = best {
            return Ok(Some((teeth, way)));
        }
    }
    Ok(None)
}

fn simpler(a: &Differential, b: &Differential) -> Ordering {
    let parts = a.train.parts_to_fit().cmp(&b.train.parts_to_fit());
    parts.then(b.circle.holes.cmp(&a.circle.holes)).then_with(|| a.tie(b))
}

/// Numbers of teeth that one more gear could have to help.
struct Could([u64; 4]);

impl Could {
    fn help(part: Fraction, head: &Head) -> Result<Self, Error> {
        let stock = Stock::of(&head.gears)?;
        let mut most = Fraction::ZERO;
        for end in [bounds::TEETH.least, bounds::TEETH.greatest] {
            let mut gears = head.gears.clone();
            let teeth = u16::try_from(end).unwrap_or(u16::MAX);
            if gears.push(Gear { teeth, count: 1 }).is_ok() {
                most = most.max(Stock::of(&gears)?.greatest_ratio(&head.mounting)?);
            }
        }
        let mut could = Self([0; 4]);
        near::each_move(part, head, most.min(part.inverse()?), &mut |near| {
            could.add(&stock, head.mounting.four_gears, near.num, near.den);
            could.add(&stock, head.mounting.four_gears, near.den, near.num);
        })?;
        Ok(could)
    }

    /// Adds what t may be on the side of `this`, the owned gears of the other
    /// side being multiples of `other`: alone, or beside one owned gear.
    fn add(&mut self, stock: &Stock, four_gears: bool, this: u64, other: u64) {
        if self.0 == [u64::MAX; 4] {
            return;
        }
        for (place, one) in (1..).zip(stock.gears()) {
            let one = u64::from(one.teeth);
            self.add_share(stock, one, this, other, None);
            let pairs = if four_gears { usize::MAX } else { 0 };
            for two in stock.gears().take(place).take(pairs) {
                let product = one.saturating_mul(u64::from(two.teeth));
                self.add_share(stock, product, this, other, Some(stock));
            }
        }
    }

    /// t = this × `product` ÷ other, shared with each gear of `beside` where there is one.
    fn add_share(
        &mut self,
        stock: &Stock,
        product: u64,
        this: u64,
        other: u64,
        beside: Option<&Stock>,
    ) {
        if product.checked_rem(other) != Some(0) {
            return;
        }
        let times = product.checked_div(other).and_then(|n| n.checked_mul(this));
        let Some(teeth) = times else { return };
        let Some(beside) = beside else { return self.add_teeth(stock, teeth) };
        for gear in beside.gears() {
            let gear = u64::from(gear.teeth);
            if let (Some(0), Some(teeth)) = (teeth.checked_rem(gear), teeth.checked_div(gear)) {
                self.add_teeth(stock, teeth);
            }
        }
    }

    /// A gear that is owned already would not be lacking for its teeth: the train
    /// is there and does not mount, so any gear may help, as an idler or a second one.
    fn add_teeth(&mut self, stock: &Stock, teeth: u64) {
        if stock.gears().any(|gear| u64::from(gear.teeth) == teeth) {
            self.0 = [u64::MAX; 4];
        }
        let Ok(teeth) = u8::try_from(teeth) else { return };
        if let Some(word) = self.0.get_mut(usize::from(teeth >> 6)) {
            *word |= 1_u64 << (teeth & 63);
        }
    }

    fn has(&self, teeth: u16) -> bool {
        let word = self.0.get(usize::from(teeth >> 6)).copied().unwrap_or(0);
        word & (1_u64 << (teeth & 63)) != 0
    }
}
