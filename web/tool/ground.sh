# The ground that web/run, tests/run and .ci/run stand on: which compiler, which
# tools, where caches live. Sourced by bash with the repository as working folder.

cache="${XDG_CACHE_HOME:-$HOME/.cache}/handturn"
# Whatever cargo builds for these scripts, so that a fresh clone finds its libraries built.
export CARGO_TARGET_DIR="${CARGO_TARGET_DIR:-$cache/target-$(sha256sum Cargo.lock | cut -c1-12)}"
oldest_rustc=$(sed -n 's/^rust-version = "\(.*\)"/\1/p' Cargo.toml)
wasm=wasm32-unknown-unknown
board=thumbv6m-none-eabi

heading() { printf '\n=== %s\n' "$*"; }
stop() { printf '%s\n' "$*" >&2; exit 1; }
have() { command -v "$1" >/dev/null 2>&1; }

# --- which compiler ----------------------------------------------------------
# "rustup": the cargo on the path, with ready-made libraries for both targets.
# "debian": Debian's rustc-web, which builds the library from its own source.
# HANDTURN_TOOLCHAIN forces one of them.

new_enough() { # RUSTC
  have "$1" && printf '%s\n%s\n' "$oldest_rustc" "$("$1" --version | cut -d' ' -f2)" | sort -VC
}

targets_present() {
  local libs
  libs="$(rustc --print sysroot)/lib/rustlib"
  [ -d "$libs/$wasm" ] && [ -d "$libs/$board" ]
}

debian_missing() { # prints what Debian's way of building still needs
  new_enough /usr/bin/rustc || echo rustc-web
  have /usr/bin/cargo || echo cargo-web
  [ -d /usr/lib/rustlib/src/rust/library ] ||
    [ -d "$(/usr/bin/rustc --print sysroot 2>/dev/null)/lib/rustlib/src/rust/library" ] || echo rust-web-src
  have wasm-ld-19 || echo lld-19
}

# Decided once; scripts that this one calls are told.
choose_toolchain() {
  toolchain=${HANDTURN_TOOLCHAIN:-${HANDTURN_CHOSEN:-}}
  [ -z "$toolchain" ] || return 0
  toolchain=debian
  if have cargo && new_enough rustc; then
    if targets_present; then
      toolchain=rustup
    elif [ -n "$(debian_missing)" ] && have rustup &&
      timeout 60 rustup target add "$wasm" "$board" >/dev/null 2>&1 && targets_present; then
      toolchain=rustup
    fi
  fi
  export HANDTURN_CHOSEN=$toolchain
}

# cargo for this computer itself.
host_cargo() {
  if have cargo && new_enough rustc; then
    cargo "$@"
  else
    RUSTC=/usr/bin/rustc /usr/bin/cargo "$@"
  fi
}

# cross TARGET LIBRARIES SUBCOMMAND ARGUMENTS..: cargo for another machine.
cross() {
  local target=$1 libraries=$2 subcommand=$3
  shift 3
  if [ "$toolchain" = rustup ]; then
    cargo "$subcommand" --target "$target" "$@"
  else
    RUSTC=/usr/bin/rustc RUSTC_BOOTSTRAP=1 \
      CARGO_TARGET_WASM32_UNKNOWN_UNKNOWN_LINKER=wasm-ld-19 \
      CARGO_TARGET_THUMBV6M_NONE_EABI_LINKER=ld.lld-19 \
      /usr/bin/cargo "$subcommand" --target "$target" -Zbuild-std="$libraries" "$@"
  fi
}

# llvm_tool NAME: an LLVM tool of any version, which knows the board.
llvm_tool() {
  command -v "llvm-$1" || ls "/usr/bin/llvm-$1"-* /usr/lib/llvm-*/bin/"llvm-$1" 2>/dev/null | tail -1
}

# --- what must be installed --------------------------------------------------
wanted=()
want() { # PACKAGE COMMAND
  have "$2" || wanted+=("$1")
}

want_compiler() {
  want build-essential cc
  if ! { have cargo && new_enough rustc; }; then
    want rustc-web /usr/bin/rustc
    want cargo-web /usr/bin/cargo
  fi
  choose_toolchain
  if [ "$toolchain" = debian ]; then
    mapfile -t -O ${#wanted[@]} wanted < <(debian_missing)
  fi
}

want_page_tools() {
  want nodejs node
  want npm npm
  want xz-utils xz
}

want_lints() {
  if have cargo && new_enough rustc && have rustup; then
    timeout 60 rustup component add rustfmt clippy >/dev/null 2>&1 || true
  fi
  host_cargo fmt --version >/dev/null 2>&1 || wanted+=(rustfmt-web)
  host_cargo clippy --version >/dev/null 2>&1 || wanted+=(rust-web-clippy)
}

want_browser() {
  want chromium "${CHROMIUM:-/usr/bin/chromium}"
  want chromium-driver "${CHROMEDRIVER:-/usr/bin/chromedriver}"
}

# Installs what was found missing (as root), or names it and stops.
install_wanted() {
  [ ${#wanted[@]} -eq 0 ] && return
  local list
  list=$(printf '%s\n' "${wanted[@]}" | sort -u | tr '\n' ' ')
  local line="apt-get install --no-install-recommends ${list% }"
  have apt-get || stop "Missing: ${list% } (Debian's package names). Install them and run this again."
  [ "$(id -u)" = 0 ] || stop "Missing packages. Run this once, then again:  sudo $line"
  heading "Installing ${list% }"
  apt-get update -qq
  DEBIAN_FRONTEND=noninteractive $line -y -qq >/dev/null
  wanted=()
}

# --- tools that come with their own version ----------------------------------
# wasm-bindgen's tool must match the crate exactly, so Cargo.lock decides.
wasm_bindgen_tool() {
  local version
  version=$(sed -n '/^name = "wasm-bindgen"$/{n;s/^version = "\(.*\)"$/\1/p}' Cargo.lock)
  local home="$cache/wasm-bindgen-$version"
  wasm_bindgen="$home/bin/wasm-bindgen"
  wasm_bindgen_runner="$home/bin/wasm-bindgen-test-runner"
  [ -x "$wasm_bindgen" ] && return
  heading "Building wasm-bindgen $version (about two minutes, once)"
  mkdir -p "$cache"
  alone host_cargo install wasm-bindgen-cli --version "$version" --root "$home" --quiet
}

# One process at a time, for work whose result is shared.
alone() {
  mkdir -p "$cache"
  (
    if have flock; then flock 9; fi
    "$@"
  ) 9>"$cache/.lock"
}

# node_modules FOLDER: FOLDER/node_modules points at packages in the cache.
node_modules() {
  local key home
  key=$(cat "$1/package.json" "$1/package-lock.json" | sha256sum | cut -c1-12)
  home="$cache/node-$key"
  if [ ! -e "$home/ready" ]; then
    heading "Fetching the JavaScript packages of $1"
    mkdir -p "$home"
    cp "$1/package.json" "$1/package-lock.json" "$1/.npmrc" "$home/"
    alone npm ci --prefix "$home" --no-audit --no-fund --silent
    touch "$home/ready"
  fi
  [ "$(readlink "$1/node_modules" || true)" = "$home/node_modules" ] || {
    rm -rf "$1/node_modules"
    ln -s "$home/node_modules" "$1/node_modules"
  }
}
