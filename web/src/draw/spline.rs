//! A splined shaft with the cutter at the top key, and a keyway, in section and to scale.
use super::{Path, polar};
use crate::words::gear::shaped as words;
use handturn::gear::keyway::{self, Keyway};
use handturn::gear::spline::{Cuts, Spline};
use handturn::measure::Length;
use handturn::number::float;
use maud::{Markup, html};

/// The section's radius in the drawing's units.
const RADIUS: f64 = 140.0;

fn half(length: Length) -> f64 {
    float::of(length.mm()) / 2.0
}

/// A point at `(x, y)` seen with the drawing turned clockwise by `turns`.
fn turned((x, y): (f64, f64), turns: f64) -> (f64, f64) {
    let (s, c) = (float::sin_turns(turns), float::cos_turns(turns));
    (x * c - y * s, x * s + y * c)
}

fn section(name: &str, shaft: Markup, cutters: &[String]) -> Markup {
    html! {
        svg.dr viewBox="-160 -172 320 328" role="img" aria-label=(name) {
            (shaft)
            @for cutter in cutters { path.wire d=(cutter) {} }
            path.t stroke-dasharray="16 4 3 4" d="M0 -168V152M-152 0H152" {}
        }
    }
}

/// A cutter from `near` to `far` beside the centre line, down to `floor` above the centre.
fn cutter(near: f64, far: f64, floor: f64) -> String {
    Path::default()
        .to((near, -floor))
        .to((near, -168.0))
        .to((far, -168.0))
        .to((far, -floor))
        .close()
}

/// The finished shaft, the cutter on both sides of the top key.
#[must_use]
pub fn drawing(ask: &Spline, cuts: &Cuts) -> Markup {
    let scale = RADIUS / half(ask.major);
    let (minor, key) = (half(ask.minor) * scale, half(ask.key) * scale);
    let foot = RADIUS - cuts.depth.value * scale;
    let top = float::sqrt(RADIUS * RADIUS - key * key);
    let at_top = float::atan_turns(key / top);
    let at_foot = float::atan_turns(key / foot);
    let mut path = Path::default();
    for k in 0..ask.keys {
        let by = f64::from(k) / f64::from(ask.keys);
        path = path.to(turned((-key, -foot), by)).to(turned((-key, -top), by));
        path = path.arc(RADIUS, by + at_top, false, true).to(turned((key, -foot), by));
        path = path.arc(minor, by + 1.0 / f64::from(ask.keys) - at_foot, false, true);
    }
    let wide = 2.0 * half(ask.cutter) * scale;
    let cutters = [cutter(key, key + wide, foot), cutter(-key - wide, -key, foot)];
    let name = words::named(
        words::SPLINES,
        &[(words::SAID_DEPTH, cuts.depth.value), (words::SAID_OFFSET, float::of(cuts.offset.mm()))],
    );
    section(&name, html! { path.o.m d=(path.close()) {} }, &cutters)
}

/// A keyway at the top of a shaft.
#[must_use]
pub fn keyway(ask: &Keyway, cut: &keyway::Cut) -> Markup {
    let scale = RADIUS / half(ask.shaft);
    let (key, bottom) = (half(ask.width) * scale, RADIUS - cut.from_top.value * scale);
    let edge = float::atan_turns(key / float::sqrt(RADIUS * RADIUS - key * key));
    let path = Path::default().to(polar(RADIUS, edge)).arc(RADIUS, -edge, true, true);
    let path = path.to((-key, -bottom)).to((key, -bottom)).close();
    let name = words::named(words::KEYWAYS, &[(words::SAID_DEPTH, cut.from_top.value)]);
    section(&name, html! { path.o.m d=(path) {} }, &[cutter(-key, key, bottom)])
}
