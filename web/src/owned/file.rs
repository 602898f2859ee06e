//! The Shop as a file: the kind of file, its version, every head entry by entry and
//! every list, as typed. It is read back as if a stranger had written it: all of it, or
//! none. Earlier files that hold heads alone are still read.
use super::lists::{self, Stock};
use super::{Bad, Entry, read};
use crate::keep::json;
use crate::keep::kept::{Io, Kept, record};
use handturn::run::Header;
use handturn::{Cause, Error, Field};

/// What the file calls itself.
const KIND: &str = "handturn-shop";
/// Version of its form. A file of a later one is refused, so raise it when an entry or a
/// list is added. Version 2 brought the mill's vertical screw.
const VERSION: u16 = 2;
/// What a file of heads alone called itself, and its only version.
const HEADS: &str = "handturn-heads";
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

/// The text of every list, in the order of [`Stock::ALL`].
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Lists(pub [String; Stock::ALL.len()]);

impl Lists {
    /// The text of each list.
    pub fn each(&self) -> impl Iterator<Item = (Stock, &str)> {
        Stock::ALL.into_iter().zip(self.0.iter().map(String::as_str))
    }
}

impl Kept for Lists {
    fn blank() -> Self {
        Self(std::array::from_fn(|_| String::new()))
    }
    fn each(&mut self, io: &mut Io<'_>) {
        io.record(&Stock::ALL.map(Stock::key), self);
    }
    fn part(&mut self, k: usize) -> Option<&mut dyn Kept> {
        self.0.get_mut(k).map(|text| text as &mut dyn Kept)
    }
}

/// The lists of the first version: what came later reads as its default.
struct First(Lists);

impl First {
    fn stocks() -> impl Iterator<Item = (usize, Stock)> {
        Stock::ALL.into_iter().enumerate().filter(|(_, stock)| stock.since() == 1)
    }
}

impl Kept for First {
    fn blank() -> Self {
        let text = |stock: Stock| if stock.since() == 1 { "" } else { stock.default() };
        Self(Lists(Stock::ALL.map(|stock| text(stock).to_owned())))
    }
    fn each(&mut self, io: &mut Io<'_>) {
        let keys: Vec<&str> = Self::stocks().map(|(_, stock)| stock.key()).collect();
        io.record(&keys, self);
    }
    fn part(&mut self, k: usize) -> Option<&mut dyn Kept> {
        let (place, _) = Self::stocks().nth(k)?;
        self.0.part(place)
    }
}

/// What a file holds.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Held {
    /// Every head.
    pub heads: Vec<Texts>,
    /// Every list; none in a file of heads alone.
    lists: Option<Lists>,
    /// The version that wrote it.
    version: u16,
}

impl Held {
    /// The text of each list that such a file has.
    pub fn lists(&self) -> impl Iterator<Item = (Stock, &str)> {
        let known = |(stock, _): &(Stock, &str)| stock.since() <= self.version;
        self.lists.iter().flat_map(Lists::each).filter(known)
    }
}

struct Shop {
    kind: String,
    version: u16,
    heads: Vec<Texts>,
    lists: Lists,
}

struct Earlier {
    kind: String,
    version: u16,
    heads: Vec<Texts>,
    lists: First,
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
    Shop { kind, version, heads, lists }
    Earlier { kind, version, heads, lists }
    Heads { kind, version, heads }
    Says { kind, version }
}

/// Why a file is not opened.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Refused {
    /// It is something else.
    Foreign,
    /// It holds a Run.
    ARun,
    /// A newer version wrote it.
    Newer,
    /// It says that it holds a Shop, and does not.
    Damaged,
    /// In this head (from 0), this entry.
    Head(usize, Bad, String),
    /// In this list.
    List(Stock, Error, String),
}

/// Heads and lists as the text of a file.
#[must_use]
pub fn file(heads: Vec<Texts>, lists: Lists) -> String {
    json::write(&mut Shop { kind: KIND.to_owned(), version: VERSION, heads, lists })
}

fn says(text: &str) -> Option<Says> {
    json::read::<Says>(text).ok().filter(|says| says.kind == KIND || says.kind == HEADS)
}

/// Whether a text says that it holds what the Shop keeps.
#[must_use]
pub fn holds_heads(text: &str) -> bool {
    says(text).is_some()
}

/// What the text of a file holds.
///
/// # Errors
/// Why it is refused, and where.
pub fn from_file(text: &str) -> Result<Held, Refused> {
    let Some(says) = says(text) else {
        let run = json::read::<Header>(text).is_ok();
        return Err(if run { Refused::ARun } else { Refused::Foreign });
    };
    if says.version > VERSION {
        return Err(Refused::Newer);
    }
    let version = says.version;
    let held = match (&*says.kind, version) {
        (KIND, VERSION) => {
            json::read::<Shop>(text).ok().map(|found| (found.heads, Some(found.lists)))
        }
        (KIND, 1) => {
            json::read::<Earlier>(text).ok().map(|found| (found.heads, Some(found.lists.0)))
        }
        (HEADS, 1) => json::read::<Heads>(text).ok().map(|found| (found.heads, None)),
        _ => None,
    };
    let held = held.map(|(heads, lists)| Held { heads, lists, version });
    let held = held.filter(|held| !held.heads.is_empty()).ok_or(Refused::Damaged)?;
    for (place, head) in held.heads.iter().enumerate() {
        head.check().map_err(|bad| {
            let typed = head.each().find(|(entry, _)| *entry == bad.entry);
            Refused::Head(place, bad, typed.map_or("", |(_, text)| text).to_owned())
        })?;
    }
    for (stock, text) in held.lists() {
        lists::check(stock, text).map_err(|error| Refused::List(stock, error, text.to_owned()))?;
    }
    Ok(held)
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

    fn lists() -> Lists {
        Lists(Stock::ALL.map(|stock| match stock {
            Stock::Blocks => "1.001-1.009x0.001 1/4".to_owned(),
            Stock::Taps => "M6 x 0.75\n2 BA".to_owned(),
            _ => stock.default().to_owned(),
        }))
    }

    fn good() -> String {
        file(vec![head(PLATES_A), head("")], lists())
    }

    #[test]
    fn all_of_it_comes_back_from_a_file() {
        let text = good();
        assert!(text.starts_with("{\"kind\":\"handturn-shop\",\"version\":2,\"heads\":[{\"name\":\"Dividing head\",\"ratio\":\"40 : 1\","), "{text}");
        assert!(holds_heads(&text));
        let heads = vec![head(PLATES_A), head("")];
        assert_eq!(from_file(&text), Ok(Held { heads, lists: Some(lists()), version: 2 }));
    }

    /// A file of the first version has no vertical screw and says nothing of it.
    #[test]
    fn an_earlier_file_of_the_shop_is_read() {
        let earlier = changed(|file| {
            file["version"] = json!(1);
            file["lists"].as_object_mut().unwrap().remove("mill-knee");
        });
        let held = earlier.unwrap();
        assert_eq!(held.heads, [head(PLATES_A), head("")]);
        let all = lists();
        let wanted = all.each().filter(|(stock, _)| *stock != Stock::MillKnee);
        assert!(held.lists().eq(wanted));
        let lacks = changed(|file| {
            file["version"] = json!(1);
            file["lists"].as_object_mut().unwrap().remove("feelers");
        });
        assert_eq!(lacks, Err(Refused::Damaged));
    }

    #[test]
    fn an_earlier_file_of_heads_is_read() {
        let heads = vec![head(PLATES_A)];
        let kind = HEADS.to_owned();
        let text = json::write(&mut Heads { kind, version: 1, heads: heads.clone() });
        assert_eq!(from_file(&text), Ok(Held { heads, lists: None, version: 1 }));
        assert_eq!(from_file(&text.replace(":1,", ":0,")), Err(Refused::Damaged));
        assert_eq!(from_file(&text.replace(":1,", ":2,")), Err(Refused::Damaged));
        assert_eq!(from_file(&text.replace(":1,", ":3,")), Err(Refused::Newer));
        for end in (0..text.len()).filter(|end| text.is_char_boundary(*end)) {
            assert!(from_file(&text[..end]).is_err(), "{end}");
        }
    }

    /// What becomes of a good file changed by `change`.
    fn changed(change: impl FnOnce(&mut Value)) -> Result<Held, Refused> {
        let mut value: Value = serde_json::from_str(&good()).unwrap();
        change(&mut value);
        from_file(&value.to_string())
    }

    #[track_caller]
    fn refused_at(entry: Entry, text: &str) {
        let found = changed(|file| file["heads"][1][entry.key()] = json!(text));
        let Err(Refused::Head(1, bad, typed)) = found else { panic!("{entry:?}: {found:?}") };
        assert_eq!((bad.entry, &*typed), (entry, text));
    }

    #[track_caller]
    fn refused_in(stock: Stock, text: &str) {
        let found = changed(|file| file["lists"][stock.key()] = json!(text));
        let Err(Refused::List(bad, _, typed)) = found else { panic!("{stock:?}: {found:?}") };
        assert_eq!((bad, &*typed), (stock, text));
    }

    #[test]
    fn what_a_stranger_wrote_is_refused_whole() {
        for foreign in
            ["", "{}", "[]", "{\"kind\":\"shop\",\"version\":1,\"heads\":[]}", "{\"kind\":1}"]
        {
            assert_eq!(from_file(foreign), Err(Refused::Foreign), "{foreign}");
        }
        assert_eq!(from_file("{\"frozen\":{\"version\":1},\"events\":[]}"), Err(Refused::ARun));
        assert_eq!(changed(|file| file["version"] = json!(3)), Err(Refused::Newer));
        let newer = "{\"kind\":\"handturn-shop\",\"version\":7,\"of\":\"a form not known yet\"}";
        assert_eq!(from_file(newer), Err(Refused::Newer));
        assert_eq!(changed(|file| file["version"] = json!(0)), Err(Refused::Damaged));
        assert_eq!(changed(|file| file["heads"] = json!([])), Err(Refused::Damaged));
        assert_eq!(changed(|file| file["lists"] = json!([])), Err(Refused::Damaged));
        refused_at(Entry::Name, " ");
        refused_at(Entry::Ratio, "0");
        refused_at(Entry::Plates, "15 15");
        refused_at(Entry::Gears, "24 <b>");
        refused_at(Entry::WorkDiameter, "none");
        refused_in(Stock::Taps, "M6 x 0.75\nM6.5q");
        refused_in(Stock::Drills, "number #81");
        refused_in(Stock::Feelers, &"1 ".repeat(9_000));
    }

    #[test]
    fn every_value_that_is_changed_is_refused_or_read_as_it_stands() {
        for entry in Entry::ALL {
            let key = entry.key();
            let without = changed(|file| {
                file["heads"][1].as_object_mut().unwrap().remove(key);
            });
            assert_eq!(without, Err(Refused::Damaged), "{key}");
            for other in [json!(40), json!(null), json!(["40"])] {
                let found = changed(|file| file["heads"][1][key] = other);
                assert_eq!(found, Err(Refused::Damaged), "{key}");
            }
            refused_at(entry, &"1 ".repeat(LONGEST));
            if !entry.choices().is_empty() {
                refused_at(entry, "sideways");
            }
        }
        for stock in Stock::ALL {
            let key = stock.key();
            let without = changed(|file| {
                file["lists"].as_object_mut().unwrap().remove(key);
            });
            assert_eq!(without, Err(Refused::Damaged), "{key}");
            let found = changed(|file| file["lists"][key] = json!(1));
            assert_eq!(found, Err(Refused::Damaged), "{key}");
            refused_in(stock, "\u{1F}?!");
            refused_in(stock, &"9 ".repeat(9_000));
        }
    }

    #[test]
    fn no_cut_off_file_is_taken_for_a_whole_one() {
        let good = good();
        for end in (0..good.len()).filter(|end| good.is_char_boundary(*end)) {
            assert!(from_file(&good[..end]).is_err(), "{end}");
        }
    }
}
