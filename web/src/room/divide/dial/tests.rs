use crate::fields::Fields;
use crate::owned::lists::{self, Stock};
use crate::owned::{self, Entry};
use crate::room::divide::{event, screen};
use crate::seam::Event;

/// The room with plates and the dial of 365 marks, after these entries and presses.
fn after(happened: &[(&'static str, &'static str, &'static str)]) -> (Fields, String) {
    let mut fields = Fields::default();
    owned::set(&mut fields, Entry::Plates, owned::PLATES_A);
    for (kind, name, value) in [("press", "kind", "dial"), ("press", "di-marks", "365")]
        .into_iter()
        .chain(happened.iter().copied())
    {
        event(&mut fields, Event { kind, name, value, at_ms: 0 });
    }
    let markup = screen(&fields, &[], false).into_string();
    (fields, markup)
}

#[track_caller]
fn shows(happened: &[(&'static str, &'static str, &'static str)], texts: &[&str]) {
    let markup = after(happened).1;
    for text in texts {
        assert!(markup.contains(text), "{text} in {markup}");
    }
}

#[test]
fn the_saddle_stops_for_each_kind_of_line() {
    shows(
        &[],
        &["365", "1 turn + 20", "<b>90</b>", "<b>60</b>", "as asked", "Heads face the lines"],
    );
    let mut fields = after(&[]).0;
    lists::set(&mut fields, Stock::MillTable, "8 tpi / 125");
    let markup = screen(&fields, &[], false).into_string();
    assert!(markup.contains("1 turn + 111") && markup.contains("3.175 mm, the table’s screw"));
    // Thous: what the dial can't show is told.
    shows(
        &[("type", "di-lead", "1/8 in"), ("type", "di-round", "125")],
        &["1 turn + 111", "0.0056 mm shorter", "177", "Drive off"],
    );
    shows(&[("type", "di-edge", "1")], &["Begin", "<b>20</b>", "1 turn + 40"]);
}

#[test]
fn what_cannot_be_read_is_said_at_its_field_and_the_last_good_answer_stays() {
    let (_, markup) = after(&[("type", "di-lead", "1/8 in"), ("type", "di-lead", "x")]);
    assert!(markup.contains("di-lead-error") && markup.contains("2 turns"), "{markup}");
    shows(&[("type", "di-round", "1")], &["Marks of the dial must be from 2 to 10,000."]);
    shows(
        &[("press", "di-part", "vernier"), ("type", "di-least", "7x")],
        &["di-least-error", "10 over 9 marks"],
    );
    shows(&[("press", "di-part", "size"), ("type", "di-screw", "0")], &["di-screw-error"]);
    shows(&[("press", "di-part", "fine"), ("type", "di-turns", "70")], &["di-turns-error"]);
}

#[test]
fn a_vernier_by_parts_and_by_an_angle() {
    let vernier = ("press", "di-part", "vernier");
    shows(
        &[vernier],
        &["10 over 9 marks", "9/3650 of a turn", "Line 3 meets: add 3/10 of a mark."],
    );
    shows(
        &[
            vernier,
            ("type", "marks", "360"),
            ("type", "di-least", "5′"),
            ("press", "di-over", "two"),
            ("press", "di-sides", "both"),
            ("type", "di-meets", "10"),
        ],
        &["12 over 23 marks", "25", "1° 55′", "Line 10 meets"],
    );
}

#[test]
fn a_dial_that_suits_a_screw_is_taken() {
    let size = ("press", "di-part", "size");
    shows(&[size], &["5 mm, the table’s screw in Shop", "0.05 mm", "data-value=\"100\""]);
    let size_of = [size, ("type", "di-screw", "1/8 in")];
    shows(&size_of, &["0.001 in", "0.025 mm", "data-value=\"125\"", "data-value=\"127\""]);
    let (fields, markup) = after(&[size, ("press", "di-marks", "125")]);
    assert_eq!(fields.get("marks"), "125");
    assert!(markup.contains("to set 125 marks"), "{markup}");
    shows(&[size, ("type", "di-screw", "0.3 mm")], &["0.3"]);
}

#[test]
fn a_fine_dial_goes_into_the_shop() {
    let fine = ("press", "di-part", "fine");
    shows(&[fine], &["59.961 mm", "One mark, with the arm as given", "falls behind"]);
    let (fields, markup) = after(&[fine, ("press", "di-take", "43 2″"), ("press", "di-shop", "")]);
    assert!(markup.contains("Put it in Shop"));
    let dial = owned::head(&fields).fine_dial.expect("the head has one now");
    assert_eq!(dial.marks, 43);
    assert_eq!(dial.shift, handturn::measure::read::angle("0°57′20″").unwrap());
}
