//! Reading what people type of a head: plates, gears and direct plates.
//!
//! Items are split by space, new line or `;`; a comma with a space after it is
//! no decimal mark, so it splits whole numbers too. Plates are split by `/`.
use super::sets::add_gear;
use super::{Circle, Gear, Plate};
use crate::bounds::{self, Bound, MAX_DIRECT, MAX_GEARS, MAX_PLATES};
use crate::error::{Cause, Error, Field};
use crate::list::List;
use crate::measure::read::{Unit, gap, too_many, with_unit};
use crate::measure::scan::Scan;

/// Plates: circles split by space, plates by `/` or a new line; a circle may
/// carry its radius in millimetres, as in `49(51.5)`.
///
/// # Errors
/// A bad count of holes, with its place; [`Cause::TooMany`], [`Cause::Empty`].
pub fn plates(text: &str) -> Result<List<Plate, MAX_PLATES>, Error> {
    let mut scan = Scan::new(text, Field::Plates);
    let (mut plates, mut plate) = (List::new(), Plate::default());
    loop {
        let from = scan.at;
        let (bars, line) = plate_ends(&mut scan);
        if bars > 1 || bars == 1 && plate.circles.is_empty() {
            return Err(scan.error(Cause::Empty, from));
        }
        let ended = bars > 0 || line || scan.is_done();
        if ended && !plate.circles.is_empty() {
            let whole = core::mem::take(&mut plate);
            plates.push(whole).map_err(|_| too_many(&scan, Field::Plates, MAX_PLATES, from))?;
        }
        if scan.is_done() {
            break;
        }
        let from = scan.at;
        let circle = circle(&mut scan)?;
        let most = bounds::MAX_CIRCLES;
        plate.circles.push(circle).map_err(|_| too_many(&scan, Field::Plates, most, from))?;
    }
    if plates.is_empty() { Err(Error::new(Field::Plates, Cause::Empty)) } else { Ok(plates) }
}

/// Change gears: teeth split by space, each as often as owned, or `24x2`.
///
/// # Errors
/// A bad number of teeth, with its place; [`Cause::TooMany`].
pub fn gears(text: &str) -> Result<List<Gear, MAX_GEARS>, Error> {
    let mut scan = Scan::new(text, Field::Gears);
    let mut gears: List<Gear, MAX_GEARS> = List::new();
    while gap(&mut scan) {
        let from = scan.at;
        let teeth = whole(&mut scan, bounds::TEETH)?;
        let times = scan.take(|c| matches!(c, 'x' | 'X' | '×')).is_some();
        let owned = if times { whole(&mut scan, bounds::OWNED)? } else { 1 };
        let gear = Gear { teeth, count: u8::try_from(owned).unwrap_or(u8::MAX) };
        add_gear(&mut gears, gear).map_err(|e| e.at(from, scan.at))?;
    }
    Ok(gears)
}

/// Notches of direct plates, split by space; none is allowed.
///
/// # Errors
/// A bad count of notches, with its place; [`Cause::TooMany`].
pub fn notches(text: &str) -> Result<List<u16, MAX_DIRECT>, Error> {
    let mut scan = Scan::new(text, Field::Direct);
    let mut list = List::new();
    while gap(&mut scan) {
        let from = scan.at;
        let notches = whole(&mut scan, bounds::NOTCHES)?;
        list.push(notches).map_err(|_| too_many(&scan, Field::Direct, MAX_DIRECT, from))?;
    }
    Ok(list)
}

/// Passes what splits circles: how many bars there were, and whether a line ended.
fn plate_ends(scan: &mut Scan) -> (u32, bool) {
    let (mut bars, mut line) = (0_u32, false);
    while let Some(c) = scan.take(|c| c.is_whitespace() || matches!(c, ';' | ',' | '/')) {
        bars = bars.saturating_add(u32::from(c == '/'));
        line |= c == '\n';
    }
    (bars, line)
}

fn circle(scan: &mut Scan) -> Result<Circle, Error> {
    let holes = whole(scan, bounds::HOLES)?;
    let mut radius = None;
    if scan.take(|c| c == '(').is_some() {
        let from = scan.at;
        scan.space();
        let value = scan.number()?;
        radius = Some(with_unit(scan, value, Unit::Mm)?);
        scan.space();
        if scan.take(|c| c == ')').is_none() {
            return Err(scan.error(Cause::NotANumber, from));
        }
    }
    Ok(Circle { holes, radius })
}

/// A whole number within `bound`, of digits alone.
fn whole(scan: &mut Scan, bound: Bound) -> Result<u16, Error> {
    let from = scan.at;
    let mut value: i64 = 0;
    let mut any = false;
    while let Some(c) = scan.take(|c| c.is_ascii_digit()) {
        any = true;
        value = value.saturating_mul(10).saturating_add(i64::from(c.to_digit(10).unwrap_or(0)));
    }
    let fraction = scan.peek().is_some_and(|c| c == '.' || c == ',' && !listed(scan));
    if fraction || !any {
        while scan.take(|c| !c.is_whitespace() && c != ';').is_some() {}
        let cause = if any { Cause::NotWhole } else { Cause::NotANumber };
        return Err(scan.error(cause, from));
    }
    let value = bound.check(value).map_err(|e| e.at(from, scan.at))?;
    u16::try_from(value).map_err(|_| scan.error(Cause::Overflow, from))
}

/// Whether the comma here splits a list: white space or nothing follows it.
fn listed(scan: &Scan) -> bool {
    let mut ahead = scan.clone();
    ahead.next();
    ahead.peek().is_none_or(char::is_whitespace)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::number::Fraction;
    extern crate std;
    use std::vec::Vec;

    #[test]
    fn plates_gears_and_notches() {
        let holes = |text| {
            plates(text).map_err(|e| e.cause).map(|plates| {
                let circles = |p: &Plate| p.circles.iter().map(|c| c.holes).collect::<Vec<_>>();
                plates.iter().map(circles).collect::<Vec<_>>()
            })
        };
        let wanted = Ok(std::vec![std::vec![15, 16], std::vec![21, 23]]);
        for text in [
            "15 16 / 21 23",
            "15 16/21 23",
            "15, 16\n21, 23\n",
            "15;16 /\n 21;23",
            "15 16\n\n21 23",
            "15 16 /\n21 23 /",
        ] {
            assert_eq!(holes(text), wanted, "{text:?}");
        }
        assert_eq!(holes(""), Err(Cause::Empty));
        assert_eq!(holes("15 // 21"), Err(Cause::Empty));
        assert_eq!(holes("/ 15"), Err(Cause::Empty));
        assert_eq!(holes("15 16.5"), Err(Cause::NotWhole));
        assert_eq!(holes("15,16"), Err(Cause::NotWhole));
        assert_eq!(holes("1"), Err(Cause::OutOfRange { least: 2, greatest: 1000 }));
        let with_radius = plates("49(51.5) 47(2 in)").unwrap();
        let radius = |k: usize| with_radius[0].circles[k].radius.unwrap().mm();
        assert_eq!(radius(0), Fraction::new(103, 2).unwrap());
        assert_eq!(radius(1), Fraction::new(254, 5).unwrap());

        let owned = |text| {
            let read = gears(text).map_err(|e| e.cause);
            read.map(|gears| gears.iter().map(|g| (g.teeth, g.count)).collect::<Vec<_>>())
        };
        assert_eq!(owned("24 24 28"), Ok(std::vec![(24, 2), (28, 1)]));
        assert_eq!(owned("28, 24x2"), Ok(std::vec![(24, 2), (28, 1)]));
        assert_eq!(owned(""), Ok(std::vec![]));
        assert_eq!(owned("24x10"), Err(Cause::OutOfRange { least: 1, greatest: 9 }));
        assert_eq!(owned("24 7"), Err(Cause::OutOfRange { least: 8, greatest: 250 }));
        assert_eq!(notches("24 30 36").unwrap().as_ref(), [24, 30, 36]);
    }
}
