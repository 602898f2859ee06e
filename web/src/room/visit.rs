//! A visit to the page, for the tests of rooms: what a person does, and what they meet.
use crate::page;

/// The page with what was done in it, as people do it.
pub(super) struct Visit {
    pub(super) state: String,
    pub(super) page: String,
    pub(super) asked: Vec<String>,
    pub(super) at_ms: u64,
}

impl Visit {
    pub(super) fn to(room: &str) -> Self {
        let mut visit = Self {
            state: String::new(),
            page: String::new(),
            asked: Vec::new(),
            at_ms: 1_790_000_000_000,
        };
        visit.send("storage", "ready", "");
        visit.send("press", "room", room);
        visit
    }

    pub(super) fn send(&mut self, kind: &str, name: &str, value: &str) {
        self.at_ms += 1000;
        let event = [kind, name, value, &self.at_ms.to_string()].join("\u{1f}");
        let outcome = page::turn(&self.state, &event);
        self.asked.clear();
        for effect in outcome.split('\u{1c}') {
            let parts: Vec<&str> = effect.split('\u{1d}').collect();
            match parts[..] {
                ["state", state] => self.state = state.to_owned(),
                ["put", "page", page] => self.page = page.to_owned(),
                _ => self.asked.push(parts.join(" ")),
            }
        }
    }

    pub(super) fn press(&mut self, name: &str, value: &str) {
        self.send("press", name, value);
    }

    pub(super) fn typed(&mut self, name: &str, value: &str) {
        self.send("type", name, value);
    }

    /// What a reader meets: the text without its tags.
    pub(super) fn text(&self) -> String {
        let mut text = String::new();
        for piece in self.page.split('<').skip(1) {
            text += piece.split_once('>').map_or("", |(_, words)| words);
            text.push(' ');
        }
        text.split_whitespace().collect::<Vec<_>>().join(" ")
    }

    #[track_caller]
    pub(super) fn shows(&self, wanted: &[&str]) {
        let text = self.text();
        for words in wanted {
            assert!(text.contains(words), "“{words}” is not in: {text}");
        }
    }
}
