//! A stub, not yet the readout: it works out one division with the core and blinks
//! the holes to move. It shows that the core builds and links for an RP2040.
#![no_std]
#![no_main]

use embedded_hal::digital::OutputPin;
use handturn::Error;
use handturn::divide::{Order, Parts, Question, answer};
use handturn::head::{Head, SET_A, plates_of};
use rp2040_hal::{self as hal, pac, sio::Sio};

/// Boot block for the usual W25Q080 flash.
#[unsafe(link_section = ".boot2")]
#[used]
pub static BOOT2_FIRMWARE: [u8; 256] = rp2040_boot2::BOOT_LOADER_W25Q080;

/// Processor cycles of a short blink: the chip starts on its ring oscillator, about 6 MHz.
const BLINK_CYCLES: u32 = 2_000_000;

/// Parts to divide into.
const PARTS: u32 = 64;

#[hal::entry]
fn main() -> ! {
    let Some(mut board) = pac::Peripherals::take() else { halt() };
    let sio = Sio::new(board.SIO);
    let pins =
        hal::gpio::Pins::new(board.IO_BANK0, board.PADS_BANK0, sio.gpio_bank0, &mut board.RESETS);
    let mut lamp = pins.gpio25.into_push_pull_output();
    let holes = holes_per_move(PARTS).unwrap_or(0);
    loop {
        for _ in 0..holes {
            let Ok(()) = lamp.set_high();
            cortex_m::asm::delay(BLINK_CYCLES);
            let Ok(()) = lamp.set_low();
            cortex_m::asm::delay(BLINK_CYCLES);
        }
        cortex_m::asm::delay(8 * BLINK_CYCLES);
    }
}

/// Holes of the first move by the best way of a 40 : 1 head with plates 15 to 49.
fn holes_per_move(count: u32) -> Result<u32, Error> {
    let head = Head { plates: plates_of(&SET_A)?, ..Head::default() };
    let question = Question::Parts(Parts { count, every: 1 });
    let answer = answer::<1>(&question, &head)?;
    let first = answer.best(Order::Closest).map(|best| best.way.step(&question, 0)).transpose()?;
    Ok(first.and_then(|step| step.legs.first().map(|leg| leg.spaces)).unwrap_or(0))
}

fn halt() -> ! {
    loop {
        cortex_m::asm::wfe();
    }
}

#[panic_handler]
fn panic(_: &core::panic::PanicInfo) -> ! {
    halt()
}
