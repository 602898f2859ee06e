use super::*;

fn mm(num: i64, den: i64) -> Length {
    Length::from_mm(Fraction::new(num, den).unwrap())
}

fn ask(shape: Shape, tool: Tool, by: By) -> Ask {
    Ask { shape, radius: mm(10, 1), tool, division: mm(1, 1000), by }
}

/// The scallop of the formula, and what dials of 0.001 add to it.
#[track_caller]
fn near(plan: &Plan, scallop: f64) {
    let came = plan.scallop.value;
    assert!(came >= scallop && came < scallop + 0.0015, "{came}");
}

#[test]
fn a_square_corner_leaves_equal_steps() {
    // Quarter of a round in 25 parts by equal squares: R (√(1 + 1/25) − 1).
    let square = Tool::Square { width: mm(2, 1) };
    let dome = Shape::Ball { stock: mm(20, 1), neck: None };
    let plan = plan(&ask(dome, square, By::Cuts(24))).unwrap();
    near(&plan, 0.198_039_027);
    let step = plan.step(23).unwrap();
    // The smallest: sin² = 1/25, so 4 across and 10 − √96 along.
    assert_eq!(step.across, mm(4, 1));
    assert_eq!(step.along, mm(202, 1000));
    assert!(plan.step(24).is_err());
}

#[test]
fn a_round_nose_leaves_cusps_by_their_formula() {
    // 30 parts of 3°: (R + n) cos 1.5° − √(n² − (R + n)² sin² 1.5°) − R.
    let nose = Tool::Round { nose: mm(2, 1) };
    let found = plan(&ask(Shape::Edge { outside: mm(50, 1) }, nose, By::Cuts(29))).unwrap();
    near(&found, 0.020_710_312);
    let hollow = Shape::Hollow { inside: mm(30, 1) };
    let found = plan(&ask(hollow, nose, By::Cuts(31))).unwrap();
    // R − (R − n) cos − √(n² − (R − n)² sin²).
    near(&found, 0.013_735_339);
    // It begins by facing the shoulder and ends on the smaller diameter.
    let (first, last) = (found.step(0).unwrap(), found.step(30).unwrap());
    assert_eq!((first.along, first.across), (mm(0, 1), mm(46, 1)));
    assert_eq!((last.along, last.across), (mm(8, 1), mm(30, 1)));
}

#[test]
fn as_few_cuts_as_a_scallop_needs() {
    let nose = Tool::Round { nose: mm(2, 1) };
    let cup = Shape::Cup { depth: mm(10, 1) };
    let found = plan(&ask(cup, nose, By::Scallop(mm(2, 100)))).unwrap();
    assert!(found.scallop.value <= 0.02);
    let fewer = plan(&ask(cup, nose, By::Cuts(found.cuts - 1))).unwrap();
    assert!(fewer.scallop.value > 0.02);
    let coarse = Ask { division: mm(1, 10), ..ask(cup, nose, By::Scallop(mm(1, 1000))) };
    assert!(matches!(plan(&coarse).unwrap_err().cause, Cause::OutOfLengths { .. }));
}

#[test]
fn what_does_not_go() {
    let square = Tool::Square { width: mm(2, 1) };
    let refused = |shape, tool, cuts| {
        plan(&ask(shape, tool, By::Cuts(cuts))).map_err(|e| (e.field, e.cause)).unwrap_err()
    };
    let neck = Shape::Ball { stock: mm(15, 1), neck: Some(mm(15, 1)) };
    assert_eq!(refused(neck, square, 9), (Field::Neck, Cause::Conflict));
    let blunt = Tool::Round { nose: mm(10, 1) };
    let hollow = Shape::Hollow { inside: mm(30, 1) };
    let most = Cause::OutOfLengths { least_um: 1, greatest_um: 9999 };
    assert_eq!(refused(hollow, blunt, 9), (Field::Tool, most));
    let one = Cause::OutOfRange { least: 2, greatest: 400 };
    assert_eq!(refused(hollow, square, 1), (Field::Passes, one));
    let edge = Shape::Edge { outside: mm(19, 1) };
    let most = Cause::OutOfLengths { least_um: 1, greatest_um: 9500 };
    assert_eq!(refused(edge, square, 9), (Field::Radius, most));
    let cup = Shape::Cup { depth: mm(11, 1) };
    let most = Cause::OutOfLengths { least_um: 1, greatest_um: 10_000 };
    assert_eq!(refused(cup, square, 9), (Field::Depth, most));
}
