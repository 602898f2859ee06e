//! Words of knurls.
use crate::words::{about, grouped};
use handturn::bench::knurl::{Fit, Travel};
use handturn::number::Approx;

words! {
    NAME = "Knurl that tracks";
    ABOUT = "Blank for a whole number of teeth, straight or diamond";
    ALSO = "knurling wheel double tracking diametral pitch tpi grip serration";
    BY = "Wheel known by";
    TIPS_WAY = "tip to tip";
    INCH_WAY = "tips per inch";
    DP_WAY = "diametral pitch";
    WHEEL_WAY = "diameter and teeth";
    TIPS = "Tip to tip, mm";
    PER_INCH = "Tips in an inch";
    DP = "Diametral pitch";
    OVER = "Wheel over its tips, mm";
    TEETH = "Teeth of the wheel";
    PATTERN = "Pattern";
    STRAIGHT = "straight";
    SLANTED = "slanted";
    DIAMOND = "diamond";
    ANGLE = "Lines to the axis";
    STOCK = "Stock in hand, mm";
    FLANKS = "Wheel’s teeth";
    NINETY = "90°";
    SEVENTY = "70°";
    LONG = "Knurl long, mm";
    WIDE = "Wheel wide, mm";
    ENDS = "At its end";
    FREE = "runs out free";
    SHOULDER = "a shoulder";
    TURN_TO = "Turn the blank to";
    COUNT = "Teeth round it";
    TAKE_OFF = "Comes off the stock";
    ABOVE = "Next blank above";
    HALF_DEEP = "Knurled half deep, about";
    FULL = "Knurled to full teeth, at most";
    FEED_LEAST = "Feed a turn, from";
    FEED_MOST = "Feed a turn, to";
    SPEED = "Spindle, to start";
    TRAVEL = "Slide travels";
    BEYOND = "Wheel reaches past each line by";
    IN_ALL = "Marked in all";
    BLANKS = "Blanks round about";
    OFF = "Off the stock";
    YOURS = "Your wheels on this stock";
    PITCH = "Tip to tip";
    BLANK = "Blank";
    CARE = "Work held short, or in a centre. Slow, oil on. Fingers, rags and sleeves away from the wheels; brush only when it stands.";
    SOURCE = "ANSI/ASME B94.6-1984 (teeth and blanks); growth worked out from volume; feed and speed common practice";
    FIRST_TURNS = "Try two turns: where the marks double, go to the next blank. A wheel that bites deep at once rolls on a smaller circle, so a blank a little over may track better.";
    BAND = "Grown size is a band: how deep you press decides, and soft metal flows more than hard.";
    MEASURE = "Measure across ten tips of the wheel and divide by ten; square to the teeth.";
    PRESSED = "The wheel is as wide as the knurl: press in, do not travel.";
}

/// The question with its answer.
#[must_use]
pub(crate) fn title(teeth: u32, blank: Approx) -> String {
    [&*grouped(teeth.into()), " teeth on ", &about(blank.value, 3), " mm"].concat()
}

/// Turns in a minute, from and to.
#[must_use]
pub(crate) fn rpm(least: Approx, greatest: Approx) -> String {
    [&*about(least.value, 0), " to ", &about(greatest.value, 0), " rpm (10 to 20 m/min)"].concat()
}

/// The working.
#[must_use]
pub(crate) fn working(fit: &Fit, teeth: u32, blank: f64, slant: f64) -> Vec<String> {
    let pitch = about(fit.pitch.value, 4);
    let cos = about(slant, 5);
    let teeth = teeth.to_string();
    vec![
        "Blank = teeth × pitch ÷ (π × cos of the lines’ angle)".to_owned(),
        [&*teeth, " × ", &pitch, " ÷ (π × ", &cos, ") = ", &about(blank, 4), " mm"].concat(),
        [
            "Full depth = half the pitch × cot of half the wheel’s tooth angle = ",
            &about(fit.full_depth.value, 3),
            " mm",
        ]
        .concat(),
    ]
}

/// What the drawing shows.
#[must_use]
pub(crate) fn picture(teeth: u32, blank: f64, every: u32, travel: &Travel) -> String {
    let lines = if every > 1 {
        [", every ", &*every.to_string(), "th line drawn"].concat()
    } else {
        String::new()
    };
    [
        "A blank of ",
        &*about(blank, 3),
        " mm with ",
        &teeth.to_string(),
        " teeth, the wheel’s middle travelling ",
        &crate::words::mm(travel.travel),
        " mm",
        &lines,
    ]
    .concat()
}
