//! A chain of up to eight lengths, each with its tolerance: what their sum can come to.
//!
//! Worst case: every length at the end of its tolerance that makes the sum least, or
//! greatest; exact. Root-sum-square (common practice in statistical tolerancing): the sum
//! about its middle within √Σ(half a tolerance)², which holds nearly always where many
//! parts are made, each about the middle of its own tolerance; for one set of parts the
//! worst case speaks.
//!
//! ```
//! use handturn::bench::chain::{read, sum};
//! use handturn::measure::Length;
//! use handturn::number::Fraction;
//! // A housing of 40 less two collars and a wheel: the end float of the wheel.
//! let float = sum(&read("40 ±0.05\n-8 0 -0.1\n-8 0 -0.1\n-23.9 ±0.02")?)?;
//! let um = |n| Fraction::new(n, 1000).map(Length::from_mm);
//! assert_eq!((float.worst.least, float.worst.most), (um(30)?, um(370)?));
//! assert!((float.rss.value - 0.0889).abs() < 0.0001); // about 0.2
//! assert_eq!(float.most, 0); // the housing's tolerance is as large as a collar's
//! # Ok::<(), handturn::Error>(())
//! ```
use super::fit::{Class, Limits};
use crate::error::{Cause, Error, Field};
use crate::list::List;
use crate::measure::read::{Unit, with_unit};
use crate::measure::scan::Scan;
use crate::measure::{
    Length,
    given::{NONE, from_nought, minus, over, plus},
};
use crate::number::{Approx, Fraction};

/// Most lengths in one chain.
pub const MOST: usize = 8;

/// A length of a chain.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Link {
    /// Nominal length.
    pub length: Length,
    /// Lower and upper deviation from it.
    pub off: Limits,
    /// Whether it is taken away.
    pub minus: bool,
}

/// What a chain comes to.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Total {
    /// Sum of the nominal lengths.
    pub nominal: Length,
    /// Least and greatest it can be.
    pub worst: Limits,
    /// The middle between them.
    pub middle: Length,
    /// Root-sum-square: so far to either side of the middle, in millimetres.
    pub rss: Approx,
    /// Least and greatest by root-sum-square, in millimetres.
    pub likely: [Approx; 2],
    /// Place of the link with the widest tolerance, the first of several.
    pub most: u8,
}

/// Lengths, one a line: `12.5 +0.1 -0.05`, `8 ±0.02`, `25 h9`, `3`; a minus before the
/// length takes it away. One deviation alone leaves the other at nought.
///
/// # Errors
/// As [`crate::measure::read::number`], about [`Field::Chain`], with the place in the text;
/// [`Cause::TooMany`] beyond eight; [`Cause::Empty`]; [`Cause::Conflict`] where a lower
/// deviation lies above the upper one; of a class as in [`Class::deviations`].
pub fn read(text: &str) -> Result<List<Link, MOST>, Error> {
    let mut links = List::new();
    let mut from = 0_usize;
    for line in text.split('\n') {
        let end = from.saturating_add(line.len());
        if !line.trim().is_empty() {
            let place = |error: Error| {
                let (first, last) = error.span;
                let (first, last) =
                    if last == 0 { (0, line.len()) } else { (first.into(), last.into()) };
                error.at(from.saturating_add(first), from.saturating_add(last))
            };
            let link = one(line).map_err(place)?;
            let full = Error::new(Field::Chain, Cause::TooMany { most: 8 }).at(from, end);
            links.push(link).map_err(|_| full)?;
        }
        from = end.saturating_add(1);
    }
    if links.is_empty() { Err(Error::new(Field::Chain, Cause::Empty)) } else { Ok(links) }
}

/// One line.
fn one(line: &str) -> Result<Link, Error> {
    let mut scan = Scan::new(line, Field::Chain);
    scan.space();
    let minus = scan.take(|c| matches!(c, '-' | '−' | '–')).is_some();
    scan.space();
    let length = part(&mut scan)?;
    from_nought(length, Field::Chain)?;
    if length.mm().is_negative() {
        return Err(scan.error(Cause::NotANumber, 0));
    }
    let at = scan.at;
    scan.space();
    let off = if scan.peek().is_some_and(|c| c.is_ascii_alphabetic()) {
        Class::read(line.get(scan.at..).unwrap_or_default())?.deviations(length)?
    } else {
        let off = deviations(&mut scan)?;
        scan.end()?;
        off
    };
    if off.least > off.most {
        return Err(Error::new(Field::Chain, Cause::Conflict).at(at, line.len()));
    }
    for end in [off.least, off.most] {
        from_nought(Length::from_mm(end.mm().abs()), Field::Chain)?;
    }
    Ok(Link { length, off, minus })
}

/// Nothing, `±t`, or one or two signed deviations in either order.
fn deviations(scan: &mut Scan) -> Result<Limits, Error> {
    if scan.is_done() {
        return Ok(Limits { least: NONE, most: NONE });
    }
    if scan.take(|c| c == '±').is_some() || scan.word("+/-") || scan.word("+-") {
        scan.space();
        let from = scan.at;
        let most = part(scan)?;
        if most.mm().is_negative() {
            return Err(scan.error(Cause::NotANumber, from));
        }
        return Ok(Limits { least: Length::from_mm(most.mm().negated()), most });
    }
    let from = scan.at;
    let signed = scan.peek().is_some_and(|c| matches!(c, '+' | '-' | '−' | '–'));
    let one = part(scan)?;
    scan.space();
    if scan.is_done() {
        // A bare number could be either: it must carry its sign.
        if !signed && !one.mm().is_zero() {
            return Err(scan.error(Cause::NotANumber, from));
        }
        return Ok(Limits { least: one.min(NONE), most: one.max(NONE) });
    }
    let other = part(scan)?;
    Ok(Limits { least: one.min(other), most: one.max(other) })
}

fn part(scan: &mut Scan) -> Result<Length, Error> {
    let value = scan.number()?;
    with_unit(scan, value, Unit::Mm)
}

/// The sum of a chain.
///
/// # Errors
/// [`Cause::Empty`] without a link; lengths out of bounds; [`Cause::Overflow`].
#[doc(alias("stack-up"))]
pub fn sum(links: &[Link]) -> Result<Total, Error> {
    let field = Field::Chain;
    if links.is_empty() {
        return Err(Error::new(field, Cause::Empty));
    }
    let (mut nominal, mut least, mut most) = (NONE, NONE, NONE);
    let mut squares = Approx::exactly(0.0);
    let mut widest = (NONE, 0_u8);
    for (place, link) in (0_u8..).zip(links) {
        from_nought(link.length, field)?;
        let [low, high] =
            [plus(link.length, link.off.least, field)?, plus(link.length, link.off.most, field)?];
        let width = minus(link.off.most, link.off.least, field)?;
        from_nought(width, field)?;
        if width > widest.0 {
            widest = (width, place);
        }
        (nominal, least, most) = if link.minus {
            (
                minus(nominal, link.length, field)?,
                minus(least, high, field)?,
                minus(most, low, field)?,
            )
        } else {
            (plus(nominal, link.length, field)?, plus(least, low, field)?, plus(most, high, field)?)
        };
        let half = Approx::of(width.mm()).by(0.5);
        squares = squares.plus(half.times(half));
    }
    let middle = over(plus(least, most, field)?, 2, field)?;
    let rss = squares.sqrt();
    Ok(Total {
        nominal,
        worst: Limits { least, most },
        middle,
        rss,
        likely: [Approx::of(middle.mm()).minus(rss), Approx::of(middle.mm()).plus(rss)],
        most: widest.1,
    })
}

impl Total {
    /// What part of the whole tolerance is one link's, in percent; nought where none has any.
    ///
    /// # Errors
    /// [`Cause::Overflow`].
    pub fn share(&self, link: Link) -> Result<Fraction, Error> {
        let field = Field::Chain;
        let whole = minus(self.worst.most, self.worst.least, field)?.mm();
        if whole.is_zero() {
            return Ok(Fraction::ZERO);
        }
        let own = minus(link.off.most, link.off.least, field)?.mm();
        let share = own.times(100).and_then(|own| own.checked_div(whole));
        share.map_err(|e| e.of(field))
    }

    /// How far the sum keeps within `wanted`: at its worst, and by root-sum-square.
    #[must_use]
    pub fn keeps(&self, wanted: Limits) -> Keeps {
        let worst = wanted.least <= self.worst.least && self.worst.most <= wanted.most;
        let room = |end: Fraction, other: Fraction| {
            end.checked_sub(other).map_or(f64::NEG_INFINITY, |mm| Approx::of(mm).value)
        };
        let middle = self.middle.mm();
        let near = room(wanted.most.mm(), middle).min(room(middle, wanted.least.mm()));
        match (worst, near >= self.rss.value) {
            (true, _) => Keeps::Always,
            (false, true) => Keeps::Mostly,
            (false, false) => Keeps::Not,
        }
    }
}

/// Whether a sum keeps within its limits.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Keeps {
    /// At its worst too.
    Always,
    /// By root-sum-square, not at its worst.
    Mostly,
    /// Neither.
    Not,
}

#[cfg(test)]
mod tests {
    use super::*;

    fn um(um: i64) -> Length {
        Length::from_mm(Fraction::new(um, 1000).unwrap())
    }

    #[track_caller]
    fn check(line: &str, length: i64, least: i64, most: i64, minus: bool) {
        let wanted =
            Link { length: um(length), off: Limits { least: um(least), most: um(most) }, minus };
        assert_eq!(read(line).map(|links| links[0]), Ok(wanted), "{line}");
    }

    #[test]
    fn lines_as_they_are_typed() {
        check("12.5 +0.1 -0.05", 12_500, -50, 100, false);
        check("-12,5 -0.05 +0.1", 12_500, -50, 100, true);
        check(" 8 ±0.02 ", 8_000, -20, 20, false);
        check("8 +/-0.02", 8_000, -20, 20, false);
        check("− 8 +-0.02", 8_000, -20, 20, true);
        check("8 -0.1", 8_000, -100, 0, false);
        check("8 +0.1", 8_000, 0, 100, false);
        check("8 0 -0.1", 8_000, -100, 0, false);
        check("8 +0.3 +0.1", 8_000, 100, 300, false);
        check("3", 3_000, 0, 0, false);
        check("-25 h9", 25_000, -52, 0, true);
        check("25 H7", 25_000, 0, 21, false);
    }

    #[test]
    fn lines_that_mean_nothing_are_refused_with_their_place() {
        for (text, cause, span) in [
            ("", Cause::Empty, (0, 0)),
            ("8 0.1", Cause::NotANumber, (2, 5)),
            ("3\n8 ±0.1 x", Cause::NotANumber, (10, 11)),
            ("3\n\n25 q7", Cause::NotANumber, (3, 8)),
            ("1\n2\n3\n4\n5\n6\n7\n8\n9", Cause::TooMany { most: 8 }, (16, 17)),
        ] {
            let error = read(text).unwrap_err();
            assert_eq!((error.cause, error.span), (cause, span), "{text}");
        }
    }

    /// Every corner of the tolerances, one by one: none beyond the worst case, both ends met.
    #[test]
    fn the_worst_case_by_trying_every_corner() {
        let text = "40 ±0.05\n-8 0 -0.1\n-8.25 +0.1\n-23.9 ±0.02\n5 +0.3 +0.1\n-1 -0.2 -0.3\n2 H9\n-0.5 js11";
        let links = read(text).unwrap();
        let total = sum(&links).unwrap();
        let (mut least, mut most) = (um(1_000_000), um(-1_000_000));
        let mut squares = Fraction::ZERO;
        for corner in 0..1_u32 << links.len() {
            let mut all = Fraction::ZERO;
            for (k, link) in links.iter().enumerate() {
                let off = if corner >> k & 1 == 1 { link.off.most } else { link.off.least };
                let long = link.length.mm().checked_add(off.mm()).unwrap();
                all =
                    if link.minus { all.checked_sub(long) } else { all.checked_add(long) }.unwrap();
            }
            least = least.min(Length::from_mm(all));
            most = most.max(Length::from_mm(all));
        }
        assert_eq!(total.worst, Limits { least, most });
        for link in &*links {
            let half =
                link.off.most.mm().checked_sub(link.off.least.mm()).unwrap().over(2).unwrap();
            squares = squares.checked_add(half.checked_mul(half).unwrap()).unwrap();
        }
        let truth = Approx::of(squares).sqrt();
        assert!(
            (total.rss.value - truth.value).abs() <= total.rss.bound && total.rss.bound < 1e-15
        );
        assert!(
            total.rss.value * 2.0
                < Approx::of(minus(most, least, Field::Chain).unwrap().mm()).value
        );
        assert_eq!(total.most, 4);
        let shares = links.iter().map(|link| total.share(*link).unwrap());
        let all = shares.fold(Fraction::ZERO, |all, share| all.checked_add(share).unwrap());
        assert_eq!(all, Fraction::whole(100));
    }

    #[test]
    fn what_keeps_within_its_limits() {
        let total = sum(&read("10 ±0.1\n-9 ±0.1\n-0.5 ±0.1").unwrap()).unwrap();
        // 0.2 to 0.8 at worst; 0.5 ± 0.173 by root-sum-square.
        let keeps = |least, most| total.keeps(Limits { least: um(least), most: um(most) });
        assert_eq!(keeps(200, 800), Keeps::Always);
        assert_eq!(keeps(201, 800), Keeps::Mostly);
        assert_eq!(keeps(327, 673), Keeps::Not);
        assert_eq!(keeps(326, 674), Keeps::Mostly);
        assert_eq!(keeps(900, 1000), Keeps::Not);
    }
}
