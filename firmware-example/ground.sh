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
