//! Which involute cutter of a set cuts a wheel.
//!
//! Each form is true for the fewest teeth of its range and serves the rest with tips
//! that are eased a little. Sets by diametral pitch count from the rack down: No. 1
//! cuts 135 teeth to a rack, No. 8 twelve and thirteen; sets by module are numbered
//! the other way round, so both must be said. Half numbers part each range in two.
//! (A Practical Treatise on Milling and Milling Machines, 1914, p. 149; Modern
//! Machine-Shop Practice, J. Rose, 1887-88. That module sets run the other way is
//! common practice.)
//!
//! ```
//! use handturn::gear::cutter::{Numbering, Set, for_teeth};
//! use handturn::number::Fraction;
//! // The clock's wheels of 64 and 38 teeth, by a module set of eight.
//! let set = Set::eight(Numbering::Module);
//! let wheel = for_teeth(64, &set)?;
//! assert_eq!((wheel.cutter.number, wheel.cutter.least), (Fraction::whole(7), 55));
//! assert_eq!(for_teeth(38, &set)?.cutter.number, Fraction::whole(6));
//! # Ok::<(), handturn::Error>(())
//! ```
use crate::bounds::WHEEL_TEETH;
use crate::error::{Cause, Error, Field};
use crate::number::{Approx, Fraction, float};

/// How many forms a whole set has: numbers 1 to 8 and the halves between.
pub const FORMS: usize = 15;

/// Fewest teeth of each form, from the rack down: No. 1, 1½ … 8 of a set by
/// diametral pitch.
const LEAST: [u32; FORMS] = [135, 80, 55, 42, 35, 30, 26, 23, 21, 19, 17, 15, 14, 13, 12];

const _: () = {
    let mut rest: &[u32] = &LEAST;
    while let [more, next, ..] = rest {
        assert!(*more > *next, "from many teeth to few");
        (_, rest) = rest.split_at(1);
    }
};

/// Which way a set is numbered.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Numbering {
    /// No. 1 cuts a rack, No. 8 twelve teeth: cutters by diametral pitch.
    #[default]
    DiametralPitch,
    /// No. 1 cuts twelve teeth, No. 8 a rack: cutters by module.
    Module,
}

/// The cutters at hand.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Set {
    /// How they are numbered.
    pub numbering: Numbering,
    /// Which of the fifteen forms there are, from the rack down to twelve teeth; the
    /// first, third … are the whole numbers.
    pub has: [bool; FORMS],
}

/// One cutter.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Cutter {
    /// Its number in the set, a whole or a half one.
    pub number: Fraction,
    /// The same cutter's number in a set numbered the other way.
    pub other_number: Fraction,
    /// Fewest teeth it cuts, and the wheel its form is true for.
    pub least: u32,
    /// Most teeth it is marked for; `None` for a rack.
    pub greatest: Option<u32>,
}

/// The cutter for a wheel.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Choice {
    /// The cutter to use.
    pub cutter: Cutter,
    /// Most teeth it cuts in this set, as the next cutter there takes over; `None` for a rack.
    pub until: Option<u32>,
    /// Whether the wheel lies in the range the cutter is marked for. If not, the right
    /// one is not in the set and the teeth come thinner at their tips.
    pub in_range: bool,
    /// For virtual teeth less than one tooth from a range's end: the cutter beyond it,
    /// which does nearly as well.
    pub beside: Option<Cutter>,
}

impl Set {
    /// The whole numbers alone.
    #[must_use]
    pub const fn eight(numbering: Numbering) -> Self {
        let (y, n) = (true, false);
        Self { numbering, has: [y, n, y, n, y, n, y, n, y, n, y, n, y, n, y] }
    }

    /// With the half numbers.
    #[must_use]
    pub const fn fifteen(numbering: Numbering) -> Self {
        Self { numbering, has: [true; FORMS] }
    }

    /// The cutters of these numbers, whole or half ones; what is no number of a set is
    /// passed over.
    #[must_use]
    pub fn of(numbering: Numbering, numbers: &[Fraction]) -> Self {
        let mut set = Self::fifteen(numbering);
        for ((form, least), has) in (0..FORMS).zip(LEAST).zip(&mut set.has) {
            *has = numbers.contains(&numbered(numbering, form, least).number);
        }
        set
    }

    /// The cutters at hand with their forms' places, from the rack down.
    fn cutters(&self) -> impl DoubleEndedIterator<Item = Cutter> + '_ {
        let forms = (0..FORMS).zip(LEAST).zip(self.has);
        forms
            .filter(|(_, has)| *has)
            .map(|((form, least), _)| numbered(self.numbering, form, least))
    }
}

/// The cutter of a form, counted from the rack down, as sets numbered so call it.
fn numbered(numbering: Numbering, form: usize, least: u32) -> Cutter {
    let form = i64::try_from(form).unwrap_or(0);
    let half = |halves: i64| Fraction::new(halves, 2).unwrap_or(Fraction::ZERO);
    let by_pitch = half(form.saturating_add(2));
    let by_module = half(16_i64.saturating_sub(form));
    // A half number is marked like the whole one it parts: up to the next whole number.
    let whole = LEAST.iter().step_by(2).rev().find(|start| **start > least);
    let greatest = whole.map(|start| start.saturating_sub(1));
    let (number, other_number) = match numbering {
        Numbering::DiametralPitch => (by_pitch, by_module),
        Numbering::Module => (by_module, by_pitch),
    };
    Cutter { number, other_number, least, greatest }
}

/// The cutter for a wheel of `teeth`, or for the nearest that `set` has below it.
///
/// # Errors
/// [`Cause::OutOfRange`] of the teeth ([`WHEEL_TEETH`]); [`Cause::TooFewTeeth`] with the
/// fewest that a cutter of the set cuts; [`Cause::Empty`] for a set without cutters.
pub fn for_teeth(teeth: u32, set: &Set) -> Result<Choice, Error> {
    WHEEL_TEETH.check(i64::from(teeth))?;
    choose(set, |least| teeth >= least, |_| false)
}

/// The cutter by `virtual_teeth`, as helical and bevel wheels count them: between two
/// whole numbers the form that is true for fewer.
///
/// # Errors
/// As [`for_teeth`]; [`Cause::NotANumber`] where there is none.
#[doc(alias = "formative teeth")]
#[doc(alias = "equivalent teeth")]
pub fn for_virtual(virtual_teeth: Approx, set: &Set) -> Result<Choice, Error> {
    let Approx { value, bound } = virtual_teeth;
    // Also false for what is not a number.
    if !(value.is_finite() && bound >= 0.0) {
        return Err(Error::new(Field::Teeth, Cause::NotANumber));
    }
    // The teeth of a plain wheel come back as what they are, in spite of rounding.
    let reaches = |least: u32| value + bound >= f64::from(least);
    let near = |least: u32| (value - f64::from(least)).abs() < 1.0;
    let whole = float::round(value);
    let is_whole = (value - whole).abs() <= bound;
    choose(set, reaches, |least| !is_whole && near(least))
}

/// The first cutter of `set`, from the rack down, that `reaches`; beside it the one beyond
/// the end of its range that is `near`.
fn choose(
    set: &Set,
    reaches: impl Fn(u32) -> bool,
    near: impl Fn(u32) -> bool,
) -> Result<Choice, Error> {
    let mut above: Option<Cutter> = None;
    let mut cutters = set.cutters();
    for cutter in cutters.by_ref() {
        if !reaches(cutter.least) {
            above = Some(cutter);
            continue;
        }
        let past = |most: u32| reaches(most.saturating_add(1));
        let below = || near(cutter.least).then(|| cutters.next()).flatten();
        return Ok(Choice {
            cutter,
            until: above.map(|next| next.least.saturating_sub(1)),
            in_range: !cutter.greatest.is_some_and(past),
            beside: above.filter(|next| near(next.least)).or_else(below),
        });
    }
    let least = above.ok_or(Error::new(Field::Cutter, Cause::Empty))?.least;
    Err(Error::new(Field::Teeth, Cause::TooFewTeeth { least }))
}

/// For which teeth to make the n-th of a set of `cutters` that are equally wrong at the
/// ends of their ranges, counted from one at the wheel of fewest teeth: a·s / (s − n + a·n/z)
/// for s cutters from `least` a teeth to `greatest` z, `None` for a rack.
/// (Modern Machine-Shop Practice, J. Rose, 1887-88, gear-cutting chapter.)
///
/// # Errors
/// [`Cause::OutOfRange`] of the teeth; [`Cause::Conflict`] of [`Field::Cutter`] for more
/// than a hundred cutters or an n beyond them, of [`Field::Teeth`] where the most teeth are
/// not more than the fewest; [`Cause::Zero`] for the rack itself.
pub fn spread(least: u32, greatest: Option<u32>, cutters: u32, n: u32) -> Result<Fraction, Error> {
    let a = WHEEL_TEETH.check(i64::from(least))?;
    if cutters > 100 || n > cutters || n == 0 {
        return Err(Error::new(Field::Cutter, Cause::Conflict));
    }
    let at_end = match greatest {
        None => Fraction::ZERO,
        Some(z) if z > least => Fraction::new(a, WHEEL_TEETH.check(i64::from(z))?)?,
        Some(_) => return Err(Error::new(Field::Teeth, Cause::Conflict)),
    };
    let short = i64::from(cutters.saturating_sub(n));
    let below = at_end.times(i64::from(n))?.checked_add(Fraction::whole(short))?;
    let above = Fraction::whole(a).times(i64::from(cutters))?;
    above.checked_div(below).map_err(|e| e.of(Field::Cutter))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn number(teeth: u32, set: &Set) -> Fraction {
        for_teeth(teeth, set).unwrap().cutter.number
    }

    #[test]
    fn every_wheel_has_one_cutter_and_both_numberings_mean_the_same() {
        for (pitch, module) in [
            (Set::eight(Numbering::DiametralPitch), Set::eight(Numbering::Module)),
            (Set::fifteen(Numbering::DiametralPitch), Set::fifteen(Numbering::Module)),
        ] {
            let mut before = Fraction::whole(9);
            for teeth in 12..=5_000 {
                let by_pitch = for_teeth(teeth, &pitch).unwrap();
                let by_module = for_teeth(teeth, &module).unwrap();
                assert_eq!(by_pitch.cutter.number, by_module.cutter.other_number);
                assert_eq!(
                    by_pitch.cutter.number.checked_add(by_module.cutter.number),
                    Ok(Fraction::whole(9))
                );
                assert!(by_pitch.cutter.least <= teeth && by_pitch.in_range);
                assert!(by_pitch.until.is_none_or(|most| teeth <= most));
                assert!(by_pitch.cutter.number <= before, "from No. 8 to No. 1");
                before = by_pitch.cutter.number;
                // A virtual number that is whole is that number.
                let same = Approx { value: f64::from(teeth) - 1e-12, bound: 1e-11 };
                assert_eq!(for_virtual(same, &pitch), Ok(by_pitch));
            }
        }
    }

    #[test]
    fn what_no_cutter_cuts() {
        let set = Set::eight(Numbering::DiametralPitch);
        let few = |least| Err(Error::new(Field::Teeth, Cause::TooFewTeeth { least }));
        assert_eq!(for_teeth(11, &set), few(12));
        assert_eq!(for_virtual(Approx { value: 11.9, bound: 1e-9 }, &set), few(12));
        let none = Set { has: [false; FORMS], ..set };
        assert_eq!(for_teeth(30, &none), Err(Error::new(Field::Cutter, Cause::Empty)));
        let nan = for_virtual(Approx { value: f64::NAN, bound: 0.0 }, &set);
        assert_eq!(nan, Err(Error::new(Field::Teeth, Cause::NotANumber)));
        let mut two = none;
        two.has[2] = true;
        two.has[4] = true;
        assert_eq!(for_teeth(34, &two), few(35));
    }

    #[test]
    fn a_set_with_gaps_says_so() {
        let mut set = Set::eight(Numbering::DiametralPitch);
        set.has[4] = false;
        let choice = for_teeth(38, &set).unwrap();
        assert_eq!(choice.cutter.number, Fraction::whole(4));
        assert_eq!((choice.cutter.least, choice.cutter.greatest), (26, Some(34)));
        assert_eq!((choice.until, choice.in_range), (Some(54), false));
        assert_eq!(number(34, &set), Fraction::whole(4));
        assert_eq!(number(55, &set), Fraction::whole(2));
    }

    #[test]
    fn a_set_of_the_numbers_owned() {
        for numbering in [Numbering::DiametralPitch, Numbering::Module] {
            for set in [Set::eight(numbering), Set::fifteen(numbering)] {
                let mut numbers = [Fraction::ZERO; FORMS];
                for (number, cutter) in numbers.iter_mut().zip(set.cutters()) {
                    *number = cutter.number;
                }
                assert_eq!(Set::of(numbering, &numbers), set);
            }
        }
        let odd = [Fraction::whole(3), Fraction::whole(9), Fraction::new(10, 3).unwrap()];
        let set = Set::of(Numbering::Module, &odd);
        assert!(set.cutters().map(|cutter| cutter.least).eq([17]));
    }

    #[test]
    fn virtual_teeth_near_an_edge_name_both() {
        let set = Set::eight(Numbering::DiametralPitch);
        let at = |value| for_virtual(Approx { value, bound: 1e-9 }, &set).unwrap();
        let beside = |value| at(value).beside.map(|cutter| cutter.number);
        assert_eq!(at(16.6).cutter.number, Fraction::whole(7));
        assert_eq!(beside(16.6), Some(Fraction::whole(6)));
        assert_eq!(
            (at(17.3).cutter.number, beside(17.3)),
            (Fraction::whole(6), Some(Fraction::whole(7)))
        );
        assert_eq!((beside(18.5), beside(12.3), beside(500.5)), (None, None, None));
    }
}
