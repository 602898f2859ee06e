//! From a head back to the texts that give it, exactly.
use super::Entry;
use handturn::head::{Head, PlateStop, Sense};
use handturn::measure::write::{Decimal, Dms};
use handturn::measure::{Angle, Length};
use handturn::number::Fraction;

/// The text of `entry` that gives `head`; a head has no name of its own.
#[must_use]
pub fn write(head: &Head, entry: Entry) -> String {
    let (mounting, reach) = (&head.mounting, head.reach);
    let length = |length: Option<Length>| length.map(mm).unwrap_or_default();
    match entry {
        Entry::Name => entry.default().to_owned(),
        Entry::Ratio => exact(head.ratio) + " : 1",
        Entry::WorkTurns => sense(Some(head.work_turns)).to_owned(),
        Entry::Tilted => yes(head.tilted),
        Entry::DegreeRing => sense(head.degree_ring).to_owned(),
        Entry::Slack => exact(head.slack),
        Entry::SpindleClamp => yes(head.spindle_clamp),
        Entry::Plates => plates(head),
        Entry::PlateStop => match head.plate_stop {
            PlateStop::Fixed => "fixed".to_owned(),
            PlateStop::Withdraws => "withdraws".to_owned(),
        },
        Entry::Direct => spaced(head.direct.iter().map(u16::to_string)),
        Entry::WormDropsOut => yes(head.worm_drops_out),
        Entry::Gears => spaced(head.gears.iter().map(|gear| match gear.count {
            1 => gear.teeth.to_string(),
            count => gear.teeth.to_string() + "x" + &count.to_string(),
        })),
        Entry::StudDistance if mounting.distance == 0 => String::new(),
        Entry::StudDistance => mounting.distance.to_string(),
        Entry::StudMargin => mounting.margin.to_string(),
        Entry::MostIdlers => mounting.most_idlers.to_string(),
        Entry::OneIdler if mounting.one_idler_follows => "follows".to_owned(),
        Entry::OneIdler => "against".to_owned(),
        Entry::FourGears => yes(mounting.four_gears),
        Entry::ReachLeast => length(reach.map(|r| r.least)),
        Entry::ReachGreatest => length(reach.map(|r| r.greatest)),
        Entry::Pin => length(head.pin),
        Entry::ArmsLeast => degrees(head.arms.least),
        Entry::ArmsGreatest => degrees(head.arms.greatest),
        Entry::Handwheel => yes(head.handwheel.is_some()),
        Entry::HandwheelMarks => or_default(entry, head.handwheel.map(|d| d.marks.to_string())),
        Entry::HandwheelVernier => or_default(entry, head.handwheel.map(|d| d.vernier.to_string())),
        Entry::FineDial => yes(head.fine_dial.is_some()),
        Entry::FineShift => or_default(entry, head.fine_dial.map(|d| degrees(d.shift))),
        Entry::FineMarks => or_default(entry, head.fine_dial.map(|d| d.marks.to_string())),
        Entry::FineTravel => or_default(entry, head.fine_dial.map(|d| degrees(d.travel))),
        Entry::FineSlack => or_default(entry, head.fine_dial.map(|d| exact(d.slack))),
        Entry::WorkDiameter => mm(head.work_diameter),
    }
}

/// A fraction as a decimal where it ends within nine places, else as a fraction.
#[must_use]
pub fn exact(value: Fraction) -> String {
    let mut whole = value;
    for places in 0..=9 {
        if whole.is_whole() {
            return Decimal { value, places }.to_string();
        }
        match whole.times(10) {
            Ok(more) => whole = more,
            Err(_) => break,
        }
    }
    value.to_string()
}

/// A length in millimetres, exact.
#[must_use]
pub fn mm(length: Length) -> String {
    exact(length.mm()) + " mm"
}

/// An angle in degrees, minutes and seconds where these come out, else as part of a turn.
#[must_use]
pub fn degrees(angle: Angle) -> String {
    let ends = angle.arcsec().is_ok_and(|arcsec| {
        !arcsec.is_negative() && arcsec.times(1000).is_ok_and(Fraction::is_whole)
    });
    if ends { Dms { angle, places: 3 }.to_string() } else { angle.turns().to_string() + " turn" }
}

fn plates(head: &Head) -> String {
    let circle = |circle: &handturn::head::Circle| match circle.radius {
        None => circle.holes.to_string(),
        Some(radius) => circle.holes.to_string() + "(" + &exact(radius.mm()) + ")",
    };
    let plates: Vec<String> =
        head.plates.iter().map(|plate| spaced(plate.circles.iter().map(circle))).collect();
    plates.join(" / ")
}

fn spaced(items: impl Iterator<Item = String>) -> String {
    items.collect::<Vec<_>>().join(" ")
}

fn or_default(entry: Entry, text: Option<String>) -> String {
    text.unwrap_or_else(|| entry.default().to_owned())
}

fn yes(on: bool) -> String {
    if on { "yes".to_owned() } else { "no".to_owned() }
}

fn sense(sense: Option<Sense>) -> &'static str {
    match sense {
        Some(Sense::Clockwise) => "clockwise",
        Some(Sense::Anticlockwise) => "anticlockwise",
        None => "none",
    }
}
