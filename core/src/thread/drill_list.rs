//! Drills as a list of what is owned: whole sets by name, less what is missing, and
//! drills one by one.
//!
//! Items are split by space, new line or `;`:
//! - `number`, `letter`, `fraction`, `metric`: a set as it is sold;
//! - `#7`, `#1-#60`, `F`, `A-Z`: number and letter drills;
//! - `6.35`, `9/64`, `0.5-13x0.1`: sizes, as [`crate::measure::sizes`] reads them;
//! - a minus before any of these takes it away again, wherever it stands: `-#41`, `-F`,
//!   `-9/64`. A size takes away drills known by their size, not number or letter drills.
use super::drills::{Drill, DrillSet};
use crate::error::{Cause, Error, Field};
use crate::list::List;
use crate::measure::Length;
use crate::measure::scan::Scan;
use crate::measure::sizes::{Sizes, Steps, items, placed, steps};

/// Most drills in one list, and most items that take away.
pub const MAX_DRILLS: u16 = 600;
const MAX_MISSING: usize = 40;

const SIZES: Sizes =
    Sizes { field: Field::Drills, least_um: 50, greatest_um: 100_000, most: MAX_DRILLS };

/// What one item stands for.
#[derive(Clone, Copy)]
enum Item {
    /// Places of a set, both ends included.
    Set(DrillSet, u8, u8),
    /// Sizes.
    Sizes(Steps),
}

/// Hands over every drill of `text`: a set's in its order, items in theirs.
///
/// ```
/// use handturn::thread::drill_list::each;
/// // The number drills, two of them broken, and one of 6.35 mm.
/// let mut count = 0;
/// each("number -#41 -#53 6.35", &mut |_| {
///     count += 1;
///     Ok(())
/// })?;
/// assert_eq!(count, 80 - 2 + 1);
/// # Ok::<(), handturn::Error>(())
/// ```
///
/// # Errors
/// About [`Field::Drills`] and with its place, before any drill is handed over: what
/// cannot be read; [`Cause::OutOfRange`] for a number outside 1 to 80;
/// [`Cause::OutOfLengths`]; [`Cause::TooMany`] for more than 40 items that take away.
/// While they are handed over: [`Cause::TooMany`] for more than [`MAX_DRILLS`], and
/// whatever `use_it` refuses.
pub fn each(text: &str, use_it: &mut dyn FnMut(Drill) -> Result<(), Error>) -> Result<(), Error> {
    let mut missing: List<Item, MAX_MISSING> = List::new();
    let most = |most| Error::new(Field::Drills, Cause::TooMany { most });
    for (from, text) in items(text) {
        let here = |error: Error| placed(error, from, text);
        let (less, found) = item(text).map_err(here)?;
        if less {
            missing.push(found).map_err(|_| here(most(40)))?;
        }
    }
    let mut left = MAX_DRILLS;
    for (from, text) in items(text) {
        let (less, found) = item(text)?;
        if less {
            continue;
        }
        found.each(&mut |drill| {
            // Those that are taken away count too, or a list could keep one waiting for ever.
            left = left.checked_sub(1).ok_or_else(|| placed(most(MAX_DRILLS), from, text))?;
            if missing.iter().any(|item| item.holds(drill)) { Ok(()) } else { use_it(drill) }
        })?;
    }
    Ok(())
}

/// One item, and whether it takes away.
fn item(text: &str) -> Result<(bool, Item), Error> {
    let mut scan = Scan::new(text, Field::Drills);
    let less = scan.take(is_minus).is_some();
    for (word, set) in [
        ("number", DrillSet::Number),
        ("letter", DrillSet::Letter),
        ("fraction", DrillSet::Fraction),
        ("metric", DrillSet::Metric),
    ] {
        if scan.word(word) {
            scan.word("s");
            scan.end()?;
            return Ok((less, Item::Set(set, 0, u8::MAX)));
        }
    }
    let begins = scan.peek();
    if begins == Some('#') || begins.is_some_and(|c| c.is_ascii_alphabetic()) {
        let first = named(&mut scan)?;
        let last = match scan.take(is_minus) {
            Some(_) => named(&mut scan)?,
            None => first,
        };
        let whole = scan.clone();
        scan.end()?;
        let (set, a) = first;
        // A number and a letter are not ends of one row.
        if last.0 != set {
            return Err(whole.error(Cause::NotANumber, 0));
        }
        return Ok((less, Item::Set(set, a.min(last.1), a.max(last.1))));
    }
    let skipped = scan.at;
    let rest = text.get(skipped..).unwrap_or_default();
    Ok((
        less,
        Item::Sizes(
            SIZES
                .row()
                .and_then(|row| steps(rest, row))
                .map_err(|error| placed(error, skipped, rest))?,
        ),
    ))
}

const fn is_minus(c: char) -> bool {
    matches!(c, '-' | '−' | '–')
}

/// A number drill, `#7`, or a letter drill, `F`.
fn named(scan: &mut Scan) -> Result<(DrillSet, u8), Error> {
    let from = scan.at;
    if let Some(letter) = scan.take(|c| c.is_ascii_alphabetic()) {
        let place = u32::from(letter.to_ascii_uppercase()).saturating_sub(u32::from('A'));
        return Ok((DrillSet::Letter, u8::try_from(place).unwrap_or(u8::MAX)));
    }
    scan.take(|c| c == '#');
    let value = scan.number()?;
    let number = if value.is_whole() { value.num() } else { 0 };
    match u8::try_from(number.saturating_sub(1)) {
        Ok(place) if place < 80 => Ok((DrillSet::Number, place)),
        _ => Err(scan.error(Cause::OutOfRange { least: 1, greatest: 80 }, from)),
    }
}

impl Item {
    fn each(self, use_it: &mut dyn FnMut(Drill) -> Result<(), Error>) -> Result<(), Error> {
        match self {
            Self::Set(set, a, b) => {
                for drill in (a..=b).map_while(|place| set.drill(place)) {
                    use_it(drill)?;
                }
                Ok(())
            }
            Self::Sizes(steps) => steps.each(&mut |mm| {
                use_it(Drill { set: None, place: 0, diameter: Length::from_mm(mm) })
            }),
        }
    }

    /// Whether it takes `drill` away.
    fn holds(&self, drill: Drill) -> bool {
        match *self {
            Self::Set(set, a, b) => drill.set == Some(set) && (a..=b).contains(&drill.place),
            Self::Sizes(steps) => {
                let by_name = matches!(drill.set, Some(DrillSet::Number | DrillSet::Letter));
                !by_name && steps.holds(drill.diameter.mm())
            }
        }
    }
}

#[cfg(test)]
mod tests {
    extern crate std;
    use super::*;
    use std::vec::Vec;

    fn read(text: &str) -> Result<Vec<Drill>, (Cause, (u16, u16))> {
        let mut all = Vec::new();
        let read = each(text, &mut |drill| {
            all.push(drill);
            Ok(())
        });
        read.map(|()| all).map_err(|error| {
            assert_eq!(error.field, Field::Drills);
            (error.cause, error.span)
        })
    }

    #[test]
    fn sets_less_what_is_missing() {
        let count = |text: &str| read(text).map(|all| all.len());
        let rows = [
            ("", 0),
            ("number", 80),
            ("Letters; fractions,\nMETRIC", 26 + 64 + 159),
            ("number letter -#41 -F 0.5-13x0.1 6.35", 79 + 25 + 126 + 1),
            ("#1-60 -#8-#10", 57),
            ("A-Z -x", 25),
            ("-1/4 letter fraction 1/4in", 26 + 63),
            ("metric -0.3-1x0.05 -13.5", 159 - 15 - 1),
            ("number -number", 0),
            ("#7 G 6 −6", 2),
        ];
        for (text, wanted) in rows {
            assert_eq!(count(text), Ok(wanted), "{text}");
        }
        let left = read("number letter -#41 -F").unwrap();
        assert!(!left.contains(&DrillSet::Number.drill(40).unwrap()));
        assert!(!left.contains(&DrillSet::Letter.drill(5).unwrap()));
        assert_eq!(read("z"), Ok(std::vec![DrillSet::Letter.drill(25).unwrap()]));
    }

    #[test]
    fn what_cannot_be_read_is_told_at_its_place() {
        let range = Cause::OutOfRange { least: 1, greatest: 80 };
        let sizes = Cause::OutOfLengths { least_um: 50, greatest_um: 100_000 };
        let rows = [
            ("number #81", (range, (7, 10))),
            ("#0", (range, (0, 2))),
            ("#1.5", (range, (0, 4))),
            ("letter -#1-F", (Cause::NotANumber, (7, 12))),
            ("AB", (Cause::NotANumber, (1, 2))),
            ("metrics2", (Cause::NotANumber, (7, 8))),
            ("metric 0", (sizes, (7, 8))),
            ("metric --3", (sizes, (8, 10))),
            ("6 0.5-13", (Cause::Empty, (2, 8))),
            ("#", (Cause::Empty, (1, 1))),
            ("metric 1-90x0.1", (Cause::TooMany { most: 600 }, (7, 15))),
        ];
        for (text, wanted) in rows {
            assert_eq!(read(text), Err(wanted), "{text}");
        }
        let many = "-1 ".repeat(41);
        assert_eq!(read(&many), Err((Cause::TooMany { most: 40 }, (120, 122))));
    }
}
