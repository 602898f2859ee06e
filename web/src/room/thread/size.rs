//! Size it: the section to scale, the blank, the limits of both sides, drills.
use super::ask::Asked;
use super::table;
use crate::draw::thread as draw;
use crate::fields::Fields;
use crate::words::thread as words;
use maud::{Markup, html};

/// The step as markup.
pub(super) fn panel(fields: &Fields, shown: &Asked) -> Markup {
    let _ = fields;
    html! {
        div.two {
            figure.draw.plate {
                @if let Ok(section) = draw::drawing(&shown.thread, shown.internal) { (section) }
            }
            div.figures {
                (limits(shown))
            }
        }
    }
}

/// Limits of the side that is made, then of its mate; basic sizes where none are set.
fn limits(shown: &Asked) -> Markup {
    let kind = shown.thread.form.kind;
    let sides = shown.limited.iter().chain(&shown.mate);
    html! {
        @if shown.limited.is_none() { (basic(shown)) }
        @for (class, limits) in sides { (table::limits(kind, *class, limits)) }
        p.why { (words::limits_from(kind)) }
    }
}

fn basic(shown: &Asked) -> Markup {
    let thread = &shown.thread;
    let sizes = [
        (words::OUTSIDE, Some(thread.major)),
        (words::PITCH_DIAMETER, thread.pitch_diameter().ok()),
        (words::ROOT, thread.minor_external().ok()),
        (words::HOLE, thread.minor_internal().ok()),
    ];
    html! {
        table.lim {
            thead { tr { th scope="col" { (words::BASIC) } th scope="col" { "" } } }
            tbody {
                @for (name, length) in sizes {
                    @if let Some(length) = length { tr { th scope="row" { (name) } td { (table::both(length)) } } }
                }
            }
        }
    }
}
