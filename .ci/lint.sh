#!/usr/bin/env bash
# Form and order: lint.sh core (all but the window, no C compiler needed), lint.sh window (package main with it), or both.
set -euo pipefail
cd "$(dirname "$0")/.."

core() {
  local unformatted
  unformatted=$(gofmt -l .)
  [ -z "$unformatted" ] || { echo "not as gofmt writes it: $unformatted" >&2; exit 1; }
  .ci/arrows.sh
  .ci/docs.sh
  export CGO_ENABLED=0
  go vet -tags=migrated_fynedo,nogui ./...
  go tool staticcheck -tags=migrated_fynedo,nogui ./...
}

window() {
  export CGO_ENABLED=1
  go vet ./app
  go tool staticcheck -tags=migrated_fynedo ./app
}

for part in "$@"; do
  case $part in
  core | window) ("$part") ;;
  *) echo "usage: lint.sh [core] [window]" >&2; exit 2 ;;
  esac
done
