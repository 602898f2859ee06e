use super::*;
use crate::words::shop_errors;
use handturn::divide::{Kind, Parts, Question, Reason, answer};
use handturn::head::Head;

fn type_in(fields: &mut Fields, name: &str, value: &str) {
    assert!(event(fields, Event { kind: "type", name, value, at_ms: 0 }), "{name}");
}

fn press(fields: &mut Fields, name: &str, value: &str) {
    assert!(event(fields, Event { kind: "press", name, value, at_ms: 0 }), "{name}");
}

fn text(fields: &Fields) -> String {
    screen(fields, &Notice::default()).into_string()
}

/// What the sentence under a field says in full.
#[track_caller]
fn says(entry: Entry, typed: &str, wanted: &str) {
    let mut fields = Fields::default();
    owned::set(&mut fields, Entry::Handwheel, "yes");
    owned::set(&mut fields, Entry::FineDial, "yes");
    type_in(&mut fields, entry.name(), typed);
    let waiting = owned::waiting(&fields);
    assert_eq!(waiting.len(), 1, "{typed:?}");
    let said = shop_errors::said(&waiting[0].1, typed);
    let typed =
        if said.typed.is_empty() { String::new() } else { format!(" You typed {}.", said.typed) };
    let instead =
        if said.instead.is_empty() { String::new() } else { format!(" {}", said.instead) };
    assert_eq!(format!("{}{typed}{instead}", said.wrong), wanted);
    let shown = text(&fields);
    assert!(shown.contains("aria-invalid=\"true\""), "{shown}");
    assert!(shown.contains("last good entry stays in force"), "{shown}");
}

#[test]
fn each_bad_value_gives_its_sentence() {
    says(Entry::Name, " ", "The head needs a name.");
    says(
        Entry::Ratio,
        "0",
        "Worm ratio must be above 0 and at most 100,000. You typed 0. Write 40 or 40 : 1.",
    );
    says(Entry::Ratio, "", "Worm ratio is missing. Write 40 or 40 : 1.");
    says(
        Entry::Ratio,
        "forty",
        "Worm ratio must be a number. You typed forty. Write 40 or 40 : 1.",
    );
    says(Entry::Ratio, "40 : 0", "Nothing can be divided by 0. You typed 0. Write 40 or 40 : 1.");
    says(Entry::Slack, "6", "Slack must be from 0 to 5. You typed 6. Write 0.1 or 1/10.");
    says(
        Entry::Plates,
        "15 16 / / 21",
        "A plate has no circles. Part circles by spaces and plates by /.",
    );
    says(
        Entry::Plates,
        "15 16 / 21 23 21",
        "The 21 circle stands twice on plate 2. You typed 15 16 / 21 23 21. Part circles by spaces and plates by /.",
    );
    says(
        Entry::Plates,
        "15 1 17",
        "A circle must be from 2 to 1,000. You typed 1. Part circles by spaces and plates by /.",
    );
    says(
        Entry::Plates,
        "15 16.5",
        "A circle must be a whole number. You typed 16.5. Part circles by spaces and plates by /.",
    );
    says(
        Entry::Plates,
        "15 x",
        "A circle must be a number of holes. You typed x. Part circles by spaces and plates by /.",
    );
    says(
        Entry::Direct,
        "24 24",
        "A direct plate can be listed only once. You typed 24 24. Part them by spaces.",
    );
    says(
        Entry::Gears,
        "24x10",
        "Of one gear, 1 to 9 can be listed. You typed 10. Part gears by spaces; 24x2 is two of 24.",
    );
    says(
        Entry::Gears,
        "7",
        "A gear must be from 8 to 250. You typed 7. Part gears by spaces; 24x2 is two of 24.",
    );
    says(
        Entry::StudDistance,
        "2000",
        "The teeth from stud to stud must be from 0 to 1,000. You typed 2000. Write 140, or leave it empty.",
    );
    says(Entry::MostIdlers, "", "The number of idlers is missing. Write 0, 1 or 2.");
    says(
        Entry::ReachLeast,
        "-3",
        "Least radius must be from 0 to 10,000 mm. You typed -3. Write 6, 6.35 mm or 1/4 in.",
    );
    says(
        Entry::Pin,
        "0",
        "Pin diameter must be above 0 and at most 10,000 mm. You typed 0. Write 6, 6.35 mm or 1/4 in.",
    );
    says(
        Entry::ArmsLeast,
        "7°60'",
        "Minutes and seconds must be below 60. You typed 60'. Write 10 or 10°.",
    );
    says(
        Entry::ArmsGreatest,
        "5",
        "The arms must open from less to more, and to 360° at most. You typed 5. Write 10 or 10°.",
    );
    says(
        Entry::HandwheelMarks,
        "7'",
        "One turn of the handwheel must come to whole marks. You typed 7'. Write a count, or one mark as an angle: 3′.",
    );
    says(
        Entry::HandwheelVernier,
        "0",
        "Vernier parts must be from 1 to 100. You typed 0. Write 1 for none, or 10.",
    );
    says(
        Entry::FineShift,
        "0",
        "Shift of the fine dial must be above 0° and at most 360°. You typed 0. Write 5°, 5°30′ or 1/72 turn.",
    );
    says(
        Entry::FineMarks,
        "1.5",
        "Marks of the fine dial must be a whole number. You typed 1.5. Write 60.",
    );
    says(
        Entry::WorkDiameter,
        "wide",
        "Diameter of the work must be a length. You typed wide. Write 6, 6.35 mm or 1/4 in.",
    );
    says(
        Entry::WorkDiameter,
        "1,000",
        "A comma before three figures can mean thousands or a decimal mark. Leave it out: 1000, or write 1.0. You typed 1,000. Write 6, 6.35 mm or 1/4 in.",
    );
}

#[track_caller]
fn reads(entry: Entry, typed: &str, wanted: &str) {
    let mut fields = Fields::default();
    owned::set(&mut fields, Entry::Handwheel, "yes");
    owned::set(&mut fields, Entry::FineDial, "yes");
    type_in(&mut fields, entry.name(), typed);
    let shown = text(&fields);
    assert!(shown.contains(&format!("Read as {wanted}</p>")), "{wanted}: {shown}");
}

#[test]
fn each_good_value_is_read_back() {
    reads(Entry::Ratio, "81/2", "40.5 handle turns for one turn of the work.");
    reads(Entry::Plates, PLATES_A, "3 plates with 18 circles, 15 to 49.");
    reads(Entry::Plates, "49", "1 plate with 1 circle.");
    reads(Entry::Direct, "24 7", "24 notches, 15° each; 7 notches, 1/7 turn ≈ 51° 25′ 42.9″ each.");
    reads(Entry::Gears, GEARS_USUAL, "12 gears, 24 to 100.");
    reads(Entry::Slack, "1/10", "36° of the handle, 0° 54′ of the work.");
    reads(Entry::Pin, "1/4 in", "6.35 mm = 0.25 in.");
    reads(Entry::WorkDiameter, "3 in", "76.2 mm = 3 in.");
    reads(Entry::ReachGreatest, "60", "60 mm = 2.3622 in.");
    reads(Entry::HandwheelMarks, "3'", "180 marks, each 0° 3′ of the work.");
    reads(Entry::FineShift, "5", "5°; one mark is 0° 0′ 4.5″ of the work.");
    reads(Entry::ArmsLeast, "1/127 turn", "1/127 turn ≈ 2° 50′ 4.7″.");
}

/// What a setting is said to switch off, the core must really leave out.
#[track_caller]
fn switches_off(entry: Entry, value: &str, off: &[(Kind, Reason)]) {
    let mut fields = Fields::default();
    owned::set(&mut fields, Entry::Plates, PLATES_A);
    owned::set(&mut fields, Entry::Gears, GEARS_USUAL);
    owned::set(&mut fields, Entry::Handwheel, "yes");
    owned::set(&mut fields, Entry::FineDial, "yes");
    press(&mut fields, entry.name(), value);
    let head = owned::head(&fields);
    let said = crate::words::shop::follows(entry, &head).expect("it says what follows");
    assert!(text(&fields).contains(said), "{said}");
    let asked = answer::<1>(&Question::Parts(Parts { count: 127, every: 1 }), &head).unwrap();
    for (kind, reason) in off {
        assert!(
            asked.left_out.iter().any(|l| l.kind == *kind && l.reason == *reason),
            "{kind:?}: {:?}",
            asked.left_out
        );
    }
}

#[test]
fn what_a_setting_switches_off_is_told_and_true() {
    switches_off(Entry::Tilted, "yes", &[(Kind::Differential, Reason::Tilted)]);
    switches_off(
        Entry::PlateStop,
        "fixed",
        &[(Kind::Compound, Reason::PlateStopFixed), (Kind::Differential, Reason::PlateStopFixed)],
    );
    switches_off(Entry::WormDropsOut, "no", &[(Kind::Direct, Reason::WormStaysIn)]);
    switches_off(Entry::Direct, "", &[(Kind::Direct, Reason::NoDirectPlate)]);
    switches_off(
        Entry::Plates,
        "",
        &[(Kind::Plain, Reason::NoPlates), (Kind::NearestHole, Reason::NoPlates)],
    );
    switches_off(Entry::Gears, "", &[(Kind::Differential, Reason::NoGears)]);
    switches_off(Entry::SpindleClamp, "no", &[]);
}

#[test]
fn heads_are_added_copied_chosen_deleted_and_brought_back() {
    let mut fields = Fields::default();
    let listed = |fields: &Fields| {
        let (names, chosen) = names(fields);
        (names.into_iter().map(str::to_owned).collect::<Vec<_>>(), chosen)
    };
    type_in(&mut fields, "head-name", "Long bed");
    type_in(&mut fields, "head-ratio", "60");
    press(&mut fields, "shop-add", "");
    assert_eq!(listed(&fields), (vec!["Long bed".into(), "Dividing head 2".into()], 1));
    assert_eq!(owned::head(&fields), Head::default());
    press(&mut fields, "shop-start", "plates-24");
    press(&mut fields, "shop-choose", "0");
    assert_eq!(owned::typed(&fields, Entry::Ratio), "60");
    assert!(owned::head(&fields).plates.is_empty());
    press(&mut fields, "shop-copy", "");
    assert_eq!(listed(&fields).0, ["Long bed", "Dividing head 2", "Long bed, copy"]);
    assert_eq!(owned::typed(&fields, Entry::Ratio), "60");
    // The first goes and comes back, whichever is chosen meanwhile.
    press(&mut fields, "shop-choose", "0");
    let before = fields.clone();
    press(&mut fields, "shop-delete", "");
    assert_eq!(listed(&fields), (vec!["Dividing head 2".into(), "Long bed, copy".into()], 0));
    assert!(text(&fields).contains("Deleted: Long bed."));
    press(&mut fields, "shop-choose", "1");
    press(&mut fields, "shop-undo", "");
    assert_eq!(listed(&fields), listed(&before));
    for place in ["0", "1", "2"] {
        let mut was = before.clone();
        press(&mut fields, "shop-choose", place);
        choose(&mut was, place.parse().unwrap());
        assert_eq!(owned::head(&fields), owned::head(&was), "head {place}");
    }
}

#[test]
fn the_last_head_goes_and_comes_back_too() {
    let mut fields = Fields::default();
    press(&mut fields, "shop-start", "plates-15");
    type_in(&mut fields, "head-ratio", "6x");
    press(&mut fields, "shop-delete", "");
    assert_eq!(owned::head(&fields), Head::default());
    assert_eq!(names(&fields).0, ["Dividing head"]);
    press(&mut fields, "shop-undo", "");
    assert_eq!(owned::typed(&fields, Entry::Ratio), "6x");
    assert_eq!(owned::typed(&fields, Entry::Plates), PLATES_A);
}

#[test]
fn a_tap_that_replaces_can_be_undone() {
    let mut fields = Fields::default();
    type_in(&mut fields, "head-plates", "60 66");
    press(&mut fields, "shop-start", "plates-15");
    assert_eq!(owned::typed(&fields, Entry::Plates), PLATES_A);
    press(&mut fields, "shop-undo", "");
    assert_eq!(owned::typed(&fields, Entry::Plates), "60 66");
    assert!(!text(&fields).contains("shop-undo\" type") && !fields.has("shop-undo"));
}

#[test]
fn no_more_heads_than_are_kept() {
    let mut fields = Fields::default();
    for _ in 0..20 {
        press(&mut fields, "shop-copy", "");
    }
    assert_eq!(names(&fields).0.len(), 12);
    assert!(text(&fields).contains(crate::words::shop::FULL));
}

#[test]
fn what_was_typed_cannot_break_out_of_the_markup() {
    let mut fields = Fields::default();
    for entry in Entry::ALL {
        fields.set(entry.name(), "\"><script>'</textarea>");
        fields.set(entry.last(), "\"><script>'</textarea>");
    }
    assert!(!text(&fields).contains("<script>"));
}

#[test]
fn marks_in_the_fields_from_elsewhere_do_no_harm() {
    for (name, value) in [
        ("shop-heads", "0"),
        ("shop-heads", "99999999999"),
        ("shop-chosen", "-1"),
        ("shop-undo", "deleted 7"),
        ("shop-undo", "x"),
    ] {
        let mut fields = Fields::default();
        fields.set(name, value);
        for (what, value) in [
            ("shop-undo", ""),
            ("shop-choose", "5"),
            ("shop-delete", ""),
            ("shop-undo", ""),
            ("shop-add", ""),
        ] {
            press(&mut fields, what, value);
            assert!(names(&fields).1 < names(&fields).0.len());
        }
    }
}

/// The state's text of an outcome.
fn state(outcome: &str) -> String {
    let effects = outcome.split('\u{1c}').map(|effect| effect.split('\u{1d}').collect::<Vec<_>>());
    effects.into_iter().find(|fields| fields[0] == "state").expect("a state")[1].to_owned()
}

#[test]
fn what_was_typed_goes_there_and_back_exactly() {
    let event = |kind: &str, name: &str, value: &str| [kind, name, value, "0"].join("\u{1f}");
    let typed = "15 16\n21 23 / x\t\u{a0}\"<é′″🜚 49(51.5)";
    let first = state(&crate::page::turn("", &event("type", "head-plates", typed)));
    let again = state(&crate::page::turn(&first, &event("seen", "visible", "")));
    assert_eq!(first, again);
    assert!(again.contains(typed));
    // And through the store.
    let mut fields = Fields::default();
    type_in(&mut fields, "head-plates", typed);
    press(&mut fields, "shop-copy", "");
    assert_eq!(Fields::from_kept(&fields.kept()), fields);
}
