#!/usr/bin/env bash
# Everything that must hold. Called by `make test`, which sets the flags, the clock and the language.
set -euo pipefail
cd "$(dirname "$0")/.."
step=.ci/step.sh
mkdir -p build

$step packages .ci/packages.sh test

# The window's OpenGL bindings are one package that takes two minutes on one core: first, and beside the rest.
started=$SECONDS
{ go build $(go list -deps ./app | grep /go-gl/gl/) && go build -o build/thawbook ./app; } >build/window.log 2>&1 &
window=$!
trap 'kill "$window" 2>/dev/null || true' EXIT

$step lint .ci/lint.sh core
$step cli .ci/cli.sh run
$step tests .ci/gotest.sh all
$step "tests, St John's clock" env TZ=America/St_Johns .ci/gotest.sh windowless
$step race .ci/gotest.sh race
$step fuzz .ci/fuzz.sh

echo '== window build'
wait "$window" || { cat build/window.log >&2; echo '== window build: FAILED' >&2; exit 1; }
echo "== window build: done, within $((SECONDS - started)) s"
$step 'lint, window' .ci/lint.sh window
$step 'window test' .ci/window.sh 1
