//! The error of every position as a strip of bars, to one scale: one a position, or one
//! for a few neighbours that would run together.
use super::{Path, num};
use maud::{Markup, html};

/// Width of the strip; bars share it evenly.
const WIDE: f64 = 640.0;
/// More bars than this run together: then each spans the errors of several positions.
const MOST: usize = 320;
/// Height of the greatest bar above or below the middle.
const HIGH: f64 = 40.0;

/// The strip of `errors` (any one unit), marked at the position `at` (from 0).
/// `most` is the greatest error as text, `name` the same in a sentence.
#[must_use]
pub fn drawing(errors: &[f64], at: Option<usize>, most: &str, name: &str) -> Markup {
    let worst = errors.iter().fold(0.0_f64, |worst, e| worst.max(e.abs()));
    if errors.is_empty() || worst == 0.0 {
        return html! {};
    }
    let pitch = WIDE / errors.len() as f64;
    let x = |k: usize| (k as f64 + 0.5) * pitch;
    let share = errors.len().div_ceil(MOST).max(1);
    let bars = errors.chunks(share).enumerate().fold(Path::default(), |path, (k, errors)| {
        let least = errors.iter().fold(0.0_f64, |least, e| least.min(*e));
        let most = errors.iter().fold(0.0_f64, |most, e| most.max(*e));
        let middle = x(k * share) + (errors.len() - 1) as f64 * pitch / 2.0;
        path.jump((middle, -HIGH * most / worst)).down(HIGH * (most - least) / worst)
    });
    html! {
        svg.dr viewBox="0 -58 640 116" role="img" aria-label=(name) {
            path.t d="M0 0H640" {}
            path.care d="M0 -40H640M0 40H640" {}
            path d=(bars.0) stroke-width=(num((pitch * share as f64 * 0.5).clamp(0.4, 3.0))) {}
            @if let Some(&error) = at.and_then(|at| errors.get(at)) {
                @let x = num(x(at.unwrap_or(0)));
                path.a d={ "M" (x) " -46V46" } stroke-width="1.5" {}
                circle.af cx=(x) cy=(num(-HIGH * error / worst)) r="4" {}
            }
            text.l x="0" y="-46" font-size="13" { "+" (most) }
            text.l x="0" y="55" font-size="13" { "1" }
            text.r x="640" y="55" font-size="13" { (errors.len()) }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn one_bar_a_position_and_the_worst_reaches_the_limit() {
        let text = drawing(&[0.0, 1.0, -2.0], Some(2), "2″", "name").into_string();
        assert!(text.contains("M106.67 0v0M320 -20v20M533.33 0v40"), "{text}");
        assert!(text.contains(r#"cx="533.33" cy="40""#), "{text}");
        let many: Vec<f64> = (0..641).map(|k| f64::from(k % 3 - 1)).collect();
        let text = drawing(&many, None, "1″", "name").into_string();
        assert_eq!(text.matches("v80").count(), 213, "three positions a bar: {text}");
        assert!(text.contains("M1.5 -40v80M4.49 -40v80") && text.contains("M639 0v40\""), "{text}");
        assert_eq!(drawing(&[0.0, 0.0], None, "", "").into_string(), "");
    }
}
