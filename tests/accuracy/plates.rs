//! Tries of what is computed about plates.
use crate::wholes::hold_all;
use crate::wide::Wide;
use crate::{Try, part};
use handturn::divide::{Kind, Parts, Question, Rated, Way, answer};
use handturn::head::{Handwheel, Head};
use handturn::measure::{ARCSEC_PER_TURN, Length};
use handturn::number::{Approx, Fraction};
use handturn::plate::ring::{Blank, Ring, check};
use handturn::plate::{self, Sources};

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

/// What a way rounds, position by position in wide numbers: greatest, root mean square,
/// and the same between neighbours, in seconds.
fn rounded(question: &Question, way: &Way) -> [Wide; 4] {
    let count = question.positions();
    let seconds = |part: u32| {
        let place = way.place(question, way.index_of(question, part)).expect("a place");
        Wide::of(place.error().expect("small").turns()).by(&Wide::whole(ARCSEC_PER_TURN))
    };
    let off: Vec<Wide> = (0..count).map(seconds).collect();
    let apart: Vec<Wide> =
        (0..off.len()).map(|k| off[(k + 1) % off.len()].minus(&off[k])).collect();
    let sizes = |all: &[Wide]| {
        let size = |one: &Wide| Wide::of_float(one.magnitude());
        let greatest = all.iter().map(size).fold(Wide::whole(0), |most, one| {
            if one.minus(&most).float() > 0.0 { one } else { most }
        });
        let squares = all.iter().fold(Wide::whole(0), |sum, one| sum.plus(&one.by(one)));
        [greatest, squares.over(&Wide::whole(all.len() as i64)).sqrt()]
    };
    let ([total, rms], [adjacent, adjacent_rms]) = (sizes(&off), sizes(&apart));
    [total, adjacent, rms, adjacent_rms]
}

#[test]
fn what_a_budget_says_of_rounding_lies_within_its_bounds() {
    let mut tried = 0;
    for (ratio, set) in [(40, "A"), (90, "B"), (60, "A")] {
        let head = Head {
            handwheel: Some(Handwheel { marks: 125, vernier: 3 }),
            ..handturn_tests::heads::head(ratio, set)
        };
        for count in [7, 53, 64, 127, 223, 365, 1009] {
            let question = Question::Parts(Parts { count, every: 1 });
            let answer = answer::<1>(&question, &head).expect("an answer");
            for group in &answer.groups {
                let Rated { way, errors } = group.closest[0];
                let budget = plate::budget(&question, &head, &way, &Sources::NONE).expect("small");
                assert_eq!(budget.terms.is_empty(), errors.is_none());
                let Some(term) = budget.terms.first() else { continue };
                let said = term.sizes;
                let said = [said.total, said.adjacent, said.rms, said.adjacent_rms];
                for (said, truth) in said.iter().zip(rounded(&question, &way)) {
                    let off = truth.minus(&Wide::of_float(said.value)).magnitude();
                    assert!(off <= said.bound, "{count} at {ratio}:1 {way:?}: {off:e} {said:?}");
                    assert!(said.bound < 1e-9, "a lazy bound: {said:?}");
                    tried += 1;
                }
            }
        }
    }
    assert!(tried > 100, "{tried}");
}

#[test]
fn a_hole_a_wave_and_a_blank_lie_within_their_bounds() {
    let head = handturn_tests::heads::head(40, "A");
    let mut tried = 0;
    for count in [21, 37, 64, 66, 98] {
        let question = Question::Parts(Parts { count, every: 1 });
        let answer = answer::<1>(&question, &head).expect("an answer");
        let Some(group) = answer.group(Kind::Plain) else { continue };
        for k in 1..30 {
            let stray = Length::from_mm(part(k * 7 % 31 + 1, 997));
            let sources = Sources { blank_run_out: stray, hole: stray, ..Sources::NONE };
            let way = group.closest[0].way;
            let budget = plate::budget(&question, &head, &way, &sources).expect("small");
            let [holes, blank] = [0, 1].map(|k| budget.terms[k].sizes);
            // stray ÷ radius, in radians, as seconds.
            let over = |radius: Fraction| {
                let radians = Wide::of(stray.mm()).over(&Wide::of(radius));
                let turns = radians.over(&Wide::pi()).over(&Wide::whole(2));
                turns.by(&Wide::whole(ARCSEC_PER_TURN))
            };
            let hole = over(part(50, 1)).over(&Wide::whole(40));
            let wave = over(part(381, 10));
            let half = Wide::of(part(1, 2 * i64::from(count))).sin_turns();
            let two = Wide::whole(2);
            let pairs = [
                (holes.total, hole.clone()),
                (holes.adjacent, hole.by(&two)),
                (holes.rms, hole.over(&Wide::whole(3).sqrt())),
                (blank.total, wave.clone()),
                (blank.adjacent, wave.by(&half).by(&two)),
                (blank.rms, wave.over(&two.sqrt())),
                (blank.adjacent_rms, wave.by(&half).by(&two.sqrt())),
            ];
            for (said, truth) in pairs {
                let off = truth.minus(&Wide::of_float(said.value)).magnitude();
                assert!(off <= said.bound, "{count}, {stray:?}: {off:e} {said:?}");
                tried += 1;
            }
        }
    }
    assert!(tried > 300, "{tried}");
}

#[test]
fn webs_between_holes() {
    for k in 1..=300_i64 {
        let holes = (k * 7 % 150 + 5) as u32;
        let ring = Ring {
            holes,
            radius: Length::from_mm(part(k * 7_919 % 900 + 600, 10)),
            drill: Length::from_mm(part(k % 9 + 2, 4)),
        };
        let blank = Blank { web: Length::from_mm(part(0, 1)), ..Blank::default() };
        let Ok(found) = check(&ring, &blank) else { continue };
        let half = Wide::of(part(1, 2 * i64::from(holes))).sin_turns();
        let chord = Wide::of(ring.radius.mm()).by(&Wide::whole(2)).by(&half);
        let drill = Wide::of(ring.drill.mm());
        let size = chord.plus(&drill).magnitude();
        hold_all(&format!("{ring:?}"), &found, &[("web_mm", chord.minus(&drill), size, 4.5)]);
    }
}
