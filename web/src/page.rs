//! The page as a whole: what it remembers, and one event's way through it.
use crate::fields::Fields;
use crate::room::{divide, frame, shop};
use crate::seam::{self, Effect, Event};

/// All that the page remembers between two events.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct State {
    /// All that was typed and chosen.
    pub fields: Fields,
    /// A newer version of the site lies ready.
    pub newer: bool,
}

/// One event: the state's text and the event's text in, the outcome's text out.
pub fn turn(state: &str, event: &str) -> String {
    let mut state = State::read(state);
    let mut effects = happen(&mut state, Event::read(event));
    effects.push(Effect::State(state.write()));
    effects.push(Effect::Put("page", screen(&state)));
    seam::write(&effects)
}

/// What an event does to the state, and what else the browser must do.
fn happen(state: &mut State, event: Event) -> Vec<Effect> {
    match (event.kind, event.name) {
        ("version", _) => state.newer = true,
        ("press", "take-newer") => return vec![Effect::TakeNewVersion],
        ("press", "room") => state.fields.set("room", event.value),
        _ if shop::event(&mut state.fields, event) => {}
        _ => return divide::event(&mut state.fields, event),
    }
    Vec::new()
}

/// The whole page as markup.
fn screen(state: &State) -> String {
    let room = match frame::room(&state.fields) {
        "shop" => shop::screen(&state.fields),
        _ => divide::screen(&state.fields),
    };
    frame::frame(&state.fields, state.newer, &room).into_string()
}

impl State {
    fn read(text: &str) -> Self {
        let mut state = State::default();
        for mut record in seam::records(text) {
            match (record.next(), record.next(), record.next()) {
                (Some("field"), Some(name), Some(value)) => state.fields.set(name, value),
                (Some("newer"), ..) => state.newer = true,
                _ => {}
            }
        }
        state
    }

    fn write(&self) -> String {
        let mut text = String::new();
        for (name, value) in self.fields.iter() {
            seam::add_record(&mut text, &["field", name, value]);
        }
        if self.newer {
            seam::add_record(&mut text, &["newer"]);
        }
        text
    }
}
