//! What this computer finds, a line each, for the tests in a browser to compare
//! with (`web/tests/browser.rs`).
#[path = "../tests/asked/mod.rs"]
mod asked;

fn main() {
    let found = [
        ("outcome", asked::outcomes(handturn_web::page::turn)),
        ("answer", asked::answers()),
        ("division", asked::divisions()),
        ("float", asked::floats()),
    ];
    for (name, lines) in found {
        for line in lines {
            println!("{name} {line}");
        }
    }
}
