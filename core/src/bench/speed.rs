//! Turns in a minute from a cutting speed, and the speed to set out of those there are.
//!
//! Rule: turns = speed ÷ (π × diameter). The speeds of drills of high-speed steel are
//! those of a navy's training course; the same course has carbon steel at half of them
//! and carbide at twice to three times. That turning and milling start from the same
//! band, reaming at half of it, is common practice. All of them are where to start.
//!
//! ```
//! use handturn::bench::speed::{At, Cutting, Speeds};
//! use handturn::measure::Length;
//! use handturn::number::Fraction;
//! // 60 ft a minute on work of 5 in: 46 turns a minute. Of these, 40 is set.
//! let speed = Length::from_inches(Fraction::whole(60 * 12))?;
//! let found = Speeds {
//!     cutting: Cutting::Own(speed),
//!     diameter: Length::from_inches(Fraction::whole(5))?,
//!     owned: &[25, 40, 70, 120],
//! }
//! .turns()?;
//! assert!((found.greatest.value - 45.837).abs() < 0.001);
//! assert_eq!(found.set.map(|set| (set.rpm, set.at)), Some((40, At::Below)));
//! # Ok::<(), handturn::Error>(())
//! ```
use super::cone::near;
use crate::bounds;
use crate::error::{Cause, Error, Field};
use crate::measure::{Length, given};
use crate::number::{
    Approx, Fraction,
    float::{self, PI},
};

/// What is cut.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Material {
    /// Mild steel.
    MildSteel,
    /// Medium carbon steel.
    MediumSteel,
    /// Alloy steel.
    AlloySteel,
    /// Carbon tool steel and silver steel, soft.
    ToolSteel,
    /// Stainless steel.
    Stainless,
    /// Cast iron.
    CastIron,
    /// Brass.
    Brass,
    /// Bronze and gunmetal.
    Bronze,
    /// Aluminium.
    Aluminium,
}

impl Material {
    /// Every one, the softest last.
    pub const ALL: [Self; 9] = [
        Self::MildSteel,
        Self::MediumSteel,
        Self::AlloySteel,
        Self::ToolSteel,
        Self::Stainless,
        Self::CastIron,
        Self::Brass,
        Self::Bronze,
        Self::Aluminium,
    ];

    /// Feet a minute of a drill of high-speed steel, from and to.
    #[must_use]
    pub const fn drilling(self) -> (u16, u16) {
        match self {
            Self::MildSteel => (80, 110),
            Self::MediumSteel => (70, 80),
            Self::AlloySteel => (50, 70),
            Self::ToolSteel => (50, 60),
            Self::Stainless => (30, 40),
            Self::CastIron => (70, 150),
            Self::Brass | Self::Bronze | Self::Aluminium => (200, 300),
        }
    }
}

/// What is done.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Doing {
    /// Turning and boring: the diameter is the work's.
    Turning,
    /// Drilling: the diameter is the drill's.
    Drilling,
    /// Reaming, at half the speed.
    Reaming,
    /// Milling: the diameter is the cutter's.
    Milling,
}

/// What the tool is made of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Tool {
    /// Carbon steel.
    Carbon,
    /// High-speed steel.
    HighSpeed,
    /// Carbide.
    Carbide,
}

/// How fast it may cut.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Cutting {
    /// A speed of one's own: the way the edge goes in a minute.
    Own(Length),
    /// By material, work and tool.
    By(Material, Doing, Tool),
}

impl Cutting {
    /// The way the edge goes in a minute, from and to.
    ///
    /// # Errors
    /// [`Cause::Overflow`], which no speed of the table meets.
    pub fn band(self) -> Result<(Length, Length), Error> {
        let (material, doing, tool) = match self {
            Self::Own(speed) => return Ok((speed, speed)),
            Self::By(material, doing, tool) => (material, doing, tool),
        };
        let (from, to) = material.drilling();
        // In inches a minute, doubled: six for half a foot.
        let (least, greatest) = match tool {
            Tool::Carbon => (6, 6),
            Tool::HighSpeed => (12, 12),
            Tool::Carbide => (24, 36),
        };
        let slower = if matches!(doing, Doing::Reaming) { 2 } else { 1 };
        let speed = |feet: u16, inches: i64| {
            Length::from_inches(Fraction::whole(i64::from(feet)).times(inches)?.over(slower)?)
        };
        Ok((speed(from, least)?, speed(to, greatest)?))
    }
}

/// A speed to be found.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Speeds<'a> {
    /// How fast it may cut.
    pub cutting: Cutting,
    /// Of what goes round.
    pub diameter: Length,
    /// Turns in a minute that the machine has.
    pub owned: &'a [u32],
}

/// Where a speed lies.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum At {
    /// Slower than the band.
    Below,
    /// In the band.
    Within,
    /// Faster than the band.
    Above,
}

/// A speed of the machine.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Owned {
    /// Turns in a minute.
    pub rpm: u32,
    /// Millimetres that the edge goes in a minute.
    pub cuts: Approx,
    /// Where it lies.
    pub at: At,
}

/// Turns in a minute.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Turns {
    /// At the slow end of the band.
    pub least: Approx,
    /// At the fast end of the band.
    pub greatest: Approx,
    /// The fastest the machine has that is not above the band.
    pub set: Option<Owned>,
}

/// Greatest cutting speed, in metres a minute.
const MOST_METRES: u32 = 5_000;

/// Turns in a minute at which the edge of `diameter` goes `speed` in a minute.
///
/// # Errors
/// [`Cause::Zero`] and [`Cause::OutOfLengths`] of the diameter; [`Cause::OutOfRange`] of
/// the speed, in metres a minute.
pub fn rpm(speed: Length, diameter: Length) -> Result<Approx, Error> {
    let around = PI * given::size(diameter, Field::Diameter)?;
    let speed = speed.mm();
    if speed <= Fraction::ZERO || speed > Fraction::whole(i64::from(MOST_METRES)).times(1000)? {
        let cause = Cause::OutOfRange { least: 0, greatest: MOST_METRES };
        return Err(Error::new(Field::Speed, cause));
    }
    let value = float::of(speed) / around;
    Ok(near(value, value, 4.0))
}

impl Speeds<'_> {
    /// The band in turns, and the speed to set.
    ///
    /// # Errors
    /// As [`rpm`]; [`Cause::OutOfRange`] of a speed owned (1 to 100 000).
    pub fn turns(&self) -> Result<Turns, Error> {
        let (slow, fast) = self.cutting.band()?;
        let (least, greatest) = (rpm(slow, self.diameter)?, rpm(fast, self.diameter)?);
        let mut set: Option<Owned> = None;
        for &rpm in self.owned {
            let one = self.owned(rpm, (least, greatest))?;
            if one.at != At::Above && set.is_none_or(|best| best.rpm < rpm) {
                set = Some(one);
            }
        }
        Ok(Turns { least, greatest, set })
    }

    /// What the speed `rpm` is worth, `band` as [`Self::turns`] gives it.
    ///
    /// # Errors
    /// [`Cause::OutOfRange`] of the speed; [`Cause::OutOfLengths`] of the diameter.
    pub fn owned(&self, rpm: u32, band: (Approx, Approx)) -> Result<Owned, Error> {
        bounds::SPINDLE.check(i64::from(rpm))?;
        let turns = f64::from(rpm);
        let cuts = turns * PI * given::size(self.diameter, Field::Diameter)?;
        let at = match () {
            () if turns > band.1.value => At::Above,
            () if turns < band.0.value => At::Below,
            () => At::Within,
        };
        Ok(Owned { rpm, cuts: near(cuts, cuts, 4.0), at })
    }
}

#[cfg(test)]
mod tests {
    extern crate std;

    use super::*;

    #[test]
    fn the_fastest_not_above_the_band_is_set() {
        let mm = |n| Length::from_mm(Fraction::whole(n));
        let cutting = Cutting::By(Material::MildSteel, Doing::Turning, Tool::HighSpeed);
        let ask = |owned| Speeds { cutting, diameter: mm(25), owned }.turns().unwrap();
        // 80 to 110 ft a minute on 25 mm: 310 to 427 turns.
        let found = ask(&[500, 320, 400, 150]);
        assert!((found.least.value - 310.47).abs() < 0.01, "{found:?}");
        assert!((found.greatest.value - 426.89).abs() < 0.01);
        assert_eq!(found.set.map(|set| (set.rpm, set.at)), Some((400, At::Within)));
        assert_eq!(ask(&[500, 150]).set.map(|set| (set.rpm, set.at)), Some((150, At::Below)));
        assert_eq!(ask(&[500, 600]).set, None);
    }

    #[test]
    fn reaming_is_half_carbon_half_and_carbide_twice_to_three_times() {
        let band = |doing, tool| {
            let (a, b) = Cutting::By(Material::Brass, doing, tool).band().unwrap();
            (a.inches().unwrap().num(), b.inches().unwrap().num())
        };
        assert_eq!(band(Doing::Drilling, Tool::HighSpeed), (2400, 3600));
        assert_eq!(band(Doing::Reaming, Tool::HighSpeed), (1200, 1800));
        assert_eq!(band(Doing::Milling, Tool::Carbon), (1200, 1800));
        assert_eq!(band(Doing::Turning, Tool::Carbide), (4800, 10_800));
    }
}
