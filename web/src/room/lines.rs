//! Lengths as several rooms read them: lists of wires, drills and pins; pitches.
use handturn::measure::Length;
use handturn::measure::read::{self, Unit};
use handturn::{Cause, Error, Field};

pub(super) use crate::owned::lists::pitch;

/// Lengths one list can hold.
const MOST: u16 = 200;

/// Lengths split by space, in millimetres unless they name their unit without a space.
///
/// # Errors
/// What cannot be read, with its place; too many.
pub(super) fn lengths(text: &str, field: Field) -> Result<Vec<Length>, Error> {
    let mut list = Vec::new();
    let mut from = 0;
    for part in text.split([' ', ';', '\n', '\t']) {
        let to = from + part.len();
        if !part.is_empty() {
            let length = read::length(part, Unit::Mm).map_err(|e| e.of(field).at(from, to))?;
            if list.len() >= usize::from(MOST) {
                return Err(Error::new(field, Cause::TooMany { most: MOST }).at(from, to));
            }
            list.push(length);
        }
        from = to + 1;
    }
    Ok(list)
}
