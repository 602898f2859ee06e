//! Plain data of JavaScript: what it hands in is read once, then looked into by name,
//! so that a refusal can say which value it is about; what it gets may be put together
//! of the same.
use super::refusal::Refusal;
use handturn::bounds::Bound;
use handturn::number::Fraction;
use serde::de::{Deserialize, DeserializeSeed, Deserializer, Error, MapAccess, SeqAccess, Visitor};
use serde::ser::{Serialize, Serializer};
use std::fmt;
use std::marker::PhantomData;

/// The greatest whole number that JavaScript holds exactly: 2^53 - 1.
pub(super) const MOST: f64 = 9_007_199_254_740_991.0;

/// A JavaScript value.
#[derive(Clone, Debug, PartialEq)]
pub enum Given {
    /// `undefined` or `null`.
    Nothing,
    /// `true` or `false`.
    Flag(bool),
    /// A number, NaN and infinities among them.
    Number(f64),
    /// A text.
    Text(String),
    /// An array.
    List(Vec<Given>),
    /// An object, in the order of its keys.
    Object(Vec<(String, Given)>),
}

impl Given {
    /// The value under `key`; [`Given::Nothing`] when there is none.
    pub(super) fn get(&self, key: &str) -> &Given {
        let Given::Object(entries) = self else { return &Given::Nothing };
        entries.iter().find(|(name, _)| name == key).map_or(&Given::Nothing, |(_, value)| value)
    }

    /// Whether `key` is named, even with nothing in it.
    pub(super) fn names(&self, key: &str) -> bool {
        matches!(self, Given::Object(entries) if entries.iter().any(|(name, _)| name == key))
    }

    /// Whether there is a value under `key`.
    pub(super) fn has(&self, key: &str) -> bool {
        *self.get(key) != Given::Nothing
    }

    /// The keys of an object, all of them known.
    ///
    /// # Errors
    /// When this is no object, or has a key that is not among `known`.
    pub(super) fn only(&self, name: &str, known: &[&str]) -> Result<(), Refusal> {
        let Given::Object(entries) = self else {
            return Err(Refusal::kind(name, "an object", self));
        };
        match entries.iter().find(|(key, _)| !known.contains(&key.as_str())) {
            Some((key, _)) => Err(Refusal::unknown(&dotted(name, key), known)),
            None => Ok(()),
        }
    }

    /// A whole number within `bound`.
    ///
    /// # Errors
    /// For NaN, fractions, numbers beyond the bound, and what is no number, by name.
    pub(super) fn count(&self, name: &str, bound: Bound) -> Result<u32, Refusal> {
        let whole = self.whole(name)?;
        bound.check_u32(whole).map_err(|error| Refusal::of(name, &error, &whole.to_string()))
    }

    /// [`Given::count`], or `default` where nothing is given.
    ///
    /// # Errors
    /// As [`Given::count`].
    pub(super) fn count_or(&self, name: &str, bound: Bound, default: u32) -> Result<u32, Refusal> {
        if *self == Given::Nothing { Ok(default) } else { self.count(name, bound) }
    }

    /// A whole number within 2^53.
    ///
    /// # Errors
    /// For NaN, fractions, numbers beyond 2^53 and what is no number, by name.
    pub(super) fn whole(&self, name: &str) -> Result<i64, Refusal> {
        match self {
            #[expect(clippy::cast_possible_truncation, reason = "whole and within 2^53")]
            Given::Number(number) if number.fract() == 0.0 && number.abs() <= MOST => {
                Ok(*number as i64)
            }
            _ => Err(Refusal::kind(name, "a whole number within 2^53", self)),
        }
    }

    /// An exact fraction: a whole number or `[num, den]`.
    ///
    /// # Errors
    /// For parts that are not whole or not within 2^53, and a denominator of 0, by name.
    pub(super) fn fraction(&self, name: &str) -> Result<Fraction, Refusal> {
        match self {
            Given::List(parts) => {
                let [num, den] = parts.as_slice() else {
                    return Err(Refusal::kind(name, "[num, den]", self));
                };
                let (num, den) = (num.whole(&dotted(name, "0"))?, den.whole(&dotted(name, "1"))?);
                Fraction::new(num, den)
                    .map_err(|error| Refusal::of(name, &error, &self.to_string()))
            }
            _ => Ok(Fraction::whole(self.whole(name)?)),
        }
    }

    /// A text as a person types it: a text as it is, a number in decimals.
    ///
    /// # Errors
    /// For NaN, infinities, numbers beyond 2^53, and what is neither, by name.
    pub(super) fn text(&self, name: &str) -> Result<String, Refusal> {
        match self {
            Given::Text(text) => Ok(text.clone()),
            Given::Number(number) if number.abs() <= MOST => Ok(number.to_string()),
            _ => Err(Refusal::kind(name, "a text, or a number within 2^53", self)),
        }
    }

    /// `true` or `false`, or `default` where nothing is given.
    ///
    /// # Errors
    /// For anything else, by name.
    pub(super) fn flag(&self, name: &str, default: bool) -> Result<bool, Refusal> {
        match self {
            Given::Nothing => Ok(default),
            Given::Flag(flag) => Ok(*flag),
            _ => Err(Refusal::kind(name, "true or false", self)),
        }
    }

    /// The entries of an array.
    ///
    /// # Errors
    /// When this is no array, by name.
    pub(super) fn list(&self, name: &str) -> Result<&[Given], Refusal> {
        match self {
            Given::List(list) => Ok(list),
            _ => Err(Refusal::kind(name, "an array", self)),
        }
    }
}

/// `head` and `plates` as `head.plates`; the outermost has no name.
pub(super) fn dotted(name: &str, key: &str) -> String {
    if name.is_empty() { key.to_owned() } else { [name, ".", key].concat() }
}

impl fmt::Display for Given {
    /// As JavaScript would write it, long ones cut short.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Given::Nothing => f.write_str("nothing"),
            Given::Flag(flag) => write!(f, "{flag}"),
            Given::Number(number) => write!(f, "{number}"),
            Given::Text(text) => {
                write!(f, "\"{}\"", text.chars().take(40).collect::<String>())
            }
            Given::List(list) if list.len() > 4 => write!(f, "an array of {}", list.len()),
            Given::List(list) => {
                let entries: Vec<String> = list.iter().map(Given::to_string).collect();
                write!(f, "[{}]", entries.join(", "))
            }
            Given::Object(_) => f.write_str("an object"),
        }
    }
}

impl Serialize for Given {
    /// Whole numbers as such: JavaScript writes no `.0`.
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        match self {
            Given::Nothing => serializer.serialize_none(),
            Given::Flag(flag) => serializer.serialize_bool(*flag),
            Given::Number(number) => match self.whole("") {
                Ok(whole) => serializer.serialize_i64(whole),
                Err(_) => serializer.serialize_f64(*number),
            },
            Given::Text(text) => serializer.serialize_str(text),
            Given::List(list) => serializer.collect_seq(list),
            Given::Object(entries) => serializer.collect_map(entries.iter().map(|(k, v)| (k, v))),
        }
    }
}

impl<'de> Deserialize<'de> for Given {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_any(Reader { depth: 0 })
    }
}

/// Arrays and objects within each other, at most: no request needs more, and an
/// object that holds itself would never end.
const DEEPEST: u32 = 8;

#[derive(Clone, Copy)]
struct Reader {
    depth: u32,
}

impl Reader {
    fn deeper<E: Error>(self) -> Result<Self, E> {
        if self.depth < DEEPEST {
            Ok(Self { depth: self.depth + 1 })
        } else {
            Err(E::custom("it is nested too deep"))
        }
    }
}

impl<'de> DeserializeSeed<'de> for Reader {
    type Value = Given;

    fn deserialize<D: Deserializer<'de>>(self, deserializer: D) -> Result<Given, D::Error> {
        deserializer.deserialize_any(self)
    }
}

#[expect(clippy::cast_precision_loss, reason = "numbers of JavaScript come from f64")]
impl<'de> Visitor<'de> for Reader {
    type Value = Given;

    fn expecting(&self, f: &mut fmt::Formatter) -> fmt::Result {
        f.write_str("plain data")
    }
    fn visit_unit<E>(self) -> Result<Given, E> {
        Ok(Given::Nothing)
    }
    fn visit_none<E>(self) -> Result<Given, E> {
        Ok(Given::Nothing)
    }
    fn visit_bool<E>(self, flag: bool) -> Result<Given, E> {
        Ok(Given::Flag(flag))
    }
    fn visit_i64<E>(self, number: i64) -> Result<Given, E> {
        Ok(Given::Number(number as f64))
    }
    fn visit_u64<E>(self, number: u64) -> Result<Given, E> {
        Ok(Given::Number(number as f64))
    }
    fn visit_f64<E>(self, number: f64) -> Result<Given, E> {
        Ok(Given::Number(number))
    }
    fn visit_str<E>(self, text: &str) -> Result<Given, E> {
        Ok(Given::Text(text.to_owned()))
    }
    fn visit_seq<A: SeqAccess<'de>>(self, mut entries: A) -> Result<Given, A::Error> {
        let within = self.deeper()?;
        let mut list = Vec::new();
        while let Some(entry) = entries.next_element_seed(within)? {
            list.push(entry);
        }
        Ok(Given::List(list))
    }
    fn visit_map<A: MapAccess<'de>>(self, mut entries: A) -> Result<Given, A::Error> {
        let within = self.deeper()?;
        let mut object = Vec::new();
        while let Some(entry) = entries.next_entry_seed(PhantomData::<String>, within)? {
            object.push(entry);
        }
        Ok(Given::Object(object))
    }
}
