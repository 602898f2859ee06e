//! Calls into wires, formers, springs and rivets.
use crate::{any, keep};
use handturn::bench::former::{self, Bend};
use handturn::bench::rivet::Rivet;
use handturn::bench::spring::{self, Across, Compression, Extension, Torsion};
use handturn::bench::wire::{self, Band, Metal, Stuff};
use handturn::measure::Length;

pub fn calls() {
    let owned: [Length; 9] = any();
    let text: &str = any();
    keep(Stuff::metal(any(), any()));
    keep(Band::middle(any()));
    keep(Metal::loaded_by_shear(&any(), any()));
    keep(Metal::loaded_by_bending(&any(), any()));
    keep(Across::mean(any(), any(), any()));
    keep(wire::gauge(text));
    keep(former::kept(any(), any(), any(), any(), any()));
    keep(Bend::former(&any(), &owned));
    keep(Bend::trial(&any(), any()));
    keep(Compression::pushed(&any()));
    keep(Compression::coils_for(&any(), any()));
    keep(Extension::pulled(&any()));
    keep(Torsion::turned(&any()));
    keep(spring::arbor(any(), any(), any(), any()));
    keep(Rivet::filled(&any()));
}
