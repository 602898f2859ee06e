//! Turns and holes on one circle.
use super::{Outcome, angle, ask, each, figures, must, parts, ways};
use handturn::divide::{Kind, Question};
use handturn::head::Head;
use handturn_tests::heads::head;
use handturn_tests::rows::{fraction, half_a_place};
use serde::Deserialize;

#[derive(Deserialize)]
struct Plain {
    ratio: u32,
    parts: u32,
    circles: String,
    turns: u32,
    holes: u32,
    circle: u32,
}

pub(crate) fn plain() -> Vec<Outcome> {
    each("plain.csv", |row: &Plain| {
        let offered = offered(&parts(row.parts), &head(row.ratio, &row.circles));
        let sought = (row.turns, row.holes, row.circle);
        let found = offered.and_then(|offered| {
            must(offered.contains(&sought), || format!("{sought:?} is not among {offered:?}"))
        });
        (false, found)
    })
}

#[derive(Deserialize)]
struct Angular {
    ratio: u32,
    degrees: String,
    circles: String,
    expect: String,
    turns: Option<u32>,
    holes: Option<u32>,
    circle: Option<u32>,
}

pub(crate) fn angular() -> Vec<Outcome> {
    each("angular.csv", |row: &Angular| {
        let turns = fraction(&row.degrees).over(360).expect("a small angle");
        let offered = offered(&angle(turns), &head(row.ratio, &row.circles));
        let sought = row.turns.zip(row.holes).zip(row.circle).map(|((t, h), c)| (t, h, c));
        let refused = row.expect != "offered";
        let found = offered.and_then(|offered| match (row.expect.as_str(), sought) {
            ("offered", Some(sought)) => {
                must(offered.contains(&sought), || format!("{sought:?} is not among {offered:?}"))
            }
            ("refused", Some(sought)) => {
                must(!offered.contains(&sought), || format!("{sought:?} is among {offered:?}"))
            }
            ("no circle", None) => must(offered.is_empty(), || format!("{offered:?}")),
            (expect, _) => Err(format!("{expect:?} cannot be checked")),
        });
        (refused, found)
    })
}

/// Turns, holes and circle of every plain way offered.
fn offered(question: &Question, head: &Head) -> Result<Vec<(u32, u32, u32)>, String> {
    let answer = ask(question, head)?;
    let figures = |way: &handturn::divide::Way| {
        let step = way.step(question, 0).map_err(|e| e.to_string())?;
        figures(&step).ok_or("a move without a leg".to_string())
    };
    ways(&answer, Kind::Plain).iter().map(figures).collect()
}

#[derive(Deserialize)]
struct Single {
    ratio: i64,
    handle_turn: String,
    circles: String,
    fraction: Option<String>,
}

/// A decimal of a handle turn, rounded to four places, and the one circle that
/// gives it; where the row names none, no circle of the set may round to it.
pub(crate) fn single() -> Vec<Outcome> {
    each("single.csv", |row: &Single| (row.fraction.is_none(), one_circle(row)))
}

fn one_circle(row: &Single) -> Result<(), String> {
    let sought = fraction(&row.handle_turn);
    let question = angle(sought.over(row.ratio).expect("a part of a turn"));
    let head = head(u32::try_from(row.ratio).expect("a ratio"), &row.circles);
    let answer = ask(&question, &head)?;
    let mut rounding = Vec::new();
    for way in [ways(&answer, Kind::NearestHole), ways(&answer, Kind::Plain)].concat() {
        let place = way.place(&question, 1).map_err(|e| e.to_string())?;
        let off = place.handle.checked_sub(sought).map_err(|e| e.to_string())?;
        if off.abs() <= half_a_place(&row.handle_turn) {
            let pin = place.pin.ok_or("no hole under the pin")?;
            rounding.push(format!("{}/{}", pin.number, pin.of));
        }
    }
    match &row.fraction {
        Some(printed) => {
            must(rounding.contains(printed), || format!("{printed} is not among {rounding:?}"))
        }
        None => must(rounding.is_empty(), || format!("{rounding:?} round to it")),
    }
}
