//! What wires and strips are made of: strength, stiffness, and the sizes that gauges name.
//!
//! Music wire stands by the table of ASTM A228, which is interpolated between its rows;
//! all other figures are handbook bands from memory. What a bend takes for the yield lies
//! between a part of the least tensile strength and all of the greatest, since a wire
//! hardens as it is bent.
//!
//! ```
//! use handturn::bench::wire::{KSI, Stuff, gauge};
//! // 22 music wire gauge is 0.049 in; A228 lies between 306 and 303 ksi there.
//! let wire = gauge("22 mwg")?.unwrap();
//! let tensile = Stuff::Music.metal(wire)?.tensile;
//! assert!(tensile.least > 303.0 * KSI && tensile.least < 306.0 * KSI);
//! # Ok::<(), handturn::Error>(())
//! ```
mod table;

use crate::error::{Cause, Error, Field};
use crate::measure::{Length, given};
use crate::number::Fraction;

/// One thousand pounds-force on a square inch, in MPa.
pub const KSI: f64 = 6.894_757_293_168_361;

/// What a wire or strip is made of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Stuff {
    /// Music wire.
    #[doc(alias("piano wire"))]
    Music,
    /// Hard-drawn carbon steel wire.
    HardDrawn,
    /// Stainless spring wire, 18 chromium 8 nickel.
    Stainless,
    /// Spring-hard phosphor bronze.
    PhosphorBronze,
    /// Spring-hard brass.
    HardBrass,
    /// Carbon steel strip, hardened and tempered.
    SpringStrip,
    /// Bright drawn mild steel.
    MildSteel,
    /// Annealed copper.
    SoftCopper,
}

/// From the least to the greatest that is usual.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Band {
    /// Least.
    pub least: f64,
    /// Greatest.
    pub most: f64,
}

impl Band {
    /// Half-way between the two.
    #[must_use]
    pub fn middle(self) -> f64 {
        (self.least + self.most) / 2.0
    }

    /// From `least` to `most` percent of it.
    fn percent(self, (least, most): (u8, u8)) -> Self {
        let part = |n: u8| f64::from(n) / 100.0;
        Self { least: self.least * part(least), most: self.most * part(most) }
    }
}

/// What is known of a metal at one thickness; stresses and moduli in MPa.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Metal {
    /// Tensile strength.
    pub tensile: Band,
    /// What a bend takes for the yield.
    pub yields: Band,
    /// Modulus of elasticity.
    pub modulus: Band,
    /// Modulus of shear.
    pub shear: Band,
    /// Shear that a coiled spring may stand, in percent of the least tensile strength.
    pub stands_shear: u8,
    /// Bending that it may stand, likewise.
    pub stands_bending: u8,
}

impl Metal {
    /// A shear in a coiled spring, in percent of what it may stand: 100 is at the limit.
    #[must_use]
    pub fn loaded_by_shear(&self, mpa: f64) -> f64 {
        mpa / self.tensile.least / f64::from(self.stands_shear) * 1e4
    }

    /// A bending stress, likewise.
    #[must_use]
    pub fn loaded_by_bending(&self, mpa: f64) -> f64 {
        mpa / self.tensile.least / f64::from(self.stands_bending) * 1e4
    }
}

impl Stuff {
    /// What is known of it at a diameter or thickness.
    ///
    /// # Errors
    /// [`Cause::OutOfLengths`] of [`Field::Wire`] where no figures are known.
    pub fn metal(self, thick: Length) -> Result<Metal, Error> {
        let mm = given::size(thick, Field::Wire)?;
        let found = table::ROWS.iter().find(|row| row.stuff == self);
        let row = found.ok_or(Error::new(Field::Wire, Cause::Conflict))?;
        let tensile = if self == Self::Music {
            let ksi =
                |at: &(u16, u16, u16)| (f64::from(at.0) * 0.002_54, [at.1, at.2].map(f64::from));
            let [least, most] = between(table::MUSIC, mm, ksi)?;
            Band { least: least * KSI, most: most * KSI }
        } else {
            let mpa = |at: &(u16, u16)| (f64::from(at.0) * 0.001, [f64::from(at.1); 2]);
            let [least, most] = between(row.least, mm, mpa)?;
            Band { least, most }.percent((100, row.spread.saturating_add(100)))
        };
        let giga = |(least, most): (u8, u8)| Band {
            least: f64::from(least) * 1000.0,
            most: f64::from(most) * 1000.0,
        };
        Ok(Metal {
            tensile,
            yields: tensile.percent(row.yields),
            modulus: giga(row.modulus),
            shear: giga(row.shear),
            stands_shear: row.stands.0,
            stands_bending: row.stands.1,
        })
    }
}

/// The figures at `mm` of a table in order of thickness.
fn between<T>(
    rows: &[T],
    mm: f64,
    read: impl Fn(&T) -> (f64, [f64; 2]),
) -> Result<[f64; 2], Error> {
    // What is printed in inches and typed in millimetres may differ in the last bit.
    let near = 1e-9;
    for pair in rows.windows(2) {
        let [low, high] = pair else { continue };
        let ((from, [least, most]), (to, [then_least, then_most])) = (read(low), read(high));
        if mm >= from - near && mm <= to + near {
            let part = (mm - from) / (to - from);
            return Ok([least + (then_least - least) * part, most + (then_most - most) * part]);
        }
    }
    let um = |row: Option<&T>| row.map_or(0.0, |row| read(row).0 * 1000.0);
    let (least_um, greatest_um) = (um(rows.first()), um(rows.last()));
    let whole = |um: f64| given::whole(crate::number::float::round(um));
    Err(Error::new(
        Field::Wire,
        Cause::OutOfLengths { least_um: whole(least_um), greatest_um: whole(greatest_um) },
    ))
}

/// The diameter a gauge names: `16 swg` by the British standard wire gauge, `24 mwg` by
/// the music wire gauge, `2/0 swg`; nothing where `text` names no gauge.
///
/// # Errors
/// [`Cause::NotANumber`] where the gauge has no such number.
pub fn gauge(text: &str) -> Result<Option<Length>, Error> {
    let text = text.trim();
    let named = |name: &str| {
        let begin = text.len().checked_sub(name.len())?;
        let (number, end) = text.split_at_checked(begin)?;
        end.eq_ignore_ascii_case(name).then_some(number.trim())
    };
    let (number, sizes, noughts) = match (named("swg"), named("mwg")) {
        (Some(number), _) => (number, table::STANDARD, 6_usize),
        (_, Some(number)) => (number, table::MUSIC_GAUGE, 5),
        _ => return Ok(None),
    };
    let wrong = Error::new(Field::Wire, Cause::NotANumber).at(0, text.len());
    let read = |text: &str| text.trim().parse::<usize>().map_err(|_| wrong);
    let place = match number.split_once('/') {
        // 7/0 is seven noughts; 1/0 is 0.
        Some((many, "0")) => {
            let many = read(many)?.checked_sub(1).ok_or(wrong)?;
            noughts.checked_sub(many)
        }
        Some(_) => None,
        None => read(number)?.checked_add(noughts),
    };
    let size = place.and_then(|place| sizes.get(place)).ok_or(wrong)?;
    let inches = Fraction::new(i64::from(*size), 10_000)?;
    Length::from_inches(inches).map(Some)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn gauges_by_name() {
        let inch = |text: &str| gauge(text).map(|found| found.map(|l| l.inches().unwrap()));
        let part = |n, d| Ok(Some(Fraction::new(n, d).unwrap()));
        for (text, n, d) in [
            ("7/0 swg", 1, 2),
            ("0 SWG", 324, 1000),
            ("1/0swg", 324, 1000),
            ("1 swg", 300, 1000),
            ("16 swg", 64, 1000),
            ("30swg", 124, 10_000),
            ("39 swg", 52, 10_000),
            ("50 swg", 1, 1000),
            ("6/0 mwg", 4, 1000),
            ("0 mwg", 9, 1000),
            ("1 mwg", 10, 1000),
            ("24 mwg", 55, 1000),
            ("45 mwg", 180, 1000),
        ] {
            assert_eq!(inch(text), part(n, d), "{text}");
        }
        for text in ["51 swg", "8/0 swg", "0/0 swg", "swg", "46 mwg", "1/2 swg", "x mwg"] {
            let cause = gauge(text).unwrap_err().cause;
            assert_eq!(cause, Cause::NotANumber, "{text}");
        }
        for text in ["", "1.6", "wg", "°wg", "16 gauge"] {
            assert_eq!(gauge(text), Ok(None), "{text}");
        }
    }

    #[test]
    fn thicker_music_wire_is_weaker() {
        for pair in table::MUSIC.windows(2) {
            assert!(pair[0].0 < pair[1].0 && pair[0].1 > pair[1].1 && pair[0].2 > pair[1].2);
            assert!(pair[0].1 < pair[0].2);
        }
    }

    /// The gauges fall, and run by the even steps that are read of the standard one.
    #[test]
    fn gauges_run_evenly() {
        assert!(table::STANDARD.windows(2).all(|pair| pair[0] > pair[1]));
        assert!(table::MUSIC_GAUGE.windows(2).all(|pair| pair[0] < pair[1]));
        let at = |number: usize| table::STANDARD[number + 6];
        assert!(
            (39..49).all(|n| at(n) - at(n + 1) == 4) && (30..39).all(|n| at(n) - at(n + 1) == 8)
        );
    }

    #[test]
    fn every_metal_is_known_where_its_table_runs_and_nowhere_else() {
        let um = |um| Length::from_mm(Fraction::new(um, 1000).unwrap());
        for row in table::ROWS {
            let (least, most) = match row.least {
                [first, .., last] => (i64::from(first.0), i64::from(last.0)),
                _ => (102, 6350),
            };
            for at in (least..=most).step_by(37) {
                let metal = row.stuff.metal(um(at)).unwrap();
                assert!(metal.tensile.least < metal.tensile.most && metal.tensile.least > 150.0);
                assert!(metal.yields.least < metal.yields.most);
                assert!(metal.yields.most <= metal.tensile.most);
                assert!(metal.modulus.least < metal.modulus.most);
                // A metal's shear modulus is about 3/8 of the other.
                let ratio = metal.shear.middle() / metal.modulus.middle();
                assert!((0.34..0.42).contains(&ratio), "{:?} {ratio}", row.stuff);
            }
            for at in [least - 2, most + 2] {
                let cause = row.stuff.metal(um(at)).unwrap_err().cause;
                assert!(matches!(cause, Cause::OutOfLengths { .. }), "{:?} {at}", row.stuff);
            }
        }
    }
}
