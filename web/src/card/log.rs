//! What was done to a card, change by change, and how it is stored.
use super::model::{Bad, Card, Item, Step};
use crate::keep::json::{self, Json};
use crate::keep::kept::{choice, record};
use std::borrow::Cow;

/// A change of a card.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Change {
    /// A new title.
    Title(String),
    /// Another job.
    Job(String),
    /// Another metal.
    Metal(String),
    /// Other notes.
    Notes(String),
    /// This value, in place of the one with its id or after the last.
    Value(Item),
    /// The value with this id is taken out.
    DropValue(u32),
    /// The value with this id goes to this place, from 0.
    MoveValue((u32, u32)),
    /// This step, in place of the one with its id or after the last.
    Step(Box<Step>),
    /// Other words for the step with this id.
    Words((u32, String)),
    /// The step with this id is taken out.
    DropStep(u32),
    /// The step with this id goes to this place, from 0.
    MoveStep((u32, u32)),
    /// The step with this id is ticked off, or not.
    Tick((u32, bool)),
    /// Of the step with this id these parts, from and to, are cut, or not.
    Cut((u32, (u32, (u32, bool)))),
    /// The last change that stands is taken back.
    Undo,
    /// The change taken back last is done again.
    Redo,
}

/// One entry of the log.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Event {
    pub(super) what: Change,
    pub(super) at_ms: u64,
    /// It goes on from the change before it: typing in one field.
    pub(super) joins: bool,
}

choice! {
    Change {
        Title(held) = "title", Job(held) = "job", Metal(held) = "metal", Notes(held) = "notes",
        Value(held) = "value", DropValue(held) = "drop-value", MoveValue(held) = "move-value",
        Step(held) = "step", Words(held) = "words", DropStep(held) = "drop-step",
        MoveStep(held) = "move-step", Tick(held) = "tick", Cut(held) = "cut",
        Undo = "undo", Redo = "redo"
    }
}

record! {
    Event { what, at_ms, joins }
    Log { base, stand, undone }
}

impl Change {
    /// Whether both put a text into the same place.
    pub(super) fn same_place(&self, other: &Self) -> bool {
        match (self, other) {
            (Self::Title(_), Self::Title(_))
            | (Self::Job(_), Self::Job(_))
            | (Self::Metal(_), Self::Metal(_))
            | (Self::Notes(_), Self::Notes(_)) => true,
            (Self::Words((one, _)), Self::Words((other, _))) => one == other,
            (Self::Value(one), Self::Value(other)) => one.id == other.id,
            _ => false,
        }
    }
}

fn put<T>(list: &mut Vec<T>, new: &T, same: impl Fn(&T) -> bool)
where
    T: Clone,
{
    match list.iter_mut().find(|own| same(own)) {
        Some(own) => *own = new.clone(),
        None => list.push(new.clone()),
    }
}

fn take<T>(list: &mut Vec<T>, same: impl Fn(&T) -> bool) -> Result<T, Bad> {
    let place = list.iter().position(same).ok_or(Bad::Conflict)?;
    Ok(list.remove(place))
}

fn shift<T>(list: &mut Vec<T>, to: u32, same: impl Fn(&T) -> bool) -> Result<(), Bad> {
    let entry = take(list, same)?;
    let to = (to as usize).min(list.len());
    list.insert(to, entry);
    Ok(())
}

impl Card {
    /// The card after a change; [`Change::Undo`] and [`Change::Redo`] are the log's own.
    fn apply(&mut self, what: &Change, at_ms: u64) -> Result<(), Bad> {
        match what {
            Change::Title(text) => self.title.clone_from(text),
            Change::Job(text) => self.job.clone_from(text),
            Change::Metal(text) => self.metal.clone_from(text),
            Change::Notes(text) => self.notes.clone_from(text),
            Change::Value(value) => put(&mut self.values, value, |own| own.id == value.id),
            Change::DropValue(id) => drop(take(&mut self.values, |own| own.id == *id)?),
            Change::MoveValue((id, to)) => shift(&mut self.values, *to, |own| own.id == *id)?,
            Change::Step(step) => put(&mut self.steps, &**step, |own| own.id == step.id),
            Change::DropStep(id) => drop(take(&mut self.steps, |own| own.id == *id)?),
            Change::MoveStep((id, to)) => shift(&mut self.steps, *to, |own| own.id == *id)?,
            Change::Words((id, text)) => self.step(*id)?.text.clone_from(text),
            Change::Tick((id, done)) => self.step(*id)?.done_ms = done.then_some(at_ms),
            Change::Cut((id, (from, (to, cut)))) => {
                let step = self.step(*id)?;
                if *from < 1 || from > to || *to > step.parts {
                    return Err(Bad::Conflict);
                }
                step.cut.mark(*from, *to, *cut);
                step.cut_ms = Some(at_ms);
            }
            Change::Undo | Change::Redo => return Err(Bad::Conflict),
        }
        Ok(())
    }

    fn step(&mut self, id: u32) -> Result<&mut Step, Bad> {
        self.steps.iter_mut().find(|step| step.id == id).ok_or(Bad::Conflict)
    }
}

/// A card as it began, and the changes since: those that stand and those taken back.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(super) struct Log {
    pub(super) base: Card,
    pub(super) stand: Vec<Event>,
    pub(super) undone: Vec<Event>,
}

/// Milliseconds within which typing in one field is one change.
const ONE_GO_MS: u64 = 3_000;
/// Changes that a fresh beginning keeps apart, so that they can still be taken back.
const KEPT_APART: usize = 60;

impl Log {
    pub(super) fn of(base: Card) -> Self {
        Self { base, stand: Vec::new(), undone: Vec::new() }
    }

    /// The card now; every change was tried before it came in.
    pub(super) fn card(&self) -> Card {
        let mut card = self.base.clone();
        for event in &self.stand {
            let _ = card.apply(&event.what, event.at_ms);
        }
        card
    }

    /// The entry of the log for `what`.
    pub(super) fn event(&self, what: Change, at_ms: u64) -> Event {
        let last = self.stand.last().filter(|_| self.undone.is_empty());
        let joins = last.is_some_and(|last| {
            last.what.same_place(&what) && at_ms.saturating_sub(last.at_ms) < ONE_GO_MS
        });
        Event { what, at_ms, joins }
    }

    /// Takes one entry in; one that does not fit leaves all as it is.
    pub(super) fn push(&mut self, event: Event) -> Result<(), Bad> {
        self.push_onto(&mut self.card(), event)
    }

    /// As [`Self::push`], where `card` is the card now and follows.
    fn push_onto(&mut self, card: &mut Card, mut event: Event) -> Result<(), Bad> {
        match event.what {
            Change::Undo => {
                let last = self.stand.pop().ok_or(Bad::Conflict)?;
                self.undone.push(last);
                *card = self.card();
                return Ok(());
            }
            Change::Redo => {
                let last = self.undone.pop().ok_or(Bad::Conflict)?;
                self.stand.push(last);
                *card = self.card();
                return Ok(());
            }
            _ => {}
        }
        let joined = self.stand.last().is_some_and(|last| last.what.same_place(&event.what));
        if event.joins && !joined {
            return Err(Bad::Conflict);
        }
        let mut after = card.clone();
        after.apply(&event.what, event.at_ms)?;
        after.check().map_err(|(_, bad)| bad)?;
        *card = after;
        if std::mem::take(&mut event.joins) {
            self.stand.pop();
        }
        self.undone.clear();
        self.stand.push(event);
        Ok(())
    }

    /// The same card with a short log: all but the last changes are in its beginning.
    pub(super) fn compact(&self) -> Self {
        let early = self.stand.len().saturating_sub(KEPT_APART);
        let (early, late) = self.stand.split_at(early);
        let before = Self { base: self.base.clone(), stand: early.to_vec(), undone: vec![] };
        let base = Card { version: super::SCHEMA, ..before.card() };
        Self { base, stand: late.to_vec(), undone: vec![] }
    }

    /// The lines in which it is handed to the store; it has nothing taken back.
    pub(super) fn lines(&self) -> String {
        let mut text = self.stand.len().to_string() + "\n" + &json::write(&mut self.base.clone());
        for (number, event) in self.stand.iter().enumerate() {
            text += "\n";
            text += &number.to_string();
            text += " ";
            text += &event_text(event);
        }
        text
    }
}

pub(super) fn event_text(event: &Event) -> String {
    json::write(&mut event.clone())
}

/// Why a stored card is not believed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Unread {
    /// It is no card.
    NotACard,
    /// A newer version of the page wrote it.
    Newer,
    /// This change (from 0) cannot be read, or does not follow from those before it.
    Change(usize),
    /// Changes are missing, or there are more than were counted.
    Count,
}

/// Entries of a log that is looked at; it is made short long before.
const MOST_ENTRIES: usize = 2_000;

/// The log that the store's lines hold, and how many entries it has; believed only where
/// it is whole and every change follows from those before it.
pub(super) fn from_lines(text: &str) -> Result<(Log, usize), Unread> {
    let (log, count, read) = read_lines(text);
    read.map(|()| (log, count))
}

/// As much of the store's lines as can be believed, and why no more.
pub(super) fn read_lines(text: &str) -> (Log, usize, Result<(), Unread>) {
    let mut log = Log::default();
    let mut rows = text.split('\n');
    let counted: Option<usize> = rows.next().and_then(|count| count.parse().ok());
    let base = json::tree(rows.next().unwrap_or_default()).ok();
    log.base = match base.ok_or(Unread::NotACard).and_then(raised) {
        Ok(base) if base.check().is_ok() => base,
        Ok(_) => return (log, 0, Err(Unread::NotACard)),
        Err(unread) => return (log, 0, Err(unread)),
    };
    let mut card = log.base.clone();
    let mut count = 0;
    for row in rows {
        let event = row.split_once(' ').filter(|(named, _)| *named == count.to_string());
        let event = event.and_then(|(_, event)| json::read(event).ok());
        let taken = event.filter(|_| count < MOST_ENTRIES);
        if taken.is_none_or(|event| log.push_onto(&mut card, event).is_err()) {
            return (log, count, Err(Unread::Change(count)));
        }
        count += 1;
    }
    let whole = if counted == Some(count) { Ok(()) } else { Err(Unread::Count) };
    (log, count, whole)
}

/// The fields of a card as they were read.
type Fields<'t, 'f> = &'f mut Vec<(Cow<'t, str>, Json<'t>)>;

/// What brings a card of form 1, 2 and so on up to the next.
const RAISE: [fn(Fields<'_, '_>); super::SCHEMA as usize - 1] = [
    // Form 1 did not ask for the metal.
    |card| card.push((Cow::Borrowed("metal"), Json::Text(Cow::Borrowed("")))),
];

/// The card in `tree`, of whatever form that this page knows.
pub(super) fn raised(mut tree: Json<'_>) -> Result<Card, Unread> {
    let Json::Whole(version) = *tree.field("version") else { return Err(Unread::NotACard) };
    let version = usize::try_from(version).ok().filter(|v| *v > 0).ok_or(Unread::NotACard)?;
    if version > RAISE.len() + 1 {
        return Err(Unread::Newer);
    }
    if let Json::Record(fields) = &mut tree {
        RAISE.iter().skip(version - 1).for_each(|raise| raise(fields));
    }
    json::fill(&tree).map_err(|_| Unread::NotACard)
}
