//! Values of one part that depend on each other: what the drawing says, and what is so
//! on the part in hand.
//!
//! A value is a length, an angle or a number. Its drawing value is a text of its kind
//! (`6 mm`, `17°30'`, `64`) or a formula over other values: `= bore - 2*0.05`. What was
//! measured takes the drawing value's place for all that depends on it, so there are two
//! chains: the drawing's, and the one in force. Method: each formula's names give the
//! values it waits for; a value is worked out when none of those is open any more. Those
//! left at the end wait for each other.
//!
//! ```
//! use handturn::card::{Amount, Given, Kind, chain};
//! use handturn::measure::Length;
//! use handturn::number::Fraction;
//! // A plug is turned 0.05 a side under its bore; the bore was drawn 6 and came out 6.02.
//! let length = |name, drawing, measured| Given { name, kind: Kind::Length, drawing, measured };
//! let found = chain(&[length("plug", "= bore - 2*0.05", ""), length("bore", "6", "6.02")])?;
//! let mm = |n| Fraction::new(n, 100).map(|mm| Ok(Amount::Length(Length::from_mm(mm))));
//! assert_eq!(found[0].drawing, mm(590)?);
//! assert_eq!(found[0].in_force, mm(592)?);
//! # Ok::<(), handturn::Error>(())
//! ```
mod formula;
mod order;
#[cfg(test)]
mod tests;

use crate::bounds::MAX_VALUES;
use crate::error::{Cause, Error, Field};
use crate::list::List;
use crate::measure::{Angle, Length, read};
use crate::number::Fraction;

/// What a value is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Kind {
    /// A length; figures without a unit are millimetres.
    Length,
    /// An angle; figures without a mark are degrees.
    Angle,
    /// A number without a unit.
    Number,
}

/// One value as it is typed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Given<'a> {
    /// Letters, figures and `_`, a letter first; capitals and small letters are the same.
    pub name: &'a str,
    /// What it is.
    pub kind: Kind,
    /// What the drawing says: a text of its kind, or `=` and a formula.
    pub drawing: &'a str,
    /// What was measured, as a text of its kind; empty where nothing was.
    pub measured: &'a str,
}

/// An exact value.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Amount {
    /// A length.
    Length(Length),
    /// An angle, which may be below nought where a formula gives it.
    Angle(Angle),
    /// A number.
    Number(Fraction),
}

/// A value in both chains.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Found {
    /// By the drawing alone.
    pub drawing: Result<Amount, Fault>,
    /// With what was measured, here and wherever it depends on.
    pub in_force: Result<Amount, Fault>,
}

/// Why there is no value.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Fault {
    /// Its text or its name can't be used, or its result does not fit; the place is in
    /// the text, or in the name where the field is [`Field::Name`].
    Text(Error),
    /// The formula names what is no value, from byte to byte.
    Unknown(u16, u16),
    /// Units do not go together (a length and a number are added, two lengths multiplied),
    /// found at these bytes; the whole text where the result is of another kind.
    Units(u16, u16),
    /// It depends on itself: the values on the way round, by their places from 0, this
    /// one first.
    Cycle(List<u8, MAX_VALUES>),
    /// It depends on the value at this place, which is at fault itself.
    Depends(u8),
}

/// Every one of `given` in both chains, in the order given.
///
/// Formulas know `+ - * /`, brackets, names, and figures with or without a unit. Figures
/// alone take the unit of what they are added to: `bore - 0.1` is 0.1 mm less. A value
/// that is a number does not: a length and a count can't be added.
///
/// # Errors
/// [`Cause::TooMany`] for more than 32 values. What is wrong with one value stands with it.
pub fn chain(given: &[Given<'_>]) -> Result<List<Found, MAX_VALUES>, Error> {
    if given.len() > MAX_VALUES {
        let most = u16::try_from(MAX_VALUES).unwrap_or(u16::MAX);
        return Err(Error::new(Field::Value, Cause::TooMany { most }));
    }
    let (drawing, in_force) = (order::worked(given, false), order::worked(given, true));
    let mut found = List::new();
    for (drawing, in_force) in drawing.into_iter().zip(&in_force) {
        let _ = found.push(Found { drawing: drawing.clone(), in_force: in_force.clone() });
    }
    Ok(found)
}

/// The places, from 0, of the values whose formulas name the one at `place`: those that
/// follow it.
///
/// ```
/// use handturn::card::{Given, Kind, followers};
/// let length = |name, drawing| Given { name, kind: Kind::Length, drawing, measured: "" };
/// let given = [length("bore", "6"), length("plug", "= Bore - 0.1"), length("pin", "= plug")];
/// assert_eq!(followers(&given, 0)[..], [1]);
/// ```
#[must_use]
pub fn followers(given: &[Given<'_>], place: usize) -> List<u8, MAX_VALUES> {
    order::followers(given, place)
}

/// Whether two names are the same: capitals and small letters are alike.
#[must_use]
pub fn same_name(one: &str, other: &str) -> bool {
    let small = |c: char| c.to_lowercase();
    one.chars().flat_map(small).eq(other.chars().flat_map(small))
}

/// A text that is no formula, as `kind` reads it.
fn plain(text: &str, kind: Kind) -> Result<Amount, Error> {
    let read = match kind {
        Kind::Length => read::length(text, read::Unit::Mm).map(Amount::Length),
        Kind::Angle => read::angle(text).map(Amount::Angle),
        Kind::Number => read::number(text, Field::Value).map(Amount::Number),
    };
    read.map_err(|error| match error.cause {
        // An angle's range has words of its own.
        Cause::OutOfRange { .. } => error,
        _ => error.of(Field::Value),
    })
}

/// Whether `name` can be a value's name.
fn name_fits(name: &str) -> Result<(), Error> {
    let wrong = |cause| Err(Error::new(Field::Name, cause).at(0, name.len()));
    let mut letters = name.chars();
    match letters.next() {
        None => wrong(Cause::Empty),
        Some(first) if !first.is_alphabetic() => wrong(Cause::Conflict),
        Some(_) if name.len() > LONGEST_NAME => {
            wrong(Cause::TooMany { most: u16::try_from(LONGEST_NAME).unwrap_or(u16::MAX) })
        }
        Some(_) if letters.all(in_name) => Ok(()),
        Some(_) => wrong(Cause::Conflict),
    }
}

/// Bytes of a name, at most.
const LONGEST_NAME: usize = 32;

fn in_name(c: char) -> bool {
    c.is_alphanumeric() || c == '_'
}
