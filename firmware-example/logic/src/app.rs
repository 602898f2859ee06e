//! The readout with its memory chip and its screen: what the loop of a board turns.
use crate::buttons::Buttons;
use crate::chip::Chip;
use crate::draw::draw;
use crate::edges::Edges;
use crate::frame::Frame;
use crate::journal::Journal;
use crate::panel::Panel;
use crate::readout::{Readout, Start, Wish};
use crate::view::{Note, View};
use embedded_hal::delay::DelayNs;
use embedded_hal::i2c::I2c;

/// Everything but the board.
pub struct App<M, D, S> {
    chip: Chip<M, D>,
    journal: Option<Journal>,
    readout: Readout,
    start: Start,
    buttons: Buttons,
    panel: Panel<S>,
    frame: Frame,
    drawn: Option<(View, Option<Note>)>,
}

/// Levels for the board's outputs.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Out {
    /// The lamp.
    pub lamp: bool,
    /// The buzzer.
    pub buzzer: bool,
}

impl<M: I2c, D: DelayNs, S: I2c> App<M, D, S> {
    /// Reads the journal and begins with what it holds.
    pub fn new(start: Start, memory: M, delay: D, screen: S) -> Self {
        let mut chip = Chip::new(memory, delay);
        let (journal, kept) = match Journal::open(&mut chip) {
            Ok((journal, record)) => (Some(journal), Some(record)),
            Err(_) => (None, None),
        };
        Self {
            chip,
            journal,
            readout: Readout::new(start, kept),
            start,
            buttons: Buttons::default(),
            panel: Panel::new(screen),
            frame: Frame::DARK,
            drawn: None,
        }
    }

    /// One turn of the loop: the time, the handle, and whether NEXT, BACK and MENU are down.
    #[inline(never)]
    pub fn turn(&mut self, now_ms: u64, edges: &mut impl Edges, down: [bool; 3]) -> Out {
        let press = self.buttons.turn(now_ms, down);
        match self.readout.turn(now_ms, edges, press) {
            Some(Wish::Keep(record)) => {
                let journal = self.journal.as_mut();
                let kept = journal.is_some_and(|j| j.store(&mut self.chip, &record).is_ok());
                self.readout.stored(kept, now_ms);
            }
            Some(Wish::Reopen) => {
                if let Ok((journal, record)) = Journal::open(&mut self.chip) {
                    self.journal = Some(journal);
                    self.readout.opened(self.start, record);
                }
            }
            None => {}
        }
        // A picture goes out whole before the next one is drawn.
        let drawn = (self.readout.view(), self.readout.note());
        if self.drawn.is_none() || (self.drawn != Some(drawn) && self.panel.shows(&self.frame)) {
            self.frame = draw(&drawn.0, drawn.1);
            self.drawn = Some(drawn);
        }
        self.panel.turn(now_ms, &self.frame);
        Out { lamp: self.readout.lamp(), buzzer: self.readout.buzzer(now_ms) }
    }

    /// The readout itself.
    pub const fn readout(&self) -> &Readout {
        &self.readout
    }
}
