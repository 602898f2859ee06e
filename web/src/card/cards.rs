//! The cards of this device and the one that is open: what a person does with them.
use super::log::{Change, Log};
use super::model::{Card, LINE};
use super::open::{Lock, Note, Open};
use super::share;
use crate::fields::Fields;
use crate::keep::kept::{choice, record};
use crate::seam::Effect;

/// How cards are told from Runs in the store.
pub(super) const PREFIX: &str = "card-";
/// The field that keeps which card is open.
pub(super) const OPEN: &str = "card-open";
/// Fields that hold the values of the open card.
const VALUE: &str = "value-";

/// Whether a card is open: the rooms then show what is on it in place of the demonstration's.
#[must_use]
pub fn is_open(fields: &Fields) -> bool {
    !fields.get(OPEN).is_empty()
}

/// All that the page remembers of cards.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Cards {
    /// Why nothing is stored; empty while it is.
    pub(super) store: String,
    pub(super) list: Vec<Entry>,
    pub(super) open: Option<Box<Open>>,
    /// Cards left while the store had not all of them yet, or keeps nothing.
    pub(super) aside: Vec<Open>,
    /// The card that is to be opened when the store has given it.
    pub(super) wanted: String,
    /// What can be read of the wanted card is to become a card of its own.
    pub(super) rescues: bool,
    pub(super) dropped: Option<Entry>,
    pub(super) offered: Option<Box<Card>>,
    /// A card by its name, with changes that do not count because another tab writes on it.
    pub(super) spare: Option<(String, Box<Card>)>,
    /// What could not be done with a file or a link: its name, and why.
    pub(super) refused: Option<(String, share::Refused)>,
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

record! {
    Cards { store, list, open, aside, wanted, rescues, dropped, offered, spare, refused }
    Entry { id, title, job, done, of, fault }
}

choice! {
    Fault { None = "none", Damaged = "damaged", Partly = "partly", Newer = "newer" }
}

pub(super) fn listed(open: &Open) -> Entry {
    entry(&open.id, &open.card(), Fault::None)
}

pub(super) fn entry(id: &str, card: &Card, fault: Fault) -> Entry {
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

    pub(super) fn enlist(&mut self, entry: Entry) {
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

    pub(super) fn show(&mut self, fields: &mut Fields, open: Open) -> Vec<Effect> {
        let mut effects = self.put_aside();
        if open.unsaved.is_empty() && open.lock != Lock::Held {
            effects.push(Effect::Claim(open.id.clone(), false));
        }
        fields.set(OPEN, &open.id);
        self.wanted.clear();
        self.refused = None;
        self.enlist(listed(&open));
        self.open = Some(Box::new(open));
        self.follow(fields);
        effects
    }

    /// Takes the open card off the screen; it is kept until the store has all of it.
    fn put_aside(&mut self) -> Vec<Effect> {
        let Some(open) = self.open.take() else { return vec![] };
        self.enlist(listed(&open));
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
        if open.lock == Lock::Elsewhere {
            let known = self.spare.as_ref().filter(|(id, _)| *id == open.id);
            let mut log = Log::of(known.map_or_else(|| open.card(), |(_, card)| (**card).clone()));
            // What takes back stands for changes of the other tab: it leaves all as it is.
            if log.push(log.event(what.clone(), at_ms)).is_ok() {
                self.spare = Some((open.id.clone(), Box::new(log.card())));
            }
        }
        let effect = open.change(what, at_ms);
        let entry = listed(open);
        self.enlist(entry);
        self.follow(fields);
        effect.into_iter().collect()
    }

    /// What was done here while another tab wrote is not lost: it can become a card of its own.
    pub(super) fn spare(&mut self, id: &str, card: Option<Card>) {
        if let Some(card) = card {
            self.spare = Some((id.to_owned(), Box::new(card)));
        }
    }

    /// The card with what did not count, which waits to be kept or not: the open one, or any.
    #[must_use]
    pub fn uncounted(&self) -> Option<&Card> {
        let (id, card) = self.spare.as_ref()?;
        let ours = self.open.as_ref().is_none_or(|open| open.id == *id);
        ours.then_some(&**card)
    }

    /// Keeps what did not count as a card of its own, or lets it go.
    pub fn keep_uncounted(&mut self, fields: &mut Fields, keep: bool, at_ms: u64) -> Vec<Effect> {
        let Some((_, mut card)) = self.spare.take().filter(|_| keep) else { return vec![] };
        let title = crate::words::card::copy_of(&card.title);
        if title.chars().count() <= LINE {
            card.title = title;
        }
        self.begin(fields, *card, at_ms)
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
    pub(super) fn follow(&self, fields: &mut Fields) {
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
}
