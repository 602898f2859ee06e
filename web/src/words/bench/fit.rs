//! Words of ISO fits.
use crate::words::{decimal, mm};
use handturn::bench::fit::{Fit, Kind, Limits, Turned};
use handturn::measure::Length;
use handturn::number::Fraction;

words! {
    NAME = "ISO fit";
    ABOUT = "Hole and shaft by letters and grades, up to 500 mm";
    ALSO = "iso fits limits tolerance class hole shaft bore clearance interference transition allowance h7 g6 sliding press bearing ream";
    SIZE = "Nominal size, mm";
    DOES = "What it is to do";
    LOOSE = "Loose, dirt and paint";
    FREE = "Turns freely";
    OILED = "Turns in oil";
    SLIDES = "Slides, no shake";
    BY_HAND = "Goes in by hand";
    TAPPED = "Tapped in, comes out";
    LIGHT = "Pressed, comes apart";
    PRESSED = "Pressed to stay";
    HARD = "Pressed hard or shrunk";
    OWN = "My own";
    CLASSES = "Hole/shaft, or one class";
    PART = "Finished and measured";
    NEITHER = "neither";
    THE_HOLE = "the hole";
    THE_SHAFT = "the shaft";
    READING = "It measures, mm";
    DOUBT = "Measured within ±, mm";
    TURN_TO = "Turn the shaft to";
    BORE_TO = "Bore the hole to";
    AT_LEAST = "At least";
    AT_MOST = "At most";
    PLAY_LEAST = "Least play";
    PLAY_MOST = "Most play";
    HOLD_LEAST = "Least hold";
    HOLD_MOST = "Most hold";
    LIMITS = "Limits of size";
    PART_OF = "Part";
    DEVIATIONS = "Deviations, µm";
    HOLE = "Hole";
    SHAFT = "Shaft";
    KEEP = "To make";
    SOURCE = "ISO 286-1 and 286-2, with the corrigendum of 2006";
    CARE = "Measure hole and shaft at the same temperature: 100 mm of steel grows 1 µm for each degree.";
    ENLARGED = "The drawing shows the differences from the nominal size in µm, enlarged, each true to the others.";
    INSIDE = "The measured part lies within its own class.";
    OUTSIDE = "The measured part lies outside its own class: made to each other these two fit, another part may not.";
    HALVES = "A limit lies on half a micrometre: the third place is rounded.";
}

/// The name of a part with its class.
#[must_use]
pub(crate) fn named(part: &str, class: &str) -> String {
    [part, " ", class].concat()
}

/// Deviations as drawings carry them: `+21 / 0`.
#[must_use]
pub(crate) fn deviations(off: Limits) -> String {
    [&*micrometres(off.most), " / ", &micrometres(off.least)].concat()
}

fn micrometres(length: Length) -> String {
    let um = length.mm().times(1000).unwrap_or(Fraction::ZERO);
    [if um > Fraction::ZERO { "+" } else { "" }, &decimal(um, 1)].concat()
}

/// From the one to the other.
#[must_use]
pub(crate) fn from_to(limits: Limits) -> String {
    [&*exact(limits.least), " to ", &exact(limits.most), " mm"].concat()
}

/// Millimetres to three places, four where a half needs it.
fn exact(length: Length) -> String {
    let whole = length.mm().times(1000).is_ok_and(Fraction::is_whole);
    if whole { mm(length) } else { decimal(length.mm(), 4) }
}

/// The question with its answer.
#[must_use]
pub(crate) fn title(size: Length, classes: &str, answer: &str) -> String {
    [&*decimal(size.mm(), 3), " ", classes, ": ", answer].concat()
}

/// What a fit leaves.
#[must_use]
pub(crate) fn leaves(fit: &Fit) -> String {
    let [least, most] = [fit.play.least, fit.play.most].map(size);
    match fit.kind {
        Kind::Play => [&*least, " to ", &most, " mm play"].concat(),
        Kind::Hold => [&*most, " to ", &least, " mm hold"].concat(),
        Kind::Either => [&*least, " mm hold to ", &most, " mm play"].concat(),
    }
}

fn size(length: Length) -> String {
    exact(Length::from_mm(length.mm().abs()))
}

/// What a part is made to.
#[must_use]
pub(crate) fn made_to(label: &str, turned: &Turned) -> String {
    [label, " ", &exact(turned.aim), " mm"].concat()
}

/// A line of working: limits of a part out of its deviations.
#[must_use]
pub(crate) fn limits(name: &str, nominal: Length, off: Limits, of: Limits) -> String {
    let size = decimal(nominal.mm(), 3);
    [name, ": ", &*size, " and ", &deviations(off), " µm = ", &from_to(of)].concat()
}

/// A line of working: play at one end.
#[must_use]
pub(crate) fn play(least: bool, hole: Length, shaft: Length, play: Length) -> String {
    let rule = if least {
        "Least play = least hole − largest shaft: "
    } else {
        "Most play = largest hole − least shaft: "
    };
    let hold = if play.mm().is_negative() { " (hold)" } else { "" };
    [rule, &exact(hole), " − ", &exact(shaft), " = ", &exact(play), " mm", hold].concat()
}

/// The working of a part made to another.
#[must_use]
pub(crate) fn turned(
    of_hole: bool,
    fit: &Fit,
    reading: Length,
    doubt: Length,
    turned: &Turned,
) -> [String; 2] {
    let (largest, least) = if of_hole {
        (
            "Shaft at most = hole − doubt − least play: ",
            "Shaft at least = hole + doubt − most play: ",
        )
    } else {
        (
            "Hole at most = shaft − doubt + most play: ",
            "Hole at least = shaft + doubt + least play: ",
        )
    };
    let sign = if of_hole { " − (" } else { " + (" };
    let (for_most, for_least) =
        if of_hole { (fit.play.least, fit.play.most) } else { (fit.play.most, fit.play.least) };
    let line = |rule: &str, doubt_sign: &str, play: Length, comes: Length| {
        let doubt = exact(doubt);
        [
            rule,
            &exact(reading),
            doubt_sign,
            &doubt,
            sign,
            &exact(play),
            ") = ",
            &exact(comes),
            " mm",
        ]
        .concat()
    };
    [
        line(largest, " − ", for_most, turned.keep.most),
        line(least, " + ", for_least, turned.keep.least),
    ]
}

/// What the drawing shows.
#[must_use]
pub(crate) fn picture(title: &str) -> String {
    ["Bars about the nominal size. ", title].concat()
}

/// A nominal size at its line.
#[must_use]
pub(crate) fn at_line(size: Length) -> String {
    decimal(size.mm(), 3)
}
