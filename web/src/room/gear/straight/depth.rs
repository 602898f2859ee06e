//! Depth: how deep the gaps are cut, from the blank as it came out.
use super::{Asked, blank};
use crate::fields::Fields;
use crate::pieces::caution;
use crate::room::steps::large;
use crate::words::gear::{self as words, straight as says};
use handturn::gear::found::Height;
use maud::{Markup, html};

/// The step as markup.
pub(super) fn panel(fields: &Fields, asked: &Asked) -> Markup {
    let wheel = &asked.wheel;
    let (found, _) = blank::in_force(fields, asked);
    html! {
        div.two {
            div.figures {
                @if let Some(found) = &found {
                    div {
                        p.lab { (if found.height == Height::Drawn { says::WHOLE_DEPTH } else { says::FROM_FOUND }) }
                        (large(found.depth))
                        p.why { (words::rule(wheel.tooth.rule)) }
                        @if found.height != Height::Drawn { p { (says::height(found)) } }
                    }
                }
                (caution(html! { (words::CUT_CARE) " " (words::MAKERS_CARE) }))
                details id="ge-depth-working" {
                    summary { (crate::words::BY_HAND) }
                    ul.work { li { (says::depth_line(wheel)) } }
                }
            }
        }
    }
}
