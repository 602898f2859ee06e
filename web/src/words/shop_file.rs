//! What the Shop says of files of heads.
use super::{count, shop::label, shop_errors};
use crate::owned::Refused;
use handturn::{Cause, Error, Field};

words! {
    FILE_NAME = "handturn-heads.json";
    SAVE = "Save heads to file";
    OPEN = "Open a file of heads";
}

/// Heads that came out of a file.
#[must_use]
pub fn opened(name: &str, heads: usize) -> String {
    match heads {
        0 => [name, ": all its heads are here already."].concat(),
        _ => [name, ": ", &counted(heads), " added."].concat(),
    }
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
        Refused::Foreign => "It is no file of heads.",
        Refused::ARun => "It holds a Run: open it in the list of Runs.",
        Refused::Newer => {
            return super::errors::said(&Error::new(Field::Record, Cause::Newer), "").wrong;
        }
        Refused::Damaged => "It is damaged.",
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
