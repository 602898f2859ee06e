//! From a pitch diameter as measured to what still has to come off.
//!
//! ```
//! use handturn::measure::{Angle, Length};
//! use handturn::number::{Approx, Fraction};
//! use handturn::thread::still::{Verdict, still};
//! // The M6x0.75 arbor reads a pitch diameter of 5.562; 6g is 5.391 to 5.491.
//! let mm = |thousandths| Fraction::new(thousandths, 1000).map(Length::from_mm);
//! let slide = Angle::from_degrees(Fraction::new(59, 2)?)?;
//! let read = Approx { value: 5.562, bound: 0.0 };
//! let found = still(read, mm(5391)?, mm(5491)?, slide, false)?;
//! assert_eq!(found.verdict, Verdict::MoreToCut);
//! assert!((found.to_limit.diameter - 0.071).abs() < 1e-9); // to the top of the limits
//! assert!((found.to_limit.along_slide - 0.0408).abs() < 1e-4);
//! assert!((found.to_middle.straight - 0.0605).abs() < 1e-9);
//! # Ok::<(), handturn::Error>(())
//! ```
use super::given::size;
use super::infeed::along;
use crate::error::{Cause, Error, Field};
use crate::measure::{Angle, Length};
use crate::number::{Approx, Fraction};

/// How a reading stands to the limits.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Verdict {
    /// Metal is left: cut on.
    MoreToCut,
    /// Within the limits.
    Within,
    /// Past the limits: it will be loose.
    TooFar,
}

/// What is still to come off, in millimetres; below nought where it is past.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Left {
    /// Of the pitch diameter (in a bore: how much it must grow).
    pub diameter: f64,
    /// Straight in.
    pub straight: f64,
    /// As the set-over slide travels.
    pub along_slide: f64,
}

/// A reading and what follows from it.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Still {
    /// How it stands to the limits.
    pub verdict: Verdict,
    /// To the limit that is met first: the thread then just enters.
    pub to_limit: Left,
    /// To the middle of the limits.
    pub to_middle: Left,
    /// To the limit that may not be passed.
    pub at_most: Left,
    /// The reading's own uncertainty, on the diameter.
    pub bound: f64,
}

/// What is still to come off a thread whose pitch diameter was measured, limits
/// `least` to `greatest`, with the slide at `set_over`. The infeed between two
/// depths leaves both flanks alike, so half of the diameter is the depth.
///
/// # Errors
/// Diameters out of bounds or `least` above `greatest`; a reading that is no number.
pub fn still(
    measured: Approx,
    least: Length,
    greatest: Length,
    set_over: Angle,
    internal: bool,
) -> Result<Still, Error> {
    let (low, high) = (size(least, Field::Diameter)?, size(greatest, Field::Diameter)?);
    let slant = set_over.turns();
    if slant.is_negative() || slant > Fraction::new(1, 6)? {
        return Err(Error::new(Field::Angle, Cause::OutOfRange { least: 0, greatest: 60 }));
    }
    if low > high || !(measured.value > 0.0 && measured.value.is_finite()) {
        return Err(Error::new(Field::Diameter, Cause::Conflict));
    }
    let (first, last) = if internal { (low, high) } else { (high, low) };
    let to = |wanted: f64| {
        let off = measured.value - wanted;
        let diameter = if internal { -off } else { off };
        Left { diameter, straight: diameter / 2.0, along_slide: along(diameter / 2.0, set_over) }
    };
    let (to_limit, at_most) = (to(first), to(last));
    let verdict = if to_limit.diameter > 0.0 {
        Verdict::MoreToCut
    } else if at_most.diameter < 0.0 {
        Verdict::TooFar
    } else {
        Verdict::Within
    };
    let to_middle = to((low + high) / 2.0);
    Ok(Still { verdict, to_limit, to_middle, at_most, bound: measured.bound })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn um(n: i64) -> Length {
        Length::from_mm(Fraction::new(n, 1000).unwrap())
    }

    #[track_caller]
    fn check(read: f64, internal: bool, verdict: Verdict, to_limit: f64, at_most: f64) {
        let read = Approx { value: read, bound: 0.001 };
        let found = still(read, um(5391), um(5491), Angle::ZERO, internal).unwrap();
        assert_eq!(found.verdict, verdict);
        assert!((found.to_limit.diameter - to_limit).abs() < 1e-12, "{found:?}");
        assert!((found.at_most.diameter - at_most).abs() < 1e-12, "{found:?}");
        assert!((found.to_limit.straight - to_limit / 2.0).abs() < 1e-12);
        assert!((found.to_limit.along_slide - found.to_limit.straight).abs() < 1e-12);
    }

    #[test]
    fn more_within_and_too_far_on_either_side() {
        check(5.562, false, Verdict::MoreToCut, 0.071, 0.171);
        check(5.450, false, Verdict::Within, -0.041, 0.059);
        check(5.379, false, Verdict::TooFar, -0.112, -0.012);
        check(5.379, true, Verdict::MoreToCut, 0.012, 0.112);
        check(5.450, true, Verdict::Within, -0.059, 0.041);
        check(5.562, true, Verdict::TooFar, -0.171, -0.071);
    }

    #[test]
    fn no_reading_and_no_limits_say_so() {
        let read = |value| Approx { value, bound: 0.0 };
        let ask = |read, least, greatest| still(read, um(least), um(greatest), Angle::ZERO, false);
        let clash = Err(Error::new(Field::Diameter, Cause::Conflict));
        assert_eq!(ask(read(f64::NAN), 5391, 5491), clash);
        assert_eq!(ask(read(-1.0), 5391, 5491), clash);
        assert_eq!(ask(read(5.4), 5491, 5391), clash);
    }
}
