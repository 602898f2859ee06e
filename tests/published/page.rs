//! The page of published values, written from the rows and what became of them.
use crate::topics::{Outcome, TOPICS};
use std::collections::BTreeMap;
use std::fmt::Write;

/// The whole page.
pub(crate) fn text() -> String {
    let mut page = String::from(
        "# Published values\n\n\
         Written by `tests/published` from the rows beside it and from what became of them; \
         a test fails when it is stale.\n\
         One row is one case. *Refused* counts rows of printed errors, and of settings that do \
         not exist, which the core must not offer; they are among the rows that pass.\n\n\
         | file | what its rows hold | rows | pass | refused |\n|---|---|---:|---:|---:|\n",
    );
    let all: Vec<(_, Vec<Outcome>)> = TOPICS.iter().map(|t| (t, (t.run)())).collect();
    let mut total = [0; 3];
    for (topic, outcomes) in &all {
        let pass = outcomes.iter().filter(|o| o.result.is_ok()).count();
        let refused = outcomes.iter().filter(|o| o.refused).count();
        for (sum, n) in total.iter_mut().zip([outcomes.len(), pass, refused]) {
            *sum += n;
        }
        let (file, title, rows) = (topic.file, topic.title, outcomes.len());
        line(&mut page, &format!("| [{file}]({file}) | {title} | {rows} | {pass} | {refused} |"));
    }
    let [rows, pass, refused] = total;
    line(&mut page, &format!("| | all | {rows} | {pass} | {refused} |"));
    page.push_str("\n## Sources\n\n| rows | how known | source |\n|---:|---|---|\n");
    let mut sources: BTreeMap<(String, String), usize> = BTreeMap::new();
    for outcome in all.iter().flat_map(|(_, outcomes)| outcomes) {
        let about = &outcome.about;
        *sources.entry((about.source.clone(), about.how_known.clone())).or_default() += 1;
    }
    for ((source, how_known), rows) in &sources {
        line(&mut page, &format!("| {rows} | {how_known} | {source} |"));
    }
    page
}

fn line(page: &mut String, line: &str) {
    writeln!(page, "{line}").expect("a string takes every line");
}
