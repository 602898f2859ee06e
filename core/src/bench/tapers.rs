//! Standard tapers as data: what a number stands for.
//!
//! Sources: machine tapers of ASME B5.10 and the handbooks' tables of standard tapers
//! (ends, lengths and tapers read in reprints of these tables, the fifth places of some
//! tapers from memory); the Jarno rule (a number's eighths, tenths and halves of an inch,
//! 0.6 in a foot, read); ISO 297 (7/24), ISO 296 (1 in 20), ISO 2339 (taper pins, 1 in 50),
//! ASME B18.8.2 (taper pins, 1/4 in a foot) and the collet's 16° 51′ from memory.
//!
//! ```
//! use handturn::bench::tapers::Series;
//! use handturn::bench::taper::{Taper, figures};
//! use handturn::number::Fraction;
//! // Number 2 Morse: 0.7 in at the large end, and 1° 25′ 50″ for the top slide.
//! let two = Series::Morse.sizes().iter().find(|size| size.name == "2").unwrap();
//! assert_eq!(two.large.unwrap().inches()?, Fraction::new(7, 10)?);
//! assert!((figures(Series::Morse.taper(two)?)?.half.value - 1.4307).abs() < 0.00005);
//! # Ok::<(), handturn::Error>(())
//! ```
use super::taper::Taper;
use crate::error::Error;
use crate::measure::{Angle, Length};
use crate::number::Fraction;

/// A family of tapers.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Series {
    /// Morse, 0 to 7.
    Morse,
    /// Brown & Sharpe, 1 to 16, with the commonest of their lengths.
    BrownSharpe,
    /// Jarno, 2 to 20.
    Jarno,
    /// Short tapers of drill chucks, by number.
    Chuck,
    /// Steep milling tapers, 7/24.
    Steep,
    /// Metric tapers, 1 in 20.
    Metric,
    /// Metric taper pins, 1 in 50, by their small end.
    MetricPin,
    /// Inch taper pins, 1/4 in a foot, by number.
    InchPin,
    /// The collet of milling spindles with an angle of 16° 51′.
    Collet,
}

/// One size.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Size {
    /// Its number or size, as it is called.
    pub name: &'static str,
    /// Hundred-thousandths of an inch in a foot, nought where the series has one taper.
    per_foot: u32,
    /// The large end.
    pub large: Option<Length>,
    /// The small end.
    pub small: Option<Length>,
    /// The length between them.
    pub length: Option<Length>,
}

impl Series {
    /// All of them.
    pub const ALL: [Self; 9] = [
        Self::Morse,
        Self::BrownSharpe,
        Self::Jarno,
        Self::Chuck,
        Self::Steep,
        Self::Metric,
        Self::MetricPin,
        Self::InchPin,
        Self::Collet,
    ];

    /// Its sizes, in order.
    #[must_use]
    pub const fn sizes(self) -> &'static [Size] {
        match self {
            Self::Morse => MORSE,
            Self::BrownSharpe => BROWN_SHARPE,
            Self::Jarno => JARNO,
            Self::Chuck => CHUCK,
            Self::Steep => STEEP,
            Self::Metric => METRIC,
            Self::MetricPin => METRIC_PIN,
            Self::InchPin => INCH_PIN,
            Self::Collet => COLLET,
        }
    }

    /// The taper of one of its sizes.
    ///
    /// # Errors
    /// None for sizes of its own.
    pub fn taper(self, size: &Size) -> Result<Taper, Error> {
        match self {
            Self::Metric => Taper::one_in(Fraction::whole(20)),
            Self::MetricPin => Taper::one_in(Fraction::whole(50)),
            Self::Collet => Angle::from_degrees(Fraction::new(337, 20)?).map(Taper::Included),
            _ => Taper::per_foot(Fraction::new(i64::from(size.per_foot), 100_000)?),
        }
    }
}

/// A size in hundred-thousandths of an inch; nought for what is not laid down.
const fn inch(name: &'static str, per_foot: u32, large: u32, small: u32, length: u32) -> Size {
    let [large, small, length] =
        [of(large, 127, 500_000), of(small, 127, 500_000), of(length, 127, 500_000)];
    Size { name, per_foot, large, small, length }
}

/// A size by its ends in micrometres.
const fn metric(name: &'static str, large: u32, small: u32) -> Size {
    Size { name, per_foot: 0, large: of(large, 1, 1000), small: of(small, 1, 1000), length: None }
}

#[expect(clippy::arithmetic_side_effects, reason = "both are below 2^63")]
const fn of(count: u32, num: i64, den: i64) -> Option<Length> {
    if count == 0 {
        return None;
    }
    match Fraction::from_wide(count as i128 * num as i128, den as i128) {
        Ok(mm) => Some(Length::from_mm(mm)),
        Err(_) => None,
    }
}

const MORSE: &[Size] = &[
    inch("0", 62460, 35610, 25200, 200000),
    inch("1", 59858, 47500, 36900, 212500),
    inch("2", 59941, 70000, 57200, 256250),
    inch("3", 60235, 93800, 77800, 318750),
    inch("4", 62326, 123100, 102000, 406250),
    inch("4.5", 62400, 150000, 126600, 450000),
    inch("5", 63151, 174800, 147500, 518750),
    inch("6", 62565, 249400, 211600, 725000),
    inch("7", 62400, 327000, 275000, 1000000),
];
const BROWN_SHARPE: &[Size] = &[
    inch("1", 50200, 23922, 20000, 93750),
    inch("2", 50200, 29968, 25000, 118750),
    inch("3", 50200, 37525, 31250, 150000),
    inch("4", 50240, 40233, 35000, 125000),
    inch("5", 50160, 52315, 45000, 175000),
    inch("6", 50329, 59961, 50000, 237500),
    inch("7", 50147, 72537, 60000, 300000),
    inch("8", 50100, 89873, 75000, 356250),
    inch("9", 50085, 106705, 90010, 400000),
    inch("10", 51612, 128927, 104465, 568750),
    inch("11", 50100, 153176, 124995, 675000),
    inch("12", 49973, 179681, 150010, 712500),
    inch("13", 50020, 207310, 175005, 775000),
    inch("14", 50000, 234375, 200000, 825000),
    inch("15", 50000, 261458, 225000, 875000),
    inch("16", 50000, 288542, 250000, 925000),
];
const JARNO: &[Size] = &[
    inch("2", 60000, 25000, 20000, 100000),
    inch("3", 60000, 37500, 30000, 150000),
    inch("4", 60000, 50000, 40000, 200000),
    inch("5", 60000, 62500, 50000, 250000),
    inch("6", 60000, 75000, 60000, 300000),
    inch("7", 60000, 87500, 70000, 350000),
    inch("8", 60000, 100000, 80000, 400000),
    inch("9", 60000, 112500, 90000, 450000),
    inch("10", 60000, 125000, 100000, 500000),
    inch("11", 60000, 137500, 110000, 550000),
    inch("12", 60000, 150000, 120000, 600000),
    inch("13", 60000, 162500, 130000, 650000),
    inch("14", 60000, 175000, 140000, 700000),
    inch("15", 60000, 187500, 150000, 750000),
    inch("16", 60000, 200000, 160000, 800000),
    inch("17", 60000, 212500, 170000, 850000),
    inch("18", 60000, 225000, 180000, 900000),
    inch("19", 60000, 237500, 190000, 950000),
    inch("20", 60000, 250000, 200000, 1000000),
];
const CHUCK: &[Size] = &[
    inch("0", 59145, 25000, 22844, 43750),
    inch("1", 92508, 38400, 33341, 65625),
    inch("2", 97861, 55900, 48764, 87500),
    inch("2 short", 97861, 54880, 48764, 75000),
    inch("3", 63898, 81100, 74610, 121875),
    inch("4", 62886, 112400, 103720, 165625),
    inch("5", 62010, 141300, 131611, 187500),
    inch("6", 62292, 67600, 62409, 100000),
    inch("33", 76194, 62400, 56051, 100000),
];
const STEEP: &[Size] = &[
    inch("30", 350000, 125000, 0, 0),
    inch("40", 350000, 175000, 0, 0),
    inch("45", 350000, 225000, 0, 0),
    inch("50", 350000, 275000, 0, 0),
    inch("60", 350000, 425000, 0, 0),
];
const INCH_PIN: &[Size] = &[
    inch("7/0", 25000, 6250, 0, 0),
    inch("6/0", 25000, 7800, 0, 0),
    inch("5/0", 25000, 9400, 0, 0),
    inch("4/0", 25000, 10900, 0, 0),
    inch("3/0", 25000, 12500, 0, 0),
    inch("2/0", 25000, 14100, 0, 0),
    inch("0", 25000, 15600, 0, 0),
    inch("1", 25000, 17200, 0, 0),
    inch("2", 25000, 19300, 0, 0),
    inch("3", 25000, 21900, 0, 0),
    inch("4", 25000, 25000, 0, 0),
    inch("5", 25000, 28900, 0, 0),
    inch("6", 25000, 34100, 0, 0),
    inch("7", 25000, 40900, 0, 0),
    inch("8", 25000, 49200, 0, 0),
    inch("9", 25000, 59100, 0, 0),
    inch("10", 25000, 70600, 0, 0),
];
const METRIC: &[Size] = &[
    metric("4", 4000, 0),
    metric("6", 6000, 0),
    metric("80", 80000, 0),
    metric("100", 100000, 0),
    metric("120", 120000, 0),
    metric("160", 160000, 0),
    metric("200", 200000, 0),
];
const METRIC_PIN: &[Size] = &[
    metric("0.6", 0, 600),
    metric("0.8", 0, 800),
    metric("1", 0, 1000),
    metric("1.2", 0, 1200),
    metric("1.5", 0, 1500),
    metric("2", 0, 2000),
    metric("2.5", 0, 2500),
    metric("3", 0, 3000),
    metric("4", 0, 4000),
    metric("5", 0, 5000),
    metric("6", 0, 6000),
    metric("8", 0, 8000),
    metric("10", 0, 10000),
    metric("12", 0, 12000),
    metric("16", 0, 16000),
    metric("20", 0, 20000),
    metric("25", 0, 25000),
    metric("30", 0, 30000),
    metric("40", 0, 40000),
    metric("50", 0, 50000),
];
const COLLET: &[Size] = &[inch("R8", 0, 0, 0, 0)];

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bench::taper::{Ask, figures, set};
    use crate::number::float;

    #[test]
    fn every_size_agrees_with_its_taper() {
        let mut with_ends = 0;
        for series in Series::ALL {
            for size in series.sizes() {
                let taper = series.taper(size).unwrap();
                assert!(figures(taper).is_ok(), "{series:?} {size:?}");
                let (Some(large), Some(small), Some(_)) = (size.large, size.small, size.length)
                else {
                    continue;
                };
                with_ends += 1;
                let ask = Ask { small: Some(small), length: size.length, ..Ask::of(taper) };
                let [came, ..] = set(&ask).unwrap().ends.unwrap();
                let off = (came.about.value - float::of(large.mm())).abs() / 25.4;
                assert!(off < 0.000_021, "{series:?} {size:?} {off}");
            }
        }
        assert_eq!(with_ends, 9 + 16 + 19 + 9);
    }
}
