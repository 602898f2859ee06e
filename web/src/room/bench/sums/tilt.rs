//! Tilt by leaves, shims or blocks under one edge.
use crate::draw::sketch::{Sketch, round};
use crate::owned::lists::{self, Stock};
use crate::room::bench::sum::{Answer, Entry, Given, Group, Sum, Table, Value, about, figure};
use crate::room::steps::Wrong;
use crate::words::bench::tilt as says;
use handturn::bench::tilt::{Choice, Rule, Tilt, angle};
use handturn::bounds::Bound;
use handturn::measure::Length;
use handturn::number::{Approx, Fraction, float};
use handturn::{Cause, Error, Field as Of};
use maud::Markup;

pub(super) const SUM: Sum = Sum {
    key: "tilt",
    group: Group::Mill,
    name: says::NAME,
    about: says::ABOUT,
    also: says::ALSO,
    icon: "M2 20.5h20M3.5 16L19 12.6 17.6 6.2 2.1 9.6zM19 12.6v6M15.5 18.6h7",
    entries: &[
        Entry::text("angle", says::ANGLE, "0° 45′"),
        Entry::text("span", says::SPAN, "40"),
        Entry::choice(
            "rule",
            says::RULE,
            &[("sine", says::ALONG_WORK), ("tangent", says::ALONG_BED)],
        ),
        Entry::number("most", says::MOST, "2"),
    ],
    answer,
    source: says::SOURCE,
    care: says::CARE,
};

const MOST: Bound = Bound { field: Of::Pieces, least: 1, greatest: 4 };

fn answer(given: &Given) -> Result<Answer, Wrong> {
    let rule = given.choice("rule", &[("sine", Rule::Sine), ("tangent", Rule::Tangent)])?;
    let tilt = Tilt {
        angle: given.angle("angle", Of::Angle)?,
        span: given.length("span", Of::Length)?,
        rule,
    };
    let most = given.count("most", MOST)?;
    let at = |error: Error| {
        about(error, &[(Of::Angle, "angle"), (Of::Pieces, "most"), (Of::Length, "span")])
    };
    let lift = tilt.lift().map_err(at)?;
    let owned = leaves(given);
    let choices = match tilt.choices(&owned, most as u8) {
        Ok(choices) => choices.iter().map(row).collect(),
        Err(Error { cause: Cause::Empty, .. }) => Vec::new(),
        Err(error) => return Err(at(error)),
    };
    let says_rule = if rule == Rule::Sine { says::SINE_SAYS } else { says::TANGENT_SAYS };
    let mut notes = vec![says_rule.to_owned()];
    if choices.is_empty() {
        notes.push(says::NO_LEAVES.to_owned());
    }
    let figures = vec![
        figure("lift", says::LIFT, Value::About(lift)),
        figure("oil", says::OIL, Value::Text(oil(&tilt, lift))),
    ];
    let tables = Vec::from_iter((!choices.is_empty()).then_some(Table {
        key: "choices",
        caption: says::FROM_YOURS,
        head: &[
            ("pieces", says::LEAVES),
            ("sum", says::COMES_TO),
            ("angle", says::GIVES),
            ("off", says::OFF),
        ],
        rows: choices,
    }));
    Ok(Answer {
        title: says::title(&tilt, lift),
        figures,
        tables,
        working: says::working(&tilt, lift),
        notes,
        drawing: drawing(&tilt, lift),
    })
}

/// Leaves owned.
fn leaves(given: &Given) -> Vec<Length> {
    lists::lengths(given.fields, Stock::Feelers)
}

fn row(choice: &Choice) -> Vec<Value> {
    vec![
        Value::Text(says::pieces(&choice.stack)),
        Value::Length(choice.stack.sum),
        Value::Degrees(choice.degrees),
        Value::Text(says::off(choice)),
    ]
}

/// What a trace of oil under the edge does to the angle.
fn oil(tilt: &Tilt, lift: Approx) -> String {
    let oil = Fraction::new(1, 200).unwrap_or(Fraction::ZERO);
    let thicker = float::nearest(lift.value, 1_000_000).and_then(|lift| lift.checked_add(oil).ok());
    let with = thicker.and_then(|lift| angle(tilt.span, Length::from_mm(lift), tilt.rule).ok());
    let degrees = tilt.angle.degrees().map_or(0.0, float::of);
    with.map_or_else(String::new, |with| says::in_seconds(with.value - degrees))
}

fn drawing(tilt: &Tilt, lift: Approx) -> Markup {
    let turns = float::of(tilt.angle.turns());
    let span = float::of(tilt.span.mm());
    let (long, high) = match tilt.rule {
        Rule::Sine => (span, lift.value),
        Rule::Tangent => (span / float::cos_turns(turns), lift.value),
    };
    let edge = round((0.0, 0.0), long, turns);
    let top = |(x, y): (f64, f64)| {
        let (dx, dy) = round((0.0, 0.0), long * 0.42, turns + 0.25);
        (x + dx, y + dy)
    };
    let foot = (edge.0, 0.0);
    Sketch::default()
        .line("t", &[(-long * 0.08, 0.0), (edge.0 + long * 0.12, 0.0)])
        .closed("o m", &[(0.0, 0.0), edge, top(edge), top((0.0, 0.0))])
        .closed("a w", &[foot, edge, (edge.0 + long * 0.1, high), (edge.0 + long * 0.1, 0.0)])
        .size(edge, (0.0, 0.0), 26.0, &(crate::words::decimal(tilt.span.mm(), 3) + " mm"))
        .label(
            "n",
            round((0.0, 0.0), long * 0.5, turns * 0.5 + 0.05),
            &crate::words::angle_text(tilt.angle),
        )
        .markup(&says::picture(tilt, lift))
}
