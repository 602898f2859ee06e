//! How wide a dial's divisions come out, and how large it must be for a width.
//!
//! Formulas: arc π·d/N, chord d·sin(180°/N); the other way round for the diameter.
//! Lines a tenth to a fifth of the space between them read well: common practice.
use crate::bounds;
use crate::error::{Error, Field};
use crate::measure::{Angle, Length, given::size};
use crate::number::{Approx, Fraction, float};

/// How the width of a division is measured.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Across {
    /// Along the rim.
    Arc,
    /// Straight from line to line, as dividers measure.
    Chord,
}

/// Width of a division in millimetres, along the rim or straight across, of a dial with
/// `count` divisions on a rim of `diameter`.
///
/// # Errors
/// [`Cause::OutOfRange`](crate::Cause) for the divisions; [`Field::Length`] for a
/// diameter of nought or out of bounds.
pub fn division(count: u32, diameter: Length, across: Across) -> Result<Approx, Error> {
    let across = factor(count, across)?;
    Ok(near(size(diameter, Field::Length)? * across))
}

/// Diameter in millimetres on which `count` divisions are `width` wide, along the rim or
/// straight across.
///
/// # Errors
/// As [`division`], of the width.
pub fn diameter(count: u32, width: Length, across: Across) -> Result<Approx, Error> {
    let across = factor(count, across)?;
    Ok(near(size(width, Field::Length)? / across))
}

/// Thinnest and thickest line, in millimetres, that read well in divisions of a dial:
/// a tenth and a fifth of their width along the rim.
///
/// # Errors
/// As [`division`].
pub fn line(count: u32, diameter: Length) -> Result<[Approx; 2], Error> {
    let width = division(count, diameter, Across::Arc)?.value;
    Ok([near(width / 10.0), near(width / 5.0)])
}

/// Width of a division on a rim of diameter one.
fn factor(count: u32, across: Across) -> Result<f64, Error> {
    let count = bounds::DIVISIONS.check(i64::from(count))?;
    let turns = Angle::from_turns(Fraction::new(1, count)?);
    Ok(match across {
        Across::Arc => float::PI * float::of(turns.turns()),
        Across::Chord => float::sin_turns(float::of(turns.turns()) / 2.0),
    })
}

/// Fewer than six roundings lie behind `value`.
fn near(value: f64) -> Approx {
    Approx { value, bound: value * 4.0 * f64::EPSILON }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::error::Cause;

    fn mm(num: i64, den: i64) -> Length {
        Length::from_mm(Fraction::new(num, den).unwrap())
    }

    #[track_caller]
    fn check(found: Result<Approx, Error>, expected: f64) {
        let found = found.unwrap().value;
        assert!((found - expected).abs() < 5e-7 * expected, "{found}");
    }

    #[test]
    fn rows() {
        // Sixths of a turn: the chord is the radius; halves: the diameter.
        check(division(6, mm(80, 1), Across::Chord), 40.0);
        check(division(2, mm(80, 1), Across::Chord), 80.0);
        check(division(40, mm(100, 1), Across::Arc), 7.853_981_6);
        // One millimetre each on the clock's ring of 365.
        check(diameter(365, mm(1, 1), Across::Arc), 116.183_11);
        check(diameter(6, mm(40, 1), Across::Chord), 80.0);
        let [thin, thick] = line(365, mm(200, 1)).unwrap();
        assert!((thin.value - 0.172_142_06).abs() < 1e-8 && thick.value > 1.9 * thin.value);
    }

    #[test]
    fn what_has_no_width() {
        let no = |found: Result<Approx, Error>| found.map_err(|e| (e.field, e.cause)).unwrap_err();
        assert_eq!(no(division(1, mm(80, 1), Across::Arc)).0, Field::Parts);
        assert_eq!(no(division(10, mm(0, 1), Across::Arc)), (Field::Length, Cause::Zero));
        assert_eq!(no(diameter(10, mm(-1, 1), Across::Arc)).0, Field::Length);
    }
}
