//! Threads in the package: plain objects in, plain objects out.
//!
//! An answer is a [`Given`] like a request, so that one piece of code writes them
//! all: lengths are `{ mm, inch, exact, within }`, angles degrees, what is not there
//! is `null`.
pub(super) mod asked;
mod cut;
mod gear;
mod measure;
mod size;
#[cfg(test)]
mod tests;
pub(super) mod told;

use super::given::Given;
use super::refusal::Refusal;

/// The answer to `request`, by what it is about.
///
/// # Errors
/// A [`Refusal`] that names the value.
pub fn answer(about: &str, request: &Given) -> Result<Given, Refusal> {
    match about {
        "read" => size::read(request),
        "all" => size::all(),
        "sizes" => size::sizes(request),
        "blank" => size::blank(request),
        "drills" => size::drills(request),
        "which" => size::which(request),
        "infeed" => cut::infeed(request),
        "passes" => cut::passes(request),
        "wires" => measure::wires(request),
        "over" => measure::over(request),
        "from" => measure::from(request),
        "gears" => gear::gears(request),
        _ => Err(Refusal::unknown("about", &[])),
    }
}

/// Pass `number` of a thread cut in passes, from 1.
///
/// # Errors
/// As [`answer`].
pub fn pass(request: &Given, number: &Given) -> Result<Given, Refusal> {
    cut::pass(request, number)
}
