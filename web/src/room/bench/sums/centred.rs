//! A slot, saw cut or flat on centre by touching on.
use super::dials;
use crate::draw::sketch::{Point, Sketch};
use crate::owned::lists::Stock;
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
        Entry::choice("from", says::FROM, &[("top", says::ABOVE), ("side", says::BESIDE)]),
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
    let side = given.choice("from", &[("top", false), ("side", true)])?;
    let (to_centre, to_depth) = (Value::Length(found.across), Value::Length(found.down));
    let cross = |by: &Value| dials::reads(given, Stock::MillCross, ("dial", says::CROSS_READS), by);
    let mut figures = Vec::new();
    if side {
        figures.push(figure("across", says::TOP_TO_CENTRE, to_centre.clone()));
        figures.extend(dials::vertical(given, &to_centre));
        figures.push(figure("down", says::SIDE_TO_DEPTH, to_depth.clone()));
        figures.extend(cross(&to_depth));
    } else {
        figures.push(figure("across", says::ACROSS, to_centre.clone()));
        figures.extend(cross(&to_centre));
        figures.push(figure("down", says::DOWN, to_depth.clone()));
        figures.extend(dials::vertical(given, &to_depth));
    }
    figures.push(figure("at_sides", says::AT_SIDES, Value::About(found.at_sides)));
    figures.push(figure("left", says::LEFT_BELOW, Value::Length(found.left)));
    let [work, cutter, paper] = [touch.work, touch.cutter, touch.paper].map(says::short);
    let (way, note) = if side {
        (" mm from the top", says::BESIDE_NOTE)
    } else {
        (" mm across", says::CENTRED_NOTE)
    };
    Ok(Answer {
        title: [&*cutter, " mm in ", &*work, " mm: ", &says::short(found.across), way].concat(),
        figures,
        tables: Vec::new(),
        working: vec![
            [
                "To the centre = (",
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
                "To full depth = ",
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
        notes: vec![note.to_owned()],
        drawing: drawing(&touch, &found, side),
    })
}

fn drawing(touch: &Touch, found: &Moves, side: bool) -> Markup {
    let [work, cutter, depth, across] =
        [touch.work, touch.cutter, touch.depth, found.across].map(says::mm);
    let (radius, half) = (work / 2.0, cutter / 2.0);
    let floor = radius - depth;
    let rise = radius - found.arc.value;
    // From the side all of it lies a quarter turn on.
    let at = |(x, y): Point| if side { (y, -x) } else { (x, y) };
    let to = radius + depth * 0.2;
    let sides = [(-half, rise), (-half, floor), (half, floor), (half, rise)].map(at);
    let name = if side { says::TOP_TO_CENTRE } else { says::ACROSS };
    Sketch::default()
        .circle("o m", (0.0, 0.0), radius)
        .rect("b", at((-half, floor)), at((half, to)))
        .line("o", &sides)
        .rect("a w", at((-across - half, floor)), at((-across + half, to)))
        .line("t", &[at((0.0, radius * 1.3)), at((0.0, -radius * 1.1))])
        .size(at((0.0, -radius)), at((-across, -radius)), 22.0, &says::short(found.across))
        .size(at((radius, radius)), at((radius, floor)), 18.0, &says::short(touch.depth))
        .markup(&[says::CENTRED, ". ", name, ": ", &says::short(found.across), " mm"].concat())
}
