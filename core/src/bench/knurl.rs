//! Knurls: blanks on which the wheel tracks, what they grow to, how far to travel.
//!
//! Rules:
//! - the wheel's tips fall into their own marks where a whole number of them goes round:
//!   blank = teeth × pitch ÷ (π cos y), y the angle of wheel to work or of its teeth;
//!   by diametral pitch teeth ÷ (pitch × cos y) (ANSI/ASME B94.6-1984);
//! - the metal only moves (volume is kept): tips of V-shaped grooves rise as much as the
//!   grooves sink, so over a share f of the full depth h = pitch ÷ 2 cot half the wheel's
//!   tooth angle the diameter grows by h f² under lines and 2 h (f² − f³/3) under
//!   crossed ones. Derived here for a flat piece, which a round follows but for its depth
//!   over its diameter; given from half depth to full teeth, as a band. That a knurl is
//!   left between the two is common practice.
//!
//! Common practice too: a wheel that bites deep at its first turn rolls on a smaller circle
//! than the blank's, and may fall in on a slightly larger one, so the first two turns
//! decide; and the feed, a fifth to a half of the pitch in one turn.
//!
//! ```
//! use handturn::bench::knurl::{Knurl, Lines, Pitch};
//! use handturn::measure::{Angle, Length};
//! use handturn::number::Fraction;
//! // 160 to the inch of diameter, straight teeth set over 30°, stock of 1 in: 138 teeth.
//! let inch = |n| Length::from_inches(Fraction::whole(n));
//! let knurl = Knurl {
//!     pitch: Pitch::Diametral(Fraction::whole(160)),
//!     angle: Angle::from_degrees(Fraction::whole(30))?,
//!     lines: Lines::Crossed,
//!     tooth_angle: Angle::from_degrees(Fraction::whole(90))?,
//!     stock: inch(1)?,
//! };
//! let found = knurl.fit()?;
//! let nearest = found.below();
//! assert_eq!(nearest.map(|track| track.teeth), Some(138));
//! assert!(nearest.is_some_and(|track| (track.blank.value / 25.4 - 0.996).abs() < 0.0005));
//! # Ok::<(), handturn::Error>(())
//! ```
use super::cone::{half, near};
use crate::bounds::{self, DIAMETRAL_PITCH, WHEEL_TEETH};
use crate::error::{Cause, Error, Field};
use crate::list::List;
use crate::measure::{Angle, Length, given};
use crate::number::{
    Approx, Fraction,
    float::{self, PI},
};

/// How far apart the tips of the wheel are.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Pitch {
    /// From tip to tip, square to the teeth.
    Tips(Length),
    /// Tips to an inch, square to the teeth.
    PerInch(Fraction),
    /// Teeth to an inch of the blank's diameter.
    Diametral(Fraction),
    /// By the wheel itself: its diameter over the tips, and its teeth.
    Wheel(Length, u32),
}

/// What the knurl looks like.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Lines {
    /// Straight or slanting lines, all one way.
    OneWay,
    /// Diamonds: lines both ways.
    Crossed,
}

/// A knurl wanted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Knurl {
    /// Of the wheel.
    pub pitch: Pitch,
    /// Of the lines to the axis, up to 60°: by the wheel's own teeth, or because it is
    /// set over.
    pub angle: Angle,
    /// What it looks like.
    pub lines: Lines,
    /// Between the flanks of the wheel's teeth.
    pub tooth_angle: Angle,
    /// Diameter of the stock in hand.
    pub stock: Length,
}

/// A blank on which the wheel tracks.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Track {
    /// Teeth round it.
    pub teeth: u32,
    /// Its diameter, in millimetres.
    pub blank: Approx,
    /// The same, where it is exact.
    pub exact: Option<Length>,
    /// What the stock has more, in millimetres; below nought, less.
    pub off: Approx,
}

/// Blanks round about the stock, and what becomes of one.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Fit {
    /// From tip to tip, square to the teeth, in millimetres.
    pub pitch: Approx,
    /// Blanks in order of size, at most two below the nearest one below.
    pub tracks: List<Track, 4>,
    /// How many of them the stock is not smaller than.
    pub not_above: usize,
    /// Depth of full, sharp teeth, in millimetres.
    pub full_depth: Approx,
    /// By how many millimetres the diameter grows at half the full depth.
    pub grows_least: Approx,
    /// By how many millimetres it grows at full depth, if no metal is lost.
    pub grows_most: Approx,
    /// Travel in one turn to start from (common practice), in millimetres, from and to.
    pub feed: (Approx, Approx),
}

impl Fit {
    /// The nearest blank not above the stock: what it is turned down to.
    #[must_use]
    pub fn below(&self) -> Option<&Track> {
        self.not_above.checked_sub(1).and_then(|place| self.tracks.get(place))
    }

    /// The nearest blank above the stock.
    #[must_use]
    pub fn above(&self) -> Option<&Track> {
        self.tracks.get(self.not_above)
    }
}

/// Way of the edge in a minute to start from, in millimetres, from and to (common
/// practice: half the speed of turning and less).
pub const SPEED_MM: (u32, u32) = (10_000, 20_000);

impl Knurl {
    /// Blanks round about the stock.
    ///
    /// # Errors
    /// [`Cause::OutOfRange`] of the angle (60°), of the tooth angle, of pitch and teeth
    /// of the wheel, and of teeth on the stock ([`WHEEL_TEETH`]); [`Cause::Zero`] and
    /// [`Cause::OutOfLengths`] of lengths.
    pub fn fit(&self) -> Result<Fit, Error> {
        let stock = given::size(self.stock, Field::Diameter)?;
        let slant = float::of(self.angle.turns());
        if !(0.0..=1.0 / 6.0).contains(&slant) {
            return Err(Error::new(Field::Helix, Cause::OutOfRange { least: 0, greatest: 60 }));
        }
        let (straight, exact) = self.per_tooth()?;
        let exact = exact.filter(|_| self.angle.turns().is_zero());
        let cos = float::cos_turns(slant);
        let per_tooth = straight / cos;
        let teeth = match exact {
            Some(each) => self.stock.mm().checked_div(each)?.floor(),
            None => float::nearest(stock / per_tooth - 0.5, 1).map_or(0, Fraction::num),
        };
        let most = WHEEL_TEETH.check_u32(teeth)?;
        let mut tracks = List::new();
        let mut not_above = 0;
        for teeth in most.saturating_sub(2).max(WHEEL_TEETH.least)..=most.saturating_add(1) {
            let blank = f64::from(teeth) * per_tooth;
            let exact = match exact {
                Some(each) => Some(Length::from_mm(each.times(i64::from(teeth))?)),
                None => None,
            };
            let off = stock - blank;
            let off = Approx { value: off, bound: (8.0 * blank + stock) * f64::EPSILON };
            if teeth <= most {
                not_above = tracks.len().saturating_add(1);
            }
            let _ = tracks.push(Track { teeth, blank: near(blank, blank, 7.0), exact, off });
        }
        let (sin_half, cos_half) = half(self.tooth_angle)?;
        let pitch = PI * straight;
        let depth = pitch / 2.0 * cos_half / sin_half;
        let (least, greatest) = match self.lines {
            Lines::OneWay => (0.25, 1.0),
            Lines::Crossed => (5.0 / 12.0, 4.0 / 3.0),
        };
        let part = |size: f64, part: f64| near(size * part, size * part, 14.0);
        Ok(Fit {
            pitch: near(pitch, pitch, 5.0),
            tracks,
            not_above,
            full_depth: part(depth, 1.0),
            grows_least: part(depth, least),
            grows_most: part(depth, greatest),
            feed: (part(pitch, 0.2), part(pitch, 0.5)),
        })
    }

    /// Diameter for each tooth of straight lines, in millimetres, and the same where it
    /// is a fraction.
    fn per_tooth(&self) -> Result<(f64, Option<Fraction>), Error> {
        let whole = |each: Fraction| Ok((float::of(each), Some(each)));
        match self.pitch {
            Pitch::Tips(pitch) => Ok((given::size(pitch, Field::Pitch)? / PI, None)),
            Pitch::PerInch(many) => {
                in_bounds(many)?;
                let pitch = Length::from_inches(many.inverse()?)?;
                Ok((float::of(pitch.mm()) / PI, None))
            }
            Pitch::Diametral(many) => {
                in_bounds(many)?;
                whole(Length::from_inches(many.inverse()?)?.mm())
            }
            Pitch::Wheel(diameter, teeth) => {
                given::size(diameter, Field::Tool)?;
                let teeth = bounds::WHEEL_TEETH.check(i64::from(teeth))?;
                whole(diameter.mm().over(teeth)?)
            }
        }
    }
}

fn in_bounds(many: Fraction) -> Result<(), Error> {
    let bound = |n: u32| Fraction::whole(i64::from(n));
    let (least, greatest) = (DIAMETRAL_PITCH.least, DIAMETRAL_PITCH.greatest);
    if many < bound(least) || many > bound(greatest) {
        return Err(Error::new(Field::DiametralPitch, Cause::OutOfRange { least, greatest }));
    }
    Ok(())
}

/// How far a wheel travels.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Travel {
    /// Of the slide, from where the wheel first goes in.
    pub travel: Length,
    /// How far the wheel reaches beyond each free end of the length wanted: air, or
    /// stock to be turned off.
    pub beyond: Length,
    /// How long the knurl is in all.
    pub in_all: Length,
}

/// How far a wheel `width` wide travels for a knurl of `length`: its middle from line to
/// line, so that every place has had half its width. At a `shoulder` it stops with its
/// edge there. A wheel as wide as the length is only pressed in.
///
/// # Errors
/// [`Cause::Zero`] and [`Cause::OutOfLengths`] of either.
pub fn travel(length: Length, width: Length, shoulder: bool) -> Result<Travel, Error> {
    given::size(length, Field::Length)?;
    given::size(width, Field::Face)?;
    if width >= length {
        let over = given::minus(width, length, Field::Length)?;
        let beyond = if shoulder { over } else { given::over(over, 2, Field::Length)? };
        return Ok(Travel { travel: given::NONE, beyond, in_all: width });
    }
    let beyond = given::over(width, 2, Field::Length)?;
    let travel = if shoulder { given::minus(length, beyond, Field::Length)? } else { length };
    let in_all = given::plus(travel, width, Field::Length)?;
    Ok(Travel { travel, beyond, in_all })
}

#[cfg(test)]
mod tests {
    extern crate std;

    use super::*;

    fn mm(n: i64, d: i64) -> Length {
        Length::from_mm(Fraction::new(n, d).unwrap())
    }

    fn knurl(pitch: Pitch, stock: Length) -> Knurl {
        Knurl {
            pitch,
            angle: Angle::ZERO,
            lines: Lines::OneWay,
            tooth_angle: Angle::from_degrees(Fraction::whole(90)).unwrap(),
            stock,
        }
    }

    #[test]
    fn a_blank_that_fits_is_exact_and_the_next_one_is_a_tooth_larger() {
        let half = Length::from_inches(Fraction::new(1, 2).unwrap()).unwrap();
        let fit = knurl(Pitch::Diametral(Fraction::whole(96)), half).fit().unwrap();
        let below = fit.below().unwrap();
        assert_eq!((below.teeth, below.exact), (48, Some(half)));
        assert!(below.off.value.abs() <= below.off.bound);
        assert_eq!(fit.above().map(|track| track.teeth), Some(49));
        assert_eq!(fit.tracks.len(), 4);
    }

    #[test]
    fn by_tips_the_stock_lies_between_two_blanks() {
        let fit = knurl(Pitch::Tips(mm(8, 10)), mm(20, 1)).fit().unwrap();
        let (below, above) = (fit.below().unwrap(), fit.above().unwrap());
        assert_eq!((below.teeth, above.teeth), (78, 79));
        assert!(below.off.value > 0.0 && above.off.value < 0.0 && below.exact.is_none());
        let one = above.blank.value - below.blank.value;
        assert!((one * PI - 0.8).abs() < 1e-12);
        // 90°: half a pitch deep, and grown by as much in all.
        assert!((fit.full_depth.value - 0.4).abs() < 1e-12);
        assert!((fit.grows_most.value - 0.4).abs() < 1e-12);
    }

    #[test]
    fn few_teeth_and_steep_angles_are_refused() {
        let few = knurl(Pitch::Tips(mm(2, 1)), mm(1, 1)).fit();
        assert!(matches!(few, Err(Error { field: Field::Teeth, .. })));
        let angle = Angle::from_degrees(Fraction::whole(61)).unwrap();
        let steep = Knurl { angle, ..knurl(Pitch::Tips(mm(1, 1)), mm(20, 1)) };
        assert!(matches!(steep.fit(), Err(Error { field: Field::Helix, .. })));
        let small = knurl(Pitch::Tips(mm(1, 1)), mm(13, 10)).fit().unwrap();
        assert_eq!((small.tracks.len(), small.not_above), (2, 1));
    }

    #[test]
    fn the_wheel_travels_from_line_to_line_or_up_to_a_shoulder() {
        let free = travel(mm(20, 1), mm(8, 1), false).unwrap();
        assert_eq!((free.travel, free.beyond, free.in_all), (mm(20, 1), mm(4, 1), mm(28, 1)));
        let shoulder = travel(mm(20, 1), mm(8, 1), true).unwrap();
        assert_eq!((shoulder.travel, shoulder.in_all), (mm(16, 1), mm(24, 1)));
        let pressed = travel(mm(6, 1), mm(8, 1), false).unwrap();
        assert_eq!((pressed.travel, pressed.beyond), (mm(0, 1), mm(1, 1)));
    }
}
