//! A dovetail over or between rollers.
use crate::draw::sketch::Sketch;
use crate::room::bench::sum::{Answer, Entry, Given, Group, Sum, Value, about, figure};
use crate::room::steps::Wrong;
use crate::words::bench::mill as says;
use handturn::bench::dovetail::{Dovetail, Measured, Part, measure};
use handturn::number::float;
use handturn::{Error, Field as Of};
use maud::Markup;

pub(super) const SUM: Sum = Sum {
    key: "dovetail",
    group: Group::Mill,
    name: says::TAIL,
    about: says::TAIL_ABOUT,
    also: says::TAIL_ALSO,
    icon: "M2 18h3.4L9 8H5V4h14v4h-4l3.6 10H22",
    entries: &[
        Entry::choice("part", says::PART, &[("tail", says::OVER), ("groove", says::BETWEEN)]),
        Entry::text("angle", says::FLANKS, "60"),
        Entry::text("wide", says::WIDE, "50"),
        Entry::text("height", says::HIGH, "10"),
        Entry::text("roller", says::ROLLER, "8"),
    ],
    answer,
    source: says::TAIL_SOURCE,
    care: says::TAIL_CARE,
};

fn answer(given: &Given) -> Result<Answer, Wrong> {
    let ask = Dovetail {
        part: given.choice("part", &[("tail", Part::Tail), ("groove", Part::Groove)])?,
        angle: given.angle("angle", Of::Angle)?,
        wide: given.length("wide", Of::Length)?,
        height: given.length("height", Of::Depth)?,
        roller: given.length("roller", Of::Pin)?,
    };
    let places =
        [(Of::Angle, "angle"), (Of::Depth, "height"), (Of::Pin, "roller"), (Of::Length, "wide")];
    let found = measure(&ask).map_err(|error: Error| about(error, &places))?;
    let half = float::of(ask.angle.turns()) / 2.0;
    let tangent = says::ratio(float::tan_turns(half));
    let reach =
        ["d × (1 + 1 ÷ tan(θ ÷ 2)) = ", &*says::short(ask.roller), " × (1 + 1 ÷ ", &tangent, ")"]
            .concat();
    let reading = match ask.part {
        Part::Tail => says::line("Over", &["narrow + ", &reach], found.reading.value),
        Part::Groove => says::line("Between", &["wide − ", &reach], found.reading.value),
    };
    Ok(Answer {
        title: says::told(
            &[&says::short(ask.wide), " mm, rollers ", &says::short(ask.roller)],
            found.reading,
        ),
        figures: vec![
            figure("reading", says::READS, Value::About(found.reading)),
            figure("narrow", says::NARROW, Value::About(found.narrow)),
            figure("touches", says::TOUCHES, Value::About(found.touches)),
        ],
        tables: Vec::new(),
        working: vec![
            says::line("Narrow", &["wide − 2 × height ÷ tan θ"], found.narrow.value),
            reading,
        ],
        notes: Vec::new(),
        drawing: drawing(&ask, &found),
    })
}

/// The tail stands on its narrow side; the groove opens at its narrow side, upwards.
fn drawing(ask: &Dovetail, found: &Measured) -> Markup {
    let [wide, high, roller] = [ask.wide, ask.height, ask.roller].map(says::mm);
    let (half, narrow, radius) = (wide / 2.0, found.narrow.value / 2.0, roller / 2.0);
    let reading = found.reading.value / 2.0;
    let base = wide * 0.2;
    let name = says::told(&[says::TAIL, ", ", &says::short(ask.roller), " mm"], found.reading);
    let sketch = Sketch::default();
    let sketch = match ask.part {
        Part::Tail => sketch
            .closed(
                "o m",
                &[
                    (-half - base, -base),
                    (half + base, -base),
                    (half + base, 0.0),
                    (narrow, 0.0),
                    (half, high),
                    (-half, high),
                    (-narrow, 0.0),
                    (-half - base, 0.0),
                ],
            )
            .circle("a w", (-reading + radius, radius), radius)
            .circle("a w", (reading - radius, radius), radius),
        Part::Groove => sketch
            .closed(
                "o m",
                &[
                    (-half - base, -base),
                    (half + base, -base),
                    (half + base, high),
                    (narrow, high),
                    (half, 0.0),
                    (-half, 0.0),
                    (-narrow, high),
                    (-half - base, high),
                ],
            )
            .circle("a w", (-reading - radius, radius), radius)
            .circle("a w", (reading + radius, radius), radius),
    };
    sketch
        .size(
            (reading, -base),
            (-reading, -base),
            20.0,
            &crate::words::about(found.reading.value, 3),
        )
        .markup(&name)
}
