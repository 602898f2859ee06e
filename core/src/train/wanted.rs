//! What is asked of a search for the nearest trains.
use crate::head::{Gear, Mounting};
use crate::number::Fraction;

/// Which way the last gear may turn beside the first.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Senses {
    /// The same way only.
    Same,
    /// The other way only.
    Against,
    /// Either: what drives the train can be reversed.
    Either,
}

impl Senses {
    /// Whether a train may turn its last gear the `same_way` as its first.
    #[must_use]
    pub const fn allow(self, same_way: bool) -> bool {
        matches!((self, same_way), (Self::Either, _) | (Self::Same, true) | (Self::Against, false))
    }
}

/// When trains of six gears are looked for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Six {
    /// Never.
    Never,
    /// When the best of two or four gears is off by more than so many parts in a million.
    WhenOffBy(u32),
    /// Always.
    Always,
}

/// The trains wanted.
#[derive(Clone, Copy, Debug)]
pub struct Wanted<'a> {
    /// Turns of the last gear for one turn of the first: one ratio above nought for
    /// each setting of a gearbox behind the train, the one it stands in first;
    /// one alone where there is no gearbox.
    pub ratios: &'a [Fraction],
    /// Whether the ratio wanted is π times these.
    pub times_pi: bool,
    /// The gears owned, of at most 250 teeth.
    pub gears: &'a [Gear],
    /// What can be mounted; without `four_gears` only pairs.
    pub mounting: Mounting,
    /// Which way the last gear may turn.
    pub senses: Senses,
    /// When six gears are tried.
    pub six: Six,
}
