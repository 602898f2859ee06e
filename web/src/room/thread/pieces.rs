//! What the steps share: their fields with what is wrong with one of them, and facts.
use super::Names;
use crate::fields::Fields;
use crate::pieces::{Field, field, segmented};
use crate::words::{errors::said, thread as words};
use handturn::Error;
use handturn::measure::Length;
use maud::{Markup, html};

/// A field that cannot be read, or stands against the rest, and why; nameless where it
/// is about no one field.
pub(super) type Wrong = (&'static str, Error);

/// The fields of a step.
#[derive(Clone, Copy)]
pub(super) struct Form<'a> {
    pub(super) fields: &'a Fields,
    pub(super) names: &'a Names,
    pub(super) wrong: Option<&'a Wrong>,
}

impl Form<'_> {
    /// What stands in a field.
    pub(super) fn typed(&self, name: &str) -> &str {
        super::typed(self.fields, self.names, name)
    }

    /// A field for any text.
    pub(super) fn text(&self, name: &str, label: &str) -> Markup {
        self.entry(name, label, "text", None)
    }

    /// A field for a number.
    pub(super) fn number(&self, name: &str, label: &str) -> Markup {
        self.entry(name, label, "decimal", None)
    }

    /// A field for any text; `filled` is what stands in for it while it is empty.
    pub(super) fn filled(&self, name: &str, label: &str, filled: Option<String>) -> Markup {
        self.entry(name, label, "text", filled)
    }

    /// A choice of one among a few.
    pub(super) fn choice(&self, name: &str, label: &str, pairs: &[(&str, &str)]) -> Markup {
        segmented(name, label, self.typed(name), pairs)
    }

    fn entry(&self, name: &str, label: &str, keys: &str, filled: Option<String>) -> Markup {
        let value = self.typed(name);
        let error = self.wrong.filter(|(wrong, _)| *wrong == name);
        let error = error.map(|(_, error)| said(error, value));
        let filled = filled.filter(|_| value.trim().is_empty());
        html! {
            div {
                (field(&Field { name, label, value, keys, error }))
                @if let Some(filled) = filled { p.filled { (words::taken_as(&filled)) } }
            }
        }
    }
}

/// A fact: its name, what it is, and what stands under that.
pub(super) fn fact(name: &str, what: &str, under: &[&str]) -> Markup {
    html! {
        div {
            dt { (name) }
            dd { b { (what) } @for line in under { @if !line.is_empty() { span.in { (line) } } } }
        }
    }
}

/// A length as a fact, inches under millimetres.
pub(super) fn length(name: &str, length: Length) -> Markup {
    fact(name, &words::in_mm(length), &[&words::in_inch(length)])
}

/// A length that is not exact as a fact, thou under millimetres.
pub(super) fn about(name: &str, mm: f64) -> Markup {
    fact(name, &(words::about_mm(mm) + " mm"), &[&(words::thou(mm) + " thou")])
}
