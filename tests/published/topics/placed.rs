//! Holes of a ring: coordinates, chords, disks that touch, buttons. All given in inches.
use super::{Outcome, each, must};
use handturn::Error;
use handturn::head::Sense;
use handturn::measure::{Angle, Length};
use handturn::number::{Approx, Fraction};
use handturn::plate::coordinates::Layout;
use handturn::plate::disks;
use handturn_tests::rows::{fraction, half_a_place};
use serde::Deserialize;

#[derive(Deserialize)]
struct Row {
    what: String,
    given: String,
    expected: String,
    offered: String,
}

pub(crate) fn placed() -> Vec<Outcome> {
    each("holes_placed.csv", |row: &Row| {
        let given: Vec<Fraction> = row.given.split(' ').map(fraction).collect();
        let wanted: Vec<&str> = row.expected.split(' ').collect();
        let come = match come(&row.what, &given, wanted.len()) {
            Ok(come) => come,
            Err(why) => return (false, Err(why)),
        };
        let near = |(wanted, came): (&&str, &Approx)| {
            let off = came.value / 25.4 - handturn::number::float::of(fraction(wanted));
            off.abs() <= handturn::number::float::of(half_a_place(wanted)) * 1.000_001
        };
        let agrees = wanted.len() == come.len() && wanted.iter().zip(&come).all(near);
        let told = || format!("{:?} mm", come.iter().map(|c| c.value).collect::<Vec<_>>());
        match row.offered.as_str() {
            "yes" => (false, must(agrees, told)),
            "no" => (true, must(!agrees, || "the misprint comes out".into())),
            other => (false, Err(format!("{other}: yes or no"))),
        }
    })
}

/// What comes out, in millimetres; the first `few` of a long list.
fn come(what: &str, given: &[Fraction], few: usize) -> Result<Vec<Approx>, String> {
    let said = |e: Error| e.to_string();
    let inch = |at: usize| given.get(at).copied().map(Length::from_inches).ok_or("too few figures");
    let inch = |at: usize| inch(at)?.map_err(said);
    let count = given.first().and_then(|n| u32::try_from(n.num()).ok()).unwrap_or(0);
    match what {
        "disks" => {
            let found = disks::round(count, inch(1)?).map_err(said)?;
            Ok(vec![found.disk, found.central])
        }
        "chord" => {
            let pin = Length::from_mm(Fraction::ONE);
            Ok(vec![disks::in_ring(count, 1, inch(1)?, pin).map_err(said)?.apart])
        }
        "buttons" => {
            let found = disks::square_to([inch(0)?, inch(1)?], inch(2)?).map_err(said)?;
            Ok(vec![found.apart, found.over])
        }
        "touching" => {
            let found = disks::three_touching([inch(0)?, inch(1)?, inch(2)?]).map_err(said)?;
            let exact = |length: Length| handturn::number::float::of(length.mm());
            Ok(found.map(|length| Approx { value: exact(length), bound: 0.0 }).to_vec())
        }
        "places" => places(count, few).map_err(said),
        other => Err(format!("{other}: no such kind of row")),
    }
}

/// X and Y of the first holes on a circle of 1 in that touches both edges, the first hole
/// at the lower one, counted clockwise.
fn places(holes: u32, few: usize) -> Result<Vec<Approx>, Error> {
    let half = Length::from_inches(Fraction::new(1, 2)?)?;
    let ring = Layout {
        holes,
        diameter: Length::from_inches(Fraction::ONE)?,
        first: Angle::from_degrees(Fraction::whole(270))?,
        sense: Sense::Clockwise,
        centre: [half; 2],
    };
    let mut places = Vec::new();
    for k in (0..holes).take(few / 2) {
        places.extend(ring.centre(k)?.from_edges);
    }
    Ok(places)
}
