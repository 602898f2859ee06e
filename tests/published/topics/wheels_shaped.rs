//! Flats, splines, clock wheels and cam lobes as printed.
use super::{Outcome, each, must};
use handturn::gear::cam::{Lobe, lobe};
use handturn::gear::clock::{Clock, Rule, sizes};
use handturn::gear::flats::{Flats, flats};
use handturn::gear::spline::Spline;
use handturn::gear::spline_series::{Fit, ISO_14, sae};
use handturn::gear::{Size, Spur, Tooth};
use handturn::measure::{Angle, Length};
use handturn::number::{Fraction, float};
use handturn_tests::rows::{fraction, half_a_place};
use serde::Deserialize;

/// Whether `came` rounds to what is printed.
fn rounds(came: f64, printed: &str) -> Result<(), String> {
    let off = (came - float::of(fraction(printed))).abs();
    let fits = off <= float::of(half_a_place(printed)) * (1.0 + 1e-9);
    must(fits, || format!("comes to {came}, printed {printed}"))
}

/// Whether `came` does, or was cut short or rounded up to it.
fn within_a_place(came: f64, printed: &str) -> Result<(), String> {
    let off = (came - float::of(fraction(printed))).abs();
    let fits = off < 2.0 * float::of(half_a_place(printed));
    must(fits, || format!("comes to {came}, printed {printed}"))
}

fn mm(text: &str) -> Length {
    Length::from_mm(fraction(text))
}

fn inches(text: &str) -> Length {
    Length::from_inches(fraction(text)).expect("a small length")
}

#[derive(Deserialize)]
struct Polygon {
    sides: u32,
    to_flat: String,
    to_corner: String,
    side: String,
}

pub(crate) fn polygons() -> Vec<Outcome> {
    each("wheel_flats.csv", |row: &Polygon| {
        let across = Length::from_mm(fraction(&row.to_flat).times(2).expect("small"));
        let ask = Flats { sides: row.sides, across, stock: None, cutter: None };
        let sharp = flats(&ask).expect("in bounds").sharp.expect("corners");
        let corner = rounds(sharp.stock.value / 2.0, &row.to_corner);
        (false, corner.and_then(|()| rounds(sharp.width.value, &row.side)))
    })
}

#[derive(Deserialize)]
struct Head {
    sides: u32,
    across_inch: String,
    corners_inch: String,
}

pub(crate) fn heads() -> Vec<Outcome> {
    each("wheel_corners.csv", |row: &Head| {
        let across = inches(&row.across_inch);
        let ask = Flats { sides: row.sides, across, stock: None, cutter: None };
        let sharp = flats(&ask).expect("in bounds").sharp.expect("corners");
        (false, rounds(sharp.stock.value / 25.4, &row.corners_inch))
    })
}

#[derive(Deserialize)]
struct Listed {
    keys: u32,
    minor: String,
    major: String,
    key: String,
}

pub(crate) fn iso_splines() -> Vec<Outcome> {
    each("wheel_splines.csv", |row: &Listed| {
        let (minor, major, key) = (mm(&row.minor), mm(&row.major), mm(&row.key));
        let cutter = mm("2");
        let wanted = Spline { keys: row.keys, major, minor, key, cutter };
        let listed = ISO_14.iter().any(|size| size.shaft(cutter) == Ok(wanted));
        (false, must(listed, || format!("{wanted:?} is not listed")))
    })
}

#[derive(Deserialize)]
struct InchSpline {
    keys: u32,
    fit: String,
    major_inch: String,
    key_inch: String,
    minor_inch: String,
}

pub(crate) fn inch_splines() -> Vec<Outcome> {
    each("wheel_inch_splines.csv", |row: &InchSpline| {
        let fit = match &*row.fit {
            "A" => Fit::Permanent,
            "B" => Fit::SlidesUnloaded,
            _ => Fit::SlidesLoaded,
        };
        let shaft = sae(row.keys, fit, inches(&row.major_inch), mm("2")).expect("a fit");
        let inch = |length: Length| float::of(length.inches().expect("small"));
        let key = within_a_place(inch(shaft.key), &row.key_inch);
        (false, key.and_then(|()| within_a_place(inch(shaft.minor), &row.minor_inch)))
    })
}

#[derive(Deserialize)]
struct Leaf {
    rule: String,
    leaves: u32,
    addendum: String,
    radius: String,
    thickness: String,
}

pub(crate) fn leaves() -> Vec<Outcome> {
    each("wheel_clock.csv", |row: &Leaf| {
        let rule = if row.rule == "common" { Rule::Common } else { Rule::Standard };
        let ask = Clock { wheel: 96, leaves: row.leaves, module: mm("1"), rule };
        let found = sizes(&ask).expect("in bounds");
        let outside = f64::from(row.leaves) + 2.0 * float::of(fraction(&row.addendum));
        let holds = (found.pinion.outside.value - outside).abs() < 1e-9
            && found.end_radius == mm(&row.radius)
            && found.pinion.thickness == mm(&row.thickness);
        (false, must(holds, || format!("{found:?}")))
    })
}

#[derive(Deserialize)]
struct Pair {
    what: String,
    teeth: u32,
    other: u32,
    pitch_diameter: String,
    printed: String,
}

/// Wheels that share a cutter, from the pitch diameter of one of them, in inches.
pub(crate) fn pairs() -> Vec<Outcome> {
    each("wheel_pairs.csv", |row: &Pair| {
        let whole = |n: u32| Fraction::whole(i64::from(n));
        // Centres are told in parts of the pinion's pitch radius, all else by the wheel.
        let of = if row.what == "centres" { row.other } else { row.teeth };
        let module = fraction(&row.pitch_diameter).checked_div(whole(of)).expect("small");
        let module = Length::from_inches(module).expect("small");
        let pair =
            |wheel, leaves, rule| sizes(&Clock { wheel, leaves, module, rule }).expect("in bounds");
        let came = match &*row.what {
            "centres" => float::of(pair(row.teeth, row.other, Rule::Common).centres.mm()),
            "pitch" => float::of(pair(row.teeth, row.other, Rule::Common).pinion.pitch.mm()),
            "by pitch" => {
                let tooth = Tooth { size: Size::Module(module), ..Tooth::default() };
                let wheel = Spur::new(row.other, tooth).expect("in bounds");
                float::of(wheel.outside_diameter().expect("small").mm())
            }
            _ if row.teeth == row.other => pair(row.teeth, 8, Rule::Common).wheel.outside.value,
            _ => pair(row.teeth, row.other, Rule::Common).pinion.outside.value,
        };
        let came = came / 25.4;
        if row.printed == "2.11" {
            let differs = within_a_place(came, &row.printed).is_err();
            return (true, must(differs, || "agrees with a printed error".to_owned()));
        }
        let exact = row.printed.contains('/') || row.what == "blank" || row.what == "centres";
        let holds = if exact {
            let off = (came - float::of(fraction(&row.printed))).abs();
            must(off < 1e-9, || format!("comes to {came}"))
        } else {
            within_a_place(came, &row.printed)
        };
        (false, holds)
    })
}

#[derive(Deserialize)]
struct Cam {
    what: String,
    given: String,
    geared: String,
    printed: String,
}

/// Leads of lobes for a whole turn, in inches.
pub(crate) fn cams() -> Vec<Outcome> {
    each("wheel_cams.csv", |row: &Cam| {
        let geared = inches(&row.geared);
        let ask = |rise, raised| Lobe { rise, over: Angle::TURN, geared, face: mm("5"), raised };
        if row.what == "tilt" {
            let set = lobe(&ask(inches(&row.given), None)).expect("in bounds");
            return (false, rounds(set.tilt.value * 60.0, &row.printed));
        }
        let raised = Angle::from_degrees(fraction(&row.given)).expect("small");
        let set = lobe(&ask(inches("0.1"), Some(raised))).expect("in bounds");
        let came = set.gives.expect("an angle was given").0.value / 25.4;
        if row.printed == "0.1956" {
            let differs = rounds(came, &row.printed).is_err();
            return (true, must(differs, || "agrees with a printed error".to_owned()));
        }
        (false, rounds(came, &row.printed))
    })
}
