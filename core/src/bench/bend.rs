//! Sheet bent into legs: how long it is flat, and where the bends lie on it.
//!
//! Rule (any handbook of sheet work): a bend of A uses the arc of the layer that keeps its
//! length, A (r + K t) with A in radians; its setback to the sharp outside corner is
//! (r + t) tan(A/2), to the inside corner r tan(A/2). K is a figure of experience: 0.35,
//! 0.41 and 0.45 for soft, middling and hard metal make the handbooks' 90° lengths of
//! 0.55 t, 0.64 t and 0.71 t + 1.57 r; by radius over thickness the steps are those of the
//! supplement to DIN 6935; all from memory. Either is good to about 0.05 of the thickness.
//!
//! ```
//! use handturn::bench::bend::{Bends, Corner, Sheet, fold};
//! use handturn::measure::{Angle, Length};
//! use handturn::number::Fraction;
//! // A channel of 1 × 2 × 1 in out of 0.040 sheet, bent to 0.16 in: 3.74 in flat.
//! let inch = |n, d| Fraction::new(n, d).and_then(Length::from_inches);
//! let sheet = Sheet { thickness: inch(1, 25)?, radius: inch(4, 25)?, neutral: Fraction::new(447, 1000)? };
//! let legs = [inch(1, 1)?, inch(2, 1)?, inch(1, 1)?];
//! let angles = [Angle::from_degrees(Fraction::whole(90))?];
//! let folded = fold(&Bends { sheet, legs: &legs, angles: &angles, corner: Corner::Outside })?;
//! assert!((folded.flat.value / 25.4 - 3.7588).abs() < 0.0001);
//! assert!((folded.lines[0].setback.value / 25.4 - 0.2).abs() < 1e-9);
//! # Ok::<(), handturn::Error>(())
//! ```
use super::fit::Limits;
use crate::bounds::LENGTH_UM;
use crate::error::{Cause, Error, Field};
use crate::list::List;
use crate::measure::{
    Angle, Length,
    given::{from_nought, over, size, times},
};
use crate::number::{Approx, Fraction};

/// Most legs of one strip.
pub const MOST: usize = 8;

/// Sheet and how it bends.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Sheet {
    /// Thickness.
    pub thickness: Length,
    /// Inside radius of a bend.
    pub radius: Length,
    /// Where the layer lies that keeps its length: K, parts of the thickness from inside.
    pub neutral: Fraction,
}

/// Where legs are measured to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Corner {
    /// The sharp corner of the outsides.
    #[doc(alias("mould line"))]
    Outside,
    /// The sharp corner of the insides.
    Inside,
    /// Where the bend begins.
    Flat,
}

/// A strip with its bends.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Bends<'a> {
    /// The sheet.
    pub sheet: Sheet,
    /// Its legs, two to eight.
    pub legs: &'a [Length],
    /// By how much each bend turns, from flat: one angle for all, or one a bend.
    pub angles: &'a [Angle],
    /// Where the legs are measured to.
    pub corner: Corner,
}

/// A bend on the flat strip, in millimetres from its end.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Line {
    /// Where the bend begins.
    pub begins: Approx,
    /// Its middle.
    pub middle: Approx,
    /// Where it ends.
    pub ends: Approx,
    /// What the arc uses up.
    pub allowance: Approx,
    /// From the sharp corner of the outsides to where the bend begins.
    pub setback: Approx,
    /// What the two outside legs are longer than the flat.
    pub deduction: Approx,
}

/// The strip, flat.
#[derive(Clone, Debug, PartialEq)]
pub struct Folded {
    /// Its length, in millimetres.
    pub flat: Approx,
    /// By how much that changes where K is 0.05 more, in millimetres.
    pub band: Approx,
    /// Its bends.
    pub lines: List<Line, 7>,
}

/// K by the hardness of the metal: its key and hundredths.
pub const NEUTRAL: [(&str, i64); 3] = [("soft", 35), ("middling", 41), ("hard", 45)];

/// A metal and the least inside radius it takes across the grain.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Metal {
    /// Its key.
    pub key: &'static str,
    /// Least, in tenths of the thickness.
    pub least_tenths: i64,
    /// What its harder kinds want, in tenths of the thickness.
    pub most_tenths: i64,
}

const fn metal(key: &'static str, least_tenths: i64, most_tenths: i64) -> Metal {
    Metal { key, least_tenths, most_tenths }
}

/// Least inside radii as a starting point: common practice, from memory; that annealed sheet
/// takes about its own thickness and hard aluminium alloy wants much more was read in print
/// (FAA-H-8083-31, making straight line bends).
pub const LEAST_RADIUS: [Metal; 8] = [
    metal("copper", 0, 5),
    metal("brass", 0, 10),
    metal("hard-brass", 10, 30),
    metal("steel", 5, 10),
    metal("stainless", 10, 20),
    metal("aluminium", 0, 10),
    metal("hard-aluminium", 20, 50),
    metal("spring", 20, 60),
];

impl Metal {
    /// Least inside radius for sheet of this thickness, from and to.
    ///
    /// # Errors
    /// The thickness out of bounds.
    pub fn radius(&self, thickness: Length) -> Result<Limits, Error> {
        let field = Field::Thickness;
        size(thickness, field)?;
        let of = |tenths| over(times(thickness, tenths, field)?, 10, field);
        Ok(Limits { least: of(self.least_tenths)?, most: of(self.most_tenths)? })
    }
}

/// K by radius over thickness.
///
/// # Errors
/// Lengths out of bounds.
pub fn neutral_by_ratio(radius: Length, thickness: Length) -> Result<Fraction, Error> {
    from_nought(radius, Field::Bend)?;
    size(thickness, Field::Thickness)?;
    let ratio = radius.mm().checked_div(thickness.mm()).map_err(|e| e.of(Field::Bend))?;
    // Hundredths of the ratio up to which K holds, and hundredths of K.
    let steps = [(65, 25), (100, 30), (150, 35), (240, 40), (380, 45)];
    let hundredths = |n| Fraction::new(n, 100);
    for (up_to, neutral) in steps {
        if ratio <= hundredths(up_to)? {
            return hundredths(neutral);
        }
    }
    hundredths(50)
}

impl Sheet {
    /// Radius of the layer that keeps its length.
    pub(super) fn layer(&self) -> Result<Approx, Error> {
        size(self.thickness, Field::Thickness)?;
        from_nought(self.radius, Field::Bend)?;
        if self.neutral.is_negative() || self.neutral > Fraction::ONE {
            let cause = Cause::OutOfRange { least: 0, greatest: 1 };
            return Err(Error::new(Field::Neutral, cause));
        }
        let off = self.thickness.mm().checked_mul(self.neutral);
        let at = off.and_then(|off| off.checked_add(self.radius.mm()));
        at.map(Approx::of).map_err(|e| e.of(Field::Neutral))
    }
}

/// The flat length of a bent strip and where its bends lie.
///
/// # Errors
/// Lengths out of bounds; [`Cause::OutOfRange`] of an angle, in degrees, and of K;
/// [`Cause::Conflict`] of [`Field::Legs`] where there are not two to eight legs, not as many
/// angles as bends, or a leg is shorter than its bends.
#[doc(alias("bend allowance"))]
pub fn fold(ask: &Bends) -> Result<Folded, Error> {
    let layer = ask.sheet.layer()?;
    let conflict = Error::new(Field::Legs, Cause::Conflict);
    let (legs, angles) = (ask.legs, ask.angles);
    let bends = legs.len().saturating_sub(1);
    if bends == 0 || legs.len() > MOST || (angles.len() != 1 && angles.len() != bends) {
        return Err(conflict);
    }
    let thickness = Approx::of(ask.sheet.thickness.mm());
    let inside = Approx::of(ask.sheet.radius.mm());
    let outside = inside.plus(thickness);
    let mut lines = List::new();
    let (mut at, mut band) = (Approx::exactly(0.0), Approx::exactly(0.0));
    let mut angle = angles.iter().cycle();
    // What the bend before takes off the leg.
    let mut before = Approx::exactly(0.0);
    for (place, leg) in legs.iter().enumerate() {
        let long = Approx::of(leg.mm());
        size(*leg, Field::Legs)?;
        let bend = if place < bends { angle.next() } else { None };
        let (turns, tangent) = match bend {
            Some(angle) => half_tangent(*angle, ask.corner)?,
            None => (Approx::exactly(0.0), Approx::exactly(0.0)),
        };
        let after = match ask.corner {
            Corner::Outside => outside.times(tangent),
            Corner::Inside => inside.times(tangent),
            Corner::Flat => Approx::exactly(0.0),
        };
        let straight = long.minus(before).minus(after);
        if straight.value < -straight.bound {
            return Err(conflict);
        }
        before = after;
        at = at.plus(straight);
        if bend.is_some() {
            let radians = turns.times(Approx::pi()).by(2.0);
            let allowance = radians.times(layer);
            let setback = outside.times(tangent);
            let line = Line {
                begins: at,
                middle: at.plus(allowance.by(0.5)),
                ends: at.plus(allowance),
                allowance,
                setback,
                deduction: setback.by(2.0).minus(allowance),
            };
            at = line.ends;
            band = band.plus(radians.times(thickness).by(0.05));
            let _ = lines.push(line);
        }
    }
    let (_, greatest_um) = LENGTH_UM;
    if at.value > f64::from(greatest_um) / 1000.0 {
        return Err(Error::new(Field::Legs, Cause::OutOfLengths { least_um: 1, greatest_um }));
    }
    Ok(Folded { flat: at, band, lines })
}

/// The angle in turns and the tangent of its half; of a bend that has no corner, nought.
fn half_tangent(angle: Angle, corner: Corner) -> Result<(Approx, Approx), Error> {
    let degrees = angle.degrees()?;
    let greatest = if corner == Corner::Flat { 180 } else { 170 };
    if degrees <= Fraction::ZERO || degrees > Fraction::whole(greatest.into()) {
        return Err(Error::new(Field::Angle, Cause::OutOfRange { least: 0, greatest }));
    }
    let turns = Approx::of(angle.turns());
    let half = turns.by(0.5);
    let no_corner = degrees == Fraction::whole(180);
    let tangent = if no_corner { Approx::exactly(0.0) } else { half.sin().over(half.cos()) };
    Ok((turns, tangent))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn mm(mm: f64) -> Length {
        Length::from_mm(crate::number::float::nearest(mm, 1000).unwrap())
    }

    fn degrees(degrees: i64) -> Angle {
        Angle::from_degrees(Fraction::whole(degrees)).unwrap()
    }

    fn sheet(thickness: f64, radius: f64, hundredths: i64) -> Sheet {
        let neutral = Fraction::new(hundredths, 100).unwrap();
        Sheet { thickness: mm(thickness), radius: mm(radius), neutral }
    }

    #[test]
    fn the_handbooks_lengths_at_90() {
        // 0.55 t, 0.64 t, 0.71 t beside 1.57 r, to their two places.
        for ((_, hundredths), of_thickness) in NEUTRAL.into_iter().zip([0.55, 0.64, 0.71]) {
            for (thickness, radius) in [(1.0, 0.0), (1.0, 1.0), (2.0, 5.0)] {
                let legs = [mm(30.0), mm(30.0)];
                let angles = [degrees(90)];
                let sheet = sheet(thickness, radius, hundredths);
                let folded =
                    fold(&Bends { sheet, legs: &legs, angles: &angles, corner: Corner::Flat })
                        .unwrap();
                let arc = folded.flat.value - 60.0;
                let wanted = of_thickness * thickness + 1.57 * radius;
                assert!((arc - wanted).abs() < 0.006 * (thickness + radius), "{arc} {wanted}");
            }
        }
    }

    #[test]
    fn the_three_ways_to_measure_agree() {
        let angles = [degrees(90), degrees(45), degrees(120)];
        let sheet = sheet(1.5, 2.0, 40);
        let flat = [mm(20.0), mm(30.0), mm(15.0), mm(25.0)];
        let ask = |legs: &[Length], corner| {
            fold(&Bends { sheet, legs, angles: &angles, corner }).unwrap()
        };
        let as_flat = ask(&flat, Corner::Flat);
        let tangents = [1.0, 0.414_213_562_373_095, 1.732_050_807_568_877];
        for (corner, radius) in [(Corner::Outside, 3.5), (Corner::Inside, 2.0)] {
            let set = |k: usize| if k < 3 { tangents[k] * radius } else { 0.0 };
            let fine =
                |mm| Length::from_mm(crate::number::float::nearest(mm, 1_000_000_000).unwrap());
            let legs = [0, 1, 2, 3].map(|k| {
                let before = if k > 0 { set(k - 1) } else { 0.0 };
                fine([20.0, 30.0, 15.0, 25.0][k] + before + set(k))
            });
            let folded = ask(&legs, corner);
            assert!((folded.flat.value - as_flat.flat.value).abs() < 1e-8);
            for (one, other) in folded.lines.iter().zip(as_flat.lines.iter()) {
                assert!((one.middle.value - other.middle.value).abs() < 1e-8);
                assert_eq!(one.allowance, other.allowance);
            }
        }
    }

    #[test]
    fn what_cannot_be_bent_is_refused() {
        let sheet = sheet(1.0, 1.0, 40);
        let ask = |legs: &[Length], angles: &[Angle], corner| {
            fold(&Bends { sheet, legs, angles, corner }).map_err(|e| (e.field, e.cause))
        };
        let right = [degrees(90)];
        assert_eq!(
            ask(&[mm(10.0), mm(1.9)], &right, Corner::Outside),
            Err((Field::Legs, Cause::Conflict))
        );
        assert!(ask(&[mm(10.0), mm(2.0)], &right, Corner::Outside).is_ok());
        assert!(ask(&[mm(10.0)], &right, Corner::Outside).is_err());
        assert!(ask(&[mm(10.0); 9], &right, Corner::Outside).is_err());
        assert!(ask(&[mm(10.0); 4], &[degrees(90); 2], Corner::Outside).is_err());
        assert!(ask(&[mm(10.0); 2], &[degrees(180)], Corner::Flat).is_ok());
        assert!(ask(&[mm(10.0); 2], &[degrees(171)], Corner::Outside).is_err());
    }

    #[test]
    fn k_by_radius_over_thickness_grows_to_a_half() {
        let mut before = Fraction::ZERO;
        for tenths in 0..=100 {
            let neutral = neutral_by_ratio(mm(f64::from(tenths) / 10.0), mm(1.0)).unwrap();
            assert!(neutral >= before && neutral <= Fraction::new(1, 2).unwrap());
            before = neutral;
        }
        assert_eq!(neutral_by_ratio(mm(1.0), mm(1.0)), Fraction::new(3, 10));
        assert_eq!(before, Fraction::new(1, 2).unwrap());
    }
}
