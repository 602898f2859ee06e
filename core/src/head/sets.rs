//! Plate sets and gears that come built in, named by what they hold.
//!
//! Hole counts: 40 : 1 heads' usual three plates of six circles, and the usual
//! two-sided plate (Machinery Repairman, NAVEDTRA 14345, fig. 7-19, less its
//! 100-hole circle). Gears: the twelve that pre-1929 differential tables use.
use super::{Circle, Gear, Plate};
use crate::bounds::{self, MAX_CIRCLES, MAX_GEARS, MAX_PLATES};
use crate::error::{Cause, Error, Field};
use crate::list::List;

/// Three plates of six circles, 15 to 49.
pub const SET_A: [&[u16]; 3] =
    [&[15, 16, 17, 18, 19, 20], &[21, 23, 27, 29, 31, 33], &[37, 39, 41, 43, 47, 49]];

/// One plate with two sides, 24 to 66.
pub const SET_B: [&[u16]; 2] =
    [&[24, 25, 28, 30, 34, 37, 38, 39, 41, 42, 43], &[46, 47, 49, 51, 53, 54, 57, 58, 59, 62, 66]];

/// Twelve change gears, the 24 twice.
pub const GEARS: [u16; 12] = [24, 24, 28, 32, 40, 44, 48, 56, 64, 72, 86, 100];

/// Plates with the circles of `sets`, radii not known.
///
/// # Errors
/// [`Cause::TooMany`] when there are more plates or circles than a head holds.
pub fn plates_of(sets: &[&[u16]]) -> Result<List<Plate, MAX_PLATES>, Error> {
    let too_many = |most| {
        let most = u16::try_from(most).unwrap_or(u16::MAX);
        Error::new(Field::Plates, Cause::TooMany { most })
    };
    let mut plates = List::new();
    for set in sets {
        let mut plate = Plate::default();
        for &holes in *set {
            let circle = Circle { holes, radius: None };
            plate.circles.push(circle).map_err(|_| too_many(MAX_CIRCLES))?;
        }
        plates.push(plate).map_err(|_| too_many(MAX_PLATES))?;
    }
    Ok(plates)
}

/// The gears of `teeth`, equal ones counted together, in rising order.
///
/// # Errors
/// [`Cause::TooMany`] when there are more kinds than a head holds or more than
/// nine of one kind.
pub fn gears_of(teeth: &[u16]) -> Result<List<Gear, MAX_GEARS>, Error> {
    let mut gears: List<Gear, MAX_GEARS> = List::new();
    for &teeth in teeth {
        add_gear(&mut gears, Gear { teeth, count: 1 })?;
    }
    Ok(gears)
}

/// Adds `gear` in rising order, counting equal ones together.
pub(super) fn add_gear(gears: &mut List<Gear, MAX_GEARS>, gear: Gear) -> Result<(), Error> {
    let place = gears.iter().position(|g| g.teeth >= gear.teeth).unwrap_or(gears.len());
    if let Some(owned) = gears.get_mut(place).filter(|g| g.teeth == gear.teeth) {
        owned.count = owned.count.saturating_add(gear.count);
        bounds::OWNED.check(i64::from(owned.count))?;
    } else if gears.insert(place, gear).is_some() {
        let most = u16::try_from(MAX_GEARS).unwrap_or(u16::MAX);
        return Err(Error::new(Field::Gears, Cause::TooMany { most }));
    }
    Ok(())
}
