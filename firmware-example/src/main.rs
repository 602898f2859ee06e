//! The readout's board: pins, clocks and buses of an RP2040, and the loop.
//! Everything else is in `logic/`.
#![no_std]
#![no_main]

mod bus;
mod counter;

use bus::Bus;
use core::cell::RefCell;
use counter::Counter;
use embedded_hal::delay::DelayNs;
use embedded_hal::digital::{InputPin, OutputPin, PinState};
use embedded_hal_bus::i2c::RefCellDevice;
use fugit::{ExtU32, HertzU32, RateExtU32};
use handturn_readout_logic::{App, Start};
use rp2040_hal::clocks::{Clock, ClockSource, ClocksManager};
use rp2040_hal::gpio::{FunctionI2C, FunctionSioInput, Pin, Pins, PullUp, bank0};
use rp2040_hal::pll::{PLLConfig, setup_pll_blocking};
use rp2040_hal::xosc::setup_xosc_blocking;
use rp2040_hal::{self as hal, I2C, Sio, Timer, Watchdog, pac};

/// Boot block for the usual W25Q080 flash.
#[unsafe(link_section = ".boot2")]
#[used]
pub static BOOT2_FIRMWARE: [u8; 256] = rp2040_boot2::BOOT_LOADER_W25Q080;

const CRYSTAL_MHZ: u8 = 12;

/// 48 MHz: 1440 MHz over 6 and 5. The counter samples every 10 cycles of it at the slowest.
const SYSTEM: PLLConfig =
    PLLConfig { vco_freq: HertzU32::MHz(1_440), refdiv: 1, post_div1: 6, post_div2: 5 };

/// The loop turns every few milliseconds; its longest turn, a record written to
/// four bad slots one after the other, takes under half a second.
const STUCK_AFTER_MS: u32 = 2_000;

#[hal::entry]
fn main() -> ! {
    // Without clocks or pins there is nothing to show: the watchdog tries again.
    match run() {
        Some(never) => match never {},
        None => stop(),
    }
}

fn run() -> Option<core::convert::Infallible> {
    let mut board = pac::Peripherals::take()?;
    let stuck = board.WATCHDOG.reason().read().timer().bit_is_set();
    let start = if stuck { Start::Watchdog } else { Start::Power };
    let mut watchdog = Watchdog::new(board.WATCHDOG);

    let crystal = setup_xosc_blocking(board.XOSC, u32::from(CRYSTAL_MHZ).MHz()).ok()?;
    watchdog.enable_tick_generation(CRYSTAL_MHZ);
    watchdog.start(STUCK_AFTER_MS.millis());
    let mut clocks = ClocksManager::new(board.CLOCKS);
    let (resets, frequency) = (&mut board.RESETS, crystal.operating_frequency());
    let pll = setup_pll_blocking(board.PLL_SYS, frequency, SYSTEM, &mut clocks, resets).ok()?;
    clocks.reference_clock.configure_clock(&crystal, crystal.get_freq()).ok()?;
    clocks.system_clock.configure_clock(&pll, pll.get_freq()).ok()?;
    let system = clocks.system_clock.freq();
    clocks.peripheral_clock.configure_clock(&clocks.system_clock, system).ok()?;
    let mut timer = Timer::new(board.TIMER, resets, &clocks);

    let sio = Sio::new(board.SIO);
    let pins = Pins::new(board.IO_BANK0, board.PADS_BANK0, sio.gpio_bank0, resets);
    let a = pins.gpio2.into_pull_up_input();
    let b = pins.gpio3.into_pull_up_input();
    let mut next = pins.gpio6.into_pull_up_input();
    let mut back = pins.gpio7.into_pull_up_input();
    let mut menu = pins.gpio8.into_pull_up_input();
    let mut lamp = pins.gpio9.into_push_pull_output_in_state(PinState::Low);
    let mut buzzer = pins.gpio10.into_push_pull_output_in_state(PinState::Low);
    let mut board_lamp = pins.gpio25.into_push_pull_output_in_state(PinState::Low);

    let mut counter = Counter::new(board.PIO0, resets, a, b)?;
    let (data, clock) =
        freed(pins.gpio4.into_pull_up_input(), pins.gpio5.into_pull_up_input(), &mut timer);
    let (data, clock) = (data.into_function::<FunctionI2C>(), clock.into_function::<FunctionI2C>());
    let bus = I2C::new_controller(board.I2C0, data, clock, 400.kHz(), resets, system);
    let bus = RefCell::new(Bus(bus));
    let (memory, screen) = (RefCellDevice::new(&bus), RefCellDevice::new(&bus));

    let mut app = App::new(start, memory, timer, screen);
    loop {
        watchdog.feed();
        let now_ms = timer.get_counter().ticks() / 1_000;
        let Ok(next) = next.is_low();
        let Ok(back) = back.is_low();
        let Ok(menu) = menu.is_low();
        let out = app.turn(now_ms, &mut counter, [next, back, menu]);
        let Ok(()) = lamp.set_state(out.lamp.into());
        let Ok(()) = board_lamp.set_state(out.lamp.into());
        let Ok(()) = buzzer.set_state(out.buzzer.into());
    }
}

type Line<P> = Pin<P, FunctionSioInput, PullUp>;

/// A chip that was cut off in the middle of a byte may hold the data line: the
/// clock is pulsed until it lets go, nine times at most.
fn freed(
    mut data: Line<bank0::Gpio4>,
    mut clock: Line<bank0::Gpio5>,
    delay: &mut impl DelayNs,
) -> (Line<bank0::Gpio4>, Line<bank0::Gpio5>) {
    for _ in 0..9 {
        let Ok(free) = data.is_high();
        if free {
            break;
        }
        let low = clock.into_push_pull_output_in_state(PinState::Low);
        delay.delay_us(5);
        clock = low.reconfigure();
        delay.delay_us(5);
    }
    (data, clock)
}

fn stop() -> ! {
    loop {
        cortex_m::asm::wfe();
    }
}

#[panic_handler]
fn panic(_: &core::panic::PanicInfo) -> ! {
    stop()
}
