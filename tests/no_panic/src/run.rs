//! Calls into `handturn::run`.
use crate::{any, keep};
use handturn::run::{self, Cuts, Encoder, Event, Frozen, Plan, State, Version, What};

pub fn calls() {
    keep(Frozen::new(any(), any(), any()));
    keep(Frozen::check(&any()));
    keep(Frozen::plan(&any()));
    keep(Version::check(any()));
    keep(What::by_thumb(any()));

    keep(Plan::place(&any(), any()));
    keep(Plan::step(&any(), any()));
    keep(Plan::part_at(&any(), any()));
    keep(Plan::home(&any()));
    keep(Plan::mark(&any(), any()));
    keep(Plan::ring(&any(), any(), any()));
    keep(Plan::past(&any(), &any()));

    keep(State::replay(&any(), any::<[Event; 8]>()));
    keep(State::press(&any(), &any(), any()));
    keep(State::apply(&any(), &any(), any()));
    keep(State::next(&any(), &any(), any()));
    keep(State::back_event(&any(), any()));
    keep(State::undo_event(&any(), any()));
    keep(State::phase(&any(), &any()));
    keep(State::index(&any()));
    keep(State::legs(&any()));
    keep(State::round(&any()));
    keep(State::cuts(&any()));
    keep(State::left(&any(), &any()));
    keep(State::all_cut(&any(), &any()));
    keep(State::went_past(&any(), &any()));
    keep(State::back_move(&any(), &any()));
    if let Ok(fits) = State::fits(&any(), &any(), any()) {
        fits.for_each(keep);
    }
    keep(run::stray(&any(), any()));

    Cuts::stretches(&any()).for_each(keep);
    keep(Cuts::count(&any()));
    keep(Cuts::contains(&any(), any()));
    Cuts::gaps(&any(), any()).for_each(keep);

    keep(Encoder::check(&any()));
    keep(Encoder::way(&any()));
    keep(Encoder::errors(&any(), &any()));
    keep(Encoder::target(&any(), &any(), any()));
    keep(Encoder::aim(&any(), &any(), any()));
}
