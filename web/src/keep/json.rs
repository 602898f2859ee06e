//! JSON for what is kept: whole numbers, text, yes and no, nothing, lists, records.
//! Fractions of a number do not occur: exact values are pairs of whole numbers.
//!
//! Text becomes a [`Json`] tree and a tree becomes a value by `Kept`. That is
//! small: with a derive the same types took five times the code, and the page is
//! one file that is carried about. What is written is what the core's own derive
//! writes and reads; a test holds the two together. What is read may be anything
//! at all: it gives a value or [`Bad`], and never nests deeper than `DEEPEST`.
use super::kept::{self, Kept};
use std::borrow::Cow;

/// Lists and records within each other, at most.
const DEEPEST: u32 = 24;

/// The text is not JSON of the shape wanted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Bad;

/// A piece of JSON.
#[derive(Clone, Debug, PartialEq)]
pub enum Json<'t> {
    /// `null`, or a field that is not there.
    Null,
    /// `true` or `false`.
    Truth(bool),
    /// A whole number.
    Whole(i64),
    /// A text.
    Text(Cow<'t, str>),
    /// A list.
    List(Vec<Json<'t>>),
    /// A record, its fields in the order written.
    Record(Vec<(Cow<'t, str>, Json<'t>)>),
}

/// The value in `text`, which holds nothing else but white space.
///
/// # Errors
/// [`Bad`] when it is not JSON or not of the shape of `T`.
pub fn read<T: Kept>(text: &str) -> Result<T, Bad> {
    let mut value = T::blank();
    if read_into(text, &mut value) { Ok(value) } else { Err(Bad) }
}

fn read_into(text: &str, value: &mut dyn Kept) -> bool {
    tree(text).is_ok_and(|tree| kept::read(&tree, value))
}

/// All of `text` as a tree.
///
/// # Errors
/// At which byte it is not JSON any more.
pub fn tree(text: &str) -> Result<Json<'_>, usize> {
    let mut reader = Reader { text, at: 0, depth: 0 };
    let value = reader.value();
    value.filter(|_| reader.peek().is_none()).ok_or(reader.at)
}

/// The value in a tree.
///
/// # Errors
/// [`Bad`] when it is not of the shape of `T`.
pub fn fill<T: Kept>(tree: &Json<'_>) -> Result<T, Bad> {
    let mut value = T::blank();
    if kept::read(tree, &mut value) { Ok(value) } else { Err(Bad) }
}

/// `value` as JSON without white space; it is not changed by that.
#[must_use]
pub fn write(value: &mut dyn Kept) -> String {
    kept::write(value)
}

impl Json<'_> {
    /// The field of a record; nothing when there is none of that name, or two.
    #[must_use]
    pub fn field(&self, name: &str) -> &Self {
        let Self::Record(fields) = self else { return &Json::Null };
        let mut named = fields.iter().filter(|(own, _)| own == name).map(|(_, value)| value);
        match (named.next(), named.next()) {
            (Some(value), None) => value,
            _ => &Json::Null,
        }
    }

    /// The name and content of a choice: `"Name"` or `{"Name": content}`.
    #[must_use]
    pub fn choice(&self) -> Option<(&str, &Self)> {
        match self {
            Self::Text(name) => Some((name, &Json::Null)),
            Self::Record(fields) => match &**fields {
                [(name, content)] => Some((name, content)),
                _ => None,
            },
            _ => None,
        }
    }

    /// The entries of a list.
    #[must_use]
    pub fn entries(&self) -> Option<&[Self]> {
        if let Self::List(entries) = self { Some(entries) } else { None }
    }
}

/// Appends `value` between quotes.
pub(crate) fn quote(text: &mut String, value: &str) {
    text.push('"');
    let mut rest = value;
    while let Some(at) = rest.find(|c: char| c < ' ' || matches!(c, '"' | '\\')) {
        let (plain, special) = rest.split_at(at);
        text.push_str(plain);
        let mut special = special.chars();
        let c = special.next().unwrap_or_default();
        rest = special.as_str();
        match c {
            '"' | '\\' => text.extend(['\\', c]),
            '\n' => text.push_str("\\n"),
            '\r' => text.push_str("\\r"),
            '\t' => text.push_str("\\t"),
            '\u{8}' => text.push_str("\\b"),
            '\u{c}' => text.push_str("\\f"),
            _ => {
                text.push_str("\\u00");
                let digit = |d| char::from_digit(d, 16).unwrap_or('0');
                text.extend([c as u32 >> 4, c as u32 & 15].map(digit));
            }
        }
    }
    text.push_str(rest);
    text.push('"');
}

struct Reader<'t> {
    text: &'t str,
    at: usize,
    depth: u32,
}

impl<'t> Reader<'t> {
    fn peek(&mut self) -> Option<u8> {
        let bytes = self.text.as_bytes();
        while matches!(bytes.get(self.at), Some(b' ' | b'\n' | b'\r' | b'\t')) {
            self.at += 1;
        }
        bytes.get(self.at).copied()
    }

    /// Takes `wanted` if it comes next.
    fn take(&mut self, wanted: &str) -> bool {
        self.peek();
        let there = self.text.get(self.at..).is_some_and(|rest| rest.starts_with(wanted));
        self.at += if there { wanted.len() } else { 0 };
        there
    }

    fn value(&mut self) -> Option<Json<'t>> {
        match self.peek()? {
            b'"' => self.string().map(Json::Text),
            b'[' => self
                .nested("]", |reader, list: &mut Vec<_>| {
                    list.push(reader.value()?);
                    Some(())
                })
                .map(Json::List),
            b'{' => self
                .nested("}", |reader, fields: &mut Vec<_>| {
                    reader.peek();
                    let name = reader.string()?;
                    if !reader.take(":") {
                        return None;
                    }
                    fields.push((name, reader.value()?));
                    Some(())
                })
                .map(Json::Record),
            b'n' => self.take("null").then_some(Json::Null),
            b't' => self.take("true").then_some(Json::Truth(true)),
            b'f' => self.take("false").then_some(Json::Truth(false)),
            _ => self.number().map(Json::Whole),
        }
    }

    /// Entries up to `close`, parted by commas.
    fn nested<T>(
        &mut self,
        close: &str,
        entry: impl Fn(&mut Self, &mut Vec<T>) -> Option<()>,
    ) -> Option<Vec<T>> {
        let mut entries = Vec::new();
        self.at += 1;
        self.depth += 1;
        if self.depth > DEEPEST {
            return None;
        }
        while !self.take(close) {
            if !entries.is_empty() && !self.take(",") {
                return None;
            }
            entry(self, &mut entries)?;
        }
        self.depth -= 1;
        Some(entries)
    }

    /// A whole number; one with a point or an exponent is refused.
    fn number(&mut self) -> Option<i64> {
        let rest = self.text.get(self.at..)?;
        let end = rest.find(|c: char| !matches!(c, '0'..='9' | '-' | '+' | '.' | 'e' | 'E'));
        let digits = rest.get(..end.unwrap_or(rest.len()))?;
        self.at += digits.len();
        if digits.starts_with('+') { None } else { digits.parse().ok() }
    }

    fn string(&mut self) -> Option<Cow<'t, str>> {
        if !self.take("\"") {
            return None;
        }
        let mut whole = Cow::Borrowed("");
        loop {
            let rest = self.text.get(self.at..)?;
            let end = rest.find(|c: char| c == '"' || c == '\\' || c < ' ')?;
            let plain = rest.get(..end)?;
            if whole.is_empty() {
                whole = Cow::Borrowed(plain);
            } else {
                whole.to_mut().push_str(plain);
            }
            self.at += end + 1;
            match rest.as_bytes().get(end) {
                Some(b'"') => return Some(whole),
                Some(b'\\') => whole.to_mut().push(self.escaped()?),
                _ => return None,
            }
        }
    }

    fn escaped(&mut self) -> Option<char> {
        let code = *self.text.as_bytes().get(self.at)?;
        self.at += 1;
        Some(match code {
            b'"' | b'\\' | b'/' => char::from(code),
            b'n' => '\n',
            b'r' => '\r',
            b't' => '\t',
            b'b' => '\u{8}',
            b'f' => '\u{c}',
            b'u' => {
                let high = self.four()?;
                let low = match high {
                    0xd800..0xdc00 if self.text.get(self.at..)?.starts_with("\\u") => {
                        self.at += 2;
                        Some(self.four()?)
                    }
                    _ => None,
                };
                let mut chars = char::decode_utf16([high].into_iter().chain(low));
                return chars.next()?.ok().filter(|_| chars.next().is_none());
            }
            _ => return None,
        })
    }

    fn four(&mut self) -> Option<u16> {
        let digits = self.text.get(self.at..self.at + 4)?;
        self.at += 4;
        if digits.starts_with('+') { None } else { u16::from_str_radix(digits, 16).ok() }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_written_is_read() {
        let mut all = (i64::MIN, vec!["\"\\\n\u{1e}π𝄞".to_owned(), String::new()]);
        let text = write(&mut all);
        assert_eq!(text, "[-9223372036854775808,[\"\\\"\\\\\\n\\u001eπ𝄞\",\"\"]]");
        assert_eq!(read(&text), Ok(all));
        assert_eq!(
            read::<Vec<Option<bool>>>("[true,null,false]"),
            Ok(vec![Some(true), None, Some(false)])
        );
    }

    #[test]
    fn spaces_and_escapes_are_read() {
        let text = "\n[ 1 ,\t\"\\ud834\\udd1e\\u0041\\/\" ] ";
        assert_eq!(read(text), Ok((1_u64, "𝄞A/".to_owned())));
    }

    #[track_caller]
    fn refused<T: Kept + std::fmt::Debug + PartialEq>(text: &str) {
        assert_eq!(read::<T>(text), Err(Bad), "{text:.40}");
    }

    #[test]
    fn anything_else_is_refused() {
        for text in [
            "", "1.5", "1e3", "+1", "--1", "256", "-1", "0x1", "1 2", "[1]", "\"1\"", "null", "tru",
        ] {
            refused::<u8>(text);
        }
        for text in
            ["[1,2", "[1 2]", "[,1]", "[1,]", "{}", "[1]]", "[1}", "{\"a\":1,}", "{\"a\" 1}"]
        {
            refused::<Vec<u8>>(text);
        }
        for text in [
            "\"",
            "\"\\\"",
            "\"\\x\"",
            "\"\\u12\"",
            "\"\\ud834\"",
            "\"\\ud834\\u0041\"",
            "\"\\u+123\"",
            "\"\n\"",
        ] {
            refused::<String>(text);
        }
        refused::<Vec<u8>>(&"[".repeat(100_000));
        refused::<Vec<u8>>(&"{\"a\":".repeat(100_000));
    }
}
