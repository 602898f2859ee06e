//! Tilt by leaves, shims or blocks under one edge.
use super::stacked;
use crate::draw::sketch::{Sketch, round};
use crate::owned::lists::{self, Stock};
use crate::room::bench::sum::{Answer, Entry, Given, Group, Sum, Value, about, figure};
use crate::room::steps::Wrong;
use crate::words::bench::tilt as says;
use handturn::bench::tilt::{Rule, Tilt};
use handturn::number::{Approx, Fraction, float};
use handturn::{Error, Field as Of};
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
        Entry::text("limit", says::LIMIT, "0° 1′"),
        stacked::WEAR,
    ],
    answer,
    source: says::SOURCE,
    care: says::CARE,
};

fn answer(given: &Given) -> Result<Answer, Wrong> {
    let rule = given.choice("rule", &[("sine", Rule::Sine), ("tangent", Rule::Tangent)])?;
    let tilt = Tilt {
        angle: given.angle("angle", Of::Angle)?,
        span: given.length("span", Of::Length)?,
        rule,
    };
    let limit = given.angle("limit", Of::Angle)?;
    let at = |error: Error| about(error, &[(Of::Angle, "angle"), (Of::Length, "span")]);
    let lift = tilt.lift().map_err(at)?;
    let owned = lists::lengths(given.fields, Stock::Feelers);
    let (wear, left) = stacked::worn(given, &tilt)?.unzip();
    let choices =
        stacked::table(&tilt, wear, &owned, (2, 3), limit, says::FROM_YOURS).map_err(at)?;
    let says_rule = if rule == Rule::Sine { says::SINE_SAYS } else { says::TANGENT_SAYS };
    let mut notes = vec![says_rule.to_owned()];
    if choices.is_none() {
        notes.push(says::NO_LEAVES.to_owned());
    }
    let oil = Fraction::new(1, 200).unwrap_or(Fraction::ZERO);
    let mut figures = vec![figure("lift", says::LIFT, Value::About(lift))];
    figures.extend(left);
    figures.push(figure("oil", says::OIL, Value::Text(stacked::moved(&tilt, lift, oil))));
    Ok(Answer {
        title: says::title(&tilt, lift),
        figures,
        tables: choices.into_iter().collect(),
        working: says::working(&tilt, lift),
        notes,
        drawing: drawing(&tilt, lift),
    })
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
