# What run and test share: the build for the board and the one for this
# computer. Sourced with the repository as working folder, after web/tool/ground.sh.
export CARGO_TARGET_DIR="$cache/target-readout-$(sha256sum firmware-example/Cargo.lock | cut -c1-12)"
program="$CARGO_TARGET_DIR/$board/release/handturn-readout"

build_board() {
  # From its own folder: that is where cargo looks for the board's settings.
  (cd firmware-example && cross "$board" core build --quiet --locked --release)
}

# host SUBCOMMAND ARGUMENTS..: cargo for logic, models and tests on this computer.
host() {
  host_cargo "$1" --quiet --locked --manifest-path firmware-example/Cargo.toml \
    -p handturn-readout-logic -p handturn-readout-host "${@:2}"
}

# The logic alone for a Cortex-M3. With rustup its library is added where it can be.
other_processor() {
  local other=thumbv7m-none-eabi libs
  libs="$(rustc --print sysroot 2>/dev/null || true)/lib/rustlib"
  if [ "$toolchain" = rustup ] && [ ! -d "$libs/$other" ]; then
    timeout 120 rustup target add "$other" >/dev/null 2>&1 ||
      stop "Missing: the library for $other. Run this once, then again:  rustup target add $other"
  fi
  # Away from the folder's own settings, which are for the board.
  cross "$other" core build --quiet --locked --release \
    --manifest-path firmware-example/Cargo.toml -p handturn-readout-logic
  echo "built: the readout's logic for $other"
}
