//! The one gear that, added to those owned, would make a ratio exact.
//!
//! Teeth follow from what is owned: in a train of ratio n/d with the added gear t
//! among the drivers, t × c × d = n × b × e with gears c, b, e owned (or t × d =
//! n × b of two gears alone), and the other way round for a driven gear. Only
//! teeth found so are searched for a train that mounts.
use super::products::{PAIRS, Products};
use super::{Found, STOCK, Search, Six, Wanted, stock};
use crate::bounds;
use crate::error::Error;
use crate::head::Gear;
use crate::list::List;

/// The gear that gives exact metric pitches on an inch screw, and inch ones on a
/// metric screw: 25.4 is 127/5.
const CLASSIC: u16 = 127;

/// Gears that would make a ratio exact.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub struct Lacking {
    /// The smallest one, of 8 to 250 teeth and not owned, and the best train with it.
    pub smallest: Option<(u16, Found)>,
    /// The best train with a gear of 127 teeth, where none is owned and it makes
    /// the ratio exact too.
    pub with_127: Option<Found>,
}

/// Which one gear would give an exact train of two or four gears; nothing where
/// the ratio has π in it, or where an exact train is there.
///
/// # Errors
/// As [`Search::run`].
pub fn lacking(wanted: &Wanted) -> Result<Lacking, Error> {
    let wanted = Wanted { six: Six::Never, ..*wanted };
    let owned = best(&wanted)?;
    if wanted.times_pi || owned.best().first().is_some_and(Found::is_exact) {
        return Ok(Lacking::default());
    }
    // Where gears are owned that only can't be mounted, any one more may help as an idler.
    let any = owned.unmounted().is_some_and(|unmounted| unmounted.is_exact());
    let mut gears: List<Gear, STOCK> = stock::sorted(wanted.gears)?;
    let mut could = Could([if any { u64::MAX } else { 0 }; 4]);
    for ratio in wanted.ratios {
        let part = |n: i64| u64::try_from(n).unwrap_or(0);
        let (num, den) = (part(ratio.num()), part(ratio.den()));
        for (this, other) in [(num, den), (den, num)] {
            could.add(&gears, this, other, wanted.mounting.four_gears);
        }
    }
    let place = gears.len();
    if gears.push(Gear { teeth: 0, count: 1 }).is_err() {
        return Ok(Lacking::default());
    }
    let mut with = |teeth: u16| {
        let owned = gears.iter().take(place).any(|gear| gear.teeth == teeth);
        if owned || !could.has(teeth) {
            return Ok(None);
        }
        if let Some(added) = gears.get_mut(place) {
            added.teeth = teeth;
        }
        let found = best(&Wanted { gears: &gears, ..wanted })?;
        Ok::<_, Error>(found.best().first().copied().filter(Found::is_exact))
    };
    let mut lacking = Lacking { smallest: None, with_127: with(CLASSIC)? };
    for teeth in bounds::TEETH.least..=bounds::TEETH.greatest {
        let teeth = u16::try_from(teeth).unwrap_or(u16::MAX);
        if let Some(found) = with(teeth)? {
            lacking.smallest = Some((teeth, found));
            break;
        }
    }
    Ok(lacking)
}

fn best(wanted: &Wanted) -> Result<Search<1>, Error> {
    let mut search = Search::new();
    while !search.run(wanted, u32::MAX)? {}
    Ok(search)
}

/// Numbers of teeth that one more gear could have to help.
struct Could([u64; 4]);

impl Could {
    /// Adds what t may be on the side of `this`, the owned gears of the other side
    /// being multiples of `other`: alone, or beside one owned gear.
    fn add(&mut self, gears: &[Gear], this: u64, other: u64, four_gears: bool) {
        for size in 1..=if four_gears { 2 } else { 1 } {
            for choice in Products::<PAIRS>::of(gears, size).all() {
                let product = u64::from(choice.product).saturating_mul(this);
                if size == 1 {
                    self.add_quotient(product, other);
                    continue;
                }
                for beside in gears {
                    self.add_quotient(product, other.saturating_mul(u64::from(beside.teeth)));
                }
            }
        }
    }

    fn add_quotient(&mut self, product: u64, by: u64) {
        // Most quotients are no number of teeth: that is seen without a division.
        if product > by.saturating_mul(u64::from(bounds::TEETH.greatest)) {
            return;
        }
        if product.checked_rem(by) != Some(0) {
            return;
        }
        let teeth = product.checked_div(by).and_then(|teeth| u8::try_from(teeth).ok());
        let Some(teeth) = teeth else { return };
        if let Some(word) = self.0.get_mut(usize::from(teeth >> 6)) {
            *word |= 1_u64 << (teeth & 63);
        }
    }

    fn has(&self, teeth: u16) -> bool {
        let word = self.0.get(usize::from(teeth >> 6)).copied().unwrap_or(0);
        word & (1_u64 << (teeth & 63)) != 0
    }
}
