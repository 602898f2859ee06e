//! Why something was refused: which value, why, what is allowed, and a sentence.
use super::given::{Given, MOST};
use crate::owned::Bad;
use crate::words::{errors, shop_errors};
use handturn::{Cause, Error};
use serde::Serialize;

/// What the JavaScript side throws, as an `Error` with these as properties.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Refusal {
    /// Which value, as `parts` or `head.plates`.
    pub field: String,
    /// Why, in a word: `OutOfRange`, `NotWhole`, `Empty`, ...
    pub cause: String,
    /// What is allowed, where there are limits.
    pub limits: Option<Limits>,
    /// A sentence: what is wanted and what was given.
    pub message: String,
}

/// What is allowed.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(untagged)]
pub enum Limits {
    /// From least to greatest, both allowed.
    Range {
        /// Least allowed.
        least: u32,
        /// Greatest allowed.
        greatest: u32,
    },
    /// Lengths from least to greatest, both allowed.
    Lengths {
        /// Least allowed, in millimetres.
        least_mm: f64,
        /// Greatest allowed, in millimetres.
        greatest_mm: f64,
    },
    /// So many entries at most.
    Most {
        /// How many fit.
        most: u16,
    },
}

fn lengths(least_um: u32, greatest_um: u32) -> Limits {
    let mm = |um: u32| f64::from(um) / 1000.0;
    Limits::Lengths { least_mm: mm(least_um), greatest_mm: mm(greatest_um) }
}

impl Refusal {
    /// What the core found wrong with `given`, under the name it was given.
    pub(super) fn of(field: &str, error: &Error, given: &str) -> Self {
        Self::said(field, error, errors::said(error, given))
    }

    /// What is wrong with an entry of the head.
    pub(super) fn of_head(field: &str, bad: &Bad, given: &str) -> Self {
        Self::said(field, &bad.error, shop_errors::said(bad, given))
    }

    /// A value of the wrong kind.
    pub(super) fn kind(field: &str, wanted: &str, given: &Given) -> Self {
        let cause = match given {
            Given::Nothing => "Empty",
            Given::Number(number) if number.fract() != 0.0 && number.is_finite() => "NotWhole",
            Given::Number(number) if number.is_finite() && number.abs() > MOST => "Overflow",
            _ => "WrongKind",
        };
        let message = [field, " must be ", wanted, ", not ", &given.to_string(), "."].concat();
        Self { field: field.to_owned(), cause: cause.to_owned(), limits: None, message }
    }

    /// A name that is not known, or a choice that there is not.
    pub(super) fn unknown(field: &str, known: &[&str]) -> Self {
        let message = [field, " is not known. Known: ", &known.join(", "), "."].concat();
        Self { field: field.to_owned(), cause: "Unknown".to_owned(), limits: None, message }
    }

    /// Something else, in the words `said`.
    pub(super) fn because(field: &str, cause: &str, said: &errors::Said) -> Self {
        let message = [field, ": ", &said.wrong].concat();
        Self { field: field.to_owned(), cause: cause.to_owned(), limits: None, message }
    }

    fn said(field: &str, error: &Error, said: errors::Said) -> Self {
        let limits = match error.cause {
            Cause::OutOfRange { least, greatest } if errors::in_um(error.field) => {
                Some(lengths(least, greatest))
            }
            Cause::OutOfRange { least, greatest } => Some(Limits::Range { least, greatest }),
            Cause::OutOfLengths { least_um, greatest_um }
            | Cause::WireSinks { least_um, greatest_um }
            | Cause::WireRides { least_um, greatest_um }
            | Cause::WireRests { least_um, greatest_um }
            | Cause::PinFalls { least_um, greatest_um }
            | Cause::PinRides { least_um, greatest_um } => Some(lengths(least_um, greatest_um)),
            // No ring of a plate is larger than a metre.
            Cause::HolesMeet { least_um } => Some(lengths(least_um, 1_000_000)),
            Cause::Blunt { greatest_um } | Cause::Pointed { greatest_um } => {
                Some(lengths(0, greatest_um))
            }
            Cause::TooMany { most } => Some(Limits::Most { most }),
            _ => None,
        };
        let given = if said.typed.is_empty() {
            String::new()
        } else {
            [" Given: ", &said.typed, "."].concat()
        };
        let message = [field, ": ", &said.wrong, &given].concat();
        // The name alone: `OutOfRange`, without its limits.
        let cause = format!("{:?}", error.cause);
        let cause = cause.split(' ').next().unwrap_or_default().to_owned();
        Self { field: field.to_owned(), cause, limits, message }
    }
}
