//! Upright bars about a level line: what sizes differ by, enlarged, each true to the others.
use crate::draw::sketch::Sketch;
use crate::words::about;
use maud::Markup;

/// A bar from `low` to `high` micrometres above the line.
pub(super) struct Bar<'a> {
    /// What it is.
    pub(super) name: &'a str,
    /// Its lower end.
    pub(super) low: f64,
    /// Its upper end.
    pub(super) high: f64,
    /// How it is drawn.
    pub(super) class: &'static str,
}

/// The bars beside each other, `line` written at the line they stand about; `name` says the
/// same in a sentence.
pub(super) fn bars(all: &[Bar], line: &str, name: &str) -> Markup {
    let (mut low, mut high) = (0.0_f64, 0.0_f64);
    for bar in all {
        low = low.min(bar.low);
        high = high.max(bar.high);
    }
    let tall = (high - low).max(1e-6);
    let step = tall * 1.3 / all.len() as f64;
    let mut sketch = Sketch::default().line("t", &[(-step * 0.1, 0.0), (tall * 1.3, 0.0)]);
    for (k, bar) in all.iter().enumerate() {
        let left = step * (k as f64 + 0.12);
        let right = left + step * 0.42;
        // Figures of a thin bar are moved apart.
        let apart = ((tall * 0.1 - (bar.high - bar.low)) / 2.0).max(0.0);
        let figure = |um: f64| [if um > 0.0 { "+" } else { "" }, &about(um, places(um))].concat();
        sketch = sketch
            .rect(bar.class, (left, bar.low), (right, bar.high))
            .label("e", ((left + right) / 2.0, high + tall * 0.12), bar.name)
            .label("l", (right + step * 0.05, bar.high + apart), &figure(bar.high));
        if bar.low < bar.high {
            sketch = sketch.label("l", (right + step * 0.05, bar.low - apart), &figure(bar.low));
        }
    }
    sketch.label("r", (-step * 0.14, 0.0), line).markup(name)
}

/// Whole micrometres as such, halves with their place.
fn places(um: f64) -> u8 {
    u8::from((um - um.trunc()).abs() > 1e-6)
}
