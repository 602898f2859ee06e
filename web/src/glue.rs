//! The page's one function, as the browser sees it.
use wasm_bindgen::prelude::wasm_bindgen;

/// State and event in, outcome out: see the crate's documentation.
#[wasm_bindgen]
pub fn turn(state: &str, event: &str) -> String {
    crate::page::turn(state, event)
}
