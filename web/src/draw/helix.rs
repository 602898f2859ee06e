//! A helical wheel on the swung table, seen from above and to scale: grooves as they
//! wind round the work, the one on top in line with the cutter.
use super::{Path, num};
use crate::words::gear::slanted as words;
use handturn::gear::{Helical, HelicalSizes};
use handturn::head::Sense;
use handturn::number::float;
use handturn::thread::Hand;
use maud::{Markup, html};

/// Half of the drawing's width, in its own units.
const HALF: f64 = 160.0;
/// Half of the work's larger side.
const WORK: f64 = 74.0;
/// Grooves drawn at most.
const MOST: u32 = 24;

/// `wheel` with its `sizes`.
#[must_use]
pub fn drawing(wheel: &Helical, sizes: &HelicalSizes) -> Markup {
    let (radius, face) = (sizes.outside_diameter.value / 2.0, float::of(wheel.face.mm()) / 2.0);
    let scale = WORK / radius.max(face);
    let degrees = wheel.helix.degrees().map_or(0.0, float::of);
    let swung = match sizes.table_swings {
        Sense::Anticlockwise => -degrees,
        Sense::Clockwise => degrees,
    };
    let (high, long) = (radius * scale, face * scale);
    let turned = ["rotate(", &num(swung), ")"].concat();
    html! {
        svg.dr viewBox="-164 -124 328 248" role="img" aria-label=(words::setup_name(wheel, sizes)) {
            g transform=(turned) {
                path.t d="M-150-34H150V34H-150ZM-150-12H150M-150 12H150" {}
                path.o.b d=(box_of(long, high)) {}
                path.t d=(grooves(wheel, sizes, scale)) {}
                path.t stroke-dasharray="16 4 3 4" d="M-158 0H158" {}
            }
            path.o.wire d="M-52-5H52V5H-52Z" {}
            path.b d="M-9-118H9V-5H-9ZM-9 5H9V118H-9Z" {}
            path.a d=(["M", &num(-HALF), " 0H", &num(HALF)].concat()) {}
            text.l.n.h x="14" y="-106" font-size="13" { (words::CUTTER) }
            g transform=(turned) { text.r.n.h x="146" y="28" font-size="13" { (words::TABLE) } }
        }
    }
}

fn box_of(x: f64, y: f64) -> String {
    Path::default().to((-x, -y)).to((x, -y)).to((x, y)).to((-x, y)).close()
}

/// The grooves on the upper half, at the pitch diameter: each goes round by a turn for
/// each lead along the axis.
fn grooves(wheel: &Helical, sizes: &HelicalSizes, scale: f64) -> String {
    let (radius, face) = (sizes.pitch_diameter.value / 2.0, float::of(wheel.face.mm()) / 2.0);
    let winds = if wheel.hand == Hand::Right { 1.0 } else { -1.0 };
    let every = wheel.teeth.div_ceil(MOST);
    let mut path = Path::default();
    for groove in (0..wheel.teeth).step_by(every as usize) {
        let start = f64::from(groove) / f64::from(wheel.teeth);
        let mut on = false;
        for step in -12..=12_i32 {
            let along = face * f64::from(step) / 12.0;
            let turns = start + winds * along / sizes.lead.value;
            // Only what lies on top is seen.
            if float::cos_turns(turns) < 0.0 {
                on = false;
                continue;
            }
            let at = (along * scale, radius * float::sin_turns(turns) * scale);
            path = if on { path.to(at) } else { path.jump(at) };
            on = true;
        }
    }
    path.0
}

#[cfg(test)]
mod tests {
    use super::*;
    use handturn::gear::Tooth;
    use handturn::measure::{Angle, Length};
    use handturn::number::Fraction;

    #[test]
    fn the_groove_on_top_lies_in_line_with_the_cutter() {
        for (hand, way) in [(Hand::Right, 1.0), (Hand::Left, -1.0)] {
            let wheel = Helical {
                teeth: 24,
                tooth: Tooth::default(),
                helix: Angle::from_degrees(Fraction::whole(30)).unwrap(),
                hand,
                face: Length::from_mm(Fraction::whole(4)),
            };
            let sizes = wheel.sizes().unwrap();
            // The first groove's points one step beside the middle.
            let path = grooves(&wheel, &sizes, 1000.0);
            let points: Vec<(f64, f64)> = path
                .split(['M', 'L'])
                .skip(1)
                .take(25)
                .filter_map(|p| p.split_once(' '))
                .map(|(x, y)| (x.parse().unwrap(), y.parse().unwrap()))
                .collect();
            let ((x, y), (u, v)) = (points[11], points[13]);
            let slope = (v - y) / (u - x);
            // y points down, so a lean to the right of the axis is downwards.
            assert!((slope - way * 0.577_35).abs() < 1e-3, "{slope}");
        }
    }
}
