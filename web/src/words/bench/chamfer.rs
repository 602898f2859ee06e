//! Words of chamfers.
use crate::words::about;
use handturn::bench::chamfer::Legs;

words! {
    NAME = "Chamfer";
    ABOUT = "Slide travel for an edge, a bore or a thread’s end";
    ALSO = "bevel edge break corner thread end lead in 45 30 degrees";
    WHERE = "Chamfer";
    OUTSIDE = "on an outside";
    BORE = "in a bore";
    DIAMETER = "Diameter, mm";
    ANGLE = "Angle to the axis";
    BY = "Known";
    OFF_RADIUS = "off the radius";
    ALONG = "along the axis";
    FACE = "its face";
    TO = "diameter it ends at";
    OF_THREAD = "a thread’s end";
    SIZE = "That size, mm";
    THREAD = "Thread";
    CROSS = "Cross slide in by";
    CROSS_DIAMETER = "The same on a dial that reads diameters";
    SADDLE = "Or saddle along by";
    TOP = "Or top slide at the angle, along by";
    END = "Diameter at the end";
    CARE = "Touch on with the work turning by hand or slowly. Keep the tool’s corner clear of the chuck.";
    SOURCE = "geometry of the triangle; ends of threads after DIN 76-1";
    TOUCH = "A straight edge set to the angle, touched on the corner: then either slide alone cuts the whole chamfer.";
    SCREW_END = "Down to the thread’s minor diameter.";
    NUT_MOUTH = "Opened to 1.05 times the thread’s major diameter, the widest DIN 76-1 allows.";
}

/// The question with its answer.
#[must_use]
pub(crate) fn title(legs: &Legs) -> String {
    [&*about(legs.off_radius.value, 3), " × ", &about(legs.along.value, 3), " mm"].concat()
}

/// The working.
#[must_use]
pub(crate) fn working(legs: &Legs, tan: f64) -> Vec<String> {
    let (off, along) = (about(legs.off_radius.value, 4), about(legs.along.value, 4));
    vec![
        "Off the radius = along the axis × tan angle".to_owned(),
        [&*along, " × ", &about(tan, 5), " = ", &off, " mm"].concat(),
        ["Face² = ", &*off, "² + ", &along, "²: ", &about(legs.face.value, 4), " mm"].concat(),
    ]
}

/// What the drawing shows.
#[must_use]
pub(crate) fn picture(legs: &Legs, diameter: f64) -> String {
    [
        "A chamfer from ",
        &*about(diameter, 3),
        " to ",
        &about(legs.end.value, 3),
        " mm, ",
        &title(legs),
    ]
    .concat()
}
