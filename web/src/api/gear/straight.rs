//! Straight teeth: sizes, cutter, the blank as found, what a wheel is, whether it swings.
use super::super::given::{Given, dotted};
use super::super::refusal::Refusal;
use super::super::thread::asked::{choice, exact, length, length_or};
use super::super::thread::told::{about, count, length as told, maybe, named, number, object};
use super::asked::{self, NOTHING, refused, value};
use handturn::gear::cutter::{self, Cutter, FORMS, Numbering, Set};
use handturn::gear::found::found;
use handturn::gear::sound::sound;
use handturn::gear::swing::{self, Setup};
use handturn::gear::telling::{self, Near};
use handturn::gear::{DepthRule, Size};
use handturn::number::{Approx, Fraction, float};
use handturn::{Field, bounds};

/// What a wheel measures, and whether its teeth are sound.
pub(super) fn sizes(given: &Given) -> Result<Given, Refusal> {
    asked::only(given, &[])?;
    let spur = asked::wheel(given)?;
    let refused = refused(given);
    let all = || {
        let (tooth, arcs, said) = (&spur.tooth, spur.arcs()?, sound(&spur)?);
        let module = tooth.size.module()?;
        let rule = match tooth.rule {
            DepthRule::Old => "old",
            DepthRule::Coarse => "coarse",
            DepthRule::Fine => "fine",
            DepthRule::Own { .. } => "own",
        };
        Ok(object([
            ("module", told(module)),
            ("diametral_pitch", number(module.inches()?.inverse()?)),
            ("depth_rule", Given::Text(rule.to_owned())),
            ("outside_diameter", told(spur.outside_diameter()?)),
            ("pitch_diameter", told(spur.pitch_diameter()?)),
            ("root_diameter", told(spur.root_diameter()?)),
            ("base_diameter", about(arcs.base_diameter)),
            ("addendum", told(tooth.addendum()?)),
            ("dedendum", told(tooth.dedendum()?)),
            ("whole_depth", told(spur.whole_depth()?)),
            ("circular_pitch", about(arcs.circular_pitch)),
            ("base_pitch", about(arcs.base_pitch)),
            ("thickness", about(arcs.thickness)),
            ("fewest_teeth", count(said.fewest)),
            ("undercut", Given::Flag(said.undercut)),
            ("clear_shift", value(said.clear_shift)),
            ("top_land", about(said.top_land)),
            ("thin_top", Given::Flag(said.thin)),
            ("pointed_at", about(said.pointed_at)),
        ]))
    };
    all().map_err(refused)
}

const NUMBERINGS: [(&str, Numbering); 2] =
    [("diametralPitch", Numbering::DiametralPitch), ("module", Numbering::Module)];

/// Which cutter of a set cuts so many teeth, or so many virtual ones.
pub(super) fn cutter(given: &Given) -> Result<Given, Refusal> {
    given.only("", &["teeth", "virtualTeeth", "numbering", "halves", "owned"])?;
    let numbering = match given.get("numbering") {
        Given::Nothing => Numbering::default(),
        other => choice(other, "numbering", &NUMBERINGS)?,
    };
    let halves = given.get("halves").flag("halves", false)?;
    let mut set = if halves { Set::fifteen(numbering) } else { Set::eight(numbering) };
    if given.has("owned") {
        set.has = [false; FORMS];
        for (k, entry) in given.get("owned").list("owned")?.iter().enumerate() {
            let name = dotted("owned", &k.to_string());
            let wanted = exact(entry, &name, Field::Cutter)?;
            let form = form(wanted, numbering).and_then(|form| set.has.get_mut(form));
            let none = || Refusal::kind(&name, "a number from 1 to 8, halves allowed", entry);
            *form.ok_or_else(none)? = true;
        }
    }
    let choice = match given.get("virtualTeeth") {
        Given::Nothing => {
            let teeth = given.get("teeth").count("teeth", bounds::WHEEL_TEETH)?;
            cutter::for_teeth(teeth, &set)
        }
        other => {
            let teeth = float::of(exact(other, "virtualTeeth", Field::Teeth)?);
            cutter::for_virtual(Approx { value: teeth, bound: teeth.abs() * 1e-12 }, &set)
        }
    };
    let choice = choice.map_err(refused(given))?;
    Ok(object([
        ("cutter", told_cutter(&choice.cutter)),
        ("until", choice.until.map_or(Given::Nothing, count)),
        ("in_range", Given::Flag(choice.in_range)),
        ("beside", choice.beside.as_ref().map_or(Given::Nothing, told_cutter)),
    ]))
}

/// Place in [`Set::has`] of the cutter that is numbered so.
fn form(wanted: Fraction, numbering: Numbering) -> Option<usize> {
    let halves = wanted.times(2).ok().filter(|n| n.is_whole())?.num();
    let form = match numbering {
        Numbering::DiametralPitch => halves.checked_sub(2)?,
        Numbering::Module => 16_i64.checked_sub(halves)?,
    };
    usize::try_from(form).ok()
}

pub(in crate::api) fn told_cutter(cutter: &Cutter) -> Given {
    object([
        ("number", number(cutter.number)),
        ("other_number", number(cutter.other_number)),
        ("least", count(cutter.least)),
        ("greatest", cutter.greatest.map_or(Given::Nothing, count)),
    ])
}

/// How deep to go in the blank as found.
pub(super) fn blank(given: &Given) -> Result<Given, Refusal> {
    asked::only(given, &["outside"])?;
    let spur = asked::wheel(given)?;
    let outside = asked::outside(given, &spur)?;
    let blank = found(&spur, outside).map_err(refused(given))?;
    Ok(object([
        ("drawn", told(blank.drawn)),
        ("over", told(blank.over)),
        ("depth", told(blank.depth)),
        ("drawn_depth", told(blank.drawn_depth)),
        ("addendum", told(blank.addendum)),
        ("clearance", told(blank.clearance)),
        ("height", named(blank.height)),
    ]))
}

/// What size a wheel's teeth are, by its outside and their number.
pub(super) fn tell(given: &Given) -> Result<Given, Refusal> {
    given.only("", &["outside", "teeth"])?;
    let outside = length(given.get("outside"), "outside", Field::Blank)?;
    let teeth = given.get("teeth").count("teeth", bounds::WHEEL_TEETH)?;
    let told_size = telling::size_of(outside, teeth).map_err(refused(given))?;
    let near = |near: Near| {
        let size = match near.size {
            Size::Module(module) => ("module", told(module)),
            Size::DiametralPitch(pitch) => ("diametral_pitch", number(pitch)),
        };
        object([size, ("outside", told(near.outside)), ("over", told(near.over))])
    };
    Ok(object([
        ("module", told(told_size.module)),
        ("diametral_pitch", number(told_size.diametral_pitch)),
        ("nearest_module", near(told_size.nearest_module)),
        ("nearest_diametral_pitch", near(told_size.nearest_pitch)),
        ("is_module", Given::Flag(told_size.is_module)),
    ]))
}

/// How many teeth a blank is for.
pub(super) fn teeth(given: &Given) -> Result<Given, Refusal> {
    given.only("", &["outside", "module", "diametralPitch"])?;
    let outside = length(given.get("outside"), "outside", Field::Blank)?;
    let found = telling::teeth_of(outside, asked::size(given)?).map_err(refused(given))?;
    Ok(object([
        ("teeth", count(found.teeth)),
        ("outside", told(found.outside)),
        ("over", told(found.over)),
    ]))
}

/// The module of a circular pitch; a diameter by the chord of its teeth, and back.
pub(super) fn pitch(given: &Given) -> Result<Given, Refusal> {
    given.only("", &["circularPitch", "chord", "diameter", "teeth"])?;
    let of = |key, field| length(given.get(key), key, field);
    let teeth = || given.get("teeth").count("teeth", bounds::WHEEL_TEETH);
    let (key, found) = if given.has("circularPitch") {
        ("module", telling::module_of_circular_pitch(of("circularPitch", Field::Pitch)?))
    } else if given.has("chord") {
        ("diameter", telling::diameter_of_chord(of("chord", Field::Pitch)?, teeth()?))
    } else {
        ("chord", telling::chord_of_diameter(of("diameter", Field::Diameter)?, teeth()?))
    };
    let found = found.map_err(refused(given))?;
    let told = |of| (of, if of == key { about(found) } else { Given::Nothing });
    Ok(object(["module", "diameter", "chord"].map(told)))
}

/// Whether a wheel swings over the table and under the arbor.
pub(super) fn swing(given: &Given) -> Result<Given, Refusal> {
    let keys = ["outside", "depth", "centreHeight", "cutter", "collar", "beside", "clearance"];
    given.only("", &keys)?;
    let of = |key, field| length(given.get(key), key, field);
    let setup = Setup {
        outside: of("outside", Field::Blank)?,
        depth: of("depth", Field::Depth)?,
        centre_height: of("centreHeight", Field::CentreHeight)?,
        cutter: of("cutter", Field::Cutter)?,
        collar: of("collar", Field::Cutter)?,
        beside: given.has("beside").then(|| of("beside", Field::Length)).transpose()?,
        clearance: length_or(given.get("clearance"), "clearance", Field::Length, NOTHING)?,
    };
    let room = swing::swing(&setup).map_err(refused(given))?;
    Ok(object([
        ("over_table", told(room.over_table)),
        ("table_clears", Given::Flag(room.table_clears)),
        ("under_collar", told(room.under_collar)),
        ("collar_clears", Given::Flag(room.collar_clears)),
        ("over_head", maybe(room.over_head)),
        ("head_clears", Given::Flag(room.head_clears)),
        ("touching", told(room.touching)),
        ("at_depth", told(room.at_depth)),
        ("least_cutter", told(room.least_cutter)),
    ]))
}
