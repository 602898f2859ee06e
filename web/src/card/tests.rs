//! Cards against a store that is killed, full and shared.
mod device;
mod handed;
mod strange;

use super::log::from_lines;
use super::*;
use crate::seam::Effect;
use device::*;
use handturn::card::Kind;

#[test]
fn every_change_is_stored_taken_back_and_done_again_and_survives_a_restart() {
    let (mut store, mut held, mut tab) = device();
    let mut states = vec![tab.card()];
    for change in changes() {
        tab.change(change.clone());
        tab.settle(&mut store, &mut held);
        assert_ne!(Some(&tab.card()), states.last(), "{change:?} changes something");
        states.push(tab.card());
    }
    let again = |tab: &mut Tab, store: &mut Store, held: &mut Held| {
        // Killed: nothing is released, nothing is said.
        held.clear();
        let kept = tab.fields.kept();
        *tab = Tab::open(tab.me + 1, store, &kept);
        tab.settle(store, held);
    };
    let count = states.len() - 1;
    for state in states.iter().rev().skip(1) {
        tab.change(Change::Undo);
        tab.settle(&mut store, &mut held);
        assert_eq!(tab.card(), *state);
        again(&mut tab, &mut store, &mut held);
        assert_eq!(tab.card(), *state, "after a restart");
    }
    assert_eq!(tab.cards.open().unwrap().can(), (false, true));
    tab.change(Change::Undo);
    assert_eq!(tab.cards.open().unwrap().note(), Note::NotNow);
    for state in states.iter().skip(1) {
        tab.change(Change::Redo);
        tab.settle(&mut store, &mut held);
        again(&mut tab, &mut store, &mut held);
        assert_eq!(tab.card(), *state);
    }
    assert_eq!(count, changes().len());
    let tick = Change::Tick((4, true));
    tab.change(tick);
    assert_eq!(tab.card().steps[1].done_ms, Some(tab.clock), "with its time");
}

#[test]
fn typing_in_one_field_is_one_change_however_fast_the_store_is() {
    for each in [1, 3, 100] {
        let (mut store, mut held, mut tab) = device();
        let word = "Wheel of 127";
        for (k, end) in (1..=word.len()).enumerate() {
            tab.clock -= 4_900;
            tab.change(Change::Title(word[..end].to_owned()));
            if k % each == 0 {
                // Only one answer of the store comes between two keys.
                if let Some(effect) = tab.asked.pop_front() {
                    tab.carry_out(effect, &mut store, &mut held);
                }
            }
        }
        assert_eq!(tab.card().title, word);
        tab.settle(&mut store, &mut held);
        assert!(!tab.cards.open().unwrap().saving());
        let (log, _) = from_lines(&store.lines(tab.cards.open().unwrap().id()).unwrap()).unwrap();
        assert_eq!(log.card(), tab.card());
        tab.change(Change::Undo);
        tab.settle(&mut store, &mut held);
        assert_eq!(tab.card(), wheel(), "{each}");
        let (log, _) = from_lines(&store.lines(tab.cards.open().unwrap().id()).unwrap()).unwrap();
        assert_eq!(log.card(), wheel(), "{each}");
    }
}

#[test]
fn a_long_log_is_made_short_and_nothing_of_the_card_is_lost() {
    let (mut store, mut held, mut tab) = device();
    let id = tab.cards.open().unwrap().id().to_owned();
    let mut longest = 0;
    for k in 0..2_000_u32 {
        let part = k % 127 + 1;
        let cut = k / 127 % 2 == 0;
        tab.change(Change::Cut((3, (part, (part, cut)))));
        if k % 7 == 0 {
            tab.change(Change::Undo);
        }
        if k % 14 == 0 {
            tab.change(Change::Redo);
        }
        // The store answers only now and then.
        if k % 5 == 0 {
            tab.settle(&mut store, &mut held);
            longest = longest.max(store.runs[&id].2.len());
        }
    }
    tab.settle(&mut store, &mut held);
    assert!(longest < 400, "{longest}");
    let (log, _) = from_lines(&store.lines(&id).unwrap()).unwrap();
    assert_eq!(log.card(), tab.card());
    assert!(log.stand.len() >= 60 && tab.cards.open().unwrap().can().0, "the last can be undone");
}

#[test]
fn a_killed_page_keeps_all_that_was_confirmed() {
    let (mut store, mut held, mut tab) = device();
    let mut confirmed = tab.card();
    for (k, change) in changes().into_iter().enumerate() {
        tab.change(change);
        if k % 3 == 2 {
            // Killed before the store had it.
            held.clear();
            let kept = tab.fields.kept();
            tab = Tab::open(tab.me + 1, &store, &kept);
            tab.settle(&mut store, &mut held);
            assert_eq!(tab.card(), confirmed);
        } else {
            // A change of what was lost with the page is refused, any other is being saved.
            let open = tab.cards.open().unwrap();
            assert!(open.saving() != (open.note() == Note::NotNow));
            tab.settle(&mut store, &mut held);
            assert!(!tab.cards.open().unwrap().saving());
            confirmed = tab.card();
        }
    }
}

#[test]
fn a_full_store_is_said_at_once_and_all_of_it_is_kept_when_there_is_room() {
    let (mut store, mut held, mut tab) = device();
    store.full = true;
    let all = changes();
    tab.change(all[0].clone());
    tab.settle(&mut store, &mut held);
    assert_eq!(tab.cards.open().unwrap().unsaved(), "full");
    for change in &all[1..] {
        tab.change(change.clone());
        assert!(tab.asked.is_empty());
    }
    let card = tab.card();
    let file = tab.cards.file();
    tab.asked.extend(file);
    tab.settle(&mut store, &mut held);
    assert_eq!(share::from_file(&tab.files[0]), Ok(card.clone()));
    // Another card comes on screen; this one stays beside it until it is stored.
    let id = tab.cards.open().unwrap().id().to_owned();
    tab.begin(Card::new("Other"));
    tab.settle(&mut store, &mut held);
    assert_eq!(tab.cards.open().unwrap().unsaved(), "full");
    let back = tab.cards.resume(&mut tab.fields, &id);
    tab.asked.extend(back);
    assert_eq!(tab.card(), card);
    let retried = tab.cards.retry();
    tab.asked.extend(retried);
    tab.settle(&mut store, &mut held);
    assert_eq!(tab.cards.open().unwrap().unsaved(), "full", "still");
    store.full = false;
    let retried = tab.cards.retry();
    tab.asked.extend(retried);
    tab.settle(&mut store, &mut held);
    let open = tab.cards.open().unwrap();
    assert_eq!((open.unsaved(), open.saving(), open.lock()), ("", false, Lock::Held));
    assert_eq!(from_lines(&store.lines(&id).unwrap()).unwrap().0.card(), card);
    let other = tab.cards.list().iter().find(|entry| entry.title == "Other").unwrap().id.clone();
    let back = tab.cards.resume(&mut tab.fields, &other);
    tab.asked.extend(back);
    let retried = tab.cards.retry();
    tab.asked.extend(retried);
    tab.settle(&mut store, &mut held);
    assert_eq!(store.runs.len(), 2, "a card begun while it was full");
}

#[test]
fn without_a_store_cards_work_and_say_so() {
    let mut tab = Tab::open(1, &Store::default(), "");
    tab.hear("storage", "refused", "closed");
    tab.begin(wheel());
    assert!(
        !tab.asked.iter().any(|effect| matches!(effect, Effect::Begin(..) | Effect::Claim(..)))
    );
    assert_eq!(tab.cards.open().unwrap().unsaved(), "closed");
    tab.change(Change::Tick((4, true)));
    assert_eq!(tab.card().done(), (1, 2));
}

#[test]
fn of_two_tabs_one_writes_and_nothing_is_lost() {
    let (mut store, mut held, mut one) = device();
    let kept = one.fields.kept();
    let mut two = Tab::open(2, &store, &kept);
    two.settle(&mut store, &mut held);
    assert_eq!(two.cards.open().unwrap().lock(), Lock::Elsewhere);
    two.change(Change::Tick((4, true)));
    assert_eq!(two.cards.open().unwrap().note(), Note::Taken);
    assert_eq!((two.card(), two.asked.len()), (wheel(), 0));
    // What did not count can become a card of its own; taking back makes none.
    assert_eq!(two.cards.uncounted().unwrap().title, wheel().title);
    assert!(two.cards.keep_uncounted(&mut two.fields, false, 0).is_empty());
    two.change(Change::Undo);
    assert_eq!(two.cards.uncounted(), None);
    one.change(Change::Tick((4, true)));
    one.settle(&mut store, &mut held);
    // What one stored is told to the other.
    let id = one.cards.open().unwrap().id().to_owned();
    two.hear("stored", &id, &store.lines(&id).unwrap());
    assert_eq!(two.card(), one.card());
    // The second takes over; the first notices at its next press, before it is told.
    let taken = two.cards.take_over();
    two.asked.extend(taken);
    two.settle(&mut store, &mut held);
    assert_eq!(two.cards.open().unwrap().lock(), Lock::Held);
    two.change(Change::Metal("Steel".to_owned()));
    two.settle(&mut store, &mut held);
    one.change(Change::Metal("Tin".to_owned()));
    one.change(Change::Job("Another".to_owned()));
    one.settle(&mut store, &mut held);
    let open = one.cards.open().unwrap();
    assert_eq!((open.lock(), open.note()), (Lock::Elsewhere, Note::Taken));
    assert_eq!(one.card(), two.card());
    assert_eq!(one.card().metal, "Steel");
    // One goes on typing, which does not count either; as a copy all of it is kept.
    one.change(Change::Notes("Bored".to_owned()));
    assert_eq!(one.cards.uncounted().unwrap().notes, "Bored");
    let copied = one.cards.keep_uncounted(&mut one.fields, true, 5);
    one.asked.extend(copied);
    one.settle(&mut store, &mut held);
    let copy = one.card();
    assert_eq!((&*copy.metal, &*copy.job, &*copy.notes), ("Tin", "Another", "Bored"));
    assert_eq!(copy.title, wheel().title + " (copy)");
    assert_eq!((store.runs.len(), one.cards.uncounted()), (2, None));
    assert_eq!(from_lines(&store.lines(&id).unwrap()).unwrap().0.card(), two.card());
}

#[test]
fn a_lock_lost_while_an_entry_is_on_its_way_leaves_both_tabs_at_the_truth() {
    for first in ["lost", "kept"] {
        let (mut store, mut held, mut one) = device();
        let kept = one.fields.kept();
        one.change(Change::Metal("Tin".to_owned()));
        one.change(Change::Job("Another".to_owned()));
        let append = one.asked.pop_front().unwrap();
        let mut two = Tab::open(2, &store, &kept);
        let id = one.cards.open().unwrap().id().to_owned();
        if first == "lost" {
            one.hear("lock", &id, "lost");
            one.carry_out(append, &mut store, &mut held);
        } else {
            one.carry_out(append, &mut store, &mut held);
            one.hear("lock", &id, "lost");
        }
        held.clear();
        two.settle(&mut store, &mut held);
        one.settle(&mut store, &mut held);
        let truth = from_lines(&store.lines(&id).unwrap()).unwrap().0.card();
        assert_eq!(truth.metal, "Tin", "{first}: it was on its way before the lock went");
        assert_eq!((one.card(), two.card()), (truth.clone(), truth), "{first}");
        assert_eq!(
            one.cards.open().unwrap().note(),
            Note::Taken,
            "{first}: the job was not counted"
        );
        assert!(!one.cards.open().unwrap().saving());
        let kept = one.cards.keep_uncounted(&mut one.fields, true, 5);
        assert!(!kept.is_empty(), "{first}");
        assert_eq!((&*one.card().metal, &*one.card().job), ("Tin", "Another"), "{first}");
    }
}

#[test]
fn a_card_taken_out_comes_back_and_one_taken_out_elsewhere_is_not_lost() {
    let (mut store, mut held, mut one) = device();
    let id = one.cards.open().unwrap().id().to_owned();
    let kept = one.fields.kept();
    let mut two = Tab::open(2, &store, &kept);
    two.settle(&mut store, &mut held);
    let gone = one.cards.drop(&mut one.fields, &id);
    one.asked.extend(gone);
    one.settle(&mut store, &mut held);
    assert!(one.cards.open().is_none() && one.cards.list().is_empty() && store.runs.is_empty());
    two.hear("gone", &id, "");
    let open = two.cards.open().unwrap();
    assert_eq!((open.note(), open.unsaved(), two.card()), (Note::Gone, "gone", wheel()));
    let back = one.cards.undrop();
    one.asked.extend(back);
    one.settle(&mut store, &mut held);
    assert_eq!(one.card(), wheel());
    assert!(one.cards.dropped().is_none());
    // Or the other tab puts it back.
    let gone = one.cards.drop(&mut one.fields, &id);
    one.asked.extend(gone);
    one.settle(&mut store, &mut held);
    let retried = two.cards.retry();
    two.asked.extend(retried);
    two.settle(&mut store, &mut held);
    assert_eq!(from_lines(&store.lines(&id).unwrap()).unwrap().0.card(), wheel());
    assert_eq!(two.cards.open().unwrap().unsaved(), "");
}

#[test]
fn a_card_out_of_a_link_waits_to_be_kept() {
    let (mut store, mut held, mut tab) = device();
    let card = Card::new("Rim, 365 marks");
    tab.hear("open", &share::link(&card).unwrap(), "site");
    assert_eq!(tab.fields.get("room"), "card");
    assert_eq!(tab.cards.offered(), Some(&card));
    assert_eq!(store.runs.len(), 1, "nothing is stored yet");
    let kept = tab.cards.keep_offered(&mut tab.fields, 77);
    tab.asked.extend(kept);
    tab.settle(&mut store, &mut held);
    assert_eq!((tab.card(), store.runs.len()), (card, 2));
    assert!(tab.cards.offered().is_none());
    tab.hear("open", "card=1AAAA", "site");
    assert_eq!(tab.cards.refused(), Some(("", &Refused::Cut)));
}

#[test]
fn fields_follow_the_values_in_force() {
    let (mut store, mut held, mut tab) = device();
    assert_eq!((tab.fields.get("value-bore"), tab.fields.get("value-plug")), ("6", "5.9"));
    tab.change(Change::Value(item(1, "bore", "6", "6.02")));
    assert_eq!((tab.fields.get("value-bore"), tab.fields.get("value-plug")), ("6.02", "5.92"));
    tab.change(Change::Value(item(1, "bore", "= plug", "")));
    assert!(!tab.fields.has("value-bore") && !tab.fields.has("value-plug"), "a cycle has no value");
    tab.change(Change::Undo);
    let angle = Item { kind: Kind::Angle, ..item(7, "lean", "= 0°20' / 3", "") };
    tab.change(Change::Value(angle));
    assert_eq!(tab.fields.get("value-lean"), "1/9");
    tab.settle(&mut store, &mut held);
    drop(tab.cards.leave(&mut tab.fields));
    assert!(!tab.fields.iter().any(|(name, _)| name.starts_with("value-")));
}

#[test]
fn bounds_hold_and_are_said() {
    let (_, _, mut tab) = device();
    let before = tab.card();
    for (change, wanted) in [
        (Change::Title("x".repeat(401)), Note::Long(400)),
        (Change::Notes("x".repeat(4_001)), Note::Long(4_000)),
        (Change::Tick((99, true)), Note::NotNow),
        (Change::DropValue(99), Note::NotNow),
        (Change::Cut((4, (1, (1, true)))), Note::NotNow),
    ] {
        tab.change(change.clone());
        assert_eq!((tab.cards.open().unwrap().note(), tab.card()), (wanted, before.clone()));
        assert!(crate::words::card::store::note(wanted).is_some());
    }
    for id in 100..130 {
        tab.change(Change::Value(item(id, "v", "1", "")));
    }
    tab.change(Change::Value(item(130, "v", "1", "")));
    assert_eq!(tab.cards.open().unwrap().note(), Note::Many(32));
}

#[test]
fn marks_are_kept_as_ranges() {
    // Against a plain set, from a fixed seed.
    let (mut cut, mut plain) = (Cut::default(), std::collections::BTreeSet::new());
    let mut seed = 7_u32;
    let mut next = |below: u32| {
        seed = seed.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
        (seed >> 8) % below
    };
    for _ in 0..3_000 {
        let from = next(60) + 1;
        let to = (from + next(9)).min(60);
        let on = next(2) == 0;
        cut.mark(from, to, on);
        for n in from..=to {
            if on {
                plain.insert(n)
            } else {
                plain.remove(&n)
            };
        }
        assert_eq!(cut.count() as usize, plain.len());
        assert!((1..=60).all(|n| cut.has(n) == plain.contains(&n)));
        assert!(cut.0.windows(2).all(|pair| pair[0].1 + 1 < pair[1].0), "{cut:?}");
    }
}
