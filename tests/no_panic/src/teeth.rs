//! Calls into what `handturn::gear` measures on teeth.
use crate::{any, keep};
use handturn::gear::pins::Range;
use handturn::gear::{Internal, chordal, involute, outline, pins, span, trial};

pub fn calls() {
    keep(involute::inv(any()));
    keep(involute::angle(any()));
    keep(chordal::tooth(&any(), any()));
    keep(chordal::rack(&any(), any()));
    keep(span::over(&any(), any(), any()));
    keep(span::thickness(&any(), any(), any(), any()));
    keep(outline::half_gap(&any(), any()));
    keep(pins::range(&any(), any()));
    keep(pins::choose(&any(), any(), any()));
    keep(pins::over(&any(), any(), any()));
    keep(pins::thickness(&any(), any(), any(), any()));
    keep(trial::wanted(&any()));
    keep(trial::deeper(&any(), any()));
    keep(Internal::check(&any()));
    keep(Internal::sizes(&any()));
    keep(Internal::between_pins(&any(), any()));
    keep(Range::check(&any(), any()));
}
