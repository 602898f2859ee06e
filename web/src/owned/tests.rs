use super::*;
use handturn::Cause;
use handturn::head::{
    Arms, Circle, FineDial, GEARS, Handwheel, Mounting, Plate, PlateStop, Reach, SET_A, SET_B,
    Sense, gears_of, plates_of,
};
use handturn::measure::{Angle, Length};
use handturn::number::Fraction;

fn part(num: i64, den: i64) -> Fraction {
    Fraction::new(num, den).unwrap()
}

fn length(num: i64, den: i64) -> Length {
    Length::from_mm(part(num, den))
}

fn fields_of(head: &Head) -> Fields {
    let mut fields = Fields::default();
    for (entry, text) in defaults(head) {
        fields.set(entry.name(), &text);
    }
    fields
}

#[track_caller]
fn round(what: &str, head: Head) {
    head.check().unwrap();
    let fields = fields_of(&head);
    assert_eq!(read(&|entry| typed(&fields, entry)), Ok(head), "{what}");
}

#[test]
fn every_head_comes_back_from_its_texts() {
    let head = Head::default;
    round("as it is by default", head());
    round("plates 15 to 49", Head { plates: plates_of(&SET_A).unwrap(), ..head() });
    round("plates 24 to 66", Head { plates: plates_of(&SET_B).unwrap(), ..head() });
    round("the usual gears", Head { gears: gears_of(&GEARS).unwrap(), ..head() });
    round("no direct plate", Head { direct: Default::default(), ..head() });
    for (num, den) in [(40, 1), (60, 1), (81, 2), (1, 1000), (1000, 7), (99_999, 100_000)] {
        round("ratio", Head { ratio: part(num, den), ..head() });
    }
    for (num, den) in [(0, 1), (1, 3), (5, 1), (1, 8), (17, 999)] {
        round("slack", Head { slack: part(num, den), ..head() });
    }
    for (num, den) in [(1, 1000), (381, 5), (1270, 7), (9999, 1), (1, 7)] {
        round("diameter", Head { work_diameter: length(num, den), ..head() });
        round("pin", Head { pin: Some(length(num, den)), ..head() });
        round(
            "reach",
            Head {
                reach: Some(Reach { least: length(0, 1), greatest: length(num, den) }),
                ..head()
            },
        );
    }
    for (a, b) in
        [((0, 1), (1, 1)), ((1, 127), (126, 127)), ((1, 1_296_000), (1, 2)), ((1, 7), (1, 3))]
    {
        let angle = |(num, den)| Angle::from_turns(part(num, den));
        round("arms", Head { arms: Arms { least: angle(a), greatest: angle(b) }, ..head() });
        let dial = FineDial { shift: angle(b), marks: 60, travel: angle(b), slack: part(1, 3) };
        round("fine dial", Head { fine_dial: Some(dial), ..head() });
    }
    round("handwheel", Head { handwheel: Some(Handwheel { marks: 540, vernier: 6 }), ..head() });
    for sense in [Some(Sense::Clockwise), Some(Sense::Anticlockwise), None] {
        round("degree ring", Head { degree_ring: sense, ..head() });
        round("work turns", Head { work_turns: sense.unwrap_or(Sense::Clockwise), ..head() });
    }
    for on in [true, false] {
        let mounting = Mounting {
            distance: 70,
            margin: 3,
            most_idlers: 1,
            one_idler_follows: on,
            four_gears: !on,
        };
        let plate_stop = if on { PlateStop::Fixed } else { PlateStop::Withdraws };
        round(
            "choices",
            Head {
                worm_drops_out: on,
                spindle_clamp: !on,
                tilted: on,
                mounting,
                plate_stop,
                ..head()
            },
        );
    }
    let circles = [(49, Some(length(103, 2))), (47, None), (43, Some(length(1000, 7)))];
    let mut plate = Plate::default();
    for (holes, radius) in circles {
        plate.circles.push(Circle { holes, radius }).unwrap();
    }
    let mut plates = plates_of(&SET_A).unwrap();
    plates.push(plate).unwrap();
    round("radii", Head { plates, ..head() });
}

#[test]
fn defaults_are_those_of_the_default_head() {
    for (entry, text) in defaults(&Head::default()) {
        assert_eq!(text, entry.default(), "{entry:?}");
    }
    assert_eq!(head(&Fields::default()), Head::default());
    for (plates, set) in [(PLATES_A, plates_of(&SET_A)), (PLATES_B, plates_of(&SET_B))] {
        let mut fields = Fields::default();
        set_all(&mut fields, &[(Entry::Plates, plates), (Entry::Gears, GEARS_USUAL)]);
        assert_eq!(head(&fields).plates, set.unwrap());
        assert_eq!(head(&fields).gears, gears_of(&GEARS).unwrap());
    }
}

fn set_all(fields: &mut Fields, texts: &[(Entry, &str)]) {
    for (entry, text) in texts {
        set(fields, *entry, text);
    }
}

#[track_caller]
fn refused(entry: Entry, text: &str, cause: Cause) {
    let mut fields = Fields::default();
    set_all(&mut fields, &[(Entry::Handwheel, "yes"), (Entry::FineDial, "yes")]);
    let before = head(&fields);
    set(&mut fields, entry, text);
    let found: Vec<_> =
        waiting(&fields).iter().map(|(e, bad)| (*e, bad.entry, bad.error.cause)).collect();
    assert_eq!(found, [(entry, entry, cause)], "{text:?}");
    assert_eq!(head(&fields), before, "{text:?}: the last good head stays");
    assert_eq!(typed(&fields, entry), text);
}

#[test]
fn what_is_wrong_is_refused_and_changes_nothing() {
    use Cause::*;
    let range = |least, greatest| OutOfRange { least, greatest };
    refused(Entry::Name, "  ", Empty);
    refused(Entry::Ratio, "0", range(1, 100_000));
    refused(Entry::Ratio, "forty", NotANumber);
    refused(Entry::Ratio, "1,000", ThousandsMark);
    refused(Entry::Ratio, "40 : 0", Zero);
    refused(Entry::Ratio, "100001", range(1, 100_000));
    refused(Entry::Slack, "6", range(0, 5));
    refused(Entry::Slack, "-1", range(0, 5));
    refused(Entry::Plates, "15 16 / / 21", Empty);
    refused(Entry::Plates, "15 15", Twice);
    refused(Entry::Plates, "1", range(2, 1000));
    refused(Entry::Plates, "16.5", NotWhole);
    refused(Entry::Plates, "abc", NotANumber);
    refused(Entry::Direct, "24 24", Twice);
    refused(Entry::Direct, "1", range(2, 1000));
    refused(Entry::Gears, "24x10", range(1, 9));
    refused(Entry::Gears, "5", range(8, 250));
    refused(Entry::StudDistance, "1001", range(0, 1000));
    refused(Entry::StudMargin, "", Empty);
    refused(Entry::MostIdlers, "10", range(0, 9));
    refused(Entry::Pin, "0", range(0, 10_000));
    refused(Entry::ArmsLeast, "7°60'", SixtyOrMore);
    refused(Entry::ArmsGreatest, "361", Conflict);
    refused(Entry::HandwheelMarks, "1", range(2, 10_000));
    refused(Entry::HandwheelMarks, "7'", Conflict);
    refused(Entry::HandwheelMarks, "0'", Zero);
    refused(Entry::HandwheelVernier, "0", range(1, 100));
    refused(Entry::FineShift, "0", range(0, 360));
    refused(Entry::FineMarks, "1", range(2, 10_000));
    refused(Entry::FineTravel, "400", range(0, 360));
    refused(Entry::FineSlack, "-1", range(0, 10_000));
    refused(Entry::WorkDiameter, "0", range(0, 10_000));
    refused(Entry::WorkDiameter, "1234567890123456789012345678901234567890", Overflow);
}

#[test]
fn one_that_waits_comes_in_when_the_other_lets_it() {
    let mut fields = Fields::default();
    set(&mut fields, Entry::ArmsLeast, "355");
    assert_eq!(waiting(&fields).len(), 1);
    set(&mut fields, Entry::ArmsGreatest, "358");
    assert_eq!(waiting(&fields), []);
    assert_eq!(degrees(head(&fields).arms.least), "355°");

    let mut fields = Fields::default();
    set_all(&mut fields, &[(Entry::ReachGreatest, "50"), (Entry::ReachLeast, "60")]);
    assert_eq!(waiting(&fields).len(), 1);
    set(&mut fields, Entry::ReachGreatest, "70 mm");
    assert_eq!(head(&fields).reach, Some(Reach { least: length(60, 1), greatest: length(70, 1) }));
}

#[test]
fn a_fault_is_told_where_it_stands() {
    let mut fields = Fields::default();
    set_all(&mut fields, &[(Entry::Handwheel, "yes"), (Entry::HandwheelMarks, "5'")]);
    assert_eq!(head(&fields).handwheel, Some(Handwheel { marks: 108, vernier: 1 }));
    set(&mut fields, Entry::Ratio, "7");
    let bad = waiting(&fields);
    assert_eq!(bad.len(), 1);
    assert_eq!((bad[0].0, bad[0].1.entry), (Entry::Ratio, Entry::HandwheelMarks));
    assert_eq!(head(&fields).ratio, Fraction::whole(40));
}

#[test]
fn fields_from_storage_give_a_head_and_say_what_is_wrong() {
    let mut fields = Fields::default();
    for (entry, text) in [
        (Entry::Ratio, "nonsense"),
        (Entry::Plates, PLATES_A),
        (Entry::ArmsLeast, "350°"),
        (Entry::Tilted, "yes"),
    ] {
        fields.set(entry.name(), text);
    }
    fields.set(Entry::Gears.last(), "7");
    assert_eq!(head(&fields), Head::default(), "as it came it is no head");
    mend(&mut fields);
    let plates = plates_of(&SET_A).unwrap();
    assert_eq!(head(&fields), Head { plates, tilted: true, ..Head::default() });
    let bad: Vec<Entry> = waiting(&fields).iter().map(|(_, bad)| bad.entry).collect();
    assert_eq!(bad, [Entry::Ratio, Entry::ArmsGreatest]);
    assert_eq!(typed(&fields, Entry::Ratio), "nonsense");
}
