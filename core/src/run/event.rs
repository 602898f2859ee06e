//! What the hands did, one entry of a run's append-only list.

macro_rules! what {
    ($($(#[$doc:meta])* $name:ident,)*) => {
        /// What was done. Its name in files is the lower-case word.
        #[derive(Clone, Copy, Debug, PartialEq, Eq)]
        #[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
        #[cfg_attr(feature = "serde", serde(rename_all = "lowercase"))]
        pub enum What {
            $($(#[$doc])* $name,)*
        }

        impl What {
            /// Each of them once.
            pub const ALL: &[Self] = &[$(Self::$name),*];
        }
    };
}

what! {
    /// The last leg of a move is made: the work stands at the next position.
    At,
    /// A leg that is not the last of its move is made and its pin is home.
    Leg,
    /// The position at the cutter is cut.
    Cut,
    /// The work really went back: to the position before, or, from the middle
    /// of a move, to where that move began.
    Back,
    /// The last counted press was a mistake; nothing moved.
    Undo,
    /// The work was set to another position on purpose.
    Jump,
    /// A lost place was found again.
    Found,
    /// A position was seen to be cut; nothing moved.
    Tick,
    /// The next round begins, the work standing at position 0.
    Round,
}

impl What {
    /// Whether it comes from the two buttons for a thumb, Next and Back, where
    /// a second press soon after the first is asked about.
    #[must_use]
    pub const fn by_thumb(self) -> bool {
        matches!(self, Self::At | Self::Leg | Self::Cut | Self::Back | Self::Round)
    }
}

/// One entry of a run's list. In files it is `["at", 37, 1790000000000]`.
///
/// The position is written although it follows from the entries before: a list
/// that lost an entry, or an entry from another tab, is caught instead of
/// putting the place out by one.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Event {
    /// What was done.
    pub what: What,
    /// The position at the cutter afterwards, from 0; for [`What::Tick`] the
    /// position that was seen to be cut.
    pub index: u32,
    /// When, in milliseconds of the caller's clock.
    pub at_ms: u64,
}

#[cfg(feature = "serde")]
mod as_row {
    use super::Event;
    use serde::{Deserialize, Deserializer, Serialize, Serializer};

    impl Serialize for Event {
        fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
            (self.what, self.index, self.at_ms).serialize(serializer)
        }
    }

    impl<'de> Deserialize<'de> for Event {
        fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
            let (what, index, at_ms) = Deserialize::deserialize(deserializer)?;
            Ok(Self { what, index, at_ms })
        }
    }
}
