//! What this computer answers of every thread of every series, a line each, series
//! first, for the package in Node to compare with (`tests/node/digest.test.mjs`).
mod plain;

use handturn_web::api::Given;
use handturn_web::api::thread::answer;
use plain::{get, object, told};

fn main() {
    let Ok(Given::List(all)) = answer("all", &Given::Nothing) else { return };
    for one in &all {
        let (series, names) = (get(one, "series"), get(one, "names"));
        let (Given::Text(series), Given::List(names)) = (series, names) else { return };
        for name in names {
            let found = answer("read", name);
            let picks = if let Ok(Given::List(found)) = &found { found.len() } else { 0 };
            println!("{series}\t{}", told(found));
            for pick in (0_u32..).take(picks) {
                let thread =
                    object(&[("name", name.clone()), ("pick", Given::Number(pick.into()))]);
                of_thread(series, &thread);
            }
        }
    }
}

fn of_thread(series: &str, thread: &Given) {
    let asked = object(&[("thread", thread.clone())]);
    for about in ["sizes", "blank", "drills", "passes", "wires"] {
        println!("{series}\t{}", told(answer(about, &asked)));
    }
    // Over the best wire, to the nearest hundredth of a millimetre.
    let Ok(wires) = answer("wires", &asked) else { return };
    let Given::Number(best) = get(get(&wires, "best"), "mm") else { return };
    let wire = Given::Number((best * 100.0).round() / 100.0);
    let over = object(&[("thread", thread.clone()), ("wire", wire)]);
    println!("{series}\t{}", told(answer("over", &over)));
}
