//! Tries of what is computed about plates.
use crate::wide::Wide;
use crate::{Try, part};
use handturn::measure::{ARCSEC_PER_TURN, Length};
use handturn::number::Approx;
use handturn::plate;

pub(crate) fn arcs() -> Vec<Try> {
    let tries = (1..=150_i64).map(|k| {
        let seconds = part(k * 7_919 % 9_973 + 1, 1 << (k % 12));
        let mm = part(k * 104_729 % 9_973 + 1, 97);
        // The seconds are exact floats: whole numbers over powers of two.
        let value = seconds.num() as f64 / seconds.den() as f64;
        let came = plate::arc_mm(Approx { value, bound: 0.0 }, Length::from_mm(mm));
        let turns = Wide::of(seconds).over(&Wide::whole(ARCSEC_PER_TURN));
        let truth = Wide::pi().by(&Wide::of(mm)).by(&turns);
        let scale = truth.magnitude();
        Try { what: format!("{seconds} seconds, {mm} mm"), came, truth, scale }
    });
    tries.collect()
}
