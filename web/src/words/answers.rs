//! What an answer is told in: headings, facts, captions and closings.
use super::{BACK, FORWARD, count, grouped, mixed, seconds, signed_seconds};
use handturn::divide::{Leg, Part, Place, Way};
use handturn::measure::Angle;
use handturn::number::Fraction;
use handturn::train::{Gap, Train};

/// How many ways there are.
#[must_use]
pub fn ways_to_set(ways: u32, what: &str) -> String {
    count(ways, "way", "ways") + " to set " + what
}

/// The heading while what is typed cannot be read.
#[must_use]
pub fn last_good_answer(what: &str) -> String {
    "Last good answer: ".to_owned() + what
}

/// A list of angles in a heading.
#[must_use]
pub fn angles(n: usize) -> String {
    count(u32::try_from(n).unwrap_or(u32::MAX), "angle", "angles")
}

/// A dial in a heading.
#[must_use]
pub fn marks(n: u32) -> String {
    count(n, "mark", "marks")
}

/// Which circle takes the fraction of a turn.
#[must_use]
pub fn goes_into(turns: Fraction, holes: u16) -> String {
    let den = grouped(turns.den());
    [handle_turns(turns), ", and ", &den, " goes into your ", &holes.to_string(), " circle."]
        .concat()
}

/// What a number of handle turns counts.
fn handle_turns(turns: Fraction) -> &'static str {
    if turns > Fraction::ONE { " handle turns" } else { " of a handle turn" }
}

/// That no circle takes it.
#[must_use]
pub fn goes_into_none(turns: Fraction) -> String {
    [handle_turns(turns), ", and ", &grouped(turns.den()), " goes into none of your circles: "]
        .concat()
}

/// How near the best way comes where none is exact.
#[must_use]
pub fn closest_is(way: &str, within: &str) -> String {
    [way, " is within ", within, "."].concat()
}

/// "an 8", "an 11", "an 18", "an 80"; "a" before every other count of up to 1,000.
fn article(count: u32) -> String {
    let vowel = matches!(count, 8 | 11 | 18 | 80..=89 | 800..=899);
    if vowel { "an " } else { "a " }.to_owned()
}

/// What would make it exact.
#[must_use]
pub fn lacking(circle: Option<u32>, gear: Option<u16>) -> Option<String> {
    let circle = circle.map(|holes| article(holes) + &grouped(i64::from(holes)) + "-hole circle");
    let gear = gear.map(|teeth| ["one ", &teeth.to_string(), "-tooth gear"].concat());
    let what = match (circle, gear) {
        (Some(circle), Some(gear)) => circle + " or " + &gear,
        (Some(one), None) | (None, Some(one)) => one,
        (None, None) => return None,
    };
    Some(["It would be exact with ", &what, "."].concat())
}

/// Gears of a train, drivers over driven: `56 : 24`, `48 : 32 and 40 : 72`.
#[must_use]
pub fn gears(train: &Train) -> String {
    let pair = |driver: u16, driven: u16| driver.to_string() + " : " + &driven.to_string();
    let first = "Gears ".to_owned() + &pair(train.first.driver, train.first.driven);
    match train.second {
        Some(second) => first + " and " + &pair(second.driver, second.driven),
        None => first,
    }
}

/// Every gear of a train with the stud it goes on, from the spindle on.
#[must_use]
pub fn train(train: &Train) -> Vec<(&'static str, String)> {
    let mut rows = vec![("Spindle", train.first.driver.to_string())];
    let idlers: Vec<String> = train.idlers.iter().flatten().map(ToString::to_string).collect();
    let idlers = match idlers.len() {
        0 => ("Idlers", super::NONE.to_owned()),
        1 => ("Idler", idlers.concat()),
        _ => ("Idlers", idlers.join(", ")),
    };
    match train.second {
        Some(second) => {
            let stud = (
                "On one stud",
                [&train.first.driven.to_string(), " + ", &second.driver.to_string()].concat(),
            );
            let first_gap = train.idlers_in == Gap::First;
            if first_gap {
                rows.push(idlers.clone());
            }
            rows.push(stud);
            if !first_gap {
                rows.push(idlers);
            }
            rows.push(("Worm shaft", second.driven.to_string()));
        }
        None => {
            rows.push(idlers);
            rows.push(("Worm shaft", train.first.driven.to_string()));
        }
    }
    rows
}

/// The gears to mount, in a line.
#[must_use]
pub fn mounted(of: &Train) -> String {
    let parts: Vec<String> = train(of)
        .iter()
        .map(|(name, teeth)| [name.to_lowercase().as_str(), " ", teeth].concat())
        .collect();
    ["Gears: ", &parts.join("; "), "."].concat()
}

/// The sentence of a train drawing.
#[must_use]
pub fn train_sentence(of: &Train) -> String {
    let rows = train(of);
    let parts: Vec<String> = rows.iter().map(|(name, teeth)| [name, " ", teeth].concat()).collect();
    "Gear train drawn to scale: ".to_owned() + &parts.join(", ")
}

/// Under a train drawing: which way the plate runs.
#[must_use]
pub fn train_caption(follows: bool) -> &'static str {
    if follows {
        "Train to scale. The plate runs with the handle. The head must lie level."
    } else {
        "Train to scale. The plate runs against the handle. The head must lie level."
    }
}

/// The plate a way's circle is on.
#[must_use]
pub fn plate_of(way: &Way) -> Option<u8> {
    match way {
        Way::Plain(way) | Way::NearestHole(way) => Some(way.circle.plate),
        Way::Differential(way) => Some(way.circle.plate),
        Way::FineDial(way) => Some(way.circle.plate),
        Way::Compound(way) => Some(way.plate),
        _ => None,
    }
}

/// Under a plate drawing.
#[must_use]
pub fn caption(leg: &Leg, plate: Option<u8>) -> String {
    let of = grouped(i64::from(leg.from.of));
    let plate = plate.map_or_else(String::new, |plate| {
        ["Plate ", &(u32::from(plate) + 1).to_string(), ", "].concat()
    });
    match leg.part {
        Part::Pin => plate + &of + " circle.",
        Part::BackPin => plate + &of + " circle, back pin.",
        Part::Spindle => of + " notches.",
        Part::Handwheel | Part::FineDial => of + " marks.",
    }
}

/// The same move on other circles.
#[must_use]
pub fn same_move(circles: &[(u16, u32)]) -> String {
    let each: Vec<String> = circles
        .iter()
        .map(|(of, holes)| [&of.to_string(), " (", &holes.to_string(), ")"].concat())
        .collect();
    ["Same move on ", &each.join(", "), "."].concat()
}

/// How many of the moves are short and how many long, in what `part` counts.
#[must_use]
pub fn short_and_long(part: Part, few: u32, short: u32, long: u32) -> String {
    let (one, many) = super::moves::unit(part);
    [
        &count(short, "move", "moves"),
        " of ",
        &count(few, one, many),
        " and ",
        &grouped(i64::from(long)),
        " of ",
        &grouped(i64::from(few) + 1),
        ": the list of every position says which.",
    ]
    .concat()
}

/// That the moves of a compound way go round more than once.
#[must_use]
pub fn times_round(times: u32) -> String {
    ["The moves take the work ", &times.to_string(), " times round before it is home."].concat()
}

/// Where errors are given as lengths.
#[must_use]
pub fn error_at(diameter: &str) -> String {
    ["Lengths are at ", diameter, " mm diameter."].concat()
}

/// How many moves, and where everything stands after the last of them.
#[must_use]
pub fn closing(moves_in_all: u32, place: &Place, plate: Option<Fraction>) -> String {
    let between = moves_in_all.saturating_sub(1);
    let mut text = [
        &count(between, "move", "moves"),
        " between cuts and one to close, without a cut. After it: ",
        &where_at(place),
    ]
    .concat();
    if !place.handle.is_zero() {
        text += ", ";
        text += &mixed(place.handle);
        text += if plate.is_some() { " turns made over the plate" } else { " turns made" };
    }
    if let Some(plate) = plate.filter(|plate| !plate.is_zero()) {
        let way = if plate.is_negative() { BACK } else { FORWARD };
        text += &[", the plate ", way, " by ", &mixed(plate.abs()), " turns"].concat();
    }
    let error = place.error().unwrap_or(Angle::ZERO);
    text += &match (error == Angle::ZERO, error.turns().is_negative()) {
        (true, _) => ", the work home.".to_owned(),
        (_, short) => {
            let size = seconds(Angle::from_turns(error.turns().abs()));
            [", the work ", &size, if short { " short of home." } else { " past home." }].concat()
        }
    };
    text
}

/// What can be read off the machine at a place.
#[must_use]
pub fn where_at(place: &Place) -> String {
    let at = |name: &str, at: Option<handturn::divide::At>| {
        at.map(|at| name.to_owned() + &at.number.to_string())
    };
    let all = [
        at("hole ", place.pin),
        at("back pin ", place.back_pin),
        at("dial ", place.dial),
        at("notch ", place.notch),
    ];
    all.into_iter().flatten().collect::<Vec<String>>().join(", ")
}

/// A position of the error strip, read out.
#[must_use]
pub fn at_position(position: u32, place: &Place, error: Angle) -> String {
    [
        "Position ",
        &grouped(i64::from(position)),
        ": ",
        &where_at(place),
        ", ",
        &error_said(error),
        ".",
    ]
    .concat()
}

fn error_said(error: Angle) -> String {
    if error == Angle::ZERO {
        "no error".to_owned()
    } else {
        signed_seconds(error) + if error.turns().is_negative() { " short" } else { " too far" }
    }
}

/// The sentence of an error strip.
#[must_use]
pub fn strip_sentence(positions: u32, most: &str) -> String {
    [
        "Error at each of ",
        &grouped(i64::from(positions)),
        " positions, between plus and minus ",
        most,
    ]
    .concat()
}

/// How many settings there are beside those listed.
#[must_use]
pub fn and_more(count: u32, listed: usize) -> String {
    ["The best ", &listed.to_string(), " of ", &grouped(i64::from(count)), " are listed."].concat()
}

/// The button that shows more rows.
#[must_use]
pub fn show_rows(shown: u32, all: u32) -> String {
    if shown == 0 {
        return ["List all ", &grouped(i64::from(all))].concat();
    }
    ["Show more of ", &grouped(i64::from(all))].concat()
}

/// A kind of mark by its place in the pattern.
#[must_use]
pub fn mark_kind(kind: u8) -> &'static str {
    match kind {
        0 => super::LONG,
        1 => super::MIDDLE,
        _ => super::SHORT,
    }
}
