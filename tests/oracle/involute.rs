//! Teeth measured once more in numbers of 256 bits, from the involute's own curve: a
//! string unwound from the base circle, turned so that the tooth is as thick as it
//! should be at the pitch circle. No involute function and no inverse of one is used: a
//! pin is a circle that touches the curve, an anvil a line that touches it, a trial gap
//! the same curve moved.
#[path = "../accuracy/wide.rs"]
mod wide;

use handturn::gear::outline::{self, FLANK, TIP};
use handturn::gear::trial::{Check, Cutting, Trial, deeper};
use handturn::gear::{Internal, Size, Spur, Tooth, chordal, involute, pins, span};
use handturn::measure::{Angle, Length};
use handturn::number::{Approx, Fraction, float::of};
use rand::prelude::*;
use rand_chacha::ChaCha8Rng;
use wide::Wide;

/// A point of the plane, or a turn of it.
#[derive(Clone)]
struct Complex(Wide, Wide);

impl Complex {
    fn turned(turns: &Wide) -> Self {
        Self(turns.cos_turns(), turns.sin_turns())
    }

    fn by(&self, other: &Self) -> Self {
        let (a, b, c, d) = (&self.0, &self.1, &other.0, &other.1);
        Self(a.by(c).minus(&b.by(d)), a.by(d).plus(&b.by(c)))
    }

    fn mirrored(&self) -> Self {
        Self(self.0.clone(), Wide::whole(0).minus(&self.1))
    }

    fn times(&self, factor: &Wide) -> Self {
        Self(self.0.by(factor), self.1.by(factor))
    }

    fn plus(&self, other: &Self) -> Self {
        Self(self.0.plus(&other.0), self.1.plus(&other.1))
    }

    fn minus(&self, other: &Self) -> Self {
        Self(self.0.minus(&other.0), self.1.minus(&other.1))
    }

    fn dot(&self, other: &Self) -> Wide {
        self.0.by(&other.0).plus(&self.1.by(&other.1))
    }
}

/// The flank above the middle of a tooth that lies along the first axis.
struct Curve {
    teeth: i64,
    base: Wide,
    pitch: Wide,
    pressure: Wide,
    thickness: Wide,
    /// Turns the curve as it unwinds to where it belongs.
    place: Complex,
}

fn radians(turns: &Wide) -> Wide {
    turns.by(&Wide::pi()).by(&Wide::whole(2))
}

fn turns(radians: &Wide) -> Wide {
    radians.over(&Wide::pi()).over(&Wide::whole(2))
}

fn close(left: &Wide, tiny: f64) {
    assert!(left.magnitude() < tiny, "{} is left", left.float());
}

impl Curve {
    /// The wheel's, with its teeth so much thicker than by the drawing.
    fn new(wheel: &Spur, thicker: &Wide) -> Self {
        let two = Wide::whole(2);
        let module = Wide::of(wheel.tooth.size.module().expect("small").mm());
        let pressure = Wide::of(wheel.tooth.pressure_angle.turns());
        let pitch = module.by(&Wide::whole(wheel.teeth.into())).over(&two);
        let base = pitch.by(&pressure.cos_turns());
        let tan = pressure.sin_turns().over(&pressure.cos_turns());
        let shifted = module.by(&Wide::of(wheel.shift)).by(&tan).by(&two);
        let thickness = module.by(&Wide::pi()).over(&two).plus(&shifted);
        let thickness = thickness.minus(&Wide::of(wheel.thinned.mm())).plus(thicker);
        let unplaced = Complex(Wide::whole(1), Wide::whole(0));
        let teeth = wheel.teeth.into();
        let mut curve = Self { teeth, base, pitch, pressure, thickness, place: unplaced };
        // The point of the curve on the pitch circle goes half a tooth above the middle.
        let at = curve.unwound(&tan).mirrored().times(&Wide::whole(1).over(&curve.pitch));
        let angle = turns(&curve.thickness.over(&curve.pitch).over(&two));
        curve.place = Complex::turned(&angle).by(&at.mirrored());
        curve
    }

    /// The string's end when it has unwound by `t` radians.
    fn unwound(&self, t: &Wide) -> Complex {
        let along = Complex::turned(&turns(t));
        let string = Complex(Wide::whole(1), Wide::whole(0).minus(t));
        along.by(&string).times(&self.base)
    }

    fn point(&self, t: &Wide) -> Complex {
        self.place.by(&self.unwound(t).mirrored())
    }

    /// Which way the flank goes on there, outwards; of length one.
    fn heading(&self, t: &Wide) -> Complex {
        self.place.by(&Complex::turned(&turns(t)).mirrored())
    }

    /// A part of the circle, in units of half a tooth's pitch.
    fn half_pitches(&self, n: i64) -> Complex {
        let turns = Fraction::new(n, 2 * self.teeth).expect("small");
        Complex::turned(&Wide::of(turns))
    }

    /// Where `step` finds no more to take off, from `near`.
    fn newton(near: f64, step: impl Fn(&Wide) -> Wide) -> Wide {
        let mut t = Wide::of_float(near);
        let mut last = Wide::whole(1);
        for _ in 0..60 {
            if last.magnitude() < 1e-66 {
                return t;
            }
            last = step(&t);
            t = t.minus(&last);
        }
        panic!("no root near {near}")
    }

    /// Distance between two circles of diameter `pin` in gaps that have the form of this
    /// tooth, as an internal wheel's have.
    fn between_pins(&self, pin: &Wide) -> Wide {
        let half = pin.over(&Wide::whole(2));
        let inwards = Complex(Wide::whole(0), Wide::whole(-1));
        let centre = |t: &Wide| self.point(t).plus(&self.heading(t).by(&inwards).times(&half));
        let t = Self::newton(self.pressure_tan(), |t| {
            centre(t).1.over(&self.heading(t).1.by(&self.base.by(t).minus(&half)))
        });
        let one = centre(&t);
        close(&one.1, 1e-60);
        let other = self.half_pitches(2 * (self.teeth / 2)).by(&one);
        let apart = one.minus(&other);
        apart.dot(&apart).sqrt().minus(pin)
    }

    /// Reading over two circles of diameter `pin` in the gaps, which are moved out by `out`.
    fn over_pins(&self, pin: &Wide, out: &Wide) -> Wide {
        let half = pin.over(&Wide::whole(2));
        let middle = self.half_pitches(1);
        // For a place t of the string, the circle whose side touches there lies half a
        // pin along the string; its centre must lie on the gap's middle.
        let centre = |t: &Wide| {
            let beside = self.heading(t).by(&Complex(Wide::whole(0), Wide::whole(1)));
            self.point(t).plus(&beside.times(&half))
        };
        // It moves along the flank's heading, by half a pin more than the flank does.
        let t = Self::newton(self.pressure_tan(), |t| {
            let off = centre(t).by(&middle.mirrored()).1;
            let heading = self.heading(t).by(&middle.mirrored());
            let slope = heading.1.by(&self.base.by(t).plus(&half));
            off.over(&slope)
        });
        let at = centre(&t).by(&middle.mirrored());
        close(&at.1, 1e-60);
        let far = middle.times(&at.0.plus(out));
        // The other gap: opposite, or half a tooth beside that.
        let other = self.half_pitches(2 * (self.teeth / 2)).by(&far);
        let apart = far.minus(&other);
        apart.dot(&apart).sqrt().plus(pin)
    }

    fn pressure_tan(&self) -> f64 {
        self.pressure.sin_turns().over(&self.pressure.cos_turns()).float()
    }

    /// Distance of two parallel lines that touch the outer flanks of `k` teeth, the gaps
    /// beyond them moved out by `out`.
    fn over_teeth(&self, k: i64, out: &Wide) -> Wide {
        let middle = self.half_pitches(k - 1);
        let t = Self::newton(self.pressure_tan(), |t| {
            let heading = middle.by(&self.heading(t));
            Wide::whole(0).minus(&heading.1.over(&heading.0))
        });
        let touched = middle.by(&self.point(&t)).plus(&self.half_pitches(k).times(out));
        touched.1.by(&Wide::whole(2))
    }

    /// Thickness between the flanks at `level` along the tooth, the gaps moved out by `out`.
    fn across(&self, level: &Wide, out: &Wide) -> Wide {
        let out = self.half_pitches(1).times(out);
        let t = Self::newton(self.pressure_tan(), |t| {
            let off = self.point(t).plus(&out).0.minus(level);
            off.over(&self.heading(t).0.by(&self.base.by(t)))
        });
        let at = self.point(&t).plus(&out);
        close(&at.0.minus(level), 1e-60);
        at.1.by(&Wide::whole(2))
    }

    /// The point of the flank that stands at the pressure angle to the middle of the
    /// tooth: there a rack touches, and the normal passes through the pitch circle's
    /// crossing with the middle.
    fn under_the_rack(&self) -> Complex {
        let slanted = Complex::turned(&self.pressure);
        let t = Self::newton(self.pressure_tan(), |t| {
            let heading = self.heading(t).by(&slanted);
            Wide::whole(0).minus(&heading.1.over(&heading.0))
        });
        let crossing = Complex(self.pitch.clone(), Wide::whole(0));
        close(&self.point(&t).minus(&crossing).dot(&self.heading(&t)), 1e-60);
        self.point(&t)
    }
}

fn part(num: i64, den: i64) -> Fraction {
    Fraction::new(num, den).expect("small")
}

/// A wheel from chance and the blank it is cut from.
fn chance(rng: &mut ChaCha8Rng) -> (Spur, Length) {
    let size = if rng.random_bool(0.5) {
        Size::Module(Length::from_mm(part(rng.random_range(4..=400), 20)))
    } else {
        Size::DiametralPitch(part(rng.random_range(4..=256), 4))
    };
    let degrees = match rng.random_range(0..3) {
        0 => part(29, 2),
        1 => Fraction::whole(20),
        _ => part(rng.random_range(48..=120), 4),
    };
    let pressure_angle = Angle::from_degrees(degrees).expect("small");
    let tooth = Tooth { size, pressure_angle, ..Tooth::default() };
    let thinned = size.times(part(rng.random_range(0..=10), 100)).expect("small");
    let shift = part(rng.random_range(-40..=80) * rng.random_range(0..=1), 100);
    let spur = Spur { teeth: rng.random_range(6..=400), tooth, shift, thinned };
    let more = size.times(part(rng.random_range(-5..=5), 100)).expect("small");
    let outside = spur.outside_diameter().expect("small").mm();
    (spur, Length::from_mm(outside.checked_add(more.mm()).expect("small")))
}

/// The truth lies within the bound, the bound within 10^-9 of the size.
#[track_caller]
fn same(what: &str, wheel: &Spur, came: Approx, truth: &Wide, size: &Wide) {
    let off = truth.minus(&Wide::of_float(came.value)).magnitude();
    assert!(off <= came.bound, "{what}: {came:?}, {} is true: {wheel:?}", truth.float());
    assert!(came.bound <= 1e-12 * size.magnitude(), "{what}: {came:?} is lazy: {wheel:?}");
    assert!(off <= 1e-9 * truth.magnitude(), "{what}: {came:?} of {}", truth.float());
}

/// `value` to a hundred-thousandth of a millimetre.
fn near(value: f64) -> Length {
    Length::from_mm(part((value * 1e5).round() as i64, 100_000))
}

fn wide(length: Length) -> Wide {
    Wide::of(length.mm())
}

#[test]
fn teeth_measure_what_the_unwound_string_says() {
    let mut rng = ChaCha8Rng::seed_from_u64(0x0069_6e76_6f6c);
    let (none, two) = (Wide::whole(0), Wide::whole(2));
    let mut compared = [0_u32; 6];
    for case in 0..3_000 {
        let (wheel, outside) = chance(&mut rng);
        let curve = Curve::new(&wheel, &none);
        let radius = wide(outside).over(&two);
        if let Ok(came) = chordal::tooth(&wheel, outside) {
            let half = turns(&curve.thickness.over(&curve.pitch).over(&two));
            let at = Complex::turned(&half).times(&curve.pitch);
            let rack = curve.under_the_rack();
            same("chord", &wheel, came.thickness, &at.1.by(&two), &radius);
            same("height", &wheel, came.height, &radius.minus(&at.0), &radius);
            same("constant", &wheel, came.constant, &rack.1.by(&two), &radius);
            same("its height", &wheel, came.constant_height, &radius.minus(&rack.0), &radius);
            compared[0] += 1;
        }
        if let Ok(best) = span::over(&wheel, outside, None) {
            let k = rng.random_range(best.least..=best.greatest);
            let came = span::over(&wheel, outside, Some(k)).expect("a number that serves");
            let truth = curve.over_teeth(k.into(), &none);
            same("span", &wheel, came.reading, &truth, &radius);
            compared[1] += 1;
        }
        if let Ok(range) = pins::range(&wheel, outside) {
            let (least, greatest) = (range.least.value, range.greatest.value);
            let pin = near(least + (greatest - least) * rng.random_range(0.01..0.99));
            let came = pins::over(&wheel, outside, pin).expect("a pin that serves");
            let truth = curve.over_pins(&wide(pin), &none);
            same("pins", &wheel, came.reading, &truth, &radius);
            compared[2 + wheel.teeth as usize % 2] += 1;
        }
        // The same teeth as the gaps of a ring; thinning makes those wider.
        let Spur { teeth, tooth, shift, thinned } = wheel;
        let ring = Internal { teeth, tooth, shift, thinned };
        let usual = near(of(tooth.size.module().expect("small").mm()) * 1.7);
        if let Ok(one) = ring.between_pins(usual) {
            let (least, greatest) = (one.range.least.value, one.range.greatest.value);
            let pin = near(least + (greatest - least) * rng.random_range(0.01..0.99));
            let came = ring.between_pins(pin).expect("a pin that serves").over;
            let gaps = Curve::new(&wheel, &wide(thinned).by(&two));
            let truth = gaps.between_pins(&wide(pin));
            same("between pins", &wheel, came.reading, &truth, &radius);
            compared[5] += 1;
        }
        if case % 4 == 0
            && let Ok(points) = outline::half_gap(&wheel, outside)
        {
            for point in &points[FLANK..TIP] {
                let at = Complex(Wide::of_float(point.y), Wide::of_float(point.x));
                let t = at.dot(&at).over(&curve.base.by(&curve.base)).minus(&Wide::whole(1));
                if t.float() < 1e-6 {
                    // On the base circle the string's length is lost in rounding.
                    continue;
                }
                // From the gap's middle, turned back by half a pitch, to the tooth's.
                let truth = curve.point(&t.sqrt());
                let at = curve.half_pitches(1).by(&at.mirrored());
                let off = at.minus(&truth);
                let off = off.dot(&off).sqrt().magnitude() / curve.pitch.magnitude();
                assert!(off < 1e-12, "{wheel:?}: {point:?} lies {off:e} off");
            }
            compared[4] += 1;
        }
    }
    let [chords, spans, even, odd, outlines, rings] = compared;
    assert!(chords > 2_900 && spans > 2_500 && rings > 1_500, "{compared:?}");
    assert!(even > 1_200 && odd > 1_200 && outlines > 700, "{compared:?}");
}

/// The gap of a form cutter, moved out by what is said to be missing, reads what was
/// read; so does a tooth that is still so much thicker.
#[test]
fn trial_gaps_want_what_the_moved_curve_wants() {
    let mut rng = ChaCha8Rng::seed_from_u64(0x7472_6961_6c73);
    let none = Wide::whole(0);
    let mut compared = [[0_u32; 3]; 2];
    for case in 0..1_200 {
        let (wheel, outside) = chance(&mut rng);
        let module = wheel.tooth.size.module().expect("small");
        let (kind, cutting) = [(0, Cutting::Form), (1, Cutting::Generated)][case / 3 % 2];
        let check = match case % 3 {
            0 => {
                let Ok(best) = span::over(&wheel, outside, None) else { continue };
                Check::Span { teeth: best.teeth }
            }
            1 => {
                let Ok(range) = pins::range(&wheel, outside) else { continue };
                Check::Pins { pin: near(range.best.value) }
            }
            _ => {
                let Ok(chord) = chordal::tooth(&wheel, outside) else { continue };
                Check::Caliper { height: near(chord.height.value) }
            }
        };
        let trial = Trial { spur: wheel, outside, cutting, check };
        let Ok(goal) = handturn::gear::trial::wanted(&trial) else { continue };
        let mm = of(module.mm());
        let reading = near(goal.value + mm * rng.random_range(-0.02..0.25));
        let Ok(came) = deeper(&trial, reading) else { continue };
        let level = |height| wide(outside).over(&Wide::whole(2)).minus(&wide(height));
        let reads = |curve: &Curve, out: &Wide| match check {
            Check::Span { teeth } => curve.over_teeth(teeth.into(), out),
            Check::Pins { pin } => curve.over_pins(&wide(pin), out),
            Check::Caliper { height } => curve.across(&level(height), out),
        };
        let drawn = Curve::new(&wheel, &none);
        let wanted = reads(&drawn, &none);
        same("wanted", &wheel, came.wanted, &wanted, &drawn.pitch);
        let missing = Wide::of_float(came.deeper.value);
        let now = if cutting == Cutting::Generated {
            let tan = Wide::of_float(2.0 * drawn.pressure_tan());
            reads(&Curve::new(&wheel, &missing.by(&tan)), &none)
        } else {
            // A cutter without backlash, sunk until the wheel reads as wanted: how far
            // that is, by secants.
            let cutter = Curve::new(&wheel, &wide(wheel.thinned));
            let (mut one, mut two) = (none.clone(), Wide::of_float(mm / 100.0));
            let mut at = reads(&cutter, &one).minus(&wanted);
            for _ in 0..12 {
                let then = reads(&cutter, &two).minus(&wanted);
                let change = then.minus(&at);
                if change.magnitude() < 1e-50 {
                    break;
                }
                let next = two.minus(&then.by(&two.minus(&one)).over(&change));
                (one, two, at) = (two, next, then);
            }
            reads(&cutter, &two.plus(&missing))
        };
        let off = now.minus(&wide(reading)).magnitude() / came.per_depth;
        assert!(off <= came.deeper.bound + 1e-15 * mm, "{trial:?}: {came:?}, off by {off:e}");
        assert!(came.deeper.bound <= 1e-10 * drawn.pitch.magnitude(), "{trial:?}: {came:?}");
        compared[kind][case % 3] += 1;
    }
    assert!(compared.iter().flatten().all(|&n| n > 120), "{compared:?}");
}

/// Below and above the angle that comes out, by its bound, lie smaller and larger values.
#[test]
fn the_inverse_lies_between_its_neighbours() {
    let mut rng = ChaCha8Rng::seed_from_u64(0x696e_7665_7273);
    let function = |degrees: f64| {
        let turns = Wide::of_float(degrees).over(&Wide::whole(360));
        turns.sin_turns().over(&turns.cos_turns()).minus(&radians(&turns))
    };
    for case in 0..3_000 {
        let den = 1_000_000_007;
        let most = if case % 2 == 0 { 4 * den } else { den / 1_000 };
        let wanted = part(rng.random_range(1..=most), den);
        let came = involute::angle(wanted).expect("from nought to 4");
        let off = |degrees| function(degrees).minus(&Wide::of(wanted)).float();
        assert!(off(came.value - came.bound) < 0.0, "{wanted}: {came:?}");
        assert!(off(came.value + came.bound) > 0.0, "{wanted}: {came:?}");
        assert!(came.bound < 1e-13 * came.value, "{wanted}: {came:?}");
    }
}
