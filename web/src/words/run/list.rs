//! What the list of Runs says, and the store.
use super::super::{errors, grouped};
use crate::keep::Trouble;

words! {
    FILE_NAME = "handturn-run.json";
    RUN_IT = "Run it";
    RESUME = "Resume";
    ALL_RUNS = "Runs";
    RUNS = "Runs on this device";
    NO_RUNS = "No Run is open.";
    HOLDS_HEADS = "It holds heads: open it in the Shop.";
    OPEN_FILE = "Open a saved Run";
    DELETE = "Delete";
    UNDO = "Undo";
    CLOSE_LIST = "Close the list";
    IS_CLOSED = "Closed";
}

/// Why a stored Run cannot be used.
#[must_use]
pub fn trouble(trouble: Trouble) -> String {
    match trouble {
        Trouble::NotARun => "Not a Run that can be read.".to_owned(),
        Trouble::Refused(error) => errors::said(&error, "").wrong,
        Trouble::Event(number) => {
            ["Step ", &grouped(number as i64 + 1), " cannot be read."].concat()
        }
        Trouble::Count => "Steps are missing.".to_owned(),
    }
}

/// A file that holds no Run.
#[must_use]
pub fn file_refused(name: &str, why: &str) -> String {
    [name, " was not opened. ", why].concat()
}

/// A Run that the store would not delete.
#[must_use]
pub fn not_deleted(why: &str) -> String {
    ["That Run could not be deleted (", why, ")."].concat()
}

/// A Run just deleted.
#[must_use]
pub fn deleted(title: &str) -> String {
    ["Deleted: ", title, "."].concat()
}

/// Where a Run in the list stands.
#[must_use]
pub fn at_of(at: u32, of: u32) -> String {
    ["at ", &grouped(i64::from(at)), " of ", &grouped(i64::from(of))].concat()
}

/// Why the store keeps nothing, and what to do.
#[must_use]
pub fn why_not_saved(why: &str) -> String {
    match why {
        "full" => "The device has no space left. Save to file, and make space.".to_owned(),
        _ => [
            "This browser does not store anything for this page (",
            why,
            "). Save to file before you leave.",
        ]
        .concat(),
    }
}
