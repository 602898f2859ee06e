//! What the Shop says of lists: labels and hints, how a list was read, what is wrong.
use super::errors::{self, Said};
use super::{count, decimal, grouped};
use crate::fields::Fields;
use crate::owned::lists::{self, Kind, Stock};
use handturn::measure::Length;
use handturn::number::Fraction;
use handturn::{Cause, Error, Field};

words! {
    JUMP = "Go to";
    HEADS = "Dividing heads";
    ADD_USUAL = "Add a usual set";
    NOTHING_YET = "nothing yet";
    PARTED = "Part by spaces, new lines or ;. Steps: 0.5-13x0.1. A bare fraction is in inches; 2thou or 0.002in name their unit.";
}

/// Title of the group that a list opens, and the name of the group's element.
#[must_use]
pub const fn group(stock: Stock) -> Option<(&'static str, &'static str)> {
    Some(match stock {
        Stock::LatheScrew => ("Lathe", "shop-lathe"),
        Stock::MillTable => ("Mill", "shop-mill"),
        Stock::Drills => ("Drills, taps and dies", "shop-drills"),
        Stock::Mills => ("Cutters", "shop-cutters"),
        Stock::Wires => ("Measures", "shop-measures"),
        _ => return None,
    })
}

/// What a list is called.
#[must_use]
pub const fn label(stock: Stock) -> &'static str {
    match stock {
        Stock::LatheScrew => "Lead screw, tpi or mm",
        Stock::ScrewHand => "Hand of the lead screw",
        Stock::LatheGears => "Lathe’s change gears",
        Stock::LatheHead => "First driver turns per spindle turn",
        Stock::Gearbox => "Gearbox ratios",
        Stock::StudDistance => "Studs apart, in teeth",
        Stock::StudMargin => "Rims clear studs by, in teeth",
        Stock::Idlers => "Most idlers",
        Stock::FourGears => "Four gears and more",
        Stock::Drive => "First driver beside the spindle",
        Stock::TopSlide => "Top slide",
        Stock::CrossSlide => "Cross slide",
        Stock::CrossReads => "The cross slide’s dial reads",
        Stock::LatheSpeeds => "Lathe speeds, rpm",
        Stock::MillTable => "Table screw, along",
        Stock::MillCross => "Cross screw",
        Stock::MillKnee => "Vertical screw, knee or head",
        Stock::MillSpeeds => "Mill speeds, rpm",
        Stock::Drills => "Drills",
        Stock::Taps => "Taps",
        Stock::Dies => "Dies",
        Stock::DrillSpeeds => "Drilling speeds, rpm",
        Stock::Mills => "Milling cutters, diameters in mm",
        Stock::Saws => "Slitting saws, thickness in mm",
        Stock::GearCutters => "Involute gear cutters",
        Stock::Countersinks => "Countersinks, angles in degrees",
        Stock::Knurls => "Knurl wheels, tip to tip in mm",
        Stock::Wires => "Wires for threads, mm",
        Stock::Pins => "Pins for gears, mm",
        Stock::Feelers => "Feeler leaves and shims, mm",
        Stock::Blocks => "Gauge blocks, mm",
    }
}

/// How to fill a list in, where that is not as for all.
#[must_use]
pub const fn hint(stock: Stock) -> &'static str {
    match stock {
        Stock::LatheGears => "Each as often as you have it: 20 20 25, or 20x2 25.",
        Stock::Gearbox => "One for each setting: 1 1/2 2:1. Empty without a gearbox.",
        Stock::StudDistance => "Two gears of so many teeth just mesh. 0: not known.",
        Stock::TopSlide | Stock::MillTable => {
            "Pitch / marks once round / slack in mm: 5 / 100 / 0.2, or 8 tpi / 125."
        }
        Stock::MillKnee => "Leave it empty where the mill has none with a dial.",
        Stock::Drills => {
            "Sets: number, letter, fraction, metric. Single ones: #7 F 6.35 9/64. A minus takes away: number -#41 -#61-#80."
        }
        Stock::Taps => "By name, parted by new lines or ;, such as M6 x 0.75; 2 BA.",
        Stock::GearCutters => {
            "Size, then numbers; sizes parted by new lines or ;, such as m1 1-8x1; dp32 3 4.5."
        }
        Stock::Knurls => "Measure over ten tips and divide by ten.",
        Stock::LatheSpeeds => "Every speed there is. 60-2000x10 where it can be set freely.",
        _ => "",
    }
}

/// Choices of a list that is not typed: value and label.
#[must_use]
pub const fn choices(stock: Stock) -> &'static [(&'static str, &'static str)] {
    match stock {
        Stock::ScrewHand => &[("right", "Right-hand"), ("left", "Left-hand")],
        Stock::FourGears => &[("yes", "Can be mounted"), ("no", "Only two")],
        Stock::Drive => {
            &[("either", "Reversible"), ("same", "Turns with it"), ("against", "Against it")]
        }
        Stock::CrossReads => &[("travel", "Travel"), ("diameter", "Diameter")],
        _ => &[],
    }
}

/// Usual sets as one tap each: label and text.
#[must_use]
pub const fn usual(stock: Stock) -> &'static [(&'static str, &'static str)] {
    match stock {
        Stock::Drills => &[
            ("No. 1 to 80", "number"),
            ("A to Z", "letter"),
            ("By 64ths", "fraction"),
            ("1 to 13 by 0.1", "1-13x0.1"),
            ("1 to 13 by 0.5", "1-13x0.5"),
        ],
        Stock::Taps | Stock::Dies => &[
            ("M3 to M12", "M3; M4; M5; M6; M8; M10; M12"),
            ("0 to 10 BA", "0 BA; 1 BA; 2 BA; 3 BA; 4 BA; 5 BA; 6 BA; 7 BA; 8 BA; 9 BA; 10 BA"),
        ],
        Stock::Feelers => &[("0.05 to 1 by 0.05", "0.05-1x0.05")],
        Stock::Blocks => &[
            ("46 metric", "1.001-1.009x0.001 1.01-1.09x0.01 1.1-1.9x0.1 1-9x1 10-100x10"),
            (
                "36 inch",
                "0.1001-0.1009x0.0001in 0.101-0.109x0.001in 0.11-0.19x0.01in 0.1-0.5x0.1in 1in 2in 3in 4in",
            ),
        ],
        _ => &[],
    }
}

/// How a good list was read; nothing where the text says it all.
#[must_use]
pub fn read_as(fields: &Fields, stock: Stock) -> Option<String> {
    let text = lists::text(fields, stock);
    let said = match stock.kind() {
        Kind::Pitch => both(lists::pitch(text).ok()?),
        Kind::Screw => {
            let (screw, _) = lists::screw(fields, stock)?;
            let mark = screw.mark().ok()?;
            let turn = ["one turn ", &both(screw.lead), ", one mark ", &both(mark)].concat();
            match screw.slack.mm().is_zero() {
                true => turn,
                false => turn + ", slack " + &both(screw.slack),
            }
        }
        Kind::Ratio | Kind::Count(_) | Kind::Choice(_) => return None,
        _ => {
            let (number, span) = summary(fields, stock);
            if span.is_empty() { number } else { [&*number, ": ", &span].concat() }
        }
    };
    Some(["Read as ", &said, "."].concat())
}

fn both(length: Length) -> String {
    let inches = length.inches().map(|inches| decimal(inches, 4)).unwrap_or_default();
    [&decimal(length.mm(), 4), " mm (", &inches, " in)"].concat()
}

/// A list in a word or two: how many, and from where to where.
#[must_use]
pub fn summary(fields: &Fields, stock: Stock) -> (String, String) {
    let text = lists::text(fields, stock);
    let span = |all: Vec<Fraction>, unit: &str| {
        let ends = (all.iter().min(), all.iter().max());
        let (Some(least), Some(most)) = ends else { return String::new() };
        let to = if least == most { String::new() } else { " to ".to_owned() + &decimal(*most, 3) };
        [&decimal(*least, 3), &*to, unit].concat()
    };
    let more = match stock.kind() {
        Kind::Sizes(_) | Kind::Drills => {
            span(lists::lengths(fields, stock).iter().map(|length| length.mm()).collect(), " mm")
        }
        Kind::Numbers(_) => span(
            lists::numbers(fields, stock),
            if matches!(stock, Stock::Countersinks) { "°" } else { " rpm" },
        ),
        Kind::Gears => text.replace('x', "×"),
        Kind::Threads | Kind::Cutters | Kind::Ratios => text.replace('\n', "; "),
        Kind::Choice(_) => {
            let chosen = choices(stock).iter().find(|(value, _)| *value == text);
            return (chosen.map_or("", |(_, label)| label).to_owned(), String::new());
        }
        _ if text.is_empty() => return (super::NONE.to_owned(), String::new()),
        _ => return (text.to_owned(), String::new()),
    };
    let number = lists::check(stock, text).unwrap_or(0);
    (if number == 0 { super::NONE.to_owned() } else { counted(stock, number) }, more)
}

fn counted(stock: Stock, number: usize) -> String {
    let (one, many) = match stock {
        Stock::LatheGears => ("gear", "gears"),
        Stock::Gearbox => ("setting", "settings"),
        Stock::LatheSpeeds | Stock::MillSpeeds | Stock::DrillSpeeds => ("speed", "speeds"),
        Stock::Drills => ("drill", "drills"),
        Stock::Taps => ("tap", "taps"),
        Stock::Dies => ("die", "dies"),
        Stock::Mills | Stock::GearCutters => ("cutter", "cutters"),
        Stock::Saws => ("saw", "saws"),
        Stock::Countersinks => ("countersink", "countersinks"),
        Stock::Knurls => ("size", "sizes"),
        Stock::Wires => ("wire", "wires"),
        Stock::Pins => ("pin", "pins"),
        Stock::Blocks => ("block", "blocks"),
        _ => ("leaf", "leaves"),
    };
    count(u32::try_from(number).unwrap_or(u32::MAX), one, many)
}

/// What is wrong with a list as typed.
#[must_use]
pub fn said(stock: Stock, error: &Error, typed: &str) -> Said {
    let general = errors::said(error, typed);
    let wrong = match (stock.kind(), error.field, error.cause) {
        (Kind::Sizes(_) | Kind::Drills | Kind::Numbers(_), _, Cause::Empty) => {
            "The step is missing, as in 0.5-13x0.1."
        }
        (Kind::Cutters, _, Cause::Empty) if error.span.1 > 0 => {
            "Size and numbers are wanted, as in m1 1-8x1."
        }
        (Kind::Drills, _, Cause::NotANumber) => "No drill or set goes by this.",
        (Kind::Screw, Field::SlideDial, Cause::Empty) => "The marks are missing, as in 5 / 100.",
        (Kind::Screw, Field::Slack, Cause::Conflict) => {
            "Pitch, marks and slack are wanted, and the slack less than one turn."
        }
        (Kind::Choice(_), ..) => "There is no such choice.",
        (_, Field::Record, Cause::TooMany { .. }) => "The text is too long.",
        _ => return placed(stock, error, typed, general),
    };
    placed(stock, error, typed, Said { wrong: wrong.to_owned(), ..general })
}

/// Where in a list it stands.
fn placed(stock: Stock, error: &Error, typed: &str, said: Said) -> Said {
    let single = matches!(
        stock.kind(),
        Kind::Screw | Kind::Pitch | Kind::Ratio | Kind::Count(_) | Kind::Choice(_)
    );
    let before = typed.get(..usize::from(error.span.0)).filter(|_| !single && error.span.1 > 0);
    let Some(before) = before else { return said };
    let by_name = matches!(stock.kind(), Kind::Threads | Kind::Cutters);
    let parted = |c: char| c == ';' || c == '\n' || !by_name && c.is_whitespace();
    let place = before.split(parted).filter(|item| !item.trim().is_empty()).count();
    // The item that the fault stands in may have begun before it.
    let begun = before.chars().next_back().is_some_and(|c| !parted(c) && !c.is_whitespace());
    let place = if begun
        || by_name
            && !before.trim_end().ends_with([';', '\n'])
            && !before.trim().is_empty()
            && !before.ends_with('\n')
    {
        place
    } else {
        place + 1
    };
    let at = ["Item ", &grouped(i64::try_from(place).unwrap_or(0)), ": "].concat();
    Said { wrong: at + &said.wrong, ..said }
}

/// The text in force while what stands in the field is not.
#[must_use]
pub fn last_good(text: &str) -> String {
    if text.is_empty() { "In force: nothing.".to_owned() } else { ["In force: ", text].concat() }
}
