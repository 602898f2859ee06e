//! A straight wire at rest in a thread's groove, solved exactly.
//!
//! Method. Cylindrical coordinates (r, φ, z) about the thread's axis. The groove's
//! upper flank is the helicoid z = L·φ/2π + s/2 + (r − E/2)·tan a, with the lead L,
//! the width s of the groove at the pitch diameter E and half the flank angle a; half
//! a turn about the x axis carries it onto the lower flank. The wire, a cylinder of
//! radius ρ, is pressed towards the axis by a flat anvil, so its own axis crosses the
//! x axis square at a distance x, turned by β out of the plane of z = 0. It lies at
//! the least x at which it does not enter the flanks. There its distance from the
//! flank is stationary both along the flank and in β, which gives
//!
//! - tan β = L/(2π·x): the wire takes the lead angle at the radius of its own axis;
//! - tan γ = (tan a·cos β − sin φ·sin β)/cos φ, where (−sin γ, −cos γ·sin β,
//!   cos γ·cos β) points from the wire's axis to where it touches;
//! - the point that touches, ρ away in that direction, lies on the flank.
//!
//! Each of x and γ is computed from the other in turn until they stand still. The
//! derivation is our own; published tables of exact values confirm it (see the tests).
use crate::number::float::{PI, atan_turns, cos_turns, sin_turns, sqrt, tan_turns};

/// Rounds of the iteration: it gains a digit in two rounds or faster up to a lead angle of 45°.
const ROUNDS: u32 = 200;
/// Steps in which the crest's edge is walked.
const STEPS: u32 = 128;
/// Where the iteration stands still, relative to the pitch diameter: some last places of a float.
const STILL: f64 = 1e-14;

/// A groove as the wire sees it; lengths in millimetres.
#[derive(Clone, Copy, Debug)]
pub(super) struct Groove {
    /// Tangent of half the angle between the flanks.
    pub(super) tan: f64,
    /// Width of the groove at the pitch diameter, along the axis.
    pub(super) space: f64,
    /// Advance in one turn.
    pub(super) lead: f64,
    /// Pitch diameter.
    pub(super) pitch_diameter: f64,
}

/// A wire at rest.
#[derive(Clone, Copy, Debug)]
pub(super) struct Contact {
    /// Radius of the wire.
    pub(super) wire: f64,
    /// From the thread's axis to the wire's.
    pub(super) centre: f64,
    /// Radius of the thread at which it touches.
    pub(super) touches: f64,
    /// How far the last round still moved it.
    pub(super) moved: f64,
}

/// Sine and cosine from a tangent, the cosine above nought.
fn turned(tangent: f64) -> (f64, f64) {
    let cos = 1.0 / sqrt(1.0 + tangent * tangent);
    (tangent * cos, cos)
}

impl Groove {
    pub(super) fn new(half_angle: f64, space: f64, lead: f64, pitch_diameter: f64) -> Self {
        Self { tan: tan_turns(half_angle), space, lead, pitch_diameter }
    }

    /// Width of half the groove at radius `r`, along the axis.
    fn half_gap(&self, r: f64) -> f64 {
        self.space / 2.0 + (r - self.pitch_diameter / 2.0) * self.tan
    }

    /// The wire of radius `wire` at rest; `None` where it finds none.
    pub(super) fn rest(&self, wire: f64) -> Option<Contact> {
        let (sin, cos) = turned(self.tan);
        // Where it would lie in straight grooves.
        let apex = (self.pitch_diameter - self.space / self.tan) / 2.0;
        let mut at = Contact { wire, centre: apex + wire / sin, touches: 0.0, moved: 0.0 };
        let mut gamma = (sin, cos);
        self.settle(|groove| {
            let (sin_beta, cos_beta) = groove.slant(at.centre);
            let along = -wire * gamma.1 * sin_beta;
            let across = at.centre - wire * gamma.0;
            gamma = turned(groove.lean(along / across, sin_beta, cos_beta));
            let phi = atan_turns(along / across);
            let height = wire * gamma.1 * cos_beta - groove.lead * phi;
            let touches = groove.pitch_diameter / 2.0 + (height - groove.space / 2.0) / groove.tan;
            let along = wire * gamma.1 * sin_beta;
            let centre = sqrt(touches * touches - along * along) + wire * gamma.0;
            let moved = (centre - at.centre).abs();
            at = Contact { wire, centre, touches, moved };
            at
        })
    }

    /// The wire that touches at radius `touches`; `None` where there is none.
    pub(super) fn touching(&self, touches: f64) -> Option<Contact> {
        let half_gap = self.half_gap(touches);
        let (sin, cos) = turned(self.tan);
        let wire = half_gap / cos;
        let mut at = Contact { wire, centre: touches + wire * sin, touches, moved: 0.0 };
        let mut gamma = (sin, cos);
        self.settle(|groove| {
            let (sin_beta, cos_beta) = groove.slant(at.centre);
            let along = -at.wire * gamma.1 * sin_beta;
            let across = sqrt(touches * touches - along * along);
            gamma = turned(groove.lean(along / across, sin_beta, cos_beta));
            let phi = atan_turns(along / across);
            let wire = (groove.lead * phi + half_gap) / (gamma.1 * cos_beta);
            let centre = across + wire * gamma.0;
            let moved = (centre - at.centre).abs() + (wire - at.wire).abs();
            at = Contact { wire, centre, touches, moved };
            at
        })
    }

    /// The wire whose outside stands at radius `crest`; `None` where there is none.
    /// Method: Newton's steps with the slope of a straight groove.
    pub(super) fn flush(&self, crest: f64) -> Option<Contact> {
        let (sin, _) = turned(self.tan);
        let apex = (self.pitch_diameter - self.space / self.tan) / 2.0;
        let mut wire = (crest - apex) / (1.0 + 1.0 / sin);
        let slope = 1.0 + 1.0 / sin;
        self.settle(|groove| {
            let nowhere = Contact { wire, centre: f64::NAN, touches: f64::NAN, moved: f64::NAN };
            let Some(mut at) = groove.rest(wire) else { return nowhere };
            let step = (at.centre + wire - crest) / slope;
            wire -= step;
            at.moved += step.abs();
            at
        })
    }

    /// Whether the wire at rest clears the flank's outer edge at radius `crest`
    /// everywhere: on a steep thread with tall flanks a thin straight wire lies on the
    /// edges before and behind instead of on the flanks. Method: the edge is walked in
    /// small steps half a turn long, and the worst step once more in smaller ones.
    pub(super) fn clears(&self, at: &Contact, crest: f64) -> bool {
        let (sin_beta, cos_beta) = self.slant(at.centre);
        let asks = |phi: f64| {
            let z = self.lead * phi + self.half_gap(crest);
            let off = z * cos_beta - crest * sin_turns(phi) * sin_beta;
            let under = at.wire * at.wire - off * off;
            if under < 0.0 { 0.0 } else { crest * cos_turns(phi) + sqrt(under) }
        };
        let (mut worst, mut most) = (0.0, 0.0);
        for width in [0.5, 1.0 / 128.0, 1.0 / 8192.0] {
            let middle = worst;
            for step in 0..=STEPS {
                let phi = middle + width * (f64::from(step) / f64::from(STEPS) - 0.5);
                let asked = asks(phi);
                if asked > most {
                    (worst, most) = (phi, asked);
                }
            }
        }
        most <= at.centre * (1.0 + 1e-10)
    }

    /// Sine and cosine of the wire's slant with its axis at `centre`.
    fn slant(&self, centre: f64) -> (f64, f64) {
        turned(self.lead / (2.0 * PI * centre))
    }

    /// tan γ of the method, from the tangent of φ.
    fn lean(&self, tan_phi: f64, sin_beta: f64, cos_beta: f64) -> f64 {
        let (sin_phi, cos_phi) = turned(tan_phi);
        (self.tan * cos_beta - sin_phi * sin_beta) / cos_phi
    }

    /// Repeats `round` until it stands still; `None` where it does not, or leaves the thread.
    fn settle(&self, mut round: impl FnMut(&Self) -> Contact) -> Option<Contact> {
        for _ in 0..ROUNDS {
            let at = round(self);
            let real = at.centre > 0.0 && at.touches > 0.0 && at.wire > 0.0;
            if !(real && at.moved.is_finite()) {
                return None;
            }
            if at.moved <= STILL * self.pitch_diameter {
                return Some(at);
            }
        }
        None
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Width, wire and what is measured over three of them, less the pitch diameter; in inches.
    #[track_caller]
    fn check(starts: f64, lead_angle: f64, wire: f64, over: f64) {
        let pitch_diameter = starts / PI / tan_turns(lead_angle / 360.0);
        let groove = Groove::new(29.0 / 720.0, 0.5, starts, pitch_diameter);
        let at = groove.touching(pitch_diameter / 2.0).unwrap();
        assert!((2.0 * at.wire - wire).abs() < 1e-6, "{}", 2.0 * at.wire);
        let found = 2.0 * (at.centre + at.wire) - pitch_diameter;
        assert!((found - over).abs() < 1e-6, "{found}");
        let same = groove.rest(at.wire).unwrap();
        assert!((same.centre - at.centre).abs() < 1e-12);
        assert!((same.touches - pitch_diameter / 2.0).abs() < 1e-11);
        let flush = groove.flush(at.centre + at.wire).unwrap();
        assert!((flush.wire - at.wire).abs() < 1e-11);
    }

    #[test]
    fn a_wire_that_touches_at_the_pitch_line() {
        // Own arithmetic of an unrelated program, beside the rows of published/wires.csv.
        check(1.0, 5.5, 0.514101, 0.642597);
        check(2.0, 10.0, 0.508641, 0.635159);
        check(3.0, 11.5, 0.505973, 0.631262);
    }

    #[test]
    fn grooves_without_an_answer_say_so() {
        let thin = Groove::new(1.0 / 12.0, 0.5, 40.0, 0.4);
        assert!(thin.rest(0.3).is_none());
        assert!(thin.touching(-1.0).is_none());
        assert!(Groove::new(1.0 / 12.0, 0.5, f64::NAN, 10.0).rest(0.3).is_none());
    }
}
