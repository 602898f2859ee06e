//! What is typed and pressed on the card.
use super::step::{self, OPEN, parts_typed};
use super::values::kind_value;
use super::{Today, demo, opened, put};
use crate::card::{Card, Cards, Change, Item, Step};
use crate::fields::Fields;
use crate::room::run::Desk;
use crate::seam::{Effect, Event};
use crate::words::card as words;
use handturn::card::Kind;

/// What `event` means to the card; none when it is not its own.
pub fn event(
    fields: &mut Fields,
    cards: &mut Cards,
    today: &Today,
    desk: &Desk,
    wide: bool,
    event: &Event,
) -> Option<Vec<Effect>> {
    match (event.kind, event.name) {
        ("press", "card-put") => Some(put::put(fields, cards, desk, event.value, event.at_ms)),
        ("type" | "press", name) if name.starts_with("cd-") => {
            fields.forget(put::SAID);
            Some(ours(fields, cards, today, event))
        }
        ("key", _) if fields.get("room") == "card" => Some(key(fields, cards, wide, event)),
        ("type" | "press", _) => {
            // Another answer stands there now.
            fields.forget(put::SAID);
            None
        }
        _ => None,
    }
}

fn key(fields: &mut Fields, cards: &mut Cards, wide: bool, event: &Event) -> Vec<Effect> {
    let name = event.name;
    let row = if wide { step::ROW.0 } else { step::ROW.1 };
    if name == "Undo" && !event.value.starts_with("field ") {
        let mut effects = cards.change(fields, Change::Undo, event.at_ms);
        effects.push(Effect::Used);
        return effects;
    }
    if name == "Enter" && event.value == "field cd-new" {
        return add(fields, cards, event.at_ms);
    }
    let cell = event.value.strip_prefix("button cd-cell-").and_then(|cell| cell.split_once('-'));
    let Some((id, part)) = cell.and_then(|(id, part)| Some((id.parse().ok()?, part.parse().ok()?)))
    else {
        return Vec::new();
    };
    let parts = card(cards).steps.iter().find(|step| step.id == id).map_or(0, |step| step.parts);
    let part: u32 = part;
    let to = match name.strip_prefix("held ").unwrap_or(name) {
        "ArrowRight" => part + 1,
        "ArrowLeft" => part.saturating_sub(1),
        "ArrowDown" => part + row,
        "ArrowUp" => part.saturating_sub(row),
        "Home" => 1,
        "End" => parts,
        _ => return Vec::new(),
    };
    if to < 1 || to > parts {
        return vec![Effect::Used];
    }
    fields.set("cd-at", &at(id, to));
    vec![Effect::Focus(step::cell(id, to)), Effect::Used]
}

fn at(id: u32, part: u32) -> String {
    [id.to_string(), part.to_string()].join(" ")
}

fn card(cards: &Cards) -> Card {
    cards.open().map(|open| open.card()).unwrap_or_default()
}

/// Typing and presses whose names begin with `cd-`.
fn ours(fields: &mut Fields, cards: &mut Cards, today: &Today, event: &Event) -> Vec<Effect> {
    let Event { name, value, at_ms, .. } = *event;
    let id = || value.parse::<u32>().ok();
    match name {
        "cd-begin" => return opened(cards.begin(fields, Card::new(words::NEW_TITLE), at_ms)),
        "cd-demo" => return opened(cards.begin(fields, demo::card(), at_ms)),
        "cd-resume" => return opened(cards.resume(fields, value)),
        "cd-rescue" => return opened(cards.rescue(value)),
        "cd-keep" => return opened(cards.keep_offered(fields, at_ms)),
        "cd-let-go" => cards.let_offered_go(),
        "cd-leave" => return opened(cards.leave(fields)),
        "cd-delete" => {
            let mut effects = cards.drop(fields, value);
            effects.push(Effect::Focus("cd-undelete".to_owned()));
            return effects;
        }
        "cd-undelete" => return opened(cards.undrop()),
        "cd-retry" => return cards.retry(),
        "cd-take-over" => return cards.take_over(),
        "cd-copy" => return opened(cards.keep_uncounted(fields, true, at_ms)),
        "cd-uncopy" => return cards.keep_uncounted(fields, false, at_ms),
        "cd-save" => return cards.file(),
        "cd-link" => {
            let shown = if fields.get("cd-link").is_empty() { "on" } else { "" };
            fields.set("cd-link", shown);
        }
        "cd-print" => return vec![Effect::Print],
        "cd-new" => fields.set("cd-new", value),
        "cd-add" => return add(fields, cards, at_ms),
        "cd-more" => {
            let open = if fields.get(OPEN) == value { "" } else { value };
            fields.set(OPEN, open);
            fields.forget("cd-at");
        }
        "cd-ask" => return ask(fields, cards, id()),
        _ => {
            let focus = focus(cards, name, id());
            let Some(change) = change(fields, cards, today, name, value) else { return Vec::new() };
            let mut effects = cards.change(fields, change, at_ms);
            effects.extend(focus.map(Effect::Focus));
            return effects;
        }
    }
    Vec::new()
}

/// Where the focus goes when what was pressed goes or moves.
fn focus(cards: &Cards, name: &str, id: Option<u32>) -> Option<String> {
    match name {
        "cd-drop" => Some("card-steps".to_owned()),
        "cd-value-drop" => Some("cd-value-add".to_owned()),
        "cd-value-add" => Some(super::values::name("name", card(cards).next_id())),
        "cd-up" | "cd-down" => {
            let steps = card(cards).steps;
            let place = steps.iter().position(|step| Some(step.id) == id)?;
            // At an end the button that was pressed can be pressed no more.
            let other = match name {
                "cd-up" if place == 1 => "down",
                "cd-down" if place + 2 == steps.len() => "up",
                "cd-up" => "up",
                _ => "down",
            };
            Some(super::values::name(other, id?))
        }
        _ => None,
    }
}

/// The change that a field or a button makes.
fn change(
    fields: &mut Fields,
    cards: &Cards,
    today: &Today,
    name: &str,
    value: &str,
) -> Option<Change> {
    let card = card(cards);
    let text = value.to_owned();
    let id = value.parse::<u32>().ok();
    let step = |id: u32| card.steps.iter().find(|step| step.id == id).cloned();
    let place = |id: u32| card.steps.iter().position(|step| step.id == id);
    let moved = |id: u32, to: Option<usize>| Some(Change::MoveStep((id, u32::try_from(to?).ok()?)));
    Some(match name {
        "cd-title" => Change::Title(text),
        "cd-job" => Change::Job(text),
        "cd-metal" => Change::Metal(text),
        "cd-notes" => Change::Notes(text),
        "cd-undo" => Change::Undo,
        "cd-redo" => Change::Redo,
        "cd-up" => return moved(id?, place(id?)?.checked_sub(1)),
        "cd-down" => return moved(id?, place(id?)?.checked_add(1)),
        "cd-drop" => Change::DropStep(id?),
        "cd-take" => {
            let step = step(id?)?;
            let new = today.of(step.id)?.new.clone()?;
            let parts = step.parts;
            Change::Step(Box::new(put::taken(&step, &new, parts)))
        }
        "cd-value-add" => Change::Value(Item {
            id: card.next_id(),
            name: free_name(&card),
            kind: Kind::Length,
            drawing: String::new(),
            measured: String::new(),
        }),
        "cd-value-drop" => Change::DropValue(id?),
        "cd-cut" | "cd-cell" => {
            let (id, part) = value.split_once(' ')?;
            let (id, part) = (id.parse().ok()?, part.parse().ok()?);
            fields.set("cd-at", value);
            let cut = !step(id)?.cut.has(part);
            Change::Cut((id, (part, (part, cut))))
        }
        _ => {
            let (what, id) = name.strip_prefix("cd-")?.rsplit_once('-')?;
            let id: u32 = id.parse().ok()?;
            match what {
                "tick" => Change::Tick((id, value == "on")),
                "words" => Change::Words((id, text)),
                "parts" => {
                    fields.set(name, value);
                    let parts = parts_typed(value).ok()?;
                    fields.forget(name);
                    let step = step(id).filter(|step| step.parts != parts)?;
                    Change::Step(Box::new(put::with_parts(step, parts)))
                }
                _ => {
                    let item = card.values.iter().find(|item| item.id == id)?.clone();
                    Change::Value(match what {
                        "name" => Item { name: text, ..item },
                        "drawing" => Item { drawing: text, ..item },
                        "measured" => Item { measured: text, ..item },
                        "kind" => Item { kind: kind(value)?, ..item },
                        _ => return None,
                    })
                }
            }
        }
    })
}

fn kind(value: &str) -> Option<Kind> {
    [Kind::Length, Kind::Angle, Kind::Number].into_iter().find(|kind| kind_value(*kind) == value)
}

/// A name that no value of the card has yet.
fn free_name(card: &Card) -> String {
    let names = ('a'..='z').map(String::from);
    let mut free =
        names.filter(|name| card.values.iter().all(|item| !item.name.eq_ignore_ascii_case(name)));
    free.next().unwrap_or_default()
}

/// A step in a person's own words.
fn add(fields: &mut Fields, cards: &mut Cards, at_ms: u64) -> Vec<Effect> {
    let text = fields.get("cd-new").trim().to_owned();
    if text.is_empty() {
        return vec![Effect::Focus("cd-new".to_owned())];
    }
    let step = Step { id: card(cards).next_id(), text, ..Step::default() };
    let effects = cards.change(fields, Change::Step(Box::new(step)), at_ms);
    fields.forget("cd-new");
    effects
}

/// The question of a step comes back into its room.
fn ask(fields: &mut Fields, cards: &Cards, id: Option<u32>) -> Vec<Effect> {
    let card = card(cards);
    let step = card.steps.iter().find(|step| Some(step.id) == id);
    let Some(answer) = step.and_then(|step| step.answer.as_ref()) else { return Vec::new() };
    put::ask_again(fields, answer);
    let title = [answer.room.as_str(), "-title"].concat();
    vec![Effect::Focus(title)]
}

/// The wheels of a card: each count of parts that it divides or cuts, once.
pub(super) fn wheels(card: &Card) -> Vec<u32> {
    let mut wheels = Vec::new();
    for step in &card.steps {
        let answer =
            step.answer.as_ref().filter(|answer| matches!(answer.room.as_str(), "divide" | "gear"));
        if answer.is_some() && step.parts > 1 && !wheels.contains(&step.parts) {
            wheels.push(step.parts);
        }
    }
    wheels
}
