//! The passes under way in this tab and those that wait, and what the store says of them.
use super::job::{Job, Step, Unread, What, from_lines, lines};
use crate::keep::json;
use crate::keep::kept::{choice, record};
use crate::seam::{Effect, Event};
use handturn::measure::Length;
use handturn::number::float;

/// How jobs are told from Runs in the store.
const PREFIX: &str = "cut-";

/// All that the page remembers of passes under way.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Jobs {
    /// Why nothing is stored; empty while it is.
    store: String,
    pub(super) list: Vec<Entry>,
    pub(super) open: Option<Box<Open>>,
    /// The job that is to come on screen when the store has given it.
    wanted: String,
    /// The job taken out last.
    pub(super) dropped: Option<Entry>,
}

/// A stored job in a list.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Entry {
    pub(super) id: String,
    pub(super) title: String,
    pub(super) done: u32,
    pub(super) of: u32,
    /// It cannot be read.
    pub(super) fault: bool,
}

/// The job on screen.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Open {
    id: String,
    pub(super) job: Job,
    steps: Vec<Step>,
    /// Steps that the store has confirmed.
    saved: usize,
    /// The store is asked and has not answered.
    asked: bool,
    begun: bool,
    /// Why the store keeps nothing any more; empty while it does.
    pub(super) unsaved: String,
    pub(super) lock: Lock,
    pub(super) saved_at: String,
    pub(super) note: Note,
}

/// Who ticks.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Lock {
    /// Not known yet.
    Asked,
    /// This tab.
    Held,
    /// Another tab; this one only shows.
    Elsewhere,
}

/// A sentence about the last press.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Note {
    /// Nothing to say.
    None,
    /// Another press was being saved: this one does not count.
    Saving,
    /// Another tab ticks: this press does not count.
    Taken,
    /// What was measured is no diameter.
    NoNumber,
    /// What was measured is past the limits, or within them: nothing is left to cut.
    Past,
}

impl Open {
    fn of(id: &str, job: Job, steps: Vec<Step>) -> Self {
        Self {
            id: id.to_owned(),
            job,
            saved: steps.len(),
            steps,
            asked: false,
            begun: true,
            unsaved: String::new(),
            lock: Lock::Asked,
            saved_at: String::new(),
            note: Note::None,
        }
    }

    /// Steps that count: those the store has, or all once it keeps them no more.
    pub(super) fn shown(&self) -> &[Step] {
        if self.unsaved.is_empty() {
            self.steps.get(..self.saved).unwrap_or(&[])
        } else {
            &self.steps
        }
    }

    /// Where it stands; checked when it came in.
    pub(super) fn place(&self) -> Option<super::job::Place> {
        self.job.place(self.shown()).ok()
    }

    /// Whether a press waits for the store, or this tab for the right to tick.
    pub(super) fn pending(&self) -> bool {
        self.unsaved.is_empty() && (self.asked || self.lock == Lock::Asked)
    }

    fn entry(&self) -> Entry {
        entry(&self.id, &self.job, self.shown())
    }

    /// What the store is to take next, one thing at a time.
    fn next(&mut self) -> Option<Effect> {
        if self.asked {
            return None;
        }
        if !self.begun {
            self.saved = self.steps.len();
            self.asked = true;
            return Some(Effect::Begin(self.id.clone(), lines(&self.job, &self.steps)));
        }
        let step = *self.steps.get(self.saved)?;
        self.asked = true;
        Some(Effect::Append(self.id.clone(), self.saved, json::write(&mut { step })))
    }

    fn refuse(&mut self, why: &str) {
        self.unsaved = if why.is_empty() { "?".to_owned() } else { why.to_owned() };
        self.asked = false;
        if self.lock == Lock::Asked {
            self.lock = Lock::Held;
        }
    }
}

fn entry(id: &str, job: &Job, steps: &[Step]) -> Entry {
    let place = job.place(steps);
    let (done, of) = place.as_ref().map_or((0, 0), |place| (place.done, place.of));
    Entry { id: id.to_owned(), title: job.title.clone(), done, of, fault: place.is_err() }
}

record! {
    Jobs { store, list, open, wanted, dropped }
    Entry { id, title, done, of, fault }
    Open { id, job, steps, saved, asked, begun, unsaved, lock, saved_at, note }
}

choice! {
    Lock { Asked = "Asked", Held = "Held", Elsewhere = "Elsewhere" }
    Note { None = "None", Saving = "Saving", Taken = "Taken", NoNumber = "NoNumber", Past = "Past" }
}

impl Jobs {
    /// Asks the store to take what it did not take so far.
    pub fn retry(&mut self) -> Vec<Effect> {
        let Some(open) = self.open.as_mut().filter(|open| !open.unsaved.is_empty()) else {
            return vec![];
        };
        open.next().into_iter().collect()
    }

    /// The newest job that is not done; the newest of all where all are.
    pub(super) fn resumable(&self) -> Option<&Entry> {
        let read = || self.list.iter().rev().filter(|entry| !entry.fault);
        read().find(|entry| entry.done < entry.of).or(read().next())
    }

    /// Whether something is stored that cannot be read.
    pub(super) fn unreadable(&self) -> bool {
        self.list.iter().any(|entry| entry.fault)
    }

    fn list(&mut self, entry: Entry) {
        match self.list.iter_mut().find(|known| known.id == entry.id) {
            Some(known) => *known = entry,
            None => self.list.push(entry),
        }
    }

    /// Puts a new job on screen and into the store.
    pub(super) fn begin(&mut self, job: Job, at_ms: u64) -> Vec<Effect> {
        let id = PREFIX.to_owned() + &at_ms.to_string();
        let mut open = Open::of(&id, job, Vec::new());
        let mut effects = self.leave();
        open.begun = false;
        if self.store.is_empty() {
            effects.extend(open.next());
        } else {
            open.refuse(&self.store);
        }
        effects.extend(self.show(open));
        effects
    }

    fn show(&mut self, open: Open) -> Vec<Effect> {
        let mut effects = vec![Effect::Awake(true), Effect::Focus("th-next".to_owned())];
        if open.unsaved.is_empty() {
            effects.insert(0, Effect::Claim(open.id.clone(), false));
        }
        self.list(open.entry());
        self.open = Some(Box::new(open));
        effects
    }

    fn leave(&mut self) -> Vec<Effect> {
        let Some(open) = self.open.take() else { return vec![] };
        self.list(open.entry());
        vec![Effect::Release(open.id), Effect::Awake(false)]
    }

    /// What the store says; none where it is not about a job.
    pub fn heard(&mut self, event: &Event) -> Option<Vec<Effect>> {
        if event.kind == "storage" {
            self.store = if event.name == "ready" { String::new() } else { event.value.to_owned() };
            if let Some(open) = self.open.as_mut().filter(|_| !self.store.is_empty()) {
                open.refuse(&self.store);
            }
            return None;
        }
        // The browser lets the screen sleep when a page is hidden: ask again.
        if event.kind == "seen" && event.name == "visible" && self.open.is_some() {
            return Some(vec![Effect::Awake(true)]);
        }
        if !event.name.starts_with(PREFIX) {
            return None;
        }
        Some(match event.kind {
            "stored" => self.stored(event),
            "gone" => {
                self.list.retain(|entry| entry.id != event.name);
                self.open.take_if(|open| open.id == event.name);
                vec![]
            }
            "kept" | "unkept" => self.answered(event),
            "lock" => self.locked(event),
            _ => vec![],
        })
    }

    fn stored(&mut self, event: &Event) -> Vec<Effect> {
        let read = from_lines(event.value);
        self.list(match &read {
            Ok((job, steps)) => entry(event.name, job, steps),
            Err(Unread) => Entry {
                id: event.name.to_owned(),
                title: String::new(),
                done: 0,
                of: 0,
                fault: true,
            },
        });
        let Ok((job, steps)) = read else { return vec![] };
        if let Some(open) = self.open.as_mut().filter(|open| open.id == event.name) {
            if !open.asked && open.unsaved.is_empty() {
                open.saved = steps.len();
                (open.job, open.steps) = (job, steps);
            }
            return vec![];
        }
        if self.wanted != event.name {
            return vec![];
        }
        self.wanted.clear();
        self.show(Open::of(event.name, job, steps))
    }

    fn answered(&mut self, event: &Event) -> Vec<Effect> {
        let (number, rest) = event.value.split_once(' ').unwrap_or((event.value, ""));
        let Some(open) = self.open.as_mut().filter(|open| open.id == event.name) else {
            return vec![];
        };
        let mut effects = vec![];
        if event.kind == "kept" {
            let expected = if open.begun { open.saved.to_string() } else { "begun".to_owned() };
            if number == expected {
                open.saved += usize::from(open.begun);
                (open.begun, open.asked) = (true, false);
                rest.clone_into(&mut open.saved_at);
                open.note = Note::None;
                effects.extend(open.next());
                if !open.asked {
                    open.unsaved.clear();
                }
            }
        } else if matches!(rest, "taken" | "behind" | "gone") && number != "begun" {
            // Another tab ticks: this press does not count, and the truth is read anew.
            open.steps.truncate(open.saved);
            (open.asked, open.lock, open.note) = (false, Lock::Elsewhere, Note::Taken);
            effects.push(Effect::Look(open.id.clone()));
        } else {
            open.refuse(rest);
        }
        let entry = open.entry();
        self.list(entry);
        effects
    }

    fn locked(&mut self, event: &Event) -> Vec<Effect> {
        let (what, why) = event.value.split_once(' ').unwrap_or((event.value, ""));
        let Some(open) = self.open.as_mut().filter(|open| open.id == event.name) else {
            return vec![];
        };
        match what {
            "held" => {
                open.lock = Lock::Held;
                open.note = Note::None;
            }
            "elsewhere" => open.lock = Lock::Elsewhere,
            "lost" => {
                open.lock = Lock::Elsewhere;
                return vec![Effect::Look(open.id.clone())];
            }
            _ => open.refuse(why),
        }
        vec![]
    }

    /// A button of the passes; none where it is not theirs.
    pub fn press(&mut self, event: &Event) -> Option<Vec<Effect>> {
        let name = event.name.strip_prefix("th-job-")?;
        Some(match name {
            "resume" => {
                event.value.clone_into(&mut self.wanted);
                vec![Effect::Look(event.value.to_owned())]
            }
            "leave" => self.leave(),
            "drop" => {
                let id = self.open.as_ref()?.id.clone();
                let effects = self.leave();
                let place = self.list.iter().position(|entry| entry.id == id)?;
                self.dropped = Some(self.list.remove(place));
                effects.into_iter().chain([Effect::Drop(id)]).collect()
            }
            "undrop" => {
                let entry = self.dropped.take()?;
                self.wanted.clone_from(&entry.id);
                vec![Effect::Undrop(entry.id)]
            }
            "take-over" => {
                let open = self.open.as_mut()?;
                open.lock = Lock::Asked;
                vec![Effect::Claim(open.id.clone(), true)]
            }
            "tick" => self.step(What::Tick, event.value.parse().ok()?, event.at_ms),
            "undo" => self.undo(event.at_ms),
            _ => return None,
        })
    }

    /// The last step does not count.
    pub(super) fn undo(&mut self, at_ms: u64) -> Vec<Effect> {
        self.step(What::Undo, 0, at_ms)
    }

    /// A pitch diameter was measured: the passes go on from what is left.
    pub(super) fn measured(&mut self, measured: Option<Length>, at_ms: u64) -> Vec<Effect> {
        let Some(open) = self.open.as_mut() else { return vec![] };
        let still = measured.and_then(|measured| open.job.still(measured).ok());
        let Some(still) = still else {
            open.note = Note::NoNumber;
            return vec![];
        };
        let um = float::nearest(still.to_middle.along_slide * 1000.0, 1);
        let um = um.and_then(|um| u32::try_from(um.num()).ok()).filter(|um| *um > 0);
        let Some(um) = um.filter(|_| still.to_limit.diameter > 0.0) else {
            open.note = Note::Past;
            return vec![];
        };
        self.step(What::Left, um, at_ms)
    }

    /// One more step, if it may count now.
    fn step(&mut self, what: What, value: u32, at_ms: u64) -> Vec<Effect> {
        let Some(open) = self.open.as_mut() else { return vec![] };
        if open.lock == Lock::Elsewhere {
            return vec![];
        }
        if open.pending() {
            open.note = Note::Saving;
            return vec![];
        }
        open.note = Note::None;
        let step = Step { what, value, at_ms };
        let mut steps = open.shown().to_vec();
        steps.push(step);
        if open.job.place(&steps).is_err() {
            return vec![];
        }
        open.steps = steps;
        let effects = open.next().into_iter().collect();
        if !open.unsaved.is_empty() {
            let entry = open.entry();
            self.list(entry);
        }
        effects
    }
}
