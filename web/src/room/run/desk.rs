//! All that the page remembers of Runs between two events.
use crate::keep::kept::{Io, Kept, choice, record};
use crate::keep::{self, Run, Trouble};
use crate::words::run as words;
use handturn::run::{Event, Frozen, Phase, State, What};

/// Runs stored here, the one on screen, and what the device can do.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Desk {
    pub(super) store: Store,
    /// Whether the browser promised not to clear the store by itself.
    pub(super) lasting: Option<bool>,
    pub(super) screen: Screen,
    pub(super) runs: Vec<Entry>,
    /// A Run about to be started.
    pub(super) draft: Option<Box<Frozen>>,
    pub(super) open: Option<Box<Open>>,
    /// The list of Runs is on screen.
    pub(super) listed: bool,
    pub(super) deleted: Option<Entry>,
    /// What could not be done, to be said in the list.
    pub(super) refused: String,
    /// The Run that is to come on screen when the store has given it.
    pub(super) wanted: String,
    /// Where the Run on screen went when it was put on the card.
    pub(super) put: String,
    /// Runs that were left while the store kept nothing.
    pub(super) aside: Vec<Open>,
}

/// The device's store.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) enum Store {
    /// Not asked yet.
    #[default]
    Unknown,
    /// It stores.
    Ready,
    /// It refuses, and why.
    Refused(String),
}

/// Whether the screen stays on.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(super) enum Screen {
    /// The browser lets it sleep.
    #[default]
    MaySleep,
    /// It stays on.
    On,
    /// The person lets it sleep.
    LetSleep,
}

/// A stored Run in a list.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Entry {
    /// Its name in the store.
    pub id: String,
    /// What it divides.
    pub title: String,
    /// Position at the cutter, from 1.
    pub at: u32,
    /// How many positions.
    pub of: u32,
    /// Whether it is at its end.
    pub closed: bool,
    /// Why it cannot be used; empty when it can.
    pub fault: String,
}

/// The Run on screen.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Open {
    pub(super) id: String,
    pub(super) frozen: Frozen,
    pub(super) events: Past,
    /// How many events the store has confirmed.
    pub(super) saved: usize,
    /// How many it will have confirmed when it answers; none when it is not asked.
    pub(super) asked: Option<usize>,
    /// The store has confirmed the frozen record itself.
    pub(super) begun: bool,
    /// Why the store does not keep them any more; empty while it does.
    pub(super) unsaved: String,
    pub(super) lock: Lock,
    /// The device's own time of the last confirmed save.
    pub(super) saved_at: String,
    pub(super) note: Note,
    pub(super) sheet: Sheet,
}

/// Who counts on the Run on screen.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(super) enum Lock {
    /// Not known yet.
    #[default]
    Asked,
    /// This tab.
    Held,
    /// Another tab; this one only shows.
    Elsewhere,
    /// Another tab, which took it from this one.
    Lost,
}

/// A sentence about the last press.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(super) enum Note {
    /// Nothing to say.
    #[default]
    None,
    /// A second press so soon is not counted.
    Once,
    /// A press while another is being saved is not counted.
    Saving,
    /// Saving takes long.
    Slow,
    /// The press was not counted because another tab counts.
    Taken,
    /// That can't be done from here.
    NotNow,
}

/// What lies over the Run.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(super) enum Sheet {
    /// Nothing.
    #[default]
    None,
    /// Went past.
    Past,
    /// Lost my place: the hole (or notch, or mark) chosen.
    Lost(Option<u32>),
    /// Going to another position: what is typed.
    Jump(String),
    /// How and where it is saved.
    Saved,
    /// About the screen.
    Screen,
}

/// The events of a Run, oldest first. They cross between browser and page with every
/// turn, so they are written as short as they go: `a37,2000;` is what was done, the
/// position, and the time since the one before.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct Past(pub(super) Vec<Event>);

impl Past {
    fn text(&self) -> String {
        let (mut text, mut before) = (String::new(), 0);
        let mut digits = itoa::Buffer::new();
        for event in &self.0 {
            text.push(char::from(b'a' + event.what as u8));
            text.push_str(digits.format(event.index));
            text.push(',');
            text.push_str(digits.format(event.at_ms.wrapping_sub(before)));
            text.push(';');
            before = event.at_ms;
        }
        text
    }

    fn of(text: &str) -> Option<Self> {
        let (mut events, mut before) = (Vec::new(), 0_u64);
        for one in text.split_terminator(';') {
            let (what, rest) = one.split_at_checked(1)?;
            let (index, since) = rest.split_once(',')?;
            let what = what.bytes().next()?.checked_sub(b'a')?;
            before = before.wrapping_add(since.parse().ok()?);
            let what = *What::ALL.get(usize::from(what))?;
            events.push(Event { what, index: index.parse().ok()?, at_ms: before });
        }
        Some(Self(events))
    }
}

impl Kept for Past {
    fn blank() -> Self {
        Self::default()
    }
    fn each(&mut self, io: &mut Io<'_>) {
        if let Some(text) = io.text(&self.text()) {
            io.set(self, Self::of(text).ok_or(()));
        }
    }
}

impl Open {
    /// The hole (or notch, or mark) under the pin now.
    pub(super) fn at(&self) -> Option<u32> {
        let (plan, state) = (self.frozen.plan(), self.state());
        let place = plan.place(state.index().min(plan.question.last())).ok()?;
        place.pin.or(place.notch).or(place.dial).map(|at| at.number)
    }

    /// A Run that the store holds, or is asked to hold.
    pub(super) fn of(id: &str, run: Run) -> Self {
        Self {
            id: id.to_owned(),
            frozen: run.frozen,
            saved: run.events.len(),
            asked: None,
            events: Past(run.events),
            begun: true,
            unsaved: String::new(),
            lock: Lock::Asked,
            saved_at: String::new(),
            note: Note::None,
            sheet: Sheet::None,
        }
    }

    /// The events that count as confirmed: those the store has; all, once it
    /// keeps them no more and the page says so.
    pub(super) fn shown(&self) -> &[Event] {
        if self.unsaved.is_empty() {
            self.events.0.get(..self.saved).unwrap_or(&[])
        } else {
            &self.events.0
        }
    }

    /// Where the Run stands by the confirmed events, which were checked when they came in.
    pub(super) fn state(&self) -> State {
        State::replay(&self.frozen.plan(), self.shown().iter().copied()).unwrap_or_default()
    }

    /// Whether an event waits for the store, or this tab for the right to count.
    pub(super) fn pending(&self) -> bool {
        self.unsaved.is_empty() && (self.asked.is_some() || self.lock == Lock::Asked)
    }

    pub(super) fn entry(&self) -> Entry {
        entry(&self.id, &self.frozen, &self.state())
    }

    /// The Run as a file holds it.
    pub(super) fn run(&self) -> Run {
        Run { frozen: self.frozen.clone(), events: self.shown().to_vec() }
    }
}

/// A stored Run as a list shows it; `lines` as the store gave them.
pub(super) fn entry_of(id: &str, lines: &str) -> Entry {
    let read = keep::from_lines(lines);
    read.map_or_else(
        |trouble| faulty(id, trouble),
        |run| {
            let state = State::replay(&run.frozen.plan(), run.events).unwrap_or_default();
            entry(id, &run.frozen, &state)
        },
    )
}

fn entry(id: &str, frozen: &Frozen, state: &State) -> Entry {
    let of = frozen.question.question().positions();
    Entry {
        id: id.to_owned(),
        title: words::title(frozen),
        at: state.index().saturating_add(1).min(of),
        of,
        closed: state.phase(&frozen.plan()) == Phase::Closed
            && usize::from(state.round()) + 1 >= frozen.rounds.len(),
        fault: String::new(),
    }
}

fn faulty(id: &str, trouble: Trouble) -> Entry {
    Entry {
        id: id.to_owned(),
        title: String::new(),
        at: 0,
        of: 0,
        closed: false,
        fault: words::trouble(trouble),
    }
}

impl Desk {
    /// The Run that "Resume" means: the newest that is not at its end.
    pub(crate) fn resumable(&self) -> Option<&Entry> {
        self.runs.iter().rev().find(|entry| !entry.closed && entry.fault.is_empty())
    }

    /// Puts `entry` into the list, in place of the one with its name.
    pub(super) fn list(&mut self, entry: Entry) {
        match self.runs.iter_mut().find(|known| known.id == entry.id) {
            Some(known) => *known = entry,
            None => self.runs.push(entry),
        }
    }
}

record! {
    Desk { store, lasting, screen, runs, draft, open, listed, deleted, refused, wanted, put, aside }
    Entry { id, title, at, of, closed, fault }
    Open { id, frozen, events, saved, asked, begun, unsaved, lock, saved_at, note, sheet }
}

choice! {
    Screen { MaySleep = "MaySleep", On = "On", LetSleep = "LetSleep" }
    Lock { Asked = "Asked", Held = "Held", Elsewhere = "Elsewhere", Lost = "Lost" }
    Note {
        None = "None", Once = "Once", Saving = "Saving", Slow = "Slow", Taken = "Taken", NotNow = "NotNow"
    }
    Store { Unknown = "Unknown", Ready = "Ready", Refused(why) = "Refused" }
    Sheet {
        None = "None", Past = "Past", Lost(seen) = "Lost", Jump(typed) = "Jump", Saved = "Saved", Screen = "Screen"
    }
}
