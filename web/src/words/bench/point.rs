//! Words of drill points.
use crate::words::{about, decimal};
use handturn::bench::point::{DrillPoint, PointDepths};

words! {
    NAME = "Drill point";
    ABOUT = "Depth to the tip, to the shoulder; spot drills";
    ALSO = "drill tip cone blind hole spot drill centre drill breakthrough 118 135 depth";
    DIAMETER = "Drill, mm";
    ANGLE = "Point angle";
    DEEP = "Depth given to";
    FULL_WAY = "the full diameter";
    TIP_WAY = "the tip";
    DEPTH = "That depth, mm";
    PLATE = "Thickness of the work, mm";
    SPOT = "Spot to a diameter of, mm";
    SPOT_ANGLE = "Spot drill’s angle";
    POINT = "Length of the point";
    TIP = "Tip below the surface";
    FULL = "Full diameter for";
    LEFT = "Left under the tip";
    THROUGH = "Tip goes, to be through";
    SPOT_DEEP = "Spot drill’s tip below the surface";
    CARE = "Clamp the work: a drill that breaks through grabs. Ease the feed as the tip comes out.";
    SOURCE = "geometry of the cone";
    BLUNT = "Counted to a sharp tip: the chisel edge of a real drill stands a little less far ahead.";
    CORNERS = "The spot is steeper than the drill’s point: the lips touch first at their corners and may chip. A spot of the same angle or wider starts the drill at its middle.";
    OUT = "The tip comes out of the work.";
    NOT_FULL = "The point is not in with its whole length.";
}

/// The question with its answer.
#[must_use]
pub(crate) fn title(drill: &DrillPoint, depths: &PointDepths) -> String {
    ["⌀ ", &*decimal(drill.diameter.mm(), 3), " mm: tip at ", &about(depths.tip.value, 3), " mm"]
        .concat()
}

/// The working.
#[must_use]
pub(crate) fn working(drill: &DrillPoint, depths: &PointDepths) -> Vec<String> {
    let diameter = decimal(drill.diameter.mm(), 3);
    let cot = about(depths.point.value * 2.0 / handturn::number::float::of(drill.diameter.mm()), 5);
    let (point, full, tip) =
        (about(depths.point.value, 4), about(depths.full.value, 4), about(depths.tip.value, 4));
    vec![
        "Point = diameter ÷ 2 × cot of half the angle".to_owned(),
        [&*diameter, " ÷ 2 × ", &cot, " = ", &point, " mm"].concat(),
        ["To the tip: ", &*full, " + ", &point, " = ", &tip, " mm"].concat(),
    ]
}
