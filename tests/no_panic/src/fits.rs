//! Calls into fits.
use crate::{any, keep};
use handturn::bench::fit::{self, Class, Fit};

pub fn calls() {
    keep(fit::read(any()));
    keep(Class::read(any()));
    keep(Class::is_hole(any()));
    keep(Class::deviations(any(), any()));
    keep(Fit::new(any(), any(), any()));
    keep(Fit::turn_to(&any(), any(), any(), any()));
}
