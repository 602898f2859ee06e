//! From a thread and its limits to what cutting and measuring ask for.
//!
//! Method: the middle of the limits is aimed at, and where no standard sets any, the
//! basic size. The screw's flank begins where its root rounding ends, r·(1 − sin a)
//! above the root, and ends as much below a rounded crest; the whole screw lies as far
//! below its basic sizes as its greatest outside does (ISO 965-1, ASME B1.1).
//!
//! ```
//! use handturn::measure::Length;
//! use handturn::number::Fraction;
//! use handturn::thread::{limits::{limits, usual}, name, ready, wires};
//! // The clock's wheel arbor, M6x0.75 in 6g, over 0.45 mm wires.
//! let arbor = name::read("M6x0.75")?[0].thread;
//! let limits = limits(&arbor, usual(arbor.form.kind)[0])?;
//! let measured = ready::measured(&arbor, Some(&limits))?;
//! let wire = Length::from_mm(Fraction::new(45, 100)?);
//! let most = wires::over(&measured, wire, measured.pitch_greatest)?;
//! assert!((most.three.value - 6.1921).abs() < 0.0001);
//! assert_eq!(ready::blank(&arbor, Some(&limits), false)?.mm(), Fraction::new(5908, 1000)?);
//! # Ok::<(), handturn::Error>(())
//! ```
use super::form::Kind;
use super::infeed::{Feed, Infeed, Nose};
use super::limits::{Limits, Range};
use super::wires::Measured;
use super::{Hand, Thread, rounded};
use crate::error::{Cause, Error, Field};
use crate::measure::{Angle, Length};
use crate::number::{Fraction, float};

/// Half the angle between the flanks.
///
/// # Errors
/// [`Cause::Overflow`].
pub fn half_angle(thread: &Thread) -> Result<Angle, Error> {
    thread.form.angle.turns().over(2).map(Angle::from_turns)
}

/// Greatest and least, the basic size where a limit is not set.
fn span(range: Option<Range>, basic: Length) -> (Length, Length) {
    let max = range.and_then(|range| range.max);
    let min = range.and_then(|range| range.min);
    let max = max.unwrap_or(min.map_or(basic, |min| min.max(basic)));
    (max, min.unwrap_or(max.min(basic)))
}

/// The middle between two lengths, rounded as the thread's own sizes are.
fn middle(thread: &Thread, (max, min): (Length, Length)) -> Result<Length, Error> {
    let sum = max.mm().checked_add(min.mm())?;
    rounded(Length::from_mm(sum.over(2)?), thread.form.unit)
}

/// What the work is turned or bored to before the thread is cut: the middle of the
/// limits of a screw's outside or of a nut's bore.
///
/// # Errors
/// [`Cause::Overflow`].
#[doc(alias = "core hole")]
pub fn blank(thread: &Thread, limits: Option<&Limits>, internal: bool) -> Result<Length, Error> {
    let limits = if internal {
        span(limits.map(|limits| limits.minor), thread.minor_internal()?)
    } else {
        span(limits.map(|limits| limits.major), thread.major)
    };
    middle(thread, limits)
}

/// The screw as wires see it, anywhere within `limits`.
///
/// # Errors
/// [`Cause::Overflow`]; [`Cause::Conflict`] on the form of a square thread, in which no
/// wire finds a place.
pub fn measured(thread: &Thread, limits: Option<&Limits>) -> Result<Measured, Error> {
    if thread.form.kind == Kind::Square {
        return Err(Error::new(Field::Form, Cause::Conflict));
    }
    let basic = thread.pitch_diameter()?;
    let (pitch_greatest, pitch_least) = span(limits.map(|l| l.pitch_diameter), basic);
    let (outside_greatest, outside_least) = span(limits.map(|l| l.major), thread.major);
    let below = thread.major.mm().checked_sub(outside_greatest.mm())?.max(Fraction::ZERO);
    let external = thread.form.external;
    let rise = rounding(thread, external.root_radius)?;
    let root = thread.minor_external()?.mm().checked_sub(below)?;
    Ok(Measured {
        half_angle: half_angle(thread)?,
        pitch: thread.pitch,
        starts: u32::from(thread.starts),
        space: Length::from_mm(thread.pitch.mm().over(2)?),
        pitch_least,
        pitch_greatest,
        outside_least,
        outside_greatest,
        crest: Length::from_mm(rounding(thread, external.crest_radius)?),
        root: Length::from_mm(root.checked_add(rise.times(2)?)?),
    })
}

/// Height of a rounding of so many pitches between the flanks: r·(1 − sin a), to 0.1 µm.
fn rounding(thread: &Thread, radius: Fraction) -> Result<Fraction, Error> {
    let sin = float::sin_turns(float::of(half_angle(thread)?.turns()));
    let overflow = Error::new(Field::Form, Cause::Overflow);
    let share = float::nearest(1.0 - sin, 1_000_000_000).ok_or(overflow)?;
    let radius = super::to_nearest(radius.checked_mul(thread.pitch.mm())?, 1_000_000)?;
    super::to_nearest(radius.checked_mul(share)?, 10_000)
}

/// How `thread` is cut from a work of diameter `work` (the bore of a nut) to the middle
/// of its limits.
///
/// # Errors
/// [`Cause::Overflow`].
pub fn infeed(
    thread: &Thread,
    limits: Option<&Limits>,
    internal: bool,
    work: Length,
    nose: Nose,
    feed: Feed,
) -> Result<Infeed, Error> {
    let basic = thread.pitch_diameter()?;
    let pitch_diameter = middle(thread, span(limits.map(|l| l.pitch_diameter), basic))?;
    // Forms with a flat root are cut to it and no deeper.
    let ends =
        matches!(thread.form.kind, Kind::Trapezoidal | Kind::Acme | Kind::StubAcme | Kind::Square);
    let (root, deepest) = if internal {
        let basic = thread.major_internal()?;
        let set = limits.map(|l| l.major);
        let root = set.and_then(|range| range.min).unwrap_or(basic);
        (root, set.map_or(Some(basic), |range| range.max))
    } else {
        let basic = thread.minor_external()?;
        let set = limits.map(|l| l.minor);
        let deepest = set.and_then(|range| range.min).unwrap_or(basic);
        (set.and_then(|range| range.max).unwrap_or(basic), Some(deepest))
    };
    Ok(Infeed {
        half_angle: half_angle(thread)?,
        space: Length::from_mm(thread.pitch.mm().over(2)?),
        work,
        pitch_diameter,
        root,
        deepest: deepest.filter(|_| ends),
        nose,
        feed,
        internal,
        left_hand: thread.hand == Hand::Left,
    })
}

/// A tool's nose that suits `thread` where nobody says otherwise (common practice): for a
/// rounded root half its own radius; for a flat one nine tenths of the flat at the greatest
/// depth, the whole of it in a square thread; to 0.01 mm and at least that.
///
/// # Errors
/// [`Cause::Overflow`].
pub fn nose(thread: &Thread) -> Result<Nose, Error> {
    let external = thread.form.external;
    let hundredths = |mm: Fraction| {
        let least = Fraction::new(1, 100)?;
        Ok::<_, Error>(Length::from_mm(super::to_nearest(mm, 100)?.max(least)))
    };
    if external.root_flat.is_zero() {
        let radius = external.root_radius.checked_mul(thread.pitch.mm())?;
        return Ok(Nose::Radius(hundredths(radius.over(2)?)?));
    }
    let flat = thread.form.at(external.root_flat, thread.pitch)?;
    if thread.form.kind == Kind::Square {
        return Ok(Nose::Flat(flat));
    }
    // The clearance narrows the groove on both sides.
    let turns = float::of(half_angle(thread)?.turns());
    let clearance = float::of(thread.form.clearance(thread.pitch)?.mm());
    let deepest = float::of(flat.mm()) - 2.0 * clearance * float::tan_turns(turns);
    let overflow = Error::new(Field::Form, Cause::Overflow);
    Ok(Nose::Flat(hundredths(float::nearest(deepest * 0.9, 1_000_000).ok_or(overflow)?)?))
}

/// A first and a least cut to start from for a thread `depth` deep along the slide: a
/// third of it, at most 0.25 mm, and a thirteenth, at most 0.05 mm (common practice for
/// steel on a small lathe).
///
/// # Errors
/// [`Cause::Overflow`].
pub fn cuts(depth: Length) -> Result<(Length, Length), Error> {
    let share = |part: i64, most: Fraction| {
        let share = super::to_nearest(depth.mm().over(part)?, 1000)?;
        Ok::<_, Error>(Length::from_mm(share.min(most)))
    };
    Ok((share(3, Fraction::new(1, 4)?)?, share(13, Fraction::new(1, 20)?)?))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::thread::limits::{Side, limits, usual};
    use crate::thread::{name, wires};

    /// Every usual class of a thread: its wires have a range, and a sharp tool reaches its depth.
    #[track_caller]
    fn check(text: &str) {
        let thread = name::read(text).unwrap()[0].thread;
        for &class in usual(thread.form.kind) {
            let Ok(limits) = limits(&thread, class) else { continue };
            let internal = class.side == Side::Internal;
            let blank = blank(&thread, Some(&limits), internal).unwrap();
            let nose = nose(&thread).unwrap();
            let ask = infeed(&thread, Some(&limits), internal, blank, nose, Feed::Plunge).unwrap();
            let depths = super::super::infeed::infeed(&ask);
            assert!(depths.is_ok_and(|d| d.straight.value > 0.0), "{text} {class:?} {ask:?}");
            if !internal {
                let measured = measured(&thread, Some(&limits)).unwrap();
                let range = wires::range(&measured);
                assert!(range.is_ok(), "{text} {class:?} {range:?} {measured:?}");
            }
        }
    }

    #[test]
    fn every_family_can_be_cut_and_screws_be_measured() {
        for text in [
            "M6x0.75",
            "M1",
            "M64",
            "1/4 UNC",
            "1/4 BSF",
            "1/4x40 ME",
            "2 BA",
            "12 BA",
            "G 1/8",
            "Tr16x4",
            "1/2-10 Acme",
            "3/8 BSW",
        ] {
            check(text);
        }
    }

    #[test]
    fn a_square_thread_has_no_wires_but_a_depth() {
        let mm = |n| Length::from_mm(Fraction::whole(n));
        let square =
            Thread::new(crate::thread::Form::SQUARE, mm(20), mm(4), 1, Hand::Right).unwrap();
        assert_eq!(measured(&square, None).unwrap_err().field, Field::Form);
        let nose = Nose::Flat(mm(2));
        let ask = infeed(&square, None, false, square.major, nose, Feed::Plunge).unwrap();
        let depths = super::super::infeed::infeed(&ask).unwrap();
        assert!((depths.straight.value - 2.0).abs() < 1e-9);
    }

    #[test]
    fn the_arbor_of_the_clock() {
        let thread = name::read("M6x0.75").unwrap()[0].thread;
        let limits = limits(&thread, usual(thread.form.kind)[0]).unwrap();
        let measured = measured(&thread, Some(&limits)).unwrap();
        let range = wires::range(&measured).unwrap();
        // (d − d2) and (H28): 0.412 and 0.664 by hand.
        assert!((range.least.value - 0.412).abs() < 0.002, "{range:?}");
        assert!((range.greatest.value - 0.664).abs() < 0.002, "{range:?}");
    }
}
