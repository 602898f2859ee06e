//! Flats on round stock, seen along it and to scale; the first one stands on top.
use super::{Path, num, polar};
use crate::words::gear::shaped as words;
use handturn::gear::flats::{Corners, Flats, Flatted};
use handturn::number::float;
use maud::{Markup, html};

/// The stock's radius in the drawing's units.
const RADIUS: f64 = 140.0;

/// What `ask` leaves of the round, which is drawn thin.
#[must_use]
pub fn drawing(ask: &Flats, found: &Flatted) -> Markup {
    let corner = found.sharp.as_ref().map_or(0.0, |sharp| sharp.stock.value / 2.0);
    let stock = ask.stock.map_or(corner, |stock| float::of(stock.mm()) / 2.0);
    let scale = RADIUS / stock;
    let sharp = !matches!(found.cut.as_ref().map(|cut| cut.corners), Some(Corners::Round(_)));
    let width = match (&found.cut, &found.sharp) {
        (Some(cut), _) => cut.width.value,
        (None, Some(sharp)) => sharp.width.value,
        (None, None) => 0.0,
    };
    let (flat, half) = (float::of(found.to_flat.mm()) * scale, width / 2.0 * scale);
    // The end of a flat, in turns from its middle; beyond the centre past a quarter.
    let end = 0.25 - float::atan_turns(flat / half);
    let out = if sharp { corner * scale } else { RADIUS };
    let part = 1.0 / f64::from(ask.sides);
    let mut path = Path::default();
    for k in 0..ask.sides {
        let by = f64::from(k) * part;
        path = path.to(polar(out, by - end)).to(polar(out, by + end));
        if !sharp {
            path = path.arc(RADIUS, by + part - end, part - 2.0 * end > 0.5, true);
        }
    }
    let depth = found.cut.as_ref().map_or_else(
        || found.sharp.as_ref().map_or(0.0, |sharp| sharp.depth.value),
        |cut| float::of(cut.depth.mm()),
    );
    let name = words::named(words::FLATS, &[(words::SAID_DEPTH, depth)]);
    html! {
        svg.dr viewBox="-160 -156 320 312" role="img" aria-label=(name) {
            circle.t r="140" {}
            path.o.m d=(path.close()) {}
            path.a.w d={ "M-150 " (num(-flat)) "H150" } {}
            path.t stroke-dasharray="16 4 3 4" d="M0 -152V152M-152 0H152" {}
        }
    }
}
