//! A train of change gears to scale: tooth counts, pitch circles and meshes are
//! true; studs that can be moved stand where the drawing has room.
use super::num;
use handturn::number::float;
use handturn::train::{Chain, Train};
use maud::{Markup, html};

/// One stud with the gears on it, in the order in which they were met.
struct Stud {
    x: f64,
    y: f64,
    gears: Vec<u16>,
    name: &'static str,
}

/// The drawing of a head's `train`; `distance` is that of first and last stud in teeth, 0
/// when it is not known. `name` gives the same in a sentence.
#[must_use]
pub fn drawing(train: &Train, distance: u16, name: &str) -> Markup {
    let ends = (crate::words::SPINDLE, crate::words::WORM_SHAFT);
    chain(&Chain::from(*train), distance, ends, name)
}

/// The drawing of a `chain` of gears between studs called by `ends`.
#[must_use]
pub fn chain(
    chain: &Chain,
    distance: u16,
    ends: (&'static str, &'static str),
    name: &str,
) -> Markup {
    let studs = studs(chain, f64::from(distance), ends);
    let edge = |pick: fn(&Stud, f64) -> f64, far: bool| {
        let values = studs.iter().map(|stud| pick(stud, rim(stud)));
        if far { values.fold(f64::MIN, f64::max) } else { values.fold(f64::MAX, f64::min) }
    };
    let (left, right) = (edge(|s, r| s.x - r, false), edge(|s, r| s.x + r, true));
    let size = (right - left) / 20.0;
    // A label may be wider than its gear.
    let wide = |stud: &Stud| (stud.name.len() + 4 * stud.gears.len()) as f64 * size * 0.3;
    let left = studs.iter().map(|stud| stud.x - wide(stud)).fold(left, f64::min);
    let right = studs.iter().map(|stud| stud.x + wide(stud)).fold(right, f64::max);
    let (top, foot) =
        (edge(|s, r| s.y - r, false) - size * 2.6, edge(|s, r| s.y + r, true) + size * 2.6);
    let view =
        [num(left - size), num(top), num(right - left + size * 2.0), num(foot - top)].join(" ");
    html! {
        svg.dr viewBox=(view) stroke-width=(num(size / 11.0)) role="img" aria-label=(name) {
            @for stud in &studs { @for &teeth in &stud.gears { (gear(stud, teeth)) } }
            @for (k, stud) in studs.iter().enumerate() { (label(stud, k % 2 == 0, size)) }
        }
    }
}

/// Radius to the tips of the largest gear on a stud.
fn rim(stud: &Stud) -> f64 {
    stud.gears.iter().fold(0.0_f64, |most, &teeth| most.max(f64::from(teeth) / 2.0 + 1.0))
}

fn gear(stud: &Stud, teeth: u16) -> Markup {
    let pitch = f64::from(teeth) / 2.0;
    // Teeth of module 1: 1 above and 1.25 below the pitch circle.
    html! {
        g transform={ "translate(" (num(stud.x)) " " (num(stud.y)) ")" } {
            circle r=(num(pitch - 0.13)) pathLength=(u32::from(teeth) * 2) stroke-dasharray="1" stroke-width="2.25" {}
            circle.b r=(num(pitch - 1.25)) {}
            circle.a r=(num(pitch)) stroke-dasharray="6 2 1.5 2" stroke-width=".5" {}
            path d="M-3 0H3M0-3V3" stroke-width=".5" {}
        }
    }
}

fn label(stud: &Stud, above: bool, size: f64) -> Markup {
    let teeth: Vec<String> = stud.gears.iter().map(ToString::to_string).collect();
    let y = if above { stud.y - rim(stud) - size * 0.7 } else { stud.y + rim(stud) + size * 1.5 };
    html! {
        text.h x=(num(stud.x)) y=(num(y)) font-size=(num(size * 1.25)) {
            (teeth.join(" + ")) " " tspan.n font-size=(num(size)) { (stud.name) }
        }
    }
}

/// The studs from end to end, placed in a zigzag whose ends stand `distance` apart
/// where that is known and the chain can reach it.
fn studs(chain: &Chain, distance: f64, ends: (&'static str, &'static str)) -> Vec<Stud> {
    let mut studs = Vec::new();
    let pairs: Vec<_> = chain.pairs().collect();
    for (k, pair) in pairs.iter().enumerate() {
        if k == 0 {
            studs.push(stud(pair.driver, ends.0));
        } else if let Some(shared) = studs.last_mut() {
            let shared: &mut Stud = shared;
            shared.gears.push(pair.driver);
        }
        if k == usize::from(chain.idlers_in) {
            studs.extend(
                chain.idlers.iter().flatten().map(|&teeth| stud(teeth, crate::words::IDLER)),
            );
        }
        let name = if k + 1 == pairs.len() { ends.1 } else { crate::words::STUD };
        studs.push(stud(pair.driven, name));
    }
    place(&mut studs, distance);
    studs
}

fn stud(teeth: u16, name: &'static str) -> Stud {
    Stud { x: 0.0, y: 0.0, gears: vec![teeth], name }
}

fn place(studs: &mut [Stud], distance: f64) {
    let links: Vec<f64> = studs
        .windows(2)
        .map(|pair| match pair {
            [a, b] => {
                let teeth = |gear: Option<&u16>| f64::from(gear.copied().unwrap_or(0));
                (teeth(a.gears.last()) + teeth(b.gears.first())) / 2.0
            }
            _ => 0.0,
        })
        .collect();
    let long: f64 = links.iter().sum();
    let odd: f64 = links.iter().step_by(2).sum();
    let apart = odd - (long - odd);
    // Links at plus and minus one angle: along² + across² is the distance².
    let across = (long * long - distance * distance) / (long * long - apart * apart);
    let sin = if links.len() < 2 {
        0.0
    } else if distance > 0.0 && (0.0..=1.0).contains(&across) {
        float::sqrt(across)
    } else {
        0.5
    };
    let cos = float::sqrt(1.0 - sin * sin);
    let (mut x, mut y, mut down) = (0.0, 0.0, true);
    for (stud, link) in studs.iter_mut().skip(1).zip(links) {
        x += link * cos;
        y += if down { link * sin } else { -link * sin };
        down = !down;
        (stud.x, stud.y) = (x, y);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use handturn::train::{Gap, Pair};

    fn train(idlers: [Option<u16>; 2], second: Option<Pair>) -> Train {
        Train { first: Pair { driver: 56, driven: 24 }, second, idlers, idlers_in: Gap::First }
    }

    #[track_caller]
    fn meshes(train: &Train, distance: f64) -> Vec<Stud> {
        let studs = studs(&Chain::from(*train), distance, ("first", "last"));
        for pair in studs.windows(2) {
            let (a, b) = (&pair[0], &pair[1]);
            let apart = ((a.x - b.x).powi(2) + (a.y - b.y).powi(2)).sqrt();
            let pitch = f64::from(a.gears[a.gears.len() - 1] + b.gears[0]) / 2.0;
            assert!((apart - pitch).abs() < 1e-9, "pitch circles touch");
        }
        studs
    }

    #[test]
    fn pitch_circles_touch_and_the_ends_stand_as_far_apart_as_known() {
        meshes(&train([None, None], None), 0.0);
        meshes(&train([Some(40), Some(44)], None), 0.0);
        meshes(&train([None, None], Some(Pair { driver: 32, driven: 72 })), 0.0);
        let studs = meshes(&train([Some(40), Some(44)], None), 90.0);
        let last = studs.last().unwrap();
        assert!((last.x.powi(2) + last.y.powi(2) - 8100.0).abs() < 1e-6);
    }

    #[test]
    fn tooth_counts_are_true() {
        let text = drawing(&train([Some(40), None], None), 0, "name").into_string();
        for teeth in [56, 40, 24] {
            assert!(text.contains(&format!(r#"pathLength="{}""#, teeth * 2)), "{text}");
        }
    }
}
