//! Tries of the involute function, of its inverse, and of what is measured on teeth.
use crate::wide::Wide;
use crate::{Try, part};
use handturn::gear::trial::{self, Check, Cutting, Trial};
use handturn::gear::{Size, Spur, Tooth, involute, pins, span};
use handturn::measure::{Angle, Length};
use handturn::number::Fraction;

fn held(what: String, came: handturn::number::Approx, truth: Wide) -> Try {
    let scale = truth.magnitude();
    Try { what, came, truth, scale }
}

/// tan φ − φ of `turns`.
fn inv(turns: &Wide) -> Wide {
    let tan = turns.sin_turns().over(&turns.cos_turns());
    tan.minus(&turns.by(&Wide::pi()).by(&Wide::whole(2)))
}

pub(crate) fn functions() -> Vec<Try> {
    let angles = (1..=400_i64).map(|k| part(k * 7 % 401 * 80, 401 * (1 + k * k % 29)));
    let tries = angles.map(|degrees| {
        let angle = Angle::from_degrees(degrees).expect("small");
        let came = involute::inv(angle).expect("below 80°");
        held(format!("{degrees}°"), came, inv(&Wide::of(angle.turns())))
    });
    tries.collect()
}

/// By halving: the root stays between two angles until they are 2^-200 of a turn apart.
pub(crate) fn inverses() -> Vec<Try> {
    let tries = (1..=160_i64).map(|k| {
        let wanted = part(k * 7 % 163 * 4, 163 * (1 + k * k * k % 9_973));
        let came = involute::angle(wanted).expect("below 4");
        let (mut low, mut high) = (Wide::whole(0), Wide::of(part(81, 360)));
        for _ in 0..200 {
            let middle = low.plus(&high).over(&Wide::whole(2));
            let above = inv(&middle).minus(&Wide::of(wanted)).float() > 0.0;
            if above { high = middle } else { low = middle }
        }
        held(format!("inverse of {wanted}"), came, low.by(&Wide::whole(360)))
    });
    tries.collect()
}

/// Wheels of 8 to 400 teeth, of all sizes, pressure angles and shifts, in a fixed order.
fn wheels() -> impl Iterator<Item = Spur> {
    (1..=200_i64).map(|k| {
        let degrees = [part(29, 2), part(20, 1), part(25, 1), part(67, 3)][(k % 4) as usize];
        let tooth = Tooth {
            size: Size::Module(Length::from_mm(part(1 + k * 7 % 40, 1 + k % 9))),
            pressure_angle: Angle::from_degrees(degrees).expect("small"),
            ..Tooth::default()
        };
        let teeth = u32::try_from(8 + k * 31 % 393).expect("positive");
        let thinned = tooth.size.times(part(k % 5, 100)).expect("small");
        Spur { teeth, tooth, shift: part(k % 7 - 2, 10), thinned }
    })
}

/// Angles of a wheel in wide numbers: its pressure angle in turns, its base diameter.
fn base(wheel: &Spur) -> (Wide, Wide) {
    let angle = Wide::of(wheel.tooth.pressure_angle.turns());
    let diameter = Wide::of(wheel.pitch_diameter().expect("small").mm());
    let base = diameter.by(&angle.cos_turns());
    (angle, base)
}

/// The value to the micrometre.
fn read(value: f64) -> Length {
    Length::from_mm(Fraction::new((value * 1000.0).round() as i64, 1000).expect("small"))
}

/// s = d·(W/d_b − (k − 1)·π/z − inv α), for readings a little off the drawing.
pub(crate) fn by_span() -> Vec<Try> {
    let tries = wheels().filter_map(|wheel| {
        let outside = wheel.outside_diameter().expect("small");
        let over = span::over(&wheel, outside, None).ok()?;
        let reading = read(over.reading.value * 0.9999);
        let came = span::thickness(&wheel, outside, over.teeth, reading).ok()?;
        let (angle, base) = base(&wheel);
        let flanks = Wide::pi().by(&Wide::of(part(i64::from(over.teeth) - 1, wheel.teeth.into())));
        let half = Wide::of(reading.mm()).over(&base).minus(&flanks).minus(&inv(&angle));
        let truth = half.by(&Wide::of(wheel.pitch_diameter().expect("small").mm()));
        Some(Try { what: format!("{wheel:?}"), came, truth, scale: over.reading.value })
    });
    tries.collect()
}

/// s = d·(π/z − D/d_b + inv φ − inv α), cos φ = d_b over the centres' circle.
pub(crate) fn by_pins() -> Vec<Try> {
    let tries = wheels().filter_map(|wheel| {
        let outside = wheel.outside_diameter().expect("small");
        let pin = read(pins::range(&wheel, outside).ok()?.best.value);
        let reading = read(pins::over(&wheel, outside, pin).ok()?.reading.value * 0.9999);
        let came = pins::thickness(&wheel, outside, pin, reading).ok()?;
        let (angle, base) = base(&wheel);
        let apart = Wide::of(reading.mm().checked_sub(pin.mm()).expect("small"));
        let quarter = Wide::of(part(1, 4 * i64::from(wheel.teeth)));
        let odd = wheel.teeth % 2 == 1;
        let circle = if odd { apart.over(&quarter.cos_turns()) } else { apart };
        let tan = circle.by(&circle).minus(&base.by(&base)).sqrt().over(&base);
        let at = tan.atan_turns(tan.float().atan() / std::f64::consts::TAU);
        let gap = Wide::pi().over(&Wide::whole(wheel.teeth.into()));
        let half = gap.minus(&Wide::of(pin.mm()).over(&base)).plus(&inv(&at)).minus(&inv(&angle));
        let truth = half.by(&Wide::of(wheel.pitch_diameter().expect("small").mm()));
        let scale = circle.magnitude();
        Some(Try { what: format!("{wheel:?}"), came, truth, scale })
    });
    tries.collect()
}

/// What a caliper set a module deep reads, solved in wide numbers: the tangent t at which
/// the flank r_b·√(1 + t²) at ψ = half − inv t stands as far along the tooth as the jaws.
pub(crate) fn by_caliper() -> Vec<Try> {
    let tries = wheels().filter_map(|wheel| {
        let outside = wheel.outside_diameter().expect("small");
        let height = wheel.tooth.size.module().expect("small");
        let check = Check::Caliper { height };
        let came =
            trial::wanted(&Trial { spur: wheel, outside, cutting: Cutting::Form, check }).ok()?;
        let (two, pi) = (Wide::whole(2), Wide::pi());
        let (angle, base) = base(&wheel);
        let pitch = Wide::of(wheel.pitch_diameter().expect("small").mm());
        let module = Wide::of(height.mm());
        let tan = angle.sin_turns().over(&angle.cos_turns());
        let shifted = Wide::of(wheel.shift).by(&module).by(&two).by(&tan);
        let thinned = Wide::of(wheel.thinned.mm());
        let arc = pi.by(&module).over(&two).plus(&shifted).minus(&thinned);
        let half = arc.over(&pitch).plus(&inv(&angle));
        let level = Wide::of(outside.mm()).over(&two).minus(&module);
        let point = |t: &Wide| {
            let radius = Wide::whole(1).plus(&t.by(t)).sqrt().by(&base).over(&two);
            let turns = t.atan_turns(t.float().atan() / std::f64::consts::TAU);
            let psi = half.minus(&t.minus(&turns.by(&pi).by(&two)));
            let turns = psi.over(&pi).over(&two);
            (radius.by(&turns.sin_turns()), radius.by(&turns.cos_turns()))
        };
        let (mut low, mut high) = (Wide::of(part(1, 1000)), Wide::whole(3));
        for _ in 0..110 {
            let middle = low.plus(&high).over(&two);
            let above = point(&middle).1.minus(&level).float() > 0.0;
            if above { high = middle } else { low = middle }
        }
        let truth = point(&low).0.by(&two);
        Some(Try { what: format!("{wheel:?}"), came, truth, scale: level.magnitude() })
    });
    tries.collect()
}
