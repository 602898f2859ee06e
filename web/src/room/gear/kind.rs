//! What the teeth are, as one table: each kind has a file of its own, and an arm in each
//! match here.
use super::{bevel, helical, rack, shaped, straight, worm};
use crate::fields::Fields;
use crate::room::steps::{Form, Given, Names, Wrong};
use crate::words::gear as words;
use maud::Markup;

/// What the teeth are.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Kind {
    /// A wheel with straight teeth.
    Straight,
    /// A helical wheel.
    Slanted,
    /// A worm and its wheel.
    Worm,
    /// A pair of bevel wheels.
    Cone,
    /// A rack.
    Bar,
    /// What is no involute wheel.
    Shaped(shaped::Kind),
}

/// What is asked for, in the kind's own terms.
#[derive(Clone, Debug)]
pub(super) enum Asked {
    Straight(straight::Asked),
    Slanted(helical::Asked),
    Worm(worm::Asked),
    Cone(bevel::Asked),
    Bar(rack::Asked),
    Shaped(shaped::Asked),
}

impl Kind {
    pub(super) const ALL: [Self; 10] = [
        Self::Straight,
        Self::Slanted,
        Self::Worm,
        Self::Cone,
        Self::Bar,
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
            Self::Slanted => "slanted",
            Self::Worm => "worm",
            Self::Cone => "cone",
            Self::Bar => "bar",
        }
    }

    /// The kind as it is called.
    pub(super) const fn label(self) -> &'static str {
        match self {
            Self::Straight => words::STRAIGHT,
            Self::Shaped(kind) => kind.label(),
            Self::Slanted => words::SLANTED,
            Self::Worm => words::WORM_AND_WHEEL,
            Self::Cone => words::ON_A_CONE,
            Self::Bar => words::ALONG_A_BAR,
        }
    }

    /// The fields of the entry with what they read as until something is typed.
    pub(super) const fn names(self) -> &'static [&'static Names] {
        match self {
            Self::Straight => straight::NAMES,
            Self::Shaped(kind) => kind.names(),
            Self::Slanted => helical::NAMES,
            Self::Worm => worm::NAMES,
            Self::Cone => bevel::NAMES,
            Self::Bar => rack::NAMES,
        }
    }

    /// What the drawing says, as fields.
    pub(super) fn entry(self, form: Form) -> Markup {
        match self {
            Self::Straight => straight::entry(form),
            Self::Shaped(kind) => kind.entry(form),
            Self::Slanted => helical::entry(form),
            Self::Worm => worm::entry(form),
            Self::Cone => bevel::entry(form),
            Self::Bar => rack::entry(form),
        }
    }

    /// What is asked for by the fields of the entry.
    ///
    /// # Errors
    /// The first field that cannot be read, and why.
    pub(super) fn asked(self, text: Given) -> Result<Asked, Wrong> {
        match self {
            Self::Straight => straight::asked(text).map(Asked::Straight),
            Self::Shaped(kind) => kind.asked(text).map(Asked::Shaped),
            Self::Slanted => helical::asked(text).map(Asked::Slanted),
            Self::Worm => worm::asked(text).map(Asked::Worm),
            Self::Cone => bevel::asked(text).map(Asked::Cone),
            Self::Bar => rack::asked(text).map(Asked::Bar),
        }
    }
}

impl Asked {
    /// The heading over the answer; `stale` when what is typed does not read.
    pub(super) fn heading(&self, stale: bool) -> String {
        let name = match self {
            Self::Straight(asked) => straight::heading(asked),
            Self::Shaped(asked) => asked.heading(),
            Self::Slanted(asked) => helical::heading(asked),
            Self::Worm(asked) => worm::heading(asked),
            Self::Cone(asked) => bevel::heading(asked),
            Self::Bar(asked) => rack::heading(asked),
        };
        words::heading(&name, stale)
    }

    /// A step as markup.
    pub(super) fn panel(&self, fields: &Fields, step: &str) -> Markup {
        match self {
            Self::Straight(asked) => straight::panel(fields, asked, step),
            Self::Shaped(asked) => asked.panel(step),
            Self::Slanted(asked) => helical::panel(fields, asked, step),
            Self::Worm(asked) => worm::panel(asked, step),
            Self::Cone(asked) => bevel::panel(fields, asked, step),
            Self::Bar(asked) => rack::panel(fields, asked, step),
        }
    }

    /// How many parts the head divides.
    pub(super) fn parts(&self) -> Option<u32> {
        match self {
            Self::Straight(asked) => Some(asked.wheel.teeth),
            Self::Shaped(asked) => asked.parts(),
            Self::Slanted(asked) => Some(asked.wheel.teeth),
            Self::Worm(asked) => Some(asked.pair.teeth),
            // A pair has its own two buttons; along a bar nothing turns.
            Self::Cone(_) | Self::Bar(_) => None,
        }
    }

    /// Keeps the fields of the step that `name` belongs to, where they read.
    pub(super) fn keep_good(&self, fields: &mut Fields, name: &str) {
        match self {
            Self::Straight(asked) => straight::keep_good(fields, asked, name),
            Self::Slanted(asked) => helical::keep_good(fields, asked, name),
            Self::Bar(asked) => rack::keep_good(fields, asked, name),
            Self::Worm(_) | Self::Cone(_) | Self::Shaped(_) => {}
        }
    }
}
