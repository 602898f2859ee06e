//! The open card: what of it the store has, what waits, and who writes on it.
use super::SCHEMA;
use super::log::{Change, Event as Entered, Log, event_text};
use super::model::{Bad, Card};
use super::share;
use crate::keep::kept::{choice, record};
use crate::seam::Effect;

/// Entries, and letters, after which a log is made short.
const LONG: (usize, usize) = (240, 1_000_000);

/// The open card.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Open {
    pub(super) id: String,
    pub(super) log: Log,
    /// Entries the store has confirmed.
    pub(super) next: usize,
    /// Letters of them.
    pub(super) letters: usize,
    /// Entries it has not, in order; the first one is being stored while `asked` says so.
    pub(super) waiting: Vec<Entered>,
    pub(super) asked: Asked,
    /// The store has the card itself.
    pub(super) begun: bool,
    /// The store did not take a short log; the long one goes on.
    pub(super) tired: bool,
    pub(super) unsaved: String,
    pub(super) lock: Lock,
    pub(super) saved_at: String,
    pub(super) note: Note,
}

/// What the store is doing.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(super) enum Asked {
    /// Nothing.
    #[default]
    No,
    /// It takes in a new card.
    Begin,
    /// It takes in an entry.
    Append,
    /// It puts a short log, of so many entries and letters, in place of the long one.
    Renew((usize, usize)),
}

/// Who writes on a card.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Lock {
    /// Not known yet.
    #[default]
    Asked,
    /// This tab.
    Held,
    /// Another tab; this one only shows.
    Elsewhere,
}

/// A sentence about the last press.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Note {
    /// Nothing to say.
    #[default]
    None,
    /// Another tab writes: it does not count.
    Taken,
    /// The card has been taken out in another tab.
    Gone,
    /// The store takes long.
    Slow,
    /// The text is longer than this.
    Long(usize),
    /// There are more than this.
    Many(usize),
    /// That can't be done now: nothing to take back, no such step.
    NotNow,
}

record! {
    Open { id, log, next, letters, waiting, asked, begun, tired, unsaved, lock, saved_at, note }
}

choice! {
    Asked { No = "no", Begin = "begin", Append = "append", Renew(held) = "renew" }
    Lock { Asked = "asked", Held = "held", Elsewhere = "elsewhere" }
    Note {
        None = "none", Taken = "taken", Gone = "gone", Slow = "slow", Long(held) = "long",
        Many(held) = "many", NotNow = "not-now"
    }
}

impl Open {
    pub(super) fn of(id: &str, log: Log, next: usize, letters: usize) -> Self {
        Self {
            id: id.to_owned(),
            log,
            next,
            letters,
            waiting: Vec::new(),
            asked: Asked::No,
            begun: true,
            tired: false,
            unsaved: String::new(),
            lock: Lock::Asked,
            saved_at: String::new(),
            note: Note::None,
        }
    }

    /// Its name in the store.
    #[must_use]
    pub fn id(&self) -> &str {
        &self.id
    }

    /// The card now, with what waits for the store.
    #[must_use]
    pub fn card(&self) -> Card {
        self.log.card()
    }

    /// Whether something waits for the store.
    #[must_use]
    pub fn saving(&self) -> bool {
        self.unsaved.is_empty() && !(self.begun && self.waiting.is_empty())
    }

    /// Why the store keeps nothing any more (`full`, ..); empty while it does.
    #[must_use]
    pub fn unsaved(&self) -> &str {
        &self.unsaved
    }

    /// The device's time of the last confirmed save; empty before the first.
    #[must_use]
    pub fn saved_at(&self) -> &str {
        &self.saved_at
    }

    /// Who writes on it.
    #[must_use]
    pub fn lock(&self) -> Lock {
        self.lock
    }

    /// What to say about the last press.
    #[must_use]
    pub fn note(&self) -> Note {
        self.note
    }

    /// Whether something can be taken back, and something done again.
    #[must_use]
    pub fn can(&self) -> (bool, bool) {
        (!self.log.stand.is_empty(), !self.log.undone.is_empty())
    }

    /// The card as the part of an address after `#`, which never leaves the device.
    ///
    /// # Errors
    /// How long it would be, where that is more than a link may have.
    pub fn link(&self) -> Result<String, usize> {
        share::link(&self.card())
    }

    pub(super) fn refuse(&mut self, why: &str) {
        self.unsaved = if why.is_empty() { "?".to_owned() } else { why.to_owned() };
        self.asked = Asked::No;
        if self.lock == Lock::Asked {
            self.lock = Lock::Held;
        }
    }

    /// The store has what it was asked to take.
    pub(super) fn kept(&mut self, asked: Asked, time: &str) {
        if self.note == Note::Slow {
            self.note = Note::None;
        }
        time.clone_into(&mut self.saved_at);
        self.begun = true;
        match asked {
            Asked::Append if !self.waiting.is_empty() => {
                let stored = self.waiting.remove(0);
                self.next += 1;
                self.letters += event_text(&stored).len();
            }
            Asked::Renew(size) => (self.next, self.letters) = size,
            _ => {}
        }
    }

    /// Another tab writes from now on: what has not gone to the store does not count. The
    /// card with it, where there is any.
    pub(super) fn lost(&mut self) -> Option<Card> {
        let gone = usize::from(self.asked == Asked::Append);
        self.lock = Lock::Elsewhere;
        if self.waiting.len() <= gone {
            return None;
        }
        self.note = Note::Taken;
        self.waiting.truncate(gone);
        Some(self.card())
    }

    /// Hands the store what comes next, if it is free and this tab may write.
    pub(super) fn store(&mut self) -> Option<Effect> {
        if self.asked != Asked::No || !self.unsaved.is_empty() {
            return None;
        }
        if !self.begun {
            // What waits is in its beginning.
            self.waiting.clear();
            let lines = self.short();
            self.asked = Asked::Begin;
            (self.next, self.letters) = (self.log.stand.len(), lines.len());
            return Some(Effect::Begin(self.id.clone(), lines));
        }
        if self.lock != Lock::Held {
            return None;
        }
        if let Some(first) = self.waiting.first() {
            self.asked = Asked::Append;
            return Some(Effect::Append(self.id.clone(), self.next, event_text(first)));
        }
        let long = self.next > LONG.0 || self.letters > LONG.1;
        let old = self.log.base.version < SCHEMA;
        if (long || old) && self.log.undone.is_empty() && !self.tired {
            let lines = self.short();
            self.asked = Asked::Renew((self.log.stand.len(), lines.len()));
            return Some(Effect::Renew(self.id.clone(), self.next, lines));
        }
        None
    }

    /// Makes the log short; its lines.
    fn short(&mut self) -> String {
        self.log = self.log.compact();
        self.log.lines()
    }

    /// Takes in a change; what the store must do.
    pub(super) fn change(&mut self, what: Change, at_ms: u64) -> Option<Effect> {
        if self.lock == Lock::Elsewhere {
            self.note = Note::Taken;
            return None;
        }
        let event = self.log.event(what, at_ms);
        if let Err(bad) = self.log.push(event.clone()) {
            self.note = match bad {
                Bad::Long(most) => Note::Long(most),
                Bad::Many(most) => Note::Many(most),
                Bad::Conflict => Note::NotNow,
            };
            return None;
        }
        self.note = Note::None;
        // Typing that has not gone to the store yet is overwritten by what follows it.
        let free = usize::from(self.asked == Asked::Append);
        let last = self.waiting.get_mut(free..).and_then(<[_]>::last_mut);
        match last.filter(|last| event.joins && last.what.same_place(&event.what)) {
            Some(last) => (last.what, last.at_ms) = (event.what, event.at_ms),
            None => self.waiting.push(event),
        }
        self.store()
    }
}
