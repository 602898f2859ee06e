//! Tapers as angles, set over and by two disks; angles by a disk and a square.
use super::{Outcome, each, must};
use handturn::bench::disks::{Ask as Two, disks};
use handturn::bench::square::{Ask as ByHead, square};
use handturn::bench::taper::{Ask, Taper, figures, set};
use handturn::bench::tapers::Series;
use handturn::measure::{Angle, Length};
use handturn::number::{Fraction, float};
use handturn_tests::rows::fraction;
use serde::Deserialize;

#[derive(Deserialize)]
struct Turned {
    given: String,
    value: String,
    asks: String,
    printed: String,
    within: String,
}

pub(crate) fn tapers() -> Vec<Outcome> {
    each("tapers.csv", |row: &Turned| (false, turned(row)))
}

fn turned(row: &Turned) -> Result<(), String> {
    let text = |e: handturn::Error| e.to_string();
    let taper = match &*row.given {
        "per foot" => Taper::per_foot(fraction(&row.value)),
        "degrees" => Angle::from_degrees(fraction(&row.value)).map(Taper::Included),
        "morse" => {
            let size = Series::Morse.sizes().iter().find(|size| size.name == row.value);
            Series::Morse.taper(size.ok_or("no such size")?)
        }
        other => return Err(other.into()),
    }
    .map_err(text)?;
    if let Some(whole) = row.asks.strip_prefix("over ") {
        let between = Length::from_inches(fraction(whole)).map_err(text)?;
        let over = set(&Ask { between: Some(between), ..Ask::of(taper) }).map_err(text)?.over;
        let by = over.and_then(|over| over.by.exact).ok_or("not exact")?;
        return must(by.inches() == Ok(fraction(&row.printed)), || format!("{by:?}"));
    }
    let found = figures(taper).map_err(text)?;
    let came = match &*row.asks {
        "included" => found.included.value * 3600.0,
        "half" => found.half.value * 3600.0,
        "per inch" => found.rate.value,
        "per foot" => found.per_foot.value,
        other => return Err(other.into()),
    };
    near(came, &row.printed, &row.within)
}

/// Whether what came lies within so much of what is printed.
fn near(came: f64, printed: &str, within: &str) -> Result<(), String> {
    let off = (came - float::of(fraction(printed))).abs();
    must(off <= float::of(fraction(within)), || came.to_string())
}

#[derive(Deserialize)]
struct Pair {
    large: String,
    small: String,
    centres: String,
    degrees: String,
    asks: String,
    printed: String,
    within: String,
    refused: String,
}

/// Disks in inches, a square's disk as the small one; a row of a printed error must miss it.
pub(crate) fn pairs() -> Vec<Outcome> {
    each("disk_pairs.csv", |row: &Pair| {
        let refused = row.refused == "yes";
        let fits = pair(row);
        let result = if refused { must(fits.is_err(), || "offered".into()) } else { fits };
        (refused, result)
    })
}

fn pair(row: &Pair) -> Result<(), String> {
    let text = |e: handturn::Error| e.to_string();
    let inches = |typed: &str| Length::from_inches(fraction(typed)).map_err(text);
    let taper = || match row.degrees.strip_suffix(" in a foot") {
        Some(rate) => Taper::per_foot(fraction(rate)).map_err(text),
        None => Angle::from_degrees(fraction(&row.degrees)).map(Taper::Included).map_err(text),
    };
    let small = inches(&row.small)?;
    let ask = match (&*row.large, &*row.centres) {
        ("", _) => Two::Touching { small, taper: taper()? },
        (large, "") => Two::Taper { large: inches(large)?, small, taper: taper()? },
        (large, centres) => {
            Two::Centres { large: inches(large)?, small, centres: inches(centres)? }
        }
    };
    let inch = float::of(Fraction::new(127, 5).map_err(text)?);
    if row.asks == "head" {
        let angle = Angle::from_degrees(fraction(&row.degrees)).map_err(text)?;
        let found = square(&ByHead::Angle { disk: small, angle }).map_err(text)?;
        return near(found.head.value / inch, &row.printed, &row.within);
    }
    let found = disks(&ask).map_err(text)?;
    let came = match &*row.asks {
        "centres" => found.centres.value / inch,
        "large" => found.large.value / inch,
        "degrees" => found.included.value * 3600.0,
        other => return Err(other.into()),
    };
    near(came, &row.printed, &row.within)
}
