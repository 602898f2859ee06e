//! The cards of this device and the one that is open, and what the store says of them.
use super::log::{Change, Event as Entered, Log, Unread, event_text, from_lines, read_lines};
use super::model::{Bad, Card, SCHEMA};
use super::share;
use crate::fields::Fields;
use crate::keep::kept::{choice, record};
use crate::seam::{Effect, Event};

/// How cards are told from Runs in the store.
const PREFIX: &str = "card-";
/// The field that keeps which card is open.
const OPEN: &str = "card-open";
/// Fields that hold the values of the open card.
const VALUE: &str = "value-";
/// Entries, and letters, after which a log is made short.
const LONG: (usize, usize) = (240, 1_000_000);

/// All that the page remembers of cards.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Cards {
    /// Why nothing is stored; empty while it is.
    store: String,
    list: Vec<Entry>,
    open: Option<Box<Open>>,
    /// Cards left while the store had not all of them yet, or keeps nothing.
    aside: Vec<Open>,
    /// The card that is to be opened when the store has given it.
    wanted: String,
    /// What can be read of the wanted card is to become a card of its own.
    rescues: bool,
    dropped: Option<Entry>,
    offered: Option<Box<Card>>,
    /// What could not be done with a file or a link: its name, and why.
    refused: Option<(String, share::Refused)>,
}

/// A card in the list.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Entry {
    /// Its name in the store.
    pub id: String,
    /// The part.
    pub title: String,
    /// What it belongs to.
    pub job: String,
    /// Steps ticked off.
    pub done: usize,
    /// Steps.
    pub of: usize,
    /// Whether it can be used.
    pub fault: Fault,
}

/// Whether a stored card can be used.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Fault {
    /// It can.
    #[default]
    None,
    /// It is damaged, and nothing of it can be read.
    Damaged,
    /// It is damaged; what was stored before can be read ([`Cards::rescue`]).
    Partly,
    /// A newer version of the page wrote it; it stays as it is.
    Newer,
}

/// The open card.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Open {
    id: String,
    log: Log,
    /// Entries the store has confirmed.
    next: usize,
    /// Letters of them.
    letters: usize,
    /// Entries it has not, in order; the first one is being stored while `asked` says so.
    waiting: Vec<Entered>,
    asked: Asked,
    /// The store has the card itself.
    begun: bool,
    /// The store did not take a short log; the long one goes on.
    tired: bool,
    unsaved: String,
    lock: Lock,
    saved_at: String,
    note: Note,
}

/// What the store is doing.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
enum Asked {
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
    Cards { store, list, open, aside, wanted, rescues, dropped, offered, refused }
    Entry { id, title, job, done, of, fault }
    Open { id, log, next, letters, waiting, asked, begun, tired, unsaved, lock, saved_at, note }
}

choice! {
    Fault { None = "none", Damaged = "damaged", Partly = "partly", Newer = "newer" }
    Asked { No = "no", Begin = "begin", Append = "append", Renew(held) = "renew" }
    Lock { Asked = "asked", Held = "held", Elsewhere = "elsewhere" }
    Note {
        None = "none", Taken = "taken", Gone = "gone", Slow = "slow", Long(held) = "long",
        Many(held) = "many", NotNow = "not-now"
    }
}

impl Open {
    fn of(id: &str, log: Log, next: usize, letters: usize) -> Self {
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

    fn entry(&self) -> Entry {
        entry(&self.id, &self.card(), Fault::None)
    }

    fn refuse(&mut self, why: &str) {
        self.unsaved = if why.is_empty() { "?".to_owned() } else { why.to_owned() };
        self.asked = Asked::No;
        if self.lock == Lock::Asked {
            self.lock = Lock::Held;
        }
    }

    /// The store has what it was asked to take.
    fn kept(&mut self, asked: Asked, time: &str) {
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

    /// Another tab writes from now on: what has not gone to the store does not count.
    fn lost(&mut self) {
        let gone = usize::from(self.asked == Asked::Append);
        if self.waiting.len() > gone {
            self.note = Note::Taken;
        }
        self.waiting.truncate(gone);
        self.lock = Lock::Elsewhere;
    }

    /// Hands the store what comes next, if it is free and this tab may write.
    fn store(&mut self) -> Option<Effect> {
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
    fn change(&mut self, what: Change, at_ms: u64) -> Option<Effect> {
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

fn entry(id: &str, card: &Card, fault: Fault) -> Entry {
    let (done, of) = card.done();
    Entry { id: id.to_owned(), title: card.title.clone(), job: card.job.clone(), done, of, fault }
}

impl Cards {
    /// The open card.
    #[must_use]
    pub fn open(&self) -> Option<&Open> {
        self.open.as_deref()
    }

    /// All cards, the oldest first.
    #[must_use]
    pub fn list(&self) -> &[Entry] {
        &self.list
    }

    /// Why the device stores nothing; empty while it does.
    #[must_use]
    pub fn store(&self) -> &str {
        &self.store
    }

    /// A card that came in a link and waits to be kept or not.
    #[must_use]
    pub fn offered(&self) -> Option<&Card> {
        self.offered.as_deref()
    }

    /// The file or link that was refused last, and why.
    #[must_use]
    pub fn refused(&self) -> Option<(&str, &share::Refused)> {
        self.refused.as_ref().map(|(name, why)| (name.as_str(), why))
    }

    /// The card taken out last.
    #[must_use]
    pub fn dropped(&self) -> Option<&Entry> {
        self.dropped.as_ref()
    }

    fn enlist(&mut self, entry: Entry) {
        match self.list.iter_mut().find(|known| known.id == entry.id) {
            Some(known) => *known = entry,
            None => self.list.push(entry),
        }
    }

    /// A new card comes on screen and into the store.
    pub fn begin(&mut self, fields: &mut Fields, card: Card, at_ms: u64) -> Vec<Effect> {
        let mut number = at_ms;
        let id = loop {
            let id = PREFIX.to_owned() + &number.to_string();
            if !self.list.iter().any(|entry| entry.id == id) {
                break id;
            }
            number += 1;
        };
        let mut open = Open::of(&id, Log::of(card), 0, 0);
        open.begun = false;
        if !self.store.is_empty() {
            open.refuse(&self.store);
        }
        let mut effects: Vec<_> = open.store().into_iter().collect();
        effects.extend(self.show(fields, open));
        effects.push(Effect::Lasting);
        effects
    }

    fn show(&mut self, fields: &mut Fields, open: Open) -> Vec<Effect> {
        let mut effects = self.put_aside();
        if open.unsaved.is_empty() && open.lock != Lock::Held {
            effects.push(Effect::Claim(open.id.clone(), false));
        }
        fields.set(OPEN, &open.id);
        self.wanted.clear();
        self.refused = None;
        self.enlist(open.entry());
        self.open = Some(Box::new(open));
        self.follow(fields);
        effects
    }

    /// Takes the open card off the screen; it is kept until the store has all of it.
    fn put_aside(&mut self) -> Vec<Effect> {
        let Some(open) = self.open.take() else { return vec![] };
        self.enlist(open.entry());
        if open.saving() || !open.unsaved.is_empty() {
            self.aside.push(*open);
            return vec![];
        }
        vec![Effect::Release(open.id)]
    }

    /// Closes the open card.
    pub fn leave(&mut self, fields: &mut Fields) -> Vec<Effect> {
        fields.forget(OPEN);
        let effects = self.put_aside();
        self.follow(fields);
        effects
    }

    /// Opens another card, once the store has given it again.
    pub fn resume(&mut self, fields: &mut Fields, id: &str) -> Vec<Effect> {
        if let Some(place) = self.aside.iter().position(|open| open.id == id) {
            let open = self.aside.remove(place);
            return self.show(fields, open);
        }
        if self.open.as_ref().is_some_and(|open| open.id == id) {
            return vec![];
        }
        id.clone_into(&mut self.wanted);
        self.rescues = false;
        vec![Effect::Look(id.to_owned())]
    }

    /// Makes a card of what can be read of a damaged one; that one stays as it is.
    pub fn rescue(&mut self, id: &str) -> Vec<Effect> {
        id.clone_into(&mut self.wanted);
        self.rescues = true;
        vec![Effect::Look(id.to_owned())]
    }

    /// Takes a card out of the store; one that a newer version wrote stays.
    pub fn drop(&mut self, fields: &mut Fields, id: &str) -> Vec<Effect> {
        let place = self.list.iter().position(|entry| entry.id == id);
        let Some(place) = place.filter(|place| self.list[*place].fault != Fault::Newer) else {
            return vec![];
        };
        let open = self.open.as_mut().filter(|open| open.id == id);
        if let Some(open) = open {
            if open.lock == Lock::Elsewhere {
                open.note = Note::Taken;
                return vec![];
            }
            fields.forget(OPEN);
            self.open = None;
        }
        self.aside.retain(|open| open.id != id);
        self.dropped = Some(self.list.remove(place));
        self.follow(fields);
        vec![Effect::Release(id.to_owned()), Effect::Drop(id.to_owned())]
    }

    /// Puts the card taken out last back.
    pub fn undrop(&mut self) -> Vec<Effect> {
        let Some(entry) = &self.dropped else { return vec![] };
        self.wanted.clone_from(&entry.id);
        self.rescues = false;
        vec![Effect::Undrop(entry.id.clone())]
    }

    /// This tab writes on the open card from now on, even where another does.
    pub fn take_over(&mut self) -> Vec<Effect> {
        let Some(open) = self.open.as_mut() else { return vec![] };
        open.lock = Lock::Asked;
        open.note = Note::None;
        vec![Effect::Claim(open.id.clone(), true)]
    }

    /// Tries to store the open card again after the store refused.
    pub fn retry(&mut self) -> Vec<Effect> {
        let Some(open) = self.open.as_mut().filter(|open| !open.unsaved.is_empty()) else {
            return vec![];
        };
        open.unsaved.clear();
        let mut effects: Vec<_> = open.store().into_iter().collect();
        effects.push(Effect::Claim(open.id.clone(), false));
        effects
    }

    /// Takes in a change of the open card.
    pub fn change(&mut self, fields: &mut Fields, what: Change, at_ms: u64) -> Vec<Effect> {
        let Some(open) = self.open.as_mut() else { return vec![] };
        let effect = open.change(what, at_ms);
        let entry = open.entry();
        self.enlist(entry);
        self.follow(fields);
        effect.into_iter().collect()
    }

    /// The open card as a file.
    #[must_use]
    pub fn file(&self) -> Vec<Effect> {
        let open = self.open.as_ref();
        open.map(|open| Effect::File(share::FILE_NAME, share::file(&open.card())))
            .into_iter()
            .collect()
    }

    /// Keeps the card out of a link.
    pub fn keep_offered(&mut self, fields: &mut Fields, at_ms: u64) -> Vec<Effect> {
        let Some(card) = self.offered.take() else { return vec![] };
        self.begin(fields, *card, at_ms)
    }

    /// Lets the card out of a link go.
    pub fn let_offered_go(&mut self) {
        self.offered = None;
    }

    /// Keeps the fields `value-NAME` at the values in force of the open card.
    fn follow(&self, fields: &mut Fields) {
        let mut now: Vec<(String, String)> = Vec::new();
        if let Some(open) = &self.open {
            let card = open.card();
            for (item, found) in card.values.iter().zip(super::found(&card)) {
                let name = VALUE.to_owned() + &item.name.to_lowercase();
                if let Ok(amount) = found.in_force {
                    now.push((name, super::text::typed(amount)));
                }
            }
        }
        let old: Vec<_> = fields
            .iter()
            .map(|(name, _)| name)
            .filter(|name| name.starts_with(VALUE))
            .map(str::to_owned)
            .collect();
        for name in old {
            if !now.iter().any(|(own, _)| *own == name) {
                fields.forget(&name);
            }
        }
        for (name, value) in now {
            if fields.get(&name) != value {
                fields.set(&name, &value);
            }
        }
    }

    /// What the store, a file or the address says; none where it is not about a card.
    pub fn heard(&mut self, fields: &mut Fields, event: &Event) -> Option<Vec<Effect>> {
        match event.kind {
            "storage" => {
                let ready = event.name == "ready";
                self.store = if ready { String::new() } else { event.value.to_owned() };
                if !ready {
                    let why = &self.store;
                    self.open.iter_mut().for_each(|open| open.refuse(why));
                    self.aside.iter_mut().for_each(|open| open.refuse(why));
                }
                return None;
            }
            // An address may hold a card; it is opened all the same.
            "open" => {
                match share::from_link(event.name)? {
                    Ok(card) => self.offered = Some(Box::new(card)),
                    Err(why) => self.refused = Some((String::new(), why)),
                }
                fields.set("room", "card");
                return None;
            }
            "file" => return self.opened(fields, event),
            _ if !event.name.starts_with(PREFIX) => return None,
            _ => {}
        }
        let effects = match event.kind {
            "stored" => self.stored(fields, event),
            "gone" => self.gone(event.name),
            "kept" | "unkept" => self.answered(event),
            "slow" => {
                self.with(event.name, |open| open.note = Note::Slow);
                vec![]
            }
            "lock" => self.locked(event),
            // Fields and buttons of the room.
            _ => return None,
        };
        self.follow(fields);
        Some(effects)
    }

    fn opened(&mut self, fields: &mut Fields, event: &Event) -> Option<Vec<Effect>> {
        if !share::holds_card(event.value) && fields.get("room") != "card" {
            return None;
        }
        Some(match share::from_file(event.value) {
            Ok(card) => {
                fields.set("room", "card");
                self.begin(fields, card, event.at_ms)
            }
            Err(why) => {
                self.refused = Some((event.name.to_owned(), why));
                vec![]
            }
        })
    }

    /// Does `what` to the card of this name, open or put aside.
    fn with<T>(&mut self, id: &str, what: impl FnOnce(&mut Open) -> T) -> Option<T> {
        let open = self.open.as_deref_mut().into_iter().chain(&mut self.aside);
        open.into_iter().find(|open| open.id == id).map(what)
    }

    fn stored(&mut self, fields: &mut Fields, event: &Event) -> Vec<Effect> {
        let id = event.name;
        self.dropped.take_if(|entry| entry.id == id);
        let read = from_lines(event.value);
        if self.with(id, |_| ()).is_none() {
            self.enlist(match &read {
                Ok((log, _)) => entry(id, &log.card(), Fault::None),
                Err(Unread::Newer) => entry(id, &Card::default(), Fault::Newer),
                Err(Unread::NotACard) => entry(id, &Card::default(), Fault::Damaged),
                Err(_) => entry(id, &read_lines(event.value).0.card(), Fault::Partly),
            });
        }
        let wanted = self.wanted == id;
        if wanted && self.rescues {
            self.wanted.clear();
            let (log, ..) = read_lines(event.value);
            return self.begin(fields, log.card(), event.at_ms);
        }
        let Ok((log, next)) = read else { return vec![] };
        let letters = event.value.len();
        let known = self.with(id, |open| {
            // What waits here is not in the store yet: only its answer settles that.
            if open.asked == Asked::No && open.unsaved.is_empty() && open.waiting.is_empty() {
                (open.log, open.next, open.letters) = (log.clone(), next, letters);
            }
        });
        let again = self.wanted.is_empty() && self.open.is_none() && fields.get(OPEN) == id;
        if known.is_some() || !(wanted || again) {
            return vec![];
        }
        self.show(fields, Open::of(id, log, next, letters))
    }

    fn gone(&mut self, id: &str) -> Vec<Effect> {
        let lost = self.with(id, |open| {
            // Its text is still here: the store can be asked to take it again.
            open.refuse("gone");
            (open.note, open.begun, open.lock) = (Note::Gone, false, Lock::Held);
        });
        if lost.is_none() {
            self.list.retain(|entry| entry.id != id);
        }
        vec![]
    }

    fn answered(&mut self, event: &Event) -> Vec<Effect> {
        let (number, rest) = event.value.split_once(' ').unwrap_or((event.value, ""));
        let kept = event.kind == "kept";
        if number == "dropped" && !kept {
            // It is still there.
            let back = self.dropped.take();
            back.into_iter().for_each(|entry| self.enlist(entry));
            return vec![];
        }
        let done = self.with(event.name, |open| {
            let ours = match open.asked {
                Asked::No => false,
                Asked::Append => number == open.next.to_string(),
                Asked::Begin | Asked::Renew(_) => number == "begun",
            };
            if !ours {
                return None;
            }
            let asked = std::mem::take(&mut open.asked);
            match (asked, rest) {
                _ if kept => open.kept(asked, rest),
                (Asked::Append | Asked::Renew(_), "taken" | "behind" | "gone") => {
                    // Another tab writes: what waits does not count, and the truth is read anew.
                    open.lost();
                    return Some(Effect::Look(open.id.clone()));
                }
                (Asked::Renew(_), _) => open.tired = true,
                _ => open.refuse(rest),
            }
            if open.lock == Lock::Elsewhere {
                // Taken over while this was being stored: what is there now is the truth.
                return Some(Effect::Look(open.id.clone()));
            }
            open.store()
        });
        let done: Option<Effect> = done.flatten();
        let mut effects: Vec<_> = done.into_iter().collect();
        if let Some(entry) = self.with(event.name, |open| open.entry()) {
            self.enlist(entry);
        }
        // One that was left is let go of once the store has all of it.
        if let Some(place) =
            self.aside.iter().position(|open| !open.saving() && open.unsaved.is_empty())
        {
            effects.push(Effect::Release(self.aside.remove(place).id));
        }
        effects
    }

    fn locked(&mut self, event: &Event) -> Vec<Effect> {
        let (what, why) = event.value.split_once(' ').unwrap_or((event.value, ""));
        let done = self.with(event.name, |open| match what {
            "held" => {
                open.lock = Lock::Held;
                open.store()
            }
            "elsewhere" => {
                open.lock = Lock::Elsewhere;
                None
            }
            "lost" => {
                open.lost();
                Some(Effect::Look(open.id.clone()))
            }
            // A new card that was not stored can't be held: that it was not is said already.
            _ if !open.begun => {
                open.lock = Lock::Held;
                None
            }
            _ => {
                open.refuse(why);
                None
            }
        });
        done.flatten().into_iter().collect()
    }
}
