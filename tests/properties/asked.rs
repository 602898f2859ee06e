//! Questions of every kind, put to heads of every kind.
use crate::config;
use handturn::divide::{Graduation, MarkKind, Numbers, Parts, Question, Repeated};
use handturn::head::{
    Arms, Circle, FineDial, Gear, Handwheel, Head, Mounting, Plate, PlateStop, Reach, Sense,
};
use handturn::list::List;
use handturn::measure::{Angle, Length};
use handturn::number::Fraction;
use handturn_tests::ask::held;
use proptest::collection::vec;
use proptest::option;
use proptest::prelude::*;

fn fraction(
    num: impl Strategy<Value = i64>,
    den: impl Strategy<Value = i64>,
) -> impl Strategy<Value = Fraction> {
    (num, den).prop_filter_map("no fraction", |(num, den)| Fraction::new(num, den).ok())
}

fn ratio() -> impl Strategy<Value = Fraction> {
    prop_oneof![
        6 => prop_oneof![Just(40), Just(60), Just(72), Just(90), Just(120)].prop_map(Fraction::whole),
        2 => fraction(1..=200_i64, 1..=5_i64),
        1 => fraction(99_990..=100_010_i64, 99_990..=100_010_i64),
        1 => fraction(-3..=3_i64, 1..=2_i64),
    ]
}

fn plates() -> impl Strategy<Value = List<Plate, { handturn::bounds::MAX_PLATES }>> {
    let holes = prop_oneof![9 => 15..=66_u16, 1 => 0..=1100_u16];
    let radius =
        option::weighted(0.2, (20..=80_i64).prop_map(|mm| Length::from_mm(Fraction::whole(mm))));
    let circle = (holes, radius).prop_map(|(holes, radius)| Circle { holes, radius });
    let plate = vec(circle, 0..=7).prop_map(|mut circles| {
        // Now and then a circle stays listed twice, or a plate empty.
        if circles.len() != 5 {
            circles.sort_by_key(|c| c.holes);
            circles.dedup_by_key(|c| c.holes);
        }
        if circles.is_empty() {
            circles.push(Circle { holes: 24, radius: None });
        }
        Plate { circles: List::from_slice(&circles).expect("few circles") }
    });
    vec(plate, 0..=3).prop_map(|plates| List::from_slice(&plates).expect("few plates"))
}

fn gears() -> impl Strategy<Value = List<Gear, { handturn::bounds::MAX_GEARS }>> {
    vec((8..=120_u16, 1..=2_u8), 0..=6).prop_map(|mut gears| {
        gears.sort_unstable();
        gears.dedup_by_key(|g| g.0);
        let gears: Vec<Gear> = gears.iter().map(|&(teeth, count)| Gear { teeth, count }).collect();
        List::from_slice(&gears).expect("few gears")
    })
}

fn sense() -> impl Strategy<Value = Sense> {
    prop_oneof![Just(Sense::Clockwise), Just(Sense::Anticlockwise)]
}

fn mounting() -> impl Strategy<Value = Mounting> {
    (prop_oneof![Just(0), 30..=200_u16], 0..=5_u16, 0..=3_u8, any::<bool>(), any::<bool>())
        .prop_map(|(distance, margin, most_idlers, one_idler_follows, four_gears)| Mounting {
            distance,
            margin,
            most_idlers,
            one_idler_follows,
            four_gears,
        })
}

prop_compose! {
    fn dials()(
        handwheel in option::weighted(0.5, (2..=400_u32, 1..=12_u32)),
        fine in option::weighted(0.5, (1..=400_i64, 2..=300_u32, 0..=120_i64, 0..=3_i64)),
    ) -> (Option<Handwheel>, Option<FineDial>) {
        let part = |num, den| Fraction::new(num, den).expect("a part");
        (
            handwheel.map(|(marks, vernier)| Handwheel { marks, vernier }),
            fine.map(|(shift, marks, travel, slack)| FineDial {
                shift: Angle::from_turns(part(1, shift)),
                marks,
                travel: Angle::from_turns(part(travel, 1000)),
                slack: part(slack, 2),
            }),
        )
    }
}

prop_compose! {
    fn head()(
        (ratio, plates, gears, mounting) in (ratio(), plates(), gears(), mounting()),
        direct in vec(prop_oneof![Just(24), Just(60), 0..=40_u16], 0..=2),
        (handwheel, fine_dial) in dials(),
        (drops, withdraws, tilted, sense) in (any::<bool>(), any::<bool>(), prop::bool::weighted(0.1), sense()),
        reach in option::weighted(0.2, (20..=60_i64, 30..=90_i64)),
        slack in 0..=10_i64,
        arms in prop_oneof![(0..=180_i64, 181..=360_i64), (5..=40_i64, 90..=200_i64)],
    ) -> Head {
        let mm = |mm| Length::from_mm(Fraction::whole(mm));
        let degrees = |n| Angle::from_degrees(Fraction::whole(n)).expect("a small angle");
        Head {
            ratio, plates, gears, mounting, handwheel, fine_dial, tilted,
            direct: List::from_slice(&direct).expect("few"),
            worm_drops_out: drops,
            plate_stop: if withdraws { PlateStop::Withdraws } else { PlateStop::Fixed },
            work_turns: sense,
            reach: reach.map(|(least, greatest)| Reach { least: mm(least), greatest: mm(greatest) }),
            slack: Fraction::new(slack, 10).expect("a part"),
            arms: Arms { least: degrees(arms.0), greatest: degrees(arms.1) },
            ..Head::default()
        }
    }
}

fn angle() -> impl Strategy<Value = Angle> {
    let fine = fraction(0..=1_296_000_i64, Just(1_296_000_i64));
    let odd = fraction(0..=400_i64, 1..=400_i64);
    let huge = fraction(any::<i64>(), any::<i64>());
    prop_oneof![10 => fine, 6 => odd, 1 => huge].prop_map(Angle::from_turns)
}

proptest! {
    #![proptest_config(config(1500))]

    #[test]
    fn equal_parts(head in head(), count in prop_oneof![6 => 2..=40_u32, 3 => 41..=400_u32, 1 => any::<u32>()], every in prop_oneof![3 => Just(1), 2 => 2..=9_u32, 1 => any::<u32>()]) {
        held(&Question::Parts(Parts { count, every }), &head);
    }

    #[test]
    fn angles_in_a_row(head in head(), angle in angle(), times in prop_oneof![8 => 1..=30_u32, 1 => any::<u32>()]) {
        held(&Question::Angle(Repeated { angle, times }), &head);
    }

    #[test]
    fn lists(head in head(), angles in vec(angle(), 0..=12)) {
        held(&Question::List(&angles), &head);
    }

    #[test]
    fn graduations(
        head in head(),
        count in prop_oneof![6 => 2..=40_u32, 3 => 41..=400_u32, 1 => any::<u32>()],
        lengths in vec(-1..=12_i64, 0..=7),
        pattern in vec(0..=3_u8, 0..=12),
        numbers in option::of((0..=40_u32, 0..=12_u32, sense(), any::<bool>())),
    ) {
        let kinds: Vec<MarkKind> = lengths
            .iter()
            .map(|&mm| MarkKind { length: Length::from_mm(Fraction::whole(mm)) })
            .collect();
        let numbers = numbers
            .map(|(every, per_mark, climbs, zero)| Numbers { every, per_mark, climbs, zero });
        held(&Question::Marks(Graduation { count, kinds: &kinds, pattern: &pattern, numbers }), &head);
    }
}
