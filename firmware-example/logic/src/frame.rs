//! One picture for the screen, as it lies in the screen's own memory: eight
//! pages of 128 columns, a byte a column, the lowest bit on top.
use core::convert::Infallible;
use embedded_graphics::pixelcolor::BinaryColor;
use embedded_graphics::prelude::*;
use embedded_graphics::primitives::Rectangle;

/// Columns.
pub const WIDTH: usize = 128;
/// Pages of eight rows.
pub const PAGES: usize = 8;

/// A picture.
#[derive(Clone, Copy, PartialEq, Eq)]
pub struct Frame(pub(crate) [[u8; WIDTH]; PAGES]);

impl Frame {
    /// All dark.
    pub const DARK: Self = Self([[0; WIDTH]; PAGES]);

    /// The pages, from the top.
    #[must_use]
    pub const fn pages(&self) -> &[[u8; WIDTH]; PAGES] {
        &self.0
    }

    /// Everything dark lit, and everything lit dark.
    pub fn invert(&mut self) {
        for byte in self.0.iter_mut().flatten() {
            *byte = !*byte;
        }
    }

    fn set(&mut self, x: i32, y: i32, color: BinaryColor) {
        let (Ok(column), Ok(row)) = (usize::try_from(x), usize::try_from(y)) else { return };
        let Some(byte) = self.0.get_mut(row / 8).and_then(|page| page.get_mut(column)) else {
            return;
        };
        let bit = 1 << (row % 8);
        match color {
            BinaryColor::On => *byte |= bit,
            BinaryColor::Off => *byte &= !bit,
        }
    }
}

impl OriginDimensions for Frame {
    fn size(&self) -> Size {
        Size::new(128, 64)
    }
}

impl DrawTarget for Frame {
    type Color = BinaryColor;
    type Error = Infallible;

    fn draw_iter<I: IntoIterator<Item = Pixel<BinaryColor>>>(
        &mut self,
        pixels: I,
    ) -> Result<(), Infallible> {
        for Pixel(at, color) in pixels {
            self.set(at.x, at.y, color);
        }
        Ok(())
    }

    fn fill_solid(&mut self, area: &Rectangle, color: BinaryColor) -> Result<(), Infallible> {
        let area = area.intersection(&self.bounding_box());
        for y in area.rows() {
            for x in area.columns() {
                self.set(x, y, color);
            }
        }
        Ok(())
    }
}
