//! Change gears: the trains that can be made of those owned, and how they are
//! mounted. Two questions: every exact train of two or four gears ([`Stock`]), and
//! the few nearest to a ratio of two, four or six ([`Search`]).
//!
//! Method for exact ones: a simple train is a pair of gears, a compound train two pairs on
//! three studs. All pair ratios stand sorted in a fixed list; a compound train
//! of a ratio is met in the middle, one pointer rising and one falling
//! ([`Stock::compound`]). Nothing is rounded: a train is exact or it is not there.
//! The nearest ones are met in the middle of products instead, drivers against
//! driven gears.
//!
//! The model of the studs (lengths in teeth of pitch diameter, so that gears of
//! `a` and `b` teeth in mesh stand (a + b) ÷ 2 apart):
//! - first and last stud stand `Mounting::distance` apart, where that is known;
//!   all studs between them can be moved, so a chain of gears fits when it is
//!   long enough to span the distance;
//! - first and last gear of a simple train lie in one plane and their rims must
//!   not touch; those of a compound train clear each other's stud;
//! - compound (a, b) and (c, d), b and c on one stud: c's rim clears the stud
//!   before it, a + b > c + margin, and b's rim clears the stud after it,
//!   c + d > b + margin (common practice for change gears);
//! - three pairs in the same way, each stud between two pairs cleared on both sides;
//! - every mesh reverses the sense, so an even number of meshes turns the last
//!   gear the same way as the first.
//!
//! Limits of the model: slots and quadrants of a real head may reach less far
//! than the chain allows, and idlers are not checked against gears they do not
//! mesh with.
mod chain;
mod found;
mod lacking;
mod miss;
mod mount;
mod nearest;
mod products;
mod stock;
mod wanted;

pub use chain::Chain;
pub use found::{Found, Unmounted, Why};
pub use lacking::{Lacking, lacking};
pub(crate) use mount::led_by;
pub use nearest::Search;
pub use stock::Stock;
pub use wanted::{Senses, Six, Wanted};

use crate::bounds::MAX_GEARS;
use crate::error::Error;
use crate::number::Fraction;
use core::cmp::Ordering;

/// Different gears of a search: those that can be owned, and one that lacks.
const STOCK: usize = MAX_GEARS + 1;

/// A driver and the gear it drives, directly or through idlers.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Pair {
    /// Teeth of the driving gear.
    pub driver: u16,
    /// Teeth of the driven gear.
    pub driven: u16,
}

/// Between which gears the idlers stand.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Gap {
    /// Between driver and driven of the first pair.
    First,
    /// Between driver and driven of the second pair.
    Second,
}

/// A train of change gears in the order in which it is mounted.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Train {
    /// Driver on the first stud; its driven gear on the last stud, or on the
    /// middle stud of a compound train.
    pub first: Pair,
    /// The second pair of a compound train: its driver shares the middle stud,
    /// its driven gear sits on the last stud.
    pub second: Option<Pair>,
    /// Teeth of the idlers from the first stud on: they change nothing but the
    /// sense, and bridge the distance.
    pub idlers: [Option<u16>; 2],
    /// Where the idlers stand.
    pub idlers_in: Gap,
}

impl Train {
    /// Turns of the last gear for one turn of the first, as a magnitude.
    ///
    /// # Errors
    /// [`crate::Cause::Zero`] for a gear without teeth.
    pub fn ratio(&self) -> Result<Fraction, Error> {
        let of = |pair: Pair| Fraction::new(i64::from(pair.driver), i64::from(pair.driven));
        let first = of(self.first)?;
        self.second.map_or(Ok(first), |second| first.checked_mul(of(second)?))
    }

    /// Compares the magnitudes of two trains' ratios.
    #[must_use]
    pub fn compare_ratio(&self, other: &Self) -> Ordering {
        let teeth = |a: u16, b: Option<u16>| u64::from(a).saturating_mul(u64::from(b.unwrap_or(1)));
        let drivers = |t: &Self| teeth(t.first.driver, t.second.map(|pair| pair.driver));
        let driven = |t: &Self| teeth(t.first.driven, t.second.map(|pair| pair.driven));
        let product = |a: u64, b: u64| u128::from(a).saturating_mul(u128::from(b));
        product(drivers(self), driven(other)).cmp(&product(drivers(other), driven(self)))
    }

    /// How many idlers there are.
    #[must_use]
    pub const fn idler_count(&self) -> u32 {
        let [first, second] = self.idlers;
        match (first.is_some(), second.is_some()) {
            (true, true) => 2,
            (false, false) => 0,
            _ => 1,
        }
    }

    /// How many gears there are to mount, idlers counted.
    #[must_use]
    pub const fn gear_count(&self) -> u32 {
        let pairs: u32 = if self.second.is_some() { 4 } else { 2 };
        pairs.saturating_add(self.idler_count())
    }

    /// How many parts there are to mount: the gears, and the sleeve that keys two
    /// gears of a compound train together on the middle stud.
    #[must_use]
    pub const fn parts_to_fit(&self) -> u32 {
        self.gear_count().saturating_add(if self.second.is_some() { 1 } else { 0 })
    }

    /// Every gear of the train, idlers last.
    pub fn gears(&self) -> impl Iterator<Item = u16> + '_ {
        let pairs = [Some(self.first), self.second].into_iter().flatten();
        let gears = pairs.flat_map(|pair| [pair.driver, pair.driven]);
        gears.chain(self.idlers.iter().copied().flatten())
    }

    /// Whether the last gear turns the same way as the first: every mesh
    /// reverses it.
    #[must_use]
    pub const fn same_way(&self) -> bool {
        let meshes: u32 = if self.second.is_some() { 2 } else { 1 };
        meshes.saturating_add(self.idler_count()) & 1 == 0
    }
}

#[cfg(test)]
mod tests;
