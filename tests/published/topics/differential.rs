//! Differential settings: each printed one is among those offered.
use super::{Outcome, ask, each, must, parts, ways};
use handturn::divide::{CircleAt, Differential, Kind, Way};
use handturn_tests::heads::{circles, head};
use handturn_tests::rows::fraction;
use serde::Deserialize;

#[derive(Deserialize)]
struct Setting {
    ratio: u32,
    set: String,
    parts: u32,
    holes: u32,
    circle: u16,
    spindle: Option<u16>,
    worm: Option<u16>,
    gear_ratio: String,
    idlers: u32,
    offered: String,
}

pub(crate) fn differential() -> Vec<Outcome> {
    each("differential.csv", |row: &Setting| (row.offered == "no", is_offered(row)))
}

fn is_offered(row: &Setting) -> Result<(), String> {
    let answer = ask(&parts(row.parts), &head(row.ratio, &row.set))?;
    let ways: Vec<Differential> = ways(&answer, Kind::Differential)
        .into_iter()
        .filter_map(|way| if let Way::Differential(way) = way { Some(way) } else { None })
        .collect();
    let plate = circles(&row.set).iter().position(|plate| plate.contains(&row.circle));
    let plate = u8::try_from(plate.ok_or("no such circle")?).expect("few plates");
    let circle = CircleAt { plate, holes: row.circle };
    let found = ways.iter().any(|way| {
        let gears = way.train.first;
        way.on(circle).is_some_and(|way| way.holes == row.holes)
            && way.train.second.is_none()
            && way.train.idler_count() == row.idlers
            && row.spindle.is_none_or(|teeth| teeth == gears.driver)
            && row.worm.is_none_or(|teeth| teeth == gears.driven)
            && (row.gear_ratio.is_empty()
                || way.gear_ratio().is_ok_and(|ratio| ratio == fraction(&row.gear_ratio)))
    });
    let wanted = row.offered == "yes";
    must(found == wanted, || format!("offered: {found}, among {} ways", ways.len()))
}
