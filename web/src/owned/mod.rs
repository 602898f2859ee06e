//! The head as its owner typed it, and the head in force.
//!
//! Every value of [`Head`] is one [`Entry`] with its own name among the page's
//! [`Fields`]; an entry never typed reads as the default head has it. What cannot
//! be read, or does not go with the rest, changes nothing: the last good text of
//! that entry stays in force (kept under [`Entry::last`]) until it is mended.
mod before;
mod entry;
mod file;
pub mod lists;
mod read;
#[cfg(test)]
mod tests;
mod write;

pub use before::take_over;
pub use entry::{Entry, defaults};
pub use file::{Held, Lists, Refused, Texts, file, from_file, holds_heads};
pub use read::{Bad, handwheel_marks, read};
pub use write::{degrees, exact, mm, write};

use crate::fields::Fields;
use handturn::head::Head;

/// The built-in plates of 15 to 49 holes, as typed.
pub const PLATES_A: &str = "15 16 17 18 19 20 / 21 23 27 29 31 33 / 37 39 41 43 47 49";
/// The built-in plate of 24 to 66 holes, a side at a time.
pub const PLATES_B: &str = "24 25 28 30 34 37 38 39 41 42 43 / 46 47 49 51 53 54 57 58 59 62 66";
/// The built-in change gears.
pub const GEARS_USUAL: &str = "24x2 28 32 40 44 48 56 64 72 86 100";

/// What stands in an entry's field, good or bad.
#[must_use]
pub fn typed(fields: &Fields, entry: Entry) -> &str {
    fields.or(entry.name(), entry.default())
}

/// The text of an entry that is in force.
#[must_use]
pub fn in_force(fields: &Fields, entry: Entry) -> &str {
    fields.or(entry.last(), typed(fields, entry))
}

/// The head in force. Fields that [`set`] filled or [`mend`] went over always give
/// one; others read as the default head.
#[must_use]
pub fn head(fields: &Fields) -> Head {
    read(&|entry| in_force(fields, entry)).unwrap_or_default()
}

/// Puts `text` into `entry`. It comes into force when the head as a whole reads
/// with it; so does what waited for just that.
pub fn set(fields: &mut Fields, entry: Entry, text: &str) {
    if !fields.has(entry.last()) {
        let good = typed(fields, entry).to_owned();
        fields.set(entry.last(), &good);
    }
    fields.set(entry.name(), text);
    settle(fields);
}

/// For fields that come from storage, which may hold anything: what reads comes into
/// force, the rest keeps its text and is told as bad, its default in force meanwhile.
pub fn mend(fields: &mut Fields) {
    if read(&|entry| in_force(fields, entry)).is_ok() {
        return;
    }
    let text = |entry| (in_force(fields, entry).to_owned(), typed(fields, entry).to_owned());
    let found = Entry::ALL.map(text);
    for entry in Entry::ALL {
        fields.forget(entry.name());
        fields.forget(entry.last());
    }
    for (entry, (good, _)) in Entry::ALL.into_iter().zip(&found) {
        set(fields, entry, good);
    }
    for (entry, (_, typed)) in Entry::ALL.into_iter().zip(&found) {
        set(fields, entry, typed);
    }
}

/// Entries whose text is not in force, each with what is wrong and where: the
/// fault may stand in another entry that does not go with it.
#[must_use]
pub fn waiting(fields: &Fields) -> Vec<(Entry, Bad)> {
    let waits = Entry::ALL.into_iter().filter(|entry| fields.has(entry.last()));
    waits.filter_map(|entry| Some((entry, try_with(fields, entry).err()?))).collect()
}

/// Takes into force whatever reads, until nothing more does.
pub fn settle(fields: &mut Fields) {
    let mut moved = true;
    while moved {
        moved = false;
        for entry in Entry::ALL {
            if fields.has(entry.last()) && try_with(fields, entry).is_ok() {
                fields.forget(entry.last());
                moved = true;
            }
        }
    }
}

/// The head in force with what stands in `entry` in its place.
fn try_with(fields: &Fields, entry: Entry) -> Result<Head, Bad> {
    read(&|other| if other == entry { typed(fields, other) } else { in_force(fields, other) })
}
