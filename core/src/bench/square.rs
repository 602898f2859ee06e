//! An angle set by a disk and a square whose head slides on its blade.
//!
//! Rule: the blade's end stands on a surface, the disk lies in the corner between both and
//! touches the square's head too. From the blade's end to the head it is then the disk's
//! radius times the cotangent of half the angle, and the radius once more (Precision
//! Locating and Dividing Methods, 1914).
//!
//! ```
//! use handturn::bench::square::{Ask, square};
//! use handturn::measure::{Angle, Length};
//! use handturn::number::Fraction;
//! // A 2-in disk, 15° 10′ between blade and surface: the head at 8.5113 in.
//! let disk = Length::from_inches(Fraction::whole(2))?;
//! let angle = Angle::from_degrees(Fraction::new(91, 6)?)?;
//! let found = square(&Ask::Angle { disk, angle })?;
//! assert!((found.head.value / 25.4 - 8.5113).abs() < 0.00005);
//! # Ok::<(), handturn::Error>(())
//! ```
use crate::bounds::LENGTH_UM;
use crate::error::{Cause, Error, Field};
use crate::measure::{
    Angle, Length,
    given::{minus, over, size},
};
use crate::number::{Approx, Fraction};

/// What is known of a disk and a square.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Ask {
    /// The disk and the angle; the head's place is wanted.
    Angle {
        /// The disk's diameter.
        disk: Length,
        /// Angle between blade and surface, above nought and at most a right one.
        angle: Angle,
    },
    /// The disk and where the head stands; the angle is wanted.
    Head {
        /// The disk's diameter.
        disk: Length,
        /// From the blade's end to the head, the disk's diameter at least.
        head: Length,
    },
}

/// Where the head stands and what that gives, in millimetres and degrees.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Square {
    /// From the blade's end to the head.
    pub head: Approx,
    /// From the blade's end to where the disk touches blade and surface.
    pub touches: Approx,
    /// Angle between blade and surface.
    pub angle: Approx,
    /// How much smaller the angle is for each millimetre that the head stands farther out.
    pub per_mm: Approx,
}

/// What a disk and a square hold.
///
/// # Errors
/// Lengths out of bounds; [`Cause::OutOfRange`] of [`Field::Angle`], in degrees;
/// [`Cause::OutOfLengths`] of [`Field::Length`] where the head stands within the disk's
/// diameter.
#[doc(alias("combination square", "disk and square"))]
pub fn square(ask: &Ask) -> Result<Square, Error> {
    let (Ask::Angle { disk, .. } | Ask::Head { disk, .. }) = *ask;
    size(disk, Field::Diameter)?;
    let radius = Approx::of(disk.mm()).by(0.5);
    let (head, touches, angle) = match *ask {
        Ask::Angle { angle, .. } => {
            let degrees = angle.degrees()?;
            if degrees <= Fraction::ZERO || degrees > Fraction::whole(90) {
                return Err(Error::new(Field::Angle, Cause::OutOfRange { least: 0, greatest: 90 }));
            }
            let half = Approx::of(angle.turns()).by(0.5);
            let touches = radius.times(half.cos()).over(half.sin());
            (touches.plus(radius), touches, Approx::of(degrees))
        }
        Ask::Head { head, .. } => {
            size(head, Field::Length)?;
            if head < disk {
                let um = disk.mm().times(1000)?.negated().floor().saturating_neg();
                let least_um = u32::try_from(um).unwrap_or(LENGTH_UM.1);
                let cause = Cause::OutOfLengths { least_um, greatest_um: LENGTH_UM.1 };
                return Err(Error::new(Field::Length, cause));
            }
            let touches = minus(head, over(disk, 2, Field::Diameter)?, Field::Length)?;
            let touches = Approx::of(touches.mm());
            (Approx::of(head.mm()), touches, radius.over(touches).atan().by(720.0))
        }
    };
    // a = 2·atan(r ÷ t), and so its slope by t is −2r ÷ (r² + t²).
    let square = radius.times(radius).plus(touches.times(touches));
    let per_mm = radius.by(360.0).over(Approx::pi()).over(square);
    Ok(Square { head, touches, angle, per_mm })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn rows() {
        let mm = |n| Length::from_mm(Fraction::whole(n));
        let of = |disk, degrees| {
            let angle = Angle::from_degrees(Fraction::whole(degrees)).unwrap();
            square(&Ask::Angle { disk: mm(disk), angle })
        };
        // At a right angle the head lies on the disk's far side.
        let right = of(20, 90).unwrap();
        assert!((right.head.value - 20.0).abs() <= right.head.bound && right.head.bound < 1e-13);
        let back = square(&Ask::Head { disk: mm(20), head: mm(20) }).unwrap();
        assert!((back.angle.value - 90.0).abs() <= back.angle.bound);
        // One millimetre farther out, by the slope and by the sum itself.
        let (near, far) = (Ask::Head { disk: mm(20), head: mm(80) }, mm(81));
        let near = square(&near).unwrap();
        let far = square(&Ask::Head { disk: mm(20), head: far }).unwrap();
        let middle = (near.per_mm.value + far.per_mm.value) / 2.0;
        assert!((near.angle.value - far.angle.value - middle).abs() < 2e-4);
        let refused = |found: Result<Square, Error>| found.map_err(|e| (e.field, e.cause));
        let range = Cause::OutOfRange { least: 0, greatest: 90 };
        assert_eq!(refused(of(20, 0)), Err((Field::Angle, range)));
        assert_eq!(refused(of(20, 91)), Err((Field::Angle, range)));
        assert_eq!(refused(of(0, 30)), Err((Field::Diameter, Cause::Zero)));
        let within = square(&Ask::Head { disk: mm(20), head: mm(19) });
        let least = Cause::OutOfLengths { least_um: 20_000, greatest_um: LENGTH_UM.1 };
        assert_eq!(refused(within), Err((Field::Length, least)));
    }
}
