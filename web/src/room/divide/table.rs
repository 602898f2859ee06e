//! Every position in a table: where it stands, the move that leads to it, the
//! hole it ends in and its error. Unequal moves show it at once, others when asked.
use super::Worked;
use crate::words::{self, moves};
use handturn::divide::{Question, Rated, Way};
use maud::{Markup, html};

/// Rows shown at first, and added at each asking.
const ROWS: u32 = 60;

pub(super) fn section(worked: &Worked, rated: &Rated, key: &str) -> Markup {
    let asked: Option<u32> = worked.fields.get("rows").parse().ok();
    let unequal = !matches!(worked.question, Question::Parts(_));
    let positions = worked.question.positions();
    let rows = asked.or(unequal.then_some(ROWS)).unwrap_or(0).min(positions);
    let more = rows.saturating_mul(4).max(ROWS).to_string();
    html! {
        div.every id=(["every-", key].concat()) {
            h3 id="every-title" { (words::EVERY_POSITION) }
            @if rows > 0 {
                div.scroll tabindex="0" role="region" aria-labelledby="every-title" {
                    table { (head(worked)) tbody { @for index in 0..rows { (row(worked, &rated.way, index)) } } }
                }
            }
            @if rows < positions {
                button.btn id="more" type="button" data-do="rows" data-value=(more) { (words::show_rows(rows, positions)) }
            }
        }
    }
}

fn head(worked: &Worked) -> Markup {
    html! {
        thead {
            tr {
                th scope="col" { (words::POSITION) }
                @if matches!(worked.question, Question::Marks(_)) { th scope="col" { (words::MARK) } }
                th scope="col" { (words::STANDS_AT) }
                th scope="col" { (words::MOVE) }
                th scope="col" { (words::ENDS_IN) }
                th scope="col" { (words::ERROR) }
            }
        }
    }
}

fn row(worked: &Worked, way: &Way, index: u32) -> Markup {
    let question = &worked.question;
    let Ok(place) = way.place(question, index) else { return html! {} };
    let before = index.checked_sub(1).and_then(|index| way.step(question, index).ok());
    let error = place.error().map(words::signed_seconds).unwrap_or_default();
    html! {
        tr {
            th scope="row" { (question.part_at(index) + 1) }
            @if let Question::Marks(dial) = question {
                td {
                    @if let Some(mark) = dial.at(index, worked.head.work_turns) {
                        (words::mark_kind(mark.kind))
                        @if let Some(number) = mark.number { " " b { (number) } }
                    }
                }
            }
            td { (words::angle_text(handturn::measure::Angle::from_turns(place.wanted.turns().part()))) }
            td { @if let Some(before) = before { (moves::phrase(&before.legs, None).line()) } @else { (words::START) } }
            td { (words::where_at(&place)) }
            td { (error) }
        }
    }
}
