//! Calls into ratchets, splines, flats, clock wheels and cams.
use crate::{any, keep};
use handturn::gear::spline_series::{self, Listed};
use handturn::gear::{cam, clock, flats, keyway, ratchet, spline};

pub fn calls() {
    keep(ratchet::cut(&any(), any()));
    keep(ratchet::face_teeth(any(), any()));
    keep(spline::cut(&any()));
    keep(Listed::shaft(any(), any()));
    keep(spline_series::sae(any(), any(), any(), any()));
    keep(keyway::keyway(&any()));
    keep(flats::flats(&any()));
    keep(clock::sizes(&any()));
    keep(clock::flank(&any()));
    keep(cam::lobe(&any()));
    keep(cam::steps(&any()));
    keep(cam::after(&any(), any()));
}
