//! The frame round every room: header and room bar.
use crate::fields::Fields;
use crate::words;
use maud::{Markup, html};

/// The rooms there are, as pressed and as named. A room appears when it works.
const ROOMS: [(&str, &str); 6] = [
    ("divide", words::DIVIDE),
    ("thread", words::thread::THREAD),
    ("gear", words::gear::GEAR),
    ("bench", words::bench::BENCH),
    ("shop", words::SHOP),
    ("card", words::card::CARD),
];

/// The room the page shows.
#[must_use]
pub fn room(fields: &Fields) -> &str {
    let room = fields.get("room");
    ROOMS.iter().find(|(value, _)| *value == room).map_or("divide", |(value, _)| value)
}

/// What stands in the frame beside the room bar.
pub struct Frame {
    /// A newer version lies ready.
    pub newer: bool,
    /// The way to the open card.
    pub corner: Markup,
    /// The way back to an open Run.
    pub strip: Markup,
    /// What is said at once, whatever the room.
    pub notice: Option<Markup>,
}

/// `content` within the frame, and behind it what is printed in its place.
#[must_use]
pub fn frame(fields: &Fields, frame: &Frame, content: &Markup, printed: &Markup) -> Markup {
    html! {
        div.app.told[frame.notice.is_some()] {
            header.top {
                span.brand { (brand()) (words::HANDTURN) }
                @if frame.newer {
                    p id="newer" { button.btn type="button" data-do="take-newer" { (words::NEWER) } }
                }
                (frame.corner)
                (super::run::corner())
            }
            nav.nav aria-label=(words::ROOMS) {
                @if let Some(notice) = &frame.notice { (notice) }
                (frame.strip)
                div.scale {}
                ul {
                    @for (value, label) in ROOMS {
                        li {
                            button type="button" data-do="room" data-value=(value)
                                aria-current=[(room(fields) == value).then_some("page")] { (icon(value)) (label) }
                        }
                    }
                }
            }
            (content)
        }
        (printed)
    }
}

/// A dividing plate with its handle.
fn brand() -> Markup {
    html! {
        svg viewBox="0 0 28 28" aria-hidden="true" {
            circle cx="14" cy="14" r="12" {}
            circle cx="14" cy="14" r="2.6" {}
            path d="M15.9 12.1l5-5" stroke-width="3" {}
            circle cx="14" cy="14" r="8.6" stroke-width="2" pathLength="24" stroke-dasharray=".22 1.78" {}
        }
    }
}

fn icon(room: &str) -> Markup {
    html! {
        svg viewBox="0 0 24 24" aria-hidden="true" {
            @if room == "divide" {
                circle cx="12" cy="12" r="9.2" {}
                path d="M12 12V2.8M12 12l8 4.6" {}
                circle cx="12" cy="12" r="6" stroke-width="2.6" stroke-linecap="round" pathLength="6" stroke-dasharray=".001 .999" transform="rotate(30 12 12)" {}
            } @else if room == "thread" {
                path d="M3 9l3-4 4 5 4-5 4 5 3-4M3 18l3-4 4 5 4-5 4 5 3-4" {}
            } @else if room == "gear" {
                circle cx="12" cy="12" r="6.6" {}
                circle cx="12" cy="12" r="2.2" {}
                circle cx="12" cy="12" r="8.2" stroke-width="3" pathLength="18" stroke-dasharray=".55 .45" {}
            } @else if room == "bench" {
                path d="M2 20.5h20M3.5 16L19 12.6M19 12.6L17.6 6.2 2.1 9.6 3.5 16M19 12.6v6M15.5 18.6h7" {}
            } @else if room == "card" {
                path d="M5 2.8h14v18.4H5zM8 8l1.4 1.4L12 6.8M8 14l1.4 1.4 2.6-2.6M14 9h2.5M14 15h2.5" {}
            } @else {
                path d="M3 4h18v16H3zM3 9.3h18M3 14.7h18M10 6.7h4M10 12h4M10 17.4h4" {}
            }
        }
    }
}
