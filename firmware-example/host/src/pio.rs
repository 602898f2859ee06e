//! One state machine of the RP2040's programmable input, interpreting the
//! words that the board loads. Only what the program uses is modelled; any other
//! word stops the test. One call of [`Machine::step`] is one cycle.
//! Source: RP2040 data sheet, chapter 3 (PIO), instruction formats and timing.
use handturn_readout_logic::edges::{Edges, QUEUE, Sample, program};
use std::collections::VecDeque;

/// A state machine with its program.
pub struct Machine {
    words: Vec<u16>,
    wrap: (u8, u8),
    pc: u8,
    y: u32,
    isr: u32,
    osr: u32,
    queue: VecDeque<u32>,
    /// The flags, one bit each.
    pub flags: u8,
    /// The two lines, A the lower bit.
    pub lines: u32,
}

impl Machine {
    /// The machine as the board starts it, with the lines as they stand.
    pub fn new(lines: u32) -> Self {
        let program = program();
        Self {
            words: program.code.to_vec(),
            wrap: (program.wrap.target, program.wrap.source),
            pc: 0,
            y: 0,
            isr: 0,
            osr: lines,
            queue: VecDeque::new(),
            flags: 0,
            lines,
        }
    }

    /// One cycle.
    pub fn step(&mut self) {
        let word = self.words[usize::from(self.pc)];
        assert_eq!(word >> 8 & 0x1f, 0, "no delays, no side-set");
        let next = if self.pc == self.wrap.1 { self.wrap.0 } else { self.pc + 1 };
        let argument = word & 0xff;
        let address = (word & 0x1f) as u8;
        self.pc = match (word >> 13, argument >> 5) {
            (0b000, 0b000) => address,
            (0b000, 0b100) => {
                let jumps = self.y != 0;
                self.y = self.y.wrapping_sub(1);
                if jumps { address } else { next }
            }
            // IN PINS, 2, shifting left.
            (0b010, 0b000) if address == 2 => {
                self.isr = self.isr << 2 | self.lines & 3;
                next
            }
            // OUT ISR, 2, shifting right.
            (0b011, 0b110) if address == 2 => {
                self.isr = self.osr & 3;
                self.osr >>= 2;
                next
            }
            // PUSH noblock.
            (0b100, 0b000) if argument == 0 => {
                if self.queue.len() < QUEUE {
                    self.queue.push_back(self.isr);
                }
                self.isr = 0;
                next
            }
            // MOV, with or without turning every bit round.
            (0b101, to) => {
                let from = match argument & 7 {
                    0b010 => self.y,
                    0b110 => self.isr,
                    _ => panic!("word {word:#06x}"),
                };
                let value = match argument >> 3 & 3 {
                    0 => from,
                    1 => !from,
                    _ => panic!("word {word:#06x}"),
                };
                match to {
                    0b010 => self.y = value,
                    0b101 => return self.pc = (value & 0x1f) as u8,
                    0b110 => self.isr = value,
                    0b111 => self.osr = value,
                    _ => panic!("word {word:#06x}"),
                }
                next
            }
            // IRQ SET nowait.
            (0b110, 0b000) => {
                self.flags |= 1 << address;
                next
            }
            _ => panic!("word {word:#06x}"),
        };
    }

    /// The count itself, as a debugger would see it.
    pub fn count(&self) -> i32 {
        self.y as i32
    }

    /// The queue, read as the board reads it: while it is, the machine goes on.
    pub fn read(&mut self) -> Sample {
        let mut raw = 0;
        for _ in 0..=QUEUE {
            while self.queue.is_empty() {
                self.step();
            }
            raw = self.queue.pop_front().unwrap() as i32;
        }
        Sample { raw, lost: self.flags & 1 != 0 }
    }
}

impl Edges for Machine {
    fn read(&mut self) -> Sample {
        Machine::read(self)
    }

    fn rearm(&mut self) {
        self.flags &= !1;
    }
}

/// The lines at place `n` of their cycle: A leads when `n` grows.
pub fn lines_at(n: i64) -> u32 {
    [0b00, 0b01, 0b11, 0b10][n.rem_euclid(4) as usize]
}
