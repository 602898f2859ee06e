//! What the store, a file and the address say of cards.
use super::cards::{Cards, Fault, OPEN, PREFIX, entry, listed};
use super::log::{Unread, from_lines, read_lines};
use super::model::Card;
use super::open::{Asked, Lock, Note, Open};
use super::share;
use crate::fields::Fields;
use crate::seam::{Effect, Event};

impl Cards {
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
        let mut own = None;
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
                    own = open.lost();
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
        self.spare(event.name, own);
        let done: Option<Effect> = done.flatten();
        let mut effects: Vec<_> = done.into_iter().collect();
        if let Some(entry) = self.with(event.name, |open| listed(open)) {
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
        let mut own = None;
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
                own = open.lost();
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
        self.spare(event.name, own);
        done.flatten().into_iter().collect()
    }
}
