//! A device with tabs on it, and a store that behaves as `web/page/keep.js` does.
use crate::card::*;
use crate::fields::Fields;
use crate::seam::{Effect, Event};
use handturn::card::Kind;
use std::collections::{BTreeMap, VecDeque};

/// What lies on the device: frozen record, owner, events of each card.
#[derive(Clone, Debug, Default)]
pub(super) struct Store {
    pub(super) runs: BTreeMap<String, (String, usize, Vec<String>)>,
    pub(super) dropped: Option<(String, String)>,
    pub(super) full: bool,
}

impl Store {
    pub(super) fn lines(&self, id: &str) -> Option<String> {
        let (frozen, _, events) = self.runs.get(id)?;
        let rows = events.iter().enumerate().map(|(k, event)| format!("\n{k} {event}"));
        Some(format!("{}\n{frozen}{}", events.len(), rows.collect::<String>()))
    }

    pub(super) fn put(&mut self, id: &str, owner: usize, lines: &str) {
        let mut rows = lines.split('\n');
        let count: usize = rows.next().unwrap().parse().unwrap();
        let frozen = rows.next().unwrap().to_owned();
        let events: Vec<_> = rows.map(|row| row.split_once(' ').unwrap().1.to_owned()).collect();
        assert_eq!(events.len(), count);
        self.runs.insert(id.to_owned(), (frozen, owner, events));
    }

    /// Why tab `me` may not write event `at`.
    pub(super) fn unfit(&self, id: &str, me: usize, at: usize) -> &'static str {
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
pub(super) struct Tab {
    pub(super) me: usize,
    pub(super) cards: Cards,
    pub(super) fields: Fields,
    pub(super) asked: VecDeque<Effect>,
    pub(super) clock: u64,
    pub(super) files: Vec<String>,
}

impl Tab {
    /// A page that has just been opened: it is told what is kept and what is stored.
    pub(super) fn open(me: usize, store: &Store, kept: &str) -> Self {
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

    pub(super) fn hear(&mut self, kind: &str, name: &str, value: &str) {
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

    pub(super) fn change(&mut self, what: Change) {
        self.clock += 5_000;
        let effects = self.cards.change(&mut self.fields, what, self.clock);
        self.asked.extend(effects);
    }

    pub(super) fn begin(&mut self, card: Card) {
        self.clock += 5_000;
        let effects = self.cards.begin(&mut self.fields, card, self.clock);
        self.asked.extend(effects);
    }

    /// Carries out what this tab has asked for; `held` says who holds each card.
    pub(super) fn settle(&mut self, store: &mut Store, held: &mut BTreeMap<String, usize>) {
        while let Some(effect) = self.asked.pop_front() {
            self.carry_out(effect, store, held);
        }
    }

    pub(super) fn answer(&mut self, id: &str, number: &str, why: &str) {
        if why.is_empty() {
            self.hear("kept", id, &format!("{number} 12:00:00"));
        } else {
            self.hear("unkept", id, &format!("{number} {why}"));
        }
    }

    pub(super) fn carry_out(
        &mut self,
        effect: Effect,
        store: &mut Store,
        held: &mut BTreeMap<String, usize>,
    ) {
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

    pub(super) fn card(&self) -> Card {
        self.cards.open().unwrap().card()
    }
}

pub(super) fn item(id: u32, name: &str, drawing: &str, measured: &str) -> Item {
    let text = str::to_owned;
    let (name, drawing, measured) = (text(name), text(drawing), text(measured));
    Item { id, name, kind: Kind::Length, drawing, measured }
}

/// The wheel of 127 teeth: two values, a division with its grid, a plain step.
pub(super) fn wheel() -> Card {
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
pub(super) fn changes() -> Vec<Change> {
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

pub(super) type Held = BTreeMap<String, usize>;

/// A device with the wheel's card on it, open in tab 1.
pub(super) fn device() -> (Store, Held, Tab) {
    let (mut store, mut held) = (Store::default(), Held::new());
    let mut tab = Tab::open(1, &store, "");
    tab.begin(wheel());
    tab.settle(&mut store, &mut held);
    assert_eq!(store.runs.len(), 1);
    assert!(!tab.cards.open().unwrap().saving());
    (store, held, tab)
}
