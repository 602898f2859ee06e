//! Screw threads: forms, series found by name, limits of size, drills and
//! blanks, cutting and measuring.
//!
//! A [`Thread`] is plain data: its [`Form`], its exact major diameter and pitch,
//! how many starts it has and which way it winds. Basic sizes come out as the
//! standard of the form rounds them (millimetres to 0.001, inches to 0.0001, a half
//! of that to the even neighbour as inch tables print it),
//! exact from there on.
//!
//! ```
//! use handturn::number::Fraction;
//! use handturn::thread::name;
//! // A feed screw of two starts, Tr16x8 P4: one turn goes two pitches.
//! let screw = name::read("Tr16x8 P4")?[0].thread;
//! assert_eq!((screw.starts, screw.lead()?.mm()), (2, Fraction::whole(8)));
//! assert_eq!(screw.pitch_diameter()?.mm(), Fraction::whole(14));
//! assert_eq!(screw.minor_external()?.mm(), Fraction::new(23, 2)?);
//! // 2 BA has 0.81 mm: 31.358 threads to the inch.
//! assert_eq!(name::read("2 BA")?[0].thread.tpi()?, Fraction::new(2540, 81)?);
//! # Ok::<(), handturn::Error>(())
//! ```
pub mod blind;
mod contact;
pub mod dial;
pub mod drill_list;
pub mod drills;
pub mod fitting;
pub mod form;
pub mod gearing;
mod given;
pub mod half_nuts;
pub mod infeed;
pub mod internal;
pub mod lead;
pub mod limits;
pub mod name;
pub mod passes;
pub mod ready;
mod root;
pub mod series;
pub mod starts;
pub mod still;
pub mod taper;
#[cfg(test)]
mod tests;
pub mod which;
pub mod wires;

pub use form::{Form, Kind, Profile, Source};
pub use series::{Called, Series, Size};

use crate::bounds;
use crate::error::{Cause, Error, Field};
use crate::measure::Length;
use crate::measure::read::Unit;
use crate::number::Fraction;

/// Which way a thread winds.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Hand {
    /// Goes in clockwise.
    #[default]
    Right,
    /// Goes in anticlockwise.
    Left,
}

/// A thread by its basic sizes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Thread {
    /// Shape of the groove.
    pub form: Form,
    /// Basic major diameter.
    #[doc(alias = "outside diameter")]
    pub major: Length,
    /// Distance from one groove to the next along the axis.
    pub pitch: Length,
    /// Grooves side by side, 1 for a common thread.
    pub starts: u8,
    /// Which way it winds.
    pub hand: Hand,
}

impl Thread {
    /// A thread of these sizes, once they are known to make one.
    ///
    /// # Errors
    /// [`Cause::OutOfRange`] (in micrometres) for the pitch ([`bounds::PITCH_UM`]), the major
    /// diameter ([`bounds::MAJOR_UM`]) or the starts ([`bounds::STARTS`]);
    /// [`Cause::Conflict`] where the thread is so deep that no core is left;
    /// [`Cause::Overflow`].
    pub fn new(
        form: Form,
        major: Length,
        pitch: Length,
        starts: u8,
        hand: Hand,
    ) -> Result<Self, Error> {
        let thread = Self { form, major, pitch, starts, hand };
        thread.check()?;
        Ok(thread)
    }

    /// Whether these sizes make a thread.
    ///
    /// # Errors
    /// As [`Thread::new`].
    pub fn check(&self) -> Result<(), Error> {
        within(bounds::PITCH_UM, self.pitch)?;
        within(bounds::MAJOR_UM, self.major)?;
        bounds::STARTS.check(i64::from(self.starts))?;
        if self.minor_external()?.mm() <= Fraction::ZERO {
            return Err(Error::new(Field::Pitch, Cause::Conflict));
        }
        Ok(())
    }

    /// How far one turn moves it: the pitch times the starts.
    ///
    /// # Errors
    /// [`Cause::Overflow`].
    pub fn lead(&self) -> Result<Length, Error> {
        Ok(Length::from_mm(self.pitch.mm().times(i64::from(self.starts))?))
    }

    /// Threads per inch, exact: 25.4 mm over the pitch, each start counted.
    ///
    /// # Errors
    /// [`Cause::Overflow`]; [`Cause::Zero`] for a pitch of nought.
    pub fn tpi(&self) -> Result<Fraction, Error> {
        self.pitch.inches()?.inverse()
    }

    /// Basic pitch diameter (effective), rounded as the standard prints it:
    /// the major less once the height between the basic crests.
    ///
    /// # Errors
    /// [`Cause::Overflow`].
    #[doc(alias = "effective diameter")]
    pub fn pitch_diameter(&self) -> Result<Length, Error> {
        let half = self.form.half_difference(self.pitch)?;
        self.less_twice(half)
    }

    /// Basic minor diameter of the internal thread, the bore before cutting.
    ///
    /// # Errors
    /// [`Cause::Overflow`].
    #[doc(alias = "D1")]
    #[doc(alias = "core hole")]
    pub fn minor_internal(&self) -> Result<Length, Error> {
        self.less_twice(self.form.internal_depth(self.pitch)?)
    }

    /// Basic minor diameter of the external thread, down to its root.
    ///
    /// # Errors
    /// [`Cause::Overflow`].
    #[doc(alias = "d3")]
    #[doc(alias = "core diameter")]
    pub fn minor_external(&self) -> Result<Length, Error> {
        self.less_twice(self.form.external_depth(self.pitch)?)
    }

    /// Basic major diameter of the internal thread, out to its root: the major
    /// itself but for Tr and Acme, which have clearance there.
    ///
    /// # Errors
    /// [`Cause::Overflow`].
    #[doc(alias = "D4")]
    pub fn major_internal(&self) -> Result<Length, Error> {
        let clearance = self.form.clearance(self.pitch)?.mm().negated();
        self.less_twice(Length::from_mm(clearance))
    }

    /// The major less twice a radial depth, rounded as the form's standard does.
    fn less_twice(&self, depth: Length) -> Result<Length, Error> {
        let left = self.major.mm().checked_sub(depth.mm().times(2)?)?;
        rounded(Length::from_mm(left), self.form.unit)
    }
}

/// `length` to the nearest 0.001 mm, a half up, or 0.0001 in, a half to the even
/// neighbour: so 9/32 in is printed 0.2812 and 11/32 in 0.3438.
///
/// # Errors
/// [`Cause::Overflow`].
pub fn rounded(length: Length, unit: Unit) -> Result<Length, Error> {
    match unit {
        Unit::Mm => Ok(Length::from_mm(to_nearest(length.mm(), 1000)?)),
        Unit::Inch => Length::from_inches(Fraction::new(limits::e4(length)?, 10_000)?),
    }
}

/// `value` to the nearest multiple of one `per`-th, a half up.
pub(crate) fn to_nearest(value: Fraction, per: i64) -> Result<Fraction, Error> {
    Fraction::new(value.times(per)?.nearest()?.0, per)
}

/// The nearest whole number, a half to the even neighbour.
fn even(value: Fraction) -> Result<i64, Error> {
    let (near, left) = value.nearest()?;
    // A half has gone up.
    let half = left.num() == -1 && left.den() == 2;
    Ok(if half && near & 1 != 0 { near.saturating_sub(1) } else { near })
}

/// Refuses a length outside a bound in micrometres.
fn within(bound: bounds::Bound, length: Length) -> Result<(), Error> {
    let um = length.mm().times(1000)?;
    bound.check(um.floor())?;
    bound.check(um.negated().floor().saturating_neg())?;
    Ok(())
}
