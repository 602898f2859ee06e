//! An answer goes onto the card as it stands in its room, with the question it answers;
//! later it is worked anew from that question, and what differs is seen.
use crate::card::{Answer, Card, Cards, Change, Cut, Note, Step};
use crate::fields::Fields;
use crate::keep::kept::record;
use crate::room::run::Desk;
use crate::room::told::Entry;
use crate::room::{bench, divide, gear, run, thread};
use crate::seam::Effect;
use crate::words::card as words;

/// What the last press of "Put on card" came to.
pub const SAID: &str = "card-said";
/// In whose fields what is owned goes onto the card too: the demonstration's.
pub(super) const WITH_SHOP: &str = "card-with-shop";

/// Puts the answer in force in `room` onto the open card; where none is open a new one is
/// begun.
pub(super) fn put(
    fields: &mut Fields,
    cards: &mut Cards,
    desk: &Desk,
    room: &str,
    at_ms: u64,
) -> Vec<Effect> {
    let question = asked(room, fields, desk);
    let Some(entry) = entry(room, fields, desk, &question) else {
        fields.set(SAID, words::NOTHING_TO_PUT);
        return Vec::new();
    };
    let mut effects = Vec::new();
    if cards.open().is_none() {
        effects = cards.begin(fields, Card::new(words::NEW_TITLE), at_ms);
    }
    let Some(card) = cards.open().map(|open| open.card()) else { return effects };
    let step = Step {
        id: card.next_id(),
        text: entry.title.clone(),
        parts: entry.parts.unwrap_or(0),
        answer: Some(Answer {
            room: room.to_owned(),
            key: entry.title,
            fields: question,
            lines: entry.lines,
            cautions: entry.cautions,
        }),
        ..Step::default()
    };
    effects.extend(cards.change(fields, Change::Step(Box::new(step)), at_ms));
    let note = cards.open().map_or(Note::None, |open| open.note());
    let said = match words::store::note(note) {
        Some(why) => why,
        None => words::put_on(&card.title, card.steps.len() + 1),
    };
    fields.set(SAID, &said);
    effects
}

/// The question that stands in a room: its fields as typed, and where one does not read,
/// those beside it as they last read well.
fn asked(room: &str, fields: &Fields, desk: &Desk) -> Vec<(String, String)> {
    if room == "run" {
        let id = run::open_id(desk).unwrap_or_default();
        return vec![("run".to_owned(), id.to_owned())];
    }
    let shop = !fields.get(WITH_SHOP).is_empty();
    let ours = |name: &str| asks(room, fields, name) || shop && is_shop(name);
    let good = |name: &str| ["good-", name].concat();
    let stale =
        fields.iter().any(|(name, value)| ours(name) && fields.or(&good(name), value) != value);
    let wanted = |name: &str| {
        ours(name)
            || stale
                && name.strip_prefix("good-").is_some_and(|plain| ours(plain) && fields.has(plain))
    };
    let wanted = fields.iter().filter(|(name, _)| wanted(name));
    wanted.map(|(name, value)| (name.to_owned(), value.to_owned())).collect()
}

/// Whether `name` is part of the question that stands in `room` now.
fn asks(room: &str, fields: &Fields, name: &str) -> bool {
    owns(room, name)
        && match room {
            "divide" => divide::asks(fields, name),
            "gear" => gear::asks(fields, name),
            "bench" => bench::asks(fields, name),
            _ => !matches!(name, "th-said" | "th-so-far"),
        }
}

/// Whether a field is one of a room's own.
fn owns(room: &str, name: &str) -> bool {
    match room {
        "divide" => divide::owns(name),
        "thread" => name.starts_with("th-"),
        "gear" => name.starts_with("ge-"),
        "bench" => name.starts_with("be") && (name == "bench" || name.starts_with("be-")),
        _ => false,
    }
}

/// Whether a field says what is owned.
fn is_shop(name: &str) -> bool {
    let name = name.strip_prefix("last-").unwrap_or(name);
    name.starts_with("head-") || name.starts_with("own-")
}

/// The answer in force in a room.
fn entry(room: &str, fields: &Fields, desk: &Desk, question: &[(String, String)]) -> Option<Entry> {
    match room {
        "divide" => divide::entry(fields),
        "thread" => thread::entry(fields),
        "gear" => gear::entry(fields),
        "bench" => bench::entry(fields),
        "run" => run::entry(desk, &question.first()?.1),
        _ => None,
    }
}

/// What the question of an answer on the card comes to today.
pub(super) fn anew(answer: &Answer, fields: &Fields, desk: &Desk) -> Option<Entry> {
    let mut now = fields.clone();
    // A demonstration brings a Shop of its own.
    if answer.fields.iter().any(|(name, _)| is_shop(name)) {
        now.rename(|name| (!is_shop(name)).then(|| name.to_owned()));
    }
    take_in(&mut now, answer);
    for (name, value) in answer.fields.iter().filter(|(name, _)| is_shop(name)) {
        now.set(name, value);
    }
    entry(&answer.room, &now, desk, &answer.fields)
}

/// The question of an answer comes back into its room, which opens.
pub(super) fn ask_again(fields: &mut Fields, answer: &Answer) {
    take_in(fields, answer);
    fields.set("room", &answer.room);
}

/// What stands in the room of an answer gives way to its question.
fn take_in(fields: &mut Fields, answer: &Answer) {
    fields.rename(|name| {
        let plain = name.strip_prefix("good-").unwrap_or(name);
        (!owns(&answer.room, plain)).then(|| name.to_owned())
    });
    // What is owned here stays as it is.
    for (name, value) in answer.fields.iter().filter(|(name, _)| !is_shop(name)) {
        fields.set(name, value);
    }
}

/// What the answers of the open card come to today, where that was worked out already.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Today {
    seen: Vec<Seen>,
}

/// One answer as it was worked anew.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(super) struct Seen {
    step: u32,
    /// Of all that goes into it: it is worked out again when this changes.
    print: u32,
    /// Whether there is an answer today.
    pub(super) answers: bool,
    /// The answer, where it is another one.
    pub(super) new: Option<Answer>,
}

record! {
    Today { seen }
    Seen { step, print, answers, new }
}

impl Today {
    /// The answer of this step today.
    pub(super) fn of(&self, step: u32) -> Option<&Seen> {
        self.seen.iter().find(|seen| seen.step == step)
    }

    /// Works those answers out again of which something has changed.
    pub fn refresh(&mut self, cards: &Cards, fields: &Fields, desk: &Desk) {
        let card = cards.open().map(|open| open.card()).unwrap_or_default();
        let shop = shop_print(fields);
        let before = std::mem::take(&mut self.seen);
        for step in &card.steps {
            let Some(answer) = &step.answer else { continue };
            let print = print(answer, fields, desk, shop);
            let known = before.iter().find(|seen| seen.step == step.id && seen.print == print);
            self.seen.push(known.cloned().unwrap_or_else(|| {
                let now = anew(answer, fields, desk);
                let new = now.as_ref().and_then(|now| changed(answer, now));
                Seen { step: step.id, print, answers: now.is_some(), new }
            }));
        }
    }
}

/// The answer as it is now, where it says something else.
fn changed(answer: &Answer, now: &Entry) -> Option<Answer> {
    let same =
        answer.key == now.title && answer.lines == now.lines && answer.cautions == now.cautions;
    (!same).then(|| Answer {
        key: now.title.clone(),
        lines: now.lines.clone(),
        cautions: now.cautions.clone(),
        ..answer.clone()
    })
}

/// The step with today's answer in place of the one on the card.
pub(super) fn taken(step: &Step, new: &Answer, parts: u32) -> Step {
    let old = step.answer.as_ref().map(|answer| answer.key.as_str());
    // Words that a person changed stay.
    let text = if old == Some(step.text.as_str()) { new.key.clone() } else { step.text.clone() };
    let step = Step { text, answer: Some(new.clone()), ..step.clone() };
    with_parts(step, parts)
}

/// The step with so many parts to tick.
pub(super) fn with_parts(step: Step, parts: u32) -> Step {
    let kept = step.cut.0.iter().filter(|(from, _)| *from <= parts);
    let cut = Cut(kept.map(|(from, to)| (*from, parts.min(*to))).collect());
    Step { parts, cut, ..step }
}

/// A short number for a text: another text has almost surely another.
fn mix(print: u32, text: &str) -> u32 {
    let text = text.bytes().chain([0]);
    text.fold(print, |print, byte| (print ^ u32::from(byte)).wrapping_mul(16_777_619))
}

const START: u32 = 2_166_136_261;

/// Of all fields that belong to no question: what is owned.
fn shop_print(fields: &Fields) -> u32 {
    let rooms = ["divide", "thread", "gear", "bench"];
    let passed_over = |name: &str| {
        let plain = name.strip_prefix("good-").unwrap_or(name);
        rooms.iter().any(|room| owns(room, plain))
            || ["card-", "cd-", "value-", "di-", "shop-undo"]
                .iter()
                .any(|begin| plain.starts_with(begin))
            || matches!(plain, "room" | "said" | "rows" | "at" | "try-plates")
    };
    let fields = fields.iter().filter(|(name, _)| !passed_over(name));
    fields.fold(START, |print, (name, value)| mix(mix(print, name), value))
}

/// Of all that goes into an answer, and of the answer on the card.
fn print(answer: &Answer, fields: &Fields, desk: &Desk, shop: u32) -> u32 {
    let mut print = mix(shop, &answer.key);
    for (name, typed) in &answer.fields {
        print = mix(mix(print, name), fields.follow(typed));
    }
    if answer.room == "run" {
        let lines = anew(answer, fields, desk).map(|entry| entry.lines).unwrap_or_default();
        print = lines.iter().fold(print, |print, line| mix(print, line));
    }
    let lines = answer.lines.iter().chain(&answer.cautions);
    lines.fold(print, |print, line| mix(print, line))
}
