//! The one table of greatest and least sizes: millimetres, inches under them.
use crate::words::thread as words;
use handturn::measure::Length;
use handturn::thread::Kind;
use handturn::thread::limits::{Class, Limits, Side};
use maud::{Markup, html};

/// What stands in a cell.
pub(super) enum Cell<'a> {
    /// A length.
    At(Length),
    /// Words in place of one.
    Says(&'a str),
}

/// A row: what it is, greatest and least.
pub(super) type Row<'a> = (&'a str, Cell<'a>, Cell<'a>);

/// Rows under a title, greatest before least.
pub(super) fn table(title: &str, rows: &[Row]) -> Markup {
    html! {
        table.lim {
            thead { tr { th scope="col" { (title) } th scope="col" { (words::MAX) } th scope="col" { (words::MIN) } } }
            tbody {
                @for (name, max, min) in rows {
                    tr { th scope="row" { (name) } td { (cell(max)) } td { (cell(min)) } }
                }
            }
        }
    }
}

fn cell(cell: &Cell) -> Markup {
    match cell {
        Cell::At(length) => crate::room::steps::both(*length),
        Cell::Says(text) => html! { span.u { (text) } },
    }
}

/// The limits of one side.
pub(super) fn limits(kind: Kind, class: Class, limits: &Limits) -> Markup {
    let internal = class.side == Side::Internal;
    let tool = if internal { words::TAP_SETS } else { words::TOOL_SETS };
    let cell = |at: Option<Length>| at.map_or(Cell::Says(tool), Cell::At);
    let (outside, root) =
        if internal { (words::ROOT, words::HOLE) } else { (words::OUTSIDE, words::ROOT) };
    let row =
        |name, range: handturn::thread::limits::Range| (name, cell(range.max), cell(range.min));
    let rows = [
        row(outside, limits.major),
        row(words::PITCH_DIAMETER, limits.pitch_diameter),
        row(root, limits.minor),
    ];
    let side = if internal { words::NUT } else { words::SCREW };
    table(&[side, ", ", &words::class(class, kind)].concat(), &rows)
}
