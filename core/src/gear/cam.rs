//! Cam lobes and short leads with a raised head, and cams cut by small steps.
//!
//! Method: the head is geared to the table for a lead L and raised by a from level; an
//! end mill stands parallel to its spindle. For each turn the table goes L along, of
//! which L·sin a comes towards the cutter: that is the lobe's lead, its rise for a whole
//! turn. So sin a = lead ÷ L (A Practical Treatise on Milling and Milling Machines,
//! 1914, pp. 180, 249), and L·cos a is gone along the mill's flutes, which must be long
//! enough for it. By steps a mill stands still while it cuts: between two of its places
//! a cusp is left (plane geometry, our own derivation).
//!
//! ```
//! use handturn::gear::cam::{Lobe, lobe};
//! use handturn::measure::{Angle, Length};
//! use handturn::number::Fraction;
//! // The clock's strike cam rises 4 mm in a quarter; the head is geared for 20 mm.
//! let mm = |n| Length::from_mm(Fraction::whole(n));
//! let quarter = Angle::from_turns(Fraction::new(1, 4)?);
//! let set = lobe(&Lobe { rise: mm(4), over: quarter, geared: mm(20), face: mm(6), raised: None })?;
//! assert_eq!((set.lead, set.travel), (mm(16), mm(5)));
//! assert!((set.tilt.value - 53.13).abs() < 0.01); // sin = 16/20
//! assert!((set.flute.value - 9.0).abs() < 1e-9); // 6 and 5 × cos
//! # Ok::<(), handturn::Error>(())
//! ```
use crate::bounds::{LENGTH_UM, TIMES};
use crate::error::{Cause, Error, Field};
use crate::measure::{
    Angle, Length,
    given::{plus, size},
};
use crate::number::{Approx, Fraction};

/// A lobe to be cut with a raised head.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Lobe {
    /// How far the cam rises.
    pub rise: Length,
    /// Over which angle of the cam, up to a turn.
    pub over: Angle,
    /// The table's travel for one turn of the work, as it is geared.
    pub geared: Length,
    /// Thickness of the cam.
    pub face: Length,
    /// How far the head was raised in fact, 0 to 90°, to be told what it then cuts.
    pub raised: Option<Angle>,
}

/// How head and table stand for a lobe. Lengths in millimetres, angles in degrees.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Set {
    /// The lobe's lead: its rise for a whole turn.
    pub lead: Length,
    /// How far the head is raised from level, and the mill laid down from upright less
    /// a quarter turn: they stay parallel.
    pub tilt: Approx,
    /// What is left to upright: the same reading on a mill's swivel whose nought is upright.
    pub from_upright: Approx,
    /// How far the table goes for the lobe.
    pub travel: Length,
    /// Length of flutes that it takes: the face, and how far the work goes along the mill.
    pub flute: Approx,
    /// Rise that the angle set in fact gives, and how far it is off.
    pub gives: Option<(Approx, Approx)>,
}

/// Head and table for a lobe.
///
/// # Errors
/// Lengths out of bounds; [`Cause::Zero`] or [`Cause::OutOfRange`] for the angle, in
/// degrees; [`Cause::OutOfLengths`] of [`Field::Lead`] where the table is geared for less
/// than the lobe's lead; [`Cause::Overflow`].
pub fn lobe(ask: &Lobe) -> Result<Set, Error> {
    size(ask.rise, Field::Rise)?;
    size(ask.geared, Field::Lead)?;
    size(ask.face, Field::Face)?;
    let over = turn(ask.over)?;
    let rise = ask.rise.mm();
    let lead = rise.checked_div(over).map_err(|e| e.of(Field::Rise))?;
    let geared = ask.geared.mm();
    if lead > geared {
        let least_um = lead.times(-1000)?.floor().unsigned_abs();
        let least_um = u32::try_from(least_um).unwrap_or(u32::MAX);
        let cause = Cause::OutOfLengths { least_um, greatest_um: LENGTH_UM.1 };
        return Err(Error::new(Field::Lead, cause));
    }
    let travel = geared.checked_mul(over).map_err(|e| e.of(Field::Lead))?;
    // sin = lead/L, cos from exact factors, and the angle from both.
    let whole = Approx::of(geared);
    let [less, more] = [geared.checked_sub(lead)?, geared.checked_add(lead)?].map(Approx::of);
    let cosine = less.times(more).sqrt().over(whole);
    let sine = Approx::of(lead).over(whole);
    let quarter = Approx::exactly(90.0);
    let from_upright = cosine.over(sine).atan().by(360.0);
    let gives = match ask.raised {
        Some(raised) => {
            super::ratchet::within(raised, Field::Angle, 0, 90)?;
            let gives = Approx::of(travel).times(Approx::of(raised.turns()).sin());
            Some((gives, gives.minus(Approx::of(rise))))
        }
        None => None,
    };
    Ok(Set {
        lead: Length::from_mm(lead),
        tilt: quarter.minus(from_upright),
        from_upright,
        travel: Length::from_mm(travel),
        flute: Approx::of(ask.face.mm()).plus(Approx::of(travel).times(cosine)),
        gives,
    })
}

/// A lobe cut by steps: the head divides, the table is moved in between.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Steps {
    /// How far the cam rises.
    pub rise: Length,
    /// Over which angle of the cam, up to a turn.
    pub over: Angle,
    /// In how many steps.
    pub steps: u32,
    /// Greatest radius of the cam.
    pub radius: Length,
    /// Diameter of the mill, as large as the follower's roller.
    pub mill: Length,
}

/// What a step is and leaves.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Stepped {
    /// The cam's angle for each step: the angle to divide.
    pub turn: Angle,
    /// The table's move for each.
    pub each: Length,
    /// How much a mill in the middle between two steps would still cut, at the top of
    /// the rise, in millimetres.
    pub cusp: Approx,
}

/// A lobe by steps.
///
/// # Errors
/// As [`lobe`]; [`Cause::OutOfRange`] for the steps ([`TIMES`]); [`Cause::Conflict`] of
/// [`Field::Rise`] where it is not below the radius, of [`Field::Times`] where cuts of
/// neighbours do not meet or the mill is too large to lie between them.
pub fn steps(ask: &Steps) -> Result<Stepped, Error> {
    size(ask.rise, Field::Rise)?;
    size(ask.radius, Field::Ring)?;
    size(ask.mill, Field::Cutter)?;
    TIMES.check(i64::from(ask.steps))?;
    if ask.rise >= ask.radius {
        return Err(Error::new(Field::Rise, Cause::Conflict));
    }
    let turn = turn(ask.over)?.over(i64::from(ask.steps))?;
    let each = ask.rise.mm().over(i64::from(ask.steps)).map_err(|e| e.of(Field::Rise))?;
    let apart = Error::new(Field::Times, Cause::Conflict);
    if turn >= Fraction::new(1, 4)? {
        return Err(apart);
    }
    // Seen with the middle between two steps upright: the mill's places stand at radii
    // that differ by one step's rise and add up to `sum`, half a turn of a step aside.
    let mill = Approx::of(ask.mill.mm()).by(0.5);
    let rise = Approx::of(each);
    let outer = plus(ask.radius, ask.radius, Field::Ring)?.mm().checked_sub(each)?;
    let sum = Approx::of(outer).plus(mill.by(2.0));
    let half = Approx::of(turn).by(0.5);
    let (sine, cosine) = (half.sin(), half.cos());
    let (along, up) = (sum.times(sine), rise.times(cosine));
    let square = along.times(along).plus(up.times(up));
    let under = mill.times(mill).minus(square.by(0.25));
    if under.value <= under.bound {
        return Err(apart);
    }
    let reach = under.over(square).sqrt();
    // From the mill's place in the middle to the cusp: aside, and towards the centre.
    let aside = rise.times(sine.by(0.5).plus(reach.times(cosine)));
    let quarter = half.by(0.5).sin();
    let below = sum.times(quarter.times(quarter).plus(reach.times(sine)));
    let from_middle = aside.times(aside).plus(below.times(below));
    // c − √x = (c² − x) ÷ (c + √x).
    let cusp = mill.times(mill).minus(from_middle).over(mill.plus(from_middle.sqrt()));
    Ok(Stepped { turn: Angle::from_turns(turn), each: Length::from_mm(each), cusp })
}

/// Where work and table stand after `step` steps: the angle turned, and the whole move in.
///
/// # Errors
/// As [`steps`]; [`Cause::OutOfRange`] of [`Field::Position`] for more steps than there are.
pub fn after(ask: &Steps, step: u32) -> Result<(Angle, Length), Error> {
    let found = steps(ask)?;
    if step > ask.steps {
        let cause = Cause::OutOfRange { least: 0, greatest: ask.steps };
        return Err(Error::new(Field::Position, cause));
    }
    let times = |one: Fraction| one.times(i64::from(step));
    Ok((Angle::from_turns(times(found.turn.turns())?), Length::from_mm(times(found.each.mm())?)))
}

/// An angle above nought, up to a turn, in turns.
fn turn(over: Angle) -> Result<Fraction, Error> {
    if over.turns().is_zero() {
        return Err(Error::new(Field::Angle, Cause::Zero));
    }
    super::ratchet::within(over, Field::Angle, 0, 360)?;
    Ok(over.turns())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn mm(num: i64, den: i64) -> Length {
        Length::from_mm(Fraction::new(num, den).unwrap())
    }

    fn ask(rise: Length, geared: Length) -> Lobe {
        let over = Angle::from_turns(Fraction::new(1, 4).unwrap());
        Lobe { rise, over, geared, face: mm(6, 1), raised: None }
    }

    #[test]
    fn the_head_may_stand_level_or_upright() {
        let upright = lobe(&ask(mm(5, 1), mm(20, 1))).unwrap();
        assert!((upright.tilt.value - 90.0).abs() <= upright.tilt.bound);
        assert!(upright.flute.value - 6.0 <= upright.flute.bound);
        let raised = Some(Angle::from_degrees(Fraction::whole(30)).unwrap());
        let set = lobe(&Lobe { raised, ..ask(mm(3, 1), mm(20, 1)) }).unwrap();
        let (gives, off) = set.gives.unwrap();
        assert!((gives.value - 2.5).abs() < 1e-12 && (off.value + 0.5).abs() < 1e-12);
        let error = lobe(&ask(mm(6, 1), mm(20, 1))).unwrap_err();
        let cause = Cause::OutOfLengths { least_um: 24_000, greatest_um: LENGTH_UM.1 };
        assert_eq!((error.field, error.cause), (Field::Lead, cause));
    }

    #[test]
    fn steps_leave_cusps() {
        let over = Angle::from_turns(Fraction::new(1, 4).unwrap());
        let ask = Steps { rise: mm(4, 1), over, steps: 90, radius: mm(30, 1), mill: mm(10, 1) };
        let found = steps(&ask).unwrap();
        assert_eq!((found.turn.degrees(), found.each), (Ok(Fraction::ONE), mm(2, 45)));
        // Two circles of 10 at 35 − 2/45 and 35, a degree apart, by their equations.
        assert!((found.cusp.value - 0.008_032_584_874_765_543).abs() <= found.cusp.bound);
        assert!(found.cusp.bound < 1e-13);
        assert_eq!(
            after(&ask, 45).map(|(turn, moved)| (turn.degrees(), moved)),
            Ok((Ok(Fraction::whole(45)), mm(2, 1)))
        );
        assert_eq!(after(&ask, 90).map(|(_, moved)| moved), Ok(mm(4, 1)));
        assert!(after(&ask, 91).is_err());
        let few = Steps { steps: 3, mill: mm(6, 1), ..ask };
        let error = steps(&few).unwrap_err();
        assert_eq!((error.field, error.cause), (Field::Times, Cause::Conflict));
    }
}
