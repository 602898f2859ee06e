//! Buttons, keys and fields of this room.
use super::desk::{Desk, Lock, Note, Open, Screen, Sheet};
use super::{begin, leave, resume, start, stored};
use crate::keep;
use crate::seam::{Effect, Event};
use crate::words::run as words;
use handturn::run::{Event as Done, Pressed, What};

/// What a button, a key or a field of this room means; none when it is not ours.
pub(super) fn happen(desk: &mut Desk, event: &Event) -> Option<Vec<Effect>> {
    match event.kind {
        "key" => key(desk, event),
        "type" if matches!(event.name, "run-jump" | "run-hole-typed") => {
            let open = desk.open.as_mut()?;
            open.sheet = match event.name {
                "run-jump" => Sheet::Jump(event.value.to_owned()),
                _ => Sheet::Lost(event.value.trim().parse().ok()),
            };
            Some(vec![])
        }
        "type" => start::typed(desk.draft.as_mut()?, event),
        _ => button(desk, event.name.strip_prefix("run-")?, event),
    }
}

fn button(desk: &mut Desk, name: &str, event: &Event) -> Option<Vec<Effect>> {
    let number = || event.value.parse::<u32>().ok();
    Some(match name {
        "start" => {
            let frozen = *desk.draft.take()?;
            begin(desk, keep::Run { frozen, events: Vec::new() }, event.at_ms)
        }
        "not-now" => {
            desk.draft = None;
            vec![Effect::Focus("run-it".to_owned())]
        }
        "rounds" => {
            start::rounds(desk.draft.as_mut()?, event.value);
            vec![]
        }
        "list" => {
            desk.listed = true;
            vec![Effect::Focus("runs".to_owned())]
        }
        "list-close" => {
            (desk.listed, desk.deleted) = (false, None);
            desk.refused.clear();
            vec![]
        }
        "resume" => resume(desk, event.value),
        "delete" => delete(desk, event.value),
        "undelete" => {
            let entry = desk.deleted.take()?;
            let effects = vec![Effect::Undrop(entry.id.clone())];
            desk.list(entry);
            effects
        }
        "leave" => leave(desk),
        "screen-on" | "screen-sleep" => {
            let on = name == "screen-on";
            desk.screen = if on { Screen::MaySleep } else { Screen::LetSleep };
            vec![Effect::Awake(on)]
        }
        _ => {
            let open = desk.open.as_mut()?;
            match name {
                "next" => return Some(next(desk, event.at_ms)),
                "back" => count(open, Want::Back, event.at_ms),
                "undo" => count(open, Want::Undo, event.at_ms),
                "past" => sheet(open, Sheet::Past),
                "lost" => {
                    let at = open.at();
                    sheet(open, Sheet::Lost(at))
                }
                "jump" => sheet(open, Sheet::Jump(String::new())),
                "saved" => sheet(open, Sheet::Saved),
                "screen" => sheet(open, Sheet::Screen),
                "close" => close(open),
                "hole" => {
                    open.sheet = Sheet::Lost(number());
                    vec![]
                }
                "found" => decided(open, What::Found, number()?, event.at_ms),
                "go" => decided(open, What::Jump, number()?, event.at_ms),
                "tick" => decided(open, What::Tick, number()?, event.at_ms),
                "export" => vec![Effect::File(words::FILE_NAME, keep::file(open.run()))],
                "take-over" => vec![Effect::Claim(open.id.clone(), true)],
                _ => return None,
            }
        }
    })
}

fn key(desk: &mut Desk, event: &Event) -> Option<Vec<Effect>> {
    let on_field = event.value.starts_with("field");
    let on_button = event.value.starts_with("button");
    if desk.open.is_none() {
        let escapes = event.name == "Escape"
            && (desk.draft.take().is_some() || std::mem::take(&mut desk.listed));
        return escapes.then(|| vec![Effect::Used]);
    }
    let open = desk.open.as_mut()?;
    if open.sheet != Sheet::None {
        if event.name == "Escape" {
            let mut effects = close(open);
            effects.push(Effect::Used);
            return Some(effects);
        }
        return Some(vec![]);
    }
    let mut effects = match event.name {
        _ if on_field => return Some(vec![]),
        "Enter" if on_button => return Some(vec![]),
        "PageDown" | "ArrowRight" | "Enter" => next(desk, event.at_ms),
        "PageUp" | "ArrowLeft" => count(open, Want::Back, event.at_ms),
        "Undo" => count(open, Want::Undo, event.at_ms),
        "Escape" => leave(desk),
        // A key held down does nothing, not even press the button it stands on.
        held if held.starts_with("held ") => vec![],
        _ => return Some(vec![]),
    };
    effects.push(Effect::Used);
    Some(effects)
}

fn next(desk: &mut Desk, at_ms: u64) -> Vec<Effect> {
    let Some(open) = desk.open.as_mut() else { return vec![] };
    let at_end = open.state().next(&open.frozen.plan(), at_ms) == Ok(None);
    if at_end && !open.pending() { leave(desk) } else { count(open, Want::Next, at_ms) }
}

/// What a press asks for.
enum Want {
    Next,
    Back,
    Undo,
    Other(What, u32),
}

/// Counts a press, if it may be counted now.
fn count(open: &mut Open, want: Want, at_ms: u64) -> Vec<Effect> {
    open.note = match open.lock {
        Lock::Elsewhere | Lock::Lost => return vec![],
        _ if open.pending() => Note::Saving,
        _ => Note::None,
    };
    if open.note != Note::None {
        return vec![];
    }
    let (state, plan) = (open.state(), open.frozen.plan());
    let event = match want {
        Want::Next => state.next(&plan, at_ms).ok().flatten(),
        Want::Back => state.back_event(at_ms),
        Want::Undo => state.undo_event(at_ms),
        Want::Other(what, index) => Some(Done { what, index, at_ms }),
    };
    match event.map(|event| (event, state.press(&plan, event))) {
        Some((event, Ok(Pressed::Counted(_)))) => {
            open.events.0.push(event);
            stored::save(open)
        }
        Some((_, Ok(Pressed::AskAgain))) => {
            open.note = Note::Once;
            vec![]
        }
        _ => {
            open.note = Note::NotNow;
            vec![]
        }
    }
}

/// A press in a sheet that says where the work stands.
fn decided(open: &mut Open, what: What, index: u32, at_ms: u64) -> Vec<Effect> {
    let mut effects = close(open);
    effects.extend(count(open, Want::Other(what, index), at_ms));
    effects
}

fn sheet(open: &mut Open, sheet: Sheet) -> Vec<Effect> {
    open.sheet = sheet;
    vec![Effect::Sheet("run-sheet")]
}

fn close(open: &mut Open) -> Vec<Effect> {
    open.sheet = Sheet::None;
    vec![Effect::Focus("run-next".to_owned())]
}

fn delete(desk: &mut Desk, id: &str) -> Vec<Effect> {
    let Some(place) = desk.runs.iter().position(|entry| entry.id == id) else { return vec![] };
    desk.deleted = Some(desk.runs.remove(place));
    desk.aside.retain(|open| open.id != id);
    vec![Effect::Drop(id.to_owned()), Effect::Focus("run-undelete".to_owned())]
}
