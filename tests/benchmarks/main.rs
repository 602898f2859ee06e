//! Figures of the core, beside a plain implementation of the same work in the
//! same run. `tests/bench` builds and prints it; nothing is asserted here.
mod by_trying;
mod trains;

use handturn::divide::{Answer, Parts, Question, Repeated, answer};
use handturn::head::Head;
use handturn::measure::Angle;
use handturn::number::Fraction;
use handturn_tests::heads::head;
use handturn_tests::roomy;
use std::hint::black_box;
use std::time::{Duration, Instant};

/// As many ways of a kind as the page lists.
const EACH: usize = 8;

fn main() {
    println!("Whole answers, 40 : 1, twelve change gears, at most {EACH} ways listed of a kind.");
    println!("Plain: the same ways found by trying every hole, pair of circles and train.\n");
    println!("{:<44} {:>12} {:>12} {:>14}", "", "mean", "worst", "plain mean");
    roomy(|| {
        for set in ["A", "B"] {
            let head = head(40, set);
            every_number(set, &head);
            let one = |count| Question::Parts(Parts { count, every: 1 });
            row(&format!("10000 parts, set {set}"), &[one(10_000)], &head, 1);
            row(&format!("9973 parts (a prime), set {set}"), &[one(9973)], &head, 1);
            angles(set, &head);
        }
        trains::print();
    });
}

fn every_number(set: &str, head: &Head) {
    let questions: Vec<Question> =
        (2..=1000).map(|count| Question::Parts(Parts { count, every: 1 })).collect();
    row(&format!("2 to 1000 parts, set {set}"), &questions, head, 20);
}

fn angles(set: &str, head: &Head) {
    let part = |num, den| Angle::from_turns(Fraction::new(num, den).expect("a part of a turn"));
    let list: Vec<Angle> =
        (0..400).map(|k| part((k * 32_401 + 17) % 1_296_000, 1_296_000)).collect();
    row(&format!("a list of 400 angles, set {set}"), &[Question::List(&list)], head, 1);
    let single: Vec<Question> = (1..=200)
        .map(|k| Question::Angle(Repeated { angle: part(k * 6_469, 1_296_000), times: 1 }))
        .collect();
    row(&format!("200 angles in whole seconds, set {set}"), &single, head, 10);
}

/// Times every question, and every `stride`-th one by trying.
fn row(what: &str, questions: &[Question], head: &Head, stride: usize) {
    let mut times: Vec<(Duration, usize)> = Vec::new();
    for (index, question) in questions.iter().enumerate() {
        times.push((best_of(3, || ask(question, head)), index));
    }
    let total: Duration = times.iter().map(|(time, _)| *time).sum();
    let mean = total / u32::try_from(times.len()).expect("few");
    let (worst, _) = times.iter().max().expect("one at least");
    let sample: Vec<&Question> = questions.iter().step_by(stride).collect();
    let slow: Duration = sample.iter().map(|q| best_of(1, || by_trying::ask(q, head))).sum();
    let slow = slow / u32::try_from(sample.len()).expect("few");
    println!("{what:<44} {:>12} {:>12} {:>14}", micro(mean), micro(*worst), micro(slow));
}

fn ask(question: &Question, head: &Head) {
    let answer: Answer<EACH> =
        answer(black_box(question), black_box(head)).expect("it is answered");
    black_box(&answer);
}

fn best_of(times: u32, mut work: impl FnMut()) -> Duration {
    let time = |work: &mut dyn FnMut()| {
        let start = Instant::now();
        work();
        start.elapsed()
    };
    (0..times).map(|_| time(&mut work)).min().expect("once at least")
}

fn micro(time: Duration) -> String {
    format!("{:.1} µs", time.as_secs_f64() * 1e6)
}
