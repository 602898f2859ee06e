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

/// What must stand on the cutter.
#[must_use]
pub fn to_get(size: &str, pressure: Angle) -> String {
    ["On the cutter must stand ", size, ", ", &angle(pressure), "."].concat()
}
