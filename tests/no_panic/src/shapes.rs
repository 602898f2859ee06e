//! Calls into ratchets, splines, flats, clock wheels and cams.
use crate::{any, keep};
use handturn::gear::{cam, clock, flats, ratchet, spline};

pub fn calls() {
    keep(ratchet::cut(&any(), any()));
    keep(ratchet::face_teeth(any(), any()));
    keep(spline::cut(&any()));
    keep(flats::flats(&any()));
    keep(clock::sizes(&any()));
    keep(clock::flank(&any()));
    keep(cam::lobe(&any()));
    keep(cam::steps(&any()));
}
