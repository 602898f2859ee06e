//! How far each position can be off: the rounding as bars, all causes together as a band.
use super::{Path, num};
use maud::{Markup, html};

/// Width of the plot, its greatest height from the middle, and the most points of its edge.
const WIDE: f64 = 640.0;
const HIGH: f64 = 60.0;
const MOST: usize = 320;

/// The plot of `(rounding, reach)` of each position (any one unit). `most` is the greatest
/// reach as text, `name` the same in a sentence.
#[must_use]
pub fn drawing(positions: &[(f64, f64)], most: &str, name: &str) -> Markup {
    let greatest = positions.iter().fold(0.0_f64, |greatest, (_, reach)| greatest.max(*reach));
    if greatest <= 0.0 {
        return html! {};
    }
    let pitch = WIDE / positions.len() as f64;
    let share = positions.len().div_ceil(MOST).max(1);
    let (mut above, mut below, mut bars) = (Path::default(), Vec::new(), Path::default());
    for (k, some) in positions.chunks(share).enumerate() {
        let middle = ((k * share) as f64 + some.len() as f64 / 2.0) * pitch;
        let reach = some.iter().fold(0.0_f64, |reach, p| reach.max(p.1)) / greatest * HIGH;
        let (least, high) =
            some.iter().fold((0.0_f64, 0.0_f64), |(l, h), p| (l.min(p.0), h.max(p.0)));
        above = above.to((middle, -reach));
        below.push((middle, reach));
        bars = bars.jump((middle, -HIGH * high / greatest)).down(HIGH * (high - least) / greatest);
    }
    let band = below.into_iter().rev().fold(above, Path::to).close();
    html! {
        svg.dr viewBox="0 -78 640 156" role="img" aria-label=(name) {
            path.band d=(band) {}
            path.t d="M0 0H640" {}
            path d=(bars.0) stroke-width=(num((pitch * share as f64 * 0.5).clamp(0.4, 3.0))) {}
            text.l x="0" y="-66" font-size="13" { "±" (most) }
            text.l x="0" y="76" font-size="13" { "1" }
            text.r x="640" y="76" font-size="13" { (positions.len()) }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_band_reaches_as_far_as_it_says_and_bars_stand_in_it() {
        let text = drawing(&[(0.0, 2.0), (1.0, 4.0), (-2.0, 4.0)], "4″", "name").into_string();
        let band = "M106.67 -30L320 -60L533.33 -60L533.33 60L320 60L106.67 30Z";
        assert!(text.contains(band), "{text}");
        assert!(text.contains("M106.67 0v0M320 -15v15M533.33 0v30"), "{text}");
        assert_eq!(drawing(&[(0.0, 0.0)], "", "").into_string(), "");
        let many: Vec<(f64, f64)> = (0..999).map(|k| (0.0, f64::from(k))).collect();
        assert!(drawing(&many, "", "").into_string().contains("L639.04 -60"));
    }
}
