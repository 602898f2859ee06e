//! The index plate (or notched plate, or dial) with the pin, where it goes, the
//! sector arms and true hole numbers, for one leg of a move.
//!
//! Angles are true. Radii are true where the head's circles carry them; otherwise
//! the circles are spaced evenly. Alone, the circle in use fills the plate.
use super::{Path, num, polar};
use handturn::divide::{ArmsSet, Leg, Part};
use handturn::head::{Circle, Sense};
use handturn::number::float;
use maud::{Markup, html};

/// Radius of the plate's edge; everything of the plate stays within it.
pub const EDGE: f64 = 100.0;

/// Sizes of its numbers: counts along the arc, hole numbers, those of pin and target.
const TINY: f64 = 7.4;
const SMALL: f64 = 8.7;
const BOLD: f64 = 11.6;

/// What a plate drawing shows.
#[derive(Clone, Copy)]
pub struct PlateView<'a> {
    /// The leg drawn: pin (or plate) from where to where, and the arms. A leg of
    /// no turns and no spaces shows where the pin stands.
    pub leg: &'a Leg,
    /// Every circle of the plate. Empty, the others are left out and the circle
    /// in use is drawn large, for small screens.
    pub circles: &'a [Circle],
    /// Count the spaces of the move along its arc.
    pub counted: bool,
}

/// The whole drawing; `name` gives the same figures in a sentence.
#[must_use]
pub fn drawing(plate: &PlateView, name: &str) -> Markup {
    html! {
        svg.dr viewBox="-104 -104 208 208" role="img" aria-label=(name) { (group(plate)) }
    }
}

/// The plate about (0, 0), within [`EDGE`], to set into a larger drawing.
#[must_use]
pub fn group(plate: &PlateView) -> Markup {
    let ring = Ring::of(plate);
    html! {
        circle.o.b r=(num(EDGE)) {}
        circle.t r="97.4" {}
        @for (radius, holes) in others(plate) { (dotted(radius, holes, 2.3, "dots")) }
        (ring.holes())
        (ring.arms())
        (ring.numbers())
        (ring.travel(plate.counted))
        (ring.pins())
        (hub())
    }
}

/// A plate alone with all its circles, each with its count of holes beside the
/// next: for a list of what is owned. `name` gives the same figures in a sentence.
#[must_use]
pub fn circles(circles: &[Circle], name: &str) -> Markup {
    let rings: Vec<(f64, u32)> =
        (0..).zip(circles).map(|(k, c)| (spread(circles, k), u32::from(c.holes))).collect();
    // Counts wind round the plate so that those of neighbours stand clear.
    let count = |(k, (radius, holes)): (usize, &(f64, u32))| {
        Label::new(*holes, polar(*radius, 0.07 * k as f64), SMALL)
    };
    let counts: Vec<Label> = rings.iter().enumerate().map(count).collect();
    html! {
        svg.dr viewBox="-104 -104 208 208" role="img" aria-label=(name) {
            circle.o.b r=(num(EDGE)) {}
            circle.t r="97.4" {}
            @for (radius, holes) in &rings { (dotted(*radius, *holes, 2.3, "dots")) }
            (labels("h", SMALL, &counts))
            (hub())
        }
    }
}

/// One leg on its ring, all lengths in the drawing's units.
struct Ring<'a> {
    leg: &'a Leg,
    of: f64,
    radius: f64,
    hole: f64,
    /// Arc of the move: outside the ring where there is room.
    track: f64,
}

impl<'a> Ring<'a> {
    fn of(plate: &PlateView<'a>) -> Self {
        let of = f64::from(plate.leg.from.of.max(1));
        let radius = radius_of(plate);
        let spacing = float::PI * 2.0 * radius / of;
        let alone = plate.circles.is_empty();
        let hole = (spacing * 0.36).min(if alone { 6.0 } else { 3.4 });
        let out = if alone { 11.0 } else { 9.0 };
        let track = if radius + out < 95.0 { radius + out } else { radius - out };
        Self { leg: plate.leg, of, radius, hole, track }
    }

    /// Where hole `number` stands, in turns clockwise from the top.
    fn angle(&self, number: u32) -> f64 {
        let from = f64::from(self.leg.from.number);
        let number = f64::from(number);
        match (self.leg.part, self.leg.sense) {
            // The plate turns under a pin that stays at the top.
            (Part::BackPin, _) => (number - from) / self.of,
            (Part::Spindle, Sense::Clockwise) => (from - number) / self.of,
            (Part::Spindle, Sense::Anticlockwise) => (number - from) / self.of,
            _ => number / self.of,
        }
    }

    fn plate_moves(&self) -> bool {
        matches!(self.leg.part, Part::BackPin | Part::Spindle)
    }

    fn clockwise(&self) -> bool {
        self.leg.sense == Sense::Clockwise
    }

    fn moves(&self) -> bool {
        self.leg.turns > 0 || self.leg.spaces > 0
    }

    fn has_dial(&self) -> bool {
        matches!(self.leg.part, Part::Handwheel | Part::FineDial)
    }

    fn holes(&self) -> Markup {
        if self.has_dial() {
            return self.ticks();
        }
        // Holes as two dotted strokes: dark ones, and smaller bright ones on them.
        let line = (self.hole * 0.6).min(1.3);
        html! {
            circle.t r=(num(self.radius)) {}
            (dotted(self.radius, self.leg.from.of, self.hole * 2.0 + line, "holes"))
            (dotted(self.radius, self.leg.from.of, self.hole * 2.0 - line, "bores"))
        }
    }

    fn ticks(&self) -> Markup {
        let of = self.leg.from.of;
        let coarse = if of > 360 { of / 10 } else { of };
        // A tick is a dash as wide as a line; the first stands at the top.
        let wide = (1.0 / (float::PI * 2.0 * self.radius)).min(0.4 / f64::from(coarse)) * 1000.0;
        let tick = |radius: f64, long: f64, count: u32| {
            let dash = num(wide) + " " + &num(1000.0 / f64::from(count) - wide);
            html! {
                circle r=(num(radius)) pathLength="1000" stroke-dasharray=(dash)
                    stroke-dashoffset=(num(wide / 2.0)) stroke-width=(num(long)) transform="rotate(-90)" {}
            }
        };
        html! {
            circle.t r=(num(self.radius)) {}
            (tick(self.radius - 3.0, 6.0, coarse))
            @if coarse % 10 == 0 { (tick(self.radius - 5.0, 10.0, coarse / 10)) }
        }
    }

    /// The arms, where they help: they count the handle's holes, not the back pin's.
    fn arms_set(&self) -> Option<ArmsSet> {
        self.leg.arms.filter(|_| self.leg.part == Part::Pin)
    }

    /// The two arms stand just outside the span they set.
    fn arms(&self) -> Markup {
        let Some(set) = self.arms_set() else { return html! {} };
        let (from, to) = (self.angle(self.leg.from.number), self.angle(self.leg.to.number));
        let (first, second) = if self.clockwise() != set.rest { (from, to) } else { (to, from) };
        html! {
            path.b d=(self.arm(first, -1.0)) {}
            path.b d=(self.arm(second, 1.0)) {}
        }
    }

    fn arm(&self, turns: f64, side: f64) -> String {
        let beside = self.hole + 1.0;
        let point = |along: f64, across: f64| {
            let ((ax, ay), (cx, cy)) = (polar(along, turns), polar(across * side, turns + 0.25));
            (ax + cx, ay + cy)
        };
        Path::default()
            .to(point(11.0, beside))
            .to(point(self.radius + self.hole + 3.0, beside))
            .to(point(self.radius + self.hole - 1.0, beside + 5.0))
            .to(point(11.0, beside + 8.0))
            .close()
    }

    /// True hole numbers inside the ring; pin and target always, and bold.
    fn numbers(&self) -> Markup {
        let of = self.leg.from.of;
        let every = match of {
            0..=20 => 1,
            21..=60 => 5,
            61..=250 => 10,
            _ => of / 20,
        };
        let inside = self.inside();
        let mut bold = vec![self.label(self.leg.from.number, inside, -1.0)];
        if self.moves() && self.leg.to.number != self.leg.from.number {
            let mut target = self.label(self.leg.to.number, inside, 1.0);
            if bold.iter().any(|pin| pin.touches(&target)) {
                target = self.label(self.leg.to.number, inside - 13.0, 1.0);
            }
            bold.push(target);
        }
        let light: Vec<Label> = (0..of)
            .step_by(every.max(1) as usize)
            .map(|number| Label::new(number, polar(inside, self.angle(number)), SMALL))
            .filter(|label| !bold.iter().any(|other| other.touches(label)))
            .collect();
        html! {
            (labels("n h", SMALL, &light))
            (labels("h", BOLD, &bold))
        }
    }

    /// Radius of the middle of the numbers.
    fn inside(&self) -> f64 {
        let inner = if self.track < self.radius { self.track } else { self.radius - self.hole };
        inner - if self.has_dial() { 16.0 } else { 9.5 }
    }

    /// A bold number, moved off the arm beside it (to the side of the span).
    fn label(&self, number: u32, radius: f64, arm_side: f64) -> Label {
        let turns = self.angle(number);
        let label = Label::new(number, polar(radius, turns), BOLD);
        let Some(set) = self.arms_set() else { return label };
        let side = if self.clockwise() != set.rest { arm_side } else { -arm_side };
        let (ux, uy) = polar(1.0, turns + 0.25);
        let reach = (label.wide * ux).abs() + (label.high * uy).abs();
        let shift = (reach - self.hole + 0.6).max(0.0) * -side;
        Label { x: label.x + ux * shift, y: label.y + uy * shift, ..label }
    }

    /// The arc the pin (or the plate) travels, with its count.
    fn travel(&self, counted: bool) -> Markup {
        if !self.moves() {
            return html! {};
        }
        let part = f64::from(self.leg.spaces) / self.of;
        let (start, way) = match (self.plate_moves(), self.clockwise()) {
            (false, true) => (self.angle(self.leg.from.number), 1.0),
            (false, false) => (self.angle(self.leg.from.number), -1.0),
            (true, true) => (self.angle(self.leg.to.number), 1.0),
            (true, false) => (self.angle(self.leg.to.number), -1.0),
        };
        html! {
            @if self.leg.spaces > 0 {
                (arrow(self.track, start, start + way * part, self.hole))
                @if counted && self.leg.spaces > 1 { (self.counts(start, way)) }
            }
            @if self.leg.turns > 0 { (full_turns(self.leg.turns, way)) }
        }
    }

    fn counts(&self, start: f64, way: f64) -> Markup {
        let spaces = self.leg.spaces;
        let gap = float::PI * 2.0 * self.track / self.of;
        let every = if gap > 11.0 {
            1
        } else if gap > 2.6 {
            5
        } else {
            10
        };
        let out = if self.track > self.radius { 6.5 } else { -6.5 };
        let at = |count: u32| start + way * f64::from(count) / self.of;
        let label = |count, size| Label::new(count, polar(self.track + out, at(count)), size);
        let (mut ticks, mut counts) = (Path::default(), Vec::new());
        for count in (1..spaces).filter(|c| c % every == 0 && c + every / 2 < spaces) {
            let tick = |by: f64| polar(self.track + by, at(count));
            ticks = ticks.jump(tick(-1.5)).to(tick(1.5));
            counts.push(label(count, TINY));
        }
        html! {
            @if !counts.is_empty() { path.a d=(ticks.0) {} }
            (labels("c h", TINY, &counts))
            (labels("c e h", SMALL, &[label(spaces, SMALL)]))
        }
    }

    fn pins(&self) -> Markup {
        let pin = polar(self.radius, self.angle(self.leg.from.number));
        let target = polar(self.radius, self.angle(self.leg.to.number));
        let size = self.hole.max(2.6);
        html! {
            @if self.moves() && self.leg.spaces > 0 {
                circle.goal cx=(num(target.0)) cy=(num(target.1)) r=(num(size)) {}
            }
            circle.pin cx=(num(pin.0)) cy=(num(pin.1)) r=(num(size)) {}
            circle.eye cx=(num(pin.0)) cy=(num(pin.1)) r=(num(size * 0.28)) {}
        }
    }
}

/// A number where it stands, and the half box it needs.
struct Label {
    number: u32,
    x: f64,
    y: f64,
    wide: f64,
    high: f64,
}

impl Label {
    fn new(number: u32, (x, y): (f64, f64), size: f64) -> Self {
        let digits = f64::from(number.checked_ilog10().unwrap_or(0) + 1);
        Self { number, x, y, wide: digits * size * 0.32, high: size * 0.42 }
    }

    fn touches(&self, other: &Self) -> bool {
        (self.x - other.x).abs() < self.wide + other.wide + 1.0
            && (self.y - other.y).abs() < self.high + other.high + 1.0
    }
}

/// Numbers of one `size` and look as one text: a browser places it far faster than many.
fn labels(class: &str, size: f64, labels: &[Label]) -> Markup {
    html! {
        @if !labels.is_empty() {
            text class=(class) font-size=(num(size)) {
                @for label in labels { tspan x=(num(label.x)) y=(num(label.y + size * 0.36)) { (label.number) } }
            }
        }
    }
}

/// An arc about the middle with an arrowhead at its end, both ends trimmed.
fn arrow(radius: f64, from: f64, to: f64, trim: f64) -> Markup {
    let way = if to >= from { 1.0 } else { -1.0 };
    let turn = 1.0 / (float::PI * 2.0 * radius);
    let span = (to - from).abs();
    let head = (6.5 * turn).min(span * 0.7);
    let start = from + way * (trim * turn).min(span * 0.15);
    let neck = to - way * head;
    let line =
        Path::default().to(polar(radius, start)).arc(radius, neck, span - head > 0.5, way > 0.0);
    let tip = Path::default()
        .to(polar(radius, to))
        .to(polar(radius - 3.6, neck - way * turn))
        .to(polar(radius + 3.6, neck - way * turn));
    html! {
        path.a.w d=(line.0) {}
        path.af d=(tip.close()) {}
    }
}

/// Whole turns: a full circle round the hub and how many.
fn full_turns(turns: u32, way: f64) -> Markup {
    html! {
        (arrow(19.0, 0.03 * way, 0.97 * way, 0.0))
        text.c.e.h x="0" y="36" font-size="11.6" { (turns) "×" }
    }
}

fn hub() -> Markup {
    html! {
        circle.b r="12" {}
        circle r="5.5" {}
        path.t d="M-9 0H9M0-9V9" {}
    }
}

/// A dotted circle: `count` dots of `wide`, the first at the top.
fn dotted(radius: f64, count: u32, wide: f64, class: &str) -> Markup {
    html! {
        circle class=(class) r=(num(radius)) pathLength=(count) stroke-width=(num(wide)) transform="rotate(-90)" {}
    }
}

/// Radii and holes of the circles that are not in use.
fn others(plate: &PlateView) -> Vec<(f64, u32)> {
    let mut used = false;
    let mut rings = Vec::new();
    for (place, circle) in plate.circles.iter().enumerate() {
        if !used && u32::from(circle.holes) == plate.leg.from.of {
            used = true;
        } else {
            rings.push((spread(plate.circles, place), u32::from(circle.holes)));
        }
    }
    rings
}

fn radius_of(plate: &PlateView) -> f64 {
    let place = plate.circles.iter().position(|c| u32::from(c.holes) == plate.leg.from.of);
    place.map_or(73.5, |place| spread(plate.circles, place))
}

/// Radius of the circle at `place`: true to scale where all are known, else evenly spaced.
fn spread(circles: &[Circle], place: usize) -> f64 {
    let mm = |circle: &Circle| circle.radius.map(|radius| float::of(radius.mm()));
    let known: Option<Vec<f64>> = circles.iter().map(mm).collect();
    if let Some(known) = known {
        let greatest = known.iter().copied().fold(0.0_f64, f64::max);
        if let Some(&radius) = known.get(place).filter(|_| greatest > 0.0) {
            return 92.0 * radius / greatest;
        }
    }
    let rank = circles.get(place).map_or(0, |this| {
        circles.iter().enumerate().filter(|(k, c)| (c.holes, *k) < (this.holes, place)).count()
    });
    let steps = circles.len().saturating_sub(1).max(1);
    48.0 + 44.0 * rank as f64 / steps as f64
}

#[cfg(test)]
mod tests;
