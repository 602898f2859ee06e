//! What a search for the nearest trains finds, and in what order.
use super::Chain;
use super::miss::Miss;
use crate::measure::Length;
use crate::number::{Approx, Fraction};
use core::cmp::Ordering;

/// A train that was found.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Found {
    /// Its gears in the order in which they are mounted.
    pub chain: Chain,
    /// Which of the ratios wanted it is for, from 0.
    pub setting: u8,
    pub(super) miss: Miss,
}

impl Found {
    /// Whether it gives just what is wanted: never with π.
    #[must_use]
    pub const fn is_exact(&self) -> bool {
        self.miss.is_exact()
    }

    /// By how much it gives too much, as a part of what is wanted, exactly;
    /// `None` with π.
    #[must_use]
    pub fn off(&self) -> Option<Fraction> {
        self.miss.part()
    }

    /// By how many parts in a million it gives too much; below nought too little.
    #[must_use]
    pub fn off_ppm(&self) -> Approx {
        self.miss.times(Fraction::whole(1_000_000))
    }

    /// By how many millimetres it is too long over `length`; below nought too short.
    #[must_use]
    pub fn off_over(&self, length: Length) -> Approx {
        self.miss.times(length.mm())
    }

    /// Nearest first; then fewest gears, a gearbox left as it is, fewest teeth,
    /// and a fixed order.
    pub(super) fn order(&self, other: &Self) -> Ordering {
        let simple = |f: &Self| (f.chain.gear_count(), f.setting > 0, f.chain.teeth());
        let fixed = |f: &Self| (f.setting, f.chain);
        let nearest = self.miss.compare(&other.miss);
        nearest
            .then_with(|| simple(self).cmp(&simple(other)))
            .then_with(|| fixed(self).cmp(&fixed(other)))
    }
}

/// Why gears that would give a nearer ratio than all trains found can't be mounted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Why {
    /// In no order do they span just the distance of the studs.
    Reach,
    /// In every order a rim meets a stud.
    Rims,
    /// No idler is left, or allowed, that gives the sense or bridges the studs.
    Idler,
}

/// Gears that can't be mounted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Unmounted {
    /// Teeth of the drivers, rising.
    pub drivers: [Option<u16>; 3],
    /// Teeth of the driven gears, rising.
    pub driven: [Option<u16>; 3],
    /// Which of the ratios wanted they are for, from 0.
    pub setting: u8,
    /// What is in the way.
    pub why: Why,
    pub(super) miss: Miss,
}

impl Unmounted {
    /// Whether their ratio is just what is wanted: never with π.
    #[must_use]
    pub const fn is_exact(&self) -> bool {
        self.miss.is_exact()
    }

    pub(super) fn order(&self, other: &Self) -> Ordering {
        let size = |u: &Self| u.drivers.iter().flatten().count();
        let teeth = |u: &Self| {
            let all = u.drivers.iter().chain(&u.driven).flatten();
            all.map(|&t| u32::from(t)).fold(0, u32::saturating_add)
        };
        let simple = |u: &Self| (size(u), u.setting > 0, teeth(u));
        let fixed = |u: &Self| (u.setting, u.drivers, u.driven);
        let nearest = self.miss.compare(&other.miss);
        nearest
            .then_with(|| simple(self).cmp(&simple(other)))
            .then_with(|| fixed(self).cmp(&fixed(other)))
    }
}
