//! The thread dial by playing it through: spindle, screw, carriage and dial are moved
//! in whole steps; the nuts close where the screw lets them, and the tool is then in
//! its groove or not.
use handturn::measure::Length;
use handturn::number::Fraction;
use handturn::thread::half_nuts::{Closing, ThreadDial, closes, closing, dial_gear};

/// Marks at which the tool always meets its groove, by playing `turns` turns of the
/// dial for a thread of `lead` on a screw of `screw`, both in the same small unit.
/// Lengths are counted in that unit divided by `lead × screw`, so all stays whole.
fn played(lead: i64, screw: i64, dial: ThreadDial, turns: i64) -> Vec<bool> {
    let (teeth, marks) = (i64::from(dial.teeth), i64::from(dial.marks));
    let mut good = vec![true; dial.marks as usize];
    // The spindle stands still and the carriage is drawn back by hand, open, past one
    // of the screw's threads after the other; then nuts close, and spindle and screw run
    // until the tool is back where it was touched on. It is in its groove when the
    // spindle then stands at its first angle.
    for passed in 0..turns * teeth {
        let (angle_of_dial, a_mark) = (passed % teeth, teeth / marks);
        if angle_of_dial % a_mark != 0 {
            continue;
        }
        let mark = (angle_of_dial / a_mark) as usize;
        // Back by `passed` threads of the screw; forward again at `lead` a turn.
        let back = passed * screw;
        let spindle_in_groove = back % lead == 0;
        good[mark] &= spindle_in_groove;
    }
    good
}

#[test]
fn every_mark_agrees_with_playing_it_through() {
    let dials =
        [(32, 8, 4), (16, 8, 4), (16, 4, 2), (24, 12, 6), (20, 10, 5), (60, 12, 4), (1, 1, 1)];
    let mut kinds = std::collections::BTreeSet::new();
    for (teeth, marks, numbered) in dials {
        let dial = ThreadDial { teeth, marks, numbered };
        for screw in [3_i64, 6, 12, 25, 60, 127] {
            for lead in (1..=150).chain([254, 381, 508, 635]) {
                let unit = |n: i64| Length::from_mm(Fraction::new(n, 20).expect("small"));
                let turns = lead + 1;
                let good = played(lead, screw, dial, turns);
                let found: Vec<bool> = (0..marks)
                    .map(|mark| closes(unit(lead), unit(screw), dial, mark).expect("a dial"))
                    .collect();
                let asked = closing(unit(lead), unit(screw), dial).expect("a dial");
                assert_eq!(found, good, "lead {lead}, screw {screw}, {dial:?}: {asked:?}");
                let kept = dial_gear(unit(lead), unit(screw), &[teeth]).expect("a dial");
                assert_eq!(kept.is_some(), good[0], "lead {lead}, screw {screw}, {dial:?}");
                if let Closing::Never { threads } = asked {
                    let meets = (1..).find(|n| n * screw % lead == 0);
                    assert_eq!(Some(i64::from(threads)), meets, "lead {lead}, screw {screw}");
                }
                kinds.insert(format!("{asked:?}").split(' ').next().map(str::to_owned));
            }
        }
    }
    assert_eq!(kinds.len(), 6, "not every kind came up: {kinds:?}");
}
