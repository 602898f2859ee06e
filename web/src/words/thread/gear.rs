//! Words of Gear it.
use super::about;
use crate::words::{decimal, grouped, plain};
use handturn::measure::Length;
use handturn::number::Fraction;
use handturn::thread::gearing::{Job, Lathe};
use handturn::train::{Chain, Found, Pair, Unmounted, Why};

/// A train in one line: `30 drives 127`.
#[must_use]
pub fn drives(chain: &Chain) -> String {
    let pairs: Vec<String> = chain
        .pairs()
        .map(|pair| [&*pair.driver.to_string(), " drives ", &pair.driven.to_string()].concat())
        .collect();
    pairs.join(", ")
}

/// A train in a sentence.
#[must_use]
pub fn train_name(chain: &Chain) -> String {
    ["Change gears: ", &drives(chain), ".", &idlers(chain)].concat()
}

/// The idlers, if there are any.
fn idlers(chain: &Chain) -> String {
    let teeth: Vec<String> = chain.idlers.iter().flatten().map(ToString::to_string).collect();
    match teeth.len() {
        0 => String::new(),
        1 => [" Idler ", &teeth.concat(), "."].concat(),
        _ => [" Idlers ", &teeth.join(" and "), "."].concat(),
    }
}

/// What idlers are for.
#[must_use]
pub fn idlers_free(chain: &Chain) -> &'static str {
    if chain.idler_count() == 0 {
        return "To scale.";
    }
    "To scale. An idler is a free choice: it sets reach and direction, not the pitch."
}

/// How the train is mounted, and where a gearbox stands.
#[must_use]
pub fn mounted(found: &Found, lathe: &Lathe) -> String {
    let mut text = idlers(&found.chain);
    if let Some(ratio) = lathe.gearbox.get(usize::from(found.setting)) {
        text += " Gearbox at ";
        text += &plain(*ratio);
        text += ".";
    }
    text + if found.chain.same_way() {
        " The lead screw turns with the first driver."
    } else {
        " The lead screw turns against the first driver."
    }
}

/// A lead as it is wanted.
fn wanted(job: &Job) -> String {
    if job.lead.times_pi {
        return about(job.lead.mm().value, 4) + " mm";
    }
    decimal(job.lead.length.mm(), 4) + " mm"
}

/// Which lead on which screw.
#[must_use]
pub fn lead_on(job: &Job, lathe: &Lathe) -> String {
    [&*wanted(job), " lead on a screw of ", &decimal(lathe.screw.mm(), 4), " mm"].concat()
}

/// How far a train is off.
#[must_use]
pub fn off(found: &Found) -> String {
    let ppm = found.off_ppm().value;
    let sign = if ppm < 0.0 { "−" } else { "+" };
    let places = if ppm.abs() < 10.0 { 1 } else { 0 };
    [sign, &about(ppm.abs(), places), " ppm"].concat()
}

/// What a train that is not exact cuts, and what that comes to.
#[must_use]
pub fn cuts(job: &Job, lathe: &Lathe, found: &Found) -> String {
    let lead = lathe.cuts(found).map(|lead| decimal(lead.mm(), 5)).unwrap_or_default();
    let hundred = Length::from_mm(Fraction::whole(100));
    let um = found.off_over(hundred).value * 1000.0;
    let long = if um < 0.0 { " µm too short" } else { " µm too long" };
    let places = if um.abs() < 10.0 { 1 } else { 0 };
    let thou = about(um.abs() / 25.4, 2);
    [
        "It cuts ",
        &lead,
        " mm for ",
        &wanted(job),
        ": ",
        &about(um.abs(), places),
        long,
        " (",
        &thou,
        " thou) over 100 mm.",
    ]
    .concat()
}

/// The gears worked by hand.
#[must_use]
pub fn gear_lines(job: &Job, lathe: &Lathe, found: &Found) -> Vec<String> {
    let chain = &found.chain;
    let row = |pick: fn(Pair) -> u16| {
        let teeth: Vec<String> = chain.pairs().map(|pair| pick(pair).to_string()).collect();
        teeth.join(" × ")
    };
    let mut turn = vec![decimal(lathe.screw.mm(), 4)];
    let ratios = [Some(lathe.head), lathe.gearbox.get(usize::from(found.setting)).copied()];
    turn.extend(ratios.into_iter().flatten().filter(|ratio| *ratio != Fraction::ONE).map(plain));
    let ratio = chain.ratio().map(plain).unwrap_or_default();
    let gives = lathe.cuts(found).map(|lead| decimal(lead.mm(), 5)).unwrap_or_default();
    let mut lines = vec![
        ["Lead screw: ", &decimal(lathe.screw.mm(), 4), " mm a turn"].concat(),
        if chain.pairs().count() > 1 {
            [&*row(|pair| pair.driver), " ÷ (", &row(|pair| pair.driven), ") = ", &ratio].concat()
        } else {
            [&*row(|pair| pair.driver), " ÷ ", &row(|pair| pair.driven), " = ", &ratio].concat()
        },
        [
            &*turn.join(" × "),
            " × ",
            &ratio,
            if found.is_exact() { " = " } else { " ≈ " },
            &gives,
            " mm",
        ]
        .concat(),
    ];
    if job.lead.times_pi {
        lines.push(
            ["Wanted: π × ", &decimal(job.lead.length.mm(), 4), " = ", &wanted(job)].concat(),
        );
    }
    lines
}

/// Gears that would serve but for their mounting.
#[must_use]
pub fn unmounted(unmounted: &Unmounted) -> String {
    let row = |teeth: &[Option<u16>]| {
        let teeth: Vec<String> = teeth.iter().flatten().map(ToString::to_string).collect();
        teeth.join(" and ")
    };
    let why = match unmounted.why {
        Why::Reach => "in no order do they span the distance of the studs",
        Why::Rims => "in every order a rim meets a stud",
        Why::Idler => "no idler is left that gives the direction or bridges the studs",
    };
    [
        &*row(&unmounted.drivers),
        " driving ",
        &row(&unmounted.driven),
        " would be nearest, but ",
        why,
        ".",
    ]
    .concat()
}

/// What one gear more would do.
#[must_use]
pub fn with_gear(teeth: u16, chain: &Chain) -> String {
    ["A gear of ", &teeth.to_string(), ": ", &drives(chain), "."].concat()
}

/// Handing a gear over to Divide.
#[must_use]
pub fn divide_gear(teeth: u16) -> String {
    ["Divide a ", &teeth.to_string(), " gear"].concat()
}

/// How much of six gears was looked at.
#[must_use]
pub fn six_done(whole: bool, covered: u64) -> String {
    let count = grouped(i64::try_from(covered).unwrap_or(i64::MAX));
    if whole {
        return ["Trains of two, four and six gears are all accounted for: ", &count, "."].concat();
    }
    [
        "There are too many trains of six for one answer: of ",
        &count,
        " looked at, these are nearest.",
    ]
    .concat()
}
