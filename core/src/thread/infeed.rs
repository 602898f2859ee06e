//! How far the tool goes in, and how the top slide stands for it.
//!
//! Method: the flanks belong to the wanted pitch diameter E, where the groove is s
//! wide. A nose of flat width f ends where the groove has narrowed to f, so the depth
//! from a work of diameter d is (d − E)/2 + (s − f)/(2·tan a); in a bore the diameters
//! change places. A round nose of radius n does as a flat of 2n·(1 − sin a)/cos a.
//! Along a slide set over by b from square across it is depth ÷ cos b, and the flanks
//! come out the same for any b up to a: one flank advances by what the other lags.
//! (Plane geometry, our own derivation; for a sharp tool, E = d − 0.6495 P and 60° it
//! is the 0.7577 P = 7/8 H of the text books.)
//!
//! ```
//! use handturn::measure::{Angle, Length};
//! use handturn::number::Fraction;
//! use handturn::thread::infeed::{Feed, Infeed, Nose, infeed};
//! // The arbor of a clock's wheel, M6x0.75: blank 5.91, pitch diameter 5.441 (middle
//! // of 6g), a nose of 0.108 mm radius, the top slide half a degree short of the flank.
//! let mm = |thousandths| Fraction::new(thousandths, 1000).map(Length::from_mm);
//! let half = Angle::from_degrees(Fraction::new(1, 2)?)?;
//! let depths = infeed(&Infeed {
//!     half_angle: Angle::from_degrees(Fraction::whole(30))?,
//!     space: mm(375)?, work: mm(5910)?, pitch_diameter: mm(5441)?,
//!     root: mm(5058)?, deepest: None, nose: Nose::Radius(mm(108)?),
//!     feed: Feed::Modified { short: half }, internal: false, left_hand: false,
//! })?;
//! assert!((depths.straight.value - 0.451).abs() < 0.0005);
//! assert!((depths.along_slide.value - 0.518).abs() < 0.0005);
//! assert_eq!(depths.set_over.degrees()?, Fraction::new(59, 2)?);
//! assert_eq!(depths.on_bed_scale.degrees()?, Fraction::new(121, 2)?);
//! # Ok::<(), handturn::Error>(())
//! ```
use super::given::{from_nought, half_angle, size, um_down};
use crate::error::{Cause, Error, Field};
use crate::measure::{Angle, Length};
use crate::number::{
    Approx, Fraction,
    float::{cos_turns, of, sin_turns, tan_turns},
};

/// The tool's own nose.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Nose {
    /// A flat of this width, nought for a sharp tool.
    Flat(Length),
    /// A rounding of this radius.
    Radius(Length),
}

/// How the tool is fed in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Feed {
    /// Square across: both flanks cut.
    #[doc(alias = "straight in")]
    Plunge,
    /// Along the trailing flank: only the leading one cuts.
    Flank,
    /// Short of the flank's angle, so that the trailing flank is just shaved.
    Modified {
        /// By how much, from nought to half the angle between the flanks.
        short: Angle,
    },
}

/// Which way the tool drifts along the bed while it is fed in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Drift {
    /// Square across: it does not.
    None,
    /// Towards the headstock: right-hand threads, cut towards it.
    Headstock,
    /// Towards the tailstock: left-hand threads, cut towards it.
    Tailstock,
}

/// Which way the top slide is swung from square across, seen from above.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Swing {
    /// It stays square across.
    None,
    /// As the hands of a clock.
    Clockwise,
    /// Against the hands of a clock.
    Anticlockwise,
}

/// What is to be cut, and with what.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Infeed {
    /// Half the angle between the flanks; nought for a square thread.
    pub half_angle: Angle,
    /// Width of the groove at the pitch diameter: half the pitch, as a rule.
    pub space: Length,
    /// Diameter of the work before the thread is cut, or of the bore.
    pub work: Length,
    /// Pitch diameter (effective) wanted.
    pub pitch_diameter: Length,
    /// The tool must reach this diameter, or the mating thread's crest jams in the root:
    /// greatest minor diameter outside, least major diameter inside.
    pub root: Length,
    /// The tool may not go past this diameter, where the form forbids it (trapezoidal,
    /// Acme, square); must be given for a square thread.
    pub deepest: Option<Length>,
    /// The tool's nose.
    pub nose: Nose,
    /// How it is fed in.
    pub feed: Feed,
    /// In a bore.
    pub internal: bool,
    /// A left-hand thread, cut towards the tailstock.
    pub left_hand: bool,
}

/// Depths from touch-on, in millimetres, and how the top slide stands.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Depths {
    /// Depth square to the axis.
    pub straight: Approx,
    /// Depth as the set-over slide travels.
    pub along_slide: Approx,
    /// Where the nose is narrower than the root and may not go deeper: by how much the
    /// groove is then widened along the axis; nought otherwise.
    pub widen: Approx,
    /// Diameter the tip reaches.
    pub tip: Approx,
    /// Set-over of the top slide from square across.
    pub set_over: Angle,
    /// The same on a scale that reads zero along the bed.
    pub on_bed_scale: Angle,
    /// Which way it is swung.
    pub swing: Swing,
    /// Which way the tool drifts.
    pub drift: Drift,
}

impl Nose {
    /// The width of flat, in millimetres, that reaches as deep between flanks of
    /// `half_angle` as this nose does: 2n·(1 − sin a)/cos a for a radius n.
    ///
    /// # Errors
    /// A size or an angle out of bounds.
    pub fn as_flat(self, half_angle: Angle) -> Result<Approx, Error> {
        let turns = super::given::half_angle(half_angle, 0)?;
        let (size, factor) = match self {
            Self::Flat(width) => (width, 1.0),
            Self::Radius(radius) => {
                // (1 − sin a)/cos a without the loss of digits: tan of half of what lacks to 90°.
                (radius, 2.0 * tan_turns((0.25 - turns) / 2.0))
            }
        };
        let value = from_nought(size, Field::Tool)? * factor;
        Ok(Approx { value, bound: 16.0 * f64::EPSILON * value })
    }

    /// The widest nose of this kind whose [`as_flat`](Self::as_flat) is `flat`, in millimetres.
    fn of_flat(self, flat: f64, turns: f64) -> f64 {
        match self {
            Self::Flat(_) => flat,
            Self::Radius(_) => flat / (2.0 * tan_turns((0.25 - turns) / 2.0)),
        }
    }
}

impl Feed {
    /// How far the top slide is set over from square across.
    ///
    /// # Errors
    /// [`Cause::Conflict`] when a modified feed falls short by more than the flank's
    /// angle, or goes beyond it.
    pub fn set_over(self, half_angle: Angle) -> Result<Angle, Error> {
        let turns = match self {
            Self::Plunge => Fraction::ZERO,
            Self::Flank => half_angle.turns(),
            Self::Modified { short } => {
                if short.turns().is_negative() || short > half_angle {
                    return Err(Error::new(Field::Angle, Cause::Conflict));
                }
                half_angle.turns().checked_sub(short.turns())?
            }
        };
        Ok(Angle::from_turns(turns))
    }
}

/// The depth to finish, straight in and along the slide, and the slide's set-over.
///
/// # Errors
/// Lengths or angles out of bounds; [`Cause::Conflict`] on the diameter where pitch
/// diameter, root and work contradict each other; [`Cause::Blunt`] where the nose is
/// wider than the root allows, with the greatest that serves; [`Cause::Empty`] for a
/// square thread without its deepest diameter.
pub fn infeed(ask: &Infeed) -> Result<Depths, Error> {
    let turns = half_angle(ask.half_angle, 0)?;
    let set_over = ask.feed.set_over(ask.half_angle)?;
    let space = size(ask.space, Field::Pitch)?;
    let flat = ask.nose.as_flat(ask.half_angle)?;
    let work = size(ask.work, Field::Diameter)?;
    let tan = tan_turns(turns);
    // Depth is measured from the work's surface; in a bore outwards.
    let down = |diameter| {
        let (from, to) = if ask.internal { (diameter, ask.work) } else { (ask.work, diameter) };
        let twice = from.mm().checked_sub(to.mm()).map_err(|e| e.of(Field::Diameter))?;
        size(diameter, Field::Diameter)?;
        Ok(of(twice) / 2.0)
    };
    let (to_pitch, to_root) = (down(ask.pitch_diameter)?, down(ask.root)?);
    let limit = ask.deepest.map(down).transpose()?;
    if to_pitch <= 0.0 || to_root <= to_pitch || limit.is_some_and(|limit| limit < to_root) {
        return Err(Error::new(Field::Diameter, Cause::Conflict));
    }
    let widest = space - 2.0 * (to_root - to_pitch) * tan;
    if widest < 0.0 {
        return Err(Error::new(Field::Diameter, Cause::Conflict));
    }
    // A hair of rounding must not refuse a nose that fits exactly.
    if flat.value > widest + 1e-9 {
        let greatest_um = um_down(ask.nose.of_flat(widest, turns));
        return Err(Error::new(Field::Tool, Cause::Blunt { greatest_um }));
    }
    let straight_flanks = to_pitch + (space - flat.value) / (2.0 * tan);
    let (straight, widen) = match limit {
        // A square nose as wide as its groove has no flanks that could tell: not a number.
        Some(limit) if straight_flanks.is_nan() || straight_flanks > limit => {
            (limit, space - flat.value - 2.0 * (limit - to_pitch) * tan)
        }
        _ if straight_flanks.is_finite() => (straight_flanks, 0.0),
        _ => return Err(Error::new(Field::Diameter, Cause::Empty)),
    };
    let along_slide = straight / cos_turns(of(set_over.turns()));
    let sized = work + space + flat.value + straight;
    let scale = if tan > 0.0 { 1.0 + 1.0 / tan } else { 1.0 };
    let approx = |value| Approx { value, bound: 32.0 * f64::EPSILON * sized * scale };
    let quarter = Fraction::new(1, 4)?;
    let square = set_over.turns().is_zero();
    let drift = match (square, ask.left_hand) {
        (true, _) => Drift::None,
        (_, false) => Drift::Headstock,
        (_, true) => Drift::Tailstock,
    };
    // Headstock to the left, the operator in front: into the work is away from the
    // operator, and swinging anticlockwise turns that way towards the headstock.
    let swing = match (square, ask.left_hand != ask.internal) {
        (true, _) => Swing::None,
        (_, false) => Swing::Anticlockwise,
        (_, true) => Swing::Clockwise,
    };
    let tip = if ask.internal { work + 2.0 * straight } else { work - 2.0 * straight };
    if tip <= 0.0 {
        return Err(Error::new(Field::Diameter, Cause::Conflict));
    }
    Ok(Depths {
        straight: approx(straight),
        along_slide: approx(along_slide),
        widen: approx(widen),
        tip: approx(tip),
        set_over,
        on_bed_scale: Angle::from_turns(quarter.checked_sub(set_over.turns())?),
        swing,
        drift,
    })
}

/// What a diameter still has to lose (or a bore to gain), as the slide travels.
#[must_use]
pub(super) fn along(straight: f64, set_over: Angle) -> f64 {
    straight / cos_turns(of(set_over.turns()))
}

/// Depth of a sharp groove of `space` below its pitch line, in millimetres:
/// s ÷ (2·tan a), for a drawing.
///
/// # Errors
/// Sizes or angles out of bounds; an angle of nought, whose flanks never meet.
pub fn apex(half_angle: Angle, space: Length) -> Result<Approx, Error> {
    let turns = super::given::half_angle(half_angle, 1)?;
    let value = size(space, Field::Pitch)? / 2.0 * cos_turns(turns) / sin_turns(turns);
    Ok(Approx { value, bound: 16.0 * f64::EPSILON * value })
}

#[cfg(test)]
mod tests;
