//! Disks, buttons and pins: dividing by disks that touch, and measuring between holes.
//!
//! N equal disks that touch each other with their centres on a circle of diameter D are
//! `D·sin(180°/N)` in diameter, and the disk they all touch in the middle is that much less
//! than D. Over two pins of diameter p in holes c apart a micrometer reads c + p, between
//! them c − p. (Plane geometry; the worked figures in Machinery's Reference Series No. 135,
//! Precision Locating and Dividing Methods, 1914, come out.)
//!
//! ```
//! use handturn::measure::Length;
//! use handturn::number::Fraction;
//! use handturn::plate::disks;
//! // Nine divisions from nine disks, their centres on a circle of 187.325 mm (7 3/8 in).
//! let ring = disks::round(9, Length::from_inches(Fraction::new(59, 8)?)?)?;
//! assert!((ring.disk.value / 25.4 - 2.5224).abs() < 0.00005);
//! assert!((ring.central.value / 25.4 - 4.8526).abs() < 0.00005);
//! # Ok::<(), handturn::Error>(())
//! ```
use crate::bounds::HOLES;
use crate::error::{Cause, Error, Field};
use crate::measure::Length;
use crate::measure::given::{from_nought, size};
use crate::number::{Approx, Fraction, float};

/// Equal disks that touch each other and a central one, in millimetres.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Round {
    /// Diameter of each disk.
    pub disk: Approx,
    /// Diameter of the disk in the middle.
    pub central: Approx,
}

/// Two pins of one size in two holes, in millimetres.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Pins {
    /// Between the centres of the holes.
    pub apart: Approx,
    /// Over both pins.
    pub over: Approx,
    /// Between them; below nought where they would not both go in.
    pub between: Approx,
}

/// The disks that divide a circle into `parts`, their centres on a circle of `diameter`.
///
/// # Errors
/// [`Cause::OutOfRange`] for the parts, from 3; a diameter out of bounds, of [`Field::Ring`].
#[doc(alias = "dividing with disks")]
pub fn round(parts: u32, diameter: Length) -> Result<Round, Error> {
    if parts < 3 {
        let cause = Cause::OutOfRange { least: 3, greatest: HOLES.greatest };
        return Err(Error::new(Field::Parts, cause));
    }
    let disk = chord(parts, 1, diameter)?;
    let across = float::of(diameter.mm());
    let central =
        Approx { value: across - disk.value, bound: disk.bound + 2.0 * f64::EPSILON * across };
    Ok(Round { disk, central })
}

/// Pins in two holes of a ring of `holes` that lie `spaces` apart.
///
/// # Errors
/// [`Cause::OutOfRange`] for the holes ([`HOLES`]) and for spaces of none or of a whole turn;
/// a diameter or a pin out of bounds, of [`Field::Ring`] and [`Field::Pin`].
pub fn in_ring(holes: u32, spaces: u32, diameter: Length, pin: Length) -> Result<Pins, Error> {
    pins(chord(holes, spaces, diameter)?, pin)
}

/// Pins, or buttons, in two holes that lie `apart` along X and along Y.
///
/// # Errors
/// Lengths out of bounds, of [`Field::Length`] and [`Field::Pin`].
#[doc(alias = "toolmakers buttons")]
pub fn square_to(apart: [Length; 2], pin: Length) -> Result<Pins, Error> {
    let [x, y] = apart;
    let (x, y) = (from_nought(x, Field::Length)?, from_nought(y, Field::Length)?);
    let value = float::sqrt(x * x + y * y);
    pins(Approx { value, bound: 4.0 * f64::EPSILON * value }, pin)
}

/// The diameters of three disks that touch each other, by the distances of their centres:
/// of the first and second, second and third, third and first. Exact.
///
/// # Errors
/// [`Cause::Conflict`] of [`Field::Length`] where a distance is not above nought or one is
/// as long as the other two; [`Cause::Overflow`].
pub fn three_touching(apart: [Length; 3]) -> Result<[Length; 3], Error> {
    let [ab, bc, ca] = apart.map(Length::mm);
    // The radii of two neighbours make their distance, so a's diameter is ab + ca − bc.
    let diameter = |near: Fraction, other: Fraction, far: Fraction| {
        let found = near.checked_add(other)?.checked_sub(far)?;
        let fits = near > Fraction::ZERO && found > Fraction::ZERO;
        if fits {
            Ok(Length::from_mm(found))
        } else {
            Err(Error::new(Field::Length, Cause::Conflict))
        }
    };
    Ok([diameter(ab, ca, bc)?, diameter(bc, ab, ca)?, diameter(ca, bc, ab)?])
}

/// Distance of two holes of a ring, `spaces` apart.
fn chord(holes: u32, spaces: u32, diameter: Length) -> Result<Approx, Error> {
    HOLES.check(i64::from(holes))?;
    let across = size(diameter, Field::Ring)?;
    if spaces == 0 || spaces >= holes {
        let cause = Cause::OutOfRange { least: 1, greatest: holes.saturating_sub(1) };
        return Err(Error::new(Field::Holes, cause));
    }
    // The shorter way round: a chord is that of at most half a turn.
    let spaces = spaces.min(holes.saturating_sub(spaces));
    let half = Fraction::new(i64::from(spaces), i64::from(holes))?.over(2)?;
    let value = across * float::sin_turns(float::of(half));
    Ok(Approx { value, bound: 6.0 * f64::EPSILON * value })
}

fn pins(apart: Approx, pin: Length) -> Result<Pins, Error> {
    let pin = size(pin, Field::Pin)?;
    let with = |value: f64| Approx {
        value,
        bound: apart.bound + 2.0 * f64::EPSILON * (apart.value + pin),
    };
    Ok(Pins { apart, over: with(apart.value + pin), between: with(apart.value - pin) })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn mm(num: i64, den: i64) -> Length {
        Length::from_mm(Fraction::new(num, den).unwrap())
    }

    #[test]
    fn six_disks_go_round_their_equal() {
        let ring = round(6, mm(80, 1)).unwrap();
        assert!((ring.disk.value - 40.0).abs() <= ring.disk.bound);
        assert!((ring.central.value - 40.0).abs() <= ring.central.bound);
    }

    #[test]
    fn a_chord_is_the_same_both_ways_round() {
        let pins = |spaces| in_ring(131, spaces, mm(110, 1), mm(3, 1)).unwrap();
        assert_eq!(pins(1), pins(130));
        assert_eq!(pins(65), pins(66));
        assert!((pins(1).apart.value - 2.637_7).abs() < 1e-4);
        assert!((pins(20).over.value - pins(20).between.value - 6.0).abs() < 1e-12);
    }

    #[test]
    fn three_disks_reach_from_centre_to_centre() {
        let apart = [mm(93, 100), mm(72, 100), mm(86, 100)];
        assert_eq!(three_touching(apart), Ok([mm(107, 100), mm(79, 100), mm(65, 100)]));
        let conflict = Err(Error::new(Field::Length, Cause::Conflict));
        assert_eq!(three_touching([mm(1, 1), mm(1, 1), mm(2, 1)]), conflict);
        assert_eq!(three_touching([mm(0, 1), mm(1, 1), mm(1, 1)]), conflict);
        assert_eq!(three_touching([mm(-1, 1), mm(1, 1), mm(1, 1)]), conflict);
    }

    #[test]
    fn what_cannot_be_says_so() {
        let cause = |e: Error| (e.field, e.cause);
        let range = |least, greatest| Cause::OutOfRange { least, greatest };
        let ring = |parts| round(parts, mm(80, 1)).map(|_| ()).map_err(cause);
        assert_eq!(ring(2), Err((Field::Parts, range(3, 1000))));
        assert_eq!(ring(1001), Err((Field::Holes, range(2, 1000))));
        let pins = |spaces, pin| in_ring(5, spaces, mm(80, 1), pin).map(|_| ()).map_err(cause);
        assert_eq!(pins(0, mm(1, 1)), Err((Field::Holes, range(1, 4))));
        assert_eq!(pins(5, mm(1, 1)), Err((Field::Holes, range(1, 4))));
        assert_eq!(pins(1, mm(0, 1)), Err((Field::Pin, Cause::Zero)));
    }
}
