//! Change gears for a lead, in as many steps as are allowed.
use super::super::given::{Given, dotted};
use super::super::refusal::Refusal;
use super::super::request;
use super::asked::{self, HANDS, between, choice, exact, hand, pitch};
use super::told::{self, about, count, list, named, number, object};
use handturn::bounds::{MAX_GEARBOX, STARTS, STUD_TEETH};
use handturn::head::{Mounting, read as listed};
use handturn::measure::Length;
use handturn::number::Fraction;
use handturn::thread::Hand;
use handturn::thread::gearing::{Job, Lathe, Lead, go_on, lacks};
use handturn::train::{Chain, Found, Search, Senses, Six, Unmounted};
use handturn::{Cause, Error, Field, List};

/// What says which lead is wanted: one of these.
const LEADS: [&str; 4] = ["thread", "lead", "module", "diametralPitch"];
/// Trains listed.
const EACH: usize = 8;
/// Steps of a search where nobody says otherwise, and the most there can be: the first
/// is far more than four gears ever take, the second than six.
const STEPS: (u32, u32) = (1_000_000, 1_000_000_000);

/// The nearest trains for a lead, and the one gear that would make it exact.
pub(super) fn gears(given: &Given) -> Result<Given, Refusal> {
    given.only("", &[&LEADS[..], &["starts", "hand", "lathe", "six", "steps"]].concat())?;
    let (lead, wound) = lead(given)?;
    let lathe = lathe(given.get("lathe"))?;
    let six = six(given.get("six"))?;
    let steps = between(given.get("steps"), "steps", 1, STEPS.1, STEPS.0)?;
    let job = Job { lead, hand: wound, six };
    let refused = |error: Error| match error.field {
        Field::Lead => {
            let kind = LEADS.iter().find(|kind| given.has(kind)).copied().unwrap_or("lead");
            Refusal::of(kind, &error, &given.get(kind).to_string())
        }
        Field::Screw => Refusal::of("lathe.screw", &error, ""),
        Field::Gearbox => Refusal::of("lathe.gearbox", &error, ""),
        _ => Refusal::of("lathe.gears", &error, ""),
    };
    let mut search = Search::<EACH>::new();
    let finished = go_on(&mut search, &job, &lathe, steps).map_err(refused)?;
    let lacking = lacks(&job, &lathe).map_err(refused)?;
    let trains: Result<Vec<_>, _> =
        search.best().iter().map(|found| train(found, &lathe)).collect();
    let one =
        |found: Option<Found>| found.map_or(Ok(Given::Nothing), |found| train(&found, &lathe));
    let lacking = || {
        let (teeth, found) = lacking.smallest.unzip();
        Ok::<_, Error>(object([
            ("gear", teeth.map_or(Given::Nothing, |teeth| count(u32::from(teeth)))),
            ("train", one(found)?),
            ("with_127", one(lacking.with_127)?),
        ]))
    };
    Ok(object([
        ("lead", if lead.times_pi { about(lead.mm()) } else { told::length(lead.length) }),
        ("trains", Given::List(trains.map_err(refused)?)),
        ("finished", Given::Flag(finished)),
        ("tried_six", Given::Flag(search.tried_six())),
        ("covered", big(search.covered())?),
        ("weighed", big(search.weighed())?),
        ("unmounted", search.unmounted().map_or(Given::Nothing, unmounted)),
        ("lacking", lacking().map_err(refused)?),
    ]))
}

/// A count that may lie beyond 2^53, where it is refused.
fn big(n: u64) -> Result<Given, Refusal> {
    #[expect(clippy::cast_precision_loss, reason = "checked to lie within 2^53")]
    let number = if n <= 1 << 53 { Ok(Given::Number(n as f64)) } else { Err(()) };
    number.map_err(|()| Refusal {
        field: "answer".to_owned(),
        cause: "Overflow".to_owned(),
        limits: None,
        message: "The answer holds whole numbers beyond 2^53.".to_owned(),
    })
}

/// The lead wanted and which way it winds.
fn lead(given: &Given) -> Result<(Lead, Hand), Refusal> {
    let there: Vec<&str> = LEADS.into_iter().filter(|kind| given.has(kind)).collect();
    let [kind] = there[..] else {
        let both = Given::Text(there.join(" and "));
        let wanted = "one of thread, lead, module or diametralPitch";
        return Err(Refusal::kind("lead", wanted, &both));
    };
    let value = given.get(kind);
    let refused = |error: Error| Refusal::of(kind, &error.of(Field::Lead), &value.to_string());
    let wound = hand(given, "hand", "hand")?;
    if kind == "thread" {
        given.only("", &["thread", "lathe", "six", "steps"])?;
        let thread = asked::thread(value, kind)?.thread;
        let lead = Lead::of_pitch(thread.pitch, thread.starts).map_err(refused)?;
        return Ok((lead, thread.hand));
    }
    let starts = given.get("starts").count_or("starts", STARTS, 1)?;
    let starts = u8::try_from(starts).unwrap_or(u8::MAX);
    let lead = match kind {
        "lead" => Lead::of_pitch(pitch(value, kind, Field::Lead)?, starts),
        "module" => Lead::of_module(asked::length(value, kind, Field::Lead)?, starts),
        _ => Lead::of_diametral_pitch(exact(value, kind, Field::Lead)?, starts),
    };
    Ok((lead.map_err(refused)?, wound))
}

fn six(given: &Given) -> Result<Six, Refusal> {
    match given {
        Given::Nothing => Ok(Six::Never),
        Given::Number(_) => Ok(Six::WhenOffBy(between(given, "six", 0, 1_000_000, 0)?)),
        other => choice(other, "six", &[("never", Six::Never), ("always", Six::Always)]),
    }
}

/// A lathe given in part: what is missing is a first driver that turns with the spindle
/// and can be reversed, no gearbox, a right-hand lead screw.
fn lathe(given: &Given) -> Result<Lathe, Refusal> {
    let known = [
        "screw",
        "screwHand",
        "head",
        "gearbox",
        "gears",
        "studDistance",
        "studMargin",
        "mostIdlers",
        "fourGears",
        "drive",
    ];
    given.only("lathe", &known)?;
    let key = |key: &str| dotted("lathe", key);
    let usual = Mounting::default();
    let narrow = |n: u32| u16::try_from(n).unwrap_or(u16::MAX);
    let teeth = |name: &str, default: u16| {
        let found = given.get(name).count_or(&key(name), STUD_TEETH, u32::from(default));
        found.map(narrow)
    };
    let idlers =
        between(given.get("mostIdlers"), &key("mostIdlers"), 0, 2, usual.most_idlers.into())?;
    let mounting = Mounting {
        distance: teeth("studDistance", usual.distance)?,
        margin: teeth("studMargin", usual.margin)?,
        most_idlers: u8::try_from(idlers).unwrap_or(2),
        four_gears: given.get("fourGears").flag(&key("fourGears"), usual.four_gears)?,
        ..usual
    };
    let mut gearbox = List::new();
    if given.has("gearbox") {
        for (k, entry) in given.get("gearbox").list(&key("gearbox"))?.iter().enumerate() {
            let ratio = ratio(entry, &key(&dotted("gearbox", &k.to_string())))?;
            let most = u16::try_from(MAX_GEARBOX).unwrap_or(u16::MAX);
            let full = Error::new(Field::Gearbox, Cause::TooMany { most });
            gearbox.push(ratio).map_err(|_| Refusal::of(&key("gearbox"), &full, ""))?;
        }
    }
    let gears = match given.get("gears") {
        list @ Given::List(_) => request::spaced(list, &key("gears"))?,
        other => other.text(&key("gears"))?,
    };
    let drives = [("either", Senses::Either), ("same", Senses::Same), ("against", Senses::Against)];
    Ok(Lathe {
        screw: pitch(given.get("screw"), &key("screw"), Field::Screw)?,
        screw_hand: match given.get("screwHand") {
            Given::Nothing => Hand::Right,
            other => choice(other, &key("screwHand"), &HANDS)?,
        },
        head: match given.get("head") {
            Given::Nothing => Fraction::ONE,
            other => ratio(other, &key("head"))?,
        },
        gearbox,
        gears: listed::gears(&gears).map_err(|e| Refusal::of(&key("gears"), &e, &gears))?,
        mounting,
        drive: match given.get("drive") {
            Given::Nothing => Senses::Either,
            other => choice(other, &key("drive"), &drives)?,
        },
    })
}

/// A ratio: a number, a text such as `1 : 2`, or `[num, den]`.
fn ratio(given: &Given, name: &str) -> Result<Fraction, Refusal> {
    if let Given::List(_) = given {
        return given.fraction(name);
    }
    let text = given.text(name)?;
    let ratio = handturn::measure::read::ratio(&text);
    ratio.map_err(|error| Refusal::of(name, &error.of(Field::Gearbox), &text))
}

fn train(found: &Found, lathe: &Lathe) -> Result<Given, Error> {
    let Chain { idlers, idlers_in, .. } = found.chain;
    let hundred = Length::from_mm(Fraction::whole(100));
    let teeth = |teeth: u16| count(u32::from(teeth));
    let pair = |driver, driven| object([("driver", teeth(driver)), ("driven", teeth(driven))]);
    Ok(object([
        ("pairs", list(found.chain.pairs(), |found| pair(found.driver, found.driven))),
        ("idlers", list(idlers.into_iter().flatten(), teeth)),
        ("idlers_in", count(u32::from(idlers_in))),
        ("setting", count(u32::from(found.setting))),
        ("exact", Given::Flag(found.is_exact())),
        ("ratio", number(found.chain.ratio()?)),
        ("cuts", told::length(lathe.cuts(found)?)),
        ("off_ppm", Given::Number(found.off_ppm().value)),
        ("off_over_100_mm", about(found.off_over(hundred))),
    ]))
}

fn unmounted(found: Unmounted) -> Given {
    let teeth =
        |gears: [Option<u16>; 3]| list(gears.into_iter().flatten(), |n| count(u32::from(n)));
    object([
        ("drivers", teeth(found.drivers)),
        ("driven", teeth(found.driven)),
        ("setting", count(u32::from(found.setting))),
        ("why", named(found.why)),
    ])
}
