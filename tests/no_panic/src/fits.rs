//! Calls into fits, walls, chains of lengths, bent sheet.
use crate::{any, keep};
use handturn::bench::bend::{self, Bends, Metal};
use handturn::bench::chain::{self, Link, Total};
use handturn::bench::counterbore;
use handturn::bench::fit::{self, Class, Fit};
use handturn::bench::joggle;
use handturn::bench::shop_fit;
use handturn::bench::shrink::Shrink;
use handturn::measure::{Angle, Length};

pub fn calls() {
    keep(fit::read(any()));
    keep(Class::read(any()));
    keep(Class::is_hole(any()));
    keep(Class::deviations(any(), any()));
    keep(Class::limits(any(), any()));
    keep(Fit::new(any(), any(), any()));
    keep(Fit::turn_to(&any(), any(), any(), any()));
    keep(shop_fit::allowed(any(), any()));
    keep(Shrink::ring_at(&any(), any()));
    keep(Shrink::opened(&any()));
    keep(Shrink::clear_at(&any(), any(), any()));
    keep(counterbore::walls(&any()));
    keep(counterbore::largest(&any(), any()));
    keep(chain::read(any()));
    let links: [Link; 8] = any();
    keep(chain::sum(&links));
    keep(Total::keeps(&any(), any()));
    keep(Total::share(&any(), any()));
    let (legs, angles): ([Length; 8], [Angle; 7]) = any();
    let (sheet, corner) = any();
    keep(bend::fold(&Bends { sheet, legs: &legs, angles: &angles, corner }));
    keep(bend::neutral_by_ratio(any(), any()));
    keep(Metal::radius(&any(), any()));
    keep(joggle::step(&any()));
}
