//! Leaves and blocks out of those owned that together come nearest to a thickness.
//!
//! Method: for each count of pieces the nearest sum there is. In a list in order of
//! thickness two pieces are found by one pointer rising and one falling; for three and
//! four each first piece, or pair of them, is followed by such a walk through the rest.
//! All thicknesses are whole numbers of one unit, so "exact" is exact, and what is
//! named nearest is nearest of all. A pair of wear blocks, one at each end of a stack, is
//! laid aside first: the others make up what is left.
//!
//! ```
//! use handturn::bench::stack::stacks;
//! use handturn::measure::Length;
//! use handturn::number::Fraction;
//! // Feelers of 0.05, 0.10, 0.15, 0.20 and 0.40 mm; 0.52 mm is wanted.
//! let mm = |n| Fraction::new(n, 100).map(Length::from_mm);
//! let owned = [mm(5)?, mm(10)?, mm(15)?, mm(20)?, mm(40)?];
//! let found = stacks(mm(52)?, None, &owned, 3)?;
//! // One leaf misses by 0.12, two by 0.02 (0.40 + 0.10); three come no nearer.
//! assert_eq!(found.iter().map(|stack| stack.sum).collect::<Vec<_>>(), [mm(40)?, mm(50)?]);
//! # Ok::<(), handturn::Error>(())
//! ```
use crate::bounds::{LENGTH_UM, MAX_PIECES};
use crate::error::{Cause, Error, Field};
use crate::list::List;
use crate::measure::{Length, given::um_down};
use crate::number::{Approx, Fraction, lcm};

/// Pieces in one stack, wear blocks not counted.
pub const MOST: usize = 4;
/// Stacks named at most: one of each number of pieces, the wear blocks alone before them.
pub const CHOICES: usize = MOST + 1;

/// Pieces laid on each other.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Stack {
    /// Thickness of each of the two wear blocks at its ends, where there are such.
    pub wear: Option<Length>,
    /// The other pieces, the thickest first.
    pub pieces: List<Length, MOST>,
    /// What all of them come to.
    pub sum: Length,
    /// By how much that is more than wanted; below nought, less.
    pub over: Length,
}

impl Stack {
    /// Whether it is just what is wanted.
    #[must_use]
    pub fn is_exact(&self) -> bool {
        self.over.mm().is_zero()
    }

    /// How many pieces there are in all, wear blocks among them.
    #[must_use]
    pub fn count(&self) -> usize {
        self.pieces.len().saturating_add(if self.wear.is_some() { 2 } else { 0 })
    }
}

/// The stacks nearest to `wanted`: of one piece, then of two where those come nearer,
/// and so on up to `most` pieces (at most [`MOST`]). Each of `owned` is used once; a
/// thickness owned twice is listed twice. Of two as near, the thinner.
///
/// With `wear` a pair of wear blocks, each so thick and besides those `owned`, ends every
/// stack; the pair alone is the first.
///
/// # Errors
/// [`Cause::Empty`] without pieces; [`Cause::TooMany`] (128); [`Cause::OutOfLengths`]
/// for a thickness, wanted or owned, and of [`Field::Thickness`] for wear blocks that come
/// to more than is wanted; [`Cause::Overflow`] where they have no common unit.
#[doc(alias("slip gauges", "gauge blocks", "wear blocks"))]
pub fn stacks(
    wanted: Length,
    wear: Option<Length>,
    owned: &[Length],
    most: u8,
) -> Result<List<Stack, CHOICES>, Error> {
    let unit = unit(wanted, wear, owned)?;
    let pair = match wear {
        None => 0,
        Some(wear) => whole(wear, unit)?.saturating_mul(2),
    };
    let target = whole(wanted, unit)?.saturating_sub(pair);
    if target < 0 {
        let greatest_um = um_down(Approx::of(wanted.mm()).value / 2.0);
        let cause = Cause::OutOfLengths { least_um: LENGTH_UM.0, greatest_um };
        return Err(Error::new(Field::Thickness, cause));
    }
    let mut pieces: List<i64, MAX_PIECES> = List::new();
    for &piece in owned {
        let piece = whole(piece, unit)?;
        let place = pieces.iter().position(|&other| other > piece).unwrap_or(pieces.len());
        if pieces.is_full() {
            let most = u16::try_from(MAX_PIECES).unwrap_or(u16::MAX);
            return Err(Error::new(Field::Pieces, Cause::TooMany { most }));
        }
        let _ = pieces.insert(place, piece);
    }
    let mut found = List::new();
    let mut nearest = u64::MAX;
    if wear.is_some() {
        nearest = target.unsigned_abs();
        let alone = Best { target, off: nearest, sum: 0, pieces: [0; MOST] };
        let _ = found.push(alone.stack(unit, wear, pair)?);
    }
    for count in 1..=usize::from(most).min(MOST) {
        let mut best = Best { target, off: nearest, sum: 0, pieces: [0; MOST] };
        best.seek(&pieces, [0; MOST], count);
        if best.off < nearest {
            nearest = best.off;
            let _ = found.push(best.stack(unit, wear, pair)?);
        }
    }
    Ok(found)
}

/// Parts of a millimetre in which every length is a whole number.
fn unit(wanted: Length, wear: Option<Length>, owned: &[Length]) -> Result<i64, Error> {
    if owned.is_empty() {
        return Err(Error::new(Field::Pieces, Cause::Empty));
    }
    let (least_um, greatest_um) = LENGTH_UM;
    let greatest = Fraction::whole(i64::from(greatest_um)).over(1000)?;
    let mut unit = 1_u64;
    let wear = wear.iter().map(|wear| (wear, Field::Thickness));
    for (length, field) in owned.iter().chain([&wanted]).map(|one| (one, Field::Pieces)).chain(wear)
    {
        if length.mm() <= Fraction::ZERO || length.mm() > greatest {
            return Err(Error::new(field, Cause::OutOfLengths { least_um, greatest_um }));
        }
        unit = lcm(unit, length.mm().den().unsigned_abs()).ok_or(OVERFLOW)?;
    }
    i64::try_from(unit).map_err(|_| OVERFLOW)
}

const OVERFLOW: Error = Error::new(Field::Pieces, Cause::Overflow);

/// `length` in `unit`ths of a millimetre, so small that a few can be added.
fn whole(length: Length, unit: i64) -> Result<i64, Error> {
    let many = length.mm().times(unit)?;
    if many.num() > i64::MAX / 8 { Err(OVERFLOW) } else { Ok(many.num()) }
}

/// The nearest sum so far.
struct Best {
    target: i64,
    off: u64,
    sum: i64,
    pieces: [i64; MOST],
}

impl Best {
    /// Looks for `left` more of `pieces`, which stand in order, beside those `taken`.
    fn seek(&mut self, pieces: &[i64], taken: [i64; MOST], left: usize) {
        match left {
            1 => pieces.iter().for_each(|&piece| self.weigh(with(taken, 0, piece))),
            2 => self.pair(pieces, taken),
            _ => {
                let mut rest = pieces;
                while let [first, others @ ..] = rest {
                    if self.off == 0 {
                        return;
                    }
                    self.seek(
                        others,
                        with(taken, left.saturating_sub(1), *first),
                        left.saturating_sub(1),
                    );
                    rest = others;
                }
            }
        }
    }

    /// Two more: the thickest left and the thinnest left, one of them let go each time.
    fn pair(&mut self, pieces: &[i64], taken: [i64; MOST]) {
        let mut rest = pieces;
        while let [thin, between @ .., thick] = rest {
            let both = with(with(taken, 1, *thin), 0, *thick);
            self.weigh(both);
            let short = total(&both) < self.target;
            rest = match rest {
                [_, others @ ..] if short => others,
                [others @ .., _] => others,
                [] => between,
            };
        }
    }

    fn weigh(&mut self, pieces: [i64; MOST]) {
        let sum = total(&pieces);
        let off = sum.abs_diff(self.target);
        if off < self.off || (off == self.off && self.sum > sum) {
            *self = Self { target: self.target, off, sum, pieces };
        }
    }

    /// The pieces found, between wear blocks that come to `pair`.
    fn stack(&self, unit: i64, wear: Option<Length>, pair: i64) -> Result<Stack, Error> {
        let length = |many: i64| Ok::<_, Error>(Length::from_mm(Fraction::new(many, unit)?));
        let mut pieces: List<Length, MOST> = List::new();
        for &piece in self.pieces.iter().filter(|piece| **piece > 0) {
            let piece = length(piece)?;
            let place = pieces.iter().position(|other| *other < piece).unwrap_or(pieces.len());
            let _ = pieces.insert(place, piece);
        }
        Ok(Stack {
            wear,
            pieces,
            sum: length(self.sum.saturating_add(pair))?,
            over: length(self.sum.saturating_sub(self.target))?,
        })
    }
}

/// `pieces` with `piece` at `place`.
fn with(mut pieces: [i64; MOST], place: usize, piece: i64) -> [i64; MOST] {
    if let Some(slot) = pieces.get_mut(place) {
        *slot = piece;
    }
    pieces
}

fn total(pieces: &[i64; MOST]) -> i64 {
    pieces.iter().fold(0, |sum, piece| sum.saturating_add(*piece))
}
