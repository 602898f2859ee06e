//! ISO fits: deviations of classes over whole steps of size, and what fits leave.
use super::{Outcome, each, must};
use handturn::bench::fit::{Class, Fit, read};
use handturn::measure::Length;
use handturn::number::Fraction;
use handturn_tests::rows::fraction;
use serde::Deserialize;

#[derive(Deserialize)]
struct Step {
    over: i64,
    to: i64,
    printed: String,
    note: String,
}

pub(crate) fn classes() -> Vec<Outcome> {
    each("fit_classes.csv", |row: &Step| {
        let wrong = row.note.starts_with("printed error");
        (wrong, if wrong { must(step(row).is_err(), || "agrees".into()) } else { step(row) })
    })
}

/// Every printed figure, just over the step's begin, within it and at its end.
fn step(row: &Step) -> Result<(), String> {
    let um = |um: i64| Fraction::new(um, 1000).map(Length::from_mm).map_err(|e| e.to_string());
    let (over, to) = (row.over * 1000, row.to * 1000);
    for size in [over + 1, (over + to) / 2, to] {
        for item in row.printed.split("; ") {
            class(um(size)?, item).map_err(|found| format!("{size} µm: {item}, not {found}"))?;
        }
    }
    Ok(())
}

/// `H7 +21/0`, a letter alone with the deviation nearer to the line, `IT7 21`, or `t none`.
fn class(size: Length, item: &str) -> Result<(), String> {
    let (name, printed) = item.split_once(' ').ok_or(item)?;
    let (name, width) = match name.strip_prefix("IT") {
        Some(grade) => (format!("h{grade}"), true),
        None if name.ends_with(|c: char| c.is_ascii_digit()) => (name.to_string(), false),
        // Any grade: of k one from 4 to 7, of holes one above 7.
        None => (format!("{name}{}", if name == "k" { 6 } else { 9 }), false),
    };
    let class = Class::read(&name).map_err(|e| e.to_string())?;
    let off = match class.deviations(size) {
        Ok(off) => off,
        Err(_) if printed == "none" => return Ok(()),
        Err(error) => return Err(error.to_string()),
    };
    let um = |length: Length| length.mm().times(1000).map_err(|e| e.to_string());
    let (least, most) = (um(off.least)?, um(off.most)?);
    let same = if let Some((upper, lower)) = printed.split_once('/') {
        let read = |text: &str| fraction(text.trim_start_matches('+'));
        (least, most) == (read(lower), read(upper))
    } else if width {
        most.checked_sub(least) == Ok(fraction(printed))
    } else {
        let printed = fraction(printed.trim_start_matches('+'));
        // J and K to ZC hang below their figure, A to G stand on it; shafts the other way.
        let letter = name.trim_end_matches(|c: char| c.is_ascii_digit()).to_lowercase();
        let upper = (letter.as_str() <= "h") != class.is_hole();
        (if upper { most } else { least }) == printed
    };
    must(same, || format!("{most}/{least}"))
}

#[derive(Deserialize)]
struct Pair {
    size: i64,
    fit: String,
    least: i64,
    most: i64,
}

pub(crate) fn play() -> Vec<Outcome> {
    each("fit_play.csv", |row: &Pair| (false, pair(row)))
}

fn pair(row: &Pair) -> Result<(), String> {
    let fit = || {
        let (hole, shaft) = read(&row.fit)?;
        Fit::new(Length::from_mm(Fraction::whole(row.size)), hole, shaft)
    };
    let play = fit().map_err(|e| e.to_string())?.play;
    let um = |um| Fraction::new(um, 1000).map(Length::from_mm).map_err(|e| e.to_string());
    let same = play.least == um(row.least)? && play.most == um(row.most)?;
    must(same, || format!("{play:?}"))
}
