//! The page as a whole: what it remembers, and one event's way through it.
use crate::card::Cards;
use crate::fields::Fields;
use crate::keep::json;
use crate::owned;
use crate::room::notice::Notice;
use crate::room::{bench, card, divide, frame, gear, run, shop, thread};
use crate::seam::{self, Effect, Event};
use handturn::run::Frozen;

/// All that the page remembers between two events.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct State {
    /// All that was typed and chosen.
    pub fields: Fields,
    /// Runs: those stored, the one on screen.
    pub desk: run::Desk,
    /// Passes of threads under way.
    pub jobs: thread::Jobs,
    /// Cards: those stored, the one that is open.
    pub cards: Cards,
    /// What the answers on the open card come to today.
    pub today: card::Today,
    /// What every room shows of the cards.
    pub brief: card::Brief,
    /// Cards and today's answers as they were handed in, while nothing has to be known of
    /// them but what stands in `brief`: a full card is a long text, read only where it counts.
    pub unopened: Option<(String, String)>,
    /// Minutes that the clock here is before that of Greenwich.
    pub zone: i64,
    /// The open card is being printed.
    pub prints: bool,
    /// There is room for drawings with all that stands round what is used.
    pub wide: bool,
    /// A newer version of the site lies ready.
    pub newer: bool,
    /// What is to be said of the store, whatever the room.
    pub notice: Notice,
}

/// One event: the state's text and the event's text in, the outcome's text out.
pub fn turn(state: &str, event: &str) -> String {
    let mut state = State::read(state);
    let before = state.fields.clone();
    let event = Event::read(event);
    if of_cards(&state, &event) {
        state.open_cards();
    }
    let happened = happen(&mut state, &event);
    if frame::room(&state.fields) == "card" {
        state.open_cards();
        state.today.refresh(&state.cards, &state.fields, &state.desk);
    }
    if state.unopened.is_none() {
        state.brief = card::Brief::of(&state.cards);
    }
    // What is asked of the browser comes last: a sheet must stand before it opens.
    let text = state.write();
    let mut effects = vec![Effect::State(text), Effect::Put("page", screen(&state))];
    effects.extend(happened);
    if state.fields != before && event.kind != "stored-page" {
        effects.push(Effect::KeepPage(state.fields.kept()));
    }
    seam::write(&effects)
}

/// Whether an event may be about cards: most keys and presses in other rooms are not.
fn of_cards(state: &State, event: &Event) -> bool {
    let name = event.name;
    !matches!(event.kind, "type" | "press" | "key")
        || frame::room(&state.fields) == "card"
        || name.starts_with("cd-")
        || name.starts_with("card-")
        || name == "open-card"
        || event.value == "card"
}

/// What an event does to the state, and what else the browser must do.
pub(crate) fn happen(state: &mut State, event: &Event) -> Vec<Effect> {
    state.notice.hear(event);
    let mut effects = meant(state, event);
    if (event.kind, event.name) == ("storage", "ready") {
        // What it did not take so far it is asked to take now.
        effects.extend(state.jobs.retry());
        effects.extend(state.cards.retry());
    }
    effects
}

fn meant(state: &mut State, event: &Event) -> Vec<Effect> {
    if event.kind == "press"
        && let Some(effects) = state.notice.press(event)
    {
        return effects;
    }
    if let Some(effects) = state.jobs.heard(event) {
        return effects;
    }
    if let Some(effects) = state.cards.heard(&mut state.fields, event) {
        return effects;
    }
    // A file opened in the Shop is for the Shop; anywhere else it is a Run's.
    if event.kind == "file"
        && run::screen(&state.desk).is_none()
        && frame::room(&state.fields) == "shop"
    {
        shop::open(&mut state.fields, event.name, event.value);
        return Vec::new();
    }
    // A Run on screen puts how far it is on the card itself.
    let of_card = matches!((event.kind, event.name), ("press", "card-put"));
    if !of_card && let Some(effects) = run::happen(&mut state.desk, event) {
        return effects;
    }
    let State { fields, cards, today, desk, wide, .. } = state;
    if let Some(effects) = card::event(fields, cards, today, desk, *wide, event) {
        run::said(desk, fields.get(card::SAID));
        return effects;
    }
    match (event.kind, event.name) {
        ("version", _) => state.newer = true,
        ("wide", wide) => state.wide = wide == "yes",
        ("zone", minutes) => state.zone = minutes.parse().unwrap_or(0),
        ("print", when) => state.prints = when == "before" && frame::room(&state.fields) == "card",
        ("open", _) => state.fields.set("card-site", if event.value == "site" { "on" } else { "" }),
        // Another tab changed the Shop.
        ("stored-page", "elsewhere") => {
            shop::take(&mut state.fields, &Fields::from_kept(event.value));
        }
        ("stored-page", _) => {
            state.fields = Fields::from_kept(event.value);
            shop::forget(&mut state.fields);
            owned::take_over(&mut state.fields);
            owned::mend(&mut state.fields);
            owned::lists::mend(&mut state.fields);
        }
        ("press", "take-newer") if offers_newer(state) => return vec![Effect::TakeNewVersion],
        ("press", "shop-save") => return vec![shop::save(&state.fields)],
        ("press", "room") => return open_room(state, event.value, ""),
        ("press", "open-card") => return open_room(state, "card", ""),
        ("press", "own") => return open_room(state, "shop", event.value),
        ("press", "run") => return offer(state, event.value),
        ("press", "divide-n") => {
            for (name, value) in [("kind", "parts"), ("parts", event.value)] {
                divide::event(&mut state.fields, Event { name, value, ..*event });
            }
            return open_room(state, "divide", "");
        }
        ("type", "parts") => {
            // It stands there before anything is remembered: typed there, it is what is wanted.
            for (name, value) in [("room", "divide"), ("kind", "parts")] {
                if state.fields.has(name) {
                    state.fields.set(name, value);
                }
            }
            return divide::event(&mut state.fields, *event);
        }
        _ if shop::event(&mut state.fields, *event) => {}
        _ => {
            let thread = thread::event(&mut state.fields, &mut state.jobs, *event);
            let ours = thread.or_else(|| gear::event(&mut state.fields, event));
            let ours = ours.or_else(|| bench::event(&mut state.fields, event));
            return ours.unwrap_or_else(|| divide::event(&mut state.fields, *event));
        }
    }
    Vec::new()
}

/// Opens a room at its title, or at one of its fields.
fn open_room(state: &mut State, room: &str, field: &str) -> Vec<Effect> {
    state.fields.set("room", room);
    let title = match room {
        "shop" => "shop-title",
        "thread" => "thread-title",
        "gear" => "gear-title",
        "bench" => "bench-title",
        "card" => "card-title",
        _ => "divide-title",
    };
    vec![Effect::Focus(if field.is_empty() { title } else { field }.to_owned())]
}

/// A Run of the way that stands open, or of one of the plates to be made.
fn offer(state: &mut State, which: &str) -> Vec<Effect> {
    let frozen = if which.is_empty() {
        let chosen = divide::chosen(&state.fields);
        chosen.and_then(|(asked, head, rated)| Frozen::new(asked, head, rated.way).ok())
    } else {
        divide::making(&state.fields, which)
    };
    frozen.map_or_else(Vec::new, |frozen| run::offer(&mut state.desk, frozen))
}

/// The whole page as markup.
fn screen(state: &State) -> String {
    let filled = run::screen(&state.desk);
    let State { fields, cards, today, brief, desk, zone, wide, .. } = state;
    let view = card::View { fields, cards, today, desk, zone: *zone, wide: *wide };
    let page = filled.unwrap_or_else(|| {
        let room = match frame::room(&state.fields) {
            "shop" => shop::screen(&state.fields, &state.notice),
            "thread" => thread::screen(&state.fields, &state.jobs),
            "gear" => gear::screen(&state.fields),
            "bench" => bench::screen(&state.fields),
            "card" => card::screen(view),
            _ => divide::screen(&state.fields, &brief.wheels, state.wide),
        };
        let page = frame::Frame {
            newer: offers_newer(state),
            corner: card::corner(brief),
            strip: run::strip(desk),
            notice: state.notice.bar(),
        };
        let printed = if state.prints { card::printed(view) } else { Default::default() };
        frame::frame(fields, &page, &room, &printed)
    });
    page.into_string()
}

/// A newer version is offered only while no Run is open: a job ends with the version it began with.
fn offers_newer(state: &State) -> bool {
    state.newer && state.desk.resumable().is_none()
}

impl State {
    fn read(text: &str) -> Self {
        let mut state = State::default();
        for mut record in seam::records(text) {
            match (record.next(), record.next(), record.next()) {
                (Some("field"), Some(name), Some(value)) => state.fields.set(name, value),
                (Some("desk"), Some(desk), _) => state.desk = json::read(desk).unwrap_or_default(),
                (Some("jobs"), Some(jobs), _) => state.jobs = json::read(jobs).unwrap_or_default(),
                (Some("cards"), Some(cards), Some(today)) => {
                    state.unopened = Some((cards.to_owned(), today.to_owned()));
                }
                (Some("brief"), Some(brief), _) => {
                    state.brief = json::read(brief).unwrap_or_default();
                }
                (Some("zone"), Some(zone), _) => state.zone = zone.parse().unwrap_or(0),
                (Some("prints"), ..) => state.prints = true,
                (Some("newer"), ..) => state.newer = true,
                (Some("notice"), Some(notice), _) => {
                    state.notice = json::read(notice).unwrap_or_default()
                }
                (Some("wide"), ..) => state.wide = true,
                _ => {}
            }
        }
        state
    }

    /// Reads what was handed in of the cards.
    fn open_cards(&mut self) {
        if let Some((cards, today)) = self.unopened.take() {
            self.cards = json::read(&cards).unwrap_or_default();
            self.today = json::read(&today).unwrap_or_default();
        }
    }

    fn write(&mut self) -> String {
        let mut text = String::new();
        for (name, value) in self.fields.iter() {
            seam::add_record(&mut text, &["field", name, value]);
        }
        seam::add_record(&mut text, &["desk", &json::write(&mut self.desk)]);
        seam::add_record(&mut text, &["jobs", &json::write(&mut self.jobs.clone())]);
        let (cards, today) = self
            .unopened
            .take()
            .unwrap_or_else(|| (json::write(&mut self.cards), json::write(&mut self.today)));
        seam::add_record(&mut text, &["cards", &cards, &today]);
        seam::add_record(&mut text, &["brief", &json::write(&mut self.brief)]);
        seam::add_record(&mut text, &["zone", &self.zone.to_string()]);
        if self.prints {
            seam::add_record(&mut text, &["prints"]);
        }
        if self.newer {
            seam::add_record(&mut text, &["newer"]);
        }
        seam::add_record(&mut text, &["notice", &json::write(&mut self.notice)]);
        if self.wide {
            seam::add_record(&mut text, &["wide"]);
        }
        text
    }
}
