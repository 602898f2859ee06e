//! A part turned, or bored, to one that was measured, so that the two keep their fit.
use super::{Fit, Limits};
use crate::error::{Cause, Error, Field};
use crate::measure::Length;
use crate::measure::given::{from_nought, minus, over, plus, size};

/// The part that is finished and was measured.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Measured {
    /// The hole: the shaft is turned to it.
    Hole,
    /// The shaft: the hole is bored to it.
    Shaft,
}

/// What the other part is brought to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Turned {
    /// Diameters that keep the play of the fit, whatever the reading is off.
    pub keep: Limits,
    /// The middle of them.
    pub aim: Length,
    /// Whether the part that was measured lies within its own class.
    pub within: bool,
}

impl Fit {
    /// The diameters of the other part that keep this fit with one that measures
    /// `reading`, give or take `doubt`.
    ///
    /// For a hole H ± d the shaft stands from H + d − most play to H − d − least play.
    ///
    /// # Errors
    /// Lengths out of bounds; [`Cause::Conflict`] of [`Field::Measured`] where the reading is
    /// too rough to keep the fit; [`Cause::Overflow`].
    ///
    /// ```
    /// use handturn::bench::fit::{Fit, Measured, read};
    /// use handturn::measure::Length;
    /// use handturn::number::Fraction;
    /// // A hole for H7/g6 at 25 mm came out at 25.030, measured within 2 µm.
    /// let um = |n| Fraction::new(n, 1000).map(Length::from_mm);
    /// let (hole, shaft) = read("H7/g6")?;
    /// let fit = Fit::new(um(25_000)?, hole, shaft)?;
    /// let turned = fit.turn_to(Measured::Hole, um(25_030)?, um(2)?)?;
    /// assert!(!turned.within);
    /// assert_eq!((turned.keep.least, turned.keep.most), (um(24_991)?, um(25_021)?));
    /// # Ok::<(), handturn::Error>(())
    /// ```
    pub fn turn_to(&self, part: Measured, reading: Length, doubt: Length) -> Result<Turned, Error> {
        let field = Field::Measured;
        size(reading, field)?;
        from_nought(doubt, field)?;
        let (own, keep) = match part {
            Measured::Hole => {
                let least = minus(plus(reading, doubt, field)?, self.play.most, field)?;
                let most = minus(minus(reading, doubt, field)?, self.play.least, field)?;
                (self.hole, Limits { least, most })
            }
            Measured::Shaft => {
                let least = plus(plus(reading, doubt, field)?, self.play.least, field)?;
                let most = plus(minus(reading, doubt, field)?, self.play.most, field)?;
                (self.shaft, Limits { least, most })
            }
        };
        if keep.least > keep.most {
            return Err(Error::new(field, Cause::Conflict));
        }
        let aim = over(plus(keep.least, keep.most, field)?, 2, field)?;
        Ok(Turned { keep, aim, within: own.least <= reading && reading <= own.most })
    }
}

#[cfg(test)]
mod tests {
    use super::super::read;
    use super::*;
    use crate::number::Fraction;

    fn um(n: i64) -> Length {
        Length::from_mm(Fraction::new(n, 1000).unwrap())
    }

    /// Every shaft and hole in the limits, each reading off by as much as is said, keeps
    /// the play; one micrometre beyond does not.
    #[test]
    fn the_play_is_kept_and_no_wider_limits_would_keep_it() {
        for text in ["H7/g6", "H7/k6", "H7/p6", "H8/f7", "F8/h6"] {
            let (hole, shaft) = read(text).unwrap();
            let fit = Fit::new(um(25_000), hole, shaft).unwrap();
            let keeps = |hole: i64, shaft: i64| {
                let play = um(hole - shaft);
                fit.play.least <= play && play <= fit.play.most
            };
            for (part, doubt) in [
                (Measured::Hole, 0),
                (Measured::Hole, 3),
                (Measured::Shaft, 0),
                (Measured::Shaft, 5),
            ] {
                for reading in (24_950..=25_060).step_by(7) {
                    let turned = fit.turn_to(part, um(reading), um(doubt)).unwrap();
                    for other in 24_850..=25_150 {
                        let all = (reading - doubt..=reading + doubt).all(|true_size| match part {
                            Measured::Hole => keeps(true_size, other),
                            Measured::Shaft => keeps(other, true_size),
                        });
                        let inside =
                            turned.keep.least <= um(other) && um(other) <= turned.keep.most;
                        assert_eq!(inside, all, "{text} {part:?} {reading} {other}");
                    }
                }
            }
        }
    }

    #[test]
    fn a_reading_too_rough_is_refused() {
        let (hole, shaft) = read("H7/g6").unwrap();
        let fit = Fit::new(um(25_000), hole, shaft).unwrap();
        let refused = fit.turn_to(Measured::Hole, um(25_010), um(18)).unwrap_err();
        assert_eq!(refused, Error::new(Field::Measured, Cause::Conflict));
        assert!(fit.turn_to(Measured::Hole, um(25_010), um(17)).is_ok());
    }
}
