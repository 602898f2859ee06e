//! Where the holes of a plate lie, by coordinates and by the dials of a mill's table; tapes
//! and disks for whoever has no head.
use super::given::{Given, dotted};
use super::plate;
use super::refusal::Refusal;
use super::request;
use super::thread::asked::{choice, exact, length, length_or};
use super::thread::told::{about, count, degrees, list, object, text};
use handturn::bounds::{self, TABLE_MARKS};
use handturn::head::Sense;
use handturn::measure::{Angle, Length};
use handturn::number::{Approx, Fraction};
use handturn::plate::coordinates::{Centre, Comes, Hole, Layout, Reading, Screw};
use handturn::plate::disks;
use handturn::plate::tape::{self, Tape};
use handturn::{Error, Field};

/// The answer to `request`, by what it is about.
///
/// # Errors
/// A [`Refusal`] that names the value.
pub(super) fn answer(about: &str, request: &Given) -> Result<Given, Refusal> {
    match about {
        "ring" => plate::ring(request),
        "holes" => holes(request),
        "tape" => tapes(request),
        "drum" => drum(request),
        "disks" => touching(request),
        _ => Err(Refusal::unknown("about", &[])),
    }
}

const ZERO: Length = Length::from_mm(Fraction::ZERO);
const SENSES: [(&str, Sense); 2] =
    [("anticlockwise", Sense::Anticlockwise), ("clockwise", Sense::Clockwise)];

fn holes(given: &Given) -> Result<Given, Refusal> {
    given.only("", &["holes", "ring", "first", "sense", "centre", "screws"])?;
    let radius = length(given.get("ring"), "ring", Field::Ring)?;
    let layout = Layout {
        holes: given.get("holes").count("holes", bounds::HOLES)?,
        diameter: radius.mm().times(2).map(Length::from_mm).map_err(refuse)?,
        first: match given.get("first") {
            Given::Nothing => Angle::ZERO,
            first => request::angle(first, "first")?,
        },
        sense: match given.get("sense") {
            Given::Nothing => Sense::Anticlockwise,
            sense => choice(sense, "sense", &SENSES)?,
        },
        centre: match given.get("centre") {
            Given::Nothing => [ZERO, ZERO],
            centre => both(centre, "centre", |one, name| length(one, name, Field::Length))?,
        },
    };
    layout.check().map_err(refuse)?;
    let screws = match given.get("screws") {
        Given::Nothing => None,
        one @ Given::Object(_) => Some([screw(one, "screws")?; 2]),
        two => Some(both(two, "screws", screw)?),
    };
    let one = |k: u32| match &screws {
        Some(screws) => layout.hole(screws, k).map(|hole| by_dials(&hole)),
        None => layout.centre(k).map(|centre| placed(&centre, Given::Nothing)),
    };
    let all: Result<Vec<Given>, Error> = (0..layout.holes).map(one).collect();
    let worst = match &screws {
        Some(screws) => {
            let worst = layout.worst(screws).map_err(refuse)?;
            object([
                ("outwards", about(worst.outwards)),
                ("onwards", about(worst.onwards)),
                ("neighbours", about(worst.neighbours)),
                ("onwards_arcsec", seconds(worst.onwards_arcsec)),
                ("neighbours_arcsec", seconds(worst.neighbours_arcsec)),
            ])
        }
        None => Given::Nothing,
    };
    Ok(object([("holes", Given::List(all.map_err(refuse)?)), ("worst", worst)]))
}

fn placed(centre: &Centre, dial: Given) -> Given {
    let two = |[x, y]: [Approx; 2]| Given::List(vec![about(x), about(y)]);
    object([
        ("degrees", degrees(centre.angle)),
        ("from_centre", two(centre.from_centre)),
        ("from_edges", two(centre.from_edges)),
        ("dial", dial),
    ])
}

fn by_dials(hole: &Hole) -> Given {
    let reading = |reading: &Reading| {
        let (comes, past) = match reading.comes {
            Comes::Stays => ("Stays", Given::Nothing),
            Comes::Straight => ("Straight", Given::Nothing),
            Comes::Past { turns, mark } => ("Past", shows(turns, mark)),
        };
        object([
            ("shows", shows(reading.turns, reading.mark)),
            ("off", about(reading.off)),
            ("comes", text(comes)),
            ("past", past),
        ])
    };
    placed(&hole.centre, list(&hole.dial, reading))
}

/// A reading: whole turns from zero and the mark.
fn shows(turns: i64, mark: u32) -> Given {
    #[expect(clippy::cast_precision_loss, reason = "no table is so long")]
    let turns = Given::Number(turns as f64);
    object([("turns", turns), ("mark", count(mark))])
}

fn screw(given: &Given, name: &str) -> Result<Screw, Refusal> {
    given.only(name, &["lead", "marks", "slack", "falls"])?;
    let inner = |key| dotted(name, key);
    let screw = Screw {
        lead: length(given.get("lead"), &inner("lead"), Field::Table)?,
        marks: given.get("marks").count(&inner("marks"), TABLE_MARKS)?,
        slack: length_or(given.get("slack"), &inner("slack"), Field::Table, ZERO)?,
        falls: given.get("falls").flag(&inner("falls"), false)?,
    };
    screw.mark().map_err(|error| Refusal::of(name, &error, ""))?;
    Ok(screw)
}

/// Two of a kind: for X and for Y.
fn both<T>(
    given: &Given,
    name: &str,
    read: impl Fn(&Given, &str) -> Result<T, Refusal>,
) -> Result<[T; 2], Refusal> {
    let [x, y] = given.list(name)? else {
        return Err(Refusal::kind(name, "an array of two", given));
    };
    Ok([read(x, &dotted(name, "0"))?, read(y, &dotted(name, "1"))?])
}

fn tapes(given: &Given) -> Result<Given, Refusal> {
    given.only("", &["parts", "drum", "thickness", "stretch", "thicker"])?;
    let parts = given.get("parts").count("parts", bounds::DIVISIONS)?;
    let thickness = length_or(given.get("thickness"), "thickness", Field::Length, ZERO)?;
    let stretch = match given.get("stretch") {
        Given::Nothing => Fraction::ZERO,
        stretch => exact(stretch, "stretch", Field::Length)?,
    };
    let sizes = Tape {
        parts,
        drum: length(given.get("drum"), "drum", Field::Drum)?,
        thickness,
        stretch_per_mille: stretch,
        thicker: length_or(given.get("thicker"), "thicker", Field::Length, ZERO)?,
    }
    .sizes()
    .map_err(refuse)?;
    Ok(object([
        ("pitch", about(sizes.pitch)),
        ("length", about(sizes.length)),
        ("lap", about(sizes.lap)),
        ("lap_arcsec", seconds(sizes.lap_arcsec)),
        ("tenth_arcsec", seconds(sizes.tenth_arcsec)),
    ]))
}

fn drum(given: &Given) -> Result<Given, Refusal> {
    given.only("", &["parts", "pitch", "thickness"])?;
    let parts = given.get("parts").count("parts", bounds::DIVISIONS)?;
    let pitch = length(given.get("pitch"), "pitch", Field::Pitch)?;
    let thickness = length_or(given.get("thickness"), "thickness", Field::Length, ZERO)?;
    Ok(object([("drum", about(tape::drum(parts, pitch, thickness).map_err(refuse)?))]))
}

fn touching(given: &Given) -> Result<Given, Refusal> {
    given.only("", &["parts", "diameter"])?;
    let parts = given.get("parts").count("parts", bounds::HOLES)?;
    let diameter = length(given.get("diameter"), "diameter", Field::Ring)?;
    let found = disks::round(parts, diameter).map_err(|error| {
        let name = if error.field == Field::Ring { "diameter" } else { "parts" };
        Refusal::of(name, &error, &given.get(name).to_string())
    })?;
    Ok(object([("disk", about(found.disk)), ("central", about(found.central))]))
}

fn seconds(angle: Approx) -> Given {
    object([("arcsec", Given::Number(angle.value)), ("within", Given::Number(angle.bound))])
}

fn refuse(error: Error) -> Refusal {
    let name = match error.field {
        Field::Ring => "ring",
        Field::Drum => "drum",
        Field::Pitch => "pitch",
        Field::Table => "screws",
        Field::Length => "length",
        _ => "request",
    };
    Refusal::of(name, &error, "")
}
