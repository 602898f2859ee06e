//! From the taper that two readings show to the one wanted.
use super::{Amount, STEEPEST, Taper, by_rate, figures, rate};
use crate::error::{Cause, Error, Field};
use crate::measure::{Length, given::size};
use crate::number::{Approx, Fraction};

/// A trial cut that was measured at two places.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Trial {
    /// The taper wanted; `None` for parallel work.
    pub wanted: Option<Taper>,
    /// Whether its large end is the one at the tailstock.
    pub large_at_tail: bool,
    /// Diameter measured at the place nearer to the headstock.
    pub at_head: Length,
    /// Diameter measured at the place nearer to the tailstock.
    pub at_tail: Length,
    /// How far the places lie apart.
    pub apart: Length,
    /// Whole length between centres, where the tailstock is to be moved.
    pub between: Option<Length>,
    /// Travel over which a gauge is read on the top slide.
    pub travel: Option<Length>,
}

/// What to change. Tapers that grow towards the headstock count from nought up.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Correction {
    /// The taper that was cut, below nought where it is large at the tailstock.
    pub cut: Fraction,
    /// How much the difference of the two diameters is off.
    pub off: Amount,
    /// Degrees to turn the top slide: above nought, its end by the tailstock comes nearer
    /// to the axis.
    pub slide: Approx,
    /// How far the tailstock moves: above nought, towards the tool.
    pub tailstock: Option<Amount>,
    /// By how much the gauge's reading over the travel along the top slide changes.
    pub gauge: Option<Approx>,
}

/// How to go from the taper that two readings show to the one wanted.
///
/// # Errors
/// As [`figures`]; lengths out of bounds; [`Cause::Conflict`] of [`Field::Taper`] where
/// what was cut is steeper than a taper may be.
pub fn correct(trial: &Trial) -> Result<Correction, Error> {
    size(trial.at_head, Field::Diameter)?;
    size(trial.at_tail, Field::Diameter)?;
    let cut = rate(trial.at_head, trial.at_tail, trial.apart)?;
    if cut.abs() > Fraction::whole(STEEPEST) {
        return Err(Error::new(Field::Taper, Cause::Conflict));
    }
    let wanted = match trial.wanted {
        Some(taper) => figures(taper)?,
        None => by_rate(Fraction::ZERO),
    };
    let wanted = if trial.large_at_tail { wanted.turned() } else { wanted };
    let was = by_rate(cut);
    let change = |over: Length| wanted.growth(over)?.with(was.growth(over)?, true);
    let tailstock = match trial.between {
        Some(between) => {
            size(between, Field::Length)?;
            Some(change(between)?.halved()?)
        }
        None => None,
    };
    let gauge = match trial.travel {
        Some(travel) => {
            size(travel, Field::Length)?;
            Some(wanted.sine.minus(was.sine).times(Approx::of(travel.mm())))
        }
        None => None,
    };
    let off = change(trial.apart)?;
    Ok(Correction { cut, off, slide: wanted.half.minus(was.half), tailstock, gauge })
}
