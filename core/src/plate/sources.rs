//! The errors of machine and hands that a budget takes in.
use crate::error::{Cause, Error, Field};
use crate::measure::{Angle, Length};
use crate::number::Fraction;

/// What makes a division wrong, in the order in which terms are listed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
#[non_exhaustive]
pub enum Source {
    /// The way's own rounding to the nearest hole or mark, exact for each position;
    /// with a plate made here, the rounding that is left from its first generation.
    Rounding,
    /// The worm wheel, once in a turn of the work.
    Wheel,
    /// The worm, once in a turn of the handle.
    Worm,
    /// The place of the holes of a plate (or notches of a direct plate) that was owned.
    Holes,
    /// The place of holes drilled here.
    Drilling,
    /// Play of the pin in its hole.
    Pin,
    /// The ring of holes off centre on the worm shaft.
    PlateRunOut,
    /// Reading a dial between its marks.
    Reading,
    /// Slack between worm and wheel, where it is not always taken up one way.
    Slack,
    /// The work's own blank off centre on its arbor.
    Blank,
}

impl Source {
    /// Every source, in order.
    pub const ALL: [Self; 10] = [
        Self::Rounding,
        Self::Wheel,
        Self::Worm,
        Self::Holes,
        Self::Drilling,
        Self::Pin,
        Self::PlateRunOut,
        Self::Reading,
        Self::Slack,
        Self::Blank,
    ];

    /// How its error is taken to spread.
    #[must_use]
    pub const fn spread(self) -> Spread {
        match self {
            Self::Rounding => Spread::Known,
            Self::Wheel | Self::Worm | Self::PlateRunOut | Self::Blank => Spread::Wave,
            Self::Holes | Self::Drilling | Self::Pin | Self::Reading => Spread::Even,
            Self::Slack => Spread::OneSided,
        }
    }
}

/// How an error of greatest size a is taken to spread, and so its RMS.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Spread {
    /// Known at each position.
    Known,
    /// Anywhere from −a to a, all alike: a/√3.
    Even,
    /// A sine wave of height a, its phase not known: a/√2.
    Wave,
    /// Anywhere from 0 to a, all alike: a/√3.
    OneSided,
}

/// Sizes of the errors of machine and hands: each the greatest, to either side.
///
/// The defaults are common practice for a home workshop, not of any one machine:
/// put in what an indicator shows.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Sources {
    /// Worm wheel: an angle of the work, once in its turn.
    pub wheel: Angle,
    /// Worm: an angle of the work, once in a turn of the handle.
    pub worm: Angle,
    /// Place of a hole of an owned plate along its circle.
    pub hole: Length,
    /// Play of the pin in its hole, side to side: it may stand half of this off.
    pub pin_play: Length,
    /// Ring of holes off the centre of its shaft: half of what an indicator swings.
    pub plate_run_out: Length,
    /// Reading of a dial, as a part of its finest mark.
    pub reading: Fraction,
    /// Whether the hands always come up from the same side, so that slack does not count.
    pub same_side: bool,
    /// Blank off the centre of the spindle: half of what an indicator swings.
    pub blank_run_out: Length,
    /// Radius of a circle of holes or notches of which the head does not tell it.
    pub radius: Length,
}

impl Sources {
    /// A faultless head in careful hands; circles of unknown radius at 50 mm.
    pub const NONE: Self = Self {
        wheel: Angle::ZERO,
        worm: Angle::ZERO,
        hole: Length::from_mm(Fraction::ZERO),
        pin_play: Length::from_mm(Fraction::ZERO),
        plate_run_out: Length::from_mm(Fraction::ZERO),
        reading: Fraction::ZERO,
        same_side: true,
        blank_run_out: Length::from_mm(Fraction::ZERO),
        radius: Length::from_mm(Fraction::whole(50)),
    };

    /// Checks every size.
    ///
    /// # Errors
    /// [`Field::Source`]: [`Cause::OutOfLengths`] for a length below nought or over
    /// 5 mm, [`Cause::OutOfRange`] for an angle below nought or over 3600 seconds,
    /// [`Cause::Conflict`] for a reading that is no part of a mark.
    /// [`Field::Ring`]: [`Cause::OutOfLengths`] for a radius not from 10 mm to 1 m.
    pub fn check(&self) -> Result<(), Error> {
        for length in [self.hole, self.pin_play, self.plate_run_out, self.blank_run_out] {
            error_length(length)?;
        }
        for angle in [self.wheel, self.worm] {
            let arcsec = angle.arcsec()?;
            if arcsec.is_negative() || arcsec > Fraction::whole(3600) {
                let cause = Cause::OutOfRange { least: 0, greatest: 3600 };
                return Err(Error::new(Field::Source, cause));
            }
        }
        if self.reading.is_negative() || self.reading > Fraction::ONE {
            return Err(Error::new(Field::Source, Cause::Conflict));
        }
        radius(self.radius)
    }
}

impl Default for Sources {
    /// Wheel ±30″, worm ±10″; holes ±0.02 mm, pin play 0.02 mm, plate and blank
    /// 0.01 mm off centre; dials read to a quarter of a mark; always up from the
    /// same side; circles of unknown radius at 50 mm. Common practice.
    fn default() -> Self {
        let mm = |n, d| Length::from_mm(Fraction::new(n, d).unwrap_or(Fraction::ZERO));
        let arcsec = |n| Angle::from_arcsec(Fraction::whole(n)).unwrap_or(Angle::ZERO);
        Self {
            wheel: arcsec(30),
            worm: arcsec(10),
            hole: mm(1, 50),
            pin_play: mm(1, 50),
            plate_run_out: mm(1, 100),
            reading: Fraction::new(1, 4).unwrap_or(Fraction::ZERO),
            same_side: true,
            blank_run_out: mm(1, 100),
            radius: mm(50, 1),
        }
    }
}

/// The error of a place: from nought to 5 mm.
pub(super) fn error_length(length: Length) -> Result<(), Error> {
    between(length, Field::Source, 0, 5_000)
}

/// A radius of holes: from 10 mm to 1 m.
pub(super) fn radius(length: Length) -> Result<(), Error> {
    between(length, Field::Ring, 10_000, 1_000_000)
}

/// Whether `length` lies within limits in micrometres.
pub(super) fn between(
    length: Length,
    field: Field,
    least: u32,
    greatest: u32,
) -> Result<(), Error> {
    let um = length.mm().times(1000).map_err(|e| e.of(field))?;
    if um < Fraction::whole(least.into()) || um > Fraction::whole(greatest.into()) {
        let cause = Cause::OutOfLengths { least_um: least, greatest_um: greatest };
        return Err(Error::new(field, cause));
    }
    Ok(())
}
