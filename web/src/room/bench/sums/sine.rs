//! A sine bar and the blocks under its roller.
use super::stacked;
use crate::draw::sketch::{Sketch, round};
use crate::owned::lists::{self, Stock};
use crate::room::bench::sum::{Answer, Entry, Given, Group, Sum, Value, about, figure};
use crate::room::steps::Wrong;
use crate::words::angle_text;
use crate::words::bench::{mill as says, tilt};
use handturn::bench::tilt::{Rule, Tilt};
use handturn::measure::Angle;
use handturn::number::{Approx, Fraction, float};
use handturn::{Error, Field as Of};
use maud::Markup;

pub(super) const SUM: Sum = Sum {
    key: "sine",
    group: Group::Mill,
    name: says::SINE,
    about: says::SINE_ABOUT,
    also: says::SINE_ALSO,
    icon: "M2 20.5h20M5 18.5a2 2 0 1 0 .01 0M18 9.5a2 2 0 1 0 .01 0M5 14.6L17 6M15 13.6v7M21 13.6v7M15 13.6h6",
    entries: &[
        Entry::text("angle", says::SINE_ANGLE, "14.5"),
        Entry::text("bar", says::SINE_BAR, "127"),
        stacked::WEAR,
    ],
    answer,
    source: says::SINE_SOURCE,
    care: says::SINE_CARE,
};

fn answer(given: &Given) -> Result<Answer, Wrong> {
    let (angle, span) = (given.angle("angle", Of::Angle)?, given.length("bar", Of::Length)?);
    let bar = Tilt { angle, span, rule: Rule::Sine };
    let at = |error: Error| about(error, &[(Of::Angle, "angle"), (Of::Length, "bar")]);
    let lift = bar.lift().map_err(at)?;
    let blocks = lists::lengths(given.fields, Stock::Blocks);
    let (wear, left) = stacked::worn(given, &bar)?.unzip();
    let choices =
        stacked::table(&bar, wear, &blocks, (4, 4), Angle::ZERO, says::SINE_YOURS).map_err(at)?;
    let mut notes = Vec::from_iter(choices.is_none().then(|| says::SINE_NONE.to_owned()));
    notes.extend(says::steep(angle));
    let micron = Fraction::new(1, 1000).unwrap_or(Fraction::ZERO);
    let mut figures = vec![figure("stack", says::SINE_STACK, Value::About(lift))];
    figures.extend(left);
    let moved = stacked::moved(&bar, lift, micron);
    figures.push(figure("micron", says::SINE_MICRON, Value::Text(moved)));
    Ok(Answer {
        title: says::told(&[&angle_text(angle), " on ", &says::short(span), " mm"], lift),
        figures,
        tables: choices.into_iter().collect(),
        working: tilt::working(&bar, lift),
        notes,
        drawing: drawing(&bar, lift),
    })
}

fn drawing(bar: &Tilt, lift: Approx) -> Markup {
    let turns = float::of(bar.angle.turns());
    let long = float::of(bar.span.mm());
    let roller = long * 0.06;
    let low = (0.0, roller);
    let high = {
        let (x, y) = round((0.0, 0.0), long, turns);
        (x, y + roller)
    };
    let up = |(x, y): (f64, f64), by: f64| {
        let (dx, dy) = round((0.0, 0.0), by, turns + 0.25);
        (x + dx, y + dy)
    };
    let on = |(x, y): (f64, f64), by: f64| {
        let (dx, dy) = round((0.0, 0.0), by, turns);
        (x + dx, y + dy)
    };
    let (a, b) = (on(low, -1.6 * roller), on(high, 1.6 * roller));
    Sketch::default()
        .line("t", &[(-long * 0.1, 0.0), (high.0 + long * 0.25, 0.0)])
        .closed("o m", &[up(a, roller), up(b, roller), up(b, 3.0 * roller), up(a, 3.0 * roller)])
        .circle("o b", low, roller)
        .circle("o b", high, roller)
        .rect("a w", (high.0 - 1.2 * roller, 0.0), (high.0 + 1.2 * roller, lift.value))
        .size(
            (high.0 + 1.2 * roller, lift.value),
            (high.0 + 1.2 * roller, 0.0),
            20.0,
            &(crate::words::about(lift.value, 3)),
        )
        .size(up(low, 3.0 * roller), up(high, 3.0 * roller), 20.0, &(says::short(bar.span) + " mm"))
        .markup(&says::told(
            &[says::SINE, ", ", &angle_text(bar.angle), " on ", &says::short(bar.span), " mm"],
            lift,
        ))
}
