//! Lines and figures of a dial: which mark gets which line, where the slide that draws
//! the lines stops, and which way up the figures stand.
//!
//! The zero mark has the longest line. Lines are drawn by a slide (saddle, table or top
//! slide) whose dial is set to zero where the tool touches the edge; it is stopped by
//! that dial for each kind of mark. Method: common practice.
use crate::bounds::{self, MAX_MARK_KINDS, MAX_PATTERN};
use crate::divide::{Graduation, MarkKind, Marks, Numbers, Question};
use crate::error::{Cause, Error, Field};
use crate::head::Sense;
use crate::list::List;
use crate::measure::{
    Length,
    given::{minus, over, plus, size},
};
use crate::number::{Fraction, lcm};
use crate::thread::dial::{Dial, Reads};

pub use crate::thread::dial::{Reading, Runs};

/// A length of line and the marks that get it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Every {
    /// Every so many marks; `None` where no mark gets it.
    pub every: Option<u32>,
    /// Length of the line.
    pub length: Length,
}

/// A graduation of `count` marks: of `lines`, the longest first, each mark gets the first
/// whose `every` divides it, so the zero mark gets the first there is.
///
/// # Errors
/// [`Field::Marks`]: [`Cause::Conflict`] where a mark gets no line (the last of `lines`
/// must be for every mark); [`Cause::TooMany`] where lines repeat only after more marks
/// than a pattern holds, or there are more kinds than it holds; what
/// [`Question::check`] finds.
pub fn graduate(count: u32, lines: &[Every], numbers: Option<Numbers>) -> Result<Marks, Error> {
    let full = |most| {
        let most = u16::try_from(most).unwrap_or(u16::MAX);
        Error::new(Field::Marks, Cause::TooMany { most })
    };
    let (mut kinds, mut repeats) = (List::<MarkKind, MAX_MARK_KINDS>::new(), 1_u64);
    for line in lines {
        kinds.push(MarkKind { length: line.length }).map_err(|_| full(MAX_MARK_KINDS))?;
        let Some(every) = line.every else { continue };
        bounds::EVERY.check(i64::from(every)).map_err(|e| e.of(Field::Marks))?;
        repeats = lcm(repeats, u64::from(every)).ok_or(full(MAX_PATTERN))?;
    }
    let mut pattern = List::<u8, MAX_PATTERN>::new();
    for mark in 0..repeats {
        let gets = |line: &Every| {
            line.every.is_some_and(|n| mark.checked_rem(u64::from(n)).is_some_and(|left| left == 0))
        };
        let kind = lines.iter().position(gets).and_then(|kind| u8::try_from(kind).ok());
        let kind = kind.ok_or(Error::new(Field::Marks, Cause::Conflict))?;
        pattern.push(kind).map_err(|_| full(MAX_PATTERN))?;
    }
    let marks = Marks { count, kinds, pattern, numbers };
    let Marks { count, kinds, pattern, numbers } = &marks;
    let asked = Graduation { count: *count, kinds, pattern, numbers: *numbers };
    Question::Marks(asked).check()?;
    Ok(marks)
}

/// A slide that draws lines, stopped by its dial.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Slide {
    /// How far one turn of its dial moves it.
    pub lead: Length,
    /// Marks once round its dial.
    pub marks: u32,
    /// Which way its dial turns while a line is drawn.
    pub runs: Runs,
}

/// Where a slide stops for one kind of mark.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Stop {
    /// What its dial reads then.
    pub reading: Reading,
    /// Length of the line that comes of it.
    pub length: Length,
    /// By how much that is longer than asked; below nought where it is shorter.
    pub off: Length,
}

/// Where a slide starts and stops to draw the lines of a dial.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Stops {
    /// What its dial reads where lines begin; zero is where the tool touches the edge.
    pub start: Reading,
    /// The stop of each kind of mark, in their order.
    pub ends: List<Stop, MAX_MARK_KINDS>,
}

/// Where `slide` starts and stops to draw the lines of `kinds`, which begin `from_edge`
/// beyond the edge that the tool touches at zero. Readings are whole marks, the nearest
/// ones; what a line is off by that is told.
///
/// # Errors
/// [`Field::Screw`] for a lead of nought or out of bounds; [`Field::SlideDial`] for marks
/// out of bounds; [`Field::Marks`] with [`Cause::Empty`] without kinds, with
/// [`Cause::Conflict`] where a line is no longer than half a mark of the dial or out of
/// bounds; [`Field::Length`] for a start out of bounds; [`Cause::Overflow`].
pub fn stops(kinds: &[MarkKind], from_edge: Length, slide: &Slide) -> Result<Stops, Error> {
    size(slide.lead, Field::Screw)?;
    bounds::SLIDE_MARKS.check(i64::from(slide.marks))?;
    if kinds.is_empty() {
        return Err(Error::new(Field::Marks, Cause::Empty));
    }
    let division = over(slide.lead, i64::from(slide.marks), Field::SlideDial)?;
    let dial = Dial { division, reads: Reads::Travel, marks: slide.marks };
    let (from, _) = dial.nearest(from_edge)?;
    let start = dial.at(from, slide.runs)?;
    let mut ends = List::new();
    for kind in kinds {
        size(kind.length, Field::Marks)?;
        let (to, _) = dial.nearest(plus(from_edge, kind.length, Field::Marks)?)?;
        let reading = dial.at(to, slide.runs)?;
        let length = minus(reading.travel, start.travel, Field::Marks)?;
        let off = minus(length, kind.length, Field::Marks)?;
        if length.mm() <= Fraction::ZERO {
            return Err(Error::new(Field::Marks, Cause::Conflict));
        }
        let most = u16::try_from(MAX_MARK_KINDS).unwrap_or(u16::MAX);
        let full = Error::new(Field::Marks, Cause::TooMany { most });
        ends.push(Stop { reading, length, off }).map_err(|_| full)?;
    }
    Ok(Stops { start, ends })
}

/// What a dial is cut on, and from where it is read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Surface {
    /// The rim of a handwheel's dial, read from before it.
    HandwheelRim,
    /// The rim of a table or of any dial whose axis is upright, read from beside it;
    /// its front is its top.
    TableRim,
    /// A face, read at its uppermost place.
    Face,
}

/// An edge of what is graduated.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Edge {
    /// The front of a rim: a table's top.
    Front,
    /// The back of a rim: towards the body that carries the index line.
    Back,
    /// A face's centre.
    Centre,
    /// A face's outside.
    Outside,
}

/// How the figures of a dial stand.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Figures {
    /// The edge that lines begin at: where the index line stands.
    pub lines_from: Edge,
    /// The edge that the feet of the figures face.
    pub feet: Edge,
    /// Whether, to who sees them upright, the numbers climb to the right.
    pub climbs_right: bool,
    /// The sense of turning, seen from the dial's front, for which a dial that turns past a
    /// fixed index line reads more.
    pub rises: Sense,
}

/// How the figures stand on `surface` when they are `upright` to the reader (otherwise
/// inverted) and climb as `climbs` says, seen from the dial's front.
///
/// Geometry: of a rim seen with its front nearer, and of a face seen at its uppermost
/// place, clockwise runs to the right; seen the other way up, to the left.
#[must_use]
pub fn figures(surface: Surface, upright: bool, climbs: Sense) -> Figures {
    let (lines_from, [feet, inverted]) = match surface {
        Surface::HandwheelRim => (Edge::Back, [Edge::Front, Edge::Back]),
        Surface::TableRim => (Edge::Back, [Edge::Back, Edge::Front]),
        Surface::Face => (Edge::Outside, [Edge::Centre, Edge::Outside]),
    };
    let feet = if upright { feet } else { inverted };
    let clockwise = climbs == Sense::Clockwise;
    let front = matches!(feet, Edge::Front | Edge::Centre);
    let rises = if clockwise { Sense::Anticlockwise } else { Sense::Clockwise };
    Figures { lines_from, feet, climbs_right: clockwise == front, rises }
}

#[cfg(test)]
mod tests {
    use super::*;
    extern crate std;
    use std::vec::Vec;

    fn mm(num: i64, den: i64) -> Length {
        Length::from_mm(Fraction::new(num, den).unwrap())
    }

    fn lines(every: [Option<u32>; 3]) -> [Every; 3] {
        let lengths = [mm(6, 1), mm(9, 2), mm(3, 1)];
        let [a, b, c] = every;
        let [x, y, z] = lengths;
        [
            Every { every: a, length: x },
            Every { every: b, length: y },
            Every { every: c, length: z },
        ]
    }

    #[track_caller]
    fn kinds(every: [Option<u32>; 3], expected: &[u8]) {
        let marks = graduate(360, &lines(every), None).unwrap();
        assert_eq!(&*marks.pattern, expected);
    }

    #[test]
    fn each_mark_gets_the_longest_line_it_may() {
        kinds([Some(10), Some(5), Some(1)], &[0, 2, 2, 2, 2, 1, 2, 2, 2, 2]);
        kinds([Some(3), Some(2), Some(1)], &[0, 2, 1, 0, 1, 2]);
        kinds([None, Some(2), Some(1)], &[1, 2]);
        kinds([None, None, Some(1)], &[2]);
    }

    #[test]
    fn what_can_not_be_graduated() {
        let no = |count, every| graduate(count, &lines(every), None).unwrap_err();
        let marks = |cause| Error::new(Field::Marks, cause);
        assert_eq!(no(360, [Some(10), Some(5), Some(2)]), marks(Cause::Conflict));
        assert_eq!(no(360, [Some(10), None, None]), marks(Cause::Conflict));
        assert_eq!(no(360, [Some(397), Some(2), Some(1)]), marks(Cause::TooMany { most: 400 }));
        let every = Cause::OutOfRange { least: 1, greatest: 9_999 };
        assert_eq!(no(360, [Some(0), None, Some(1)]), marks(every));
        assert_eq!(no(1, [Some(10), Some(5), Some(1)]).field, Field::Parts);
        assert_eq!(graduate(360, &[], None), Err(marks(Cause::Conflict)));
    }

    #[track_caller]
    fn stop(slide: Slide, from_edge: Length, length: Length, reads: [(u32, u32); 2], off: Length) {
        let stops = stops(&[MarkKind { length }], from_edge, &slide).unwrap();
        let end = stops.ends[0];
        let read = |reading: Reading| (reading.turns, reading.mark);
        assert_eq!([read(stops.start), read(end.reading)], reads);
        assert_eq!(end.off, off);
        assert_eq!(end.length.mm(), length.mm().checked_add(off.mm()).unwrap());
    }

    #[test]
    fn the_slide_stops_on_whole_marks() {
        let metric = Slide { lead: mm(5, 1), marks: 100, runs: Runs::Forwards };
        let none = mm(0, 1);
        stop(metric, none, mm(6, 1), [(0, 0), (1, 20)], none);
        stop(metric, none, mm(9, 2), [(0, 0), (0, 90)], none);
        stop(metric, mm(1, 1), mm(6, 1), [(0, 20), (1, 40)], none);
        // Drawn from the far end, the dial counts down.
        let back = Slide { runs: Runs::Backwards, ..metric };
        stop(back, none, mm(9, 2), [(0, 0), (0, 10)], none);
        // A dial of thous on a screw of 8 to the inch: 4.5 mm is 177.17 thou.
        let lead = Length::from_inches(Fraction::new(1, 8).unwrap()).unwrap();
        let inch = Slide { lead, marks: 125, runs: Runs::Forwards };
        stop(inch, none, mm(9, 2), [(0, 0), (1, 52)], mm(-21, 5000));
        // Both ends are rounded; the length of the line tells of both.
        stop(inch, mm(1, 1), mm(9, 2), [(0, 39), (1, 92)], mm(53, 2500));
    }

    #[test]
    fn what_can_not_be_drawn() {
        let slide = Slide { lead: mm(5, 1), marks: 100, runs: Runs::Forwards };
        let no = |length, from, slide| {
            let error = stops(&[MarkKind { length }], from, &slide).unwrap_err();
            (error.field, error.cause)
        };
        let none = mm(0, 1);
        assert_eq!(no(mm(1, 100), none, slide), (Field::Marks, Cause::Conflict));
        assert_eq!(no(none, none, slide), (Field::Marks, Cause::Zero));
        assert_eq!(no(mm(3, 1), mm(-1, 1), slide).0, Field::Length);
        assert_eq!(no(mm(3, 1), none, Slide { lead: none, ..slide }), (Field::Screw, Cause::Zero));
        assert_eq!(no(mm(3, 1), none, Slide { marks: 1, ..slide }).0, Field::SlideDial);
        assert_eq!(stops(&[], none, &slide), Err(Error::new(Field::Marks, Cause::Empty)));
    }

    /// Where a figure and its neighbour stand is worked out from points in space.
    #[test]
    fn the_side_to_which_numbers_climb_is_that_of_points_in_space() {
        // The dial's axis is z, its front looks to +z; clockwise, seen from +z, runs from
        // +y to +x. A reader's eye sees `up` upwards from the direction `eye`.
        type Point = [i32; 3];
        let cross = |a: Point, b: Point| -> Point {
            [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]]
        };
        let dot = |a: Point, b: Point| -> i32 { a.iter().zip(b).map(|(a, b)| a * b).sum() };
        let cases: Vec<(Surface, bool, Sense)> =
            [Surface::HandwheelRim, Surface::TableRim, Surface::Face]
                .into_iter()
                .flat_map(|s| [true, false].map(|upright| (s, upright)))
                .flat_map(|(s, u)| [Sense::Clockwise, Sense::Anticlockwise].map(|c| (s, u, c)))
                .collect();
        for (surface, upright, climbs) in cases {
            let found = figures(surface, upright, climbs);
            // The figure at +y: what its head points to is away from its feet.
            let feet: Point = match found.feet {
                Edge::Front => [0, 0, 1],
                Edge::Back => [0, 0, -1],
                Edge::Centre => [0, -1, 0],
                Edge::Outside => [0, 1, 0],
            };
            let up = feet.map(|x| -x);
            let eye: Point = if surface == Surface::Face { [0, 0, 1] } else { [0, 1, 0] };
            // What lies to the right of who looks along −eye with `up` upwards.
            let right = cross(up, eye);
            let next: Point = if climbs == Sense::Clockwise { [1, 0, 0] } else { [-1, 0, 0] };
            assert_eq!(
                found.climbs_right,
                dot(next, right) > 0,
                "{surface:?} {upright} {climbs:?}"
            );
            // Turned in the sense that rises, a larger number comes to a fixed line.
            assert_eq!(found.rises == Sense::Clockwise, climbs == Sense::Anticlockwise);
        }
    }
}
