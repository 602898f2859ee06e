//! A card handed over: as a file, and as the part of an address after `#`, which no
//! browser sends anywhere. Both are read as if a stranger had written them: all or none.
use super::log::{Unread, raised};
use super::model::{Bad, Card, Item, Place, SCHEMA, Step};
use super::pack;
use crate::keep::json::{self, Json};
use crate::keep::kept::{choice, record};
use crate::owned;
use handturn::run::Header;

/// The name of the file.
pub const FILE_NAME: &str = "handturn-card.json";
/// What the file calls itself.
const KIND: &str = "handturn-card";
/// What an address with a card begins with.
const LINK: &str = "card=";
/// Letters of a link, at most: what mail and messages still pass on whole.
pub const LONGEST_LINK: usize = 8_000;

struct File {
    kind: String,
    card: Card,
}

record! {
    File { kind, card }
}

/// Why a file or a link is not opened.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Refused {
    /// It is something else.
    Foreign,
    /// It holds a Run.
    ARun,
    /// It holds heads.
    Heads,
    /// A newer version wrote it.
    Newer,
    /// Its text breaks off or is damaged at this letter, from 1.
    Damaged(usize),
    /// The link is damaged or not all of it arrived.
    Cut,
    /// This (of the whole card, or the value or step with this number, from 1) is
    /// damaged: something is missing or of another kind.
    In(Part),
    /// There a text is longer than this.
    Long((Part, usize)),
    /// There are more than this.
    Many((Part, usize)),
}

/// A part of a card as a person counts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Part {
    /// Title, job, metal, notes.
    Head,
    /// This value, from 1.
    Value(usize),
    /// This step, from 1.
    Step(usize),
}

choice! {
    Refused {
        Foreign = "foreign", ARun = "run", Heads = "heads", Newer = "newer",
        Damaged(held) = "damaged", Cut = "cut", In(held) = "in", Long(held) = "long",
        Many(held) = "many"
    }
    Part { Head = "head", Value(held) = "value", Step(held) = "step" }
}

impl From<Place> for Part {
    fn from(place: Place) -> Self {
        match place {
            Place::Head => Self::Head,
            Place::Value(k) => Self::Value(k + 1),
            Place::Step(k) => Self::Step(k + 1),
        }
    }
}

/// The card as the text of a file.
pub(super) fn file(card: &Card) -> String {
    let card = Card { version: SCHEMA, ..card.clone() };
    json::write(&mut File { kind: KIND.to_owned(), card })
}

/// Whether a text says that it holds a card.
pub(super) fn holds_card(text: &str) -> bool {
    text.get(..200.min(text.len())).unwrap_or(text).contains(KIND)
}

/// The card in the text of a file.
pub(super) fn from_file(text: &str) -> Result<Card, Refused> {
    let tree = json::tree(text).map_err(|at| {
        let letters = text.get(..at).map_or(at, |before| before.chars().count());
        if holds_card(text) { Refused::Damaged(letters + 1) } else { Refused::Foreign }
    })?;
    if !matches!(tree.field("kind"), Json::Text(kind) if kind == KIND) {
        return Err(match () {
            () if owned::holds_heads(text) => Refused::Heads,
            () if json::fill::<Header>(&tree).is_ok() => Refused::ARun,
            () => Refused::Foreign,
        });
    }
    read(tree.field("card").clone())
}

/// The card in a tree, or where it is not one.
fn read(tree: Json<'_>) -> Result<Card, Refused> {
    let place = faulty(&tree);
    let card = raised(tree).map_err(|unread| match unread {
        Unread::Newer => Refused::Newer,
        _ => Refused::In(place),
    })?;
    card.check().map_err(|(place, bad)| match bad {
        Bad::Long(most) => Refused::Long((place.into(), most)),
        Bad::Many(most) => Refused::Many((place.into(), most)),
        Bad::Conflict => Refused::In(place.into()),
    })?;
    Ok(Card { version: SCHEMA, ..card })
}

/// The first value or step that can't be read; the head where each of them can.
fn faulty(tree: &Json<'_>) -> Part {
    let first = |name, reads: fn(&Json<'_>) -> bool| {
        tree.field(name)
            .entries()
            .and_then(|entries| entries.iter().position(|entry| !reads(entry)))
    };
    let value = first("values", |entry| json::fill::<Item>(entry).is_ok());
    let step = first("steps", |entry| json::fill::<Step>(entry).is_ok());
    match (value, step) {
        (Some(k), _) => Part::Value(k + 1),
        (_, Some(k)) => Part::Step(k + 1),
        _ => Part::Head,
    }
}

/// The card as the part of an address after `#`, or how long that would be.
pub(super) fn link(card: &Card) -> Result<String, usize> {
    let link =
        LINK.to_owned() + &pack::pack(&json::write(&mut Card { version: SCHEMA, ..card.clone() }));
    if link.len() > LONGEST_LINK { Err(link.len()) } else { Ok(link) }
}

/// The card in an address after `#`; none where the address holds none.
pub(super) fn from_link(address: &str) -> Option<Result<Card, Refused>> {
    let packed = address.strip_prefix(LINK)?;
    let text = match pack::unpack(packed) {
        Ok(text) => text,
        Err(pack::Unpacked::Newer) => return Some(Err(Refused::Newer)),
        Err(pack::Unpacked::Damaged) => return Some(Err(Refused::Cut)),
    };
    Some(json::tree(&text).map_err(|_| Refused::Cut).and_then(read))
}
