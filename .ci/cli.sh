#!/usr/bin/env bash
# The doors without a window: cli.sh build, or cli.sh run to try them on the demo as well.
set -euo pipefail
cd "$(dirname "$0")/.."
export CGO_ENABLED=0
cli=build/thawbook-cli

go build -tags=migrated_fynedo,nogui -o "$cli" ./app
if go version -m "$cli" | grep -q 'fyne\.io'; then
  echo "$cli holds the window's toolkit" >&2
  exit 1
fi
if ldd "$cli" >/dev/null 2>&1; then
  echo "$cli is not static" >&2
  exit 1
fi
[ "${1-}" = run ] || exit 0

go run ./sampledata/make -out build/demo
plan=$(find build/demo -maxdepth 1 -name '*.toml' | LC_ALL=C sort | head -n 1)
"$cli" review -json "$plan" >build/review.json
"$cli" inspect -json build/demo >build/inspect.json
head -c 1 build/review.json | grep -q '{' || { echo 'review -json wrote no JSON' >&2; exit 1; }
head -c 1 build/inspect.json | grep -q '\[' || { echo 'inspect -json wrote no JSON' >&2; exit 1; }
echo "$plan: review $(wc -c <build/review.json) bytes, inspect $(wc -c <build/inspect.json) bytes"
