//! A head is checked as a whole before any question is put to it.
use super::{Arms, FineDial, Gear, Handwheel, Head, Mounting, Plate};
use crate::bounds;
use crate::error::{Cause, Error, Field};
use crate::measure::Angle;
use crate::number::Fraction;

impl Head {
    /// Checks every value against the bounds table and against each other.
    ///
    /// # Errors
    /// The first value that is out of bounds: its field, cause and limits.
    /// A circle listed twice on one plate is [`Cause::Twice`]; a plate without
    /// circles is [`Cause::Empty`].
    pub fn check(&self) -> Result<(), Error> {
        ratio(self.ratio)?;
        self.plates.iter().try_for_each(plate)?;
        for (i, &notches) in self.direct.iter().enumerate() {
            bounds::NOTCHES.check(i64::from(notches))?;
            if self.direct.iter().take(i).any(|&n| n == notches) {
                return Err(Error::new(Field::Direct, Cause::Twice));
            }
        }
        gears(&self.gears)?;
        mounting(&self.mounting)?;
        arms(self.arms)?;
        within(self.slack, Field::Slack, 0, 5)?;
        self.handwheel.map_or(Ok(()), handwheel)?;
        self.fine_dial.map_or(Ok(()), fine_dial)?;
        if let Some(reach) = self.reach {
            if reach.least > reach.greatest || reach.least.mm().is_negative() {
                return Err(Error::new(Field::Reach, Cause::Conflict));
            }
        }
        if self.work_diameter.mm() <= Fraction::ZERO {
            return Err(Error::new(Field::Length, Cause::Zero));
        }
        Ok(())
    }
}

fn ratio(ratio: Fraction) -> Result<(), Error> {
    bounds::RATIO_PART.check(ratio.num())?;
    bounds::RATIO_PART.check(ratio.den())?;
    Ok(())
}

fn plate(plate: &Plate) -> Result<(), Error> {
    if plate.circles.is_empty() {
        return Err(Error::new(Field::Plates, Cause::Empty));
    }
    for (i, circle) in plate.circles.iter().enumerate() {
        bounds::HOLES.check(i64::from(circle.holes))?;
        if plate.circles.iter().take(i).any(|c| c.holes == circle.holes) {
            return Err(Error::new(Field::Plates, Cause::Twice));
        }
    }
    Ok(())
}

/// Change gears owned: each number of teeth once.
pub(crate) fn gears(gears: &[Gear]) -> Result<(), Error> {
    for (i, gear) in gears.iter().enumerate() {
        bounds::TEETH.check(i64::from(gear.teeth))?;
        bounds::OWNED.check(i64::from(gear.count))?;
        if gears.iter().take(i).any(|g| g.teeth == gear.teeth) {
            return Err(Error::new(Field::Gears, Cause::Twice));
        }
    }
    Ok(())
}

/// Where gears can be mounted.
pub(crate) fn mounting(mounting: &Mounting) -> Result<(), Error> {
    bounds::STUD_TEETH.check(i64::from(mounting.distance))?;
    bounds::STUD_TEETH.check(i64::from(mounting.margin))?;
    Ok(())
}

fn arms(arms: Arms) -> Result<(), Error> {
    let fine =
        Angle::ZERO <= arms.least && arms.least < arms.greatest && arms.greatest <= Angle::TURN;
    if fine { Ok(()) } else { Err(Error::new(Field::Arms, Cause::Conflict)) }
}

fn handwheel(dial: Handwheel) -> Result<(), Error> {
    bounds::DIAL_MARKS.check(i64::from(dial.marks))?;
    bounds::VERNIER.check(i64::from(dial.vernier))?;
    Ok(())
}

fn fine_dial(dial: FineDial) -> Result<(), Error> {
    bounds::DIAL_MARKS.check(i64::from(dial.marks)).map_err(|e| e.of(Field::FineDial))?;
    within(dial.travel.turns(), Field::FineDial, 0, 1)?;
    let slack = Fraction::ZERO <= dial.slack && dial.slack <= Fraction::whole(dial.marks.into());
    if dial.shift <= Angle::ZERO || dial.shift > Angle::TURN || !slack {
        return Err(Error::new(Field::FineDial, Cause::Conflict));
    }
    Ok(())
}

fn within(value: Fraction, field: Field, least: u32, greatest: u32) -> Result<(), Error> {
    if value < Fraction::whole(least.into()) || value > Fraction::whole(greatest.into()) {
        let cause = Cause::OutOfRange { least, greatest };
        return Err(Error::new(field, cause));
    }
    Ok(())
}
