//! Run: at the machine, counting. A press becomes a stored event first and counts
//! when the store has confirmed it; only a store that refuses is not waited for,
//! and then the screen says that nothing is saved.
mod desk;
mod entry;
mod list;
mod press;
mod screen;
mod sheet;
mod show;
mod start;
mod stored;
#[cfg(test)]
mod tests;

pub use desk::{Desk, Entry};
pub use entry::{entry, open_id, said};
pub use list::{corner, strip};

use crate::keep::{self, Run};
use crate::owned;
use crate::seam::{Effect, Event};
use crate::words::run as words;
use desk::{Open, Screen, Store};
use handturn::run::Frozen;
use maud::Markup;

/// What fills the page when Run has it: a Run, its start, or the list of Runs.
#[must_use]
pub fn screen(desk: &Desk) -> Option<Markup> {
    match desk {
        Desk { draft: Some(draft), .. } => Some(start::screen(draft)),
        Desk { open: Some(open), .. } => Some(screen::screen(open, desk)),
        Desk { listed: true, .. } => Some(list::screen(desk)),
        _ => None,
    }
}

/// Offers to start a Run of `frozen`.
pub fn offer(desk: &mut Desk, frozen: Frozen) -> Vec<Effect> {
    desk.draft = Some(Box::new(frozen));
    vec![Effect::Focus("run-before".to_owned())]
}

/// What `event` means to Runs; none when it is not theirs.
pub fn happen(desk: &mut Desk, event: &Event) -> Option<Vec<Effect>> {
    Some(match event.kind {
        "storage" => stored::storage(desk, event),
        "stored" => stored::stored(desk, event),
        "gone" => {
            stored::gone(desk, event.name);
            vec![]
        }
        "kept" | "unkept" | "slow" => stored::answered(desk, event),
        "lock" => stored::locked(desk, event),
        "lasting" => {
            desk.lasting = Some(event.name == "yes");
            vec![]
        }
        "screen" => {
            desk.screen = match (event.name, desk.screen) {
                ("on", _) => Screen::On,
                (_, Screen::LetSleep) => Screen::LetSleep,
                _ => Screen::MaySleep,
            };
            vec![]
        }
        // The browser lets the screen sleep when a page is hidden: ask again.
        "seen" => {
            let asks =
                event.name == "visible" && desk.open.is_some() && desk.screen != Screen::LetSleep;
            if asks { vec![Effect::Awake(true)] } else { vec![] }
        }
        "file" => file(desk, event),
        "type" | "press" | "key" => return press::happen(desk, event),
        _ => return None,
    })
}

fn file(desk: &mut Desk, event: &Event) -> Vec<Effect> {
    match keep::from_file(event.value) {
        Ok(run) => begin(desk, run, event.at_ms),
        Err(trouble) => {
            let why = match owned::holds_heads(event.value) {
                true => words::HOLDS_HEADS.to_owned(),
                false => words::trouble(trouble),
            };
            desk.refused = words::file_refused(event.name, &why);
            vec![]
        }
    }
}

/// Puts a Run that is new here on screen and into the store.
fn begin(desk: &mut Desk, run: Run, at_ms: u64) -> Vec<Effect> {
    let id = "run-".to_owned() + &at_ms.to_string();
    let mut open = Open::of(&id, run);
    (open.begun, open.saved) = (false, 0);
    let mut effects = match &desk.store {
        Store::Refused(why) => {
            stored::refuse(&mut open, why);
            vec![]
        }
        _ => stored::save(&mut open),
    };
    effects.extend(show(desk, open));
    effects.push(Effect::Lasting);
    effects
}

/// Brings a Run on screen and asks for the right to count on it.
fn show(desk: &mut Desk, open: Open) -> Vec<Effect> {
    let mut effects = leave(desk);
    desk.listed = false;
    desk.draft = None;
    desk.refused.clear();
    desk.screen = Screen::MaySleep;
    if open.unsaved.is_empty() {
        effects.push(Effect::Claim(open.id.clone(), false));
    }
    effects.extend([Effect::Awake(true), Effect::Focus("run-next".to_owned())]);
    desk.list(open.entry());
    desk.open = Some(Box::new(open));
    effects
}

/// Brings a Run on screen once the store has given it again.
fn resume(desk: &mut Desk, id: &str) -> Vec<Effect> {
    if let Some(place) = desk.aside.iter().position(|open| open.id == id) {
        let open = desk.aside.remove(place);
        return show(desk, open);
    }
    id.clone_into(&mut desk.wanted);
    vec![Effect::Look(id.to_owned())]
}

/// Back to the room before; the place is kept.
fn leave(desk: &mut Desk) -> Vec<Effect> {
    let Some(open) = desk.open.take() else { return vec![] };
    desk.list(open.entry());
    let effects = vec![Effect::Release(open.id.clone()), Effect::Awake(false)];
    if !open.unsaved.is_empty() {
        desk.aside.push(*open);
    }
    effects
}
