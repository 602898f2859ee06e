//! Dials: verniers and what they read, and marks that suit a screw.
use super::{Outcome, each, must};
use handturn::dial::screw;
use handturn::dial::vernier::Vernier;
use handturn::measure::{Angle, Length};
use handturn::number::Fraction;
use handturn::{Cause, Field};
use handturn_tests::rows::fraction;
use serde::Deserialize;

#[derive(Deserialize)]
struct Laid {
    main: String,
    least: String,
    long: String,
    retrograde: String,
    divisions: Option<u32>,
    over: Option<u32>,
    reading: String,
    mark: Option<i64>,
    line: Option<u32>,
}

fn seconds(text: &str) -> Angle {
    Angle::from_arcsec(fraction(text)).expect("a small angle")
}

/// Marks, least readings and readings in seconds; a row without divisions is to refuse.
pub(crate) fn verniers() -> Vec<Outcome> {
    each("dials.csv", |row: &Laid| {
        let (long, retrograde) = (row.long == "yes", row.retrograde == "yes");
        let (main, least) = (seconds(&row.main), seconds(&row.least));
        let vernier = Vernier { main, least, long, retrograde, double: false };
        let Some(divisions) = row.divisions else {
            let cause = vernier.laid().map_err(|e| (e.field, e.cause));
            let refused = cause == Err((Field::Vernier, Cause::NotWhole));
            return (true, must(refused, || format!("{cause:?}")));
        };
        let laid = match vernier.laid() {
            Ok(laid) => laid,
            Err(error) => return (false, Err(error.to_string())),
        };
        let over = row.over.unwrap_or(laid.over_marks);
        let mut fits = (laid.divisions, laid.over_marks) == (divisions, over);
        if let (Some(mark), Some(line)) = (row.mark, row.line) {
            let reads = vernier.read(seconds(&row.reading)).expect("a reading");
            fits &= (reads.mark, reads.line, reads.left) == (mark, line, Angle::ZERO);
        }
        (false, must(fits, || format!("{laid:?}")))
    })
}

#[derive(Deserialize)]
struct Screw {
    lead_inch: String,
    lead_mm: String,
    step_inch: String,
    step_mm: String,
    marks: Option<u32>,
}

fn length(inch: &str, mm: &str) -> Length {
    if inch.is_empty() {
        return Length::from_mm(fraction(mm));
    }
    Length::from_inches(fraction(inch)).expect("a small length")
}

/// A row without marks is to refuse: no dial fits it.
pub(crate) fn screws() -> Vec<Outcome> {
    each("dial_screws.csv", |row: &Screw| {
        let (lead, step) =
            (length(&row.lead_inch, &row.lead_mm), length(&row.step_inch, &row.step_mm));
        let dial = screw::for_step(lead, step).expect("in bounds");
        let handy = screw::handy(lead).expect("in bounds");
        let inch = !row.step_inch.is_empty();
        let offered = handy.iter().find(|dial| dial.step == step && dial.inch == inch);
        let result = match row.marks {
            Some(marks) => {
                let exact = dial.off == Length::from_mm(Fraction::ZERO) && dial.marks == marks;
                let offered = offered.is_some_and(|dial| dial.marks == marks);
                must(exact && offered, || format!("{dial:?} {handy:?}"))
            }
            None => must(!dial.needed.is_whole() && offered.is_none(), || format!("{dial:?}")),
        };
        (row.marks.is_none(), result)
    })
}
