//! Calls into `handturn::gear`.
use crate::{any, keep};
use handturn::gear::cutter::Set;
use handturn::gear::{DepthRule, Size, Spur, Tooth, cutter, found, swing, telling};
use handturn::gear::{pair, sound};

pub fn calls() {
    keep(Size::module(any()));
    keep(Size::times(any(), any()));
    keep(Size::check(any()));
    keep(DepthRule::usual(any(), any()));
    keep(Tooth::check(&any()));
    keep(Tooth::addendum(&any()));
    keep(Tooth::dedendum(&any()));
    keep(Spur::new(any(), any()));
    keep(Spur::check(&any()));
    keep(Spur::pitch_diameter(&any()));
    keep(Spur::outside_diameter(&any()));
    keep(Spur::root_diameter(&any()));
    keep(Spur::whole_depth(&any()));
    keep(Spur::arcs(&any()));

    keep(Set::eight(any()));
    keep(Set::fifteen(any()));
    keep(Set::of(any(), &any::<[handturn::number::Fraction; 9]>()));
    keep(cutter::for_teeth(any(), &any()));
    keep(cutter::for_virtual(any(), &any()));
    keep(cutter::spread(any(), any(), any(), any()));
    keep(found::found(&any(), any()));
    keep(sound::sound(&any()));
    keep(pair::mesh(&any()));
    keep(pair::opening(&any(), any(), any()));
    keep(pair::teeth_for(any(), any(), any()));
    keep(swing::swing(&any()));
    keep(telling::size_of(any(), any()));
    keep(telling::teeth_of(any(), any()));
    keep(telling::module_of_circular_pitch(any()));
    keep(telling::diameter_of_chord(any(), any()));
    keep(telling::chord_of_diameter(any(), any()));
}
