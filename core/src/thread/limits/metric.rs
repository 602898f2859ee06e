//! ISO metric threads: ISO 965-1, whose tables govern (its formulas, rounded,
//! miss them at many sizes).
//!
//! Printed tables hold each grade; they are one progression: four steps of R40 a
//! grade, and TD2 five steps above Td2 at the same grade, without exception at
//! the values read. So one figure a row is kept. How known: Td2 at 2.8 to 45 mm,
//! and TD2 at 90 to 355 mm read in print for the greater part, TD1 at 0.25 to 0.6
//! read in print; the rest is from memory of ISO 965-1 and DIN 13-14. Rows marked
//! "older" stand in DIN 13-14 and ASME B1.13M but not in ISO 965-1:1998.
use super::super::Thread;
use super::{Found, Grade, Position, Side, along, assemble, graded, to_even, um};
use crate::number::Fraction;

/// By pitch in micrometres: deviations e, f and g (nought: no such class), then Td
/// and TD1 of grade 6, all in micrometres.
const BY_PITCH: &[(u16, u8, u8, u8, u16, u16)] = &[
    (200, 0, 0, 17, 56, 60),
    (250, 0, 0, 18, 67, 71),
    (300, 0, 0, 18, 75, 85),
    (350, 0, 34, 19, 85, 100),
    (400, 0, 34, 19, 95, 112),
    (450, 0, 35, 20, 100, 125),
    (500, 50, 36, 20, 106, 140),
    (600, 53, 36, 21, 125, 160),
    (700, 56, 38, 22, 140, 180),
    (750, 56, 38, 22, 140, 190),
    (800, 60, 38, 24, 150, 200),
    (1000, 60, 40, 26, 180, 236),
    (1250, 63, 42, 28, 212, 265),
    (1500, 67, 45, 32, 236, 300),
    (1750, 71, 48, 34, 265, 335),
    (2000, 71, 52, 38, 280, 375),
    (2500, 80, 58, 42, 335, 450),
    (3000, 85, 63, 48, 375, 500),
    (3500, 90, 70, 53, 425, 560),
    (4000, 95, 75, 60, 475, 600),
    (4500, 100, 80, 63, 500, 670),
    (5000, 106, 85, 71, 530, 710),
    (5500, 112, 90, 75, 560, 750),
    (6000, 118, 95, 80, 600, 800),
    (8000, 140, 118, 100, 710, 1000),
];

/// By greatest diameter of the step in hundredths of a millimetre and pitch in
/// micrometres: Td2 of grade 6, in micrometres.
const TD2: &[(u16, u16, u16)] = &[
    (140, 200, 48),
    (140, 250, 53),
    (140, 300, 56),
    (280, 200, 50),
    (280, 250, 56),
    (280, 350, 63),
    (280, 400, 67),
    (280, 450, 71),
    (560, 350, 67),
    (560, 500, 75),
    (560, 600, 85),
    (560, 700, 90),
    (560, 750, 90),
    (560, 800, 95),
    (1120, 500, 85), // older
    (1120, 750, 100),
    (1120, 1000, 112),
    (1120, 1250, 118),
    (1120, 1500, 132),
    (2240, 500, 90),  // older
    (2240, 750, 106), // older
    (2240, 1000, 118),
    (2240, 1250, 132),
    (2240, 1500, 140),
    (2240, 1750, 150),
    (2240, 2000, 160),
    (2240, 2500, 170),
    (4500, 750, 112), // older
    (4500, 1000, 125),
    (4500, 1500, 150),
    (4500, 2000, 170),
    (4500, 3000, 200),
    (4500, 3500, 212),
    (4500, 4000, 224),
    (4500, 4500, 236),
    (9000, 1000, 140), // older
    (9000, 1500, 160),
    (9000, 2000, 180),
    (9000, 3000, 212),
    (9000, 4000, 236),
    (9000, 5000, 250),
    (9000, 5500, 265),
    (9000, 6000, 280),
    (18_000, 1500, 170), // older
    (18_000, 2000, 190),
    (18_000, 3000, 224),
    (18_000, 4000, 250),
    (18_000, 6000, 300),
    (18_000, 8000, 335),
    (35_500, 3000, 250),
    (35_500, 4000, 280),
    (35_500, 6000, 315),
    (35_500, 8000, 355),
];

/// Diameters under a millimetre are below the tables.
const LEAST: i64 = 990;

const _: () = {
    let mut rows = BY_PITCH;
    while let [a, rest @ ..] = rows {
        if let [b, ..] = rest {
            assert!(a.0 < b.0 && a.3 <= b.3 && a.4 <= b.4 && a.5 <= b.5);
            assert!(a.1 <= b.1 && a.2 <= b.2);
        }
        rows = rest;
    }
    let mut rows = TD2;
    while let [a, rest @ ..] = rows {
        if let [b, ..] = rest {
            assert!(a.0 < b.0 || a.0 == b.0 && a.1 < b.1 && a.2 <= b.2);
        }
        rows = rest;
    }
};

struct Row {
    by_pitch: &'static (u16, u8, u8, u8, u16, u16),
    td2: i64,
}

/// The rows for a diameter and pitch in whole micrometres.
fn find(major: i64, pitch: i64) -> Option<Row> {
    let by_pitch = BY_PITCH.iter().find(|row| i64::from(row.0) == pitch)?;
    if major < LEAST {
        return None;
    }
    let step = |row: &&(u16, u16, u16)| major <= i64::from(row.0).saturating_mul(10);
    let upper = TD2.iter().find(step)?.0;
    let row = TD2.iter().find(|row| row.0 == upper && i64::from(row.1) == pitch)?;
    Some(Row { by_pitch, td2: i64::from(row.2) })
}

/// The deviation of a position in micrometres, away from the basic size.
fn deviation(row: &Row, position: Position) -> Option<i64> {
    let &(_, e, f, g, ..) = row.by_pitch;
    let found = match position {
        Position::E => e,
        Position::F => f,
        Position::G => g,
        Position::H => return Some(0),
    };
    (found != 0).then_some(i64::from(found))
}

/// Whether the tables hold `grade` for a pitch diameter at this pitch.
fn held(side: Side, grade: u8, pitch: i64) -> bool {
    let most = match (side, pitch) {
        (Side::External, ..=300) => 6,
        (Side::External, ..=750) => 7,
        (Side::External, _) => 9,
        (Side::Internal, ..=200) => 4,
        (Side::Internal, ..=250) => 5,
        (Side::Internal, ..=450) => 6,
        (Side::Internal, ..=750) => 7,
        (Side::Internal, _) => 8,
    };
    let least = if side == Side::External { 3 } else { 4 };
    (least..=most).contains(&grade)
}

/// Td of the major, at the grades there are: 4, 6 and 8.
fn crest_tolerance(row: &Row, grade: u8) -> Option<i64> {
    let pitch = row.by_pitch.0;
    match grade {
        // The one printed value off the progression (1120), from memory.
        8 if pitch == 8000 => Some(1180),
        8 if pitch < 800 => None,
        4 | 6 | 8 => graded(i64::from(row.by_pitch.4), 6, grade),
        _ => None,
    }
}

#[expect(
    clippy::arithmetic_side_effects,
    reason = "micrometres of a thread whose size was checked: far below the range"
)]
pub(super) fn limits(thread: &Thread, side: Side, pitch: Grade, crest: Grade) -> Found {
    let (d, p) = (um(thread.major)?, um(thread.pitch)?);
    let whole = |n: i64| Fraction::new(n, 1000);
    if whole(d)? != thread.major.mm() || whole(p)? != thread.pitch.mm() {
        return Ok(None);
    }
    let (basic_pitch, basic_minor) = (um(thread.pitch_diameter()?)?, um(thread.minor_internal()?)?);
    // Nanometres of the pitch diameter before it is rounded: 3/4 H below the major.
    let fine_pitch = d * 1000 - (p * 649_519_053 + 500_000) / 1_000_000;
    let three = || {
        let row = find(d, p).filter(|_| held(side, pitch.grade, p))?;
        let (at_pitch, at_crest) =
            (deviation(&row, pitch.position)?, deviation(&row, crest.position)?);
        let narrow = graded(row.td2, 6, pitch.grade)?;
        Some(match side {
            Side::External => {
                let max = (d - at_crest, basic_pitch - at_pitch);
                let major = (Some(max.0), Some(max.0 - crest_tolerance(&row, crest.grade)?));
                // The root at its least is round with 0.125 P: H − P/4 below the pitch line
                // twice over (ASME B1.13M), before the pitch diameter is rounded.
                let root = fine_pitch - (at_pitch + narrow) * 1000 - (p * 616_025 + 500) / 1000;
                let minor = (Some(basic_minor - at_pitch), Some(super::to_near(root, 1000)));
                [major, (Some(max.1), Some(max.1 - narrow)), minor]
            }
            Side::Internal => {
                if matches!(pitch.position, Position::E | Position::F)
                    || matches!(crest.position, Position::E | Position::F)
                    || !held(side, crest.grade, p)
                {
                    return None;
                }
                let wide = along(narrow, 5)?;
                let min = (basic_pitch + at_pitch, basic_minor + at_crest);
                let bore = graded(i64::from(row.by_pitch.5), 6, crest.grade)?;
                // The outermost root: 11/12 H above the pitch line twice over (ASME B1.13M,
                // to four places and then to three).
                let root = fine_pitch + (at_pitch + wide) * 1000 + (p * 793_857 + 500) / 1000;
                let outer = to_even(to_even(root, 100), 10);
                [
                    (Some(outer), Some(d + at_pitch)),
                    (Some(min.0 + wide), Some(min.0)),
                    (Some(min.1 + bore), Some(min.1)),
                ]
            }
        })
    };
    match three() {
        Some(three) => assemble(false, 1000, three),
        None => Ok(None),
    }
}
