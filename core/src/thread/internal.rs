//! Whether a boring tool gets into the core hole and out again.
//!
//! Method: seen along the axis, tool at centre height. The tip stands `reach` from the
//! back of its bar, which sticks out less than that by the nose. With the tip just
//! clear of the bore the whole bar must still be clear opposite; at full depth the
//! bar's front must be clear of the bore on the tip's side. Everything is exact.
//! For a square bar the corners decide: one at distance t behind the tip and h/2 above
//! it lies within a circle of radius R that the tip touches when t² + h²/4 ≤ 2·R·t.
//!
//! ```
//! use handturn::measure::Length;
//! use handturn::number::Fraction;
//! use handturn::thread::internal::{Bar, Boring, fits};
//! // An 8 mm bar with a nose of 1.5 mm in the core hole of M12x1.75, 10.2 mm, 0.95 deep.
//! let mm = |hundredths| Fraction::new(hundredths, 100).map(Length::from_mm);
//! let bar = Bar::Round { diameter: mm(800)? };
//! let tool = Boring { bar, nose: mm(150)?, bore: mm(1020)?, depth: mm(95)?, clear: mm(20)? };
//! let fit = fits(&tool)?;
//! assert!(fit.enters && fit.nose_long_enough);
//! assert_eq!((fit.least_bore, fit.least_nose), (mm(990)?, mm(115)?));
//! # Ok::<(), handturn::Error>(())
//! ```
use super::given::{from_nought, minus, plus, size, times};
use crate::error::{Error, Field};
use crate::measure::Length;

/// The bar or shank behind the nose.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Bar {
    /// A round bar.
    Round {
        /// Its diameter.
        diameter: Length,
    },
    /// A square or flat shank.
    Flat {
        /// Its width, in the direction in which the tool is fed.
        width: Length,
        /// Its height, half above the centre and half below.
        height: Length,
    },
}

/// A boring tool in a core hole.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Boring {
    /// The bar.
    pub bar: Bar,
    /// How far the tip stands out from the bar.
    pub nose: Length,
    /// The core hole's diameter.
    pub bore: Length,
    /// Depth of the thread, straight in.
    pub depth: Length,
    /// Room wanted on every side.
    pub clear: Length,
}

/// What fits, and what would.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Fit {
    /// The tool enters the hole, and clears the thread when it is drawn back.
    pub enters: bool,
    /// At full depth the bar keeps clear of the bore beside the nose.
    pub nose_long_enough: bool,
    /// The smallest hole this tool enters.
    pub least_bore: Length,
    /// The shortest nose that cuts this depth.
    pub least_nose: Length,
    /// How far the tool can be drawn back from full depth before the bar's back
    /// touches; it needs the depth and the room wanted. Below nought: nothing is left.
    pub draws_back: Length,
}

/// Whether the tool fits its hole.
///
/// # Errors
/// Lengths out of bounds.
pub fn fits(tool: &Boring) -> Result<Fit, Error> {
    for length in [tool.nose, tool.bore, tool.depth] {
        size(length, Field::Tool)?;
    }
    from_nought(tool.clear, Field::Tool)?;
    let sum = |one, other| plus(one, other, Field::Tool);
    let touching = match tool.bar {
        Bar::Round { diameter } => {
            size(diameter, Field::Tool)?;
            sum(tool.nose, diameter)?
        }
        Bar::Flat { width, height } => {
            size(width, Field::Tool)?;
            size(height, Field::Tool)?;
            let front = circle(tool.nose, height)?;
            front.max(circle(sum(tool.nose, width)?, height)?)
        }
    };
    let twice = times(tool.clear, 2, Field::Tool)?;
    let least_bore = sum(touching, twice)?;
    let least_nose = sum(tool.depth, tool.clear)?;
    let room = minus(tool.bore, touching, Field::Tool)?;
    Ok(Fit {
        enters: tool.bore >= least_bore,
        nose_long_enough: tool.nose >= least_nose,
        least_bore,
        least_nose,
        draws_back: sum(room, tool.depth)?,
    })
}

/// Diameter of the circle through the tip and a pair of corners `behind` it, `height` apart.
fn circle(behind: Length, height: Length) -> Result<Length, Error> {
    let squares = |length: Length| length.mm().checked_mul(length.mm());
    let corner = squares(height)?.over(4)?;
    let diameter = corner.checked_div(behind.mm())?.checked_add(behind.mm());
    diameter.map(Length::from_mm).map_err(|e| e.of(Field::Tool))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::number::Fraction;

    fn mm(num: i64, den: i64) -> Length {
        Length::from_mm(Fraction::new(num, den).unwrap())
    }

    #[track_caller]
    fn check(bar: Bar, nose: Length, least_bore: Length) {
        let tool = |bore| Boring { bar, nose, bore, depth: mm(1, 2), clear: mm(1, 10) };
        assert_eq!(fits(&tool(mm(20, 1))).unwrap().least_bore, least_bore);
        assert!(fits(&tool(least_bore)).unwrap().enters);
        let hair = minus(least_bore, mm(1, 1000), Field::Tool).unwrap();
        let short = fits(&tool(hair)).unwrap();
        assert!(!short.enters);
        let needs = plus(mm(1, 2), mm(1, 5), Field::Tool).unwrap();
        assert!(short.draws_back < needs);
        // By points: no corner lies outside the circle, and one lies on it.
        let Bar::Flat { width, height } = bar else { return };
        let radius = crate::number::float::of(least_bore.mm()) / 2.0 - 0.1;
        let at = |behind: f64| {
            (radius - behind).hypot(crate::number::float::of(height.mm()) / 2.0) - radius
        };
        let nose = crate::number::float::of(nose.mm());
        let worst = at(nose).max(at(nose + crate::number::float::of(width.mm())));
        assert!(worst.abs() < 1e-12, "{worst}");
    }

    #[test]
    fn the_least_hole_for_a_bar() {
        check(Bar::Round { diameter: mm(8, 1) }, mm(3, 2), mm(97, 10));
        // Back corners: 8 + 36/4/8 = 9.125; front corners: 2 + 9/2 = 6.5.
        check(Bar::Flat { width: mm(6, 1), height: mm(6, 1) }, mm(2, 1), mm(9325, 1000));
        // A short nose before a high shank: the front corners decide, 1 + 64/4/1 = 17.
        check(Bar::Flat { width: mm(4, 1), height: mm(8, 1) }, mm(1, 1), mm(172, 10));
    }
}
