//! Words of the two trial gaps.
use crate::words::{about, about_mm, decimal, inches, mm, thou};
use handturn::Error;
use handturn::gear::found::Blank;
use handturn::gear::trial::{Check, Deeper, Trial};
use handturn::number::Approx;

words! {
    ROUGH = "Rough all gaps, or two to try, to";
    TRIAL = "Two trial gaps";
    BY = "Measured";
    BY_PINS = "Over pins";
    BY_SPAN = "Over teeth";
    BY_CALIPER = "By caliper";
    CUTTING = "Cut by";
    FORM = "Form cutter";
    GENERATED = "Hob or rack tool";
    READING = "They read, mm";
    NOTHING = "Nothing serves to measure this wheel: see Check.";
}

/// What to do, step by step.
#[must_use]
pub fn lines(trial: &Trial, blank: &Blank, wanted: Result<Approx, Error>) -> Vec<String> {
    let odd = trial.spur.teeth % 2 == 1;
    let deep = [" gaps ", &mm(blank.rough), " mm deep (", &inches(blank.rough), " in): "].concat();
    let (which, with) = match trial.check {
        Check::Pins { pin } => (
            if odd { "two that lie nearest to opposite." } else { "two that lie opposite." }
                .to_owned(),
            ["over two ", &decimal(pin.mm(), 3), " mm pins"].concat(),
        ),
        Check::Span { teeth } => (
            ["one before the first of ", &teeth.to_string(), " teeth and one after the last."]
                .concat(),
            ["over the ", &teeth.to_string(), " teeth between"].concat(),
        ),
        Check::Caliper { height } => (
            "two side by side.".to_owned(),
            ["the tooth between, the height set to ", &mm(height), " mm"].concat(),
        ),
    };
    let wanted = wanted.map_or_else(
        |_| String::new(),
        |wanted| [": ", &about_mm(wanted.value), " mm is wanted in the end."].concat(),
    );
    vec![
        ["Touch on, set the dial to zero and cut", &*deep, &which].concat(),
        ["Measure ", &with, &wanted].concat(),
        "Go deeper by what is left, try once more, then cut all gaps at that depth.".to_owned(),
    ]
}

/// Whether the gaps are too deep by more than a micrometre shows.
#[must_use]
pub fn too_deep(deeper: &Deeper) -> bool {
    deeper.deeper.value < -0.0005
}

/// How much deeper to go.
#[must_use]
pub fn verdict(deeper: &Deeper) -> String {
    let by = deeper.deeper.value;
    let size = about_mm(by.abs());
    match () {
        () if too_deep(deeper) => size + " mm too deep",
        () if by < 0.0005 => "At depth".to_owned(),
        () => ["Go ", &size, " mm deeper (", &thou(by), " thou)"].concat(),
    }
}

/// What the reading does for each bit of depth; how it came about.
#[must_use]
pub fn left(deeper: &Deeper) -> String {
    let wanted = about_mm(deeper.wanted.value);
    if too_deep(deeper) {
        return [
            "The teeth are thin: ",
            &wanted,
            " mm was wanted. The pair will have more backlash.",
        ]
        .concat();
    }
    let by = about(deeper.per_depth / 100.0, 4);
    ["To come to ", &wanted, " mm. Each 0.01 mm of depth takes ", &by, " mm off the reading."]
        .concat()
}
