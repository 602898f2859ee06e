//! Dials in the package: plain objects in, plain objects out, lengths in both units,
//! angles as `{ turns, degrees }`.
use super::given::{Given, MOST, dotted};
use super::refusal::Refusal;
use super::request;
use super::thread::asked::{choice, length, length_or, pitch};
use super::thread::told::{self, about, count, list, named, object};
use handturn::bounds;
use handturn::dial::fine::{self, Arm, Wanted};
use handturn::dial::lines::{self, Every, Reading, Runs, Slide, Surface};
use handturn::dial::screw;
use handturn::dial::vernier::Vernier;
use handturn::dial::width::{self, Across};
use handturn::divide::{Asked, Marks, Question};
use handturn::head::Sense;
use handturn::measure::{Angle, Length};
use handturn::number::{Approx, Fraction};
use handturn::{Cause, Error, Field};

/// The answer to `request`, by what it is about.
///
/// # Errors
/// A [`Refusal`] that names the value.
pub fn answer(about: &str, request: &Given) -> Result<Given, Refusal> {
    match about {
        "marks" => marks(request),
        "mark" => mark(request),
        "stops" => stops(request),
        "figures" => figures(request),
        "vernier" => vernier(request),
        "reads" => reads(request),
        "width" => widths(request),
        "diameter" => diameters(request),
        "screw" => for_screw(request),
        "steps" => steps(request),
        "fine" => fine_dial(request),
        _ => Err(Refusal::unknown("about", &[])),
    }
}

const SENSES: [(&str, Sense); 2] =
    [("clockwise", Sense::Clockwise), ("anticlockwise", Sense::Anticlockwise)];
const ZERO: Length = Length::from_mm(Fraction::ZERO);

/// What the core found wrong with the request as a whole.
fn whole(field: &'static str) -> impl Fn(Error) -> Refusal {
    move |error| Refusal::of(field, &error, "")
}

/// What the core found wrong with one of `names`, each for the field it stands for; the
/// first one where it is about none of them.
fn by_field<'n>(given: &'n Given, names: &'n [(Field, &'n str)]) -> impl Fn(Error) -> Refusal + 'n {
    move |error| {
        let ours = names.iter().find(|(field, _)| *field == error.field).or(names.first());
        let name = ours.map_or("request", |(_, name)| name);
        Refusal::of(name, &error, &given.get(name).to_string())
    }
}

fn angle(angle: Angle) -> Result<Given, Refusal> {
    let turns = angle.turns();
    #[expect(clippy::cast_precision_loss, reason = "within 2^53, or refused")]
    let [num, den] = [turns.num() as f64, turns.den() as f64];
    if num.abs() > MOST || den > MOST {
        return Err(whole("request")(Error::new(Field::Angle, Cause::Overflow)));
    }
    let turns = Given::List(vec![Given::Number(num), Given::Number(den)]);
    Ok(object([("turns", turns), ("degrees", told::degrees(angle))]))
}

fn seconds(of: Approx) -> Given {
    object([("arcsec", Given::Number(of.value)), ("within", Given::Number(of.bound))])
}

/// The marks in `given`, as a question has them.
fn asked(given: &Given) -> Result<Marks, Refusal> {
    let question = Given::Object(vec![("marks".to_owned(), given.clone())]);
    match request::question(&question)? {
        Asked::Marks(marks) => Ok(marks),
        _ => Err(Refusal::kind("marks", "the marks of a dial", given)),
    }
}

/// Marks as a question takes them, from how often each length of line comes.
fn marks(given: &Given) -> Result<Given, Refusal> {
    given.only("", &["count", "lines", "numbers"])?;
    let some = given.get("lines").list("lines")?.iter().enumerate();
    let line = |(k, line): (usize, &Given)| {
        let name = dotted("lines", &k.to_string());
        line.only(&name, &["every", "length"])?;
        let every = line.get("every").count(&dotted(&name, "every"), bounds::EVERY)?;
        let length = length(line.get("length"), &dotted(&name, "length"), Field::Marks)?;
        Ok(Every { every: Some(every), length })
    };
    let mut all = some.map(line).collect::<Result<Vec<_>, Refusal>>()?;
    // The rarest line is the longest: it comes first.
    all.sort_by_key(|line| core::cmp::Reverse(line.every));
    let count_of = given.get("count").count("count", bounds::DIVISIONS)?;
    let found = lines::graduate(count_of, &all, None).map_err(whole("lines"))?;
    let mut found = vec![
        ("count".to_owned(), count(found.count)),
        ("kinds".to_owned(), list(&found.kinds, |kind| object([("length", exact(kind.length))]))),
        ("pattern".to_owned(), list(&found.pattern, |kind| count(u32::from(*kind)))),
    ];
    if given.has("numbers") {
        found.push(("numbers".to_owned(), given.get("numbers").clone()));
    }
    let found = Given::Object(found);
    asked(&found).map(|_| found)
}

/// A length as a request reads it.
fn exact(length: Length) -> Given {
    told::length(length).get("exact").clone()
}

/// What is cut and stamped at a position of the cutting order, or at a mark of the dial.
fn mark(given: &Given) -> Result<Given, Refusal> {
    given.only("", &["marks", "index", "mark", "workTurns"])?;
    let marks = asked(given.get("marks"))?;
    let asked = Asked::Marks(marks);
    let Question::Marks(dial) = asked.question() else {
        return Err(Refusal::kind("marks", "the marks of a dial", given));
    };
    let last = super::position(dial.count.saturating_sub(1));
    let mark = if given.has("mark") {
        given.get("mark").count("mark", last)?
    } else {
        let index = given.get("index").count("index", last)?;
        let turns = match given.get("workTurns") {
            Given::Nothing => Sense::Clockwise,
            other => choice(other, "workTurns", &SENSES)?,
        };
        dial.mark_at(index, turns).unwrap_or(0)
    };
    let found = dial.mark(mark).ok_or_else(|| Refusal::kind("marks", "marks", given))?;
    Ok(object([
        ("mark", count(mark)),
        ("kind", count(u32::from(found.kind))),
        ("length", told::length(found.length)),
        ("number", found.number.map_or(Given::Nothing, count)),
    ]))
}

/// Where the slide stops that draws the lines.
fn stops(given: &Given) -> Result<Given, Refusal> {
    given.only("", &["marks", "lead", "round", "from", "runs"])?;
    let marks = asked(given.get("marks"))?;
    let slide = Slide {
        lead: pitch(given.get("lead"), "lead", Field::Screw)?,
        marks: given.get("round").count("round", bounds::SLIDE_MARKS)?,
        runs: match given.get("runs") {
            Given::Nothing => Runs::Forwards,
            other => choice(other, "runs", &[("up", Runs::Forwards), ("down", Runs::Backwards)])?,
        },
    };
    let from = length_or(given.get("from"), "from", Field::Length, ZERO)?;
    let names = [(Field::Screw, "lead"), (Field::Length, "from"), (Field::Marks, "marks")];
    let found = lines::stops(&marks.kinds, from, &slide).map_err(by_field(given, &names))?;
    Ok(object([
        ("start", reading(&found.start)),
        (
            "ends",
            list(&found.ends, |stop| {
                let (long, off) = (told::length(stop.length), told::length(stop.off));
                object([("reading", reading(&stop.reading)), ("length", long), ("off", off)])
            }),
        ),
    ]))
}

fn reading(reading: &Reading) -> Given {
    object([
        ("from_zero", count(reading.from_zero)),
        ("turns", count(reading.turns)),
        ("mark", count(reading.mark)),
        ("travel", told::length(reading.travel)),
    ])
}

/// How the figures stand.
fn figures(given: &Given) -> Result<Given, Refusal> {
    const ON: [(&str, Surface); 3] = [
        ("handwheel", Surface::HandwheelRim),
        ("table", Surface::TableRim),
        ("face", Surface::Face),
    ];
    given.only("", &["on", "upright", "climbs"])?;
    let on = choice(given.get("on"), "on", &ON)?;
    let climbs = choice(given.get("climbs"), "climbs", &SENSES)?;
    let found = lines::figures(on, given.get("upright").flag("upright", true)?, climbs);
    Ok(object([
        ("lines_from", named(found.lines_from)),
        ("feet", named(found.feet)),
        ("climbs_right", Given::Flag(found.climbs_right)),
        ("rises", named(found.rises)),
    ]))
}

/// The vernier asked for: by marks and parts of one, or by two angles.
fn vernier_of(given: &Given, more: &[&str]) -> Result<Vernier, Refusal> {
    const KEYS: [&str; 7] = ["count", "parts", "main", "least", "retrograde", "long", "double"];
    given.only("", &[&KEYS, more].concat())?;
    let mut vernier = if given.has("count") || given.has("parts") {
        let marks = given.get("count").count("count", bounds::DIAL_MARKS)?;
        let parts = given.get("parts").count("parts", bounds::VERNIER)?;
        Vernier::of_parts(marks, parts).map_err(whole("parts"))?
    } else {
        let main = request::angle(given.get("main"), "main")?;
        let least = request::angle(given.get("least"), "least")?;
        Vernier { main, least, ..Vernier::default() }
    };
    vernier.retrograde = given.get("retrograde").flag("retrograde", false)?;
    vernier.long = given.get("long").flag("long", false)?;
    vernier.double = given.get("double").flag("double", false)?;
    Ok(vernier)
}

const VERNIER: [(Field, &str); 2] = [(Field::Vernier, "least"), (Field::Angle, "main")];

/// How a vernier is to be cut.
fn vernier(given: &Given) -> Result<Given, Refusal> {
    let vernier = vernier_of(given, &["diameter"])?;
    let laid = vernier.laid().map_err(by_field(given, &VERNIER))?;
    let arcs = match given.get("diameter") {
        Given::Nothing => [Given::Nothing, Given::Nothing],
        other => {
            let diameter = length(other, "diameter", Field::Length)?;
            [laid.division, laid.spans].map(|angle| about(angle.arc_mm(diameter)))
        }
    };
    let [division_arc, spans_arc] = arcs;
    Ok(object([
        ("divisions", count(laid.divisions)),
        ("over_marks", count(laid.over_marks)),
        ("lines", count(laid.lines)),
        ("main", angle(vernier.main)?),
        ("least", angle(vernier.least)?),
        ("division", angle(laid.division)?),
        ("spans", angle(laid.spans)?),
        ("division_arc", division_arc),
        ("spans_arc", spans_arc),
    ]))
}

/// Which mark and which line tell a reading.
fn reads(given: &Given) -> Result<Given, Refusal> {
    let vernier = vernier_of(given, &["reading"])?;
    let reading = request::angle(given.get("reading"), "reading")?;
    let found = vernier.read(reading).map_err(by_field(given, &VERNIER))?;
    #[expect(clippy::cast_precision_loss, reason = "a reading within a turn has few marks")]
    let mark = Given::Number(found.mark as f64);
    Ok(object([("mark", mark), ("line", count(found.line)), ("left", angle(found.left)?)]))
}

/// How wide the divisions of a dial are.
fn widths(given: &Given) -> Result<Given, Refusal> {
    given.only("", &["count", "diameter"])?;
    let n = given.get("count").count("count", bounds::DIVISIONS)?;
    let diameter = length(given.get("diameter"), "diameter", Field::Length)?;
    let refused = by_field(given, &[(Field::Length, "diameter")]);
    let of = |across| width::division(n, diameter, across).map(about).map_err(&refused);
    let [least, greatest] = width::line(n, diameter).map_err(&refused)?.map(about);
    Ok(object([
        ("arc", of(Across::Arc)?),
        ("chord", of(Across::Chord)?),
        ("line", object([("least", least), ("greatest", greatest)])),
    ]))
}

/// The diameter on which divisions are so wide.
fn diameters(given: &Given) -> Result<Given, Refusal> {
    given.only("", &["count", "width"])?;
    let n = given.get("count").count("count", bounds::DIVISIONS)?;
    let wide = length(given.get("width"), "width", Field::Length)?;
    let refused = by_field(given, &[(Field::Length, "width")]);
    let of = |across| width::diameter(n, wide, across).map(about).map_err(&refused);
    Ok(object([("by_arc", of(Across::Arc)?), ("by_chord", of(Across::Chord)?)]))
}

/// The dials that suit a screw; with `step` the one that comes nearest to it.
fn for_screw(given: &Given) -> Result<Given, Refusal> {
    given.only("", &["lead", "step"])?;
    let lead = pitch(given.get("lead"), "lead", Field::Screw)?;
    let names = [(Field::Screw, "lead"), (Field::Length, "step"), (Field::SlideDial, "step")];
    let refused = by_field(given, &names);
    let handy = screw::handy(lead).map_err(&refused)?;
    let for_step = match given.get("step") {
        Given::Nothing => Given::Nothing,
        other => {
            let step = length(other, "step", Field::Length)?;
            let found = screw::for_step(lead, step).map_err(&refused)?;
            object([
                ("needed", told::number(found.needed)),
                ("marks", count(found.marks)),
                ("each", told::length(found.each)),
                ("off", told::length(found.off)),
            ])
        }
    };
    let handy = list(&handy, |dial| {
        object([
            ("marks", count(dial.marks)),
            ("step", told::length(dial.step)),
            ("inch", Given::Flag(dial.inch)),
        ])
    });
    Ok(object([("handy", handy), ("for_step", for_step)]))
}

fn arm(given: &Given) -> Result<Arm, Refusal> {
    let ratio = match given.get("ratio") {
        Given::Nothing => Fraction::whole(40),
        other => {
            let text = other.text("ratio")?;
            let ratio = handturn::measure::read::ratio(&text);
            ratio.map_err(|error| Refusal::of("ratio", &error, &text))?
        }
    };
    Ok(Arm {
        lead: pitch(given.get("lead"), "lead", Field::Screw)?,
        radius: length(given.get("radius"), "radius", Field::Length)?,
        ratio,
    })
}

const FINE: [(Field, &str); 3] =
    [(Field::FineDial, "turns"), (Field::Screw, "lead"), (Field::Length, "radius")];

/// Round steps of the work near a screw and an arm.
fn steps(given: &Given) -> Result<Given, Refusal> {
    given.only("", &["lead", "radius", "ratio"])?;
    let found = fine::steps(&arm(given)?).map_err(by_field(given, &FINE))?;
    let step = |step: &fine::Step| {
        let radius = about(step.radius_mm);
        Ok(object([
            ("at_work", angle(step.at_work)?),
            ("marks", count(step.marks)),
            ("radius", radius),
        ]))
    };
    Ok(Given::List(found.iter().map(step).collect::<Result<_, Refusal>>()?))
}

/// What comes of a fine dial.
fn fine_dial(given: &Given) -> Result<Given, Refusal> {
    given.only("", &["lead", "radius", "ratio", "marks", "step", "turns", "within"])?;
    let turns = given.get("turns").fraction("turns")?;
    let wanted = Wanted {
        arm: arm(given)?,
        marks: given.get("marks").count("marks", bounds::DIAL_MARKS)?,
        at_work: request::angle(given.get("step"), "step")?,
        turns,
        within: request::angle(given.get("within"), "within")?,
    };
    let found = fine::design(&wanted).map_err(by_field(given, &FINE))?;
    Ok(object([
        ("radius", about(found.radius_mm)),
        ("mark", seconds(found.mark_arcsec)),
        ("worst", seconds(found.worst_arcsec)),
        ("most_marks", count(found.most_marks)),
        ("least_holes", count(found.least_holes)),
        ("shift", angle(found.dial.shift)?),
        ("travel", angle(found.dial.travel)?),
    ]))
}
