//! A dial as its reader will see it, and a vernier beside it: lines and figures in their
//! true lengths and places.
use super::{Path, num, polar};
use crate::words::dial as words;
use handturn::dial::lines::{Edge, Figures};
use handturn::dial::vernier::{Laid, Vernier};
use handturn::divide::Graduation;
use handturn::head::Sense;
use handturn::measure::Length;
use handturn::number::float;
use maud::{Markup, html};

/// Radius of a face in the drawing, and half the width of a stretch.
const HALF: f64 = 160.0;
/// More marks than this run together on a face.
const MOST: u32 = 400;
/// More figures than this do.
const MOST_NUMBERS: u32 = 100;
/// A capital letter's height as part of the size of type.
const CAPITAL: f64 = 0.72;

/// How a dial is drawn.
pub struct View<'a> {
    /// Its marks.
    pub dial: &'a Graduation<'a>,
    /// Across its rim or face.
    pub diameter: Length,
    /// Height of its figures.
    pub figure: Length,
    /// How they stand.
    pub figures: Figures,
    /// Whether they are upright to the reader.
    pub upright: bool,
}

impl View<'_> {
    fn longest(&self) -> f64 {
        self.dial.kinds.iter().map(|kind| float::of(kind.length.mm())).fold(0.0, f64::max)
    }

    /// Whether the whole face can be shown: its marks and figures don't run together, and
    /// they leave its centre free.
    fn whole(&self) -> bool {
        let count = self.dial.count;
        let numbers = self.dial.numbers.map_or(0, |n| count.checked_div(n.every).unwrap_or(0));
        let radius = float::of(self.diameter.mm()) / 2.0;
        let deep = self.longest() + 1.5 * float::of(self.figure.mm());
        self.figures.lines_from == Edge::Outside
            && count <= MOST
            && numbers <= MOST_NUMBERS
            && deep < radius
    }

    /// The edge at the top of a stretch.
    fn top(&self) -> Edge {
        match self.figures.feet {
            _ if self.figures.lines_from == Edge::Outside => Edge::Outside,
            Edge::Front if self.upright => Edge::Back,
            Edge::Back if !self.upright => Edge::Back,
            _ => Edge::Front,
        }
    }
}

/// The dial, and the edge at the top where only a stretch of it is shown.
#[must_use]
pub fn drawing(view: &View) -> (Markup, Option<Edge>) {
    if view.whole() { (face(view), None) } else { (stretch(view), Some(view.top())) }
}

fn numbers<'a>(
    view: &'a View,
    marks: impl Iterator<Item = u32> + 'a,
) -> impl Iterator<Item = (u32, u32)> + 'a {
    marks.filter_map(|mark| Some((mark, view.dial.mark(mark)?.number?)))
}

fn face(view: &View) -> Markup {
    let count = view.dial.count;
    let scale = HALF / (float::of(view.diameter.mm()) / 2.0);
    let clockwise = view.dial.numbers.is_none_or(|n| n.climbs == Sense::Clockwise);
    let height = float::of(view.figure.mm()) * scale;
    let at = HALF - view.longest() * scale - height;
    let wide = 0.16;
    let turned = -90.0 - 180.0 * wide / f64::from(count);
    let mirror = if clockwise { "" } else { "scale(-1 1)" };
    html! {
        svg.dr viewBox="-166 -166 332 332" role="img" aria-label=(words::ring_name(count, view.dial.numbers.is_some())) {
            circle.o r=(num(HALF)) {}
            g transform={ (mirror) "rotate(" (num(turned)) ")" } {
                @for (kind, line) in view.dial.kinds.iter().enumerate() {
                    @let long = float::of(line.length.mm()) * scale;
                    @if let Some((dashes, from)) = dashes(view.dial, kind, wide) {
                        circle r=(num(HALF - long / 2.0)) pathLength=(count) stroke-width=(num(long)) stroke-dasharray=(dashes) stroke-dashoffset=(num(-from)) {}
                    }
                }
            }
            @for (mark, number) in numbers(view, 0..count) {
                @let turn = f64::from(mark) / f64::from(count) * if clockwise { 360.0 } else { -360.0 };
                @let (turn, y) = if view.upright { (turn, height / 2.0 - at) } else { (turn + 180.0, at + height / 2.0) };
                text.fig transform={ "rotate(" (num(turn)) ")" } y=(num(y)) font-size=(num(height / CAPITAL)) { (number) }
            }
            @let tip = Path::default().to(polar(HALF + 0.5, 0.0)).to(polar(HALF + 6.0, 0.008)).to(polar(HALF + 6.0, -0.008));
            path.af d=(tip.close()) {}
        }
    }
}

/// The dashes that draw the marks of `kind`, each `wide` of a division, and where the
/// first one stands, both in divisions.
fn dashes(dial: &Graduation, kind: usize, wide: f64) -> Option<(String, f64)> {
    let ours = |place: &usize| dial.pattern.get(*place).is_some_and(|k| usize::from(*k) == kind);
    let places: Vec<usize> = (0..dial.pattern.len()).filter(ours).collect();
    let first = *places.first()?;
    let mut text = String::new();
    for (k, place) in places.iter().enumerate() {
        let next = places.get(k + 1).copied().unwrap_or(first + dial.pattern.len());
        if k > 0 {
            text.push(' ');
        }
        text.push_str(&num(wide));
        text.push(' ');
        text.push_str(&num((next - place) as f64 - wide));
    }
    Some((text, first as f64))
}

fn stretch(view: &View) -> Markup {
    let count = view.dial.count;
    let pitch = float::of(view.diameter.mm()) * float::PI / f64::from(count);
    let longest = view.longest();
    // As many marks as fill the width, but some beyond a number to each side.
    let large = 12.0_f64.min(110.0 / longest);
    let fill = float::nearest(HALF / pitch / large, 1).map_or(0, |n| n.num());
    let every = view.dial.numbers.map_or(5, |n| i64::from(n.every).min(40));
    let side = fill.clamp(every + 2, 60.max(every + 2)).min(i64::from(count / 2)).max(1) as u32;
    let scale = (HALF / (f64::from(side) + 0.5) / pitch).min(large);
    let height = float::of(view.figure.mm()) * scale;
    let down = if view.top() == view.figures.lines_from { 1.0 } else { -1.0 };
    let right = if view.figures.climbs_right == view.upright { 1.0 } else { -1.0 };
    let deep = longest * scale + 2.0 * height;
    let marks = || (count - side..count).chain(0..=side);
    let x = |mark: u32| {
        let from_zero =
            if mark > side { f64::from(mark) - f64::from(count) } else { f64::from(mark) };
        right * from_zero * pitch * scale
    };
    let thin = pitch * scale * 0.16;
    let mut lines = Path::default();
    for mark in marks() {
        let long = view.dial.mark(mark).map_or(0.0, |mark| float::of(mark.length.mm()) * scale);
        lines = lines.jump((x(mark), 0.0)).down(down * long);
    }
    let edge = HALF + 6.0 + 1.2 * height;
    let (top, middle) =
        (if down > 0.0 { -4.0 } else { -deep - 6.0 }, down * (longest * scale + height));
    html! {
        svg.dr viewBox=([&num(-edge), " ", &num(top), " ", &num(2.0 * edge), " ", &num(deep + 10.0)].concat()) role="img" aria-label=(words::stretch_name(2 * side + 1, view.top())) {
            path.o d={ "M" (num(-edge)) " 0H" (num(edge)) "M" (num(-edge)) " " (num(down * deep)) "H" (num(edge)) } {}
            path d=(lines.0) stroke-width=(num(thin)) {}
            @for (mark, number) in numbers(view, marks()) {
                @let flip = if view.upright { "" } else { "rotate(180)" };
                text.fig transform={ "translate(" (num(x(mark))) " " (num(middle)) ")" (flip) } y=(num(height / 2.0)) font-size=(num(height / CAPITAL)) { (number) }
            }
        }
    }
}

/// The dial above, `vernier` below, set so that its line `line` meets a mark. It is drawn
/// the way the dial climbs, to the right.
#[must_use]
pub fn beside(vernier: &Vernier, laid: &Laid, line: u32) -> Markup {
    let main = float::of(vernier.main.turns());
    let at = |line: i32| vernier.line(line).map_or(0.0, |a| float::of(a.turns()) / main);
    let last = laid.divisions as i32;
    let first = if vernier.double { -last } else { 0 };
    let (one, other) = (at(first), at(last));
    let (low, high) = (one.min(other) - 1.5, one.max(other) + 1.5);
    let scale = 2.0 * HALF / (high - low);
    let x = |marks: f64| (marks - low) * scale - HALF;
    // Its zero stands so many parts of a mark beyond one.
    let past = f64::from(line) / f64::from(laid.divisions);
    let mut above = Path::default();
    let mut mark = float::round(low + past + 0.5);
    while mark - past < high {
        let tall = if float::round(mark / 5.0) * 5.0 == mark { 26.0 } else { 18.0 };
        above = above.jump((x(mark - past), 0.0)).down(-tall);
        mark += 1.0;
    }
    let (mut below, mut met) = (Path::default(), Path::default());
    let fifth = if laid.divisions > 20 { 10 } else { 5 };
    for k in first..=last {
        let tall = if k % fifth == 0 { 26.0 } else { 18.0 };
        let meets =
            k == line as i32 || (line == 0 || line == laid.divisions) && (k == 0 || k == last);
        let path = if meets { &mut met } else { &mut below };
        *path = std::mem::take(path).jump((x(at(k)), 0.0)).down(tall);
        if meets {
            *path = std::mem::take(path).jump((x(at(k)), 0.0)).down(-26.0);
        }
    }
    let thin = num((scale * 0.16).min(1.6));
    html! {
        svg.dr viewBox="-166 -34 332 84" role="img" aria-label=(words::vernier_name(line, laid)) {
            path.o d="M-166 0H166" {}
            path d={ (above.0) (below.0) } stroke-width=(thin) {}
            path.a d=(met.0) stroke-width=(num((scale * 0.3).min(2.4))) {}
            @for k in (first..=last).filter(|k| k.abs() == last || k % fifth == 0 && k.abs() + fifth / 2 < last) {
                text.n x=(num(x(at(k)))) y="42" font-size="13" { (k.abs()) }
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use handturn::dial::lines::{Every, Surface, figures, graduate};
    use handturn::divide::{Asked, Numbers, Question};
    use handturn::number::Fraction;

    fn mm(num: i64, den: i64) -> Length {
        Length::from_mm(Fraction::new(num, den).unwrap())
    }

    fn drawn(count: u32, surface: Surface, upright: bool, climbs: Sense) -> (String, Option<Edge>) {
        let every = |every, length| Every { every: Some(every), length };
        let lines = [every(10, mm(6, 1)), every(5, mm(9, 2)), every(1, mm(3, 1))];
        let numbers = Some(Numbers { every: 10, per_mark: 1, climbs, zero: true });
        let asked = Asked::Marks(graduate(count, &lines, numbers).unwrap());
        let Question::Marks(dial) = asked.question() else { panic!("marks") };
        let figures = figures(surface, upright, climbs);
        let (diameter, figure) = (mm(160, 1), mm(5, 2));
        let (markup, top) = drawing(&View { dial: &dial, diameter, figure, figures, upright });
        (markup.into_string(), top)
    }

    #[test]
    fn a_face_has_every_mark_and_number() {
        let (text, top) = drawn(365, Surface::Face, true, Sense::Clockwise);
        assert_eq!(top, None);
        // 2 units a millimetre: lines of 6 mm lie round a circle of 154.
        assert!(text.contains(r#"r="154" pathLength="365" stroke-width="12" stroke-dasharray="0.16 9.84" stroke-dashoffset="0""#), "{text}");
        assert!(
            text.contains(r#"stroke-dasharray="0.16 0.84 0.16 0.84 0.16 0.84 0.16 1.84 "#),
            "{text}"
        );
        assert_eq!(text.matches("<text").count(), 37);
        assert!(text.contains(r#"rotate(9.86)" y="-"#) && !text.contains("scale(-1 1)"), "{text}");
        let (text, _) = drawn(365, Surface::Face, false, Sense::Anticlockwise);
        assert!(text.contains("scale(-1 1)") && text.contains(r#"rotate(170.14)" y="1"#), "{text}");
    }

    #[test]
    fn a_rim_is_seen_from_where_it_is_read() {
        // Before a handwheel clockwise runs to the right; beside a table, to the left.
        let at = |text: &str, number: &str| -> f64 {
            let before = text.split_once(&[">", number, "</text>"].concat()).unwrap().0;
            let x = before.rsplit_once("translate(").unwrap().1;
            x.split_once(' ').unwrap().0.parse().unwrap()
        };
        for (surface, upright, top, right) in [
            (Surface::HandwheelRim, true, Edge::Back, true),
            (Surface::HandwheelRim, false, Edge::Back, true),
            (Surface::TableRim, true, Edge::Front, false),
            (Surface::TableRim, false, Edge::Front, false),
        ] {
            let (text, edge) = drawn(365, surface, upright, Sense::Clockwise);
            assert_eq!(edge, Some(top), "{surface:?} {upright}");
            assert_eq!(at(&text, "10") > 0.0, right, "{surface:?} {upright}");
            assert_eq!(at(&text, "360") < 0.0, right, "{surface:?} {upright}");
            assert_eq!(text.contains("rotate(180)"), !upright);
        }
    }

    #[test]
    fn the_line_that_meets_a_mark_goes_through() {
        let vernier = Vernier::of_parts(365, 10).unwrap();
        let laid = vernier.laid().unwrap();
        let text = beside(&vernier, &laid, 3).into_string();
        let met = text.split_once(r#"class="a" d=""#).unwrap().1.split_once('"').unwrap().0;
        let x = met.split(['M', ' ']).nth(1).unwrap();
        let above = text.split_once(r#"<path d=""#).unwrap().1;
        assert!(above.contains(&format!("M{x} 0v-")), "{x} in {above}");
    }
}
