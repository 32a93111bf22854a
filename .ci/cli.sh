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
"$cli" review -json build/demo/winter.toml >build/review.json
"$cli" inspect -json build/demo/*.csv build/demo/*.txt >build/inspect.json
head -c 1 build/review.json | grep -q '{' || { echo 'review -json wrote no JSON' >&2; exit 1; }
head -c 1 build/inspect.json | grep -q '\[' || { echo 'inspect -json wrote no JSON' >&2; exit 1; }

# The plan in README.md runs as it stands there.
sed -n '/^```toml$/,/^```$/{/^```/!p}' README.md >build/demo/readme.toml
"$cli" review build/demo/readme.toml >build/readme.txt
rm build/demo/readme.toml
echo "review of the demo: $(wc -c <build/review.json) bytes; of README.md's plan: $(wc -c <build/readme.txt) bytes"
