//! A move told as turns and marks of a screw's dial, where such a screw is owned.
use crate::owned::lists::{self, Stock};
use crate::room::bench::sum::{Figure, Given, Value, figure};
use crate::words::bench::mill as says;

/// What the dial of the mill's vertical screw reads after a move of `by` from touching.
pub(super) fn vertical(given: &Given, by: &Value) -> Option<Figure> {
    reads(given, Stock::MillKnee, ("vertical_dial", says::VERTICAL_READS), by)
}

/// What the dial of the screw in `stock` reads after a move of `by` from zero.
pub(super) fn reads(
    given: &Given,
    stock: Stock,
    (key, label): (&'static str, &'static str),
    by: &Value,
) -> Option<Figure> {
    let (screw, _) = lists::screw(given.fields, stock)?;
    let reading = match by {
        Value::Length(by) => screw.after(*by),
        Value::About(by) => screw.after_about(*by),
        _ => return None,
    };
    Some(figure(key, label, Value::Text(says::turns_and_marks(&reading.ok()?))))
}
