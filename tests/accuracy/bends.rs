//! Tries of what is computed about bent wire.
use crate::wide::Wide;
use crate::{Try, part};
use handturn::bench::former::{Section, kept as kept_of};
use handturn::measure::Length;

/// Both sections, elastic parts from near nought to near one.
pub(crate) fn kept() -> Vec<Try> {
    let sections = [Section::Round, Section::Strip].into_iter().cycle();
    let tries = (1..=400_i64).zip(sections).map(|(k, section)| {
        let thick = part(k * 7_919 % 4_999 + 50, 1_000);
        let (yields, modulus) = (k * 31 % 2_000 + 100, 100_000 + k * 257);
        // The radius at which u is k ÷ 401, to the nearest thousandth.
        let u = k as f64 / 401.0;
        let radius =
            u * modulus as f64 * (thick.num() as f64 / thick.den() as f64) / (2.0 * yields as f64);
        let radius = part((radius * 1e3) as i64 + 1, 1_000);
        let came = kept_of(
            section,
            Length::from_mm(thick),
            Length::from_mm(radius),
            yields as f64,
            modulus as f64,
        )
        .expect("it yields");
        let whole = Wide::whole;
        let u = whole(2 * yields).by(&Wide::of(radius)).over(&whole(modulus).by(&Wide::of(thick)));
        let truth = kept_truth(section, &u);
        Try { what: format!("{k} {section:?}"), came, truth, scale: 1.0 }
    });
    tries.collect()
}

/// What is left of a curve of which the part `u` stays elastic.
pub(crate) fn kept_truth(section: Section, u: &Wide) -> Wide {
    let whole = Wide::whole;
    let one = whole(1);
    match section {
        Section::Strip => {
            let x = u.over(&whole(2));
            let cube = x.by(&x).by(&x);
            one.minus(&x.by(&whole(3))).plus(&cube.by(&whole(4)))
        }
        Section::Round => {
            let square = one.minus(&u.by(u));
            let s = square.sqrt();
            let near = u.float().asin() / std::f64::consts::TAU;
            let arc = u.over(&s).atan_turns(near).by(&Wide::pi()).by(&whole(2));
            let first = u.by(u).by(&whole(2)).minus(&one).by(&s).over(&whole(2));
            let second = arc.over(&u.by(&whole(2)));
            let third = s.by(&square).by(&whole(4)).over(&whole(3));
            let m = first.plus(&second).plus(&third);
            one.minus(&m.by(u).by(&whole(4)).over(&Wide::pi()))
        }
    }
}
