//! Sheets at full size: a ring of holes to centre-punch through, and a tape to wrap round
//! a drum. Files of their own as well as parts of the page: width and height stand in
//! millimetres, a unit of the drawing is one, and each carries bars to measure it by.
use crate::words::about_mm as at;
use handturn::Error;
use handturn::measure::Length;
use handturn::number::float;
use handturn::plate::coordinates::Layout;
use handturn::plate::tape::Sizes;
use maud::{Markup, html};

/// Widest and highest that both A4 and Letter print, in millimetres.
pub const PRINTS: (f64, f64) = (190.0, 255.0);

/// A ring of holes at full size.
pub struct Template<'a> {
    /// Where the holes lie.
    pub ring: &'a Layout,
    /// Diameter of the drill.
    pub drill: Length,
    /// Diameter of the outer rim, where it is known.
    pub rim: Option<Length>,
    /// What the sheet is.
    pub title: &'a str,
    /// What to do with the bars.
    pub check: &'a str,
}

/// A drawing, and its width and height in millimetres.
pub struct Sheet {
    /// The drawing.
    pub svg: Markup,
    /// Its width and height.
    pub size: (f64, f64),
}

/// Room round a drawing, height of a line of letters, and of the two bars.
const MARGIN: f64 = 4.0;
const LINE: f64 = 5.5;
const BARS: f64 = 22.0;
/// A bar of four inches with its end marks.
const BAR: f64 = 102.0;

/// The ring with its holes, numbers, centre and rim.
///
/// # Errors
/// What is wrong with the ring.
pub fn template(of: &Template) -> Result<Sheet, Error> {
    let (radius, drill) = (float::of(of.ring.diameter.mm()) / 2.0, float::of(of.drill.mm()) / 2.0);
    let rim = of.rim.map_or(radius + drill, |rim| float::of(rim.mm()) / 2.0);
    let wide = (rim.max(radius + drill) * 2.0).max(BAR) + 2.0 * MARGIN;
    let (x0, y0) = (wide / 2.0, MARGIN + rim.max(radius + drill));
    let foot = 2.0 * y0;
    let spacing = float::PI * 2.0 * radius / f64::from(of.ring.holes);
    let (arm, inside) = ((spacing * 0.42).min(2.0), radius - drill.max(1.0) - 3.0);
    let every = if of.ring.holes <= 60 { 5 } else { 10 };
    let (mut crosses, mut rings, mut numbers) = (String::new(), String::new(), Vec::new());
    for hole in 0..of.ring.holes {
        let [x, y] = of.ring.centre(hole)?.from_centre.map(|part| part.value);
        let (x, y) = (x0 + x, y0 - y);
        cross(&mut crosses, x, y, arm);
        // A circle as two half turns.
        let r = at(drill);
        let half = |way: &str| ["a", &r, " ", &r, " 0 0 0 ", way, &at(2.0 * drill), " 0"].concat();
        rings.extend(["M", &at(x - drill), " ", &at(y), &half(""), &half("-")]);
        if hole % every == 0 {
            let share = inside / radius;
            numbers.push((x0 + (x - x0) * share, y0 + (y - y0) * share + 0.9, hole));
        }
    }
    cross(&mut crosses, x0, y0, 5.0);
    let svg = html! {
        path d=(crosses) stroke-width="0.1" {}
        path d=(rings) {}
        circle cx=(at(x0)) cy=(at(y0)) r=(at(radius)) stroke-width="0.05" stroke-dasharray="1 1" {}
        circle cx=(at(x0)) cy=(at(y0)) r="1" {}
        @if of.rim.is_some() { circle cx=(at(x0)) cy=(at(y0)) r=(at(rim)) stroke-width="0.25" {} }
        g font-size="2.6" {
            @for (x, y, number) in numbers { text x=(at(x)) y=(at(y)) fill="currentColor" stroke="none" { (number) } }
        }
        (lines(foot, wide, &[of.title, of.check]))
        (bars(foot + 2.0 * LINE + 2.0))
    };
    Ok(sheet(wide, foot + 2.0 * LINE + BARS, of.title, svg))
}

/// A tape on sheets of strips.
pub struct Strips<'a> {
    /// Parts of the whole tape.
    pub parts: u32,
    /// Its sizes.
    pub sizes: &'a Sizes,
    /// What the sheets are.
    pub title: &'a str,
    /// What to do with the bars.
    pub check: &'a str,
    /// What stands beside a joint, before its letter.
    pub joint: &'a str,
}

/// Longest strip, its height with the room below it, and strips on a sheet.
const LONGEST: f64 = 170.0;
const STRIP: f64 = 17.0;
const A_SHEET: usize = 12;
/// A strip's upper edge to its lower one, and how far it goes on to be glued under the next.
const HIGH: f64 = 12.0;
const TAB: f64 = 8.0;

/// The tape cut into strips of one length that lie on sheets; where two meet they carry the
/// same line and letter, and lie line upon line.
pub fn tape(of: &Strips) -> Vec<Sheet> {
    let (length, pitch) = (of.sizes.length.value, of.sizes.pitch.value);
    let mut count = 1_usize;
    while length / count as f64 > LONGEST {
        count += 1;
    }
    let each = length / count as f64;
    let all: Vec<usize> = (0..count).collect();
    let sheets = all.chunks(A_SHEET).map(|strips| {
        let wide = (each + TAB).max(BAR) + 2.0 * MARGIN;
        let foot = MARGIN + strips.len() as f64 * STRIP;
        let svg = html! {
            @for (row, &strip) in strips.iter().enumerate() {
                (one_strip(of, strip, count, each, pitch, MARGIN + row as f64 * STRIP))
            }
            (lines(foot, wide, &[of.title, of.check]))
            (bars(foot + 2.0 * LINE + 2.0))
        };
        sheet(wide, foot + 2.0 * LINE + BARS, of.title, svg)
    });
    sheets.collect()
}

/// Strip `strip` of `count`, its upper edge at `top`.
fn one_strip(of: &Strips, strip: usize, count: usize, each: f64, pitch: f64, top: f64) -> Markup {
    let from = strip as f64 * each;
    let place = |mark: u32| f64::from(mark) * pitch - from;
    // Marks within a ten-thousandth of a joint belong to both strips.
    let near = 1e-4;
    let (mut ticks, mut numbers) = (String::new(), Vec::new());
    for mark in (0..=of.parts).filter(|m| (-near..=each + near).contains(&place(*m))) {
        let long = match mark {
            mark if mark % 10 == 0 => 8.0,
            mark if mark % 5 == 0 => 6.0,
            _ => 4.5,
        };
        let x = at(MARGIN + place(mark).max(0.0));
        ticks.extend(["M", &x, " ", &at(top), "v", &at(long)]);
        if mark % 10 == 0 || mark == of.parts {
            // The last mark is the first one come round again.
            numbers.push((x, mark % of.parts));
        }
    }
    let end = if strip + 1 == count { 0.0 } else { TAB };
    let letter = |joint: usize| {
        let joint = joint % count;
        if joint == 0 { "0".to_owned() } else { joint.to_string() }
    };
    let box_line = [
        "M",
        &at(MARGIN),
        " ",
        &at(top),
        "h",
        &at(each + end),
        "v",
        &at(HIGH),
        "h-",
        &at(each + end),
        "z",
    ]
    .concat();
    let joints = [
        "M",
        &at(MARGIN),
        " ",
        &at(top),
        "v",
        &at(HIGH),
        "M",
        &at(MARGIN + each),
        " ",
        &at(top),
        "v",
        &at(HIGH),
    ]
    .concat();
    let under = at(top + HIGH - 1.0);
    html! {
        path d=(box_line) stroke-width="0.05" {}
        path.joints d=(joints) stroke-width="0.15" stroke-dasharray="2 1" {}
        path.ticks d=(ticks) stroke-width="0.15" {}
        g font-size="2.2" fill="currentColor" stroke="none" {
            @for (x, number) in numbers { text x=(x) y=(at(top + 10.2)) { (number) } }
            text x=(at(MARGIN + 0.8)) y=(under) text-anchor="start" { (of.joint) (letter(strip)) }
            text x=(at(MARGIN + each - 0.8)) y=(under) text-anchor="end" { (of.joint) (letter(strip + 1)) }
        }
    }
}

fn sheet(wide: f64, high: f64, title: &str, content: Markup) -> Sheet {
    let (w, h) = (at(wide), at(high));
    let svg = html! {
        svg.sheet xmlns="http://www.w3.org/2000/svg" width={ (w) "mm" } height={ (h) "mm" } viewBox={ "0 0 " (w) " " (h) }
            role="img" aria-label=(title) fill="none" stroke="currentColor" stroke-width="0.15"
            font-family="sans-serif" text-anchor="middle" { (content) }
    };
    Sheet { svg, size: (wide, high) }
}

fn cross(path: &mut String, x: f64, y: f64, arm: f64) {
    let twice = at(2.0 * arm);
    path.extend(["M", &at(x - arm), " ", &at(y), "h", &twice]);
    path.extend(["M", &at(x), " ", &at(y - arm), "v", &twice]);
}

/// Lines of letters under a drawing.
fn lines(top: f64, wide: f64, lines: &[&str]) -> Markup {
    html! {
        g font-size="3.2" fill="currentColor" stroke="none" {
            @for (k, line) in lines.iter().enumerate() {
                text x=(at(wide / 2.0)) y=(at(top + LINE * (k as f64 + 0.9))) { (line) }
            }
        }
    }
}

/// Bars of 100 mm and 4 in to be measured after printing.
fn bars(top: f64) -> Markup {
    html! {
        (bar(top, 10, 10.0, "100 mm"))
        (bar(top + 9.0, 8, 12.7, "4 in"))
    }
}

/// One bar of so many steps.
fn bar(top: f64, steps: u32, step: f64, name: &str) -> Markup {
    let long = f64::from(steps) * step;
    let tick = |k: u32| {
        let high = if k % steps == 0 { 5.0 } else { 2.5 };
        ["M", &at(MARGIN + f64::from(k) * step), " ", &at(top), "v", &at(high)].concat()
    };
    let ticks: String = (0..=steps).map(tick).collect();
    html! {
        path.bar d={ "M" (at(MARGIN)) " " (at(top)) "h" (at(long)) (ticks) } {}
        text x=(at(MARGIN + long / 2.0)) y=(at(top + 6.0)) font-size="3" fill="currentColor" stroke="none" { (name) }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use handturn::head::Sense;
    use handturn::measure::Angle;
    use handturn::number::Fraction;
    use handturn::plate::tape::Tape;

    fn mm(num: i64, den: i64) -> Length {
        Length::from_mm(Fraction::new(num, den).unwrap())
    }

    fn numbers(path: &str) -> Vec<f64> {
        let text: String = path
            .chars()
            .map(|c| if c.is_ascii_digit() || c == '.' || c == '-' { c } else { ' ' })
            .collect();
        text.split_whitespace().map(|n| n.parse().unwrap()).collect()
    }

    /// What stands in `attribute` of the first element that holds `mark`.
    fn attribute<'a>(svg: &'a str, mark: &str, attribute: &str) -> &'a str {
        let from = svg.find(mark).unwrap_or_else(|| panic!("{mark} in {svg}"));
        let wanted = [" ", attribute, "=\""].concat();
        let start = from + svg[from..].find(&wanted).unwrap() + wanted.len();
        &svg[start..start + svg[start..].find('"').unwrap()]
    }

    #[test]
    fn every_cross_lies_on_its_hole() {
        let first = Angle::from_degrees(Fraction::whole(90)).unwrap();
        for (holes, sense) in [(131, Sense::Clockwise), (7, Sense::Anticlockwise)] {
            let ring = Layout { holes, diameter: mm(110, 1), first, sense, centre: [mm(0, 1); 2] };
            let of = Template {
                ring: &ring,
                drill: mm(8, 5),
                rim: Some(mm(130, 1)),
                title: "title",
                check: "check",
            };
            let sheet = template(&of).unwrap();
            let svg = sheet.svg.into_string();
            assert_eq!(attribute(&svg, "<svg", "width"), "138.000mm");
            assert_eq!(
                attribute(&svg, "<svg", "viewBox"),
                ["0 0 138.000 ", &at(sheet.size.1)].concat()
            );
            assert_eq!(attribute(&svg, "<svg", "height"), at(sheet.size.1) + "mm");
            let crosses = attribute(&svg, "<path", "d");
            let strokes: Vec<Vec<f64>> = crosses.split('M').skip(1).map(numbers).collect();
            assert_eq!(strokes.len(), 2 * (holes as usize + 1));
            for (k, pair) in strokes.chunks(2).enumerate().take(holes as usize) {
                let (x, y) = (pair[0][0] + pair[0][2] / 2.0, pair[0][1]);
                assert!(
                    (pair[1][0] - x).abs() < 0.002
                        && (pair[1][1] + pair[1][2] / 2.0 - y).abs() < 0.002
                );
                let turn = std::f64::consts::TAU * k as f64 / f64::from(holes);
                let turn = if sense == Sense::Clockwise { turn } else { -turn };
                let (wanted_x, wanted_y) = (69.0 + 55.0 * turn.sin(), 69.0 - 55.0 * turn.cos());
                assert!(
                    (x - wanted_x).abs() < 0.002 && (y - wanted_y).abs() < 0.002,
                    "{k}: {x} {y}"
                );
            }
            // Circles of the drill's size about the same places.
            let rings = svg.split("<path").nth(2).unwrap();
            let rings = attribute(rings, " d", "d");
            for (k, circle) in rings.split('M').skip(1).map(numbers).enumerate() {
                let stroke = &strokes[2 * k];
                let (x, y) = (stroke[0] + stroke[2] / 2.0, stroke[1]);
                assert!((circle[0] + 0.8 - x).abs() < 0.002 && (circle[1] - y).abs() < 0.002);
                assert_eq!((circle[2], circle[3], circle[7]), (0.8, 0.8, 1.6));
            }
            let every = if holes > 60 { 10 } else { 5 };
            for number in 0..holes {
                assert_eq!(
                    svg.contains(&[">", &number.to_string(), "</text>"].concat()),
                    number % every == 0,
                    "{number}"
                );
            }
        }
    }

    #[test]
    fn bars_measure_what_they_say() {
        let path = bar(10.0, 10, 10.0, "100 mm").into_string();
        let strokes: Vec<Vec<f64>> =
            attribute(&path, "<path", "d").split('M').skip(1).map(numbers).collect();
        assert_eq!(strokes[0], [4.0, 10.0, 100.0]);
        assert_eq!((strokes[1][0], strokes[11][0], strokes.len()), (4.0, 104.0, 12));
        let path = bar(10.0, 8, 12.7, "4 in").into_string();
        let strokes: Vec<Vec<f64>> =
            attribute(&path, "<path", "d").split('M').skip(1).map(numbers).collect();
        assert_eq!((strokes[0][2], strokes.last().unwrap()[0]), (101.6, 105.6));
    }

    #[test]
    fn a_tape_carries_every_mark_once_and_its_joints_twice() {
        for (parts, drum) in [(131, 120), (2, 900), (365, 300), (12, 20)] {
            let tape_of = Tape {
                parts,
                drum: mm(drum, 1),
                thickness: mm(1, 10),
                stretch_per_mille: Fraction::ZERO,
                thicker: mm(0, 1),
            };
            let sizes = tape_of.sizes().unwrap();
            let of =
                Strips { parts, sizes: &sizes, title: "title", check: "check", joint: "joint " };
            let mut marks: Vec<f64> = Vec::new();
            let (mut so_far, mut strips) = (0.0, 0);
            for sheet in tape(&of) {
                assert!(sheet.size.0 <= PRINTS.0 && sheet.size.1 <= PRINTS.1, "{:?}", sheet.size);
                let svg = sheet.svg.into_string();
                let joints = svg.split("class=\"joints\"").skip(1);
                let ticks = svg.split("class=\"ticks\"").skip(1);
                for (joints, ticks) in joints.zip(ticks) {
                    let line: Vec<Vec<f64>> =
                        attribute(joints, " d", "d").split('M').skip(1).map(numbers).collect();
                    for tick in attribute(ticks, " d", "d").split('M').skip(1).map(numbers) {
                        marks.push(so_far + tick[0] - line[0][0]);
                    }
                    so_far += line[1][0] - line[0][0];
                    strips += 1;
                }
            }
            assert!((so_far - sizes.length.value).abs() < 0.001 * f64::from(strips), "{so_far}");
            marks.dedup_by(|a, b| (*a - *b).abs() < 0.01);
            assert_eq!(marks.len(), parts as usize + 1);
            for (k, mark) in marks.iter().enumerate() {
                assert!(
                    (mark - k as f64 * sizes.pitch.value).abs() < 0.001 * (2.0 + f64::from(strips)),
                    "{k} {mark}"
                );
            }
        }
    }
}
