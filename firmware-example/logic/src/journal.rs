//! The journal: records in a ring of slots, so that whatever moment the power
//! goes, the last confirmed record is whole.
//!
//! A slot is always written as a whole and never appended to: sequence number,
//! record, then the check sum over both. Of the slots whose check sum is right
//! the one with the greatest sequence number counts; a number alone counts for
//! nothing. The next record goes into the slot after the newest right one, so
//! a slot torn by a power cut is the next to be written over, and what was
//! confirmed before is not touched until thirty others have been written.
use crate::chip::{Chip, Fault};
use crate::record::{LENGTH, Record};
use crc::{CRC_32_ISO_HDLC, Crc, NoTable};
use embedded_hal::delay::DelayNs;
use embedded_hal::i2c::I2c;

/// Bytes of a slot: whole pages of every chip with pages of up to 128 bytes.
pub const SLOT: usize = 128;

/// Slots: 4096 bytes, the smallest chip with two address bytes.
pub const SLOTS: u8 = 32;

const SEQUENCE: usize = 4;
const SUM: usize = 4;
const ROOM: usize = SLOT - SEQUENCE - SUM;
const _: () = assert!(LENGTH <= ROOM);

/// Slots that are tried before a record is given up.
const TRIES: u8 = 4;

const CHECK: Crc<u32, NoTable> = Crc::<u32, NoTable>::new(&CRC_32_ISO_HDLC);

/// Where the next record goes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Journal {
    slot: u8,
    sequence: u32,
}

impl Journal {
    /// The journal as the chip holds it, and its newest record; none in a chip
    /// without a right one.
    ///
    /// # Errors
    /// [`Fault`] when the chip does not answer.
    pub fn open<B: I2c, D: DelayNs>(
        chip: &mut Chip<B, D>,
    ) -> Result<(Self, Option<Record>), Fault> {
        let mut numbers = [0; SLOTS as usize];
        for (slot, number) in (0..SLOTS).zip(&mut numbers) {
            let mut bytes = [0; SEQUENCE];
            chip.read(address(slot), &mut bytes)?;
            *number = u32::from_le_bytes(bytes);
        }
        // From the greatest number down, until one is right.
        let mut below = None;
        while let Some((slot, sequence)) = greatest(&numbers, below) {
            if let Some(record) = read(chip, slot, sequence)? {
                let journal = Self { slot, sequence };
                return Ok((journal.next(), Some(record)));
            }
            below = Some((sequence, slot));
        }
        Ok((Self { slot: 0, sequence: 0 }, None))
    }

    /// Writes `record` and reads it back; a slot that does not hold it is passed over.
    /// After `Ok` it is what [`Journal::open`] finds.
    ///
    /// # Errors
    /// [`Fault`] when the chip does not answer or no slot holds the record. What
    /// it holds then is this record or the one before.
    pub fn store<B: I2c, D: DelayNs>(
        &mut self,
        chip: &mut Chip<B, D>,
        record: &Record,
    ) -> Result<(), Fault> {
        for _ in 0..TRIES {
            let bytes = slot_of(self.sequence, record);
            let at = *self;
            chip.write(address(at.slot), &bytes)?;
            let mut held = [0; SLOT];
            chip.read(address(at.slot), &mut held)?;
            *self = at.next();
            if held == bytes {
                return Ok(());
            }
        }
        Err(Fault)
    }

    const fn next(self) -> Self {
        let slot = self.slot.saturating_add(1);
        Self {
            slot: if slot < SLOTS { slot } else { 0 },
            sequence: self.sequence.saturating_add(1),
        }
    }
}

fn address(slot: u8) -> u32 {
    u32::from(slot) << SLOT.trailing_zeros()
}

/// The greatest number, and of equal ones the last slot, below `below`.
fn greatest(numbers: &[u32], below: Option<(u32, u8)>) -> Option<(u8, u32)> {
    let all = (0_u8..).zip(numbers).map(|(slot, &number)| (number, slot));
    let most = all.filter(|&one| below.is_none_or(|below| one < below)).max()?;
    Some((most.1, most.0))
}

/// The bytes of a slot with `record` as number `sequence`.
fn slot_of(sequence: u32, record: &Record) -> [u8; SLOT] {
    let mut bytes = [0; SLOT];
    let (head, rest) = bytes.split_at_mut(SEQUENCE);
    let (body, sum) = rest.split_at_mut(ROOM);
    head.copy_from_slice(&sequence.to_le_bytes());
    for (place, byte) in body.iter_mut().zip(record.write()) {
        *place = byte;
    }
    sum.copy_from_slice(&sum_of(head, body).to_le_bytes());
    bytes
}

fn read<B: I2c, D: DelayNs>(
    chip: &mut Chip<B, D>,
    slot: u8,
    sequence: u32,
) -> Result<Option<Record>, Fault> {
    let mut bytes = [0; SLOT];
    chip.read(address(slot), &mut bytes)?;
    let (head, rest) = bytes.split_at(SEQUENCE);
    let (body, sum) = rest.split_at(ROOM);
    let right = sum == sum_of(head, body).to_le_bytes() && head == sequence.to_le_bytes();
    let Some(record) = body.first_chunk::<LENGTH>().filter(|_| right) else { return Ok(None) };
    Ok(Record::read(record))
}

fn sum_of(head: &[u8], body: &[u8]) -> u32 {
    let mut digest = CHECK.digest();
    digest.update(head);
    digest.update(body);
    digest.finalize()
}
