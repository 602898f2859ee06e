//! Across flats, across corners, and the round stock for them.
use crate::draw::sketch::{Sketch, round};
use crate::room::bench::sum::{Answer, Entry, Given, Group, Sum, Value, about, figure};
use crate::room::steps::Wrong;
use crate::words::bench::mill as says;
use handturn::bounds::Bound;
use handturn::gear::flats::{Flats, flats, largest};
use handturn::measure::Length;
use handturn::number::float;
use handturn::{Error, Field as Of};
use maud::Markup;

pub(super) const SUM: Sum = Sum {
    key: "corners",
    group: Group::Mill,
    name: says::CORNERS,
    about: says::CORNERS_ABOUT,
    also: says::CORNERS_ALSO,
    icon: "M12 3l7.8 4.5v9L12 21l-7.8-4.5v-9zM12 3v18",
    entries: &[
        Entry::number("sides", says::SIDES, "6"),
        Entry::choice(
            "known",
            says::KNOWN,
            &[("flats", says::BY_FLATS), ("stock", says::BY_STOCK)],
        ),
        Entry::text("size", says::SIZE, "10"),
    ],
    answer,
    source: says::PLANE,
    care: says::CORNERS_CARE,
};

const SIDES: Bound = Bound { field: Of::Sides, least: 3, greatest: 100 };

fn answer(given: &Given) -> Result<Answer, Wrong> {
    let sides = given.count("sides", SIDES)?;
    let size = given.length("size", Of::Length)?;
    let at = |error: Error| about(error, &[(Of::Sides, "sides"), (Of::Length, "size")]);
    let turns = 0.5 / f64::from(sides);
    let cosine = says::ratio(float::cos_turns(turns));
    let wide = says::short(size);
    let (figures, line, across) = if given.get("known") == "stock" {
        let across = largest(sides, size).map_err(at)?;
        let line = says::line(
            "Across flats",
            &["stock × cos(180° ÷ N) = ", &wide, " × ", &cosine],
            across.value,
        );
        (vec![figure("flats", says::FLATS, Value::About(across))], line, across)
    } else {
        let found = flats(&Flats { sides, across: size, stock: None, cutter: None }).map_err(at)?;
        let Some(sharp) = found.sharp else {
            return Err(("sides", Error::new(Of::Sides, handturn::Cause::Conflict)));
        };
        let line = says::line(
            "Round stock",
            &["flats ÷ cos(180° ÷ N) = ", &wide, " ÷ ", &cosine],
            sharp.stock.value,
        );
        let figures = vec![
            figure("stock", says::STOCK, Value::About(sharp.stock)),
            figure("width", says::FLAT_WIDE, Value::About(sharp.width)),
            figure("depth", says::FLAT_DEEP, Value::About(sharp.depth)),
        ];
        (figures, line, handturn::number::Approx { value: says::mm(size), bound: 0.0 })
    };
    let first = match figures.first() {
        Some(sum) => sum.value.clone(),
        None => Value::Count(0),
    };
    let comes = if let Value::About(comes) = first { comes } else { across };
    let title = says::told(&[&sides.to_string(), " flats, ", &wide, " mm"], comes);
    Ok(Answer {
        figures,
        tables: Vec::new(),
        working: vec![line],
        notes: vec![says::CORNERS_NOTE.to_owned()],
        drawing: drawing(sides, across.value, size, &title),
        title,
    })
}

fn drawing(sides: u32, across: f64, size: Length, title: &str) -> Markup {
    let part = 1.0 / f64::from(sides);
    let corner = across / 2.0 / float::cos_turns(part / 2.0);
    let corners: Vec<(f64, f64)> =
        (0..sides).map(|k| round((0.0, 0.0), corner, (f64::from(k) + 0.5) * part + 0.25)).collect();
    Sketch::default()
        .circle("t", (0.0, 0.0), corner)
        .closed("o m", &corners)
        .size((-corner, across / 2.0), (-corner, -across / 2.0), -20.0, &says::short(size))
        .markup(title)
}
