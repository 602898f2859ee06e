use super::find::found;
use super::sums::EVERY;
use crate::fields::Fields;
use crate::room::visit::Visit;

#[test]
fn every_sum_answers_as_it_first_stands() {
    for sum in EVERY {
        let (answer, wrong) = super::in_force(&Fields::default(), sum);
        assert!(wrong.is_none(), "{}: {wrong:?}", sum.key);
        let answer = answer.unwrap();
        assert!(!answer.figures.is_empty() && !answer.working.is_empty(), "{}", sum.key);
        assert!(!answer.title.is_empty() && answer.title.chars().count() <= 80, "{}", answer.title);
        assert!(!sum.source.is_empty() && !sum.source.ends_with('.'), "{}", sum.key);
        let drawn = answer.drawing.into_string();
        assert!(drawn.contains("<svg") && drawn.contains("aria-label"), "{}", sum.key);
        assert!(!drawn.contains("NaN") && !drawn.contains("inf"), "{}: {drawn}", sum.key);
    }
}

#[test]
fn names_are_their_own() {
    let mut fields: Vec<String> = Vec::new();
    for sum in EVERY {
        let entries = sum.entries.iter();
        fields.extend(entries.map(|entry| sum.field(entry.name)));
        for entry in sum.entries {
            let other = entry.when.map(|(other, _)| other);
            assert!(
                other.is_none_or(|other| sum.entry(other).is_some()),
                "{} {}",
                sum.key,
                entry.name
            );
        }
    }
    let all = fields.len();
    fields.sort();
    fields.dedup();
    assert_eq!(fields.len(), all);
}

/// Two letters of a sum's name bring it up among the first few.
#[test]
fn two_letters_find_a_sum() {
    for sum in EVERY {
        let two: String = sum.name.to_lowercase().chars().take(2).collect();
        let place = found(&two).iter().position(|found| found.key == sum.key);
        assert!(place.is_some_and(|place| place < 6), "{two}: {place:?} is {}", sum.key);
        for word in sum.also.split(' ').filter(|word| !word.is_empty()) {
            assert!(
                found(word).iter().any(|found| found.key == sum.key),
                "{word} finds {}",
                sum.key
            );
        }
    }
    assert!(found("xyzzy").is_empty());
    assert_eq!(found("").len(), EVERY.len());
}

#[test]
fn a_person_finds_a_sum_types_and_comes_back_to_it() {
    let mut visit = Visit::to("bench");
    visit.typed("bench-find", "fe");
    visit.shows(&["Tilt by feeler"]);
    visit.send("key", "Enter", "field bench-find");
    assert_eq!(visit.asked, ["focus sum-title", visit.asked[1].as_str()]);
    visit.shows(&["Lift one edge by 0.524 mm", "20.6 thou", "40 × 0.013090 = 0.5236 mm"]);
    visit.typed("be-tilt-angle", "1 30");
    visit.shows(&["Lift one edge by 1.047 mm"]);
    visit.typed("be-tilt-angle", "95");
    visit.shows(&[
        "Last good answer: Lift one edge by 1.047 mm",
        "Angle must be between 0 and 80 degrees.",
    ]);
    visit.press("bench", "");
    visit.shows(&["1° 30′ under 40 mm: 1.047 mm"]);
    visit.typed("bench-find", "qqq");
    visit.shows(&["No sum goes by this word."]);
}
