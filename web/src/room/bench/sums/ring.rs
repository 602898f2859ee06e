//! The holes of a ring by the mill's dials, from two edges.
use crate::draw::sketch::Sketch;
use crate::owned::lists::{self, Stock};
use crate::room::bench::sum::{Answer, Entry, Given, Group, Sum, Table, Value, about, figure};
use crate::room::steps::Wrong;
use crate::words::bench::mill as says;
use handturn::bounds::Bound;
use handturn::dial::width::{Across, division};
use handturn::head::Sense;
use handturn::plate::coordinates::{Hole, Layout};
use handturn::{Cause, Error, Field as Of};
use maud::Markup;

pub(super) const SUM: Sum = Sum {
    key: "ring",
    group: Group::Mill,
    name: says::RING,
    about: says::RING_ABOUT,
    also: says::RING_ALSO,
    icon: "M12 3.2a1.8 1.8 0 1 0 .01 0M4.4 15.8a1.8 1.8 0 1 0 .01 0M19.6 15.8a1.8 1.8 0 1 0 .01 0M6 6.6a8.4 8.4 0 0 1 2.4-2M15.6 4.6a8.4 8.4 0 0 1 4.6 7.6M16.6 20a8.4 8.4 0 0 1-9.2 0M3.8 12.2a8.4 8.4 0 0 1 1-3.6",
    entries: &[
        Entry::number("holes", says::HOLES, "12"),
        Entry::text("diameter", says::DIAMETER, "80"),
        Entry::text("first", says::FIRST, "90"),
        Entry::choice(
            "sense",
            says::SENSE,
            &[("left", says::ANTICLOCKWISE), ("right", says::CLOCKWISE)],
        ),
        Entry::text("x", says::FROM_LEFT, "50"),
        Entry::text("y", says::FROM_FRONT, "50"),
        Entry::text("finder", says::FINDER, "10"),
    ],
    answer,
    source: says::COMMON,
    care: says::RING_CARE,
};

/// More holes are for Divide's make-the-plate, which lists any number.
const HOLES: Bound = Bound { field: Of::Holes, least: 2, greatest: 400 };

fn answer(given: &Given) -> Result<Answer, Wrong> {
    let holes = given.count("holes", HOLES)?;
    let layout = Layout {
        holes,
        diameter: given.length("diameter", Of::Ring)?,
        first: given.angle("first", Of::Angle)?,
        sense: given
            .choice("sense", &[("left", Sense::Anticlockwise), ("right", Sense::Clockwise)])?,
        centre: [given.length("x", Of::Length)?, given.length("y", Of::Depth)?],
    };
    let asked = layout;
    let layout = layout.touched(given.length("finder", Of::Pin)?).map_err(|e| ("finder", e))?;
    let places = [(Of::Ring, "diameter"), (Of::Angle, "first"), (Of::Table, ""), (Of::Length, "x")];
    let at = |error: Error| about(error, &places);
    let none = || ("", Error::new(Of::Table, Cause::Empty));
    let [x, y] =
        [Stock::MillTable, Stock::MillCross].map(|stock| lists::screw(given.fields, stock));
    let screws = [x.ok_or_else(none)?.0, y.ok_or_else(none)?.0];
    let found: Vec<Hole> =
        (0..holes).map(|k| layout.hole(&screws, k)).collect::<Result<_, _>>().map_err(at)?;
    let worst = layout.worst(&screws).map_err(at)?;
    let chord = division(holes, layout.diameter, Across::Chord).map_err(at)?;
    let diameter = says::short(layout.diameter);
    let title = [&*holes.to_string(), " holes on ", &diameter, " mm"].concat();
    let row = |(k, hole): (usize, &Hole)| {
        let [x, y] = hole.centre.from_edges;
        let [x_dial, y_dial] = hole.dial.each_ref().map(|reading| Value::Text(says::dial(reading)));
        vec![Value::Count(k as i64 + 1), Value::About(x), x_dial, Value::About(y), y_dial]
    };
    Ok(Answer {
        figures: vec![
            figure("chord", says::CHORD, Value::About(chord)),
            figure("worst_out", says::WORST_HOLE, Value::About(worst.outwards)),
        ],
        tables: vec![Table {
            key: "holes",
            caption: says::HOLE_TABLE,
            head: &[("hole", says::HOLE), ("x", says::X_AND_DIAL), ("x_dial", ""), ("y", says::Y_AND_DIAL), ("y_dial", "")],
            rows: found.iter().enumerate().map(row).collect(),
        }],
        working: vec![
            says::line("Hole to hole", &["D × sin(180° ÷ N) = ", &diameter, " × sin(180° ÷ ", &holes.to_string(), ")"], chord.value),
            "X = centre + R × cos, Y = centre + R × sin of each hole’s angle, half the finder added".to_owned(),
        ],
        notes: vec![says::RING_NOTE.to_owned()],
        drawing: drawing(&asked, &found, &title),
        title,
    })
}

fn drawing(layout: &Layout, found: &[Hole], title: &str) -> Markup {
    let radius = says::mm(layout.diameter) / 2.0;
    let [x, y] = layout.centre.map(says::mm);
    // Close holes are drawn smaller, so that each stands apart.
    let dot = (1.2 / found.len() as f64).min(0.05) * radius;
    let mut sketch = Sketch::default()
        .line("o", &[(0.0, y + radius * 1.2), (0.0, 0.0), (x + radius * 1.2, 0.0)])
        .circle("t", (x, y), radius)
        .size((x, 0.0), (0.0, 0.0), 16.0, &says::short(layout.centre[0]))
        .size((0.0, 0.0), (0.0, y), 16.0, &says::short(layout.centre[1]));
    for (k, hole) in found.iter().enumerate() {
        let [right, up] = hole.centre.from_centre.map(|place| place.value);
        sketch = sketch.circle(if k == 0 { "a w" } else { "o" }, (x + right, y + up), dot);
    }
    sketch.label("n", (x, y), title).markup(title)
}
