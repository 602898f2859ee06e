//! Threads that end at a shoulder or in a blind hole: where to start and stop, how
//! long the groove at the end must be for the speed, how deep to drill.
//!
//! Method: from seeing the mark to a standing carriage the spindle makes
//! rpm × reaction turns and the tool goes on by as many leads; the groove takes that
//! and the tool's own width. Three pitches clear of the work take up the slack of
//! gears, screw and half nuts before the tool cuts (common practice).
//! Speeds found here are starting points, not promises of anybody's reaction.
//!
//! ```
//! use handturn::measure::{Angle, Length};
//! use handturn::number::Fraction;
//! use handturn::thread::blind::{self, Shoulder};
//! // M6x0.75 up to a shoulder, 60 turns a minute, half a second, a tool 2 mm wide.
//! let mm = |hundredths| Fraction::new(hundredths, 100).map(Length::from_mm);
//! let shoulder = Shoulder { pitch: mm(75)?, starts: 1, rpm: 60, reaction_ms: 500,
//!     tool_width: mm(200)?, length: mm(1000)? };
//! let stop = blind::stop(&shoulder)?;
//! assert_eq!(stop.start_clear, mm(225)?); // three pitches
//! assert_eq!(stop.groove, Length::from_mm(Fraction::new(19, 8)?)); // 0.375 + 2
//! assert_eq!(blind::fastest(&shoulder, mm(300)?)?, 160);
//! // Drilled with a 118° point for a plug tap of 5 threads lead: 10 mm of full thread.
//! let point = Angle::from_degrees(Fraction::whole(118))?;
//! let drill = blind::drill(mm(1000)?, mm(75)?, Fraction::whole(5), mm(525)?, point)?;
//! assert_eq!(drill.full_diameter, mm(1375)?);
//! assert!((drill.to_point.value - 15.327).abs() < 0.001);
//! # Ok::<(), handturn::Error>(())
//! ```
use super::given::{lead, minus, plus, size, times};
use crate::bounds::{REACTION_MS, RPM};
use crate::error::{Cause, Error, Field};
use crate::measure::{Angle, Length};
use crate::number::{
    Approx, Fraction,
    float::{of, tan_turns},
};

/// Pitches to start clear of the work.
pub const CLEAR_PITCHES: i64 = 3;

/// A thread cut up to a shoulder.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Shoulder {
    /// From one thread to the next.
    pub pitch: Length,
    /// Starts: the lead is as many pitches.
    pub starts: u32,
    /// Spindle turns in a minute.
    pub rpm: u32,
    /// Milliseconds from seeing the mark to a standing carriage.
    pub reaction_ms: u32,
    /// Width of the tool at the depth of the groove.
    pub tool_width: Length,
    /// Length of the thread, from the end of the work to the groove.
    pub length: Length,
}

/// Where to start and to stop; all exact.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Stop {
    /// How far off the work's end the tool stands when the half nuts close.
    pub start_clear: Length,
    /// How far the tool still goes after the mark is seen.
    pub runs_on: Length,
    /// The shortest groove that takes it.
    pub groove: Length,
    /// Where the groove ends and the carriage stop stands, from the work's end.
    pub stop_at: Length,
}

/// How deep to drill for a blind tapped hole.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Drill {
    /// Depth at full diameter: thread and the tap's lead.
    pub full_diameter: Length,
    /// Depth to the drill's point, in millimetres.
    pub to_point: Approx,
}

fn checked(shoulder: &Shoulder) -> Result<Length, Error> {
    RPM.check(i64::from(shoulder.rpm))?;
    REACTION_MS.check(i64::from(shoulder.reaction_ms))?;
    size(shoulder.tool_width, Field::Tool)?;
    size(shoulder.length, Field::Length)?;
    lead(shoulder.pitch, shoulder.starts)
}

/// Start, run-on and groove of a thread cut up to a shoulder.
///
/// # Errors
/// Lengths, starts, speed or reaction out of bounds.
pub fn stop(shoulder: &Shoulder) -> Result<Stop, Error> {
    let lead = checked(shoulder)?;
    let turns = i64::from(shoulder.rpm).saturating_mul(i64::from(shoulder.reaction_ms));
    let turns = Fraction::new(turns, 60_000)?;
    let runs_on = Length::from_mm(lead.mm().checked_mul(turns)?);
    let groove = plus(runs_on, shoulder.tool_width, Field::Length)?;
    Ok(Stop {
        start_clear: times(shoulder.pitch, CLEAR_PITCHES, Field::Pitch)?,
        runs_on,
        groove,
        stop_at: plus(shoulder.length, groove, Field::Length)?,
    })
}

/// The most turns in a minute at which a groove of `groove` still takes the run-on
/// (the shoulder's own speed is not looked at); a starting point.
///
/// # Errors
/// As [`stop`]; [`Cause::Conflict`] on the speed where the groove is too short even
/// for one turn a minute: turn the spindle by hand.
#[doc(alias = "rpm limit")]
pub fn fastest(shoulder: &Shoulder, groove: Length) -> Result<u32, Error> {
    let lead = checked(&Shoulder { rpm: RPM.least, ..*shoulder })?;
    size(groove, Field::Length)?;
    let room = minus(groove, shoulder.tool_width, Field::Length)?;
    let per_lead = room.mm().checked_div(lead.mm())?;
    let rpm = per_lead.times(60_000)?.over(i64::from(shoulder.reaction_ms))?.floor();
    if rpm < i64::from(RPM.least) {
        return Err(Error::new(Field::Speed, Cause::Conflict));
    }
    Ok(u32::try_from(rpm).unwrap_or(RPM.greatest).min(RPM.greatest))
}

/// How deep to drill for `thread` of full thread: the tap's lead of `tap_lead`
/// threads comes on top, and the drill's point beyond it.
///
/// # Errors
/// Lengths out of bounds; a tap's lead beyond 30 threads; a point angle outside 60° to 180°.
pub fn drill(
    thread: Length,
    pitch: Length,
    tap_lead: Fraction,
    drill: Length,
    point: Angle,
) -> Result<Drill, Error> {
    size(thread, Field::Length)?;
    size(pitch, Field::Pitch)?;
    let diameter = size(drill, Field::Diameter)?;
    if tap_lead.is_negative() || tap_lead > Fraction::whole(30) {
        return Err(Error::new(Field::Tool, Cause::OutOfRange { least: 0, greatest: 30 }));
    }
    let degrees = point.degrees()?;
    if degrees < Fraction::whole(60) || degrees > Fraction::whole(180) {
        return Err(Error::new(Field::Angle, Cause::OutOfRange { least: 60, greatest: 180 }));
    }
    let chamfer = Length::from_mm(pitch.mm().checked_mul(tap_lead)?);
    let full_diameter = plus(thread, chamfer, Field::Length)?;
    // The point is as high as half the diameter times the cotangent of half its angle.
    let height = diameter / 2.0 * tan_turns(0.25 - of(point.turns()) / 2.0);
    let value = of(full_diameter.mm()) + height;
    let bound = 16.0 * f64::EPSILON * (value + diameter);
    Ok(Drill { full_diameter, to_point: Approx { value, bound } })
}

/// What to do, in order, to pick up a thread again after the tool was reground or the
/// work was taken out.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum PickUp {
    /// Set the tool square to the work, clear of it.
    SetTool,
    /// Close the half nuts and leave them closed.
    CloseNuts,
    /// Turn the spindle forwards by hand so that the carriage moves at least this far:
    /// all slack then lies on the side on which it lies in the cut.
    Forwards(Length),
    /// Without turning back, stop with the tool opposite the thread.
    Stop,
    /// Bring the tool into the groove with cross slide and top slide until both flanks show the same light.
    IntoGroove,
    /// Set both dials to zero there, and draw out.
    ZeroDials,
    /// Take a pass that does not cut, and look.
    TryPass,
}

/// The steps of picking up a thread of `pitch`, where gears, screw and nuts have
/// `slack` along the bed: the slack and one pitch must be run off, or three pitches
/// where that is more.
///
/// # Errors
/// A pitch or slack out of bounds.
pub fn pick_up(pitch: Length, slack: Length) -> Result<[PickUp; 7], Error> {
    size(pitch, Field::Pitch)?;
    super::given::from_nought(slack, Field::Slack)?;
    let three = times(pitch, CLEAR_PITCHES, Field::Pitch)?;
    let forwards = plus(slack, pitch, Field::Slack)?.max(three);
    Ok([
        PickUp::SetTool,
        PickUp::CloseNuts,
        PickUp::Forwards(forwards),
        PickUp::Stop,
        PickUp::IntoGroove,
        PickUp::ZeroDials,
        PickUp::TryPass,
    ])
}

#[cfg(test)]
mod tests {
    use super::*;

    fn mm(num: i64, den: i64) -> Length {
        Length::from_mm(Fraction::new(num, den).unwrap())
    }

    #[test]
    fn the_fastest_speed_is_the_last_that_fits_its_groove() {
        for (pitch, starts, reaction_ms) in [(3, 1, 500), (2, 3, 250), (1, 1, 1000), (5, 2, 3000)] {
            for groove in [mm(5, 2), mm(4, 1), mm(17, 2), mm(12, 1)] {
                let at = |rpm| Shoulder {
                    pitch: mm(pitch, 4),
                    starts,
                    rpm,
                    reaction_ms,
                    tool_width: mm(2, 1),
                    length: mm(20, 1),
                };
                let rpm = fastest(&at(1), groove).unwrap();
                assert!(stop(&at(rpm)).unwrap().groove <= groove, "{rpm}");
                assert!(stop(&at(rpm + 1)).unwrap().groove > groove, "{rpm}");
            }
        }
    }

    #[test]
    fn what_can_not_be_done_says_so() {
        let shoulder = Shoulder {
            pitch: mm(3, 2),
            starts: 1,
            rpm: 60,
            reaction_ms: 500,
            tool_width: mm(2, 1),
            length: mm(20, 1),
        };
        let cause = |groove| fastest(&shoulder, groove).map_err(|e| (e.field, e.cause));
        assert_eq!(cause(mm(2, 1)), Err((Field::Speed, Cause::Conflict)));
        let still = stop(&Shoulder { rpm: 0, ..shoulder }).map_err(|e| e.cause);
        assert_eq!(still, Err(Cause::OutOfRange { least: 1, greatest: 5000 }));
        let flat = drill(
            mm(10, 1),
            mm(1, 1),
            Fraction::whole(2),
            mm(5, 1),
            Angle::from_turns(Fraction::new(1, 2).unwrap()),
        );
        let flat = flat.unwrap();
        assert!((flat.to_point.value - 12.0).abs() < 1e-12); // 180°: no point at all
        // Slack beyond three pitches must be run off too.
        let run = |slack| pick_up(mm(1, 1), slack).unwrap()[2];
        assert_eq!(run(mm(1, 2)), PickUp::Forwards(mm(3, 1)));
        assert_eq!(run(mm(4, 1)), PickUp::Forwards(mm(5, 1)));
    }
}
