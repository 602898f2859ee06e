//! Words of the cutter of a set.
use crate::words::{angle, grouped};
use handturn::gear::cutter::{Choice, Cutter};
use handturn::measure::Angle;
use handturn::number::Fraction;

words! {
    SET = "Cutters in the set";
    EIGHT = "Eight";
    FIFTEEN = "Fifteen, with halves";
    OF_MODULE_SET = "Cutter of a module set";
    OF_DP_SET = "Cutter of a DP set";
    TOO_FEW = "A fly cutter ground to the tooth’s own form, or hobbing, makes fewer.";
    FROM = "Ranges as in A Practical Treatise on Milling and Milling Machines (1914), p. 149. That module sets run the other way is common practice: go by the teeth marked on the cutter.";
}

/// A cutter by its number: `No. 7`, `No. 3½`.
#[must_use]
pub fn number(number: Fraction) -> String {
    let half = if number.is_whole() { "" } else { "½" };
    ["No. ", &number.floor().to_string(), half].concat()
}

/// The same cutter in a set that is numbered the other way.
#[must_use]
pub fn other(module: bool, other: Fraction) -> String {
    let set = if module { " of a DP set" } else { " of a module set" };
    [&*number(other), set, ": the two are numbered opposite ways."].concat()
}

/// Which teeth it cuts, and for which its form is true.
#[must_use]
pub fn range(choice: &Choice) -> String {
    let Choice { cutter, until, .. } = choice;
    let least = grouped(cutter.least.into());
    let most = until.map_or_else(
        || " teeth to a rack".to_owned(),
        |most| {
            if most == cutter.least {
                " teeth only".to_owned()
            } else {
                [" to ", &grouped(most.into()), " teeth"].concat()
            }
        },
    );
    [
        "Cuts ",
        &least,
        &most,
        ". Its form is true for ",
        &least,
        "; with more teeth the tips come out a little eased.",
    ]
    .concat()
}

/// A cutter that does nearly as well.
#[must_use]
pub fn beside(cutter: &Cutter) -> String {
    ["Close to the edge of its range: ", &number(cutter.number), " does nearly as well."].concat()
}

/// No cutter of this size is listed in the Shop.
#[must_use]
pub fn none_of_size(size: &str) -> String {
    ["You have no cutter for ", size, "."].concat()
}

/// The cutter is owned.
#[must_use]
pub fn have(cutter: &Cutter) -> String {
    ["You have it: ", &*number(cutter.number), "."].concat()
}

/// The nearest one owned that cuts the wheel at all.
#[must_use]
pub fn instead(wanted: &Cutter, have: &Choice) -> String {
    let least = grouped(have.cutter.least.into());
    let marked = have.cutter.greatest.map_or_else(
        || " teeth to a rack".to_owned(),
        |most| [" to ", &grouped(most.into()), " teeth"].concat(),
    );
    let then = if have.in_range {
        ", this wheel among them: the tips come out eased a little more."
    } else {
        ": in this wheel it cuts the tips too thin. Good for a wheel that may run with play."
    };
    [&not_owned(wanted, &have.cutter), ", marked ", &least, &marked, " and true for ", &least, then]
        .concat()
}

/// All that are owned are for more teeth.
#[must_use]
pub fn only_above(wanted: &Cutter, above: &Cutter) -> String {
    let least = grouped(above.least.into());
    let why = " teeth and more: its sides are too straight for fewer. The tips come out thick and catch in the mate.";
    [&*not_owned(wanted, above), ", for ", &least, why].concat()
}

fn not_owned(wanted: &Cutter, near: &Cutter) -> String {
    ["You do not have ", &*number(wanted.number), ". Nearest you have: ", &number(near.number)]
        .concat()
}

/// What must stand on the cutter.
#[must_use]
pub fn to_get(size: &str, pressure: Angle) -> String {
    ["On the cutter must stand ", size, ", ", &angle(pressure), "."].concat()
}
