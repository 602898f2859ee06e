//! Three buttons: debounced, told as short and long presses.

/// A button must read the same for so long before it is believed.
const SETTLE_MS: u64 = 20;

/// Held for so long it is a long press.
const LONG_MS: u64 = 700;

/// What a thumb did.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Press {
    /// NEXT pressed and let go.
    Next,
    /// NEXT held.
    LongNext,
    /// BACK pressed and let go.
    Back,
    /// BACK held.
    LongBack,
    /// MENU pressed and let go.
    Menu,
    /// MENU held.
    LongMenu,
}

/// The three buttons.
#[derive(Clone, Copy, Debug, Default)]
pub struct Buttons {
    next: Button,
    back: Button,
    menu: Button,
}

impl Buttons {
    /// What was pressed by `now_ms`, with the buttons' levels (down is true) as
    /// they are: NEXT, BACK, MENU. One press a turn, NEXT first.
    pub fn turn(&mut self, now_ms: u64, [next, back, menu]: [bool; 3]) -> Option<Press> {
        let next = self.next.turn(now_ms, next);
        let back = self.back.turn(now_ms, back);
        let menu = self.menu.turn(now_ms, menu);
        let told = |held, short, long| if held { long } else { short };
        next.map(|held| told(held, Press::Next, Press::LongNext))
            .or(back.map(|held| told(held, Press::Back, Press::LongBack)))
            .or(menu.map(|held| told(held, Press::Menu, Press::LongMenu)))
    }
}

#[derive(Clone, Copy, Debug, Default)]
struct Button {
    reads: bool,
    since_ms: u64,
    down_ms: Option<u64>,
    told: bool,
}

impl Button {
    /// `Some(true)` once while it is held long, `Some(false)` when it is let go before.
    fn turn(&mut self, now_ms: u64, reads: bool) -> Option<bool> {
        if reads != self.reads {
            (self.reads, self.since_ms) = (reads, now_ms);
        }
        let settled = now_ms.saturating_sub(self.since_ms) >= SETTLE_MS;
        match self.down_ms {
            None if settled && reads => {
                (self.down_ms, self.told) = (Some(now_ms), false);
                None
            }
            Some(_) if settled && !reads => {
                self.down_ms = None;
                (!self.told).then_some(false)
            }
            Some(down) if !self.told && reads && now_ms.saturating_sub(down) >= LONG_MS => {
                self.told = true;
                Some(true)
            }
            _ => None,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    extern crate std;
    use std::vec::Vec;

    /// Stretches of NEXT's level in milliseconds, and what was pressed.
    #[track_caller]
    fn check(what: &str, stretches: &[(bool, u64)], expected: &[Press]) {
        let (mut buttons, mut now, mut found) = (Buttons::default(), 0, Vec::new());
        for &(down, ms) in stretches {
            for _ in 0..ms {
                found.extend(buttons.turn(now, [down, false, false]));
                now += 1;
            }
        }
        assert_eq!(found, expected, "{what}");
    }

    #[test]
    fn presses() {
        let (up, down) = (false, true);
        check("a press", &[(up, 50), (down, 100), (up, 50)], &[Press::Next]);
        check(
            "bounces at both ends",
            &[
                (up, 50),
                (down, 3),
                (up, 2),
                (down, 5),
                (up, 1),
                (down, 100),
                (up, 4),
                (down, 2),
                (up, 1),
                (down, 3),
                (up, 50),
            ],
            &[Press::Next],
        );
        check("a spike", &[(up, 50), (down, 15), (up, 200)], &[]);
        check(
            "a gap while held",
            &[(up, 50), (down, 300), (up, 10), (down, 300), (up, 50)],
            &[Press::Next],
        );
        check("held", &[(up, 50), (down, 800), (up, 50)], &[Press::LongNext]);
        check("held for long", &[(up, 50), (down, 5_000), (up, 50)], &[Press::LongNext]);
        check("held at the start", &[(down, 300), (up, 50)], &[Press::Next]);
        check("twice", &[(down, 60), (up, 60), (down, 60), (up, 60)], &[Press::Next, Press::Next]);
    }

    #[test]
    fn each_button_has_its_own() {
        for (place, short, long) in [
            (0, Press::Next, Press::LongNext),
            (1, Press::Back, Press::LongBack),
            (2, Press::Menu, Press::LongMenu),
        ] {
            let mut buttons = Buttons::default();
            let mut levels = [false; 3];
            levels[place] = true;
            let mut found = Vec::new();
            for now in 0..2_000 {
                let held = now < 100 || (300..1_200).contains(&now);
                found.extend(buttons.turn(now, if held { levels } else { [false; 3] }));
            }
            assert_eq!(found, [short, long]);
        }
    }
}
