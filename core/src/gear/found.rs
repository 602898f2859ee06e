//! The blank as it was found: how deep to go from its own outside.
//!
//! What must be right is the tooth at the pitch circle, and that lies at one depth from
//! the centre whatever the outside measures. So the depth from the found outside is the
//! whole depth and half of what the diameter is over, the same for a blank too small
//! and for one too large; only the top of the tooth ends lower or higher. All exact.
//!
//! ```
//! use handturn::gear::found::{Height, found};
//! use handturn::gear::{Spur, Tooth};
//! use handturn::measure::Length;
//! use handturn::number::Fraction;
//! // The 64 wheel's blank should measure 66 mm and came out at 65.90.
//! let blank = found(&Spur::new(64, Tooth::default())?, Length::from_mm(Fraction::new(659, 10)?))?;
//! assert_eq!(blank.depth.mm(), Fraction::new(22, 10)?);
//! assert_eq!(blank.addendum.mm(), Fraction::new(95, 100)?);
//! assert_eq!(blank.height, Height::Fair);
//! # Ok::<(), handturn::Error>(())
//! ```
use super::Spur;
use crate::error::{Cause, Error, Field};
use crate::measure::Length;
use crate::measure::given::{minus, over, plus, size, times, um_down, um_up};
use crate::number::{Fraction, float::of};

/// Where the tops of the teeth end.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Height {
    /// As drawn.
    Drawn,
    /// Up to a fifth of the addendum low, as a stub tooth's would be
    /// (20° stub teeth, 0.8 modules, ASA B6.1), or high within half of the clearance.
    Fair,
    /// Lower than a stub tooth's: they share the load for less of the way.
    Low,
    /// So high that less than half of the clearance is left at the mate's root: turn it down.
    High,
    /// Higher than the clearance: they would reach the bottom of the mate's gaps. Turn it down.
    Bottoms,
}

/// How deep to cut a blank that is not as drawn, and what becomes of its teeth.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Blank {
    /// The outside diameter it should have.
    pub drawn: Length,
    /// By how much the found one is over, below nought where it is under.
    pub over: Length,
    /// How deep to go from the found outside.
    pub depth: Length,
    /// Nine tenths of that: where roughing stops and trial gaps are measured. Common practice.
    pub rough: Length,
    /// How deep it would be from the drawn one.
    pub drawn_depth: Length,
    /// Height of the teeth above the pitch circle and profile shift.
    pub addendum: Length,
    /// What is left between their tops and the roots of a mate at the standard distance
    /// that is cut to the same rule; below nought where they reach the bottom.
    pub clearance: Length,
    /// Where the tops of the teeth end.
    pub height: Height,
}

/// How deep to cut `spur` into a blank of `outside` diameter.
///
/// # Errors
/// What [`Spur::check`] finds; of [`Field::Blank`]: a length out of bounds,
/// [`Cause::OutOfLengths`] where no tooth would stand above the pitch circle or the teeth
/// would be half again as high above it as drawn, with the diameters between.
pub fn found(spur: &Spur, outside: Length) -> Result<Blank, Error> {
    let field = Field::Blank;
    spur.check()?;
    size(outside, field)?;
    let drawn = spur.outside_diameter()?;
    let full = spur.tooth.addendum()?;
    let excess = minus(outside, drawn, field)?;
    let higher = over(excess, 2, field)?;
    let addendum = plus(full, higher, field)?;
    let half = over(full, 2, field)?;
    if addendum.mm() <= Fraction::ZERO || higher > half {
        let (least, greatest) =
            (of(drawn.mm()) - 2.0 * of(full.mm()), of(plus(drawn, full, field)?.mm()));
        let cause = Cause::OutOfLengths { least_um: um_up(least), greatest_um: um_down(greatest) };
        return Err(Error::new(field, cause));
    }
    let drawn_depth = spur.whole_depth()?;
    let drawn_clearance = minus(spur.tooth.dedendum()?, full, field)?;
    let clearance = minus(drawn_clearance, higher, field)?;
    let zero = Fraction::ZERO;
    let stub = addendum.mm().times(5)? >= full.mm().times(4)?;
    let height = if higher.mm().is_zero() {
        Height::Drawn
    } else if higher.mm() < zero {
        if stub { Height::Fair } else { Height::Low }
    } else if clearance.mm() <= zero {
        Height::Bottoms
    } else if clearance.mm().times(2)? < drawn_clearance.mm() {
        Height::High
    } else {
        Height::Fair
    };
    let depth = plus(drawn_depth, higher, field)?;
    let rough = over(times(depth, 9, field)?, 10, field)?;
    Ok(Blank { drawn, over: excess, depth, rough, drawn_depth, addendum, clearance, height })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::gear::{DepthRule, Size, Tooth};

    fn mm(thousandths: i64) -> Length {
        Length::from_mm(Fraction::new(thousandths, 1000).unwrap())
    }

    #[test]
    fn depth_and_height_follow_the_blank() {
        let wheel =
            Spur::new(38, Tooth { size: Size::Module(mm(2000)), ..Tooth::default() }).unwrap();
        let at = |outside| found(&wheel, mm(outside)).unwrap();
        // Drawn: 80 mm, 4.5 deep, half a millimetre of clearance.
        let rows = [
            (80_000, 4500, 2000, 500, Height::Drawn),
            (79_300, 4150, 1650, 850, Height::Fair),
            (79_200, 4100, 1600, 900, Height::Fair),
            (79_190, 4095, 1595, 905, Height::Low),
            (80_500, 4750, 2250, 250, Height::Fair),
            (80_520, 4760, 2260, 240, Height::High),
            (81_000, 5000, 2500, 0, Height::Bottoms),
            (82_000, 5500, 3000, -500, Height::Bottoms),
        ];
        for (outside, depth, addendum, clearance, height) in rows {
            let blank = at(outside);
            assert_eq!(blank.depth, mm(depth), "{outside}");
            assert_eq!(blank.addendum, mm(addendum), "{outside}");
            assert_eq!((blank.clearance, blank.height), (mm(clearance), height), "{outside}");
            // The bottom of the gaps is where the drawing has it.
            let root =
                minus(mm(outside), over(blank.depth, 1, Field::Blank).unwrap(), Field::Blank);
            let root = minus(root.unwrap(), blank.depth, Field::Blank).unwrap();
            assert_eq!(root, wheel.root_diameter().unwrap());
        }
    }

    #[test]
    fn what_cannot_become_the_wheel() {
        let wheel =
            Spur::new(38, Tooth { size: Size::Module(mm(2000)), ..Tooth::default() }).unwrap();
        let lengths = Cause::OutOfLengths { least_um: 76_001, greatest_um: 82_000 };
        for outside in [76_000, 75_000, 82_001, 90_000] {
            assert_eq!(found(&wheel, mm(outside)), Err(Error::new(Field::Blank, lengths)));
        }
        let cause = |outside| found(&wheel, mm(outside)).map_err(|e| (e.field, e.cause));
        assert_eq!(cause(0), Err((Field::Blank, Cause::Zero)));
        assert!(found(&wheel, mm(76_001)).is_ok() && found(&wheel, mm(82_000)).is_ok());
        let own = DepthRule::Own { addendum: Fraction::ONE, dedendum: Fraction::ONE };
        let flush = Spur { tooth: Tooth { rule: own, ..wheel.tooth }, ..wheel };
        assert_eq!(found(&flush, mm(80_010)).unwrap().height, Height::Bottoms);
    }
}
