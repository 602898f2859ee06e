//! Calls into `handturn::measure`.
use crate::{any, keep};
use handturn::measure::{Angle, Length, read, sizes, write};

pub fn calls() {
    keep(Angle::from_turns(any()));
    keep(Angle::from_arcsec(any()));
    keep(Angle::from_degrees(any()));
    keep(Angle::turns(any()));
    keep(Angle::arcsec(any()));
    keep(Angle::degrees(any()));
    keep(Angle::dms(any()));
    keep(Angle::arc_mm(any(), any()));
    keep(Length::from_mm(any()));
    keep(Length::from_inches(any()));
    keep(Length::mm(any()));
    keep(Length::inches(any()));
    keep(read::number(any(), any()));
    keep(read::per_inch(any(), any()));
    keep(read::count(any(), any()));
    keep(read::ratio(any()));
    keep(read::angle(any()));
    keep(read::angles(any()));
    keep(sizes::each(any(), any(), &mut |_| any()));
    keep(sizes::each_number(any(), any(), any(), &mut |_| any()));
    keep(read::length(any(), any()));
    keep(write::places_for(any(), any()));
    keep(write::rounded(any(), any()));
}
