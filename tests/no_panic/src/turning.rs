//! Calls into tapers, disks, arcs and curves by steps.
use crate::{any, keep};
use handturn::bench::steps::{self, Plan};
use handturn::bench::taper::{self, Ask, Taper};
use handturn::bench::tapers::Series;
use handturn::bench::{disks, sagitta};

pub fn calls() {
    keep(Taper::one_in(any()));
    keep(Taper::per_foot(any()));
    keep(Taper::half(any()));
    keep(Taper::between(any(), any(), any()));
    keep(taper::figures(any()));
    keep(Ask::of(any()));
    keep(taper::set(&any()));
    keep(taper::correct(&any()));
    keep(disks::disks(&any()));
    keep(sagitta::arc(&any()));
    keep(Series::sizes(any()));
    keep(Series::taper(any(), &any()));
    keep(steps::plan(&any()));
    let plan: Plan = any();
    keep(Plan::step(&plan, any()));
}
