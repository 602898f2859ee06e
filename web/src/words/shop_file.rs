//! What the Shop says of its files, and of what this device keeps.
use super::{count, shop::label, shop_errors, shop_lists};
use crate::owned::Refused;
use crate::owned::lists::Stock;
use handturn::{Cause, Error, Field};

words! {
    FILE_NAME = "handturn-shop.json";
    SAVE = "Save to file";
    OPEN = "Open a file";
    UNREAD = "What this device had kept could not be read. It was set aside, not overwritten: save it to a file, and open your own saved file in the Shop.";
    UNREAD_LIES = "Some of what was kept here could not be read. It lies set aside.";
    UNREAD_FILE = "handturn-unread.json";
    SAVE_UNREAD = "Save what could not be read";
    AGAIN = "Try again";
    TRIED = "Tried again: it is still so.";
    AWAY = "Put this away";
}

/// Heads that came out of a file.
#[must_use]
pub fn opened(name: &str, heads: usize, lists: bool) -> String {
    match (heads, lists) {
        (0, false) => [name, ": nothing in it is new here."].concat(),
        (0, true) => [name, ": lists changed:"].concat(),
        (_, false) => [name, ": ", &counted(heads), " added."].concat(),
        (_, true) => [name, ": ", &counted(heads), " added; lists changed:"].concat(),
    }
}

/// One list that a file changed, as a line of its own.
#[must_use]
pub fn changed(stock: Stock, was: &str, is: &str) -> String {
    let short = |text: &str| {
        let line = text.trim().replace('\n', "; ");
        match line.char_indices().nth(40) {
            None if line.is_empty() => "nothing".to_owned(),
            None => line,
            Some((end, _)) => {
                let start = line.get(..end).unwrap_or_default();
                start.rsplit_once(' ').map_or(start, |(whole, _)| whole).to_owned() + " …"
            }
        }
    };
    ["\n", shop_lists::label(stock), ": ", &short(was), " → ", &short(is)].concat()
}

/// Why what is typed is not kept on this device.
#[must_use]
pub fn not_kept(why: &str) -> String {
    let why = match why {
        "full" => "The device is full: what you do here is not kept.",
        _ => "The browser refuses to store: what you do here is not kept.",
    };
    why.to_owned() + " Save it to a file before you leave."
}

/// There is not room for all of them.
#[must_use]
pub fn no_room(room: usize) -> String {
    ["There is room for ", &counted(room), " more: delete some first."].concat()
}

fn counted(heads: usize) -> String {
    count(u32::try_from(heads).unwrap_or(u32::MAX), "head", "heads")
}

/// Why a file of heads was not opened, and where the fault is.
#[must_use]
pub fn refused(why: &Refused) -> String {
    let said = match why {
        Refused::Foreign => "It is no file of the Shop.",
        Refused::ARun => "It holds a Run: open it in the list of Runs.",
        Refused::Newer => {
            return super::errors::said(&Error::new(Field::Record, Cause::Newer), "").wrong;
        }
        Refused::Damaged => "It is damaged.",
        Refused::List(stock, error, typed) => {
            let wrong = match (error.field, error.cause) {
                (Field::Record, Cause::TooMany { .. }) => "the text is too long.".to_owned(),
                _ => shop_lists::said(*stock, error, typed).wrong,
            };
            return ["“", shop_lists::label(*stock), "”: ", &wrong].concat();
        }
        Refused::Head(place, bad, typed) => {
            let place = (place + 1).to_string();
            let here = ["Head ", &place, ", “", label(bad.entry), "”: "].concat();
            return here
                + &match (bad.error.field, bad.error.cause) {
                    (Field::Record, Cause::Conflict) => "there is no such choice.".to_owned(),
                    (Field::Record, Cause::TooMany { .. }) => "the text is too long.".to_owned(),
                    _ => shop_errors::said(bad, typed).wrong,
                };
        }
    };
    said.to_owned()
}
