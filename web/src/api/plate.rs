//! Error budgets, and the plate one lacks, in the package.
//!
//! Sizes of errors are `{ arcsec, mm, within }`: an angle, its length where the piece is
//! cut, and how far off the angle can be as computed.
use super::given::{Given, dotted};
use super::refusal::Refusal;
use super::request;
use super::thread::told::{about, list, maybe, named, object};
use handturn::bounds::{self, Bound};
use handturn::divide::{Asked, CircleAt, Errors, Parts, Way};
use handturn::head::Head;
use handturn::list::List;
use handturn::measure::read::{self, Unit};
use handturn::measure::{Angle, Length};
use handturn::number::{Approx, Fraction};
use handturn::plate::ring::{Blank, Ring};
use handturn::plate::{self, Budget, Making, Need, Sources, Sums, arc_mm};
use handturn::{Cause, Error, Field};
use serde::Serialize;

/// What each source of error makes of a division, and all of them together.
#[derive(Debug, Serialize)]
pub(super) struct Told {
    rounding: Errors,
    terms: Given,
    sum: Given,
    dominant: Given,
}

/// The plan of a plate.
#[derive(Debug, Serialize)]
pub(super) struct Made {
    needs: Need,
    parts: Parts,
    circle: CircleAt,
    work: Way,
    enough: u8,
    generations: Vec<Generation>,
}

#[derive(Debug, Serialize)]
struct Generation {
    way: Way,
    plate: Told,
    work: Told,
    gain: f64,
    pays: bool,
}

/// The budget of `way` for what is asked.
///
/// # Errors
/// A [`Refusal`] that names the value.
pub(super) fn budget(given: &Given, way: &Way) -> Result<Told, Refusal> {
    let (asked, head, rest) = split(given, &["sources"])?;
    let sources = sources(rest.get("sources"))?;
    let budget = plate::budget(&asked.question(), &head, way, &sources);
    Ok(told(budget.map_err(refuse)?, head.work_diameter))
}

/// The plan of the plate for what is asked.
///
/// # Errors
/// A [`Refusal`] that names the value.
pub(super) fn make(given: &Given, first: Option<Way>) -> Result<Made, Refusal> {
    let keys = ["sources", "multiple", "ring", "drilling", "pays"];
    let (asked, head, rest) = split(given, &keys)?;
    let plain = Making::default();
    let times = Bound { field: Field::Holes, least: 1, greatest: bounds::HOLES.greatest };
    let making = Making {
        question: asked.question(),
        multiple: rest.get("multiple").count_or("multiple", times, 1)?,
        ring: length(rest.get("ring"), "ring")?.unwrap_or(plain.ring),
        drilling: length(rest.get("drilling"), "drilling")?.unwrap_or(plain.drilling),
        first,
        sources: sources(rest.get("sources"))?,
        pays: fraction(rest.get("pays"), "pays")?.unwrap_or(plain.pays),
    };
    let plan = plate::ladder(&head, &making).map_err(refuse)?;
    let across = making.ring.mm().times(2).map(Length::from_mm).map_err(refuse)?;
    let generations = plan.generations.iter().zip(1_u8..).map(|(generation, nth)| Generation {
        way: generation.way,
        plate: told(generation.plate.clone(), across),
        work: told(generation.work.clone(), head.work_diameter),
        gain: generation.gain,
        pays: nth <= plan.enough,
    });
    Ok(Made {
        needs: plan.need,
        parts: plan.parts,
        circle: plan.circle,
        work: plan.work,
        enough: plan.enough,
        generations: generations.collect(),
    })
}

/// Whether a ring of holes can be drilled; a good radius where none is given.
///
/// # Errors
/// A [`Refusal`] that names the value.
pub(super) fn ring(given: &Given) -> Result<Given, Refusal> {
    given.only("", &["holes", "drill", "radius", "rim", "rings", "web", "head"])?;
    let head = request::head(given.get("head"))?;
    let holes = given.get("holes").count("holes", bounds::HOLES)?;
    let drill = length(given.get("drill"), "drill")?.or(head.pin);
    let drill = drill.ok_or_else(|| Refusal::kind("drill", "a length", &Given::Nothing))?;
    let mut rings = List::new();
    if given.has("rings") {
        for (k, entry) in given.get("rings").list("rings")?.iter().enumerate() {
            let name = dotted("rings", &k.to_string());
            entry.only(&name, &["radius", "drill"])?;
            let one = |key| {
                let name = dotted(&name, key);
                let found = length(entry.get(key), &name)?;
                found.ok_or_else(|| Refusal::kind(&name, "a length", &Given::Nothing))
            };
            let most = u16::try_from(bounds::MAX_CIRCLES).unwrap_or(u16::MAX);
            let full = Error::new(Field::Ring, Cause::TooMany { most });
            let ring = (one("radius")?, one("drill")?);
            rings.push(ring).map_err(|_| Refusal::of("rings", &full, ""))?;
        }
    }
    let blank = Blank {
        rim: length(given.get("rim"), "rim")?,
        rings,
        web: length(given.get("web"), "web")?.unwrap_or(Blank::default().web),
        pin: head.pin,
        reach: head.reach,
    };
    let radius = match length(given.get("radius"), "radius")? {
        Some(radius) => radius,
        None => plate::ring::propose(holes, drill, &blank)
            .map_err(refuse)?
            .ok_or_else(|| refuse(Error::new(Field::Ring, Cause::Conflict)))?,
    };
    let fit = plate::ring::check(&Ring { holes, radius, drill }, &blank).map_err(refuse)?;
    Ok(object([
        ("radius", maybe(Some(radius))),
        ("drill", maybe(Some(drill))),
        ("web", about(fit.web_mm)),
        ("beside", maybe(fit.beside)),
        ("to_rim", maybe(fit.to_rim)),
        ("play", maybe(fit.play)),
    ]))
}

/// The question and the head of a request that has `more` keys, and those.
fn split(given: &Given, more: &[&str]) -> Result<(Asked, Head, Given), Refusal> {
    let Given::Object(entries) = given else {
        return Err(Refusal::kind("request", "an object", given));
    };
    let (rest, asked): (Vec<_>, Vec<_>) =
        entries.iter().cloned().partition(|(key, _)| more.contains(&key.as_str()));
    let asked = Given::Object(asked);
    let head = request::head(asked.get("head"))?;
    Ok((request::question(&asked)?, head, Given::Object(rest)))
}

fn told(budget: Budget, diameter: Length) -> Told {
    let term = |term: &plate::Term| {
        let Given::Object(sizes) = sums(&term.sizes, diameter) else { return Given::Nothing };
        let mut entries = vec![
            ("source".to_owned(), named(term.source)),
            ("spread".to_owned(), named(term.source.spread())),
        ];
        entries.extend(sizes);
        Given::Object(entries)
    };
    Told {
        rounding: budget.rounding,
        terms: list(&budget.terms, term),
        sum: sums(&budget.sum, diameter),
        dominant: budget.dominant.map_or(Given::Nothing, named),
    }
}

fn sums(sums: &Sums, diameter: Length) -> Given {
    let size = |error: Approx| {
        object([
            ("arcsec", Given::Number(error.value)),
            ("mm", Given::Number(arc_mm(error, diameter).value)),
            ("within", Given::Number(error.bound)),
        ])
    };
    object([
        ("total", size(sums.total)),
        ("adjacent", size(sums.adjacent)),
        ("rms", size(sums.rms)),
        ("adjacent_rms", size(sums.adjacent_rms)),
    ])
}

/// Errors of machine and hands; what is not given is common practice.
fn sources(given: &Given) -> Result<Sources, Refusal> {
    let mut sources = Sources::default();
    if *given == Given::Nothing {
        return Ok(sources);
    }
    let known = [
        "wheel",
        "worm",
        "hole",
        "pinPlay",
        "plateRunOut",
        "reading",
        "sameSide",
        "blankRunOut",
        "radius",
    ];
    given.only("sources", &known)?;
    for key in known {
        let value = given.get(key);
        let name = dotted("sources", key);
        // Checked alone, so that a refusal is of this value.
        let mut alone = Sources::NONE;
        for sources in [&mut sources, &mut alone] {
            match key {
                "wheel" => angle(value, &name, &mut sources.wheel)?,
                "worm" => angle(value, &name, &mut sources.worm)?,
                "hole" => set(length(value, &name)?, &mut sources.hole),
                "pinPlay" => set(length(value, &name)?, &mut sources.pin_play),
                "plateRunOut" => set(length(value, &name)?, &mut sources.plate_run_out),
                "blankRunOut" => set(length(value, &name)?, &mut sources.blank_run_out),
                "radius" => set(length(value, &name)?, &mut sources.radius),
                "reading" => set(fraction(value, &name)?, &mut sources.reading),
                _ => sources.same_side = value.flag(&name, sources.same_side)?,
            }
        }
        alone.check().map_err(|error| Refusal::of(&name, &error, &value.to_string()))?;
    }
    Ok(sources)
}

fn set<T>(found: Option<T>, value: &mut T) {
    if let Some(found) = found {
        *value = found;
    }
}

fn angle(given: &Given, name: &str, value: &mut Angle) -> Result<(), Refusal> {
    if *given != Given::Nothing {
        *value = request::angle(given, name)?;
    }
    Ok(())
}

/// A length as people type it, in millimetres unless it names inches; none where
/// nothing is given.
fn length(given: &Given, name: &str) -> Result<Option<Length>, Refusal> {
    match given {
        Given::Nothing => return Ok(None),
        Given::List(_) => return given.fraction(name).map(|mm| Some(Length::from_mm(mm))),
        _ => {}
    }
    let text = given.text(name)?;
    let read = read::length(&text, Unit::Mm);
    read.map(Some).map_err(|error| Refusal::of(name, &error, &text))
}

/// A number as people type it, or `[num, den]`.
fn fraction(given: &Given, name: &str) -> Result<Option<Fraction>, Refusal> {
    match given {
        Given::Nothing => Ok(None),
        Given::List(_) => given.fraction(name).map(Some),
        _ => {
            let text = given.text(name)?;
            let read = read::number(&text, Field::Fraction);
            read.map(Some).map_err(|error| Refusal::of(name, &error, &text))
        }
    }
}

/// What the core refuses, under the name that JavaScript gives it.
fn refuse(error: Error) -> Refusal {
    let name = match error.field {
        Field::Ring => "ring",
        Field::Drill => "drill",
        Field::Holes => "holes",
        Field::Generations => "first",
        Field::Record => "way",
        Field::List => "list",
        _ => "request",
    };
    Refusal::of(name, &error, "")
}

#[cfg(test)]
mod tests {
    use super::*;

    fn n(number: f64) -> Given {
        Given::Number(number)
    }

    fn plates() -> Given {
        let head =
            object([("plates", Given::Text("15 16 17 18 19 20 / 37 39 41 43 47 49".into()))]);
        object([("parts", n(127.0)), ("head", head)])
    }

    fn with(key: &str, value: Given) -> Given {
        let Given::Object(mut entries) = plates() else { unreachable!() };
        entries.push((key.to_owned(), value));
        Given::Object(entries)
    }

    #[test]
    fn a_plate_is_planned() {
        let made = make(&plates(), None).unwrap();
        assert_eq!((made.needs.holes, made.circle.holes, made.generations.len()), (127, 127, 4));
        assert!(made.generations[0].pays && made.generations[0].gain == 0.0);
        let twice = make(&with("multiple", n(2.0)), None).unwrap();
        assert_eq!(twice.circle.holes, 254);
        let again = budget(&with("sources", object([])), &made.work);
        assert_eq!(again.unwrap_err().field, "way", "that plate is not on this head");
    }

    #[test]
    fn values_are_refused_by_name() {
        let refused = |key: &str, value: Given| make(&with(key, value), None).unwrap_err().field;
        assert_eq!(refused("ring", n(5.0)), "ring");
        assert_eq!(refused("drilling", n(-1.0)), "drill");
        assert_eq!(refused("multiple", n(0.0)), "multiple");
        assert_eq!(refused("multiple", n(9.0)), "holes");
        assert_eq!(refused("pays", n(2.0)), "first");
        assert_eq!(refused("sources", object([("hole", n(6.0))])), "sources.hole");
        assert_eq!(refused("sources", object([("worm", n(2.0))])), "sources.worm");
        assert_eq!(refused("sources", object([("reading", n(2.0))])), "sources.reading");
        assert_eq!(refused("sources", object([("sameSide", n(2.0))])), "sources.sameSide");
        assert_eq!(refused("sources", object([("luck", n(2.0))])), "sources.luck");
    }

    #[test]
    fn a_ring_is_proposed_or_refused() {
        let asked = |entries: &[(&str, f64)]| {
            let entries = entries.iter().map(|(key, value)| ((*key).to_owned(), n(*value)));
            ring(&Given::Object(entries.collect()))
        };
        let fits = asked(&[("holes", 127.0), ("drill", 1.5), ("rim", 60.0)]).unwrap();
        assert_eq!(fits.get("radius").get("mm"), &n(58.0));
        let meets = asked(&[("holes", 127.0), ("drill", 3.0), ("radius", 55.0)]).unwrap_err();
        assert_eq!((&*meets.field, &*meets.cause), ("ring", "HolesMeet"));
        assert_eq!(asked(&[("holes", 127.0)]).unwrap_err().field, "drill");
    }
}
