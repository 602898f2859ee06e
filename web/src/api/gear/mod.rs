//! Wheels in the package: plain objects in, plain objects out, told as threads are
//! ([`thread`](super::thread)): lengths are `{ mm, inch, exact, within }`, angles degrees.
//!
//! A kind of wheel adds a file with functions from [`Given`] to [`Given`] and its arms here.
pub(super) mod asked;
mod check;
mod pair;
mod straight;
#[cfg(test)]
mod tests;

use super::given::Given;
use super::refusal::Refusal;

/// The answer to `request`, by what it is about.
///
/// # Errors
/// A [`Refusal`] that names the value.
pub fn answer(about: &str, request: &Given) -> Result<Given, Refusal> {
    match about {
        "sizes" => straight::sizes(request),
        "cutter" => straight::cutter(request),
        "blank" => straight::blank(request),
        "tell" => straight::tell(request),
        "teeth" => straight::teeth(request),
        "pitch" => straight::pitch(request),
        "swing" => straight::swing(request),
        "mesh" => pair::mesh(request),
        "opening" => pair::opening(request),
        "pair" => pair::teeth(request),
        "caliper" => check::caliper(request),
        "span" => check::span(request),
        "pins" => check::pins(request),
        "trial" => check::trial(request),
        _ => Err(Refusal::unknown("about", &[])),
    }
}
