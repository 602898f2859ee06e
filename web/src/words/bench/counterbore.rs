//! Words of counterbores.
use crate::words::{decimal, in_mm, mm};
use handturn::bench::counterbore::{Counterbore, Walls};
use handturn::measure::Length;

words! {
    NAME = "Counterbore";
    ABOUT = "The wall, the shoulder and the floor it leaves";
    ALSO = "counterbore wall spotface recess cap screw head shoulder seat boss thickness";
    BORE = "Hole through, mm";
    COUNTERBORE = "Counterbore, mm";
    OUTSIDE = "Outside or across flats, mm";
    OFF = "Off centre by up to, mm";
    DEPTH = "Deep, mm";
    LENGTH = "Length of the part, mm";
    WANTED = "Wall wanted, mm";
    THINNEST = "Wall left, at least";
    WALL = "Wall if dead true";
    SHOULDER = "Shoulder, a side";
    FLOOR = "Floor under it";
    BESIDE = "Wall beside the hole";
    LARGEST = "Largest counterbore for that wall";
    SOURCE = "plane geometry";
    CARE = "Clamp the work: a counterbore snatches as it meets the hole’s edge. Slow, with its pilot oiled.";
    ROUGHLY = "Many shops leave a wall of a quarter of the screw’s diameter or more; brittle metal wants more.";
}

/// The question with its answer.
#[must_use]
pub(crate) fn title(ask: &Counterbore, walls: &Walls) -> String {
    [
        &*decimal(ask.counterbore.mm(), 3),
        " in ",
        &decimal(ask.outside.mm(), 3),
        ": wall ",
        &in_mm(walls.thinnest),
    ]
    .concat()
}

/// The working.
#[must_use]
pub(crate) fn working(ask: &Counterbore, walls: &Walls) -> Vec<String> {
    let half = |name: &str, large: Length, small: Length, comes: Length| {
        [name, " = (", &*mm(large), " − ", &mm(small), ") ÷ 2 = ", &in_mm(comes)].concat()
    };
    vec![
        half("Wall", ask.outside, ask.counterbore, walls.wall),
        ["At its thinnest ", &*mm(walls.wall), " − ", &mm(ask.off), " = ", &in_mm(walls.thinnest)]
            .concat(),
        half("Shoulder", ask.counterbore, ask.bore, walls.shoulder),
    ]
}

/// What the drawing shows.
#[must_use]
pub(crate) fn picture(title: &str) -> String {
    ["A part cut through. Counterbore ", title].concat()
}
