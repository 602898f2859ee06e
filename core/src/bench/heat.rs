//! Hardening and tempering: heats, colours and what they are for, as bands.
//!
//! Books differ, light differs, and a colour comes at a lower heat where it is given
//! more time, so nothing here is one figure. Sources: The Tinman's Manual and Builder's
//! and Mechanic's Handbook (I. R. Butt, 1860s) and The Working of Steel (Colvin and
//! Juthe, 1922), table 26 and the maker's table in it, for the colours of temper; A
//! Book of Steam for Engineers (1905) and Workshop Technology (W. A. J. Chapman, part 1,
//! 5th edition, 1972) for red heats. Steels and soaking: common practice.
//!
//! ```
//! use handturn::bench::heat::{Temper, Use, fahrenheit};
//! // A centre punch: brown purple to purple, 265 to 285 °C.
//! assert_eq!(Use::Punch.colours(), (Temper::BrownPurple, Temper::Purple));
//! assert_eq!(Use::Punch.band(), (265, 285));
//! assert_eq!(fahrenheit(265), 509);
//! ```

/// A colour of temper, on bright steel.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Temper {
    /// Very pale straw.
    PaleStraw,
    /// Straw.
    Straw,
    /// Dark straw, deep yellow.
    DarkStraw,
    /// Brown yellow.
    Brown,
    /// Brown, tinged with purple.
    BrownPurple,
    /// Purple.
    Purple,
    /// Dark purple.
    DarkPurple,
    /// Full, bright blue.
    Blue,
    /// Dark blue.
    DarkBlue,
    /// Pale blue, then grey.
    PaleBlue,
}

impl Temper {
    /// Every one, the coolest first.
    pub const ALL: [Self; 10] = [
        Self::PaleStraw,
        Self::Straw,
        Self::DarkStraw,
        Self::Brown,
        Self::BrownPurple,
        Self::Purple,
        Self::DarkPurple,
        Self::Blue,
        Self::DarkBlue,
        Self::PaleBlue,
    ];

    /// Degrees Celsius at which it shows after some minutes, from and to.
    #[must_use]
    pub const fn band(self) -> (u16, u16) {
        match self {
            Self::PaleStraw => (216, 224),
            Self::Straw => (224, 238),
            Self::DarkStraw => (238, 257),
            Self::Brown => (250, 265),
            Self::BrownPurple => (265, 274),
            Self::Purple => (274, 285),
            Self::DarkPurple => (280, 293),
            Self::Blue => (290, 305),
            Self::DarkBlue => (299, 318),
            Self::PaleBlue => (316, 345),
        }
    }
}

/// A glow in the fire, seen in dull light.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Glow {
    /// Red that just shows.
    JustRed,
    /// Dull, dark red.
    DullRed,
    /// Dull cherry red.
    DullCherry,
    /// Cherry red.
    Cherry,
    /// Bright, clear cherry red.
    BrightCherry,
    /// Orange.
    Orange,
    /// Yellow.
    Yellow,
    /// White.
    White,
}

impl Glow {
    /// Every one, the coolest first.
    pub const ALL: [Self; 8] = [
        Self::JustRed,
        Self::DullRed,
        Self::DullCherry,
        Self::Cherry,
        Self::BrightCherry,
        Self::Orange,
        Self::Yellow,
        Self::White,
    ];

    /// Degrees Celsius, from and to: as wide as the books are apart.
    #[must_use]
    pub const fn band(self) -> (u16, u16) {
        match self {
            Self::JustRed => (425, 595),
            Self::DullRed => (590, 705),
            Self::DullCherry => (700, 815),
            Self::Cherry => (750, 900),
            Self::BrightCherry => (825, 1000),
            Self::Orange => (950, 1200),
            Self::Yellow => (1050, 1260),
            Self::White => (1255, 1500),
        }
    }
}

/// What is made of the steel.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Use {
    /// Scribers, scrapers, gravers.
    Scriber,
    /// Lathe tools, fly and milling cutters.
    Cutter,
    /// Drills, reamers, D-bits, counterbores.
    Drill,
    /// Taps and dies.
    Tap,
    /// Centre punches, pin punches, drifts, gauges.
    Punch,
    /// Cold chisels, rivet snaps.
    Chisel,
    /// Screwdrivers.
    Screwdriver,
    /// Springs.
    Spring,
}

impl Use {
    /// Every one, the hardest first.
    pub const ALL: [Self; 8] = [
        Self::Scriber,
        Self::Cutter,
        Self::Drill,
        Self::Tap,
        Self::Punch,
        Self::Chisel,
        Self::Screwdriver,
        Self::Spring,
    ];

    /// Colours it is let down to, from and to.
    #[must_use]
    pub const fn colours(self) -> (Temper, Temper) {
        match self {
            Self::Scriber => (Temper::PaleStraw, Temper::PaleStraw),
            Self::Cutter => (Temper::PaleStraw, Temper::Straw),
            Self::Drill => (Temper::PaleStraw, Temper::DarkStraw),
            Self::Tap => (Temper::DarkStraw, Temper::Brown),
            Self::Punch => (Temper::BrownPurple, Temper::Purple),
            Self::Chisel => (Temper::Purple, Temper::DarkPurple),
            Self::Screwdriver => (Temper::DarkPurple, Temper::Blue),
            Self::Spring => (Temper::Blue, Temper::DarkBlue),
        }
    }

    /// Degrees Celsius of those colours, from and to.
    #[must_use]
    pub const fn band(self) -> (u16, u16) {
        let (first, last) = self.colours();
        (first.band().0, last.band().1)
    }
}

/// What the steel cools in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Quench {
    /// Water or brine, at room heat.
    Water,
    /// Oil.
    Oil,
}

/// A steel that hardens.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Steel {
    /// Silver steel.
    Silver,
    /// Silver steel up to 8 mm, in oil.
    SilverInOil,
    /// Plain carbon tool steel, about 1 %.
    Carbon,
    /// Gauge plate, oil-hardening tool steel O1.
    Oil,
    /// Spring steel, 0.6 to 0.8 % carbon.
    Spring,
}

impl Steel {
    /// Every one.
    pub const ALL: [Self; 5] =
        [Self::Silver, Self::SilverInOil, Self::Carbon, Self::Oil, Self::Spring];

    /// Degrees Celsius to harden from, from and to, and what it cools in.
    #[must_use]
    pub const fn hardening(self) -> (u16, u16, Quench) {
        match self {
            Self::Silver => (770, 790, Quench::Water),
            Self::SilverInOil => (800, 810, Quench::Oil),
            Self::Carbon => (760, 800, Quench::Water),
            Self::Oil => (790, 845, Quench::Oil),
            Self::Spring => (800, 850, Quench::Oil),
        }
    }
}

/// Minutes to soak at the hardening heat for each inch of the thickest section, from
/// and to.
pub const SOAK_PER_INCH: (u8, u8) = (30, 60);

/// Degrees Celsius at which steel is no longer drawn to a magnet.
pub const UNMAGNETIC: u16 = 770;

/// Minutes to soak, from and to, for a section of so many micrometres; each at least one.
#[must_use]
pub fn soak(section_um: u32) -> (u32, u32) {
    let minutes = |each: u8| {
        let all = u64::from(section_um).saturating_mul(u64::from(each));
        u32::try_from(all.div_ceil(25_400)).unwrap_or(u32::MAX).max(1)
    };
    (minutes(SOAK_PER_INCH.0), minutes(SOAK_PER_INCH.1))
}

/// Degrees Fahrenheit of degrees Celsius, to the nearest whole one.
#[must_use]
pub fn fahrenheit(celsius: u16) -> u32 {
    // C × 9/5 + 32, half a degree added before the part is dropped.
    u32::from(celsius).saturating_mul(18).saturating_add(325) / 10
}

#[cfg(test)]
mod tests {
    extern crate std;

    use super::*;

    #[test]
    fn bands_rise_without_a_gap() {
        let follow = |bands: &[(u16, u16)]| {
            assert!(bands.iter().all(|band| band.0 < band.1));
            for two in bands.windows(2) {
                assert!(two[0].0 <= two[1].0 && two[0].1 < two[1].1, "{two:?}");
                assert!(two[1].0 <= two[0].1, "a gap: {two:?}");
            }
        };
        follow(&Temper::ALL.map(Temper::band));
        follow(&Glow::ALL.map(Glow::band));
        follow(&Use::ALL.map(Use::band));
    }

    #[test]
    fn steels_are_hardened_at_a_glow_and_tempered_far_below() {
        for steel in Steel::ALL {
            let (from, to, _) = steel.hardening();
            assert!(from < to && from + 20 > UNMAGNETIC - 10, "{steel:?}");
            assert!(Glow::Cherry.band().0 <= from && to <= Glow::Cherry.band().1);
        }
    }

    #[test]
    fn fahrenheit_is_rounded_to_the_nearest() {
        for celsius in 0..=2000_u16 {
            let exact = f64::from(celsius) * 1.8 + 32.0;
            assert!((f64::from(fahrenheit(celsius)) - exact).abs() <= 0.5, "{celsius}");
        }
        assert_eq!(soak(25_400), (30, 60));
        assert_eq!(soak(6_000), (8, 15));
    }
}
