#!/usr/bin/env bash
# Draws the golden pictures again: the tests that know the flag -golden run with it and write what they would compare.
set -euo pipefail
cd "$(dirname "$0")/.."
mapfile -t folders < <(grep -rlE 'flag\.Bool\("golden"' --include='*_test.go' . | xargs -r -n1 dirname | LC_ALL=C sort -u)
if [ ${#folders[@]} -eq 0 ]; then echo 'no golden pictures'; exit; fi
CGO_ENABLED=0 go test -count=1 -vet=off -tags=migrated_fynedo,nogui "${folders[@]}" -golden
git status --short -- '*testdata*'
