//! Threads that move things: metric trapezoidal (ISO 2903) and Acme (ASME B1.5).
use super::super::root::sqrt_e9;
use super::super::{Kind, Thread};
use super::{Found, Grade, Position, Side, along, assemble, e4, e9, graded, to_even, to_near, um};
use crate::number::Fraction;

/// By pitch in micrometres: deviation e, Td and TD1 of grade 4, in micrometres.
/// ISO 2903; 1.5 to 3 read in print through limits, the rest from memory. The e of a
/// pitch of 12 is the least sure: half of c (335) on the progression gives 170, but 160 is
/// remembered as well.
const BY_PITCH: &[(u16, u16, u16, u16)] = &[
    (1500, 67, 150, 190),
    (2000, 71, 180, 236),
    (3000, 85, 236, 315),
    (4000, 95, 300, 375),
    (5000, 106, 335, 450),
    (6000, 118, 375, 500),
    (7000, 125, 425, 560),
    (8000, 132, 450, 630),
    (9000, 140, 500, 670),
    (10_000, 150, 530, 710),
    (12_000, 170, 600, 800),
    (14_000, 180, 670, 900),
    (16_000, 190, 710, 1000),
    (18_000, 200, 800, 1120),
    (20_000, 212, 850, 1180),
    (22_000, 224, 900, 1250),
    (24_000, 236, 950, 1320),
    (28_000, 250, 1060, 1500),
];

/// By greatest diameter of the step in tenths of a millimetre and pitch in
/// micrometres: Td2 of grade 7. The other grades lie four steps of R40 apart, TD2
/// five above. How known: as above.
const TD2: &[(u16, u16, u16)] = &[
    (112, 1500, 170),
    (112, 2000, 190),
    (112, 3000, 212),
    (224, 2000, 200),
    (224, 3000, 224),
    (224, 4000, 265),
    (224, 5000, 280),
    (224, 8000, 355),
    (450, 3000, 250),
    (450, 5000, 300),
    (450, 6000, 335),
    (450, 7000, 355),
    (450, 8000, 375),
    (450, 10_000, 400),
    (450, 12_000, 425),
    (900, 3000, 265),
    (900, 4000, 300),
    (900, 8000, 400),
    (900, 9000, 425),
    (900, 10_000, 425),
    (900, 12_000, 475),
    (900, 14_000, 500),
    (900, 16_000, 530),
    (900, 18_000, 560),
    (1800, 4000, 315),
    (1800, 6000, 375),
    (1800, 8000, 425),
    (1800, 12_000, 500),
    (1800, 14_000, 530),
    (1800, 16_000, 560),
    (1800, 18_000, 600),
    (1800, 20_000, 600),
    (1800, 22_000, 630),
    (1800, 24_000, 670),
    (1800, 28_000, 710),
];

const _: () = {
    let mut rows = TD2;
    while let [a, rest @ ..] = rows {
        if let [b, ..] = rest {
            assert!(a.0 < b.0 || a.0 == b.0 && a.1 < b.1 && a.2 <= b.2);
        }
        rows = rest;
    }
    let mut rows = BY_PITCH;
    while let [a, rest @ ..] = rows {
        if let [b, ..] = rest {
            assert!(a.0 < b.0 && a.1 < b.1 && a.2 < b.2 && a.3 < b.3);
        }
        rows = rest;
    }
};

/// Classes 6 to 9 with position e or h of a screw, H of a nut. The major and the
/// bore have grade 4 always; the root has 1.25 Td2 and the allowance.
#[expect(
    clippy::arithmetic_side_effects,
    reason = "micrometres of a thread whose size was checked: far below the range"
)]
pub(super) fn trapezoidal(thread: &Thread, side: Side, class: Grade) -> Found {
    let (d, p) = (um(thread.major)?, um(thread.pitch)?);
    let whole = |n: i64| Fraction::new(n, 1000);
    if whole(d)? != thread.major.mm() || whole(p)? != thread.pitch.mm() {
        return Ok(None);
    }
    let (d2, bore) = (um(thread.pitch_diameter()?)?, um(thread.minor_internal()?)?);
    let (core, outer) = (um(thread.minor_external()?)?, um(thread.major_internal()?)?);
    let three = || {
        let &(_, e, major, minor) = BY_PITCH.iter().find(|row| i64::from(row.0) == p)?;
        let upper = TD2.iter().find(|row| d <= i64::from(row.0) * 100)?.0;
        let row = TD2.iter().find(|row| row.0 == upper && i64::from(row.1) == p)?;
        let tolerance = graded(i64::from(row.2), 7, class.grade)?;
        let grades = if side == Side::External { 6..=9 } else { 7..=9 };
        if d < 5600 || !grades.contains(&class.grade) {
            return None;
        }
        let allowance = match class.position {
            Position::E if side == Side::External => i64::from(e),
            Position::H => 0,
            _ => return None,
        };
        Some(match side {
            Side::External => {
                let quarters = tolerance * 5 + allowance * 4;
                // A half goes to the odd neighbour: so 279, 309 and 397 are printed. No rule in
                // print says so; it is fitted to those three.
                let root = if quarters % 4 == 2 { (quarters / 4) | 1 } else { (quarters + 2) / 4 };
                [
                    (Some(d), Some(d - i64::from(major))),
                    (Some(d2 - allowance), Some(d2 - allowance - tolerance)),
                    (Some(core), Some(core - root)),
                ]
            }
            Side::Internal => [
                (None, Some(outer)),
                (Some(d2 + along(tolerance, 5)?), Some(d2)),
                (Some(bore + i64::from(minor)), Some(bore)),
            ],
        })
    };
    match three() {
        Some(three) => assemble(false, 1000, three),
        None => Ok(None),
    }
}

/// Limits of the diameter ranges over which ASME B1.5 keeps one allowance, in
/// sixteenths of an inch; it is that of the middle of the range.
const RANGES: [u8; 23] =
    [0, 3, 5, 7, 9, 11, 13, 15, 17, 19, 21, 23, 25, 30, 34, 38, 42, 46, 52, 60, 68, 76, 88];

/// General purpose 2G, 3G and 4G, in ten-thousandths of an inch (from memory but
/// for the allowances, read in print); ASME B1.8 keeps those of 2G for the stub form
/// (from memory).
#[expect(
    clippy::arithmetic_side_effects,
    reason = "billionths of an inch of a thread whose size was checked: far below the range"
)]
pub(super) fn acme(thread: &Thread, side: Side, number: u8) -> Found {
    // Thousandths: the allowance on √D; the tolerance on √P and, times ten, on √D.
    let stub = thread.form.kind == Kind::StubAcme;
    let (allowed, on_pitch, on_diameter) = match number {
        3.. if stub => return Ok(None),
        2 => (8, 30, 60),
        3 => (6, 14, 28),
        4 => (4, 10, 20),
        _ => return Ok(None),
    };
    let (d, p) = (thread.major.inches()?, thread.pitch.inches()?);
    let Some(middle) = middle(d)? else { return Ok(None) };
    let allowance = to_near(sqrt_e9(middle)? * allowed, 100_000_000);
    let tolerance = sqrt_e9(p)? * on_pitch + sqrt_e9(d)? * on_diameter / 10;
    let narrow = to_near(tolerance, 100_000_000);
    let (major, pitch) = (e4(thread.major)?, e4(thread.pitch_diameter()?)?);
    let (bore, core) = (e4(thread.minor_internal()?)?, e4(thread.minor_external()?)?);
    // A twentieth of the pitch, at least 0.005 in, in billionths: the limit is rounded, not
    // the tolerance, a half to the even neighbour (so 0.6188 is printed for 5/8-8).
    let crest = (e9(p)? / 20).max(5_000_000);
    let widened = if stub { 2 } else { 3 };
    let three = match side {
        Side::External => [
            (Some(major), Some(to_even(major * 100_000 - crest, 100_000))),
            (Some(pitch - allowance), Some(pitch - allowance - narrow)),
            // One and a half times the tolerance before it is rounded: fitted to the sizes
            // read in print, which all agree. The stub form has the tolerance itself.
            (Some(core), Some(to_near(core * 200_000_000 - tolerance * widened, 200_000_000))),
        ],
        Side::Internal => {
            let root = e4(thread.major_internal()?)?;
            [
                (Some(root + root - major), Some(root)),
                (Some(pitch + narrow), Some(pitch)),
                (Some(to_even(bore * 100_000 + crest, 100_000)), Some(bore)),
            ]
        }
    };
    assemble(true, 10_000, three)
}

/// The middle of the range that `d` lies in, in inches.
#[expect(clippy::arithmetic_side_effects, reason = "two bytes widened")]
fn middle(d: Fraction) -> Result<Option<Fraction>, crate::error::Error> {
    for (&over, &to) in RANGES.iter().zip(RANGES.iter().skip(1)) {
        if d <= Fraction::new(i64::from(to), 16)? {
            return Ok(Some(Fraction::new(i64::from(over) + i64::from(to), 32)?));
        }
    }
    Ok(None)
}
