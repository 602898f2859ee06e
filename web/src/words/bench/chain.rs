//! Words of chains of lengths.
use super::fit::from_to;
use crate::words::{about, decimal, mm};
use handturn::bench::chain::{Keeps, Link, Total};
use handturn::number::{Fraction, float};

words! {
    NAME = "Stack of lengths";
    ABOUT = "Up to eight lengths with their tolerances: what is left at the worst";
    ALSO = "stack tolerance chain worst case root sum square rss end float gap play shim spacer add";
    LENGTHS = "Lengths in mm, one a line: 12.5 +0.1 -0.05, 8 ±0.02, 25 h9; a minus before it takes it away";
    LEAST = "It must be at least, mm";
    MOST = "At most, mm";
    WORST_LEAST = "At the worst, from";
    WORST_MOST = "To";
    NOMINAL = "By the drawing";
    MIDDLE = "The middle";
    LIKELY_LEAST = "Root-sum-square, from";
    LIKELY_MOST = "To";
    MOST_FROM = "Most of it comes from";
    TABLE = "Lengths";
    LENGTH = "Length";
    LOWER = "Lower";
    UPPER = "Upper";
    SHARE = "Share, %";
    SOURCE = "worst case by arithmetic; root-sum-square is common practice in statistical tolerancing";
    CARE = "For one set of parts the worst case speaks. Root-sum-square tells of many sets, every part about the middle of its tolerance.";
    ALWAYS = "It keeps within what you ask, whatever the parts.";
    MOSTLY = "It keeps within what you ask in most sets, not at the worst: measure, or leave a shim.";
    NOT = "It does not keep within what you ask: tighten the length that gives most, or move a nominal.";
    SUM = "Sum";
}

/// What was asked for, said.
#[must_use]
pub(crate) const fn keeps(keeps: Keeps) -> &'static str {
    match keeps {
        Keeps::Always => ALWAYS,
        Keeps::Mostly => MOSTLY,
        Keeps::Not => NOT,
    }
}

/// The question with its answer.
#[must_use]
pub(crate) fn title(links: usize, total: &Total) -> String {
    [&*links.to_string(), " lengths: ", &from_to(total.worst)].concat()
}

/// A link by its length.
#[must_use]
pub(crate) fn link(link: &Link) -> String {
    [if link.minus { "−" } else { "" }, &*decimal(link.length.mm(), 4)].concat()
}

/// The working.
#[must_use]
pub(crate) fn working(links: &[Link], total: &Total) -> Vec<String> {
    let sum = |least: bool| {
        let mut line = String::new();
        for link in links {
            // What is taken away is largest where the sum is least.
            let off = if least == link.minus { link.off.most } else { link.off.least };
            let long = link.length.mm().checked_add(off.mm()).unwrap_or(Fraction::ZERO);
            let sign = if link.minus { " − " } else { " + " };
            let first = line.is_empty() && !link.minus;
            line = [&*line, if first { "" } else { sign }, &decimal(long, 4)].concat();
        }
        line
    };
    let mut squares = String::new();
    for link in links {
        let half = link.off.most.mm().checked_sub(link.off.least.mm()).and_then(|all| all.over(2));
        let half = half.unwrap_or(Fraction::ZERO);
        squares = [&*squares, if squares.is_empty() { "" } else { " + " }, &decimal(half, 4), "²"]
            .concat();
    }
    vec![
        ["Least: ", &*sum(true), " = ", &mm(total.worst.least)].concat(),
        ["Most: ", &*sum(false), " = ", &mm(total.worst.most)].concat(),
        [
            "√(",
            &*squares,
            ") = ",
            &about(total.rss.value, 4),
            " to either side of ",
            &mm(total.middle),
        ]
        .concat(),
    ]
}

/// A share in percent.
#[must_use]
pub(crate) fn share(percent: Fraction) -> String {
    about(float::of(percent), 0)
}

/// What gives most.
#[must_use]
pub(crate) fn gives_most(link: &Link, percent: Fraction) -> String {
    [&*self::link(link), " mm, ", &share(percent), " %"].concat()
}

/// What the drawing shows.
#[must_use]
pub(crate) fn picture(title: &str) -> String {
    ["The lengths laid end to end. ", title].concat()
}
