//! The page as a whole: what it remembers, and one event's way through it.
use crate::room::divide;
use crate::seam::{self, Effect, Event};

/// All that the page remembers between two events.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct State {
    /// The fields of Divide.
    pub divide: divide::Form,
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
        ("type", "parts") => state.divide.parts = event.value.to_owned(),
        ("version", _) => state.newer = true,
        ("press", "take-newer") => return vec![Effect::TakeNewVersion],
        _ => {}
    }
    Vec::new()
}

/// The whole page as markup.
fn screen(state: &State) -> String {
    maud::html! {
        @if state.newer {
            p id="newer" { button type="button" data-do="take-newer" { "New version ready. Use it" } }
        }
        (divide::screen(&state.divide))
    }
    .into_string()
}

impl State {
    fn read(text: &str) -> Self {
        let mut state = State::default();
        for mut fields in seam::records(text) {
            match (fields.next(), fields.next()) {
                (Some("parts"), Some(parts)) => state.divide.parts = parts.to_owned(),
                (Some("newer"), Some(_)) => state.newer = true,
                _ => {}
            }
        }
        state
    }

    fn write(&self) -> String {
        let mut text = String::new();
        seam::add_record(&mut text, &["parts", &self.divide.parts]);
        if self.newer {
            seam::add_record(&mut text, &["newer", "yes"]);
        }
        text
    }
}
