//! In a real browser: what this crate's wasm, and the page's wasm as it was built,
//! find there is what the same source finds natively. `tests/run` builds the page,
//! asks `web/examples/native.rs` and then runs this.
#![cfg(target_arch = "wasm32")]
#[path = "asked/mod.rs"]
mod asked;

use handturn_web::{api, page};
use wasm_bindgen::JsValue;
use wasm_bindgen::prelude::wasm_bindgen;
use wasm_bindgen_test::{wasm_bindgen_test, wasm_bindgen_test_configure};

wasm_bindgen_test_configure!(run_in_browser);

/// What is found natively.
const NATIVE: &str = include_str!("../dist/.native");
/// The page's wasm, optimised and stripped as it is handed out.
static BUILT: &[u8] = include_bytes!("../dist/.page/small.wasm");

/// The page's glue as it was built, and names for it (`web/tests/built.js`).
#[wasm_bindgen(module = "/dist/.built.js")]
extern "C" {
    #[wasm_bindgen(js_name = builtStart, catch)]
    fn start(bytes: &[u8]) -> Result<JsValue, JsValue>;
    #[wasm_bindgen(js_name = builtTurn)]
    fn built_turn(state: &str, event: &str) -> String;
    #[wasm_bindgen(js_name = builtClear)]
    fn built_clear();
}

#[wasm_bindgen(inline_js = r#"
export const used = (exports) => exports.memory.buffer.byteLength;
export const agent = () => navigator.userAgent;
export const parsed = (html) => new DOMParser().parseFromString(html, 'text/html');
export const count = (document, selector) => document.querySelectorAll(selector).length;
export const said = (document, selector) => document.querySelector(selector)?.textContent ?? 'nothing';
export const twice = (document) => {
  const ids = [...document.querySelectorAll('[id]')].map((found) => found.id);
  return ids.filter((id, place) => ids.indexOf(id) !== place).join(' ');
};
export const scripted = (document) => [...document.querySelectorAll('*')]
  .filter((found) => found.localName === 'script' || [...found.attributes].some(({ name }) => name === 'style' || name.startsWith('on')))
  .map((found) => found.outerHTML).join('\n');
export const drawn = (document) => [...document.querySelectorAll('svg *')].every((found) => found instanceof SVGElement);
export const shape = (value) => JSON.stringify(value, (name, held) => {
  const plain = held === null || typeof held !== 'object' || [Object.prototype, Array.prototype].includes(Object.getPrototypeOf(held));
  if (!plain || typeof held === 'bigint' || held === undefined) throw new TypeError(`${name} is not plain`);
  return held;
});
"#)]
extern "C" {
    fn used(exports: &JsValue) -> f64;
    fn agent() -> String;
    fn parsed(html: &str) -> JsValue;
    fn count(document: &JsValue, selector: &str) -> u32;
    fn said(document: &JsValue, selector: &str) -> String;
    fn twice(document: &JsValue) -> String;
    fn scripted(document: &JsValue) -> String;
    fn drawn(document: &JsValue) -> bool;
    #[wasm_bindgen(catch)]
    fn shape(value: &JsValue) -> Result<String, JsValue>;
}

/// The native lines of that name.
fn native(name: &str) -> Vec<&'static str> {
    let named = |line: &'static str| line.split_once(' ').filter(|(own, _)| *own == name);
    let lines: Vec<_> = NATIVE.lines().filter_map(named).map(|(_, line)| line).collect();
    assert!(!lines.is_empty(), "nothing called {name} was found natively");
    lines
}

#[track_caller]
fn same(name: &str, found: &[String]) {
    let wanted = native(name);
    assert_eq!(found.len(), wanted.len(), "{name}");
    for (k, (found, wanted)) in found.iter().zip(wanted).enumerate() {
        assert!(found == wanted, "{name} {k}: {found}\nnatively: {wanted}");
    }
}

#[wasm_bindgen_test]
fn this_is_a_browser() {
    assert!(agent().contains("Chrome"), "{}", agent());
}

#[wasm_bindgen_test]
fn every_turn_of_the_page_has_the_native_outcome() {
    same("outcome", &asked::outcomes(page::turn));
}

#[wasm_bindgen_test]
fn the_page_as_built_has_the_native_outcomes_and_its_memory_is_free_again() {
    let exports = start(BUILT).expect("the page's wasm starts");
    let turn = |state: &str, event: &str| {
        built_clear();
        built_turn(state, event)
    };
    same("outcome", &asked::outcomes(turn));
    let after_one = used(&exports);
    for _ in 0..5 {
        same("outcome", &asked::outcomes(turn));
    }
    assert_eq!(used(&exports), after_one, "the same turns use the same memory again");
    // Without it, the same turns do need more: so it is what keeps memory flat.
    let kept = |state: &str, event: &str| built_turn(state, event);
    for _ in 0..5 {
        same("outcome", &asked::outcomes(kept));
    }
    assert!(used(&exports) > after_one);
}

#[wasm_bindgen_test]
fn answers_are_the_native_ones() {
    same("answer", &asked::answers());
}

#[wasm_bindgen_test]
fn wide_divisions_are_the_native_ones() {
    same("division", &asked::divisions());
}

#[wasm_bindgen_test]
fn floats_are_the_native_ones_to_the_last_bit() {
    same("float", &asked::floats());
}

/// A request for `count` parts on the head that was asked natively.
fn request(count: u32) -> JsValue {
    let head = r#""head":{"plates":"15 16 17 18 19 20 / 21 23 27 29 31 33 / 37 39 41 43 47 49","gears":"24x2 28 32 40 44 48 56 64 72 86 100"}"#;
    parse(&["{\"parts\":", &count.to_string(), ",", head, "}"].concat())
}

#[wasm_bindgen]
extern "C" {
    #[wasm_bindgen(js_namespace = JSON)]
    fn parse(text: &str) -> JsValue;
}

#[wasm_bindgen_test]
fn the_package_answers_with_plain_objects_of_the_same_text() {
    let text = |count| {
        let answer = api::divide(&request(count)).expect("a good request");
        shape(&answer).expect("plain objects of plain values")
    };
    same("answer", &asked::COUNTS.map(text));
}

#[wasm_bindgen_test]
fn numbers_that_javascript_cannot_hold_are_refused_at_the_border() {
    #[track_caller]
    fn refused(num: f64, most: f64) {
        let refusal = api::nearest(&num.into(), &1.0.into(), &most.into()).expect_err("refused");
        let text = shape(&refusal).expect("a plain refusal");
        assert!(text.contains("\"field\"") && text.contains("\"message\""), "{text}");
    }
    for num in [0.5, f64::NAN, f64::INFINITY, 9_007_199_254_740_994.0, -1e300] {
        refused(num, 10.0);
    }
    refused(1.0, 0.0);
    refused(1.0, 4_294_967_297.5);
    let near = |num: f64| api::nearest(&num.into(), &3.0.into(), &3.0.into());
    for num in [2_147_483_648.0, 4_294_967_297.0, -2_147_483_649.0, 9_007_199_254_740_991.0] {
        let near = shape(&near(num).expect("within 2^53")).expect("plain");
        let whole = num % 3.0 == 0.0;
        let wanted = if whole { format!("[{},1]", num / 3.0) } else { format!("[{num},3]") };
        assert!(near.starts_with(&["{\"fraction\":", &wanted].concat()), "{near}, not {wanted}");
    }
}

#[wasm_bindgen_test]
fn every_screen_parses_as_it_was_written() {
    let mut typed = 0;
    asked::outcomes(|state, event| {
        let outcome = page::turn(state, event);
        let put =
            outcome.split('\u{1c}').find_map(|effect| effect.strip_prefix("put\u{1d}page\u{1d}"));
        let screen = parsed(put.expect("every turn puts the page"));
        assert_eq!(twice(&screen), "", "two elements of one name after {event}");
        assert_eq!(scripted(&screen), "", "what the policy refuses after {event}");
        assert!(drawn(&screen), "a drawing is not SVG after {event}");
        assert!(count(&screen, "button") > 0, "nothing to press after {event}");
        if event.contains("<i id='typed'>") {
            typed += 1;
            assert_eq!(count(&screen, "#typed"), 0, "what was typed is markup");
            assert!(said(&screen, ".err").contains("You typed <i"), "{}", said(&screen, ".err"));
        }
        outcome
    });
    assert_eq!(typed, 1);
}
