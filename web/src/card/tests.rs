//! Cards against a store that behaves as `web/page/keep.js` does, killed, full and shared.
use super::log::{Unread, from_lines};
use super::*;
use crate::fields::Fields;
use crate::seam::{Effect, Event};
use handturn::card::Kind;
use serde_json::{Value, json};
use std::collections::{BTreeMap, VecDeque};

/// What lies on the device: frozen record, owner, events of each card.
#[derive(Clone, Debug, Default)]
struct Store {
    runs: BTreeMap<String, (String, usize, Vec<String>)>,
    dropped: Option<(String, String)>,
    full: bool,
}

impl Store {
    fn lines(&self, id: &str) -> Option<String> {
        let (frozen, _, events) = self.runs.get(id)?;
        let rows = events.iter().enumerate().map(|(k, event)| format!("\n{k} {event}"));
        Some(format!("{}\n{frozen}{}", events.len(), rows.collect::<String>()))
    }

    fn put(&mut self, id: &str, owner: usize, lines: &str) {
        let mut rows = lines.split('\n');
        let count: usize = rows.next().unwrap().parse().unwrap();
        let frozen = rows.next().unwrap().to_owned();
        let events: Vec<_> = rows.map(|row| row.split_once(' ').unwrap().1.to_owned()).collect();
        assert_eq!(events.len(), count);
        self.runs.insert(id.to_owned(), (frozen, owner, events));
    }

    /// Why tab `me` may not write event `at`.
    fn unfit(&self, id: &str, me: usize, at: usize) -> &'static str {
        match self.runs.get(id) {
            None => "gone",
            Some((_, owner, _)) if *owner != me => "taken",
            Some((.., events)) if events.len() != at => "behind",
            _ if self.full => "full",
            _ => "",
        }
    }
}

/// A page open on the device.
struct Tab {
    me: usize,
    cards: Cards,
    fields: Fields,
    asked: VecDeque<Effect>,
    clock: u64,
    files: Vec<String>,
}

impl Tab {
    /// A page that has just been opened: it is told what is kept and what is stored.
    fn open(me: usize, store: &Store, kept: &str) -> Self {
        let mut tab = Self {
            me,
            cards: Cards::default(),
            fields: Fields::from_kept(kept),
            asked: VecDeque::new(),
            clock: 1_000_000 * me as u64,
            files: Vec::new(),
        };
        tab.hear("storage", "ready", "");
        for id in store.runs.keys() {
            let lines = store.lines(id).unwrap();
            tab.hear("stored", id, &lines);
        }
        tab
    }

    fn hear(&mut self, kind: &str, name: &str, value: &str) {
        self.clock += 10;
        let event = Event { kind, name, value, at_ms: self.clock };
        // As between two turns.
        let mut cards: Cards =
            crate::keep::json::read(&crate::keep::json::write(&mut self.cards)).unwrap();
        assert_eq!(cards, self.cards);
        let effects = cards.heard(&mut self.fields, &event);
        self.cards = cards;
        self.asked.extend(effects.unwrap_or_default());
    }

    fn change(&mut self, what: Change) {
        self.clock += 5_000;
        let effects = self.cards.change(&mut self.fields, what, self.clock);
        self.asked.extend(effects);
    }

    fn begin(&mut self, card: Card) {
        self.clock += 5_000;
        let effects = self.cards.begin(&mut self.fields, card, self.clock);
        self.asked.extend(effects);
    }

    /// Carries out what this tab has asked for; `held` says who holds each card.
    fn settle(&mut self, store: &mut Store, held: &mut BTreeMap<String, usize>) {
        while let Some(effect) = self.asked.pop_front() {
            self.carry_out(effect, store, held);
        }
    }

    fn answer(&mut self, id: &str, number: &str, why: &str) {
        if why.is_empty() {
            self.hear("kept", id, &format!("{number} 12:00:00"));
        } else {
            self.hear("unkept", id, &format!("{number} {why}"));
        }
    }

    fn carry_out(&mut self, effect: Effect, store: &mut Store, held: &mut BTreeMap<String, usize>) {
        let me = self.me;
        match effect {
            Effect::Begin(id, lines) => {
                let why = match () {
                    () if store.runs.contains_key(&id) => "ConstraintError",
                    () if store.full => "full",
                    () => "",
                };
                if why.is_empty() {
                    store.put(&id, me, &lines);
                }
                self.answer(&id, "begun", why);
            }
            Effect::Append(id, at, text) => {
                let why = store.unfit(&id, me, at);
                if why.is_empty() {
                    store.runs.get_mut(&id).unwrap().2.push(text);
                }
                self.answer(&id, &at.to_string(), why);
            }
            Effect::Renew(id, has, lines) => {
                let why = store.unfit(&id, me, has);
                if why.is_empty() {
                    store.put(&id, me, &lines);
                }
                self.answer(&id, "begun", why);
            }
            Effect::Drop(id) => {
                store.dropped = store.lines(&id).map(|lines| (id.clone(), lines));
                store.runs.remove(&id);
                self.answer(&id, "dropped", "");
            }
            Effect::Undrop(id) => {
                let (own, lines) = store.dropped.clone().unwrap();
                assert_eq!(own, id);
                store.put(&id, me, &lines);
                self.answer(&id, "begun", "");
                self.hear("stored", &id, &lines);
            }
            Effect::Look(id) => match store.lines(&id) {
                Some(lines) => self.hear("stored", &id, &lines),
                None => self.hear("gone", &id, ""),
            },
            Effect::Claim(id, steal) => {
                let free = held.get(&id).is_none_or(|own| *own == me);
                if !free && !steal {
                    return self.hear("lock", &id, "elsewhere");
                }
                let Some((_, owner, _)) = store.runs.get_mut(&id) else {
                    return self.hear("lock", &id, "failed gone");
                };
                *owner = me;
                held.insert(id.clone(), me);
                let lines = store.lines(&id).unwrap();
                self.hear("stored", &id, &lines);
                self.hear("lock", &id, "held");
            }
            Effect::Release(id) => {
                if held.get(&id) == Some(&me) {
                    held.remove(&id);
                }
            }
            Effect::File(_, text) => self.files.push(text),
            Effect::Lasting | Effect::Focus(_) => {}
            other => panic!("{other:?}"),
        }
    }

    fn card(&self) -> Card {
        self.cards.open().unwrap().card()
    }
}

fn item(id: u32, name: &str, drawing: &str, measured: &str) -> Item {
    let text = str::to_owned;
    let (name, drawing, measured) = (text(name), text(drawing), text(measured));
    Item { id, name, kind: Kind::Length, drawing, measured }
}

/// The wheel of 127 teeth: two values, a division with its grid, a plain step.
fn wheel() -> Card {
    let text = str::to_owned;
    Card {
        job: text("Astronomical clock"),
        metal: text("Bronze, 4 mm"),
        notes: text("Cut dry.\nCount the teeth “twice”."),
        values: vec![item(1, "bore", "6", ""), item(2, "Plug", "= bore - 0.1", "")],
        steps: vec![
            Step {
                id: 3,
                text: text("13 holes on the 39"),
                answer: Some(Answer {
                    room: text("divide"),
                    key: String::new(),
                    fields: vec![(text("kind"), text("parts")), (text("parts"), text("127"))],
                    lines: vec![text("40 : 1 head, plate 3"), text("Gears 56 : 24")],
                    cautions: vec![text(
                        "Before the first cut: pin out, plate stop out, clamp off.",
                    )],
                }),
                parts: 127,
                ..Step::default()
            },
            Step { id: 4, text: text("Deburr, count the teeth"), ..Step::default() },
        ],
        ..Card::new("Wheel, 127 teeth")
    }
}

/// Every kind of change once, each of which can be made after those before it.
fn changes() -> Vec<Change> {
    let text = str::to_owned;
    vec![
        Change::Title(text("Wheel 127")),
        Change::Job(text("Clock")),
        Change::Metal(text("Brass")),
        Change::Notes(text("Line\nline")),
        Change::Value(item(1, "bore", "6", "6.02")),
        Change::Value(item(5, "rim", "= Plug * 2", "")),
        Change::MoveValue((5, 0)),
        Change::DropValue(5),
        Change::Step(Box::new(Step { id: 6, text: text("Oil it"), parts: 3, ..Step::default() })),
        Change::Words((6, text("Oil it well"))),
        Change::MoveStep((6, 0)),
        Change::Tick((4, true)),
        Change::Cut((3, (1, (40, true)))),
        Change::Cut((3, (7, (7, false)))),
        Change::Tick((4, false)),
        Change::DropStep(6),
    ]
}

type Held = BTreeMap<String, usize>;

/// A device with the wheel's card on it, open in tab 1.
fn device() -> (Store, Held, Tab) {
    let (mut store, mut held) = (Store::default(), Held::new());
    let mut tab = Tab::open(1, &store, "");
    tab.begin(wheel());
    tab.settle(&mut store, &mut held);
    assert_eq!(store.runs.len(), 1);
    assert!(!tab.cards.open().unwrap().saving());
    (store, held, tab)
}

#[test]
fn every_change_is_stored_taken_back_and_done_again_and_survives_a_restart() {
    let (mut store, mut held, mut tab) = device();
    let mut states = vec![tab.card()];
    for change in changes() {
        tab.change(change.clone());
        tab.settle(&mut store, &mut held);
        assert_ne!(Some(&tab.card()), states.last(), "{change:?} changes something");
        states.push(tab.card());
    }
    let again = |tab: &mut Tab, store: &mut Store, held: &mut Held| {
        // Killed: nothing is released, nothing is said.
        held.clear();
        let kept = tab.fields.kept();
        *tab = Tab::open(tab.me + 1, store, &kept);
        tab.settle(store, held);
    };
    let count = states.len() - 1;
    for state in states.iter().rev().skip(1) {
        tab.change(Change::Undo);
        tab.settle(&mut store, &mut held);
        assert_eq!(tab.card(), *state);
        again(&mut tab, &mut store, &mut held);
        assert_eq!(tab.card(), *state, "after a restart");
    }
    assert_eq!(tab.cards.open().unwrap().can(), (false, true));
    tab.change(Change::Undo);
    assert_eq!(tab.cards.open().unwrap().note(), Note::NotNow);
    for state in states.iter().skip(1) {
        tab.change(Change::Redo);
        tab.settle(&mut store, &mut held);
        again(&mut tab, &mut store, &mut held);
        assert_eq!(tab.card(), *state);
    }
    assert_eq!(count, changes().len());
    let tick = Change::Tick((4, true));
    tab.change(tick);
    assert_eq!(tab.card().steps[1].done_ms, Some(tab.clock), "with its time");
}

#[test]
fn typing_in_one_field_is_one_change_however_fast_the_store_is() {
    for each in [1, 3, 100] {
        let (mut store, mut held, mut tab) = device();
        let word = "Wheel of 127";
        for (k, end) in (1..=word.len()).enumerate() {
            tab.clock -= 4_900;
            tab.change(Change::Title(word[..end].to_owned()));
            if k % each == 0 {
                // Only one answer of the store comes between two keys.
                if let Some(effect) = tab.asked.pop_front() {
                    tab.carry_out(effect, &mut store, &mut held);
                }
            }
        }
        assert_eq!(tab.card().title, word);
        tab.settle(&mut store, &mut held);
        assert!(!tab.cards.open().unwrap().saving());
        let (log, _) = from_lines(&store.lines(tab.cards.open().unwrap().id()).unwrap()).unwrap();
        assert_eq!(log.card(), tab.card());
        tab.change(Change::Undo);
        tab.settle(&mut store, &mut held);
        assert_eq!(tab.card(), wheel(), "{each}");
        let (log, _) = from_lines(&store.lines(tab.cards.open().unwrap().id()).unwrap()).unwrap();
        assert_eq!(log.card(), wheel(), "{each}");
    }
}

#[test]
fn a_long_log_is_made_short_and_nothing_of_the_card_is_lost() {
    let (mut store, mut held, mut tab) = device();
    let id = tab.cards.open().unwrap().id().to_owned();
    let mut longest = 0;
    for k in 0..2_000_u32 {
        let part = k % 127 + 1;
        let cut = k / 127 % 2 == 0;
        tab.change(Change::Cut((3, (part, (part, cut)))));
        if k % 7 == 0 {
            tab.change(Change::Undo);
        }
        if k % 14 == 0 {
            tab.change(Change::Redo);
        }
        // The store answers only now and then.
        if k % 5 == 0 {
            tab.settle(&mut store, &mut held);
            longest = longest.max(store.runs[&id].2.len());
        }
    }
    tab.settle(&mut store, &mut held);
    assert!(longest < 400, "{longest}");
    let (log, _) = from_lines(&store.lines(&id).unwrap()).unwrap();
    assert_eq!(log.card(), tab.card());
    assert!(log.stand.len() >= 60 && tab.cards.open().unwrap().can().0, "the last can be undone");
}

#[test]
fn a_killed_page_keeps_all_that_was_confirmed() {
    let (mut store, mut held, mut tab) = device();
    let mut confirmed = tab.card();
    for (k, change) in changes().into_iter().enumerate() {
        tab.change(change);
        if k % 3 == 2 {
            // Killed before the store had it.
            held.clear();
            let kept = tab.fields.kept();
            tab = Tab::open(tab.me + 1, &store, &kept);
            tab.settle(&mut store, &mut held);
            assert_eq!(tab.card(), confirmed);
        } else {
            // A change of what was lost with the page is refused, any other is being saved.
            let open = tab.cards.open().unwrap();
            assert!(open.saving() != (open.note() == Note::NotNow));
            tab.settle(&mut store, &mut held);
            assert!(!tab.cards.open().unwrap().saving());
            confirmed = tab.card();
        }
    }
}

#[test]
fn a_full_store_is_said_at_once_and_all_of_it_is_kept_when_there_is_room() {
    let (mut store, mut held, mut tab) = device();
    store.full = true;
    let all = changes();
    tab.change(all[0].clone());
    tab.settle(&mut store, &mut held);
    assert_eq!(tab.cards.open().unwrap().unsaved(), "full");
    for change in &all[1..] {
        tab.change(change.clone());
        assert!(tab.asked.is_empty());
    }
    let card = tab.card();
    let file = tab.cards.file();
    tab.asked.extend(file);
    tab.settle(&mut store, &mut held);
    assert_eq!(share::from_file(&tab.files[0]), Ok(card.clone()));
    // Another card comes on screen; this one stays beside it until it is stored.
    let id = tab.cards.open().unwrap().id().to_owned();
    tab.begin(Card::new("Other"));
    tab.settle(&mut store, &mut held);
    assert_eq!(tab.cards.open().unwrap().unsaved(), "full");
    let back = tab.cards.resume(&mut tab.fields, &id);
    tab.asked.extend(back);
    assert_eq!(tab.card(), card);
    let retried = tab.cards.retry();
    tab.asked.extend(retried);
    tab.settle(&mut store, &mut held);
    assert_eq!(tab.cards.open().unwrap().unsaved(), "full", "still");
    store.full = false;
    let retried = tab.cards.retry();
    tab.asked.extend(retried);
    tab.settle(&mut store, &mut held);
    let open = tab.cards.open().unwrap();
    assert_eq!((open.unsaved(), open.saving(), open.lock()), ("", false, Lock::Held));
    assert_eq!(from_lines(&store.lines(&id).unwrap()).unwrap().0.card(), card);
    let other = tab.cards.list().iter().find(|entry| entry.title == "Other").unwrap().id.clone();
    let back = tab.cards.resume(&mut tab.fields, &other);
    tab.asked.extend(back);
    let retried = tab.cards.retry();
    tab.asked.extend(retried);
    tab.settle(&mut store, &mut held);
    assert_eq!(store.runs.len(), 2, "a card begun while it was full");
}

#[test]
fn without_a_store_cards_work_and_say_so() {
    let mut tab = Tab::open(1, &Store::default(), "");
    tab.hear("storage", "refused", "closed");
    tab.begin(wheel());
    assert!(
        !tab.asked.iter().any(|effect| matches!(effect, Effect::Begin(..) | Effect::Claim(..)))
    );
    assert_eq!(tab.cards.open().unwrap().unsaved(), "closed");
    tab.change(Change::Tick((4, true)));
    assert_eq!(tab.card().done(), (1, 2));
}

#[test]
fn of_two_tabs_one_writes_and_nothing_is_lost() {
    let (mut store, mut held, mut one) = device();
    let kept = one.fields.kept();
    let mut two = Tab::open(2, &store, &kept);
    two.settle(&mut store, &mut held);
    assert_eq!(two.cards.open().unwrap().lock(), Lock::Elsewhere);
    two.change(Change::Tick((4, true)));
    assert_eq!(two.cards.open().unwrap().note(), Note::Taken);
    assert_eq!((two.card(), two.asked.len()), (wheel(), 0));
    one.change(Change::Tick((4, true)));
    one.settle(&mut store, &mut held);
    // What one stored is told to the other.
    let id = one.cards.open().unwrap().id().to_owned();
    two.hear("stored", &id, &store.lines(&id).unwrap());
    assert_eq!(two.card(), one.card());
    // The second takes over; the first notices at its next press, before it is told.
    let taken = two.cards.take_over();
    two.asked.extend(taken);
    two.settle(&mut store, &mut held);
    assert_eq!(two.cards.open().unwrap().lock(), Lock::Held);
    two.change(Change::Metal("Steel".to_owned()));
    two.settle(&mut store, &mut held);
    one.change(Change::Metal("Tin".to_owned()));
    one.change(Change::Job("Another".to_owned()));
    one.settle(&mut store, &mut held);
    let open = one.cards.open().unwrap();
    assert_eq!((open.lock(), open.note()), (Lock::Elsewhere, Note::Taken));
    assert_eq!(one.card(), two.card());
    assert_eq!(one.card().metal, "Steel");
}

#[test]
fn a_lock_lost_while_an_entry_is_on_its_way_leaves_both_tabs_at_the_truth() {
    for first in ["lost", "kept"] {
        let (mut store, mut held, mut one) = device();
        let kept = one.fields.kept();
        one.change(Change::Metal("Tin".to_owned()));
        one.change(Change::Job("Another".to_owned()));
        let append = one.asked.pop_front().unwrap();
        let mut two = Tab::open(2, &store, &kept);
        let id = one.cards.open().unwrap().id().to_owned();
        if first == "lost" {
            one.hear("lock", &id, "lost");
            one.carry_out(append, &mut store, &mut held);
        } else {
            one.carry_out(append, &mut store, &mut held);
            one.hear("lock", &id, "lost");
        }
        held.clear();
        two.settle(&mut store, &mut held);
        one.settle(&mut store, &mut held);
        let truth = from_lines(&store.lines(&id).unwrap()).unwrap().0.card();
        assert_eq!(truth.metal, "Tin", "{first}: it was on its way before the lock went");
        assert_eq!((one.card(), two.card()), (truth.clone(), truth), "{first}");
        assert_eq!(
            one.cards.open().unwrap().note(),
            Note::Taken,
            "{first}: the job was not counted"
        );
        assert!(!one.cards.open().unwrap().saving());
    }
}

#[test]
fn a_card_taken_out_comes_back_and_one_taken_out_elsewhere_is_not_lost() {
    let (mut store, mut held, mut one) = device();
    let id = one.cards.open().unwrap().id().to_owned();
    let kept = one.fields.kept();
    let mut two = Tab::open(2, &store, &kept);
    two.settle(&mut store, &mut held);
    let gone = one.cards.drop(&mut one.fields, &id);
    one.asked.extend(gone);
    one.settle(&mut store, &mut held);
    assert!(one.cards.open().is_none() && one.cards.list().is_empty() && store.runs.is_empty());
    two.hear("gone", &id, "");
    let open = two.cards.open().unwrap();
    assert_eq!((open.note(), open.unsaved(), two.card()), (Note::Gone, "gone", wheel()));
    let back = one.cards.undrop();
    one.asked.extend(back);
    one.settle(&mut store, &mut held);
    assert_eq!(one.card(), wheel());
    assert!(one.cards.dropped().is_none());
    // Or the other tab puts it back.
    let gone = one.cards.drop(&mut one.fields, &id);
    one.asked.extend(gone);
    one.settle(&mut store, &mut held);
    let retried = two.cards.retry();
    two.asked.extend(retried);
    two.settle(&mut store, &mut held);
    assert_eq!(from_lines(&store.lines(&id).unwrap()).unwrap().0.card(), wheel());
    assert_eq!(two.cards.open().unwrap().unsaved(), "");
}

/// The lines of the wheel's card after every change.
fn stored() -> String {
    let (mut store, mut held, mut tab) = device();
    for change in changes() {
        tab.change(change);
    }
    tab.settle(&mut store, &mut held);
    store.lines(tab.cards.open().unwrap().id()).unwrap()
}

#[test]
fn a_damaged_card_is_left_out_and_said_and_the_others_stay() {
    let good = stored();
    let (mut store, mut held) = (Store::default(), Held::new());
    let event = |text: &str| text.replacen("\"move-step\":[6,0]", "\"move-step\":[9,0]", 1);
    let rows = [
        ("card-1", good.clone(), Fault::None),
        ("card-2", event(&good), Fault::Partly),
        ("card-3", good.replacen("\"title\":", "\"titel\":", 1), Fault::Damaged),
        ("card-4", String::new(), Fault::Damaged),
        ("card-5", good.replacen("16\n", "17\n", 1), Fault::Partly),
        ("card-6", good.replacen("\"version\":2", "\"version\":3", 1), Fault::Newer),
        ("card-7", "0\n{\"version\":9,\"of\":\"a later form\"}".to_owned(), Fault::Newer),
    ];
    let mut tab = Tab::open(1, &store, "");
    for (id, lines, fault) in &rows {
        tab.hear("stored", id, lines);
        let entry = tab.cards.list().last().unwrap();
        assert_eq!((&*entry.id, entry.fault), (*id, *fault));
        assert!(tab.asked.is_empty(), "{id}: the store is left as it is");
        if *fault != Fault::None {
            assert!(crate::words::card::store::fault(*fault).is_some());
        }
    }
    // One that can't be used is not opened; one that a newer page wrote is not even taken out.
    for (id, lines, fault) in &rows {
        let looked = tab.cards.resume(&mut tab.fields, id);
        assert_eq!(looked, [Effect::Look((*id).to_owned())]);
        tab.hear("stored", id, lines);
        assert_eq!(tab.cards.open().is_some(), *fault == Fault::None, "{id}");
        let left = tab.cards.leave(&mut tab.fields);
        drop(left);
        tab.asked.clear();
    }
    let newer = tab.cards.drop(&mut tab.fields, "card-6");
    assert_eq!(newer, []);
    assert_eq!(tab.cards.list().len(), rows.len());
    // What came before the damage can be read, as a card of its own.
    let (id, lines, _) = &rows[1];
    tab.asked.extend(tab.cards.rescue(id));
    let _ = tab.asked.pop_front();
    tab.hear("stored", id, lines);
    tab.settle(&mut store, &mut held);
    assert_eq!(tab.card().title, "Wheel 127");
    assert_eq!(tab.card().steps.last().unwrap().text, "Oil it well");
    assert_ne!(tab.cards.open().unwrap().id(), *id);
}

#[test]
fn the_form_without_metal_is_read_and_written_anew_when_it_is_opened() {
    let old = {
        let mut base: Value =
            serde_json::from_str(&crate::keep::json::write(&mut wheel())).unwrap();
        base["version"] = json!(1);
        assert!(base.as_object_mut().unwrap().remove("metal").is_some());
        base.to_string()
    };
    let mut store = Store::default();
    let tick = "{\"what\":{\"tick\":[4,true]},\"at_ms\":5,\"joins\":false}".to_owned();
    store.runs.insert("card-9".to_owned(), (old.clone(), 0, vec![tick]));
    let mut held = Held::new();
    let mut tab = Tab::open(1, &store, "");
    assert_eq!(tab.cards.list()[0].title, "Wheel, 127 teeth");
    assert_eq!(store.runs["card-9"].0, old, "looking at it changes nothing");
    tab.asked.extend(tab.cards.resume(&mut tab.fields, "card-9"));
    tab.settle(&mut store, &mut held);
    let mut wanted = Card { metal: String::new(), ..wheel() };
    wanted.steps[1].done_ms = Some(5);
    assert_eq!(tab.card(), wanted);
    assert!(store.runs["card-9"].0.starts_with("{\"version\":2,"));
    assert_eq!(from_lines(&store.lines("card-9").unwrap()).unwrap().0.card(), wanted);
    tab.change(Change::Undo);
    tab.settle(&mut store, &mut held);
    assert_eq!(tab.card().done(), (0, 2), "and its changes can still be taken back");
    // A file of that form is read too.
    let file = format!("{{\"kind\":\"handturn-card\",\"card\":{old}}}");
    assert_eq!(share::from_file(&file), Ok(Card { metal: String::new(), ..wheel() }));
    // The earlier form knows no metal: one without it is damaged in today's form.
    let file = file.replacen("\"version\":1", "\"version\":2", 1);
    assert_eq!(share::from_file(&file), Err(Refused::In(Part::Head)));
    let file = file.replacen("\"version\":2", "\"version\":3", 1);
    assert_eq!(share::from_file(&file), Err(Refused::Newer));
}

#[test]
fn what_a_stranger_wrote_into_the_store_is_refused() {
    let good = stored();
    assert!(from_lines(&good).is_ok());
    for end in (0..good.len()).filter(|end| good.is_char_boundary(*end)) {
        assert!(from_lines(&good[..end]).is_err(), "{end}");
    }
    let refused =
        |text: &str, wanted| assert_eq!(from_lines(text).err(), Some(wanted), "{text:.80}");
    refused("", Unread::NotACard);
    refused("0\n{}", Unread::NotACard);
    refused("0\n{\"version\":0}", Unread::NotACard);
    refused("0\n{\"version\":\"2\"}", Unread::NotACard);
    refused(&good.replacen("16\n", "15\n", 1), Unread::Count);
    refused(&good.replacen("\n1 ", "\n2 ", 1), Unread::Change(1));
    refused(&good.replacen("[3,[1,[40,true]]]", "[3,[0,[40,true]]]", 1), Unread::Change(12));
    refused(&good.replacen("[3,[1,[40,true]]]", "[3,[1,[128,true]]]", 1), Unread::Change(12));
    refused(&good.replacen("\"cut\":[]", "\"cut\":[[2,1]]", 1), Unread::NotACard);
    refused(&good.replacen("\"parts\":127", "\"parts\":10001", 1), Unread::NotACard);
    refused(&good.replacen("\"id\":2", "\"id\":1", 1), Unread::NotACard);
    let long = |letters: usize| format!("\"title\":\"{}\"", "x".repeat(letters));
    refused(&good.replacen("\"title\":\"Wheel, 127 teeth\"", &long(401), 1), Unread::NotACard);
    assert!(from_lines(&good.replacen("\"title\":\"Wheel, 127 teeth\"", &long(400), 1)).is_ok());
    let undo = "{\"what\":\"undo\",\"at_ms\":1,\"joins\":false}";
    let base = good.split('\n').nth(1).unwrap();
    refused(&format!("1\n{base}\n0 {undo}"), Unread::Change(0));
    let tick = "{\"what\":{\"tick\":[4,true]},\"at_ms\":1,\"joins\":false}";
    let many: String = (0..2_001).map(|k| format!("\n{k} {tick}")).collect();
    refused(&format!("2001\n{base}{many}"), Unread::Change(2_000));
}

#[test]
fn a_file_comes_back_whole_or_is_refused_with_its_place() {
    let mut card = wheel();
    card.steps[0].cut.mark(1, 40, true);
    card.steps[1].done_ms = Some(1_700_000_000_000);
    let text = share::file(&card);
    assert!(text.starts_with("{\"kind\":\"handturn-card\",\"card\":{\"version\":2,\"title\":"));
    assert_eq!(share::from_file(&text), Ok(card.clone()));
    for end in (0..text.len()).filter(|end| text.is_char_boundary(*end)) {
        assert!(share::from_file(&text[..end]).is_err(), "{end}");
    }
    let half = text.len() / 2;
    assert_eq!(
        share::from_file(&text[..half]),
        Err(Refused::Damaged(text[..half].chars().count() + 1))
    );
    let changed = |change: &dyn Fn(&mut Value)| {
        let mut value: Value = serde_json::from_str(&text).unwrap();
        change(&mut value);
        share::from_file(&value.to_string()).unwrap_err()
    };
    for (change, wanted) in [
        (&(|v: &mut Value| v["kind"] = json!("else")) as &dyn Fn(&mut Value), Refused::Foreign),
        (&|v| v["card"]["version"] = json!(3), Refused::Newer),
        (&|v| v["card"]["notes"] = json!(7), Refused::In(Part::Head)),
        (&|v| v["card"] = json!(null), Refused::In(Part::Head)),
        (&|v| v["card"]["values"][1]["kind"] = json!("weight"), Refused::In(Part::Value(2))),
        (&|v| v["card"]["steps"][0]["answer"]["lines"][1] = json!(1), Refused::In(Part::Step(1))),
        (&|v| v["card"]["steps"][1]["cut"] = json!([[1, 2]]), Refused::In(Part::Step(2))),
        (&|v| v["card"]["steps"][1]["id"] = json!(3), Refused::In(Part::Step(2))),
        (
            &|v| v["card"]["steps"][0]["text"] = json!("x".repeat(401)),
            Refused::Long((Part::Step(1), 400)),
        ),
        (&|v| v["card"]["notes"] = json!("ü".repeat(4001)), Refused::Long((Part::Head, 4000))),
        (
            &|v| v["card"]["values"] = json!(vec![v["card"]["values"][0].clone(); 33]),
            Refused::Many((Part::Head, 32)),
        ),
        (
            &|v| v["card"]["steps"][0]["answer"]["lines"] = json!(vec!["x"; 121]),
            Refused::Many((Part::Step(1), 120)),
        ),
    ] {
        let refused = changed(change);
        assert_eq!(refused, wanted);
        let said = crate::words::card::store::refused("a.json", &refused);
        assert!(said.starts_with("a.json was not opened. "), "{said}");
    }
    assert_eq!(share::from_file(""), Err(Refused::Foreign));
    let run = crate::keep::file(crate::keep::tests::run(64, 3));
    assert_eq!(share::from_file(&run), Err(Refused::ARun));
    let heads = "{\"kind\":\"handturn-heads\",\"version\":1,\"heads\":[]}";
    assert_eq!(share::from_file(heads), Err(Refused::Heads));
}

#[test]
fn a_link_holds_a_card_and_no_changed_letter_goes_unseen() {
    let card = wheel();
    let link = share::link(&card).unwrap();
    assert!(link.len() < 700, "{}", link.len());
    assert!(link.bytes().all(|b| b.is_ascii_alphanumeric() || b"=-_".contains(&b)));
    assert_eq!(share::from_link(&link), Some(Ok(card)));
    assert_eq!(share::from_link("room=card"), None);
    assert_eq!(share::from_link("card=2xyz"), Some(Err(Refused::Newer)));
    for end in 5..link.len() {
        assert_eq!(share::from_link(&link[..end]), Some(Err(Refused::Cut)), "{end}");
    }
    for at in 6..link.len() {
        for letter in ["A", "b", "7", "_", "!", "%"] {
            let mut other = link.clone();
            other.replace_range(at..=at, letter);
            if other != link {
                assert_eq!(share::from_link(&other), Some(Err(Refused::Cut)), "{at} {letter}");
            }
        }
    }
    let mut long = wheel();
    // Letters that repeat nothing.
    let digits = |mut seed: u32| {
        std::iter::repeat_with(move || {
            seed = seed.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
            char::from((seed >> 24) as u8 % 89 + 33)
        })
        .take(3_900)
    };
    long.notes = digits(3).collect();
    long.steps[0].text = digits(5).take(390).collect();
    long.steps[0].answer.as_mut().unwrap().lines = (0..3).map(|k| digits(k).collect()).collect();
    let letters = share::link(&long).unwrap_err();
    assert!(letters > LONGEST_LINK);
    assert!(crate::words::card::store::too_long(letters).contains("8,000"));
}

#[test]
fn a_card_out_of_a_link_waits_to_be_kept() {
    let (mut store, mut held, mut tab) = device();
    let card = Card::new("Rim, 365 marks");
    tab.hear("open", &share::link(&card).unwrap(), "site");
    assert_eq!(tab.fields.get("room"), "card");
    assert_eq!(tab.cards.offered(), Some(&card));
    assert_eq!(store.runs.len(), 1, "nothing is stored yet");
    let kept = tab.cards.keep_offered(&mut tab.fields, 77);
    tab.asked.extend(kept);
    tab.settle(&mut store, &mut held);
    assert_eq!((tab.card(), store.runs.len()), (card, 2));
    assert!(tab.cards.offered().is_none());
    tab.hear("open", "card=1AAAA", "site");
    assert_eq!(tab.cards.refused(), Some(("", &Refused::Cut)));
}

#[test]
fn fields_follow_the_values_in_force() {
    let (mut store, mut held, mut tab) = device();
    assert_eq!((tab.fields.get("value-bore"), tab.fields.get("value-plug")), ("6", "5.9"));
    tab.change(Change::Value(item(1, "bore", "6", "6.02")));
    assert_eq!((tab.fields.get("value-bore"), tab.fields.get("value-plug")), ("6.02", "5.92"));
    tab.change(Change::Value(item(1, "bore", "= plug", "")));
    assert!(!tab.fields.has("value-bore") && !tab.fields.has("value-plug"), "a cycle has no value");
    tab.change(Change::Undo);
    let angle = Item { kind: Kind::Angle, ..item(7, "lean", "= 0°20' / 3", "") };
    tab.change(Change::Value(angle));
    assert_eq!(tab.fields.get("value-lean"), "1/9");
    tab.settle(&mut store, &mut held);
    drop(tab.cards.leave(&mut tab.fields));
    assert!(!tab.fields.iter().any(|(name, _)| name.starts_with("value-")));
}

#[test]
fn bounds_hold_and_are_said() {
    let (_, _, mut tab) = device();
    let before = tab.card();
    for (change, wanted) in [
        (Change::Title("x".repeat(401)), Note::Long(400)),
        (Change::Notes("x".repeat(4_001)), Note::Long(4_000)),
        (Change::Tick((99, true)), Note::NotNow),
        (Change::DropValue(99), Note::NotNow),
        (Change::Cut((4, (1, (1, true)))), Note::NotNow),
    ] {
        tab.change(change.clone());
        assert_eq!((tab.cards.open().unwrap().note(), tab.card()), (wanted, before.clone()));
        assert!(crate::words::card::store::note(wanted).is_some());
    }
    for id in 100..130 {
        tab.change(Change::Value(item(id, "v", "1", "")));
    }
    tab.change(Change::Value(item(130, "v", "1", "")));
    assert_eq!(tab.cards.open().unwrap().note(), Note::Many(32));
}

#[test]
fn marks_are_kept_as_ranges() {
    // Against a plain set, from a fixed seed.
    let (mut cut, mut plain) = (Cut::default(), std::collections::BTreeSet::new());
    let mut seed = 7_u32;
    let mut next = |below: u32| {
        seed = seed.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
        (seed >> 8) % below
    };
    for _ in 0..3_000 {
        let from = next(60) + 1;
        let to = (from + next(9)).min(60);
        let on = next(2) == 0;
        cut.mark(from, to, on);
        for n in from..=to {
            if on {
                plain.insert(n)
            } else {
                plain.remove(&n)
            };
        }
        assert_eq!(cut.count() as usize, plain.len());
        assert!((1..=60).all(|n| cut.has(n) == plain.contains(&n)));
        assert!(cut.0.windows(2).all(|pair| pair[0].1 + 1 < pair[1].0), "{cut:?}");
    }
}
