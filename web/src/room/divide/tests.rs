//! Screens of Divide as text: the figures a person would look for.
use super::*;

/// A shop with the plates of 15 to 49 holes and the usual twelve gears.
fn shop() -> Fields {
    let mut fields = Fields::default();
    owned::set(&mut fields, Entry::Plates, owned::PLATES_A);
    owned::set(&mut fields, Entry::Gears, owned::GEARS_USUAL);
    fields
}

fn press(fields: &mut Fields, name: &str, value: &str) {
    event(fields, Event { kind: "press", name, value, at_ms: 0 });
}

fn type_in(fields: &mut Fields, name: &str, value: &str) {
    event(fields, Event { kind: "type", name, value, at_ms: 0 });
}

/// The words of the screen: tags gone, each run of spaces one.
#[track_caller]
fn words_of(fields: &Fields) -> String {
    let markup = screen(fields, &[], true).into_string();
    assert!(!markup.contains(" style="), "the policy refuses style attributes");
    let mut text = String::new();
    for piece in markup.split('<') {
        let (tag, words) = piece.split_once('>').unwrap_or(("", piece));
        if let Some((_, label)) =
            tag.split_once("aria-label=\"").filter(|_| tag.starts_with("span"))
        {
            text.push_str(label.split('"').next().unwrap_or(""));
        }
        text.push_str(words);
        text.push(' ');
    }
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

#[track_caller]
fn shows(fields: &Fields, wanted: &[&str]) {
    let text = words_of(fields);
    for words in wanted {
        assert!(text.contains(words), "“{words}” is not in: {text}");
    }
}

#[test]
fn a_first_start_asks_for_the_plates_and_then_answers() {
    let mut fields = Fields::default();
    shows(&fields, &["Which plates came with the head?", "40 : 1 is taken for the head."]);
    press(&mut fields, "plates", "mine");
    type_in(&mut fields, "try-plates", "16 1");
    shows(&fields, &["Holes in a circle must be from 2 to 1,000. You typed 1 ."]);
    press(&mut fields, "plates", "typed");
    shows(&fields, &["Which plates came with the head?"]);
    type_in(&mut fields, "try-plates", "16 20");
    press(&mut fields, "plates", "typed");
    type_in(&mut fields, "parts", "64");
    shows(&fields, &["to set 64", "10 holes on the 16", "2 circles"]);
}

#[test]
fn the_clock_wheels() {
    let mut fields = shop();
    shows(
        &fields,
        &[
            "ways to set 127",
            "One part is 40 over 127 40 127 of a handle turn, and 127 goes into none of your circles: no plain setting is exact",
            "13 holes on the 39 No full turn. 14 holes show, counting the one the pin is in (13 spaces).",
            "the plate must go back 21°",
            "Spindle 56",
            "Same move on 33 (11), 27 (9), 21 (7), 18 (6), 15 (5).",
            "126 moves between cuts and one to close, without a cut. After it: hole 13, 42 1/3 turns made over the plate, the plate back by 2 1/3 turns, the work home.",
        ],
    );
    press(&mut fields, "parts", "64");
    shows(
        &fields,
        &[
            "One part is 40 over 64 40 64 = 5 over 8 5 8 of a handle turn, and 8 goes into your 16 circle.",
            "10 holes on the 16 No full turn. 11 holes show, counting the one the pin is in (10 spaces).",
            "63 moves between cuts and one to close, without a cut. After it: hole 0, 40 turns made, the work home.",
        ],
    );
    press(&mut fields, "parts", "223");
    shows(&fields, &["ways to set 223", "Differential"]);
    press(&mut fields, "parts", "38");
    shows(&fields, &["1 turn + 1 hole on the 19 1 full turn. 2 holes show"]);
    press(&mut fields, "parts", "365");
    shows(&fields, &["ways to set 365", "Differential"]);
}

#[test]
fn nearest_hole_gives_all_its_errors() {
    let mut fields = shop();
    press(&mut fields, "way", "nearest");
    shows(
        &fields,
        &[
            "15 or 16 holes on the 49",
            "72 moves of 15 holes and 55 of 16: the list of every position says which. Errors never add up.",
            "Worst place 328″ 0.061 mm 2.4 thou",
            "Between neighbours 375″ 0.069 mm 2.7 thou",
            "Position 1: hole 0, no error.",
        ],
    );
    type_in(&mut fields, "at", "2");
    shows(&fields, &["Position 2: hole 15"]);
}

#[test]
fn what_cannot_be_read_leaves_the_last_good_answer() {
    let mut fields = shop();
    press(&mut fields, "parts", "127");
    type_in(&mut fields, "parts", "127.5");
    shows(
        &fields,
        &[
            "Parts must be a whole number from 2 to 10,000. You typed 127.5 . For part of a turn, use Angle.",
            "Last good answer: 127",
            "13 holes on the 39",
        ],
    );
    press(&mut fields, "step", "up");
    shows(&fields, &["1 way to set 128"]);
    event(&mut fields, Event { kind: "key", name: "ArrowDown", value: "field parts", at_ms: 0 });
    shows(&fields, &["ways to set 127"]);
}

#[test]
fn an_angle_is_echoed_and_set() {
    let mut fields = shop();
    press(&mut fields, "kind", "angle");
    shows(
        &fields,
        &[
            "to set 17° 30′",
            "Read as 7/144 of a turn = 17° 30′ = 17.5°.",
            "40 × 7 over 144 7 144 = 35 over 18 35 18",
        ],
    );
    type_in(&mut fields, "angle", "1/7 turn");
    shows(&fields, &["Read as 1/7 of a turn ≈ 51° 25′ 42.857″ ≈ 51.428571°."]);
    type_in(&mut fields, "angle", "361");
    shows(&fields, &["Angle must be between 0 and 360 degrees. You typed 361 ."]);
}

#[test]
fn a_list_shows_a_move_and_an_error_for_each_angle() {
    let mut fields = shop();
    press(&mut fields, "kind", "list");
    type_in(&mut fields, "list", "0\n9\n18.5");
    shows(&fields, &["to set 3 angles", "9° 1 full turn hole 0 0"]);
}

#[test]
fn a_dial_names_each_mark() {
    let mut fields = shop();
    press(&mut fields, "kind", "dial");
    type_in(&mut fields, "marks", "48");
    shows(&fields, &["to set 48 marks", "Long 0 0° start hole 0 0", "Middle"]);
}

#[test]
fn what_a_run_freezes_is_what_stands_open() {
    let mut fields = shop();
    let (asked, _, rated) = chosen(&fields).unwrap();
    assert_eq!(asked, Asked::Parts(handturn::divide::Parts { count: 127, every: 1 }));
    assert_eq!(rated.way.kind(), Kind::Differential);
    press(&mut fields, "way", "nearest");
    assert_eq!(chosen(&fields).unwrap().2.way.kind(), Kind::NearestHole);
    type_in(&mut fields, "parts", "x");
    assert!(chosen(&fields).is_none());
}

/// A shop whose head has a handwheel dial and a fine dial too.
fn with_dials() -> Fields {
    let mut fields = shop();
    owned::set(&mut fields, Entry::Handwheel, "yes");
    owned::set(&mut fields, Entry::FineDial, "yes");
    fields
}

#[test]
fn every_kind_of_way_has_its_panel() {
    let mut fields = with_dials();
    let mut open = |parts: &str, way: &str, wanted: &[&str]| {
        type_in(&mut fields, "parts", parts);
        press(&mut fields, "way", way);
        shows(&fields, wanted);
    };
    open("6", "direct", &["4 notches of 24", "Worm out: hold the work", "24 ÷ 6 = 4 notches"]);
    open(
        "6",
        "plain",
        &["6 turns + 26 holes on the 39", "handle turns, and 3 goes into your 39 circle."],
    );
    open(
        "127",
        "handwheel",
        &[
            "56 or 57 marks on the 180",
            "39 moves of 56 marks and 88 of 57",
            "No pin holds the handle: clamp before each cut.",
        ],
    );
    open(
        "127",
        "fine-dial",
        &["Dial on 86 , then 10 on the 33", "Fine dial 86 marks clockwise, to 86."],
    );
    open(
        "51",
        "compound",
        &["2 on the 17 , then 12 on the 18", "Pin out. Handle 12 holes clockwise on the 18"],
    );
}

#[test]
fn a_cutting_order_says_where_it_shifts() {
    let mut fields = shop();
    type_in(&mut fields, "parts", "60");
    type_in(&mut fields, "every", "25");
    shows(&fields, &["25 and 60 share 5: after every 12 cuts the order moves on by one part"]);
    type_in(&mut fields, "every", "60");
    shows(&fields, &["Cutting order must be from 1 to 59. You typed 60 .", "Last good answer: 60"]);
}

#[test]
fn what_is_left_out_gives_its_reason() {
    let mut fields = Fields::default();
    owned::set(&mut fields, Entry::Plates, owned::PLATES_A);
    shows(
        &fields,
        &[
            "Differential : no change gears are listed in Shop.",
            "Handwheel dial : the handwheel has no dial.",
            "No exact way with what you own.",
            "It would be exact with a 127-hole circle",
        ],
    );
    press(&mut fields, "gears", "");
    shows(&fields, &["13 holes on the 39"]);
}

#[test]
fn a_small_screen_shows_the_circle_in_use_alone() {
    let mut fields = Fields::default();
    press(&mut fields, "plates", "15");
    type_in(&mut fields, "parts", "64");
    let dotted = |wide| screen(&fields, &[], wide).into_string().matches("class=\"dots\"").count();
    assert_eq!((dotted(true), dotted(false)), (5, 0), "the other five circles of the plate");
}

#[test]
fn an_eighty_or_an_eight_takes_an() {
    let lacks = |holes| words::lacking(Some(holes), None).unwrap();
    for (holes, wanted) in [(8, "an 8"), (11, "an 11"), (83, "an 83"), (51, "a 51"), (108, "a 108")]
    {
        assert_eq!(lacks(holes), ["It would be exact with ", wanted, "-hole circle."].concat());
    }
}

#[test]
fn an_angle_that_is_rounded_is_not_said_to_be_equal() {
    let mut fields = shop();
    type_in(&mut fields, "parts", "51");
    shows(&fields, &["÷ 40 = 5 over 56 5 56 ≈ 32° 8′ 34.3″"]);
    type_in(&mut fields, "parts", "127");
    shows(&fields, &["= −21°"]);
}

#[test]
fn a_whole_angle_is_read_out_once_and_notches_have_no_turns() {
    let mut fields = shop();
    type_in(&mut fields, "parts", "12");
    shows(&fields, &["2 notches of 24 Worm out: hold the work"]);
    press(&mut fields, "kind", "angle");
    type_in(&mut fields, "angle", "45");
    shows(&fields, &["Read as 1/8 of a turn = 45°."]);
    press(&mut fields, "kind", "list");
    shows(&fields, &["45 30 is two angles"]);
}
