//! The plate that 127 lacks, as the README has it.
use super::{best, head, stands, way_spaces};
use handturn::divide::{Kind, Parts, Question};
use handturn::measure::write::{Decimal, rounded};
use handturn::number::Approx;
use handturn::plate::{Making, Sources, ladder};

fn seconds(error: Approx, places: u8) -> String {
    let value = rounded(error, places).expect("small");
    Decimal { value, places }.to_string()
}

#[test]
fn the_plate_of_127() {
    let question = Question::Parts(Parts { count: 127, every: 1 });
    let first = Some(best(&question, Kind::NearestHole).way);
    let making = Making { question, first, sources: Sources::NONE, ..Making::default() };
    let plan = ladder(&head(), &making).expect("the example is sound");
    let drilled = Question::Parts(plan.parts);
    assert_eq!((plan.parts.count, plan.enough), (127, 2));
    for (number, which) in [(0, "first"), (1, "second")] {
        let one = &plan.generations[number];
        let spaces = |index| way_spaces(&one.way, &drilled, index);
        let (least, greatest) =
            (0..126).map(spaces).fold((u32::MAX, 0), |(a, b), s| (a.min(s), b.max(s)));
        let by = if number == 0 {
            format!("{least} or {greatest} holes on the 49 circle")
        } else {
            assert_eq!(least, greatest);
            format!("{least} holes on the first")
        };
        stands(&format!(
            "| {which} | {by} | within {}″ | within {}″, neighbours {}″ |",
            seconds(one.plate.sum.total, 0),
            seconds(one.work.sum.total, 1),
            seconds(one.work.sum.adjacent, 1),
        ));
    }
}
