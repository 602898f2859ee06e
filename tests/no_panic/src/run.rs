//! Calls into `handturn::run`.
use crate::{any, keep};
use handturn::run::{self, Cuts, Encoder, Event, Frozen, Plan, State, Version, What};

pub fn calls() {
    keep(Frozen::new(any(), any(), any()));
    keep(Frozen::check(&any()));
    keep(Frozen::plan(&any()));
    keep(Version::check(any()));
    keep(What::by_thumb(any()));

    keep(Plan::place(&any::<Plan>(), any()));
    keep(Plan::step(&any(), any()));
    keep(Plan::part_at(&any::<Plan>(), any()));
    keep(Plan::home(&any()));
    keep(Plan::mark(&any::<Plan>(), any()));
    keep(Plan::ring(&any::<Plan>(), any(), any()));
    keep(Plan::past(&any(), &any()));

    keep(State::replay(&any::<Plan>(), any::<[Event; 8]>()));
    keep(State::resume(&any::<Plan>(), any(), any(), any::<[(u32, u32); 16]>()));
    keep(State::press(&any(), &any::<Plan>(), any()));
    keep(State::apply(&any(), &any::<Plan>(), any()));
    keep(State::next(&any(), &any::<Plan>(), any()));
    keep(State::back_event(&any(), any()));
    keep(State::undo_event(&any(), any()));
    keep(State::phase(&any(), &any::<Plan>()));
    keep(State::index(&any()));
    keep(State::legs(&any()));
    keep(State::round(&any()));
    keep(State::cuts(&any()));
    keep(State::left(&any(), &any::<Plan>()));
    keep(State::all_cut(&any(), &any::<Plan>()));
    keep(State::went_past(&any(), &any()));
    keep(State::back_move(&any(), &any()));
    if let Ok(fits) = State::fits(&any(), &any::<Plan>(), any()) {
        fits.for_each(keep);
    }
    counted();
    keep(run::stray(&any(), any()));

    Cuts::stretches(&any()).for_each(keep);
    keep(Cuts::count(&any()));
    keep(Cuts::contains(&any(), any()));
    Cuts::gaps(&any(), any()).for_each(keep);

    keep(Encoder::check(&any()));
    keep(Encoder::way(&any()));
    keep(Encoder::plan(&any(), any(), any()));
    keep(Encoder::errors(&any(), &any()));
    keep(Encoder::errors_of_parts(&any(), any()));
    keep(Encoder::target(&any(), &any(), any()));
    keep(Encoder::aim(&any(), &any(), any()));
}

/// What the readout asks of a run by counts.
fn counted() {
    let plan = any::<Encoder>().plan(any(), any());
    keep(State::resume(&plan, any(), any(), any::<[(u32, u32); 16]>()));
    keep(State::press(&any(), &plan, any()));
    keep(State::next(&any(), &plan, any()));
    keep(State::phase(&any(), &plan));
    keep(State::all_cut(&any(), &plan));
    if let Ok(fits) = State::fits(&any(), &plan, any()) {
        fits.for_each(keep);
    }
}
