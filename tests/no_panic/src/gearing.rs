//! Calls into `handturn::thread::gearing` and the search for trains behind it.
use crate::{any, keep};
use handturn::thread::gearing::{self, Lathe, Lead};
use handturn::train::{self, Chain, Found, Search, Senses, Unmounted};

pub fn calls() {
    keep(Lead::of_pitch(any(), any()));
    keep(Lead::of_tpi(any(), any()));
    keep(Lead::of_module(any(), any()));
    keep(Lead::of_diametral_pitch(any(), any()));
    keep(Lead::check(&any()));
    keep(Lead::mm(&any()));
    keep(Lathe::check(&any()));
    keep(Lathe::cuts(&any(), &any()));
    keep(gearing::go_on::<4>(&mut any(), &any(), &any(), any()));
    keep(gearing::lacks(&any(), &any()));

    keep(Chain::train(&any()));
    Chain::pairs(&any()).for_each(keep);
    Chain::gears(&any()).for_each(keep);
    keep(Chain::gear_count(&any()));
    keep(Chain::idler_count(&any()));
    keep(Chain::teeth(&any()));
    keep(Chain::ratio(&any()));
    keep(Chain::same_way(&any()));
    keep(Senses::allow(any(), any()));
    keep(Found::is_exact(&any()));
    keep(Found::off(&any()));
    keep(Found::off_ppm(&any()));
    keep(Found::off_over(&any(), any()));
    keep(Unmounted::is_exact(&any()));
    keep(Search::<4>::new());
    keep(Search::<4>::run(&mut any(), &any(), any()));
    keep(Search::<4>::best(&any()));
    keep(Search::<4>::unmounted(&any()));
    keep(Search::<4>::covered(&any()));
    keep(Search::<4>::weighed(&any()));
    keep(Search::<4>::tried_six(&any()));
    keep(train::lacking(&any()));
}
