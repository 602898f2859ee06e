//! A dovetail measured over, or between, two rollers that lie in its corners.
//!
//! Method: flanks lean by θ from the bed. At height h a dovetail of width W at its wide
//! side is W − 2h ÷ tan θ wide at its narrow side. A roller of diameter d in the corner has
//! its centre (d/2) ÷ tan(θ/2) from it, so over both a tail reads narrow + d(1 + 1/tan(θ/2))
//! and between both a groove reads wide − d(1 + 1/tan(θ/2)). (Plane geometry, our own
//! derivation; the same rule stands in the usual handbooks.)
//!
//! ```
//! use handturn::bench::dovetail::{Dovetail, Part, measure};
//! use handturn::measure::{Angle, Length};
//! use handturn::number::Fraction;
//! // A tail of 60°, 50 wide and 10 high, over rollers of 8.
//! let mm = |n| Length::from_mm(Fraction::whole(n));
//! let angle = Angle::from_degrees(Fraction::whole(60))?;
//! let tail = Dovetail { part: Part::Tail, angle, wide: mm(50), height: mm(10), roller: mm(8) };
//! let found = measure(&tail)?;
//! assert!((found.narrow.value - 38.4530).abs() < 1e-4);
//! assert!((found.reading.value - 60.3094).abs() < 1e-4);
//! # Ok::<(), handturn::Error>(())
//! ```
use crate::error::{Cause, Error, Field};
use crate::measure::{
    Angle, Length,
    given::{size, um_down},
};
use crate::number::{Approx, Fraction};

/// Which half of a dovetail.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Part {
    /// The tail that slides, measured over the rollers.
    #[doc(alias = "male")]
    Tail,
    /// The groove, measured between them.
    #[doc(alias = "female")]
    Groove,
}

/// A dovetail and the rollers laid into it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Dovetail {
    /// Tail or groove.
    pub part: Part,
    /// Lean of its flanks from the bed, from 30° to 80°.
    pub angle: Angle,
    /// Width at the wide side, corner to corner.
    pub wide: Length,
    /// From the wide to the narrow side.
    pub height: Length,
    /// Diameter of the rollers.
    pub roller: Length,
}

/// A dovetail's measures, in millimetres.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Measured {
    /// Width at the narrow side.
    pub narrow: Approx,
    /// Over the rollers, or between them.
    pub reading: Approx,
    /// How high above the corner the roller touches the flank.
    pub touches: Approx,
}

/// What a dovetail measures.
///
/// # Errors
/// Lengths out of bounds; [`Cause::OutOfRange`] of [`Field::Angle`], in degrees;
/// [`Cause::Conflict`] of [`Field::Length`] where nothing is left at the narrow side, of
/// [`Field::Pin`] where the rollers leave no room between; [`Cause::OutOfLengths`] of it
/// where a roller touches above the flank.
pub fn measure(ask: &Dovetail) -> Result<Measured, Error> {
    size(ask.wide, Field::Length)?;
    size(ask.height, Field::Depth)?;
    size(ask.roller, Field::Pin)?;
    let degrees = ask.angle.degrees()?;
    if degrees < Fraction::whole(30) || degrees > Fraction::whole(80) {
        return Err(Error::new(Field::Angle, Cause::OutOfRange { least: 30, greatest: 80 }));
    }
    let whole = Approx::of(ask.angle.turns());
    let half = whole.by(0.5);
    let [wide, height, roller] =
        [ask.wide, ask.height, ask.roller].map(|length| Approx::of(length.mm()));
    let narrow = wide.minus(height.by(2.0).times(whole.cos()).over(whole.sin()));
    if narrow.value <= 0.0 {
        return Err(Error::new(Field::Length, Cause::Conflict));
    }
    let from_corner = roller.by(0.5).times(half.cos()).over(half.sin());
    let touches = from_corner.times(whole.sin());
    let reach = from_corner.by(2.0).plus(roller);
    let reading = match ask.part {
        Part::Tail => narrow.plus(reach),
        Part::Groove => wide.minus(reach),
    };
    if touches.value > height.value {
        let greatest_um = um_down(roller.value * height.value / touches.value);
        return Err(Error::new(Field::Pin, Cause::OutOfLengths { least_um: 1, greatest_um }));
    }
    if reading.value <= 0.0 {
        return Err(Error::new(Field::Pin, Cause::Conflict));
    }
    Ok(Measured { narrow, reading, touches })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn rows() {
        let mm = |n| Length::from_mm(Fraction::whole(n));
        let ask = |part, wide, height, roller| {
            let angle = Angle::from_degrees(Fraction::whole(60)).unwrap();
            let ask =
                Dovetail { part, angle, wide: mm(wide), height: mm(height), roller: mm(roller) };
            measure(&ask).map_err(|e| (e.field, e.cause))
        };
        // A tail over rollers and its groove between them part by both reaches.
        let (tail, groove) =
            (ask(Part::Tail, 50, 10, 8).unwrap(), ask(Part::Groove, 50, 10, 8).unwrap());
        let reach = 8.0 * (1.0 + 3.0_f64.sqrt());
        assert!((tail.reading.value - tail.narrow.value - reach).abs() < 1e-12);
        assert!((50.0 - groove.reading.value - reach).abs() < 1e-12);
        let most = Cause::OutOfLengths { least_um: 1, greatest_um: 13_333 };
        assert_eq!(ask(Part::Tail, 50, 10, 20), Err((Field::Pin, most)));
        assert_eq!(ask(Part::Groove, 20, 10, 8), Err((Field::Pin, Cause::Conflict)));
        assert_eq!(ask(Part::Tail, 10, 10, 4), Err((Field::Length, Cause::Conflict)));
        assert_eq!(ask(Part::Tail, 50, 0, 4), Err((Field::Depth, Cause::Zero)));
    }
}
