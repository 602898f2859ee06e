//! Calls into what cuts and measures a thread.
use crate::{any, keep};
use handturn::thread::dial::Dial;
use handturn::thread::infeed::{self, Feed, Nose};
use handturn::thread::passes::Plan;
use handturn::thread::wires::{self, Over, Range};
use handturn::thread::{blind, half_nuts, internal, lead, starts, still};

pub fn calls() {
    keep(Dial::mark(&any()));
    keep(Dial::nearest(&any(), any()));
    keep(Dial::at(&any(), any(), any()));
    keep(Nose::as_flat(any(), any()));
    keep(Feed::set_over(any(), any()));
    keep(infeed::infeed(&any()));
    keep(infeed::apex(any(), any()));
    keep(Plan::count(&any()));
    keep(Plan::pass(&any(), any()));
    keep(Plan::left_by_rounding(&any()));
    keep(Plan::measured(&any(), any(), any()));

    keep(internal::fits(&any()));
    keep(blind::stop(&any()));
    keep(blind::fastest(&any(), any()));
    keep(blind::drill(any(), any(), any(), any(), any()));
    keep(blind::pick_up(any(), any()));
    keep(half_nuts::closing(any(), any(), any()));
    keep(half_nuts::closes(any(), any(), any(), any()));
    keep(half_nuts::dial_gear(any(), any(), any()));
    keep(starts::by_slide(any(), any(), any(), &any()));
    keep(starts::gear_multiple(any(), any()));
    keep(starts::by_gear(any(), any(), any()));
    keep(starts::by_spindle(any()));
    keep(starts::by_carriage(any(), any(), any()));

    keep(lead::lead_angle(any(), any()));
    keep(lead::clearance(&any()));
    keep(still::still(any(), any(), any(), any(), any()));
    keep(wires::best(any(), any()));
    keep(wires::best_with_lead(&any()));
    keep(wires::range(&any()));
    keep(wires::choose(&any(), any()));
    keep(wires::over(&any(), any(), any()));
    keep(wires::over_one(&any(), any(), any(), any()));
    keep(wires::pitch_diameter(&any(), any(), any()));
    keep(wires::slant(&any(), any(), any()));
    keep(Range::check(&any(), any()));
    keep(Over::formula_will_do(&any()));
}
