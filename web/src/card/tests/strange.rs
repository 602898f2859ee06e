//! What is damaged, older, newer or written by a stranger, in the store.
use super::device::*;
use crate::card::log::{Unread, from_lines};
use crate::card::*;
use crate::seam::Effect;
use serde_json::{Value, json};

/// The lines of the wheel's card after every change.
fn stored() -> String {
    let (mut store, mut held, mut tab) = device();
    for change in changes() {
        tab.change(change);
    }
    tab.settle(&mut store, &mut held);
    store.lines(tab.cards.open().unwrap().id()).unwrap()
}

#[test]
fn a_damaged_card_is_left_out_and_said_and_the_others_stay() {
    let good = stored();
    let (mut store, mut held) = (Store::default(), Held::new());
    let event = |text: &str| text.replacen("\"move-step\":[6,0]", "\"move-step\":[9,0]", 1);
    let rows = [
        ("card-1", good.clone(), Fault::None),
        ("card-2", event(&good), Fault::Partly),
        ("card-3", good.replacen("\"title\":", "\"titel\":", 1), Fault::Damaged),
        ("card-4", String::new(), Fault::Damaged),
        ("card-5", good.replacen("16\n", "17\n", 1), Fault::Partly),
        ("card-6", good.replacen("\"version\":2", "\"version\":3", 1), Fault::Newer),
        ("card-7", "0\n{\"version\":9,\"of\":\"a later form\"}".to_owned(), Fault::Newer),
    ];
    let mut tab = Tab::open(1, &store, "");
    for (id, lines, fault) in &rows {
        tab.hear("stored", id, lines);
        let entry = tab.cards.list().last().unwrap();
        assert_eq!((&*entry.id, entry.fault), (*id, *fault));
        assert!(tab.asked.is_empty(), "{id}: the store is left as it is");
        if *fault != Fault::None {
            assert!(crate::words::card::store::fault(*fault).is_some());
        }
    }
    // One that can't be used is not opened; one that a newer page wrote is not even taken out.
    for (id, lines, fault) in &rows {
        let looked = tab.cards.resume(&mut tab.fields, id);
        assert_eq!(looked, [Effect::Look((*id).to_owned())]);
        tab.hear("stored", id, lines);
        assert_eq!(tab.cards.open().is_some(), *fault == Fault::None, "{id}");
        let left = tab.cards.leave(&mut tab.fields);
        drop(left);
        tab.asked.clear();
    }
    let newer = tab.cards.drop(&mut tab.fields, "card-6");
    assert_eq!(newer, []);
    assert_eq!(tab.cards.list().len(), rows.len());
    // What came before the damage can be read, as a card of its own.
    let (id, lines, _) = &rows[1];
    tab.asked.extend(tab.cards.rescue(id));
    let _ = tab.asked.pop_front();
    tab.hear("stored", id, lines);
    tab.settle(&mut store, &mut held);
    assert_eq!(tab.card().title, "Wheel 127");
    assert_eq!(tab.card().steps.last().unwrap().text, "Oil it well");
    assert_ne!(tab.cards.open().unwrap().id(), *id);
}

#[test]
fn the_form_without_metal_is_read_and_written_anew_when_it_is_opened() {
    let old = {
        let mut base: Value =
            serde_json::from_str(&crate::keep::json::write(&mut wheel())).unwrap();
        base["version"] = json!(1);
        assert!(base.as_object_mut().unwrap().remove("metal").is_some());
        base.to_string()
    };
    let mut store = Store::default();
    let tick = "{\"what\":{\"tick\":[4,true]},\"at_ms\":5,\"joins\":false}".to_owned();
    store.runs.insert("card-9".to_owned(), (old.clone(), 0, vec![tick]));
    let mut held = Held::new();
    let mut tab = Tab::open(1, &store, "");
    assert_eq!(tab.cards.list()[0].title, "Wheel, 127 teeth");
    assert_eq!(store.runs["card-9"].0, old, "looking at it changes nothing");
    tab.asked.extend(tab.cards.resume(&mut tab.fields, "card-9"));
    tab.settle(&mut store, &mut held);
    let mut wanted = Card { metal: String::new(), ..wheel() };
    wanted.steps[1].done_ms = Some(5);
    assert_eq!(tab.card(), wanted);
    assert!(store.runs["card-9"].0.starts_with("{\"version\":2,"));
    assert_eq!(from_lines(&store.lines("card-9").unwrap()).unwrap().0.card(), wanted);
    tab.change(Change::Undo);
    tab.settle(&mut store, &mut held);
    assert_eq!(tab.card().done(), (0, 2), "and its changes can still be taken back");
    // A file of that form is read too.
    let file = format!("{{\"kind\":\"handturn-card\",\"card\":{old}}}");
    assert_eq!(share::from_file(&file), Ok(Card { metal: String::new(), ..wheel() }));
    // The earlier form knows no metal: one without it is damaged in today's form.
    let file = file.replacen("\"version\":1", "\"version\":2", 1);
    assert_eq!(share::from_file(&file), Err(Refused::In(Part::Head)));
    let file = file.replacen("\"version\":2", "\"version\":3", 1);
    assert_eq!(share::from_file(&file), Err(Refused::Newer));
}

#[test]
fn what_a_stranger_wrote_into_the_store_is_refused() {
    let good = stored();
    assert!(from_lines(&good).is_ok());
    for end in (0..good.len()).filter(|end| good.is_char_boundary(*end)) {
        assert!(from_lines(&good[..end]).is_err(), "{end}");
    }
    let refused =
        |text: &str, wanted| assert_eq!(from_lines(text).err(), Some(wanted), "{text:.80}");
    refused("", Unread::NotACard);
    refused("0\n{}", Unread::NotACard);
    refused("0\n{\"version\":0}", Unread::NotACard);
    refused("0\n{\"version\":\"2\"}", Unread::NotACard);
    refused(&good.replacen("16\n", "15\n", 1), Unread::Count);
    refused(&good.replacen("\n1 ", "\n2 ", 1), Unread::Change(1));
    refused(&good.replacen("[3,[1,[40,true]]]", "[3,[0,[40,true]]]", 1), Unread::Change(12));
    refused(&good.replacen("[3,[1,[40,true]]]", "[3,[1,[128,true]]]", 1), Unread::Change(12));
    refused(&good.replacen("\"cut\":[]", "\"cut\":[[2,1]]", 1), Unread::NotACard);
    refused(&good.replacen("\"parts\":127", "\"parts\":10001", 1), Unread::NotACard);
    refused(&good.replacen("\"id\":2", "\"id\":1", 1), Unread::NotACard);
    let long = |letters: usize| format!("\"title\":\"{}\"", "x".repeat(letters));
    refused(&good.replacen("\"title\":\"Wheel, 127 teeth\"", &long(401), 1), Unread::NotACard);
    assert!(from_lines(&good.replacen("\"title\":\"Wheel, 127 teeth\"", &long(400), 1)).is_ok());
    let undo = "{\"what\":\"undo\",\"at_ms\":1,\"joins\":false}";
    let base = good.split('\n').nth(1).unwrap();
    refused(&format!("1\n{base}\n0 {undo}"), Unread::Change(0));
    let tick = "{\"what\":{\"tick\":[4,true]},\"at_ms\":1,\"joins\":false}";
    let many: String = (0..2_001).map(|k| format!("\n{k} {tick}")).collect();
    refused(&format!("2001\n{base}{many}"), Unread::Change(2_000));
}
