//! What has been typed and chosen, by name: the page's whole memory of its forms.
//!
//! A room reads its own fields by name; a name never typed reads as its default.
//! Names are those of the `name` attributes, so a field needs no code of its own.

use crate::keep::json;

/// Fields that are read back; there are far fewer.
const MOST_KEPT: usize = 2_000;

/// The value of the open card that a text names: `bore` of `=bore`.
#[must_use]
pub fn named(text: &str) -> Option<&str> {
    text.trim().strip_prefix('=').map(str::trim)
}

/// Texts by name.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Fields(Vec<(String, String)>);

impl Fields {
    /// What stands in `name`; nothing when it was never set.
    #[must_use]
    pub fn get(&self, name: &str) -> &str {
        self.or(name, "")
    }

    /// What stands in `name`, or `default` when it was never set.
    #[must_use]
    pub fn or<'a>(&'a self, name: &str, default: &'a str) -> &'a str {
        self.0.iter().find(|(n, _)| n == name).map_or(default, |(_, value)| value)
    }

    /// `text`, or where it names a value of the open card (`=bore`), that value's text;
    /// a name there is not stays as it is, and reads as no number.
    #[must_use]
    pub fn follow<'a>(&'a self, text: &'a str) -> &'a str {
        named(text).map_or(text, |name| self.or(&["value-", &name.to_lowercase()].concat(), text))
    }

    /// Whether `name` was ever set.
    #[must_use]
    pub fn has(&self, name: &str) -> bool {
        self.0.iter().any(|(n, _)| n == name)
    }

    /// Puts `value` into `name`.
    pub fn set(&mut self, name: &str, value: &str) {
        match self.0.iter_mut().find(|(n, _)| n == name) {
            Some((_, old)) => value.clone_into(old),
            None => self.0.push((name.to_owned(), value.to_owned())),
        }
    }

    /// Forgets `name`, so that it reads as its default.
    pub fn forget(&mut self, name: &str) {
        self.0.retain(|(n, _)| n != name);
    }

    /// Calls fields by other names: `None` forgets a field, a name taken already is
    /// overwritten by the later one.
    pub fn rename(&mut self, new: impl Fn(&str) -> Option<String>) {
        self.rename_all(&new);
    }

    #[inline(never)]
    fn rename_all(&mut self, new: &dyn Fn(&str) -> Option<String>) {
        for (name, value) in std::mem::take(&mut self.0) {
            if let Some(name) = new(&name) {
                self.set(&name, &value);
            }
        }
    }

    /// The fields as they are kept on the device.
    #[must_use]
    pub fn kept(&self) -> String {
        json::write(&mut self.0.clone())
    }

    /// The fields that were kept; none when the text is not theirs. Rooms check
    /// what stands in them as if it had just been typed.
    #[must_use]
    pub fn from_kept(text: &str) -> Self {
        let mut fields = Self::default();
        let pairs: Vec<(String, String)> = json::read(text).unwrap_or_default();
        for (name, value) in pairs.iter().take(MOST_KEPT) {
            fields.set(name, &crate::seam::clean(value));
        }
        fields
    }

    /// Every name and what stands in it, in the order first set.
    pub fn iter(&self) -> impl Iterator<Item = (&str, &str)> {
        self.0.iter().map(|(name, value)| (name.as_str(), value.as_str()))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_field_reads_as_its_default_until_it_is_set() {
        let mut fields = Fields::default();
        assert_eq!(fields.or("parts", "127"), "127");
        fields.set("parts", "");
        assert_eq!((fields.or("parts", "127"), fields.has("parts")), ("", true));
        fields.set("parts", "64");
        assert_eq!(fields.iter().collect::<Vec<_>>(), [("parts", "64")]);
        fields.set("every", "1");
        fields.rename(|name| (name != "every").then(|| name.to_owned() + "#1"));
        assert_eq!(fields.iter().collect::<Vec<_>>(), [("parts#1", "64")]);
        fields.forget("parts#1");
        assert_eq!(fields.or("parts", "127"), "127");
    }
}
