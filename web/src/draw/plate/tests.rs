use super::*;
use handturn::divide::At;
use handturn::head::{Head, SET_A, plates_of};

fn leg(of: u32, from: u32, spaces: u32, part: Part, sense: Sense) -> Leg {
    let arms = ArmsSet::of(spaces, of, Head::default().arms);
    let to = At { number: (from + spaces) % of, of };
    Leg { part, sense, turns: 0, spaces, from: At { number: from, of }, to, arms }
}

#[test]
fn pin_and_target_carry_their_true_numbers() {
    let leg = leg(16, 8, 10, Part::Pin, Sense::Clockwise);
    let text = drawing(&PlateView { leg: &leg, circles: &[], counted: true }, "name").into_string();
    for number in 0..16 {
        assert!(text.contains(&format!(">{number}</tspan>")), "{number}: {text}");
    }
    // The pin in hole 8 stands at the foot of a ring of 73.5, hole 2 at 45°.
    assert!(text.contains(r#"<circle class="pin" cx="0" cy="73.5""#), "{text}");
    assert!(text.contains(r#"<circle class="goal" cx="51.97" cy="-51.97""#), "{text}");
    assert!(text.contains(r#"pathLength="16""#) && text.contains(r#"aria-label="name""#));
}

#[test]
fn a_plate_turned_back_brings_the_hole_to_the_pin() {
    let leg = leg(49, 0, 19, Part::BackPin, Sense::Anticlockwise);
    let ring = Ring::of(&PlateView { leg: &leg, circles: &[], counted: false });
    assert!((ring.angle(19) - 19.0 / 49.0).abs() < 1e-12 && ring.plate_moves());
}

#[test]
fn bold_numbers_keep_clear_of_each_other() {
    for of in [15, 16, 39, 49, 66] {
        for spaces in 1..of {
            let leg = leg(of, 0, spaces, Part::Pin, Sense::Clockwise);
            let ring = Ring::of(&PlateView { leg: &leg, circles: &[], counted: false });
            let pin = ring.label(0, ring.inside(), -1.0);
            let mut target = ring.label(spaces, ring.inside(), 1.0);
            if pin.touches(&target) {
                target = ring.label(spaces, ring.inside() - 13.0, 1.0);
            }
            assert!(!pin.touches(&target), "{spaces} on {of}");
        }
    }
}

#[test]
fn every_circle_of_the_plate_is_drawn_once() {
    let plates = plates_of(&SET_A).unwrap();
    let circles = &plates.last().unwrap().circles;
    let leg = leg(39, 0, 13, Part::Pin, Sense::Clockwise);
    let text = group(&PlateView { leg: &leg, circles, counted: false }).into_string();
    for circle in circles {
        let drawn = text.matches(&format!(r#"pathLength="{}""#, circle.holes)).count();
        assert_eq!(drawn, if circle.holes == 39 { 2 } else { 1 }, "{}", circle.holes);
    }
}
