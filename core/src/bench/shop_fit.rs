//! Fits by rules of the shop: so much on the diameter, by the inch, as old handbooks have it.
//!
//! Source: limits for running, push, driving and forced fits to 5 in, as reprinted from
//! "Machinery's Handbook" (1914); by the inch of diameter 0.001 to 0.002 in for forced and
//! 0.001 in for shrunk fits in "Applied Science for Metal Workers" (1919), §§ 453, 454. That
//! shrunk fits take up to 0.0015 in is common practice, from memory.
//!
//! ```
//! use handturn::bench::shop_fit::{Rule, allowed};
//! use handturn::measure::Length;
//! use handturn::number::Fraction;
//! // A pin of 3/4 in to be driven: 0.7 to 1 thou larger than its hole.
//! let inch = |n, d| Fraction::new(n, d).and_then(Length::from_inches);
//! let drive = allowed(Rule::Drive, inch(3, 4)?)?;
//! assert_eq!((drive.play.least, drive.play.most), (inch(-1, 1000)?, inch(-7, 10_000)?));
//! assert_eq!(drive.shaft.most, inch(751, 1000)?);
//! # Ok::<(), handturn::Error>(())
//! ```
use super::fit::Limits;
use crate::error::{Cause, Error, Field};
use crate::measure::{
    Length,
    given::{minus, size},
};
use crate::number::Fraction;

/// How the shaft is to sit in the hole.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Rule {
    /// Turns with oil.
    Running,
    /// Goes in by hand.
    Push,
    /// Goes in by hammer.
    Drive,
    /// Goes in by press, by the table of diameters.
    Force,
    /// Goes in by press, by the inch of diameter.
    ForceByInch,
    /// Goes in hot.
    Shrink,
}

/// What a rule allows.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Allowed {
    /// Least and greatest play; below nought the shaft is larger than the hole.
    pub play: Limits,
    /// Diameters of the shaft for it.
    pub shaft: Limits,
}

/// Upper ends of the steps of diameter, in half inches.
const STEPS: [i64; 6] = [1, 2, 4, 6, 8, 10];

/// Least and greatest play by the steps, in ten-thousandths of an inch.
const RUNNING: [(i64, i64); 6] = [(10, 20), (12, 27), (17, 35), (20, 42), (25, 50), (30, 57)];
const PUSH: [(i64, i64); 6] = [(2, 7), (2, 7), (2, 7), (5, 10), (5, 10), (5, 10)];
const DRIVE: [(i64, i64); 6] =
    [(-5, -2), (-10, -7), (-15, -10), (-25, -15), (-30, -20), (-35, -25)];
const FORCE: [(i64, i64); 6] =
    [(-10, -5), (-20, -15), (-40, -30), (-60, -45), (-80, -60), (-100, -80)];

/// The play that a rule gives about a hole, and the shaft for it.
///
/// # Errors
/// [`Cause::OutOfLengths`] of the hole: the table ends at 5 in; [`Cause::Zero`];
/// [`Cause::Overflow`].
#[doc(alias("allowance"))]
pub fn allowed(rule: Rule, hole: Length) -> Result<Allowed, Error> {
    let field = Field::Diameter;
    size(hole, field)?;
    let play = play(rule, hole.inches()?)?;
    let shaft =
        Limits { least: minus(hole, play.most, field)?, most: minus(hole, play.least, field)? };
    Ok(Allowed { play, shaft })
}

fn play(rule: Rule, inches: Fraction) -> Result<Limits, Error> {
    let field = Field::Diameter;
    let table = match rule {
        Rule::Running => &RUNNING,
        Rule::Push => &PUSH,
        Rule::Drive => &DRIVE,
        Rule::Force => &FORCE,
        Rule::ForceByInch => return by_inch(inches, -20, -10),
        Rule::Shrink => return by_inch(inches, -15, -10),
    };
    let halves = inches.times(2).map_err(|e| e.of(field))?;
    let found = STEPS.iter().zip(table).find(|(end, _)| halves <= Fraction::whole(**end));
    let beyond = Cause::OutOfLengths { least_um: 1, greatest_um: 127_000 };
    let (_, &(least, most)) = found.ok_or(Error::new(field, beyond))?;
    by_inch(Fraction::ONE, least, most)
}

/// So many ten-thousandths of `inches` inches.
fn by_inch(inches: Fraction, least: i64, most: i64) -> Result<Limits, Error> {
    let part = |of: i64| {
        let part = inches.times(of).and_then(|all| all.over(10_000));
        part.and_then(Length::from_inches).map_err(|e| e.of(Field::Diameter))
    };
    Ok(Limits { least: part(least)?, most: part(most)? })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn inch(num: i64, den: i64) -> Length {
        Length::from_inches(Fraction::new(num, den).unwrap()).unwrap()
    }

    #[test]
    fn rules_keep_their_order_and_grow_with_the_diameter() {
        let rules = [Rule::Force, Rule::Drive, Rule::Push, Rule::Running];
        let mut before = [Limits { least: inch(0, 1), most: inch(0, 1) }; 4];
        for sixteenths in 1..=80 {
            let now = rules.map(|rule| allowed(rule, inch(sixteenths, 16)).unwrap().play);
            assert!(now.iter().all(|play| play.least < play.most));
            // Neighbours may share a figure at their ends, no more.
            assert!(now.is_sorted_by(|one, other| one.most <= other.least), "{sixteenths}");
            let grows = |(now, before): (&Limits, &Limits)| {
                now.least.mm().abs() >= before.least.mm().abs()
                    && now.most.mm().abs() >= before.most.mm().abs()
            };
            assert!(now.iter().zip(&before).all(grows), "{sixteenths}");
            before = now;
        }
    }

    #[test]
    fn the_table_ends_and_the_inch_goes_on() {
        assert!(allowed(Rule::Push, inch(5, 1)).is_ok());
        assert!(allowed(Rule::Push, inch(501, 100)).is_err());
        // A locomotive's tyre of 68 in: 68 thou.
        assert_eq!(allowed(Rule::Shrink, inch(68, 1)).unwrap().play.most, inch(-68, 1000));
        assert!(allowed(Rule::Shrink, inch(0, 1)).is_err());
    }
}
