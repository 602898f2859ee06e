//! Calls into `handturn::gear`.
use crate::{any, keep};
use handturn::gear::{involute, Size, Spur, Tooth};

pub fn calls() {
    keep(involute::inv(any()));
    keep(involute::angle(any()));
    keep(Size::module(any()));
    keep(Size::times(any(), any()));
    keep(Size::check(any()));
    keep(Tooth::check(&any()));
    keep(Tooth::addendum(&any()));
    keep(Tooth::dedendum(&any()));
    keep(Spur::new(any(), any()));
    keep(Spur::check(&any()));
    keep(Spur::pitch_diameter(&any()));
    keep(Spur::outside_diameter(&any()));
    keep(Spur::root_diameter(&any()));
    keep(Spur::whole_depth(&any()));
}
