//! Calls into leaves, blocks and tilts.
use crate::{any, keep};
use handturn::bench::centre;
use handturn::bench::dovetail;
use handturn::bench::square;
use handturn::bench::stack::{self, Stack};
use handturn::bench::tilt::{self, Tilt};
use handturn::bench::vee;
use handturn::gear::flats;
use handturn::measure::Length;
use handturn::plate::coordinates::{Layout, Screw};

pub fn calls() {
    let owned: [Length; 9] = any();
    keep(stack::stacks(any(), any(), &owned, any()));
    keep(Stack::is_exact(&any()));
    keep(Stack::count(&any()));
    keep(Tilt::lift(&any()));
    keep(Tilt::between(&any(), any()));
    keep(Tilt::choices(&any(), any(), &owned, any()));
    keep(Screw::after(&any(), any()));
    keep(Screw::after_about(&any(), any()));
    keep(Layout::touched(any(), any()));
    keep(flats::largest(any(), any()));
    keep(centre::moves(&any()));
    keep(vee::rest(&any()));
    keep(square::square(&any()));
    keep(dovetail::measure(&any()));
    keep(tilt::angle(any(), any(), any()));
}
