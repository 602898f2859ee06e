//! A short text of fixed capacity. A text that does not fit is refused, never cut.
use crate::error::{Cause, Error, Field};
use core::ops::Deref;

/// At most `CAP` bytes of text.
#[derive(Clone, Debug, PartialEq, Eq, Default)]
pub struct Text<const CAP: usize>(heapless::String<CAP>);

impl<const CAP: usize> Text<CAP> {
    /// `text`, for `field`.
    ///
    /// # Errors
    /// [`Cause::TooMany`] with the number of bytes that fit.
    pub fn new(field: Field, text: &str) -> Result<Self, Error> {
        let most = u16::try_from(CAP).unwrap_or(u16::MAX);
        let fits = text.parse().map_err(|_| Error::new(field, Cause::TooMany { most }));
        fits.map(Self)
    }
}

impl<const CAP: usize> Deref for Text<CAP> {
    type Target = str;
    fn deref(&self) -> &str {
        &self.0
    }
}

#[cfg(feature = "serde")]
mod as_str {
    use super::Text;
    use core::fmt;
    use serde::de::{Error, Visitor};
    use serde::{Deserialize, Deserializer, Serialize, Serializer};

    impl<const CAP: usize> Serialize for Text<CAP> {
        fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
            serializer.serialize_str(self)
        }
    }

    struct Reader<const CAP: usize>;

    impl<const CAP: usize> Visitor<'_> for Reader<CAP> {
        type Value = Text<CAP>;

        fn expecting(&self, f: &mut fmt::Formatter) -> fmt::Result {
            write!(f, "a text of at most {CAP} bytes")
        }

        fn visit_str<E: Error>(self, text: &str) -> Result<Self::Value, E> {
            text.parse().map(Text).map_err(|_| E::invalid_length(text.len(), &self))
        }
    }

    impl<'de, const CAP: usize> Deserialize<'de> for Text<CAP> {
        fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
            deserializer.deserialize_str(Reader)
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_text_fits_whole_or_not_at_all() {
        assert_eq!(&*Text::<5>::new(Field::Title, "12345").unwrap(), "12345");
        let refused = Text::<5>::new(Field::Title, "1234°").unwrap_err();
        assert_eq!(refused, Error::new(Field::Title, Cause::TooMany { most: 5 }));
    }
}
