//! Words of joggles.
use crate::words::{about, decimal};
use handturn::bench::joggle::{Joggle, Step};
use handturn::measure::Angle;
use handturn::number::float;

words! {
    NAME = "Joggle";
    ABOUT = "A step in sheet: the two marks, what it uses up, where it ends";
    ALSO = "joggle offset step lap jog z bend double sheet overlap";
    OFFSET = "Height of the step, mm";
    ANGLE = "Angle of the web; empty: bend to bend";
    BEGINS = "Step begins from the end, mm";
    FINISHED = "Finished length, mm";
    FIRST = "First mark, middle of its bend";
    SECOND = "Second mark";
    BETWEEN = "Between the marks";
    BLANK = "Strip before bending";
    TAKEN = "Used up by the step";
    GROWN = "Used up; below nought, it grows";
    GROWS = "At this K the bends stretch the sheet by more than the step takes: the strip comes out longer than it was. Bend a trial strip before you cut to it.";
    WITHIN = "What is used up is no more than K is good for: cut the strip a little long, and trim it when it is bent.";
    ENDS = "Finished step ends at";
    RUN = "Run of the step";
    WEB = "Straight between the bends";
    DEGREES = "Angle of the web";
    SOURCE = "plane geometry of two equal bends, K as for bends";
    CARE = "Bend the second against the first: a block of the step’s height under the sheet. Fingers clear; edges are sharp.";
    FACE = "Marks and lengths run along the strip from one end; the height is from a face to the same face.";
}

/// The question with its answer.
#[must_use]
pub(crate) fn title(ask: &Joggle, step: &Step) -> String {
    [
        "Step of ",
        &*decimal(ask.offset.mm(), 3),
        ": marks ",
        &about(step.first.value, 2),
        " and ",
        &about(step.second.value, 2),
        " mm",
    ]
    .concat()
}

/// The working.
#[must_use]
pub(crate) fn working(ask: &Joggle, step: &Step) -> Vec<String> {
    let degrees = float::nearest(step.degrees.value, 36_000).map(Angle::from_degrees);
    let angle = degrees.and_then(Result::ok).map(crate::words::angle_text).unwrap_or_default();
    let half = decimal(ask.sheet.thickness.mm(), 3);
    vec![
        [
            "Middle of the sheet bends about R = ",
            &*decimal(ask.sheet.radius.mm(), 3),
            " + ",
            &half,
            " ÷ 2",
        ]
        .concat(),
        [
            "Web = (step − 2R (1 − cos A)) ÷ sin A = ",
            &*about(step.web.value, 3),
            " at A = ",
            &angle,
        ]
        .concat(),
        ["Run = 2R sin A + web × cos A = ", &*about(step.run.value, 3)].concat(),
        ["Along the strip: two bends and the web = ", &*about(step.along.value, 3)].concat(),
        [
            "Used up = ",
            &*about(step.along.value, 3),
            " − ",
            &about(step.run.value, 3),
            " = ",
            &about(step.taken.value, 3),
            " mm",
        ]
        .concat(),
    ]
}

/// What the drawing shows.
#[must_use]
pub(crate) fn picture(title: &str) -> String {
    ["The stepped sheet, and under it the flat with its bends. ", title].concat()
}
