//! A memory chip of the 24C family with two address bytes, and its power.
//!
//! Sources: data sheets of the family. EEPROM: bytes of a write wrap within
//! their page, the page is written after the stop and the chip is silent until
//! that is done; power lost meanwhile leaves the page's bytes partly new, partly
//! old, and the one that was under way anything. FRAM: a byte is written when its
//! last bit has come, addresses run on, and there is nothing to wait for.
use embedded_hal::delay::DelayNs;
use embedded_hal::i2c::{ErrorKind, ErrorType, I2c, NoAcknowledgeSource, Operation};
use std::cell::RefCell;
use std::rc::Rc;

/// What the chip is made of.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Kind {
    /// Page of so many bytes, written in so many microseconds.
    Eeprom { page: usize, write_us: u64 },
    /// Bytes.
    Fram,
}

/// The chip's insides, shared by the bus and the test.
pub struct Insides {
    /// Every byte.
    pub bytes: Vec<u8>,
    kind: Kind,
    pointer: usize,
    busy_until_us: u64,
    now_us: u64,
    /// Bus bytes until the power goes; none while it stays.
    pub cut_in: Option<u64>,
    /// What bytes that were under way become.
    pub chance: u64,
    /// Bus bytes since the power came, for telling where an operation ends.
    pub carried: u64,
    /// Whether the power is there.
    pub power: bool,
    /// A cell that does not hold what is written to it.
    pub worn: Option<usize>,
    /// A chip that does not answer.
    pub silent: bool,
}

/// The chip on a bus; clones are the same chip.
#[derive(Clone)]
pub struct Memory(pub Rc<RefCell<Insides>>);

impl Memory {
    /// A chip of 4096 bytes as it comes from the maker.
    pub fn new(kind: Kind) -> Self {
        Self::holding(kind, vec![0xff; 4096])
    }

    /// A chip that holds these bytes.
    pub fn holding(kind: Kind, bytes: Vec<u8>) -> Self {
        Self(Rc::new(RefCell::new(Insides {
            bytes,
            kind,
            pointer: 0,
            busy_until_us: 0,
            now_us: 0,
            cut_in: None,
            chance: 1,
            carried: 0,
            power: true,
            worn: None,
            silent: false,
        })))
    }

    /// Power comes back: what the chip holds stays, nothing else does.
    pub fn power_up(&self) {
        let mut inside = self.0.borrow_mut();
        (inside.power, inside.cut_in, inside.carried) = (true, None, 0);
        (inside.busy_until_us, inside.pointer) = (0, 0);
    }
}

/// Nothing answers.
#[derive(Debug)]
pub struct Silent;

impl embedded_hal::i2c::Error for Silent {
    fn kind(&self) -> ErrorKind {
        ErrorKind::NoAcknowledge(NoAcknowledgeSource::Unknown)
    }
}

impl ErrorType for Memory {
    type Error = Silent;
}

impl Insides {
    /// A byte crosses the bus; false when the power goes with it.
    fn carry(&mut self) -> bool {
        self.carried += 1;
        // A byte at 400 kHz.
        self.now_us += 23;
        if let Some(left) = &mut self.cut_in {
            if *left == 0 {
                self.power = false;
            } else {
                *left -= 1;
            }
        }
        self.power
    }

    fn random(&mut self) -> u64 {
        self.chance = self.chance.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1);
        self.chance >> 33
    }

    fn put(&mut self, at: usize, byte: u8) {
        let at = at % self.bytes.len();
        self.bytes[at] = if self.worn == Some(at) { byte & 0xfe } else { byte };
    }

    /// A page is written after the stop, cell by cell in no order that anyone
    /// promises: where the power goes meanwhile some are new, one is anything.
    fn write_page(&mut self, start: usize, bytes: &[u8], page: usize, write_us: u64) {
        let base = start / page * page;
        let place = |k: usize| base + (start - base + k) % page;
        // The cycle takes as long as so many bytes would on the bus.
        let cycle = bytes.len() as u64;
        let dies = self.cut_in.is_some_and(|left| left < cycle);
        if dies {
            let done = self.cut_in.unwrap_or(0) as usize;
            let turned = self.random() as usize;
            for k in 0..done {
                self.put(place((k + turned) % bytes.len()), bytes[(k + turned) % bytes.len()]);
            }
            let torn = self.random() as u8;
            self.put(place((done + turned) % bytes.len()), torn);
            self.power = false;
            self.carried += done as u64 + 1;
            return;
        }
        if let Some(left) = &mut self.cut_in {
            *left -= cycle;
        }
        self.carried += cycle;
        for (k, &byte) in bytes.iter().enumerate() {
            self.put(place(k), byte);
        }
        self.busy_until_us = self.now_us + write_us;
    }

    fn run(&mut self, address: u8, operations: &mut [Operation<'_>]) -> Result<(), Silent> {
        let answers = address == 0x50 && !self.silent && self.now_us >= self.busy_until_us;
        if !self.carry() || !answers {
            return Err(Silent);
        }
        let (mut written, mut reading) = (Vec::new(), false);
        for operation in operations.iter_mut() {
            match operation {
                Operation::Write(bytes) => {
                    for &byte in *bytes {
                        if !self.carry() {
                            // FRAM: what came before is in. EEPROM: without a stop nothing is.
                            return Err(Silent);
                        }
                        written.push(byte);
                        self.took(&written);
                    }
                }
                Operation::Read(bytes) => {
                    if !reading && !self.carry() {
                        return Err(Silent);
                    }
                    reading = true;
                    for byte in bytes.iter_mut() {
                        if !self.carry() {
                            return Err(Silent);
                        }
                        *byte = self.bytes[self.pointer % self.bytes.len()];
                        self.pointer += 1;
                    }
                }
            }
        }
        if let (Kind::Eeprom { page, write_us }, true) = (self.kind, written.len() > 2) {
            assert!(written.len() - 2 <= page, "more than a page at once");
            let start = self.pointer;
            self.write_page(start, &written[2..], page, write_us);
            if !self.power {
                return Err(Silent);
            }
        }
        Ok(())
    }

    /// The newest byte of a write has come.
    fn took(&mut self, written: &[u8]) {
        match written {
            [high, low] => self.pointer = usize::from(*high) << 8 | usize::from(*low),
            [_, _, data @ .., byte] if self.kind == Kind::Fram => {
                self.put(self.pointer + data.len(), *byte);
            }
            _ => {}
        }
    }
}

impl I2c for Memory {
    fn transaction(&mut self, address: u8, operations: &mut [Operation<'_>]) -> Result<(), Silent> {
        self.0.borrow_mut().run(address, operations)
    }
}

/// Waiting lets the chip's time go on.
impl DelayNs for Memory {
    fn delay_ns(&mut self, ns: u32) {
        self.0.borrow_mut().now_us += u64::from(ns) / 1_000;
    }
}
