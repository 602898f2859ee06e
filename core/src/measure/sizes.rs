//! Sizes as a list of what is owned: one by one, or many as `FROM-TOxSTEP`.
//!
//! Items are split by space, new line or `;`. A bare number is in millimetres, a bare
//! fraction such as `1/8` in inches; either may name its unit (`0.002in`, `2thou`).
use super::Length;
use super::scan::Scan;
use crate::bounds::Bound;
use crate::error::{Cause, Error, Field};
use crate::number::Fraction;

/// What a list of sizes holds, and between which ends.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Sizes {
    /// What errors are about.
    pub field: Field,
    /// Least allowed, in micrometres.
    pub least_um: u32,
    /// Greatest allowed, in micrometres.
    pub greatest_um: u32,
    /// Most that the list holds.
    pub most: u16,
}

/// Equal steps from one to another, in millimetres where they are sizes; a single one
/// has a step of nought.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Steps {
    from: Fraction,
    to: Fraction,
    step: Fraction,
}

/// Hands over every size of `text` in its order.
///
/// ```
/// use handturn::{Field, measure::sizes::{Sizes, each}};
/// // Gauge blocks of 1.001 to 1.009 mm, one of 5 mm, one of 1/4 in.
/// let blocks = Sizes { field: Field::Length, least_um: 10, greatest_um: 100_000, most: 200 };
/// let (mut count, mut last) = (0, None);
/// each("1.001-1.009x0.001 5 1/4", blocks, &mut |size| {
///     (count, last) = (count + 1, Some(size.mm().to_string()));
///     Ok(())
/// })?;
/// assert_eq!((count, last.as_deref()), (11, Some("127/20")));
/// # Ok::<(), handturn::Error>(())
/// ```
///
/// # Errors
/// What cannot be read, with its place; [`Cause::Empty`] for steps from one size to
/// another without a step, [`Cause::Zero`] for a step of nought;
/// [`Cause::OutOfLengths`]; [`Cause::TooMany`]; whatever `use_it` refuses.
pub fn each(
    text: &str,
    sizes: Sizes,
    use_it: &mut dyn FnMut(Length) -> Result<(), Error>,
) -> Result<(), Error> {
    each_of(text, sizes.row()?, &mut |mm| use_it(Length::from_mm(mm)))
}

/// Hands over every number of `text` in its order, written as sizes are but for units:
/// speeds, angles in degrees.
///
/// # Errors
/// As [`each`], with [`Cause::OutOfRange`] outside `bound` and [`Cause::TooMany`] for
/// more than `most`.
pub fn each_number(
    text: &str,
    bound: Bound,
    most: u16,
    use_it: &mut dyn FnMut(Fraction) -> Result<(), Error>,
) -> Result<(), Error> {
    let Bound { field, least, greatest } = bound;
    let whole = |n: u32| Fraction::whole(i64::from(n));
    let outside = Cause::OutOfRange { least, greatest };
    let row =
        Row { field, least: whole(least), greatest: whole(greatest), outside, most, units: false };
    each_of(text, row, use_it)
}

/// What one item may be: how the two kinds of lists differ.
#[derive(Clone, Copy)]
pub(crate) struct Row {
    field: Field,
    least: Fraction,
    greatest: Fraction,
    outside: Cause,
    most: u16,
    units: bool,
}

impl Sizes {
    pub(crate) fn row(self) -> Result<Row, Error> {
        let Self { field, least_um, greatest_um, most } = self;
        let mm = |um: u32| Fraction::new(i64::from(um), 1000);
        let outside = Cause::OutOfLengths { least_um, greatest_um };
        let (least, greatest) = (mm(least_um)?, mm(greatest_um)?);
        Ok(Row { field, least, greatest, outside, most, units: true })
    }
}

fn each_of(
    text: &str,
    row: Row,
    use_it: &mut dyn FnMut(Fraction) -> Result<(), Error>,
) -> Result<(), Error> {
    let mut left = row.most;
    for (from, item) in items(text) {
        let here = |error: Error| placed(error, from, item);
        let steps = steps(item, row).map_err(here)?;
        steps.each(&mut |size| {
            let many = Error::new(row.field, Cause::TooMany { most: row.most });
            left = left.checked_sub(1).ok_or_else(|| here(many))?;
            use_it(size)
        })?;
    }
    Ok(())
}

/// The items of a list, each with the byte at which it begins.
pub(crate) fn items(text: &str) -> impl Iterator<Item = (usize, &str)> {
    let mut at = 0_usize;
    let parts = |c: char| c.is_whitespace() || c == ';';
    let pieces = text.split_inclusive(parts).map(move |piece| {
        let from = at;
        at = at.saturating_add(piece.len());
        // A comma with a space after it is no decimal mark.
        (from, piece.trim_end_matches(parts).trim_end_matches(','))
    });
    pieces.filter(|(_, item)| !item.is_empty())
}

/// An error about a part of the item that begins at `from`, or about all of it.
pub(crate) fn placed(error: Error, from: usize, item: &str) -> Error {
    let (a, b) = match error.span {
        (0, 0) => (0, item.len()),
        (a, b) => (usize::from(a), usize::from(b)),
    };
    error.at(from.saturating_add(a), from.saturating_add(b))
}

/// One item of a list.
pub(crate) fn steps(item: &str, row: Row) -> Result<Steps, Error> {
    let mut scan = Scan::new(item, row.field);
    let first = part(&mut scan, row.units)?;
    let (mut last, mut step) = (first, None);
    if scan.take(|c| matches!(c, '-' | '−' | '–')).is_some() {
        last = part(&mut scan, row.units)?;
        if scan.take(|c| matches!(c, 'x' | 'X' | '×')).is_none() {
            return Err(Error::new(row.field, Cause::Empty));
        }
        step = Some(part(&mut scan, row.units)?);
    }
    scan.end()?;
    // A unit named once, at the end, is that of all.
    let end = step.unwrap_or(last).1;
    let inches = row.units && item.contains(['/', '⁄']);
    let bare = if inches { Fraction::new(127, 5)? } else { Fraction::ONE };
    let whole = |(value, unit): (Fraction, Option<Fraction>)| {
        value.checked_mul(unit.or(end).unwrap_or(bare)).map_err(|e| e.of(row.field))
    };
    let (first, last, step) = (whole(first)?, whole(last)?, step.map(whole).transpose()?);
    let (from, to) = if first <= last { (first, last) } else { (last, first) };
    if from < row.least || to > row.greatest {
        return Err(Error::new(row.field, row.outside));
    }
    match step {
        Some(step) if step <= Fraction::ZERO => Err(Error::new(row.field, Cause::Zero)),
        step => Ok(Steps { from, to, step: step.unwrap_or(Fraction::ZERO) }),
    }
}

/// A number, and its unit in millimetres where it names one.
fn part(scan: &mut Scan, units: bool) -> Result<(Fraction, Option<Fraction>), Error> {
    let value = scan.number()?;
    let unit = if !units {
        None
    } else if scan.word("mm") {
        Some(Fraction::ONE)
    } else if scan.word("thou") {
        Some(Fraction::new(127, 5000)?)
    } else if scan.word("inch")
        || scan.word("in")
        || scan.take(|c| matches!(c, '"' | '″')).is_some()
    {
        Some(Fraction::new(127, 5)?)
    } else {
        None
    };
    Ok((value, unit))
}

impl Steps {
    /// Every one, from the least.
    pub(crate) fn each(
        self,
        use_it: &mut dyn FnMut(Fraction) -> Result<(), Error>,
    ) -> Result<(), Error> {
        let mut size = self.from;
        use_it(size)?;
        if self.step.is_zero() {
            return Ok(());
        }
        loop {
            size = size.checked_add(self.step)?;
            if size > self.to {
                return Ok(());
            }
            use_it(size)?;
        }
    }

    /// Whether `size` is one of them.
    pub(crate) fn holds(self, size: Fraction) -> bool {
        let up = || size.checked_sub(self.from)?.checked_div(self.step);
        size == self.from
            || size > self.from && size <= self.to && up().is_ok_and(Fraction::is_whole)
    }
}

#[cfg(test)]
mod tests {
    extern crate std;
    use super::*;
    use std::string::{String, ToString};
    use std::vec::Vec;

    const SIZES: Sizes = Sizes { field: Field::Wire, least_um: 10, greatest_um: 100_000, most: 20 };

    fn read(text: &str) -> Result<Vec<String>, (Cause, (u16, u16))> {
        let mut all = Vec::new();
        let read = each(text, SIZES, &mut |size| {
            all.push(size.mm().to_string());
            Ok(())
        });
        read.map(|()| all).map_err(|error| {
            assert_eq!(error.field, Field::Wire);
            (error.cause, error.span)
        })
    }

    #[test]
    fn sizes_are_read_one_by_one_and_in_steps() {
        let rows: &[(&str, &[&str])] = &[
            ("", &[]),
            (" 0.05;0,1,\n1 , 2thou", &["1/20", "1/10", "1", "127/2500"]),
            ("1/8 1/8mm 0.25in 3/16″", &["127/40", "1/8", "127/20", "381/80"]),
            ("0.5-0.8x0.1", &["1/2", "3/5", "7/10", "4/5"]),
            ("0.8–0.5×0.15", &["1/2", "13/20", "4/5"]),
            ("1/16-1/8x1/32", &["127/80", "381/160", "127/40"]),
            ("1-3x1thou", &["127/5000", "127/2500", "381/5000"]),
            ("0.1in-3mmx0.2mm", &["127/50", "137/50", "147/50"]),
            ("5-5x1", &["5"]),
        ];
        for (text, sizes) in rows {
            assert_eq!(read(text).unwrap(), *sizes, "{text}");
        }
    }

    #[test]
    fn what_cannot_be_read_is_told_at_its_place() {
        let range = Cause::OutOfLengths { least_um: 10, greatest_um: 100_000 };
        let rows = [
            ("1 two", (Cause::NotANumber, (2, 5))),
            ("1 2-3", (Cause::Empty, (2, 5))),
            ("1 2-3x0", (Cause::Zero, (2, 7))),
            ("é 2", (Cause::NotANumber, (0, 2))),
            ("1 0", (range, (2, 3))),
            ("1;-2", (range, (2, 4))),
            ("100.1", (range, (0, 5))),
            ("2 1,000", (Cause::ThousandsMark, (2, 7))),
            ("1 2-40x1 3", (Cause::TooMany { most: 20 }, (2, 8))),
            ("1 2m", (Cause::NotANumber, (3, 4))),
        ];
        for (text, wanted) in rows {
            assert_eq!(read(text), Err(wanted), "{text}");
        }
    }

    #[test]
    fn numbers_name_no_units() {
        let bound = Bound { field: Field::Speed, least: 1, greatest: 5000 };
        let read = |text: &str| {
            let mut all = Vec::new();
            each_number(text, bound, 9, &mut |n| {
                all.push(n.to_string());
                Ok(())
            })
            .map(|()| all)
            .map_err(|error| (error.cause, error.span))
        };
        assert_eq!(
            read("62.5 130; 3/2 100-300x100").unwrap(),
            ["125/2", "130", "3/2", "100", "200", "300"]
        );
        assert_eq!(read("5 0.5"), Err((Cause::OutOfRange { least: 1, greatest: 5000 }, (2, 5))));
        assert_eq!(read("5mm"), Err((Cause::NotANumber, (1, 3))));
        assert_eq!(read("1-10x1"), Err((Cause::TooMany { most: 9 }, (0, 6))));
    }
}
