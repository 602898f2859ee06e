//! Drills, and which of those owned to use before a tap.
use super::{Kind, Thread};
use crate::error::{Cause, Error, Field};
use crate::list::List;
use crate::measure::Length;
use crate::number::Fraction;

/// Number drills 1 to 80 in ten-thousandths of an inch (ASME B94.11M, from memory;
/// 3, 7 and 25 read in print).
const NUMBERS: [u16; 80] = [
    2280, 2210, 2130, 2090, 2055, 2040, 2010, 1990, 1960, 1935, 1910, 1890, 1850, 1820, 1800, 1770,
    1730, 1695, 1660, 1610, 1590, 1570, 1540, 1520, 1495, 1470, 1440, 1405, 1360, 1285, 1200, 1160,
    1130, 1110, 1100, 1065, 1040, 1015, 995, 980, 960, 935, 890, 860, 820, 810, 785, 760, 730, 700,
    670, 635, 595, 550, 520, 465, 430, 420, 410, 400, 390, 380, 370, 360, 350, 330, 320, 310, 292,
    280, 260, 250, 240, 225, 210, 200, 180, 160, 145, 135,
];

/// Letter drills A to Z in ten-thousandths of an inch (ASME B94.11M, from memory).
const LETTERS: [u16; 26] = [
    2340, 2380, 2420, 2460, 2500, 2570, 2610, 2660, 2720, 2770, 2810, 2900, 2950, 3020, 3160, 3230,
    3320, 3390, 3480, 3580, 3680, 3770, 3860, 3970, 4040, 4130,
];

const _: () = {
    let mut rows: &[u16] = &NUMBERS;
    while let [a, b, ..] = rows {
        assert!(*a > *b);
        let [_, rest @ ..] = rows else { break };
        rows = rest;
    }
    let mut rows: &[u16] = &LETTERS;
    while let [a, b, ..] = rows {
        assert!(*a < *b);
        let [_, rest @ ..] = rows else { break };
        rows = rest;
    }
};

/// A set of drills as it is sold.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum DrillSet {
    /// Numbers 1 to 80.
    Number,
    /// Letters A to Z.
    Letter,
    /// Sixty-fourths of an inch, 1/64 to 1 in.
    Fraction,
    /// Millimetres: 0.3 to 1 by 0.05, to 13 by 0.1, to 25 by 0.5.
    Metric,
}

/// A drill.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Drill {
    /// The set it belongs to; `None` for one of one's own.
    pub set: Option<DrillSet>,
    /// Its place in the set from nought: number less one, letter from A,
    /// sixty-fourths less one, or place by size. Nought for one of one's own.
    pub place: u8,
    /// Its diameter, exact.
    pub diameter: Length,
}

impl DrillSet {
    /// Every set.
    pub const ALL: [Self; 4] = [Self::Number, Self::Letter, Self::Fraction, Self::Metric];

    /// The drill at `place` from nought; `None` past the last.
    #[must_use]
    pub fn drill(self, place: u8) -> Option<Drill> {
        let at = usize::from(place);
        let n = i64::from(place);
        let inches = |num: i64, den: i64| Length::from_inches(Fraction::new(num, den).ok()?).ok();
        let up = |n: i64, by: i64, more: i64| n.checked_mul(by)?.checked_add(more);
        let diameter = match self {
            Self::Number => inches(i64::from(*NUMBERS.get(at)?), 10_000)?,
            Self::Letter => inches(i64::from(*LETTERS.get(at)?), 10_000)?,
            Self::Fraction if place < 64 => inches(up(n, 1, 1)?, 64)?,
            Self::Fraction => return None,
            Self::Metric => {
                let hundredths = match place {
                    0..14 => up(n, 5, 30)?,
                    14..135 => up(n, 10, -40)?,
                    135..159 => up(n, 50, -5400)?,
                    _ => return None,
                };
                Length::from_mm(Fraction::new(hundredths, 100).ok()?)
            }
        };
        Some(Drill { set: Some(self), place, diameter })
    }
}

/// Drills offered for one thread.
pub const MAX_OFFERED: usize = 5;

/// A drill to use before a tap, and how much thread it leaves.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Tapping {
    /// The drill.
    pub drill: Drill,
    /// Percent of the full height: 100 (D − drill) / 1.299 P for 60° threads, where
    /// a hundred is the height from crest flat to root flat, 3/4 H; of the depth of
    /// the form for all others.
    pub percent: Fraction,
    /// Percent of the nut's own basic height: 100 (D − drill) / 1.0825 P for 60°
    /// threads (5/8 H), 1.2 times the other; the same as the other for the rest.
    pub percent_of_nut: Fraction,
}

/// The drills nearest to `percent` of full height for a hole that `thread` is
/// tapped in, nearest first; of two as near the larger. 70 % is common practice.
///
/// ```
/// use handturn::thread::{drills::{DrillSet, tapping}, name};
/// use handturn::number::Fraction;
/// // 1/4-20 with number drills: No. 7 leaves 75 %.
/// let thread = name::read("1/4-20 UNC")?[0].thread;
/// let owned: Vec<_> = (0..80).map_while(|place| DrillSet::Number.drill(place)).collect();
/// let best = tapping(&thread, &owned, Fraction::whole(75))?[0];
/// assert_eq!((best.drill.place + 1, best.percent.nearest()?.0), (7, 75));
/// # Ok::<(), handturn::Error>(())
/// ```
///
/// # Errors
/// [`Cause::OutOfRange`] for [`Field::Engagement`] outside 30 to 100 percent; [`Cause::Empty`]
/// for [`Field::Drills`] where none owned leaves a thread of 30 to 110 percent; else as
/// [`Thread::new`].
pub fn tapping(
    thread: &Thread,
    owned: &[Drill],
    percent: Fraction,
) -> Result<List<Tapping, MAX_OFFERED>, Error> {
    thread.check()?;
    let whole = Fraction::whole;
    if percent < whole(30) || percent > whole(100) {
        let cause = Cause::OutOfRange { least: 30, greatest: 100 };
        return Err(Error::new(Field::Engagement, cause));
    }
    let mut list: List<Tapping, MAX_OFFERED> = List::new();
    for &drill in owned {
        let Some(tried) = engagement(thread, drill)? else { continue };
        let off = |tapping: &Tapping| Ok(tapping.percent.checked_sub(percent)?.abs());
        let this: Fraction = off(&tried)?;
        let mut place = 0_usize;
        for other in &list {
            let that: Fraction = off(other)?;
            let before = that < this
                || that == this && other.drill.diameter.mm() >= tried.drill.diameter.mm();
            place = place.saturating_add(usize::from(before));
        }
        let _ = list.insert(place, tried);
    }
    if list.is_empty() {
        return Err(Error::new(Field::Drills, Cause::Empty));
    }
    Ok(list)
}

/// How much thread `drill` leaves; `None` outside 30 to 110 percent.
fn engagement(thread: &Thread, drill: Drill) -> Result<Option<Tapping>, Error> {
    let height = thread.major.mm().checked_sub(drill.diameter.mm())?;
    // Drills far off are passed over before any division.
    if height <= Fraction::ZERO || height > thread.pitch.mm().times(2)? {
        return Ok(None);
    }
    let nut = thread.form.internal_depth(thread.pitch)?.mm().times(2)?;
    let full = match thread.form.kind {
        // 3/4 H each side: twice the distance from crest to pitch line.
        Kind::Metric | Kind::Unified => {
            thread.form.at(thread.form.addendum, thread.pitch)?.mm().times(4)?
        }
        _ => nut,
    };
    // To a thousandth of a percent: all that a multiple of nine decimals can carry.
    let of = |whole: Fraction| super::to_nearest(height.checked_div(whole)?.times(100)?, 1000);
    let (percent, percent_of_nut) = (of(full)?, of(nut)?);
    let sensible = percent >= Fraction::whole(30) && percent <= Fraction::whole(110);
    Ok(sensible.then_some(Tapping { drill, percent, percent_of_nut }))
}

/// The smallest drill owned that is no smaller than `least`.
///
/// ```
/// use handturn::thread::drills::{DrillSet, at_least};
/// use handturn::measure::Length;
/// use handturn::number::Fraction;
/// // A clearance hole of 6.54 mm at least, from metric drills.
/// let owned: Vec<_> = (0..=u8::MAX).map_while(|place| DrillSet::Metric.drill(place)).collect();
/// let drill = at_least(Length::from_mm(Fraction::new(654, 100)?), &owned)?;
/// assert_eq!(drill.diameter.mm(), Fraction::new(66, 10)?);
/// # Ok::<(), handturn::Error>(())
/// ```
///
/// # Errors
/// [`Cause::Empty`] for [`Field::Drills`] where there is none.
pub fn at_least(least: Length, owned: &[Drill]) -> Result<Drill, Error> {
    let fits = owned.iter().filter(|drill| drill.diameter >= least);
    let best = fits.min_by_key(|drill| drill.diameter);
    best.copied().ok_or(Error::new(Field::Drills, Cause::Empty))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::thread::name;

    #[test]
    fn sets_run_as_they_are_sold() {
        let ends = |set: DrillSet| {
            let all: [Option<Drill>; 256] =
                core::array::from_fn(|place| set.drill(u8::try_from(place).unwrap()));
            let count = all.iter().flatten().count();
            assert!(all[..count].iter().all(Option::is_some));
            let sizes = [all[0].unwrap(), all[count - 1].unwrap()];
            (count, sizes.map(|drill| drill.diameter.mm()))
        };
        let mm = |num, den| Fraction::new(num, den).unwrap();
        assert_eq!(ends(DrillSet::Number), (80, [mm(57_912, 10_000), mm(3429, 10_000)]));
        assert_eq!(ends(DrillSet::Letter), (26, [mm(59_436, 10_000), mm(104_902, 10_000)]));
        assert_eq!(ends(DrillSet::Fraction), (64, [mm(127, 320), mm(127, 5)]));
        assert_eq!(ends(DrillSet::Metric), (159, [mm(3, 10), mm(25, 1)]));
        let metric = |place| DrillSet::Metric.drill(place).unwrap().diameter.mm();
        assert_eq!([metric(14), metric(134), metric(135)], [mm(1, 1), mm(13, 1), mm(27, 2)]);
        assert!((1..159).all(|place| metric(place) > metric(place - 1)));
    }

    #[test]
    fn nearest_to_the_thread_wanted_comes_first() {
        let thread = name::read("M6").unwrap()[0].thread;
        let mut owned = List::<Drill, 400>::new();
        for set in DrillSet::ALL {
            (0..=u8::MAX)
                .map_while(|place| set.drill(place))
                .for_each(|drill| owned.push(drill).unwrap());
        }
        let best = tapping(&thread, &owned, Fraction::whole(70)).unwrap();
        assert_eq!(best.len(), MAX_OFFERED);
        let off: [Fraction; MAX_OFFERED] = core::array::from_fn(|k| {
            best[k].percent.checked_sub(Fraction::whole(70)).unwrap().abs()
        });
        assert!(off.is_sorted());
        // 5.1 mm: 69.3 % of full height, 83.1 % of the nut's.
        assert_eq!(best[0].drill.diameter.mm(), Fraction::new(51, 10).unwrap());
        assert_eq!(best[0].percent.floor(), 69);
        assert_eq!(best[0].percent_of_nut.floor(), 83);
    }

    #[test]
    fn loose_drills_serve_and_none_is_said() {
        let thread = name::read("2 BA").unwrap()[0].thread;
        let loose =
            |mm| Drill { set: None, place: 0, diameter: Length::from_mm(Fraction::whole(mm)) };
        let owned = [loose(4), loose(9)];
        let best = tapping(&thread, &owned, Fraction::whole(70)).unwrap();
        assert_eq!((best.len(), best[0].drill.set, best[0].percent.floor()), (1, None, 72));
        let error = tapping(&thread, &owned[1..], Fraction::whole(70)).unwrap_err();
        assert_eq!(error, Error::new(Field::Drills, Cause::Empty));
        let error = tapping(&thread, &owned, Fraction::whole(101)).unwrap_err();
        let range = Cause::OutOfRange { least: 30, greatest: 100 };
        assert_eq!(error, Error::new(Field::Engagement, range));
        let drill = at_least(Length::from_mm(Fraction::whole(5)), &owned).unwrap();
        assert_eq!(drill.diameter.mm(), Fraction::whole(9));
        let error = at_least(Length::from_mm(Fraction::whole(10)), &owned).unwrap_err();
        assert_eq!(error, Error::new(Field::Drills, Cause::Empty));
    }
}
