//! From one start of a thread to the next: by the top slide, by the first driving
//! gear, by the spindle, or by moving the carriage with the half nuts open.
//!
//! ```
//! use handturn::measure::Length;
//! use handturn::number::Fraction;
//! use handturn::thread::starts::{by_carriage, by_gear, gear_multiple};
//! // A double thread, 1 1/4 single threads an inch, on a screw of 4: lead 0.8 in.
//! let inch = |num, den| Fraction::new(num, den).and_then(Length::from_inches);
//! assert_eq!(by_carriage(inch(4, 5)?, 2, inch(1, 4)?)?, Some(inch(2, 1)?));
//! // Three starts with 60 teeth on the spindle: 20 teeth on. 64 would not do.
//! assert_eq!(by_gear(60, 3, Fraction::ONE)?, 20);
//! assert!(by_gear(64, 3, Fraction::ONE).is_err());
//! assert_eq!(gear_multiple(3, Fraction::ONE)?, 3);
//! # Ok::<(), handturn::Error>(())
//! ```
use super::dial::{Dial, Reading, Runs};
use super::given::{over, plus, size, times};
use crate::bounds::{STARTS, TEETH};
use crate::divide::Parts;
use crate::error::{Cause, Error, Field};
use crate::measure::Length;
use crate::number::Fraction;

/// Starts where there is something to index.
fn several(starts: u32) -> Result<u32, Error> {
    if starts < 2 {
        let cause = Cause::OutOfRange { least: 2, greatest: STARTS.greatest };
        return Err(Error::new(Field::Starts, cause));
    }
    STARTS.check_u32(i64::from(starts))
}

/// The setting of start `start` (0 for the first) by a top slide set along the bed, and
/// what rounding to a mark leaves: one pitch for each start, from its absolute place.
///
/// # Errors
/// Pitch, starts or dial out of bounds; a start beyond the last.
pub fn by_slide(
    pitch: Length,
    starts: u32,
    start: u32,
    dial: &Dial,
) -> Result<(Reading, Length), Error> {
    size(pitch, Field::Pitch)?;
    let greatest = several(starts)?.saturating_sub(1);
    if start > greatest {
        return Err(Error::new(Field::Starts, Cause::OutOfRange { least: 0, greatest }));
    }
    let (marks, left) = dial.nearest(times(pitch, i64::from(start), Field::Pitch)?)?;
    Ok((dial.at(marks, Runs::Forwards)?, left))
}

/// What the teeth of the first driver must be a multiple of, where that gear turns
/// `ratio` times while the spindle turns once.
///
/// # Errors
/// Starts out of bounds; a ratio of nought or below.
pub fn gear_multiple(starts: u32, ratio: Fraction) -> Result<u32, Error> {
    let starts = several(starts)?;
    if ratio.is_zero() || ratio.is_negative() {
        return Err(Error::new(Field::Ratio, Cause::Zero));
    }
    let step = ratio.over(i64::from(starts)).map_err(|e| e.of(Field::Ratio))?;
    u32::try_from(step.den()).map_err(|_| Error::new(Field::Ratio, Cause::Overflow))
}

/// By how many teeth the first driver is turned on for the next start, out of mesh
/// with the gear it drives, when it turns `ratio` times to one of the spindle.
///
/// # Errors
/// As [`gear_multiple`]; teeth out of bounds; [`Cause::NotMultiple`] where the teeth
/// can't be parted so, with what they must be a multiple of.
pub fn by_gear(teeth: u32, starts: u32, ratio: Fraction) -> Result<u32, Error> {
    TEETH.check(i64::from(teeth))?;
    let of = gear_multiple(starts, ratio)?;
    let on = ratio.times(i64::from(teeth)).and_then(|all| all.over(i64::from(starts)))?;
    if !on.is_whole() {
        return Err(Error::new(Field::Gears, Cause::NotMultiple { of }));
    }
    u32::try_from(on.num()).map_err(|_| Error::new(Field::Gears, Cause::Overflow))
}

/// The question for dividing the spindle, or a faceplate with as many slots: as many
/// parts as there are starts.
///
/// # Errors
/// Starts out of bounds, fewer than two among them.
pub fn by_spindle(starts: u32) -> Result<Parts, Error> {
    Ok(Parts { count: several(starts)?, every: 1 })
}

/// How far the carriage is moved with the spindle standing and the half nuts open, so
/// that they close again on the screw and the tool stands at the next start: a pitch
/// and the fewest whole leads that come to whole threads of the screw. `None` where no
/// number of leads does.
///
/// # Errors
/// Lead, screw or starts out of bounds.
pub fn by_carriage(lead: Length, starts: u32, screw: Length) -> Result<Option<Length>, Error> {
    size(lead, Field::Pitch)?;
    size(screw, Field::Pitch)?;
    let pitch = over(lead, i64::from(several(starts)?), Field::Pitch)?;
    // After as many leads as the reduced ratio's denominator everything repeats.
    let ratio = lead.mm().checked_div(screw.mm()).map_err(|e| e.of(Field::Pitch))?;
    let mut moved = pitch;
    for _ in 0..ratio.den().min(i64::from(MOST_LEADS)) {
        if moved.mm().checked_div(screw.mm())?.is_whole() {
            return Ok(Some(moved));
        }
        moved = plus(moved, lead, Field::Pitch)?;
    }
    Ok(None)
}

/// Leads after which nobody moves a carriage by hand.
const MOST_LEADS: u32 = 1_000;

#[cfg(test)]
mod tests {
    use super::*;
    use crate::thread::dial::Reads;

    fn mm(num: i64, den: i64) -> Length {
        Length::from_mm(Fraction::new(num, den).unwrap())
    }

    #[test]
    fn gears_part_into_starts_only_where_counting_says_so() {
        for starts in 2..=12_u32 {
            for ratio in [(1, 1), (1, 2), (2, 3), (3, 2)] {
                let ratio = Fraction::new(ratio.0, ratio.1).unwrap();
                let multiple = gear_multiple(starts, ratio).unwrap();
                for teeth in 8..=127_u32 {
                    // Slow: after as many equal steps as there are starts the gear has
                    // turned as often as one turn of the spindle turns it.
                    let all = ratio.times(i64::from(teeth)).unwrap();
                    let steps = |on: u32| Fraction::whole(i64::from(on * starts));
                    let slow = (1..=2 * teeth).find(|&on| steps(on) == all);
                    let found = by_gear(teeth, starts, ratio);
                    assert_eq!(found.ok(), slow, "{teeth} in {starts} at {ratio}");
                    assert_eq!(teeth % multiple == 0, slow.is_some());
                }
            }
        }
        let lacks = by_gear(64, 3, Fraction::ONE).map_err(|e| e.cause);
        assert_eq!(lacks, Err(Cause::NotMultiple { of: 3 }));
        let one = gear_multiple(1, Fraction::ONE).map_err(|e| e.cause);
        assert_eq!(one, Err(Cause::OutOfRange { least: 2, greatest: 60 }));
    }

    #[test]
    fn the_slide_steps_by_pitches_without_building_up() {
        let dial = Dial { division: mm(1, 50), reads: Reads::Travel, marks: 100 };
        for start in 0..5 {
            let (reading, left) = by_slide(mm(5, 3), 5, start, &dial).unwrap();
            let wanted = Fraction::new(5 * i64::from(start), 3).unwrap();
            assert_eq!(reading.travel.mm().checked_add(left.mm()).unwrap(), wanted);
            assert!(left.mm().abs() <= Fraction::new(1, 100).unwrap());
        }
        assert!(by_slide(mm(5, 3), 5, 5, &dial).is_err());
    }

    #[test]
    fn the_carriage_moves_to_the_next_start_on_whole_threads() {
        for screw in [mm(3, 1), mm(6, 1), mm(127, 40), mm(127, 20)] {
            for (lead, starts) in [(mm(3, 1), 2), (mm(8, 1), 4), (mm(15, 2), 3), (mm(127, 10), 5)] {
                let parts = |by: Length, moved: Length| moved.mm().checked_div(by.mm()).unwrap();
                let pitch = lead.mm().over(i64::from(starts)).unwrap();
                let on = |n: i64| {
                    let leads = lead.mm().times(n).unwrap();
                    Length::from_mm(pitch.checked_add(leads).unwrap())
                };
                let slow = (0..300).map(on).find(|&moved| parts(screw, moved).is_whole());
                assert_eq!(by_carriage(lead, starts, screw).unwrap(), slow, "{lead:?} {screw:?}");
            }
        }
    }
}
