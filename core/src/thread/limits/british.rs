//! Whitworth form (BS 84), British Association (BS 93) and parallel pipe threads
//! (ISO 228-1).
use super::super::Thread;
use super::super::root::{cbrt_e9, sqrt_e9};
use super::super::series::{Series, lists};
use super::{Fit, Found, Side, assemble, e4, e9, to_near, um};
use crate::error::Error;
use crate::number::Fraction;

/// BS 84 (1956 and 2007; formulas and bores from memory). T = 0.002 D^(1/3) +
/// 0.003 √L + 0.005 √P in inches, the engagement L being D; two thirds of it in the
/// close class, half as much again in the free class and in a normal nut. Medium and
/// free screws to 3/4 in lie 0.3 T below the basic sizes: which of them do was read in
/// print (a tap maker's figure of the system), the 0.3 is from memory.
#[expect(
    clippy::arithmetic_side_effects,
    reason = "billionths of an inch of a thread whose size was checked: far below the range"
)]
pub(super) fn whitworth(thread: &Thread, side: Side, fit: Fit) -> Found {
    let (d, p) = (thread.major.inches()?, thread.pitch.inches()?);
    let pitch_root = sqrt_e9(p)?;
    // Billionths, times a thousand.
    let whole = cbrt_e9(d)? * 2 + sqrt_e9(d)? * 3 + pitch_root * 5;
    let (sixths, at_root) = match (side, fit) {
        (Side::External, Fit::Close) => (4, 13),
        (Side::Internal, Fit::Close) => (4, 0),
        (_, Fit::Medium) => (6, 20),
        (Side::External, Fit::Free) | (Side::Internal, Fit::Normal) => (9, 20),
        _ => return Ok(None),
    };
    let tolerance = whole * sixths / 6;
    let below = match (side, fit) {
        (Side::External, Fit::Medium | Fit::Free) => allowance(thread, d, p)?,
        _ => 0,
    };
    // To ten-thousandths, with so many thousandths of √P more.
    let with = |more: i64| to_near(tolerance + pitch_root * more, 100_000_000);
    let (major, pitch) = (e4(thread.major)?, e4(thread.pitch_diameter()?)?);
    let minor = e4(thread.minor_internal()?)?;
    let three = match side {
        Side::External => [
            (Some(major - below), Some(major - below - with(10))),
            (Some(pitch - below), Some(pitch - below - with(0))),
            (Some(minor - below), Some(minor - below - with(at_root))),
        ],
        Side::Internal => {
            let tpi = thread.tpi()?;
            let more = match () {
                () if tpi >= Fraction::whole(26) => 40,
                () if tpi >= Fraction::whole(22) => 50,
                () => 70,
            };
            let bore = to_near(e9(p)? / 5, 100_000) + more;
            [
                (None, Some(major)),
                (Some(pitch + with(0)), Some(pitch)),
                (Some(minor + bore), Some(minor)),
            ]
        }
    };
    assemble(true, 10_000, three)
}

/// 0.3 T in ten-thousandths to 3/4 in, nought above; below 1/4 in that of the 1/4 in size
/// of its series (from memory), for series that have several pitches there of its own.
#[expect(
    clippy::arithmetic_side_effects,
    reason = "billionths of an inch of a thread whose size was checked: far below the range"
)]
fn allowance(thread: &Thread, d: Fraction, p: Fraction) -> Result<i64, Error> {
    let quarter = Fraction::new(1, 4)?;
    if d > Fraction::new(3, 4)? {
        return Ok(0);
    }
    let p = match () {
        () if d >= quarter => p,
        () if lists(Series::Bsw, thread) => Fraction::new(1, 20)?,
        () if lists(Series::Bsf, thread) => Fraction::new(1, 26)?,
        () => p,
    };
    let d = d.max(quarter);
    let whole = cbrt_e9(d)? * 2 + sqrt_e9(d)? * 3 + sqrt_e9(p)? * 5;
    Ok(to_near(whole * 3, 1_000_000_000))
}

/// BS 93: tolerances by the formulas read in print, to the nearest micrometre;
/// a normal screw of 0 to 10 BA lies 0.025 mm below the basic size.
#[expect(
    clippy::arithmetic_side_effects,
    reason = "micrometres of a thread whose size was checked: far below the range"
)]
pub(super) fn ba(thread: &Thread, side: Side, fit: Fit) -> Found {
    let p = um(thread.pitch)?;
    // 10 BA has a pitch of 0.35 mm.
    let large = p >= 350;
    let (d, d2, d1) =
        (um(thread.major)?, um(thread.pitch_diameter()?)?, um(thread.minor_internal()?)?);
    let part = |thousandths: i64| to_near(p * thousandths, 1000);
    let (below, major, pitch, minor) = match (side, fit) {
        (Side::External, Fit::Close) => (0, part(150), part(80) + 20, part(160) + 40),
        (Side::External, Fit::Normal) => {
            let below = if large { 25 } else { 0 };
            (below, part(if large { 200 } else { 250 }), part(100) + 25, part(200) + 50)
        }
        (Side::Internal, Fit::Normal) => (0, 0, part(120) + 30, part(375)),
        _ => return Ok(None),
    };
    let three = match side {
        Side::External => [(d, major), (d2, pitch), (d1, minor)]
            .map(|(basic, width)| (Some(basic - below), Some(basic - below - width))),
        Side::Internal => {
            [(None, Some(d)), (Some(d2 + pitch), Some(d2)), (Some(d1 + minor), Some(d1))]
        }
    };
    assemble(false, 1000, three)
}

/// ISO 228-1, from memory: by greatest major and threads per inch the tolerance of
/// the pitch diameter and of the bore, in micrometres. The screw's major has twice
/// the first, its class B twice too.
const PIPE: [(i64, i64, i64); 5] = [
    (10_000, 107, 282),
    (17_000, 125, 445),
    (31_000, 142, 541),
    (60_000, 180, 640),
    (164_000, 217, 640),
];

#[expect(
    clippy::arithmetic_side_effects,
    reason = "micrometres of a thread whose size was checked: far below the range"
)]
pub(super) fn pipe(thread: &Thread, side: Side, fit: Fit) -> Found {
    let (d, d2, d1) =
        (um(thread.major)?, um(thread.pitch_diameter()?)?, um(thread.minor_internal()?)?);
    if !lists(Series::Pipe, thread) {
        return Ok(None);
    }
    let Some(&(_, tolerance, bore)) = PIPE.iter().find(|row| d <= row.0) else {
        return Ok(None);
    };
    let three = match (side, fit) {
        (Side::External, Fit::PipeA | Fit::PipeB) => {
            let width = if fit == Fit::PipeA { tolerance } else { tolerance * 2 };
            [
                (Some(d), Some(d - tolerance * 2)),
                (Some(d2), Some(d2 - width)),
                // The root has no least size of its own.
                (Some(d1), None),
            ]
        }
        (Side::Internal, Fit::PipeA) => {
            [(None, Some(d)), (Some(d2 + tolerance), Some(d2)), (Some(d1 + bore), Some(d1))]
        }
        _ => return Ok(None),
    };
    assemble(false, 1000, three)
}
