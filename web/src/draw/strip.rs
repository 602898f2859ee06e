//! The error of every position as a strip of bars, one a position, to one scale.
use super::{Path, num};
use maud::{Markup, html};

/// Width of the strip; bars share it evenly.
const WIDE: f64 = 640.0;
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
    let bars = errors.iter().enumerate().fold(Path::default(), |path, (k, error)| {
        path.jump((x(k), 0.0)).down(-HIGH * error / worst)
    });
    html! {
        svg.dr viewBox="0 -58 640 116" role="img" aria-label=(name) {
            path.t d="M0 0H640" {}
            path.care d="M0 -40H640M0 40H640" {}
            path d=(bars.0) stroke-width=(num((pitch * 0.5).clamp(0.4, 3.0))) {}
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
        assert!(text.contains("M106.67 0v0M320 0v-20M533.33 0v40"), "{text}");
        assert!(text.contains(r#"cx="533.33" cy="40""#), "{text}");
        assert_eq!(drawing(&[0.0, 0.0], None, "", "").into_string(), "");
    }
}
