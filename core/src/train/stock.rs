//! The gears owned, all their pairs in order of ratio, and the search for trains.
use super::{Pair, Train, mount};
use crate::bounds::MAX_GEARS;
use crate::error::{Cause, Error, Field};
use crate::head::{Gear, Mounting};
use crate::list::List;
use crate::number::{Fraction, gcd, lcm};
use core::cmp::Ordering;

/// Pairs that can be made of the gears a head lists, each order apart.
const MAX_PAIRS: usize = MAX_GEARS * MAX_GEARS;

/// Change gears owned, made ready for the search.
///
/// ```
/// use handturn::head::{GEARS, Mounting, gears_of};
/// use handturn::number::Fraction;
/// use handturn::train::Stock;
/// let stock = Stock::of(&gears_of(&GEARS)?)?;
/// let mut found = 0;
/// // 7 : 3, the last gear turning against the first: 56 drives 24 through two idlers.
/// stock.simple(Fraction::new(7, 3)?, false, &Mounting::default(), &mut |train| {
///     assert_eq!((train.first.driver, train.first.driven), (56, 24));
///     assert_eq!(train.idlers, [Some(24), Some(28)]);
///     found += 1;
/// });
/// assert_eq!(found, 1);
/// # Ok::<(), handturn::Error>(())
/// ```
#[doc(alias = "change gears")]
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Stock {
    /// In rising order, each number of teeth once.
    gears: List<Gear, MAX_GEARS>,
    /// In rising order of driver ÷ driven.
    pairs: List<Pair, MAX_PAIRS>,
    /// Least common multiple of all teeth; 0 when it does not fit.
    multiple: u64,
}

impl Stock {
    /// The stock of `gears`, which may be in any order.
    ///
    /// # Errors
    /// [`Cause::TooMany`] above [`MAX_GEARS`] different gears; [`Cause::Zero`]
    /// for a gear without teeth.
    pub fn of(gears: &[Gear]) -> Result<Self, Error> {
        let sorted: List<Gear, MAX_GEARS> = sorted(gears)?;
        let pairs = pairs(&sorted).ok_or(FULL)?;
        let multiple = |m: u64, gear: &Gear| lcm(m, u64::from(gear.teeth)).unwrap_or(0);
        let multiple = sorted.iter().fold(1, multiple);
        Ok(Self { gears: sorted, pairs, multiple })
    }

    /// The gears in rising order, with how many of each.
    pub fn gears(&self) -> impl Iterator<Item = Gear> + '_ {
        self.gears.iter().copied()
    }

    /// A bound that no train's ratio (or its inverse) exceeds.
    ///
    /// # Errors
    /// [`Cause::Overflow`].
    pub fn greatest_ratio(&self, mounting: &Mounting) -> Result<Fraction, Error> {
        let (Some(least), Some(greatest)) = (self.gears.first(), self.gears.last()) else {
            return Ok(Fraction::ZERO);
        };
        let pair = Fraction::new(i64::from(greatest.teeth), i64::from(least.teeth))?;
        if mounting.four_gears { pair.checked_mul(pair) } else { Ok(pair) }
    }

    /// Whether `part`, numerator or denominator of a reduced ratio, could divide
    /// the teeth of two gears. False rules every train out; true promises none.
    #[must_use]
    pub fn could_divide(&self, part: u64) -> bool {
        let shared = gcd(part, self.multiple);
        let rest = part.checked_div(shared).and_then(|rest| self.multiple.checked_rem(rest));
        self.multiple == 0 || rest == Some(0)
    }

    /// Hands every simple train of `ratio`, above nought, to `keep`: the last
    /// gear turning the `same_way` as the first, idlers from the gears left over.
    pub fn simple(
        &self,
        ratio: Fraction,
        same_way: bool,
        mounting: &Mounting,
        keep: &mut dyn FnMut(Train),
    ) {
        let Ok(wanted) = Ratio::of(ratio) else { return };
        for gear in &self.gears {
            let teeth = u64::from(gear.teeth).saturating_mul(wanted.num);
            if teeth.checked_rem(wanted.den) != Some(0) {
                continue;
            }
            let driver = teeth.checked_div(wanted.den).and_then(|t| u16::try_from(t).ok());
            let Some(driver) = driver else { continue };
            let pair = Pair { driver, driven: gear.teeth };
            if self.holds(&[driver, gear.teeth]) {
                if let Some(train) = mount::simple(&self.gears, mounting, pair, same_way) {
                    keep(train);
                }
            }
        }
    }

    /// Hands every compound train of `ratio`, above nought, to `keep`, each
    /// order on the studs apart: drivers and driven gears change places freely.
    ///
    /// Method: for pairs in rising ratio, the partner's ratio falls; one walk up
    /// and one walk down meet every product that is exact.
    pub fn compound(
        &self,
        ratio: Fraction,
        same_way: bool,
        mounting: &Mounting,
        keep: &mut dyn FnMut(Train),
    ) {
        let Ok(wanted) = Ratio::of(ratio) else { return };
        let mut below: &[Pair] = &self.pairs;
        for &first in &self.pairs {
            while let Some((&last, rest)) = below.split_last() {
                if wanted.compare(first, last).is_le() {
                    break;
                }
                below = rest;
            }
            for &second in below.iter().rev() {
                if wanted.compare(first, second).is_ne() {
                    break;
                }
                if self.holds(&[first.driver, first.driven, second.driver, second.driven]) {
                    if let Some(train) =
                        mount::compound(&self.gears, mounting, first, second, same_way)
                    {
                        keep(train);
                    }
                }
            }
        }
    }

    /// Whether every gear of `teeth` is owned as often as it stands there.
    fn holds(&self, teeth: &[u16]) -> bool {
        teeth.iter().all(|&t| {
            let owned = self.gears.iter().find(|gear| gear.teeth == t).map_or(0, |gear| gear.count);
            owned >= mount::times(teeth, t)
        })
    }
}

const FULL: Error = {
    #[expect(clippy::cast_possible_truncation, reason = "few gears")]
    let most = MAX_GEARS as u16;
    Error::new(Field::Gears, Cause::TooMany { most })
};

/// `gears` in rising order, each number of teeth once.
///
/// # Errors
/// [`Cause::TooMany`], [`Cause::Zero`].
pub(super) fn sorted<const CAP: usize>(gears: &[Gear]) -> Result<List<Gear, CAP>, Error> {
    let mut sorted: List<Gear, CAP> = List::new();
    for &gear in gears {
        if gear.teeth == 0 {
            return Err(Error::new(Field::Gears, Cause::Zero));
        }
        let place = sorted.iter().position(|g| g.teeth >= gear.teeth).unwrap_or(sorted.len());
        if let Some(same) = sorted.get_mut(place).filter(|g| g.teeth == gear.teeth) {
            same.count = same.count.saturating_add(gear.count);
        } else if sorted.insert(place, gear).is_some() {
            return Err(FULL);
        }
    }
    Ok(sorted)
}

/// A wanted ratio whose parts a train can have: products with teeth stay far
/// within 64 bits.
#[derive(Clone, Copy)]
struct Ratio {
    num: u64,
    den: u64,
}

impl Ratio {
    fn of(ratio: Fraction) -> Result<Self, Error> {
        let part = |n: i64| u32::try_from(n).map(u64::from);
        let (Ok(num), Ok(den)) = (part(ratio.num()), part(ratio.den())) else {
            return Err(Error::new(Field::Gears, Cause::Overflow));
        };
        Ok(Self { num, den })
    }

    /// Compares the ratio of the train `first`, `second` with the one wanted.
    fn compare(self, first: Pair, second: Pair) -> Ordering {
        let product = |a: u16, b: u16| u64::from(a).saturating_mul(u64::from(b));
        let have = product(first.driver, second.driver).saturating_mul(self.den);
        let want = product(first.driven, second.driven).saturating_mul(self.num);
        have.cmp(&want)
    }
}

/// Every pair of `gears` (in rising order) that is owned, in rising order of
/// ratio; equal ratios by driver. A merge of one falling list of driven gears a
/// driver. `None` when they do not fit.
fn pairs(gears: &List<Gear, MAX_GEARS>) -> Option<List<Pair, MAX_PAIRS>> {
    let mut pairs = List::new();
    let mut heads: List<&[Gear], MAX_GEARS> = List::new();
    for _ in gears {
        heads.push(gears).ok()?;
    }
    loop {
        let mut next: Option<(usize, Pair)> = None;
        for (place, (driver, head)) in gears.iter().zip(&heads).enumerate() {
            let Some(driven) = head.last() else { continue };
            let pair = Pair { driver: driver.teeth, driven: driven.teeth };
            if next.is_none_or(|(_, least)| below(pair, least)) {
                next = Some((place, pair));
            }
        }
        let Some((place, pair)) = next else { return Some(pairs) };
        let head = heads.get_mut(place)?;
        let count = head.split_last().map_or(0, |(last, rest)| {
            *head = rest;
            last.count
        });
        if pair.driver != pair.driven || count > 1 {
            pairs.push(pair).ok()?;
        }
    }
}

/// Whether the ratio of `a` is less than that of `b`.
fn below(a: Pair, b: Pair) -> bool {
    let product = |x: u16, y: u16| u32::from(x).saturating_mul(u32::from(y));
    product(a.driver, b.driven) < product(b.driver, a.driven)
}
