#!/usr/bin/env bash
# Form and order: lint.sh core (all but the window, no C compiler needed), lint.sh window (package main with it), or both.
# Every check runs, whatever the one before found.
set -uo pipefail
cd "$(dirname "$0")/.."
bad=0

formatted() {
  local files
  files=$(gofmt -l .)
  [ -z "$files" ] || { echo "not as gofmt writes it: $files" >&2; return 1; }
}

# check NAME COMMAND...
check() {
  local name=$1
  shift
  "$@" || { bad=1; echo "lint: $name found something" >&2; }
}

core() {
  check gofmt formatted
  check arrows .ci/arrows.sh
  check docs .ci/docs.sh
  check notice .ci/notice.sh check
  check vet env CGO_ENABLED=0 go vet -tags=migrated_fynedo,nogui ./...
  check staticcheck env CGO_ENABLED=0 go tool staticcheck -tags=migrated_fynedo,nogui ./...
}

window() {
  check vet env CGO_ENABLED=1 go vet ./app
  check staticcheck env CGO_ENABLED=1 go tool staticcheck -tags=migrated_fynedo ./app
}

for part in "$@"; do
  case $part in
  core | window) "$part" ;;
  *) echo "usage: lint.sh [core] [window]" >&2; exit 2 ;;
  esac
done
exit $bad
