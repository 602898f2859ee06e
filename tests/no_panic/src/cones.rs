//! Calls into the sums for the lathe in `handturn::bench`.
use crate::{any, keep};
use handturn::bench::chamfer::Chamfer;
use handturn::bench::cone::{self, Countersink};
use handturn::bench::heads::Standard;
use handturn::bench::heat::{self, Glow, Steel, Temper, Use};
use handturn::bench::knurl::{self, Fit, Knurl};
use handturn::bench::point::DrillPoint;
use handturn::bench::speed::{self, Cutting, Material, Speeds};

pub fn calls() {
    keep(cone::depth(any(), any(), any()));
    keep(Countersink::depths(&any()));
    keep(DrillPoint::depths(&any()));
    keep(Chamfer::legs(&any()));

    keep(Standard::heads(any()));
    keep(Standard::inches(any()));
    keep(Standard::from_memory(any()));
    keep(Standard::angle(any()));
    keep(Standard::size(any(), any()));

    keep(Temper::band(any()));
    keep(Glow::band(any()));
    keep(Use::colours(any()));
    keep(Use::band(any()));
    keep(Steel::hardening(any()));
    keep(heat::soak(any()));
    keep(heat::fahrenheit(any()));

    keep(Knurl::fit(&any()));
    keep(Fit::below(&any()));
    keep(Fit::above(&any()));
    keep(knurl::travel(any(), any(), any()));

    keep(Material::drilling(any()));
    keep(Cutting::band(any()));
    keep(speed::rpm(any(), any()));
    keep(Speeds::turns(&any()));
    keep(Speeds::owned(&any(), any(), any()));
}
