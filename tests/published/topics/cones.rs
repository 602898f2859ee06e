//! Knurls, countersinks, points of drills, chamfers, speeds, heats and colours.
use super::{Outcome, each, must};
use handturn::Error;
use handturn::bench::chamfer::{Chamfer, Given};
use handturn::bench::cone;
use handturn::bench::heads::Standard;
use handturn::bench::heat::{Glow, Temper, Use, fahrenheit};
use handturn::bench::knurl::{Knurl, Lines, Pitch};
use handturn::bench::speed::{Cutting, Doing, Material, Tool, rpm};
use handturn::measure::{Angle, Length};
use handturn::number::{Fraction, float};
use handturn_tests::rows::{fraction, half_a_place};
use serde::Deserialize;

#[derive(Deserialize)]
struct Row {
    what: String,
    given: String,
    expected: String,
    offered: String,
}

pub(crate) fn cones() -> Vec<Outcome> {
    each("bench_cones.csv", |row: &Row| {
        let wanted: Vec<&str> = row.expected.split(' ').collect();
        let given: Vec<&str> = row.given.split(' ').collect();
        let come = match row.what.as_str() {
            "temper" | "use" | "glow" => return (false, lies(&row.what, &row.given, &wanted)),
            "band" => return (false, band(&row.given, &wanted)),
            what => match come(what, &given) {
                Ok(come) => come,
                Err(why) => return (false, Err(why)),
            },
        };
        let near = |(wanted, came): (&&str, &f64)| {
            (came - float::of(fraction(wanted))).abs()
                <= float::of(half_a_place(wanted)) * 1.000_001
        };
        let agrees = wanted.len() == come.len() && wanted.iter().zip(&come).all(near);
        match row.offered.as_str() {
            "yes" => (false, must(agrees, || format!("{come:?}"))),
            "no" => (true, must(!agrees, || "the misprint comes out".into())),
            other => (false, Err(format!("{other}: yes or no"))),
        }
    })
}

/// What comes out, in the unit of the row.
fn come(what: &str, given: &[&str]) -> Result<Vec<f64>, String> {
    let said = |e: Error| e.to_string();
    let number = |at: usize| given.get(at).copied().map(fraction).ok_or("too few figures");
    let inch = |at: usize| Length::from_inches(number(at)?).map_err(said);
    let degrees = |at: usize| Angle::from_degrees(number(at)?).map_err(said);
    let count = |at: usize| u32::try_from(number(at)?.num()).map_err(|e| e.to_string());
    let none = Length::from_mm(Fraction::ZERO);
    match what {
        "diametral" => knurled(Pitch::Diametral(number(0)?), degrees(1)?, inch(2)?),
        "wheel" => knurled(Pitch::Wheel(inch(0)?, count(1)?), Angle::ZERO, inch(2)?),
        "socket-head" | "slotted-head" => {
            let slotted = what == "slotted-head";
            let standard = if slotted { Standard::Iso7046 } else { Standard::Iso10642 };
            let head = standard.size(given[0]).map_err(said)?.ok_or("no such head")?;
            let angle = standard.angle().map_err(said)?;
            let shank = Length::from_mm(number(1)?);
            Ok(vec![cone::depth(head.0, shank, angle).map_err(said)?.value])
        }
        "cone-inch" => {
            let found = cone::depth(inch(0)?, none, degrees(1)?).map_err(said)?;
            Ok(vec![found.value / 25.4])
        }
        "chamfer" => {
            let chamfer = Chamfer {
                diameter: Length::from_mm(number(0)?),
                bore: false,
                angle: degrees(1)?,
                given: Given::OffRadius(Length::from_mm(number(2)?)),
            };
            let legs = chamfer.legs().map_err(said)?;
            Ok(vec![legs.along.value, legs.face.value])
        }
        "turns" | "turns-inch" => {
            let per = if what == "turns" { 12 } else { 1 };
            let way = number(0)?.times(per).and_then(Length::from_inches).map_err(said)?;
            Ok(vec![rpm(way, inch(1)?).map_err(said)?.value])
        }
        other => Err(format!("{other}: not known")),
    }
}

/// Teeth and diameter, in inches, of the nearest blank not above `stock`.
fn knurled(pitch: Pitch, angle: Angle, stock: Length) -> Result<Vec<f64>, String> {
    let tooth_angle = Angle::from_turns(Fraction::new(1, 4).map_err(|e| e.to_string())?);
    let knurl = Knurl { pitch, angle, lines: Lines::OneWay, tooth_angle, stock };
    let fit = knurl.fit().map_err(|e| e.to_string())?;
    let below = fit.below().ok_or("none below")?;
    Ok(vec![f64::from(below.teeth), below.blank.value / 25.4])
}

/// Whether every figure lies in the band of what the row names.
fn lies(what: &str, name: &str, wanted: &[&str]) -> Result<(), String> {
    fn named<T: std::fmt::Debug + Copy>(all: &[T], name: &str) -> Result<T, String> {
        let found = all.iter().find(|one| format!("{one:?}") == name);
        found.copied().ok_or_else(|| format!("{name}: not known"))
    }
    let (from, to) = match what {
        "temper" => named(&Temper::ALL, name)?.band(),
        "use" => named(&Use::ALL, name)?.band(),
        _ => named(&Glow::ALL, name)?.band(),
    };
    let (from, to) = match what {
        "glow" => (u32::from(from), u32::from(to)),
        _ => (fahrenheit(from), fahrenheit(to)),
    };
    let inside = |figure: &&str| figure.parse().is_ok_and(|figure| (from..=to).contains(&figure));
    must(wanted.iter().all(inside), || format!("{from} to {to}"))
}

/// Whether a drill's band of speeds is as printed, in feet a minute.
fn band(name: &str, wanted: &[&str]) -> Result<(), String> {
    let found = Material::ALL.iter().find(|one| format!("{one:?}") == name);
    let material = *found.ok_or("no such material")?;
    let cutting = Cutting::By(material, Doing::Drilling, Tool::HighSpeed);
    let (from, to) = cutting.band().map_err(|e| e.to_string())?;
    let feet = |way: Length| way.inches().and_then(|inches| inches.over(12));
    let come = [from, to].map(|way| feet(way).map_or(String::new(), |feet| feet.to_string()));
    must(come == wanted, || format!("{come:?}"))
}
