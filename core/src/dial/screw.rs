//! Which dial suits a screw: how many marks make one mark a handy step.
//!
//! Formula: marks = lead ÷ step. Only a whole number of marks will do: what is left over
//! a turn builds up with every turn.
use crate::bounds;
use crate::error::{Cause, Error, Field};
use crate::list::List;
use crate::measure::{Length, given::size};
use crate::number::Fraction;

/// Marks of a dial in the order of common practice: fewer are coarse, more run together.
const MARKS: core::ops::RangeInclusive<i64> = 10..=500;

/// Steps that go well with reading: 1, 2, 2½ and 5 in each decade, as numerator and
/// denominator of an inch, then of a millimetre.
const INCH: [(i64, i64); 9] = [
    (1, 10_000),
    (1, 5_000),
    (1, 4_000),
    (1, 2_000),
    (1, 1_000),
    (1, 500),
    (1, 400),
    (1, 200),
    (1, 100),
];
const MM: [(i64, i64); 10] =
    [(1, 500), (1, 400), (1, 200), (1, 100), (1, 50), (1, 40), (1, 20), (1, 10), (1, 5), (1, 4)];

/// A dial that suits a screw.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Handy {
    /// Marks once round.
    pub marks: u32,
    /// What one mark stands for, exactly.
    pub step: Length,
    /// Whether the step is a round one in inches; otherwise in millimetres.
    pub inch: bool,
}

/// The dials of 10 to 500 marks for which one mark of a screw of `lead` is a round step in
/// inches or in millimetres, finest first, inches before millimetres.
///
/// # Errors
/// [`Field::Screw`] for a lead of nought or out of bounds; [`Cause::Overflow`].
pub fn handy(lead: Length) -> Result<List<Handy, 19>, Error> {
    size(lead, Field::Screw)?;
    let mut found = List::new();
    for (inch, steps) in [(true, &INCH[..]), (false, &MM[..])] {
        for (num, den) in steps {
            let step = Fraction::new(*num, *den)?;
            let step = if inch { Length::from_inches(step)? } else { Length::from_mm(step) };
            let marks = lead.mm().checked_div(step.mm()).map_err(|e| e.of(Field::Screw))?;
            if marks.is_whole() && MARKS.contains(&marks.num()) {
                let marks = u32::try_from(marks.num()).unwrap_or(0);
                let full = Error::new(Field::Screw, Cause::TooMany { most: 19 });
                found.push(Handy { marks, step, inch }).map_err(|_| full)?;
            }
        }
    }
    Ok(found)
}

/// A dial for a step that may not go into a screw's lead.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct ForStep {
    /// Marks that one turn would need: whole where the step goes into the lead.
    pub needed: Fraction,
    /// The nearest whole number of marks.
    pub marks: u32,
    /// What one of them stands for, exactly.
    pub each: Length,
    /// By how much a turn of the screw is more than the marks say; nought where exact.
    pub off: Length,
}

/// The dial on a screw of `lead` whose mark comes nearest to `step`.
///
/// # Errors
/// [`Field::Screw`] for a lead, [`Field::Length`] for a step of nought or out of bounds;
/// [`bounds::DIAL_MARKS`] for the marks that come of them; [`Cause::Overflow`].
pub fn for_step(lead: Length, step: Length) -> Result<ForStep, Error> {
    size(lead, Field::Screw)?;
    size(step, Field::Length)?;
    let needed = lead.mm().checked_div(step.mm())?;
    let (marks, _) = needed.nearest()?;
    let marks = bounds::DIAL_MARKS.check_u32(marks).map_err(|e| e.of(Field::SlideDial))?;
    let each = Length::from_mm(lead.mm().over(i64::from(marks))?);
    let told = step.mm().times(i64::from(marks))?;
    Ok(ForStep { needed, marks, each, off: Length::from_mm(lead.mm().checked_sub(told)?) })
}

#[cfg(test)]
mod tests {
    use super::*;
    extern crate std;
    use std::vec::Vec;

    fn mm(num: i64, den: i64) -> Length {
        Length::from_mm(Fraction::new(num, den).unwrap())
    }

    fn inch(num: i64, den: i64) -> Length {
        Length::from_inches(Fraction::new(num, den).unwrap()).unwrap()
    }

    #[track_caller]
    fn check(lead: Length, inches: &[u32], millimetres: &[u32]) {
        let found = handy(lead).unwrap();
        let of = |inch| -> Vec<u32> {
            found.iter().filter(|d| d.inch == inch).map(|d| d.marks).collect()
        };
        assert_eq!((of(true), of(false)), (inches.to_vec(), millimetres.to_vec()));
        for dial in &found {
            assert_eq!(dial.step.mm().times(i64::from(dial.marks)).unwrap(), lead.mm());
        }
    }

    #[test]
    fn rows() {
        // 8 to the inch: 125 thous, and 127 marks of 0.025 mm.
        check(inch(1, 8), &[500, 250, 125, 50, 25], &[127]);
        check(inch(1, 10), &[500, 400, 200, 100, 50, 40, 20, 10], &[254, 127]);
        check(mm(3, 1), &[], &[300, 150, 120, 60, 30, 15, 12]);
        check(mm(5, 1), &[], &[500, 250, 200, 100, 50, 25, 20]);
        check(mm(7, 11), &[], &[]);
    }

    #[test]
    fn a_step_that_does_not_go_into_the_lead_says_by_how_much() {
        // Thous on a 3 mm screw: 118.11 marks a turn.
        let dial = for_step(mm(3, 1), inch(1, 1000)).unwrap();
        assert_eq!((dial.marks, dial.off), (118, mm(7, 2500)));
        assert_eq!(dial.each, mm(3, 118));
        let exact = for_step(inch(1, 8), inch(1, 1000)).unwrap();
        assert_eq!((exact.marks, exact.needed, exact.off), (125, Fraction::whole(125), mm(0, 1)));
        let cause = |lead, step| for_step(lead, step).map_err(|e| (e.field, e.cause)).unwrap_err();
        assert_eq!(cause(mm(0, 1), mm(1, 1)), (Field::Screw, Cause::Zero));
        assert_eq!(cause(mm(3, 1), mm(0, 1)), (Field::Length, Cause::Zero));
        assert_eq!(cause(mm(3, 1), mm(3, 1)).0, Field::SlideDial);
    }
}
