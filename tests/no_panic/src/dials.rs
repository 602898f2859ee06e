//! Calls into dials.
use crate::{any, keep};
use handturn::dial::vernier::Vernier;
use handturn::dial::{fine, lines, screw, width};

pub fn calls() {
    keep(lines::graduate(any(), any(), any()));
    keep(lines::stops(any(), any(), &any()));
    keep(lines::figures(any(), any(), any()));
    keep(Vernier::of_parts(any(), any()));
    keep(Vernier::laid(&any()));
    keep(Vernier::line(&any(), any()));
    keep(Vernier::read(&any(), any()));
    keep(width::division(any(), any(), any()));
    keep(width::diameter(any(), any(), any()));
    keep(width::line(any(), any()));
    keep(screw::handy(any()));
    keep(screw::for_step(any(), any()));
    keep(fine::turn(any(), any()));
    keep(fine::radius(any(), any()));
    keep(fine::error(&any(), any(), any()));
    keep(fine::steps(&any()));
    keep(fine::design(&any()));
}
