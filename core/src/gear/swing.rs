//! Whether a wheel can be cut where it is set up: over the table, under the arbor.
//!
//! Seen along the work's axis, which stands at the head's centre height, the arbor of
//! the cutter goes square across above it. At full depth the two axes are as far apart
//! as outside radius and cutter radius less the depth. All exact; what is below nought
//! is in the way by so much.
//!
//! ```
//! use handturn::gear::swing::{Setup, swing};
//! use handturn::measure::Length;
//! use handturn::number::Fraction;
//! // The 223 wheel, module 1, over a head of 100 mm; a 63 mm cutter between 40 mm collars.
//! let mm = |n, d| Fraction::new(n, d).map(Length::from_mm);
//! let room = swing(&Setup {
//!     outside: mm(225, 1)?, depth: mm(9, 4)?, centre_height: mm(100, 1)?,
//!     cutter: mm(63, 1)?, collar: mm(40, 1)?, beside: None, clearance: mm(1, 1)?,
//! })?;
//! assert_eq!(room.over_table.mm(), Fraction::new(-25, 2)?); // 12.5 mm too large
//! assert_eq!(room.under_collar.mm(), Fraction::new(37, 4)?);
//! assert!(!room.table_clears && room.collar_clears);
//! # Ok::<(), handturn::Error>(())
//! ```
use crate::error::{Error, Field};
use crate::measure::Length;
use crate::measure::given::{from_nought, minus, over, plus, size};

/// Wheel, head and cutter as they are set up.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Setup {
    /// Outside diameter of the blank.
    pub outside: Length,
    /// How deep it is cut.
    pub depth: Length,
    /// Height of the head's centre over the table, or over what is lower beside the blank.
    pub centre_height: Length,
    /// Diameter of the cutter.
    pub cutter: Length,
    /// Diameter of the collars or the nut beside the cutter.
    pub collar: Length,
    /// How far head, tailstock, dog or the blank's own nut reach above the work's axis
    /// below the arbor; `None` where nothing does.
    pub beside: Option<Length>,
    /// Room that must be left.
    pub clearance: Length,
}

/// The room there is, below nought where something is in the way.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Room {
    /// Between blank and table.
    pub over_table: Length,
    /// Whether that is at least the clearance.
    pub table_clears: bool,
    /// Between the blank and the collar at full depth.
    pub under_collar: Length,
    /// Whether that is at least the clearance.
    pub collar_clears: bool,
    /// Between the collar and what stands beside the blank, at full depth.
    pub over_head: Option<Length>,
    /// Whether that is at least the clearance; so it is where nothing stands there.
    pub head_clears: bool,
    /// Height of the arbor's axis over the table when the cutter touches the blank.
    pub touching: Length,
    /// The same at full depth.
    pub at_depth: Length,
    /// Least diameter of a cutter that clears all with this collar.
    pub least_cutter: Length,
}

/// Whether blank, head and cutter clear each other.
///
/// # Errors
/// A length out of bounds, by its own field: [`Field::Blank`], [`Field::Depth`],
/// [`Field::CentreHeight`], [`Field::Cutter`] for cutter and collar, [`Field::Length`] for
/// what stands beside and for the clearance; [`Cause::Conflict`](crate::Cause::Conflict)
/// of [`Field::Cutter`] for a collar as large as the cutter, of [`Field::Depth`] for one
/// that reaches the centre.
pub fn swing(setup: &Setup) -> Result<Room, Error> {
    use crate::error::Cause;
    let conflict = |field| Err(Error::new(field, Cause::Conflict));
    size(setup.outside, Field::Blank)?;
    size(setup.depth, Field::Depth)?;
    size(setup.centre_height, Field::CentreHeight)?;
    size(setup.cutter, Field::Cutter)?;
    size(setup.collar, Field::Cutter)?;
    from_nought(setup.clearance, Field::Length)?;
    let field = Field::Length;
    let radius = over(setup.outside, 2, field)?;
    let cutter = over(setup.cutter, 2, field)?;
    let collar = over(setup.collar, 2, field)?;
    if setup.collar >= setup.cutter {
        return conflict(Field::Cutter);
    }
    if setup.depth >= radius {
        return conflict(Field::Depth);
    }
    let over_table = minus(setup.centre_height, radius, field)?;
    let under_collar = minus(minus(cutter, collar, field)?, setup.depth, field)?;
    let apart_touching = plus(radius, cutter, field)?;
    let apart = minus(apart_touching, setup.depth, field)?;
    let clears = |room: Length| room >= setup.clearance;
    let mut least = plus(plus(setup.depth, collar, field)?, setup.clearance, field)?;
    let over_head = match setup.beside {
        None => None,
        Some(beside) => {
            from_nought(beside, field)?;
            let room = minus(minus(apart, collar, field)?, beside, field)?;
            // What the room lacks must come from the cutter's radius.
            let lacks = minus(setup.clearance, room, field)?;
            least = least.max(plus(cutter, lacks, field)?);
            Some(room)
        }
    };
    Ok(Room {
        over_table,
        table_clears: clears(over_table),
        under_collar,
        collar_clears: clears(under_collar),
        over_head,
        head_clears: over_head.is_none_or(clears),
        touching: plus(setup.centre_height, apart_touching, field)?,
        at_depth: plus(setup.centre_height, apart, field)?,
        least_cutter: plus(least, least, field)?,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::error::Cause;
    use crate::number::Fraction;

    fn mm(hundredths: i64) -> Length {
        Length::from_mm(Fraction::new(hundredths, 100).unwrap())
    }

    fn small() -> Setup {
        Setup {
            outside: mm(2000),
            depth: mm(225),
            centre_height: mm(6500),
            cutter: mm(5000),
            collar: mm(3000),
            beside: Some(mm(2500)),
            clearance: mm(100),
        }
    }

    #[test]
    fn a_small_wheel_lets_the_arbor_meet_the_head() {
        let room = swing(&small()).unwrap();
        assert_eq!((room.over_table, room.table_clears), (mm(5500), true));
        assert_eq!((room.under_collar, room.collar_clears), (mm(775), true));
        // The axes are 10 + 25 − 2.25 apart, the collar takes 15 of it and the head 25.
        assert_eq!((room.over_head, room.head_clears), (Some(mm(-725)), false));
        assert_eq!((room.touching, room.at_depth), (mm(10_000), mm(9775)));
        // With the least cutter everything just clears.
        let enough = swing(&Setup { cutter: room.least_cutter, ..small() }).unwrap();
        assert_eq!((enough.over_head, enough.head_clears), (Some(mm(100)), true));
        assert!(enough.collar_clears);
        let short = Length::from_mm(room.least_cutter.mm().checked_sub(mm(1).mm()).unwrap());
        assert!(!swing(&Setup { cutter: short, ..small() }).unwrap().head_clears);
    }

    #[test]
    fn a_thin_cutter_lets_the_collar_meet_the_blank() {
        let setup = Setup { beside: None, cutter: mm(3600), ..small() };
        let room = swing(&setup).unwrap();
        assert_eq!((room.under_collar, room.collar_clears), (mm(75), false));
        assert_eq!((room.over_head, room.head_clears), (None, true));
        assert_eq!(room.least_cutter, mm(3650));
        assert!(swing(&Setup { cutter: mm(3650), ..setup }).unwrap().collar_clears);
    }

    #[test]
    fn what_does_not_go_together() {
        let why = |setup: Setup| swing(&setup).map_err(|e| (e.field, e.cause)).map(|_| ());
        let conflict = |field| Err((field, Cause::Conflict));
        assert_eq!(why(Setup { collar: mm(5000), ..small() }), conflict(Field::Cutter));
        assert_eq!(why(Setup { depth: mm(1000), ..small() }), conflict(Field::Depth));
        let zero = Err((Field::CentreHeight, Cause::Zero));
        assert_eq!(why(Setup { centre_height: mm(0), ..small() }), zero);
    }
}
