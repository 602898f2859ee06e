//! The chosen head's values, group by group: typed, read back, and what is wrong.
use crate::draw::plate;
use crate::fields::Fields;
use crate::owned::{self, Bad, Entry};
use crate::pieces::{Field, field, segmented};
use crate::words::{self, errors::Said, shop, shop_errors};
use handturn::head::Head;
use maud::{Markup, html};

/// Whether an entry is a box to tick.
pub(super) const fn is_tick(entry: Entry) -> bool {
    matches!(
        entry,
        Entry::SpindleClamp
            | Entry::WormDropsOut
            | Entry::FourGears
            | Entry::Handwheel
            | Entry::FineDial
    )
}

/// All groups; `head` is the one in force.
pub(super) fn section(fields: &Fields, head: &Head) -> Markup {
    let form = Form { fields, head, waiting: owned::waiting(fields) };
    html! {
        div.groups {
            @for (title, entries) in groups() {
                section.group aria-label=(title) {
                    h2 { (title) }
                    @for entry in entries {
                        @match entry {
                            Entry::ReachLeast => (form.pair(entry, Entry::ReachGreatest)),
                            Entry::ArmsLeast => (form.pair(entry, Entry::ArmsGreatest)),
                            Entry::ReachGreatest | Entry::ArmsGreatest => {},
                            _ => (form.entry(entry)),
                        }
                    }
                }
            }
        }
    }
}

/// The entries in groups, each with its title.
fn groups() -> Vec<(&'static str, Vec<Entry>)> {
    let mut groups: Vec<(&'static str, Vec<Entry>)> = Vec::new();
    for entry in Entry::ALL {
        if let Some(title) = shop::group(entry) {
            groups.push((title, Vec::new()));
        }
        if let Some((_, entries)) = groups.last_mut() {
            entries.push(entry);
        }
    }
    groups
}

struct Form<'a> {
    fields: &'a Fields,
    head: &'a Head,
    waiting: Vec<(Entry, Bad)>,
}

impl Form<'_> {
    fn pair(&self, least: Entry, greatest: Entry) -> Markup {
        html! { div.pair { (self.entry(least)) (self.entry(greatest)) } }
    }

    fn entry(&self, entry: Entry) -> Markup {
        if !self.shown(entry) {
            return html! {};
        }
        html! {
            div id=(["at-", entry.name()].concat()) .entry {
                @if is_tick(entry) { (self.tick(entry)) }
                @else if !shop::choices(entry).is_empty() { (self.choice(entry)) }
                @else if matches!(entry, Entry::Plates | Entry::Gears) { (self.lines(entry)) }
                @else { (field(&self.field(entry))) (self.notes(entry)) }
                @if entry == Entry::Gears {
                    (starts(&[("gears", shop::TWELVE_GEARS)]))
                }
                @if entry == Entry::Plates {
                    (starts(&[("plates-15", words::PLATES_15), ("plates-24", words::PLATES_24)]))
                    (drawings(self.head))
                }
            }
        }
    }

    /// A dial's fields are there when the head has the dial.
    fn shown(&self, entry: Entry) -> bool {
        let on = |dial| owned::typed(self.fields, dial) == "yes";
        match entry {
            Entry::HandwheelMarks | Entry::HandwheelVernier => on(Entry::Handwheel),
            Entry::FineShift | Entry::FineMarks | Entry::FineTravel | Entry::FineSlack => {
                on(Entry::FineDial)
            }
            _ => true,
        }
    }

    fn tick(&self, entry: Entry) -> Markup {
        html! {
            label.tick {
                input type="checkbox" id=(entry.name()) name=(entry.name()) checked[owned::typed(self.fields, entry) == "yes"];
                (shop::label(entry))
            }
            (self.notes(entry))
        }
    }

    fn choice(&self, entry: Entry) -> Markup {
        html! {
            p.lab aria-hidden="true" { (shop::label(entry)) }
            (segmented(entry.name(), shop::label(entry), owned::typed(self.fields, entry), shop::choices(entry)))
            (self.notes(entry))
        }
    }

    fn field(&self, entry: Entry) -> Field<'_> {
        let value = owned::typed(self.fields, entry);
        let keys = match entry {
            Entry::StudDistance
            | Entry::StudMargin
            | Entry::MostIdlers
            | Entry::FineMarks
            | Entry::HandwheelVernier => "numeric",
            _ => "text",
        };
        Field {
            name: entry.name(),
            label: shop::label(entry),
            value,
            keys,
            error: self.wrong(entry),
        }
    }

    /// A field of several lines.
    fn lines(&self, entry: Entry) -> Markup {
        let lines = self.field(entry);
        let rows = if entry == Entry::Plates { 4 } else { 2 };
        html! {
            (super::lists::area(&lines, rows))
            (self.notes(entry))
        }
    }

    /// What is wrong with the text of `entry`, wherever it was noticed.
    fn wrong(&self, entry: Entry) -> Option<Said> {
        let (_, bad) = self.waiting.iter().find(|(_, bad)| bad.entry == entry)?;
        Some(shop_errors::said(bad, owned::typed(self.fields, entry)))
    }

    /// Under a field: the last good text while it is bad, else how it was read; then
    /// how to fill it in and what follows from it.
    fn notes(&self, entry: Entry) -> Markup {
        let waits = self.waiting.iter().any(|(waits, _)| *waits == entry);
        let text = owned::in_force(self.fields, entry);
        let read = if waits { None } else { shop::read_as(entry, text, self.head) };
        let hint = shop::hint(entry);
        let follows = shop::follows(entry, self.head);
        html! {
            @if waits { p.why.last-good { (shop_errors::last_good(entry, text)) } }
            @if let Some(read) = read { p.why.read-as { (read) } }
            @if let Some(follows) = follows { p.why.follows { (follows) } }
            @if !hint.is_empty() { p.why.hint { (hint) } }
        }
    }
}

/// Usual sets as one tap each.
fn starts(sets: &[(&str, &str)]) -> Markup {
    html! {
        div.chips role="group" aria-label=(shop::STARTS) {
            @for (value, label) in sets {
                button.chip type="button" data-do="shop-start" data-value=(value) { (label) }
            }
        }
    }
}

/// Every plate with its circles, to scale where their radii are known.
fn drawings(head: &Head) -> Markup {
    let known =
        head.plates.iter().all(|plate| plate.circles.iter().all(|circle| circle.radius.is_some()));
    html! {
        @if !head.plates.is_empty() {
            div.plates {
                @for (place, plate) in head.plates.iter().enumerate() {
                    figure {
                        (plate::circles(&plate.circles, &shop::plate_drawing(place, &plate.circles)))
                        figcaption { (shop::plate(place)) }
                    }
                }
            }
            p.why { (if known { shop::TO_SCALE } else { shop::EVEN }) }
        }
    }
}
