//! The room as a person meets it: answers put, moved, ticked; values that follow; what has
//! changed since; paper; the demonstration.
use crate::room::visit::Visit;

/// A shop with plates and gears, in Divide at 127.
fn shop() -> Visit {
    let mut visit = Visit::to("divide");
    visit.press("plates", "15");
    visit.press("gears", "");
    visit.typed("parts", "127");
    visit
}

/// The page with what the store asked for taken in and confirmed.
fn stored(visit: &mut Visit) {
    for _ in 0..20 {
        let asked = visit.asked.clone();
        let mut answers = Vec::new();
        for effect in &asked {
            let mut words = effect.split(' ');
            match (words.next(), words.next(), words.next()) {
                (Some("begin" | "renew"), Some(id), _) => {
                    answers.push(("kept", id.to_owned(), "begun 12:00:00".to_owned()))
                }
                (Some("append"), Some(id), Some(at)) => {
                    answers.push(("kept", id.to_owned(), [at, " 12:00:00"].concat()))
                }
                (Some("claim"), Some(id), _) => {
                    answers.push(("lock", id.to_owned(), "held".to_owned()))
                }
                _ => {}
            }
        }
        if answers.is_empty() {
            return;
        }
        let mut all = Vec::new();
        for (kind, name, value) in answers {
            visit.send(kind, &name, &value);
            all.append(&mut visit.asked);
        }
        visit.asked = all;
    }
}

fn press(visit: &mut Visit, name: &str, value: &str) {
    visit.press(name, value);
    stored(visit);
}

fn typed(visit: &mut Visit, name: &str, value: &str) {
    visit.typed(name, value);
    stored(visit);
}

/// The order of two texts on the page.
#[track_caller]
fn in_order(visit: &Visit, wanted: &[&str]) {
    let text = visit.text();
    let from = text.find("In this order").unwrap();
    let text = &text[from..];
    let mut at = 0;
    for words in wanted {
        let found = text[at..].find(words);
        assert!(found.is_some(), "“{words}” does not come next in: {text}");
        at += found.unwrap();
    }
}

#[test]
fn answers_of_all_rooms_come_on_one_card() {
    let mut visit = shop();
    press(&mut visit, "card-put", "divide");
    visit.shows(&["On the card “New part”, step 1."]);
    for (room, said) in [("thread", "step 2."), ("gear", "step 3."), ("bench", "step 4.")] {
        press(&mut visit, "room", room);
        if room == "bench" {
            press(&mut visit, "bench", "tilt");
        }
        press(&mut visit, "card-put", room);
        visit.shows(&[said]);
    }
    press(&mut visit, "room", "card");
    visit.shows(&[
        "Mind this",
        "the plate must go back 21°",
        "Die under power: slowest speed",
        "Wipe it clean.",
        "13 holes on the 39",
        "127 gaps, none cut",
        "Wash off layout fluid or flux, oil bare steel.",
        "0 of 4 steps done",
    ]);
    in_order(
        &visit,
        &[
            "Divide 127: Differential",
            "M6 × 0.75: Size it",
            "64 teeth, module 1 (25.4 DP), 20°: Blank",
            "Tilt by feeler",
            "Wash off",
        ],
    );
    press(&mut visit, "cd-down", "1");
    in_order(&visit, &["M6 × 0.75: Size it", "Divide 127: Differential", "64 teeth"]);
    press(&mut visit, "cd-undo", "");
    in_order(&visit, &["Divide 127: Differential", "M6 × 0.75: Size it"]);
    press(&mut visit, "cd-drop", "2");
    assert!(!visit.text().contains("M6 × 0.75"));
    visit.send("key", "Undo", "");
    stored(&mut visit);
    visit.shows(&["M6 × 0.75: Size it"]);
    // The wheels of the card stand in Divide, and nobody else's.
    press(&mut visit, "room", "divide");
    visit.shows(&["In this job: on the card 127"]);
    assert!(!visit.page.contains("data-value=\"223\""), "the clock's wheels are not this job's");
}

#[test]
fn steps_and_parts_are_ticked() {
    let mut visit = shop();
    visit.send("zone", "60", "");
    press(&mut visit, "card-put", "divide");
    press(&mut visit, "room", "card");
    typed(&mut visit, "cd-tick-1", "on");
    // 1 790 000 000 s is 21 September 2026, 14:13 in Greenwich.
    visit.shows(&["Done 21 Sep 2026, 15:13", "1 of 1 steps done"]);
    press(&mut visit, "cd-more", "1");
    visit.shows(&["Gap 1 cut", "Check it by hand"]);
    assert!(visit.page.contains("id=\"cd-cell-1-127\""));
    press(&mut visit, "cd-cut", "1 1");
    press(&mut visit, "cd-cell", "1 3");
    visit.shows(&["127 gaps, 2 cut", "Gap 2 cut"]);
    press(&mut visit, "cd-cell", "1 3");
    visit.shows(&["127 gaps, 1 cut"]);
    visit.send("key", "ArrowDown", "button cd-cell-1-5");
    assert_eq!(visit.asked[..1], ["focus cd-cell-1-10".to_owned()]);
    typed(&mut visit, "cd-parts-1", "12x");
    visit.shows(&["whole number from 0 to 10,000. You typed 12x", "127 gaps"]);
    typed(&mut visit, "cd-parts-1", "12");
    visit.shows(&["12 gaps, 1 cut"]);
}

#[test]
fn what_was_measured_goes_on_to_all_that_follows() {
    let mut visit = shop();
    press(&mut visit, "room", "card");
    press(&mut visit, "cd-begin", "");
    press(&mut visit, "cd-value-add", "");
    typed(&mut visit, "cd-name-1", "width");
    typed(&mut visit, "cd-drawing-1", "40");
    press(&mut visit, "cd-value-add", "");
    typed(&mut visit, "cd-name-2", "slot");
    typed(&mut visit, "cd-drawing-2", "= width - 0.1");
    visit.shows(&["39.900 mm", "It is followed by slot."]);
    // A small sum that stands on the value.
    press(&mut visit, "room", "bench");
    press(&mut visit, "bench", "tilt");
    typed(&mut visit, "be-tilt-span", "=width");
    visit.shows(&["0.524 mm"]);
    press(&mut visit, "card-put", "bench");
    press(&mut visit, "room", "card");
    visit.shows(&["It is followed by slot, step 1.", "0° 45′ under 40 mm: 0.524 mm"]);
    assert!(!visit.text().contains("Today this comes out otherwise"));
    typed(&mut visit, "cd-measured-1", "50.8");
    visit.shows(&[
        "50.700 mm",
        "Today this comes out otherwise.",
        "0° 45′ under 40 mm: 0.524 mm",
        "0.665 mm",
    ]);
    press(&mut visit, "cd-take", "3");
    assert!(!visit.text().contains("Today this comes out otherwise"));
    visit.shows(&["0.665 mm"]);
    press(&mut visit, "cd-undo", "");
    visit.shows(&["Today this comes out otherwise."]);
    // What cannot be, said at its field.
    typed(&mut visit, "cd-drawing-1", "= slot + 0.1");
    typed(&mut visit, "cd-measured-1", "");
    visit.shows(&["It goes round in a circle: width waits for slot waits for width."]);
    typed(&mut visit, "cd-drawing-1", "= bor");
    visit.shows(&[
        "No value of this card is called “bor”.",
        "It waits for “width”, which cannot be worked out.",
    ]);
    typed(&mut visit, "cd-drawing-1", "4x");
    visit.shows(&["The value must be a number. You typed x"]);
}

#[test]
fn another_shop_is_seen_and_the_card_keeps_what_it_said() {
    let mut visit = shop();
    press(&mut visit, "card-put", "divide");
    typed(&mut visit, "head-gears", "24 24 28 32 40 44 48 64 72 86 100");
    press(&mut visit, "room", "card");
    visit.shows(&[
        "13 holes on the 39",
        "Today this comes out otherwise.",
        "On the card",
        "Take the new answer",
    ]);
}

#[test]
fn the_printed_card_has_all_of_it() {
    let mut visit = shop();
    press(&mut visit, "card-put", "divide");
    press(&mut visit, "room", "card");
    assert!(!visit.page.contains("class=\"paper\""));
    press(&mut visit, "cd-cut", "1 1");
    visit.send("print", "before", "");
    let paper = visit.page.split("class=\"paper\"").nth(1).unwrap();
    assert_eq!(paper.matches("<figure").count(), 2, "plate and train");
    assert_eq!(paper.matches("class=\"write\"").count(), 4);
    assert!(
        paper.contains("<li class=\" cut\">1</li>") && paper.contains("<li class=\"ten\">120</li>"),
        "{paper}"
    );
    for words in [
        "Wash off layout fluid or flux, oil bare steel.",
        "13 holes on the 39",
        "the plate must go back 21°",
    ] {
        assert!(paper.contains(words), "{words}");
    }
    visit.send("print", "after", "");
    assert!(!visit.page.contains("class=\"paper\""));
    // In another room the browser's own print command prints that room.
    press(&mut visit, "room", "divide");
    visit.send("print", "before", "");
    assert!(!visit.page.contains("class=\"paper\""));
}

#[test]
fn the_demonstration_is_worked_out_and_has_a_shop_of_its_own() {
    let mut visit = Visit::to("card");
    visit.shows(&["Show a worked card"]);
    press(&mut visit, "cd-demo", "");
    visit.shows(&[
        "Divide 127: Differential",
        "13 holes on the 39",
        "Divide 223: Differential",
        "6 holes on the 33",
        "Divide 64: Plain",
        "10 holes on the 16",
        "Divide 38: Plain",
        "1 turn + 1 hole on the 19",
        "Divide 48: Plain",
        "Divide 365: Differential",
        "3 holes on the 27",
        "Turn the blank to: 64.500 mm, 2.5394 in",
        "5.990 mm",
        "Deburr, count the teeth",
    ]);
    assert!(!visit.text().contains("Today this comes out otherwise"), "{}", visit.text());
    assert!(!visit.text().contains("no answer to this"));
    // The person's own Shop is as empty as before.
    press(&mut visit, "room", "divide");
    visit.shows(&["Which plates came with the head?"]);
    press(&mut visit, "room", "card");
    press(&mut visit, "cd-leave", "");
    assert!(!visit.text().contains("Show a worked card"), "only where there is no card");
}

#[test]
fn cards_are_begun_left_opened_and_deleted() {
    let mut visit = shop();
    press(&mut visit, "room", "card");
    press(&mut visit, "cd-begin", "");
    typed(&mut visit, "cd-title", "Wheel, 127 teeth");
    typed(&mut visit, "cd-job", "Astronomical clock");
    assert!(
        visit.page.contains("aria-label=\"Open job card: Astronomical clock, Wheel, 127 teeth\"")
    );
    typed(&mut visit, "cd-new", "Face both sides");
    visit.send("key", "Enter", "field cd-new");
    stored(&mut visit);
    in_order(&visit, &["Face both sides", "Wash off"]);
    let id = visit
        .page
        .split("data-do=\"cd-delete\" data-value=\"")
        .nth(1)
        .unwrap()
        .split('"')
        .next()
        .unwrap()
        .to_owned();
    press(&mut visit, "cd-leave", "");
    visit.shows(&["Wheel, 127 teeth", "Astronomical clock, 0 of 1 steps done"]);
    press(&mut visit, "cd-delete", &id);
    assert!(visit.asked.iter().any(|effect| effect == &["drop ", &id].concat()));
    visit.shows(&["Deleted: Wheel, 127 teeth."]);
    press(&mut visit, "cd-undelete", "");
    assert!(visit.asked.iter().any(|effect| effect == &["undrop ", &id].concat()));
}

#[test]
fn where_no_answer_stands_open_nothing_goes_on_the_card() {
    let mut visit = shop();
    press(&mut visit, "way", "none");
    assert!(!visit.page.contains("data-do=\"card-put\""));
    press(&mut visit, "card-put", "divide");
    press(&mut visit, "room", "card");
    visit.shows(&["New card", "Show a worked card"]);
}

#[test]
fn a_division_follows_a_value_of_the_card() {
    let mut visit = shop();
    press(&mut visit, "room", "card");
    press(&mut visit, "cd-begin", "");
    press(&mut visit, "cd-value-add", "");
    typed(&mut visit, "cd-name-1", "teeth");
    press(&mut visit, "cd-kind-1", "number");
    typed(&mut visit, "cd-drawing-1", "64");
    press(&mut visit, "room", "divide");
    typed(&mut visit, "parts", "=teeth");
    visit.shows(&["10 holes on the 16"]);
    assert!(visit.page.contains("value=\"=teeth\""), "it stands there as typed");
    press(&mut visit, "card-put", "divide");
    // One more, from what it comes to.
    press(&mut visit, "step", "up");
    assert!(visit.page.contains("value=\"65\""));
    press(&mut visit, "room", "card");
    visit.shows(&["It is followed by step 1.", "10 holes on the 16", "64 gaps, none cut"]);
    assert!(!visit.text().contains("Today this comes out otherwise"));
    typed(&mut visit, "cd-measured-1", "48");
    visit.shows(&["Today this comes out otherwise.", "15 holes on the 18"]);
    // What cannot be divided is said by its own figures.
    typed(&mut visit, "cd-measured-1", "48.5");
    press(&mut visit, "cd-ask", "2");
    visit.shows(&["48.5"]);
}

#[test]
fn an_open_card_stands_in_place_of_the_demonstration() {
    let mut visit = shop();
    let rooms = ["divide", "thread", "gear"];
    for room in rooms {
        press(&mut visit, "room", room);
        visit.shows(&["In this job: clock"]);
    }
    press(&mut visit, "room", "card");
    press(&mut visit, "cd-begin", "");
    for room in rooms {
        press(&mut visit, "room", room);
        assert!(!visit.text().contains("In this job"), "{room}");
    }
    press(&mut visit, "room", "divide");
    press(&mut visit, "card-put", "divide");
    visit.shows(&["In this job: on the card 127"]);
    press(&mut visit, "room", "card");
    press(&mut visit, "cd-leave", "");
    press(&mut visit, "room", "gear");
    visit.shows(&["In this job: clock"]);
}

#[test]
fn cautions_say_which_steps_they_belong_to_and_the_last_cut_its_hour() {
    let mut visit = shop();
    press(&mut visit, "card-put", "divide");
    typed(&mut visit, "parts", "64");
    press(&mut visit, "card-put", "divide");
    typed(&mut visit, "parts", "127");
    press(&mut visit, "card-put", "divide");
    press(&mut visit, "room", "card");
    visit.shows(&["Steps 1, 3: Before the first cut: "]);
    assert!(!visit.text().contains("last at"));
    press(&mut visit, "cd-cut", "1 1");
    visit.shows(&["127 gaps, 1 cut, last at 21 Sep 2026, 14:1"]);
    press(&mut visit, "cd-undo", "");
    assert!(!visit.text().contains("last at"));
}

#[test]
fn keys_in_other_rooms_pass_the_cards_on_unread() {
    let mut visit = shop();
    press(&mut visit, "card-put", "divide");
    let cards = |visit: &Visit| {
        let start = visit.state.find("cards\u{1f}").unwrap();
        visit.state[start..].split('\u{1e}').next().unwrap().to_owned()
    };
    let before = cards(&visit);
    assert!(before.contains("13 holes on the 39"));
    typed(&mut visit, "parts", "64");
    press(&mut visit, "room", "bench");
    assert_eq!(cards(&visit), before);
    // They are not read: what is no card any more is met only where cards count.
    visit.state = visit.state.replace(&before, "cards\u{1f}{}\u{1f}{}");
    typed(&mut visit, "be-tilt-span", "41");
    visit.shows(&["New part"]);
    press(&mut visit, "room", "card");
    assert!(!visit.text().contains("13 holes on the 39"));
}
