//! A counterbore and the walls it leaves.
use super::dials;
use crate::draw::sketch::Sketch;
use crate::owned::lists::Stock;
use crate::room::bench::sum::{Answer, Entry, Given, Group, Sum, Value, about, figure};
use crate::room::steps::Wrong;
use crate::words::bench::{counterbore as says, mill};
use crate::words::decimal;
use handturn::Field as Of;
use handturn::bench::counterbore::{Counterbore, Walls, largest, walls};
use handturn::measure::Length;
use handturn::number::{Fraction, float};
use maud::Markup;

pub(super) const SUM: Sum = Sum {
    key: "counterbore",
    group: Group::Fit,
    name: says::NAME,
    about: says::ABOUT,
    also: says::ALSO,
    icon: "M2 4h4v9h3v7H2zM22 4h-4v9h-3v7h7z",
    entries: &[
        Entry::text("bore", says::BORE, "6.6"),
        Entry::text("counterbore", says::COUNTERBORE, "11"),
        Entry::text("outside", says::OUTSIDE, "20"),
        Entry::text("off", says::OFF, "0.2"),
        Entry::text("depth", says::DEPTH, "6.5"),
        Entry::text("length", says::LENGTH, "15"),
        Entry::text("wanted", says::WANTED, ""),
    ],
    answer,
    source: says::SOURCE,
    care: says::CARE,
};

fn answer(given: &Given) -> Result<Answer, Wrong> {
    let off = given.length_if("off", Of::Wall)?.unwrap_or(Length::from_mm(Fraction::ZERO));
    let ask = Counterbore {
        bore: given.length("bore", Of::Diameter)?,
        counterbore: given.length("counterbore", Of::Counterbore)?,
        outside: given.length("outside", Of::Blank)?,
        off,
        depth: given.length("depth", Of::Depth)?,
        length: given.length("length", Of::Length)?,
    };
    let places = [
        (Of::Diameter, "bore"),
        (Of::Counterbore, "counterbore"),
        (Of::Blank, "outside"),
        (Of::Depth, "depth"),
        (Of::Length, "length"),
        (Of::Wall, "off"),
    ];
    let found = walls(&ask).map_err(|e| about(e, &places))?;
    let mut figures = vec![
        figure("thinnest", says::THINNEST, Value::Length(found.thinnest)),
        figure("wall", says::WALL, Value::Length(found.wall)),
        figure("shoulder", says::SHOULDER, Value::Length(found.shoulder)),
        figure("floor", says::FLOOR, Value::Length(found.floor)),
        figure("beside_bore", says::BESIDE, Value::Length(found.beside_bore)),
    ];
    if let Some(wanted) = given.length_if("wanted", Of::Wall)? {
        let most = largest(&ask, wanted).map_err(|e| ("wanted", e))?;
        figures.push(figure("largest", says::LARGEST, Value::Length(most)));
    }
    let deep = Value::Length(ask.depth);
    figures.extend(dials::vertical(given, &deep));
    let straight = ("top_slide_dial", mill::TOP_SLIDE_STRAIGHT);
    figures.extend(dials::reads(given, Stock::TopSlide, straight, &deep));
    let title = says::title(&ask, &found);
    Ok(Answer {
        figures,
        tables: Vec::new(),
        working: says::working(&ask, &found),
        notes: vec![says::ROUGHLY.to_owned()],
        drawing: drawing(&ask, &found, &says::picture(&title)),
        title,
    })
}

/// The part cut through its axis.
fn drawing(ask: &Counterbore, walls: &Walls, name: &str) -> Markup {
    let of = |length: Length| float::of(length.mm());
    let [bore, wide, outside] = [ask.bore, ask.counterbore, ask.outside].map(|d| of(d) / 2.0);
    let (top, floor) = (of(ask.length), of(walls.floor));
    let text = |length: Length| decimal(length.mm(), 3);
    let half = |side: f64| {
        [(bore, 0.0), (outside, 0.0), (outside, top), (wide, top), (wide, floor), (bore, floor)]
            .map(|(x, y)| (x * side, y))
    };
    Sketch::default()
        .closed("o m", &half(-1.0))
        .closed("o m", &half(1.0))
        .line("t", &[(-wide, floor), (wide, floor)])
        .line("t", &[(-wide, top), (wide, top)])
        .line("t", &[(-bore, 0.0), (bore, 0.0)])
        .size((wide, top), (outside, top), 22.0, &text(walls.wall))
        .size((bore, 0.0), (-bore, 0.0), 22.0, &text(ask.bore))
        .size((-wide, top), (wide, top), 46.0, &text(ask.counterbore))
        .size((outside, top), (outside, floor), 24.0, &text(ask.depth))
        .size((outside, floor), (outside, 0.0), 24.0, &text(walls.floor))
        .markup(name)
}
