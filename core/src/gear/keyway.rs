//! Keyways in a shaft, one or several round it.
//!
//! Method: a keyway of width w takes R − √(R² − w²/4) of the round before its cutter
//! has its full width; its depth counts from there, at the side. From the bottom to the
//! shaft's far side is the diameter less both. (Plane geometry, our own derivation.)
//!
//! ```
//! use handturn::gear::keyway::{Keyway, keyway};
//! use handturn::measure::Length;
//! use handturn::number::Fraction;
//! // A 6 mm key, 3.5 deep at the side, in a shaft of 20.
//! let mm = |tenths| Fraction::new(tenths, 10).map(Length::from_mm);
//! let cut = keyway(&Keyway { shaft: mm(200)?, width: mm(60)?, side: mm(35)? })?;
//! assert!((cut.from_top.value - 3.9606).abs() < 0.0001);
//! assert!((cut.over.value - 16.0394).abs() < 0.0001);
//! # Ok::<(), handturn::Error>(())
//! ```
use crate::error::{Cause, Error, Field};
use crate::measure::{
    Length,
    given::{minus, plus, size},
};
use crate::number::Approx;

/// A keyway.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Keyway {
    /// Diameter of the shaft.
    pub shaft: Length,
    /// Width of the key: the cutter's.
    pub width: Length,
    /// Depth at the side, where the flank meets the round.
    pub side: Length,
}

/// How it is cut and measured, in millimetres.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Cut {
    /// Height of the round over the full width.
    pub arc: Approx,
    /// Depth from touching the top of the shaft.
    pub from_top: Approx,
    /// Over the bottom and the far side of the shaft.
    pub over: Approx,
}

/// Depth and measure of a keyway.
///
/// # Errors
/// Lengths out of bounds; [`Cause::Conflict`] of [`Field::Key`] where it is as wide as the
/// shaft, of [`Field::Depth`] where it goes past the centre.
pub fn keyway(ask: &Keyway) -> Result<Cut, Error> {
    size(ask.shaft, Field::Blank)?;
    size(ask.width, Field::Key)?;
    size(ask.side, Field::Depth)?;
    if ask.width >= ask.shaft {
        return Err(Error::new(Field::Key, Cause::Conflict));
    }
    let [less, more] =
        [minus(ask.shaft, ask.width, Field::Key)?, plus(ask.shaft, ask.width, Field::Key)?];
    let half = Approx::of(less.mm()).times(Approx::of(more.mm())).sqrt().by(0.5);
    let top = Approx::of(ask.shaft.mm()).by(0.5);
    let width = Approx::of(ask.width.mm()).by(0.5);
    // R − √(R² − w²/4) = w²/4 ÷ (R + √…): no small difference of large numbers.
    let arc = width.times(width).over(top.plus(half));
    let from_top = arc.plus(Approx::of(ask.side.mm()));
    if from_top.value >= top.value {
        return Err(Error::new(Field::Depth, Cause::Conflict));
    }
    Ok(Cut { arc, from_top, over: top.by(2.0).minus(from_top) })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::number::Fraction;

    fn ask(shaft: i64, width: i64, side: i64) -> Keyway {
        let mm = |n| Length::from_mm(Fraction::whole(n));
        Keyway { shaft: mm(shaft), width: mm(width), side: mm(side) }
    }

    #[test]
    fn rows() {
        // 3, 4, 5: a key of 6 in a shaft of 10 begins 1 below the top.
        let cut = keyway(&ask(10, 6, 2)).unwrap();
        for (came, truth) in [(cut.arc, 1.0), (cut.from_top, 3.0), (cut.over, 7.0)] {
            assert!((came.value - truth).abs() <= came.bound && came.bound < 2e-14, "{cut:?}");
        }
        let refused = |ask: &Keyway| {
            let error = keyway(ask).unwrap_err();
            (error.field, error.cause)
        };
        assert_eq!(refused(&ask(10, 10, 2)), (Field::Key, Cause::Conflict));
        assert_eq!(refused(&ask(10, 6, 4)), (Field::Depth, Cause::Conflict));
        assert_eq!(refused(&ask(10, 6, 0)), (Field::Depth, Cause::Zero));
    }
}
