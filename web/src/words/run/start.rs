//! What stands before the first cut.
use handturn::divide::{Place, Way};

words! {
    BEFORE_CUTTING = "Before the first cut";
    NAME_IT = "Name on the list";
    TWO_PRESSES = "Confirm “cut” and “at it” apart";
    TWO_PRESSES_WHY = "After a break it is then known whether this one is cut.";
    ROUNDS = "Rounds";
    START = "Start at 1";
    NOT_NOW = "Not now";

    ONE_ROUND = "One";
    SCRATCH_FIRST = "Scratch, cut";
    ROUGH_FINISH = "Rough, finish";
    ALL_THREE = "Scratch, rough, finish";
    RING_ZERO = "Set the degree ring to 0.";
    SLACK_FIRST = "Come up to this place clockwise, so that the slack lies on one side.";
}

/// To mark where counting starts.
#[must_use]
pub fn chalk(place: &Place) -> &'static str {
    match (place.pin, place.notch) {
        (Some(_), _) => "Chalk that hole: it is hole 0. Count holes the way the pin travels.",
        (_, Some(_)) => "Chalk that notch: it is notch 0.",
        _ => "",
    }
}

/// Which plate goes on, for ways with plates.
#[must_use]
pub fn plate_of(way: &Way) -> Option<String> {
    let circle = match way {
        Way::Plain(way) | Way::NearestHole(way) => way.circle,
        Way::Differential(way) => way.circle,
        Way::FineDial(way) => way.circle,
        Way::Compound(_) => {
            return Some(
                "Plate with both circles on; pin and back pin at their circles.".to_owned(),
            );
        }
        _ => return None,
    };
    let plate = (u32::from(circle.plate) + 1).to_string();
    Some(["Plate ", &plate, " on, pin at its ", &circle.holes.to_string(), " circle."].concat())
}

/// How the arms stand, from the sentence with both numbers.
#[must_use]
pub fn arms_at(shows: &str) -> String {
    ["Arms: ", shows, "."].concat()
}
