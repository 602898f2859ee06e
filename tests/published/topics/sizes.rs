//! Threads: basic sizes, limits, tolerances, drills.
use super::{Outcome, each, must};
use handturn::measure::Length;
use handturn::measure::read::Unit;
use handturn::number::Fraction;
use handturn::thread::drills::{Drill, DrillSet, tapping};
use handturn::thread::limits::{Class, Limits, Range, Side, limits};
use handturn::thread::{Form, Hand, Thread, name, rounded};
use handturn_tests::rows::{fraction, half_a_place};
use serde::Deserialize;

/// The one thread that `text` names, and the class named with it.
fn read(text: &str) -> Result<(Thread, Option<Class>), String> {
    let found = name::read(text).map_err(|e| format!("{text}: {e} {:?}", e.span))?;
    match found.iter().as_slice() {
        [one] => Ok((one.thread, one.class)),
        many => Err(format!("{text}: {} readings", many.len())),
    }
}

/// A diameter in the unit in which the thread's standard is printed.
fn printed(thread: &Thread, length: Length) -> Result<Fraction, String> {
    let value = if thread.form.unit == Unit::Mm { Ok(length.mm()) } else { length.inches() };
    value.map_err(|e| e.to_string())
}

/// Whether `exact`, rounded to the places that `text` has, is `text`.
fn agrees(text: &str, exact: Fraction) -> bool {
    let off = exact.checked_sub(fraction(text)).expect("small").abs();
    off <= half_a_place(text)
}

/// A row whose figures must all come out or, where they were never right, must not.
fn verdict(offered: &str, wrong: &[String]) -> (bool, Result<(), String>) {
    match offered {
        "yes" => (false, must(wrong.is_empty(), || wrong.join("; "))),
        "no" => (true, must(!wrong.is_empty(), || "the misprint is offered".into())),
        other => (false, Err(format!("{other}: yes or no"))),
    }
}

#[derive(Deserialize)]
struct Row {
    thread: String,
    external: String,
    internal: String,
    limits: String,
    offered: String,
}

pub(crate) fn limits_of_size() -> Vec<Outcome> {
    each("thread_limits.csv", |row: &Row| match wrong_limits(row) {
        Ok(wrong) => verdict(&row.offered, &wrong),
        Err(why) => (false, Err(why)),
    })
}

fn side(row: &Row, class: &str, side: Side) -> Result<Option<(Thread, Limits)>, String> {
    if class.is_empty() {
        return Ok(None);
    }
    let suffix = if class == "2G" && side == Side::Internal { " nut" } else { "" };
    let worded = matches!(class, "A" | "normal" | "medium" | "close");
    let suffix = if worded && side == Side::Internal { " nut" } else { suffix };
    let (thread, class) = read(&format!("{} {class}{suffix}", row.thread))?;
    let class = class.ok_or("no class read")?;
    must(class.side == side, || format!("{class:?} is the other side"))?;
    let found = limits(&thread, class).map_err(|e| format!("{class:?}: {e}"))?;
    Ok(Some((thread, found)))
}

/// The figures that differ.
fn wrong_limits(row: &Row) -> Result<Vec<String>, String> {
    let screw = side(row, &row.external, Side::External)?;
    let nut = side(row, &row.internal, Side::Internal)?;
    let mut wrong = Vec::new();
    for item in row.limits.split("; ") {
        let words: Vec<&str> = item.split(' ').collect();
        let from = if item.starts_with('D') { &nut } else { &screw };
        let (thread, found) = from.as_ref().ok_or_else(|| format!("{item}: no class"))?;
        let figure = if let ["allowance", text] = words[..] {
            let top = found.major.max.ok_or("no greatest major")?;
            let below = thread.major.mm().checked_sub(top.mm()).map_err(|e| e.to_string())?;
            (text, Some(Length::from_mm(below)))
        } else {
            let [diameter, end, text, ..] = words[..] else { return Err(item.into()) };
            let range: Range = match diameter {
                "d" | "D" => found.major,
                "d2" | "D2" => found.pitch_diameter,
                "d3" | "D1" => found.minor,
                _ => return Err(item.into()),
            };
            (text, if end == "max" { range.max } else { range.min })
        };
        let length = figure.1.ok_or_else(|| format!("{item}: not set"))?;
        if let Some("in") = words.get(3).copied() {
            // A metric limit printed in inches is a rounded one.
            if !agrees(figure.0, length.inches().map_err(|e| e.to_string())?) {
                wrong.push(item.into());
            }
            continue;
        }
        let exact = printed(thread, length)?;
        if exact != fraction(figure.0) {
            wrong.push(format!("{item}, not {exact}"));
        }
    }
    Ok(wrong)
}

#[derive(Deserialize)]
struct Basic {
    thread: String,
    sizes: String,
    offered: String,
}

pub(crate) fn basic() -> Vec<Outcome> {
    each("thread_basic.csv", |row: &Basic| match wrong_sizes(row) {
        Ok(wrong) => verdict(&row.offered, &wrong),
        Err(why) => (false, Err(why)),
    })
}

fn wrong_sizes(row: &Basic) -> Result<Vec<String>, String> {
    let (thread, _) = read(&row.thread)?;
    let mut wrong = Vec::new();
    for item in row.sizes.split("; ") {
        let (what, text) = item.rsplit_once(' ').ok_or(item)?;
        let (form, pitch) = (thread.form, thread.pitch);
        let length = match what {
            "pitch" => Ok(pitch),
            "major" => Ok(thread.major),
            "effective" => thread.pitch_diameter(),
            "minor" | "core" => thread.minor_external(),
            "bore" => thread.minor_internal(),
            "outer" => thread.major_internal(),
            "depth" => form.external_depth(pitch),
            "radius" => form.at(form.external.root_radius, pitch),
            "flat" => form.at(form.external.crest_flat, pitch),
            _ => return Err(item.into()),
        };
        let exact = printed(&thread, length.map_err(|e| e.to_string())?)?;
        // Four places of a size in millimetres are more than the standard's three.
        let finer = what == "core" && text.len() - text.find('.').unwrap_or(0) > 4;
        let near = if finer {
            let multiple = form.external.depth.times(2).and_then(|two| two.checked_mul(pitch.mm()));
            let exact = multiple.and_then(|depth| thread.major.mm().checked_sub(depth));
            agrees(text, exact.map_err(|e| e.to_string())?)
        } else {
            agrees(text, exact)
        };
        if !near {
            wrong.push(format!("{item}, not {exact}"));
        }
    }
    Ok(wrong)
}

#[derive(Deserialize)]
struct Measures {
    tpi: String,
    measures: String,
    offered: String,
}

pub(crate) fn whitworth_form() -> Vec<Outcome> {
    each("thread_form.csv", |row: &Measures| {
        let form = Form::WHITWORTH;
        let mut wrong = Vec::new();
        for item in row.measures.split("; ") {
            let (what, text) = item.split_once(' ').expect("a measure");
            let multiple = match what {
                "H" => form.height,
                "h" => form.external.depth,
                "r" => form.external.root_radius,
                _ => return (false, Err(item.into())),
            };
            let exact = multiple.checked_div(fraction(&row.tpi)).expect("small");
            if !agrees(text, exact) {
                wrong.push(format!("{item}, not {exact}"));
            }
        }
        verdict(&row.offered, &wrong)
    })
}

#[derive(Deserialize)]
struct Tolerance {
    thread: String,
    tolerance: String,
    um: String,
}

pub(crate) fn tolerances() -> Vec<Outcome> {
    each("thread_tolerances.csv", |row: &Tolerance| (false, tolerance(row)))
}

fn tolerance(row: &Tolerance) -> Result<(), String> {
    for item in row.um.split(' ') {
        let (grade, um) = item.split_once(':').ok_or(item)?;
        let class = match row.tolerance.as_str() {
            "Td2" => format!("{grade}h6h"),
            _ => format!("{grade}H"),
        };
        let (thread, class) = read(&format!("{} {class}", row.thread))?;
        let found = limits(&thread, class.ok_or("no class")?).map_err(|e| e.to_string())?;
        let range = if row.tolerance == "TD1" { found.minor } else { found.pitch_diameter };
        let (Some(max), Some(min)) = (range.max, range.min) else { return Err("not set".into()) };
        let width = max.mm().checked_sub(min.mm()).and_then(|mm| mm.times(1000));
        let width = width.map_err(|e| e.to_string())?;
        must(width == fraction(um), || format!("{item}, not {width}"))?;
    }
    Ok(())
}

#[derive(Deserialize)]
struct Allowance {
    over: String,
    to: String,
    inches: String,
}

pub(crate) fn allowances() -> Vec<Outcome> {
    each("thread_allowance.csv", |row: &Allowance| (false, allowance(row)))
}

/// At the upper end of the range and just above the lower one.
fn allowance(row: &Allowance) -> Result<(), String> {
    let of = |text: &str| match text.split_once(' ') {
        Some((whole, part)) => fraction(whole).checked_add(fraction(part)).expect("small"),
        None => fraction(text),
    };
    let hair = Fraction::new(1, 1000).expect("small");
    let low = of(&row.over).checked_add(hair).expect("small").max(fraction("0.1"));
    for diameter in [of(&row.to), low] {
        let inches = |value| Length::from_inches(value).expect("small");
        let (major, pitch) = (inches(diameter), inches(fraction("1/20")));
        let thread = Thread::new(Form::ACME, major, pitch, 1, Hand::Right);
        let thread = thread.map_err(|e| e.to_string())?;
        for (number, text) in (2..).zip(row.inches.split(' ')) {
            let fit = handturn::thread::limits::Fit::Number(number);
            let class = Class { side: Side::External, fit };
            let found = limits(&thread, class).map_err(|e| e.to_string())?;
            let top = found.pitch_diameter.max.ok_or("not set")?;
            let basic = rounded(thread.pitch_diameter().expect("fits"), Unit::Inch);
            let below = basic.expect("fits").mm().checked_sub(top.mm()).expect("fits");
            let below = Length::from_mm(below).inches().expect("fits");
            must(below == fraction(text), || format!("{number}G {text}, not {below}"))?;
        }
    }
    Ok(())
}

#[derive(Deserialize)]
struct Tapped {
    thread: String,
    drill: String,
    percent: i64,
    offered: String,
}

pub(crate) fn tapping_drills() -> Vec<Outcome> {
    each("tapping_drills.csv", |row: &Tapped| match percent(row) {
        Ok(percent) if percent == row.percent => verdict(&row.offered, &[]),
        Ok(percent) => verdict(&row.offered, &[format!("{percent} percent")]),
        Err(why) => (false, Err(why)),
    })
}

/// The drill as a row names it: `#7`, `F`, `5/16`, `5.0 mm`, or `0.150 in` for a loose one.
fn drill(text: &str) -> Result<Result<Drill, Length>, String> {
    let of = |set: DrillSet, place: u8| set.drill(place).ok_or(format!("{text}: not in the set"));
    if let Some(inches) = text.strip_suffix(" in") {
        return Ok(Err(Length::from_inches(fraction(inches)).map_err(|e| e.to_string())?));
    }
    if let Some(number) = text.strip_prefix('#') {
        let number: u8 = number.parse().map_err(|_| text)?;
        return of(DrillSet::Number, number - 1).map(Ok);
    }
    if let Some(mm) = text.strip_suffix(" mm") {
        let sought = Length::from_mm(fraction(mm));
        let mut all = (0..=u8::MAX).map_while(|place| DrillSet::Metric.drill(place));
        return all.find(|drill| drill.diameter == sought).map(Ok).ok_or(text.into());
    }
    if let [letter @ b'A'..=b'Z'] = text.as_bytes() {
        return of(DrillSet::Letter, letter - b'A').map(Ok);
    }
    let sixty_fourths = fraction(text).times(64).map_err(|e| e.to_string())?;
    let place = u8::try_from(sixty_fourths.num() - 1).map_err(|_| text)?;
    of(DrillSet::Fraction, place).map(Ok)
}

/// Percent that the row's drill leaves, as it is offered for that percent from its own set.
fn percent(row: &Tapped) -> Result<i64, String> {
    let (thread, _) = read(&row.thread)?;
    let drill = drill(&row.drill)?;
    let owned: Vec<Drill> = match drill {
        Ok(Drill { set: Some(set), .. }) => {
            (0..=u8::MAX).map_while(|place| set.drill(place)).collect()
        }
        Ok(drill) => vec![drill],
        Err(diameter) => vec![Drill { set: None, place: 0, diameter }],
    };
    let list = tapping(&thread, &owned, Fraction::whole(row.percent)).map_err(|e| e.to_string())?;
    let sought = drill.map_or_else(|length| length, |drill| drill.diameter);
    let found = list.iter().find(|one| one.drill.diameter == sought).ok_or("not offered")?;
    Ok(found.percent.nearest().map_err(|e| e.to_string())?.0)
}
