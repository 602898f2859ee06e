//! The readout's states under a hand that turns, thumbs that press and a power
//! that goes, all at random from fixed seeds. The test alone knows where the
//! handle really stands: whatever figure the readout shows must be true of it.
use handturn::head::Sense;
use handturn::run::Confirm;
use handturn_readout_host::pio::{Machine, lines_at};
use handturn_readout_logic::{
    Press, Readout, Record, Settings, Start, View, Way, Wish, edges::Edges,
};
use std::collections::BTreeMap;

struct Random(u64);

impl Random {
    fn below(&mut self, most: u64) -> u64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1);
        (self.0 >> 33) % most
    }
}

const PRESSES: [Press; 6] =
    [Press::Next, Press::Back, Press::Menu, Press::LongNext, Press::LongBack, Press::LongMenu];

/// Counts beyond which nobody turns in this test: settings made up by thumbs can
/// ask for millions.
const FAR: i64 = 100_000;

/// A bench without a board: the truth beside the readout.
struct Bench {
    readout: Readout,
    machine: Machine,
    random: Random,
    now_ms: u64,
    /// Where the handle really stands.
    place: i64,
    /// Where it really stood at the first position of the run.
    first: i64,
    /// The settings of the run.
    settings: Settings,
    /// What the memory chip holds.
    kept: Option<Record>,
    /// Whether the last keeping failed on purpose.
    failing: bool,
    /// A double step that no reference has healed.
    lost: bool,
    seen: BTreeMap<&'static str, u32>,
}

impl Bench {
    fn new(settings: Settings, seed: u64) -> Self {
        let kept = Some(Record { settings, place: None });
        Self {
            readout: Readout::new(Start::Power, Some(kept)),
            machine: Machine::new(lines_at(0)),
            random: Random(seed),
            now_ms: 0,
            place: 0,
            first: 0,
            settings,
            kept,
            failing: false,
            lost: false,
            seen: BTreeMap::new(),
        }
    }

    fn step(&mut self, by: i64) {
        self.place += by;
        self.machine.lines = lines_at(self.place);
        for _ in 0..12 {
            self.machine.step();
        }
    }

    /// Turns to `place`, or as far that way as is worth a test; the readout looks now and then.
    fn turn_to(&mut self, place: i64) {
        let place = place.clamp(self.place - FAR, self.place + FAR);
        while self.place != place {
            self.step(if place > self.place { 1 } else { -1 });
            if self.random.below(100) == 0 {
                self.look(None);
            }
        }
        self.look(None);
    }

    fn look(&mut self, press: Option<Press>) {
        self.now_ms += 5;
        match self.readout.turn(self.now_ms, &mut self.machine, press) {
            Some(Wish::Keep(record)) => {
                self.failing = self.random.below(15) == 0;
                if !self.failing {
                    self.kept = Some(record);
                    self.settings = record.settings;
                }
                self.readout.stored(!self.failing, self.now_ms);
            }
            Some(Wish::Reopen) => panic!("the journal never closed"),
            None => {}
        }
        self.readout.buzzer(self.now_ms);
        self.true_of_the_handle();
    }

    fn press(&mut self, press: Press) {
        self.now_ms += self.random.below(3_000);
        self.look(Some(press));
    }

    fn target(&self, number: u32) -> i64 {
        let encoder = self.settings.encoder().unwrap();
        i64::from(encoder.target(&self.settings.question(), number - 1).unwrap())
    }

    /// Counts from the handle up to a position, by the way of approach.
    fn gap(&self, number: u32) -> i64 {
        let up = self.target(number) - (self.place - self.first);
        if self.settings.side == Sense::Clockwise { up } else { -up }
    }

    fn counts(way: &Way) -> i64 {
        i64::from(way.left.turns) * i64::from(way.per_turn) + i64::from(way.left.counts)
    }

    /// Every figure that is shown is so.
    fn true_of_the_handle(&mut self) {
        let window = i64::from(self.settings.window);
        let per_turn = i64::from(self.settings.per_turn);
        let past = (i64::from(self.settings.slack.max(50)) * per_turn + 99) / 100;
        let view = self.readout.view();
        let name = match view {
            View::Going { to, way, .. } => {
                let gap = self.gap(to.number);
                assert!(!self.lost, "a figure while the count is lost");
                if way.past {
                    assert_eq!(Self::counts(&way), past - gap, "back off");
                    assert_ne!(way.left.sense, self.settings.side);
                    "past"
                } else {
                    assert_eq!(Self::counts(&way), gap, "to go");
                    assert!(gap > window);
                    assert_eq!(way.left.sense, self.settings.side);
                    "going"
                }
            }
            View::OnTarget { at, .. } => {
                assert!(!self.lost && self.gap(at.number).abs() <= window);
                "on"
            }
            View::ToCut { at, one_press: false, .. } => {
                assert!(!self.lost && self.gap(at.number).abs() <= window);
                "cut"
            }
            View::ToCut { at, one_press: true, .. } => {
                let gap = self.gap(at.number);
                assert!(!self.lost && gap.abs() <= window, "{} {gap} {view:?}", self.lost);
                "cut and turn on"
            }
            View::Lost => "lost",
            View::Believe { .. } => "believe",
            View::Restarted { .. } => "restarted",
            View::MemoryFault { .. } => "fault",
            View::Reference { .. } => "reference",
            View::NoneFits => "none fits",
            View::Done { .. } => "done",
            View::Setup { .. } => "setup",
            View::Number { .. } => "number",
            View::Errors { .. } => "errors",
            View::Begin { .. } => "begin",
            View::Menu { .. } => "menu",
        };
        *self.seen.entry(name).or_default() += 1;
        let lit = matches!(name, "on" | "cut");
        assert!(!self.readout.lamp() || lit || name == "cut and turn on", "lamp at {name}");
    }

    /// The power goes, or the watchdog bites; the handle may be turned meanwhile.
    fn restart(&mut self) {
        let start = if self.random.below(3) == 0 { Start::Watchdog } else { Start::Power };
        if self.random.below(2) == 0 {
            self.place += self.random.below(300) as i64 - 150;
        }
        self.machine = Machine::new(lines_at(self.place));
        self.readout = Readout::new(start, Some(self.kept));
        // Until somebody has looked there is no count.
        self.lost = true;
        self.now_ms = 0;
        self.look(None);
    }

    /// One thing at random, but nobody lies to the readout.
    fn something(&mut self) {
        let stood = self.kept.and_then(|record| record.place).map(|place| i64::from(place.count));
        let press = PRESSES[self.random.below(6) as usize];
        match (self.readout.view(), self.random.below(100)) {
            (_, 0) => self.restart(),
            (_, 1) => {
                let by = if self.random.below(2) == 0 { 2 } else { -2 };
                let counts = !matches!(
                    self.readout.view(),
                    View::Believe { .. } | View::Restarted { .. } | View::Setup { .. }
                );
                self.step(by);
                // A run that is on is lost now; before one nothing is counted.
                self.lost |= counts;
                self.look(None);
            }
            (View::Believe { .. }, _) => {
                let still = stood == Some(self.place - self.first);
                if still && press == Press::Next {
                    self.lost = false;
                    self.press(Press::Next);
                } else if press == Press::Back {
                    self.press(Press::Back);
                }
            }
            (View::Reference { at, .. }, _) if press == Press::Next => {
                // Brought there, and said so.
                let place = self.first + self.target(at.number);
                if (place - self.place).abs() > FAR {
                    return self.press(Press::Back);
                }
                self.turn_quietly(place);
                self.now_ms += 2_000;
                self.lost = false;
                self.look(Some(Press::Next));
            }
            (View::Begin { .. }, _) if press == Press::Next => {
                self.first = self.place;
                let (settings, lost) = (self.settings, self.lost);
                self.lost = false;
                // What will be kept is what the figures are of.
                self.look_begin(settings, lost);
            }
            (View::MemoryFault { .. }, _) => {
                // Held, it would go on unkept: tried again instead.
                self.press(Press::Next);
            }
            (View::Going { to, .. }, 2..60) => {
                let aim = self.first + self.target(to.number);
                let side = if self.settings.side == Sense::Clockwise { 1 } else { -1 };
                let past = i64::from(self.settings.per_turn);
                let place = match self.random.below(4) {
                    0 => self.place + self.random.below(2_000) as i64 - 1_000,
                    1 => aim - side * past,
                    _ => aim + self.random.below(3) as i64 - 1,
                };
                self.turn_to(place);
            }
            (View::OnTarget { .. } | View::ToCut { .. }, 2..70) => self.press(Press::Next),
            _ => self.press(press),
        }
    }

    /// A new run: its settings are those that are kept with it.
    fn look_begin(&mut self, settings: Settings, lost: bool) {
        self.now_ms += 2_000;
        let press = Some(Press::Next);
        if let Some(Wish::Keep(record)) = self.readout.turn(self.now_ms, &mut self.machine, press) {
            (self.kept, self.settings, self.failing) = (Some(record), record.settings, false);
            self.readout.stored(true, self.now_ms);
        } else {
            (self.settings, self.lost) = (settings, lost);
        }
        self.true_of_the_handle();
    }

    fn turn_quietly(&mut self, place: i64) {
        while self.place != place {
            self.step(if place > self.place { 1 } else { -1 });
        }
    }
}

/// Wherever the list of settings stands, on to BEGIN and NEXT.
fn begin(bench: &mut Bench) {
    for _ in 0..20 {
        if matches!(bench.readout.view(), View::Begin { .. }) {
            break;
        }
        bench.look(Some(Press::Back));
        bench.look(Some(Press::Next));
    }
    bench.look_begin(bench.settings, false);
}

fn settings(parts: u32, side: Sense, confirm: Confirm) -> Settings {
    Settings { parts, side, confirm, per_turn: 400, slack: 75, ..Settings::default() }
}

#[test]
fn whatever_happens_every_figure_is_true() {
    let mut seen = BTreeMap::new();
    for seed in 0..24 {
        let side = [Sense::Clockwise, Sense::Anticlockwise][seed as usize % 2];
        let confirm = [Confirm::OneStage, Confirm::TwoStage][seed as usize / 2 % 2];
        let parts = [3, 7, 64, 127][seed as usize % 4];
        let mut bench = Bench::new(settings(parts, side, confirm), seed + 1);
        begin(&mut bench);
        for _ in 0..1_500 {
            bench.something();
        }
        for (name, times) in bench.seen {
            *seen.entry(name).or_insert(0) += times;
        }
    }
    for name in [
        "going",
        "past",
        "on",
        "cut",
        "cut and turn on",
        "lost",
        "believe",
        "restarted",
        "fault",
        "reference",
        "done",
        "setup",
        "number",
        "errors",
        "begin",
        "menu",
    ] {
        assert!(seen.get(name).is_some_and(|&times| times > 10), "{name} in {seen:?}");
    }
}

#[test]
fn the_degree_ring_finds_the_place() {
    let mut bench = Bench::new(settings(127, Sense::Clockwise, Confirm::TwoStage), 1);
    begin(&mut bench);
    bench.look(Some(Press::LongMenu));
    bench.look(Some(Press::LongNext));
    // 128 degrees: 45.16 parts of 127, so the 46th position.
    for digit in [1, 2, 8] {
        for _ in 0..digit {
            bench.look(Some(Press::Menu));
        }
        bench.look(Some(Press::Next));
    }
    let View::Reference { at, fits: true } = bench.readout.view() else {
        panic!("{:?}", bench.readout.view())
    };
    assert_eq!(at.number, 46);
    bench.machine.rearm();
}
