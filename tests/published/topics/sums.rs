//! Exact sums: errors that build up, ratios of trains, and wheels to divide.
use super::{Outcome, ask, each, must, parts};
use handturn::divide::Order;
use handturn::measure::Length;
use handturn::number::Fraction;
use handturn_tests::heads::{circles, counts, head};
use handturn_tests::rows::{fraction, half_a_place, product};
use serde::Deserialize;

#[derive(Deserialize)]
struct Accumulated {
    moves: i64,
    each_inch: String,
    total_inch: String,
}

/// Moves that carry on from each other add their errors up, whatever the unit
/// on the way: inches to millimetres and back lose nothing.
pub(crate) fn accumulated() -> Vec<Outcome> {
    each("accumulated.csv", |row: &Accumulated| {
        let mm = |inches| Length::from_inches(inches).expect("a small length").mm();
        let each_mm = mm(fraction(&row.each_inch));
        let mut total = Fraction::ZERO;
        for _ in 0..row.moves {
            total = total.checked_add(each_mm).expect("a small sum");
        }
        let inches = Length::from_mm(total).inches().expect("a small length");
        (false, must(inches == fraction(&row.total_inch), || format!("comes to {inches}")))
    })
}

#[derive(Deserialize)]
struct Train {
    wheels: String,
    pinions: String,
    escape: String,
    beats_a_tooth: i64,
    beats_a_minute: String,
}

/// The train's beats come out as printed, and each of its wheels can be
/// divided, or what is missing is named.
pub(crate) fn trains() -> Vec<Outcome> {
    each("trains.csv", |row: &Train| {
        let beats = product(&row.wheels)
            .checked_div(product(&row.pinions))
            .and_then(|ratio| ratio.checked_mul(product(&row.escape)))
            .and_then(|an_hour| an_hour.times(row.beats_a_tooth))
            .and_then(|an_hour| an_hour.over(60))
            .expect("a small train");
        let off = beats.checked_sub(fraction(&row.beats_a_minute)).expect("a small difference");
        let fits = off.abs() <= half_a_place(&row.beats_a_minute);
        let teeth = format!("{} {} {}", row.wheels, row.pinions, row.escape);
        let divides = must(fits, || format!("{beats} beats")).and_then(|()| divide(&teeth));
        (false, divides)
    })
}

#[derive(Deserialize)]
struct Ratio {
    wheels: String,
    pinions: String,
    ratio: String,
}

pub(crate) fn ratios() -> Vec<Outcome> {
    each("ratios.csv", |row: &Ratio| {
        let found = product(&row.wheels).checked_div(product(&row.pinions)).expect("small");
        (false, must(found == fraction(&row.ratio), || format!("comes to {found}")))
    })
}

#[derive(Deserialize)]
struct Wheels {
    teeth: String,
}

pub(crate) fn wheels() -> Vec<Outcome> {
    each("wheels.csv", |row: &Wheels| (false, divide(&row.teeth)))
}

/// Each wheel is divided exactly on 40 : 1 with either set of plates, or the
/// circle that lacks would do it. Whether one circle does is counted here by
/// trying all holes.
fn divide(teeth: &str) -> Result<(), String> {
    for count in counts::<u32>(teeth) {
        for set in ["A", "B"] {
            let question = parts(count);
            let answer = ask(&question, &head(40, set))?;
            let best = answer.best(Order::Closest).ok_or(format!("{count}: no way at all"))?;
            let one_circle = |circle: u32| 40 * circle % count == 0;
            let mut owned = circles(set).concat().into_iter().map(u32::from);
            if best.errors.is_none() {
                continue;
            }
            if owned.any(one_circle) {
                return Err(format!("{count} on {set}: a circle does it, yet none is offered"));
            }
            let lacking = answer.lacking.circle;
            must(lacking.is_some_and(one_circle), || format!("{count}: {lacking:?} lacks"))?;
        }
    }
    Ok(())
}
