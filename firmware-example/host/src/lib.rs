//! Models of what the readout's logic talks to: the programmable input that
//! counts edges, a memory chip of the 24C family whose power can go at any byte,
//! and a bus that carries it. Written from the chips' data sheets, for tests.
pub mod chip;
pub mod pio;
