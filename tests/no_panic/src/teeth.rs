//! Calls into what `handturn::gear` measures on teeth.
use crate::{any, keep};
use handturn::gear::{chordal, involute, pins, span};

pub fn calls() {
    keep(involute::inv(any()));
    keep(involute::angle(any()));
    keep(chordal::tooth(&any(), any()));
    keep(chordal::rack(&any(), any()));
    keep(span::over(&any(), any(), any()));
    keep(span::thickness(&any(), any(), any(), any()));
    keep(pins::range(&any(), any()));
    keep(pins::choose(&any(), any(), any()));
    keep(pins::over(&any(), any(), any()));
    keep(pins::thickness(&any(), any(), any(), any()));
    keep(pins::Range::check(&any(), any()));
}
