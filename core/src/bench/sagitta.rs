//! Chord, height and radius of an arc: two give the third. The radius of a surface by a
//! gauge on three feet.
//!
//! Rule: with half the chord a and the height h, the radius is a²/2h + h/2. Three feet
//! in a triangle of side s stand on a circle of radius s/√3, so that R = s²/6h + h/2;
//! feet and plunger that end in balls of radius b take b off a round surface and add it
//! to a hollow one. (Plane geometry, our own derivation.)
//!
//! ```
//! use handturn::bench::sagitta::{Arc, arc};
//! use handturn::measure::Length;
//! use handturn::number::Fraction;
//! // 20 across and 4 high: a radius of 14.5, exactly.
//! let mm = |n| Length::from_mm(Fraction::whole(n));
//! let found = arc(&Arc::Radius { chord: mm(20), height: mm(4) })?;
//! assert_eq!(found.radius.exact.map(Length::mm), Some(Fraction::new(29, 2)?));
//! # Ok::<(), handturn::Error>(())
//! ```
use super::taper::Amount;
use crate::error::{Cause, Error, Field};
use crate::measure::{
    Length,
    given::{from_nought, minus, plus, size},
};
use crate::number::{Approx, Fraction};

/// What is wanted of an arc, and what is known.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Arc {
    /// The radius.
    Radius {
        /// Straight across, from end to end.
        chord: Length,
        /// From the middle of the chord to the arc.
        height: Length,
    },
    /// The height of an arc no more than half round.
    #[doc(alias = "sagitta")]
    Height {
        /// Its radius.
        radius: Length,
        /// Straight across.
        chord: Length,
    },
    /// The chord.
    Chord {
        /// Its radius.
        radius: Length,
        /// From the middle of the chord to the arc.
        height: Length,
    },
    /// The radius of a surface, by a gauge on three feet.
    #[doc(alias = "spherometer")]
    Feet {
        /// Side of the feet's triangle.
        side: Length,
        /// How far the plunger stands above or below them.
        height: Length,
        /// Radius of the balls that feet and plunger end in, nought for points.
        ball: Length,
        /// Whether the surface is hollow.
        hollow: bool,
    },
}

/// An arc, in millimetres.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Found {
    /// Its radius.
    pub radius: Amount,
    /// Straight across; of three feet, across their circle.
    pub chord: Amount,
    /// From the middle of the chord to the arc.
    pub height: Amount,
    /// Degrees that it takes in.
    pub degrees: Approx,
    /// Along it.
    pub along: Approx,
}

/// The third of radius, chord and height.
///
/// # Errors
/// Lengths out of bounds; [`Cause::Conflict`] of [`Field::Chord`] where it is longer than
/// the circle is wide, of [`Field::Depth`] where the height is, or where feet of that size
/// leave no radius; [`Cause::Overflow`].
pub fn arc(ask: &Arc) -> Result<Found, Error> {
    let half = |length: Length| length.mm().over(2);
    match *ask {
        Arc::Radius { chord, height } => {
            size(chord, Field::Chord)?;
            size(height, Field::Depth)?;
            let square = half(chord)?.checked_mul(half(chord)?)?;
            let radius = by_square(square, height)?;
            let [chord, height] = [chord, height].map(Amount::exactly);
            Ok(found(Amount::exactly(radius), chord, height))
        }
        Arc::Height { radius, chord } => {
            size(radius, Field::Radius)?;
            size(chord, Field::Chord)?;
            let across = plus(radius, radius, Field::Radius)?;
            if chord > across {
                return Err(Error::new(Field::Chord, Cause::Conflict));
            }
            let sum = Approx::of(plus(across, chord, Field::Chord)?.mm());
            let rest = Approx::of(minus(across, chord, Field::Chord)?.mm());
            let centre = sum.times(rest).sqrt();
            // R − √(R² − a²) = a² ÷ (R + √…): no small difference of large numbers.
            let square = Approx::of(chord.mm()).times(Approx::of(chord.mm()));
            let height = square.over(Approx::of(across.mm()).plus(centre)).by(0.5);
            let [radius, chord] = [radius, chord].map(Amount::exactly);
            Ok(found(radius, chord, Amount::near(height)))
        }
        Arc::Chord { radius, height } => {
            size(radius, Field::Radius)?;
            size(height, Field::Depth)?;
            let rest = minus(plus(radius, radius, Field::Radius)?, height, Field::Depth)?;
            if rest.mm().is_negative() {
                return Err(Error::new(Field::Depth, Cause::Conflict));
            }
            let chord = Approx::of(height.mm()).times(Approx::of(rest.mm())).sqrt().by(2.0);
            let [radius, height] = [radius, height].map(Amount::exactly);
            Ok(found(radius, Amount::near(chord), height))
        }
        Arc::Feet { side, height, ball, hollow } => {
            size(side, Field::Length)?;
            size(height, Field::Depth)?;
            from_nought(ball, Field::Radius)?;
            let square = side.mm().checked_mul(side.mm())?;
            let centres = by_square(square.over(3)?, height)?;
            let to_surface = if hollow { plus } else { minus };
            let radius = to_surface(centres, ball, Field::Radius)?;
            if radius.mm().is_zero() || radius.mm().is_negative() {
                return Err(Error::new(Field::Depth, Cause::Conflict));
            }
            let across = Approx::of(square.over(3)?).sqrt().by(2.0);
            let height = Amount::exactly(height);
            let whole = found(Amount::exactly(centres), Amount::near(across), height);
            Ok(Found { radius: Amount::exactly(radius), ..whole })
        }
    }
}

/// (a² ÷ h + h) ÷ 2.
fn by_square(square: Fraction, height: Length) -> Result<Length, Error> {
    let twice = square.checked_div(height.mm()).and_then(|part| part.checked_add(height.mm()));
    twice.and_then(|twice| twice.over(2)).map(Length::from_mm).map_err(|e| e.of(Field::Radius))
}

/// The arc's angle: four times the one whose tangent is the height over half the chord.
fn found(radius: Amount, chord: Amount, height: Amount) -> Found {
    let turns = if chord.about.value > 0.0 {
        height.about.over(chord.about.by(0.5)).atan().by(4.0)
    } else {
        Approx::exactly(1.0)
    };
    let along = turns.times(radius.about).times(Approx::pi()).by(2.0);
    Found { radius, chord, height, degrees: turns.by(360.0), along }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn mm(num: i64, den: i64) -> Length {
        Length::from_mm(Fraction::new(num, den).unwrap())
    }

    #[test]
    fn rows() {
        // 3, 4, 5: a chord of 8 in a circle of 5 is 2 high.
        let is = |found: &Found, radius: f64, chord: f64, height: f64| {
            for (came, truth) in
                [(found.radius, radius), (found.chord, chord), (found.height, height)]
            {
                let about = came.about;
                assert!((about.value - truth).abs() <= about.bound && about.bound < 1e-13);
            }
        };
        let height = arc(&Arc::Height { radius: mm(5, 1), chord: mm(8, 1) }).unwrap();
        is(&height, 5.0, 8.0, 2.0);
        is(&arc(&Arc::Chord { radius: mm(5, 1), height: mm(2, 1) }).unwrap(), 5.0, 8.0, 2.0);
        // More than half round: 8 high.
        is(&arc(&Arc::Chord { radius: mm(5, 1), height: mm(8, 1) }).unwrap(), 5.0, 8.0, 8.0);
        let radius = arc(&Arc::Radius { chord: mm(8, 1), height: mm(8, 1) }).unwrap();
        is(&radius, 5.0, 8.0, 8.0);
        assert!((radius.degrees.value - 253.739_795_29).abs() < 1e-8);
        let ring = arc(&Arc::Chord { radius: mm(5, 1), height: mm(10, 1) }).unwrap();
        assert!((ring.along.value - 31.415_926_535_9).abs() < 1e-9);
        let refused = |ask: &Arc| arc(ask).map_err(|e| (e.field, e.cause)).unwrap_err();
        let conflict = |field| (field, Cause::Conflict);
        let long = Arc::Height { radius: mm(5, 1), chord: mm(101, 10) };
        assert_eq!(refused(&long), conflict(Field::Chord));
        let high = Arc::Chord { radius: mm(5, 1), height: mm(101, 10) };
        assert_eq!(refused(&high), conflict(Field::Depth));
    }

    #[test]
    fn three_feet() {
        // Points on a circle of 4 (side 4√3 is no fraction: so s² = 48 by 6² + 12 won't do).
        let feet = |hollow, ball| Arc::Feet { side: mm(6, 1), height: mm(1, 1), ball, hollow };
        let exact = |ask: &Arc| arc(ask).unwrap().radius.exact;
        assert_eq!(exact(&feet(false, mm(0, 1))), Some(mm(13, 2)));
        assert_eq!(exact(&feet(false, mm(1, 2))), Some(mm(6, 1)));
        assert_eq!(exact(&feet(true, mm(1, 2))), Some(mm(7, 1)));
        assert!(arc(&feet(false, mm(7, 1))).is_err());
    }
}
