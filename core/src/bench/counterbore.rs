//! A counterbore in round stock, and the walls it leaves.
//!
//! Plane geometry: the wall is half of outside less counterbore, the shoulder half of
//! counterbore less bore; a centre off by e takes e from the wall at one side. All exact.
//!
//! ```
//! use handturn::bench::counterbore::{Counterbore, walls};
//! use handturn::measure::Length;
//! use handturn::number::Fraction;
//! // A boss of 20 with a hole of 6.6, counterbored 11 for a cap screw, 0.2 off centre.
//! let mm = |tenths| Fraction::new(tenths, 10).map(Length::from_mm);
//! let boss = Counterbore {
//!     bore: mm(66)?,
//!     counterbore: mm(110)?,
//!     outside: mm(200)?,
//!     off: mm(2)?,
//!     depth: mm(65)?,
//!     length: mm(120)?,
//! };
//! let walls = walls(&boss)?;
//! assert_eq!((walls.wall, walls.thinnest, walls.shoulder), (mm(45)?, mm(43)?, mm(22)?));
//! # Ok::<(), handturn::Error>(())
//! ```
use crate::error::{Cause, Error, Field};
use crate::measure::{
    Length,
    given::{from_nought, minus, over, size, times},
};

/// A counterbore.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Counterbore {
    /// Diameter of the hole through.
    pub bore: Length,
    /// Diameter of the counterbore.
    pub counterbore: Length,
    /// Outside diameter, or across the flats.
    pub outside: Length,
    /// By how much its centre may be off.
    pub off: Length,
    /// How deep it is.
    pub depth: Length,
    /// How long the part is.
    pub length: Length,
}

/// What it leaves.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Walls {
    /// Wall beside the counterbore.
    pub wall: Length,
    /// The same at its thinnest.
    pub thinnest: Length,
    /// Width of the shoulder that a head sits on.
    pub shoulder: Length,
    /// Wall beside the hole through.
    pub beside_bore: Length,
    /// What is left under it.
    pub floor: Length,
}

/// The walls a counterbore leaves.
///
/// # Errors
/// Lengths out of bounds; [`Cause::Conflict`] of [`Field::Counterbore`] where it is not
/// between bore and outside, of [`Field::Depth`] where no floor is left, of [`Field::Wall`] where nothing is left at its thinnest.
pub fn walls(ask: &Counterbore) -> Result<Walls, Error> {
    size(ask.bore, Field::Diameter)?;
    size(ask.counterbore, Field::Counterbore)?;
    size(ask.outside, Field::Blank)?;
    from_nought(ask.off, Field::Wall)?;
    size(ask.depth, Field::Depth)?;
    size(ask.length, Field::Length)?;
    if ask.depth >= ask.length {
        return Err(Error::new(Field::Depth, Cause::Conflict));
    }
    if ask.counterbore <= ask.bore || ask.outside <= ask.counterbore {
        return Err(Error::new(Field::Counterbore, Cause::Conflict));
    }
    let half = |large, small| over(minus(large, small, Field::Wall)?, 2, Field::Wall);
    let wall = half(ask.outside, ask.counterbore)?;
    if wall <= ask.off {
        return Err(Error::new(Field::Wall, Cause::Conflict));
    }
    Ok(Walls {
        wall,
        thinnest: minus(wall, ask.off, Field::Wall)?,
        shoulder: half(ask.counterbore, ask.bore)?,
        beside_bore: half(ask.outside, ask.bore)?,
        floor: minus(ask.length, ask.depth, Field::Depth)?,
    })
}

/// The largest counterbore that leaves a wall of `least` all round.
///
/// # Errors
/// Lengths out of bounds; [`Cause::Conflict`] of [`Field::Wall`] where none larger than the
/// bore does.
pub fn largest(ask: &Counterbore, least: Length) -> Result<Length, Error> {
    size(ask.bore, Field::Diameter)?;
    size(ask.outside, Field::Blank)?;
    size(least, Field::Wall)?;
    from_nought(ask.off, Field::Wall)?;
    let twice = |length| times(length, 2, Field::Wall);
    let left = minus(ask.outside, twice(least)?, Field::Wall)?;
    let left = minus(left, twice(ask.off)?, Field::Wall)?;
    if left <= ask.bore { Err(Error::new(Field::Wall, Cause::Conflict)) } else { Ok(left) }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::number::Fraction;

    #[test]
    fn the_largest_leaves_just_the_wall() {
        let um = |um: i64| Length::from_mm(Fraction::new(um, 1000).unwrap());
        for outside in (10_000..40_000).step_by(1_777) {
            for (bore, least, off) in [(3_000, 500, 0), (6_600, 1_250, 150), (2_001, 3, 77)] {
                let ask = Counterbore {
                    bore: um(bore),
                    counterbore: um(bore),
                    outside: um(outside),
                    off: um(off),
                    depth: um(5_000),
                    length: um(8_000),
                };
                let Ok(counterbore) = largest(&ask, um(least)) else {
                    assert!(outside - 2 * least - 2 * off <= bore);
                    continue;
                };
                let left = walls(&Counterbore { counterbore, ..ask }).unwrap();
                assert_eq!(left.thinnest, um(least));
                let all = left.wall.mm().checked_add(left.shoulder.mm());
                assert_eq!(all, Ok(left.beside_bore.mm()));
            }
        }
    }

    #[test]
    fn what_leaves_nothing_is_refused() {
        let mm = |mm| Length::from_mm(Fraction::whole(mm));
        let ask = Counterbore {
            bore: mm(5),
            counterbore: mm(10),
            outside: mm(12),
            off: mm(0),
            depth: mm(5),
            length: mm(8),
        };
        let refused = |ask: Counterbore| walls(&ask).unwrap_err().field;
        assert!(walls(&ask).is_ok());
        assert_eq!(refused(Counterbore { bore: mm(10), ..ask }), Field::Counterbore);
        assert_eq!(refused(Counterbore { outside: mm(10), ..ask }), Field::Counterbore);
        assert_eq!(refused(Counterbore { off: mm(1), ..ask }), Field::Wall);
        assert_eq!(refused(Counterbore { depth: mm(8), ..ask }), Field::Depth);
    }
}
