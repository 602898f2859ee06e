//! All that a set of plates can do by one way, and no more.
use super::{Outcome, ask, each, must, parts, ways};
use handturn::divide::Kind;
use handturn_tests::heads::{circles, head};
use handturn_tests::rows;
use serde::Deserialize;

#[derive(Deserialize)]
struct Coverage {
    ratio: u32,
    circles: String,
    way: String,
    asked: String,
    exact: String,
}

pub(crate) fn coverage() -> Vec<Outcome> {
    each("coverage.csv", |row: &Coverage| (false, check(row)))
}

fn check(row: &Coverage) -> Result<(), String> {
    let kind = match row.way.as_str() {
        "plain" => Kind::Plain,
        "compound" => Kind::Compound,
        other => return Err(format!("{other:?} is no way")),
    };
    let head = head(row.ratio, &row.circles);
    let mut exact = Vec::new();
    for count in rows::parts(&row.asked) {
        let question = parts(count);
        let answer = ask(&question, &head)?;
        for way in ways(&answer, kind) {
            if way.exact(&question).map_err(|e| e.to_string())? {
                exact.push(count);
                break;
            }
        }
    }
    must(exact == rows::parts(&row.exact), || format!("does {exact:?}"))
}

#[derive(Deserialize)]
struct Plates {
    circles: String,
    holes: String,
}

pub(crate) fn plates() -> Vec<Outcome> {
    each("plates.csv", |row: &Plates| {
        let (built_in, printed) = (circles(&row.circles), circles(&row.holes));
        (false, must(built_in == printed, || format!("built in: {built_in:?}")))
    })
}
