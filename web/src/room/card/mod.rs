//! Card: what belongs to one part. Answers of every room, in the order they are done, with
//! values that follow each other, ticks, cautions, notes; on screen and on paper.
mod demo;
mod desk;
mod paper;
mod press;
mod put;
mod sheet;
mod step;
#[cfg(test)]
mod tests;
mod values;

pub use press::event;
pub use put::{SAID, Today};

use crate::card::Cards;
use crate::fields::Fields;
use crate::keep::kept::record;
use crate::seam::Effect;
use crate::words::card as words;
use maud::{Markup, html};

/// What the room is drawn from.
#[derive(Clone, Copy)]
pub struct View<'a> {
    /// All that was typed and chosen.
    pub fields: &'a Fields,
    /// The cards there are, and the open one.
    pub cards: &'a Cards,
    /// What its answers come to today.
    pub today: &'a Today,
    /// The Runs there are.
    pub desk: &'a super::run::Desk,
    /// Minutes that the clock here is before that of Greenwich.
    pub zone: i64,
    /// There is room for long rows.
    pub wide: bool,
}

/// The room as markup.
#[must_use]
pub fn screen(view: View) -> Markup {
    html! {
        main.card-room id="main" {
            @match view.cards.open() {
                Some(open) => (sheet::screen(view, open)),
                None => (desk::screen(view)),
            }
        }
    }
}

/// The open card as it is printed; nothing where none is open.
#[must_use]
pub fn printed(view: View) -> Markup {
    html! { @if let Some(open) = view.cards.open() { (paper::sheet(view, &open.card())) } }
}

/// What every room shows of the open card.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Brief {
    /// A card is open.
    open: bool,
    title: String,
    job: String,
    /// Its wheels: each count of parts that it divides or cuts, once.
    pub wheels: Vec<u32>,
}

record! {
    Brief { open, title, job, wheels }
}

impl Brief {
    /// Of the open card; blank where none is open.
    #[must_use]
    pub fn of(cards: &Cards) -> Self {
        let Some(card) = cards.open().map(|open| open.card()) else { return Self::default() };
        Self { open: true, wheels: press::wheels(&card), title: card.title, job: card.job }
    }
}

/// The way to the open card, in the corner of every room.
#[must_use]
pub fn corner(card: &Brief) -> Markup {
    html! {
        @if card.open {
            button.job type="button" data-do="open-card" aria-label=(words::open_card(&card.title, &card.job)) {
                b { (words::title(&card.title)) } span { (card.job) }
            }
        }
    }
}

/// The button that puts an answer on the card, and what came of the last press.
pub(super) fn put_button(fields: &Fields, room: &str) -> Markup {
    let said = fields.get(put::SAID);
    html! {
        div.putting id="putting" {
            button.btn id="card-put" type="button" data-do="card-put" data-value=(room) { (words::PUT) }
            p role="status" { (said) }
            @if !said.is_empty() {
                button.btn type="button" data-do="open-card" { (words::OPEN_CARD) }
            }
        }
    }
}

/// A begun demonstration, and where to look.
fn opened(mut effects: Vec<Effect>) -> Vec<Effect> {
    effects.push(Effect::Focus("card-title".to_owned()));
    effects
}
