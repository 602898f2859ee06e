//! An angle by a disk and a square whose head slides on its blade.
use crate::draw::sketch::{Sketch, round};
use crate::room::bench::sum::{Answer, Entry, Given, Group, Sum, Value, about, figure};
use crate::room::steps::Wrong;
use crate::words::bench::turning::degrees_text;
use crate::words::bench::{mill as says, tilt};
use handturn::bench::square::{Ask, Square, square};
use handturn::measure::Length;
use handturn::{Error, Field as Of};
use maud::Markup;

pub(super) const SUM: Sum = Sum {
    key: "square",
    group: Group::Mill,
    name: says::SQUARE,
    about: says::SQUARE_ABOUT,
    also: says::SQUARE_ALSO,
    icon: "M2 20.5h20M3 20L21 9M18 3.5l5 8.2M15.2 12.7a3.9 3.9 0 1 0 .1 0",
    entries: &[
        Entry::choice(
            "kind",
            says::SQUARE_KIND,
            &[("head", says::HEAD_WANTED), ("angle", says::ANGLE_WANTED)],
        ),
        Entry::text("disk", says::DISK, "25"),
        Entry::text("angle", says::BLADE_ANGLE, "15 10").when("kind", &["head"]),
        Entry::text("head", says::HEAD_AT, "100").when("kind", &["angle"]),
    ],
    answer,
    source: says::SQUARE_SOURCE,
    care: says::SQUARE_CARE,
};

fn answer(given: &Given) -> Result<Answer, Wrong> {
    let disk = given.length("disk", Of::Diameter)?;
    let by_angle = given.choice("kind", &[("head", true), ("angle", false)])?;
    let ask = if by_angle {
        Ask::Angle { disk, angle: given.angle("angle", Of::Angle)? }
    } else {
        Ask::Head { disk, head: given.length("head", Of::Length)? }
    };
    let places = [(Of::Diameter, "disk"), (Of::Angle, "angle"), (Of::Length, "head")];
    let found = square(&ask).map_err(|error: Error| about(error, &places))?;
    let head = figure("head", says::SET_HEAD, Value::About(found.head));
    let angle = figure("angle", says::BLADE_AT, Value::Degrees(found.angle));
    let mut figures = if by_angle { vec![head, angle] } else { vec![angle, head] };
    figures.extend([
        figure("touches", says::TOUCHES_AT, Value::About(found.touches)),
        figure("out", says::HEAD_OUT, Value::Text(tilt::in_seconds(found.per_mm.value / 10.0))),
    ]);
    let degrees = degrees_text(found.angle.value);
    let (radius, half) =
        (crate::words::about(says::mm(disk) / 2.0, 4), degrees_text(found.angle.value / 2.0));
    let title = says::told(&[&degrees, " by a disk of ", &says::short(disk), " mm"], found.head);
    Ok(Answer {
        figures,
        tables: Vec::new(),
        working: vec![says::line(
            "Head = r × cot(a ÷ 2) + r",
            &[&radius, " × cot ", &half, " + ", &radius],
            found.head.value,
        )],
        notes: vec![says::SQUARE_NOTE.to_owned()],
        drawing: drawing(disk, &found, &title),
        title,
    })
}

fn drawing(disk: Length, found: &Square, title: &str) -> Markup {
    let radius = says::mm(disk) / 2.0;
    let (turns, head) = (found.angle.value / 360.0, found.head.value);
    // Along the blade from its end, and square off it away from the disk.
    let at = |along: f64, off: f64| {
        let end = round((0.0, 0.0), along, turns);
        round(end, off, turns + 0.25)
    };
    let thick = radius * 0.35;
    Sketch::default()
        .line("o", &[(-radius, 0.0), (head + radius, 0.0)])
        .closed(
            "o m",
            &[at(0.0, 0.0), at(head + radius, 0.0), at(head + radius, thick), at(0.0, thick)],
        )
        .closed(
            "o m",
            &[
                at(head, 0.0),
                at(head, -1.3 * radius),
                at(head + 2.0 * thick, -1.3 * radius),
                at(head + 2.0 * thick, 0.0),
            ],
        )
        .circle("o b", (found.touches.value, radius), radius)
        .size(at(0.0, thick), at(head, thick), 16.0, &crate::words::about(head, 3))
        .label("n", (found.touches.value, radius), &says::short(disk))
        .markup(title)
}
