//! A fixed-capacity list: what callers see where other libraries would
//! hand out a growing one. A full list says so; it never drops an entry silently.
use core::ops::{Deref, DerefMut};

/// At most `CAP` values, in order.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct List<T, const CAP: usize>(heapless::Vec<T, CAP>);

impl<T, const CAP: usize> List<T, CAP> {
    /// An empty list.
    #[must_use]
    pub const fn new() -> Self {
        Self(heapless::Vec::new())
    }

    /// Appends `value`.
    ///
    /// # Errors
    /// Gives `value` back when the list is full.
    pub fn push(&mut self, value: T) -> Result<(), T> {
        self.0.push(value)
    }

    /// Puts `value` at `place`, moving later ones on; the last one falls out of
    /// a full list and is returned. A `place` beyond the end returns `value`.
    pub fn insert(&mut self, place: usize, value: T) -> Option<T> {
        if place > self.0.len() || place >= CAP {
            return Some(value);
        }
        let out = if self.0.is_full() { self.0.pop() } else { None };
        if let Err(value) = self.0.push(value) {
            return Some(value);
        }
        // A rotation by one of what is not empty: the compiler sees that it cannot panic.
        if let Some(later @ [_, ..]) = self.0.get_mut(place..) {
            later.rotate_right(1);
        }
        out
    }

    /// Removes and returns the last value.
    pub fn pop(&mut self) -> Option<T> {
        self.0.pop()
    }

    /// Empties the list.
    pub fn clear(&mut self) {
        self.0.clear();
    }

    /// Whether another value would not fit.
    #[must_use]
    pub fn is_full(&self) -> bool {
        self.0.is_full()
    }
}

impl<T: Clone, const CAP: usize> List<T, CAP> {
    /// A list of the values of `slice`; `None` when they do not fit.
    #[must_use]
    pub fn from_slice(slice: &[T]) -> Option<Self> {
        heapless::Vec::from_slice(slice).ok().map(Self)
    }
}

impl<T, const CAP: usize> Default for List<T, CAP> {
    fn default() -> Self {
        Self::new()
    }
}

impl<T, const CAP: usize> Deref for List<T, CAP> {
    type Target = [T];
    fn deref(&self) -> &[T] {
        &self.0
    }
}

impl<T, const CAP: usize> DerefMut for List<T, CAP> {
    fn deref_mut(&mut self) -> &mut [T] {
        &mut self.0
    }
}

impl<'a, T, const CAP: usize> IntoIterator for &'a List<T, CAP> {
    type Item = &'a T;
    type IntoIter = core::slice::Iter<'a, T>;
    fn into_iter(self) -> Self::IntoIter {
        self.0.iter()
    }
}

#[cfg(feature = "serde")]
mod as_sequence {
    use super::List;
    use core::{fmt, marker::PhantomData};
    use serde::de::{Error, SeqAccess, Visitor};
    use serde::{Deserialize, Deserializer, Serialize, Serializer};

    impl<T: Serialize, const CAP: usize> Serialize for List<T, CAP> {
        fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
            serializer.collect_seq(self.iter())
        }
    }

    struct Reader<T, const CAP: usize>(PhantomData<T>);

    impl<'de, T: Deserialize<'de>, const CAP: usize> Visitor<'de> for Reader<T, CAP> {
        type Value = List<T, CAP>;

        fn expecting(&self, f: &mut fmt::Formatter) -> fmt::Result {
            write!(f, "at most {CAP} entries")
        }

        fn visit_seq<A: SeqAccess<'de>>(self, mut entries: A) -> Result<Self::Value, A::Error> {
            let mut list = List::new();
            while let Some(entry) = entries.next_element()? {
                if list.push(entry).is_err() {
                    return Err(A::Error::invalid_length(CAP, &self));
                }
            }
            Ok(list)
        }
    }

    impl<'de, T: Deserialize<'de>, const CAP: usize> Deserialize<'de> for List<T, CAP> {
        fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
            deserializer.deserialize_seq(Reader(PhantomData))
        }
    }
}
