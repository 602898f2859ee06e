//! Wheels with slanted teeth, the table geared for them, worms, bevels and racks.
use super::{Outcome, each, must};
use handturn::gear::table::{Geared, Helix, Job, Mill, go_on};
use handturn::gear::{
    Axial, Bevel, Depth, DepthRule, Helical, Rack, Size, Tooth, Worm, WormPair, crossed,
};
use handturn::head::{Mounting, gears_of};
use handturn::measure::{Angle, Length};
use handturn::number::{Approx, Fraction, float};
use handturn::thread::Hand;
use handturn::thread::dial::{Dial, Reads};
use handturn::train::{Search, Six};
use handturn_tests::heads::counts;
use handturn_tests::rows::{fraction, half_a_place};
use serde::Deserialize;

/// `10 DP` or `3 mm`, and the unit that the row's lengths are in.
pub(super) fn size(text: &str) -> (Size, f64) {
    match text.split_once(' ') {
        Some((number, "DP")) => (Size::DiametralPitch(fraction(number)), 25.4),
        Some((number, "mm")) => (Size::Module(Length::from_mm(fraction(number))), 1.0),
        _ => panic!("{text:?}"),
    }
}

/// `1/4 in` or `5 mm`.
fn length(text: &str) -> Length {
    match text.split_once(' ') {
        Some((number, "in")) => Length::from_inches(fraction(number)).expect("small"),
        Some((number, "mm")) => Length::from_mm(fraction(number)),
        _ => panic!("{text:?}"),
    }
}

/// `7.76517` degrees, or `10 48.7` degrees and minutes.
fn degrees(text: &str) -> (Fraction, Fraction) {
    match text.split_once(' ') {
        None => (fraction(text), half_a_place(text)),
        Some((whole, minutes)) => {
            let sixtieth = |n: Fraction| n.over(60).expect("small");
            let all = fraction(whole).checked_add(sixtieth(fraction(minutes))).expect("small");
            (all, sixtieth(half_a_place(minutes)))
        }
    }
}

fn angle(text: &str) -> Angle {
    Angle::from_degrees(degrees(text).0).expect("small")
}

fn rule(text: &str) -> DepthRule {
    match text {
        "old" => DepthRule::Old,
        "coarse" => DepthRule::Coarse,
        _ => panic!("{text:?}"),
    }
}

/// `came`, in the row's unit, is as printed to the last place; nothing printed, nothing held.
fn printed(what: &str, came: Approx, unit: f64, printed: &str) -> Result<(), String> {
    if printed.is_empty() {
        return Ok(());
    }
    let (wanted, slack) = degrees(printed);
    let off = (came.value / unit - float::of(wanted)).abs();
    let allowed = float::of(slack) + came.bound / unit + 1e-12;
    must(off <= allowed, || format!("{what}: {} for {printed}", came.value / unit))
}

/// Both of a pair: `26.56505 63.43495`, or `18 26 71 34` in degrees and minutes.
fn both(what: &str, came: [Approx; 2], unit: f64, pair: &str) -> Result<(), String> {
    let words: Vec<&str> = pair.split_whitespace().collect();
    let half = words.len() / 2;
    let [one, other] = [&words[..half], &words[half..]].map(|words| words.join(" "));
    printed(what, came[0], unit, &one)?;
    printed(what, came[1], unit, &other)
}

fn plainly(length: Length) -> Approx {
    Approx { value: float::of(length.mm()), bound: 0.0 }
}

#[derive(Deserialize)]
struct Slanted {
    teeth: u32,
    size: String,
    helix: String,
    pitch: String,
    outside: String,
    lead: String,
    #[serde(rename = "virtual")]
    virtual_teeth: String,
}

pub(crate) fn helical() -> Vec<Outcome> {
    each("wheel_helix.csv", |row: &Slanted| {
        let (size, unit) = size(&row.size);
        let wheel = helix(row.teeth, size, angle(&row.helix), Hand::Right);
        let check = || {
            let sizes = wheel.sizes().map_err(|e| e.to_string())?;
            printed("pitch diameter", sizes.pitch_diameter, unit, &row.pitch)?;
            printed("outside", sizes.outside_diameter, unit, &row.outside)?;
            printed("lead", sizes.lead, unit, &row.lead)?;
            printed("virtual teeth", sizes.virtual_teeth, 1.0, &row.virtual_teeth)
        };
        (false, check())
    })
}

fn helix(teeth: u32, size: Size, helix: Angle, hand: Hand) -> Helical {
    let face = Length::from_mm(Fraction::whole(20));
    Helical { teeth, tooth: Tooth { size, ..Tooth::default() }, helix, hand, face }
}

#[derive(Deserialize)]
struct Pair {
    first: String,
    second: String,
    shafts: String,
    distance: String,
}

/// Wheels of module 3, written as teeth, helix angle and hand.
pub(crate) fn crossing() -> Vec<Outcome> {
    let wheel = |text: &str| {
        let words: Vec<&str> = text.split(' ').collect();
        let hand = if words[2] == "left" { Hand::Left } else { Hand::Right };
        helix(words[0].parse().expect("teeth"), size("3 mm").0, angle(words[1]), hand)
    };
    each("wheel_crossed.csv", |row: &Pair| {
        let check = || {
            let pair =
                crossed(&wheel(&row.first), &wheel(&row.second)).map_err(|e| e.to_string())?;
            must(pair.shafts == angle(&row.shafts), || format!("{:?}", pair.shafts))?;
            printed("distance", pair.centre_distance, 1.0, &row.distance)
        };
        (false, check())
    })
}

#[derive(Deserialize)]
struct Geartrain {
    screw: String,
    ratio: String,
    geared: String,
    drivers: String,
    driven: String,
    lead: String,
    grooves: u32,
    teeth_on: Option<u32>,
}

/// The gears of the row and three idlers are owned: the row's train is among those found,
/// cuts the lead printed, and where it sits on the spindle divides as printed.
pub(crate) fn leads() -> Vec<Outcome> {
    each("wheel_leads.csv", |row: &Geartrain| (false, lead(row)))
}

fn lead(row: &Geartrain) -> Result<(), String> {
    let gears = gears_of(&counts::<u16>(&format!("{} {} 41 47 73", row.drivers, row.driven)));
    let mill = Mill {
        screw: length(&row.screw),
        ratio: fraction(&row.ratio),
        gears: gears.map_err(|e| e.to_string())?,
        mounting: Mounting::default(),
        same_way_cuts: Hand::Right,
    };
    let face = Length::from_mm(Fraction::whole(20));
    let turned = |drivers: &str, driven: &str| {
        counts::<i64>(driven)
            .into_iter()
            .try_fold(Fraction::ONE, Fraction::times)
            .and_then(|all| counts::<i64>(drivers).into_iter().try_fold(all, Fraction::over))
            .expect("small")
    };
    let geared = if row.geared == "spindle" { Geared::Spindle } else { Geared::Worm };
    let machine = mill.lead(geared).map_err(|e| e.to_string())?;
    let exact = machine.mm().checked_mul(turned(&row.drivers, &row.driven)).expect("small");
    let wanted = Length::from_mm(exact);
    let unit = if row.lead.ends_with("in") { 25.4 } else { 1.0 };
    let number = row.lead.split(' ').next().unwrap_or_default();
    printed("lead", plainly(wanted), unit, number)?;
    let job = Job {
        helix: Helix::Lead { lead: wanted, diameter: face },
        hand: Hand::Right,
        grooves: row.grooves,
        face,
        geared,
        six: Six::Never,
    };
    let mut search = Search::<400>::new();
    while !go_on(&mut search, &job, &mill, u32::MAX).map_err(|e| e.to_string())? {}
    let sorted = |teeth: Vec<u16>| {
        let mut teeth = teeth;
        teeth.sort_unstable();
        teeth
    };
    let mut found = false;
    for train in search.best() {
        let cuts = mill.cuts(&job, train).map_err(|e| e.to_string())?;
        let drivers = sorted(cuts.chain.pairs().map(|pair| pair.driver).collect());
        let driven = sorted(cuts.chain.pairs().map(|pair| pair.driven).collect());
        let own = drivers == counts::<u16>(&row.drivers) && driven == counts::<u16>(&row.driven);
        found |= own
            && cuts.exact
            && cuts.lead == wanted
            && row.teeth_on.is_none_or(|on| cuts.teeth_on == Some(on));
    }
    must(found, || "these gears are not offered".into())
}

#[derive(Deserialize)]
struct Worms {
    starts: u8,
    pitch: String,
    diameter: String,
    angle: String,
    rule: String,
    lead: String,
    lead_angle: String,
    normal_pitch: String,
    outside: String,
    root: String,
    depth: String,
    tool_end: String,
    teeth: Option<u32>,
    wheel: String,
    throat: String,
    radius: String,
    centre: String,
}

/// A pitch in inches is along the axis, one in millimetres a module.
pub(crate) fn worms() -> Vec<Outcome> {
    each("wheel_worm.csv", |row: &Worms| (false, worm(row)))
}

fn worm(row: &Worms) -> Result<(), String> {
    let by_inch = row.pitch.ends_with("in");
    let pitch = length(&row.pitch);
    let (pitch, unit, short) = if by_inch {
        (Axial::Pitch(pitch), 25.4, "in")
    } else {
        (Axial::Size(Size::Module(pitch)), 1.0, "mm")
    };
    let worm = Worm {
        starts: row.starts,
        pitch,
        pressure_angle: angle(&row.angle),
        rule: rule(&row.rule),
        diameter: length(&format!("{} {short}", row.diameter)),
        hand: Hand::Right,
    };
    let sizes = worm.sizes().map_err(|e| e.to_string())?;
    printed("lead", sizes.lead.mm(), unit, &row.lead)?;
    printed("lead angle", sizes.lead_angle, 1.0, &row.lead_angle)?;
    printed("normal pitch", sizes.normal_pitch, unit, &row.normal_pitch)?;
    printed("outside", sizes.outside_diameter, unit, &row.outside)?;
    printed("root", sizes.root_diameter, unit, &row.root)?;
    printed("depth", sizes.whole_depth, unit, &row.depth)?;
    printed("tool", sizes.tool_end, unit, &row.tool_end)?;
    let Some(teeth) = row.teeth else { return Ok(()) };
    let tenth = Length::from_mm(Fraction::new(1, 10).expect("small"));
    let pair = WormPair { worm, teeth, face: Length::from_mm(Fraction::whole(10)), leave: tenth };
    let wheel = pair.wheel().map_err(|e| e.to_string())?;
    printed("pitch diameter", wheel.pitch_diameter, unit, &row.wheel)?;
    printed("throat", wheel.throat_diameter, unit, &row.throat)?;
    printed("throat radius", wheel.throat_radius, unit, &row.radius)?;
    printed("centres", wheel.centre_distance, unit, &row.centre)
}

#[derive(Deserialize)]
struct Bevels {
    teeth: String,
    size: String,
    rule: String,
    shafts: String,
    face: String,
    cone: String,
    pitch_diameters: String,
    pitch_angles: String,
    outside: String,
    addendum_angle: String,
    dedendum_angle: String,
    face_angles: String,
    cutting_angles: String,
    apex_to_tips: String,
}

pub(crate) fn bevels() -> Vec<Outcome> {
    each("wheel_bevel.csv", |row: &Bevels| (false, bevel(row)))
}

fn bevel(row: &Bevels) -> Result<(), String> {
    let (size, unit) = size(&row.size);
    let short = if unit > 1.0 { "in" } else { "mm" };
    let teeth = counts::<u32>(&row.teeth);
    let pair = Bevel {
        teeth: [teeth[0], teeth[1]],
        tooth: Tooth { size, rule: rule(&row.rule), ..Tooth::default() },
        shafts: angle(&row.shafts),
        face: length(&format!("{} {short}", row.face)),
        depth: Depth::Tapering,
    };
    let sizes = pair.sizes().map_err(|e| e.to_string())?;
    let of = |what: fn(&handturn::gear::BevelWheel) -> Approx| {
        let [one, other] = &sizes.wheels;
        [what(one), what(other)]
    };
    printed("cone distance", sizes.cone_distance, unit, &row.cone)?;
    both("pitch diameter", of(|w| w.pitch_diameter), unit, &row.pitch_diameters)?;
    both("pitch angle", of(|w| w.pitch_angle), 1.0, &row.pitch_angles)?;
    both("outside", of(|w| w.outside_diameter), unit, &row.outside)?;
    for wheel in &sizes.wheels {
        printed("addendum angle", wheel.addendum_angle, 1.0, &row.addendum_angle)?;
        printed("dedendum angle", wheel.dedendum_angle, 1.0, &row.dedendum_angle)?;
    }
    both("face angle", of(|w| w.face_angle), 1.0, &row.face_angles)?;
    both("cutting angle", of(|w| w.cutting_angle), 1.0, &row.cutting_angles)?;
    both("apex to tips", of(|w| w.apex_to_tips), unit, &row.apex_to_tips)
}

#[derive(Deserialize)]
struct Racks {
    size: String,
    pitch: String,
    thickness: String,
    height: String,
}

pub(crate) fn racks() -> Vec<Outcome> {
    each("wheel_rack.csv", |row: &Racks| {
        let (size, unit) = size(&row.size);
        let division = Length::from_mm(Fraction::new(1, 50).expect("small"));
        let rack = Rack {
            tooth: Tooth { size, ..Tooth::default() },
            gaps: 2,
            dial: Dial { division, reads: Reads::Travel, marks: 250 },
        };
        let check = || {
            let sizes = rack.sizes().map_err(|e| e.to_string())?;
            printed("pitch", sizes.pitch, unit, &row.pitch)?;
            printed("thickness", sizes.thickness, unit, &row.thickness)?;
            printed("height", plainly(sizes.addendum), unit, &row.height)
        };
        (false, check())
    })
}
