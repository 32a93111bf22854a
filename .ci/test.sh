#!/usr/bin/env bash
# Everything that must hold. Called by `make test`, which sets the flags, the clock and the language.
# Every step runs, whatever the one before found; one that fails fails the whole.
set -euo pipefail
cd "$(dirname "$0")/.."
mkdir -p build
passed=0
failed=()

# step NAME COMMAND...
step() {
  if .ci/step.sh "$@"; then passed=$((passed + 1)); else failed+=("$1"); fi
}

# build_window: OpenGL's bindings are one package that keeps one core busy for two minutes, so they come first.
build_window() {
  local bindings
  bindings=$(go list -deps ./app | grep /go-gl/gl/)
  # shellcheck disable=SC2086
  go build $bindings && go build -o build/thawbook ./app
}

# built: waits for the build that began beside the rest.
built() {
  wait "$window" || { cat build/window.log >&2; return 1; }
}

.ci/step.sh packages .ci/packages.sh test
rm -f build/thawbook
build_window >build/window.log 2>&1 &
window=$!

step lint .ci/lint.sh core
step cli .ci/cli.sh run
step tests .ci/gotest.sh all
export SOAK_KILLS=5 SOAK_DAMAGE=20 # the full helpings were in the tests above
step "tests, St John's clock" env TZ=America/St_Johns .ci/gotest.sh windowless
step race .ci/gotest.sh race
unset SOAK_KILLS SOAK_DAMAGE
step fuzz .ci/fuzz.sh

if built; then
  step 'lint, window' .ci/lint.sh window
  step 'window test' .ci/window.sh 1
  step 'new winter in the window' .ci/newwinter.sh
else
  failed+=('window build')
fi

echo "== $passed steps passed, ${#failed[@]} failed"
[ ${#failed[@]} -eq 0 ] || printf '== failed: %s\n' "${failed[@]}" >&2
[ ${#failed[@]} -eq 0 ]
