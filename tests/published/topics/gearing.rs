//! Change gears: printed ones are among the trains found, as far off as printed.
use super::{Outcome, each, must};
use handturn::List;
use handturn::head::{Gear, Mounting, gears_of};
use handturn::measure::Length;
use handturn::number::{Fraction, float};
use handturn::thread::Hand;
use handturn::thread::gearing::{Job, Lathe, Lead, go_on};
use handturn::train::{Found, Search, Senses, Six, Wanted};
use handturn_tests::heads::counts;
use handturn_tests::rows::{fraction, half_a_place};
use serde::Deserialize;

/// Trains listed: all exact ones of a set, and more.
const EACH: usize = 400;

#[derive(Deserialize)]
struct Lathed {
    constant: String,
    lead: String,
    owned: String,
    drivers: String,
    driven: String,
    exact: String,
}

/// The constant of a lathe is what equal gears cut, in threads to the inch.
pub(crate) fn leads() -> Vec<Outcome> {
    each("leads.csv", |row: &Lathed| (row.exact == "none", cut(row)))
}

fn cut(row: &Lathed) -> Result<(), String> {
    let inches = |n: Fraction| Length::from_inches(n).expect("small");
    let (number, unit) = row.lead.split_once(' ').ok_or("a lead has a unit")?;
    let pitch = match unit {
        "mm" => Length::from_mm(fraction(number)),
        _ => inches(fraction(number)),
    };
    let lathe = Lathe {
        screw: inches(fraction(&row.constant).inverse().map_err(|e| e.to_string())?),
        screw_hand: Hand::Right,
        head: Fraction::ONE,
        gearbox: List::new(),
        gears: gears_of(&counts::<u16>(&row.owned)).map_err(|e| e.to_string())?,
        mounting: Mounting::default(),
        drive: Senses::Either,
    };
    let lead = Lead::of_pitch(pitch, 1).map_err(|e| e.to_string())?;
    let job = Job { lead, hand: Hand::Right, six: Six::Never };
    let mut search = Search::<EACH>::new();
    while !go_on(&mut search, &job, &lathe, u32::MAX).map_err(|e| e.to_string())? {}
    if row.exact == "none" {
        return must(!search.best().iter().any(Found::is_exact), || "one is exact".into());
    }
    let found = find(&search, &row.drivers, &row.driven)?;
    must(found.is_exact() && lathe.cuts(&found) == Ok(pitch), || format!("{found:?}"))
}

#[derive(Deserialize)]
struct Substitute {
    wanted: String,
    times_pi: String,
    drivers: String,
    driven: String,
    ppm: String,
}

pub(crate) fn substitutes() -> Vec<Outcome> {
    each("substitutes.csv", |row: &Substitute| (false, substitute(row)))
}

/// The gears of the row and three idlers are owned.
fn substitute(row: &Substitute) -> Result<(), String> {
    let listed = format!("{} {} 41 47 73", row.drivers, row.driven);
    let gears: Vec<Gear> = gears_of(&counts::<u16>(&listed)).map_err(|e| e.to_string())?.to_vec();
    let (ratios, times_pi) = ([fraction(&row.wanted)], row.times_pi == "yes");
    let wanted = Wanted {
        ratios: &ratios,
        times_pi,
        gears: &gears,
        mounting: Mounting::default(),
        senses: Senses::Either,
        six: Six::Never,
    };
    let mut search = Search::<EACH>::new();
    while !search.run(&wanted, u32::MAX).map_err(|e| e.to_string())? {}
    let found = find(&search, &row.drivers, &row.driven)?;
    must(found.is_exact() == (row.ppm == "0"), || format!("{found:?}"))?;
    let off = found.off_ppm();
    let apart = (off.value - float::of(fraction(&row.ppm))).abs();
    must(apart <= float::of(half_a_place(&row.ppm)) + off.bound, || format!("{off:?}"))
}

/// The train with these drivers and driven gears, in whatever order.
fn find(search: &Search<EACH>, drivers: &str, driven: &str) -> Result<Found, String> {
    let (drivers, driven) = (counts::<u16>(drivers), counts::<u16>(driven));
    let sorted = |teeth: Vec<u16>| {
        let mut teeth = teeth;
        teeth.sort_unstable();
        teeth
    };
    let has = |found: &&Found| {
        sorted(found.chain.pairs().map(|pair| pair.driver).collect()) == drivers
            && sorted(found.chain.pairs().map(|pair| pair.driven).collect()) == driven
    };
    search.best().iter().find(has).copied().ok_or_else(|| "these gears are not offered".into())
}
