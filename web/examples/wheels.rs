//! What this computer answers of wheels of 4 to 200 teeth in four sizes, a line each, size
//! first, for the package in Node to compare with (`tests/node/digest.test.mjs`).
mod plain;

use handturn_web::api::Given;
use handturn_web::api::gear::answer;
use plain::told;

/// Size and pressure angle as they are asked for.
const SIZES: [&str; 4] = [
    r#""module":1"#,
    r#""module":"0.5""#,
    r#""diametralPitch":8,"pressureAngle":"14.5""#,
    r#""module":2,"pressureAngle":25,"shift":[1,5],"thinned":"0.02""#,
];

fn main() {
    for size in SIZES {
        for teeth in 4..=200 {
            of_wheel(size, teeth);
        }
    }
}

fn of_wheel(size: &str, teeth: u32) {
    let line = |about: &str, request: &str| {
        let request: Given = serde_json::from_str(request).expect("plain data");
        println!("{size}\t{}", told(answer(about, &request)));
    };
    let wheel = |more: &str| format!("{{{size},\"teeth\":{teeth}{more}}}");
    let outside = format!("{}.9", teeth + 1);
    line("sizes", &wheel(""));
    line("cutter", &format!("{{\"teeth\":{teeth},\"halves\":true}}"));
    line("cutter", &format!("{{\"teeth\":{teeth},\"numbering\":\"module\"}}"));
    line("blank", &wheel(&format!(",\"outside\":\"{outside}\"")));
    line("tell", &format!("{{\"outside\":\"{outside}\",\"teeth\":{teeth}}}"));
    line("pitch", &format!("{{\"chord\":\"2.5\",\"teeth\":{teeth}}}"));
    for about in ["caliper", "span"] {
        line(about, &wheel(""));
    }
    line("pins", &wheel(",\"owned\":[0.9,1.7,3,\"0.216 in\"]"));
    line("trial", &wheel(&format!(",\"reading\":\"{outside}\"")));
    // Shift and thinning belong to each wheel of a pair.
    let rack = size.split(",\"shift\"").next().unwrap_or_default();
    let pair = |more: &str| {
        format!("{{{rack},\"first\":{{\"teeth\":{teeth}}},\"second\":{{\"teeth\":38}},{more}}}")
    };
    line("mesh", &pair("\"backlash\":\"0.05\""));
    line("mesh", &pair(&format!("\"centres\":\"{}\"", (teeth + 39) / 2)));
    line("opening", &pair("\"centres\":60,\"measured\":\"0.02\",\"wanted\":\"0.05\""));
}
