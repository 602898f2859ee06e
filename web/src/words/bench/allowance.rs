//! Words of fits by the shop's rules.
use super::fit::from_to;
use crate::words::{decimal, in_inch, inches, thou};
use handturn::bench::fit::Limits;
use handturn::bench::shop_fit::Allowed;
use handturn::measure::Length;
use handturn::number::float;

words! {
    NAME = "Fit by the inch";
    ABOUT = "Running, push, driven, pressed, shrunk: so many thou on the diameter";
    ALSO = "allowance thou rule running push drive force press shrink shop fit clearance interference";
    HOLE = "Hole, mm";
    RULE = "The shaft";
    RUNNING = "runs";
    PUSH = "goes in by hand";
    DRIVE = "is driven";
    FORCE = "is pressed";
    BY_INCH = "is pressed, by the inch";
    SHRINK = "is shrunk in";
    FROM = "Shaft from";
    TO = "To";
    PLAY = "Play";
    HOLD = "Hold";
    SHAFT = "Shaft";
    SOURCE = "Machinery’s Handbook, 1914 (steps of diameter to 5 in); Applied Science for Metal Workers, 1919 (by the inch)";
    CARE = "Press square and guarded, from the side: a part under force can fly. Oil the shaft and break its edge.";
    BAND = "An old shop’s band, for steel and cast iron with a solid hub. A thin ring takes less.";
    FROM_MEMORY = "0.001 in an inch is printed; up to 0.0015 is common practice.";
}

/// The question with its answer.
#[must_use]
pub(crate) fn title(hole: Length, rule: &str, shaft: Limits) -> String {
    ["In ", &*decimal(hole.mm(), 3), " the shaft ", rule, ": ", &from_to(shaft)].concat()
}

/// A band of play or hold, told in thou.
#[must_use]
pub(crate) fn band(allowed: &Allowed) -> (&'static str, String) {
    let [least, most] = [allowed.play.least, allowed.play.most].map(|l| float::of(l.mm()));
    let (label, least, most) =
        if least < 0.0 { (HOLD, -most, -least) } else { (PLAY, least, most) };
    (label, [&*thou(least), " to ", &thou(most), " thou"].concat())
}

/// The working.
#[must_use]
pub(crate) fn working(hole: Length, allowed: &Allowed) -> Vec<String> {
    let line = |play: Length, shaft: Length| {
        [&*inches(hole), " − (", &inches(play), ") = ", &in_inch(shaft)].concat()
    };
    vec![
        "Shaft = hole − play; hold is play below nought".to_owned(),
        line(allowed.play.most, allowed.shaft.least),
        line(allowed.play.least, allowed.shaft.most),
    ]
}
