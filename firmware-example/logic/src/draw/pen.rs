//! What screens are made of: lines of text, big digits, an arrow, a bar, a list.
use super::line::Line;
use crate::frame::Frame;
use eg_seven_segment::SevenSegmentStyleBuilder;
use embedded_graphics::image::{Image, ImageRaw};
use embedded_graphics::mono_font::ascii::{FONT_5X8, FONT_6X10};
use embedded_graphics::mono_font::{MonoFont, MonoTextStyle};
use embedded_graphics::pixelcolor::BinaryColor;
use embedded_graphics::prelude::*;
use embedded_graphics::primitives::Rectangle;
use embedded_graphics::text::{Alignment, Baseline, Text, TextStyleBuilder};
use handturn::head::Sense;

/// Letters, by their size.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Size {
    /// 25 to a line.
    Fine,
    /// 21 to a line.
    Plain,
}

impl Size {
    const fn font(self) -> &'static MonoFont<'static> {
        match self {
            Self::Fine => &FONT_5X8,
            Self::Plain => &FONT_6X10,
        }
    }

    /// Whether a text that begins, is centred or ends at column `x` is on the screen.
    fn fits(self, x: i32, text: &str, side: Alignment) -> bool {
        let letters = i32::try_from(text.len()).unwrap_or(i32::MAX);
        let each = i32::try_from(self.font().character_size.width).unwrap_or(i32::MAX);
        let wide = letters.saturating_mul(each);
        let room = match side {
            Alignment::Left => RIGHT.saturating_sub(x),
            Alignment::Center => x.min(RIGHT.saturating_sub(x)).saturating_mul(2),
            Alignment::Right => x,
        };
        wide <= room
    }
}

/// Columns of the screen.
const ALL: u32 = 128;
const RIGHT: i32 = 128;
const MIDDLE: i32 = RIGHT / 2;

/// Draws on one frame. Its steps are not inlined: dozens of calls share them, and flash is short.
pub(super) struct Pen {
    pub(super) frame: Frame,
}

impl Pen {
    pub(super) const fn new() -> Self {
        Self { frame: Frame::DARK }
    }

    #[inline(never)]
    pub(super) fn left(&mut self, x: i32, y: i32, size: Size, text: &str) {
        self.write(Point::new(x, y), size, text, Alignment::Left, BinaryColor::On);
    }

    #[inline(never)]
    pub(super) fn middle(&mut self, y: i32, size: Size, text: &str) {
        self.write(Point::new(MIDDLE, y), size, text, Alignment::Center, BinaryColor::On);
    }

    #[inline(never)]
    pub(super) fn right(&mut self, y: i32, size: Size, text: &str) {
        self.write(Point::new(RIGHT, y), size, text, Alignment::Right, BinaryColor::On);
    }

    /// A line across the screen, dark letters on a lit ground: what must be seen first.
    #[inline(never)]
    pub(super) fn banner(&mut self, text: &str) {
        self.fill(0, 0, ALL, 13, BinaryColor::On);
        let at = Point::new(MIDDLE, 2);
        self.write(at, Size::Plain, text, Alignment::Center, BinaryColor::Off);
    }

    /// The line at the foot: what a button does, or a note.
    #[inline(never)]
    pub(super) fn foot(&mut self, text: &str) {
        self.middle(54, Size::Plain, text);
    }

    /// A note in place of whatever stands at the foot.
    pub(super) fn note(&mut self, text: &str) {
        self.fill(0, 52, ALL, 12, BinaryColor::On);
        let at = Point::new(MIDDLE, 53);
        self.write(at, Size::Plain, text, Alignment::Center, BinaryColor::Off);
    }

    /// Rows of a list with the chosen one lit, and enough of the others to see where it is.
    pub(super) fn list<T: Copy>(
        &mut self,
        all: &[T],
        chosen: usize,
        row: impl Fn(T) -> (&'static str, Line),
    ) {
        const ROWS: usize = 5;
        let first = chosen.saturating_sub(2).min(all.len().saturating_sub(ROWS));
        let mut y = 0;
        for (place, &one) in all.iter().enumerate().skip(first).take(ROWS) {
            let (label, value) = row(one);
            let ink = if place == chosen {
                self.fill(0, y, ALL, 12, BinaryColor::On);
                BinaryColor::Off
            } else {
                BinaryColor::On
            };
            let top = y.saturating_add(1);
            self.write(Point::new(3, top), Size::Plain, label, Alignment::Left, ink);
            let right = Point::new(RIGHT.saturating_sub(3), top);
            self.write(right, Size::Plain, value.as_str(), Alignment::Right, ink);
            y = y.saturating_add(13);
        }
    }

    /// Digits of `width` by `height`, the first at `x`; where the next would begin.
    #[inline(never)]
    pub(super) fn digits(&mut self, x: i32, y: i32, width: u32, height: u32, text: &str) -> i32 {
        debug_assert!(x.saturating_add(wide(text, width)) <= RIGHT, "{text} does not fit");
        let thick = if width > 12 { 4 } else { 3 };
        let style = SevenSegmentStyleBuilder::new()
            .digit_size(embedded_graphics::prelude::Size::new(width, height))
            .digit_spacing(GAP)
            .segment_width(thick)
            .segment_color(BinaryColor::On)
            .build();
        // Its baseline is the last row of a digit.
        let foot = y.saturating_add(i32::try_from(height).unwrap_or(0)).saturating_sub(1);
        let Ok(next) = Text::new(text, Point::new(x, foot), style).draw(&mut self.frame);
        next.x
    }

    /// "And so many more", eight columns square.
    pub(super) fn plus(&mut self, x: i32, y: i32) {
        self.fill(x, y.saturating_add(3), 8, 2, BinaryColor::On);
        self.fill(x.saturating_add(3), y, 2, 8, BinaryColor::On);
    }

    /// Digits in the middle of the screen.
    pub(super) fn digits_in_middle(&mut self, y: i32, width: u32, height: u32, text: &str) {
        let x = MIDDLE.saturating_sub(wide(text, width) / 2);
        self.digits(x, y, width, height, text);
    }

    /// Which way to turn.
    pub(super) fn arrow(&mut self, x: i32, y: i32, sense: Sense) {
        let bits: &[u8] = match sense {
            Sense::Clockwise => &CLOCKWISE,
            Sense::Anticlockwise => &ANTICLOCKWISE,
        };
        let raw = ImageRaw::<BinaryColor>::new(bits, ARROW);
        let Ok(()) = Image::new(&raw, Point::new(x, y)).draw(&mut self.frame);
    }

    /// A bar that closes in from both ends: `left` of `all` is still open in the
    /// middle, shown by its root so that the last counts can be seen.
    pub(super) fn bar(&mut self, left: u32, all: u32) {
        const HALF: u32 = ALL / 2;
        const TOP: i32 = 57;
        let share = u64::from(left.min(all)).saturating_mul(u64::from(HALF * HALF));
        let open = share.checked_div(u64::from(all)).unwrap_or(0).isqrt();
        let closed = HALF.saturating_sub(u32::try_from(open).unwrap_or(HALF));
        self.fill(0, TOP, closed, 7, BinaryColor::On);
        let other = RIGHT.saturating_sub(i32::try_from(closed).unwrap_or(0));
        self.fill(other, TOP, closed, 7, BinaryColor::On);
        // What they close in on.
        self.fill(0, TOP.saturating_add(6), ALL, 1, BinaryColor::On);
        self.fill(MIDDLE.saturating_sub(1), TOP.saturating_sub(2), 2, 2, BinaryColor::On);
    }

    #[inline(never)]
    pub(super) fn fill(&mut self, x: i32, y: i32, wide: u32, high: u32, ink: BinaryColor) {
        let size = embedded_graphics::prelude::Size::new(wide, high);
        let Ok(()) = self.frame.fill_solid(&Rectangle::new(Point::new(x, y), size), ink);
    }

    #[inline(never)]
    fn write(&mut self, at: Point, size: Size, text: &str, side: Alignment, ink: BinaryColor) {
        let letters = MonoTextStyle::new(size.font(), ink);
        debug_assert!(size.fits(at.x, text, side), "{text} does not fit");
        let place = TextStyleBuilder::new().alignment(side).baseline(Baseline::Top).build();
        let Ok(_) = Text::with_text_style(text, at, letters, place).draw(&mut self.frame);
    }
}

/// Columns between two digits.
const GAP: u32 = 3;

/// Columns that `text` takes in digits of `width`.
pub(super) fn wide(text: &str, width: u32) -> i32 {
    let count = i32::try_from(text.len()).unwrap_or(0);
    let each = i32::try_from(width.saturating_add(GAP)).unwrap_or(0);
    count.saturating_mul(each).saturating_sub(3)
}

/// Columns of the arrow.
const ARROW: u32 = 24;

/// Three quarters of a ring with a head, rows of 24.
#[rustfmt::skip]
const CLOCKWISE: [u8; 72] = [
    0x00, 0x00, 0x00, 0x00, 0x00, 0x00, 0x00, 0xff, 0x00, 0x03, 0xff, 0xc0,
    0x07, 0xff, 0xe0, 0x0f, 0xc3, 0xf0, 0x1f, 0x00, 0xf8, 0x1e, 0x00, 0x78,
    0x3c, 0x00, 0x3c, 0x3c, 0x00, 0x3c, 0x38, 0x00, 0x1c, 0x38, 0x00, 0x1c,
    0x38, 0x01, 0xff, 0x38, 0x00, 0xff, 0x3c, 0x00, 0xff, 0x3c, 0x00, 0x7f,
    0x10, 0x00, 0x3e, 0x00, 0x00, 0x3c, 0x00, 0x00, 0x18, 0x00, 0x00, 0x00,
    0x00, 0x00, 0x00, 0x00, 0x00, 0x00, 0x00, 0x00, 0x00, 0x00, 0x00, 0x00,
];

/// Its mirror.
const ANTICLOCKWISE: [u8; 72] = mirrored(&CLOCKWISE);

#[expect(
    clippy::indexing_slicing,
    clippy::arithmetic_side_effects,
    reason = "the compiler runs it"
)]
const fn mirrored(bits: &[u8; 72]) -> [u8; 72] {
    let mut other = [0; 72];
    let mut place = 0;
    while place < 72 {
        let row = place / 3;
        other[place] = bits[row * 3 + 2 - place % 3].reverse_bits();
        place += 1;
    }
    other
}
