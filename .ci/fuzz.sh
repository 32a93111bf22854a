#!/usr/bin/env bash
# Every fuzz target for FUZZTIME. A finding is written to the package's testdata/fuzz: mend it and commit the input.
set -euo pipefail
cd "$(dirname "$0")/.."
export CGO_ENABLED=0
flags=(-vet=off -timeout=0 -tags=migrated_fynedo,nogui)
time=${FUZZTIME:-10s}
mkdir -p build
log=build/fuzz.log

# fuzz FOLDER TARGET. What is merely interesting is hardly made smaller: that took most of the time.
fuzz() {
  go test "${flags[@]}" -run '^$' -fuzz "^$2\$" -fuzztime "$time" -fuzzminimizetime 20x "$1" | tee "$log"
}

# ended: the run failed without a finding, by the fuzzer's own deadline alone (go.dev/issue/75804, mended in Go 1.27).
ended() {
  grep -qE '^ +context deadline exceeded$' "$log" && ! grep -q 'Failing input written' "$log"
}

# target FOLDER NAME: fuzzed, and once more when the first run only ended badly.
target() {
  echo "$1 $2 $time"
  if fuzz "$1" "$2"; then return 0; fi
  ended || return 1
  echo 'once more: the fuzzer missed its own deadline'
  fuzz "$1" "$2"
}

count=0
failed=0
while read -r folder; do
  for name in $(grep -hoE '^func Fuzz[A-Za-z0-9_]*' "$folder"/*_test.go | cut -c6-); do
    count=$((count + 1))
    target "$folder" "$name" || failed=$((failed + 1))
  done
done < <(grep -rlE '^func Fuzz' --include='*_test.go' . | xargs -r -n1 dirname | LC_ALL=C sort -u)
echo "$count fuzz targets, $failed failed"
[ "$failed" -eq 0 ]
