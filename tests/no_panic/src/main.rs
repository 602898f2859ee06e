//! A program for the board that calls every public function of the core and
//! whose panic handler calls a function that exists nowhere: it links only when
//! the compiler has shown that no panic can be reached. It never runs.
//!
//! Every input comes from [`any`], so nothing is known of it but its type, and every
//! answer goes to [`keep`], so nothing is left out. Functions are named by path
//! (`Way::place(..)`, not `way.place(..)`): a test compares these paths with the
//! core's source, so a public function that is missing here fails it.
#![no_std]
#![no_main]

mod cards;
mod cones;
mod cutting;
mod dials;
mod divide;
mod fits;
mod gearing;
mod head;
mod lifts;
mod measure;
mod number;
mod plates;
mod run;
mod shapes;
mod sheets;
mod slanted;
mod teeth;
mod thread;
mod turning;
mod wheels;
mod wires;

use core::panic::PanicInfo;

/// A value of which the compiler knows nothing but its type.
pub fn any<T>() -> T {
    const RAM: *const u8 = 0x2000_0000 as *const u8;
    // Never executed: the read stands for "whatever may lie there". It is volatile, so
    // no two are taken for the same.
    unsafe { RAM.cast::<T>().read_volatile() }
}

/// Uses an answer, so that what leads to it stays.
#[inline(never)]
pub fn keep<T>(answer: T) {
    core::hint::black_box(&answer);
}

#[unsafe(no_mangle)]
extern "C" fn _start() {
    number::calls();
    measure::calls();
    head::calls();
    divide::calls();
    gearing::calls();
    run::calls();
    thread::calls();
    cards::calls();
    cutting::calls();
    slanted::calls();
    teeth::calls();
    plates::calls();
    shapes::calls();
    wheels::calls();
    sheets::calls();
    dials::calls();
    fits::calls();
    turning::calls();
    cones::calls();
    lifts::calls();
    wires::calls();
}

#[cfg(not(feature = "why"))]
#[panic_handler]
fn panic(_: &PanicInfo) -> ! {
    unsafe extern "C" {
        fn the_core_can_panic() -> !;
    }
    unsafe { the_core_can_panic() }
}

#[cfg(feature = "why")]
#[panic_handler]
fn panic(_: &PanicInfo) -> ! {
    loop {}
}
