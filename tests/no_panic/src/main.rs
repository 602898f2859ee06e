//! A program for the board that calls every public function of the core and
//! whose panic handler calls a function that exists nowhere: it links only when
//! the compiler has shown that no panic can be reached. It never runs.
//!
//! Every input goes through [`any`], which hides its value from the compiler, and
//! every answer through [`keep`]. Functions are named by path (`Way::place(&way, ..)`,
//! not `way.place(..)`): a test compares these paths with the core's source, so a
//! public function that is missing here fails it.
#![no_std]
#![no_main]

mod number;

use core::hint::black_box;
use core::panic::PanicInfo;

/// A value the compiler knows nothing about.
pub fn any<T>(value: T) -> T {
    black_box(value)
}

/// Uses an answer, so that what leads to it stays.
pub fn keep<T>(answer: T) {
    black_box(&answer);
}

#[unsafe(no_mangle)]
extern "C" fn _start() {
    number::calls();
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
