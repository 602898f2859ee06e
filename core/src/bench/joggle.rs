//! A joggle: a step in sheet made by two equal bends, one against the other, from the marks
//! on the flat to the finished step.
//!
//! Plane geometry, our own derivation: the middle layers of both bends have the radius
//! R = r + t/2. They step 2R (1 − cos A); a straight web between them of
//! (step − 2R (1 − cos A)) ÷ sin A makes up the rest, and the step runs
//! 2R sin A + web cos A. Flat, the bends use A (r + K t) each, as in [`super::bend`].
//! Without an angle there is no web: tan(A/2) = √(step ÷ (4R − step)).
//!
//! With K at a half nothing is stretched, and the step uses up what its middle layer is
//! longer than its run. A K below a half says that a bend stretches the sheet, here by
//! A t (1 − 2K) in the two: under short webs and shallow angles that is more than the step
//! takes, and the strip comes out longer than it was. What is used up is then below nought.
//!
//! ```
//! use handturn::bench::bend::Sheet;
//! use handturn::bench::joggle::{Joggle, step};
//! use handturn::measure::{Angle, Length};
//! use handturn::number::Fraction;
//! // A lap of 1 mm in 1 mm sheet at 45°, radius 1, beginning 12 mm from the end.
//! let mm = |n| Length::from_mm(Fraction::whole(n));
//! let sheet = Sheet { thickness: mm(1), radius: mm(1), neutral: Fraction::new(2, 5)? };
//! let angle = Some(Angle::from_degrees(Fraction::whole(45))?);
//! let lap = step(&Joggle { sheet, offset: mm(1), angle, begins: mm(12), finished: mm(60) })?;
//! assert!((lap.web.value - 0.1716).abs() < 0.0001);
//! assert!((lap.run.value - 2.2426).abs() < 0.0001);
//! assert!((lap.taken.value - 0.1281).abs() < 0.0001);
//! # Ok::<(), handturn::Error>(())
//! ```
use super::bend::Sheet;
use crate::error::{Cause, Error, Field};
use crate::measure::{
    Angle, Length,
    given::{from_nought, size},
};
use crate::number::{Approx, Fraction};

/// A step wanted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Joggle {
    /// The sheet.
    pub sheet: Sheet,
    /// Height of the step, face to the same face.
    pub offset: Length,
    /// Angle of its web to the flat; none for two bends that touch.
    pub angle: Option<Angle>,
    /// From the end of the strip to where the first bend begins.
    pub begins: Length,
    /// The finished strip, end to end along the flat.
    pub finished: Length,
}

/// The step and its marks, in millimetres; marks from the end of the strip.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Step {
    /// Angle of the web, in degrees.
    pub degrees: Approx,
    /// Straight between the bends.
    pub web: Approx,
    /// From where the step begins to where it ends, along the finished flat.
    pub run: Approx,
    /// The same along the strip.
    pub along: Approx,
    /// What the strip is shortened by; below nought where its bends stretch it by more.
    pub taken: Approx,
    /// By how much that changes where K is 0.05 more.
    pub band: Approx,
    /// Middle of the first bend.
    pub first: Approx,
    /// Middle of the second.
    pub second: Approx,
    /// From the one to the other.
    pub between: Approx,
    /// Where the finished step ends.
    pub ends: Approx,
    /// The strip before it is bent.
    pub blank: Approx,
}

/// A joggle's marks and what comes of them.
///
/// # Errors
/// Lengths out of bounds; [`Cause::OutOfRange`] of an angle beyond 90° and of K;
/// [`Cause::Conflict`] of [`Field::Joggle`] where the bends alone step further than wanted,
/// or, without an angle, would turn beyond 90°; of [`Field::Legs`] where the step ends
/// beyond the strip.
pub fn step(ask: &Joggle) -> Result<Step, Error> {
    let layer = ask.sheet.layer()?;
    size(ask.offset, Field::Joggle)?;
    from_nought(ask.begins, Field::Legs)?;
    size(ask.finished, Field::Legs)?;
    let conflict = Error::new(Field::Joggle, Cause::Conflict);
    let offset = Approx::of(ask.offset.mm());
    let thickness = Approx::of(ask.sheet.thickness.mm());
    let middle = Approx::of(ask.sheet.radius.mm()).plus(thickness.by(0.5));
    let turns = if let Some(angle) = ask.angle {
        let degrees = angle.degrees()?;
        if degrees <= Fraction::ZERO || degrees > Fraction::whole(90) {
            return Err(Error::new(Field::Angle, Cause::OutOfRange { least: 0, greatest: 90 }));
        }
        Approx::of(angle.turns())
    } else {
        let rest = middle.by(4.0).minus(offset);
        // Half the angle is at most 45°.
        if rest.value < offset.value {
            return Err(conflict);
        }
        offset.over(rest).sqrt().atan().by(2.0)
    };
    let half = turns.by(0.5).sin();
    // 1 − cos A = 2 sin²(A/2).
    let by_bends = middle.by(4.0).times(half).times(half);
    let left = offset.minus(by_bends);
    let web = match ask.angle {
        None => Approx::exactly(0.0),
        Some(_) if left.value < -left.bound => return Err(conflict),
        Some(_) => left.over(turns.sin()),
    };
    let run = middle.by(2.0).times(turns.sin()).plus(web.times(turns.cos()));
    let arc = turns.times(Approx::pi()).by(2.0).times(layer);
    let along = arc.by(2.0).plus(web);
    let begins = Approx::of(ask.begins.mm());
    let first = begins.plus(arc.by(0.5));
    let between = arc.plus(web);
    let ends = begins.plus(run);
    let finished = Approx::of(ask.finished.mm());
    if finished.value < ends.value - ends.bound {
        return Err(Error::new(Field::Legs, Cause::Conflict));
    }
    let taken = along.minus(run);
    Ok(Step {
        degrees: turns.by(360.0),
        web,
        run,
        along,
        taken,
        band: turns.times(Approx::pi()).by(4.0).times(thickness).by(0.05),
        first,
        second: first.plus(between),
        between,
        ends,
        blank: finished.plus(taken),
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::number::float;

    fn mm(mm: f64) -> Length {
        Length::from_mm(float::nearest(mm, 1000).unwrap())
    }

    fn joggle(thickness: f64, radius: f64, offset: f64, degrees: Option<i64>) -> Joggle {
        let neutral = Fraction::new(42, 100).unwrap();
        let sheet = Sheet { thickness: mm(thickness), radius: mm(radius), neutral };
        let angle = degrees.map(|d| Angle::from_degrees(Fraction::whole(d)).unwrap());
        Joggle { sheet, offset: mm(offset), angle, begins: mm(5.0), finished: mm(200.0) }
    }

    /// The middle layer walked in short steps: first bend, web, second bend.
    fn walked(ask: &Joggle, found: &Step) -> (f64, f64) {
        let radius = float::of(ask.sheet.radius.mm()) + float::of(ask.sheet.thickness.mm()) / 2.0;
        let turns = found.degrees.value / 360.0;
        let arc = turns * 2.0 * float::PI * radius;
        let (mut x, mut y) = (0.0, 0.0);
        let steps = 20_000;
        for k in 0..steps {
            let at = turns * (f64::from(k) + 0.5) / f64::from(steps);
            let long = arc / f64::from(steps);
            // Up into the slope, and out of it again: the same heights, turned about.
            x += 2.0 * long * float::cos_turns(at);
            y += 2.0 * long * float::sin_turns(at);
        }
        x += found.web.value * float::cos_turns(turns);
        y += found.web.value * float::sin_turns(turns);
        (x, y)
    }

    #[test]
    fn the_step_by_walking_along_it() {
        for ask in [
            joggle(1.0, 1.0, 1.0, Some(45)),
            joggle(0.8, 2.0, 5.0, Some(30)),
            joggle(2.0, 3.0, 12.0, Some(90)),
            joggle(1.2, 1.5, 0.9, None),
            joggle(0.5, 10.0, 0.5, None),
            joggle(1.0, 2.0, 5.0, None),
        ] {
            let found = step(&ask).unwrap();
            let (x, y) = walked(&ask, &found);
            assert!((x - found.run.value).abs() < 1e-7, "{ask:?} {x} {found:?}");
            assert!((y - float::of(ask.offset.mm())).abs() < 1e-7, "{ask:?} {y}");
            assert!(found.taken.value > 0.0 && found.taken.bound < 1e-12);
            let marks = found.second.value - found.first.value;
            assert!((marks - found.between.value).abs() < 1e-12);
            assert!((found.blank.value - 200.0 - found.taken.value).abs() < 1e-12);
        }
    }

    /// What the middle layer is longer than its run, less what the bends stretch it by.
    #[test]
    fn a_small_k_lengthens_the_strip() {
        let mut below = 0;
        for (degrees, hundredths) in
            [10, 30, 45, 60, 90].into_iter().flat_map(|d| [0, 25, 40, 50].map(|k| (Some(d), k)))
        {
            for offset in [0.9, 3.0] {
                let mut ask = joggle(1.0, 0.5, offset, degrees);
                ask.sheet.neutral = Fraction::new(hundredths, 100).unwrap();
                let Ok(found) = step(&ask) else { continue };
                let (x, _) = walked(&ask, &found);
                let radians = found.degrees.value.to_radians();
                let middle = 2.0 * radians + found.web.value;
                let stretched = radians * (1.0 - f64::from(hundredths as i32) / 50.0);
                assert!((found.taken.value - (middle - x - stretched)).abs() < 1e-7, "{ask:?}");
                assert!(hundredths < 50 || found.taken.value > 0.0);
                assert!((found.band.value - radians / 10.0).abs() < 1e-12);
                let straight = found.blank.value - 5.0 - found.along.value;
                assert!(straight >= 200.0 - found.ends.value - 1e-9);
                below += i32::from(found.taken.value < 0.0);
            }
        }
        assert!(below > 5, "{below}");
    }

    #[test]
    fn what_cannot_be_made_is_refused() {
        let refused = |ask: Joggle| step(&ask).unwrap_err().field;
        // Two bends of 45° about 1.5 step 0.88 on their own.
        assert_eq!(refused(joggle(1.0, 1.0, 0.87, Some(45))), Field::Joggle);
        assert!(step(&joggle(1.0, 1.0, 0.88, Some(45))).is_ok());
        assert_eq!(refused(joggle(1.0, 1.0, 3.1, None)), Field::Joggle);
        assert!(step(&joggle(1.0, 1.0, 3.0, None)).is_ok());
        assert_eq!(refused(joggle(1.0, 1.0, 5.0, Some(91))), Field::Angle);
        assert_eq!(
            refused(Joggle { finished: mm(6.0), ..joggle(1.0, 1.0, 1.0, Some(45)) }),
            Field::Legs
        );
    }
}
