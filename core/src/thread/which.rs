//! Which thread is it? From a measured diameter and pitch, the listed threads it
//! may be, and what tells look-alikes apart.
use super::limits::Side;
use super::{Series, Size, Thread};
use crate::error::{Cause, Error, Field};
use crate::list::List;
use crate::measure::Length;
use crate::number::Fraction;

/// Threads offered.
pub const MAX_CANDIDATES: usize = 8;

/// What was measured.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Measured {
    /// Screw or nut.
    pub side: Side,
    /// Outside diameter of the screw, or bore of the nut.
    pub diameter: Length,
    /// Pitch; 25.4 mm over the threads per inch.
    pub pitch: Length,
}

/// What tells a candidate from the nearest one.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Reason {
    /// The angle of the form: try a 55° and a 60° gauge.
    Angle,
    /// The pitch: over twenty threads it runs this much longer, below nought shorter.
    OverTwenty(Length),
    /// The diameter: this much larger, below nought smaller.
    Diameter(Length),
}

/// A thread it may be.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Candidate {
    /// The thread.
    pub thread: Thread,
    /// Where it is listed.
    pub listed: (Series, Size),
    /// Measured diameter less basic one: the major of a screw, the bore of a nut.
    pub off_diameter: Length,
    /// Measured pitch less its own.
    pub off_pitch: Length,
    /// What tells it from the first candidate; none for that one itself and for one
    /// that only a name tells apart.
    pub reasons: List<Reason, 3>,
}

/// The threads that `measured` may be, nearest first.
///
/// Nearest is the least sum, in pitches, of how far off the diameter is and how far off
/// twenty threads would be: a pitch gauge shows a tenth of a pitch over twenty threads. A
/// screw may measure up to half a pitch small (worn, or cut to a free class) and a quarter
/// large; a nut the other way.
///
/// ```
/// use handturn::measure::Length;
/// use handturn::number::Fraction;
/// use handturn::thread::{Series, limits::Side, which::{Measured, Reason, which}};
/// // About 0.187 in outside, 32 to the inch.
/// let diameter = Length::from_inches(Fraction::new(187, 1000)?)?;
/// let pitch = Length::from_inches(Fraction::new(1, 32)?)?;
/// let found = which(&Measured { side: Side::External, diameter, pitch })?;
/// let names: Vec<_> = found.iter().map(|one| one.listed.0).collect();
/// assert_eq!(names[..4], [Series::Bsf, Series::Cycle, Series::Unf, Series::Ba]);
/// assert_eq!(found[2].reasons[0], Reason::Angle); // 3/16 BSF has 55°, 10-32 UNF has 60°
/// # Ok::<(), handturn::Error>(())
/// ```
///
/// # Errors
/// [`Cause::OutOfRange`] for a pitch or diameter of nought or below; [`Cause::Overflow`].
pub fn which(measured: &Measured) -> Result<List<Candidate, MAX_CANDIDATES>, Error> {
    super::within(crate::bounds::PITCH_UM, measured.pitch)?;
    super::within(crate::bounds::MAJOR_UM, measured.diameter)?;
    let mut list: List<Candidate, MAX_CANDIDATES> = List::new();
    let mut scores: List<Fraction, MAX_CANDIDATES> = List::new();
    for series in Series::ALL {
        // A stub screw measures as an Acme one: only its depth tells them apart.
        if series == Series::StubAcme && measured.side == Side::External {
            continue;
        }
        for size in (0..series.sizes()).filter_map(|k| series.size(k)) {
            let Some((score, candidate)) = score(measured, series, size)? else { continue };
            let again = |other: &&Candidate| {
                let (a, b) = (&other.thread, &candidate.thread);
                a.form == b.form && a.major == b.major && a.pitch == b.pitch
            };
            if list.iter().find(again).is_none() {
                let place = scores.iter().take_while(|other| **other <= score).count();
                let _ = scores.insert(place, score);
                let _ = list.insert(place, candidate);
            }
        }
    }
    if let Some(first) = list.first().map(|first| first.thread) {
        for candidate in list.iter_mut().skip(1) {
            candidate.reasons = reasons(&first, &candidate.thread)?;
        }
    }
    Ok(list)
}

/// How far off a size is, in pitches; `None` where it cannot be meant.
fn score(
    measured: &Measured,
    series: Series,
    size: Size,
) -> Result<Option<(Fraction, Candidate)>, Error> {
    let thread = series.thread(size)?;
    let pitch = thread.pitch.mm();
    let basic = match measured.side {
        Side::External => thread.major,
        Side::Internal => thread.minor_internal()?,
    };
    let off = |measured: Length, basic: Length| {
        let exact = measured.mm().checked_sub(basic.mm())?;
        super::to_nearest(exact, 1_000_000)
    };
    let (diameter, along) = (off(measured.diameter, basic)?, off(measured.pitch, thread.pitch)?);
    let thousandths = |value: Fraction| value.checked_div(pitch)?.times(1000)?.nearest();
    let (by, over) = (thousandths(diameter)?.0, thousandths(along.times(20)?)?.0);
    // Small is the usual way off for a screw, large for a nut.
    let usual = if measured.side == Side::External { by.saturating_neg() } else { by };
    if !(-250..=500).contains(&usual) || over.saturating_abs() > 1000 {
        return Ok(None);
    }
    let sum = by.saturating_abs().saturating_add(over.saturating_abs());
    let candidate = Candidate {
        thread,
        listed: (series, size),
        off_diameter: Length::from_mm(diameter),
        off_pitch: Length::from_mm(along),
        reasons: List::new(),
    };
    Ok(Some((Fraction::whole(sum), candidate)))
}

/// What tells `other` from `first`, what is seen soonest first: the angle, then the pitch,
/// then the diameter.
///
/// # Errors
/// [`Cause::Overflow`].
pub fn reasons(first: &Thread, other: &Thread) -> Result<List<Reason, 3>, Error> {
    let mut found = List::new();
    let full = |_| Error::new(Field::Thread, Cause::TooMany { most: 3 });
    if first.form.angle != other.form.angle {
        found.push(Reason::Angle).map_err(full)?;
    }
    let less = |a: Length, b: Length| a.mm().checked_sub(b.mm());
    let pitch = less(other.pitch, first.pitch)?;
    if !pitch.is_zero() {
        found.push(Reason::OverTwenty(Length::from_mm(pitch.times(20)?))).map_err(full)?;
    }
    let diameter = less(other.major, first.major)?;
    if !diameter.is_zero() {
        found.push(Reason::Diameter(Length::from_mm(diameter))).map_err(full)?;
    }
    Ok(found)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn mm(thousandths: i64) -> Length {
        Length::from_mm(Fraction::new(thousandths, 1000).unwrap())
    }

    fn inches(num: i64, den: i64) -> Length {
        Length::from_inches(Fraction::new(num, den).unwrap()).unwrap()
    }

    /// A screw and a nut of basic size come out first, as themselves or as a twin that
    /// only a name tells apart, and all that follows is no nearer.
    #[test]
    fn every_listed_thread_finds_itself() {
        for series in Series::ALL {
            for k in (0..series.sizes()).step_by(3) {
                let thread = series.thread(series.size(k).unwrap()).unwrap();
                let bore = thread.minor_internal().unwrap();
                for (side, diameter) in [(Side::External, thread.major), (Side::Internal, bore)] {
                    // Acme stands for a stub screw.
                    if series == Series::StubAcme && side == Side::External {
                        continue;
                    }
                    let found = which(&Measured { side, diameter, pitch: thread.pitch }).unwrap();
                    let first = &found[0];
                    let zero = Fraction::ZERO;
                    assert_eq!((first.off_diameter.mm(), first.off_pitch.mm()), (zero, zero));
                    assert!(first.reasons.is_empty());
                    let same = |one: &Candidate| one.thread == thread;
                    assert!(found.iter().any(same), "{thread:?}");
                }
            }
        }
    }

    #[test]
    fn look_alikes_are_told_apart() {
        let screw =
            |diameter, pitch| which(&Measured { side: Side::External, diameter, pitch }).unwrap();
        // 1/2-12 BSW and 1/2-13 UNC.
        let half = screw(inches(495, 1000), inches(1, 12));
        assert_eq!(half[0].listed.0, Series::Bsw);
        let unc = half.iter().find(|one| one.listed.0 == Series::Un12).unwrap();
        assert_eq!(unc.reasons.as_ref(), [Reason::Angle]);
        // A screw measures a little under its size.
        let seven = screw(mm(6900), mm(1000));
        assert_eq!(seven[0].thread.major, mm(7000));
        // BA beside metric: 6 BA (2.8, 0.53) is near neither M2.5 nor M3.
        let six = screw(mm(2790), mm(530));
        assert_eq!(six[0].listed.0, Series::Ba);
        let over = |reason: &Reason| matches!(reason, Reason::OverTwenty(_));
        assert!(six.iter().skip(1).all(|one| one.reasons.iter().any(over)));
        assert!(screw(mm(3000), mm(5000)).is_empty());
    }

    #[test]
    fn nonsense_is_refused() {
        let error = which(&Measured { side: Side::Internal, diameter: mm(0), pitch: mm(1000) });
        assert_eq!(error.unwrap_err().field, Field::Major);
        let error = which(&Measured { side: Side::Internal, diameter: mm(6000), pitch: mm(-1) });
        assert_eq!(error.unwrap_err().field, Field::Pitch);
    }
}
