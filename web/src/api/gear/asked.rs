//! A wheel as it is asked for, and refusals by the name of the value.
use super::super::given::{Given, dotted};
use super::super::refusal::Refusal;
use super::super::request;
use super::super::thread::asked::{choice, exact, length, length_or};
use super::super::thread::told;
use handturn::gear::{DepthRule, Size, Spur, Tooth};
use handturn::measure::Length;
use handturn::number::{Approx, Fraction};
use handturn::{Error, Field, bounds};

/// Keys of the rack that teeth are cut to.
pub(in crate::api) const TOOTH: [&str; 4] = ["module", "diametralPitch", "pressureAngle", "depth"];
/// Keys of a wheel beside those.
const WHEEL: [&str; 3] = ["teeth", "shift", "thinned"];

pub(super) const NOTHING: Length = Length::from_mm(Fraction::ZERO);

/// Refuses all keys of `given` but those of a wheel and `more`.
///
/// # Errors
/// The first that is not known, by name.
pub(super) fn only(given: &Given, more: &[&str]) -> Result<(), Refusal> {
    given.only("", &[&WHEEL[..], &TOOTH, more].concat())
}

/// The size of teeth in `given`: a module or a diametral pitch.
///
/// # Errors
/// Neither or both of them, or what cannot be read, by name.
pub(in crate::api) fn size(given: &Given) -> Result<Size, Refusal> {
    let size = match (given.get("module"), given.get("diametralPitch")) {
        (module, Given::Nothing) => Size::Module(length(module, "module", Field::Module)?),
        (Given::Nothing, pitch) => {
            Size::DiametralPitch(exact(pitch, "diametralPitch", Field::DiametralPitch)?)
        }
        _ => {
            let both = Given::Text("both".to_owned());
            return Err(Refusal::kind("module", "given, or diametralPitch", &both));
        }
    };
    size.check().map_err(refused(given))?;
    Ok(size)
}

/// The rack in `given`: 20° where no pressure angle is given, as deep as is usual for it
/// and the size where no rule is.
///
/// # Errors
/// What cannot be read, by name.
pub(in crate::api) fn tooth(given: &Given) -> Result<Tooth, Refusal> {
    let size = size(given)?;
    let pressure_angle = match given.get("pressureAngle") {
        Given::Nothing => Tooth::default().pressure_angle,
        other => request::angle(other, "pressureAngle")?,
    };
    let rules = [("old", DepthRule::Old), ("coarse", DepthRule::Coarse), ("fine", DepthRule::Fine)];
    let rule = match given.get("depth") {
        Given::Nothing => DepthRule::usual(size, pressure_angle),
        own @ Given::Object(_) => {
            own.only("depth", &["addendum", "dedendum"])?;
            let part = |key| exact(own.get(key), &dotted("depth", key), Field::Depth);
            DepthRule::Own { addendum: part("addendum")?, dedendum: part("dedendum")? }
        }
        other => choice(other, "depth", &rules)?,
    };
    let tooth = Tooth { size, pressure_angle, rule };
    tooth.check().map_err(refused(given))?;
    Ok(tooth)
}

/// The wheel in `given`.
///
/// # Errors
/// What cannot be read, by name.
pub(in crate::api) fn wheel(given: &Given) -> Result<Spur, Refusal> {
    of_tooth(given, "", tooth(given)?)
}

/// The wheel of `tooth` whose own values stand in `given`, which is called `name`.
pub(super) fn of_tooth(given: &Given, name: &str, tooth: Tooth) -> Result<Spur, Refusal> {
    let key = |key| dotted(name, key);
    let teeth = given.get("teeth").count(&key("teeth"), bounds::WHEEL_TEETH)?;
    let shift = match given.get("shift") {
        Given::Nothing => Fraction::ZERO,
        other => exact(other, &key("shift"), Field::Shift)?,
    };
    let thinned = length_or(given.get("thinned"), &key("thinned"), Field::Backlash, NOTHING)?;
    let spur = Spur { teeth, tooth, shift, thinned };
    spur.check().map_err(|error| {
        let name = if error.field == Field::Shift { "shift" } else { "thinned" };
        Refusal::of(&key(name), &error, &given.get(name).to_string())
    })?;
    Ok(spur)
}

/// The blank as found in `outside`; as drawn where that is not given.
///
/// # Errors
/// What cannot be read.
pub(super) fn outside(given: &Given, spur: &Spur) -> Result<Length, Refusal> {
    match given.get("outside") {
        Given::Nothing => spur.outside_diameter().map_err(refused(given)),
        other => length(other, "outside", Field::Blank),
    }
}

/// A refusal of the core, under the name that its field has in `given`.
pub(in crate::api) fn refused(given: &Given) -> impl Fn(Error) -> Refusal {
    move |error| {
        let names: &[&str] = match error.field {
            Field::Teeth => &["teeth", "virtualTeeth"],
            Field::Module => &["module", "diametralPitch"],
            Field::DiametralPitch => &["diametralPitch"],
            Field::PressureAngle => &["pressureAngle"],
            Field::Shift => &["shift"],
            Field::Depth => &["depth", "height"],
            Field::Cutter => &["owned", "cutter", "cutters", "collar"],
            Field::Blank => &["outside"],
            Field::Pin => &["pin", "owned"],
            Field::Span => &["across"],
            Field::Reading => &["reading"],
            Field::Backlash => &["backlash", "measured", "thinned"],
            Field::Centres => &["centres"],
            Field::CentreHeight => &["centreHeight"],
            Field::Pitch => &["circularPitch", "chord"],
            Field::Diameter => &["diameter"],
            Field::Ratio => &["ratio"],
            Field::Helix => &["helix"],
            Field::Face => &["face"],
            Field::Starts => &["starts"],
            Field::Length => &["clearance", "beside"],
            _ => &[],
        };
        // The one that is given, else the first.
        let name = names.iter().find(|name| given.has(name)).or(names.first());
        let name = name.copied().unwrap_or("request");
        let typed = given.get(name);
        let typed = if *typed == Given::Nothing { String::new() } else { typed.to_string() };
        Refusal::of(name, &error, &typed)
    }
}

/// A bare number that is not exact, and how far off it can be.
pub(in crate::api) fn value(of: Approx) -> Given {
    let (value, within) = (Given::Number(of.value), Given::Number(of.bound));
    told::object([("value", value), ("within", within)])
}
