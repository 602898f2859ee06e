//! Calls into `handturn::plate`.
use crate::{any, keep};
use handturn::plate::{self, Source, Sources, ring};

pub fn calls() {
    keep(Source::spread(any()));
    keep(Sources::check(&any()));
    keep(plate::budget(&any(), &any(), &any(), &any()));
    keep(plate::along(&any(), &any(), &any(), &any(), &mut |share| {
        keep(share);
        Ok(())
    }));
    keep(plate::arc_mm(any(), any()));
    keep(plate::need(&any(), &any()));
    keep(plate::fitted(&any(), any()));
    keep(plate::ladder(&any(), &any()));
    keep(ring::check(&any(), &any()));
    keep(ring::propose(any(), any(), &any()));
}
