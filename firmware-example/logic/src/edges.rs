//! Counting the encoder's edges: a program for the RP2040's programmable
//! input, which samples both lines every few cycles and keeps a count that no
//! loop, screen or memory chip can hold up.
//!
//! Two samples one after the other make an address of four bits, and the first
//! sixteen words of the program are what to do for each: nothing, one up, one
//! down, or raise flag 0, because both lines changed between two samples and
//! nobody can know which way. The flag stays up until it is taken down, so a
//! double step cannot be missed; the count goes on from where it was and is
//! not believed.
//!
//! `y` is the count. The last sample lies in the output register, whose two
//! lowest bits begin the next address. Every round puts the count into the
//! queue to the processor where there is room: the entries in it are old, the
//! one after them is not.
//!
//! Cycles from one sample to the next: 7 when nothing moves, 8 down, 10 up.

/// What was read of the handle.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Sample {
    /// The raw count: it wraps, and starts anywhere.
    pub raw: i32,
    /// Both lines changed at once since the last [`Edges::rearm`].
    pub lost: bool,
}

/// Whatever counts the handle's edges.
pub trait Edges {
    /// The count now, not earlier than this call.
    fn read(&mut self) -> Sample;
    /// Takes the flag of a lost count down.
    fn rearm(&mut self);
}

/// Entries of the queue from the counter to the processor: so many can be old.
pub const QUEUE: usize = 4;

/// The flag that a double step raises.
pub const LOST_FLAG: u8 = 0;

/// The lines as the program sees them: A is the lower bit.
pub const A_BIT: u8 = 0;

/// The program, to be loaded at address 0, line A at the input base and line B
/// on the pin above it; input shifts left, output right, without autopush.
#[must_use]
pub fn program() -> pio::Program<{ pio::RP2040_MAX_PROGRAM_SIZE }> {
    pio::pio_asm!(
        ".origin 0",
        // before BA, now BA
        "jmp sample", // 00 00
        "jmp up",     // 00 01
        "jmp down",   // 00 10
        "jmp lost",   // 00 11
        "jmp down",   // 01 00
        "jmp sample", // 01 01
        "jmp lost",   // 01 10
        "jmp up",     // 01 11
        "jmp up",     // 10 00
        "jmp lost",   // 10 01
        "jmp sample", // 10 10
        "jmp down",   // 10 11
        "jmp lost",   // 11 00
        "jmp down",   // 11 01
        "jmp up",     // 11 10
        "jmp sample", // 11 11
        "lost:",
        "irq nowait 0",
        "jmp sample",
        "down:",
        "jmp y--, sample",
        ".wrap_target",
        "sample:",
        "mov isr, y",
        "push noblock",
        "out isr, 2",
        "in pins, 2",
        "mov osr, isr",
        "mov pc, isr",
        // Nothing counts up, so the count is turned round, counted down and turned back.
        "up:",
        "mov y, ~y",
        "jmp y--, turn",
        "turn:",
        "mov y, ~y",
        ".wrap",
    )
    .program
}
