//! Words of straight teeth.
use crate::words::{about, about_mm, count, decimal, in_mm, inches, mm};
use handturn::gear::Spur;
use handturn::gear::found::{Blank, Height};
use handturn::gear::sound::Sound;
use handturn::gear::swing::{Room, Setup};
use handturn::measure::Length;
use handturn::number::Fraction;

words! {
    SHIFT = "Shift, in modules";
    THINNED = "Each tooth thinner by, mm";
    MORE_WHY = "Shift moves the cutter out from the centre and makes the blank larger. Thinning leaves backlash.";
    TURN_TO = "Turn the blank to";
    PITCH_CIRCLE = "Pitch circle";
    BOTTOM = "Bottom of the gaps";
    BLANK_FROM = "Teeth and two addenda of one module each, times the module: the handbook’s rule, exact.";
    AS_FOUND = "The blank as it came out";
    FOUND = "Its outside measured, mm (empty: as drawn)";
    FOUND_WHY = "A blank that came out a little small or large still makes a good wheel: the depth goes by the pitch circle.";
    SWINGS = "Does it swing";
    SET_UP = "Head, cutter and arbor";
    SEEN_ALONG = "Seen along the wheel’s axis, to scale; the cutter’s width is only shown.";
    CENTRE_HEIGHT = "Centre height, mm";
    CUTTER_DIAMETER = "Cutter diameter, mm";
    COLLAR = "Arbor collar or nut, mm";
    BESIDE = "Beside it, above centre, mm";
    ROOM = "Room wanted, mm";
    TOUCHING = "Arbor over the table, touching on";
    AT_DEPTH = "Arbor over the table, full depth";
    LEAST_CUTTER = "Least cutter that clears all";
    TABLE = "table";
    ARBOR = "arbor and collars";
    SWING_WHY = "Beside it: what dog, tailstock or the blank’s own nut reach above its centre below the arbor; empty where nothing does.";
    TOP_LAND = "Top of a tooth, along the outside";
    FEWEST = "Not undercut from";
    FEWEST_WHY = "of this rack and shift";
    WHOLE_DEPTH = "Whole depth";
    FROM_FOUND = "Depth from this blank";
}

/// The blank, worked by hand.
#[must_use]
pub fn blank_line(wheel: &Spur) -> String {
    let module = wheel.tooth.size.module().map(Length::mm).unwrap_or(Fraction::ZERO);
    let outside = wheel.outside_diameter().map_or_else(|_| String::new(), in_mm);
    let teeth = wheel.teeth.to_string();
    let more = if wheel.shift.is_zero() {
        String::new()
    } else {
        [" + 2 × ", &decimal(wheel.shift, 4)].concat()
    };
    let add = wheel.tooth.addendum().and_then(|a| a.mm().checked_div(module));
    let add = decimal(add.unwrap_or(Fraction::ONE), 4);
    ["Outside = (", &teeth, " + 2 × ", &add, &more, ") × ", &decimal(module, 4), " = ", &outside]
        .concat()
}

/// The whole depth, worked by hand.
#[must_use]
pub fn depth_line(wheel: &Spur) -> String {
    let parts = wheel.tooth.addendum().and_then(|a| Ok((a, wheel.tooth.dedendum()?)));
    let (Ok((above, below)), Ok(depth)) = (parts, wheel.whole_depth()) else {
        return String::new();
    };
    ["Whole depth = ", &mm(above), " above + ", &mm(below), " below = ", &in_mm(depth)].concat()
}

/// How deep a blank that is not as drawn is cut.
#[must_use]
pub fn cut_deep(blank: &Blank) -> String {
    ["Cut it ", &mm(blank.depth), " mm deep (", &inches(blank.depth), " in)"].concat()
}

/// What becomes of its teeth.
#[must_use]
pub fn height(blank: &Blank) -> String {
    let over = if blank.over.mm().is_negative() { "under" } else { "over" };
    let by = mm(Length::from_mm(blank.over.mm().abs()));
    let end = match blank.height {
        Height::Drawn | Height::Fair => "That is no harm.",
        Height::Low => {
            "They carry for less of the way than stub teeth would: turn another blank for a loaded wheel."
        }
        Height::High => {
            "Less than half of the clearance is left at the mate’s roots: turn the blank down."
        }
        Height::Bottoms => "They would reach the bottom of the mate’s gaps: turn the blank down.",
    };
    [
        "It is ",
        &by,
        " mm ",
        over,
        " size; the teeth stand ",
        &mm(blank.addendum),
        " mm above the pitch circle. ",
        end,
    ]
    .concat()
}

/// What clears and what is in the way.
#[must_use]
pub fn room(room: &Room) -> Vec<String> {
    let line = |what: &str, left: Length, clears: bool| {
        if left.mm().is_negative() {
            return [what, " is in the way by ", &mm(Length::from_mm(left.mm().abs())), " mm."]
                .concat();
        }
        let short = if clears { "." } else { ": less than the room wanted." };
        [what, " clears by ", &in_mm(left), short].concat()
    };
    let mut lines = vec![
        line("The table", room.over_table, room.table_clears),
        line("The collar on the arbor, at full depth,", room.under_collar, room.collar_clears),
    ];
    if let Some(left) = room.over_head {
        lines.push(line("What stands beside the blank", left, room.head_clears));
    }
    lines
}

/// The swing in a sentence.
#[must_use]
pub fn swing_name(setup: &Setup, room: &Room) -> String {
    [
        "The blank of ",
        &in_mm(setup.outside),
        " over the table, its centre ",
        &mm(setup.centre_height),
        " mm high; the cutter of ",
        &mm(setup.cutter),
        " mm at full depth, its arbor ",
        &mm(room.at_depth),
        " mm high.",
    ]
    .concat()
}

/// From how many teeth on.
#[must_use]
pub fn fewest(teeth: u32) -> String {
    count(teeth, "tooth", "teeth")
}

/// What is not sound about the teeth.
#[must_use]
pub fn unsound(sound: &Sound) -> Vec<String> {
    let mut lines = Vec::new();
    if sound.undercut {
        lines.push([
            "Undercut: a rack or hob would cut into the foot of these teeth, and a form cutter leaves the mate’s tips no room there. A shift of ",
            &about(sound.clear_shift.value, 3), " modules or more clears it.",
        ].concat());
    }
    if sound.thin {
        lines.push(
            [
                "Thin tops: ",
                &about_mm(sound.top_land.value),
                " mm is under a quarter of the module (",
                &in_mm(sound.least_land),
                "). Less shift, or a smaller blank.",
            ]
            .concat(),
        );
    }
    lines
}
