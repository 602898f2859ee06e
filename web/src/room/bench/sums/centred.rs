//! A slot, saw cut or flat on centre by touching on.
use crate::draw::sketch::Sketch;
use crate::owned::lists::{self, Stock};
use crate::room::bench::sum::{Answer, Entry, Given, Group, Sum, Value, about, figure};
use crate::room::steps::Wrong;
use crate::words::bench::mill as says;
use handturn::bench::centre::{Moves, Touch, moves};
use handturn::{Error, Field as Of};
use maud::Markup;

pub(super) const SUM: Sum = Sum {
    key: "centred",
    group: Group::Mill,
    name: says::CENTRED,
    about: says::CENTRED_ABOUT,
    also: says::CENTRED_ALSO,
    icon: "M10 5.3A8 8 0 1 0 14 5.3V12h-4zM10 2v3M14 2v3",
    entries: &[
        Entry::text("work", says::WORK, "20"),
        Entry::text("cutter", says::CUTTER, "1"),
        Entry::text("depth", says::DEEP, "5"),
        Entry::text("paper", says::PAPER, "0.05"),
    ],
    answer,
    source: says::COMMON,
    care: says::CENTRED_CARE,
};

fn answer(given: &Given) -> Result<Answer, Wrong> {
    let touch = Touch {
        work: given.length("work", Of::Blank)?,
        cutter: given.length("cutter", Of::Tool)?,
        paper: given.length("paper", Of::Length)?,
        depth: given.length("depth", Of::Depth)?,
    };
    let places =
        [(Of::Blank, "work"), (Of::Tool, "cutter"), (Of::Length, "paper"), (Of::Depth, "depth")];
    let at = |error: Error| about(error, &places);
    let found = moves(&touch).map_err(at)?;
    let mut figures = vec![
        figure("across", says::ACROSS, Value::Length(found.across)),
        figure("down", says::DOWN, Value::Length(found.down)),
        figure("at_sides", says::AT_SIDES, Value::About(found.at_sides)),
        figure("left", says::LEFT_BELOW, Value::Length(found.left)),
    ];
    let screw = lists::screw(given.fields, Stock::MillCross);
    if let Some(reading) = screw.and_then(|(screw, _)| screw.after(found.across).ok()) {
        figures.push(figure(
            "dial",
            says::ACROSS_READS,
            Value::Text(says::turns_and_marks(&reading)),
        ));
    }
    let [work, cutter, paper] = [touch.work, touch.cutter, touch.paper].map(says::short);
    Ok(Answer {
        title: [&*cutter, " mm in ", &*work, " mm: ", &says::short(found.across), " mm across"]
            .concat(),
        figures,
        tables: Vec::new(),
        working: vec![
            [
                "Across = (",
                &*work,
                " + ",
                &cutter,
                ") ÷ 2 + ",
                &paper,
                " = ",
                &says::short(found.across),
                " mm",
            ]
            .concat(),
            [
                "Down = ",
                &*says::short(touch.depth),
                " + ",
                &paper,
                " = ",
                &says::short(found.down),
                " mm",
            ]
            .concat(),
            [
                "Round above the sides = R − √(R² − w² ÷ 4) = ",
                &*crate::words::about(found.arc.value, 4),
                " mm",
            ]
            .concat(),
        ],
        notes: vec![says::CENTRED_NOTE.to_owned()],
        drawing: drawing(&touch, &found),
    })
}

fn drawing(touch: &Touch, found: &Moves) -> Markup {
    let [work, cutter, depth, across] =
        [touch.work, touch.cutter, touch.depth, found.across].map(says::mm);
    let (radius, half) = (work / 2.0, cutter / 2.0);
    let floor = radius - depth;
    let rise = radius - found.arc.value;
    Sketch::default()
        .circle("o m", (0.0, 0.0), radius)
        .rect("b", (-half, floor), (half, radius + depth * 0.2))
        .line("o", &[(-half, rise), (-half, floor), (half, floor), (half, rise)])
        .rect("a w", (-across - half, floor), (-across + half, radius + depth * 0.2))
        .line("t", &[(0.0, radius * 1.3), (0.0, -radius * 1.1)])
        .size((0.0, -radius), (-across, -radius), 22.0, &says::short(found.across))
        .size((radius, radius), (radius, floor), 18.0, &says::short(touch.depth))
        .markup(
            &[says::CENTRED, ": ", &says::short(found.across), " mm from the side to the centre"]
                .concat(),
        )
}
