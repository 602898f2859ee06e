//! Gears in the order in which they are mounted: one, two or three pairs.
use super::{Gap, Pair, Train};
use crate::error::Error;
use crate::number::Fraction;

/// A train of up to six change gears in the order in which it is mounted: the
/// first pair's driver on the first stud, the last pair's driven gear on the last
/// one, and on each stud between a driven gear and the driver of the next pair.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Chain {
    /// The pairs in mesh, from the first stud on; the first is always there.
    pub pairs: [Option<Pair>; 3],
    /// Teeth of the idlers from the first stud on: they change nothing but the
    /// sense, and bridge the distance.
    pub idlers: [Option<u16>; 2],
    /// Between driver and driven gear of which pair the idlers stand, from 0.
    pub idlers_in: u8,
}

impl From<Train> for Chain {
    fn from(train: Train) -> Self {
        Self {
            pairs: [Some(train.first), train.second, None],
            idlers: train.idlers,
            idlers_in: u8::from(train.idlers_in == Gap::Second),
        }
    }
}

impl Chain {
    /// The same gears as a [`Train`]; `None` for six gears.
    #[must_use]
    pub fn train(&self) -> Option<Train> {
        let [Some(first), second, None] = self.pairs else { return None };
        let idlers_in = if self.idlers_in == 1 { Gap::Second } else { Gap::First };
        Some(Train { first, second, idlers: self.idlers, idlers_in })
    }

    /// The pairs that are there.
    pub fn pairs(&self) -> impl Iterator<Item = Pair> + '_ {
        self.pairs.iter().copied().flatten()
    }

    /// Every gear of the train, idlers last.
    pub fn gears(&self) -> impl Iterator<Item = u16> + '_ {
        let gears = self.pairs().flat_map(|pair| [pair.driver, pair.driven]);
        gears.chain(self.idlers.iter().copied().flatten())
    }

    /// How many gears there are to mount, idlers counted.
    #[must_use]
    pub fn gear_count(&self) -> u32 {
        self.gears().fold(0, |count, _| count.saturating_add(1))
    }

    /// How many idlers there are.
    #[must_use]
    pub fn idler_count(&self) -> u32 {
        self.idlers.iter().flatten().fold(0, |count, _| count.saturating_add(1))
    }

    /// The teeth of all gears together, idlers counted.
    #[must_use]
    pub fn teeth(&self) -> u32 {
        self.gears().map(u32::from).fold(0, u32::saturating_add)
    }

    /// Turns of the last gear for one turn of the first, as a magnitude.
    ///
    /// # Errors
    /// [`crate::Cause::Zero`] for a gear without teeth.
    pub fn ratio(&self) -> Result<Fraction, Error> {
        self.pairs().try_fold(Fraction::ONE, |ratio, pair| {
            ratio.times(i64::from(pair.driver))?.over(i64::from(pair.driven))
        })
    }

    /// Whether the last gear turns the same way as the first: every mesh
    /// reverses it.
    #[must_use]
    pub fn same_way(&self) -> bool {
        let meshes = self.pairs().fold(self.idler_count(), |count, _| count.saturating_add(1));
        meshes & 1 == 0
    }
}
