//! How a thread is cut: the infeed and its passes.
use super::super::given::{Given, dotted};
use super::super::refusal::Refusal;
use super::super::request;
use super::asked::{self, Asked, between, choice, length_or};
use super::told::{self, about, count, degrees, list, named, object};
use handturn::bounds::{MOST_PASSES, SLIDE_MARKS, SPRING_PASSES};
use handturn::measure::write::rounded;
use handturn::measure::{Angle, Length};
use handturn::number::Fraction;
use handturn::thread::dial::{Dial, Reads, Runs};
use handturn::thread::infeed::{Depths, Feed, Nose, infeed as find_depths};
use handturn::thread::passes::{Pass, Plan};
use handturn::thread::ready;
use handturn::{Cause, Error, Field};

/// What an infeed is asked by, beside the thread.
const INFEED: [&str; 3] = ["work", "nose", "feed"];
/// What passes are asked by, beside the infeed.
const PASSES: [&str; 12] = [
    "work", "nose", "feed", "dial", "first", "least", "spring", "from", "most", "left", "dialAt",
    "depth",
];
/// Passes there can be, spring passes counted.
const ALL: u32 = MOST_PASSES + SPRING_PASSES.greatest;

fn mm(num: i64, den: i64) -> Length {
    Length::from_mm(Fraction::new(num, den).unwrap_or(Fraction::ZERO))
}

struct Fed {
    work: Length,
    nose: Nose,
    half_angle: Angle,
    depths: Depths,
}

fn of_thread(error: Error) -> Refusal {
    Refusal::of("thread", &error, "")
}

fn fed(given: &Given, asked: &Asked) -> Result<Fed, Refusal> {
    let (thread, limits) = (asked.thread(), asked.limits());
    let half_angle = ready::half_angle(thread).map_err(of_thread)?;
    let nose = match given.get("nose") {
        Given::Nothing => ready::nose(thread).map_err(of_thread)?,
        nose => {
            nose.only("nose", &["flat", "radius"])?;
            let size = |key| asked::length(nose.get(key), &dotted("nose", key), Field::Tool);
            match (nose.has("flat"), nose.has("radius")) {
                (true, false) => Nose::Flat(size("flat")?),
                (false, true) => Nose::Radius(size("radius")?),
                _ => return Err(Refusal::kind("nose", "one of flat or radius", nose)),
            }
        }
    };
    let feed = match given.get("feed") {
        // Square flanks leave no way but straight in.
        Given::Nothing if half_angle == Angle::ZERO => Feed::Plunge,
        Given::Nothing => {
            let half = Angle::from_degrees(Fraction::new(1, 2).map_err(of_thread)?);
            Feed::Modified { short: half.map_err(of_thread)? }
        }
        feed @ Given::Object(_) => {
            feed.only("feed", &["short"])?;
            Feed::Modified { short: request::angle(feed.get("short"), "feed.short")? }
        }
        other => choice(other, "feed", &[("plunge", Feed::Plunge), ("flank", Feed::Flank)])?,
    };
    let blank = ready::blank(thread, limits, asked.internal()).map_err(of_thread)?;
    let work = length_or(given.get("work"), "work", Field::Diameter, blank)?;
    let ask = ready::infeed(thread, limits, asked.internal(), work, nose, feed);
    let depths = find_depths(&ask.map_err(of_thread)?).map_err(|error| {
        let at = match error.field {
            Field::Tool => "nose",
            Field::Angle => "feed",
            _ => "work",
        };
        Refusal::of(at, &error, &given.get(at).to_string())
    })?;
    Ok(Fed { work, nose, half_angle, depths })
}

/// Depths, and how the top slide stands.
pub(super) fn infeed(given: &Given) -> Result<Given, Refusal> {
    let asked = Asked::read(given, &INFEED)?;
    let Fed { work, depths, .. } = fed(given, &asked)?;
    Ok(object([
        ("work", told::length(work)),
        ("straight", about(depths.straight)),
        ("along_slide", about(depths.along_slide)),
        ("widen", about(depths.widen)),
        ("tip", about(depths.tip)),
        ("set_over", degrees(depths.set_over)),
        ("on_bed_scale", degrees(depths.on_bed_scale)),
        ("swing", named(depths.swing)),
        ("drift", named(depths.drift)),
    ]))
}

/// The plan of the passes asked for.
fn plan(given: &Given) -> Result<Plan, Refusal> {
    let asked = Asked::read(given, &PASSES)?;
    let Fed { nose, half_angle, depths, .. } = fed(given, &asked)?;
    let long = || Refusal::of("work", &Error::new(Field::Diameter, Cause::Overflow), "");
    let found = Length::from_mm(rounded(depths.along_slide, 4).ok_or_else(long)?);
    let depth = length_or(given.get("depth"), "depth", Field::Passes, found)?;
    let (first, least) = ready::cuts(depth).map_err(of_thread)?;
    let first = length_or(given.get("first"), "first", Field::Passes, first)?;
    let least = length_or(given.get("least"), "least", Field::Passes, least.min(first))?;
    let plan = Plan {
        depth,
        done: mm(0, 1),
        first,
        least,
        spring: given.get("spring").count_or("spring", SPRING_PASSES, 1)?,
        half_angle,
        set_over: depths.set_over,
        nose,
        dial: dial(given.get("dial"), depths.set_over)?,
        dial_at: 0,
        runs: if asked.internal() { Runs::Backwards } else { Runs::Forwards },
    };
    let refused = |error: Error| {
        let at = match error.field {
            Field::SlideDial => "dial",
            _ if given.has("least") => "least",
            _ if given.has("first") => "first",
            _ => "passes",
        };
        Refusal::of(at, &error, &given.get(at).to_string())
    };
    plan.count().map_err(refused)?;
    if !given.has("left") {
        return Ok(plan);
    }
    let left = asked::length(given.get("left"), "left", Field::Passes)?;
    let at = between(given.get("dialAt"), "dialAt", 0, 1_000_000, 0)?;
    plan.measured(left, at).map_err(|e| Refusal::of("left", &e, &given.get("left").to_string()))
}

/// The dial of the slide: 0.02 mm a mark, a hundred marks, unless said.
fn dial(given: &Given, set_over: Angle) -> Result<Dial, Refusal> {
    let mut dial = Dial { division: mm(1, 50), reads: Reads::Travel, marks: 100 };
    if *given == Given::Nothing {
        return Ok(dial);
    }
    given.only("dial", &["division", "reads", "marks"])?;
    let division = given.get("division");
    dial.division = length_or(division, "dial.division", Field::SlideDial, dial.division)?;
    dial.marks = given.get("marks").count_or("dial.marks", SLIDE_MARKS, dial.marks)?;
    let read = given.get("reads");
    if *read != Given::Nothing {
        let among = [("travel", Reads::Travel), ("diameter", Reads::Diameter)];
        dial.reads = choice(read, "dial.reads", &among)?;
    }
    // A slide set over takes no whole share of its travel off the diameter.
    if dial.reads == Reads::Diameter && set_over != Angle::ZERO {
        let conflict = Error::new(Field::SlideDial, Cause::Conflict);
        return Err(Refusal::of("dial.reads", &conflict, "diameter"));
    }
    Ok(dial)
}

/// The passes from `from` on, `most` of them at most.
pub(super) fn passes(given: &Given) -> Result<Given, Refusal> {
    let plan = plan(given)?;
    let refused = |error: Error| Refusal::of("passes", &error, "");
    let all = plan.count().map_err(refused)?;
    let from = between(given.get("from"), "from", 1, all.max(1), 1)?;
    let most = between(given.get("most"), "most", 1, ALL, ALL)?;
    let last = from.saturating_add(most).saturating_sub(1).min(all);
    let listed: Result<Vec<Pass>, Error> = (from..=last).map(|k| plan.pass(k)).collect();
    let listed = listed.map_err(refused)?;
    Ok(object([
        ("count", count(all)),
        ("left_out", count(all.saturating_sub(u32::try_from(listed.len()).unwrap_or(0)))),
        ("depth", told::length(plan.depth)),
        ("left_by_rounding", told::length(plan.left_by_rounding().map_err(refused)?)),
        ("first", told::length(plan.first)),
        ("least", told::length(plan.least)),
        ("set_over", degrees(plan.set_over)),
        ("passes", list(&listed, one)),
    ]))
}

/// One pass by its number.
pub(super) fn pass(given: &Given, number: &Given) -> Result<Given, Refusal> {
    let plan = plan(given)?;
    let refused = |error: Error| Refusal::of("number", &error, &number.to_string());
    let number = number.whole("number")?;
    let all = plan.count().map_err(refused)?;
    // Zero and what is beyond the last are refused with the limits by the core itself.
    let number =
        u32::try_from(number).unwrap_or(if number < 0 { 0 } else { all.saturating_add(1) });
    plan.pass(number).map(|pass| one(&pass)).map_err(refused)
}

fn one(pass: &Pass) -> Given {
    object([
        ("number", count(pass.number)),
        ("spring", Given::Flag(pass.spring)),
        (
            "reading",
            object([
                ("from_zero", count(pass.reading.from_zero)),
                ("turns", count(pass.reading.turns)),
                ("mark", count(pass.reading.mark)),
                ("shows", told::length(pass.reading.shows)),
            ]),
        ),
        ("cut", told::length(pass.cut)),
        ("depth", told::length(pass.depth)),
    ])
}
