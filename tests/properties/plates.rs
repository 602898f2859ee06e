//! Plates of every number of holes: what a plan promises holds for the head it makes.
use handturn::divide::{Parts, Question};
use handturn::head::Circle;
use handturn::measure::Length;
use handturn::number::Fraction;
use handturn::plate::{Making, Source, fitted, ladder, need, ring};
use handturn_tests::{heads, roomy};

fn parts(count: u32) -> Question<'static> {
    Question::Parts(Parts { count, every: 1 })
}

fn mm(num: i64, den: i64) -> Length {
    Length::from_mm(Fraction::new(num, den).expect("a length"))
}

#[test]
fn a_plate_serves_what_it_was_made_for() {
    roomy(|| {
        for ratio in [5, 40, 60, 72, 90] {
            let head = heads::head(ratio, "A");
            for count in (2..=130).chain([223, 235, 251, 365, 997]) {
                let question = parts(count);
                let needs = need(&question, &head).expect("it can be told");
                let gcd = (1..=count).rev().find(|d| count % d == 0 && ratio % d == 0);
                assert_eq!(needs.holes, count / gcd.unwrap_or(1));
                let making = Making { question, ..Making::default() };
                let plan = match ladder(&head, &making) {
                    Ok(plan) => plan,
                    Err(error) => {
                        assert!(needs.holes == 1, "{count} at {ratio}:1: {error}");
                        continue;
                    }
                };
                let circle = Circle { holes: plan.circle.holes, radius: Some(making.ring) };
                let with = fitted(&head, circle);
                assert_eq!(plan.work.check(&question, &with), Ok(()), "{count} at {ratio}:1");
                assert_eq!(plan.work.exact(&question), Ok(true));
                let drilled = parts(plan.parts.count);
                for (number, generation) in plan.generations.iter().enumerate() {
                    let on = if number == 0 { &head } else { &with };
                    assert_eq!(generation.way.check(&drilled, on), Ok(()));
                    let said = generation.way.errors(&drilled).expect("small numbers");
                    assert_eq!(generation.plate.rounding, said);
                    // A plate drilled here errs by its drilling at least.
                    let terms = &generation.plate.terms;
                    assert!(terms.iter().any(|term| term.source == Source::Drilling));
                }
                let gains = plan.generations.iter().map(|generation| generation.gain);
                let pays = gains.skip(1).take_while(|gain| *gain >= 0.1).count();
                assert_eq!(usize::from(plan.enough), pays + 1, "{count} at {ratio}:1");
            }
        }
    });
}

#[test]
fn a_multiple_of_the_holes_serves_as_well() {
    let head = heads::head(40, "A");
    for multiple in 1..=7 {
        let making = Making { multiple, ..Making::default() };
        let plan = ladder(&head, &making).expect("up to 889 holes");
        assert_eq!(plan.parts.count, 127 * multiple);
        let circle = Circle { holes: plan.circle.holes, radius: Some(making.ring) };
        assert_eq!(plan.work.check(&making.question, &fitted(&head, circle)), Ok(()));
        // It serves its multiples too, and errs no less for the number asked.
        let first = &plan.generations[0].work.sum.total;
        assert!(first.value > 4.0, "{multiple}: {first:?}");
    }
}

#[test]
fn a_proposed_ring_can_be_drilled_and_a_smaller_one_is_told_how_small() {
    let pin = Some(mm(3, 1));
    for holes in 2..=400 {
        let blank = ring::Blank { rim: Some(mm(70, 1)), pin, ..ring::Blank::default() };
        let at = |radius| ring::check(&ring::Ring { holes, radius, drill: mm(3, 1) }, &blank);
        match ring::propose(holes, mm(3, 1), &blank).expect("the drill fits the pin") {
            Some(radius) => {
                let fit = at(radius).expect("it was proposed");
                assert!(fit.web_mm.value >= 0.75 && fit.to_rim >= Some(blank.web), "{holes}");
                assert_eq!(fit.play, Some(mm(0, 1)));
                assert!(holes < 113, "{holes} holes have no room: 2 × 67 × sin(π/113) < 3.75");
            }
            None => assert!(holes >= 113, "{holes} holes have room: 2 × 67 × sin(π/112) > 3.75"),
        }
        let Err(small) = at(mm(10, 1)) else { continue };
        let handturn::Cause::HolesMeet { least_um } = small.cause else { panic!("{small}") };
        let wide = ring::Blank { rim: None, ..blank.clone() };
        let at = |um| {
            let radius = mm(i64::from(um), 1000);
            ring::check(&ring::Ring { holes, radius, drill: mm(3, 1) }, &wide)
        };
        // The least that is told leaves the web; two thousandths less does not.
        assert!(at(least_um).is_ok(), "{holes}: {least_um}");
        assert!(at(least_um - 2).is_err(), "{holes}: {least_um}");
    }
}
