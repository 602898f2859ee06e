//! Top slide, tailstock and gauge for a taper.
use super::{Amount, Figures, Taper, figures};
use crate::bounds::LENGTH_UM;
use crate::error::{Cause, Error, Field};
use crate::measure::{
    Length,
    given::{from_nought, plus, size, um_down},
};
use crate::number::{Approx, Fraction};

/// A taper to be turned.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Ask {
    /// The taper.
    pub taper: Taper,
    /// Its large end, if known. Two of the three give the third.
    pub large: Option<Length>,
    /// Its small end, if known.
    pub small: Option<Length>,
    /// The length between them, if known.
    pub length: Option<Length>,
    /// Whole length of the work between centres, where it is turned so.
    pub between: Option<Length>,
    /// How far the tailstock can be set over.
    pub reach: Option<Length>,
    /// Travel over which a dial gauge is read to set the top slide.
    pub travel: Option<Length>,
}

impl Ask {
    /// Nothing but the taper.
    #[must_use]
    pub const fn of(taper: Taper) -> Self {
        let none = None;
        Self {
            taper,
            large: none,
            small: none,
            length: none,
            between: none,
            reach: none,
            travel: none,
        }
    }
}

/// How the tailstock is set over.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Over {
    /// By the rule: half the taper times the whole length.
    pub by: Amount,
    /// How much less the sine gives, since the work leans: in millimetres.
    pub leaning: Approx,
    /// Longest work between centres within the tailstock's reach.
    pub longest: Option<Amount>,
    /// Whether it goes further than the tailstock can.
    pub beyond: bool,
}

/// How a taper is set.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Set {
    /// The taper in every form.
    pub figures: Figures,
    /// Large end, small end and the length between, where two are known.
    pub ends: Option<[Amount; 3]>,
    /// The tailstock.
    pub over: Option<Over>,
    /// What a dial gauge on a parallel bar between centres shows while the top slide
    /// goes the travel by its own screw: the sine, in millimetres.
    pub by_slide: Option<Approx>,
    /// What it shows against the top slide's side while the saddle goes the travel: the
    /// tangent.
    pub by_saddle: Option<Amount>,
}

/// Top slide, tailstock and gauge for a taper.
///
/// # Errors
/// As [`figures`]; lengths out of bounds; [`Cause::Conflict`] of [`Field::Length`] where
/// both ends and the length are given, [`Cause::OutOfLengths`] where the small end would
/// fall below nought; [`Cause::Conflict`] of [`Field::Taper`] where the ends don't grow.
pub fn set(ask: &Ask) -> Result<Set, Error> {
    let figures = figures(ask.taper)?;
    let ends = ends(ask, &figures)?;
    let over = match ask.between {
        Some(between) => Some(over(&figures, between, ask.reach)?),
        None => None,
    };
    let (by_slide, by_saddle) = match ask.travel {
        Some(travel) => {
            size(travel, Field::Length)?;
            let slide = figures.sine.times(Approx::of(travel.mm()));
            (Some(slide), Some(figures.growth(travel)?.halved()?))
        }
        None => (None, None),
    };
    Ok(Set { figures, ends, over, by_slide, by_saddle })
}

fn ends(ask: &Ask, figures: &Figures) -> Result<Option<[Amount; 3]>, Error> {
    let known = |length: Option<Length>, field| match length {
        Some(length) => from_nought(length, field).map(|_| ()),
        None => Ok(()),
    };
    known(ask.large, Field::Diameter)?;
    known(ask.small, Field::Diameter)?;
    known(ask.length, Field::Length)?;
    let wrong = Error::new(Field::Taper, Cause::Conflict);
    let [large, small, length] = [ask.large, ask.small, ask.length].map(|l| l.map(Amount::exactly));
    Ok(Some(match (large, small, length) {
        (Some(large), None, Some(length)) => {
            let growth = figures.growth(ask.length.unwrap_or(Length::from_mm(Fraction::ZERO)))?;
            let small = large.with(growth, true)?;
            if small.about.value < -small.about.bound {
                let greatest_um = um_down(large.about.value / figures.rate.value);
                let cause = Cause::OutOfLengths { least_um: LENGTH_UM.0, greatest_um };
                return Err(Error::new(Field::Length, cause));
            }
            [large, small, length]
        }
        (None, Some(small), Some(length)) => {
            let growth = figures.growth(ask.length.unwrap_or(Length::from_mm(Fraction::ZERO)))?;
            [small.with(growth, false)?, small, length]
        }
        (Some(large), Some(small), None) => {
            let growth = large.with(small, true)?.exact.filter(|grown| !grown.mm().is_negative());
            [large, small, figures.length(growth.ok_or(wrong)?)?]
        }
        (Some(_), Some(_), Some(_)) => return Err(Error::new(Field::Length, Cause::Conflict)),
        _ => return Ok(None),
    }))
}

fn over(figures: &Figures, between: Length, reach: Option<Length>) -> Result<Over, Error> {
    size(between, Field::Length)?;
    let by = figures.growth(between)?.halved()?;
    // tan − sin = tan·(1 − cos) = tan·sin² ÷ (1 + cos), with cos = sin ÷ tan.
    let half = figures.rate.by(0.5);
    let cosine = figures.sine.over(half);
    let share = figures.sine.times(figures.sine).over(cosine.plus(Approx::exactly(1.0)));
    let leaning = by.about.times(share);
    let (mut longest, mut beyond) = (None, false);
    if let Some(reach) = reach {
        size(reach, Field::Reach)?;
        let most = figures.length(plus(reach, reach, Field::Reach)?)?;
        beyond = most.exact.map_or_else(
            || by.about.value > crate::number::float::of(reach.mm()) + by.about.bound,
            |most| between > most,
        );
        longest = Some(most);
    }
    Ok(Over { by, leaning, longest, beyond })
}
