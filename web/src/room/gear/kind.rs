//! What the teeth are, as one table: each kind has a file of its own, and an arm in each
//! match here.
use super::{shaped, straight};
use crate::fields::Fields;
use crate::room::steps::{Form, Names, Text, Wrong};
use crate::words::gear as words;
use maud::Markup;

/// What the teeth are.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Kind {
    /// A wheel with straight teeth.
    Straight,
    /// What is no involute wheel.
    Shaped(shaped::Kind),
}

/// What is asked for, in the kind's own terms.
#[derive(Clone, Debug)]
pub(super) enum Asked {
    Straight(straight::Asked),
    Shaped(shaped::Asked),
}

impl Kind {
    pub(super) const ALL: [Self; 6] = [
        Self::Straight,
        Self::Shaped(shaped::Kind::Ratchet),
        Self::Shaped(shaped::Kind::Spline),
        Self::Shaped(shaped::Kind::Flats),
        Self::Shaped(shaped::Kind::Clock),
        Self::Shaped(shaped::Kind::Cam),
    ];

    /// The kind that is chosen.
    pub(super) fn chosen(fields: &Fields) -> Self {
        let chosen = fields.get("ge-kind");
        let mut all = Self::ALL.into_iter();
        all.find(|kind| kind.value() == chosen).unwrap_or(Self::Straight)
    }

    /// The kind as a value.
    pub(super) const fn value(self) -> &'static str {
        match self {
            Self::Straight => "straight",
            Self::Shaped(kind) => kind.value(),
        }
    }

    /// The kind as it is called.
    pub(super) const fn label(self) -> &'static str {
        match self {
            Self::Straight => words::STRAIGHT,
            Self::Shaped(kind) => kind.label(),
        }
    }

    /// The fields of the entry with what they read as until something is typed.
    pub(super) const fn names(self) -> &'static [&'static Names] {
        match self {
            Self::Straight => straight::NAMES,
            Self::Shaped(kind) => kind.names(),
        }
    }

    /// What the drawing says, as fields.
    pub(super) fn entry(self, form: Form) -> Markup {
        match self {
            Self::Straight => straight::entry(form),
            Self::Shaped(kind) => kind.entry(form),
        }
    }

    /// What is asked for by the fields of the entry.
    ///
    /// # Errors
    /// The first field that cannot be read, and why.
    pub(super) fn asked(self, text: Text) -> Result<Asked, Wrong> {
        match self {
            Self::Straight => straight::asked(text).map(Asked::Straight),
            Self::Shaped(kind) => kind.asked(text).map(Asked::Shaped),
        }
    }
}

impl Asked {
    /// The heading over the answer; `stale` when what is typed does not read.
    pub(super) fn heading(&self, stale: bool) -> String {
        let name = match self {
            Self::Straight(asked) => straight::heading(asked),
            Self::Shaped(asked) => asked.heading(),
        };
        words::heading(&name, stale)
    }

    /// A step as markup.
    pub(super) fn panel(&self, fields: &Fields, step: &str) -> Markup {
        match self {
            Self::Straight(asked) => straight::panel(fields, asked, step),
            Self::Shaped(asked) => asked.panel(step),
        }
    }

    /// How many parts the head divides.
    pub(super) fn parts(&self) -> Option<u32> {
        match self {
            Self::Straight(asked) => Some(asked.wheel.teeth),
            Self::Shaped(asked) => asked.parts(),
        }
    }

    /// Keeps the fields of the step that `name` belongs to, where they read.
    pub(super) fn keep_good(&self, fields: &mut Fields, name: &str) {
        match self {
            Self::Straight(asked) => straight::keep_good(fields, asked, name),
            Self::Shaped(_) => {}
        }
    }
}
