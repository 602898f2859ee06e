//! What a small sum is: a table of fields, one function, one answer. The form, the list,
//! the search, the card and the JavaScript package are all read from it.
use crate::fields::Fields;
pub(crate) use crate::room::read::Given;
use crate::room::read::Places;
use crate::room::steps::Wrong;
use handturn::measure::Length;
use handturn::number::Approx;
use handturn::{Error, Field as Of};
use maud::Markup;

/// One small sum.
pub(crate) struct Sum {
    /// Its name in addresses, in the names of its fields and in the package.
    pub(crate) key: &'static str,
    /// By what the hands do.
    pub(crate) group: Group,
    /// What it is called.
    pub(crate) name: &'static str,
    /// What it is for, in a line.
    pub(crate) about: &'static str,
    /// Other words it is found by.
    pub(crate) also: &'static str,
    /// Its sign: the data of a path in 24 by 24 units.
    pub(crate) icon: &'static str,
    /// What is asked, in order.
    pub(crate) entries: &'static [Entry],
    /// The sum itself.
    pub(crate) answer: fn(&Given) -> Result<Answer, Wrong>,
    /// Where its rule stands printed.
    pub(crate) source: &'static str,
    /// What can hurt or spoil, at the point of use.
    pub(crate) care: &'static str,
}

/// What the hands do.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Group {
    /// On the lathe.
    Turn,
    /// On the mill.
    Mill,
    /// Parts that go together.
    Fit,
    /// Bent, wound and riveted.
    Wire,
}

impl Group {
    /// All of them, as they are listed.
    pub(crate) const ALL: [Self; 4] = [Self::Turn, Self::Mill, Self::Fit, Self::Wire];
}

/// One thing a sum asks for.
pub(crate) struct Entry {
    /// Its name within the sum.
    pub(crate) name: &'static str,
    /// Its label.
    pub(crate) label: &'static str,
    /// What it reads as until something is typed.
    pub(crate) default: &'static str,
    /// How it is asked.
    pub(crate) kind: Kind,
    /// Shown only while another entry, a choice, stands at one of these.
    pub(crate) when: Option<(&'static str, &'static [&'static str])>,
}

/// How an entry is asked.
#[derive(Clone, Copy)]
pub(crate) enum Kind {
    /// Any text: a length, an angle, a list.
    Text,
    /// A number.
    Number,
    /// Several lines.
    Lines,
    /// One of a few: value and label.
    Choice(&'static [(&'static str, &'static str)]),
}

impl Entry {
    /// A field for any text.
    pub(crate) const fn text(
        name: &'static str,
        label: &'static str,
        default: &'static str,
    ) -> Self {
        Self { name, label, default, kind: Kind::Text, when: None }
    }

    /// A field for a number.
    pub(crate) const fn number(
        name: &'static str,
        label: &'static str,
        default: &'static str,
    ) -> Self {
        Self { name, label, default, kind: Kind::Number, when: None }
    }

    /// A choice; the first is taken until another is pressed.
    pub(crate) const fn choice(
        name: &'static str,
        label: &'static str,
        pairs: &'static [(&'static str, &'static str)],
    ) -> Self {
        let default = match pairs {
            [(first, _), ..] => first,
            [] => "",
        };
        Self { name, label, default, kind: Kind::Choice(pairs), when: None }
    }

    /// Asked only while the choice `other` stands at one of `values`.
    pub(crate) const fn when(self, other: &'static str, values: &'static [&'static str]) -> Self {
        Self { when: Some((other, values)), ..self }
    }

    /// Whether it is asked, by what `text` says of other entries.
    pub(crate) fn is_asked<'a>(&self, text: impl Fn(&str) -> &'a str) -> bool {
        self.when.is_none_or(|(other, values)| values.contains(&text(other)))
    }
}

impl Sum {
    /// The name of one of its fields among all of the page's.
    pub(crate) fn field(&self, entry: &str) -> String {
        ["be-", self.key, "-", entry].concat()
    }

    /// One of its entries.
    pub(crate) fn entry(&self, name: &str) -> Option<&'static Entry> {
        self.entries.iter().find(|entry| entry.name == name)
    }

    /// What is asked, as typed or, with `last`, as it last read well.
    pub(crate) const fn given<'a>(&'static self, fields: &'a Fields, last: bool) -> Given<'a> {
        Given { fields, places: self, last }
    }
}

impl Places for Sum {
    fn place(&self, name: &str) -> (String, &'static str) {
        (self.field(name), self.entry(name).map_or("", |entry| entry.default))
    }
}

/// What a sum comes to.
pub(crate) struct Answer {
    /// The question with its answer in a few words, for list and card.
    pub(crate) title: String,
    /// The figures, the first one large.
    pub(crate) figures: Vec<Figure>,
    /// Steps, choices, readings.
    pub(crate) tables: Vec<Table>,
    /// The working, a line each.
    pub(crate) working: Vec<String>,
    /// What was taken for granted, what to look at.
    pub(crate) notes: Vec<String>,
    /// The drawing, to scale.
    pub(crate) drawing: Markup,
}

/// One figure of an answer.
pub(crate) struct Figure {
    /// Its name in the package.
    pub(crate) key: &'static str,
    /// What it is.
    pub(crate) label: &'static str,
    /// How much.
    pub(crate) value: Value,
}

/// A figure: its key, its label and its value.
pub(crate) const fn figure(key: &'static str, label: &'static str, value: Value) -> Figure {
    Figure { key, label, value }
}

/// How much of something.
#[derive(Clone)]
pub(crate) enum Value {
    /// An exact length.
    Length(Length),
    /// A length in millimetres that is not exact.
    About(Approx),
    /// An angle in degrees that is not exact.
    Degrees(Approx),
    /// So many.
    Count(i64),
    /// A number with its unit, to so many places.
    Number {
        /// The number.
        value: Approx,
        /// Places shown.
        places: u8,
        /// Its unit, as written after it.
        unit: &'static str,
    },
    /// Words.
    Text(String),
}

/// Rows of figures.
pub(crate) struct Table {
    /// Its name in the package.
    pub(crate) key: &'static str,
    /// What it lists.
    pub(crate) caption: &'static str,
    /// The columns, by key and label.
    pub(crate) head: &'static [(&'static str, &'static str)],
    /// The rows; each starts with what names it.
    pub(crate) rows: Vec<Vec<Value>>,
}

/// Puts the name of an entry to an error of the core: by the field it is about, the last
/// pair where it is about none of them.
pub(crate) fn about(error: Error, places: &[(Of, &'static str)]) -> Wrong {
    let found = places.iter().find(|(field, _)| *field == error.field).or(places.last());
    (found.map_or("", |(_, name)| *name), error)
}
