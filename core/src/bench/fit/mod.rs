//! ISO fits: limits of holes and shafts, what play or hold they leave between them, and a
//! part turned to one that was measured.
//!
//! Source: ISO 286-1 with its tables to 500 mm. A hole's limit mirrors the shaft's of the
//! same letter; K, M and N up to grade 8 and P to ZC up to grade 7 are moved by the
//! difference of two grades, Δ = IT(n) − IT(n − 1), above 3 mm; M6 over 250 to 315 mm
//! stands 2 µm higher than the rule. js and JS lie evenly about the line; halves of a
//! micrometre are kept.
//!
//! ```
//! use handturn::bench::fit::{Fit, read};
//! use handturn::measure::Length;
//! use handturn::number::Fraction;
//! // A sliding fit of 25 mm: H7/g6 leaves 7 to 41 µm.
//! let (hole, shaft) = read("H7/g6")?;
//! let fit = Fit::new(Length::from_mm(Fraction::whole(25)), hole, shaft)?;
//! let um = |n| Fraction::new(n, 1000).map(Length::from_mm);
//! assert_eq!((fit.shaft.least, fit.shaft.most), (um(24_980)?, um(24_993)?));
//! assert_eq!((fit.play.least, fit.play.most), (um(7)?, um(41)?));
//! # Ok::<(), handturn::Error>(())
//! ```
mod table;
mod turned;

pub use turned::{Measured, Turned};

use crate::error::{Cause, Error, Field};
use crate::measure::Length;
use crate::measure::given::{minus, plus};
use crate::number::Fraction;

/// A tolerance class: hole or shaft, letter, grade.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Class {
    /// Place in the table of letters.
    letter: u8,
    grade: u8,
    hole: bool,
}

/// The least and the greatest of something, in exact lengths.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Limits {
    /// Least.
    pub least: Length,
    /// Greatest.
    pub most: Length,
}

/// A hole and the shaft in it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Fit {
    /// Nominal size.
    pub size: Length,
    /// Diameters of the hole.
    pub hole: Limits,
    /// Diameters of the shaft.
    pub shaft: Limits,
    /// Play; below nought it is hold, the shaft larger than the hole.
    pub play: Limits,
    /// What it does.
    pub kind: Kind,
}

/// What a fit does.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Kind {
    /// The shaft is never larger than the hole.
    #[doc(alias("clearance"))]
    Play,
    /// Play or hold, as the two come out.
    #[doc(alias("transition"))]
    Either,
    /// The shaft is never smaller than the hole.
    #[doc(alias("interference"))]
    Hold,
}

const NO_CLASS: Error = Error::new(Field::Fit, Cause::Conflict);

/// A hole and a shaft as they are written: `H7/g6`, in either order.
///
/// # Errors
/// As [`Class::read`]; [`Cause::NotANumber`] where there are not a hole and a shaft.
pub fn read(text: &str) -> Result<(Class, Class), Error> {
    let text = text.trim();
    if text.is_empty() {
        return Err(Error::new(Field::Fit, Cause::Empty));
    }
    let wrong = Error::new(Field::Fit, Cause::NotANumber).at(0, text.len());
    let split = |c: char| c == '/' || c.is_whitespace();
    let (one, other) = text.split_once(split).ok_or(wrong)?;
    let (one, other) = (Class::read(one)?, Class::read(other.trim_matches(split))?);
    match (one.hole, other.hole) {
        (true, false) => Ok((one, other)),
        (false, true) => Ok((other, one)),
        _ => Err(wrong),
    }
}

impl Class {
    /// A class as it is written: `H7` a hole's, `g6` a shaft's, `js9`.
    ///
    /// # Errors
    /// [`Cause::Empty`]; [`Cause::NotANumber`] where it is no class; [`Cause::OutOfRange`]
    /// for the grade.
    pub fn read(text: &str) -> Result<Self, Error> {
        let text = text.trim();
        let wrong =
            Error::new(Field::Fit, if text.is_empty() { Cause::Empty } else { Cause::NotANumber });
        let end = text.find(|c: char| c.is_ascii_digit()).unwrap_or(text.len());
        let (letters, digits) = text.split_at_checked(end).ok_or(wrong)?;
        let letters = letters.trim_end();
        let same = |known: &&str| known.eq_ignore_ascii_case(letters);
        let letter = table::LETTERS.iter().position(same).ok_or(wrong)?;
        let letter = u8::try_from(letter).map_err(|_| wrong)?;
        let hole = letters.bytes().all(|b| b.is_ascii_uppercase());
        if !hole && letters.bytes().any(|b| b.is_ascii_uppercase()) {
            return Err(wrong);
        }
        let grade: u8 = digits.parse().map_err(|_| wrong)?;
        let (least, greatest) = table::GRADE;
        if grade < least || grade > greatest {
            let (least, greatest) = (least.into(), greatest.into());
            return Err(Error::new(Field::Grade, Cause::OutOfRange { least, greatest }));
        }
        Ok(Self { letter, grade, hole })
    }

    /// Whether it is a hole's.
    #[must_use]
    pub const fn is_hole(self) -> bool {
        self.hole
    }

    /// Lower and upper deviation of this class from a nominal size up to 500 mm.
    ///
    /// # Errors
    /// [`Cause::OutOfLengths`] of the size; [`Cause::Conflict`] where the standard has no
    /// such class at this size.
    pub fn deviations(self, size: Length) -> Result<Limits, Error> {
        let (least, most) = self.half_um(up(size)?).ok_or(NO_CLASS)?;
        let mm = |half_um: i32| Fraction::new(half_um.into(), 2000).map(Length::from_mm);
        Ok(Limits { least: mm(least)?, most: mm(most)? })
    }

    /// Least and greatest diameter of this class at a nominal size up to 500 mm.
    ///
    /// # Errors
    /// As [`Self::deviations`]; [`Cause::Overflow`].
    pub fn limits(self, size: Length) -> Result<Limits, Error> {
        let off = self.deviations(size)?;
        let at = |off| plus(size, off, Field::Diameter);
        Ok(Limits { least: at(off.least)?, most: at(off.most)? })
    }

    /// Lower and upper deviation, in half micrometres, at a size rounded up to a millimetre.
    fn half_um(self, mm: u32) -> Option<(i32, i32)> {
        let Self { letter, grade, hole } = self;
        let step = table::step(mm)?;
        let width = table::width(grade, step)?;
        // Up to 1 mm: neither a nor b, no grade from 14 on, no N from grade 9 on.
        let rough = letter <= table::B || grade > 13 || (hole && letter == table::N && grade > 8);
        if mm <= 1 && rough {
            return None;
        }
        if letter == table::JS {
            let half = width.checked_div(2)?;
            return Some((half.saturating_neg(), half));
        }
        let near = if letter == table::J {
            table::j(grade, hole, step)?.saturating_mul(2)
        } else {
            self.near(step, mm)?
        };
        // a to h lie below the line, j and on above it; holes the other way round.
        Some(if (letter <= table::H) == hole {
            (near, near.saturating_add(width))
        } else {
            (near.saturating_sub(width), near)
        })
    }

    /// The limit nearer to the line, in half micrometres.
    fn near(self, step: usize, mm: u32) -> Option<i32> {
        let Self { letter, grade, hole } = self;
        let shaft = table::shaft(letter, step, mm)?.saturating_mul(2);
        if !hole {
            let on_line = letter == table::K && !(4..=7).contains(&grade);
            return Some(if on_line { 0 } else { shaft });
        }
        let moved = match letter {
            table::K | table::M | table::N => grade <= 8,
            table::P.. => grade <= 7,
            _ => false,
        };
        if step == 0 || letter < table::K {
            return Some(shaft.saturating_neg());
        }
        match (letter, grade) {
            (table::K, 9..) => return None,
            (table::N, 9..) => return Some(0),
            // By the rule −20 + 9.
            (table::M, 6) if shaft == 40 => return Some(-18),
            _ => {}
        }
        let delta = if moved {
            table::width(grade, step)?.saturating_sub(table::width(grade.checked_sub(1)?, step)?)
        } else {
            0
        };
        Some(delta.saturating_sub(shaft))
    }
}

/// `size` in millimetres, a part of one counted as a whole, from just above 0 to 500.
fn up(size: Length) -> Result<u32, Error> {
    let mm = size.mm();
    if mm <= Fraction::ZERO || mm > Fraction::whole(500) {
        let cause = Cause::OutOfLengths { least_um: 1, greatest_um: 500_000 };
        return Err(Error::new(Field::Diameter, cause));
    }
    let up = mm.negated().floor().saturating_neg();
    u32::try_from(up).map_err(|_| Error::new(Field::Diameter, Cause::Overflow))
}

impl Fit {
    /// What `hole` and `shaft` leave between them at a nominal size.
    ///
    /// # Errors
    /// As [`Class::deviations`]; [`Cause::NotANumber`] where the first is no hole's or the
    /// second no shaft's; [`Cause::Overflow`].
    pub fn new(size: Length, hole: Class, shaft: Class) -> Result<Self, Error> {
        if !hole.hole || shaft.hole {
            return Err(Error::new(Field::Fit, Cause::NotANumber));
        }
        let of = |class: Class| {
            let off = class.deviations(size)?;
            let at = |off| plus(size, off, Field::Fit);
            Ok::<_, Error>(Limits { least: at(off.least)?, most: at(off.most)? })
        };
        let (hole, shaft) = (of(hole)?, of(shaft)?);
        let least = minus(hole.least, shaft.most, Field::Fit)?;
        let most = minus(hole.most, shaft.least, Field::Fit)?;
        let kind = if !least.mm().is_negative() {
            Kind::Play
        } else if most.mm() > Fraction::ZERO {
            Kind::Either
        } else {
            Kind::Hold
        };
        Ok(Self { size, hole, shaft, play: Limits { least, most }, kind })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn size(um: i64) -> Length {
        Length::from_mm(Fraction::new(um, 1000).unwrap())
    }

    fn class(letter: &str, grade: u8, hole: bool) -> Class {
        let letter = table::LETTERS.iter().position(|known| *known == letter).unwrap();
        Class { letter: u8::try_from(letter).unwrap(), grade, hole }
    }

    /// Lower and upper deviation in half micrometres.
    fn off(um: i64, class: Class) -> Option<(i64, i64)> {
        let off = class.deviations(size(um)).ok()?;
        let halves = |length: Length| length.mm().times(2000).unwrap().num();
        Some((halves(off.least), halves(off.most)))
    }

    fn of(um: i64, text: &str) -> Option<(i64, i64)> {
        off(um, Class::read(text).unwrap())
    }

    #[track_caller]
    fn check(um: i64, class: &str, upper: i64, lower: i64) {
        assert_eq!(of(um, class), Some((2 * lower, 2 * upper)), "{um} {class}");
    }

    #[test]
    fn classes_that_have_rules_of_their_own() {
        check(25_000, "K7", 6, -15);
        check(25_000, "K6", 2, -11);
        check(25_000, "M7", 0, -21);
        check(25_000, "N7", -7, -28);
        check(25_000, "P7", -14, -35);
        check(25_000, "S7", -27, -48);
        check(25_000, "N9", 0, -52);
        check(3_000, "N7", -4, -14);
        check(3_000, "N9", -4, -29);
        check(3_000, "j8", 8, -6);
        check(300_000, "M6", -9, -41);
        check(300_000, "M7", 0, -52);
        check(25_000, "k8", 33, 0);
        check(500_000, "zc16", 6600, 2600);
        assert_eq!(of(25_000, "js7"), Some((-21, 21)));
        // Δ = IT4 − IT3 = 1.5 µm.
        assert_eq!(of(6_000, "K4"), Some((-7, 1)));
    }

    #[test]
    fn what_the_standard_lacks_is_refused() {
        for (um, class) in [
            (1_000, "a11"),
            (1_000, "B11"),
            (1_000, "N9"),
            (1_000, "h14"),
            (25_000, "K9"),
            (25_000, "j8"),
            (25_000, "J5"),
            (20_000, "t6"),
            (10_001, "fg6"),
            (14_000, "v6"),
        ] {
            assert_eq!(Class::read(class).unwrap().deviations(size(um)), Err(NO_CLASS), "{class}");
        }
        assert!(Class::read("h6").unwrap().deviations(size(500_001)).is_err());
        assert!(Class::read("h6").unwrap().deviations(size(0)).is_err());
    }

    #[test]
    fn what_is_no_class_is_refused() {
        let cause = |text| read(text).unwrap_err().cause;
        assert_eq!(cause(" "), Cause::Empty);
        for text in ["H7", "H7/H8", "h6/g6", "Js7/h6", "H7/q6", "H7/g", "/", "H7/", "7/6"] {
            assert!(matches!(cause(text), Cause::NotANumber | Cause::Empty), "{text}");
        }
        assert_eq!(cause("H3/g6"), Cause::OutOfRange { least: 4, greatest: 16 });
        assert_eq!(read("g6 / H7"), read("H7/g6"));
        assert_eq!(read("H7 g6"), read("H7/g6"));
    }

    /// Sizes just over and at the end of every step, and between.
    fn sizes() -> impl Iterator<Item = i64> {
        (1..=500_i64).flat_map(|mm| [mm * 1000 - 999, mm * 1000])
    }

    #[test]
    fn holes_mirror_shafts_and_lie_on_the_line_at_h() {
        for um in sizes() {
            for grade in 4..=16 {
                for letter in ["a", "b", "c", "cd", "d", "e", "ef", "f", "fg", "g", "h", "js"] {
                    let shaft = off(um, class(letter, grade, false));
                    let hole = off(um, class(letter, grade, true));
                    assert_eq!(shaft.map(|(low, up)| (-up, -low)), hole, "{um} {letter}{grade}");
                    match (letter, shaft) {
                        ("h", Some((_, up))) => assert_eq!(up, 0),
                        ("js", Some((low, up))) => assert_eq!(low, -up),
                        _ => {}
                    }
                }
            }
        }
    }

    #[test]
    fn widths_grow_with_grade_and_size_and_letters_keep_their_order() {
        let mut before = [0; 17];
        for um in sizes() {
            let mut finer = 0;
            for (grade, before) in (0_u8..).zip(&mut before).skip(4) {
                let Some((low, up)) = off(um, class("h", grade, false)) else {
                    assert!(um <= 1000 && grade > 13);
                    continue;
                };
                assert!(up - low > finer && up - low >= *before, "{um} IT{grade}");
                finer = up - low;
                *before = finer;
                let near = |letter: &&str| {
                    let (low, up) = off(um, class(letter, grade, false))?;
                    Some(if **letter <= *"h" { up } else { low })
                };
                let letters = table::LETTERS.iter().filter(|letter| !letter.starts_with('j'));
                assert!(letters.filter_map(near).is_sorted(), "{um} {grade}");
            }
        }
    }

    /// A hole with Δ on the h shaft one grade finer plays as the H hole does on its mirror.
    #[test]
    fn the_same_play_about_a_hole_and_about_a_shaft() {
        for um in (3..500).map(|mm| mm * 1000 + 500) {
            for grade in 6..=8 {
                for letter in ["k", "m", "n", "p", "r", "s", "t", "u", "v", "x", "y", "z", "zc"] {
                    if grade == 8 && *letter > *"n" {
                        continue;
                    }
                    let fit = |hole: &str, shaft: &str| {
                        let (hole, shaft) =
                            (class(hole, grade, true), class(shaft, grade - 1, false));
                        Fit::new(size(um), hole, shaft).ok().map(|fit| fit.play)
                    };
                    let exception = grade == 6 && letter == "m" && (250_000..315_000).contains(&um);
                    let same = fit("h", letter) == fit(letter, "h");
                    assert_eq!(same, !exception, "{um} {grade} {letter}");
                }
            }
        }
    }

    #[test]
    fn kinds() {
        let kind = |text| {
            let (hole, shaft) = read(text).unwrap();
            Fit::new(size(25_000), hole, shaft).unwrap().kind
        };
        assert_eq!(kind("H7/h6"), Kind::Play);
        assert_eq!(kind("H7/k6"), Kind::Either);
        assert_eq!(kind("H7/p6"), Kind::Hold);
        assert_eq!(kind("P7/h6"), Kind::Hold);
    }
}
