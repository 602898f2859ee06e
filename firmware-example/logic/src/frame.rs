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
        let (columns, rows) = (area.columns(), area.rows());
        let at = |x: i32| usize::try_from(x).unwrap_or(0);
        for (page, bytes) in (0_i32..).zip(&mut self.0) {
            // Rows of this page that the area covers, as bits.
            let row = |y: i32| y.saturating_sub(page.saturating_mul(8)).clamp(0, 8);
            let bits = (1_u32 << row(rows.end)).wrapping_sub(1 << row(rows.start));
            let Some(bits) = u8::try_from(bits).ok().filter(|&bits| bits != 0) else { continue };
            for byte in bytes.get_mut(at(columns.start)..at(columns.end)).into_iter().flatten() {
                match color {
                    BinaryColor::On => *byte |= bits,
                    BinaryColor::Off => *byte &= !bits,
                }
            }
        }
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_area_filled_is_every_pixel_of_it() {
        for (x, y, wide, high) in [
            (0, 0, 128, 64),
            (3, 5, 1, 1),
            (10, 7, 30, 2),
            (100, 15, 60, 40),
            (-5, -3, 9, 20),
            (0, 8, 5, 8),
            (127, 63, 9, 9),
            (20, 20, 0, 5),
            (200, 20, 5, 5),
        ] {
            let area = Rectangle::new(Point::new(x, y), Size::new(wide, high));
            for (ground, ink) in
                [(BinaryColor::Off, BinaryColor::On), (BinaryColor::On, BinaryColor::Off)]
            {
                let mut expected = Frame::DARK;
                if ground == BinaryColor::On {
                    expected.invert();
                }
                let mut found = expected;
                let Ok(()) = found.fill_solid(&area, ink);
                let Ok(()) = expected.draw_iter(area.points().map(|at| Pixel(at, ink)));
                assert!(found == expected, "{area:?}");
            }
        }
    }
}
