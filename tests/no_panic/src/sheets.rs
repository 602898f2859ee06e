//! Calls into `handturn::plate`: coordinates, disks and tapes.
use crate::{any, keep};
use handturn::plate::coordinates::{Layout, Screw};
use handturn::plate::disks;
use handturn::plate::tape::{self, Tape};

pub fn calls() {
    keep(Layout::check(&any()));
    keep(Layout::centre(&any(), any()));
    keep(Layout::hole(&any(), &any(), any()));
    keep(Layout::worst(&any(), &any()));
    keep(Screw::mark(&any()));
    keep(disks::round(any(), any()));
    keep(disks::in_ring(any(), any(), any(), any()));
    keep(disks::square_to(any(), any()));
    keep(disks::three_touching(any()));
    keep(Tape::sizes(&any()));
    keep(tape::drum(any(), any(), any()));
}
