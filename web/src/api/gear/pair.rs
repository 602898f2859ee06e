//! Two wheels that run together.
use super::super::given::Given;
use super::super::refusal::Refusal;
use super::super::thread::asked::{exact, length};
use super::super::thread::told::{about, length as told, list, number, object};
use super::asked::{self, TOOTH, refused, value};
use handturn::Field;
use handturn::gear::pair::{self, At, Pair};

/// Two wheels of one rack, and how they are set.
fn asked_pair(given: &Given, more: &[&str]) -> Result<Pair, Refusal> {
    given.only("", &[&["first", "second", "centres"][..], &TOOTH, more].concat())?;
    let tooth = asked::tooth(given)?;
    let wheel = |key: &'static str| {
        let own = given.get(key);
        own.only(key, &["teeth", "shift", "thinned"])?;
        asked::of_tooth(own, key, tooth)
    };
    let at = if given.has("backlash") {
        At::Backlash(length(given.get("backlash"), "backlash", Field::Backlash)?)
    } else {
        At::Centres(length(given.get("centres"), "centres", Field::Centres)?)
    };
    Ok(Pair { first: wheel("first")?, second: wheel("second")?, at })
}

/// How they run: at a distance, or at the distance that leaves a backlash.
pub(super) fn mesh(given: &Given) -> Result<Given, Refusal> {
    let pair = asked_pair(given, &["backlash"])?;
    let run = pair::mesh(&pair).map_err(refused(given))?;
    Ok(object([
        ("standard", told(run.standard)),
        ("ratio", number(run.ratio)),
        ("centres", about(run.centres)),
        ("tight", about(run.tight)),
        ("working_angle", value(run.working_angle)),
        ("working_diameters", list(run.working_diameters, about)),
        ("backlash", about(run.backlash)),
        ("between_flanks", about(run.between_flanks)),
        ("contact_ratio", value(run.contact_ratio)),
        ("runs_smoothly", Given::Flag(run.runs_smoothly)),
        ("root_clearance", list(run.root_clearance, about)),
        ("fouls", list(run.fouls, Given::Flag)),
    ]))
}

/// Where to set them after a backlash was measured.
pub(super) fn opening(given: &Given) -> Result<Given, Refusal> {
    let pair = asked_pair(given, &["measured", "wanted"])?;
    let of = |key| length(given.get(key), key, Field::Backlash);
    let said = pair::opening(&pair, of("measured")?, of("wanted")?).map_err(refused(given))?;
    Ok(object([
        ("centres", about(said.centres)),
        ("opening", about(said.opening)),
        ("thinned", about(said.thinned)),
    ]))
}

/// The teeth of a pair by its centre distance and ratio.
pub(super) fn teeth(given: &Given) -> Result<Given, Refusal> {
    given.only("", &["module", "diametralPitch", "centres", "ratio"])?;
    let size = asked::size(given)?;
    let centres = length(given.get("centres"), "centres", Field::Centres)?;
    let ratio = exact(given.get("ratio"), "ratio", Field::Ratio)?;
    let found = pair::teeth_for(size, centres, ratio).map_err(refused(given))?;
    Ok(object([
        ("sum", number(found.sum)),
        ("first", number(found.first)),
        ("second", number(found.second)),
        ("whole", Given::Flag(found.whole)),
    ]))
}
