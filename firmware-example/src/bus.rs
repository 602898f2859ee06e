//! The bus of screen and memory chip, brought to rest after every transaction.
//!
//! The driver below leaves two things behind. It notices that nobody answered only
//! while its queue is full or while it reads: after a short write to a chip that is
//! not there the abort stays, and keeps the queue shut (RP2040 data sheet,
//! IC_CLR_TX_ABRT), so that the next one would wait for ever. And it does not wait
//! for the stop after a read: a short write that follows takes that stop for its
//! own, and the one after it switches the block off in the middle.
use embedded_hal::i2c::{ErrorType, I2c, Operation};
use rp2040_hal::i2c::Error;
use rp2040_hal::pac;

/// The bus.
pub struct Bus<B>(pub B);

impl<B> ErrorType for Bus<B> {
    type Error = Error;
}

impl<B: I2c<Error = Error>> I2c for Bus<B> {
    fn transaction(&mut self, address: u8, operations: &mut [Operation<'_>]) -> Result<(), Error> {
        let done = self.0.transaction(address, operations);
        let block = pac::I2C0::ptr();
        // SAFETY: the block lives at its fixed address; this struct holds the only
        // driver of it, which is not at work here, and only reads are made.
        let block = unsafe { &*block };
        while block.ic_status().read().mst_activity().is_active() {}
        block.ic_clr_stop_det().read();
        let abort = block.ic_tx_abrt_source().read().bits();
        if abort == 0 {
            return done;
        }
        block.ic_clr_tx_abrt().read();
        done.and(Err(Error::Abort(abort)))
    }
}
