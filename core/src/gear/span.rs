//! Span over teeth: two flat anvils across several of them.
//!
//! Method: the line between the points where the anvils touch is tangent to the base
//! circle, so over k teeth the span is W = 2·r_b·((k − 1)·π/z + ψ_b), ψ_b being half a
//! tooth's angle at the base circle; for a standard tooth that is
//! m·cos α·(π(k − ½) + z·inv α) + 2xm·sin α (DIN 3960). Half of W is the tangent's
//! length, which tells where the anvils touch: this must lie on the flank. The k that
//! touches nearest to the middle of the tooth is the best. No outside diameter enters
//! the reading, so it is the check for a blank that is off size. The flank counts from the
//! base circle, as a form cutter leaves it: of a pinion that a rack undercuts, less is left.
//!
//! ```
//! use handturn::gear::{Spur, Tooth, span};
//! // Module 1, 20°, 24 teeth: 3 teeth, 7.7165 in the tables.
//! let wheel = Spur::new(24, Tooth::default())?;
//! let over = span::over(&wheel, wheel.outside_diameter()?, None)?;
//! assert_eq!((over.teeth, over.least, over.greatest), (3, 2, 4));
//! assert!((over.reading.value - 7.7165).abs() < 5e-5);
//! # Ok::<(), handturn::Error>(())
//! ```
use super::Spur;
use super::flank::{Flank, ROUNDING, Readings, blank};
use crate::error::{Cause, Error, Field};
use crate::measure::{Length, given};
use crate::number::{
    Approx,
    float::{PI, of, round},
};

/// What a span over teeth reads; lengths in millimetres.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Span {
    /// Teeth between the anvils.
    pub teeth: u32,
    /// Fewest teeth that bring the anvils onto the flanks.
    pub least: u32,
    /// Most teeth that do.
    pub greatest: u32,
    /// The span.
    #[doc(alias = "base tangent length")]
    pub reading: Approx,
    /// Diameter at which the anvils touch.
    pub touches: Approx,
    /// How much the span changes for each millimetre of tooth thickness at the pitch circle.
    pub per_thickness: f64,
}

/// The span over `teeth` of them, or over the best number, on a blank of `outside`.
///
/// # Errors
/// What [`chordal::tooth`](super::chordal::tooth) finds in wheel and blank;
/// [`Cause::OutOfRange`] of [`Field::Span`] where the anvils would miss the flanks, with
/// the numbers that serve; [`Cause::Conflict`] where none does.
pub fn over(spur: &Spur, outside: Length, teeth: Option<u32>) -> Result<Span, Error> {
    let flank = Flank::new(spur)?;
    let (least, best, greatest) = numbers(spur, &flank, blank(spur, outside)?)?;
    let teeth = teeth.unwrap_or(best);
    if teeth < least || teeth > greatest {
        return Err(Error::new(Field::Span, Cause::OutOfRange { least, greatest }));
    }
    let t = before(&flank, teeth) + flank.half;
    let near = |value| Approx { value, bound: ROUNDING * (value + flank.summed) };
    Ok(Span {
        teeth,
        least,
        greatest,
        reading: near(2.0 * flank.base * t),
        touches: near(2.0 * flank.radius_at(t)),
        per_thickness: flank.pressure.cos,
    })
}

/// The arc of a tooth at the pitch circle, in millimetres, when the span over `teeth`
/// reads `reading`.
///
/// # Errors
/// As [`over`]; [`Cause::OutOfLengths`] of [`Field::Reading`] where the anvils would
/// touch beyond the blank or below the flanks, or nothing is left of the tooth.
pub fn thickness(
    spur: &Spur,
    outside: Length,
    teeth: u32,
    reading: Length,
) -> Result<Approx, Error> {
    let flank = Flank::new(spur)?;
    let radius = blank(spur, outside)?;
    over(spur, outside, Some(teeth))?;
    let read = given::size(reading, Field::Reading)?;
    let before = before(&flank, teeth);
    let pressure = before + flank.thinnest();
    Readings {
        least: 2.0 * flank.base * flank.lowest().max(pressure),
        greatest: 2.0 * flank.base * flank.tangent_at(radius),
    }
    .check(read)?;
    let value = flank.thickness_of(read / (2.0 * flank.base) - before);
    let size = read * flank.pitch / flank.base;
    Ok(Approx { value, bound: ROUNDING * size })
}

/// Angle at the base circle, in radians, from the first of `teeth` flanks to the last
/// of the same side.
fn before(flank: &Flank, teeth: u32) -> f64 {
    (f64::from(teeth) - 1.0) * PI / flank.teeth
}

/// Fewest teeth, best number and most whose anvils touch the flanks.
fn numbers(spur: &Spur, flank: &Flank, outside: f64) -> Result<(u32, u32, u32), Error> {
    // The number, not whole, that touches at the tangent `t`; a hair more settles ties
    // upwards, as the tables do, whatever the last bit says.
    let touching = |t: f64| (t - flank.half) * flank.teeth / PI + 1.0 + 1e-9;
    let whole = |value: f64| given::whole(round(value));
    let shifted = flank.pitch + of(spur.shift) * of(spur.tooth.size.module()?.mm());
    let least = whole(touching(flank.lowest()) + 0.5 - 2e-9).max(2);
    let greatest = whole(touching(flank.tangent_at(outside)) - 0.5);
    if least > greatest {
        return Err(Error::new(Field::Span, Cause::Conflict));
    }
    let thinned = of(spur.thinned.mm()) / (2.0 * flank.pitch) * flank.teeth / PI;
    let best = whole(touching(flank.tangent_at(shifted)) - thinned);
    Ok((least, best.clamp(least, greatest), greatest))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::gear::Tooth;
    use crate::number::Fraction;

    fn wheel(teeth: u32) -> Spur {
        Spur::new(teeth, Tooth::default()).unwrap()
    }

    fn best(teeth: u32) -> u32 {
        let wheel = wheel(teeth);
        over(&wheel, wheel.outside_diameter().unwrap(), None).unwrap().teeth
    }

    #[test]
    fn best_numbers_as_the_tables_step() {
        // 20°: one more at each multiple of nine teeth.
        for teeth in 12..=300 {
            assert_eq!(best(teeth), teeth / 9 + 1, "{teeth} teeth");
        }
    }

    #[test]
    fn every_number_allowed_touches_the_flanks() {
        for teeth in 6..400 {
            let wheel = wheel(teeth);
            let outside = wheel.outside_diameter().unwrap();
            let Ok(one) = over(&wheel, outside, None) else { continue };
            for k in one.least..=one.greatest {
                let touches = over(&wheel, outside, Some(k)).unwrap().touches.value;
                let flank = Flank::new(&wheel).unwrap();
                assert!(touches >= 2.0 * flank.base.max(flank.root) - 1e-6, "{teeth}, {k}");
                assert!(touches <= of(outside.mm()) + 1e-6, "{teeth}, {k}");
            }
            let (least, greatest) = (one.least, one.greatest);
            let cause = Cause::OutOfRange { least, greatest };
            let refused = Err(Error::new(Field::Span, cause));
            assert_eq!(over(&wheel, outside, Some(least - 1)), refused);
            assert_eq!(over(&wheel, outside, Some(greatest + 1)), refused);
        }
    }

    #[test]
    fn a_reading_gives_the_thickness_back() {
        let wheel = wheel(60);
        let outside = wheel.outside_diameter().unwrap();
        let read = |um| {
            let reading = Length::from_mm(Fraction::new(um, 1000).unwrap());
            thickness(&wheel, outside, 7, reading)
        };
        let flank = Flank::new(&wheel).unwrap();
        // Nominal 20.0292; 0.1 mm less span is 0.1/cos 20° less tooth.
        let thin = read(19_929).unwrap().value;
        assert!((thin - (flank.thickness - 0.1002 / flank.pressure.cos)).abs() < 1e-4);
        assert!(matches!(read(30_000).unwrap_err().cause, Cause::OutOfLengths { .. }));
        assert!(matches!(read(18_000).unwrap_err().cause, Cause::OutOfLengths { .. }));
    }
}
