//! Slanted teeth, worms, bevels and racks: every figure of their sizes lies within its
//! own bound of the truth in wide numbers, and the bound is a few units of rounding.
use crate::part;
use crate::wide::Wide;
use handturn::gear::table::{Geared, Job, Mill, go_on};
use handturn::gear::{
    Axial, Bevel, Depth, DepthRule, Helical, Rack, Size, Tooth, Worm, WormPair, crossed,
};
use handturn::head::{GEARS, Mounting, gears_of};
use handturn::measure::{Angle, Length};
use handturn::number::Approx;
use handturn::thread::Hand;
use handturn::thread::dial::{Dial, Reads};
use handturn::train::{Search, Six};

/// Holds `came` against `truth`: within its bound, which is at most `units` of rounding
/// of `size`.
#[track_caller]
fn held(what: &str, came: Approx, truth: &Wide, size: f64, units: f64) {
    let off = truth.minus(&Wide::of_float(came.value)).magnitude();
    assert!(off <= came.bound, "{what}: {off:e} off, {:e} promised", came.bound);
    let most = units * f64::EPSILON * size.abs() * 1.001;
    assert!(came.bound <= most, "{what}: {:e} promised, {most:e} would do", came.bound);
}

fn whole(n: u32) -> Wide {
    Wide::whole(i64::from(n))
}

fn mm(length: Length) -> Wide {
    Wide::of(length.mm())
}

fn tan(turns: &Wide) -> Wide {
    turns.sin_turns().over(&turns.cos_turns())
}

/// The angle with this tangent, in degrees.
fn degrees(tangent: &Wide) -> Wide {
    let near = tangent.float().atan() / std::f64::consts::TAU;
    tangent.atan_turns(near).by(&Wide::whole(360))
}

fn tooth(k: i64) -> Tooth {
    let sizes = [
        Size::Module(Length::from_mm(part(k % 17 + 2, 4))),
        Size::DiametralPitch(part(k % 29 + 3, 1)),
    ];
    let rules = [DepthRule::Coarse, DepthRule::Old, DepthRule::Fine];
    let pressure_angle = Angle::from_degrees(part([20, 29][(k % 2) as usize], k % 2 + 1));
    Tooth {
        size: sizes[(k / 2 % 2) as usize],
        pressure_angle: pressure_angle.expect("small"),
        rule: rules[(k % 3) as usize],
    }
}

fn wheel(k: i64) -> Helical {
    let teeth = u32::try_from(k * 37 % 190 + 6).expect("small");
    let helix = Angle::from_degrees(part(k * 7_919 % 4_700 + 61, 60)).expect("small");
    let hand = if k % 3 == 0 { Hand::Left } else { Hand::Right };
    Helical { teeth, tooth: tooth(k), helix, hand, face: Length::from_mm(part(k % 40 + 3, 1)) }
}

/// Thickness and height of a tooth of a wheel of so many virtual teeth.
fn caliper(module: &Wide, above: &Wide, teeth: &Wide) -> [Wide; 2] {
    let quarter = Wide::of(part(1, 4)).over(teeth);
    let across = module.by(teeth);
    let rise = Wide::whole(1).minus(&quarter.cos_turns()).by(&across).over(&Wide::whole(2));
    [across.by(&quarter.sin_turns()), above.plus(&rise)]
}

#[test]
fn helical_wheels() {
    for k in 1..=300 {
        let (wheel, next) = (wheel(k), wheel(k + 1));
        let (what, sizes) = (format!("{wheel:?}"), wheel.sizes().expect("in bounds"));
        let turns = Wide::of(wheel.helix.turns());
        let (sin, cos) = (turns.sin_turns(), turns.cos_turns());
        // A steep helix makes its cosine uncertain by the angle's own rounding.
        let steep = 1.0 + tan(&turns).float() * turns.float() * 6.3;
        let module = mm(wheel.tooth.size.module().expect("small"));
        let straight = module.by(&whole(wheel.teeth));
        let pitch = straight.over(&cos);
        let [above, below] = [wheel.tooth.addendum(), wheel.tooth.dedendum()]
            .map(|length| mm(length.expect("small")));
        let twice = |n: &Wide| n.plus(n);
        let size = pitch.float();
        held(&what, sizes.pitch_diameter, &pitch, size, 5.0 * steep);
        let outside = pitch.plus(&twice(&above));
        held(&what, sizes.outside_diameter, &outside, outside.float(), 8.0 * steep);
        held(&what, sizes.root_diameter, &pitch.minus(&twice(&below)), size, 8.0 * steep);
        let lead = Wide::pi().by(&straight).over(&sin);
        held(&what, sizes.lead, &lead, lead.float(), 8.0);
        let axial = Wide::pi().by(&module).over(&sin);
        held(&what, sizes.axial_pitch, &axial, axial.float(), 8.0);
        let teeth = whole(wheel.teeth).over(&cos.by(&cos).by(&cos));
        held(&what, sizes.virtual_teeth, &teeth, teeth.float(), 10.0 * steep);
        let overlap = mm(wheel.face).over(&axial);
        held(&what, sizes.overlap, &overlap, overlap.float(), 10.0);
        let [thickness, height] = caliper(&module, &above, &teeth);
        held(&what, sizes.caliper.thickness, &thickness, thickness.float(), 24.0 * steep);
        held(&what, sizes.caliper.height, &height, height.float(), 24.0 * steep);
        let next = Helical { tooth: wheel.tooth, ..next };
        let other = straight.over(&whole(wheel.teeth)).by(&whole(next.teeth));
        let other = other.over(&Wide::of(next.helix.turns()).cos_turns());
        let between = pitch.plus(&other).over(&Wide::whole(2));
        let came = crossed(&wheel, &next).expect("in bounds").centre_distance;
        held(&what, came, &between, between.float(), 8.0 + 30.0 * steep);
    }
}

#[test]
fn what_a_table_cuts() {
    let mill = Mill {
        screw: Length::from_mm(part(5, 1)),
        ratio: part(40, 1),
        gears: gears_of(&GEARS).expect("twelve"),
        mounting: Mounting::default(),
        same_way_cuts: Hand::Right,
    };
    let mut tried = 0;
    for k in 1..=150 {
        let wheel = wheel(k);
        let job = Job::of(&wheel, Geared::Worm, Six::Never);
        let mut search = Search::<4>::new();
        if go_on(&mut search, &job, &mill, u32::MAX).is_err() {
            continue;
        }
        let turns = Wide::of(wheel.helix.turns());
        let module = mm(wheel.tooth.size.module().expect("small"));
        let straight = module.by(&whole(wheel.teeth));
        let lead = Wide::pi().by(&straight).over(&turns.sin_turns());
        let steep = 1.0 + tan(&turns).float();
        for found in search.best() {
            let cuts = mill.cuts(&job, found).expect("in bounds");
            let what = format!("{wheel:?} {:?}", cuts.chain);
            let one = Wide::whole(1);
            let long = mm(cuts.lead).over(&lead);
            let off = long.minus(&one);
            held(&what, cuts.off, &off.by(&lead), lead.float(), 24.0);
            held(&what, cuts.off_ppm, &off.by(&Wide::whole(1_000_000)), 1e6, 24.0);
            let came = tan(&turns).over(&long);
            let arcsec = degrees(&came).minus(&turns.by(&Wide::whole(360)));
            let arcsec = arcsec.by(&Wide::whole(3600));
            held(&what, cuts.off_arcsec, &arcsec, 648_000.0, 24.0 * steep);
            let astray = came.minus(&tan(&turns)).by(&mm(wheel.face));
            let size = wheel.face.mm().num() as f64 * steep;
            held(&what, cuts.off_over_face, &astray, size, 40.0 * steep);
            tried += 1;
        }
    }
    assert!(tried > 200, "{tried}");
}

fn worm(k: i64) -> Worm {
    let pitches = [Axial::Size(tooth(k).size), Axial::Pitch(Length::from_mm(part(k % 23 + 3, 2)))];
    Worm {
        starts: u8::try_from(k % 4 + 1).expect("small"),
        pitch: pitches[(k % 2) as usize],
        pressure_angle: tooth(k).pressure_angle,
        rule: tooth(k / 2).rule,
        diameter: Length::from_mm(part(k * 13 % 300 + 100, 3)),
        hand: Hand::Right,
    }
}

#[test]
fn worms_and_their_wheels() {
    for k in 1..=200 {
        let worm = worm(k);
        let what = format!("{worm:?}");
        let sizes = worm.sizes().expect("in bounds");
        let module = match worm.pitch {
            Axial::Size(size) => mm(size.module().expect("small")),
            Axial::Pitch(pitch) => mm(pitch).over(&Wide::pi()),
        };
        let (above, below) = match worm.rule {
            DepthRule::Old => (module.clone(), module.by(&Wide::of(part(1157, 1000)))),
            DepthRule::Coarse => (module.clone(), module.by(&Wide::of(part(5, 4)))),
            _ => (
                module.clone(),
                module.by(&Wide::of(part(6, 5))).plus(&Wide::of(part(508, 10_000))),
            ),
        };
        let diameter = mm(worm.diameter);
        let twice = |n: &Wide| n.plus(n);
        let pitch = module.by(&Wide::pi());
        held(&what, sizes.axial_pitch, &pitch, pitch.float(), 8.0);
        let tangent = whole(worm.starts.into()).by(&module).over(&diameter);
        let angle = degrees(&tangent);
        held(&what, sizes.lead_angle, &angle, angle.float(), 16.0);
        let normal = pitch.over(&Wide::whole(1).plus(&tangent.by(&tangent)).sqrt());
        held(&what, sizes.normal_pitch, &normal, normal.float(), 16.0);
        let outside = diameter.plus(&twice(&above));
        held(&what, sizes.outside_diameter, &outside, outside.float(), 8.0);
        held(&what, sizes.root_diameter, &diameter.minus(&twice(&below)), outside.float(), 8.0);
        let depth = above.plus(&below);
        held(&what, sizes.whole_depth, &depth, depth.float(), 8.0);
        let flank = tan(&Wide::of(worm.pressure_angle.turns()));
        let tool = pitch.over(&Wide::whole(2)).minus(&twice(&below).by(&flank));
        held(&what, sizes.tool_end, &tool, pitch.float(), 16.0);

        let face = Length::from_mm(part(k % 9 + 3, 1));
        let teeth = u32::try_from(k % 80 + 20).expect("small");
        let pair = WormPair { worm, teeth, face, leave: Length::from_mm(part(1, 10)) };
        let wheel = pair.wheel().expect("in bounds");
        let half = |n: &Wide| n.over(&Wide::whole(2));
        let (radius, around) = (half(&diameter).minus(&above), module.by(&whole(teeth)));
        let size = around.plus(&outside).plus(&twice(&depth)).float();
        let centre = half(&around.plus(&diameter));
        held(&what, wheel.centre_distance, &centre, size, 16.0);
        held(&what, wheel.pitch_diameter, &around, around.float(), 8.0);
        held(&what, wheel.throat_diameter, &around.plus(&twice(&above)), size, 16.0);
        held(&what, wheel.throat_radius, &radius, size, 16.0);
        let across = half(&mm(face));
        let chord = radius.by(&radius).minus(&across.by(&across)).sqrt();
        let corner = twice(&centre.minus(&chord));
        let feels = 1.0 + diameter.float() / chord.float();
        held(&what, wheel.outside_diameter, &corner, size, 16.0 * feels);
        let reach = half(&outside);
        let useful = reach.by(&reach).minus(&half(&diameter).by(&half(&diameter))).sqrt();
        let useful = twice(&useful);
        let feels = reach.float() / useful.float();
        held(&what, wheel.useful_face, &useful, reach.float(), 40.0 * feels);
        held(&what, wheel.gash_angle, &angle, angle.float(), 16.0);
        held(&what, wheel.whole_depth, &depth, depth.float(), 8.0);
        held(&what, wheel.gash_depth, &depth.minus(&Wide::of(part(1, 10))), depth.float(), 8.0);
        held(&what, wheel.hob_diameter, &diameter.plus(&twice(&below)), size, 16.0);
        held(&what, wheel.free_blank, &around, around.float(), 8.0);
        held(&what, wheel.free_blank_within, &half(&module), module.float(), 8.0);
        held(&what, wheel.free_centre_distance, &centre.minus(&above), size, 16.0);
    }
}

#[test]
fn bevel_pairs() {
    let mut tried = 0;
    for k in 1..=300_i64 {
        let teeth = [k * 31 % 90 + 6, k * 17 % 110 + 6].map(|n| u32::try_from(n).expect("small"));
        let shafts = if k % 3 == 0 { part(90, 1) } else { part(k * 7 % 141 + 20, 1) };
        let depth = if k % 2 == 0 { Depth::Parallel } else { Depth::Tapering };
        let pair = Bevel {
            teeth,
            tooth: tooth(k),
            shafts: Angle::from_degrees(shafts).expect("small"),
            face: Length::from_mm(part(k % 7 + 1, 2)),
            depth,
        };
        let Ok(sizes) = pair.sizes() else { continue };
        tried += 1;
        let what = format!("{pair:?}");
        let turns = Wide::of(pair.shafts.turns());
        let (sin, cos) = (turns.sin_turns(), turns.cos_turns());
        let [one, other] = teeth.map(whole);
        let twice = |n: &Wide| n.plus(n);
        let apex =
            one.by(&one).plus(&other.by(&other)).plus(&twice(&one.by(&other)).by(&cos)).sqrt();
        let module = mm(pair.tooth.size.module().expect("small"));
        let given = module.by(&apex).over(&twice(&sin));
        let face = mm(pair.face);
        let large = if depth == Depth::Parallel { given.plus(&face) } else { given.clone() };
        let small = large.minus(&face);
        let [above, below] =
            [pair.tooth.addendum(), pair.tooth.dedendum()].map(|length| mm(length.expect("small")));
        // What the sums behind all this feel: shafts that are nearly in line.
        let feels = one.plus(&other).over(&apex).float().powi(2) + 1.0 / sin.float();
        held(&what, sizes.cone_distance, &large, large.float(), 16.0 * feels);
        held(&what, sizes.widest_face, &large.over(&Wide::whole(3)), large.float(), 16.0 * feels);
        let end = |at: &Wide| module.by(at).over(&given);
        held(&what, sizes.large_module, &end(&large), end(&large).float(), 24.0 * feels);
        held(&what, sizes.small_module, &end(&small), end(&large).float(), 24.0 * feels);
        if let Some(offset) = sizes.offset {
            let truth = module.by(&Wide::pi()).over(&Wide::whole(4));
            held(&what, offset, &truth, module.float(), 8.0);
        }
        for (wheel, [own, mate]) in sizes.wheels.iter().zip([[&one, &other], [&other, &one]]) {
            let (rise, run) = (own.by(&sin), mate.plus(&own.by(&cos)));
            let feels = feels + own.plus(mate).over(&run).float().abs();
            let (up, along) = (rise.over(&apex), run.over(&apex));
            let pitch = degrees(&rise.over(&run));
            let (tips, bottom) = if depth == Depth::Parallel {
                (Wide::whole(0), Wide::whole(0))
            } else {
                (degrees(&above.over(&large)), degrees(&below.over(&large)))
            };
            let units = 16.0 * feels;
            held(&what, wheel.pitch_angle, &pitch, 90.0, units);
            held(&what, wheel.face_angle, &pitch.plus(&tips), 90.0, units);
            held(&what, wheel.back_angle, &Wide::whole(90).minus(&pitch), 90.0, units);
            held(&what, wheel.cutting_angle, &pitch.minus(&bottom), 90.0, units);
            held(&what, wheel.addendum_angle, &tips, 90.0, units);
            held(&what, wheel.dedendum_angle, &bottom, 90.0, units);
            let size = twice(&large.plus(&above)).float();
            let across = twice(&large.by(&up));
            held(&what, wheel.pitch_diameter, &across, size, units);
            let outside = across.plus(&twice(&above).by(&along));
            held(&what, wheel.outside_diameter, &outside, size, units);
            let tip = large.by(&along).minus(&above.by(&up));
            held(&what, wheel.apex_to_tips, &tip, size, units);
            let teeth = own.over(&along);
            held(&what, wheel.virtual_teeth, &teeth, teeth.float(), units);
            let [thickness, height] = caliper(&end(&large), &above, &teeth);
            held(&what, wheel.caliper.thickness, &thickness, thickness.float(), 3.0 * units);
            held(&what, wheel.caliper.height, &height, height.float(), 4.0 * units);
        }
    }
    assert!(tried > 150, "{tried}");
}

#[test]
fn racks() {
    for k in 1..=60 {
        let divisions = [Length::from_mm(part(1, 50)), Length::from_mm(part(127, 5000))];
        let rack = Rack {
            tooth: tooth(k),
            gaps: 40,
            dial: Dial { division: divisions[(k % 2) as usize], reads: Reads::Travel, marks: 100 },
        };
        let (what, sizes) = (format!("{rack:?}"), rack.sizes().expect("in bounds"));
        let module = mm(rack.tooth.size.module().expect("small"));
        let pitch = module.by(&Wide::pi());
        held(&what, sizes.pitch, &pitch, pitch.float(), 8.0);
        held(&what, sizes.thickness, &pitch.over(&Wide::whole(2)), pitch.float(), 8.0);
        held(&what, sizes.length, &pitch.by(&Wide::whole(39)), pitch.float() * 39.0, 8.0);
        for gap in 0..40 {
            let place = rack.place(gap).expect("in bounds");
            let wanted = pitch.by(&whole(gap));
            let off = mm(place.reading.travel).minus(&wanted);
            held(&what, place.wanted, &wanted, wanted.float(), 8.0);
            held(&what, place.off, &off, wanted.float() + 1e-9, 8.0);
            // The nearest mark, and none nearer.
            assert!(off.magnitude() <= mm(rack.dial.division).float() / 2.0 + 1e-12, "{what}");
        }
    }
}
