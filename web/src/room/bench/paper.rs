//! An answer as markup: its figures, its tables.
use super::sum::{Answer, Group, Table, Value};
use crate::room::steps::fact;
use crate::words::bench as says;
use crate::words::{about, angle_text, grouped, in_inch, mm, thou};
use handturn::measure::Angle;
use handturn::number::{Fraction, float};
use maud::{Markup, html};

/// The figures: the first one large, the others under it.
pub(super) fn figures(answer: &Answer, stale: bool, again: &str) -> Markup {
    let Some(first) = answer.figures.first() else { return html! {} };
    let (main, unit, under) = parts(&first.value);
    html! {
        div.answer-frame {
            h2 id="answer" tabindex="-1" aria-live="polite" {
                span.lab { (says::heading_of(first.label, stale)) }
                span.answer-big { (main) " " small { (unit) } }
                @if !under.is_empty() { span.also { (under) } }
                (again)
            }
        }
        @if answer.figures.len() > 1 {
            dl.facts {
                @for figure in answer.figures.iter().skip(1) {
                    @let (main, unit, under) = parts(&figure.value);
                    (fact(figure.label, &says::with_unit(&main, unit), &[&under]))
                }
            }
        }
    }
}

/// A table, its first `most` rows; it scrolls sideways where it must. A column without a
/// label stands under the one before it.
pub(super) fn table(table: &Table, most: usize) -> Markup {
    html! {
        div.scroll tabindex="0" role="region" aria-label=(table.caption) {
            table.readings {
                caption { (table.caption) }
                thead { tr { @for (_, label) in table.head.iter().filter(labelled) { th scope="col" { (label) } } } }
                tbody {
                    @for row in table.rows.iter().take(most) {
                        tr {
                            @for (k, value) in row.iter().enumerate() {
                                @if k == 0 { th scope="row" { (cell(value)) } }
                                @else if table.head.get(k).is_some_and(|head| labelled(&head)) {
                                    td {
                                        (cell(value))
                                        @if let Some(under) = under(table, row, k) { span.in { b { (under) } } }
                                    }
                                }
                            }
                        }
                    }
                }
            }
        }
    }
}

/// Whether a column has a label of its own.
fn labelled((_, label): &&(&str, &str)) -> bool {
    !label.is_empty()
}

/// What stands under column `k` of a row.
fn under(table: &Table, row: &[Value], k: usize) -> Option<String> {
    let next = table.head.get(k + 1)?;
    let value = row.get(k + 1).filter(|_| !labelled(&next))?;
    let (main, unit, _) = parts(value);
    Some(says::with_unit(&main, unit))
}

fn cell(value: &Value) -> Markup {
    let (main, unit, under) = parts(value);
    html! { b.nb[!unit.is_empty()] { (says::with_unit(&main, unit)) } @if !under.is_empty() { span.in { (under) } } }
}

/// A value as it is read: the figure, its unit, the other unit under it.
pub(crate) fn parts(value: &Value) -> (String, &'static str, String) {
    match value {
        Value::Length(length) if length.mm().abs() < THIN => {
            (mm(*length), "mm", thou(float::of(length.mm())) + " thou")
        }
        Value::Length(length) => (mm(*length), "mm", in_inch(*length)),
        Value::About(mm) if mm.value.abs() < 1.0 => {
            (about(mm.value, 3), "mm", thou(mm.value) + " thou")
        }
        Value::About(mm) => (about(mm.value, 3), "mm", about(mm.value / 25.4, 4) + " in"),
        Value::Degrees(degrees) => {
            let angle = float::nearest(degrees.value, 36_000).map(Angle::from_degrees);
            let text = angle.and_then(Result::ok).map(angle_text).unwrap_or_default();
            (text, "", about(degrees.value, 4) + "°")
        }
        Value::Count(count) => (grouped(*count), "", String::new()),
        Value::Number { value, places, unit } => (about(value.value, *places), unit, String::new()),
        Value::Text(text) => (text.clone(), "", String::new()),
    }
}

/// Lengths below this are told in thou, others in inches.
const THIN: Fraction = Fraction::ONE;

/// A group of sums.
#[must_use]
pub(crate) const fn group(group: Group) -> &'static str {
    match group {
        Group::Turn => says::TURN,
        Group::Mill => says::MILL,
        Group::Fit => says::FIT,
        Group::Wire => says::WIRE,
    }
}
