//! Choices of leaves or blocks for a tilt, as a table that two sums share.
use crate::room::bench::sum::{Table, Value};
use crate::words::bench::tilt as says;
use handturn::bench::tilt::{Choice, Tilt};
use handturn::measure::{Angle, Length};
use handturn::number::float;
use handturn::{Cause, Error};

/// The nearest stacks of `few` of what is owned; where the last of them is off by more
/// than `limit`, of `more`. No table where nothing is owned.
pub(super) fn table(
    tilt: &Tilt,
    owned: &[Length],
    (few, more): (u8, u8),
    limit: Angle,
    caption: &'static str,
) -> Result<Option<Table>, Error> {
    let found = |most| match tilt.choices(owned, most) {
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
