//! Lengths and wide numbers, said shortly.
use crate::part;
use crate::wide::Wide;
use handturn::measure::Length;

pub(crate) fn mm(num: i64, den: i64) -> Length {
    Length::from_mm(part(num, den))
}

pub(crate) fn wide(length: Length) -> Wide {
    Wide::of(length.mm())
}

pub(crate) fn whole(n: i64) -> Wide {
    Wide::whole(n)
}

pub(crate) fn ratio(num: i64, den: i64) -> Wide {
    Wide::of(part(num, den))
}

pub(crate) fn half(of: &Wide) -> Wide {
    of.over(&whole(2))
}
