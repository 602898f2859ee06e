//! Finding a sum by the words a person has for it.
use super::sum::Sum;
use super::sums::EVERY;

/// The sums that every word of `wanted` begins a word of: those so named first, then
/// those with such a word in their name, then those it is another word for. All of them
/// where nothing is wanted.
pub(super) fn found(wanted: &str) -> Vec<&'static Sum> {
    let wanted = wanted.to_lowercase();
    let mut ranked: Vec<(u8, &'static Sum)> = Vec::new();
    for sum in EVERY.iter().copied() {
        let mut worst = 0;
        for word in wanted.split(apart).filter(|word| !word.is_empty()) {
            worst = rank(sum, word).max(worst);
        }
        if worst < NOT {
            ranked.push((worst, sum));
        }
    }
    ranked.sort_by_key(|(rank, _)| *rank);
    ranked.into_iter().map(|(_, sum)| sum).collect()
}

/// What parts words: `7/24` is two.
fn apart(c: char) -> bool {
    !c.is_alphanumeric()
}

/// No word begins so.
const NOT: u8 = 3;

fn rank(sum: &Sum, word: &str) -> u8 {
    let begins = |text: &str| {
        let text = text.to_lowercase();
        text.split(apart).position(|one| !one.is_empty() && one.starts_with(word))
    };
    match (begins(sum.name), begins(sum.also).or_else(|| begins(sum.about))) {
        (Some(0), _) => 0,
        (Some(_), _) => 1,
        (None, Some(_)) => 2,
        (None, None) => NOT,
    }
}
