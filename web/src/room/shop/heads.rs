//! Several heads among the fields: the chosen one's fields have their plain names,
//! those of head 2 the same names with `#2` behind, and of what an undo brings
//! back with `#undo`.
use crate::fields::Fields;
use crate::owned::{self, Entry, Texts};
use crate::words::shop as words;
use maud::{Markup, html};

/// How many heads are kept.
const MOST: usize = 12;
/// How many heads there are, and which is chosen, counted from 0.
const COUNT: &str = "shop-heads";
const CHOSEN: &str = "shop-chosen";
/// What an undo brings back: `deleted 2` or `replaced 0`.
const UNDO: &str = "shop-undo";

/// Names of all heads, and which is chosen.
#[must_use]
pub fn names(fields: &Fields) -> (Vec<&str>, usize) {
    let name = |place| in_force(fields, place, Entry::Name);
    ((0..count(fields)).map(name).collect(), chosen(fields))
}

/// The text of `entry` that is in force for the head at `place`.
fn in_force(fields: &Fields, place: usize, entry: Entry) -> &str {
    if place == chosen(fields) {
        return owned::in_force(fields, entry);
    }
    let parked = |name: &str| [name, "#", &place.to_string()].concat();
    fields.or(&parked(entry.last()), fields.or(&parked(entry.name()), entry.default()))
}

/// Every head, entry by entry, as it is in force.
pub(super) fn texts(fields: &Fields) -> Vec<Texts> {
    let text = |place, entry| in_force(fields, place, entry).to_owned();
    (0..count(fields)).map(|place| Texts(Entry::ALL.map(|entry| text(place, entry)))).collect()
}

/// How many more heads can be kept.
pub(super) fn room(fields: &Fields) -> usize {
    MOST - count(fields) + usize::from(is_untouched(fields))
}

/// Adds a head that reads, and chooses it. A sole head with nothing typed gives way.
pub(super) fn put(fields: &mut Fields, head: &Texts) {
    if !is_untouched(fields) {
        let (old, place) = (chosen(fields), count(fields));
        park(fields, &old.to_string());
        grown(fields, place);
    }
    for (entry, text) in head.each() {
        fields.set(entry.name(), text);
    }
}

fn is_untouched(fields: &Fields) -> bool {
    count(fields) == 1 && !fields.iter().any(|(name, _)| is_plain(name))
}

/// Chooses the head at `place`.
pub fn choose(fields: &mut Fields, place: usize) {
    let old = chosen(fields);
    if place >= count(fields) || place == old {
        return;
    }
    park(fields, &old.to_string());
    bring(fields, &place.to_string());
    fields.set(CHOSEN, &place.to_string());
}

/// Adds a head with nothing typed yet, and chooses it.
pub(super) fn add(fields: &mut Fields) {
    if is_full(fields) {
        return;
    }
    let (old, place) = (chosen(fields), count(fields));
    park(fields, &old.to_string());
    grown(fields, place);
    let name = [Entry::Name.default(), " ", &(place + 1).to_string()].concat();
    owned::set(fields, Entry::Name, &name);
}

/// Adds a copy of the chosen head, and chooses it.
pub fn copy(fields: &mut Fields) {
    if is_full(fields) {
        return;
    }
    let (old, place) = (chosen(fields), count(fields));
    duplicate(fields, &old.to_string());
    grown(fields, place);
    let name = words::copy_of(owned::in_force(fields, Entry::Name));
    owned::set(fields, Entry::Name, &name);
}

/// Deletes the chosen head; [`undo`] brings it back. The last one becomes a head
/// with nothing typed.
pub fn delete(fields: &mut Fields) {
    let (place, heads) = (chosen(fields), count(fields));
    remember(fields, "deleted");
    fields.rename(|name| (!is_plain(name)).then(|| name.to_owned()));
    if heads < 2 {
        return;
    }
    // Those behind move up.
    for behind in place + 1..heads {
        move_parked(fields, &behind.to_string(), &(behind - 1).to_string());
    }
    let next = place.min(heads - 2);
    bring(fields, &next.to_string());
    fields.set(COUNT, &(heads - 1).to_string());
    fields.set(CHOSEN, &next.to_string());
}

/// Brings back what the last [`delete`] or one-tap start took away.
pub fn undo(fields: &mut Fields) {
    let Some((deleted, place)) = undoable(fields) else { return };
    let (old, heads) = (chosen(fields), count(fields));
    let was_last = deleted && fields.get("shop-undo-heads") == "1";
    if deleted && !was_last {
        park(fields, &old.to_string());
        for behind in (place..heads).rev() {
            move_parked(fields, &behind.to_string(), &(behind + 1).to_string());
        }
        fields.set(COUNT, &(heads + 1).to_string());
    } else {
        choose(fields, place);
        fields.rename(|name| (!is_plain(name)).then(|| name.to_owned()));
    }
    bring(fields, "undo");
    fields.set(CHOSEN, &place.to_string());
    fields.forget(UNDO);
}

/// Keeps the chosen head as it is now, for [`undo`].
pub(super) fn remember(fields: &mut Fields, what: &str) {
    fields.rename(|name| (!name.ends_with("#undo")).then(|| name.to_owned()));
    duplicate(fields, "undo");
    let (place, heads) = (chosen(fields).to_string(), count(fields).to_string());
    fields.set(UNDO, &[what, " ", &place].concat());
    fields.set("shop-undo-heads", &heads);
}

/// The list of heads and what can be done with them.
pub(super) fn section(fields: &Fields) -> Markup {
    let (names, chosen) = names(fields);
    let lost = fields.or("head-name#undo", Entry::Name.default());
    html! {
            h2 id="shop-heads-title" tabindex="-1" { (crate::words::shop_lists::HEADS) }
            div.stack role="group" aria-label=(words::HEADS) {
                @for (place, name) in names.iter().enumerate() {
                    button.chip.head-chip type="button" data-do="shop-choose" data-value=(place) aria-pressed=(place == chosen) {
                        (name)
                        @if place == chosen { span { (words::summary(&owned::head(fields))) } }
                    }
                }
            }
            div.trio {
                button.btn type="button" data-do="shop-add" disabled[is_full(fields)] { (words::ADD) }
                button.btn type="button" data-do="shop-copy" disabled[is_full(fields)] { (words::COPY) }
                button.btn type="button" data-do="shop-delete" { (words::DELETE) }
            }
            @if is_full(fields) { p.why { (words::FULL) } }
            div id="shop-undo" role="status" {
                @if let Some((deleted, _)) = undoable(fields) {
                    p.why { (words::undone(deleted, lost)) }
                    button.btn type="button" data-do="shop-undo" { (words::UNDO) }
                }
            }
    }
}

fn count(fields: &Fields) -> usize {
    fields.or(COUNT, "1").parse().unwrap_or(1).clamp(1, MOST)
}

fn chosen(fields: &Fields) -> usize {
    fields.or(CHOSEN, "0").parse().unwrap_or(0).min(count(fields) - 1)
}

fn is_full(fields: &Fields) -> bool {
    count(fields) >= MOST
}

fn undoable(fields: &Fields) -> Option<(bool, usize)> {
    let (what, place) = fields.get(UNDO).split_once(' ')?;
    let deleted = what == "deleted";
    let place: usize = place.parse().ok()?;
    // Brought back, it must have its place.
    let fits =
        if deleted { place <= count(fields) && !is_full(fields) } else { place < count(fields) };
    fits.then_some((deleted, place))
}

fn grown(fields: &mut Fields, place: usize) {
    fields.set(COUNT, &(place + 1).to_string());
    fields.set(CHOSEN, &place.to_string());
}

/// Whether `name` is a field of the chosen head.
fn is_plain(name: &str) -> bool {
    let of_a_head = name.starts_with("head-") || name.starts_with("last-head-");
    of_a_head && !name.contains('#')
}

/// The chosen head's fields go under `place`.
fn park(fields: &mut Fields, place: &str) {
    fields.rename(|name| {
        Some(if is_plain(name) { [name, "#", place].concat() } else { name.to_owned() })
    });
}

/// A copy of the chosen head's fields goes under `place`.
fn duplicate(fields: &mut Fields, place: &str) {
    let plain = fields.iter().filter(|(name, _)| is_plain(name));
    let copies: Vec<_> =
        plain.map(|(name, value)| ([name, "#", place].concat(), value.to_owned())).collect();
    for (name, value) in copies {
        fields.set(&name, &value);
    }
}

/// What is parked under `place` becomes the chosen head's.
fn bring(fields: &mut Fields, place: &str) {
    let end = ["#", place].concat();
    fields.rename(|name| Some(name.strip_suffix(&end).unwrap_or(name).to_owned()));
}

fn move_parked(fields: &mut Fields, from: &str, to: &str) {
    let end = ["#", from].concat();
    fields.rename(|name| {
        Some(
            name.strip_suffix(&end)
                .map_or_else(|| name.to_owned(), |plain| [plain, "#", to].concat()),
        )
    });
}
