//! Choices of leaves or blocks for a tilt, as a table that two sums share.
use crate::room::bench::sum::{Entry, Figure, Given, Table, Value, figure};
use crate::room::steps::Wrong;
use crate::words::bench::tilt as says;
use handturn::bench::tilt::{Choice, Tilt, angle};
use handturn::measure::{Angle, Length};
use handturn::number::{Approx, Fraction, float};
use handturn::{Cause, Error, Field as Of};

/// Asks for a pair of wear blocks.
pub(super) const WEAR: Entry = Entry::text("wear", says::WEAR, "");

/// How thick each of two wear blocks is, where there are such, and what they leave of the
/// lift.
pub(super) fn worn(given: &Given, tilt: &Tilt) -> Result<Option<(Length, Figure)>, Wrong> {
    let Some(wear) = given.length_if("wear", Of::Thickness)? else { return Ok(None) };
    let left = tilt.between(wear).map_err(|e| ("wear", e))?;
    Ok(Some((wear, figure("between", says::BETWEEN, Value::About(left)))))
}

/// What `by` more under the edge does to the angle.
pub(super) fn moved(tilt: &Tilt, lift: Approx, by: Fraction) -> String {
    let thicker = float::nearest(lift.value, 1_000_000).and_then(|lift| lift.checked_add(by).ok());
    let with = thicker.and_then(|lift| angle(tilt.span, Length::from_mm(lift), tilt.rule).ok());
    let degrees = tilt.angle.degrees().map_or(0.0, float::of);
    with.map_or_else(String::new, |with| says::in_seconds(with.value - degrees))
}

/// The nearest stacks of `few` of what is owned, between wear blocks where there are such;
/// where the last of them is off by more than `limit`, of `more`. No table where nothing
/// is owned.
pub(super) fn table(
    tilt: &Tilt,
    wear: Option<Length>,
    owned: &[Length],
    (few, more): (u8, u8),
    limit: Angle,
    caption: &'static str,
) -> Result<Option<Table>, Error> {
    let found = |most| match tilt.choices(wear, owned, most) {
        Err(Error { cause: Cause::Empty, .. }) => Ok(Vec::new()),
        choices => choices.map(|choices| choices.iter().cloned().collect::<Vec<Choice>>()),
    };
    let mut choices = found(few)?;
    let limit = limit.arcsec().map_or(0.0, float::of);
    if choices.last().is_some_and(|last| last.off_arcsec.value.abs() > limit) {
        choices = found(more)?;
    }
    Ok((!choices.is_empty()).then(|| Table {
        key: "choices",
        caption,
        head: &[
            ("pieces", says::LEAVES),
            ("sum", says::COMES_TO),
            ("angle", says::GIVES),
            ("off", says::OFF),
        ],
        rows: choices.iter().map(row).collect(),
    }))
}

fn row(choice: &Choice) -> Vec<Value> {
    vec![
        Value::Text(says::pieces(&choice.stack)),
        Value::Length(choice.stack.sum),
        Value::Degrees(choice.degrees),
        Value::Text(says::off(choice)),
    ]
}
