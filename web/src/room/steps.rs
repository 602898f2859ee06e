//! What rooms of steps share: the tabs and their keys, the fields of a step with what
//! is wrong with one of them, the last good answer, and facts.
pub(super) use super::read::Given;
use super::read::Places;
use crate::fields::Fields;
use crate::pieces::{Field, field, segmented};
use crate::seam::{Effect, Event};
use crate::words::{self, errors::said};
use handturn::Error;
use handturn::measure::Length;
use maud::{Markup, html};

/// Fields by name, each with what it reads as until something is typed.
pub(super) type Names = [(&'static str, &'static str)];

/// A field that cannot be read, or stands against the rest, and why; nameless where it
/// is about no one field.
pub(super) type Wrong = (&'static str, Error);

/// What stands in one of `names`.
pub(super) fn typed<'a>(fields: &'a Fields, names: &Names, name: &str) -> &'a str {
    fields.follow(fields.or(name, default_in(&[names], name)))
}

/// What stood in one of `names` when all of them last read well.
pub(super) fn last<'a>(fields: &'a Fields, names: &Names, name: &str) -> &'a str {
    fields.follow(fields.or(&good(name), default_in(&[names], name)))
}

/// Keeps what stands in `names` as last read well.
pub(super) fn keep(fields: &mut Fields, names: &Names) {
    for (name, default) in names {
        let text = fields.or(name, default).to_owned();
        fields.set(&good(name), &text);
    }
}

fn default_in(names: &[&Names], name: &str) -> &'static str {
    let mut all = names.iter().flat_map(|names| names.iter());
    all.find(|(n, _)| *n == name).map_or("", |(_, text)| text)
}

/// Where a field is kept as it last read well.
pub(super) fn good(name: &str) -> String {
    "good-".to_owned() + name
}

impl Places for &[&Names] {
    fn place(&self, name: &str) -> (String, &'static str) {
        (name.to_owned(), default_in(self, name))
    }
}

/// What `read` makes of the fields of `names` as typed, else as they last read well; and
/// what is wrong with them as typed.
pub(super) fn in_force<T>(
    fields: &Fields,
    names: &[&Names],
    read: impl Fn(Given) -> Result<T, Wrong>,
) -> (Option<T>, Option<Wrong>) {
    let given = Given { fields, places: &names, last: false };
    match read(given) {
        Ok(now) => (Some(now), None),
        Err(wrong) => (read(Given { last: true, ..given }).ok(), Some(wrong)),
    }
}

/// Keeps the fields of `names` as last read well, where they read and `name` is one of them.
pub(super) fn keep_good<T>(
    fields: &mut Fields,
    names: &[&Names],
    name: &str,
    read: impl Fn(Given) -> Result<T, Wrong>,
) {
    let ours = names.iter().flat_map(|names| names.iter()).any(|(ours, _)| *ours == name);
    if ours && read(Given { fields, places: &names, last: false }).is_ok() {
        names.iter().for_each(|names| keep(fields, names));
    }
}

/// A room's steps as tabs.
pub(super) struct Tabs {
    /// What the names of the room's fields begin with.
    pub(super) room: &'static str,
    /// Each step as pressed and as named, the first one open at the start.
    pub(super) steps: &'static [(&'static str, &'static str)],
}

impl Tabs {
    fn name(&self, of: &str) -> String {
        [self.room, of].concat()
    }

    /// The step that stands open.
    pub(super) fn open<'a>(&self, fields: &'a Fields) -> &'a str
    where
        Self: 'a,
    {
        let chosen = fields.get(&self.name("tab"));
        let mut steps = self.steps.iter().map(|(value, _)| *value);
        let first = self.steps.first().map_or("", |(value, _)| value);
        steps.find(|value| *value == chosen).unwrap_or(first)
    }

    fn room_name(&self) -> &'static str {
        if self.room == "th-" { "thread" } else { "gear" }
    }

    /// What a step is called.
    pub(super) fn label(&self, step: &str) -> &'static str {
        self.steps.iter().find(|(value, _)| *value == step).map_or("", |(_, label)| label)
    }

    /// The tabs, and `panel` under the answer's heading where there is an answer.
    pub(super) fn around(&self, fields: &Fields, heading: &str, panel: Option<&Markup>) -> Markup {
        let open = self.open(fields);
        let (tab, id) = (self.name("tab"), self.name("panel"));
        let of = |step: &str| [&*tab, "-", step].concat();
        html! {
            div.tabs role="tablist" aria-label=(words::STEPS) {
                @for (value, label) in self.steps {
                    button id=(of(value)) type="button" role="tab" data-do=(tab) data-value=(value)
                        aria-selected=(*value == open) aria-controls=(id) tabindex=(if *value == open { "0" } else { "-1" }) { (label) }
                }
            }
            div.panel id=(id) role="tabpanel" aria-labelledby=(of(open)) {
                @if let Some(panel) = panel {
                    h2 id="answer" tabindex="-1" aria-live="polite" { (heading) (fields.get(&self.name("said"))) }
                    (panel)
                    (super::card::put_button(fields, self.room_name()))
                }
            }
        }
    }

    /// Arrow keys go from step to step; Enter in a field has the answer read out again.
    pub(super) fn key(&self, fields: &mut Fields, event: &Event) -> Vec<Effect> {
        let name = event.name.strip_prefix("held ").unwrap_or(event.name);
        if event.value.starts_with("field ") {
            if name == "Enter" {
                let said = self.name("said");
                let again = if fields.get(&said).is_empty() { "\u{200b}" } else { "" };
                fields.set(&said, again);
            }
            return Vec::new();
        }
        let tab = self.name("tab");
        let Some(at) = event.value.strip_prefix("button ").and_then(|id| id.strip_prefix(&*tab))
        else {
            return Vec::new();
        };
        let at = self.steps.iter().position(|(value, _)| at.strip_prefix('-') == Some(value));
        let (at, last) = (at.unwrap_or(0), self.steps.len().saturating_sub(1));
        let to = match name {
            "ArrowRight" if at == last => 0,
            "ArrowRight" => at + 1,
            "ArrowLeft" if at == 0 => last,
            "ArrowLeft" => at - 1,
            "Home" => 0,
            "End" => last,
            _ => return Vec::new(),
        };
        let Some((to, _)) = self.steps.get(to) else { return Vec::new() };
        fields.set(&tab, to);
        vec![Effect::Focus([&*tab, "-", to].concat()), Effect::Used]
    }
}

/// The fields of a step.
#[derive(Clone, Copy)]
pub(super) struct Form<'a> {
    pub(super) fields: &'a Fields,
    pub(super) names: &'a [&'a Names],
    pub(super) wrong: Option<&'a Wrong>,
}

impl Form<'_> {
    /// What stands in a field.
    pub(super) fn typed(&self, name: &str) -> &str {
        self.fields.or(name, default_in(self.names, name))
    }

    /// What stands in all of them.
    pub(super) fn as_typed(&self) -> Given<'_> {
        Given { fields: self.fields, places: &self.names, last: false }
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
        let error = error.map(|(_, error)| said(error, self.fields.follow(value)));
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

/// A length in millimetres with inches under it, for a cell.
pub(super) fn both(length: Length) -> Markup {
    html! { b { (words::mm(length)) } span.in { (words::inches(length)) " in" } }
}

/// A length as the answer: millimetres large, inches beside.
pub(super) fn large(length: Length) -> Markup {
    html! {
        p.answer-big {
            (words::mm(length)) " " small { "mm" }
            span.also { (words::inches(length)) " " small { "in" } }
        }
    }
}
