//! Ratchets, splines and keyways, flats, clock wheels and cams in the package.
//!
//! Lengths are told as those of threads are; angles that were computed are degrees.
use super::given::Given;
use super::refusal::Refusal;
use super::request;
use super::thread::asked::{choice, length};
use super::thread::told::{about, count, degrees, length as told, named, object};
use handturn::gear::cam;
use handturn::gear::clock::{Blank, Clock, Rule, sizes};
use handturn::gear::flats::{Corners, Flats, flats};
use handturn::gear::keyway::{Keyway, keyway};
use handturn::gear::ratchet::{self, Gap, Ratchet};
use handturn::gear::spline::{self, Between, Spline};
use handturn::gear::spline_series::{Fit, sae};
use handturn::measure::{Angle, Length};
use handturn::number::Approx;
use handturn::{Error, Field, bounds};

/// The answer to `request`, by what it is about.
///
/// # Errors
/// A [`Refusal`] that names the value.
pub(super) fn answer(about: &str, request: &Given) -> Result<Given, Refusal> {
    match about {
        "ratchet" => ratchet(request),
        "face" => face(request),
        "splines" => splines(request),
        "keyway" => keyways(request),
        "flats" => flatted(request),
        "clock" => clock(request),
        "lobe" => lobe(request),
        "steps" => steps(request),
        _ => Err(Refusal::unknown("about", &[])),
    }
}

/// The core's error under the key that it is about.
pub(super) fn refuse<'a>(
    given: &'a Given,
    keys: &'a [(Field, &'a str)],
) -> impl Fn(Error) -> Refusal + use<'a> {
    move |error| {
        let key = keys.iter().find(|(field, _)| *field == error.field);
        let key = key.or(keys.first()).map_or("", |(_, key)| key);
        Refusal::of(key, &error, &given.get(key).to_string())
    }
}

pub(super) fn size(given: &Given, key: &str, field: Field) -> Result<Length, Refusal> {
    length(given.get(key), key, field)
}

fn size_if(given: &Given, key: &str, field: Field) -> Result<Option<Length>, Refusal> {
    if given.has(key) { size(given, key, field).map(Some) } else { Ok(None) }
}

pub(super) fn angle(given: &Given, key: &str) -> Result<Angle, Refusal> {
    request::angle(given.get(key), key)
}

pub(super) fn angle_if(given: &Given, key: &str) -> Result<Option<Angle>, Refusal> {
    if given.has(key) { angle(given, key).map(Some) } else { Ok(None) }
}

pub(super) fn turned(angle: Approx) -> Given {
    Given::Number(angle.value)
}

fn maybe(found: Option<Approx>) -> Given {
    found.map_or(Given::Nothing, about)
}

fn ratchet(given: &Given) -> Result<Given, Refusal> {
    given.only("", &["teeth", "outside", "undercut", "cutter", "depth", "land"])?;
    let wheel = Ratchet {
        teeth: given.get("teeth").count("teeth", bounds::WHEEL_TEETH)?,
        outside: size(given, "outside", Field::Blank)?,
        undercut: angle_if(given, "undercut")?.unwrap_or(Angle::ZERO),
    };
    let none = || Length::from_mm(handturn::number::Fraction::ZERO);
    let land = size_if(given, "land", Field::Land)?;
    let gap = match (angle_if(given, "cutter")?, size_if(given, "depth", Field::Depth)?) {
        (Some(cutter), Some(depth)) if land.is_none() => Gap::Depth { cutter, depth },
        (None, Some(depth)) => Gap::Cutter { depth, land: land.unwrap_or_else(none) },
        (Some(cutter), None) => Gap::Land { cutter, land: land.unwrap_or_else(none) },
        _ => {
            return Err(Refusal::kind(
                "cutter",
                "given, or depth, and not all three of cutter, depth and land",
                &Given::Nothing,
            ));
        }
    };
    let keys = [
        (Field::Teeth, "teeth"),
        (Field::Blank, "outside"),
        (Field::Undercut, "undercut"),
        (Field::CutterAngle, "cutter"),
        (Field::Depth, "depth"),
        (Field::Land, "land"),
    ];
    let cut = ratchet::cut(&wheel, gap).map_err(refuse(given, &keys))?;
    Ok(object([
        ("parts", count(wheel.teeth)),
        ("cutter", turned(cut.cutter)),
        ("offset", about(cut.offset)),
        ("depth", about(cut.depth)),
        ("from_top", about(cut.from_top)),
        ("land", about(cut.land)),
        ("tooth", turned(cut.tooth)),
        ("back", turned(cut.back)),
        ("root", about(cut.root)),
    ]))
}

fn face(given: &Given) -> Result<Given, Refusal> {
    given.only("", &["teeth", "cutter"])?;
    let teeth = given.get("teeth").count("teeth", bounds::WHEEL_TEETH)?;
    let keys = [(Field::Teeth, "teeth"), (Field::CutterAngle, "cutter")];
    let tilt = ratchet::face_teeth(teeth, angle(given, "cutter")?).map_err(refuse(given, &keys))?;
    Ok(object([("parts", count(teeth)), ("raised", turned(tilt))]))
}

fn splines(given: &Given) -> Result<Given, Refusal> {
    given.only("", &["keys", "major", "minor", "key", "fit", "cutter"])?;
    let keys = given.get("keys").count("keys", bounds::SPLINE_KEYS)?;
    let major = size(given, "major", Field::Blank)?;
    let cutter = size(given, "cutter", Field::Cutter)?;
    let names = [
        (Field::Key, "key"),
        (Field::Keys, "keys"),
        (Field::Blank, "major"),
        (Field::Diameter, "minor"),
        (Field::Cutter, "cutter"),
    ];
    let ask = if given.has("fit") {
        given.only("", &["keys", "major", "fit", "cutter"])?;
        let fits = [("A", Fit::Permanent), ("B", Fit::SlidesUnloaded), ("C", Fit::SlidesLoaded)];
        let fit = choice(given.get("fit"), "fit", &fits)?;
        sae(keys, fit, major, cutter).map_err(refuse(given, &names))?
    } else {
        let (minor, key) =
            (size(given, "minor", Field::Diameter)?, size(given, "key", Field::Key)?);
        Spline { keys, major, minor, key, cutter }
    };
    let cuts = spline::cut(&ask).map_err(refuse(given, &names))?;
    let none = || Given::Nothing;
    let (left, outside, foot, widest, proud) = match cuts.between {
        Between::Ridge { outside, foot, widest } => {
            ("Ridge", about(outside), about(foot), about(widest), none())
        }
        Between::Loose { outside, proud } => {
            ("Loose", about(outside), none(), none(), about(proud))
        }
        Between::Floor { proud } => ("Floor", none(), none(), none(), about(proud)),
    };
    Ok(object([
        ("parts", count(ask.keys)),
        ("major", told(ask.major)),
        ("minor", told(ask.minor)),
        ("key", told(ask.key)),
        ("offset", told(cuts.offset)),
        ("across", told(cuts.across)),
        ("depth", about(cuts.depth)),
        ("flank", about(cuts.flank)),
        ("widest", maybe(cuts.widest)),
        ("space", about(cuts.space)),
        ("floor", told(cuts.floor)),
        (
            "between",
            object([
                ("left", Given::Text(left.to_owned())),
                ("outside", outside),
                ("foot", foot),
                ("widest", widest),
                ("proud", proud),
            ]),
        ),
    ]))
}

fn keyways(given: &Given) -> Result<Given, Refusal> {
    given.only("", &["shaft", "width", "side"])?;
    let ask = Keyway {
        shaft: size(given, "shaft", Field::Blank)?,
        width: size(given, "width", Field::Key)?,
        side: size(given, "side", Field::Depth)?,
    };
    let keys = [(Field::Blank, "shaft"), (Field::Key, "width"), (Field::Depth, "side")];
    let cut = keyway(&ask).map_err(refuse(given, &keys))?;
    Ok(object([
        ("arc", about(cut.arc)),
        ("from_top", about(cut.from_top)),
        ("over", about(cut.over)),
    ]))
}

fn flatted(given: &Given) -> Result<Given, Refusal> {
    given.only("", &["sides", "across", "stock", "cutter"])?;
    let ask = Flats {
        sides: given.get("sides").count("sides", bounds::FLATS)?,
        across: size(given, "across", Field::Flats)?,
        stock: size_if(given, "stock", Field::Blank)?,
        cutter: size_if(given, "cutter", Field::Cutter)?,
    };
    let keys = [(Field::Blank, "stock"), (Field::Flats, "across"), (Field::Cutter, "cutter")];
    let found = flats(&ask).map_err(refuse(given, &keys))?;
    let sharp = found.sharp.map_or(Given::Nothing, |sharp| {
        object([
            ("stock", about(sharp.stock)),
            ("width", about(sharp.width)),
            ("depth", about(sharp.depth)),
            ("to_corner", maybe(sharp.to_corner)),
        ])
    });
    let cut = found.cut.map_or(Given::Nothing, |cut| {
        let round = match cut.corners {
            Corners::Sharp => Given::Nothing,
            Corners::Round(arc) => about(arc),
        };
        object([
            ("depth", told(cut.depth)),
            ("over_first", told(cut.over_first)),
            ("first_width", about(cut.first_width)),
            ("width", about(cut.width)),
            ("round", round),
            ("passes", cut.passes.map_or(Given::Nothing, count)),
        ])
    });
    Ok(object([
        ("parts", count(ask.sides)),
        ("to_flat", told(found.to_flat)),
        ("straddle", Given::Flag(found.straddle)),
        ("sharp", sharp),
        ("cut", cut),
    ]))
}

fn clock(given: &Given) -> Result<Given, Refusal> {
    given.only("", &["wheel", "leaves", "module", "rule"])?;
    let rules = [("standard", Rule::Standard), ("common", Rule::Common)];
    let ask = Clock {
        wheel: given.get("wheel").count("wheel", bounds::WHEEL_TEETH)?,
        leaves: given.get("leaves").count("leaves", bounds::LEAVES)?,
        module: size(given, "module", Field::Module)?,
        rule: if given.has("rule") {
            choice(given.get("rule"), "rule", &rules)?
        } else {
            Rule::Standard
        },
    };
    let keys = [(Field::Module, "module"), (Field::Teeth, "wheel"), (Field::Leaves, "leaves")];
    let found = sizes(&ask).map_err(refuse(given, &keys))?;
    let blank = |blank: &Blank, parts: u32| {
        object([
            ("parts", count(parts)),
            ("pitch", told(blank.pitch)),
            ("outside", about(blank.outside)),
            ("depth", about(blank.depth)),
            ("thickness", told(blank.thickness)),
        ])
    };
    Ok(object([
        ("ratio", super::thread::told::number(found.ratio)),
        ("centres", told(found.centres)),
        ("factor", Given::Number(found.factor.value)),
        ("wheel", blank(&found.wheel, ask.wheel)),
        ("pinion", blank(&found.pinion, ask.leaves)),
        ("form", named(found.form)),
        ("end_radius", told(found.end_radius)),
    ]))
}

fn lobe(given: &Given) -> Result<Given, Refusal> {
    given.only("", &["rise", "over", "geared", "face", "raised"])?;
    let ask = cam::Lobe {
        rise: size(given, "rise", Field::Rise)?,
        over: angle(given, "over")?,
        geared: size(given, "geared", Field::Lead)?,
        face: size(given, "face", Field::Face)?,
        raised: angle_if(given, "raised")?,
    };
    // The core checks the lobe's own angle first.
    let of_raised = cam::lobe(&cam::Lobe { raised: None, ..ask }).is_ok();
    let keys = [
        (Field::Rise, "rise"),
        (Field::Angle, if of_raised { "raised" } else { "over" }),
        (Field::Lead, "geared"),
        (Field::Face, "face"),
    ];
    let set = cam::lobe(&ask).map_err(refuse(given, &keys))?;
    Ok(object([
        ("lead", told(set.lead)),
        ("tilt", turned(set.tilt)),
        ("from_upright", turned(set.from_upright)),
        ("travel", told(set.travel)),
        ("flute", about(set.flute)),
        ("gives", maybe(set.gives.map(|(gives, _)| gives))),
        ("off", maybe(set.gives.map(|(_, off)| off))),
    ]))
}

fn steps(given: &Given) -> Result<Given, Refusal> {
    given.only("", &["rise", "over", "steps", "radius", "mill"])?;
    let ask = cam::Steps {
        rise: size(given, "rise", Field::Rise)?,
        over: angle(given, "over")?,
        steps: given.get("steps").count("steps", bounds::TIMES)?,
        radius: size(given, "radius", Field::Ring)?,
        mill: size(given, "mill", Field::Cutter)?,
    };
    let keys = [
        (Field::Times, "steps"),
        (Field::Rise, "rise"),
        (Field::Angle, "over"),
        (Field::Ring, "radius"),
        (Field::Cutter, "mill"),
    ];
    let found = cam::steps(&ask).map_err(refuse(given, &keys))?;
    Ok(object([
        ("turn", degrees(found.turn)),
        ("each", told(found.each)),
        ("cusp", about(found.cusp)),
    ]))
}
