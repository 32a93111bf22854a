#!/usr/bin/env bash
# The Go tests, without OpenGL: gotest.sh all, windowless (what knows no toolkit) or race (what runs goroutines).
# -count=1: a cached result would know neither the clock nor the data beside the project. Vetting is lint's.
set -euo pipefail
cd "$(dirname "$0")/.."
flags=(-count=1 -vet=off -tags=migrated_fynedo,nogui)

# packages: import path and folder of ours, then what they lean on.
packages() {
  CGO_ENABLED=0 go list -tags=migrated_fynedo,nogui -f "$1" ./...
}

case ${1-} in
all)
  CGO_ENABLED=0 go test "${flags[@]}" ./... ;;
windowless)
  mapfile -t list < <(packages '{{.ImportPath}} {{join .Deps " "}}' | grep -v ' fyne\.io/' | cut -d' ' -f1)
  CGO_ENABLED=0 go test "${flags[@]}" "${list[@]}" ;;
race)
  list=()
  while read -r path folder; do
    if grep -qE '^\s*go (func\b|[A-Za-z_][A-Za-z_.]*\()|\.Go\(|AfterFunc\(' "$folder"/*.go; then list+=("$path"); fi
  done < <(packages '{{.ImportPath}} {{.Dir}}')
  if [ ${#list[@]} -eq 0 ]; then echo 'no package runs goroutines'; exit; fi
  CGO_ENABLED=1 go test -race -short "${flags[@]}" "${list[@]}" ;;
*)
  echo 'usage: gotest.sh all|windowless|race' >&2; exit 2 ;;
esac
