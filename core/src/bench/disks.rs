//! An angle or a taper held by two disks, with straight edges laid on both.
//!
//! Rule: the sine of half the angle is the difference of the radii over the distance of
//! the centres; disks that touch stand their radii's sum apart (Turning and Boring,
//! F. D. Jones, 1914; Precision Locating and Dividing Methods, 1914).
//!
//! ```
//! use handturn::bench::disks::{Ask, disks};
//! use handturn::measure::Length;
//! use handturn::number::Fraction;
//! // Disks of 1 and 1 1/2 in, 5 between centres: 5° 44′ between the edges.
//! let inch = |num, den| Length::from_inches(Fraction::new(num, den)?);
//! let ask = Ask::Centres { large: inch(3, 2)?, small: inch(1, 1)?, centres: inch(5, 1)? };
//! assert!((disks(&ask)?.included.value - 5.7320).abs() < 0.0001);
//! # Ok::<(), handturn::Error>(())
//! ```
use crate::error::{Cause, Error, Field};
use crate::measure::{
    Length,
    given::{minus, plus, size},
};
use crate::number::Approx;

use super::taper::{Taper, figures};

/// What is known of two disks.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Ask {
    /// Both disks and how far apart their centres are; the angle is wanted.
    Centres {
        /// The larger disk's diameter.
        large: Length,
        /// The smaller disk's diameter.
        small: Length,
        /// Distance of the centres.
        centres: Length,
    },
    /// Both disks and the taper; the distance is wanted.
    Taper {
        /// The larger disk's diameter.
        large: Length,
        /// The smaller disk's diameter.
        small: Length,
        /// What they are to hold.
        taper: Taper,
    },
    /// The smaller disk and the taper; the larger disk is wanted that touches it.
    Touching {
        /// The smaller disk's diameter.
        small: Length,
        /// What they are to hold.
        taper: Taper,
    },
}

/// Two disks and what they hold, in millimetres and degrees.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Disks {
    /// Diameter of the larger disk.
    pub large: Approx,
    /// Diameter of the smaller disk.
    pub small: Approx,
    /// Distance of the centres.
    pub centres: Approx,
    /// Space between the disks, along the line of centres.
    pub gap: Approx,
    /// Angle between the edges.
    pub included: Approx,
}

/// What two disks hold.
///
/// # Errors
/// As [`figures`]; lengths out of bounds; [`Cause::Conflict`] of [`Field::Centres`] where
/// the disks would lie in each other, of [`Field::Taper`] where the large disk is not the
/// larger.
pub fn disks(ask: &Ask) -> Result<Disks, Error> {
    let (large, small, centres, included) = match *ask {
        Ask::Centres { large, small, centres } => {
            let more = difference(large, small)?;
            size(centres, Field::Centres)?;
            // The angle from its tangent: √(C² − d²), with factors that are exact.
            let twice = plus(centres, centres, Field::Centres)?;
            let [out, within] =
                [plus(twice, more, Field::Centres)?, minus(twice, more, Field::Centres)?];
            let side = Approx::of(out.mm()).times(Approx::of(within.mm())).sqrt();
            let included = Approx::of(more.mm()).over(side).atan().by(720.0);
            (Approx::of(large.mm()), small, Approx::of(centres.mm()), included)
        }
        Ask::Taper { large, small, taper } => {
            let found = figures(taper)?;
            let centres = Approx::of(difference(large, small)?.mm()).by(0.5).over(found.sine);
            (Approx::of(large.mm()), small, centres, found.included)
        }
        Ask::Touching { small, taper } => {
            size(small, Field::Diameter)?;
            let (found, one) = (figures(taper)?, Approx::exactly(1.0));
            let ratio = one.plus(found.sine).over(one.minus(found.sine));
            let large = Approx::of(small.mm()).times(ratio);
            (large, small, large.plus(Approx::of(small.mm())).by(0.5), found.included)
        }
    };
    let small = Approx::of(small.mm());
    let gap = centres.minus(large.plus(small).by(0.5));
    if gap.value < -gap.bound {
        return Err(Error::new(Field::Centres, Cause::Conflict));
    }
    Ok(Disks { large, small, centres, gap, included })
}

/// How much larger the one is.
fn difference(large: Length, small: Length) -> Result<Length, Error> {
    size(large, Field::Diameter)?;
    size(small, Field::Diameter)?;
    if large <= small {
        return Err(Error::new(Field::Taper, Cause::Conflict));
    }
    minus(large, small, Field::Diameter)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::number::Fraction;

    #[test]
    fn rows() {
        let mm = |n| Length::from_mm(Fraction::whole(n));
        // Radii 1 and 3 that touch: the sine is a half.
        let touching = Ask::Centres { large: mm(6), small: mm(2), centres: mm(4) };
        let found = disks(&touching).unwrap();
        assert!((found.included.value - 60.0).abs() <= found.included.bound);
        assert!(found.included.bound < 3e-13 && found.gap.value == 0.0);
        let taper =
            Taper::Included(crate::measure::Angle::from_turns(Fraction::new(1, 6).unwrap()));
        let found = disks(&Ask::Touching { small: mm(2), taper }).unwrap();
        assert!((found.large.value - 6.0).abs() <= found.large.bound);
        let found = disks(&Ask::Taper { large: mm(10), small: mm(2), taper }).unwrap();
        assert!((found.centres.value - 8.0).abs() <= found.centres.bound);
        let refused = |ask: &Ask| disks(ask).map_err(|e| (e.field, e.cause)).unwrap_err();
        let lies_in = Ask::Centres { large: mm(6), small: mm(2), centres: mm(3) };
        assert_eq!(refused(&lies_in), (Field::Centres, Cause::Conflict));
        let same = Ask::Taper { large: mm(2), small: mm(2), taper };
        assert_eq!(refused(&same), (Field::Taper, Cause::Conflict));
    }
}
