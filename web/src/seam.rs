//! What crosses between the browser and the page, as text.
//!
//! An event is one record of fields; a state is a list of records; an outcome is a
//! list of effects. Four control characters part them, and no field ever holds one:
//! [`clean`] sees to it where text comes in.

/// Between effects.
const EFFECT: char = '\u{1c}';
/// Between the fields of an effect.
const FIELD: char = '\u{1d}';
/// Between the records of a state.
const RECORD: char = '\u{1e}';
/// Between the fields of a record.
const PART: char = '\u{1f}';

/// Something that happened in the browser; the table is in the crate's documentation.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Event<'a> {
    /// What kind of thing happened.
    pub kind: &'a str,
    /// Which field, button or key.
    pub name: &'a str,
    /// What it holds.
    pub value: &'a str,
    /// The device's clock, in milliseconds since 1970.
    pub at_ms: u64,
}

impl<'a> Event<'a> {
    /// The event in a record; missing fields read as nothing.
    pub fn read(record: &'a str) -> Self {
        let mut parts = record.split(PART);
        let mut next = || parts.next().unwrap_or("");
        Event { kind: next(), name: next(), value: next(), at_ms: next().parse().unwrap_or(0) }
    }
}

/// Something the browser is asked to do.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Effect {
    /// Remember this text and hand it in with the next event.
    State(String),
    /// Let the element with this id hold this markup.
    Put(&'static str, String),
    /// Move the focus to the element with this id.
    Focus(String),
    /// The key was the page's own: the browser does nothing else with it.
    Used,
    /// Change over to the newer version that lies ready.
    TakeNewVersion,
    /// Keep the page's fields for the next time.
    KeepPage(String),
    /// Store a new Run: its name there and its lines.
    Begin(String, String),
    /// Store one event of a Run: name, number from 0, text.
    Append(String, usize, String),
    /// Put these lines in place of a Run that has so many events, all at once.
    Renew(String, usize, String),
    /// Take a Run out of the store.
    Drop(String),
    /// Put the Run dropped last back into the store.
    Undrop(String),
    /// Read a Run from the store again.
    Look(String),
    /// Become the one tab that counts on this Run, even if another is.
    Claim(String, bool),
    /// Let other tabs count on this Run.
    Release(String),
    /// Hand over a file: name and text.
    File(&'static str, String),
    /// Print the page, or the sheet at full size that stands in it.
    Print,
    /// Ask the browser never to clear what is stored by itself.
    Lasting,
    /// Keep the screen on, or let it sleep.
    Awake(bool),
    /// Try once more what the store refused.
    Again,
    /// Hand over, as a file of this name, what was stored and could not be read.
    Unread(&'static str),
    /// Show the dialog with this id above everything else.
    Sheet(&'static str),
}

/// An outcome as text.
pub fn write(effects: &[Effect]) -> String {
    let mut text = String::new();
    for effect in effects {
        if !text.is_empty() {
            text.push(EFFECT);
        }
        for (k, field) in effect.fields().into_iter().enumerate() {
            if k > 0 {
                text.push(FIELD);
            }
            if holds(&field, &[EFFECT, FIELD]) {
                text.extend(field.chars().filter(|c| !matches!(*c, EFFECT | FIELD)));
            } else {
                text.push_str(&field);
            }
        }
    }
    text
}

impl Effect {
    /// The verb that web/page/app.js knows, and its arguments.
    fn fields(&self) -> Vec<String> {
        let number;
        let fields: &[&str] = match self {
            Self::State(state) => &["state", state],
            Self::Put(id, html) => &["put", id, html],
            Self::Focus(id) => &["focus", id],
            Self::Used => &["used"],
            Self::TakeNewVersion => &["take"],
            Self::KeepPage(text) => &["keep-page", text],
            Self::Begin(run, lines) => &["begin", run, lines],
            Self::Append(run, at, event) => {
                number = at.to_string();
                &["append", run, &number, event]
            }
            Self::Renew(run, has, lines) => {
                number = has.to_string();
                &["renew", run, &number, lines]
            }
            Self::Drop(run) => &["drop", run],
            Self::Undrop(run) => &["undrop", run],
            Self::Look(run) => &["look", run],
            Self::Claim(run, steal) => &["claim", run, if *steal { "steal" } else { "" }],
            Self::Release(run) => &["release", run],
            Self::File(name, text) => &["file", name, text],
            Self::Print => &["print"],
            Self::Lasting => &["lasting"],
            Self::Awake(on) => &["awake", if *on { "on" } else { "" }],
            Self::Again => &["again"],
            Self::Unread(name) => &["unread", name],
            Self::Sheet(id) => &["sheet", id],
        };
        fields.iter().map(|field| (*field).to_owned()).collect()
    }
}

/// Whether one of the parting characters stands in `text`. They are of one byte, and
/// bytes are looked through many times faster than characters: most text holds none.
fn holds(text: &str, parting: &[char]) -> bool {
    text.bytes().any(|byte| byte < b' ' && parting.contains(&char::from(byte)))
}

/// `text` without the characters that part fields, each replaced by a space.
pub fn clean(text: &str) -> String {
    if !holds(text, &[EFFECT, FIELD, RECORD, PART]) {
        return text.to_owned();
    }
    text.chars()
        .map(|c| if matches!(c, EFFECT | FIELD | RECORD | PART) { ' ' } else { c })
        .collect()
}

/// Adds a record `name, fields..` to a state.
pub fn add_record(state: &mut String, fields: &[&str]) {
    if !state.is_empty() {
        state.push(RECORD);
    }
    for (k, field) in fields.iter().enumerate() {
        if k > 0 {
            state.push(PART);
        }
        state.push_str(&clean(field));
    }
}

/// The records of a state, each as its fields.
pub fn records(state: &str) -> impl Iterator<Item = impl Iterator<Item = &str>> {
    state.split(RECORD).filter(|record| !record.is_empty()).map(|record| record.split(PART))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_event_is_read_field_by_field() {
        let event = Event::read("type\u{1f}parts\u{1f}127\u{1f}1700000000000");
        assert_eq!(
            event,
            Event { kind: "type", name: "parts", value: "127", at_ms: 1_700_000_000_000 }
        );
        assert_eq!(Event::read(""), Event { kind: "", name: "", value: "", at_ms: 0 });
    }

    #[test]
    fn no_field_can_part_another() {
        let mut state = String::new();
        add_record(&mut state, &["parts", "1\u{1e}2\u{1f}3"]);
        add_record(&mut state, &["way", ""]);
        let read: Vec<Vec<&str>> = records(&state).map(Iterator::collect).collect();
        assert_eq!(read, [vec!["parts", "1 2 3"], vec!["way", ""]]);
    }

    #[test]
    fn effects_are_parted() {
        let text = write(&[
            Effect::State("a\u{1e}b".into()),
            Effect::Put("page", "<p>".into()),
            Effect::Used,
        ]);
        assert_eq!(text, "state\u{1d}a\u{1e}b\u{1c}put\u{1d}page\u{1d}<p>\u{1c}used");
    }
}
