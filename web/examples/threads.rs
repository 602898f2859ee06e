//! What this computer answers of every thread of every series, a line each, series
//! first, for the package in Node to compare with (`tests/node/digest.test.mjs`).
//! Numbers are written as JavaScript writes them.
use handturn_web::api::Given;
use handturn_web::api::thread::answer;

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

fn object(entries: &[(&str, Given)]) -> Given {
    Given::Object(entries.iter().map(|(key, value)| ((*key).to_owned(), value.clone())).collect())
}

fn get<'a>(object: &'a Given, key: &str) -> &'a Given {
    let Given::Object(entries) = object else { return &Given::Nothing };
    entries.iter().find(|(name, _)| name == key).map_or(&Given::Nothing, |(_, value)| value)
}

/// An answer or a refusal as the JSON text that JavaScript makes of it.
fn told(answer: Result<Given, handturn_web::api::Refusal>) -> String {
    let plain = answer.unwrap_or_else(|refusal| {
        let text = serde_json::to_string(&refusal).expect("plain data");
        serde_json::from_str(&text).expect("plain data")
    });
    let mut text = String::new();
    write(&plain, &mut text);
    text
}

fn write(value: &Given, text: &mut String) {
    match value {
        Given::Nothing => text.push_str("null"),
        Given::Flag(flag) => text.push_str(if *flag { "true" } else { "false" }),
        Given::Number(number) if *number != 0.0 && number.abs() < 1e-6 => {
            text.push_str(&format!("{number:e}"));
        }
        Given::Number(number) => text.push_str(&(number + 0.0).to_string()),
        Given::Text(said) => text.push_str(&serde_json::to_string(said).expect("a text")),
        Given::List(list) => {
            text.push('[');
            for (k, entry) in list.iter().enumerate() {
                text.push_str(if k > 0 { "," } else { "" });
                write(entry, text);
            }
            text.push(']');
        }
        Given::Object(entries) => {
            text.push('{');
            for (k, (key, entry)) in entries.iter().enumerate() {
                text.push_str(if k > 0 { ",\"" } else { "\"" });
                text.push_str(key);
                text.push_str("\":");
                write(entry, text);
            }
            text.push('}');
        }
    }
}
