//! Helical wheels, the table geared for them, worms, bevels and racks in the package.
//!
//! Lengths are told as those of threads are; angles that were computed are degrees.
use super::gear::asked::{TOOTH, tooth};
use super::given::Given;
use super::refusal::Refusal;
use super::shaped::{angle, angle_if, refuse, size, turned};
use super::thread::asked::{between, choice, hand, pitch};
use super::thread::told::{about, count, degrees, length as told, list, named, number, object};
use handturn::gear::table::{Cuts, Geared, Helix, Job, Mill, go_on};
use handturn::gear::{
    Axial, Bevel, BevelWheel, Caliper, Depth, Helical, Rack, RackPlace, Worm, WormPair,
};
use handturn::head::{Mounting, read as listed};
use handturn::measure::{Angle, Length, read};
use handturn::number::{Approx, Fraction};
use handturn::thread::dial::{Dial, Reads};
use handturn::train::{Search, Six};
use handturn::{Error, Field, bounds};

/// Trains in an answer.
const EACH: usize = 8;
/// Readings of a rack in an answer.
const READINGS: u32 = 1_000;

/// Which key of a request an error of the core is about.
const KEYS: [(Field, &str); 15] = [
    (Field::Teeth, "teeth"),
    (Field::Module, "module"),
    (Field::DiametralPitch, "diametralPitch"),
    (Field::PressureAngle, "pressureAngle"),
    (Field::Depth, "depth"),
    (Field::Helix, "helix"),
    (Field::Face, "face"),
    (Field::Shafts, "shafts"),
    (Field::Starts, "starts"),
    (Field::Pitch, "pitch"),
    (Field::Diameter, "diameter"),
    (Field::Lead, "lead"),
    (Field::SlideDial, "division"),
    (Field::Ratio, "ratio"),
    (Field::Table, "screw"),
];

/// The answer to `request`, by what it is about.
///
/// # Errors
/// A [`Refusal`] that names the value.
pub(super) fn answer(about: &str, request: &Given) -> Result<Given, Refusal> {
    match about {
        "helical" => helical(request),
        "gears" => gears(request),
        "worm" => worm(request),
        "bevel" => bevel(request),
        "rack" => rack(request),
        _ => Err(Refusal::unknown("about", &[])),
    }
}

fn only(given: &Given, more: &[&str]) -> Result<(), Refusal> {
    given.only("", &[&TOOTH[..], more].concat())
}

fn teeth(given: &Given, key: &str) -> Result<u32, Refusal> {
    given.get(key).count(key, bounds::WHEEL_TEETH)
}

fn told_caliper(caliper: &Caliper) -> Given {
    object([("height", about(caliper.height)), ("thickness", about(caliper.thickness))])
}

fn plain(value: Approx) -> Given {
    Given::Number(value.value)
}

fn wheel(given: &Given) -> Result<Helical, Refusal> {
    Ok(Helical {
        teeth: teeth(given, "teeth")?,
        tooth: tooth(given)?,
        helix: angle(given, "helix")?,
        hand: hand(given, "hand", "hand")?,
        face: size(given, "face", Field::Face)?,
    })
}

fn helical(given: &Given) -> Result<Given, Refusal> {
    only(given, &["teeth", "helix", "hand", "face"])?;
    let wheel = wheel(given)?;
    let sizes = wheel.sizes().map_err(refuse(given, &KEYS))?;
    Ok(object([
        ("parts", count(wheel.teeth)),
        ("pitch", about(sizes.pitch_diameter)),
        ("outside", about(sizes.outside_diameter)),
        ("root", about(sizes.root_diameter)),
        ("depth", told(sizes.whole_depth)),
        ("lead", about(sizes.lead)),
        ("axial_pitch", about(sizes.axial_pitch)),
        ("virtual_teeth", plain(sizes.virtual_teeth)),
        ("caliper", told_caliper(&sizes.caliper)),
        ("overlap", plain(sizes.overlap)),
        ("table_swings", named(sizes.table_swings)),
        ("beyond_swing", Given::Flag(sizes.beyond_swing)),
    ]))
}

/// A table geared to the head: for the lead given, or for a wheel's.
fn gears(given: &Given) -> Result<Given, Refusal> {
    let own = ["hand", "face", "mill", "geared", "six"];
    let geared = [("worm", Geared::Worm), ("spindle", Geared::Spindle)];
    let geared = if given.has("geared") {
        choice(given.get("geared"), "geared", &geared)?
    } else {
        Geared::Worm
    };
    let six = if given.get("six").flag("six", false)? { Six::Always } else { Six::Never };
    let job = if given.has("lead") {
        given.only("", &[&own[..], &["lead", "diameter", "grooves"]].concat())?;
        let helix = Helix::Lead {
            lead: size(given, "lead", Field::Lead)?,
            diameter: size(given, "diameter", Field::Diameter)?,
        };
        let grooves = given.get("grooves").count_or("grooves", bounds::GROOVES, 1)?;
        let face = size(given, "face", Field::Face)?;
        Job { helix, hand: hand(given, "hand", "hand")?, grooves, face, geared, six }
    } else {
        only(given, &[&own[..], &["teeth", "helix"]].concat())?;
        Job::of(&wheel(given)?, geared, six)
    };
    let mill = mill(given.get("mill"))?;
    let refused = |error: Error| match error.field {
        Field::Table => Refusal::of("mill.screw", &error, ""),
        Field::Ratio => Refusal::of("mill.ratio", &error, ""),
        Field::Gears | Field::Mounting => Refusal::of("mill.gears", &error, ""),
        _ => refuse(given, &KEYS)(error),
    };
    let mut search = Search::<EACH>::new();
    while !go_on(&mut search, &job, &mill, u32::MAX).map_err(refused)? {}
    let cuts: Result<Vec<Cuts>, Error> =
        search.best().iter().map(|found| mill.cuts(&job, found)).collect();
    let machine = mill.lead(geared).map_err(refused)?;
    Ok(object([
        ("machine", told(machine)),
        ("trains", list(cuts.map_err(refused)?, |cuts| train(&cuts))),
    ]))
}

fn train(cuts: &Cuts) -> Given {
    let gear = |teeth: u16| count(teeth.into());
    let pair = |pair: handturn::train::Pair| {
        object([("driver", gear(pair.driver)), ("driven", gear(pair.driven))])
    };
    object([
        ("pairs", list(cuts.chain.pairs(), pair)),
        ("idlers", list(cuts.chain.idlers.into_iter().flatten(), gear)),
        ("idlers_in", count(cuts.chain.idlers_in.into())),
        ("exact", Given::Flag(cuts.exact)),
        ("lead", told(cuts.lead)),
        ("off", about(cuts.off)),
        ("off_ppm", plain(cuts.off_ppm)),
        ("off_arcsec", plain(cuts.off_arcsec)),
        ("off_over_face", about(cuts.off_over_face)),
        ("teeth_on", cuts.teeth_on.map_or(Given::Nothing, count)),
    ])
}

fn mill(given: &Given) -> Result<Mill, Refusal> {
    given.only("mill", &["screw", "ratio", "gears", "mostIdlers", "fourGears", "sameWayCuts"])?;
    let gears = match given.get("gears") {
        list @ Given::List(_) => super::request::spaced(list, "mill.gears")?,
        other => other.text("mill.gears")?,
    };
    let usual = Mounting::default();
    let most = between(given.get("mostIdlers"), "mill.mostIdlers", 0, 2, usual.most_idlers.into());
    let ratio = if given.has("ratio") {
        let text = given.get("ratio").text("mill.ratio")?;
        read::ratio(&text).map_err(|error| Refusal::of("mill.ratio", &error, &text))?
    } else {
        Fraction::whole(40)
    };
    Ok(Mill {
        screw: pitch(given.get("screw"), "mill.screw", Field::Table)?,
        ratio,
        gears: listed::gears(&gears).map_err(|e| Refusal::of("mill.gears", &e, &gears))?,
        mounting: Mounting {
            most_idlers: u8::try_from(most?).unwrap_or(2),
            four_gears: given.get("fourGears").flag("mill.fourGears", usual.four_gears)?,
            ..usual
        },
        same_way_cuts: hand(given, "sameWayCuts", "mill.sameWayCuts")?,
    })
}

fn worm(given: &Given) -> Result<Given, Refusal> {
    only(given, &["starts", "pitch", "diameter", "hand", "teeth", "face", "leave"])?;
    let by_pitch = given.has("pitch");
    let (pitch, tooth) = if by_pitch {
        // The rule alone is wanted of the tooth; its size is the pitch.
        let mut entries = vec![("module".to_owned(), Given::Number(1.0))];
        for key in ["pressureAngle", "depth"] {
            entries.push((key.to_owned(), given.get(key).clone()));
        }
        let pitch = pitch(given.get("pitch"), "pitch", Field::Pitch)?;
        (Axial::Pitch(pitch), tooth(&Given::Object(entries))?)
    } else {
        let tooth = tooth(given)?;
        (Axial::Size(tooth.size), tooth)
    };
    let starts = given.get("starts").count_or("starts", bounds::STARTS, 1)?;
    let worm = Worm {
        starts: u8::try_from(starts).unwrap_or(u8::MAX),
        pitch,
        pressure_angle: tooth.pressure_angle,
        rule: tooth.rule,
        diameter: size(given, "diameter", Field::Diameter)?,
        hand: hand(given, "hand", "hand")?,
    };
    let sizes = worm.sizes().map_err(refuse(given, &KEYS))?;
    let lead = sizes.lead;
    let of_worm = [
        ("lead", if lead.times_pi { about(lead.mm()) } else { told(lead.length) }),
        ("lead_angle", turned(sizes.lead_angle)),
        ("axial_pitch", about(sizes.axial_pitch)),
        ("normal_pitch", about(sizes.normal_pitch)),
        ("outside", about(sizes.outside_diameter)),
        ("root", about(sizes.root_diameter)),
        ("depth", about(sizes.whole_depth)),
        ("tool_end", about(sizes.tool_end)),
    ];
    let wheel = if given.has("teeth") { wormed(given, worm)? } else { Given::Nothing };
    Ok(object([("worm", object(of_worm)), ("wheel", wheel)]))
}

fn wormed(given: &Given, worm: Worm) -> Result<Given, Refusal> {
    let none = Length::from_mm(Fraction::ZERO);
    let leave = if given.has("leave") { size(given, "leave", Field::Depth)? } else { none };
    let teeth = teeth(given, "teeth")?;
    let pair = WormPair { worm, teeth, face: size(given, "face", Field::Face)?, leave };
    let keys = [&[(Field::Depth, "leave")], &KEYS[..]].concat();
    let wheel = pair.wheel().map_err(refuse(given, &keys))?;
    Ok(object([
        ("parts", count(teeth)),
        ("ratio", number(wheel.ratio)),
        ("centres", about(wheel.centre_distance)),
        ("pitch", about(wheel.pitch_diameter)),
        ("throat", about(wheel.throat_diameter)),
        ("throat_radius", about(wheel.throat_radius)),
        ("outside", about(wheel.outside_diameter)),
        ("useful_face", about(wheel.useful_face)),
        ("gash_angle", turned(wheel.gash_angle)),
        ("gash_depth", about(wheel.gash_depth)),
        ("depth", about(wheel.whole_depth)),
        ("hob", about(wheel.hob_diameter)),
        (
            "free",
            object([
                ("blank", about(wheel.free_blank)),
                ("within", about(wheel.free_blank_within)),
                ("centres", about(wheel.free_centre_distance)),
            ]),
        ),
    ]))
}

fn bevel(given: &Given) -> Result<Given, Refusal> {
    only(given, &["teeth", "mate", "shafts", "face", "along"])?;
    let depths = [("parallel", Depth::Parallel), ("tapering", Depth::Tapering)];
    let square = || Angle::from_degrees(Fraction::whole(90)).map_err(refuse(given, &KEYS));
    let pair = Bevel {
        teeth: [teeth(given, "teeth")?, teeth(given, "mate")?],
        tooth: tooth(given)?,
        shafts: angle_if(given, "shafts")?.map_or_else(square, Ok)?,
        face: size(given, "face", Field::Face)?,
        depth: choice(given.get("along"), "along", &depths)?,
    };
    let sizes = pair.sizes().map_err(refuse(given, &KEYS))?;
    Ok(object([
        ("cone", about(sizes.cone_distance)),
        ("widest_face", about(sizes.widest_face)),
        ("too_wide", Given::Flag(sizes.too_wide)),
        ("large_module", about(sizes.large_module)),
        ("small_module", about(sizes.small_module)),
        ("depth", told(sizes.whole_depth)),
        ("offset", sizes.offset.map_or(Given::Nothing, about)),
        ("wheels", list(sizes.wheels, |wheel| coned(&wheel))),
    ]))
}

fn coned(wheel: &BevelWheel) -> Given {
    object([
        ("parts", count(wheel.teeth)),
        ("pitch_angle", turned(wheel.pitch_angle)),
        ("pitch", about(wheel.pitch_diameter)),
        ("outside", about(wheel.outside_diameter)),
        ("apex_to_tips", about(wheel.apex_to_tips)),
        ("face_angle", turned(wheel.face_angle)),
        ("back_angle", turned(wheel.back_angle)),
        ("cutting_angle", turned(wheel.cutting_angle)),
        ("addendum_angle", turned(wheel.addendum_angle)),
        ("dedendum_angle", turned(wheel.dedendum_angle)),
        ("virtual_teeth", plain(wheel.virtual_teeth)),
        ("caliper", told_caliper(&wheel.caliper)),
        ("roll", wheel.roll.map_or(Given::Nothing, degrees)),
    ])
}

fn rack(given: &Given) -> Result<Given, Refusal> {
    only(given, &["gaps", "division", "marks", "from"])?;
    let rack = Rack {
        tooth: tooth(given)?,
        gaps: given.get("gaps").count("gaps", bounds::GAPS)?,
        dial: Dial {
            division: size(given, "division", Field::SlideDial)?,
            reads: Reads::Travel,
            marks: given.get("marks").count("marks", bounds::SLIDE_MARKS)?,
        },
    };
    let sizes = rack.sizes().map_err(refuse(given, &KEYS))?;
    let last = rack.gaps.saturating_sub(1);
    let from = between(given.get("from"), "from", 0, last, 0)?;
    let to = rack.gaps.min(from.saturating_add(READINGS));
    let places: Result<Vec<RackPlace>, Error> = (from..to).map(|gap| rack.place(gap)).collect();
    let place = |place: RackPlace| {
        object([
            ("wanted", about(place.wanted)),
            ("turns", count(place.reading.turns)),
            ("mark", count(place.reading.mark)),
            ("off", about(place.off)),
        ])
    };
    Ok(object([
        ("pitch", about(sizes.pitch)),
        ("thickness", about(sizes.thickness)),
        ("addendum", told(sizes.addendum)),
        ("depth", told(sizes.whole_depth)),
        ("length", about(sizes.length)),
        ("worst", about(sizes.worst)),
        ("adjacent", about(sizes.adjacent)),
        ("readings", list(places.map_err(refuse(given, &KEYS))?, place)),
    ]))
}
