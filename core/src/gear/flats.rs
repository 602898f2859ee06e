//! Flats on round stock: squares, hexagons, any number across flats, one flat.
//!
//! Method: a flat lies a = across/2 from the centre, so the cut is S/2 − a deep from
//! touching stock of diameter S, exactly. Sharp corners lie on a circle of
//! across ÷ cos(180°/N) and a flat between them is across·tan(180°/N) wide. Stock below
//! that circle leaves flats 2·√(S²/4 − a²) wide and round corners between them.
//! An odd number has a corner opposite each flat, so it is measured from flat to
//! corner, a + (corner circle)/2, or before it has corners from flat to the round,
//! S/2 + a. (Plane geometry, our own derivation.)
//!
//! ```
//! use handturn::gear::flats::{Corners, Flats, flats};
//! use handturn::measure::Length;
//! use handturn::number::Fraction;
//! // A winding square of 5 mm on the clock's 6.5 mm arbor.
//! let mm = |tenths| Fraction::new(tenths, 10).map(Length::from_mm);
//! let square = Flats { sides: 4, across: mm(50)?, stock: Some(mm(65)?), cutter: None };
//! let found = flats(&square)?;
//! let Some(cut) = found.cut else { panic!("stock was given") };
//! let quarters = |n| Fraction::new(n, 4).map(Length::from_mm);
//! assert_eq!((cut.depth, cut.over_first), (quarters(3)?, quarters(23)?));
//! assert!(matches!(cut.corners, Corners::Round(_))); // sharp ones need 7.071 mm
//! assert!(found.straddle);
//! # Ok::<(), handturn::Error>(())
//! ```
use crate::bounds::{Bound, FLATS, LENGTH_UM};
use crate::error::{Cause, Error, Field};
use crate::measure::{
    Length,
    given::{minus, over, plus, size, whole},
};
use crate::number::{
    Approx, Fraction,
    float::{of, round},
};

/// Flats to be cut.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Flats {
    /// How many flats: the parts to divide.
    pub sides: u32,
    /// Across flats; for an odd number from three on twice the distance from the centre
    /// to a flat, for a single flat from it to the round opposite.
    #[doc(alias = "AF")]
    pub across: Length,
    /// Diameter of the round stock; a single flat needs it.
    pub stock: Option<Length>,
    /// Width of the cutter, to count its passes over a flat.
    pub cutter: Option<Length>,
}

/// What becomes of flats, in millimetres.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Flatted {
    /// From the centre to a flat; below nought for a single flat beyond the centre.
    pub to_flat: Length,
    /// What three and more flats have.
    pub sharp: Option<Sharp>,
    /// What is cut from the stock that was given.
    pub cut: Option<Cut>,
    /// Two flats can be cut at a time between two cutters: an even number.
    pub straddle: bool,
}

/// Flats that meet in sharp corners, in millimetres.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Sharp {
    /// Diameter of the circle through the corners: the least round stock. Across
    /// corners for an even number.
    #[doc(alias = "across corners")]
    pub stock: Approx,
    /// Width of a flat.
    pub width: Approx,
    /// Depth of the cut from touching stock of just that diameter.
    pub depth: Approx,
    /// From a flat to the corner opposite, for an odd number.
    pub to_corner: Option<Approx>,
}

/// Flats cut on stock of a diameter, in millimetres.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Cut {
    /// Depth of each flat from touching the round.
    pub depth: Length,
    /// Over the first flat and the round opposite.
    pub over_first: Length,
    /// Width of the first flat, as cut on the round: the widest there is.
    pub first_width: Approx,
    /// Width of a flat when all are cut.
    pub width: Approx,
    /// What the corners become.
    pub corners: Corners,
    /// Passes of the cutter side by side over the first flat.
    pub passes: Option<u32>,
}

/// Corners between flats.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Corners {
    /// Sharp: the stock reaches them.
    Sharp,
    /// The stock stays round between two flats, over this length of arc in millimetres.
    Round(Approx),
}

/// Sizes and cuts of flats.
///
/// # Errors
/// [`Cause::OutOfRange`] for the sides ([`FLATS`]); lengths out of bounds;
/// [`Cause::OutOfLengths`] of [`Field::Blank`] where the stock is not thicker than across
/// flats; [`Cause::Empty`] of it for a single flat; [`Cause::Overflow`].
pub fn flats(ask: &Flats) -> Result<Flatted, Error> {
    FLATS.check(i64::from(ask.sides))?;
    size(ask.across, Field::Flats)?;
    let to_flat = match (ask.sides, ask.stock) {
        (1, None) => return Err(Error::new(Field::Blank, Cause::Empty)),
        (1, Some(stock)) => minus(ask.across, over(stock, 2, Field::Blank)?, Field::Flats)?,
        _ => over(ask.across, 2, Field::Flats)?,
    };
    let sharp = if ask.sides > 2 { Some(sharp(ask.sides, to_flat)?) } else { None };
    let cut = match ask.stock {
        Some(stock) => Some(cut(ask, stock, to_flat, sharp)?),
        None => None,
    };
    Ok(Flatted { to_flat, sharp, cut, straddle: ask.sides % 2 == 0 })
}

/// The largest size across flats, in millimetres, that round `stock` takes with sharp
/// corners; for an odd number twice the distance from the centre to a flat.
///
/// # Errors
/// [`Cause::OutOfRange`] for the sides, from 3 on; [`Field::Blank`] out of bounds.
#[doc(alias = "across corners")]
pub fn largest(sides: u32, stock: Length) -> Result<Approx, Error> {
    Bound { least: 3, ..FLATS }.check(i64::from(sides))?;
    size(stock, Field::Blank)?;
    let half = Approx::of(Fraction::new(1, i64::from(sides))?.over(2)?);
    Ok(Approx::of(stock.mm()).times(half.cos()))
}

fn sharp(sides: u32, to_flat: Length) -> Result<Sharp, Error> {
    let half = Approx::of(Fraction::new(1, i64::from(sides))?.over(2)?);
    let (sine, cosine) = (half.sin(), half.cos());
    let to_flat = Approx::of(to_flat.mm());
    let to_corner = to_flat.over(cosine);
    // (1 − cos) = 2·sin² of half: no small difference of large numbers.
    let quarter = half.by(0.5).sin();
    let odd = sides % 2 == 1;
    Ok(Sharp {
        stock: to_corner.by(2.0),
        width: to_flat.times(sine).over(cosine).by(2.0),
        depth: to_corner.times(quarter).times(quarter).by(2.0),
        to_corner: odd.then(|| to_flat.plus(to_corner)),
    })
}

fn cut(ask: &Flats, stock: Length, to_flat: Length, sharp: Option<Sharp>) -> Result<Cut, Error> {
    size(stock, Field::Blank)?;
    if ask.across >= stock {
        let least_um = u32::try_from(ask.across.mm().times(1000)?.floor()).unwrap_or(u32::MAX);
        let cause =
            Cause::OutOfLengths { least_um: least_um.saturating_add(1), greatest_um: LENGTH_UM.1 };
        return Err(Error::new(Field::Blank, cause));
    }
    let radius = over(stock, 2, Field::Blank)?;
    // The chord: 4·(R − a)·(R + a), both exact.
    let depth = minus(radius, to_flat, Field::Blank)?;
    let over_first = plus(radius, to_flat, Field::Blank)?;
    let chord = Approx::of(depth.mm()).times(Approx::of(over_first.mm())).sqrt().by(2.0);
    let (width, corners) = match sharp {
        Some(sharp) if reaches(ask.sides, ask.across, stock, sharp.stock)? => {
            (sharp.width, Corners::Sharp)
        }
        _ => (chord, Corners::Round(arc(ask.sides, radius, to_flat, chord)?)),
    };
    let passes = match ask.cutter {
        Some(cutter) => Some(passes(chord, cutter, depth, over_first)?),
        None => None,
    };
    Ok(Cut { depth, over_first, first_width: chord, width, corners, passes })
}

/// Whether `stock` reaches the corners: decided exactly where the corner circle can be
/// a fraction of across flats squared, which three, four and six sides alone have.
fn reaches(sides: u32, across: Length, stock: Length, corners: Approx) -> Result<bool, Error> {
    let quarters = match sides {
        3 => 1,
        4 => 2,
        6 => 3,
        _ => return Ok(of(stock.mm()) >= corners.value),
    };
    let square = |length: Length| length.mm().checked_mul(length.mm());
    let compared = square(stock).and_then(|s| Ok((s.times(quarters)?, square(across)?.times(4)?)));
    let (has, needs) = compared.map_err(|e| e.of(Field::Blank))?;
    Ok(has >= needs)
}

/// The arc of the round that stays between two flats.
fn arc(sides: u32, radius: Length, to_flat: Length, chord: Approx) -> Result<Approx, Error> {
    let part = Approx::of(Fraction::new(1, i64::from(sides))?);
    let (flat, half) = (Approx::of(to_flat.mm()), chord.by(0.5));
    // A flat takes 2·acos(a/R) of the turn; beyond the centre, more than half of it.
    let quarter = Approx::exactly(0.25);
    let takes = quarter.minus(flat.over(half).atan()).by(2.0);
    Ok(part.minus(takes).times(Approx::of(radius.mm())).times(Approx::pi()).by(2.0))
}

/// Passes of a cutter over a chord of 2·√(depth·rest): the least number that covers it.
fn passes(chord: Approx, cutter: Length, depth: Length, rest: Length) -> Result<u32, Error> {
    let wide = size(cutter, Field::Cutter)?;
    let about = whole(round(chord.value / wide));
    let square = depth.mm().checked_mul(rest.mm()).and_then(|x| x.times(4));
    let covers = |passes: u32| {
        let wide = cutter.mm().times(i64::from(passes))?;
        Ok::<bool, Error>(wide.checked_mul(wide)? >= square?)
    };
    let enough = covers(about).map_err(|e| e.of(Field::Cutter))?;
    Ok(if enough { about } else { about.saturating_add(1) })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn mm(num: i64, den: i64) -> Length {
        Length::from_mm(Fraction::new(num, den).unwrap())
    }

    fn ask(sides: u32, across: Length, stock: Length) -> Flats {
        Flats { sides, across, stock: Some(stock), cutter: Some(mm(4, 1)) }
    }

    #[track_caller]
    fn check(ask: &Flats, depth: Length, first: f64, width: f64, arc: Option<f64>, passes: u32) {
        let cut = flats(ask).unwrap().cut.unwrap();
        assert_eq!((cut.depth, cut.passes), (depth, Some(passes)));
        assert!((cut.first_width.value - first).abs() < 1e-12, "{:?}", cut.first_width);
        assert!((cut.width.value - width).abs() < 1e-12, "{:?}", cut.width);
        match (cut.corners, arc) {
            (Corners::Sharp, None) => {}
            (Corners::Round(came), Some(arc)) => assert!((came.value - arc).abs() < 1e-12),
            (corners, _) => panic!("{corners:?}"),
        }
    }

    #[test]
    fn rows() {
        // A square of 6 on 10: the first flat is 8 wide (3, 4, 5), sharp ones are 6.
        check(&ask(4, mm(6, 1), mm(10, 1)), mm(2, 1), 8.0, 6.0, None, 2);
        // A square of 8 on 10: flats 6 wide, corners round over a quarter less 2·acos(4/5).
        let arc = 10.0 * (core::f64::consts::FRAC_PI_4 - 0.643_501_108_793_284_4);
        check(&ask(4, mm(8, 1), mm(10, 1)), mm(1, 1), 6.0, 6.0, Some(arc), 2);
        // One flat, 8 from it to the round of 10: 8 wide.
        let arc = 10.0 * (core::f64::consts::PI - 0.927_295_218_001_612_2);
        check(&ask(1, mm(8, 1), mm(10, 1)), mm(2, 1), 8.0, 8.0, Some(arc), 2);
        // The same from beyond the centre: 2 is left.
        let arc = 10.0 * 0.927_295_218_001_612_2;
        check(&ask(1, mm(2, 1), mm(10, 1)), mm(8, 1), 8.0, 8.0, Some(arc), 2);
        // Three flats whose corners just reach the round: 5 across, 10 of stock, exactly.
        let cut = flats(&ask(3, mm(5, 1), mm(10, 1))).unwrap().cut.unwrap();
        assert_eq!(cut.corners, Corners::Sharp);
        assert!((cut.first_width.value - cut.width.value).abs() < 1e-12);
    }

    #[test]
    fn corners_and_heights() {
        let found = flats(&ask(5, mm(10, 1), mm(20, 1))).unwrap();
        let sharp = found.sharp.unwrap();
        assert!(!found.straddle);
        assert!((sharp.stock.value - 12.360_679_774_997_898).abs() < 1e-12);
        let to_corner = sharp.to_corner.unwrap();
        assert!((to_corner.value - 11.180_339_887_498_949).abs() < 1e-12);
        assert!((sharp.depth.value - 1.180_339_887_498_949).abs() < 1e-12);
    }

    #[test]
    fn what_has_no_flats() {
        let refused = |ask: &Flats| {
            let error = flats(ask).unwrap_err();
            (error.field, error.cause)
        };
        let cause = Cause::OutOfRange { least: 1, greatest: 100 };
        assert_eq!(refused(&ask(0, mm(8, 1), mm(10, 1))), (Field::Sides, cause));
        let cause = Cause::OutOfLengths { least_um: 10_001, greatest_um: LENGTH_UM.1 };
        assert_eq!(refused(&ask(4, mm(10, 1), mm(10, 1))), (Field::Blank, cause));
        let none = Flats { stock: None, ..ask(1, mm(8, 1), mm(10, 1)) };
        assert_eq!(refused(&none), (Field::Blank, Cause::Empty));
    }
}
