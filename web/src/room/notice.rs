//! What the store keeps from all rooms: said at once, whatever the room, over the page
//! and not in it, so that nothing moves under the hands.
use crate::keep::kept::record;
use crate::seam::{Effect, Event};
use crate::words::shop_file as words;
use maud::{Markup, html};

/// What is to be said of the store.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Notice {
    /// Why it does not take what is done here; empty while it does.
    refused: String,
    /// That was read, and put away.
    away: bool,
    /// It was tried again, and nothing changed.
    tried: bool,
    /// Texts that could not be read lie in it.
    unread: bool,
    /// One of them was set aside just now.
    found: bool,
}

record! {
    Notice { refused, away, tried, unread, found }
}

impl Notice {
    /// Takes in what the store says, whatever else it means.
    pub fn hear(&mut self, event: &Event) {
        let full = event.value.ends_with(" full");
        let why = match event.kind {
            "storage" if event.name == "ready" => "",
            "storage" => event.value,
            "unkept" if full => "full",
            "kept" if self.refused == "full" => "",
            "unread" => {
                (self.unread, self.found) = (true, event.name == "now");
                return;
            }
            _ => return,
        };
        let why = if event.kind == "storage" && event.name != "ready" && why.is_empty() {
            "?"
        } else {
            why
        };
        if self.refused == why {
            return;
        }
        *self = Self { refused: why.to_owned(), away: false, tried: false, ..self.clone() };
    }

    /// A button of the notice; none where it is not one.
    pub fn press(&mut self, event: &Event) -> Option<Vec<Effect>> {
        Some(match event.name {
            "store-again" => {
                self.tried = true;
                vec![Effect::Again]
            }
            "store-unread" => vec![Effect::Unread(words::UNREAD_FILE)],
            "store-away" => {
                (self.away, self.found) = (true, false);
                vec![]
            }
            _ => return None,
        })
    }

    /// What stands over every room until it is put away.
    #[must_use]
    pub fn bar(&self) -> Option<Markup> {
        let refused = !self.refused.is_empty() && !self.away;
        (refused || self.found).then(|| {
            html! {
                div.notice id="notice" role="alert" {
                    @if refused { (self.why()) }
                    @if self.found { p { (words::UNREAD) } (hand_over()) }
                    button.btn type="button" data-do="store-away" { (words::AWAY) }
                }
            }
        })
    }

    /// The same in the Shop, once it has been put away.
    #[must_use]
    pub fn line(&self) -> Markup {
        html! {
            @if !self.refused.is_empty() && self.away { div.kept-not { (self.why()) } }
            @if self.unread && !self.found { p.why { (words::UNREAD_LIES) } (hand_over()) }
        }
    }

    fn why(&self) -> Markup {
        html! {
            p.care { (words::not_kept(&self.refused)) @if self.tried { " " (words::TRIED) } }
            button.btn type="button" data-do="store-again" { (words::AGAIN) }
        }
    }
}

fn hand_over() -> Markup {
    html! { button.btn type="button" data-do="store-unread" { (words::SAVE_UNREAD) } }
}

#[cfg(test)]
mod tests {
    use crate::room::visit::Visit;

    const FULL: &str = "The device is full: what you do here is not kept.";

    fn said(visit: &Visit) -> bool {
        visit.page.contains("id=\"notice\"")
    }

    #[test]
    fn a_store_that_does_not_take_it_is_said_in_every_room_until_it_does() {
        let mut visit = Visit::to("divide");
        assert!(!said(&visit));
        visit.send("storage", "refused", "full");
        for room in ["divide", "thread", "gear", "bench", "shop", "card"] {
            visit.press("room", room);
            visit.shows(&[FULL, "Try again"]);
            assert!(said(&visit), "{room}");
        }
        visit.press("store-again", "");
        assert!(visit.asked.contains(&"again".to_owned()), "{:?}", visit.asked);
        visit.shows(&["Tried again: it is still so."]);
        visit.press("store-away", "");
        // The same trouble again does not bring it back; the Shop goes on saying it.
        visit.send("storage", "refused", "full");
        assert!(!said(&visit));
        visit.press("room", "shop");
        visit.shows(&[FULL]);
        assert!(!said(&visit));
        // Another one does.
        visit.send("storage", "refused", "closed");
        visit.shows(&["The browser refuses to store: what you do here is not kept."]);
        assert!(said(&visit));
        visit.send("storage", "ready", "");
        assert!(!said(&visit) && !visit.text().contains("not kept"));
    }

    #[test]
    fn a_card_that_finds_no_room_is_said_in_other_rooms_too() {
        let mut visit = Visit::to("card");
        visit.press("cd-begin", "");
        let begun = visit.asked.iter().find_map(|asked| asked.strip_prefix("begin "));
        let card = begun.and_then(|begun| begun.split_whitespace().next()).unwrap().to_owned();
        visit.send("unkept", &card, "begun full");
        visit.press("room", "thread");
        visit.shows(&[FULL]);
        visit.press("store-again", "");
        // The store takes something again: it is asked for what it has not.
        visit.send("storage", "ready", "");
        let again = ["begin ", &card].concat();
        assert!(visit.asked.iter().any(|asked| asked.starts_with(&again)), "{:?}", visit.asked);
        assert!(!said(&visit));
    }

    #[test]
    fn what_could_not_be_read_is_handed_over() {
        let mut visit = Visit::to("gear");
        visit.send("unread", "now", "");
        visit.shows(&["could not be read. It was set aside, not overwritten"]);
        visit.press("store-unread", "");
        assert!(
            visit.asked.contains(&"unread handturn-unread.json".to_owned()),
            "{:?}",
            visit.asked
        );
        visit.press("store-away", "");
        assert!(!said(&visit));
        visit.press("room", "shop");
        visit.shows(&["It lies set aside.", "Save what could not be read"]);
        // At a later opening it is only in the Shop.
        let mut visit = Visit::to("shop");
        visit.send("unread", "", "");
        visit.shows(&["It lies set aside."]);
        assert!(!said(&visit));
    }
}
