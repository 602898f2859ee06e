//! The page's one function, as the browser sees it.
use wasm_bindgen::prelude::wasm_bindgen;

/// State and event in, outcome out: see the crate's documentation.
#[wasm_bindgen]
pub fn turn(state: &str, event: &str) -> String {
    crate::page::turn(state, event)
}

/// Makes the memory of earlier turns free again: to be called before each turn,
/// when nothing that came from here is in use any more.
#[cfg(all(target_arch = "wasm32", not(feature = "package")))]
#[wasm_bindgen]
pub fn clear() {
    // SAFETY: only the browser's side calls this, between turns; nothing lives in
    // the wasm then.
    unsafe { crate::memory::clear() }
}
