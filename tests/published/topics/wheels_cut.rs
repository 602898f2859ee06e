//! Straight wheels: cutters, sizes, pitches, and two that run together.
use super::{Outcome, each, must};
use handturn::gear::cutter::{self, Numbering, Set};
use handturn::gear::pair::{At, Pair, mesh, teeth_for};
use handturn::gear::sound::sound;
use handturn::gear::telling;
use handturn::gear::{DepthRule, Size, Spur, Tooth};
use handturn::measure::{Angle, Length};
use handturn::number::{Fraction, float};
use handturn_tests::rows::{fraction, half_a_place};
use serde::Deserialize;

fn mm(text: &str) -> Length {
    Length::from_mm(fraction(text))
}

/// `8 DP` or `3 mm`; whether it is by the inch.
fn size(text: &str) -> (Size, bool) {
    let (number, unit) = text.split_once(' ').expect("a number and its unit");
    match unit {
        "DP" => (Size::DiametralPitch(fraction(number)), true),
        _ => (Size::Module(mm(number)), false),
    }
}

fn angle(degrees: &str) -> Angle {
    Angle::from_degrees(fraction(degrees)).expect("a small angle")
}

/// `found` is the printed value to half of its last place.
fn printed(what: &str, found: f64, text: &str) -> Result<(), String> {
    within(what, found, text, float::of(half_a_place(text)))
}

fn within(what: &str, found: f64, text: &str, allowed: f64) -> Result<(), String> {
    let off = (found - float::of(fraction(text))).abs();
    must(off <= allowed * (1.0 + 1e-9), || format!("{what} {found} for {text}"))
}

/// A row that is a printed error must not hold.
fn wrong(refused: &str, holds: Result<(), String>) -> (bool, Result<(), String>) {
    if refused != "yes" {
        return (false, holds);
    }
    (true, must(holds.is_err(), || "the printed error holds".to_owned()))
}

#[derive(Deserialize)]
struct Cut {
    numbering: String,
    halves: String,
    teeth: String,
    number: String,
    refused: String,
}

/// A wheel's teeth for each number; or the range that a cutter is marked for, which it
/// cuts from end to end and whose first wheel its form is true for.
pub(crate) fn cutters() -> Vec<Outcome> {
    each("wheel_cutters.csv", |row: &Cut| {
        let numbering = match row.numbering.as_str() {
            "module" => Numbering::Module,
            _ => Numbering::DiametralPitch,
        };
        let set = if row.halves == "yes" { Set::fifteen(numbering) } else { Set::eight(numbering) };
        let count = |text: &str| if text == "rack" { 5_000 } else { text.parse().expect("teeth") };
        let chosen = |teeth: u32| cutter::for_teeth(teeth, &set).map_err(|e| e.to_string());
        let mut holds = Ok(());
        for (teeth, number) in row.teeth.split(' ').zip(row.number.split(' ')) {
            let number = fraction(number);
            let (from, to) = teeth.split_once('-').unwrap_or((teeth, teeth));
            let one = chosen(count(from)).and_then(|choice| {
                let found = choice.cutter;
                must(found.number == number, || format!("{from}: No. {}", found.number))?;
                let greatest = (to != "rack").then(|| count(to));
                let range = (found.least, found.greatest) == (count(from), greatest);
                must(from == to || range, || format!("{teeth}: {found:?}"))
            });
            holds = holds.and(one);
        }
        wrong(&row.refused, holds)
    })
}

#[derive(Deserialize)]
struct Spread {
    least: u32,
    greatest: String,
    cutters: u32,
    numbers: String,
    teeth: String,
    percent: String,
    refused: String,
}

/// For which teeth to make each cutter of a set.
pub(crate) fn spread() -> Vec<Outcome> {
    each("wheel_cutter_spread.csv", |row: &Spread| {
        let greatest = row.greatest.parse().ok();
        let pairs: Vec<_> = row.numbers.split(' ').zip(row.teeth.split(' ')).collect();
        let close = |(n, teeth): &(&str, &str)| {
            let n = n.parse().expect("a number");
            let found = cutter::spread(row.least, greatest, row.cutters, n);
            let found = float::of(found.expect("a cutter"));
            let allowed = float::of(fraction(teeth)) * float::of(fraction(&row.percent)) / 100.0;
            within("teeth", found, teeth, allowed)
        };
        if row.refused == "yes" {
            let none = pairs.iter().all(|pair| close(pair).is_err());
            return (true, must(none, || "a printed error holds".to_owned()));
        }
        (false, pairs.iter().try_for_each(close))
    })
}

#[derive(Deserialize)]
struct Sizes {
    teeth: u32,
    size: String,
    pressure: String,
    depth: String,
    sizes: String,
}

/// Sizes of wheels, in inches where they are by diametral pitch; the blank tells the size.
pub(crate) fn sizes() -> Vec<Outcome> {
    each("wheel_sizes.csv", |row: &Sizes| {
        let (size, inch) = size(&row.size);
        let rule = match row.depth.as_str() {
            "old" => DepthRule::Old,
            "fine" => DepthRule::Fine,
            _ => DepthRule::Coarse,
        };
        let tooth = Tooth { size, pressure_angle: angle(&row.pressure), rule };
        let usual = DepthRule::usual(size, tooth.pressure_angle);
        let spur = Spur::new(row.teeth, tooth).expect("a wheel");
        let unit = if inch { 25.4 } else { 1.0 };
        let of = |length: Length| float::of(length.mm()) / unit;
        let arcs = spur.arcs().expect("small");
        let outside = spur.outside_diameter().expect("small");
        let told = telling::size_of(outside, row.teeth).expect("a wheel");
        let back = if inch { told.nearest_pitch.size } else { told.nearest_module.size };
        let mut holds = must(back == size, || format!("told as {back:?}"));
        // 20 DP is where the rules meet: there either is usual.
        let known = rule == usual || row.size == "20 DP";
        holds = holds.and(must(known, || format!("{usual:?} is usual")));
        for entry in row.sizes.split("; ") {
            let (what, text) = entry.rsplit_once(' ').expect("a name and a figure");
            let found = match what {
                "outside" => of(outside),
                "pitch" => of(spur.pitch_diameter().expect("small")),
                "depth" => of(spur.whole_depth().expect("small")),
                "addendum" => of(tooth.addendum().expect("small")),
                "working" => 2.0 * of(tooth.addendum().expect("small")),
                "circular" => arcs.circular_pitch.value / unit,
                "thickness" => arcs.thickness.value / unit,
                "twentieth" => arcs.circular_pitch.value / unit / 20.0,
                "per inch" => float::of(told.diametral_pitch),
                _ => panic!("{what}"),
            };
            holds = holds.and(printed(what, found, text));
        }
        (false, holds)
    })
}

#[derive(Deserialize)]
struct Pitch {
    what: String,
    given: String,
    teeth: String,
    printed: String,
    within: String,
    refused: String,
}

/// Pitches along the circle and straight across; one unit throughout.
pub(crate) fn pitches() -> Vec<Outcome> {
    each("wheel_pitches.csv", |row: &Pitch| {
        let given = mm(&row.given);
        let teeth = row.teeth.parse().unwrap_or(4);
        let module = || telling::module_of_circular_pitch(given).expect("a pitch").value;
        let found = match row.what.as_str() {
            "circular" => module(),
            "working" => 2.0 * module(),
            "diameter" => f64::from(teeth) * module(),
            "chord" => telling::chord_of_diameter(given, teeth).expect("a diameter").value,
            "across" => telling::diameter_of_chord(given, teeth).expect("a chord").value,
            what => panic!("{what}"),
        };
        let allowed = float::of(fraction(&row.within));
        wrong(&row.refused, within(&row.what, found, &row.printed, allowed))
    })
}

#[derive(Deserialize)]
struct Meshed {
    what: String,
    size: String,
    pressure: String,
    teeth: String,
    shifts: String,
    printed: String,
}

/// Two wheels that run together, and the fewest teeth without undercut.
pub(crate) fn meshed() -> Vec<Outcome> {
    each("wheel_mesh.csv", |row: &Meshed| {
        let (size, _) = size(&row.size);
        let tooth = Tooth { size, pressure_angle: angle(&row.pressure), ..Tooth::default() };
        let mut shifts = row.shifts.split(' ').filter(|text| !text.is_empty()).map(fraction);
        let [first, second] = [0, 1].map(|k| {
            let teeth = row.teeth.split(' ').nth(k).expect("two wheels").parse().expect("teeth");
            let shift = shifts.next().unwrap_or(Fraction::ZERO);
            Spur { shift, ..Spur::new(teeth, tooth).expect("a wheel") }
        });
        let run = || {
            let at = At::Backlash(Length::from_mm(Fraction::ZERO));
            mesh(&Pair { first, second, at }).expect("they run")
        };
        let found = match row.what.as_str() {
            "teeth" => {
                let ratio = Fraction::new(i64::from(second.teeth), i64::from(first.teeth));
                let centres = run().standard;
                let found = teeth_for(size, centres, ratio.expect("teeth")).expect("teeth");
                let same = [(found.first, first), (found.second, second)]
                    .into_iter()
                    .all(|(teeth, spur)| teeth == Fraction::whole(i64::from(spur.teeth)));
                if !same {
                    return (false, Err(format!("{found:?}")));
                }
                float::of(found.sum)
            }
            "undercut" => sound(&first).expect("a wheel").limit.value,
            "centres" => run().centres.value,
            "working angle" => run().working_angle.value,
            "working diameter" => run().working_diameters[0].value,
            what => panic!("{what}"),
        };
        (false, printed(&row.what, found, &row.printed))
    })
}
