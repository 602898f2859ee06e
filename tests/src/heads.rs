//! Heads as the rows name them: a ratio and a set of plates.
use handturn::head::{GEARS, Head, SET_A, SET_B, gears_of, plates_of};
use handturn::number::Fraction;

/// The hole counts of a set: `A`, `B`, or one plate's circles such as `16 18 19`;
/// sides are parted by `/`.
///
/// # Panics
/// On a count that is no number.
#[must_use]
pub fn circles(set: &str) -> Vec<Vec<u16>> {
    let owned = |set: &[&[u16]]| set.iter().map(|plate| plate.to_vec()).collect();
    match set {
        "A" => owned(&SET_A),
        "B" => owned(&SET_B),
        listed => listed.split('/').map(counts).collect(),
    }
}

/// Whole numbers listed with spaces between.
///
/// # Panics
/// On what is no number.
#[must_use]
pub fn counts<N: std::str::FromStr>(listed: &str) -> Vec<N> {
    let read = |one: &str| one.parse().unwrap_or_else(|_| panic!("{one:?} is no count"));
    listed.split_whitespace().map(read).collect()
}

/// A head of `ratio` with the plates of `set` (see [`circles`]), the twelve
/// gears of the old tables and a 24-notch plate.
///
/// # Panics
/// On a set that is no set.
#[must_use]
pub fn head(ratio: u32, set: &str) -> Head {
    let circles = circles(set);
    let plates: Vec<&[u16]> = circles.iter().map(Vec::as_slice).collect();
    Head {
        ratio: Fraction::whole(i64::from(ratio)),
        plates: plates_of(&plates).expect("a set holds few plates"),
        gears: gears_of(&GEARS).expect("twelve gears"),
        ..Head::default()
    }
}
