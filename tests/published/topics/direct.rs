//! Direct plates.
use super::{Outcome, angle, ask, each, figures, must, parts, ways};
use handturn::divide::Kind;
use handturn::head::Head;
use handturn::list::List;
use handturn_tests::heads::counts;
use handturn_tests::rows::fraction;
use serde::Deserialize;

#[derive(Deserialize)]
struct Direct {
    notches: String,
    turn: String,
    spaces: Option<u32>,
}

pub(crate) fn direct() -> Vec<Outcome> {
    each("direct.csv", |row: &Direct| (row.spaces.is_none(), spaces(row)))
}

fn spaces(row: &Direct) -> Result<(), String> {
    let question = angle(fraction(&row.turn));
    let answer = ask(&question, &head(&row.notches))?;
    let ways = ways(&answer, Kind::Direct);
    let Some(sought) = row.spaces else {
        return must(ways.is_empty(), || format!("{ways:?} is offered"));
    };
    let way = ways.first().ok_or("not offered")?;
    let step = way.step(&question, 0).map_err(|e| e.to_string())?;
    let found = figures(&step).ok_or("a move without a leg")?;
    must((found.0, found.1) == (0, sought), || format!("{found:?}, not {sought}"))
}

#[derive(Deserialize)]
struct Coverage {
    notches: String,
    parts: String,
}

pub(crate) fn coverage() -> Vec<Outcome> {
    each("direct_coverage.csv", |row: &Coverage| {
        let head = head(&row.notches);
        let mut found = Vec::new();
        for count in 2..=100 {
            match ask(&parts(count), &head) {
                Ok(answer) if ways(&answer, Kind::Direct).is_empty() => {}
                Ok(_) => found.push(count),
                Err(why) => return (false, Err(why)),
            }
        }
        (false, must(found == counts::<u32>(&row.parts), || format!("does {found:?}")))
    })
}

fn head(notches: &str) -> Head {
    let direct = List::from_slice(&counts::<u16>(notches)).expect("few plates");
    Head { direct, ..Head::default() }
}
