//! The answer in force, for the card: the sum that stands open.
use super::sum::Sum;
use super::{EVERY, in_force, open, paper};
use crate::fields::Fields;
use crate::pieces::caution;
use crate::room::told::Entry;
use crate::words::bench as says;
use maud::html;

/// The open sum as a step of the card.
#[must_use]
pub fn entry(fields: &Fields) -> Option<Entry> {
    let sum = open(fields).or(EVERY.first().copied())?;
    let answer = in_force(fields, sum).0?;
    let markup = html! {
        p { (answer.title) }
        (paper::figures(&answer, false, ""))
        @for table in &answer.tables { (paper::table(table, usize::MAX)) }
        @for note in &answer.notes { p { (note) } }
        @if !sum.care.is_empty() { (caution(html! { (sum.care) })) }
        figure.draw { (answer.drawing) figcaption.why { (says::TO_SCALE) } }
        ul.work { @for line in &answer.working { li { (line) } } li { (says::source(sum.source)) } }
    };
    Some(Entry::read(sum.name.to_owned(), None, &markup))
}

/// Whether a field is part of the sum that stands open.
#[must_use]
pub fn asks(fields: &Fields, name: &str) -> bool {
    let sum = open(fields).or(EVERY.first().copied());
    let entry = |sum: &Sum| {
        let entry = name.strip_prefix("be-").and_then(|rest| rest.strip_prefix(sum.key));
        entry
            .and_then(|rest| rest.strip_prefix('-'))
            .is_some_and(|entry| sum.entry(entry).is_some())
    };
    name == "bench" || sum.is_some_and(entry)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_sum_says_its_figures_and_where_its_rule_stands() {
        let mut fields = Fields::default();
        fields.set("bench", "tilt");
        let entry = entry(&fields).unwrap();
        assert_eq!(entry.title, "Tilt by feeler");
        assert_eq!(entry.lines[0], "0° 45′ under 40 mm: 0.524 mm");
        assert_eq!(entry.lines[1], "Lift one edge by: 0.524 mm, 20.6 thou");
        assert!(entry.cautions[0].starts_with("Wipe it clean."));
        assert!(entry.working.0.contains("<li>40 × 0.013090 = 0.5236 mm</li>"));
        assert!(entry.drawing.0.starts_with("<figure"));
    }
}
