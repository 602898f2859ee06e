//! Heads as a file: the kind of file, its version, and every head entry by entry, as
//! it was typed. It is read back as if a stranger had written it: all of it, or none.
use super::{Bad, Entry, read};
use crate::keep::json;
use crate::keep::kept::{Io, Kept, record};
use handturn::run::Header;
use handturn::{Cause, Error, Field};

/// What the file calls itself.
const KIND: &str = "handturn-heads";
/// Version of its form. A file of a later one is refused, so raise it when an entry is added.
const VERSION: u16 = 1;
/// Bytes of one entry; far more than any head fills.
const LONGEST: usize = 4_000;

/// The text of every entry of one head, in the order of [`Entry::ALL`].
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Texts(pub [String; Entry::ALL.len()]);

impl Texts {
    /// The text of each entry.
    pub fn each(&self) -> impl Iterator<Item = (Entry, &str)> {
        Entry::ALL.into_iter().zip(self.0.iter().map(String::as_str))
    }

    fn check(&self) -> Result<(), Bad> {
        for (entry, text) in self.each() {
            let choices = entry.choices();
            let cause = match () {
                () if text.len() > LONGEST => Cause::TooMany { most: LONGEST as u16 },
                () if !choices.is_empty() && !choices.contains(&text) => Cause::Conflict,
                () => continue,
            };
            return Err(Bad { entry, error: Error::new(Field::Record, cause) });
        }
        let of = |entry| self.each().find(|(own, _)| *own == entry).map_or("", |(_, text)| text);
        read(&of).map(|_| ())
    }
}

impl Kept for Texts {
    fn blank() -> Self {
        Self(std::array::from_fn(|_| String::new()))
    }
    fn each(&mut self, io: &mut Io<'_>) {
        io.record(&Entry::ALL.map(Entry::key), self);
    }
    fn part(&mut self, k: usize) -> Option<&mut dyn Kept> {
        self.0.get_mut(k).map(|text| text as &mut dyn Kept)
    }
}

struct Heads {
    kind: String,
    version: u16,
    heads: Vec<Texts>,
}

/// What every such file says of itself, whatever its version.
struct Says {
    kind: String,
    version: u16,
}

record! {
    Heads { kind, version, heads }
    Says { kind, version }
}

/// Why a file of heads is not opened.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Refused {
    /// It is something else.
    Foreign,
    /// It holds a Run.
    ARun,
    /// A newer version wrote it.
    Newer,
    /// It says that it holds heads, and does not.
    Damaged,
    /// In this head (from 0), this entry.
    Head(usize, Bad, String),
}

/// Heads as the text of a file.
#[must_use]
pub fn file(heads: Vec<Texts>) -> String {
    json::write(&mut Heads { kind: KIND.to_owned(), version: VERSION, heads })
}

/// Whether a text says that it holds heads.
#[must_use]
pub fn holds_heads(text: &str) -> bool {
    json::read::<Says>(text).is_ok_and(|says| says.kind == KIND)
}

/// The heads in the text of a file.
///
/// # Errors
/// Why it is refused, and where.
pub fn from_file(text: &str) -> Result<Vec<Texts>, Refused> {
    let says = json::read::<Says>(text).ok().filter(|says| says.kind == KIND);
    let Some(says) = says else {
        let run = json::read::<Header>(text).is_ok();
        return Err(if run { Refused::ARun } else { Refused::Foreign });
    };
    if says.version > VERSION {
        return Err(Refused::Newer);
    }
    let found = json::read::<Heads>(text).ok();
    let heads = found.filter(|found| found.version == VERSION).map(|found| found.heads);
    let heads = heads.filter(|heads| !heads.is_empty()).ok_or(Refused::Damaged)?;
    for (place, head) in heads.iter().enumerate() {
        head.check().map_err(|bad| {
            let typed = head.each().find(|(entry, _)| *entry == bad.entry);
            Refused::Head(place, bad, typed.map_or("", |(_, text)| text).to_owned())
        })?;
    }
    Ok(heads)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::owned::{GEARS_USUAL, PLATES_A};
    use serde_json::{Value, json};

    fn head(plates: &str) -> Texts {
        Texts(Entry::ALL.map(|entry| match entry {
            Entry::Plates => plates.to_owned(),
            Entry::Gears => GEARS_USUAL.to_owned(),
            _ => entry.default().to_owned(),
        }))
    }

    #[test]
    fn heads_come_back_from_a_file() {
        let heads = vec![head(PLATES_A), head("")];
        let text = file(heads.clone());
        assert!(text.starts_with("{\"kind\":\"handturn-heads\",\"version\":1,\"heads\":[{\"name\":\"Dividing head\",\"ratio\":\"40 : 1\","), "{text}");
        assert!(holds_heads(&text));
        assert_eq!(from_file(&text), Ok(heads));
    }

    /// What becomes of a good file changed by `change`.
    fn changed(change: impl FnOnce(&mut Value)) -> Result<Vec<Texts>, Refused> {
        let mut value: Value = serde_json::from_str(&file(vec![head(PLATES_A), head("")])).unwrap();
        change(&mut value);
        from_file(&value.to_string())
    }

    #[track_caller]
    fn refused_at(entry: Entry, text: &str) {
        let found = changed(|file| file["heads"][1][entry.key()] = json!(text));
        let Err(Refused::Head(1, bad, typed)) = found else { panic!("{entry:?}: {found:?}") };
        assert_eq!((bad.entry, &*typed), (entry, text));
    }

    #[test]
    fn what_a_stranger_wrote_is_refused_whole() {
        for foreign in
            ["", "{}", "[]", "{\"kind\":\"heads\",\"version\":1,\"heads\":[]}", "{\"kind\":1}"]
        {
            assert_eq!(from_file(foreign), Err(Refused::Foreign), "{foreign}");
        }
        assert_eq!(from_file("{\"frozen\":{\"version\":1},\"events\":[]}"), Err(Refused::ARun));
        assert_eq!(changed(|file| file["version"] = json!(2)), Err(Refused::Newer));
        assert_eq!(
            from_file(
                "{\"kind\":\"handturn-heads\",\"version\":7,\"of\":\"a form not known yet\"}"
            ),
            Err(Refused::Newer)
        );
        assert_eq!(changed(|file| file["version"] = json!(0)), Err(Refused::Damaged));
        assert_eq!(changed(|file| file["heads"] = json!([])), Err(Refused::Damaged));
        assert_eq!(changed(|file| file["heads"][1]["ratio"] = json!(40)), Err(Refused::Damaged));
        for entry in Entry::ALL {
            let without = changed(|file| {
                file["heads"][1].as_object_mut().unwrap().remove(entry.key());
            });
            assert_eq!(without, Err(Refused::Damaged), "{entry:?}");
            refused_at(entry, &"1 ".repeat(LONGEST));
            if !entry.choices().is_empty() {
                refused_at(entry, "sideways");
            }
        }
        refused_at(Entry::Name, " ");
        refused_at(Entry::Ratio, "0");
        refused_at(Entry::Plates, "15 15");
        refused_at(Entry::Gears, "24 <b>");
        refused_at(Entry::WorkDiameter, "none");
    }

    #[test]
    fn no_cut_off_file_is_taken_for_a_whole_one() {
        let good = file(vec![head(PLATES_A)]);
        for end in (0..good.len()).filter(|end| good.is_char_boundary(*end)) {
            assert!(from_file(&good[..end]).is_err(), "{end}");
        }
    }
}
