//! A memory chip of the 24C family with two address bytes, EEPROM or FRAM.
//!
//! An EEPROM takes at most a page at a time, writes it after the stop and
//! answers nothing until it is done, at most 5 ms, 10 ms for slow ones; it is
//! asked again until it answers. A FRAM answers at once.
use eeprom24x::{Eeprom24x, SlaveAddr, addr_size, page_size, unique_serial};
use embedded_hal::delay::DelayNs;
use embedded_hal::i2c::I2c;

/// Bytes written at once: the smallest page of the chips with two address bytes.
pub(crate) const PAGE: usize = 32;

/// Between two questions to a chip that does not answer, and how many there are:
/// 20 ms, twice what the slowest chip takes.
const ASK_AGAIN_US: u32 = 250;
const ASKS: u32 = 80;

/// The chip does not answer, or not what was written.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Fault;

/// The chip on its bus, and a clock to wait by.
pub struct Chip<B, D> {
    driver: Driver<B>,
    delay: D,
}

impl<B: I2c, D: DelayNs> Chip<B, D> {
    /// The chip at its first address, 0x50.
    pub fn new(bus: B, delay: D) -> Self {
        Self { driver: Eeprom24x::new_24x32(bus, SlaveAddr::Default), delay }
    }

    /// Reads from `address` on.
    ///
    /// # Errors
    /// [`Fault`] when the chip does not answer.
    pub fn read(&mut self, address: u32, bytes: &mut [u8]) -> Result<(), Fault> {
        self.insist(|driver| driver.read_data(address, bytes).is_ok())
    }

    /// Writes from `address`, the start of a page, on, page by page upwards.
    /// It is in the chip only when a later read agrees.
    ///
    /// # Errors
    /// [`Fault`] when the chip does not answer.
    pub fn write(&mut self, address: u32, bytes: &[u8]) -> Result<(), Fault> {
        let mut at = address;
        for page in bytes.chunks(PAGE) {
            self.insist(|driver| driver.write_page(at, page).is_ok())?;
            at = at.saturating_add(u32::try_from(page.len()).unwrap_or(u32::MAX));
        }
        Ok(())
    }

    fn insist(&mut self, mut ask: impl FnMut(&mut Driver<B>) -> bool) -> Result<(), Fault> {
        for _ in 0..ASKS {
            if ask(&mut self.driver) {
                return Ok(());
            }
            self.delay.delay_us(ASK_AGAIN_US);
        }
        Err(Fault)
    }
}

type Driver<B> = Eeprom24x<B, page_size::B32, addr_size::TwoBytes, unique_serial::No>;
