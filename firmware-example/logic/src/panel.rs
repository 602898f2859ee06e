//! The screen on its bus. A picture goes out page by page, only what changed,
//! so that no turn of the loop waits longer than one page takes. A screen that
//! does not answer is asked again from the start, a second later.
use crate::frame::Frame;
use embedded_hal::i2c::I2c;
use ssd1306::mode::BasicMode;
use ssd1306::prelude::{DisplayRotation, DisplaySize128x64, I2CInterface};
use ssd1306::{I2CDisplayInterface, Ssd1306, command::AddrMode};

const ASK_AGAIN_MS: u64 = 1_000;

/// The screen, and the picture it shows.
pub struct Panel<B> {
    driver: Ssd1306<I2CInterface<B>, DisplaySize128x64, BasicMode>,
    shows: Frame,
    ready: bool,
    ask_ms: u64,
}

impl<B: I2c> Panel<B> {
    /// A screen that shows nothing yet.
    pub fn new(bus: B) -> Self {
        let face = I2CDisplayInterface::new(bus);
        Self {
            driver: Ssd1306::new(face, DisplaySize128x64, DisplayRotation::Rotate0),
            shows: Frame::DARK,
            ready: false,
            ask_ms: 0,
        }
    }

    /// Sends the first page in which `frame` differs from what is shown.
    #[inline(never)]
    pub fn turn(&mut self, now_ms: u64, frame: &Frame) {
        if now_ms < self.ask_ms {
            return;
        }
        let sent = if self.ready { self.send(frame) } else { self.begin() };
        if sent.is_none() {
            self.ready = false;
            self.ask_ms = now_ms.saturating_add(ASK_AGAIN_MS);
        }
    }

    /// Whether `frame` is what the screen shows.
    #[must_use]
    pub fn shows(&self, frame: &Frame) -> bool {
        self.ready && self.shows == *frame
    }

    /// Switches the screen on with a dark picture: what its memory holds is chance.
    fn begin(&mut self) -> Option<()> {
        self.driver.init_with_addr_mode(AddrMode::Horizontal).ok()?;
        self.driver.set_draw_area((0, 0), (128, 64)).ok()?;
        for page in &Frame::DARK.0 {
            self.driver.draw(page).ok()?;
        }
        self.shows = Frame::DARK;
        self.ready = true;
        Some(())
    }

    fn send(&mut self, frame: &Frame) -> Option<()> {
        let pages = (0_u8..).zip(frame.0.iter().zip(&mut self.shows.0));
        for (page, (wanted, shown)) in pages {
            let differs = |(a, b): (&u8, &u8)| a != b;
            let Some(first) = wanted.iter().zip(&*shown).position(differs) else { continue };
            let last = wanted.iter().zip(&*shown).rposition(differs)?;
            let end = last.saturating_add(1);
            let top = page.saturating_mul(8);
            let column = |n: usize| u8::try_from(n).ok();
            let (from, to) = (column(first)?, column(end)?);
            self.driver.set_draw_area((from, top), (to, top.saturating_add(8))).ok()?;
            let changed = wanted.get(first..end)?;
            self.driver.draw(changed).ok()?;
            shown.get_mut(first..end)?.copy_from_slice(changed);
            return Some(());
        }
        Some(())
    }
}
