//! Standard tapers as printed: the angle of each, and its large end.
use super::{Outcome, each, must};
use handturn::bench::taper::{Ask, Figures, figures, set};
use handturn::bench::tapers::Series;
use handturn::number::float;
use handturn_tests::rows::{fraction, half_a_place};
use serde::Deserialize;

#[derive(Deserialize)]
struct Listed {
    what: String,
    given: String,
    printed: String,
}

/// Whether `came` is what is printed, by so many halves of its last place.
fn by(came: f64, printed: &str, halves: f64) -> Result<(), String> {
    let off = (came - float::of(fraction(printed))).abs();
    let fits = off <= halves * float::of(half_a_place(printed)) + 1e-12;
    must(fits, || format!("comes to {came}, printed {printed}"))
}

pub(crate) fn standards() -> Vec<Outcome> {
    each("taper_standards.csv", |row: &Listed| {
        let (family, number) = row.given.split_once('|').expect("a family and a number");
        let series = match family {
            "morse" => Series::Morse,
            "brown" => Series::BrownSharpe,
            "chuck" => Series::Chuck,
            _ => Series::Jarno,
        };
        let size = series.sizes().iter().find(|size| size.name == number).expect("it is listed");
        let taper = series.taper(size).expect("its own");
        if row.what == "half" {
            let Figures { half, .. } = figures(taper).expect("a taper");
            return (false, by(half.value, &row.printed, 1.2));
        }
        // The end as it is listed, and as small end, length and taper make it.
        let listed = size.large.expect("laid down").inches().expect("small");
        let ask = Ask { small: size.small, length: size.length, ..Ask::of(taper) };
        let [large, ..] = set(&ask).expect("a taper").ends.expect("both are laid down");
        let worked = by(large.about.value / 25.4, &row.printed, 1.2);
        (false, by(float::of(listed), &row.printed, 0.0).and(worked))
    })
}
