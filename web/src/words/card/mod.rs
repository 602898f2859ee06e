//! What the Card says.
pub mod store;

use super::errors::{Said, said};
use super::{count, grouped, ratio};
use crate::card::{Entry, Step};
use handturn::card::Fault;
use handturn::head::Head;

words! {
    CARD = "Card";
    PUT = "Put on card";
    OPEN_CARD = "Open the card";
    NOTHING_TO_PUT = "No answer stands open here.";
    NEW_TITLE = "New part";
    SAVE = "Save to file";
    PRINT = "Print";
    LINK = "Link";
    THE_LINK = "Link to this card";
    LINK_WHY = "Copy the address of this link: it holds the whole card, and no server sees it.";
    UNDO = "Undo";
    REDO = "Redo";
    RETRY = "Try to save again";
    TAKE_OVER = "Write here";
    ALL_CARDS = "All cards";
    DELETE_CARD = "Delete this card";
    DELETE = "Delete";
    PART = "Part";
    JOB = "Job it belongs to";
    METAL = "Metal and stock";
    DATE = "Date";
    NOTES = "Notes";
    MIND = "Mind this";

    VALUES = "Values";
    ADD_VALUE = "Add a value";
    VALUES_WHY = "A drawing value may be a formula: = bore - 0.1. In the fields of every room =bore stands for the value of that name.";
    NAME = "Name";
    DRAWING = "On the drawing";
    MEASURED = "As measured";
    IN_FORCE = "In force";
    KIND = "What it is";
    LENGTH = "Length";
    ANGLE = "Angle";
    NUMBER = "Number";
    REMOVE = "Remove";

    IN_THIS_ORDER = "In this order";
    NO_STEPS = "Nothing yet. In every room “Put on card” brings its answer here.";
    WASH_OFF = "Wash off layout fluid or flux, oil bare steel.";
    OWN_STEP = "A step in your own words";
    ADD_STEP = "Add step";
    OPEN = "Open";
    CLOSE = "Close";
    UP = "Move up";
    DOWN = "Move down";
    STEP_WORDS = "Words of the step";
    PARTS_TO_TICK = "Parts to tick one by one, 0 for none";
    OPEN_ROOM = "Ask it again in its room";
    DIFFERS = "Today this comes out otherwise.";
    DIFFERS_WHY = "The Shop or a measured value has changed since it was put on the card.";
    ON_THE_CARD = "On the card";
    TODAY = "Today";
    TAKE_NEW = "Take the new answer";
    NO_ANSWER_TODAY = "With what the Shop holds today there is no answer to this; the card keeps the one it has.";
    DRAWN_TODAY = "Drawing and working are of today’s answer.";

    WHAT_CARDS_ARE = "A card is one part: its answers in the order they are done, with ticks, notes and measured values. It hangs by the machine.";
    NEW_CARD = "New card";
    CARDS_HERE = "Cards on this device";
    OPEN_FILE = "Open a saved card";
    RESCUE = "Rescue what can be read";
    KEEP = "Keep it";
    LET_GO = "Leave it";
    OFFERED_WHY = "It came in the link. Keep it, and it is one of your cards.";
    DEMO = "Show a worked card";
    DEMO_WHY = "The worked card is an invented bronze astronomical clock: wheels of 127, 223, 64, 38 and 48 teeth and a ring of 365 marks. It has a head of its own and can be deleted.";
    DEMO_TITLE = "Wheels and calendar ring";
    DEMO_JOB = "Bronze astronomical clock";
    DEMO_METAL = "Bronze, 4 mm";
    DEMO_NOTES = "All wheels on one arbor, between the same nuts.\nScratch a trial round before the first cut.";
    DEMO_LAST = "Deburr, count the teeth";
}

/// A title, or what stands for one.
#[must_use]
pub fn title(title: &str) -> &str {
    if title.trim().is_empty() { NEW_TITLE } else { title }
}

/// What a button does to something.
#[must_use]
pub fn about(does: &str, what: &str) -> String {
    [does, ": ", what].concat()
}

/// The button that takes something out.
#[must_use]
pub fn remove(what: &str) -> String {
    about(REMOVE, what)
}

/// The way to the open card.
#[must_use]
pub fn open_card(name: &str, job: &str) -> String {
    let comma = if job.is_empty() { "" } else { ", " };
    ["Open job card: ", job, comma, title(name)].concat()
}

/// Where an answer went.
#[must_use]
pub fn put_on(card: &str, number: usize) -> String {
    ["On the card “", title(card), "”, step ", &number.to_string(), "."].concat()
}

/// A step by its number.
#[must_use]
pub fn step_number(number: usize) -> String {
    ["step ", &number.to_string()].concat()
}

/// The steps that something belongs to, in order: `Steps 1, 3–5: `.
#[must_use]
pub fn of_steps(steps: &[usize]) -> String {
    let mut runs: Vec<(usize, usize)> = Vec::new();
    for step in steps {
        match runs.last_mut() {
            Some((_, end)) if *end + 1 == *step => *end = *step,
            _ => runs.push((*step, *step)),
        }
    }
    let runs: Vec<String> = runs
        .iter()
        .map(|(from, to)| match to - from {
            0 => from.to_string(),
            _ => [&*from.to_string(), "–", &to.to_string()].concat(),
        })
        .collect();
    [if steps.len() > 1 { "Steps " } else { "Step " }, &runs.join(", "), ": "].concat()
}

/// A value by its name.
#[must_use]
pub fn value_named(name: &str) -> String {
    ["Value ", name].concat()
}

/// What follows a value.
#[must_use]
pub fn followers(names: &[String]) -> String {
    if names.is_empty() {
        return "Nothing follows it.".to_owned();
    }
    ["It is followed by ", &names.join(", "), "."].concat()
}

/// What is wrong with a value; `named` tells what the others are called.
#[must_use]
pub fn fault<'a>(fault: &Fault, typed: &str, named: &dyn Fn(u8) -> &'a str) -> Said {
    let plain = |wrong: String| Said { wrong, typed: String::new(), instead: "" };
    match fault {
        Fault::Text(error) => said(error, typed),
        Fault::Unknown(from, to) => {
            let name = typed.get(usize::from(*from)..usize::from(*to)).unwrap_or_default();
            plain(["No value of this card is called “", name, "”."].concat())
        }
        Fault::Units(..) => {
            plain("Here lengths, angles and numbers do not go together.".to_owned())
        }
        Fault::Cycle(round) => {
            let mut names: Vec<&str> = round.iter().map(|place| named(*place)).collect();
            names.extend(names.first().copied());
            plain(["It goes round in a circle: ", &names.join(" waits for "), "."].concat())
        }
        Fault::Depends(place) => {
            plain(["It waits for “", named(*place), "”, which cannot be worked out."].concat())
        }
    }
}

fn number(n: usize) -> String {
    grouped(i64::try_from(n).unwrap_or(i64::MAX))
}

/// Which card of how many, and how far it is.
#[must_use]
pub fn card_of(place: usize, of: usize, (done, steps): (usize, usize)) -> String {
    [
        "Card ",
        &number(place),
        " of ",
        &number(of),
        ". ",
        &number(done),
        " of ",
        &number(steps),
        " steps done.",
    ]
    .concat()
}

/// A card in the list.
#[must_use]
pub fn in_list(entry: &Entry) -> String {
    let stands = store::fault(entry.fault).unwrap_or_else(|| {
        [&*number(entry.done), " of ", &number(entry.of), " steps done"].concat()
    });
    if entry.job.is_empty() { stands } else { [&*entry.job, ", ", &stands].concat() }
}

/// A card that was deleted.
#[must_use]
pub fn deleted(name: &str) -> String {
    ["Deleted: ", title(name), "."].concat()
}

/// The title of a copy.
#[must_use]
pub fn copy_of(name: &str) -> String {
    [title(name), " (copy)"].concat()
}

/// A card that came in a link.
#[must_use]
pub fn offered(name: &str) -> String {
    ["A card came in the link: ", title(name)].concat()
}

/// Parts to tick that cannot be.
#[must_use]
pub fn parts_wrong(typed: &str) -> Said {
    let wrong = "Parts to tick must be a whole number from 0 to 10,000.".to_owned();
    Said { wrong, typed: typed.to_owned(), instead: "" }
}

/// How many lines an open step shows besides.
#[must_use]
pub fn more_inside(more: usize) -> String {
    ["and ", &number(more), " more"].concat()
}

/// What the parts of a step are called.
fn unit(step: &Step) -> (&'static str, &'static str) {
    let answer = step.answer.as_ref();
    let kind = answer.and_then(|answer| answer.fields.iter().find(|(name, _)| name == "kind"));
    match kind.map(|(_, kind)| kind.as_str()) {
        Some("dial") => ("mark", "marks"),
        Some("angle" | "list") => ("position", "positions"),
        _ if answer.is_some() => ("gap", "gaps"),
        _ => ("part", "parts"),
    }
}

/// How many parts there are, and how many of them are cut.
#[must_use]
pub fn cut(step: &Step) -> String {
    let (one, many) = unit(step);
    let done = step.cut.count();
    let all = count(step.parts, one, many);
    let done = match done {
        0 => "none".to_owned(),
        _ if done == step.parts => "all".to_owned(),
        _ => grouped(i64::from(done)),
    };
    [&*all, ", ", &done, " cut"].concat()
}

/// The button for the next part.
#[must_use]
pub fn part_cut(step: &Step, part: u32) -> String {
    let mut one = unit(step).0.to_owned();
    one.get_mut(..1).map(str::make_ascii_uppercase);
    [&*one, " ", &grouped(i64::from(part)), " cut"].concat()
}

const MONTHS: [&str; 12] =
    ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];

/// When a step was ticked off, by a clock `zone` minutes before that of Greenwich.
#[must_use]
pub fn done_at(ms: u64, zone: i64) -> String {
    ["Done ", &time(ms, zone)].concat()
}

/// When the last part was ticked, after how many there are.
#[must_use]
pub fn last_at(ms: u64, zone: i64) -> String {
    [", last at ", &time(ms, zone)].concat()
}

/// Day and hour; the day by the count of days in the 400 years of the calendar.
fn time(ms: u64, zone: i64) -> String {
    let minutes = i64::try_from(ms / 60_000).unwrap_or(0).saturating_add(zone);
    let (days, minute) = (minutes.div_euclid(1_440), minutes.rem_euclid(1_440));
    // From 1 March of year 0, so that the day put in stands last.
    let days = days + 719_468;
    let (era, day) = (days.div_euclid(146_097), days.rem_euclid(146_097));
    let year = (day - day / 1_460 + day / 36_524 - day / 146_096) / 365;
    let day = day - (365 * year + year / 4 - year / 100);
    let month = (5 * day + 2) / 153;
    let day = day - (153 * month + 2) / 5 + 1;
    let year = year + 400 * era + i64::from(month > 9);
    let month = usize::try_from((month + 2) % 12).ok().and_then(|month| MONTHS.get(month));
    let two = |n: i64| [if n < 10 { "0" } else { "" }, &n.to_string()].concat();
    [
        &*day.to_string(),
        " ",
        month.copied().unwrap_or(""),
        " ",
        &year.to_string(),
        ", ",
        &two(minute / 60),
        ":",
        &two(minute % 60),
    ]
    .concat()
}

/// What the answers of a printed card were worked from.
#[must_use]
pub fn printed_from(head: &Head) -> String {
    ["Handturn job card. Head in Shop today: ", &ratio(head.ratio), "."].concat()
}

/// A Run as a step.
#[must_use]
pub fn run(title: &str) -> String {
    ["Run: ", title].concat()
}

/// Lines that did not fit.
#[must_use]
pub fn more_lines(more: usize) -> String {
    [
        "and ",
        &count(u32::try_from(more).unwrap_or(u32::MAX), "more line", "more lines"),
        " in its room",
    ]
    .concat()
}

/// A division as a step: `Divide 127: Differential`.
#[must_use]
pub fn division(what: &str, way: &str) -> String {
    ["Divide ", what, ": ", way].concat()
}

/// A step of a room: what it is about, and which of the room's steps.
#[must_use]
pub fn step(what: &str, step: &str) -> String {
    [what, ": ", step].concat()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn steps_in_a_row_are_told_by_their_ends() {
        assert_eq!(of_steps(&[3]), "Step 3: ");
        assert_eq!(of_steps(&[1, 3, 4, 5, 9]), "Steps 1, 3–5, 9: ");
    }

    #[test]
    fn days_and_hours() {
        let at = |ms: u64, zone| done_at(ms, zone);
        assert_eq!(at(0, 0), "Done 1 Jan 1970, 00:00");
        assert_eq!(at(0, -60), "Done 31 Dec 1969, 23:00");
        // 29 February 2000, and the second after the leap day's end a hundred years later.
        assert_eq!(at(951_825_599_000, 0), "Done 29 Feb 2000, 11:59");
        assert_eq!(at(1_790_000_000_000, 120), "Done 21 Sep 2026, 16:13");
    }
}
