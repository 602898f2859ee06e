//! A sketch to scale: outlines, circles, arcs, sizes and letters in millimetres, x to the
//! right and y upwards, fitted into one frame. Lines and letters keep their own size.
use super::num;
use handturn::number::float;
use maud::{Markup, html};

/// What is drawn fits in this width and height, sizes and letters outside it.
const FRAME: (f64, f64) = (300.0, 210.0);
/// Letters: their height, and half the width of one.
const LETTER: (f64, f64) = (15.0, 4.4);

/// A point in millimetres.
pub(crate) type Point = (f64, f64);

enum Item {
    Line { class: &'static str, points: Vec<Point>, closed: bool },
    Circle { class: &'static str, centre: Point, radius: f64 },
    Arc { class: &'static str, centre: Point, radius: f64, from: f64, to: f64 },
    Size { from: Point, to: Point, off: f64, text: String },
    Label { class: &'static str, at: Point, text: String },
}

/// A drawing while it is made. Classes are those of the style sheet: `o` outline, `m`
/// metal, `t` thin, `a` accent, `w` wide, `b` face; `o m` is a part cut through.
#[derive(Default)]
pub(crate) struct Sketch {
    items: Vec<Item>,
}

impl Sketch {
    /// Lines from point to point.
    pub(crate) fn line(mut self, class: &'static str, points: &[Point]) -> Self {
        self.items.push(Item::Line { class, points: points.to_vec(), closed: false });
        self
    }

    /// Lines from point to point and back to the first.
    pub(crate) fn closed(mut self, class: &'static str, points: &[Point]) -> Self {
        self.items.push(Item::Line { class, points: points.to_vec(), closed: true });
        self
    }

    /// A rectangle between two corners.
    pub(crate) fn rect(self, class: &'static str, (x, y): Point, (right, top): Point) -> Self {
        self.closed(class, &[(x, y), (right, y), (right, top), (x, top)])
    }

    /// A circle.
    pub(crate) fn circle(mut self, class: &'static str, centre: Point, radius: f64) -> Self {
        self.items.push(Item::Circle { class, centre, radius });
        self
    }

    /// An arc from one angle to another, in turns against the clock from the right, less
    /// than a whole turn; `to` may lie before `from`.
    pub(crate) fn arc(
        mut self,
        class: &'static str,
        centre: Point,
        radius: f64,
        (from, to): (f64, f64),
    ) -> Self {
        self.items.push(Item::Arc { class, centre, radius, from, to });
        self
    }

    /// A size between two points, its line `off` units to the left of the way from one to
    /// the other: below a level size from right to left, right of an upright one downwards.
    pub(crate) fn size(mut self, from: Point, to: Point, off: f64, text: &str) -> Self {
        self.items.push(Item::Size { from, to, off, text: text.to_owned() });
        self
    }

    /// Letters about a point: class `l` begins there, `r` ends there; `c` in the accent.
    pub(crate) fn label(mut self, class: &'static str, at: Point, text: &str) -> Self {
        self.items.push(Item::Label { class, at, text: text.to_owned() });
        self
    }

    /// The drawing; `name` says the same in a sentence.
    pub(crate) fn markup(&self, name: &str) -> Markup {
        let mut mm = Bounds::default();
        for item in &self.items {
            item.reach(&mut mm);
        }
        let (wide, tall) = mm.size();
        let scale = (FRAME.0 / wide).min(FRAME.1 / tall);
        let scale = if scale.is_finite() { scale } else { 1.0 };
        let at = |(x, y): Point| (x * scale, -y * scale);
        let mut units = Bounds::default();
        let drawn = html! { @for item in &self.items { (item.drawn(scale, &at, &mut units)) } };
        let (wide, tall) = units.size();
        let view =
            [units.low.0 - 6.0, units.low.1 - 6.0, wide + 12.0, tall + 12.0].map(num).join(" ");
        html! { svg.dr viewBox=(view) role="img" aria-label=(name) { (drawn) } }
    }
}

impl Item {
    /// Takes in what is drawn, in millimetres.
    fn reach(&self, bounds: &mut Bounds) {
        match self {
            Self::Line { points, .. } => points.iter().for_each(|point| bounds.take(*point)),
            Self::Circle { centre, radius, .. } => bounds.about(*centre, *radius),
            Self::Arc { centre, radius, from, to, .. } => {
                (0..=16).for_each(|k| {
                    bounds.take(round(*centre, *radius, from + (to - from) * f64::from(k) / 16.0))
                });
            }
            Self::Size { from, to, .. } => {
                [from, to].into_iter().for_each(|point| bounds.take(*point))
            }
            Self::Label { at, .. } => bounds.take(*at),
        }
    }

    fn drawn(&self, scale: f64, at: &impl Fn(Point) -> Point, bounds: &mut Bounds) -> Markup {
        match self {
            Self::Line { class, points, closed } => {
                let mut path = super::Path::default();
                for point in points {
                    bounds.take(at(*point));
                    path = path.to(at(*point));
                }
                let data = if *closed { path.close() } else { path.0 };
                html! { path class=(class) d=(data) {} }
            }
            Self::Circle { class, centre, radius } => {
                let (x, y) = at(*centre);
                bounds.about((x, y), radius * scale);
                html! { circle class=(class) cx=(num(x)) cy=(num(y)) r=(num(radius * scale)) {} }
            }
            Self::Arc { class, centre, radius, from, to } => {
                let ends = [*from, *to].map(|turns| at(round(*centre, *radius, turns)));
                ends.into_iter().for_each(|end| bounds.take(end));
                let flag = |on| if on { " 1" } else { " 0" };
                let r = num(radius * scale);
                let [(x, y), (to_x, to_y)] = ends.map(|(x, y)| (num(x), num(y)));
                let large = flag((to - from).abs() > 0.5);
                let data = [
                    "M",
                    &x,
                    " ",
                    &y,
                    "A",
                    &r,
                    " ",
                    &r,
                    " 0",
                    large,
                    flag(to < from),
                    " ",
                    &to_x,
                    " ",
                    &to_y,
                ];
                html! { path class=(class) d=(data.concat()) {} }
            }
            Self::Size { from, to, off, text } => size(at(*from), at(*to), *off, text, bounds),
            Self::Label { class, at: place, text } => label(class, at(*place), text, bounds),
        }
    }
}

/// Letters whose middle line passes through a point.
fn label(class: &str, (x, y): Point, text: &str, bounds: &mut Bounds) -> Markup {
    let half = letters(text);
    let begins = match class {
        "l" => x,
        "r" => x - 2.0 * half,
        _ => x - half,
    };
    bounds.take((begins, y - LETTER.0 / 2.0));
    bounds.take((begins + 2.0 * half, y + LETTER.0 / 2.0));
    html! { text class={ (class) " h" } x=(num(x)) y=(num(y + LETTER.0 / 3.0)) font-size="15" { (text) } }
}

fn letters(text: &str) -> f64 {
    text.chars().map(|_| LETTER.1).sum()
}

/// A size: thin lines out to it, its own line with a stroke at each end, its letters.
fn size(from: Point, to: Point, off: f64, text: &str, bounds: &mut Bounds) -> Markup {
    let (along, up) = (to.0 - from.0, to.1 - from.1);
    let long = float::sqrt(along * along + up * up).max(1e-9);
    // To the left of the way, as seen on the page (y runs down in the drawing).
    let (nx, ny) = (up / long, -along / long);
    let out = |(x, y): Point, by: f64| (x + nx * by, y + ny * by);
    let over = if off < 0.0 { off - 4.0 } else { off + 4.0 };
    let (a, b) = (out(from, off), out(to, off));
    let stroke = |(x, y): Point| {
        let (dx, dy) = ((along / long + nx) * 4.0, (up / long + ny) * 4.0);
        super::Path::default().to((x - dx, y - dy)).to((x + dx, y + dy)).0
    };
    for end in [out(from, over), out(to, over)] {
        bounds.take(end);
    }
    let thin = super::Path::default()
        .to(from)
        .to(out(from, over))
        .jump(to)
        .to(out(to, over))
        .to(b)
        .jump(a)
        .to(b)
        .0;
    let half = letters(text);
    let beyond = if off < 0.0 { off - 12.0 } else { off + 12.0 };
    // Beside an upright line the letters stand clear of it by their own width.
    let aside = nx.abs() * (half - 4.0).max(0.0) * if off < 0.0 { -1.0 } else { 1.0 };
    let (mx, my) = out(((from.0 + to.0) / 2.0, (from.1 + to.1) / 2.0), beyond + aside);
    html! {
        path.t d=(thin) {}
        path d=(stroke(a)) {}
        path d=(stroke(b)) {}
        (label("n", (mx, my), text, bounds))
    }
}

/// The point on a circle, in turns against the clock from the right.
pub(crate) fn round((x, y): Point, radius: f64, turns: f64) -> Point {
    (x + radius * float::cos_turns(turns), y + radius * float::sin_turns(turns))
}

struct Bounds {
    low: Point,
    high: Point,
}

impl Default for Bounds {
    fn default() -> Self {
        Self { low: (f64::MAX, f64::MAX), high: (f64::MIN, f64::MIN) }
    }
}

impl Bounds {
    fn take(&mut self, (x, y): Point) {
        self.low = (self.low.0.min(x), self.low.1.min(y));
        self.high = (self.high.0.max(x), self.high.1.max(y));
    }

    fn about(&mut self, (x, y): Point, radius: f64) {
        self.take((x - radius, y - radius));
        self.take((x + radius, y + radius));
    }

    fn size(&self) -> Point {
        ((self.high.0 - self.low.0).max(1e-9), (self.high.1 - self.low.1).max(1e-9))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_sketch_is_to_scale_and_holds_its_letters() {
        let sketch = Sketch::default().rect("o m", (0.0, 0.0), (60.0, 20.0)).size(
            (60.0, 0.0),
            (0.0, 0.0),
            20.0,
            "60 mm",
        );
        let drawn = sketch.markup("A block").into_string();
        // 300 units for 60 mm: five to the millimetre, y upwards.
        assert!(drawn.contains(r#"<path class="o m" d="M0 0L300 0L300 -100L0 -100Z">"#), "{drawn}");
        // The size lies below: its line at 20, its letters below that.
        assert!(drawn.contains("M300 20L0 20"), "{drawn}");
        assert!(
            drawn.contains(r#"viewBox="-10.64 -106"#) || drawn.contains(r#"viewBox="-6 -106"#),
            "{drawn}"
        );
        assert!(drawn.contains("aria-label=\"A block\""));
    }

    #[test]
    fn nothing_at_all_is_drawn_without_a_fault() {
        assert!(Sketch::default().markup("").into_string().starts_with("<svg"));
        let point = Sketch::default().line("t", &[(1.0, 1.0)]).markup("").into_string();
        assert!(!point.contains("inf") && !point.contains("NaN"));
    }
}
