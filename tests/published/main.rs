//! Published values: every row of every file is a case, and the page beside
//! them says what passes. Refresh the page with
//! `REFRESH=1 cargo test -p handturn-tests --test published`.
mod page;
mod topics;

use topics::TOPICS;

#[test]
fn every_row_holds() {
    let mut ids = std::collections::BTreeSet::new();
    let mut failures = Vec::new();
    for topic in TOPICS {
        let outcomes = (topic.run)();
        assert!(!outcomes.is_empty(), "{}: no rows", topic.file);
        for outcome in outcomes {
            assert!(ids.insert(outcome.about.id.clone()), "{} stands twice", outcome.about.id);
            if let Err(why) = outcome.result {
                failures.push(format!("{}: {why}", outcome.about.id));
            }
        }
    }
    assert!(failures.is_empty(), "{} rows fail:\n{}", failures.len(), failures.join("\n"));
}

#[test]
fn every_row_names_its_source() {
    for topic in TOPICS {
        for outcome in (topic.run)() {
            let about = outcome.about;
            assert!(about.source.len() > 10, "{}: {:?}", about.id, about.source);
            let known = ["read in print", "from memory", "rule of arithmetic"];
            assert!(known.contains(&about.how_known.as_str()), "{}: {:?}", about.id, about);
        }
    }
}

#[test]
fn the_page_is_fresh() {
    let path = handturn_tests::rows::folder().join("README.md");
    let fresh = page::text();
    if std::env::var_os("REFRESH").is_some() {
        std::fs::write(&path, &fresh).expect("the page can be written");
    }
    let stands = std::fs::read_to_string(&path).unwrap_or_default();
    assert_eq!(stands, fresh, "stale: REFRESH=1 cargo test -p handturn-tests --test published");
}
