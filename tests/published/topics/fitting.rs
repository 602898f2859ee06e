//! Sizes round a thread: clearance holes, relief grooves, drills by name; taper threads.
use super::{Outcome, each, must};
use handturn::measure::Length;
use handturn::number::Fraction;
use handturn::thread::drill_list;
use handturn::thread::drills::DrillSet;
use handturn::thread::fitting::{Clearance, clearance_hole, relief};
use handturn::thread::limits::Side;
use handturn::thread::name;
use handturn::thread::taper::{Standard, Taper};
use handturn_tests::rows::fraction;
use serde::Deserialize;

#[derive(Deserialize)]
struct Round {
    thread: String,
    sizes: String,
}

pub(crate) fn round_a_thread() -> Vec<Outcome> {
    each("thread_fitting.csv", |row: &Round| (false, sizes(row)))
}

/// Each size of the row, in millimetres, exactly as printed.
fn sizes(row: &Round) -> Result<(), String> {
    let found = name::read(&row.thread).map_err(|e| e.to_string())?;
    let [one] = found.iter().as_slice() else { return Err("several readings".into()) };
    let thread = one.thread;
    let hole = |clearance| clearance_hole(&thread, clearance).map_err(|e| e.to_string());
    let screw = relief(&thread, Side::External).map_err(|e| e.to_string())?;
    let nut = relief(&thread, Side::Internal).map_err(|e| e.to_string())?;
    let between = |large: Length, small: Length| {
        large.mm().checked_sub(small.mm()).map(Length::from_mm).map_err(|e| e.to_string())
    };
    for item in row.sizes.split("; ") {
        let (what, text) = item.rsplit_once(' ').ok_or(item)?;
        let length = match what {
            "fine" => hole(Clearance::Close)?,
            "medium" => hole(Clearance::Medium)?,
            "coarse" => hole(Clearance::Coarse)?,
            "below" => between(thread.major, screw.diameter)?,
            "least" => screw.width_least,
            "most" => screw.width_most,
            "radius" => screw.radius,
            "over" => between(nut.diameter, thread.major)?,
            "nut least" => nut.width_least,
            "nut most" => nut.width_most,
            _ => return Err(item.into()),
        };
        must(length.mm() == fraction(text), || format!("{item}, not {}", length.mm()))?;
    }
    Ok(())
}

#[derive(Deserialize)]
struct Drills {
    inches: String,
}

pub(crate) fn drills() -> Vec<Outcome> {
    each("drills.csv", |row: &Drills| (false, drill(row)))
}

fn drill(row: &Drills) -> Result<(), String> {
    for item in row.inches.split("; ") {
        let (named, text) = item.split_once(' ').ok_or(item)?;
        let found = match (named.strip_prefix('#'), named.as_bytes()) {
            (Some(number), _) => {
                let number: u8 = number.parse().map_err(|_| item)?;
                DrillSet::Number.drill(number - 1)
            }
            (None, [letter @ b'A'..=b'Z']) => DrillSet::Letter.drill(letter - b'A'),
            _ => return Err(item.into()),
        };
        let inches = found.ok_or(item)?.diameter.inches().map_err(|e| e.to_string())?;
        must(inches == fraction(text), || format!("{item}, not {inches}"))?;
    }
    Ok(())
}

#[derive(Deserialize)]
struct Listed {
    item: String,
    inches: String,
    mm: String,
    note: String,
}

/// Drills as a list names them, with both sizes as printed.
pub(crate) fn drill_lists() -> Vec<Outcome> {
    each("drill_lists.csv", |row: &Listed| {
        let wrong = row.note.starts_with("a printed error");
        match (listed(row), wrong) {
            (Ok(()), true) => (true, Err("the printed error passes".into())),
            (Err(_), true) => (true, Ok(())),
            (result, false) => (false, result),
        }
    })
}

fn listed(row: &Listed) -> Result<(), String> {
    let mut all = Vec::new();
    drill_list::each(&row.item, &mut |drill| {
        all.push(drill);
        Ok(())
    })
    .map_err(|e| e.to_string())?;
    let [drill] = *all else { return Err(format!("{} drills", all.len())) };
    let near = |value: Fraction, text: &str| {
        let places = text.split_once('.').map_or(0, |(_, part)| part.len());
        let step = 10_i64.pow(u32::try_from(places).unwrap_or(0));
        let off = value.checked_sub(fraction(text)).and_then(|off| off.abs().times(2 * step));
        let off = off.map_err(|e| e.to_string())?;
        must(off <= Fraction::ONE, || format!("{text}, not {value}"))
    };
    // Inches as printed: number and letter drills to the last figure.
    let inches = drill.diameter.inches().map_err(|e| e.to_string())?;
    if drill.set.is_some() || row.item.starts_with('#') {
        must(inches == fraction(&row.inches), || format!("{}, not {inches}", row.inches))?;
    } else {
        near(inches, &row.inches)?;
    }
    if row.mm.is_empty() { Ok(()) } else { near(drill.diameter.mm(), &row.mm) }
}

pub(crate) fn taper() -> Vec<Outcome> {
    each("thread_taper.csv", |row: &Round| (false, tapers(row)))
}

/// Each size of the row exactly as printed: NPT in inches, R in millimetres.
fn tapers(row: &Round) -> Result<(), String> {
    let taper = Taper::read(&row.thread).map_err(|e| e.to_string())?;
    let sizes = taper.sizes().map_err(|e| e.to_string())?;
    for item in row.sizes.split("; ") {
        let (what, text) = item.rsplit_once(' ').ok_or(item)?;
        let length = match what {
            "E0" => sizes.pitch_diameter_small,
            "E1" => sizes.pitch_diameter,
            "L1" => taper.gauge,
            "L2" => taper.useful,
            "major" => sizes.major,
            "minor" => sizes.minor,
            "height" => sizes.height,
            _ => return Err(item.into()),
        };
        let value = match taper.standard {
            Standard::Npt => length.inches().map_err(|e| e.to_string())?,
            Standard::R => length.mm(),
        };
        must(value == fraction(text), || format!("{item}, not {value}"))?;
    }
    Ok(())
}
