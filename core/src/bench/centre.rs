//! A slot, a saw cut or a flat set on the centre of round work by touching on.
//!
//! Method: with the cutter's flank against the work's side, a paper between, the centres
//! are half the work, the paper and half the cutter apart; that is the table's move across,
//! exactly. Touched on top, the cut is the paper and the depth down. A cutter of width w
//! leaves R − √(R² − w²/4) of the round above the slot's sides, so that much less depth is
//! there at the sides ([`crate::gear::keyway`]). Common practice; plane geometry.
//!
//! ```
//! use handturn::bench::centre::{Touch, moves};
//! use handturn::measure::Length;
//! use handturn::number::Fraction;
//! // A 1 mm saw on a 20 mm arbor, 5 mm deep, touched on over paper of 0.05 mm.
//! let mm = |hundredths| Fraction::new(hundredths, 100).map(Length::from_mm);
//! let found = moves(&Touch { work: mm(2000)?, cutter: mm(100)?, paper: mm(5)?, depth: mm(500)? })?;
//! assert_eq!((found.across, found.down), (mm(1055)?, mm(505)?));
//! assert!((found.at_sides.value - 4.98749).abs() < 1e-5);
//! # Ok::<(), handturn::Error>(())
//! ```
use crate::error::{Cause, Error, Field};
use crate::measure::{
    Length,
    given::{from_nought, over, plus, size},
};
use crate::number::Approx;

/// What is touched on with.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Touch {
    /// Diameter of the work; of flat work its width.
    pub work: Length,
    /// Diameter of an end mill, thickness of a saw.
    pub cutter: Length,
    /// Thickness of paper or feeler between; nought for none.
    pub paper: Length,
    /// Depth of the cut below the top of the round.
    pub depth: Length,
}

/// How far the table goes.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Moves {
    /// Across, from the side touched to the centre.
    pub across: Length,
    /// Up, from the top touched to full depth.
    pub down: Length,
    /// Height of the round over the cutter's width, in millimetres.
    pub arc: Approx,
    /// Depth at the sides of the slot, in millimetres.
    pub at_sides: Approx,
    /// What is left below the slot.
    pub left: Length,
}

/// The table's moves for a cut on centre.
///
/// # Errors
/// Lengths out of bounds; [`Cause::Conflict`] of [`Field::Cutter`] where it is as wide as
/// the work, of [`Field::Depth`] where the cut does not reach full width or goes through.
pub fn moves(touch: &Touch) -> Result<Moves, Error> {
    size(touch.work, Field::Blank)?;
    size(touch.cutter, Field::Tool)?;
    from_nought(touch.paper, Field::Length)?;
    size(touch.depth, Field::Depth)?;
    if touch.cutter >= touch.work {
        return Err(Error::new(Field::Tool, Cause::Conflict));
    }
    let both = plus(touch.work, touch.cutter, Field::Blank)?;
    let across = plus(over(both, 2, Field::Blank)?, touch.paper, Field::Length)?;
    let down = plus(touch.depth, touch.paper, Field::Depth)?;
    let [work, cutter] = [touch.work, touch.cutter].map(|length| Approx::of(length.mm()).by(0.5));
    let below = work.times(work).minus(cutter.times(cutter)).sqrt();
    let arc = cutter.times(cutter).over(work.plus(below));
    let at_sides = Approx::of(touch.depth.mm()).minus(arc);
    let left = touch.work.mm().checked_sub(touch.depth.mm()).map_err(|e| e.of(Field::Depth))?;
    if at_sides.value <= 0.0 || left.is_zero() || left.is_negative() {
        return Err(Error::new(Field::Depth, Cause::Conflict));
    }
    Ok(Moves { across, down, arc, at_sides, left: Length::from_mm(left) })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::number::Fraction;

    fn ask(work: i64, cutter: i64, depth: i64) -> Touch {
        let mm = |n| Length::from_mm(Fraction::whole(n));
        Touch { work: mm(work), cutter: mm(cutter), paper: mm(0), depth: mm(depth) }
    }

    #[test]
    fn rows() {
        // 3, 4, 5: a 6 mm mill in a round of 10 has its sides 1 below the top.
        let found = moves(&ask(10, 6, 3)).unwrap();
        assert!((found.at_sides.value - 2.0).abs() <= found.at_sides.bound, "{found:?}");
        assert!(found.at_sides.bound < 1e-14);
        let refused = |touch: &Touch| {
            let error = moves(touch).unwrap_err();
            (error.field, error.cause)
        };
        assert_eq!(refused(&ask(10, 10, 3)), (Field::Tool, Cause::Conflict));
        assert_eq!(refused(&ask(10, 6, 1)), (Field::Depth, Cause::Conflict));
        assert_eq!(refused(&ask(10, 6, 10)), (Field::Depth, Cause::Conflict));
        assert_eq!(refused(&ask(10, 6, 0)), (Field::Depth, Cause::Zero));
        assert_eq!(refused(&ask(0, 6, 3)), (Field::Blank, Cause::Zero));
    }
}
