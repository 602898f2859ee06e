# Builds web/dist from core and web: handturn.html, site/ and npm/.
# Sourced after ground.sh.

# A fingerprint of all that the outputs are made from.
sources_key() {
  {
    find core web Cargo.toml Cargo.lock LICENSE -type f \
      -not -path 'web/dist/*' -not -path '*/node_modules/*' -not -path '*/target/*' -print0 |
      LC_ALL=C sort -z | xargs -0 sha256sum
    echo "${HANDTURN_TOOLCHAIN:-}"
  } | sha256sum
}

build_page() {
  local key
  key=$(sources_key)
  [ "$(cat web/dist/.key 2>/dev/null || true)" = "$key" ] && return
  rm -f web/dist/.key
  want_compiler
  want_page_tools
  install_wanted
  wasm_bindgen_tool
  node_modules web
  build_wasm page
  build_wasm package
  heading "Putting the page, the site and the package together"
  node web/tool/bundle.mjs
  echo "$key" >web/dist/.key
}

# The crate's tests in a browser: what this computer finds natively, and the page's
# wasm as it was built, are compiled in; the test runner drives Chromium.
test_wasm() {
  wasm_bindgen_tool
  host_cargo run --quiet --locked -p handturn-web --example native >web/dist/.native
  cat web/dist/.page/handturn_web.js web/tests/built.js >web/dist/.built.js
  CARGO_TARGET_WASM32_UNKNOWN_UNKNOWN_RUNNER=$wasm_bindgen_runner \
    CHROMEDRIVER="${CHROMEDRIVER:-/usr/bin/chromedriver}" WASM_BINDGEN_TEST_TIMEOUT=300 \
    CARGO_PROFILE_TEST_DEBUG=0 \
    cross "$wasm" std,test,panic_abort test --locked -p handturn-web --test browser
}

# build_wasm FEATURE: web/dist/.FEATURE/ holds the small wasm and its glue.
build_wasm() {
  local out="web/dist/.$1"
  heading "Building the wasm for the $1"
  local settings=(build --quiet --locked -p handturn-web --lib --profile page --no-default-features --features "$1")
  if [ "$toolchain" = debian ]; then
    # A library built from source need not carry the words of panics, nor be quick.
    RUSTFLAGS="${RUSTFLAGS:-} -Zunstable-options -Cpanic=immediate-abort" \
      cross "$wasm" std,panic_abort "${settings[@]}" -Zbuild-std-features=optimize_for_size
  else
    cross "$wasm" std,panic_abort "${settings[@]}"
  fi
  rm -rf "$out"
  "$wasm_bindgen" --target web --omit-default-module-path --experimental-reset-state-function \
    --out-dir "$out" "$CARGO_TARGET_DIR/$wasm/page/handturn_web.wasm"
  web/node_modules/.bin/wasm-opt -Oz --strip-debug --strip-producers --strip-target-features \
    "$out/handturn_web_bg.wasm" -o "$out/small.wasm"
}
