//! A fine dial of one's own: a screw with a dial pushes the plate round by an arm.
//!
//! Geometry: the screw's line lies across the arm, `radius` from the plate's centre, and
//! the arm slides along what the screw moves. Where the screw has moved x from its middle,
//! the plate has turned by atan(x ÷ radius); the dial tells x in equal steps. Near the
//! middle a turn of the dial turns the plate by lead ÷ (2π · radius) of a turn; further
//! out by less. The radius at which a mark is exactly what it is called, near the middle,
//! is lead ÷ (2π · shift), the shift that of one turn of the dial.
//!
//! What the plate turns, the work turns by the worm's ratio less; errors are told at the
//! work.
use crate::bounds;
use crate::error::{Cause, Error, Field};
use crate::head::FineDial;
use crate::list::List;
use crate::measure::{Angle, Length, given::size};
use crate::number::{Approx, Fraction, float};

/// The screw of a fine dial, its arm and the head they belong to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Arm {
    /// How far one turn of the dial moves the screw.
    pub lead: Length,
    /// From the plate's centre to the line of the screw.
    pub radius: Length,
    /// Worm ratio of the head.
    pub ratio: Fraction,
}

/// A round step of the work for one mark, and what makes it so.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Step {
    /// By how much one mark turns the work.
    pub at_work: Angle,
    /// Marks on the dial.
    pub marks: u32,
    /// The radius of the arm for it, in millimetres.
    pub radius_mm: Approx,
}

/// Steps that are round at the work, in arc-seconds.
const STEPS: [i64; 11] = [1, 2, 3, 5, 10, 15, 20, 30, 60, 120, 300];

/// Marks between which a step is offered: fewer are coarse, more run together.
const MARKS: core::ops::RangeInclusive<i64> = 10..=250;

/// A fine dial as it is to be made.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Wanted {
    /// Its screw and arm, as they are or will be made.
    pub arm: Arm,
    /// Marks on the dial.
    pub marks: u32,
    /// What one mark is called, at the work.
    pub at_work: Angle,
    /// Turns of the dial used, to each side of its middle.
    pub turns: Fraction,
    /// Greatest error that will do, at the work.
    pub within: Angle,
}

/// What comes of a fine dial.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Designed {
    /// The radius at which a mark near the middle is exactly what it is called, in
    /// millimetres.
    pub radius_mm: Approx,
    /// What one mark near the middle is with the radius as given, in arc-seconds at the work.
    pub mark_arcsec: Approx,
    /// The greatest error within the turns used, in arc-seconds at the work: what the
    /// work has turned more than the dial tells; below nought where it is less.
    pub worst_arcsec: Approx,
    /// The most marks to each side of the middle for which no error is greater than will do.
    pub most_marks: u32,
    /// The fewest holes of a circle of which the turns used cover half a space to each
    /// side: with fewer, places between holes are out of the dial's reach.
    pub least_holes: u32,
    /// The dial as a head has it, its slack none.
    pub dial: FineDial,
}

/// By how much one turn of the dial turns the plate near its middle, in arc-seconds.
///
/// # Errors
/// [`Field::Screw`] for a lead, [`Field::Length`] for a radius of nought or out of bounds.
pub fn turn(lead: Length, radius: Length) -> Result<Approx, Error> {
    let (lead, radius) = (size(lead, Field::Screw)?, size(radius, Field::Length)?);
    Ok(near(lead / (2.0 * float::PI * radius) * SECONDS))
}

/// The radius of the arm, in millimetres, at which one turn of the dial turns the plate by
/// `shift` near its middle.
///
/// # Errors
/// [`Field::Screw`] for a lead of nought or out of bounds; [`Field::FineDial`] with
/// [`Cause::Conflict`] for a shift that is not above nought or above a turn.
pub fn radius(lead: Length, shift: Angle) -> Result<Approx, Error> {
    let lead = size(lead, Field::Screw)?;
    if shift <= Angle::ZERO || shift > Angle::TURN {
        return Err(CONFLICT);
    }
    Ok(near(lead / (2.0 * float::PI * float::of(shift.turns()))))
}

/// By how much the plate has turned more than the dial tells after `turns` of it from the
/// middle, in arc-seconds of the plate; each turn is called `shift`.
///
/// # Errors
/// As [`turn`] and [`radius`]; [`Field::FineDial`] with [`Cause::Conflict`] where the screw
/// has moved further than the radius to either side.
pub fn error(arm: &Arm, shift: Angle, turns: Fraction) -> Result<Approx, Error> {
    radius(arm.lead, shift)?;
    size(arm.radius, Field::Length)?;
    let moved = arm.lead.mm().checked_mul(turns).map_err(of)?;
    if moved.abs() > arm.radius.mm() {
        return Err(CONFLICT);
    }
    let across = float::of(moved.checked_div(arm.radius.mm()).map_err(of)?);
    let told = float::of(shift.turns().checked_mul(turns).map_err(of)?);
    Ok(off(across, told))
}

/// For each round step of the work the marks that make it nearly so on `arm`, and the
/// radius that makes it so; only where 10 to 250 marks do.
///
/// # Errors
/// As [`turn`]; [`bounds::RATIO_PART`]; [`Cause::Overflow`].
pub fn steps(arm: &Arm) -> Result<List<Step, 11>, Error> {
    let turn = turn(arm.lead, arm.radius)?.value;
    ratio(arm.ratio)?;
    let mut found = List::new();
    for seconds in STEPS {
        let at_plate = arm.ratio.times(seconds).map_err(of)?;
        let Some(marks) = float::nearest(turn / float::of(at_plate), 1) else { continue };
        if !MARKS.contains(&marks.num()) {
            continue;
        }
        let shift = Angle::from_arcsec(at_plate.checked_mul(marks).map_err(of)?)?;
        let marks = u32::try_from(marks.num()).unwrap_or(0);
        let at_work = Angle::from_arcsec(Fraction::whole(seconds))?;
        let step = Step { at_work, marks, radius_mm: radius(arm.lead, shift)? };
        let full = Error::new(Field::FineDial, Cause::TooMany { most: 11 });
        found.push(step).map_err(|_| full)?;
    }
    Ok(found)
}

/// What comes of the fine dial that is wanted.
///
/// # Errors
/// As [`error`], the turns used at most as many as move the screw by the radius to either
/// side; [`bounds::DIAL_MARKS`]; [`bounds::RATIO_PART`]; [`Field::FineDial`] with
/// [`Cause::Conflict`] for turns that are not above nought or an error that is below it.
pub fn design(wanted: &Wanted) -> Result<Designed, Error> {
    let Wanted { arm, marks, at_work, turns, within } = *wanted;
    bounds::DIAL_MARKS.check(i64::from(marks)).map_err(of)?;
    ratio(arm.ratio)?;
    let a_mark = at_work.turns().checked_mul(arm.ratio).map_err(of)?;
    let shift = Angle::from_turns(a_mark.times(i64::from(marks)).map_err(of)?);
    let radius_mm = radius(arm.lead, shift)?;
    if turns <= Fraction::ZERO || within < Angle::ZERO {
        return Err(CONFLICT);
    }
    error(&arm, shift, turns)?;
    let reach = Reach::of(&arm, shift, radius_mm.value)?;
    let (per, ratio) = (i64::from(marks), float::of(arm.ratio));
    let one_turn = turn(arm.lead, arm.radius)?.value;
    let worst = at(reach.worst(float::of(turns)), ratio);
    let travel = Angle::from_turns(shift.turns().checked_mul(turns).map_err(of)?);
    Ok(Designed {
        radius_mm,
        mark_arcsec: near(one_turn / float::of(Fraction::whole(per)) / ratio),
        worst_arcsec: worst,
        most_marks: reach.most(&arm, per, float::of(within.arcsec()?) * ratio)?,
        least_holes: least_holes(travel)?,
        dial: FineDial { shift, marks, travel, slack: Fraction::ZERO },
    })
}

/// Arc-seconds in one turn.
const SECONDS: f64 = 1_296_000.0;

const CONFLICT: Error = Error::new(Field::FineDial, Cause::Conflict);

fn of(error: Error) -> Error {
    error.of(Field::FineDial)
}

fn ratio(ratio: Fraction) -> Result<(), Error> {
    bounds::RATIO_PART.check(ratio.num())?;
    bounds::RATIO_PART.check(ratio.den())?;
    Ok(())
}

/// One over twice the travel, a part of a hole counted as a whole.
fn least_holes(travel: Angle) -> Result<u32, Error> {
    let holes =
        Fraction::new(1, 2).and_then(|half| half.checked_div(travel.turns())).map_err(of)?;
    let up = holes.negated().floor().checked_neg();
    let up = up.and_then(|n| u32::try_from(n).ok());
    up.ok_or(of(Error::new(Field::FineDial, Cause::Overflow)))
}

/// Fewer than eight roundings lie behind `value`.
fn near(value: f64) -> Approx {
    Approx { value, bound: value * 4.0 * f64::EPSILON }
}

/// What the plate has turned, `across` the tangent of its angle, less what is `told` in
/// turns: in arc-seconds. What is left of two that are nearly equal is as unsure as they.
fn off(across: f64, told: f64) -> Approx {
    let turned = float::atan_turns(across);
    let value = (turned - told) * SECONDS;
    Approx { value, bound: (turned.abs() + told.abs()) * SECONDS * 4.0 * f64::EPSILON }
}

/// An error of the plate at the work.
fn at(plate: Approx, ratio: f64) -> Approx {
    let value = plate.value / ratio;
    Approx { value, bound: plate.bound / ratio + value.abs() * f64::EPSILON }
}

/// How errors run over the turns of the dial.
struct Reach {
    /// Of one turn of the dial: how far across the screw goes, as a part of the radius.
    across: f64,
    /// Of one turn of the dial: what is told, in turns of the plate.
    told: f64,
    /// The turn of the dial at which the plate is furthest ahead of it; nought where it
    /// never is.
    ahead: f64,
}

impl Reach {
    fn of(arm: &Arm, shift: Angle, exact: f64) -> Result<Self, Error> {
        let across = float::of(arm.lead.mm().checked_div(arm.radius.mm()).map_err(of)?);
        // The plate turns as told where 1 + (x/radius)² is the exact radius over the arm's.
        let over = exact / float::of(arm.radius.mm()) - 1.0;
        let ahead = if over > 0.0 { float::sqrt(over) / across } else { 0.0 };
        Ok(Self { across, told: float::of(shift.turns()), ahead })
    }

    fn at(&self, turns: f64) -> Approx {
        off(self.across * turns, self.told * turns)
    }

    /// The greatest error from the middle to `turns`, in arc-seconds of the plate: at the
    /// end or where the plate is furthest ahead.
    fn worst(&self, turns: f64) -> Approx {
        let end = self.at(turns);
        let ahead = self.at(self.ahead);
        if self.ahead < turns && ahead.value > end.value.abs() { ahead } else { end }
    }

    /// The most whole marks, `per` to a turn, up to which no error is above `within`
    /// arc-seconds of the plate: as far as the screw may go. Halves what is left each time.
    fn most(&self, arm: &Arm, per: i64, within: f64) -> Result<u32, Error> {
        let all = arm.radius.mm().checked_div(arm.lead.mm()).and_then(|turns| turns.times(per));
        let all = all.map_err(of)?.floor();
        let (mut good, mut bad) = (0_i64, all.min(i64::from(u32::MAX)).saturating_add(1));
        while bad.saturating_sub(good) > 1 {
            let middle = good.saturating_add(bad.saturating_sub(good).div_euclid(2));
            let worst = self.worst(float::of(Fraction::new(middle, per)?));
            if worst.value.abs() + worst.bound <= within {
                good = middle;
            } else {
                bad = middle;
            }
        }
        u32::try_from(good).map_err(|_| of(Error::new(Field::FineDial, Cause::Overflow)))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn mm(num: i64, den: i64) -> Length {
        Length::from_mm(Fraction::new(num, den).unwrap())
    }

    fn arcsec(num: i64, den: i64) -> Angle {
        Angle::from_arcsec(Fraction::new(num, den).unwrap()).unwrap()
    }

    const RATIO: Fraction = Fraction::whole(40);

    fn close(found: Approx, expected: f64, to: f64) {
        assert!((found.value - expected).abs() <= to, "{found:?}, not {expected}");
    }

    #[test]
    fn one_turn_and_its_radius() {
        // A pitch of 1 mm at 206.2648 mm is a thousandth of a radian and near 1000 seconds.
        close(turn(mm(1, 1), mm(2_062_648, 10_000)).unwrap(), 1000.0, 1e-3);
        close(radius(mm(1, 1), arcsec(1000, 1)).unwrap(), 206.264_806_247, 1e-8);
        let arm = Arm { lead: mm(1, 1), radius: mm(60, 1), ratio: RATIO };
        // atan(1/60) is 3437.4284″, a turn of the dial called 3437.7468″.
        let shift = arcsec(34_377_468, 10_000);
        close(error(&arm, shift, Fraction::ONE).unwrap(), -0.318_2, 1e-4);
        close(error(&arm, shift, Fraction::whole(-1)).unwrap(), 0.318_2, 1e-4);
    }

    #[test]
    fn round_steps_for_a_millimetre_screw() {
        let arm = Arm { lead: mm(1, 1), radius: mm(60, 1), ratio: RATIO };
        let steps = steps(&arm).unwrap();
        // A turn is 85.94″ at the work: 86 marks of 1″, 43 of 2″, 29 of 3″, 17 of 5″.
        let found = [0, 1, 2, 3].map(|k| (steps[k].at_work, steps[k].marks));
        let second = |n| arcsec(n, 1);
        assert_eq!(found, [(second(1), 86), (second(2), 43), (second(3), 29), (second(5), 17)]);
        assert_eq!(steps.len(), 4);
        close(steps[0].radius_mm, 59.960_7, 1e-4);
        for step in &steps {
            let shift = step.at_work.turns().times(40 * i64::from(step.marks)).unwrap();
            let exact = radius(arm.lead, Angle::from_turns(shift)).unwrap();
            assert_eq!(exact, step.radius_mm);
        }
    }

    fn second_a_mark() -> Wanted {
        let arm = Arm { lead: mm(1, 1), radius: mm(5996, 100), ratio: RATIO };
        let (turns, within) = (Fraction::whole(3), arcsec(1, 2));
        Wanted { arm, marks: 86, at_work: arcsec(1, 1), turns, within }
    }

    #[test]
    fn a_second_a_mark() {
        let found = design(&second_a_mark()).unwrap();
        assert_eq!(found.dial.shift, arcsec(86 * 40, 1));
        assert_eq!(found.dial.travel, arcsec(3 * 86 * 40, 1));
        let head = crate::head::Head { fine_dial: Some(found.dial), ..Default::default() };
        assert_eq!(head.check(), Ok(()));
        // Three turns out the plate is short by (3/59.96)² ÷ 3 of 258″, less what 59.96 gains.
        close(found.worst_arcsec, -0.212, 2e-3);
        close(found.mark_arcsec, 1.000_01, 1e-5);
        // 2° 52′ to each side are half a space of 63 holes.
        assert_eq!(found.least_holes, 63);
        let circle = |n: i64| Fraction::new(1, 2 * n).unwrap() <= found.dial.travel.turns();
        assert!(circle(63) && !circle(62));
        // No further than half a second: the error grows as the cube, 3 · ∛(0.5 ÷ 0.212).
        assert!((330..=352).contains(&found.most_marks), "{}", found.most_marks);
    }

    #[test]
    fn a_shorter_arm_goes_ahead_first_and_reaches_further() {
        let even = second_a_mark();
        let short = Arm { radius: mm(598, 10), ..even.arm };
        let found = design(&Wanted { arm: short, ..even }).unwrap();
        let even = design(&even).unwrap();
        assert!(found.worst_arcsec.value > 0.0 && found.most_marks > even.most_marks);
        // None at all where nothing will do.
        let none = design(&Wanted { within: Angle::ZERO, ..second_a_mark() }).unwrap();
        assert_eq!(none.most_marks, 0);
    }

    #[test]
    fn what_is_no_fine_dial() {
        let good = second_a_mark();
        let no = |wanted: Wanted| design(&wanted).map_err(|e| (e.field, e.cause)).unwrap_err();
        let conflict = (Field::FineDial, Cause::Conflict);
        let arm = |lead, radius| Arm { lead, radius, ratio: RATIO };
        assert_eq!(no(Wanted { turns: Fraction::whole(60), ..good }), conflict);
        assert_eq!(no(Wanted { turns: Fraction::ZERO, ..good }), conflict);
        assert_eq!(no(Wanted { within: arcsec(-1, 1), ..good }), conflict);
        assert_eq!(no(Wanted { at_work: Angle::ZERO, ..good }), conflict);
        assert_eq!(no(Wanted { at_work: Angle::TURN, ..good }), conflict);
        assert_eq!(no(Wanted { marks: 1, ..good }).0, Field::FineDial);
        let zero = |field| (field, Cause::Zero);
        assert_eq!(no(Wanted { arm: arm(mm(0, 1), mm(60, 1)), ..good }), zero(Field::Screw));
        assert_eq!(no(Wanted { arm: arm(mm(1, 1), mm(0, 1)), ..good }), zero(Field::Length));
        let none = Arm { ratio: Fraction::ZERO, ..good.arm };
        assert_eq!(no(Wanted { arm: none, ..good }).0, Field::Ratio);
    }
}
