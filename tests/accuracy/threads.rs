//! Tries of what is computed about threads. Contact over wires is solved here once
//! more in wide numbers, for its own unknowns: the angle φ at which the wire touches,
//! and its distance.
use crate::wholes::{hold_all, own};
use crate::wide::Wide;
use crate::{Try, bare, part};
use handturn::measure::{Angle, Length};
use handturn::number::{Approx, Fraction, float};
use handturn::thread::blind;
use handturn::thread::infeed::{self, Nose};
use handturn::thread::lead;
use handturn::thread::wires::{self, Measured};

fn angles() -> impl Iterator<Item = Angle> {
    (1..=120_i64).map(|k| Angle::from_degrees(part(5 + k * 37 % 55, 1 + k % 3)).expect("small"))
}

fn lengths() -> impl Iterator<Item = Length> {
    (1..=120_i64).map(|k| Length::from_mm(part(k * 7_919 % 9_973 + 1, k * 31 % 997 + 1)))
}

fn held(what: String, came: Approx, truth: Wide) -> Try {
    let scale = truth.magnitude();
    Try { what, came, truth, scale }
}

fn turns(angle: Angle) -> Wide {
    Wide::of(angle.turns())
}

fn tan(angle: &Wide) -> Wide {
    angle.sin_turns().over(&angle.cos_turns())
}

pub(crate) fn tangents() -> Vec<Try> {
    let tries = (-110..=110_i32).map(|k| {
        let turns = f64::from(k) / 512.0 + f64::from(k % 11) / 70_000.0;
        let truth = tan(&Wide::of_float(turns));
        let scale = truth.magnitude().max(1e-3);
        bare(turns.to_string(), float::tan_turns(turns), truth, scale, 4.0)
    });
    tries.collect()
}

pub(crate) fn arc_tangents() -> Vec<Try> {
    let tries = (-150..=150_i32).filter(|k| *k != 0).map(|k| {
        let tangent = f64::from(k * k * k) / 9_001.0;
        let came = float::atan_turns(tangent);
        let truth = Wide::of_float(tangent).atan_turns(came);
        let scale = truth.magnitude();
        bare(tangent.to_string(), came, truth, scale, 2.0)
    });
    tries.collect()
}

fn lead_angle(lead: &Wide, diameter: &Wide) -> Wide {
    let tangent = lead.over(&Wide::pi()).over(diameter);
    let near = tangent.float().atan() / std::f64::consts::TAU;
    tangent.atan_turns(near).by(&Wide::whole(360))
}

pub(crate) fn lead_angles() -> Vec<Try> {
    let tries = lengths().zip(lengths().skip(1)).map(|(lead, diameter)| {
        let came = lead::lead_angle(lead, diameter).expect("sizes in bounds");
        let truth = lead_angle(&Wide::of(lead.mm()), &Wide::of(diameter.mm()));
        held(format!("{lead:?} {diameter:?}"), came, truth)
    });
    tries.collect()
}

pub(crate) fn apexes() -> Vec<Try> {
    let tries = angles().zip(lengths()).map(|(angle, space)| {
        let came = infeed::apex(angle, space).expect("sizes in bounds");
        let truth = Wide::of(space.mm()).over(&tan(&turns(angle))).over(&Wide::whole(2));
        held(format!("{angle:?} {space:?}"), came, truth)
    });
    tries.collect()
}

pub(crate) fn noses() -> Vec<Try> {
    let tries = angles().zip(lengths()).map(|(angle, radius)| {
        let came = Nose::Radius(radius).as_flat(angle).expect("sizes in bounds");
        let a = turns(angle);
        let factor = Wide::whole(1).minus(&a.sin_turns()).over(&a.cos_turns());
        let truth = Wide::of(radius.mm()).by(&Wide::whole(2)).by(&factor);
        held(format!("{angle:?} {radius:?}"), came, truth)
    });
    tries.collect()
}

pub(crate) fn best_wires() -> Vec<Try> {
    let tries = angles().zip(lengths()).map(|(angle, pitch)| {
        let came = wires::best(angle, pitch).expect("sizes in bounds");
        let truth = Wide::of(pitch.mm()).over(&turns(angle).cos_turns()).over(&Wide::whole(2));
        held(format!("{angle:?} {pitch:?}"), came, truth)
    });
    tries.collect()
}

/// Threads from fine to four starts of a steep screw, with a wire near the best and
/// the pitch diameter of each.
fn threads() -> Vec<(Measured, Length)> {
    let mm = Length::from_mm;
    let halves = [(30, 1), (55, 2), (95, 4), (15, 1), (29, 2)];
    let mut all = Vec::new();
    for (k, (num, den)) in (0..110_i64).zip(halves.into_iter().cycle()) {
        let half_angle = Angle::from_degrees(part(num, den)).expect("small");
        let pitch = part(k * 13 % 37 + 4, 16);
        let starts = u32::try_from(k % 4 + 1).expect("small");
        let times = |n: i64, d: i64| pitch.times(n).expect("small").over(d).expect("small");
        let diameter = times(8 * i64::from(starts) + k % 23, 4);
        let near = |n, d| mm(diameter.checked_add(times(n, d)).expect("small"));
        let thread = Measured {
            half_angle,
            pitch: mm(pitch),
            starts,
            space: mm(times(1, 2)),
            pitch_least: mm(diameter),
            pitch_greatest: mm(diameter),
            outside_least: near(1, 2),
            outside_greatest: near(1, 2),
            crest: mm(Fraction::ZERO),
            root: near(-1, 2),
        };
        let best = wires::best(half_angle, thread.pitch).expect("sizes in bounds").value;
        let wire = float::nearest(best * (0.98 + 0.001 * (k % 40) as f64), 10_000);
        all.push((thread, mm(wire.expect("small"))));
    }
    all
}

/// A wire and where it rests.
struct Rest {
    wire: Wide,
    centre: Wide,
}

/// Contact in wide numbers: from φ to the rest and back to φ, until it stands still.
/// `wire` is `None` for the wire that touches at the pitch line.
fn rest(thread: &Measured, wire: Option<Length>) -> Rest {
    let one = Wide::whole(1);
    let two = Wide::whole(2);
    let a = tan(&turns(thread.half_angle));
    let lead = Wide::of(thread.pitch.mm()).by(&Wide::whole(i64::from(thread.starts)));
    let advance = lead.over(&Wide::pi()).over(&two);
    let pitch_radius = Wide::of(thread.pitch_greatest.mm()).over(&two);
    let half_space = Wide::of(thread.space.mm()).over(&two);
    let mut wide_phi = Wide::whole(0);
    let mut centre = pitch_radius.clone();
    let mut radius = wire.map_or(half_space.clone(), |w| Wide::of(w.mm()).over(&two));
    for _ in 0..70 {
        // The wire's slant, and the direction from its axis to where it touches.
        let slant = advance.over(&centre);
        let cos_beta = one.over(&one.plus(&slant.by(&slant)).sqrt());
        let sin_beta = slant.by(&cos_beta);
        let (sin_phi, cos_phi) = (wide_phi.sin_turns(), wide_phi.cos_turns());
        let lean = a.by(&cos_beta).minus(&sin_phi.by(&sin_beta)).over(&cos_phi);
        let cos_gamma = one.over(&one.plus(&lean.by(&lean)).sqrt());
        let sin_gamma = lean.by(&cos_gamma);
        let height = |r: &Wide| r.by(&cos_gamma).by(&cos_beta);
        let turned = lead.by(&wide_phi);
        let touches = if wire.is_some() {
            let above = height(&radius).minus(&turned).minus(&half_space).over(&a);
            pitch_radius.plus(&above)
        } else {
            radius = turned.plus(&half_space).over(&cos_gamma.by(&cos_beta));
            pitch_radius.clone()
        };
        let along = radius.by(&cos_gamma).by(&sin_beta);
        let across = touches.by(&touches).minus(&along.by(&along)).sqrt();
        centre = across.plus(&radius.by(&sin_gamma));
        let tangent = Wide::whole(0).minus(&along).over(&across);
        let near = tangent.float().atan() / std::f64::consts::TAU;
        wide_phi = tangent.atan_turns(near);
    }
    Rest { wire: radius, centre }
}

fn over_three(rest: &Rest) -> Wide {
    rest.centre.plus(&rest.wire).by(&Wide::whole(2))
}

pub(crate) fn best_with_lead() -> Vec<Try> {
    let tries = threads().into_iter().map(|(thread, _)| {
        let came = wires::best_with_lead(&thread).expect("a wire");
        let truth = rest(&thread, None).wire.by(&Wide::whole(2));
        let scale = Wide::of(thread.pitch_greatest.mm()).magnitude();
        Try { what: format!("{thread:?}"), came, truth, scale }
    });
    tries.collect()
}

pub(crate) fn over_one() -> Vec<Try> {
    let tries = threads().into_iter().map(|(thread, wire)| {
        let outside = thread.outside_greatest;
        let came = wires::over_one(&thread, wire, thread.pitch_greatest, outside).expect("rests");
        let over = over_three(&rest(&thread, Some(wire)));
        let truth = over.plus(&Wide::of(outside.mm())).over(&Wide::whole(2));
        held(format!("{thread:?} {wire:?}"), came, truth)
    });
    tries.collect()
}

/// The reading is cut off at 15 decimals; what is cut off comes off the pitch diameter.
pub(crate) fn pitch_diameters() -> Vec<Try> {
    let tries = threads().into_iter().map(|(thread, wire)| {
        let over = over_three(&rest(&thread, Some(wire)));
        let reading = part((over.float() * 1e15).round() as i64, 1_000_000_000_000_000);
        let came = wires::pitch_diameter(&thread, wire, Length::from_mm(reading)).expect("rests");
        let cut = over.minus(&Wide::of(reading));
        let truth = Wide::of(thread.pitch_greatest.mm()).minus(&cut);
        held(format!("{thread:?} {wire:?}"), came, truth)
    });
    tries.collect()
}

pub(crate) fn slants() -> Vec<Try> {
    let tries = threads().into_iter().map(|(thread, wire)| {
        let came = wires::slant(&thread, wire, thread.pitch_greatest).expect("rests");
        let lead = Wide::of(thread.pitch.mm()).by(&Wide::whole(i64::from(thread.starts)));
        let truth = lead_angle(&lead, &rest(&thread, Some(wire)).centre.by(&Wide::whole(2)));
        held(format!("{thread:?} {wire:?}"), came, truth)
    });
    tries.collect()
}

#[test]
fn depths_of_threads() {
    for k in 1..=300_i64 {
        let half_angle = Angle::from_degrees(part(10 + k * 7 % 50, 2)).expect("small");
        let pitch = k * 7_919 % 4_700 + 300;
        let mm = |um: i64| Length::from_mm(part(um, 1_000));
        let (internal, deep) = (k % 3 == 0, pitch * 3 / 10);
        let work = pitch * 8 + k;
        let inwards = |um: i64| mm(if internal { work + 2 * um } else { work - 2 * um });
        let short = Angle::from_turns(half_angle.turns().over(7).expect("small"));
        let ask = infeed::Infeed {
            half_angle,
            space: mm(pitch / 2),
            work: mm(work),
            pitch_diameter: inwards(deep),
            root: inwards(deep + 1),
            deepest: (k % 4 == 0).then(|| inwards(deep + 2)),
            nose: Nose::Flat(mm(pitch / 8)),
            feed: infeed::Feed::Modified { short },
            internal,
            left_hand: false,
        };
        let found = infeed::infeed(&ask).expect("it fits");
        let wide = |length: Length| Wide::of(length.mm());
        let (two, slope) = (Wide::whole(2), tan(&turns(half_angle)));
        let to_pitch = wide(mm(deep));
        let narrow = wide(ask.space).minus(&wide(mm(pitch / 8)));
        let (straight, widen) = if ask.deepest.is_some() {
            let left = narrow.minus(&two.by(&wide(mm(2))).by(&slope));
            (wide(mm(deep + 2)), left)
        } else {
            (to_pitch.plus(&narrow.over(&two).over(&slope)), Wide::whole(0))
        };
        let swung = turns(half_angle).minus(&turns(short));
        let twice = straight.by(&two);
        let tip = if internal { wide(ask.work).plus(&twice) } else { wide(ask.work).minus(&twice) };
        let size = wide(ask.work).magnitude() * (2.0 + 2.0 / slope.magnitude());
        let along = straight.over(&swung.cos_turns());
        let truths = [
            ("straight", straight, size, 40.0),
            ("along_slide", along, size, 40.0),
            ("widen", widen, size, 40.0),
            ("tip", tip, size, 40.0),
        ];
        hold_all(&format!("{ask:?}"), &found, &truths);
    }
}

#[test]
fn clearances_and_holes_for_taps() {
    for (k, (lead, wide)) in (1_i64..).zip(lengths().zip(lengths().skip(7))) {
        let half_angle = Angle::from_degrees(part(k % 61, 2)).expect("small");
        let crest = Length::from_mm(wide.mm().checked_add(part(k % 9, 3)).expect("small"));
        let beyond = Angle::from_degrees(part(k % 21, 2)).expect("small");
        let ask = lead::Flanks { half_angle, lead, root: wide, crest, beyond };
        let cos = turns(half_angle).cos_turns();
        let lean = |diameter: Length| {
            let around = Wide::of(diameter.mm()).by(&Wide::pi());
            let tangent = Wide::of(lead.mm()).over(&around).by(&cos);
            let near = tangent.float().atan() / std::f64::consts::TAU;
            tangent.atan_turns(near).by(&Wide::whole(360))
        };
        let beyond = turns(beyond).by(&Wide::whole(360));
        let (steep, gentle) = (beyond.plus(&lean(wide)), beyond.minus(&lean(crest)));
        let size = beyond.plus(&lean(crest)).magnitude();
        let truths = [own("leading", steep, 17.0), ("trailing", gentle, size, 17.0)];
        let found = lead::clearance(&ask).expect("in bounds");
        hold_all(&format!("{ask:?}"), &found, &truths);

        let point = Angle::from_degrees(part(121 + k % 230, 2)).expect("small");
        let (pitch, tap_lead) = (Length::from_mm(part(k, 31)), part(k % 24, 2));
        let found = blind::drill(crest, pitch, tap_lead, wide, point).expect("in bounds");
        let height = Wide::of(wide.mm()).over(&tan(&turns(point).over(&Wide::whole(2))));
        let deep = Wide::of(found.full_diameter.mm()).plus(&height.over(&Wide::whole(2)));
        let size = deep.magnitude() + Wide::of(wide.mm()).magnitude();
        hold_all("a hole for a tap", &found, &[("to_point", deep, size, 17.0)]);
    }
}
