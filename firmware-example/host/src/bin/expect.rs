//! What the readout should show, worked out on this computer from the core alone:
//! a question a line on the input, an answer a line on the output. The emulator's
//! tests compare every picture with it.
//!
//! It holds a run's settings, an aim and the approach to it, and nothing of the
//! readout's states; positions count from 0.
use handturn::Error;
use handturn::handle::{Aim, Approach};
use handturn::head::Sense;
use handturn::measure::Angle;
use handturn::run::{Confirm, State};
use handturn_readout_host::chip::{Kind, Memory};
use handturn_readout_logic::edges::program;
use handturn_readout_logic::{
    Chip, Choice, Entry, Frame, Item, Journal, Note, Place, Position, Record, Settings, View, Way,
    draw,
};
use std::io::{BufRead, Write, stdin, stdout};

struct Bench {
    settings: Settings,
    aim: Aim,
    index: u32,
    approach: Approach,
    unkept: bool,
}

fn main() {
    let settings = Settings::default();
    let aim = settings.encoder().unwrap().aim(&settings.question(), 0).unwrap();
    let approach = Approach::start(&aim, 0);
    let mut bench = Bench { settings, aim, index: 0, approach, unkept: false };
    for line in stdin().lock().lines() {
        let line = line.unwrap();
        let words: Vec<&str> = line.split(' ').collect();
        let answer = bench.answer(&words).unwrap_or_else(|error| format!("error {error}"));
        let mut out = stdout().lock();
        writeln!(out, "{answer}").unwrap();
        out.flush().unwrap();
    }
}

fn hex(bytes: impl IntoIterator<Item = u8>) -> String {
    bytes.into_iter().map(|byte| format!("{byte:02x}")).collect()
}

fn picture(frame: &Frame) -> String {
    hex(frame.pages().iter().flatten().copied())
}

fn number<T: std::str::FromStr>(word: &str) -> T {
    word.parse().unwrap_or_else(|_| panic!("{word} is not a number"))
}

impl Bench {
    fn answer(&mut self, words: &[&str]) -> Result<String, Error> {
        Ok(match *words {
            ["settings", parts, handle, work, per_turn, side, slack, window, confirm] => {
                self.settings = Settings {
                    parts: number(parts),
                    ratio_handle: number(handle),
                    ratio_work: number(work),
                    per_turn: number(per_turn),
                    side: if side == "cw" { Sense::Clockwise } else { Sense::Anticlockwise },
                    slack: number(slack),
                    window: number(window),
                    confirm: if confirm == "one" { Confirm::OneStage } else { Confirm::TwoStage },
                    sound: true,
                };
                self.settings.check()?;
                "ok".into()
            }
            ["unkept", yes] => {
                self.unkept = yes == "yes";
                "ok".into()
            }
            ["program"] => hex(program().code.iter().flat_map(|word| word.to_le_bytes())),
            ["chip"] => self.chip(None),
            ["chip", index, count] => {
                let index = number(index);
                let cuts = (index > 0).then_some((0, index));
                let state = State::resume(&self.settings.plan()?, 0, index, cuts)?;
                self.chip(Some(Place { state, count: number(count) }))
            }
            // What a chip holds: position and count of the newest record.
            ["read", bytes] => read(bytes),
            ["target", index] => {
                let encoder = self.settings.encoder()?;
                encoder.target(&self.settings.question(), number(index))?.to_string()
            }
            ["aim", index, count] => {
                self.index = number(index);
                self.aim = self.settings.encoder()?.aim(&self.settings.question(), self.index)?;
                self.approach = Approach::start(&self.aim, number(count));
                "ok".into()
            }
            ["see", count] => {
                self.approach = self.approach.next(&self.aim, number(count));
                "ok".into()
            }
            ["move"] => self.moving(),
            ["errors"] => picture(&draw(&View::Errors { tenths: Some(self.errors()?) }, None)),
            ["show", view, ref rest @ ..] => picture(&draw(&self.view(view, rest), None)),
            ["show-note", note, view, ref rest @ ..] => {
                let note = match note {
                    "not-on" => Note::NotOn,
                    "too-soon" => Note::TooSoon,
                    "not-now" => Note::NotNow,
                    _ => panic!("{note}"),
                };
                picture(&draw(&self.view(view, rest), Some(note)))
            }
            _ => panic!("what is {words:?}?"),
        })
    }

    fn at(&self, index: u32) -> Position {
        Position { number: index + 1, of: self.settings.parts }
    }

    fn going(&self, past: bool, left: handturn::handle::Distance) -> View {
        View::Going {
            to: self.at(self.index),
            way: Way { left, per_turn: self.aim.per_turn, past },
            closing: self.index == self.settings.parts,
            unkept: self.unkept,
        }
    }

    /// The approach, its figures and its picture.
    fn moving(&self) -> String {
        let (what, left, view) = match self.approach {
            Approach::Up(left) => ("up", Some(left), self.going(false, left)),
            Approach::Back(left) => ("back", Some(left), self.going(true, left)),
            Approach::On => {
                let closing = self.index == self.settings.parts;
                let at = self.at(self.index);
                ("on", None, View::OnTarget { at, closing, unkept: self.unkept })
            }
        };
        let (turns, counts) = left.map_or((0, 0), |left| (left.turns, left.counts));
        format!("{what} {turns} {counts} {}", picture(&draw(&view, None)))
    }

    fn view(&self, view: &str, rest: &[&str]) -> View {
        let settings = self.settings;
        let index = || self.at(number(rest[0]));
        match view {
            "move" => match self.approach {
                Approach::Up(left) => self.going(false, left),
                Approach::Back(left) => self.going(true, left),
                Approach::On => View::OnTarget {
                    at: self.at(self.index),
                    closing: self.index == settings.parts,
                    unkept: self.unkept,
                },
            },
            "cut" => View::ToCut {
                at: index(),
                one_press: settings.confirm == Confirm::OneStage && rest.get(1) != Some(&"last"),
                unkept: self.unkept,
            },
            "done" => View::Done { of: settings.parts },
            "lost" => View::Lost,
            "begin" => View::Begin { side: settings.side },
            "believe" => View::Believe { at: index(), cut: rest[1] == "cut" },
            "restarted" => View::Restarted { at: index() },
            "reference" => View::Reference { at: index(), fits: rest.get(1) == Some(&"fits") },
            "fault" => View::MemoryFault { working: rest[0] == "working" },
            "setup" => View::Setup { settings, item: Item::ALL[number::<usize>(rest[0])] },
            "menu" => View::Menu { choice: Choice::ALL[number::<usize>(rest[0])] },
            "number" => {
                let item = Item::ALL[number::<usize>(rest[0])];
                let mut entry = Entry::new(number(rest[1]), item.digits().unwrap());
                for _ in 0..number::<u32>(rest[2]) {
                    entry.on();
                }
                View::Number { item: Some(item), ring: false, entry }
            }
            _ => panic!("no view is called {view}"),
        }
    }

    /// The way's own errors, not the short cut that the readout takes.
    fn errors(&self) -> Result<[u32; 3], Error> {
        let errors = self.settings.encoder()?.errors(&self.settings.question())?;
        let tenths = |angle: Angle| {
            let up = angle.arcsec().unwrap().times(10).unwrap().negated().floor();
            u32::try_from(-up).unwrap()
        };
        Ok([tenths(errors.worst), tenths(errors.adjacent), tenths(errors.closing)])
    }

    /// The bytes of a new chip with one record.
    fn chip(&self, place: Option<Place>) -> String {
        let memory = Memory::new(Kind::Fram);
        let mut chip = Chip::new(memory.clone(), memory.clone());
        let (mut journal, _) = Journal::open(&mut chip).unwrap();
        journal.store(&mut chip, &Record { settings: self.settings, place }).unwrap();
        let bytes = memory.0.borrow().bytes.clone();
        hex(bytes)
    }
}

fn read(text: &str) -> String {
    let byte = |k: usize| u8::from_str_radix(&text[2 * k..2 * k + 2], 16).unwrap();
    let memory = Memory::holding(Kind::Fram, (0..text.len() / 2).map(byte).collect());
    let mut chip = Chip::new(memory.clone(), memory);
    match Journal::open(&mut chip).unwrap().1 {
        None => "none".into(),
        Some(Record { place: None, .. }) => "settings".into(),
        Some(Record { place: Some(Place { state, count }), .. }) => {
            format!("{} {count} {}", state.index(), state.cuts().count())
        }
    }
}
