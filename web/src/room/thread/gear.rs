//! Gear it: the lathe as its owner typed it, and the change gears for the lead.
use super::ask;
use crate::fields::Fields;
use handturn::measure::Length;
use handturn::{Error, Field as Of};

/// The lead screw until something is typed.
pub(super) const SCREW: &str = "8 tpi";

/// Lead of the lead screw.
///
/// # Errors
/// What cannot be read.
pub(super) fn screw(fields: &Fields) -> Result<Length, (&'static str, Error)> {
    ask::pitch(fields.or("th-screw", SCREW)).map_err(|e| ("th-screw", e.of(Of::Pitch)))
}
