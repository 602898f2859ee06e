//! Tapers, disks and arcs in wide numbers.
use crate::part;
use crate::shapes::{degrees, hold};
use crate::wide::Wide;
use handturn::bench::disks::{Ask as Two, disks};
use handturn::bench::sagitta::{Arc, arc};
use handturn::bench::square::{Ask as ByHead, square};
use handturn::bench::taper::{Ask, Taper, Trial, correct, set};
use handturn::measure::Length;

fn mm(num: i64, den: i64) -> Length {
    Length::from_mm(part(num, den))
}

fn wide(length: Length) -> Wide {
    Wide::of(length.mm())
}

/// Rate, half angle in turns and its sine, from whichever was given.
fn truths(taper: Taper) -> (Wide, Wide, Wide) {
    match taper {
        Taper::Rate(rate) => {
            let half = Wide::of(rate).over(&Wide::whole(2));
            let turns = half.atan_turns(half.float().atan() / std::f64::consts::TAU);
            (Wide::of(rate), turns.clone(), turns.sin_turns())
        }
        Taper::Included(angle) => {
            let half = Wide::of(angle.turns()).over(&Wide::whole(2));
            let sine = half.sin_turns();
            (sine.over(&half.cos_turns()).by(&Wide::whole(2)), half, sine)
        }
    }
}

fn tapers() -> impl Iterator<Item = (i64, Taper)> {
    (1..=300_i64).map(|k| {
        let taper = if k % 2 == 0 {
            Taper::Rate(part(k * 7_919 % 9_973 + 1, 1_000 * (k % 7 + 1)))
        } else {
            Taper::Included(degrees(k * 104_729 % 167_000 + 1, 1_000))
        };
        (k, taper)
    })
}

#[test]
fn tapers_in_every_form() {
    for (k, taper) in tapers() {
        let (rate, half, sine) = truths(taper);
        let (between, travel) = (mm(k * 31 + 7, 9), mm(k + 3, 2));
        let ask = Ask { between: Some(between), travel: Some(travel), ..Ask::of(taper) };
        let found = set(&ask).expect("in bounds");
        let what = format!("{taper:?}");
        let by = |wide: &Wide, n| wide.by(&Wide::whole(n));
        let tells = |came, truth: Wide| hold(&what, came, &truth, truth.magnitude(), 40.0);
        tells(found.figures.rate, rate.clone());
        tells(found.figures.per_foot, by(&rate, 12));
        tells(found.figures.one_in, Wide::whole(1).over(&rate));
        tells(found.figures.included, by(&half, 720));
        tells(found.figures.half, by(&half, 360));
        tells(found.figures.sine, sine.clone());
        let over = found.over.expect("asked");
        let rule = rate.by(&wide(between)).over(&Wide::whole(2));
        tells(over.by.about, rule.clone());
        let leaning = rule.minus(&sine.by(&wide(between)));
        hold(&what, over.leaning, &leaning, leaning.magnitude(), 90.0);
        tells(found.by_slide.expect("asked"), sine.by(&wide(travel)));
        let saddle = rate.by(&wide(travel)).over(&Wide::whole(2));
        tells(found.by_saddle.expect("asked").about, saddle);
    }
}

#[test]
fn corrections() {
    for (k, taper) in tapers() {
        let (rate, half, sine) = truths(taper);
        let large_at_tail = k % 3 == 0;
        let [at_head, at_tail, apart] = [mm(k + 40, 3), mm(k * 17 % 91 + 5, 4), mm(k % 50 + 9, 1)];
        let (between, travel) = (mm(k * 3, 1), mm(k + 3, 2));
        let wanted = Some(taper);
        let trial = Trial {
            wanted,
            large_at_tail,
            at_head,
            at_tail,
            apart,
            between: Some(between),
            travel: Some(travel),
        };
        let found = correct(&trial).expect("in bounds");
        let was = wide(at_head).minus(&wide(at_tail)).over(&wide(apart));
        let (_, turned, leant) = truths(Taper::Rate(found.cut));
        let sign = Wide::whole(if large_at_tail { -1 } else { 1 });
        let what = format!("{trial:?}");
        let scale = |one: &Wide, other: &Wide| one.magnitude() + other.magnitude();
        let turn = half.by(&sign).minus(&turned).by(&Wide::whole(360));
        hold(&what, found.slide, &turn, 360.0 * scale(&half, &turned), 16.0);
        let moved = rate.by(&sign).minus(&was).by(&wide(between)).over(&Wide::whole(2));
        let span = between.mm().num() as f64;
        hold(&what, found.tailstock.expect("asked").about, &moved, span * scale(&rate, &was), 40.0);
        let shown = sine.by(&sign).minus(&leant).by(&wide(travel));
        let most = wide(travel).magnitude() * 2.0;
        hold(&what, found.gauge.expect("asked"), &shown, most, 16.0);
    }
}

#[test]
fn two_disks() {
    for (k, taper) in tapers() {
        let (_, half, sine) = truths(taper);
        let small = mm(k * 37 % 991 + 10, 20);
        let what = format!("{taper:?} {small:?}");
        let found = disks(&Two::Touching { small, taper }).expect("in bounds");
        let one = Wide::whole(1);
        let large = wide(small).by(&one.plus(&sine)).over(&one.minus(&sine));
        // Near a half turn the larger disk grows without end, and so does what a bit of
        // the sine makes of it.
        let lazy = 40.0 / one.minus(&sine).magnitude();
        hold(&what, found.large, &large, large.magnitude(), lazy);
        hold(&what, found.included, &half.by(&Wide::whole(720)), 180.0, 16.0);
        let (large, centres) = (mm(k * 37 % 991 + 10 + k, 20), mm(k * 37 % 991 + 12 + k, 20));
        let found = disks(&Two::Centres { large, small, centres }).expect("in bounds");
        let sine = wide(large).minus(&wide(small)).over(&wide(centres)).over(&Wide::whole(2));
        let cosine = one.minus(&sine.by(&sine)).sqrt();
        let near = sine.float().asin() / std::f64::consts::TAU;
        let truth = sine.over(&cosine).atan_turns(near).by(&Wide::whole(720));
        hold(&what, found.included, &truth, truth.magnitude(), 16.0);
    }
}

#[test]
fn disk_and_square() {
    for k in 1..=300_i64 {
        let (disk, angle) = (mm(k * 37 % 991 + 10, 20), degrees(k * 7_919 % 90_000 + 1, 1_000));
        let what = format!("{disk:?} {angle:?}");
        let found = square(&ByHead::Angle { disk, angle }).expect("in bounds");
        let half = Wide::of(angle.turns()).over(&Wide::whole(2));
        let (sine, radius) = (half.sin_turns(), wide(disk).over(&Wide::whole(2)));
        let touches = radius.by(&half.cos_turns()).over(&sine);
        let head = touches.plus(&radius);
        hold(&what, found.head, &head, head.magnitude(), 20.0);
        hold(&what, found.touches, &touches, touches.magnitude(), 20.0);
        // 2 sin² of half the angle over the radius is the slope, in radians.
        let slope = sine.by(&sine).over(&radius).by(&Wide::whole(360)).over(&Wide::pi());
        hold(&what, found.per_mm, &slope, slope.magnitude(), 40.0);
        let head = mm(k * 37 % 991 + 10 + k, 20);
        let found = square(&ByHead::Head { disk, head }).expect("in bounds");
        let tangent = radius.over(&wide(head).minus(&radius));
        let truth = tangent.atan_turns(found.angle.value / 720.0).by(&Wide::whole(720));
        hold(&what, found.angle, &truth, truth.magnitude(), 20.0);
    }
}

#[test]
fn arcs() {
    for k in 1..=300_i64 {
        let radius = k * 104_729 % 9_973 + 20;
        let (chord, height) = (1 + k * 7_919 % (2 * radius), 1 + k * 31_337 % (2 * radius));
        let [r, c, h] = [radius, chord, height].map(|n| mm(n, 10));
        let what = format!("{r:?} {c:?} {h:?}");
        let two = Wide::whole(2);
        let found = arc(&Arc::Height { radius: r, chord: c }).expect("in bounds");
        let half = wide(c).over(&two);
        let centre = wide(r).by(&wide(r)).minus(&half.by(&half)).sqrt();
        let truth = wide(r).minus(&centre);
        hold(&what, found.height.about, &truth, truth.magnitude(), 40.0);
        let near = (half.float() / wide(r).float()).asin() / std::f64::consts::TAU;
        // Near half round, the angle hangs on the small distance from the centre.
        if centre.magnitude() > 1e-3 * wide(r).magnitude() {
            let turns = half.over(&centre).atan_turns(near).by(&two);
            hold(&what, found.degrees, &turns.by(&Wide::whole(360)), 360.0, 16.0);
            let along = turns.by(&two).by(&Wide::pi()).by(&wide(r));
            hold(&what, found.along, &along, along.magnitude(), 24.0);
        }
        let found = arc(&Arc::Chord { radius: r, height: h }).expect("in bounds");
        let truth = wide(h).by(&wide(r).by(&two).minus(&wide(h))).sqrt().by(&two);
        hold(&what, found.chord.about, &truth, truth.magnitude().max(1e-12), 16.0);
        let ball = mm(k % 7, 100);
        let feet = arc(&Arc::Feet { side: c, height: h, ball, hollow: true }).expect("in bounds");
        let square = wide(c).by(&wide(c)).over(&Wide::whole(3));
        let truth = square.over(&wide(h)).plus(&wide(h)).over(&two).plus(&wide(ball));
        hold(&what, feet.radius.about, &truth, truth.magnitude(), 2.0);
        let across = square.sqrt().by(&two);
        hold(&what, feet.chord.about, &across, across.magnitude(), 8.0);
    }
}
