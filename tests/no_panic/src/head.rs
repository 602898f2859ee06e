//! Calls into `handturn::head`, `handturn::train` and `handturn::handle`.
use crate::{any, keep};
use handturn::handle::{Approach, Counter, Lines};
use handturn::head::{self, Head, read};
use handturn::train::{Stock, Train};

pub fn calls() {
    keep(Head::check(&any()));
    keep(head::plates_of(any()));
    keep(head::gears_of(any()));
    keep(read::plates(any()));
    keep(read::gears(any()));
    keep(read::notches(any()));

    keep(Train::ratio(&any()));
    keep(Train::compare_ratio(&any(), &any()));
    keep(Train::idler_count(&any()));
    keep(Train::gear_count(&any()));
    keep(Train::parts_to_fit(&any()));
    Train::gears(&any()).for_each(keep);
    keep(Train::same_way(&any()));
    keep(Stock::of(any()));
    Stock::gears(&any()).for_each(keep);
    keep(Stock::greatest_ratio(&any(), &any()));
    keep(Stock::could_divide(&any(), any()));
    Stock::simple(&any(), any(), any(), &any(), &mut |train| keep(train));
    Stock::compound(&any(), any(), any(), &any(), &mut |train| keep(train));

    keep(Approach::start(&any(), any()));
    keep(Approach::next(any(), &any(), any()));
    keep(Lines::step(any(), any()));
    keep(Counter::new(any()));
    keep(Counter::sample(any(), any()));
    keep(Counter::count(any()));
    keep(Counter::set(any(), any()));
}
