use super::*;
use crate::number::float;
use crate::thread::{Series, name};

fn threads() -> impl Iterator<Item = Thread> {
    let sizes = |series: Series| (0..series.sizes()).map(move |k| (series, k));
    Series::ALL
        .into_iter()
        .flat_map(sizes)
        .map(|(series, k)| series.thread(series.size(k).unwrap()).unwrap())
}

/// Widths in a unit's own size: greatest less least.
fn width(range: Range) -> Option<f64> {
    Some(float::of(range.max?.mm().checked_sub(range.min?.mm()).unwrap()))
}

#[test]
fn every_listed_thread_has_limits_that_fit_together() {
    let mut tried = 0;
    for thread in threads() {
        for &class in usual(thread.form.kind) {
            let Ok(found) = limits(&thread, class) else { continue };
            tried += 1;
            for range in [found.major, found.pitch_diameter, found.minor] {
                assert!(width(range).is_none_or(|width| width > 0.0), "{thread:?} {class:?}");
            }
            let basic = thread.pitch_diameter().unwrap();
            let major = crate::thread::rounded(thread.major, thread.form.unit).unwrap();
            let (max, min) = (found.pitch_diameter.max.unwrap(), found.pitch_diameter.min.unwrap());
            match class.side {
                Side::External => {
                    assert!(max <= basic, "{thread:?} {class:?}");
                    assert!(found.major.max.unwrap() <= major);
                    assert!(found.minor.max.unwrap() <= thread.minor_internal().unwrap());
                    assert!(found.minor.max.unwrap() < min && max < found.major.min.unwrap());
                }
                Side::Internal => {
                    assert!(min >= basic, "{thread:?} {class:?}");
                    assert!(found.major.min.unwrap() >= major);
                    assert!(max < found.major.min.unwrap());
                }
            }
        }
    }
    assert!(tried > 2500, "{tried}");
}

#[test]
fn every_series_has_its_usual_class_at_every_size_that_its_standard_lists() {
    let mut none = 0;
    for thread in threads() {
        let [first, ..] = usual(thread.form.kind) else {
            // BS 811 has classes that are not here: sizes only.
            assert_eq!(thread.form.kind, Kind::Cycle, "no class");
            continue;
        };
        if limits(&thread, *first).is_err() {
            none += 1;
            // 6g starts at M1.4 in use; the finest of the small ones have g, not this pitch
            // at this size in the table.
            assert_eq!(thread.form.kind, Kind::Metric, "{thread:?}");
        }
    }
    assert!(none <= 24, "{none}");
}

/// The tables against their formulas (ISO 965-1), within 5 %.
#[test]
fn tables_lie_near_their_formulas() {
    let near = |table: f64, formula: f64, what: &str, thread: &Thread| {
        let off = (table / formula - 1.0).abs();
        let p = float::of(thread.pitch.mm());
        // Some deviations are printed lower: e 50 at 0.5 and 53 at 0.6, g 22 at 0.75.
        let most = match what {
            "deviation" if p < 0.7 => 0.10,
            "deviation" => 0.06,
            // Td is printed 475 at a pitch of 4, where the formula gives 452.
            _ => 0.052,
        };
        assert!(off <= most, "{what} {table} {formula} {:?} {p}", thread.major.mm());
    };
    let steps = [0.99, 1.4, 2.8, 5.6, 11.2, 22.4, 45.0, 90.0, 180.0, 355.0];
    let mut tried = 0;
    for thread in threads().filter(|thread| thread.form.kind == Kind::Metric) {
        let (d, p) = (float::of(thread.major.mm()), float::of(thread.pitch.mm()));
        let Some(step) = steps.windows(2).find(|step| d > step[0] && d <= step[1]) else {
            continue;
        };
        let middle = (step[0] * step[1]).sqrt();
        let td2 = 90.0 * p.powf(0.4) * middle.powf(0.1);
        let screw = limits(&thread, screw(iso(6, Position::H)));
        if let Ok(found) = screw {
            near(width(found.pitch_diameter).unwrap() * 1000.0, td2, "Td2", &thread);
            let td = 180.0 * p.powf(2.0 / 3.0) - 3.15 / p.sqrt();
            near(width(found.major).unwrap() * 1000.0, td, "Td", &thread);
            tried += 1;
        }
        if let Ok(found) = limits(&thread, nut(iso(6, Position::H))) {
            near(width(found.pitch_diameter).unwrap() * 1000.0, td2 * 1.32, "TD2", &thread);
            let td1 = if p < 0.9 { 433.0 * p - 190.0 * p.powf(1.22) } else { 230.0 * p.powf(0.7) };
            near(width(found.minor).unwrap() * 1000.0, td1, "TD1", &thread);
            tried += 1;
        }
        for (position, formula, from) in
            [(Position::G, 15.0, 0.0), (Position::F, 30.0, 0.3), (Position::E, 50.0, 0.45)]
        {
            if let Ok(found) = limits(&thread, super::screw(iso(6, position))) {
                let basic = thread.pitch_diameter().unwrap().mm();
                let max = found.pitch_diameter.max.unwrap().mm();
                let below = float::of(basic.checked_sub(max).unwrap()) * 1000.0;
                near(below, formula + 11.0 * p, "deviation", &thread);
                assert!(p > from);
            }
        }
    }
    assert!(tried > 200, "{tried}");
}

#[test]
fn what_a_standard_does_not_have_is_refused() {
    let refused = |name_of: &str, class: Class| {
        let thread = name::read(name_of).unwrap().first().unwrap().thread;
        assert_eq!(
            limits(&thread, class),
            Err(Error::new(Field::Class, Cause::Conflict)),
            "{name_of} {class:?}"
        );
    };
    refused("M6", screw(iso(5, Position::F)).with_crest(5));
    refused("M6", nut(iso(6, Position::E)));
    refused("M6", screw(Fit::Close));
    refused("M6x0.9", screw(iso(6, Position::G)));
    refused("M2", screw(iso(6, Position::E)));
    refused("M1.6", nut(iso(7, Position::H)));
    refused("1/4-20 UNC", screw(Fit::Number(4)));
    refused("2 BA", nut(Fit::Close));
    refused("1/4 BSW", screw(Fit::Normal));
    refused("Tr16x4", nut(iso(7, Position::E)));
    refused("Tr16x4", screw(iso(5, Position::E)));
    refused("1/4-16 Acme", screw(Fit::Number(5)));
    refused("G 1/4", nut(Fit::PipeB));
}

impl Class {
    fn with_crest(self, grade: u8) -> Self {
        let Fit::Iso(pitch, crest) = self.fit else { panic!("not ISO") };
        Self { fit: Fit::Iso(pitch, Grade { grade, ..crest }), ..self }
    }
}

#[test]
fn steps_of_the_progression_are_those_printed() {
    assert_eq!([4, 5, 7, 8].map(|grade| graded(112, 6, grade).unwrap()), [71, 90, 140, 180]);
    assert_eq!([3, 4, 5].map(|grade| graded(48, 6, grade).unwrap()), [24, 30, 38]);
    assert_eq!(along(95, 5), Some(125));
    assert_eq!(along(1180, 1), Some(1250));
    assert_eq!(along(9500, 1), None);
    assert_eq!(along(101, 1), None);
    assert_eq!(along(20, -13), None);
    assert_eq!([25, 35, -25, -35, 26].map(|n| to_even(n, 10)), [2, 4, -2, -4, 3]);
    assert_eq!([25, 35, -25].map(|n| to_near(n, 10)), [3, 4, -2]);
}
