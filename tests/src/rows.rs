//! Rows of published values: one a case, read from a file with its source beside it.
use handturn::number::Fraction;
use serde::de::DeserializeOwned;
use std::path::{Path, PathBuf};

/// Where the published values stand.
#[must_use]
pub fn folder() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("published")
}

/// The rows of `file`, each as its own columns and as [`About`].
///
/// # Panics
/// On a row that cannot be read.
#[must_use]
pub fn read<Row: DeserializeOwned>(file: &str) -> Vec<(About, Row)> {
    let path = folder().join(file);
    let mut reader = csv::Reader::from_path(&path).unwrap_or_else(|e| panic!("{file}: {e}"));
    let head = reader.headers().unwrap_or_else(|e| panic!("{file}: {e}")).clone();
    let row = |record: Result<csv::StringRecord, csv::Error>| {
        let record = record.unwrap_or_else(|e| panic!("{file}: {e}"));
        let about = record.deserialize(Some(&head)).unwrap_or_else(|e| panic!("{file}: {e}"));
        let row = record.deserialize(Some(&head)).unwrap_or_else(|e| panic!("{file}: {e}"));
        (about, row)
    };
    reader.records().map(row).collect()
}

/// The columns every file has.
#[derive(Clone, Debug, serde::Deserialize)]
pub struct About {
    /// Number of the row, unique over all files.
    pub id: String,
    /// Where the value was published.
    pub source: String,
    /// Read in print, from memory, or a rule of arithmetic.
    pub how_known: String,
    /// What else there is to say.
    pub note: String,
}

/// A fraction as the rows write it: `7`, `-12/49` or `0.1910`.
///
/// # Panics
/// On anything else.
#[must_use]
pub fn fraction(text: &str) -> Fraction {
    let whole = |text: &str| text.parse::<i64>().unwrap_or_else(|_| panic!("{text:?}"));
    let (num, den) = if let Some((num, den)) = text.split_once('/') {
        (whole(num), whole(den))
    } else if let Some((ones, decimals)) = text.split_once('.') {
        let places = u32::try_from(decimals.len()).expect("few places");
        (whole(&format!("{ones}{decimals}")), 10_i64.pow(places))
    } else {
        (whole(text), 1)
    };
    Fraction::new(num, den).unwrap_or_else(|e| panic!("{text:?}: {e}"))
}

/// Half a unit of the last decimal that `text` gives: how far a printed figure may be rounded.
#[must_use]
pub fn half_a_place(text: &str) -> Fraction {
    let places = text.split_once('.').map_or(0, |(_, decimals)| decimals.len());
    let places = u32::try_from(places).expect("few places");
    Fraction::new(1, 2 * 10_i64.pow(places)).expect("few places")
}

/// The product of whole numbers listed with spaces between, as a fraction.
///
/// # Panics
/// When it does not fit.
#[must_use]
pub fn product(listed: &str) -> Fraction {
    crate::heads::counts::<i64>(listed)
        .into_iter()
        .try_fold(Fraction::ONE, Fraction::times)
        .expect("a train of small wheels")
}

/// Numbers of parts as coverage rows list them: `2-50`, `52-94 even 98 100`, `65-120 fives`.
///
/// # Panics
/// On anything else.
#[must_use]
pub fn parts(listed: &str) -> Vec<u32> {
    let mut all: Vec<u32> = Vec::new();
    let mut newest = 0;
    for word in listed.split_whitespace() {
        let divisor = match word {
            "even" => 2,
            "fives" => 5,
            _ => 1,
        };
        if divisor > 1 {
            let kept = all.split_off(newest);
            all.extend(kept.into_iter().filter(|n| n % divisor == 0));
            continue;
        }
        newest = all.len();
        let (from, to) = word.split_once('-').unwrap_or((word, word));
        let read = |n: &str| n.parse::<u32>().unwrap_or_else(|_| panic!("{n:?}"));
        all.extend(read(from)..=read(to));
    }
    all
}
