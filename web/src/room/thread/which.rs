//! Which is it: what was measured, and the threads it may be.
use crate::fields::Fields;
use maud::{Markup, html};

/// The fields and the candidates.
pub(super) fn section(_fields: &Fields) -> Markup {
    html! {}
}
