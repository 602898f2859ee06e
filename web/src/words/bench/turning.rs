//! Words of tapers, balls, radii and arcs.
use crate::words::{about, decimal};
use handturn::measure::Length;
use handturn::number::{Fraction, float};

/// What the sums on tapers share.
pub(crate) mod shared {
    words! {
        LARGE = "Large end, mm";
        SMALL = "Small end, mm";
        LENGTH = "Length between, mm";
        GIVEN = "Taper given by";
        FOOT = "inches in a foot";
        ONE_IN = "1 in";
        INCLUDED = "angle between the sides";
        HALF = "angle from the axis";
        HOW_MUCH = "Inches in a foot";
        ONE_IN_WHAT = "1 in how many";
        ANGLE = "Angle";
        BETWEEN = "Whole length between centres, mm";
        TRAVEL = "Travel for a dial gauge, mm";
        TOP_SLIDE = "Set the top slide to";
        SIDES = "Angle between the sides";
        PER_FOOT = "Taper in a foot";
        IN_ALL = "1 in";
        IN = "in";
        LARGE_END = "Large end";
        SMALL_END = "Small end";
        BETWEEN_ENDS = "Length between";
        CARE = "Chuck key out before the start; hands clear of the work. Cut a trial taper and fit it before the last cut.";
    }
}

/// Tapers in every form.
pub(crate) mod taper {
    words! {
        NAME = "Taper";
        ABOUT = "Top slide, tailstock and gauge for any taper";
        ALSO = "cone angle setover tailstock compound slide per foot topslide included";
        ENDS = "its ends";
        REACH = "Tailstock goes over at most, mm";
        OVER = "Set the tailstock over by";
        BEYOND = "The tailstock does not go so far: use the top slide.";
        LONGEST = "Longest work for its reach";
        BY_SLIDE = "Gauge rises, slide moved the travel";
        BY_SADDLE = "Gauge on the slide’s side, saddle moved";
        SOURCE = "Turning and Boring, F. D. Jones, 1914; Modern Machine-Shop Practice, J. Rose, 1887-88";
        IGNORES = "The set-over counts the whole length between centres, however little of it is tapered, and takes no account of how deep the centre holes are: cut a trial and measure it.";
        GAUGE = "Gauge across the axis at centre height against a parallel bar between centres: the top slide’s own travel gives the sine.";
    }
}

/// A taper put right.
pub(crate) mod trial {
    words! {
        NAME = "Taper from a trial cut";
        ABOUT = "Two diameters measured: what to move, which way";
        ALSO = "correct parallel barrel tailstock align setover error readings";
        WANTED = "Wanted";
        PARALLEL = "parallel";
        SIDE = "Large end is at";
        AT_HEAD = "the headstock";
        AT_TAIL = "the tailstock";
        HEAD = "Measured nearer the headstock, mm";
        TAIL = "Measured nearer the tailstock, mm";
        APART = "Places apart, mm";
        OFF = "Diameters differ wrongly by";
        SLIDE_IN = "Top slide, tailstock end towards the axis";
        SLIDE_OUT = "Top slide, tailstock end away from the axis";
        TO_TOOL = "Tailstock towards the tool";
        FROM_TOOL = "Tailstock away from the tool";
        GAUGE = "Gauge over the travel changes by";
        CUT = "What was cut: 1 in";
        NOTHING = "It is as wanted: move nothing.";
        SOURCE = "common practice; plane geometry";
        SAME_PASS = "Measure both places in one pass of the tool, cold. The way told is for a tool at the front.";
    }
}

/// Standard tapers.
pub(crate) mod standard {
    words! {
        NAME = "Standard tapers";
        ABOUT = "Morse, Brown & Sharpe, Jarno, steep, pins";
        ALSO = "morse mt brown sharpe jarno chuck arbor pin steep r8 sizes table socket shank";
        SERIES = "Taper";
        MORSE = "Morse";
        BROWN_SHARPE = "Brown & Sharpe";
        JARNO = "Jarno";
        CHUCK = "drill chuck";
        STEEP = "7/24";
        METRIC = "metric 1 in 20";
        METRIC_PIN = "pin 1 in 50";
        INCH_PIN = "pin 1/4 in a foot";
        COLLET = "R8";
        NUMBER = "Number or size";
        SIZES = "Sizes of this taper";
        SIZE = "No.";
        LARGE = "Large";
        SMALL = "Small";
        LENGTH = "Length";
        SOURCE = "ASME B5.10 and handbook tables of standard tapers; ISO 296, ISO 297, ISO 2339, ASME B18.8.2 from memory";
        PINS = "A metric pin goes by its small end, an inch pin by its large one.";
        ENDS = "Ends are at the gauge plane and the plug’s end. Shanks vary in length: fit yours to its socket with marking blue.";
    }
}

/// Two disks.
pub(crate) mod disks {
    words! {
        NAME = "Disks for a taper";
        ABOUT = "Two disks hold an angle: gauge, template, trial";
        ALSO = "disc discs angle gauge template rollers plugs buttons";
        KIND = "Wanted";
        CENTRES_WANTED = "the distance";
        LARGE_WANTED = "a disk that touches";
        ANGLE_WANTED = "the angle";
        LARGE = "Larger disk, mm";
        SMALL = "Smaller disk, mm";
        CENTRES = "Centres apart, mm";
        ANGLE = "Angle between the edges";
        APART = "Set the centres apart";
        TOUCHING = "Turn the larger disk to";
        INCLUDED = "The edges stand at";
        GAP = "Space between the disks";
        SOURCE = "Turning and Boring, F. D. Jones, 1914; Precision Locating and Dividing Methods, 1914";
        CARE = "Clamp the disks and try the distance again; a burr counts double.";
        HALF = "The sine of half the angle is the difference of the radii over the distance of the centres.";
    }
}

/// Curves by steps.
pub(crate) mod steps {
    words! {
        BALL = "Ball by steps";
        BALL_ABOUT = "Slide readings for a ball, on a neck or hollow";
        BALL_ALSO = "sphere spherical knob handle dome socket cup hemisphere concave";
        RADIUS = "Radius by steps";
        RADIUS_ABOUT = "Slide readings for a rounded edge or a hollow corner";
        RADIUS_ALSO = "fillet corner rounding concave convex shoulder";
        KIND = "Shape";
        NECKED = "on a neck";
        DOME = "half, at an end";
        CUP = "hollow";
        DIAMETER = "Ball diameter, mm";
        NECK = "Neck diameter, mm";
        STOCK = "Stock diameter, mm";
        DEPTH = "Depth on the axis, mm";
        EDGE = "rounded edge";
        FILLET = "hollow at a shoulder";
        BAR = "Bar or smaller diameter, mm";
        OF = "Radius, mm";
        TOOL = "Tool";
        ROUND = "round nose";
        SQUARE = "square corner";
        NOSE = "Nose radius, mm";
        WIDTH = "Tool width, mm";
        BY = "Steps by";
        BY_CUTS = "number";
        BY_SCALLOP = "what they leave";
        CUTS = "Cuts";
        LEAVE = "At most left standing, mm";
        DIVISION = "Dials read to, mm";
        SCALLOP = "Left standing at most";
        HOW_MANY = "Cuts to make";
        BLANK = "Turn the stock first to";
        REACH = "Furthest along";
        TABLE = "Cut by cut: along at this diameter to here, then straight out";
        CUT = "Cut";
        ALONG = "Along";
        ACROSS = "Diameter";
        FROM = "Side";
        END = "end";
        BEHIND = "neck";
        SOURCE = "plane geometry, our own derivation";
        CARE = "File left-handed, sleeves clear, never a file without a handle. Chuck key out; hand clear of the work.";
        ZERO = "Along counts from where the tool’s edge by the chuck touches the faced end.";
        ZERO_SHOULDER = "Along counts back from where the tool touches the shoulder.";
        NEVER = "Every reading is rounded away from the curve, so no cut goes into it. Blue the steps and finish with file and cloth until the last blue is gone.";
        BAND = "The stock is smaller than the ball: a plain band is left round its middle.";
        PAST = "A diameter below 0 stands past the centre line by half of that.";
        WHOLE = "Open a gap behind the ball down to the neck first.";
    }
}

/// Arcs.
pub(crate) mod arc {
    words! {
        NAME = "Chord and height of an arc";
        ABOUT = "Two of radius, chord and height; three feet";
        ALSO = "sagitta radius spherometer segment bow crown camber lens";
        KIND = "Wanted";
        RADIUS = "radius";
        HEIGHT = "height";
        CHORD = "chord";
        FEET = "radius by three feet";
        RADIUS_IN = "Radius, mm";
        CHORD_IN = "Chord, mm";
        HEIGHT_IN = "Height, mm";
        SIDE_IN = "Feet apart, side of the triangle, mm";
        BALL_IN = "Radius of the feet’s balls, mm";
        SURFACE = "Surface";
        ROUND = "round";
        HOLLOW = "hollow";
        RADIUS_IS = "Radius";
        CHORD_IS = "Chord";
        HEIGHT_IS = "Height";
        TAKES = "The arc takes in";
        ALONG = "Along the arc";
        SOURCE = "plane geometry, our own derivation";
        CARE = "Stop the machine before you measure.";
        CLOSE = "A small height makes a large radius uncertain: measure over as long a chord as there is.";
    }
}

/// A line of working: the rule, then its figures.
#[must_use]
pub(crate) fn line(parts: &[&str]) -> String {
    parts.concat()
}

/// Millimetres of a length.
#[must_use]
pub(crate) fn mm(length: Length) -> String {
    decimal(length.mm(), 3)
}

/// A rate of a taper as 1 in so many, to three places.
#[must_use]
pub(crate) fn one_in(rate: Fraction) -> String {
    about(1.0 / float::of(rate), 3)
}

/// A picture in words.
#[must_use]
pub(crate) fn picture(title: &str) -> String {
    ["Side view: ", title].concat()
}

/// Degrees that are not exact, in degrees, minutes and seconds.
#[must_use]
pub(crate) fn degrees_text(degrees: f64) -> String {
    let angle = float::nearest(degrees, 36_000).map(handturn::measure::Angle::from_degrees);
    angle.and_then(Result::ok).map(crate::words::angle_text).unwrap_or_default()
}
