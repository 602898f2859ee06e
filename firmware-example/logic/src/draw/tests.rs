use super::*;
use handturn::handle::Distance;
use handturn::{Cause, Error};
extern crate std;
use handturn::error::Field;
use std::vec::Vec;

/// Every screen with the longest numbers it can have: a text that does not fit
/// stops the test where it is written.
fn all() -> Vec<View> {
    let at = Position { number: 10_000, of: 10_000 };
    let home = Position { number: 10_001, of: 10_000 };
    let mut views = std::vec![View::Lost, View::NoneFits, View::Done { of: 10_000 }];
    for yes in [false, true] {
        views.extend([
            View::Believe { at, cut: yes },
            View::MemoryFault { working: yes },
            View::OnTarget { at, closing: yes, unkept: false },
            View::OnTarget { at, closing: yes, unkept: true },
            View::ToCut { at, one_press: yes, unkept: yes },
            View::ToCut { at, one_press: yes, unkept: !yes },
            View::Reference { at, fits: yes },
            View::Reference { at: home, fits: yes },
        ]);
    }
    views.extend([View::Restarted { at }, View::Errors { tenths: None }]);
    views.push(View::Errors { tenths: Some([12_960_000, 0, 5]) });
    for side in [Sense::Clockwise, Sense::Anticlockwise] {
        views.push(View::Begin { side });
        for (turns, counts) in [(0, 0), (0, 9), (0, 39_999), (3, 756), (12, 2_399), (500, 39_999)] {
            for (past, closing) in [(false, false), (false, true), (true, false), (true, true)] {
                let left = Distance { sense: side, turns, counts };
                let way = Way { left, per_turn: 40_000, past };
                let to = if closing { home } else { at };
                views.push(View::Going { to, way, closing, unkept: !past });
            }
        }
    }
    for item in Item::ALL {
        let settings = Settings {
            parts: 10_000,
            ratio_handle: 100_000,
            ratio_work: 100_000,
            per_turn: 40_000,
            side: Sense::Anticlockwise,
            slack: 500,
            window: 19_999,
            ..Settings::default()
        };
        views.push(View::Setup { settings, item });
        if let Some(digits) = item.digits() {
            let entry = Entry::new(settings.number(item), digits);
            views.push(View::Number { item: Some(item), ring: false, entry });
        }
    }
    for ring in [false, true] {
        views.push(View::Number { item: None, ring, entry: Entry::new(360, 5) });
    }
    views.extend(Choice::ALL.map(|choice| View::Menu { choice }));
    views
}

#[test]
fn every_text_of_every_screen_fits() {
    let range = Cause::OutOfRange { least: 1, greatest: 100_000 };
    let notes = [
        Note::NotOn,
        Note::TooSoon,
        Note::NotNow,
        Note::Refused(Error::new(Field::Ratio, range)),
        Note::Refused(Error::new(Field::Slack, range)),
        Note::Refused(Error::new(Field::Counts, Cause::Conflict)),
        Note::Refused(Error::new(Field::Ratio, Cause::Zero)),
    ];
    for view in all() {
        let plain = draw(&view, None);
        for note in notes {
            assert!(draw(&view, Some(note)) != plain, "{view:?} {note:?}");
        }
    }
}

#[test]
fn screens_that_say_different_things_look_different() {
    let frames: Vec<_> = all().iter().map(|view| (*view, draw(view, None))).collect();
    for (k, (view, frame)) in frames.iter().enumerate() {
        for (other_view, other) in &frames[..k] {
            assert!(frame != other || view == other_view, "{view:?} {other_view:?}");
        }
    }
}
