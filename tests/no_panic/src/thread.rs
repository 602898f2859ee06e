//! Calls into `handturn::thread`.
use crate::{any, keep};
use handturn::thread::taper::Taper;
use handturn::thread::{
    Form, Series, Thread, drill_list, drills, fitting, limits, name, ready, which,
};

pub fn calls() {
    form();
    series();
    ready();
    sizes();
    keep(Taper::read(any()));
    keep(Taper::sizes(&any()));
    keep(Thread::check(&any()));
    keep(limits::usual(any()));
    keep(limits::limits(&any(), any()));
    keep(Thread::new(any(), any(), any(), any(), any()));
    keep(Thread::lead(&any()));
    keep(Thread::tpi(&any()));
    keep(Thread::pitch_diameter(&any()));
    keep(Thread::minor_internal(&any()));
    keep(Thread::minor_external(&any()));
    keep(Thread::major_internal(&any()));
    keep(handturn::thread::rounded(any(), any()));
}

fn form() {
    keep(Form::own(any(), any(), any(), any()));
    keep(Form::sharp_height(&any(), any()));
    keep(Form::external_depth(&any(), any()));
    keep(Form::internal_depth(&any(), any()));
    keep(Form::clearance(&any(), any()));
    keep(Form::at(&any(), any(), any()));
}

fn series() {
    keep(Series::form(any()));
    keep(Series::size(any(), any()));
    keep(Series::sizes(any()));
    keep(Series::thread(any(), any()));
    keep(Series::called(any(), any()));
    keep(name::read(any()));
    name::write(any(), any(), &mut |piece| keep(piece));
}

fn ready() {
    keep(ready::half_angle(&any()));
    keep(ready::nose(&any()));
    keep(ready::cuts(any()));
    keep(ready::blank(&any(), any(), any()));
    keep(ready::measured(&any(), any()));
    keep(ready::infeed(&any(), any(), any(), any(), any(), any()));
}

fn sizes() {
    keep(drills::DrillSet::drill(any(), any()));
    keep(drills::tapping(&any(), any(), any()));
    keep(drill_list::each(any(), &mut |_| any()));
    keep(drills::at_least(any(), any()));
    keep(fitting::blank(&any(), any()));
    keep(fitting::core_hole(&any(), any()));
    keep(fitting::clearance_hole(&any(), any()));
    keep(fitting::relief(&any(), any()));
    keep(fitting::chamfers(&any()));
    keep(fitting::engagement(&any()));
    keep(which::which(&any()));
    keep(which::reasons(&any(), &any()));
}
