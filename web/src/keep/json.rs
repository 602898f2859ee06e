//! JSON for what is kept, on serde: whole numbers, text, yes and no, lists and
//! records. Fractions of a number do not occur (exact values are pairs of whole
//! numbers), and leaving them out makes the page some 10 kB smaller than a
//! library that reads them. What is read may be anything at all: it either gives
//! the value or [`Bad`], never more nesting than `DEEPEST`.
use serde::de::{
    self, DeserializeSeed, Deserializer, EnumAccess, MapAccess, SeqAccess, VariantAccess, Visitor,
};
use serde::ser::{self, Serialize, Serializer};
use std::borrow::Cow;
use std::fmt;

/// Lists and records within each other, at most.
const DEEPEST: u32 = 24;

/// The text is not JSON of the shape wanted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Bad;

impl fmt::Display for Bad {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("not a record of the kind wanted")
    }
}

impl std::error::Error for Bad {}

/// Every kind of error is the same, so that no text for it is carried along.
impl de::Error for Bad {
    fn custom<T: fmt::Display>(_: T) -> Self {
        Bad
    }
    fn invalid_type(_: de::Unexpected, _: &dyn de::Expected) -> Self {
        Bad
    }
    fn invalid_value(_: de::Unexpected, _: &dyn de::Expected) -> Self {
        Bad
    }
    fn invalid_length(_: usize, _: &dyn de::Expected) -> Self {
        Bad
    }
    fn unknown_variant(_: &str, _: &'static [&'static str]) -> Self {
        Bad
    }
    fn unknown_field(_: &str, _: &'static [&'static str]) -> Self {
        Bad
    }
    fn missing_field(_: &'static str) -> Self {
        Bad
    }
    fn duplicate_field(_: &'static str) -> Self {
        Bad
    }
}

impl ser::Error for Bad {
    fn custom<T: fmt::Display>(_: T) -> Self {
        Bad
    }
}

/// The value in `text`, which holds nothing else but white space.
///
/// # Errors
/// [`Bad`] when it is not JSON or not of the shape of `T`.
pub fn read<'t, T: de::Deserialize<'t>>(text: &'t str) -> Result<T, Bad> {
    let mut reader = Reader { text, at: 0, depth: 0 };
    let value = T::deserialize(&mut reader)?;
    match reader.peek() {
        None => Ok(value),
        Some(_) => Err(Bad),
    }
}

/// `value` as JSON without white space.
///
/// # Errors
/// [`Bad`] when it holds a fraction of a number.
pub fn write<T: Serialize + ?Sized>(value: &T) -> Result<String, Bad> {
    let mut text = String::new();
    value.serialize(Writer { text: &mut text })?;
    Ok(text)
}

// --- reading -------------------------------------------------------------------

struct Reader<'t> {
    text: &'t str,
    at: usize,
    depth: u32,
}

impl<'t> Reader<'t> {
    #[inline(never)]
    fn peek(&mut self) -> Option<u8> {
        let bytes = self.text.as_bytes();
        while matches!(bytes.get(self.at), Some(b' ' | b'\n' | b'\r' | b'\t')) {
            self.at += 1;
        }
        bytes.get(self.at).copied()
    }

    /// Takes `wanted` if it comes next.
    #[inline(never)]
    fn take(&mut self, wanted: u8) -> bool {
        let there = self.peek() == Some(wanted);
        self.at += usize::from(there);
        there
    }

    #[inline(never)]
    fn need(&mut self, wanted: u8) -> Result<(), Bad> {
        if self.take(wanted) { Ok(()) } else { Err(Bad) }
    }

    #[inline(never)]
    fn word(&mut self, wanted: &str) -> bool {
        self.peek();
        let there = self.text[self.at..].starts_with(wanted);
        self.at += if there { wanted.len() } else { 0 };
        there
    }

    #[inline(never)]
    fn deeper(&mut self) -> Result<(), Bad> {
        self.depth += 1;
        if self.depth > DEEPEST { Err(Bad) } else { Ok(()) }
    }

    /// A whole number; one with a point or an exponent is refused.
    #[inline(never)]
    fn whole(&mut self) -> Result<i64, Bad> {
        self.peek();
        let rest = &self.text[self.at..];
        let end = rest.find(|c: char| !matches!(c, '0'..='9' | '-' | '+' | '.' | 'e' | 'E'));
        let digits = &rest[..end.unwrap_or(rest.len())];
        self.at += digits.len();
        if digits.starts_with('+') { Err(Bad) } else { digits.parse().map_err(|_| Bad) }
    }

    #[inline(never)]
    fn text(&mut self) -> Result<Cow<'t, str>, Bad> {
        self.need(b'"')?;
        let mut whole = Cow::Borrowed("");
        loop {
            let rest = &self.text[self.at..];
            let end = rest.find(|c: char| c == '"' || c == '\\' || c < ' ').ok_or(Bad)?;
            if whole.is_empty() {
                whole = Cow::Borrowed(&rest[..end]);
            } else {
                whole.to_mut().push_str(&rest[..end]);
            }
            self.at += end + 1;
            match rest.as_bytes().get(end) {
                Some(b'"') => return Ok(whole),
                Some(b'\\') => whole.to_mut().push(self.escaped()?),
                _ => return Err(Bad),
            }
        }
    }

    fn escaped(&mut self) -> Result<char, Bad> {
        let code = *self.text.as_bytes().get(self.at).ok_or(Bad)?;
        self.at += 1;
        Ok(match code {
            b'"' | b'\\' | b'/' => char::from(code),
            b'n' => '\n',
            b'r' => '\r',
            b't' => '\t',
            b'b' => '\u{8}',
            b'f' => '\u{c}',
            b'u' => {
                let high = self.four()?;
                if (0xd800..0xdc00).contains(&high) {
                    let low = if self.word("\\u") { self.four()? } else { 0 };
                    let pair = [high, low].into_iter();
                    return char::decode_utf16(pair).next().ok_or(Bad)?.map_err(|_| Bad);
                }
                char::from_u32(u32::from(high)).ok_or(Bad)?
            }
            _ => return Err(Bad),
        })
    }

    fn four(&mut self) -> Result<u16, Bad> {
        let digits = self.text.get(self.at..self.at + 4).ok_or(Bad)?;
        self.at += 4;
        if digits.starts_with('+') {
            Err(Bad)
        } else {
            u16::from_str_radix(digits, 16).map_err(|_| Bad)
        }
    }

    /// Passes over any value.
    fn skip(&mut self) -> Result<(), Bad> {
        match self.peek() {
            Some(b'"') => self.text().map(drop),
            Some(b't' | b'f' | b'n') => {
                if self.word("true") || self.word("false") || self.word("null") {
                    Ok(())
                } else {
                    Err(Bad)
                }
            }
            Some(open @ (b'[' | b'{')) => {
                self.deeper()?;
                self.at += 1;
                let close = open + 2;
                let mut first = true;
                while !self.take(close) {
                    if !first {
                        self.need(b',')?;
                    }
                    first = false;
                    if open == b'{' {
                        self.text()?;
                        self.need(b':')?;
                    }
                    self.skip()?;
                }
                self.depth -= 1;
                Ok(())
            }
            _ => {
                self.peek();
                let rest = &self.text[self.at..];
                let end =
                    rest.find(|c: char| !matches!(c, '0'..='9' | '-' | '+' | '.' | 'e' | 'E'));
                let number = &rest[..end.unwrap_or(rest.len())];
                self.at += number.len();
                if number.is_empty() { Err(Bad) } else { Ok(()) }
            }
        }
    }
}

macro_rules! refuse {
    ($($name:ident)*) => {$(
        fn $name<V: Visitor<'t>>(self, _: V) -> Result<V::Value, Bad> {
            Err(Bad)
        }
    )*};
}
macro_rules! whole {
    ($($name:ident)*) => {$(
        fn $name<V: Visitor<'t>>(self, visitor: V) -> Result<V::Value, Bad> {
            visitor.visit_i64(self.whole()?)
        }
    )*};
}
macro_rules! text {
    ($($name:ident)*) => {$(
        fn $name<V: Visitor<'t>>(self, visitor: V) -> Result<V::Value, Bad> {
            visitor.visit_str(&self.text()?)
        }
    )*};
}

impl<'t> Deserializer<'t> for &mut Reader<'t> {
    type Error = Bad;

    refuse! { deserialize_any deserialize_f32 deserialize_f64 deserialize_char deserialize_bytes deserialize_byte_buf deserialize_unit }
    whole! { deserialize_i8 deserialize_i16 deserialize_i32 deserialize_i64 deserialize_u8 deserialize_u16 deserialize_u32 deserialize_u64 }
    text! { deserialize_str deserialize_string deserialize_identifier }

    fn deserialize_bool<V: Visitor<'t>>(self, visitor: V) -> Result<V::Value, Bad> {
        let yes = self.word("true");
        if yes || self.word("false") { visitor.visit_bool(yes) } else { Err(Bad) }
    }

    fn deserialize_option<V: Visitor<'t>>(self, visitor: V) -> Result<V::Value, Bad> {
        if self.word("null") { visitor.visit_none() } else { visitor.visit_some(self) }
    }

    fn deserialize_unit_struct<V: Visitor<'t>>(
        self,
        _: &'static str,
        _: V,
    ) -> Result<V::Value, Bad> {
        Err(Bad)
    }

    fn deserialize_newtype_struct<V: Visitor<'t>>(
        self,
        _: &'static str,
        visitor: V,
    ) -> Result<V::Value, Bad> {
        visitor.visit_newtype_struct(self)
    }

    fn deserialize_seq<V: Visitor<'t>>(self, visitor: V) -> Result<V::Value, Bad> {
        self.deeper()?;
        self.need(b'[')?;
        let value = visitor.visit_seq(Entries { reader: self, first: true })?;
        self.need(b']')?;
        self.depth -= 1;
        Ok(value)
    }

    fn deserialize_tuple<V: Visitor<'t>>(self, _: usize, visitor: V) -> Result<V::Value, Bad> {
        self.deserialize_seq(visitor)
    }

    fn deserialize_tuple_struct<V: Visitor<'t>>(
        self,
        _: &'static str,
        _: usize,
        visitor: V,
    ) -> Result<V::Value, Bad> {
        self.deserialize_seq(visitor)
    }

    fn deserialize_map<V: Visitor<'t>>(self, visitor: V) -> Result<V::Value, Bad> {
        self.deeper()?;
        self.need(b'{')?;
        let value = visitor.visit_map(Entries { reader: self, first: true })?;
        self.need(b'}')?;
        self.depth -= 1;
        Ok(value)
    }

    fn deserialize_struct<V: Visitor<'t>>(
        self,
        _: &'static str,
        _: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, Bad> {
        self.deserialize_map(visitor)
    }

    fn deserialize_enum<V: Visitor<'t>>(
        self,
        _: &'static str,
        _: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, Bad> {
        if self.peek() == Some(b'"') {
            return visitor.visit_enum(Variant { reader: self, bare: true });
        }
        self.deeper()?;
        self.need(b'{')?;
        let value = visitor.visit_enum(Variant { reader: self, bare: false })?;
        self.need(b'}')?;
        self.depth -= 1;
        Ok(value)
    }

    fn deserialize_ignored_any<V: Visitor<'t>>(self, visitor: V) -> Result<V::Value, Bad> {
        self.skip()?;
        visitor.visit_unit()
    }
}

/// Entries of a list or a record.
struct Entries<'r, 't> {
    reader: &'r mut Reader<'t>,
    first: bool,
}

impl Entries<'_, '_> {
    /// Whether another entry follows; takes the comma before it.
    #[inline(never)]
    fn more(&mut self, close: u8) -> Result<bool, Bad> {
        if self.reader.peek() == Some(close) {
            return Ok(false);
        }
        if !self.first {
            self.reader.need(b',')?;
        }
        self.first = false;
        Ok(true)
    }
}

impl<'t> SeqAccess<'t> for Entries<'_, 't> {
    type Error = Bad;
    fn next_element_seed<S: DeserializeSeed<'t>>(
        &mut self,
        seed: S,
    ) -> Result<Option<S::Value>, Bad> {
        if self.more(b']')? { seed.deserialize(&mut *self.reader).map(Some) } else { Ok(None) }
    }
}

impl<'t> MapAccess<'t> for Entries<'_, 't> {
    type Error = Bad;
    fn next_key_seed<S: DeserializeSeed<'t>>(&mut self, seed: S) -> Result<Option<S::Value>, Bad> {
        if self.more(b'}')? { seed.deserialize(&mut *self.reader).map(Some) } else { Ok(None) }
    }
    fn next_value_seed<S: DeserializeSeed<'t>>(&mut self, seed: S) -> Result<S::Value, Bad> {
        self.reader.need(b':')?;
        seed.deserialize(&mut *self.reader)
    }
}

/// `"Name"` or `{"Name": value}`.
struct Variant<'r, 't> {
    reader: &'r mut Reader<'t>,
    bare: bool,
}

impl<'t> EnumAccess<'t> for Variant<'_, 't> {
    type Error = Bad;
    type Variant = Self;
    fn variant_seed<S: DeserializeSeed<'t>>(self, seed: S) -> Result<(S::Value, Self), Bad> {
        let name = seed.deserialize(&mut *self.reader)?;
        if !self.bare {
            self.reader.need(b':')?;
        }
        Ok((name, self))
    }
}

impl<'t> VariantAccess<'t> for Variant<'_, 't> {
    type Error = Bad;
    fn unit_variant(self) -> Result<(), Bad> {
        if self.bare { Ok(()) } else { Err(Bad) }
    }
    fn newtype_variant_seed<S: DeserializeSeed<'t>>(self, seed: S) -> Result<S::Value, Bad> {
        if self.bare { Err(Bad) } else { seed.deserialize(self.reader) }
    }
    fn tuple_variant<V: Visitor<'t>>(self, _: usize, visitor: V) -> Result<V::Value, Bad> {
        if self.bare { Err(Bad) } else { self.reader.deserialize_seq(visitor) }
    }
    fn struct_variant<V: Visitor<'t>>(
        self,
        _: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, Bad> {
        if self.bare { Err(Bad) } else { self.reader.deserialize_map(visitor) }
    }
}

// --- writing -------------------------------------------------------------------

struct Writer<'w> {
    text: &'w mut String,
}

/// A list, a record or a variant that is being written; `close` ends it.
struct Open<'w> {
    text: &'w mut String,
    first: bool,
    close: &'static str,
}

impl Open<'_> {
    #[inline(never)]
    fn comma(&mut self) {
        if !self.first {
            self.text.push(',');
        }
        self.first = false;
    }
    fn entry<T: Serialize + ?Sized>(&mut self, value: &T) -> Result<(), Bad> {
        self.comma();
        value.serialize(Writer { text: self.text })
    }
    fn field<T: Serialize + ?Sized>(&mut self, name: &str, value: &T) -> Result<(), Bad> {
        self.comma();
        quote(self.text, name);
        self.text.push(':');
        value.serialize(Writer { text: self.text })
    }
}

#[inline(never)]
fn quote(text: &mut String, value: &str) {
    text.push('"');
    for c in value.chars() {
        match c {
            '"' | '\\' => text.extend(['\\', c]),
            '\n' => text.push_str("\\n"),
            c if c < ' ' => {
                text.push_str("\\u00");
                text.extend(
                    [c as u32 >> 4, c as u32 & 15].map(|d| char::from_digit(d, 16).unwrap_or('0')),
                );
            }
            c => text.push(c),
        }
    }
    text.push('"');
}

macro_rules! numbers {
    ($($name:ident $kind:ty),*) => {$(
        fn $name(self, value: $kind) -> Result<(), Bad> {
            self.text.push_str(itoa::Buffer::new().format(value));
            Ok(())
        }
    )*};
}
macro_rules! never {
    ($($name:ident $kind:ty),*) => {$(
        fn $name(self, _: $kind) -> Result<(), Bad> {
            Err(Bad)
        }
    )*};
}

impl<'w> Writer<'w> {
    fn open(self, open: &str, close: &'static str) -> Open<'w> {
        self.text.push_str(open);
        Open { text: self.text, first: true, close }
    }
    fn named(self, name: &str, open: &str, close: &'static str) -> Open<'w> {
        self.text.push('{');
        quote(self.text, name);
        self.text.push(':');
        self.open(open, close)
    }
}

impl<'w> Serializer for Writer<'w> {
    type Ok = ();
    type Error = Bad;
    type SerializeSeq = Open<'w>;
    type SerializeTuple = Open<'w>;
    type SerializeTupleStruct = Open<'w>;
    type SerializeTupleVariant = Open<'w>;
    type SerializeMap = ser::Impossible<(), Bad>;
    type SerializeStruct = Open<'w>;
    type SerializeStructVariant = Open<'w>;

    numbers! { serialize_i8 i8, serialize_i16 i16, serialize_i32 i32, serialize_i64 i64, serialize_u8 u8, serialize_u16 u16, serialize_u32 u32, serialize_u64 u64 }
    never! { serialize_f32 f32, serialize_f64 f64, serialize_char char, serialize_bytes &[u8] }

    fn serialize_bool(self, value: bool) -> Result<(), Bad> {
        self.text.push_str(if value { "true" } else { "false" });
        Ok(())
    }
    fn serialize_str(self, value: &str) -> Result<(), Bad> {
        quote(self.text, value);
        Ok(())
    }
    fn serialize_none(self) -> Result<(), Bad> {
        self.text.push_str("null");
        Ok(())
    }
    fn serialize_some<T: Serialize + ?Sized>(self, value: &T) -> Result<(), Bad> {
        value.serialize(self)
    }
    fn serialize_unit(self) -> Result<(), Bad> {
        self.serialize_none()
    }
    fn serialize_unit_struct(self, _: &'static str) -> Result<(), Bad> {
        Err(Bad)
    }
    fn serialize_unit_variant(
        self,
        _: &'static str,
        _: u32,
        name: &'static str,
    ) -> Result<(), Bad> {
        self.serialize_str(name)
    }
    fn serialize_newtype_struct<T: Serialize + ?Sized>(
        self,
        _: &'static str,
        value: &T,
    ) -> Result<(), Bad> {
        value.serialize(self)
    }
    fn serialize_newtype_variant<T: Serialize + ?Sized>(
        self,
        _: &'static str,
        _: u32,
        name: &'static str,
        value: &T,
    ) -> Result<(), Bad> {
        let mut open = self.open("{", "}");
        open.field(name, value)?;
        open.text.push_str(open.close);
        Ok(())
    }
    fn serialize_seq(self, _: Option<usize>) -> Result<Open<'w>, Bad> {
        Ok(self.open("[", "]"))
    }
    fn serialize_tuple(self, _: usize) -> Result<Open<'w>, Bad> {
        Ok(self.open("[", "]"))
    }
    fn serialize_tuple_struct(self, _: &'static str, _: usize) -> Result<Open<'w>, Bad> {
        Ok(self.open("[", "]"))
    }
    fn serialize_tuple_variant(
        self,
        _: &'static str,
        _: u32,
        name: &'static str,
        _: usize,
    ) -> Result<Open<'w>, Bad> {
        Ok(self.named(name, "[", "]}"))
    }
    fn serialize_map(self, _: Option<usize>) -> Result<Self::SerializeMap, Bad> {
        Err(Bad)
    }
    fn serialize_struct(self, _: &'static str, _: usize) -> Result<Open<'w>, Bad> {
        Ok(self.open("{", "}"))
    }
    fn serialize_struct_variant(
        self,
        _: &'static str,
        _: u32,
        name: &'static str,
        _: usize,
    ) -> Result<Open<'w>, Bad> {
        Ok(self.named(name, "{", "}}"))
    }
}

macro_rules! compound {
    ($($kind:ident $entry:ident ($($name:ident)?) $how:ident),*) => {$(
        impl ser::$kind for Open<'_> {
            type Ok = ();
            type Error = Bad;
            fn $entry<T: Serialize + ?Sized>(&mut self, $($name: &'static str,)? value: &T) -> Result<(), Bad> {
                self.$how($($name,)? value)
            }
            fn end(self) -> Result<(), Bad> {
                self.text.push_str(self.close);
                Ok(())
            }
        }
    )*};
}

compound! {
    SerializeSeq serialize_element () entry,
    SerializeTuple serialize_element () entry,
    SerializeTupleStruct serialize_field () entry,
    SerializeTupleVariant serialize_field () entry,
    SerializeStruct serialize_field (name) field,
    SerializeStructVariant serialize_field (name) field
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde::{Deserialize, Serialize};

    #[derive(Debug, PartialEq, Serialize, Deserialize)]
    enum Kind {
        Bare,
        One(u8),
        Two(i64, bool),
        Named { text: String },
    }

    #[derive(Debug, PartialEq, Serialize, Deserialize)]
    struct All {
        list: Vec<Kind>,
        maybe: Option<i32>,
        pair: (u64, String),
    }

    #[test]
    fn what_is_written_is_read() {
        let all = All {
            list: vec![
                Kind::Bare,
                Kind::One(255),
                Kind::Two(i64::MIN, true),
                Kind::Named { text: "\"\\\n\u{1e}π𝄞".into() },
            ],
            maybe: None,
            pair: (u64::from(u32::MAX), String::new()),
        };
        let text = write(&all).unwrap();
        assert_eq!(
            text,
            r#"{"list":["Bare",{"One":255},{"Two":[-9223372036854775808,true]},{"Named":{"text":"\"\\\n\u001eπ𝄞"}}],"maybe":null,"pair":[4294967295,""]}"#
        );
        assert_eq!(read(&text), Ok(all));
    }

    #[test]
    fn spaces_strange_fields_and_escapes_are_read() {
        let text = "\n{ \"other\" : [1.5e3, {\"a\":[true,null,\"\\\"]\"]}], \"list\" : [ ] , \"pair\" : [ 1 , \"\\ud834\\udd1e\\u0041\\/\" ], \"maybe\": -7 } ";
        assert_eq!(read(text), Ok(All { list: vec![], maybe: Some(-7), pair: (1, "𝄞A/".into()) }));
    }

    #[track_caller]
    fn refused<'t, T: Deserialize<'t> + fmt::Debug + PartialEq>(text: &'t str) {
        assert_eq!(read::<T>(text), Err(Bad), "{text}");
    }

    #[test]
    fn anything_else_is_refused() {
        for text in
            ["", "1.5", "1e3", "+1", "--1", "256", "-1", "0x1", "1 2", "[1]", "\"1\"", "null"]
        {
            refused::<u8>(text);
        }
        for text in ["[1,2", "[1 2]", "[,1]", "[1,]", "{}", "[1]]"] {
            refused::<Vec<u8>>(text);
        }
        for text in ["\"", "\"\\\"", "\"\\x\"", "\"\\u12\"", "\"\\ud834\"", "\"\\u+123\"", "\"\n\""]
        {
            refused::<String>(text);
        }
        for text in [
            "\"One\"",
            "{\"Bare\":1}",
            "{\"One\":1",
            "{\"One\":1,\"One\":2}",
            "{}",
            "\"None\"",
            "{\"Two\":[1]}",
        ] {
            refused::<Kind>(text);
        }
        refused::<All>(&("{\"x\":".to_owned() + &"[".repeat(100_000)));
        refused::<All>("{\"list\":[],\"list\":[],\"maybe\":null,\"pair\":[1,\"\"]}");
    }
}
