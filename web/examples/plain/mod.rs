//! Plain data built, looked into and written as JSON text, numbers as JavaScript writes
//! them.
#![allow(dead_code, reason = "each program needs some of it")]

use handturn_web::api::Given;

pub(crate) fn object(entries: &[(&str, Given)]) -> Given {
    Given::Object(entries.iter().map(|(key, value)| ((*key).to_owned(), value.clone())).collect())
}

pub(crate) fn get<'a>(object: &'a Given, key: &str) -> &'a Given {
    let Given::Object(entries) = object else { return &Given::Nothing };
    entries.iter().find(|(name, _)| name == key).map_or(&Given::Nothing, |(_, value)| value)
}

/// An answer or a refusal as the JSON text that JavaScript makes of it.
pub(crate) fn told(answer: Result<Given, handturn_web::api::Refusal>) -> String {
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
