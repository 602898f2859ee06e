//! The head as its owner typed it among the page's fields, and the head in force.
//!
//! A field never typed, and one that cannot be read, reads as the default head has it.
use crate::fields::Fields;
use handturn::head::{Head, read};

/// Name of the field of plates and their circles.
pub const PLATES: &str = "head-plates";
/// Name of the field of change gears owned.
pub const GEARS: &str = "head-gears";

/// The built-in plates of 15 to 49 holes, as typed.
pub const PLATES_A: &str = "15 16 17 18 19 20 / 21 23 27 29 31 33 / 37 39 41 43 47 49";
/// The built-in plate of 24 to 66 holes, a side at a time.
pub const PLATES_B: &str = "24 25 28 30 34 37 38 39 41 42 43 / 46 47 49 51 53 54 57 58 59 62 66";
/// The built-in change gears.
pub const GEARS_USUAL: &str = "24x2 28 32 40 44 48 56 64 72 86 100";

/// The head in force.
#[must_use]
pub fn head(fields: &Fields) -> Head {
    Head {
        plates: read::plates(fields.get(PLATES)).unwrap_or_default(),
        gears: read::gears(fields.get(GEARS)).unwrap_or_default(),
        ..Head::default()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use handturn::head::{SET_A, SET_B, gears_of, plates_of};

    #[test]
    fn the_built_in_texts_are_the_built_in_sets() {
        let mut fields = Fields::default();
        for (plates, set) in [(PLATES_A, plates_of(&SET_A)), (PLATES_B, plates_of(&SET_B))] {
            fields.set(PLATES, plates);
            assert_eq!(head(&fields).plates, set.unwrap());
        }
        fields.set(GEARS, GEARS_USUAL);
        assert_eq!(head(&fields).gears, gears_of(&handturn::head::GEARS).unwrap());
        assert_eq!(head(&Fields::default()), Head::default());
    }
}
