//! What the store says: about its Runs, about one event, about who counts.
use super::desk::{self, Desk, Lock, Note, Open, Store};
use crate::keep;
use crate::seam::{Effect, Event};
use crate::words::run as words;

/// The store answered, or fails. One that answers again is asked to take what it did not.
pub(super) fn storage(desk: &mut Desk, event: &Event) -> Vec<Effect> {
    if event.name == "ready" {
        desk.store = Store::Ready;
        let waits = desk.open.as_deref_mut().into_iter().chain(&mut desk.aside);
        let waits = waits.filter(|open| !open.unsaved.is_empty());
        return waits.flat_map(save).collect();
    }
    desk.store = Store::Refused(event.value.to_owned());
    if let Some(open) = &mut desk.open {
        refuse(open, event.value);
    }
    vec![]
}

/// A Run as the store has it: for the list, to come on screen, or for the Run on
/// screen while this tab is not the one that counts on it.
pub(super) fn stored(desk: &mut Desk, event: &Event) -> Vec<Effect> {
    desk.list(desk::entry_of(event.name, event.value));
    let wanted = desk.wanted == event.name;
    if wanted {
        desk.wanted.clear();
    }
    let known = desk.open.as_deref_mut().filter(|open| open.id == event.name);
    match (keep::from_lines(event.value), known) {
        (Ok(run), Some(open)) if open.lock != Lock::Held || outrun(open, &run) => {
            // More events than this tab has counted: another one counts.
            let held = open.lock == Lock::Held;
            let lock = if held { Lock::Lost } else { open.lock };
            let (note, saved_at) = (open.note, std::mem::take(&mut open.saved_at));
            let sheet = std::mem::take(&mut open.sheet);
            *open = Open { lock, note, saved_at, sheet, ..Open::of(event.name, run) };
            if held { vec![Effect::Release(event.name.to_owned())] } else { vec![] }
        }
        (Ok(run), None) if wanted => super::show(desk, Open::of(event.name, run)),
        _ => vec![],
    }
}

/// Whether the store has more of a Run than this tab, which believed that it counts alone.
fn outrun(open: &Open, run: &keep::Run) -> bool {
    open.unsaved.is_empty() && open.asked.is_none() && run.events.len() > open.events.0.len()
}

/// Another tab has deleted a Run.
pub(super) fn gone(desk: &mut Desk, id: &str) {
    desk.runs.retain(|entry| entry.id != id);
    desk.open.take_if(|open| open.id == id);
}

/// The store's answer about one event, a new Run, or one dropped.
pub(super) fn answered(desk: &mut Desk, event: &Event) -> Vec<Effect> {
    let (number, rest) = event.value.split_once(' ').unwrap_or((event.value, ""));
    let aside = desk.aside.iter_mut();
    let Some(open) =
        desk.open.as_deref_mut().into_iter().chain(aside).find(|open| open.id == event.name)
    else {
        if number == "dropped" && event.kind == "unkept" {
            desk.refused = words::not_deleted(rest);
            if let Some(entry) = desk.deleted.take() {
                desk.list(entry);
            }
        }
        return vec![];
    };
    let effects = match event.kind {
        "kept" => kept(open, number, rest),
        "slow" => {
            if open.pending() {
                open.note = Note::Slow;
            }
            vec![]
        }
        _ => unkept(open, number, rest),
    };
    let entry = open.entry();
    desk.list(entry);
    effects
}

fn kept(open: &mut Open, number: &str, time: &str) -> Vec<Effect> {
    let expected = if open.begun { open.saved.to_string() } else { "begun".to_owned() };
    if number != expected {
        return vec![];
    }
    open.begun = true;
    open.saved = open.asked.take().unwrap_or(open.saved).min(open.events.0.len());
    time.clone_into(&mut open.saved_at);
    if matches!(open.note, Note::Saving | Note::Slow) {
        open.note = Note::None;
    }
    if open.saved == open.events.0.len() {
        open.unsaved.clear();
        return vec![];
    }
    save(open)
}

fn unkept(open: &mut Open, number: &str, why: &str) -> Vec<Effect> {
    open.asked = None;
    match why {
        // Another tab counts: the press is not counted, and the truth is read anew.
        "taken" | "behind" | "gone" if number != "begun" => {
            open.events.0.truncate(open.saved);
            open.unsaved.clear();
            open.lock = Lock::Lost;
            open.note = Note::Taken;
            vec![Effect::Look(open.id.clone())]
        }
        _ => {
            refuse(open, why);
            vec![]
        }
    }
}

/// From now on the page counts by itself and says that nothing is saved.
pub(super) fn refuse(open: &mut Open, why: &str) {
    why.clone_into(&mut open.unsaved);
    if open.unsaved.is_empty() {
        open.unsaved.push('?');
    }
    open.asked = None;
    open.note = Note::None;
    if open.lock == Lock::Asked {
        open.lock = Lock::Held;
    }
}

/// Asks the store for what it does not have yet, one thing at a time.
pub(super) fn save(open: &mut Open) -> Vec<Effect> {
    if open.asked.is_some() {
        return vec![];
    }
    if !open.begun {
        open.asked = Some(open.events.0.len());
        let run = keep::Run { frozen: open.frozen.clone(), events: open.events.0.clone() };
        return vec![Effect::Begin(open.id.clone(), keep::lines(run))];
    }
    let Some(event) = open.events.0.get(open.saved) else { return vec![] };
    let effect = Effect::Append(open.id.clone(), open.saved, keep::event_text(*event));
    open.asked = Some(open.saved + 1);
    vec![effect]
}

/// Who counts on the Run on screen.
pub(super) fn locked(desk: &mut Desk, event: &Event) -> Vec<Effect> {
    let (what, why) = event.value.split_once(' ').unwrap_or((event.value, ""));
    let Some(open) = desk.open.as_deref_mut().filter(|open| open.id == event.name) else {
        return vec![];
    };
    match what {
        "held" => {
            open.lock = Lock::Held;
            open.note = Note::None;
        }
        "elsewhere" => open.lock = Lock::Elsewhere,
        "lost" if open.unsaved.is_empty() => {
            open.lock = Lock::Lost;
            return vec![Effect::Look(open.id.clone())];
        }
        "lost" => {}
        _ if open.unsaved.is_empty() => refuse(open, why),
        _ => {}
    }
    vec![]
}
