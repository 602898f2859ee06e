//! Cards as files and in addresses.
use super::device::*;
use crate::card::*;
use serde_json::{Value, json};

#[test]
fn a_file_comes_back_whole_or_is_refused_with_its_place() {
    let mut card = wheel();
    card.steps[0].cut.mark(1, 40, true);
    card.steps[1].done_ms = Some(1_700_000_000_000);
    let text = share::file(&card);
    assert!(text.starts_with("{\"kind\":\"handturn-card\",\"card\":{\"version\":2,\"title\":"));
    assert_eq!(share::from_file(&text), Ok(card.clone()));
    for end in (0..text.len()).filter(|end| text.is_char_boundary(*end)) {
        assert!(share::from_file(&text[..end]).is_err(), "{end}");
    }
    let half = text.len() / 2;
    assert_eq!(
        share::from_file(&text[..half]),
        Err(Refused::Damaged(text[..half].chars().count() + 1))
    );
    let changed = |change: &dyn Fn(&mut Value)| {
        let mut value: Value = serde_json::from_str(&text).unwrap();
        change(&mut value);
        share::from_file(&value.to_string()).unwrap_err()
    };
    for (change, wanted) in [
        (&(|v: &mut Value| v["kind"] = json!("else")) as &dyn Fn(&mut Value), Refused::Foreign),
        (&|v| v["card"]["version"] = json!(3), Refused::Newer),
        (&|v| v["card"]["notes"] = json!(7), Refused::In(Part::Head)),
        (&|v| v["card"] = json!(null), Refused::In(Part::Head)),
        (&|v| v["card"]["values"][1]["kind"] = json!("weight"), Refused::In(Part::Value(2))),
        (&|v| v["card"]["steps"][0]["answer"]["lines"][1] = json!(1), Refused::In(Part::Step(1))),
        (&|v| v["card"]["steps"][1]["cut"] = json!([[1, 2]]), Refused::In(Part::Step(2))),
        (&|v| v["card"]["steps"][1]["id"] = json!(3), Refused::In(Part::Step(2))),
        (
            &|v| v["card"]["steps"][0]["text"] = json!("x".repeat(401)),
            Refused::Long((Part::Step(1), 400)),
        ),
        (&|v| v["card"]["notes"] = json!("ü".repeat(4001)), Refused::Long((Part::Head, 4000))),
        (
            &|v| v["card"]["values"] = json!(vec![v["card"]["values"][0].clone(); 33]),
            Refused::Many((Part::Head, 32)),
        ),
        (
            &|v| v["card"]["steps"][0]["answer"]["lines"] = json!(vec!["x"; 121]),
            Refused::Many((Part::Step(1), 120)),
        ),
    ] {
        let refused = changed(change);
        assert_eq!(refused, wanted);
        let said = crate::words::card::store::refused("a.json", &refused);
        assert!(said.starts_with("a.json was not opened. "), "{said}");
    }
    assert_eq!(share::from_file(""), Err(Refused::Foreign));
    let run = crate::keep::file(crate::keep::tests::run(64, 3));
    assert_eq!(share::from_file(&run), Err(Refused::ARun));
    let heads = "{\"kind\":\"handturn-heads\",\"version\":1,\"heads\":[]}";
    assert_eq!(share::from_file(heads), Err(Refused::Heads));
}

#[test]
fn a_link_holds_a_card_and_no_changed_letter_goes_unseen() {
    let card = wheel();
    let link = share::link(&card).unwrap();
    assert!(link.len() < 700, "{}", link.len());
    assert!(link.bytes().all(|b| b.is_ascii_alphanumeric() || b"=-_".contains(&b)));
    assert_eq!(share::from_link(&link), Some(Ok(card)));
    assert_eq!(share::from_link("room=card"), None);
    assert_eq!(share::from_link("card=2xyz"), Some(Err(Refused::Newer)));
    for end in 5..link.len() {
        assert_eq!(share::from_link(&link[..end]), Some(Err(Refused::Cut)), "{end}");
    }
    for at in 6..link.len() {
        for letter in ["A", "b", "7", "_", "!", "%"] {
            let mut other = link.clone();
            other.replace_range(at..=at, letter);
            if other != link {
                assert_eq!(share::from_link(&other), Some(Err(Refused::Cut)), "{at} {letter}");
            }
        }
    }
    let mut long = wheel();
    // Letters that repeat nothing.
    let digits = |mut seed: u32| {
        std::iter::repeat_with(move || {
            seed = seed.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
            char::from((seed >> 24) as u8 % 89 + 33)
        })
        .take(3_900)
    };
    long.notes = digits(3).collect();
    long.steps[0].text = digits(5).take(390).collect();
    long.steps[0].answer.as_mut().unwrap().lines = (0..3).map(|k| digits(k).collect()).collect();
    let letters = share::link(&long).unwrap_err();
    assert!(letters > LONGEST_LINK);
    assert!(crate::words::card::store::too_long(letters).contains("8,000"));
}
