//! What the Card says of keeping and handing over.
use crate::card::{Fault, Note, Part, Refused};
use crate::words::{count, errors, grouped};
use handturn::{Cause, Error, Field};

/// Another tab writes.
pub const ELSEWHERE: &str = "Another tab writes on this card. Here it can only be read.";

/// What is said under changes that do not count.
pub const UNCOUNTED_WHY: &str = "Another tab wrote on this card. As a copy your changes are a card of their own; the other stays as it is.";
/// The button that keeps them.
pub const KEEP_COPY: &str = "Keep mine as a copy";

/// Changes of a card that do not count.
#[must_use]
pub fn uncounted(title: &str) -> String {
    ["Not counted: your changes of ", super::title(title)].concat()
}

/// Whether all of a card is saved.
#[must_use]
pub fn saved(saving: bool, saved_at: &str) -> String {
    match (saving, saved_at) {
        (true, _) => "Saving…".to_owned(),
        (_, "") => "Saved on this device".to_owned(),
        (_, time) => ["Saved on this device at ", time].concat(),
    }
}

/// Why a card is not saved, and what to do.
#[must_use]
pub fn not_saved(why: &str) -> String {
    let (why, then) = match why {
        "full" => ("the device’s store is full", " Or free some room, then try again."),
        "gone" => ("it was taken out in another tab", " Or try again to put it back."),
        _ => ("the browser refuses its store", ""),
    };
    let lost = ". What you do here is lost when this page closes: save the card to a file.";
    ["Not saved: ", why, lost, then].concat()
}

/// A sentence about the last press.
#[must_use]
pub fn note(note: Note) -> Option<String> {
    let said = match note {
        Note::None => return None,
        Note::Taken => "Not counted: another tab writes on this card.",
        Note::Gone => "This card was taken out in another tab.",
        Note::Slow => {
            "The store takes long. What is not saved yet may be lost when this page closes."
        }
        Note::Long(most) => {
            let most = letters(most);
            return Some(["Not counted: a text there can have at most ", &most, "."].concat());
        }
        Note::Many(most) => {
            return Some(["Not counted: there can be at most ", &number(most), "."].concat());
        }
        Note::NotNow => "Not counted: that is not possible now.",
    };
    Some(said.to_owned())
}

/// Why a stored card can't be used.
#[must_use]
pub fn fault(fault: Fault) -> Option<String> {
    Some(match fault {
        Fault::None => return None,
        Fault::Damaged => {
            "This card is damaged and can’t be read. It stays stored until you take it out."
                .to_owned()
        }
        Fault::Partly => {
            "This card is damaged. What was saved before the damage can be read.".to_owned()
        }
        Fault::Newer => newer() + " It is left as it is.",
    })
}

/// Why a file or a link was not opened; a link has no name.
#[must_use]
pub fn refused(name: &str, why: &Refused) -> String {
    let name = if name.is_empty() { "The link" } else { name };
    let said = match why {
        Refused::Foreign => "It holds no card.".to_owned(),
        Refused::ARun => "It holds a Run: open it in the list of Runs.".to_owned(),
        Refused::Heads => "It holds heads: open it in Shop.".to_owned(),
        Refused::Newer => newer(),
        Refused::Damaged(at) => ["It is damaged at letter ", &number(*at), "."].concat(),
        Refused::Cut => {
            "It is damaged, or not all of it arrived. Ask for the card as a file.".to_owned()
        }
        Refused::In(place) => [part(*place), " is damaged.".to_owned()].concat(),
        Refused::Long((place, most)) => {
            [&part(*place), ": a text is longer than ", &letters(*most), "."].concat()
        }
        Refused::Many((place, most)) => {
            [&part(*place), ": more than ", &number(*most), " entries."].concat()
        }
    };
    [name, " was not opened. ", &said, " Your own cards are as they were."].concat()
}

/// A card too long for a link.
#[must_use]
pub fn too_long(letters: usize) -> String {
    let most = number(crate::card::LONGEST_LINK);
    [
        "As a link this card has ",
        &number(letters),
        " letters; messages pass on at most ",
        &most,
        ". Save it to a file.",
    ]
    .concat()
}

fn newer() -> String {
    errors::said(&Error::new(Field::Record, Cause::Newer), "").wrong
}

fn part(part: Part) -> String {
    match part {
        Part::Head => "The card’s heading".to_owned(),
        Part::Value(k) => ["Value ", &k.to_string()].concat(),
        Part::Step(k) => ["Step ", &k.to_string()].concat(),
    }
}

fn number(n: usize) -> String {
    grouped(i64::try_from(n).unwrap_or(i64::MAX))
}

fn letters(most: usize) -> String {
    count(u32::try_from(most).unwrap_or(u32::MAX), "letter", "letters")
}
