//! Calls into the slanted kinds of `handturn::gear`: helical wheels and the table
//! geared for them, worms, bevels and racks.
use crate::{any, keep};
use handturn::gear::table::{self, Job, Mill};
use handturn::gear::{self, Bevel, Helical, Rack, Worm, WormPair};

pub fn calls() {
    keep(Helical::check(&any()));
    keep(Helical::sizes(&any()));
    keep(gear::crossed(&any(), &any()));
    keep(Job::of(&any(), any(), any()));
    keep(Mill::lead(&any(), any()));
    keep(Mill::cuts(&any(), &any(), &any()));
    keep(table::divides(any()));
    keep(table::go_on::<4>(&mut any(), &any(), &any(), any()));
    keep(table::lacks(&any(), &any()));
    keep(Worm::lead(&any()));
    keep(Worm::sizes(&any()));
    keep(WormPair::wheel(&any()));
    keep(Bevel::check(&any()));
    keep(Bevel::sizes(&any()));
    keep(Rack::sizes(&any()));
    keep(Rack::place(&any(), any()));
}
