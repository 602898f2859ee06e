//! Tries of what is computed about wheels, and of the arcs it rests on.
use crate::wholes::hold_all;
use crate::wide::Wide;
use crate::{Try, bare, part};
use handturn::gear::pair::{At, Pair, mesh, opening};
use handturn::gear::sound::sound;
use handturn::gear::{Size, Spur, Tooth, chordal, telling};
use handturn::measure::{Angle, Length};
use handturn::number::{Approx, float};

/// Sines and cosines from −1 to 1, most of them towards the ends.
fn sines() -> impl Iterator<Item = f64> {
    (-150..=150_i32).map(|k| f64::from(k) / 151.0 + f64::from(k % 7) / 4096.0 / 151.0)
}

/// From the tangent sine/√(1 − sine²), which has an arc of its own in wide numbers.
fn arc_sine(sine: f64, near: f64) -> Wide {
    let sine = Wide::of_float(sine);
    let cosine = Wide::whole(1).minus(&sine.by(&sine)).sqrt();
    sine.over(&cosine).atan_turns(near)
}

pub(crate) fn arc_sines() -> Vec<Try> {
    let tries = sines().map(|sine| {
        let came = float::asin_turns(sine);
        let truth = arc_sine(sine, came);
        let scale = truth.magnitude();
        bare(sine.to_string(), came, truth, scale, 2.0)
    });
    tries.collect()
}

pub(crate) fn arc_cosines() -> Vec<Try> {
    let quarter = Wide::whole(1).over(&Wide::whole(4));
    let tries = sines().map(|cosine| {
        let came = float::acos_turns(cosine);
        let truth = quarter.minus(&arc_sine(cosine, 0.25 - came));
        let scale = truth.magnitude();
        bare(cosine.to_string(), came, truth, scale, 2.0)
    });
    tries.collect()
}

/// Lengths and numbers of teeth, few and many.
fn rings() -> impl Iterator<Item = (Length, u32)> {
    (1..=120_u32).map(|k| {
        let length = part(i64::from(k) * 7_919 % 9_973 + 1, i64::from(k) * 31 % 997 + 1);
        (Length::from_mm(length), 4 + k * k * 37 % 4_997)
    })
}

fn held(what: String, came: Approx, truth: Wide) -> Try {
    let scale = truth.magnitude();
    Try { what, came, truth, scale }
}

fn half_step(teeth: u32) -> Wide {
    Wide::of(part(1, 2 * i64::from(teeth))).sin_turns()
}

pub(crate) fn circular_pitches() -> Vec<Try> {
    let tries = rings().map(|(pitch, _)| {
        let came = telling::module_of_circular_pitch(pitch).expect("in bounds");
        held(format!("{pitch:?}"), came, Wide::of(pitch.mm()).over(&Wide::pi()))
    });
    tries.collect()
}

pub(crate) fn diameters_of_chords() -> Vec<Try> {
    let tries = rings().map(|(chord, teeth)| {
        let came = telling::diameter_of_chord(chord, teeth).expect("in bounds");
        held(format!("{chord:?} {teeth}"), came, Wide::of(chord.mm()).over(&half_step(teeth)))
    });
    tries.collect()
}

pub(crate) fn chords_of_diameters() -> Vec<Try> {
    let tries = rings().map(|(diameter, teeth)| {
        let came = telling::chord_of_diameter(diameter, teeth).expect("in bounds");
        held(format!("{diameter:?} {teeth}"), came, Wide::of(diameter.mm()).by(&half_step(teeth)))
    });
    tries.collect()
}

/// By halving between nought and 87°: the angle, in turns, at which `above` becomes true.
fn halve(above: impl Fn(&Wide) -> bool) -> Wide {
    let (mut low, mut high) = (Wide::whole(0), Wide::of(part(87, 360)));
    for _ in 0..120 {
        let middle = low.plus(&high).over(&Wide::whole(2));
        if above(&middle) { high = middle } else { low = middle }
    }
    low
}

fn cosine(turns: &Wide) -> Wide {
    turns.cos_turns()
}

fn tangent(turns: &Wide) -> Wide {
    turns.sin_turns().over(&turns.cos_turns())
}

fn inv(turns: &Wide) -> Wide {
    tangent(turns).minus(&turns.by(&Wide::pi()).by(&Wide::whole(2)))
}

/// The angle, in turns, whose cosine is `cosine`.
fn arc_cosine(cosine: &Wide) -> Wide {
    let sine = Wide::whole(1).minus(&cosine.by(cosine)).sqrt();
    let near = sine.float().atan2(cosine.float()) / std::f64::consts::TAU;
    sine.over(cosine).atan_turns(near)
}

fn wheel(k: i64, teeth: u32, size: Size, half_degrees: i64) -> Spur {
    let pressure_angle = Angle::from_degrees(part(half_degrees, 2)).expect("small");
    let tooth = Tooth { size, pressure_angle, ..Tooth::default() };
    let thinned = size.times(part(k % 5, 100)).expect("small");
    let shift = part(k % 7 - 3, 12);
    Spur { shift, thinned, ..Spur::new(teeth, tooth).expect("in bounds") }
}

/// Wheels by module and by diametral pitch, few and many teeth, shifted and thinned.
fn wheels() -> Vec<[Spur; 2]> {
    let angles = [29, 40, 45, 50, 56];
    let pair = |k: i64| {
        let size = if k % 2 == 0 {
            Size::Module(Length::from_mm(part(k % 40 + 1, 8)))
        } else {
            Size::DiametralPitch(part(k % 90 + 3, 2))
        };
        let teeth = |by: i64| u32::try_from(12 + k * by % 211).expect("few");
        let angle = angles.into_iter().cycle().nth(usize::try_from(k % 5).expect("small"));
        let half_degrees = angle.expect("endless");
        [wheel(k, teeth(17), size, half_degrees), wheel(k + 3, teeth(41), size, half_degrees)]
    };
    (1..=150).map(pair).collect()
}

fn within(what: &str, came: Approx, truth: &Wide, lazy: f64) {
    let off = truth.minus(&Wide::of_float(came.value)).magnitude();
    assert!(off <= came.bound, "{what}: {} is {off:e} off, {:e} promised", came.value, came.bound);
    assert!(came.bound <= lazy, "{what}: a lazy bound of {:e}", came.bound);
}

/// How a pair runs and what its teeth are like, once more in wide numbers.
#[test]
fn pairs_are_within_their_bounds() {
    let (one, two) = (Wide::whole(1), Wide::whole(2));
    for (k, [first, second]) in (1_i64..).zip(wheels()) {
        let what = format!("{first:?} {second:?}");
        let angle = Wide::of(first.tooth.pressure_angle.turns());
        let module = Wide::of(first.tooth.size.module().expect("a size").mm());
        let counts = [first, second].map(|spur| Wide::whole(i64::from(spur.teeth)));
        let sum = counts[0].plus(&counts[1]);
        let cos = cosine(&angle);
        let apart = module.by(&sum).by(&cos).over(&two);
        let mm = |length: Length| Wide::of(length.mm());
        let thinned = mm(first.thinned).plus(&mm(second.thinned)).over(&module).over(&sum);
        let shifts = Wide::of(first.shift).plus(&Wide::of(second.shift));
        let shifted = two.by(&tangent(&angle)).by(&shifts).over(&sum);
        let tight = inv(&angle).plus(&shifted).minus(&thinned);

        // Set for a backlash, then to a distance near that.
        let backlash = first.tooth.size.times(part(k % 11, 200)).expect("small");
        let set = mesh(&Pair { first, second, at: At::Backlash(backlash) }).expect(&what);
        let share = mm(backlash).over(&apart).over(&two);
        let works =
            halve(|turns| inv(turns).minus(&tight).minus(&share.by(&cosine(turns))).float() > 0.0);
        let scale = set.centres.value;
        let grain = 1e-13 * scale;
        within(&what, set.centres, &apart.over(&cosine(&works)), grain);
        let flush = halve(|turns| inv(turns).minus(&tight).float() > 0.0);
        within(&what, set.tight, &apart.over(&cosine(&flush)), grain);

        let near = Length::from_mm(float::nearest(set.centres.value, 1_000_000).expect("small"));
        let run = mesh(&Pair { first, second, at: At::Centres(near) }).expect(&what);
        let centres = mm(near);
        let works = arc_cosine(&apart.over(&centres));
        within(&what, run.working_angle, &works.by(&Wide::whole(360)), 1e-10);
        let play = two.by(&centres).by(&inv(&works).minus(&tight));
        within(&what, run.backlash, &play, grain);
        within(&what, run.between_flanks, &play.by(&cosine(&works)), grain);
        let reach = |spur: &Spur| {
            let outside = mm(spur.outside_diameter().expect("small")).over(&two);
            let base = module.by(&Wide::whole(i64::from(spur.teeth))).by(&cos).over(&two);
            outside.by(&outside).minus(&base.by(&base)).sqrt()
        };
        let line = centres.by(&centres).minus(&apart.by(&apart)).sqrt();
        let reaches = [reach(&first), reach(&second)];
        let cut =
            |reach: &Wide| if reach.float() > line.float() { line.clone() } else { reach.clone() };
        let path = cut(&reaches[0]).plus(&cut(&reaches[1])).minus(&line);
        let ratio = path.over(&Wide::pi()).over(&module).over(&cos);
        within(&what, run.contact_ratio, &ratio, 1e-11);
        for (fouls, reach) in run.fouls.into_iter().zip(&reaches) {
            assert_eq!(fouls, reach.float() > line.float(), "{what}");
        }
        for (diameter, count) in run.working_diameters.into_iter().zip(&counts) {
            within(&what, diameter, &two.by(&centres).by(count).over(&sum), grain);
        }
        let roots = [(first, second), (second, first)];
        for (clearance, (outside, root)) in run.root_clearance.into_iter().zip(roots) {
            let taken = mm(outside.outside_diameter().expect("small"));
            let taken = taken.plus(&mm(root.root_diameter().expect("small"))).over(&two);
            within(&what, clearance, &centres.minus(&taken), grain);
        }

        // What the teeth measured so would say.
        let at = Pair { first, second, at: At::Centres(near) };
        let said = opening(&at, backlash, backlash).expect(&what);
        let measured = mm(backlash).over(&centres).over(&two);
        let tight = inv(&works).minus(&measured);
        let goes =
            halve(|turns| inv(turns).minus(&tight).minus(&share.by(&cosine(turns))).float() > 0.0);
        within(&what, said.centres, &apart.over(&cosine(&goes)), grain);
        within(&what, said.opening, &apart.over(&cosine(&goes)).minus(&centres), grain);
        let full = inv(&angle).plus(&shifted);
        within(&what, said.thinned, &full.minus(&tight).by(&sum).by(&module), 10.0 * grain);

        for spur in [first, second] {
            let Ok(said) = sound(&spur) else { continue };
            let teeth = Wide::whole(i64::from(spur.teeth));
            let square = angle.sin_turns().by(&angle.sin_turns());
            let less = one.minus(&Wide::of(spur.shift));
            within(&what, said.limit, &two.by(&less).over(&square), 1e-12);
            let clear = one.minus(&teeth.by(&square).over(&two));
            within(&what, said.clear_shift, &clear, 1e-12);
            let half = Wide::pi().over(&two);
            let shifted = two.by(&tangent(&angle)).by(&Wide::of(spur.shift));
            let thick = half.plus(&shifted).minus(&mm(spur.thinned).over(&module)).over(&teeth);
            let foot = thick.plus(&inv(&angle));
            let outside = mm(spur.outside_diameter().expect("small"));
            let base = module.by(&teeth).by(&cos);
            let top = arc_cosine(&base.over(&outside));
            within(&what, said.top_land, &outside.by(&foot.minus(&inv(&top))), grain);
            let point = halve(|turns| inv(turns).minus(&foot).float() > 0.0);
            within(&what, said.pointed_at, &base.over(&cosine(&point)), 10.0 * grain);

            let arcs = spur.arcs().expect("small");
            let pitch = Wide::pi().by(&module);
            within(&what, arcs.circular_pitch, &pitch, grain);
            within(&what, arcs.thickness, &thick.by(&teeth).by(&module), grain);
            within(&what, arcs.base_diameter, &base, grain);
            within(&what, arcs.base_pitch, &pitch.by(&cos), grain);
        }
    }
}

/// The caliper on a rack, whose tooth is straight: chords are what they are on the drawing.
#[test]
fn calipers_on_racks() {
    for (k, [spur, _]) in (1_i64..).zip(wheels()) {
        let thinned = spur.tooth.size.times(part(k % 11, 200)).expect("small");
        let found = chordal::rack(&spur.tooth, thinned).expect("in bounds");
        let module = Wide::of(spur.tooth.size.module().expect("a size").mm());
        let two = Wide::whole(2);
        let thick = Wide::pi().by(&module).over(&two).minus(&Wide::of(thinned.mm()));
        let angle = Wide::of(spur.tooth.pressure_angle.turns());
        let (sine, cosine) = (angle.sin_turns(), cosine(&angle));
        let above = Wide::of(spur.tooth.addendum().expect("small").mm());
        let lower = above.minus(&thick.over(&two).by(&sine).by(&cosine));
        let size = 4.0 * module.magnitude();
        let truths = [
            ("thickness", thick.clone(), size, 64.0),
            ("height", above, size, 64.0),
            ("constant", thick.by(&cosine).by(&cosine), size, 64.0),
            ("constant_height", lower, size, 64.0),
        ];
        hold_all(&format!("{:?} {thinned:?}", spur.tooth), &found, &truths);
    }
}
