//! Calls into `handturn::head`, `handturn::train` and `handturn::handle`.
use crate::{any, keep};
use handturn::handle::{Approach, Counter, Lines};
use handturn::head::{self, Head, read};
use handturn::train::{self, Chain, Found, Search, Senses, Stock, Train, Unmounted};

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

    keep(Chain::train(&any()));
    Chain::pairs(&any()).for_each(keep);
    Chain::gears(&any()).for_each(keep);
    keep(Chain::gear_count(&any()));
    keep(Chain::idler_count(&any()));
    keep(Chain::teeth(&any()));
    keep(Chain::ratio(&any()));
    keep(Chain::same_way(&any()));
    keep(Senses::allow(any(), any()));
    keep(Found::is_exact(&any()));
    keep(Found::off(&any()));
    keep(Found::off_ppm(&any()));
    keep(Found::off_over(&any(), any()));
    keep(Unmounted::is_exact(&any()));
    keep(Search::<4>::new());
    keep(Search::<4>::run(&mut any(), &any(), any()));
    keep(Search::<4>::best(&any()));
    keep(Search::<4>::unmounted(&any()));
    keep(Search::<4>::covered(&any()));
    keep(Search::<4>::weighed(&any()));
    keep(Search::<4>::tried_six(&any()));
    keep(train::lacking(&any()));

    keep(Approach::start(&any(), any()));
    keep(Approach::next(any(), &any(), any()));
    keep(Lines::step(any(), any()));
    keep(Counter::new(any()));
    keep(Counter::sample(any(), any()));
    keep(Counter::count(any()));
    keep(Counter::set(any(), any()));
}
